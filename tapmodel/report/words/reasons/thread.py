"""Reasons for the tap's own thread, in words."""

from tapmodel.report.words.reasons.sentence import Sentence


def _major(*, least: float, step: float, rounded: bool) -> str:
    narrowest = "radius smaller than P/20" if rounded else "narrower than P/16"
    return (
        f"least allowed {least:g} mm plus 0.02 P to turn to, up to the next {step:g} mm, unless "
        f"the crest would be {narrowest}"
    )


SENTENCES: dict[str, Sentence] = {
    "tap-class-only": "the only class of this family",
    "tap-class-for-hole": "the tap class for holes of class {hole_class}",
    "tap-class-cut-or-ground": (
        "for a thread cut on a lathe, {cut:.3f} mm of pitch diameter to hit; thread.tap_class = "
        "{ground} is the class of ground taps for this hole, {narrow:.3f} mm wide"
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
    "root-widest": (
        "the widest nose flat that leaves the root {clearance:g} P below the least minor diameter "
        "of the hole, down to 0.01 mm; the root cuts nothing"
    ),
    "root-rounded": (
        "the form's own radius, or the largest nose radius that leaves the root {clearance:g} P "
        "below the least minor diameter of the hole, down to 0.01 mm (0.001 mm where that is more "
        "than P/50); the root cuts nothing"
    ),
}
