"""The routes of the live page: each takes a job as JSON and answers, and keeps nothing of it."""

from collections.abc import Collection
from importlib import resources
from typing import cast

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response
from starlette.routing import Route
from starlette.types import ASGIApp

from tapmodel.errors import TapmodelError
from tapmodel.report.page.live import live_page
from tapmodel.report.view.changing import changing_findings_of, changing_view_of
from tapmodel.serve.answering import answering
from tapmodel.serve.answers.bench import bench_routes
from tapmodel.serve.answers.chart import ChartAsked, chart_answer
from tapmodel.serve.answers.jobs import Dropped, job_read, job_text
from tapmodel.serve.answers.model import model_answer
from tapmodel.serve.answers.papers import papers
from tapmodel.serve.answers.recommended import recommended
from tapmodel.serve.aside import aside
from tapmodel.serve.asked import Asked, Opening, answered
from tapmodel.serve.building.builds import Builds
from tapmodel.serve.building.routes import build_routes
from tapmodel.serve.guard.gate import Gate
from tapmodel.serve.guard.headers import Told
from tapmodel.serve.guard.rate import Rate
from tapmodel.serve.guard.size import Size
from tapmodel.serve.mate import Mates
from tapmodel.serve.refusal import answer_to

_KINDS = {"page.js": "text/javascript", "page.css": "text/css"}


def application(
    token: str,
    hosts: Collection[str],
    first: Opening,
    builds: Builds,
    mates: Mates | None = None,
) -> ASGIApp:
    """The live page below `/token/`, guarded.

    Args:
        token: without which nothing is answered.
        hosts: that are served, with their port.
        first: what the page opens with.
        builds: where models are built.
        mates: processes for what takes long; None for threads of this one.
    """
    # The rate is counted behind the gate: no other site can use up what the page may ask.
    return Told(Gate(Rate(Size(_page(first, builds, mates))), token, hosts))


def _page(first: Opening, builds: Builds, mates: Mates | None) -> Starlette:
    shaper, seeker = (mates.shaper, mates.seeker) if mates else (None, None)

    async def page(request: Request) -> Response:
        return await aside(request, lambda: HTMLResponse(_opened(first)))

    routes = [
        Route("/", page),
        Route("/tap", answering(Asked, _tap), methods=["POST"]),
        Route("/cures", answering(Asked, _cures, seeker), methods=["POST"]),
        Route("/recommended", answering(Asked, _recommended, seeker), methods=["POST"]),
        Route("/model", answering(Asked, model_answer, shaper), methods=["POST"]),
        Route("/papers", answering(Asked, papers, seeker), methods=["POST"]),
        Route("/job", answering(Asked, job_text, seeker), methods=["POST"]),
        Route("/read", answering(Dropped, job_read), methods=["POST"]),
        Route("/chart", answering(ChartAsked, chart_answer, seeker), methods=["POST"]),
        *bench_routes(),
        *build_routes(builds),
        Route("/{name}", _file),
    ]
    faults = (TapmodelError, HTTPException, Exception)
    served = Starlette(routes=routes, exception_handlers=dict.fromkeys(faults, answer_to))
    # What is not here is not here: no answer leads to another path.
    served.router.redirect_slashes = False
    return served


def _opened(first: Opening) -> str:
    told = answered(first, cured=False)
    return live_page(told.design, first.job, told.units, first.units, first.measured)


async def _file(request: Request) -> Response:
    name = cast("str", request.path_params["name"])
    if name not in _KINDS:
        raise HTTPException(404)
    text = (resources.files("tapmodel.report.page") / "built" / name).read_bytes()
    return Response(text, media_type=_KINDS[name])


def _tap(asked: Asked) -> object:
    told = answered(asked, cured=False)
    view = changing_view_of(told.design, told.units, asked.z)
    return {"view": view, "dropped": told.dropped}


def _cures(asked: Asked) -> object:
    told = answered(asked)
    return {"findings": changing_findings_of(told.design, told.units)}


def _recommended(asked: Asked) -> object:
    return {"recommended": recommended(asked)}
