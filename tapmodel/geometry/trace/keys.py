"""The names of the tap's faces: the key that edges give to the two faces they part."""

from enum import StrEnum
from functools import cache
from typing import NamedTuple

from tapmodel.shape.profile import Part
from tapmodel.shape.walls import FACE


class FaceKind(StrEnum):
    """What a face belongs to."""

    # Tens of thousands of keys are looked up; an enum's own hash is ten times as slow.
    __hash__ = str.__hash__

    STRIP = "strip"
    FLAT = "flat"
    CONE = "cone"
    FRONT = "front"
    RIDGE_END = "ridge end"
    GROOVE_END = "groove end"
    FACE = "face"
    HEEL = "heel"
    FLOOR = "floor"
    RUN_OUT = "run-out"
    BALL = "ball"
    TURNED = "turned"
    RING = "ring"

    @property
    def is_wall(self) -> bool:
        """Whether it is of a flute within the full depth, and may be divided in lengths."""
        return self in (FaceKind.FACE, FaceKind.HEEL, FaceKind.FLOOR)

    @property
    def is_run_out(self) -> bool:
        """Whether it is what the cutter leaves where it stops."""
        return self in (FaceKind.RUN_OUT, FaceKind.BALL)


class FaceKey(NamedTuple):
    """One face of the tap. A kind has no use for some of the numbers; those are then 0.

    A tuple, because it is made and compared quickly: a long tap names its faces 100 000 times.

    Attributes:
        kind: which of the others count hangs on it.
        land: on which it lies, of strips, flats, cones, ends and turned faces.
        flute: in which it lies, of walls and run-outs.
        turn: of the thread, of strips.
        part: of the profile, of strips and flats.
        length: which of a divided wall, from 0 at the front.
        number: of the turned length of the blank behind the thread, of turned faces and the ring.
    """

    kind: FaceKind
    land: int = 0
    flute: int = 0
    turn: int = 0
    part: Part = Part.CREST
    length: int = 0
    number: int = 0

    def __str__(self) -> str:
        """The kind and the numbers that count, as in "strip (land 0, turn 3, root)"."""
        told = [
            str(self.part) if name == "part" else f"{name} {value}" for name, value in self._told()
        ]
        return f"{self.kind} ({', '.join(told)})" if told else str(self.kind)

    def _told(self) -> list[tuple[str, object]]:
        values = self._asdict()
        return [(name, values[name]) for name in _NUMBERS[self.kind]]

    @property
    def carrier(self) -> "FaceKey":
        """One key for all faces that lie on one carrier by their kind: the lengths of a wall."""
        return FaceKey(self.kind, flute=self.flute) if self.kind.is_wall else self

    def on_land(self, land: int) -> "FaceKey":
        """The same turned length on a land; the ring goes round the tap and belongs to all."""
        return self if self.kind is FaceKind.RING else turned(self.number, land)


FacePair = tuple[FaceKey, FaceKey]
"""The faces on the two sides of an edge."""

FRONT = FaceKey(FaceKind.FRONT)
"""The plane in which the tap begins."""

# The faces of the thread and the flutes have many edges each. They share one key, for Python's
# search for garbage goes through every object there is.


@cache
def strip(land: int, turn: int, part: Part) -> FaceKey:
    """A part of the profile along one turn of a land."""
    return FaceKey(FaceKind.STRIP, land, 0, turn, part)


def flat(land: int, part: Part) -> FaceKey:
    """All flat crests (or roots) of a land, which lie on one carrier."""
    return FaceKey(FaceKind.FLAT, land, part=part)


@cache
def cone(land: int) -> FaceKey:
    """The chamfer cone of a land."""
    return FaceKey(FaceKind.CONE, land)


def thread_end(land: int, *, outwards: bool) -> FaceKey:
    """A piece of the thread's end plane: ridges face the rear, grooves the front."""
    return FaceKey(FaceKind.RIDGE_END if outwards else FaceKind.GROOVE_END, land)


def wall_kind(side: int) -> FaceKind:
    """Kind of the straight wall that bounds a land on a side, FACE or HEEL."""
    return FaceKind.FACE if side == FACE else FaceKind.HEEL


@cache
def wall(kind: FaceKind, flute: int, length: int) -> FaceKey:
    """One length of a straight wall or the floor of a flute."""
    return FaceKey(kind, 0, flute, 0, Part.CREST, length)


def run_out(kind: FaceKind, flute: int) -> FaceKey:
    """The ball or the cutter's round shank at the end of a flute."""
    return FaceKey(kind, 0, flute)


def turned(number: int, land: int = 0) -> FaceKey:
    """A turned length of the blank between two flutes; of land 0 where no land is meant."""
    return FaceKey(FaceKind.TURNED, land, number=number)


def ring(number: int) -> FaceKey:
    """The turned length in which the run-outs end, which goes round the tap."""
    return FaceKey(FaceKind.RING, number=number)


_NUMBERS: dict[FaceKind, tuple[str, ...]] = {
    FaceKind.STRIP: ("land", "turn", "part"),
    FaceKind.FLAT: ("land", "part"),
    FaceKind.CONE: ("land",),
    FaceKind.FRONT: (),
    FaceKind.RIDGE_END: ("land",),
    FaceKind.GROOVE_END: ("land",),
    FaceKind.FACE: ("flute", "length"),
    FaceKind.HEEL: ("flute", "length"),
    FaceKind.FLOOR: ("flute", "length"),
    FaceKind.RUN_OUT: ("flute",),
    FaceKind.BALL: ("flute",),
    FaceKind.TURNED: ("number", "land"),
    FaceKind.RING: ("number",),
}
