"""The grammar of ISO metric thread designations.

M10, M18x0.75, M20x1.5-6H-LH, M8x1-4H5H, and with several starts M20xPh3P1.5 (lead, pitch).
"""

import re
from dataclasses import dataclass
from typing import NoReturn

from tapmodel.errors import InputError
from tapmodel.spec.hole_class import HoleClass, default_hole_class, parse_hole_class
from tapmodel.words import Hand

__all__ = [
    "Designation",
    "HoleClass",
    "default_hole_class",
    "parse",
    "parse_hole_class",
]

MAX_STARTS = 8
ALLOWED = "an ISO metric thread in mm, then if wanted the class of the hole and the hand"
EXAMPLES = "M10, M18x0.75, M10-6G, M8x1-4H5H, M20x1.5-6H-LH or M20xPh3P1.5 (lead and pitch)"

_NUMBER = r"([0-9]{1,4}(?:[.,][0-9]{1,5})?)"
_SIZE = re.compile(
    rf"m\s*{_NUMBER}(?:\s*[x\u00d7]\s*(?:{_NUMBER}|ph\s*{_NUMBER}\s*p\s*{_NUMBER}))?((?:[\s-].*)?)",
    re.IGNORECASE,
)
_HANDS = {"LH": Hand.LEFT, "RH": Hand.RIGHT}


@dataclass(frozen=True, slots=True, eq=False)
class Designation:
    """What a thread designation says, and nothing that must be looked up.

    Two designations are equal when they name the same thread, however they are typed; a class
    that equals the one meant by its absence makes no difference.

    Attributes:
        diameter: nominal diameter [mm].
        pitch: axial distance of neighbouring threads [mm]; None where the text leaves it to the
            coarse series.
        hand: right or left.
        hole_class: None where the text gives none; see `effective_class`.
        text: as typed.
        starts: number of threads side by side; the lead is `starts * pitch`.
    """

    diameter: float
    pitch: float | None
    hand: Hand
    hole_class: HoleClass | None
    text: str
    starts: int = 1

    @property
    def effective_class(self) -> HoleClass:
        """The class given, else the one that ISO 965-1 means by giving none."""
        return self.hole_class or default_hole_class(self.diameter)

    def canonical(self) -> str:
        """Shortest standard text of the same thread, e.g. "M18x0.75-6G-LH"."""
        parts = [f"M{_plain(self.diameter)}{self._pitch_text()}"]
        if self.effective_class != default_hole_class(self.diameter):
            parts.append(str(self.effective_class))
        if self.hand is Hand.LEFT:
            parts.append("LH")
        return "-".join(parts)

    def _pitch_text(self) -> str:
        if self.pitch is None:
            return ""
        if self.starts == 1:
            return f"x{_plain(self.pitch)}"
        return f"xPh{_plain(self.starts * self.pitch)}P{_plain(self.pitch)}"

    def _identity(self) -> tuple[object, ...]:
        return self.diameter, self.pitch, self.starts, self.hand, self.effective_class

    def __eq__(self, other: object) -> bool:
        """Whether both name the same thread."""
        return isinstance(other, Designation) and self._identity() == other._identity()

    def __hash__(self) -> int:
        """Hash of what makes two designations equal."""
        return hash(self._identity())


def parse(text: str) -> Designation:
    """Read a designation; capital or small M and x, ×, decimal comma and blanks are accepted.

    Raises:
        InputError: the text is no ISO metric designation; the message shows the allowed forms.
    """
    match = _SIZE.fullmatch(text.strip().replace("\u2013", "-"))
    if match is None:
        _refuse(text)
    diameter, plain_pitch, lead, start_pitch, rest = match.groups()
    pitch = _positive(text, plain_pitch or start_pitch)
    hand, hole_class = _suffixes(text, rest)
    size = _positive(text, diameter)
    if size is None:
        _refuse(text)
    return Designation(
        diameter=size,
        pitch=pitch,
        hand=hand,
        hole_class=hole_class,
        text=text,
        starts=_starts(text, _positive(text, lead), pitch),
    )


def _positive(text: str, number: str | None) -> float | None:
    if number is None:
        return None
    value = float(number.replace(",", "."))
    if value == 0:
        _refuse(text, "sizes over 0 mm")
    return value


def _starts(text: str, lead: float | None, pitch: float | None) -> int:
    if lead is None or pitch is None:
        return 1
    starts = round(lead / pitch)
    # Typed numbers have at most five decimals; a true multiple misses only by binary noise.
    if not 1 <= starts <= MAX_STARTS or abs(lead - starts * pitch) > 1e-6:
        _refuse(text, f"a lead Ph that is 1 to {MAX_STARTS} times the pitch P")
    return starts


def _suffixes(text: str, rest: str) -> tuple[Hand, HoleClass | None]:
    """Hand and class from what follows the size, in any order, each at most once."""
    words = re.split(r"\s*-\s*|\s+", rest.strip().removeprefix("-").strip()) if rest else []
    hands = [_HANDS[word.upper()] for word in words if word.upper() in _HANDS]
    classes = [word for word in words if word.upper() not in _HANDS]
    if len(hands) > 1 or len(classes) > 1 or "" in words:
        _refuse(text)
    return (hands or [Hand.RIGHT])[0], _class(text, classes[0]) if classes else None


def _class(text: str, word: str) -> HoleClass:
    try:
        return parse_hole_class(word)
    except InputError as error:
        _refuse(text, error.allowed)


def _refuse(text: str, allowed: str = ALLOWED) -> NoReturn:
    raise InputError("designation", text, f"{allowed}; for instance {EXAMPLES}")


def _plain(number: float) -> str:
    """Shortest decimal text of a number of mm, without exponent or idle zeros."""
    return f"{number:.8f}".rstrip("0").rstrip(".")
