"""The text of a STEP file: statements, each content once, and numbers in few digits.

The surface that all crests of a land lie on, a corner in which three curves end and the curve by
which every turn crosses a wall are written once, however often they are used.
"""

from collections.abc import Iterable, Sequence

# Points: a hundredth of the closeness of curves and surfaces [mm].
_POINT = "%.8f"
# Knots, directions and weights: times the size of a tap they are as fine.
_FINE = "%.12f"


class Statements:
    """The data section, growing statement by statement."""

    def __init__(self) -> None:
        """Begin without any."""
        self.lines: list[str] = []
        self._known: dict[str, str] = {}

    def own(self, content: str) -> str:
        """A statement of its own; the reference to it."""
        reference = f"#{len(self.lines) + 1}"
        self.lines.append(f"{reference}={content};")
        return reference

    def shared(self, content: str) -> str:
        """The statement that says this, made if there is none; the reference to it."""
        if content not in self._known:
            self._known[content] = self.own(content)
        return self._known[content]

    def point(self, coordinates: Iterable[float], *, fine: bool = False) -> str:
        """A point of a surface's parameters or of space [mm], on request as fine as directions."""
        written = reals(coordinates) if fine else ",".join(map(_coordinate, coordinates))
        return self.shared(f"CARTESIAN_POINT('',({written}))")

    def direction(self, coordinates: Iterable[float]) -> str:
        """A direction of unit length."""
        return self.shared(f"DIRECTION('',({reals(coordinates)}))")


def _coordinate(value: float) -> str:
    return _short(_POINT % value)


def real(value: float) -> str:
    """A number other than a coordinate."""
    return _short(_FINE % value)


def reals(values: Iterable[float]) -> str:
    """Numbers other than coordinates, with commas between them."""
    return ",".join(map(real, values))


def integers(values: Iterable[int]) -> str:
    """Whole numbers with commas between them."""
    return ",".join(map(str, values))


def rows(references: Iterable[Sequence[str]]) -> str:
    """A list of lists, without the outer brackets."""
    return ",".join(f"({','.join(row)})" for row in references)


def _short(digits: str) -> str:
    text = digits.rstrip("0")
    return "0." if text == "-0." else text


def text(words: str) -> str:
    """A string in the plain letters of ISO 10303-21, with its apostrophes.

    Source: ISO 10303-21 clause 6.4.3 (from memory): apostrophes and backslashes doubled, other
    letters as hexadecimals, of four digits after X2 or of eight after X4.
    """
    return f"'{''.join(map(_letter, words))}'"


def _letter(c: str) -> str:
    code = ord(c)
    if c in "'\\":
        return c + c
    if 31 < code < 127:
        return c
    return f"\\X2\\{code:04X}\\X0\\" if code < 0x10000 else f"\\X4\\{code:08X}\\X0\\"
