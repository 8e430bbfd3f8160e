"""How much a request may carry."""

from starlette.datastructures import Headers
from starlette.exceptions import HTTPException
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from tapmodel.serve.refusal import told

LARGEST = 256_000
"""Bytes; a job file with all its comments has some 20 000."""

_TOO_LARGE = f"a request holds at most {LARGEST} bytes"


class Size:
    """Refuses a request that is too large, by what it says or as it comes."""

    def __init__(self, app: ASGIApp) -> None:
        """Stand before `app`."""
        self._app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer, or refuse."""
        length = Headers(scope=scope).get("content-length", "0")
        # The server has made sure that it is a number.
        if int(length) > LARGEST:
            await told(413, _TOO_LARGE)(scope, receive, send)
            return
        come = 0

        async def received() -> Message:
            nonlocal come
            message = await receive()
            come += len(message.get("body", b""))
            if come > LARGEST:
                raise HTTPException(413, _TOO_LARGE)
            return message

        await self._app(scope, received, send)
