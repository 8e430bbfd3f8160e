"""The torque that a tap needs: what it is, and the band it lies in."""

from dataclasses import dataclass
from enum import StrEnum

from numpy import float64
from numpy.typing import NDArray

from tapmodel.prediction.band import Band

Floats = NDArray[float64]


class Estimate(StrEnum):
    """Which estimate an end of the band comes from."""

    TEETH = "teeth"
    FORMULA_A = "formula A"
    FORMULA_B = "formula B"
    FORMULA_C = "formula C"
    CARRIED_OVER = "formula C of the nearest kind of material"


@dataclass(frozen=True, slots=True)
class HoleToTap:
    """The hole that is tapped.

    Attributes:
        diameter: nominal, of the thread [mm].
        drill: of the hole before tapping [mm].
        depth: of the finished thread; of a through hole the thickness of the work [mm].
        blind: whether it has a bottom.
    """

    diameter: float
    drill: float
    depth: float
    blind: bool


@dataclass(frozen=True, slots=True)
class Course:
    """Torque against the depth of the tap's front below the face of the work, each (n,).

    Depth rises while the tap goes in and falls while it is backed out; two entries of one depth
    are a step, where a tooth meets or leaves the work.

    Attributes:
        depth: of the front [mm].
        low, likely, high: the band [N·m].
    """

    depth: Floats
    low: Floats
    likely: Floats
    high: Floats


@dataclass(frozen=True, slots=True)
class Torque:
    """The torque of a new, sharp tap, while it goes in, and what adds to it.

    Attributes:
        cutting: of all teeth that cut together, tooth by tooth by Kienzle's law; the most on the
            whole way [N·m].
        engaged: share of the chips that are cut together at that moment: below 1 where the chamfer
            is longer than the hole is deep.
        friction: of the lands that rub in the thread they have cut, when the most of them do [N·m].
        band: least, likely and greatest torque on the whole way, cutting and friction together.
            Its ends are the least and the greatest of these: cutting with the least and with the
            greatest friction, and the printed formulas, which hold for the whole of a tap and so
            contain its friction. Where A or B is not printed for the material, or not for such a
            thread, the first is spread as A and B were seen to differ from it. The likely one is
            the geometric mean of the likely one by the teeth and of A and B, as far as they are
            printed: of the teeth alone where neither is. A formula that gives less than the lands
            likely rub alone counts for nothing. Formula C of the nearest kind of material stands
            for C at the upper end where it has no row.
        low_by, high_by: where these ends come from.
        likely_by: the estimates whose geometric mean is the likely one, the teeth first.
        formula_a, formula_b: printed formulas of two makers of taps [N·m]; None where they print no
            constant for the material, or the thread is no V thread. Of a tap of a set, its share
            of theirs.
        formula_c: a formula from memory, which only widens the band [N·m]; None likewise.
        thin: share of the cutting torque from chips thinner than any test behind its constants cut.
        axial_force: with which the tap is pressed in until its first turn has bitten [N].
        wear: what a wear land of `friction.WEAR_LAND` behind all edges adds; in no end of the band
            [N·m].
        back: the most when the tap is turned back: friction, and where it stopped in the cut the
            roots of the chips that must be sheared off [N·m].
        course_in, course_back: the band of the way in and of the way back; None where not asked
            for.
    """

    cutting: float
    engaged: float
    friction: Band
    band: Band
    low_by: Estimate
    high_by: Estimate
    likely_by: tuple[Estimate, ...]
    formula_a: float | None
    formula_b: float | None
    formula_c: float | None
    thin: float
    axial_force: Band
    wear: Band
    back: Band
    course_in: Course | None = None
    course_back: Course | None = None
