"""`tapmodel dividing`: turns and holes of a dividing head, turns and degrees of a rotary table."""

from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import AsJson, Sets
from tapmodel.cli.telling import print_json
from tapmodel.errors import InputError
from tapmodel.shop.dividing import PLATES, RATIO

if TYPE_CHECKING:
    from tapmodel.designing.record import TapDesign
    from tapmodel.shop.dividing_record import Means
    from tapmodel.spec.shop.dividing import Asked
    from tapmodel.spec.shop.rotary_tables import RotaryTable

EXAMPLES = (
    "tapmodel dividing 13",
    "tapmodel dividing 35deg --ratio 90 --plates 15-20,21,23",
    "tapmodel dividing 13 --table 90,2min",
    "tapmodel dividing my-tap.toml",
)

_FLATS = 4
"""Of the square."""


def dividing(  # noqa: PLR0913  (a command has as many options as its user needs)
    divisions: Annotated[
        str,
        typer.Argument(
            metavar="DIVISIONS",
            help="How many on the circle, or an angle: 35deg, 24min; or a JOB, whose flutes and "
            "square are divided with what its [shop] has.",
        ),
    ],
    sets: Sets = None,
    *,
    ratio: Annotated[
        int | None,
        typer.Option(
            help=f"Turns of the crank for one of the spindle, else the job's, else {RATIO}."
        ),
    ] = None,
    plates: Annotated[
        str | None,
        typer.Option(
            metavar="HOLES,HOLES,...",
            help="Circles on the plates, ranges too: 15-20,21,23; else the job's, else those of "
            "the usual three.",
        ),
    ] = None,
    table: Annotated[
        str | None,
        typer.Option(
            metavar="RATIO[,DIVISION]",
            help="A rotary table instead, or beside --plates: 90, or 90,2min with its dial.",
        ),
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Divide a circle with a dividing head or a rotary table."""
    from tapmodel.shop.dividing_record import record_on
    from tapmodel.spec.shop.counts import counts_for
    from tapmodel.spec.shop.dividing import ratio_for
    from tapmodel.spec.shop.hole_circles import CIRCLES
    from tapmodel.spec.shop.rotary_tables import table_for

    named = _Named(
        () if plates is None else counts_for("--plates", plates, CIRCLES),
        None if ratio is None else ratio_for("--ratio", ratio),
        None if table is None else table_for("--table", table),
    )
    asked = _asked(divisions)
    if asked is None:
        _of_job(divisions, sets, named, as_json=as_json)
    elif sets:
        raise InputError("--set", sets[0], "no --set without a JOB")
    elif as_json:
        print_json(record_on(named.means, asked))
    else:
        from tapmodel.report.screen.dividing import pages

        say(pages(named.means, [("", asked)]))


@dataclass(frozen=True, slots=True)
class _Named:
    """What the command names; nothing, where the job or the usual is meant."""

    plates: tuple[int, ...]
    ratio: int | None
    table: "RotaryTable | None"

    @property
    def means(self) -> "Means":
        """With what is usual for the rest."""
        from tapmodel.shop.dividing_record import Means

        head = self.table is None or bool(self.plates) or self.ratio is not None
        return Means(self.plates or PLATES, self.ratio or RATIO, self.table, head)

    def over(self, settled: "TapDesign") -> "_Named":
        """The same, the rest from a job."""
        from tapmodel.report.chapters.machines.dividing import table_of

        ratio = self.ratio or settled.number("shop.dividing_ratio")
        return _Named(
            self.plates or tuple(map(int, settled.numbers("shop.plates"))),
            None if ratio is None else int(ratio),
            self.table or table_of(settled),
        )


def _asked(text: str) -> "Asked | None":
    """Divisions or an angle; None where a job is named."""
    from tapmodel.spec.shop.dividing import asked_for

    try:
        return asked_for("DIVISIONS", text)
    except InputError as error:
        from tapmodel.cli.settled import is_job

        if is_job(text):
            return None
        how = f"{error.allowed}; or a JOB, a designation such as M10 or a .toml file"
        raise InputError("DIVISIONS", text, how) from None


def _of_job(text: str, sets: list[str] | None, named: _Named, *, as_json: bool) -> None:
    """Flutes and square of a tap, by what the command names, else by what its shop has."""
    from tapmodel.cli.settled import designed, end
    from tapmodel.report.units_wanted import units_of
    from tapmodel.shop.dividing_record import record_on
    from tapmodel.spec.shop.dividing import division

    settled, job = designed(text, sets, briefly=True)
    means = named.over(settled).means
    wanted = {"flutes": division(settled.tap.flutes.count), "square": division(_FLATS)}
    if as_json:
        print_json({name: record_on(means, asked) for name, asked in wanted.items()})
    else:
        from tapmodel.report.screen.dividing import pages

        say(pages(means, [(name.capitalize(), asked) for name, asked in wanted.items()]))
    end(settled, units_of(job))
