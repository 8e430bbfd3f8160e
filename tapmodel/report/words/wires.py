"""Sentences that go with a measurement over wires."""

from collections.abc import Callable, Mapping

from tapmodel.report.blocks import Length
from tapmodel.report.units import Units, as_text
from tapmodel.report.words.compound import HALFWAY, ON_THE_SLIDE, from_bed
from tapmodel.shop.wires.notes import Heed, WireNote
from tapmodel.shop.wires.reading import Reading, Verdict
from tapmodel.values import Values

_Lengths = Callable[[float, int], str]
"""A length [mm] with so many decimals in the reader's units."""


def sentence(note: WireNote, units: Units = Units.MM) -> str:
    """What is to be heeded, in the reader's units."""
    return _SENTENCES[note.code](note.values, lambda mm, digits: as_text(Length(mm, digits), units))


def verdict(reading: Reading, units: Units = Units.MM) -> str:
    """What a measured value means, with the wear that is left where that settles it."""
    if reading.verdict is not Verdict.BELOW_ZONE or reading.wear_left is None:
        return reading.verdict.value
    left = as_text(Length(reading.wear_left, 4), units)
    return f"below the tap's zone, {left} of wear left: stop"


def _thin(values: Values, lengths: _Lengths) -> str:
    return (
        f"Measuring wires as thin as {lengths(values.number('wire'), 3)} are hardly to be had: "
        "measure the pitch diameter by its shadow, under a toolmaker's microscope or on a profile "
        "projector."
    )


def _odd_flutes(values: Values, _lengths: _Lengths) -> str:
    return (
        f"With {values.number('count'):g} flutes every land faces a flute: measure over wires "
        "before the flutes are milled."
    )


def _even_flutes(values: Values, _lengths: _Lengths) -> str:
    return (
        f"With {values.number('count'):g} flutes the lands stand opposite each other: measure "
        "before the flutes are milled, or across two lands at their cutting edges before any "
        "thread relief."
    )


def _none_on_hand(values: Values, lengths: _Lengths) -> str:
    text = (
        "None of the wires on hand suits this thread: get three alike within the range, such as "
        f"{lengths(values.number('wire'), 4)}."
    )
    if "meant" in values:
        text += f" Their sizes may stand in the other unit: then write {values.word('meant')}."
    return text


def _not_the_best(values: Values, lengths: _Lengths) -> str:
    return (
        f"The best wire, {lengths(values.number('best'), 4)}, does not suit: it has to stand "
        f"{lengths(values.number('air'), 3)} clear of the crests at the lower limit, or the anvils "
        "rest on them, and to touch below their corners at the upper one."
    )


def _crests_too_low(values: Values, lengths: _Lengths) -> str:
    return (
        f"The best wire, {lengths(values.number('best'), 4)}, does not suit: it would touch at the "
        f"pitch diameter, {lengths(values.number('pitch_diameter'), 4)}, and the flanks of this "
        f"thread end at {lengths(values.number('corner'), 3)}. A wire from the middle of the range "
        "touches well inside the corners of the crests."
    )


def _goes_before(values: Values, lengths: _Lengths) -> str:
    low, high = (lengths(values.number(end), 4) for end in ("low", "high"))
    taps = f"{values.number('taps'):g}"
    return (
        f"Tap {values.number('number'):g} of {taps} does not finish the thread: it has no wear "
        "reserve, and no scrap limit by the hole. Its own zone of the pitch diameter is "
        f"{low} to {high}; tap {taps} cuts to size."
    )


def _off_the_pitch_line(values: Values, lengths: _Lengths) -> str:
    return (
        "The wire to use is not the best one: each degree by which the flank angle is wrong "
        f"changes the reading by {lengths(values.number('error'), 3)}."
    )


def _two_wires(values: Values, lengths: _Lengths) -> str:
    return (
        "Two wires give the same value as three, but lie half a pitch apart along the axis, "
        f"{lengths(values.number('offset'), 3)}: each degree that the tap stands askew between the "
        f"anvils is {lengths(values.number('error'), 3)} in the reading, where a third wire holds "
        "it straight."
    )


def _even_starts(values: Values, _lengths: _Lengths) -> str:
    return (
        f"With {values.number('starts'):g} starts a groove lies straight across from every groove: "
        "two wires measure as three do."
    )


def _past_the_flank(values: Values, _lengths: _Lengths) -> str:
    angle, limit = values.number("compound"), values.number("limit")
    if angle > HALFWAY:
        return f"{angle:g}° is {ON_THE_SLIDE}? Then write {from_bed(angle):g}."
    return (
        f"The compound at {angle:g}° from square to the axis is swung past the flank angle of "
        f"{limit:g}°: the trailing flank is left in steps; set it to {limit:g}° or less."
    )


_SENTENCES: Mapping[Heed, Callable[[Values, _Lengths], str]] = {
    Heed.THIN_WIRE: _thin,
    Heed.ODD_FLUTES: _odd_flutes,
    Heed.EVEN_FLUTES: _even_flutes,
    Heed.NONE_ON_HAND: _none_on_hand,
    Heed.NOT_THE_BEST: _not_the_best,
    Heed.CRESTS_TOO_LOW: _crests_too_low,
    Heed.OFF_THE_PITCH_LINE: _off_the_pitch_line,
    Heed.TWO_WIRES: _two_wires,
    Heed.EVEN_STARTS: _even_starts,
    Heed.GOES_BEFORE: _goes_before,
    Heed.PAST_THE_FLANK: _past_the_flank,
}
