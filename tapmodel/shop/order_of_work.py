"""Which operations make a tap, and in which order: the one list that sheet and route tell."""

from enum import StrEnum

from tapmodel.designing.record import TapDesign
from tapmodel.shop.male_point import male_point
from tapmodel.shop.relief.on_hand import way_of
from tapmodel.tap.tap import Tap
from tapmodel.words import ReliefKind, ReliefPlace, ReliefWay


class Step(StrEnum):
    """An operation; they follow each other as they stand here, but for a relief that is ground."""

    SAW = "saw"
    CENTRE = "centre"
    SHANK = "shank"
    BODY = "body"
    NECK = "neck"
    THREAD = "thread"
    CHAMFER = "chamfer"
    SQUARE = "square"
    FLUTES = "flutes"
    DEBURR = "deburr"
    MARK = "mark"
    RELIEVE = "relieve"
    CARBURISE = "carburise"
    HARDEN = "harden"
    TEMPER = "temper"
    CLEAN = "clean"
    HONE = "hone"
    STUB = "stub"
    PROVE = "prove"


def order_of_work(design: TapDesign) -> tuple[Step, ...]:
    """The operations that this tap asks for, first to last.

    Source: common practice.
    """
    tap, absent = design.tap, set[Step]()
    if not tap.blank.has_neck:
        absent.add(Step.NECK)
    if not relieved(tap):
        absent.add(Step.RELIEVE)
    if not design.work.steel.case_depth:
        absent.add(Step.CARBURISE)
    if male_point(tap) is None:
        absent.add(Step.STUB)
    order = [step for step in Step if step not in absent]
    if Step.RELIEVE in order and grinds_hard(design):
        order.remove(Step.RELIEVE)
        order.insert(order.index(Step.HONE), Step.RELIEVE)
    return tuple(order)


def grinds_hard(design: TapDesign) -> bool:
    """Whether reliefs are ground in hard steel: a file asks for soft, and a case is ground off.

    Source: common practice.
    """
    return way_of(design) is not ReliefWay.FILE and not design.work.steel.case_depth


def relieved(tap: Tap) -> tuple[ReliefPlace, ...]:
    """What of a tap is relieved at all."""
    reliefs = (tap.relief.thread, tap.relief.chamfer)
    return tuple(one.applies_to for one in reliefs if one.kind is not ReliefKind.CONCENTRIC)


def wires_after_flutes(tap: Tap) -> bool:
    """Whether wires still find a land opposite a land once the flutes are milled.

    Source: derived here; of an odd number of flutes each land faces a flute.
    """
    return tap.flutes.count % 2 == 0


def wires_when_finished(tap: Tap) -> bool:
    """Whether the finished tap can be measured over wires: no relief has moved its flanks back."""
    return wires_after_flutes(tap) and ReliefPlace.THREAD not in relieved(tap)
