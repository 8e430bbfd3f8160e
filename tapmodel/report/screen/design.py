"""The design as a page of text: the numbers looked for first, or every number."""

from collections.abc import Iterator

from tapmodel.designing.choice import Choice
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter
from tapmodel.report.chapters import key_numbers
from tapmodel.report.chapters.order import all_chapters
from tapmodel.report.screen.chapter import chapter_lines, wrapped
from tapmodel.report.screen.columns import Mark, Pen, plain
from tapmodel.report.screen.findings import findings_lines
from tapmodel.report.units import Units
from tapmodel.report.words.choices import source_text, value_text, why
from tapmodel.report.words.runners_up import runner_up_text
from tapmodel.report.words.sets import tap_for


def design_page(
    design: TapDesign,
    units: Units = Units.MM,
    pen: Pen = plain,
    *,
    every: bool = False,
    sources: bool = False,
) -> str:
    """What was settled, and what the rules found.

    Args:
        design: of the tap.
        units: of lengths; values of choices are in mm, as a job has them, with inches behind.
        pen: writes for a screen that can show what a text is.
        every: every number, as the sheet has it, instead of those that are looked for first.
        sources: also each value that was chosen with its reason and source.
    """
    lines = list(_title(design, pen))
    for chapter in _chapters(design, every=every):
        lines += ["", *chapter_lines(chapter, units, pen)]
    if sources:
        lines += ["", *_choices(design, pen, units)]
    if design.findings:
        lines += ["", *findings_lines(design.findings, pen, units, sources=sources)]
    return "\n".join(lines)


def _title(design: TapDesign, pen: Pen) -> Iterator[str]:
    hand, hole = design.tap.thread.hand.value, design.choice("hole.class")
    of_class = f", hole {value_text(hole)}" if hole else ""
    yield pen(tap_for(design), Mark.HEADING) + f"{of_class}, {hand} hand"


def _chapters(design: TapDesign, *, every: bool) -> Iterator[Chapter]:
    if every:
        yield from all_chapters(design)
    else:
        yield key_numbers.chapter(design)


def _choices(design: TapDesign, pen: Pen, units: Units) -> Iterator[str]:
    yield pen("Choices and their reasons", Mark.HEADING)
    for choice in design.choices:
        yield from _choice(choice, pen, units)


def _choice(choice: Choice, pen: Pen, units: Units) -> Iterator[str]:
    yield f"  {choice.field} = {pen(value_text(choice, units), Mark.VALUE)}"
    reason = f"{why(choice, units)} -- {source_text(choice)}"
    if choice.given:
        reason = "as given in the job"
    yield from wrapped(f"      {reason}", "      ")
    if choice.runner_up:
        told = runner_up_text(choice.runner_up, choice.unit, units)
        yield from wrapped(f"      {told}", "      ")
