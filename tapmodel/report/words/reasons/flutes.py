"""Reasons for the flutes and their cutter, in words."""

from tapmodel.report.words.reasons.sentence import Sentence

SENTENCES: dict[str, Sentence] = {
    "count-by-diameter": (
        "3 below 12 mm for chip room, 4 up to 36 mm, 6 above; this is {diameter:g} mm"
    ),
    "rake-for-steels": "{rake:g} deg suits low-carbon and alloy steels",
    "core-of-diameter": (
        "{share:g} of the diameter with {count} flutes: strength against chip room"
    ),
    "core-of-root": ("{share:g} of the root: so coarse a thread leaves no room for the usual core"),
    "land-third-of-spacing": (
        "land about a third of the spacing: near a quarter of the diameter with four flutes"
    ),
    "cutters-likely": "ball-nose cutters that a small shop is likely to have",
    "cutters-likely-and-micro": (
        "ball-nose cutters that a small shop is likely to have, and the micro cutters that so "
        "small a tap asks for"
    ),
    "cutter-nearest-land": (
        "of the cutters on hand that leave no tooth scraping at its root, the one whose land comes "
        "nearest to {width:.2f} mm"
    ),
    "cutter-least-short": "no cutter on hand meets every limit; this one falls short least",
}
