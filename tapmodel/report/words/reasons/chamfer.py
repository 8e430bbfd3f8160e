"""Reasons for the chamfer, in words."""

from tapmodel.report.words.reasons.sentence import Sentence

SENTENCES: dict[str, Sentence] = {
    "form-plug": "plug is the form for through and blind holes alike",
    "form-taper": "taper: a deep thread of steep flanks must be cut by many teeth",
    "leads-against-thick-chips": (
        "longer than the {form} form of {usual:g}, whose teeth would cut chips of {chip:.3f mm}; "
        "{most:g mm} is enough"
    ),
    "leads-against-thin-chips": (
        "shorter than the {form} form of {usual:g}, whose teeth would cut chips of {chip:.4f mm}, "
        "too thin for so coarse an edge as can be honed"
    ),
    "point-under-drill": (
        "0.1 P under the drill of {drill:g mm}, down to the next {step:g|.1g mm}, so that it starts"
    ),
}
