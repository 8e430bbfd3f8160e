"""What the rules found, as the page lists it, and what mends it at one press."""

from collections.abc import Mapping
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.findings import Bound, Cure, Finding, gravest_first
from tapmodel.report.units import Units
from tapmodel.report.view.controls.groups import named_in_full
from tapmodel.report.view.judged import SIGNS
from tapmodel.report.words.cures import value_text
from tapmodel.report.words.findings import said, what
from tapmodel.report.words.limits import actual, allowed
from tapmodel.report.words.worsened import cost

Value = float | str | None


@dataclass(frozen=True, slots=True)
class Remedy:
    """A cure that can be pressed.

    Attributes:
        text: what it sets.
        cost: what else is found then; empty for nothing.
        values: laid over the job; None for a field that is given no more.
    """

    text: str
    cost: str
    values: Mapping[str, Value]


@dataclass(frozen=True, slots=True)
class Found:
    """A finding as the page lists it.

    Attributes:
        code: stable short name of the rule.
        weight: "error", "warning" or "note", and the sign that stands for it.
        said: what is wrong, one sentence.
        what: the same, ending in what to change, for a page that changes nothing.
        numbers: what is, and what is allowed.
        source: whose rule it is.
        field: that is judged.
        cures: best first.
    """

    code: str
    weight: str
    sign: str
    said: str
    what: str
    numbers: str
    source: str
    field: str
    cures: tuple[Remedy, ...]


def findings_of(design: TapDesign, units: Units) -> tuple[Found, ...]:
    """All that was found, the gravest first."""
    return tuple(_found(finding, units) for finding in gravest_first(design.findings))


def _found(finding: Finding, units: Units) -> Found:
    return Found(
        code=finding.code,
        weight=finding.severity.value,
        sign=SIGNS[finding.severity],
        said=said(finding, units),
        what=what(finding, units),
        numbers=f"is {actual(finding, units)}; allowed {allowed(finding, units)}",
        source=str(finding.source),
        field=finding.field,
        cures=tuple(_remedy(cure, units) for cure in finding.cures),
    )


def _remedy(cure: Cure, units: Units) -> Remedy:
    values: dict[str, Value] = {}
    texts: list[str] = []
    for setting in cure.settings:
        values |= dict.fromkeys(setting.replaces)
        values[setting.field] = setting.value
        bound = "to" if setting.bound is Bound.EXACTLY else setting.bound.value
        texts.append(f"{named_in_full(setting.field)} {bound} {value_text(setting, units)}")
    return Remedy(f"Set {' and '.join(texts)}", cost(cure, units), values)
