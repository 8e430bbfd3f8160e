"""Whether the tap is one of a set, and what the tap before it leaves in the hole."""

from tapmodel.designing.choose.hole import TappedHole
from tapmodel.designing.choose.ledger import Ledger
from tapmodel.designing.choose.thread import roughs, tap_thread
from tapmodel.errors import InputError
from tapmodel.prediction.part import Part, earlier
from tapmodel.prediction.sets import tallest_before
from tapmodel.spec.conflicts import BEFORE, CRESTS
from tapmodel.tap.tap import TapThread

OF_ROUGHING = frozenset({"thread.pitch_diameter", *CRESTS})
"""What the job of a tap that goes before another says of itself alone, not of the thread to cut."""


def part_of_set(thread: TapThread, hole: TappedHole, ledger: Ledger) -> Part | None:
    """The part of a tap with that thread; None where the job does not speak of a set.

    The whole thread is that of the last tap: its own, or, for one that goes before, what the rules
    make of the same hole.

    Raises:
        InputError: a tap before this one that is no tap, cuts nothing or does not lie inside it.

    Source: derived here.
    """
    number, taps = ledger.given("set.number"), ledger.given("set.taps")
    if number is None or taps is None:
        return None
    whole = thread
    if roughs(ledger):
        whole, _ = tap_thread(hole, ledger.without(OF_ROUGHING))
    return Part(int(number), int(taps), _before(thread, hole, ledger), whole)


def _before(thread: TapThread, hole: TappedHole, ledger: Ledger) -> TapThread | None:
    major, pitch_diameter = (ledger.given(field) for field in BEFORE)
    if major is None or pitch_diameter is None:
        return None
    if not hole.drill < pitch_diameter <= thread.pitch_diameter:
        raise InputError(
            "set.before_pitch_diameter",
            f"{pitch_diameter:g} mm",
            f"more than the drill, {hole.drill:g} mm, and at most that of this tap, "
            f"{thread.pitch_diameter:.6g} mm",
        )
    tallest = tallest_before(thread, pitch_diameter)
    if not hole.drill < major <= tallest:
        raise InputError(
            "set.before_major",
            f"{major:g} mm",
            f"more than the drill, {hole.drill:g} mm, and at most {tallest:.6g} mm, so that its "
            "thread lies inside that of this tap",
        )
    return earlier(thread, major, pitch_diameter)
