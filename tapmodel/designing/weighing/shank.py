"""A thicker shank where a slender one would have too little in reserve."""

from tapmodel.designing.choose.ledger import Advice, by_rule
from tapmodel.designing.choose.shank import slender_shanks
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.designing.weighing.core import Trial
from tapmodel.errors import NoTapError
from tapmodel.standards.blanks import blank_for

SHANK = "blank.shank_diameter"

RESERVE = 2.0
"""What such a tap bears, in the most that it may take when sharp, at least: it is stopped at twice
the most, so its shank is never what stops it."""


def stronger_shank(usual: TapDesign, trial: Trial) -> TapDesign:
    """The design with the thinnest shank that has the reserve, or the thickest there is.

    Only for a slender shank that a rule chose.

    Args:
        usual: what the rules chose.
        trial: of other shanks.

    Source: rule of this program.
    """
    choice = usual.choice(SHANK)
    rule = None if choice is None else choice.rule
    if rule is None or rule.code != "shank-slender" or _reserve(usual) >= RESERVE:
        return usual
    best, thin = usual, usual.tap.blank.shank_diameter
    for shank in slender_shanks(blank_for(rule.values.number("diameter"))):
        if shank <= thin:
            continue
        advice: Advice = {SHANK: (shank, by_rule("shank-against-torque", OWN_RULE, usual=thin))}
        try:
            best = trial(advice)
        except NoTapError:
            break
        if _reserve(best) >= RESERVE:
            break
    return best


def _reserve(design: TapDesign) -> float:
    """What the tap bears over the most that it may take; enough where nothing was foreseen."""
    return RESERVE if design.prediction is None else design.prediction.margin
