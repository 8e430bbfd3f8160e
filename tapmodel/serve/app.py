"""The routes of the live page: each takes a job as JSON and answers, and keeps nothing of it."""

from dataclasses import asdict
from importlib import resources
from typing import cast

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response
from starlette.routing import Mount, Route

from tapmodel.errors import InputError, RefusedError, TapmodelError
from tapmodel.report.page.live import live_page
from tapmodel.report.view.tap import view_of
from tapmodel.report.words.refusal import refusal
from tapmodel.serve.asked import Asked, answered, asked_of

_KINDS = {"page.js": "text/javascript", "page.css": "text/css"}


def application(token: str, first: Asked) -> Starlette:
    """The live page below `/token/`.

    Args:
        token: without which nothing is answered.
        first: what the page opens with.
    """

    def page(_request: Request) -> Response:
        told = answered(first)
        return HTMLResponse(live_page(told.design, first.job, told.units))

    routes = [
        Route("/", page),
        Route("/{name}", _file, methods=["GET"]),
        Route("/tap", _tap, methods=["POST"]),
    ]
    return Starlette(
        routes=[Mount(f"/{token}", routes=routes)],
        exception_handlers={TapmodelError: _refusal},
    )


def _file(request: Request) -> Response:
    name = cast("str", request.path_params["name"])
    if name not in _KINDS:
        return Response(status_code=404)
    text = (resources.files("tapmodel.report.page") / "built" / name).read_bytes()
    return Response(text, media_type=_KINDS[name])


async def _tap(request: Request) -> Response:
    asked = asked_of(await request.json())
    told = answered(asked)
    return JSONResponse({"view": asdict(view_of(told.design, told.units, asked.z))})


def _refusal(_request: Request, error: Exception) -> Response:
    field = error.field if isinstance(error, InputError) else ""
    told = refusal(error) if isinstance(error, RefusedError) else str(error)
    return JSONResponse({"error": {"message": told, "field": field}}, status_code=422)
