"""From what a request asks for to JSON: a route is one plain function."""

from collections.abc import Awaitable, Callable
from functools import partial

from starlette.requests import Request as HttpRequest
from starlette.responses import Response

from tapmodel.errors import TapmodelError
from tapmodel.serve.aside import aside
from tapmodel.serve.asked import Kind, request_of
from tapmodel.serve.body import body_of
from tapmodel.serve.mate import Mate
from tapmodel.serve.refusal import refused_by
from tapmodel.serve.written import Written

Endpoint = Callable[[HttpRequest], Awaitable[Response]]


def answering(
    kind: type[Kind], work: Callable[[Kind], object], mate: Mate | None = None
) -> Endpoint:
    """The endpoint that checks a request, and answers what `work` makes of it.

    Args:
        kind: of request.
        work: from the checked request to records and what JSON can hold, or to an answer of another
            kind; it is done in a thread, beside others.
        mate: that does it instead, as it takes long; `work` is then a function of some module.
    """
    do = partial(respond, work)
    done, queue = (partial(mate.do, do), mate.queue) if mate else (do, None)

    async def endpoint(request: HttpRequest) -> Response:
        asked = request_of(kind, await body_of(request))
        return await aside(request, lambda: done(asked), queue)

    return endpoint


def respond(work: Callable[[Kind], object], asked: Kind) -> Response:
    """The answer to a checked request, a refusal among them; made where the work is done."""
    try:
        made = work(asked)
    except TapmodelError as error:
        return Written(refused_by(error), 422)
    return made if isinstance(made, Response) else Written(made)
