"""Reasons for the chamfer, in words."""

from tapmodel.report.words.reasons.sentence import Sentence

SENTENCES: dict[str, Sentence] = {
    "form-plug": "plug is the form for through and blind holes alike",
    "form-taper": "taper: a deep thread of steep flanks must be cut by many teeth",
    "point-under-drill": (
        "0.1 P under the drill of {drill:g} mm, down to the next {step:g} mm, so that it starts"
    ),
}
