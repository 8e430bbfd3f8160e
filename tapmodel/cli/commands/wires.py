"""`tapmodel wires`: measuring over wires."""

from typing import Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import AsJson, Sets, TextUnits
from tapmodel.cli.settled import designed, end
from tapmodel.cli.telling import print_json
from tapmodel.errors import InputError, NoWireError, WriteError
from tapmodel.report.units import Units
from tapmodel.spec.lengths import HOW, millimetres_of, parted_at_comma, rewritten

_OR_INCH = "in mm, or with its unit: 0.032in"

EXAMPLES = (
    "tapmodel wires M18x0.75",
    "tapmodel wires M18x0.75 --wire 0.433 --measured 18.25 --compound 29.5",
    'tapmodel wires "1/2-10 Acme" --on-hand 0.05in,0.055in,1/16in --units inch',
    "tapmodel wires --flank-angle 30 --pitch 2 --pitch-diameter 18",
)


def wires(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: Annotated[
        str | None,
        typer.Argument(metavar="[JOB]", help="A designation or .toml file; none for a free form."),
    ] = None,
    sets: Sets = None,
    *,
    wire: Annotated[
        str | None, typer.Option(metavar="LENGTH", help=f"Diameter of the wires {_OR_INCH}.")
    ] = None,
    on_hand: Annotated[
        str,
        typer.Option(
            metavar="LENGTH,LENGTH,...",
            help="Wires to choose from instead of shop.wires.",
        ),
    ] = "",
    measured: Annotated[
        str | None, typer.Option(metavar="LENGTH", help=f"Value over the wires {_OR_INCH}.")
    ] = None,
    compound: Annotated[
        float,
        typer.Option(help="Setting of the compound in degrees from square to the lathe's axis."),
    ] = 0.0,
    pitch_diameter: Annotated[
        str | None, typer.Option(metavar="LENGTH", help="Instead of the basic one.")
    ] = None,
    starts: Annotated[int | None, typer.Option(help="Number of threads side by side.")] = None,
    lead_angle: Annotated[float | None, typer.Option(help="Instead of that of the starts.")] = None,
    flank_angle: Annotated[
        float | None, typer.Option(help="Half the included angle of a free form, degrees.")
    ] = None,
    pitch: Annotated[
        str | None, typer.Option(metavar="LENGTH", help="Pitch of a free form.")
    ] = None,
    units: TextUnits = None,
    as_json: AsJson = False,
) -> None:
    """Measure over wires: limits, and the infeed still to take."""
    from tapmodel.report.screen.wires import wires_page
    from tapmodel.report.units_wanted import units_of
    from tapmodel.report.words.wires import sentence
    from tapmodel.shop.wires.answer import Wires, answer_wires
    from tapmodel.shop.wires.asked import Overrides, free_thread, thread_of_design
    from tapmodel.shop.wires.record import wires_record

    overrides = Overrides(_length("--pitch-diameter", pitch_diameter), starts, lead_angle)
    free_pitch = _length("--pitch", pitch)
    settled = None
    if job is not None:
        if flank_angle is not None or free_pitch is not None:
            raise InputError("JOB", job, "no JOB beside --flank-angle and --pitch")
        settled, wanted = designed(job, sets, units=units, briefly=True)
        units = units_of(wanted, units)
        asked = thread_of_design(settled, settled.basic_pitch_diameter, overrides)
    elif flank_angle is None or free_pitch is None:
        raise InputError("JOB", "none", "a JOB, or both --flank-angle and --pitch")
    elif sets:
        raise InputError("--set", sets[0], "no --set beside --flank-angle and --pitch")
    else:
        asked = free_thread(flank_angle, free_pitch, overrides)
    given = Wires(
        _length("--wire", wire),
        _lengths(on_hand),
        _length("--measured", measured),
        compound,
        units or Units.MM,
    )
    try:
        answer = answer_wires(asked, given)
    except NoWireError as error:
        error.units = units or Units.MM
        raise
    except InputError as error:
        typed = {"--wire": wire, "--on-hand": on_hand, "--measured": measured}.get(error.field)
        raise (type(error)(error.field, typed, error.allowed) if typed else error) from None
    if as_json:
        print_json(wires_record(answer, [sentence(note) for note in answer.notes]))
    else:
        say(wires_page(answer, units or Units.MM))
    if settled:
        end(settled, units or Units.MM)


def _length(option: str, text: str | None) -> float | None:
    if text is None:
        return None
    found = millimetres_of(text)
    if found is None:
        meant = rewritten(text)
        raise WriteError(option, text, meant) if meant else InputError(option, text, HOW)
    return found


def _lengths(text: str) -> tuple[float, ...]:
    words = [word for word in text.split(",") if word.strip()]
    meant = parted_at_comma(words)
    if meant:
        raise WriteError("--on-hand", text, f"{meant}; a comma parts the wires")
    found = [millimetres_of(word) for word in words]
    if None in found:
        raise InputError("--on-hand", text, f"lengths with commas between, each {HOW}")
    return tuple(wire for wire in found if wire is not None)
