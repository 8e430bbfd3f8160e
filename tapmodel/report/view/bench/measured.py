"""Measured sizes and what they mean, as the page asks for it at the machine."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError, NoWireError
from tapmodel.report.blocks import Length
from tapmodel.report.chapters.measured import chapter_of
from tapmodel.report.screen.chapter import span
from tapmodel.report.units import Units, in_words, shown_high
from tapmodel.report.view.chapter import ShownChapter, shown_chapter
from tapmodel.report.view.judged import Judged, judged_as
from tapmodel.report.words.compound import SWING
from tapmodel.report.words.measured import LABELS, judged
from tapmodel.shop.measured.answer import MeasuredAnswer
from tapmodel.shop.measured.read import OverWires
from tapmodel.shop.measured.verdicts import Judgement, Standing, Way
from tapmodel.shop.measured.zones import Wanted, wanted
from tapmodel.shop.wires.answer import WiresAnswer, answer_for
from tapmodel.spec.measured.sizes import LENGTHS, Size
from tapmodel.words import Severity

_FORM = ".4f"


@dataclass(frozen=True, slots=True)
class SizeView:
    """A size that can be measured.

    Attributes:
        key: its name in the file.
        label: as papers call it.
        aim: as designed, with its limits.
        unit: behind the box; empty for a length, which takes its own.
        judged: what the measured one means; None where none was.
        wrong: why what was typed cannot be used; empty where it can.
    """

    key: str
    label: str
    aim: str
    unit: str
    judged: Judged | None
    wrong: str


@dataclass(frozen=True, slots=True)
class MeasuredView:
    """What was measured, and the tap as it is.

    Attributes:
        sizes: of the tap, in the order of the work.
        chapter: as papers tell it; None where nothing was measured.
        notes: what else to heed.
        wire_wrong: why the wires that were typed cannot be used; empty where they can.
    """

    sizes: tuple[SizeView, ...]
    chapter: ShownChapter | None
    notes: tuple[str, ...]
    wire_wrong: str


WIRES = "wire"
"""The box for the diameter of the wires."""


def measured_view(
    design: TapDesign,
    answer: MeasuredAnswer | None,
    units: Units,
    wrong: Mapping[str, InputError] = MappingProxyType({}),
) -> MeasuredView:
    """Every size of the tap with what it is to be, and the answer of `tapmodel measured`.

    Args:
        design: of the tap.
        answer: None where nothing was measured.
        units: of the reader.
        wrong: why what stands in a box cannot be used, by its size or `WIRES`.
    """
    found = {one.size: one for one in answer.judgements} if answer else {}
    if answer and answer.over_wires is not None:
        found[Size.OVER_WIRES] = found.pop(Size.PITCH_DIAMETER)
    aims = wanted(design)
    over = _over_wires(design, answer)
    chapter = shown_chapter(chapter_of(answer), units) if answer and found else None
    feeds = any(one.way is Way.SLIDE and one.standing is Standing.TO_TAKE for one in found.values())
    return MeasuredView(
        sizes=tuple(
            SizeView(
                size.value,
                LABELS[size],
                _told_over(over, units)
                if size is Size.OVER_WIRES and over
                else _aim(size, aims[size], units),
                "" if size in LENGTHS else "°" if size is Size.CHAMFER_ANGLE else "HRC",
                _size_judged(found.get(size), units),
                _wrong(wrong.get(size)),
            )
            for size in _boxes(aims, over)
        ),
        chapter=chapter,
        notes=(SWING[design.tap.thread.hand],) if feeds else (),
        wire_wrong=_wrong(wrong.get(WIRES)),
    )


def sizes_of(design: TapDesign) -> tuple[Size, ...]:
    """Every size that the tap has a box for."""
    return _boxes(wanted(design), _over_wires(design, None))


def _boxes(aims: Mapping[Size, Wanted], over: OverWires | WiresAnswer | None) -> tuple[Size, ...]:
    return tuple(size for size in Size if size in aims or (size is Size.OVER_WIRES and over))


_NAMES = {
    f"{Size.OVER_WIRES}: wire": "the wires, diameter",
    **{size.value: label for size, label in LABELS.items()},
}
"""What fields of refusals are called at the boxes."""


def at_box(error: InputError) -> InputError:
    """A refusal that names boxes by their labels instead of sizes."""
    both = " together with "
    called = both.join(_NAMES.get(field, field) for field in error.field.split(both))
    return type(error)(called, error.value, error.allowed)


def _wrong(error: InputError | None) -> str:
    return "" if error is None else str(at_box(error))


def _over_wires(design: TapDesign, answer: MeasuredAnswer | None) -> OverWires | WiresAnswer | None:
    """What to read over the wires that were told, else over those to use; None where none suits."""
    if answer and answer.over_wires:
        return answer.over_wires
    try:
        return answer_for(design)
    except NoWireError:
        return None


def _told_over(over: OverWires | WiresAnswer, units: Units) -> str:
    """Limits, and over which wires they hold."""
    if isinstance(over, WiresAnswer):
        one = Wanted(over.measurement_target, over.measurement_min, over.measurement_max)
    else:
        one = Wanted(over.aim, over.low, over.high)
    return f"{_aim(Size.OVER_WIRES, one, units)}, over {in_words(over.wire, _FORM, units)}"


def _aim(size: Size, one: Wanted, units: Units) -> str:
    if size not in LENGTHS:
        return f"{one.aim:.4g}{'°' if size is Size.CHAMFER_ANGLE else ' HRC'}"
    if one.low is not None and one.high is not None:
        return span(Length(one.low, 4), Length(one.high, 4), units)
    if one.high is not None:
        most = " = ".join(shown_high(Length(one.high, 4), units))
        return f"{in_words(one.aim, _FORM, units)}, at most {most}"
    return in_words(one.aim, _FORM, units)


_STANDING = {
    Standing.SCRAP: Severity.ERROR,
    Standing.OF_USE: Severity.WARNING,
    Standing.TO_TAKE: Severity.NOTE,
    Standing.NO_LIMITS: Severity.NOTE,
}
"""How grave a standing is; in limits is fine."""


def _size_judged(one: Judgement | None, units: Units) -> Judged | None:
    if one is None:
        return None
    text = judged(one, units).removeprefix(f"{LABELS[one.size]}: ")
    return judged_as(_STANDING.get(one.standing), text[:1].upper() + text[1:])
