"""Reasons for the tap's own thread, in words."""

from tapmodel.report.words.reasons.sentence import Sentence
from tapmodel.report.words.sentence import Writer


def _major(write: Writer, /, *, least: float, step: float, rounded: bool) -> str:
    narrowest = "radius smaller than P/20" if rounded else "narrower than P/16"
    return (
        f"least allowed {write(least, 'g')} plus 0.02 P to turn to, up to the next "
        f"{write(step, 'g|.1g')}, unless the crest would be {narrowest}"
    )


def _widest_root(write: Writer, /, *, clearance: float) -> str:
    return (
        f"the widest nose flat that leaves the root {clearance:g} P below the least minor diameter "
        f"of the hole, down to the next {write(0.01, 'g|.1g')}; the root cuts nothing"
    )


def _rounded_root(write: Writer, /, *, clearance: float) -> str:
    step, fine = (write(step, "g|.1g") for step in (0.01, 0.001))
    return (
        "the form's own radius, or the largest nose radius that leaves the root "
        f"{clearance:g} P below the least minor diameter of the hole, down to the next {step} "
        f"({fine} where that is more than P/50); the root cuts nothing"
    )


SENTENCES: dict[str, Sentence] = {
    "tap-class-only": "the only class of this family",
    "tap-class-for-hole": "the tap class for holes of class {hole_class}",
    "tap-class-cut-or-ground": (
        "for a thread cut on a lathe, {cut:.3f mm} of pitch diameter to hit; thread.tap_class = "
        "{ground} is the class of ground taps for this hole, {narrow:.3f mm} wide"
    ),
    "aim-middle": (
        "middle of the zone: as far from the upper limit as from the lower when the last infeed is "
        "set"
    ),
    "major-to-turn-to": _major,
    "root-common-tool": (
        "a nose flat of P/8, the least that common threading tools leave; the root cuts nothing"
    ),
    "root-narrow": (
        "less than P/8, so that the root lies {clearance:g} P below the least minor diameter of "
        "the hole: the tolerance of so fine a thread lifts the tap's pitch line nearly as far as "
        "its root is deep"
    ),
    "root-widest": _widest_root,
    "root-rounded": _rounded_root,
}
