"""The words that every program is made of: moves in either unit, comments, beginning and end.

Only what every control reads: G0, G1, G17, G20 or G21, G40, G49, G80, G90, G94, M0, M2, M3, M5 and
comments in parentheses; no arcs, no cycles, no tool changer. Each move stands on a line of its own
with all that changes.
"""

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.shop.cutting_speed import STEP_SHARE, Cut, speed, table_feed
from tapmodel.shop.tapping_speed import revolutions
from tapmodel.standards.inches import MM
from tapmodel.words import Units

PROVE = (
    "PROVE IT FIRST IN AIR: above the work, spindle off, one block at a time",
    "Calculated, not measured: check zero, tool and clearances before each run",
)
"""What no program is run without."""

ABOVE = 10.0
"""Air above the thickest part when the cutter goes from one place to another [mm]."""

_DIGITS = {Units.MM: 4, Units.INCH: 5}
_NO_COMMENT = re.compile(r"[^A-Za-z0-9 .,:;/+=*'_-]")


@dataclass(frozen=True, slots=True)
class Speed:
    """Of a cutter.

    Attributes:
        turns: of the spindle [1/min].
        feed: [mm/min].
    """

    turns: float
    feed: float


def speed_of(cutter: float, design: TapDesign) -> Speed:
    """Speed of a cutter of that diameter [mm] in the steel of a tap, rounded for reading.

    Source: as `tapmodel.shop.cutting_speed`.
    """
    steel = design.work.steel.name
    turns = revolutions(speed(steel, Cut.MILLING), cutter)
    return Speed(float(f"{turns:.2g}"), float(f"{table_feed(steel, cutter):.2g}"))


def depths(top: float, last: float, cutter: float) -> tuple[float, ...]:
    """Heights of the passes of a cutter from a surface down to its last one, in even steps [mm].

    Source: `STEP_SHARE` of the cutter's diameter at the most.
    """
    passes = max(math.ceil((top - last) / (STEP_SHARE * cutter)), 1)
    return tuple(top + (last - top) * number / passes for number in range(1, passes + 1))


def sized(length: float, units: Units) -> str:
    """A length [mm] in the words of a comment, in the unit of the program."""
    if units is Units.INCH:
        return f"{length / float(MM):.4f} in"
    return f"{length:.4g} mm"


def turned_by(*, by_hand: bool) -> str:
    """What turns the work, as a note."""
    return "at each M0 you turn the work by the dividing head" if by_hand else "A turns the work"


class Program:
    """The lines of a program as they are added; places in mm, whatever its unit."""

    def __init__(self, title: str, notes: Sequence[str], speed: Speed, units: Units) -> None:
        """Begin: what it makes and how it is set up, then a state that depends on nothing before.

        Args:
            title: of the first line.
            notes: of the lines after it.
            speed: of the cutter.
            units: of its numbers; both is mm.
        """
        self._inch, self._lines = units is Units.INCH, list[str]()
        self._digits = _DIGITS[Units.INCH if self._inch else Units.MM]
        for words in (title, *PROVE, *notes):
            self.comment(words)
        unit = "G20" if self._inch else "G21"
        self._lines += [f"{unit} G17 G40 G49 G80 G90 G94", f"F{self._feed(speed.feed)}"]
        self._start = f"M3 S{speed.turns:.0f}"

    def comment(self, words: str) -> None:
        """Words for the reader, without what a control may stumble over."""
        self._lines.append(f"({_NO_COMMENT.sub('', words)})")

    def spin(self) -> None:
        """Start the spindle, once the cutter stands clear."""
        self._lines.append(self._start)

    def rapid(self, **to: float) -> None:
        """Go there in the air [mm, deg]."""
        self._lines.append(f"G0 {self._words(to)}")

    def cut(self, **to: float) -> None:
        """Go there at the feed [mm, deg]."""
        self._lines.append(f"G1 {self._words(to)}")

    def index(self, angle: float, *, by_hand: bool) -> None:
        """Turn the work to an angle, or stop for somebody to do it [deg]."""
        if by_hand:
            # Nobody turns the work beside a cutter that runs.
            self.comment(f"turn the work to {angle:.4f} degrees, lock it, go on")
            self._lines += ["M5", "M0", self._start]
        else:
            self.rapid(A=angle)

    def ended(self) -> str:
        """The whole text, with the spindle stopped at its end."""
        return "\n".join((*self._lines, "M5", "M2", ""))

    def _words(self, to: dict[str, float]) -> str:
        return " ".join(f"{axis}{self._number(axis, value)}" for axis, value in to.items())

    def _number(self, axis: str, value: float) -> str:
        size = value / float(MM) if self._inch and axis != "A" else value
        digits = 4 if axis == "A" else self._digits
        return f"{round(size, digits) + 0.0:.{digits}f}"

    def _feed(self, feed: float) -> str:
        return f"{feed / float(MM):.2f}" if self._inch else f"{feed:.0f}"
