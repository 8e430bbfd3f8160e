"""What was measured of a tap as a page of text."""

from collections.abc import Iterator

from tapmodel.report.chapters.measured import chapter_of
from tapmodel.report.screen.chapter import chapter_lines, wrapped
from tapmodel.report.screen.columns import Mark, Pen, plain
from tapmodel.report.units import Units
from tapmodel.report.words.compound import SWING
from tapmodel.report.words.sets import tap_for
from tapmodel.shop.measured.answer import MeasuredAnswer
from tapmodel.shop.measured.verdicts import Standing, Way
from tapmodel.spec.measured.record import Earlier, Measured


def measured_page(answer: MeasuredAnswer, units: Units = Units.MM, pen: Pen = plain) -> str:
    """Each size with its limits, what it means, and the tap as it is beside its design."""
    lines = [pen(tap_for(answer.design), Mark.HEADING), ""]
    lines += chapter_lines(chapter_of(answer), units, pen)
    if any(one.way is Way.SLIDE and one.standing is Standing.TO_TAKE for one in answer.judgements):
        lines += ["", *wrapped(SWING[answer.design.tap.thread.hand])]
    lines += _earlier(answer.design.measured or Measured(), pen)
    return "\n".join(lines)


def _earlier(measured: Measured, pen: Pen) -> Iterator[str]:
    """Readings that count no more."""
    if not measured.earlier:
        return
    yield ""
    yield pen("Measured before, or taken back", Mark.HEADING)
    for one in measured.earlier:
        yield f"  {_told(one)}"


def _told(one: Earlier) -> str:
    when = f", {one.on:%Y-%m-%d %H:%M}" if one.on else ""
    return f"{one.size.replace('_', ' ')} {one.typed}{when}"
