"""A stronger core where the usual one would likely break."""

import math
from collections.abc import Callable, Iterator

from tapmodel.designing.choose.chamfer import STEEP
from tapmodel.designing.choose.flutes import MOST_OF_ROOT
from tapmodel.designing.choose.ledger import Advice, by_rule
from tapmodel.designing.choose.steps import up
from tapmodel.designing.codes import Code
from tapmodel.designing.limits.flutes import ToothRadii, stands
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.errors import NoTapError
from tapmodel.shape.flute_section import section_of

CORE = "flutes.core_diameter"

TRIES = 6
"""Cores that are tried."""

GROWTH = 1.05
"""From one to the next at least; strength grows with the cube, torque hardly changes."""

STEP = 0.01
"""To whole steps of a hundredth of the diameter over the roots."""

Trial = Callable[[Advice], TapDesign]
"""The design with some of its rules' choices replaced, judged and foreseen."""


def stronger_core(usual: TapDesign, trial: Trial) -> TapDesign:
    """The design with the thinnest core that does not break, or the strongest there is.

    Only for a core that a rule chose, of a tap whose likely torque is above the one to stop at,
    and only as far as its teeth still cut.
    Deep threads and several starts are left as they are: there a stronger core is but a wider land
    on a tap that no hand turns, and the work is shared among a set.

    Args:
        usual: what the rules chose.
        trial: of other cores.

    Source: rule of this program; the limits of the core are those of the flutes.
    """
    if not _is_wanted(usual):
        return usual
    best = usual
    for core in _cores(usual):
        by = by_rule("core-against-torque", OWN_RULE, usual=_core(usual), times=_load(usual))
        try:
            tried = trial({CORE: (core, by)})
        except NoTapError:
            break
        if _load(tried) < _load(best) and _cuts(tried):
            best = tried
        if not best.finds(Code.TAP_OVERLOADED):
            break
    return best


def _is_wanted(design: TapDesign) -> bool:
    choice, thread = design.choice(CORE), design.tap.thread
    ruled = choice is not None and not choice.given
    shallow = thread.flank_angle >= STEEP and thread.starts == 1
    return ruled and shallow and design.part is None and design.finds(Code.TAP_OVERLOADED)


def _cuts(design: TapDesign) -> bool:
    """Whether no tooth scrapes at the wall of the hole, nor is taller than its foot is thick."""
    tap = design.tap
    tooth = ToothRadii(tap.thread.major / 2, tap.thread.minor / 2)
    return design.rake_at_wall >= 0 and stands(section_of(tap.flutes), tap.flutes.count, tooth)


def _cores(usual: TapDesign) -> Iterator[float]:
    """By the cube of what is lacking [mm], then as far again; the last is the thickest allowed."""
    root = usual.tap.thread.minor
    core, most = _core(usual), round(MOST_OF_ROOT * root, 3)
    factor = max(GROWTH, _load(usual) ** (1 / 3))
    for _ in range(TRIES - 1):
        core = up(core * factor, STEP * root)
        if core >= most:
            break
        yield round(core, 3)
    yield most


def _core(design: TapDesign) -> float:
    return design.tap.flutes.core_diameter


def _load(design: TapDesign) -> float:
    """The likely torque in torques to stop at; nothing bears what was not foreseen."""
    foreseen = design.prediction
    return foreseen.load if foreseen else math.inf
