"""Values that settle the same thing twice: which may not stand together in one job."""

from collections.abc import Mapping

from tapmodel.errors import InputError
from tapmodel.words import ReliefKind

EXCLUSIVE: tuple[tuple[str, ...], ...] = (
    ("thread.aim", "thread.pitch_diameter"),
    ("thread.major", "thread.crest_flat", "thread.crest_radius"),
    ("thread.root_flat", "thread.root_radius"),
    ("chamfer.form", "chamfer.pitches", "chamfer.length"),
    ("flutes.rake", "flutes.offset"),
    ("flutes.core_diameter", "flutes.depth_from_top"),
    ("relief.thread.edge_angle", "relief.thread.heel_drop"),
    ("relief.chamfer.edge_angle", "relief.chamfer.heel_drop"),
    ("blank.square_length", "blank.square_start"),
)
"""At most one of each row: the others follow from it."""

CHAMFER_LENGTH = ("chamfer.form", "chamfer.pitches", "chamfer.length")

BEFORE = ("set.before_major", "set.before_pitch_diameter")
"""What the tap before leaves."""

CRESTS = frozenset({"thread.major", "thread.crest_flat", "thread.crest_radius"})
"""Each settles how high a thread is."""

RELIEF_NUMBERS: dict[str, tuple[str, ...]] = {
    ReliefKind.CONCENTRIC.value: (),
    ReliefKind.CON_ECCENTRIC.value: ("margin_angle", "heel_drop"),
    ReliefKind.ECCENTRIC.value: ("edge_angle", "heel_drop"),
}
"""Which numbers each kind of relief takes."""


def refuse_conflicts(given: Mapping[str, object]) -> None:
    """Stop at the first pair of values of `given` (dotted names) that contradict each other.

    Raises:
        InputError: naming both fields and which to delete.
    """
    for row in EXCLUSIVE:
        both = [name for name in row if name in given]
        if len(both) > 1:
            raise InputError(
                f"{both[0]} together with {both[1]}",
                f"{given[both[0]]} and {given[both[1]]}",
                f"one of {', '.join(row)}; the others follow from it, so delete all but one",
            )
    _refuse_overfixed_chamfer(given)
    _refuse_half_neck(given)
    _refuse_half_set(given)
    for place in ("thread", "chamfer"):
        _refuse_foreign_numbers(given, f"relief.{place}.")


def _refuse_overfixed_chamfer(given: Mapping[str, object]) -> None:
    length = next((name for name in CHAMFER_LENGTH if name in given), None)
    if length and "chamfer.angle" in given and "chamfer.point_diameter" in given:
        raise InputError(
            f"chamfer.angle together with chamfer.point_diameter and {length}",
            f"{given['chamfer.angle']}, {given['chamfer.point_diameter']}, {given[length]}",
            "two of length, angle and point diameter; the third follows, so delete one",
        )


def _refuse_half_neck(given: Mapping[str, object]) -> None:
    diameter, length = given.get("blank.neck_diameter"), given.get("blank.neck_length")
    if diameter is not None and length is not None and (diameter == 0) != (length == 0):
        raise InputError(
            "blank.neck_diameter together with blank.neck_length",
            f"{diameter} and {length}",
            "both 0 for no neck, or both more than 0; delete one and it follows",
        )


def _refuse_half_set(given: Mapping[str, object]) -> None:
    """A tap of a set is told in full: which it is, what the one before leaves, what is its own."""
    number, taps = given.get("set.number"), given.get("set.taps")
    before = [name for name in BEFORE if name in given]
    if number is None and taps is None and not before:
        return
    if not isinstance(number, int) or not isinstance(taps, int):
        missing = "set.number" if number is None else "set.taps"
        raise InputError(
            missing, "none", "1, 2 or 3 where the job is for a tap of a set, of 2 or 3 taps"
        )
    if number > taps:
        raise InputError("set.number", str(number), f"at most set.taps, {taps}")
    if number == 1 and before:
        raise InputError(
            before[0], str(given[before[0]]), "nothing, as no tap goes before the first"
        )
    lack = [name for name in BEFORE if name not in given] if number > 1 else []
    if number < taps:
        lack += [] if "thread.pitch_diameter" in given else ["thread.pitch_diameter"]
        lack += [] if CRESTS & set(given) else ["thread.major"]
    if lack:
        raise InputError(lack[0], "none", f"a length, as this is tap {number} of a set of {taps}")
    if number < taps and "thread.crest_radius" in given:
        raise InputError(
            "thread.crest_radius",
            str(given["thread.crest_radius"]),
            "thread.major instead, as a tap that goes before another has flat crests",
        )


def _refuse_foreign_numbers(given: Mapping[str, object], prefix: str) -> None:
    numbers = [n for n in ("margin_angle", "edge_angle", "heel_drop") if prefix + n in given]
    kinds = [kind for kind, takes in RELIEF_NUMBERS.items() if set(numbers) <= set(takes)]
    kind = given.get(prefix + "kind")
    if kind is None and kinds:
        return
    if kind is None:
        raise InputError(
            f"{prefix}margin_angle together with {prefix}edge_angle",
            f"{given[prefix + 'margin_angle']} and {given[prefix + 'edge_angle']}",
            "a margin belongs to con-eccentric relief, an edge angle to eccentric; delete one",
        )
    if kind not in kinds:
        takes = RELIEF_NUMBERS[str(kind)]
        foreign = next(name for name in numbers if name not in takes)
        raise InputError(
            f"{prefix}{foreign} together with {prefix}kind",
            f"{given[prefix + foreign]} and {kind}",
            f"{kind} relief takes {' or '.join(takes) or 'no numbers'}; delete {prefix}{foreign}",
        )
