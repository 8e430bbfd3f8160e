"""From what a request asks for to JSON: a route is one plain function."""

from collections.abc import Awaitable, Callable

from starlette.requests import Request as HttpRequest
from starlette.responses import JSONResponse, Response

from tapmodel.serve.aside import aside
from tapmodel.serve.asked import Kind, request_of
from tapmodel.serve.body import body_of

Endpoint = Callable[[HttpRequest], Awaitable[Response]]


def answering(kind: type[Kind], work: Callable[[Kind], object]) -> Endpoint:
    """The endpoint that checks a request, and answers what `work` makes of it.

    Args:
        kind: of request.
        work: from the checked request to what JSON can hold, or to an answer of another kind; it is
            done in a thread, beside others.
    """

    async def endpoint(request: HttpRequest) -> Response:
        asked = request_of(kind, await body_of(request))
        return await aside(request, lambda: _told(work(asked)))

    return endpoint


def _told(made: object) -> Response:
    return made if isinstance(made, Response) else JSONResponse(made)
