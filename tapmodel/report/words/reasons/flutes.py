"""Reasons for the flutes and their cutter, in words."""

from tapmodel.report.words.reasons.sentence import Sentence
from tapmodel.report.words.sentence import Writer


def _by_diameter(write: Writer, /, *, diameter: float) -> str:
    few, usual, many = (write(end, "g|.3g") for end in (12, 36, 100))
    return (
        f"3 below {few} for chip room, 4 up to {usual}, 6 up to {many}, 8 above; this is "
        f"{write(diameter, 'g')}"
    )


SENTENCES: dict[str, Sentence] = {
    "count-by-diameter": _by_diameter,
    "count-against-wide-lands": (
        "more than the usual {usual}, whose lands would rub along {share:.1%} of the way "
        "from edge to edge, where {most:.0%} may; an even number, to be measured across two lands"
    ),
    "count-against-blunt-edge": (
        "more than the usual {usual}, whose edge would keep only {rake:.1f} deg of rake at the "
        "wall of the hole; between more of them smaller cutters keep more"
    ),
    "count-of-shallow": (
        "more than the usual {usual}: so fine a thread needs no deep flutes, and between more of "
        "them smaller cutters leave narrow lands"
    ),
    "rake-for-group": "{rake:g} deg; {low:g} to {high:g} deg suit {group}",
    "core-of-diameter": (
        "{share:g} of the diameter with {count} flutes: strength against chip room"
    ),
    "core-of-root": ("{share:g} of the root: so coarse a thread leaves no room for the usual core"),
    "core-of-shallow": (
        "flutes no deeper than their cutter needs for an edge that is straight down to the hole's "
        "wall, and than {spare:g} times the chips of full thread take"
    ),
    "core-against-torque": (
        "stronger than the usual {usual:.4g mm}, which would likely take {times:.2g} times the "
        "torque to stop at"
    ),
    "land-third-of-spacing": (
        "land about a third of the spacing: near a quarter of the diameter with four flutes"
    ),
    "cutters-likely": "ball-nose cutters of the {tools} diameters in stock everywhere",
    "cutters-likely-and-micro": (
        "ball-nose cutters of the {tools} diameters in stock everywhere, micro cutters among them "
        "as so small a tap asks for them"
    ),
    "cutters-likely-and-large": (
        "ball-nose cutters of the {tools} diameters in stock everywhere, large ones among them "
        "as so large a tap asks for them"
    ),
    "cutters-likely-and-small": (
        "ball-nose cutters of the {tools} diameters in stock everywhere, up to {most:.4g mm}: so "
        "fine a thread needs no larger"
    ),
    "cutters-inch-and-metric": (
        "ball-nose cutters of the inch and the metric diameters in stock everywhere: no inch one "
        "suits"
    ),
    "cutter-nearest-land": (
        "of the cutters on hand that leave no tooth scraping where the wall of the hole begins, "
        "nor one taller than its foot is thick, and if possible keep half the rake there, the one "
        "whose land comes nearest to {width:.2f mm}"
    ),
    "cutter-least-short": "no cutter on hand meets every limit; this one falls short least",
}
