"""`tapmodel wires`: measuring over wires."""

from typing import Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import AsJson, Sets
from tapmodel.cli.settled import designed, end
from tapmodel.cli.telling import print_json
from tapmodel.errors import InputError

EXAMPLES = (
    "tapmodel wires M18x0.75",
    "tapmodel wires M18x0.75 --wire 0.433 --measured 18.25 --compound 29.5",
    "tapmodel wires --flank-angle 30 --pitch 2 --pitch-diameter 18",
)


def wires(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: Annotated[
        str | None,
        typer.Argument(metavar="[JOB]", help="A designation or .toml file; none for a free form."),
    ] = None,
    sets: Sets = None,
    *,
    wire: Annotated[float | None, typer.Option(help="Diameter of the wires in mm.")] = None,
    on_hand: Annotated[
        str, typer.Option(metavar="D,D,...", help="Wires to choose from, in mm.")
    ] = "",
    measured: Annotated[float | None, typer.Option(help="Value over the wires in mm.")] = None,
    compound: Annotated[float, typer.Option(help="Setting of the compound in degrees.")] = 0.0,
    pitch_diameter: Annotated[float | None, typer.Option(help="Instead of the basic one.")] = None,
    starts: Annotated[int | None, typer.Option(help="Number of threads side by side.")] = None,
    lead_angle: Annotated[float | None, typer.Option(help="Instead of that of the starts.")] = None,
    flank_angle: Annotated[
        float | None, typer.Option(help="Half the included angle of a free form, degrees.")
    ] = None,
    pitch: Annotated[float | None, typer.Option(help="Pitch of a free form in mm.")] = None,
    as_json: AsJson = False,
) -> None:
    """Measure over wires: limits, and the infeed still to take."""
    from tapmodel.report.wires_page import wires_page
    from tapmodel.shop.wires.answer import Wires, answer_wires
    from tapmodel.shop.wires.asked import Overrides, free_thread, thread_of_design
    from tapmodel.shop.wires.record import wires_record

    overrides = Overrides(pitch_diameter, starts, lead_angle)
    settled = None
    if job is not None:
        if flank_angle is not None or pitch is not None:
            raise InputError("JOB", job, "no JOB beside --flank-angle and --pitch")
        settled, _ = designed(job, sets)
        asked = thread_of_design(settled, settled.basic_pitch_diameter, overrides)
    elif flank_angle is None or pitch is None:
        raise InputError("JOB", "none", "a JOB, or both --flank-angle and --pitch")
    elif sets:
        raise InputError("--set", sets[0], "no --set beside --flank-angle and --pitch")
    else:
        asked = free_thread(flank_angle, pitch, overrides)
    answer = answer_wires(asked, Wires(wire, _diameters(on_hand), measured, compound))
    if as_json:
        print_json(wires_record(answer))
    else:
        say(wires_page(answer))
    if settled:
        end(settled)


def _diameters(text: str) -> tuple[float, ...]:
    try:
        return tuple(float(word) for word in text.split(",") if word.strip())
    except ValueError:
        raise InputError("--on-hand", text, "diameters in mm with commas between") from None
