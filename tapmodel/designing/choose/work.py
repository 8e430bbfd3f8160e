"""What is tapped: material, depth and kind of the hole; and the steel that the tap is made of.

Rake and chips of the tap follow from the material, the thread of a large tap of fine pitch from a
depth that is given, and from the others what is said about it.
"""

from dataclasses import replace

from tapmodel.designing.choose.ledger import Ledger, by_rule
from tapmodel.designing.choose.steel import choose_steel
from tapmodel.designing.limits.chips import BOTTOMING
from tapmodel.designing.limits.turns import MOST_TURNS, threaded
from tapmodel.designing.provenance import OWN_RULE, PRACTICE
from tapmodel.designing.work import BLIND, THROUGH, Work
from tapmodel.spec.conflicts import CHAMFER_LENGTH
from tapmodel.standards.materials.work import WorkMaterial, work_material

ASSUMED = "mild steel"
"""Material that is assumed where the job names none, so that nothing is refused for want of it."""

DIAMETERS = 1.5
"""Depth of thread by rule, in nominal diameters."""

ASSUMED_RULE = by_rule("material-assumed", OWN_RULE)
DEPTH_RULE = by_rule("depth-of-diameter", PRACTICE, share=DIAMETERS)
FINE_DEPTH_RULE = by_rule("depth-of-fine", OWN_RULE, pitches=DIAMETERS * MOST_TURNS)
GUIDED_DEPTH_RULE = by_rule("depth-of-guided", OWN_RULE, share=DIAMETERS)
THROUGH_RULE = by_rule("hole-through", OWN_RULE)
BLIND_RULE = by_rule("hole-blind-for-bottoming", PRACTICE)

_EQUAL = 1e-6


def choose_material(ledger: Ledger) -> WorkMaterial:
    """Settle the material that is tapped.

    Raises:
        InputError: no material has the name given.

    Source: rule of this program.
    """
    word = ledger.word("hole.material", ASSUMED, ASSUMED_RULE)
    found = work_material(word)
    return replace(found, called=word) if ledger.has("hole.material") else found


def choose_work(
    material: WorkMaterial, diameter: float, pitch: float, chamfer_leads: float, ledger: Ledger
) -> Work:
    """Settle the hole's depth and kind, and note the tap's steel.

    Args:
        material: that is tapped.
        diameter: nominal, of the thread to be cut [mm].
        pitch: of that thread [mm].
        chamfer_leads: length of the tap's chamfer in leads.
        ledger: of the design.

    Source: depth common practice; kind a rule of this program.
    """
    useful = threaded(diameter, pitch)
    rule = DEPTH_RULE
    if useful < diameter:
        held = useful == MOST_TURNS * pitch
        rule = FINE_DEPTH_RULE if held else GUIDED_DEPTH_RULE
    depth = ledger.number("hole.depth", round(DIAMETERS * useful, 6), rule)
    bottoming = _asks_for_bottoming(chamfer_leads, ledger)
    ruled, rule = (BLIND, BLIND_RULE) if bottoming else (THROUGH, THROUGH_RULE)
    return Work(
        material=material,
        assumed=not ledger.has("hole.material"),
        depth=depth,
        kind=ledger.word("hole.kind", ruled, rule),
        steel=choose_steel(ledger),
    )


def _asks_for_bottoming(leads: float, ledger: Ledger) -> bool:
    """Whether the job itself wants so short a chamfer; a rule may choose one for thicker chips.

    The last tap of a set has a short one because others went before it, whatever the hole.
    """
    if ledger.has("set.number"):
        return False
    asked = any(ledger.has(field) for field in (*CHAMFER_LENGTH, "chamfer.angle"))
    return asked and leads <= BOTTOMING + _EQUAL
