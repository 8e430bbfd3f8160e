"""Builds as the page asks for them: begin, look, stop, fetch."""

from dataclasses import asdict
from pathlib import PurePosixPath
from typing import cast

from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import FileResponse, JSONResponse, Response, StreamingResponse
from starlette.routing import Route

from tapmodel.report.view.building import kinds_of_files
from tapmodel.serve.aside import aside
from tapmodel.serve.asked import request_of
from tapmodel.serve.body import body_of
from tapmodel.serve.building.asked import BuildAsked, ordered
from tapmodel.serve.building.build import Build
from tapmodel.serve.building.builds import Builds, BusyError
from tapmodel.serve.building.zipped import zipped


def build_routes(builds: Builds) -> list[Route]:
    """The routes; no path in them is one of the disk, for names are looked up among those made."""

    async def offered(_request: Request) -> Response:
        running = builds.running
        kinds = [asdict(kind) for kind in kinds_of_files()]
        return JSONResponse({"kinds": kinds, "running": running.told() if running else None})

    async def begin(request: Request) -> Response:
        asked = request_of(BuildAsked, await body_of(request))
        settled = await aside(request, lambda: ordered(asked, builds.limits))
        try:
            build = builds.begin(settled)
        except BusyError as error:
            raise HTTPException(409, str(error)) from None
        return JSONResponse({"id": build.id}, 202)

    async def look(request: Request) -> Response:
        return JSONResponse(_kept(builds, request).told())

    async def stop(request: Request) -> Response:
        build = _kept(builds, request)
        await run_in_threadpool(builds.forget, build.id)
        return Response(status_code=204)

    async def file(request: Request) -> Response:
        name = cast("str", request.path_params["name"])
        path = _kept(builds, request).files.get(name)
        if path is None:
            raise HTTPException(404, "there is no such file")
        return FileResponse(path, filename=PurePosixPath(name).name)

    async def everything(request: Request) -> Response:
        build = _kept(builds, request)
        if not build.files:
            raise HTTPException(404, "there are no files yet")
        named = {"Content-Disposition": f'attachment; filename="{_ascii(build.name)}.zip"'}
        return StreamingResponse(zipped(build.files), media_type="application/zip", headers=named)

    return [
        Route("/build", offered, methods=["GET"]),
        Route("/build", begin, methods=["POST"]),
        Route("/build/{id}", look, methods=["GET"]),
        Route("/build/{id}", stop, methods=["DELETE"]),
        Route("/build/{id}/all.zip", everything, methods=["GET"]),
        Route("/build/{id}/files/{name:path}", file, methods=["GET"]),
    ]


def _kept(builds: Builds, request: Request) -> Build:
    build = builds.of(request.path_params["id"])
    if build is None:
        raise HTTPException(404, "this build is not kept any more; build it again")
    return build


def _ascii(name: str) -> str:
    """A name as a header holds it without more ado."""
    return "".join(letter if letter.isascii() else "_" for letter in name).replace('"', "_")
