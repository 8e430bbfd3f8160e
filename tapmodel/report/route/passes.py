"""The passes of the threading tool: infeed, dial, and what to expect over wires after the last."""

from functools import partial

from tapmodel.designing.record import TapDesign
from tapmodel.errors import NoWireError
from tapmodel.report.blocks import (
    Area,
    Block,
    Length,
    Paragraphs,
    Quantity,
    Row,
    Rows,
    Table,
    Telling,
    Told,
    Words,
)
from tapmodel.report.units import in_words
from tapmodel.report.words.dials import ONE_WAY, dial_text, read_text
from tapmodel.shop.compound import along_compound
from tapmodel.shop.threading.over_wires import after_pass
from tapmodel.shop.threading.passes import (
    CHIP,
    DEEPEST,
    Kind,
    Pass,
    Passes,
    deeper_by,
    thread_passes,
)
from tapmodel.shop.wires.answer import WiresAnswer, answer_for
from tapmodel.spec.shop.dials import Dial, dial_of
from tapmodel.standards.inches import MM
from tapmodel.tap.tap import TapThread
from tapmodel.words import Units

CAPTION = "Passes, in all from touching the blank"

TOLD_LAST = 3
"""Passes with infeed that are measured after, the last ones."""

_SHORT = 0.5
"""How much the top slide is set short of the flank [deg]; common practice."""

_STEEP = 20.0
"""Flanks that lean less than this squeeze a tool that is fed straight in [deg]."""

_STEP = {Units.MM: 0.01, Units.INCH: 0.0005 * MM, Units.BOTH: 0.01}
"""Of the nose, for which the infeed is told: 0.01 mm, or half a thousandth of an inch [mm]."""

_LINES = 24
"""Of a table; one is never parted between two columns of the paper."""


def passes(design: TapDesign) -> tuple[Block, ...]:
    """Table of the passes, readings to expect, and what they hold for."""
    thread = design.tap.thread
    found = thread_passes(thread)
    if found is None:
        return ()
    cross, top = (_dial(design, field) for field in ("shop.cross_slide", "shop.top_slide"))
    return (
        Rows(_summary(found, thread)),
        *_tables(found, thread, cross, top),
        *_over_wires(design, found),
        Paragraphs(_notes(found, thread, cross, top)),
    )


def _dial(design: TapDesign, field: str) -> Dial | None:
    text = design.text(field)
    return None if text is None else dial_of(text, cross=True)


def _summary(found: Passes, thread: TapThread) -> tuple[Row, ...]:
    nose = "radius" if thread.rounded_root else "flat"
    return (
        Row("passes", Words(_counted(found))),
        Row("area of each chip but the light ones", Area(found.chip, 3)),
        Row(partial(_narrower, nose), Told(partial(_deeper, deeper_by(thread)))),
    )


def _counted(found: Passes) -> str:
    light, rough = found.count(Kind.LIGHT), found.count(Kind.EQUAL, Kind.DEEPEST)
    return f"{len(found.passes)}: {rough}, {light} light, 1 without infeed"


def _narrower(nose: str, units: Units) -> str:
    step = in_words(_STEP[units], "g|.4f", units)
    return f"a nose whose {nose} is ground {step} smaller goes deeper by"


def _deeper(each: float, units: Units) -> str:
    return in_words(_STEP[units] * each, ".4f", units)


def _tables(
    found: Passes, thread: TapThread, cross: Dial | None, top: Dial | None
) -> tuple[Table, ...]:
    angle = thread.flank_angle - _SHORT
    head = ["pass", "infeed, square", f"top slide at {angle:g}°"]
    if cross:
        head.insert(2, "cross slide")
    lines = tuple(
        _line(number, one.infeed, angle, cross, top)
        for number, one in enumerate(found.passes, start=1)
    )
    return tuple(
        Table(tuple(head), lines[first : first + _LINES], CAPTION if first == 0 else "")
        for first in range(0, len(lines), _LINES)
    )


def _line(
    number: int, infeed: float, angle: float, cross: Dial | None, top: Dial | None
) -> tuple[Quantity, ...]:
    swung = along_compound(infeed, angle)
    cells: list[Quantity] = [Words(str(number)), Length(infeed)]
    if cross:
        cells.append(Words(read_text(cross, infeed)))
    cells.append(Words(read_text(top, swung)) if top else Length(swung))
    return tuple(cells)


def _over_wires(design: TapDesign, found: Passes) -> tuple[Block, ...]:
    """Readings to expect; none where no wire suits the thread."""
    try:
        answer = answer_for(design)
    except NoWireError:
        return ()
    cut = [
        (number, one) for number, one in enumerate(found.passes, start=1) if one.kind != Kind.SPRING
    ]
    rows = tuple(
        row for number, one in cut[-TOLD_LAST:] for row in _expected(answer, found, number, one)
    )
    caption = "To expect over the wire to use (they count from a blank that is turned to size)"
    return (Rows(rows, caption),) if rows else ()


def _expected(answer: WiresAnswer, found: Passes, number: int, one: Pass) -> tuple[Row, ...]:
    value = after_pass(answer, found.passes[-1].infeed - one.infeed)
    if value is None:
        return ()
    last = number == len(found.passes) - 1
    label = f"after pass {number}, and after {number + 1}" if last else f"after pass {number}"
    return (Row(label, Length(value, 4), measured=True),)


def _notes(
    found: Passes, thread: TapThread, cross: Dial | None, top: Dial | None
) -> tuple[str | Telling, ...]:
    notes: list[str | Telling] = [_either(thread, cross, top), ONE_WAY, _rule]
    if found.heavy:
        notes.append(
            "Even so each chip is thicker than that: rough the groove with a narrower tool first."
        )
    if thread.flank_angle < _STEEP:
        notes.append(
            "Flanks so steep squeeze a tool that is fed straight in: feed the top slide, or go in "
            "straight with a tool a little narrower and shave one flank, then the other, by the "
            "top slide set along the axis (common practice)."
        )
    if thread.starts > 1:
        notes.append(f"The passes are those of one start; each of the {thread.starts} takes them.")
    return tuple(notes)


def _either(thread: TapThread, cross: Dial | None, top: Dial | None) -> str:
    slides = (("cross slide", cross), ("top slide", top))
    named = "; ".join(f"{slide} {dial_text(dial)}" for slide, dial in slides if dial)
    dials = f" Dials: {named}." if named else ""
    size = "thread.root_radius" if thread.rounded_root else "thread.root_flat"
    return (
        "Feed the one slide or the other, the cross slide back at its zero for each pass where the "
        f"top slide feeds.{dials} All hold for the tool nose told, which is that of {size}: set "
        "there what you really ground."
    )


def _rule(units: Units) -> str:
    chip, deepest = in_words(CHIP, ".3f", units), in_words(DEEPEST, ".1f|.3f", units)
    return (
        "Every chip has the same area of the tool's own form, at most the pitch times "
        f"{chip}, and no pass is deeper than {deepest}: for tools of high-speed steel in annealed "
        "tool steel on a small lathe (from memory)."
    )
