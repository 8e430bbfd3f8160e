"""What was measured of the tap that was made: verdicts, and the tap as it is beside its design."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial

from tapmodel.designing.codes import Code
from tapmodel.designing.record import TapDesign
from tapmodel.findings import Finding
from tapmodel.prediction.prediction import Prediction
from tapmodel.prediction.rubbing.record import Contact
from tapmodel.report.blocks import (
    Angle,
    Block,
    Chapter,
    Length,
    Paragraphs,
    Quantity,
    Row,
    Rows,
    Table,
    Telling,
    Torque,
    Words,
)
from tapmodel.report.chapters.in_the_hole.turning_it import place_of
from tapmodel.report.words.compound import REFERENCE
from tapmodel.report.words.findings import said
from tapmodel.report.words.measured import LABELS, all_as_wanted, as_wanted, judged, lacking
from tapmodel.report.words.wires import sentence
from tapmodel.shop.measured.answer import MeasuredAnswer, answer_measured
from tapmodel.shop.measured.read import OverWires
from tapmodel.shop.measured.verdicts import Standing
from tapmodel.shop.wires.answer import answer_for
from tapmodel.shop.wires.notes import Heed
from tapmodel.spec.measured.sizes import LENGTHS, Size
from tapmodel.words import Severity, Units

TITLE = "As measured"

_SIZES = {Code.MAJOR_SIZE, Code.PITCH_SIZE, Code.POINT_DRILL}
"""Findings that say of the tap as it is what the verdicts say."""


def chapter(design: TapDesign) -> Chapter:
    """Nothing where nothing was measured."""
    if design.measured is None or not design.measured.pairs:
        return Chapter("measured", TITLE, ())
    return chapter_of(answer_measured(design))


def chapter_of(answer: MeasuredAnswer) -> Chapter:
    """What was measured, what it means, and what the tap will do as it is."""
    fine = [one for one in answer.judgements if as_wanted(one)]
    told = (partial(judged, one) for one in answer.judgements if one not in fine)
    verdicts = (*told, *([all_as_wanted(fine)] if fine else []))
    blocks: list[Block] = [
        Rows(tuple(_rows(answer)), head="measured"),
        Paragraphs((*verdicts, *_across(answer))),
        *_compound(answer),
        *_as_it_is(answer),
    ]
    return Chapter("measured", TITLE, tuple(blocks))


def _across(answer: MeasuredAnswer) -> Iterator[Telling]:
    """Between which lands the wires can have lain, or that they can have before the flutes only."""
    if answer.over_wires is not None:
        for note in answer_for(answer.design).notes:
            if note.code in {Heed.ODD_FLUTES, Heed.EVEN_FLUTES}:
                yield partial(sentence, note)


def filled(chapters: Sequence[Chapter], design: TapDesign) -> list[Chapter]:
    """Chapters with what was measured in their fields; as they are where nothing was."""
    if design.measured is None or not design.measured.pairs:
        return list(chapters)
    known = _known(answer_measured(design))
    return [
        replace(chapter, blocks=tuple(_filled(block, known) for block in chapter.blocks))
        for chapter in chapters
    ]


def _known(answer: MeasuredAnswer) -> Mapping[Size, float]:
    """What was measured; over wires only where the wires are those that the sheet is about."""
    known = {one.size: one.value for one in answer.judgements}
    over = answer.over_wires
    if over is not None and abs(over.wire - answer_for(answer.design).wire) < _SAME_WIRE:
        known[Size.OVER_WIRES] = over.reading.measured
    return known


_SAME_WIRE = 1e-4
"""Wires that are told as the same [mm]."""


def _filled(block: Block, known: Mapping[Size, float]) -> Block:
    if not isinstance(block, Rows):
        return block
    return replace(block, rows=tuple(_with_found(row, known) for row in block.rows))


def _with_found(row: Row, known: Mapping[Size, float]) -> Row:
    """A length with the decimals of what is aimed at, or those of a micrometer."""
    if not row.measured or row.size is None or row.size not in known:
        return row
    digits = max(row.value.digits if isinstance(row.value, Length) else 0, 3)
    return replace(row, found=_quantity(row.size, known[row.size], digits))


def _quantity(size: Size, number: float, digits: int = 4) -> Quantity:
    if size in LENGTHS:
        return Length(number, digits)
    return Angle(number) if size is Size.CHAMFER_ANGLE else Words(f"{number:g} HRC")


def _rows(answer: MeasuredAnswer) -> Iterator[Row]:
    for one in answer.judgements:
        if one.size is Size.PITCH_DIAMETER and answer.over_wires is not None:
            yield from _over_wires(answer.over_wires)
        low, high = (None if end is None else Length(end, 4) for end in (one.low, one.high))
        yield Row(LABELS[one.size], _quantity(one.size, one.value), low, high)


def _over_wires(over: OverWires) -> Iterator[Row]:
    low, high = (None if end is None else Length(end, 4) for end in (over.low, over.high))
    yield Row("over wires", Length(over.reading.measured, 4), low, high)
    yield Row("the wires, diameter", Length(over.wire, 4))


def _compound(answer: MeasuredAnswer) -> list[Block]:
    """What is left to feed, for each usual setting of the compound."""
    for one in answer.judgements:
        reading = one.reading
        if reading is None or one.standing in {Standing.SCRAP, Standing.OF_USE} or not one.take:
            continue
        angles = dict(reading.infeed_at_compound) | {reading.compound: reading.infeed}
        lines = tuple((Words(f"{angle:g}°"), Length(feed, 4)) for angle, feed in angles.items())
        return [Table((f"compound, {REFERENCE}", "infeed to the target"), lines)]
    return []


def _as_it_is(answer: MeasuredAnswer) -> list[Block]:
    if answer.lacking is not None:
        return [Paragraphs((partial(lacking, answer.lacking),))]
    design, made = answer.design, answer.made
    if made is None or made.prediction is None:
        return []
    head = ("the tap", "as it is", "as designed")
    lines = tuple(_lines(made, made.prediction, design))
    risen = [one for one in answer.risen if one.code not in _SIZES]
    findings = [Paragraphs(tuple(partial(_finding, one) for one in risen))] if risen else []
    return [Table(head, lines, AS_IT_IS), *findings]


AS_IT_IS = "What it does as it stands now, the sizes that were not measured as designed"


def _finding(one: Finding, units: Units) -> str:
    word = one.severity.value.upper() if one.severity is not Severity.NOTE else "note"
    return f"{word} [{one.code}]: {said(one, units)}"


def _lines(
    made: TapDesign, foreseen: Prediction, design: TapDesign
) -> Iterator[tuple[Quantity, ...]]:
    """Each number of the tap as it is, and of its design if that is foretold."""
    now = dict(_numbers(made, foreseen))
    then = dict(_numbers(design, design.prediction)) if design.prediction else {}
    for name, quantity in now.items():
        yield Words(name), quantity, then.get(name, Words("–"))


def _numbers(design: TapDesign, foreseen: Prediction) -> Iterator[tuple[str, Quantity]]:
    band = foreseen.torque.band
    yield "torque, from least to most", Torque((band.low, band.high))
    yield "stop turning at", Torque((foreseen.stop_at,))
    breaks = foreseen.strength.breaks
    yield "breaks at", Torque((breaks.low, breaks.high))
    yield "breaks first", Words(place_of(foreseen.strength.governs))
    yield "rake at the crest", Angle(design.figures.rake_crest)
    yield "chip of each tooth", Length(design.figures.chip_thickness, 4)
    rubbing = foreseen.rubbing
    yield "crest rubs along", _rubs(rubbing.crest)
    yield "flanks rub along", _rubs(rubbing.flank)
    yield "chamfer rubs along", _rubs(rubbing.chamfer)
    if design.roughs:
        return
    gauge = foreseen.gauge
    yield "GO gauge", Words("enters" if gauge.go else "does not enter")
    yield "NO-GO gauge", Words("stays out" if gauge.no_go else "enters")
    yield "hole larger than the tap by, as usual", Length(gauge.oversize)
    # More than the reserve that the design tells: that counts on no hole larger than its tap.
    yield "wear until GO enters no more, that included", Length(max(gauge.wear_left, 0.0), 4)


def _rubs(contact: Contact) -> Quantity:
    return Words("binds") if contact.binds else Length(contact.rubbing_length, 2)
