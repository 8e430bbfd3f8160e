"""Rules on lengths and a shank out of all proportion, where the job gives them."""

from tapmodel.designing.choose.hole import TappedHole
from tapmodel.designing.choose.shank import listed_blank
from tapmodel.designing.codes import Code
from tapmodel.designing.judging import WARNING, Findings, at_most, finding, less, more, over
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.findings import Lever

MOST_FULL_THREAD = 10.0
"""Full thread behind the chamfer, in major diameters: three times what the lists give from M3 on.
Turns behind the chamfer guide and rub, and what the lead is off adds up along them."""

MOST_SLENDER = 30.0
"""Length of all in diameters of the shank. Some 12 are turned without a steady (common practice);
and at 100 N/mm², a little more than the shank of M10 bears where the tap is to be stopped, it turns
in itself by 0.14 deg for each diameter, at 30 by 4 deg, and snaps back."""

STOUT, ANY_HOLDER = 1.5, 10.0
"""A shank may be so many times as thick as thread or listed shank, or have as many mm, which
the usual wrenches and collets hold; a thicker one bears no more, since the web breaks first."""

SQUARE_LONG, ANY_SQUARE = 3.0, 12.0
"""A square may be as many times as long as wide, or as many mm; listed ones reach 2, and no wrench
is thicker."""


def judge(design: TapDesign, hole: TappedHole) -> Findings:
    """Every finding on what is out of proportion; what a rule chose is not looked at.

    Source: rules of this program.
    """
    yield from _thread_length(design)
    yield from _overall_length(design)
    yield from _shank(design, hole)
    yield from _square(design)


def _thread_length(design: TapDesign) -> Findings:
    field, length = "blank.thread_length", design.tap.blank.thread_length
    most = design.tap.chamfer_length + MOST_FULL_THREAD * design.tap.thread.major
    yield from _judged(design, Code.THREAD_LONG, (field,), length, most)


def _overall_length(design: TapDesign) -> Findings:
    blank = design.tap.blank
    field, length, most = "blank.overall_length", blank.overall_length, MOST_SLENDER
    thicker = more("blank.shank_diameter", blank.shank_diameter, length / most)
    most *= blank.shank_diameter
    yield from _judged(design, Code.OVERALL_SLENDER, (field,), length, most, thicker)


def _shank(design: TapDesign, hole: TappedHole) -> Findings:
    field, shank = "blank.shank_diameter", design.tap.blank.shank_diameter
    usual = max(design.tap.thread.major, listed_blank(hole).shank)
    most = max(STOUT * usual, ANY_HOLDER)
    yield from _judged(design, Code.SHANK_STOUT, (field,), shank, most)


def _square(design: TapDesign) -> Findings:
    blank = design.tap.blank
    most = max(SQUARE_LONG * blank.square_across_flats, ANY_SQUARE)
    fields = "blank.square_length", "blank.square_start"
    latest = blank.overall_length - most
    later = more("blank.square_start", blank.square_start, latest)
    yield from _judged(design, Code.SQUARE_LONG, fields, blank.square_length, most, later)


def _judged(
    design: TapDesign,
    code: Code,
    fields: tuple[str, ...],
    size: float,
    most: float,
    *others: Lever,
) -> Findings:
    """The finding where a size, given by one of the fields, exceeds the most of it."""
    chosen = (design.choice(field) for field in fields)
    if over(size, most) and any(choice is not None and choice.given for choice in chosen):
        field = fields[0]
        levers, limit = (less(field, size, most), *others), at_most(most)
        yield finding(code, WARNING, field, size, limit, OWN_RULE, levers=levers)
