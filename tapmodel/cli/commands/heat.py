"""`tapmodel heat`: hardening a tool steel, and carburising a mild one."""

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import AsJson, Sets, TextUnits, for_every_system
from tapmodel.cli.pen import pen
from tapmodel.cli.settled import designed, end
from tapmodel.cli.telling import print_json, tell_delivery
from tapmodel.errors import InputError, escaped
from tapmodel.spec.lengths import HOW, millimetres_of
from tapmodel.spec.temperatures import HOW as HOW_HOT
from tapmodel.spec.temperatures import celsius_of
from tapmodel.words import Units

if TYPE_CHECKING:
    from tapmodel.prediction.heat.record import Carburising

EXAMPLES = (
    "tapmodel heat O1 --section 12 --hardness 60",
    "tapmodel heat silver steel --temper 200",
    "tapmodel heat --carburise --hours 0.5 M10 --out out",
    "tapmodel heat --carburise --depth 0.3 --temperature 900 --surface-carbon 1.0",
)


def heat(  # noqa: PLR0913  (a command has as many options as its user needs)
    what: Annotated[
        list[str] | None,
        typer.Argument(
            metavar="[STEEL or JOB]",
            help="A tool steel; with --carburise a designation or .toml file, none for a flat.",
        ),
    ] = None,
    sets: Sets = None,
    *,
    section: Annotated[
        str | None,
        typer.Option(metavar="LENGTH", help="Thickness to harden, a round bar's diameter."),
    ] = None,
    hardness: Annotated[
        float | None, typer.Option(help="Wanted after tempering, Rockwell C.")
    ] = None,
    temper: Annotated[
        str | None,
        typer.Option(metavar="HEAT", help="Instead of --hardness: 200 or 400F."),
    ] = None,
    carburise: Annotated[
        bool, typer.Option("--carburise", help="Carbon that goes into mild steel.")
    ] = False,
    steel_carbon: Annotated[
        float | None, typer.Option(help="Carbon of the steel, mass %; 0.18 if not given.")
    ] = None,
    temperature: Annotated[
        str | None,
        typer.Option(metavar="HEAT", help="Of the box: 925 or 1700F; 925 if not given."),
    ] = None,
    hours: Annotated[float | None, typer.Option(help="Time at that heat.")] = None,
    depth: Annotated[
        str | None,
        typer.Option(metavar="LENGTH", help="Instead of --hours: wanted depth to 0.4 % carbon."),
    ] = None,
    surface_carbon: Annotated[
        float | None, typer.Option(help="Carbon at the surface, mass %; 1.1 if not given.")
    ] = None,
    out: Annotated[
        Path | None,
        typer.Option(
            help="Folder for a drawing of the carbon in the tooth, if wanted.",
            callback=for_every_system,
        ),
    ] = None,
    units: TextUnits = None,
    as_json: AsJson = False,
) -> None:
    """Harden and temper a tool steel, or carburise a mild one.

    Of a tool steel: from which heat it is quenched, how long it soaks, in what, at which heat it is
    tempered for a hardness, and whether the section hardens through.

    With --carburise: carbon under a flat surface, and in the tap's own tooth where a JOB is named.
    """
    words = " ".join(what or ())
    if not carburise:
        given = {
            "--steel-carbon": steel_carbon,
            "--temperature": temperature,
            "--hours": hours,
            "--depth": depth,
            "--surface-carbon": surface_carbon,
            "--set": sets[0] if sets else None,
            "--out": out,
        }
        _refuse(given, "only beside --carburise")
        _harden(words, section, hardness, temper, units or Units.MM, as_json=as_json)
        return
    beside = {"--section": section, "--hardness": hardness, "--temper": temper}
    _refuse(beside, "nothing beside --carburise")
    if not words:
        _refuse({"--set": sets[0] if sets else None, "--out": out}, "only beside a JOB")
    asked = _asked(steel_carbon, temperature, hours, surface_carbon, depth)
    _carburise(words, sets, asked, _length("--depth", depth), units, out=out, as_json=as_json)


def _harden(  # noqa: PLR0913  (what the command was told)
    steel: str,
    section: str | None,
    hardness: float | None,
    temper: str | None,
    units: Units,
    *,
    as_json: bool,
) -> None:
    from tapmodel.report.screen.heat import hardened_page
    from tapmodel.shop.heat.hardened import hardened, hardened_record

    if not steel:
        raise InputError("STEEL", "none", "a steel such as O1, or --carburise")
    if hardness is not None and temper is not None:
        raise InputError("--temper", temper, "either --temper or --hardness")
    found = hardened(steel, _length("--section", section), hardness, _heat("--temper", temper))
    if as_json:
        print_json(hardened_record(found))
    else:
        say(hardened_page(found, units, pen()))


def _asked(
    steel: float | None,
    temperature: str | None,
    hours: float | None,
    surface: float | None,
    depth: str | None,
) -> "Carburising":
    from tapmodel.shop.heat.asked import asked_carburising, usual_carburising

    if (hours is None) is (depth is None):
        given = "none" if hours is None else hours
        raise InputError("--hours", given, "either --hours or --depth")
    hot = _heat("--temperature", temperature)
    usual = usual_carburising()
    return asked_carburising(
        usual.steel if steel is None else steel,
        usual.surface if surface is None else surface,
        usual.celsius if hot is None else hot,
        usual.hours if hours is None else hours,
    )


def _carburise(  # noqa: PLR0913  (what the command was told)
    job: str,
    sets: list[str] | None,
    asked: "Carburising",
    depth: float | None,
    units: Units | None,
    *,
    out: Path | None,
    as_json: bool,
) -> None:
    from tapmodel.report.screen.heat import carburised_page
    from tapmodel.report.units_wanted import units_of
    from tapmodel.shop.heat.carburised import FOR_DRAWINGS, carburised_of, carburised_record

    settled, thread, wanted = None, None, units or Units.MM
    if job:
        settled, read = designed(job, sets, units=units, foretold=False, briefly=True)
        thread, wanted = settled.tap.thread, units_of(read, units)
    found = carburised_of(asked, thread, depth, FOR_DRAWINGS if out else 1.0)
    name = settled.designation if settled else ""
    delivered = None
    if settled and out:
        from tapmodel.run.carbon import deliver_carbon

        delivered = deliver_carbon(found, name, settled.name, out, wanted)
    if as_json:
        print_json(carburised_record(found, name))
    else:
        say(carburised_page(found, name, wanted, pen()))
    if delivered and out:
        for path in delivered["delivery"]["written"]:
            say(escaped(str(out / delivered["name"] / path)), aside=as_json)
        tell_delivery(delivered, "carburising")
    if settled:
        end(settled, wanted)


def _refuse(given: Mapping[str, object], allowed: str) -> None:
    for option, value in given.items():
        if value is not None:
            raise InputError(option, value, allowed)


def _length(option: str, text: str | None) -> float | None:
    if text is None:
        return None
    found = millimetres_of(text)
    if found is None:
        raise InputError(option, text, HOW)
    return found


def _heat(option: str, text: str | None) -> float | None:
    if text is None:
        return None
    found = celsius_of(text)
    if found is None:
        raise InputError(option, text, HOW_HOT)
    return found
