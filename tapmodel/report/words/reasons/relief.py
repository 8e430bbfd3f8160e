"""Reasons for the two reliefs, in words."""

from tapmodel.report.words.reasons.sentence import Sentence
from tapmodel.report.words.sentence import Writer


def _of_diameter(_write: Writer, /, *, share: float) -> str:
    return f"{100 * share:g} % of the diameter"


def _of_depth(write: Writer, /, *, usual: float) -> str:
    return (
        "a quarter of the depth of the thread, which for so fine a thread is less than the usual "
        f"{_of_diameter(write, share=usual)}"
    )


SENTENCES: dict[str, Sentence] = {
    "kind-margin-and-arc": "the margin guides the tap, the arc behind it frees the crest",
    "kind-clear-from-edge": "the chamfer must clear from the edge on, so its drop starts there",
    "kind-chamfer-only": (
        "a rounded thread is relieved in its chamfer only, as no more can be ground without a "
        "thread grinder"
    ),
    "place-crest": "all that a shop without a thread grinder can relieve",
    "place-whole-thread": "a rounded crest has no surface of its own that could be relieved",
    "place-chamfer": "its place",
    "margin-third-of-land": "a third of the land",
    "drop-of-diameter": _of_diameter,
    "drop-of-depth": _of_depth,
    "drop-by-edge-angle": (
        "what {angle:g} deg at the edge gives, but no more than half the depth of the thread"
    ),
    "edge-angle-least": "{angle:g} deg, the least of the usual 4 to 8 deg",
}
