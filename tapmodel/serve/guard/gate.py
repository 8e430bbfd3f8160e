"""Who may ask: whoever has the token, from the page itself, by an address that is served."""

from collections.abc import Collection, Iterator
from secrets import compare_digest

from starlette.datastructures import Headers
from starlette.types import ASGIApp, Receive, Scope, Send

from tapmodel.serve.refusal import told

_ONLY_READ = {"GET", "HEAD"}
_OWN_SITE = {"same-origin", "none"}
"""What a browser says of a request of the page itself, or of one that a user typed."""


class Gate:
    """Answers what has the token and comes from the page; whatever else learns nothing.

    A page of another site can have a browser send requests here. It can read no answer, but what it
    asks would be done: so requests that do more than read must come from the page served (`Origin`,
    `Sec-Fetch-Site`), in a form that no plain HTML form can send. By a name of its own that it has
    lead to this machine it would count as the same site: so `Host` must be one that is served.
    """

    def __init__(self, app: ASGIApp, token: str, hosts: Collection[str]) -> None:
        """Stand before `app`.

        Args:
            app: asked by paths behind the token.
            token: first part of every path.
            hosts: that are served, with their port, in small letters.
        """
        self._app, self._token, self._hosts = app, token.encode(), hosts

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer, or refuse."""
        if scope["type"] != "http":
            return
        headers = Headers(scope=scope)
        first, slash, rest = scope["path"].removeprefix("/").partition("/")
        if headers.get("host", "").lower() not in self._hosts:
            answer = told(421, "this address is not served here")
        elif not (compare_digest(first.encode(), self._token) and slash):
            answer = told(404, "not found; the whole address stands where the program was started")
        elif scope["method"] not in _ONLY_READ and (why := next(_faults(scope, headers), None)):
            answer = told(*why)
        else:
            answer = self._app
            scope = {**scope, "path": f"/{rest}"}
        await answer(scope, receive, send)


def _faults(scope: Scope, headers: Headers) -> Iterator[tuple[int, str]]:
    """What forbids a request that does more than read: status and reason."""
    origin, site = headers.get("origin"), headers.get("sec-fetch-site")
    if origin is not None and origin.lower() != f"http://{headers['host'].lower()}":
        yield 403, "asked from another site"
    if site is not None and site not in _OWN_SITE:
        yield 403, "asked from another site"
    kind = headers.get("content-type", "").partition(";")[0].strip().lower()
    if scope["method"] == "POST" and kind != "application/json":
        yield 415, "a request is JSON, and says so (content-type: application/json)"
