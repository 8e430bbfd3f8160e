"""Every field at values that nobody can mean: designed, or refused with a number, never a crash."""

import math
import re
from collections.abc import Iterator, Mapping

import pytest

from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError, NoTapError
from tapmodel.report.words.limits import actual
from tapmodel.run.record.compose import design_record
from tapmodel.spec.job import field_names
from tapmodel.spec.job_file import checked
from tapmodel.spec.overrides import apply_values
from tapmodel.words import Severity

VALUES = (
    *(1e-300, 1e-15, 1e-9, 1e-6, 1e-4, 0.01, 0.1, 1.0, 8.0, 45.0, 89.9999, 500.0, 2000.0, 1e9),
    *(0.0, -1e-9, -1.0, -1000.0, math.nan, math.inf, -math.inf),
)
WORDS = {
    "name",
    "units",
    "report.projection",
    "shop.relief_by",
    "shop.mill_control",
    "shop.index",
    "hole.class",
    "hole.material",
    "tap.material",
    "chamfer.form",
    "thread.tap_class",
    "designation",
}
NUMBERS = [
    name
    for name in field_names()
    if name not in WORDS
    and not name.endswith(("kind", "applies_to", "must_pass", "drills", "cutters", "tools"))
]


def judged(table: Mapping[str, object]) -> tuple[TapDesign | None, list[str]]:
    """The design if there is one, and what must be a number in all that refuses it."""
    try:
        design = settle(checked(table))
    except InputError as error:
        return None, [error.allowed]
    except NoTapError as error:
        return None, [actual(error.finding)]
    return design, [actual(f) for f in design.findings if f.severity is Severity.ERROR]


def floats(part: object) -> Iterator[float]:
    """Every float in a record."""
    if isinstance(part, float):
        yield part
    elif isinstance(part, Mapping):
        for value in part.values():
            yield from floats(value)


# Each value on one of them, and on the others for the next fields.
SIZES = ("M10", "M2", "M30x1")


@pytest.mark.parametrize("field", NUMBERS)
def test_an_extreme_value_is_designed_or_refused_with_a_number(field: str) -> None:
    for place, value in enumerate(VALUES, NUMBERS.index(field)):
        designation = SIZES[place % len(SIZES)]
        whole = field == "flutes.count" and math.isfinite(value)
        pair = (field, int(value) if whole else value)
        design, refusals = judged(apply_values({"designation": designation}, [pair]))
        assert design is not None or refusals
        assert all(re.search(r"\d", text) for text in refusals), (field, value, refusals)
        if design is not None:
            assert all(map(math.isfinite, floats(design_record(design)))), (field, value)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("blank.rear_chamfer=1e-5", "rear-chamfer-size"),
        ("blank.rear_centre=1e-4", "rear-centre-size"),
        ("blank.front_centre=1e-4", "front-centre-size"),
        ("blank.neck_length=1e-6", "neck-length-size"),
        ("flutes.cutter_diameter=1e-300", "cutter-size"),
        ("flutes.cutter_diameter=0.01", "cutter-size"),
        ("blank.square_across_flats=1e-9", "square-slim"),
        ("blank.square_length=1e-9", "square-length"),
    ],
)
def test_what_nobody_can_make_is_refused(text: str, code: str) -> None:
    field, _, value = text.partition("=")
    design = settle(checked(apply_values({"designation": "M10"}, [(field, float(value))])))
    errors = {f.code for f in design.findings if f.severity is Severity.ERROR}
    assert code in errors


def test_a_share_of_the_land_near_nothing_is_no_wish() -> None:
    for share in (1e-15, 0.04, 0.96):
        with pytest.raises(InputError, match=r"at least 0\.05, at most 0\.95"):
            checked({"designation": "M10", "flutes": {"land_share": share}})
    checked({"designation": "M10", "flutes": {"land_share": 0.05}})
