"""Where a line of a chart jumps: what is not given is chosen anew between two of its values."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from tapmodel.comparing.variant import CHOSEN, Cell, Variant
from tapmodel.report.blocks import Length, Quantity, Words
from tapmodel.report.tools import cutter_of, drill_of
from tapmodel.report.units import Units, as_text

LABELS: Mapping[str, str] = {
    "hole.kind": "kind of hole",
    "hole.drill": "tap drill",
    "flutes.count": "number of flutes",
    "flutes.cutter_diameter": "cutter",
    "flutes.core_diameter": "core (web)",
    "chamfer.pitches": "chamfer in pitches",
}
"""What `CHOSEN` is called."""

_ALONG = 0.5
"""Share of the steps of a chart; what changes at more of them runs along with its value."""


@dataclass(frozen=True, slots=True)
class Jump:
    """Between two rows.

    Attributes:
        first, last: the rows, neighbours but for those between them that break a rule.
        text: where it is, and what is chosen anew there.
    """

    first: int
    last: int
    text: str


def jumps_of(
    variants: Sequence[Variant], values: Sequence[str], units: Units, *, whole: bool
) -> tuple[Jump, ...]:
    """Every jump among taps of rising values.

    Args:
        variants: one a row; those that break a rule are passed over.
        values: of the rows, in words.
        units: of the texts.
        whole: whether the values count something, so that nothing lies between two of them and
            nothing runs along.
    """
    rows = [row for row, variant in enumerate(variants) if not variant.errors]
    steps = [(variants[one].chosen, variants[other].chosen) for one, other in pairwise(rows)]
    most = len(steps) if whole else _ALONG * len(steps)
    jumping = [field for field in CHOSEN if 0 < sum(_anew(field, *step) for step in steps) <= most]
    found: list[Jump] = []
    for (first, last), step in zip(pairwise(rows), steps, strict=True):
        texts = [_text(field, *step, units) for field in jumping if _anew(field, *step)]
        if texts:
            where = f"Between {values[first]} and {values[last]} the rules choose anew"
            found.append(Jump(first, last, f"{where}: {', '.join(texts)}."))
    return tuple(found)


def _anew(field: str, before: Mapping[str, Cell], after: Mapping[str, Cell]) -> bool:
    """Whether rules choose it on both sides, and not alike."""
    return field in before and field in after and before[field] != after[field]


def _text(field: str, before: Mapping[str, Cell], after: Mapping[str, Cell], units: Units) -> str:
    new, old = (as_text(_quantity(field, chosen[field]), units) for chosen in (after, before))
    return f"{LABELS[field]} {new} instead of {old}"


def _quantity(field: str, value: Cell) -> Quantity:
    if not isinstance(value, int | float):
        return Words(str(value))
    match field:
        case "hole.drill":
            return drill_of(value)
        case "flutes.cutter_diameter":
            return cutter_of(value)
        case "flutes.core_diameter":
            return Length(value, 2)
        case _:
            return Words(f"{value:g}")
