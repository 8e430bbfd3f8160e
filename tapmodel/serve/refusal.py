"""Refusals as the page takes them: a sentence, and the field of the job that is to blame."""

from collections.abc import Mapping

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from tapmodel.errors import InputError, NoTapError, NoWireError, RefusedError, TapmodelError
from tapmodel.report.view.controls.on_page import on_page

Refusal = dict[str, dict[str, object]]
"""As JSON: all of it stands under "error"."""


def told(status: int, message: str, headers: Mapping[str, str] | None = None) -> Response:
    """An answer that only says why there is none."""
    return JSONResponse(refused(message), status, headers)


def refused(message: str, field: str = "") -> Refusal:
    """A refusal; the `field` is dotted, and empty where none of the job is to blame."""
    return {"error": {"message": message, "field": field}}


def refused_by(error: TapmodelError) -> Refusal:
    """The refusal that an error stands for, in the words of the page.

    It says so where the same would be built if it were forced.
    """
    refusal = refused(_words(error), _field(error))
    if isinstance(error, RefusedError) and not isinstance(error, NoTapError):
        forceable = not any(finding.no_solid for finding in error.findings)
        refusal["error"] |= {"forceable": forceable}
    return refusal


async def answer_to(_request: Request, error: Exception) -> Response:
    """The answer to whatever was raised while a request was met."""
    if isinstance(error, HTTPException):
        return told(error.status_code, error.detail, error.headers)
    if isinstance(error, TapmodelError):
        return JSONResponse(refused_by(error), 422)
    words = f"a fault of this program, please report it: {type(error).__name__}: {error}"
    return told(500, words)


def _words(error: TapmodelError) -> str:
    # These sentences are loaded where there is something to be told.
    if isinstance(error, NoWireError):
        from tapmodel.report.words.no_wire import no_wire  # noqa: PLC0415

        return no_wire(error, error.units)
    if isinstance(error, RefusedError):
        from tapmodel.report.words.refusal import refusal_on_page  # noqa: PLC0415

        return on_page(refusal_on_page(error))
    # A line of a file, or an option, is told by its own name.
    return on_page(str(error)) if _field(error) else str(error)


def _field(error: TapmodelError) -> str:
    """What is to be changed first; an option or a line of a file is no field of the job."""
    if isinstance(error, InputError):
        first = error.field.partition(" together with ")[0]
        return "" if first.startswith("-") or " " in first else first
    return error.findings[0].field if isinstance(error, RefusedError) else ""
