"""The answer about measuring over wires as a page of text."""

from tapmodel.report.blocks import Growth, Length
from tapmodel.report.chapters.machines.over_wires import wire_name
from tapmodel.report.screen.chapter import span, wrapped
from tapmodel.report.screen.columns import columns
from tapmodel.report.units import MM_PER_INCH, Units, as_text, shown
from tapmodel.report.words.compound import ON_THE_SLIDE, REFERENCE, SWING, from_bed, setting
from tapmodel.report.words.wires import sentence, verdict
from tapmodel.shop.wires.answer import WiresAnswer
from tapmodel.shop.wires.notes import Heed
from tapmodel.shop.wires.reading import LEAST_WEAR, Reading, Verdict

Row = tuple[str, str]

_WEAR = "wear left, from what is measured to the least of the hole"
_SCRAP = f"scrap below, the hole's least and {LEAST_WEAR:.0%} of its tolerance"

STOPS = (Verdict.BELOW_ZONE, Verdict.TOO_SMALL)
"""At which nothing more is fed in."""


def wires_page(answer: WiresAnswer, units: Units = Units.MM) -> str:
    """Wire, limits of the measurement, and what a measured value means."""
    lines = [f"Over wires: {answer.asked.name}"]
    lines += [f"  {line}" for line in columns(answer_rows(answer, units))]
    first = [note for note in answer.notes if note.code is Heed.PAST_THE_FLANK]
    for note in first:
        lines += ["", *wrapped(sentence(note, units))]
    if answer.reading:
        lines += ["", *_reading(answer.reading, units)]
        if left_to_take(answer.reading) and answer.asked.thread:
            lines += ["", *wrapped(SWING[answer.asked.thread.hand])]
    after = [note for note in answer.notes if note not in first]
    notes = [line for note in after for line in wrapped(sentence(note, units))]
    return "\n".join([*lines, "", *notes])


def answer_rows(answer: WiresAnswer, units: Units) -> list[Row]:
    """Wire, angle and limits, each with its name."""
    groove, at_basic = answer.asked.groove, answer.at_basic
    rows = [(wire_name(answer), _text(answer.wire, units))]
    if answer.allowed:
        rows.append(
            ("wires that suit", _span(answer.allowed.least, answer.allowed.greatest, units))
        )
    rows += [
        ("best wire, lead allowed for", _text(answer.best_wire, units)),
        ("  conventional, P/2 / cos(half angle)", _text(answer.conventional_wire, units)),
        (
            f"helix (lead) angle at {_text(groove.pitch_diameter, units)}",
            f"{groove.lead_angle:.3f}°",
        ),
        (
            f"over wires at {_text(groove.pitch_diameter, units)}",
            f"{_text(at_basic.exact, units)} exact",
        ),
        ("  without regard to the lead", _beside(at_basic.simple, at_basic.exact, units)),
        (
            "  with the usual lead correction",
            _beside(at_basic.lead_corrected, at_basic.exact, units),
        ),
    ]
    if answer.measurement_min is not None and answer.measurement_max is not None:
        rows += _place(answer, units)
        rows.append(("target over wires", _text(answer.measurement_target, units)))
        limits = _span(answer.measurement_min, answer.measurement_max, units)
        rows.append(("limits over wires", limits))
    return [*rows, *_counts(answer.wire_counts, units)]


def _place(answer: WiresAnswer, units: Units) -> list[Row]:
    place = answer.asked.place
    if place is None:
        return []
    return [
        ("middle of the wires, from the front", _text(place.z, units)),
        ("  each turn behind that reads less by", _text(place.each_turn, units)),
    ]


def _counts(counts: float, units: Units) -> list[Row]:
    """How much a wire that is thicker than it is taken to be adds to the reading."""
    rows: list[Row] = []
    metric, inches = shown(Growth(counts), Units.BOTH)
    if units is not Units.INCH:
        rows.append(("1 µm more of wire adds", f"{metric} to the reading"))
    if units is not Units.MM:
        rows.append(("0.0001 in more of wire adds", f"{inches} to the reading"))
    return rows


def reading_rows(reading: Reading, units: Units) -> list[Row]:
    """Pitch diameter that a measured value shows, and the wear that it leaves."""
    rows = [("pitch diameter", _text(reading.pitch_diameter, units))]
    if reading.verdict is not Verdict.TOO_LARGE:
        scrap = reading.verdict is Verdict.TOO_SMALL
        wear = (
            (_WEAR, None if scrap else reading.wear_left),
            (_SCRAP, reading.scrap_below),
        )
        rows += [(label, _text(size, units)) for label, size in wear if size is not None]
    return rows


def _reading(reading: Reading, units: Units) -> list[str]:
    lines = [f"Measured {_text(reading.measured, units)}: {verdict(reading, units)}"]
    lines += [f"  {line}" for line in columns(reading_rows(reading, units))]
    if reading.verdict in STOPS:
        return lines
    return [*lines, *_infeed(reading, units)]


def left_to_take(reading: Reading) -> bool:
    """Whether the slide is to be fed in any more."""
    return reading.verdict not in STOPS and reading.infeed > 0


def infeed_rows(reading: Reading, units: Units) -> list[Row]:
    """What is left to feed in at the setting of the compound."""
    rows = [("infeed to the target", _text(reading.infeed, units))]
    if reading.infeed_least is not None and reading.infeed_most is not None:
        span = _span(reading.infeed_least, reading.infeed_most, units)
        rows.append(("to stay within limits", span))
    return rows


COMPOUND_HEAD = (f"top slide (compound), {REFERENCE}", ON_THE_SLIDE, "infeed to the target")


def compound_lines(reading: Reading, units: Units) -> list[tuple[str, str, str]]:
    """The infeed at every usual setting of the compound, under `COMPOUND_HEAD`."""
    return [
        (f"{angle:g}°", f"{from_bed(angle):g}°", _text(feed, units))
        for angle, feed in reading.infeed_at_compound
    ]


TARGET_REACHED = "The target is reached: no infeed is left to take."


def _infeed(reading: Reading, units: Units) -> list[str]:
    if not left_to_take(reading):
        return [f"  {TARGET_REACHED}"]
    return [
        "",
        f"Compound at {setting(reading.compound)}:",
        *(f"  {line}" for line in columns(infeed_rows(reading, units))),
        *(f"  {line}" for line in columns([COMPOUND_HEAD, *compound_lines(reading, units)])),
    ]


def _beside(value: float, exact: float, units: Units) -> str:
    """A value, and by how much it exceeds the exact one."""
    more = value - exact
    off = {
        Units.MM: f"{more * 1000:+z.1f} µm",
        Units.INCH: f"{more / MM_PER_INCH:+z.6f} in",
        Units.BOTH: f"{more * 1000:+z.1f} µm",
    }
    return f"{_text(value, units)}, {off[units]}"


def _span(low: float, high: float, units: Units) -> str:
    """Limits, rounded into themselves."""
    return span(Length(low, 4), Length(high, 4), units)


def _text(value: float, units: Units) -> str:
    return as_text(Length(value, 4), units)
