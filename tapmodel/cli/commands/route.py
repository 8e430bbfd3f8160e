"""`tapmodel route`: the way through the shop, from bar to finished tap."""

from pathlib import Path
from typing import Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import (
    AsJson,
    Fix,
    JobArgument,
    NoStrength,
    PaperSize,
    Sets,
    TextUnits,
    for_every_system,
)
from tapmodel.cli.pen import pen
from tapmodel.cli.settled import designed, end
from tapmodel.cli.telling import print_json, tell_delivery
from tapmodel.errors import InputError, escaped
from tapmodel.words import Index

EXAMPLES = (
    "tapmodel route M18x0.75",
    'tapmodel route M10 --out out --gcode --index "by hand"',
    "tapmodel route 3/8-16 --units inch --out out --paper Letter",
    "tapmodel route M18x0.75 --price 140 --weeks 3 --rate 45",
)


def _index_named(text: str) -> Index:
    word = " ".join(text.lower().replace("-", " ").split())
    try:
        return Index(word)
    except ValueError:
        raise InputError("--index", text, '"axis" or "by hand"') from None


def route(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: JobArgument,
    out: Annotated[
        Path | None,
        typer.Option(
            help="Folder for results: writes the route as PDF, too.",
            callback=for_every_system,
        ),
    ] = None,
    sets: Sets = None,
    *,
    fix: Fix = False,
    no_strength: NoStrength = False,
    gcode: Annotated[
        bool | None,
        typer.Option(
            "--gcode/--no-gcode",
            help="With --out: flutes and square as programs for a mill (.ngc), too; by default "
            'where shop.mill_control is "cnc", or nothing is said of the shop.',
        ),
    ] = None,
    index: Annotated[
        Index | None,
        typer.Option(
            help="What turns the work in the programs: the mill's A axis, or you at each stop, by "
            "hand; by default as shop.index says.",
            parser=_index_named,
            metavar="[axis|by hand]",
        ),
    ] = None,
    price: Annotated[
        float | None, typer.Option(help="Of the tap if it were bought: make or buy is told.")
    ] = None,
    weeks: Annotated[float | None, typer.Option(help="Until a bought one would be there.")] = None,
    rate: Annotated[
        float | None, typer.Option(help="Of an hour in the shop; by default shop.rate.")
    ] = None,
    bar_price: Annotated[float | None, typer.Option(help="Of a metre of bar.")] = None,
    cutter_price: Annotated[
        float | None, typer.Option(help="Of a ball-nose cutter that is not on hand.")
    ] = None,
    paper: PaperSize = None,
    units: TextUnits = None,
    as_json: AsJson = False,
) -> None:
    """Tell how the tap is made, operation by operation.

    Each has its machine, what holds the work, tool, settings, speed and feed, what is measured
    before the next one, what can hurt, and why it stands where it does. With --out the same is
    written as PDF, with boxes to tick and fields to write in, and flutes and square as programs for
    a mill, unless it reads none. Prove them in air first. Behind the operations stand their hours,
    their cost against a price that is typed, and what each symptom in the hole means.
    """
    from tapmodel.report.chapters.measured import filled
    from tapmodel.report.look_wanted import look_of
    from tapmodel.report.route.cost import chapter as cost_chapter
    from tapmodel.report.route.order import afterwards, chapters_of, route_of
    from tapmodel.report.screen.route import route_page
    from tapmodel.run.route import deliver_route, route_record
    from tapmodel.shop.cost.cost import Prices, cost_of, cost_record
    from tapmodel.shop.gcode.wanted import index_of, programs_wanted

    if gcode and out is None:
        raise InputError("--gcode", "without --out", "--out with the folder for the programs")
    settled, asked = designed(job, sets, fix=fix, units=units, foretold=not no_strength, made=True)
    look = look_of(asked, units, paper)
    operations = route_of(settled)
    cost = cost_of(settled, Prices(price, weeks, rate, bar_price, cutter_price))
    chapters = tuple(filled(chapters_of(operations), settled))
    after = (cost_chapter(cost, operations), *afterwards(settled))
    if as_json:
        print_json(route_record(settled, operations, look.units) | {"cost": cost_record(cost)})
    else:
        say(route_page(settled, (*chapters, *after), look.units, pen()))
    if out is not None:
        wanted = programs_wanted(settled) if gcode is None else gcode
        programs = (index or index_of(settled)) if wanted else None
        record = deliver_route(settled, (chapters, after), out, look, programs)
        for path in record["delivery"]["written"]:
            say(escaped(str(out / settled.name / path)), aside=as_json)
        tell_delivery(record)
    end(settled, look.units)
