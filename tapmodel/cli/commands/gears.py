"""`tapmodel gears`: change gears of the lathe."""

from typing import TYPE_CHECKING, Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import AsJson, Sets, TextUnits
from tapmodel.cli.pen import pen
from tapmodel.cli.settled import designed, end
from tapmodel.cli.telling import print_json
from tapmodel.errors import InputError, LackingError
from tapmodel.shop.gears.trains import MOST
from tapmodel.spec.shop.counts import counts_for
from tapmodel.spec.shop.pitches import HOW, in_inches, pitch_for
from tapmodel.spec.shop.tooth_counts import WHEELS
from tapmodel.words import Units

if TYPE_CHECKING:
    from fractions import Fraction

    from tapmodel.designing.record import TapDesign
    from tapmodel.shop.gears.asked import GearsAsked

EXAMPLES = (
    "tapmodel gears --pitch 19tpi --leadscrew 4mm --gears 20,24,25,30,35,40,40,50,60,95,127",
    "tapmodel gears M18x0.75 --leadscrew 8tpi --gears 20-65,127 --most 5",
    "tapmodel gears my-tap.toml --json",
)

_MOST_TRAINS = 1000


def gears(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: Annotated[
        str | None,
        typer.Argument(metavar="[JOB]", help="A designation or .toml file; none with --pitch."),
    ] = None,
    sets: Sets = None,
    *,
    pitch: Annotated[
        str | None,
        typer.Option(metavar="PITCH", help="To be cut (several starts: the lead): 0.75 or 19tpi."),
    ] = None,
    leadscrew: Annotated[
        str | None, typer.Option(metavar="PITCH", help="Instead of shop.leadscrew.")
    ] = None,
    wheels: Annotated[
        str | None,
        typer.Option(
            "--gears",
            metavar="TEETH,TEETH,...",
            help="Wheels at hand, ranges too, instead of shop.gears; two of a size twice.",
        ),
    ] = None,
    most: Annotated[int, typer.Option(help="The most trains to tell.")] = MOST,
    units: TextUnits = None,
    as_json: AsJson = False,
) -> None:
    """Find change gears among the wheels at hand, the best first."""
    from tapmodel.shop.gears.trains import gear_trains

    screw = None if leadscrew is None else pitch_for("--leadscrew", leadscrew)
    teeth = () if wheels is None else counts_for("--gears", wheels, WHEELS)
    if not 1 <= most <= _MOST_TRAINS:
        raise InputError("--most", most, f"a whole number from 1 to {_MOST_TRAINS}")
    settled = None
    if job is not None:
        if pitch is not None:
            raise InputError("--pitch", pitch, "no --pitch beside a JOB, which has its own")
        from tapmodel.report.units_wanted import units_of

        settled, wanted = designed(job, sets, units=units, briefly=True)
        units = units_of(wanted, units)
        asked = _of_job(settled, screw, teeth)
    elif sets:
        raise InputError("--set", sets[0], "no --set without a JOB")
    else:
        asked = _of_pitch(pitch, screw, teeth)
        units = units or (Units.INCH if pitch and in_inches(pitch) else Units.MM)
    found = gear_trains(asked.lead, asked.leadscrew, asked.wheels, most)
    if as_json:
        from tapmodel.shop.gears.record import gears_record

        print_json(gears_record(asked.lead, asked.leadscrew, found))
    else:
        from tapmodel.report.screen.gears import gears_page

        say(gears_page(asked, found, units, pen()))
    if settled:
        end(settled, units)


def _of_job(settled: "TapDesign", screw: "Fraction | None", teeth: tuple[int, ...]) -> "GearsAsked":
    from tapmodel.shop.gears.asked import asked_by

    asked = asked_by(settled, screw, teeth)
    if asked is None:
        lacks = settled.choice("shop.leadscrew") is None and screw is None
        raise _lacking("--leadscrew" if lacks else "--gears", in_job=True)
    return asked


def _of_pitch(pitch: str | None, screw: "Fraction | None", teeth: tuple[int, ...]) -> "GearsAsked":
    from tapmodel.shop.gears.asked import GearsAsked

    if pitch is None:
        raise InputError("JOB", "none", f"a JOB, or --pitch: {HOW}")
    lead = pitch_for("--pitch", pitch)
    if screw is None or not teeth:
        raise _lacking("--leadscrew" if screw is None else "--gears")
    return GearsAsked(lead, screw, teeth)


def _lacking(option: str, *, in_job: bool = False) -> InputError:
    field, how = {
        "--leadscrew": ("shop.leadscrew", HOW),
        "--gears": ("shop.gears", WHEELS.how),
    }[option]
    return LackingError(f"{option} or {field}" if in_job else option, None, how)
