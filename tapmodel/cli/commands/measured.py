"""`tapmodel measured`: what was measured of a tap in the making, and what that means."""

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.measured_file import kept_in, merged
from tapmodel.cli.options import AsJson, JobArgument, Sets, TextUnits
from tapmodel.cli.pen import pen
from tapmodel.cli.settled import designed, end
from tapmodel.cli.telling import print_json
from tapmodel.errors import InputError, NoWireError, escaped
from tapmodel.spec.measured.sizes import Size

if TYPE_CHECKING:
    from typer.models import OptionInfo

    from tapmodel.spec.measured.record import Found, Measured

EXAMPLES = (
    "tapmodel measured lens-cell.toml --major 18.05 --over-wires 18.26 --wire 0.433",
    "tapmodel measured lens-cell.toml --core 8.1 --heel-drop 0.2 --hardness 61",
    "tapmodel measured lens-cell.toml",
    "tapmodel measured lens-cell.toml --forget core",
    "tapmodel measured 1/2-12 --over-wires 0.5405in --units inch --keep half-inch.measured.toml",
)


def _size(words: str, metavar: str = "LENGTH") -> "OptionInfo":
    return typer.Option(metavar=metavar, help=words)


def measured(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: JobArgument,
    sets: Sets = None,
    *,
    over_wires: Annotated[str | None, _size("Value over wires.")] = None,
    wire: Annotated[str | None, _size("Their diameter; the wire to use if not given.")] = None,
    pitch_diameter: Annotated[str | None, _size("Itself, instead of over wires.")] = None,
    major: Annotated[str | None, _size("Diameter over the crests.")] = None,
    minor: Annotated[str | None, _size("Diameter over the roots.")] = None,
    point_diameter: Annotated[str | None, _size("Of the chamfer at the front.")] = None,
    chamfer_angle: Annotated[str | None, _size("To the axis.", "DEGREES")] = None,
    chamfer_length: Annotated[str | None, _size("Instead of its angle.")] = None,
    core: Annotated[str | None, _size("Web between the flutes, its diameter.")] = None,
    land: Annotated[str | None, _size("Width of a land along the arc.")] = None,
    heel_drop: Annotated[str | None, _size("Drop of the chamfer's relief at the heel.")] = None,
    thread_heel_drop: Annotated[
        str | None, _size("Drop of the thread's or crest's relief at the heel.")
    ] = None,
    shank: Annotated[str | None, _size("Diameter.")] = None,
    neck: Annotated[str | None, _size("Diameter.")] = None,
    square: Annotated[str | None, _size("Across flats.")] = None,
    square_length: Annotated[str | None, _size("From the rear end.")] = None,
    overall_length: Annotated[str | None, _size("Front to rear face.")] = None,
    thread_length: Annotated[str | None, _size("From the front to the end of the thread.")] = None,
    hardness: Annotated[str | None, _size("Rockwell C.", "HRC")] = None,
    compound: Annotated[
        float,
        typer.Option(help="Setting of the compound in degrees from square to the lathe's axis."),
    ] = 0.0,
    forget: Annotated[
        list[str] | None,
        typer.Option(metavar="SIZE", help="Take a value back, such as major; may be repeated."),
    ] = None,
    keep: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Keep the values there; by default beside a job file."),
    ] = None,
    units: TextUnits = None,
    as_json: AsJson = False,
) -> None:
    """Tell what measured values mean, and foretell the tap as it is.

    Each value, in mm or with its unit, gets its verdict, what is left to take, or what can still be
    saved. Beside lens-cell.toml all of them are kept in lens-cell.measured.toml, from where sheet,
    page and route show them; without values the command shows what is kept.
    """
    from tapmodel.report.measured_record import record_of
    from tapmodel.report.screen.measured import measured_page
    from tapmodel.report.units_wanted import units_of
    from tapmodel.run.kept import keep as keep_values
    from tapmodel.shop.measured.answer import answer_measured
    from tapmodel.shop.measured.judged import with_measured
    from tapmodel.shop.measured.verdicts import Standing
    from tapmodel.shop.wires.limits import COMPOUND, demand

    demand("--compound", compound, COMPOUND)
    given = dict(
        _given(
            {
                Size.OVERALL_LENGTH: overall_length,
                Size.SHANK: shank,
                Size.MAJOR: major,
                Size.THREAD_LENGTH: thread_length,
                Size.NECK: neck,
                Size.OVER_WIRES: over_wires,
                Size.PITCH_DIAMETER: pitch_diameter,
                Size.MINOR: minor,
                Size.CHAMFER_ANGLE: chamfer_angle,
                Size.CHAMFER_LENGTH: chamfer_length,
                Size.POINT_DIAMETER: point_diameter,
                Size.SQUARE: square,
                Size.SQUARE_LENGTH: square_length,
                Size.CORE: core,
                Size.LAND: land,
                Size.HEEL_DROP: heel_drop,
                Size.THREAD_HEEL_DROP: thread_heel_drop,
                Size.HARDNESS: hardness,
            },
            wire,
        )
    )
    forgotten = [_named(word) for word in forget or ()]
    settled, asked = designed(job, sets, units=units)
    wanted = units_of(asked, units)
    file, before = kept_in(job, keep)
    try:
        known = merged(settled, before, given, forgotten)
        answer = answer_measured(with_measured(settled, asked, known), compound, wanted)
    except NoWireError as error:
        error.units = wanted
        raise
    new = {size: found for size, found in known.pairs if size in given}
    if file is not None and (new or forgotten):
        keep_values(file, settled.name, new, forgotten)
    if as_json:
        print_json(record_of(answer, wanted))
    else:
        say(measured_page(answer, wanted, pen()))
    _say_where(file, known, changed=bool(new or forgotten))
    if any(one.standing is Standing.SCRAP for one in answer.judgements):
        raise typer.Exit(1)
    end(settled, wanted)


def _given(typed: Mapping[Size, str | None], wire: str | None) -> Iterator[tuple[Size, "Found"]]:
    """The values of the command line, each read as far as it can be without the tap."""
    from tapmodel.spec.measured.record import found_of

    if wire is not None and typed[Size.OVER_WIRES] is None:
        raise InputError("--wire", wire, "only beside --over-wires")
    for size, text in typed.items():
        if text is not None:
            over = wire if size is Size.OVER_WIRES else None
            yield size, found_of(size, text, size.option, over)


def _named(word: str) -> Size:
    plain = word.strip().lower().removeprefix("--").replace("-", "_").replace(" ", "_")
    try:
        return Size(plain)
    except ValueError:
        raise InputError("--forget", word, ", ".join(Size)) from None


def _say_where(file: Path | None, known: "Measured", *, changed: bool) -> None:
    """Whether the values are kept, and what else stands beside them."""
    if file is None:
        say("note: not kept, as no job file is named; --keep FILE keeps them", aside=True)
    elif changed:
        say(escaped(f"kept: {file}"), aside=True)
    for key in known.strange:
        say(
            escaped(f"note: {file} also has {key}, which is no size and is left as it is"),
            aside=True,
        )
