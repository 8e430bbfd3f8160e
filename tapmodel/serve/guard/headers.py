"""What every answer tells the browser: load nothing from elsewhere, show this page nowhere else."""

from starlette.datastructures import MutableHeaders
from starlette.types import ASGIApp, Message, Receive, Scope, Send

_POLICY = {
    "default-src": "'none'",
    "script-src": "'self'",
    "style-src": "'self'",
    "img-src": "'self' data: blob:",
    "connect-src": "'self'",
    "form-action": "'none'",
    "frame-ancestors": "'none'",
    "base-uri": "'none'",
}

HEADERS = {
    "Content-Security-Policy": "; ".join(f"{what} {whence}" for what, whence in _POLICY.items()),
    "X-Content-Type-Options": "nosniff",
    # The address of the page holds the token.
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Cache-Control": "no-store",
}


class Told:
    """Adds `HEADERS` to every answer, refusals among them."""

    def __init__(self, app: ASGIApp) -> None:
        """Stand before `app`."""
        self._app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer as the application does, with the headers."""

        async def sent(message: Message) -> None:
            if message["type"] == "http.response.start":
                MutableHeaders(scope=message).update(HEADERS)
            await send(message)

        await self._app(scope, receive, sent)
