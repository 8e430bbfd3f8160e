"""How fast one client may ask."""

import time
from collections import OrderedDict
from collections.abc import Callable

from starlette.types import ASGIApp, Receive, Scope, Send

from tapmodel.serve.refusal import told

AT_ONCE = 400
"""Requests that are answered however fast they come: more than a slider that is drawn sends."""
A_SECOND = 100
"""Requests that are answered in the long run."""

_CLIENTS = 1000
"""That are remembered; who is forgotten begins anew."""


class Rate:
    """A bucket of tokens for every client: each request takes one, and time fills it again."""

    def __init__(self, app: ASGIApp, clock: Callable[[], float] = time.monotonic) -> None:
        """Stand before `app`; the clock tells seconds."""
        self._app, self._clock = app, clock
        self._left = OrderedDict[str, tuple[float, float]]()
        """By client, the one heard last at the end: what was left, and when."""

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer, or tell the page to ask again a moment later."""
        client: tuple[str, int] | None = scope.get("client")
        if self._takes(client[0] if client else ""):
            await self._app(scope, receive, send)
        else:
            answer = told(429, "asked too often; ask again in a moment", {"Retry-After": "1"})
            await answer(scope, receive, send)

    def _takes(self, client: str) -> bool:
        now = self._clock()
        left, since = self._left.pop(client, (float(AT_ONCE), now))
        left = min(AT_ONCE, left + (now - since) * A_SECOND)
        taken = left >= 1
        self._left[client] = left - taken, now
        if len(self._left) > _CLIENTS:
            self._left.popitem(last=False)
        return taken
