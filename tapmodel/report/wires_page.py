"""The answer about measuring over wires as a page of text."""

from tapmodel.report.blocks import Length
from tapmodel.report.screen.columns import columns
from tapmodel.report.units import shown_high, shown_low
from tapmodel.shop.wires.answer import WiresAnswer
from tapmodel.shop.wires.reading import Reading

Row = tuple[str, str]


def wires_page(answer: WiresAnswer) -> str:
    """Wire, limits of the measurement, and what a measured value means."""
    lines = [f"Over wires: {answer.asked.name}"]
    lines += [f"  {line}" for line in columns(_rows(answer))]
    if answer.reading:
        lines += ["", f"Measured {_mm(answer.reading.measured)}: {answer.reading.verdict.value}"]
        lines += [f"  {line}" for line in columns(_reading(answer.reading))]
    return "\n".join([*lines, "", *answer.notes])


def _rows(answer: WiresAnswer) -> list[Row]:
    groove, at_basic = answer.asked.groove, answer.at_basic
    rows = [
        ("wire", f"{_mm(answer.wire, 4)} (best {_mm(answer.best_wire, 4)})"),
        ("lead angle at the pitch diameter", f"{groove.lead_angle:.3f}°"),
        (f"over wires at {_mm(groove.pitch_diameter, 4)}", f"{_mm(at_basic.exact, 4)} exact"),
        ("  without regard to the lead", _beside(at_basic.simple, at_basic.exact)),
        ("  with the usual lead correction", _beside(at_basic.lead_corrected, at_basic.exact)),
    ]
    if answer.allowed:
        low, high = Length(answer.allowed.least), Length(answer.allowed.greatest)
        rows.insert(1, ("wires that suit", f"{shown_low(low)[0]} to {shown_high(high)[0]}"))
    if answer.measurement_min is not None and answer.measurement_max is not None:
        low, high = Length(answer.measurement_min, 4), Length(answer.measurement_max, 4)
        rows.append(("limits over wires", f"{shown_low(low)[0]} to {shown_high(high)[0]}"))
    return rows


def _reading(reading: Reading) -> list[Row]:
    setting = f"infeed to the aim, compound at {reading.compound:g}°"
    rows = [("pitch diameter", _mm(reading.pitch_diameter, 4)), (setting, _mm(reading.infeed, 4))]
    if reading.infeed_least is not None and reading.infeed_most is not None:
        span = f"{reading.infeed_least:.4f} to {_mm(reading.infeed_most, 4)}"
        rows.append(("  to stay within limits", span))
    rows += [
        (f"  the same, compound at {angle:g}°", _mm(feed, 4))
        for angle, feed in reading.infeed_at_compound
    ]
    return rows


def _beside(value: float, exact: float) -> str:
    return f"{_mm(value, 4)} ({(value - exact) * 1000:+.1f} µm)"


def _mm(value: float, digits: int = 3) -> str:
    return f"{round(value, digits) + 0.0:.{digits}f} mm"
