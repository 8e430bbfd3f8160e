"""`tapmodel dividing`: turns and holes of a dividing head."""

from typing import Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import AsJson
from tapmodel.cli.telling import print_json
from tapmodel.shop.dividing import PLATES, RATIO

EXAMPLES = (
    "tapmodel dividing 13",
    "tapmodel dividing 35deg --ratio 90 --plates 15-20,21,23",
    'tapmodel dividing "2 1/2deg" --json',
)


def dividing(
    divisions: Annotated[
        str,
        typer.Argument(
            metavar="DIVISIONS", help="How many on the circle, or an angle: 35deg, 24min."
        ),
    ],
    *,
    ratio: Annotated[int, typer.Option(help="Turns of the crank for one of the spindle.")] = RATIO,
    plates: Annotated[
        str | None,
        typer.Option(
            metavar="HOLES,HOLES,...",
            help="Circles on the plates, ranges too: 15-20,21,23; else those of the usual three.",
        ),
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Tell turns and holes of a dividing head."""
    from tapmodel.report.screen.dividing import dividing_page
    from tapmodel.shop.dividing_record import dividing_record
    from tapmodel.spec.shop.counts import counts_for
    from tapmodel.spec.shop.dividing import asked_for, ratio_for
    from tapmodel.spec.shop.hole_circles import CIRCLES

    asked = asked_for("DIVISIONS", divisions)
    circles = counts_for("--plates", plates, CIRCLES) if plates is not None else PLATES
    turns = ratio_for("--ratio", ratio)
    if as_json:
        print_json(dividing_record(asked, circles, turns))
    else:
        say(dividing_page(asked, circles, turns))
