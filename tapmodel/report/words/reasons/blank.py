"""Reasons for the blank, in words."""

from tapmodel.report.words.reasons.sentence import Sentence
from tapmodel.report.words.sentence import Writer


def _behind_thread(write: Writer, /) -> str:
    return (
        f"one pitch behind the thread, at least {write(0.5, 'g|.2g')} (half the diameter below "
        f"{write(1, 'g|.2g')}), so that the last thread is cut through"
    )


SENTENCES: dict[str, Sentence] = {
    "blank-listed": "hand-tap blank for {diameter:g mm}",
    "blank-of-unified": (
        "hand-tap blank of a Unified thread of {diameter:.4g mm}, so that bars and wrenches in "
        "inch sizes serve"
    ),
    "blank-listed-longer": (
        "hand-tap blank for {diameter:g mm}, longer by as much as the thread is"
    ),
    "blank-listed-shorter": (
        "hand-tap blank for {diameter:g mm}, shorter by as much as the thread is"
    ),
    "blank-as-needed": (
        "thread, neck and cone, {shanks:g} diameters of the shank to hold it by while it is cut, "
        "and the square; right through {depth:g mm} of hole the square stands {clear:g|.2g mm} "
        "clear at least. No list has so large a tap of so fine a pitch"
    ),
    "shank-slender": (
        "a third of {diameter:.4g mm}, up to the next shank of ISO 237: stiff enough to cut the "
        "tap by; so fine a thread takes little torque, and no list has so large a tap of it"
    ),
    "shank-against-torque": (
        "thicker than the {usual:g mm} of a third of the diameter, so that it bears twice the most "
        "that the tap may take"
    ),
    "shank-passes": (
        "the thickest that passes a hole of {least:.3f mm} with {air:.2g|.2g mm} of air, so that "
        "the tap runs right through the nut; a listed shank, unless all are thinner than {share:g} "
        "of the core and so weaker in torsion than the fluted part"
    ),
    "thread-length-listed": "listed thread length, at least the chamfer and {pitches} pitches",
    "thread-length-fine": (
        "the chamfer and {pitches} pitches, which guide so fine a thread, not the listed length"
    ),
    "thread-length-guided": (
        "the chamfer and {pitches} pitches or {share:g} of the diameter, whichever is more, which "
        "guide so fine a thread, not the listed length"
    ),
    "thread-length-of-hole": (
        "the chamfer and the {depth:g mm} of the hole, so that the flutes reach out of it, not the "
        "listed length"
    ),
    "full-depth-behind-thread": _behind_thread,
    "neck-under-root": (
        "{gap:g|.1g mm} or more under the root of the thread, because the shank is thicker than "
        "that"
    ),
    "neck-behind-web": (
        "{gap:g|.1g mm} or more under the root of the thread: the shank is thinner than the web, "
        "and the flutes run out in a neck that is not"
    ),
    "neck-behind-cutter": "the cutter leaves the blank half a pitch before the neck's end",
    "neck-none": "none: the shank is thinner than the root of the thread",
    "shoulder-angle": "{angle:g} deg to the axis: no sharp step to crack in hardening",
    "square-of-shank": "drive square of a shank of {shank:g mm} by ISO 237",
    "square-of-inch-shank": "drive square of a shank of {shank:.4g mm}, in inch sizes",
    "rear-chamfer-of-shank": "5 % of the shank: breaks the edge",
    "front-centre-of-web": (
        "{share:g} of the web between the flutes, or of the point where that is thinner: carries "
        "the front under the cutter and does not break into the flutes"
    ),
    "front-centre-enough": (
        "{share:g} of the diameter: carries the front under the cutter, and the thick web needs no "
        "larger one"
    ),
    "front-centre-none": (
        "none below {least:g|.2g mm}, or where the web leaves no room: hold the front by a male "
        "point, and part that off last"
    ),
    "rear-centre-of-shank": "0.3 of the shank for a tailstock centre, none below {least:g|.2g mm}",
}
