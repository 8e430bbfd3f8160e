"""What a designation says, and what a grammar of one family of threads offers."""

from collections.abc import Callable
from dataclasses import dataclass

from tapmodel.words import Family, Hand


@dataclass(frozen=True, slots=True, eq=False)
class Designation:
    """What a thread designation says, and nothing that must be looked up.

    Two designations are equal when they name the same thread, however they are typed; a class
    that equals the one meant by its absence makes no difference.

    Attributes:
        family: which the text belongs to.
        diameter: nominal diameter [mm]; what it is the diameter of, the family's standard says.
        pitch: axial distance of neighbouring threads [mm]; None where the text leaves it to a
            series of the standard.
        hand: right or left.
        hole_class: tolerance class of the hole as its standard writes it; None where the text
            gives none.
        default_class: the class that the standard means by giving none; "" where it has no
            classes.
        text: as typed.
        starts: number of threads side by side; the lead is `starts * pitch`.
        series: the standard's name for the pairing of diameter and pitch, such as "UNC"; "" where
            there is none or none was given.
        size: the nominal size as its standard writes it, where that is no plain number of mm,
            such as "7/16" or "2" (BA); else "".
    """

    family: Family
    diameter: float
    pitch: float | None
    hand: Hand
    hole_class: str | None
    default_class: str
    text: str
    starts: int = 1
    series: str = ""
    size: str = ""

    @property
    def suffixes(self) -> str:
        """Class and hand that the text gives, as they stand behind a size: "-3B-LH"."""
        hands = ["LH"] if self.hand is Hand.LEFT else []
        return "".join(f"-{word}" for word in (self.hole_class, *hands) if word)

    @property
    def effective_class(self) -> str:
        """The class given, else the one meant by giving none."""
        return self.hole_class or self.default_class

    def _identity(self) -> tuple[object, ...]:
        # Until the pitch is looked up, the series alone tells 1/2 BSW from 1/2 BSF.
        pitch = self.series if self.pitch is None else self.pitch
        return self.family, self.diameter, pitch, self.starts, self.hand, self.effective_class

    def __eq__(self, other: object) -> bool:
        """Whether both name the same thread."""
        return isinstance(other, Designation) and self._identity() == other._identity()

    def __hash__(self) -> int:
        """Hash of what makes two designations equal."""
        return hash(self._identity())


@dataclass(frozen=True, slots=True)
class Grammar:
    """How the designations of one family are read and written.

    Attributes:
        read: the designation in a text; None when the text is of another family. Raises
            InputError when it is of this family and wrong.
        write: shortest standard text of a designation.
        read_class: a tolerance class of the hole in the standard's own writing. Raises InputError.
        examples: for messages, two or three.
        coarsest: largest pitch that any thread of the family has here, as a share of its diameter.
    """

    read: Callable[[str], Designation | None]
    write: Callable[[Designation], str]
    read_class: Callable[[str], str]
    examples: str
    coarsest: float = 1.0
