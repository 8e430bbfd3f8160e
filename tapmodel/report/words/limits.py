"""What would be right, what is and what is allowed, as texts with units."""

from collections.abc import Callable, Mapping

from tapmodel.findings import Finding, Held, Limit
from tapmodel.report.units import in_words, range_in_words, torque_in_words
from tapmodel.report.words.sentence import judged, low
from tapmodel.words import Units

_MM, _NM = "mm", "N·m"


def expected(finding: Finding, units: Units = Units.MM) -> str:
    """What would be right, a length or torque in `units`."""
    limit = finding.limit
    if limit.held is not None:
        return RIGHT[limit.held](finding)
    return _sized(_nearest(judged(finding), limit), limit, units)


def actual(finding: Finding, units: Units = Units.MM) -> str:
    """What is, a length or torque in `units`."""
    found, limit = finding.actual, finding.limit
    if isinstance(found, str):
        return found
    if limit.held is Held.STRAIGHT_WALL:
        return f"{found:.2f} {limit.unit}"
    if limit.held is Held.OTHER_UNIT:
        return f"{found:.10g} {limit.unit}"
    if limit.held is not None:
        return f"{_united(found, '.4f', limit, units)} at the heel"
    return _sized(found, limit, units)


def allowed(finding: Finding, units: Units = Units.MM) -> str:
    """What is allowed, lengths and torques in `units`."""
    limit = finding.limit
    if limit.held is not None:
        return ROOM[limit.held](finding)
    if limit.low is not None and limit.high is not None:
        if limit.unit == _MM:
            return range_in_words(limit.low, limit.high, ".6g", units)
        return f"{limit.low:.6g} to {limit.high:.6g} {limit.unit}"
    side = "at most" if limit.low is None else "at least"
    return f"{side} {expected(finding, units)}"


def _nearest(found: float, limit: Limit) -> float:
    if limit.low is None or limit.high is None:
        ends = [end for end in (limit.low, limit.high) if end is not None]
        return ends[0] if ends else found
    return min(max(found, limit.low), limit.high)


def _sized(value: float, limit: Limit, units: Units) -> str:
    """A range needs a digit more, so that its ends are told apart."""
    digits = 5 if limit.low is None or limit.high is None else 6
    return _united(value, f".{digits}g", limit, units)


def _united(value: float, form: str, limit: Limit, units: Units) -> str:
    match limit.unit:
        case "mm":
            return in_words(value, form, units)
        case "N·m":
            return torque_in_words(value, units, form)
        case unit:
            return f"{value:{form}} {unit}"


def _always(text: str) -> Callable[[Finding], str]:
    return lambda _finding: text


RIGHT: Mapping[Held, Callable[[Finding], str]] = {
    Held.LAND: _always("less"),
    Held.LAND_BEHIND_MARGIN: _always("less"),
    Held.STRAIGHT_WALL: lambda finding: f"{low(finding):g} {finding.limit.unit}",
    Held.WHOLE_THREAD: _always("thread"),
    Held.LISTED_PAIR: _always("a listed pair"),
    Held.IN_STOCK: lambda finding: " or ".join(finding.values.words("stock")),
    Held.OTHER_UNIT: lambda finding: f"{finding.values.number('inches'):.10g}in",
}
"""What would be right where no number is the limit."""

ROOM: Mapping[Held, Callable[[Finding], str]] = {
    Held.LAND: _always("what the land between its flutes leaves room for"),
    Held.LAND_BEHIND_MARGIN: _always("what the land behind the margin leaves room for"),
    Held.STRAIGHT_WALL: lambda finding: (
        f"any rake by core or depth, {low(finding):g} {finding.limit.unit} only on the straight "
        "wall"
    ),
    Held.WHOLE_THREAD: _always("the whole thread"),
    Held.LISTED_PAIR: _always("any pair; limits by formula"),
    Held.IN_STOCK: lambda finding: f"in stock: {', '.join(finding.values.words('stock'))}",
    Held.OTHER_UNIT: lambda finding: (
        f"any length, about {finding.values.number('usual'):.4g} {finding.limit.unit} by rule"
    ),
}
"""What is allowed there."""
