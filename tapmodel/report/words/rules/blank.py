"""Sentences of the rules on the blank: neck, shank, square, lengths, and its small features."""

from tapmodel.designing.codes import Code
from tapmodel.findings import Finding
from tapmodel.report.units import HOLE_DEPTH
from tapmodel.report.words.sentence import Length, Sentences, always, high, judged
from tapmodel.words import Severity


def _shank(finding: Finding, length: Length) -> str:
    if finding.severity is Severity.ERROR:
        return "The shank does not pass the finished hole."
    return (
        "The shank is thicker than the hole: the tap cannot be passed through, and full thread "
        f"ends {length(finding.values.number('depth'), HOLE_DEPTH)} deep at most; set "
        "blank.shank_must_pass for a shank that passes."
    )


def _reach(finding: Finding, length: Length) -> str:
    wanted, most = (length(deep, HOLE_DEPTH) for deep in (judged(finding), high(finding)))
    return (
        f"The hole is to be tapped {wanted} deep, and full thread ends {most} deep: what is "
        "thicker than the hole behind the thread, or the wrench on the square, stops the tap there."
    )


def _slender(finding: Finding, length: Length) -> str:
    return (
        f"A tap of {length(judged(finding), '.0f')} is so long for its shank that it winds up "
        "before it cuts and snaps back when it lets go."
    )


def _long_square(finding: Finding, length: Length) -> str:
    return f"No wrench is deep enough for a square of {length(judged(finding), '.1f')}."


def _too_small(finding: Finding, length: Length) -> str:
    name = finding.field.removeprefix("blank.").replace("_", " ")
    return f"A {name} of {length(judged(finding), '.3g')} is too small to be made."


SENTENCES: Sentences = {
    Code.NECK_HOLE: always("The neck will not pass the hole."),
    Code.SHANK_HOLE: _shank,
    Code.HOLE_REACH: _reach,
    Code.SQUARE_FLATS: always("The square is no square: its flats lie outside the shank."),
    Code.SQUARE_SLIM: always("The square is too small to drive the tap."),
    Code.SQUARE_CORNERS: always("The square is smaller than the shank allows and wastes strength."),
    Code.OVERALL_LENGTH: always("There is no room for a shank between thread and square."),
    Code.SQUARE_LENGTH: always("The square starts behind the tap's end, or is too short to hold."),
    Code.THREAD_LONG: always(
        "Most of so long a thread cuts nothing: it rubs, and what its lead is off adds up."
    ),
    Code.OVERALL_SLENDER: _slender,
    Code.SHANK_STOUT: always(
        "So thick a shank makes the tap no stronger: it breaks in the thread or at its flutes."
    ),
    Code.SQUARE_LONG: _long_square,
    Code.NECK_LENGTH_SIZE: _too_small,
    Code.REAR_CHAMFER_SIZE: _too_small,
    Code.FRONT_CENTRE_SIZE: _too_small,
    Code.REAR_CENTRE_SIZE: _too_small,
    Code.FRONT_CENTRE: always("The front centre cuts into the flutes, or through the point."),
    Code.REAR_CENTRE: always("The rear centre breaks out of the square."),
    Code.REAR_CHAMFER: always("The rear edge is gone."),
}
