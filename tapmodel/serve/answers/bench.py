"""The routes of what is asked at the machine: each answers one question about the tap of a job."""

from collections.abc import Mapping
from typing import Annotated, Any

from pydantic import Field
from starlette.routing import Route

from tapmodel.errors import InputError, WriteError
from tapmodel.report.view.bench.dividing import dividing_view
from tapmodel.report.view.bench.gears import gears_view
from tapmodel.report.view.bench.wires import wires_view
from tapmodel.report.view.controls.on_page import on_page
from tapmodel.serve.answering import answering
from tapmodel.serve.answers.measured import (
    DroppedSizes,
    KeptAsked,
    MeasuredAsked,
    Typed,
    measured_answer,
    measured_file,
    measured_read,
)
from tapmodel.serve.asked import Asked, answered
from tapmodel.shop.gears.asked import asked_by
from tapmodel.shop.gears.trains import MOST, gear_trains
from tapmodel.shop.wires.answer import Wires, answer_wires
from tapmodel.shop.wires.asked import Overrides, thread_of_design
from tapmodel.shop.wires.limits import COMPOUND, demand
from tapmodel.spec.lengths import HOW, millimetres_of, rewritten
from tapmodel.spec.shop.dividing import MOST_DIVISIONS

MOST_STATIONS = 400
"""Divisions that are told one by one."""


class WiresAsked(Asked):
    """A value over wires, as it is typed; empty texts where nothing was.

    Attributes:
        wire: diameter of the wires; empty for those to use.
        measured: over them; empty before measuring.
        compound: setting of the slide, from square to the lathe's axis [deg].
    """

    wire: Typed = ""
    measured: Typed = ""
    compound: Annotated[float, Field(allow_inf_nan=False)] = 0.0


class DividingAsked(Asked):
    """Even divisions; None for as many as the tap has flutes."""

    divisions: Annotated[int, Field(ge=1, le=MOST_DIVISIONS)] | None = None


def bench_routes() -> list[Route]:
    """One for each question."""
    return [
        Route("/bench/wires", answering(WiresAsked, wires_answer), methods=["POST"]),
        Route("/bench/gears", answering(Asked, gears_answer), methods=["POST"]),
        Route("/bench/dividing", answering(DividingAsked, dividing_answer), methods=["POST"]),
        Route("/bench/measured", answering(MeasuredAsked, measured_answer), methods=["POST"]),
        Route("/bench/measured/file", answering(KeptAsked, measured_file), methods=["POST"]),
        Route("/bench/measured/read", answering(DroppedSizes, measured_read), methods=["POST"]),
    ]


def wires_answer(asked: WiresAsked) -> dict[str, Any]:
    """How the tap is measured over wires, and what was measured.

    Raises:
        InputError: naming what was typed and what is allowed.
        NoWireError: no wire suits.
    """
    told = answered(asked, cured=False)
    demand("compound", asked.compound, COMPOUND)
    thread = thread_of_design(told.design, told.design.basic_pitch_diameter, Overrides())
    given = Wires(
        _length("wire", asked.wire),
        (),
        _length("measured", asked.measured),
        asked.compound,
        told.units,
    )
    typed = {"--wire": asked.wire, "--measured": asked.measured}
    try:
        answer = answer_wires(thread, given)
    except InputError as error:
        raise _renamed(error, typed) from None
    return {"wires": on_page(wires_view(answer, told.units))}


def gears_answer(asked: Asked) -> dict[str, Any]:
    """Change gears, the best first; null where leadscrew or wheels are named nowhere.

    Raises:
        InputError: naming field, value and what is allowed.
    """
    told = answered(asked, cured=False)
    wanted = asked_by(told.design)
    if wanted is None:
        return {"gears": None, "notes": []}
    trains = gear_trains(wanted.lead, wanted.leadscrew, wanted.wheels, MOST)
    chapter, notes = gears_view(wanted, trains, told.units)
    return {"gears": on_page(chapter), "notes": on_page(notes)}


def dividing_answer(asked: DividingAsked) -> dict[str, Any]:
    """Index positions.

    Raises:
        InputError: more divisions than are told one by one.
    """
    told = answered(asked, cured=False)
    count = asked.divisions or told.design.tap.flutes.count
    if count > MOST_STATIONS:
        raise InputError("divisions", count, f"a whole number from 1 to {MOST_STATIONS}")
    return {"dividing": on_page(dividing_view(told.design, count))}


def _length(field: str, text: str) -> float | None:
    if not text.strip():
        return None
    found = millimetres_of(text)
    if found is None:
        meant = rewritten(text)
        raise WriteError(field, text, meant) if meant else InputError(field, text, HOW)
    return found


def _renamed(error: InputError, typed: Mapping[str, str]) -> InputError:
    """A refusal by the name of a box instead of an option, with what was typed into it."""
    name = error.field.removeprefix("--").rpartition(": ")[2].replace("-", "_")
    value = typed.get(error.field) or error.value
    return error if name == error.field else type(error)(name, value, error.allowed)
