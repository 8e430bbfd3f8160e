"""Refusals as the page takes them: a sentence, and the field of the job that is to blame."""

from collections.abc import Mapping

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from tapmodel.errors import InputError, NoWireError, RefusedError, TapmodelError


def told(status: int, message: str, headers: Mapping[str, str] | None = None) -> Response:
    """An answer that only says why there is none."""
    return JSONResponse(refused(message), status, headers)


def refused(message: str, field: str = "") -> dict[str, object]:
    """A refusal; the `field` is dotted, and empty where none of the job is to blame."""
    return {"error": {"message": message, "field": field}}


def refused_by(error: TapmodelError) -> dict[str, object]:
    """The refusal that an error stands for, in the words of the command line."""
    return refused(_words(error), _field(error))


async def answer_to(_request: Request, error: Exception) -> Response:
    """The answer to whatever was raised while a request was met."""
    if isinstance(error, HTTPException):
        return told(error.status_code, error.detail, error.headers)
    if isinstance(error, TapmodelError):
        return JSONResponse(refused_by(error), 422)
    words = f"a fault of this program, please report it: {type(error).__name__}: {error}"
    return told(500, words)


def _words(error: TapmodelError) -> str:
    # Sentences are loaded where there is something to be told.
    if isinstance(error, NoWireError):
        from tapmodel.report.words.no_wire import no_wire  # noqa: PLC0415

        return no_wire(error, error.units)
    if isinstance(error, RefusedError):
        from tapmodel.report.words.refusal import refusal  # noqa: PLC0415

        return refusal(error)
    return str(error)


def _field(error: TapmodelError) -> str:
    """What is to be changed first; an option of the command line is no field of the job."""
    if isinstance(error, InputError):
        return "" if error.field.startswith("-") else error.field
    return error.findings[0].field if isinstance(error, RefusedError) else ""
