"""General-purpose Acme designations, as ASME B1.5 writes them.

1/2-10 ACME-2G, 1-5 ACME-3G-LH, and with several starts 0.500-0.1P-0.2L-ACME-2G (pitch, lead).
"""

import re
from fractions import Fraction

from tapmodel.errors import InputError
from tapmodel.spec.designations.reading.inches import (
    MM,
    SIZE,
    UNIT,
    decimal_text,
    inches_of,
    millimetres,
    size_text,
)
from tapmodel.spec.designations.reading.suffixes import plain, read_suffixes
from tapmodel.spec.designations.record import Designation, Grammar
from tapmodel.spec.designations.refusal import MAX_STARTS, Refusal
from tapmodel.words import Family, Hand

FOUR_PLACES = Fraction(1, 10**4)
ALLOWED = (
    "a general-purpose Acme thread as size-threads per inch ACME, or size-pitchP-leadL-ACME in "
    "inches for several starts, then if wanted the class 2G, 3G or 4G and the hand"
)
ALLOWED_CLASSES = "a class of general-purpose Acme threads: 2G, 3G or 4G"
EXAMPLES = "1/2-10 ACME, 1-5 ACME-2G-LH or 0.500-0.1P-0.2L-ACME-2G (pitch and lead)"

_refuse = Refusal(ALLOWED, EXAMPLES)

_LENGTH = r"(?:[0-9]?\.[0-9]{1,6}|[0-9])"
_SIZE = re.compile(
    rf"(?P<size>{SIZE}){UNIT}(?:\s*[-x]\s*|\s+)(?:(?P<tpi>[0-9]{{1,2}}(?:\.[0-9]{{1,4}})?)|"
    rf"(?P<pitch>{_LENGTH})\s*p\s*-\s*(?P<lead>{_LENGTH})\s*l)"
    r"[\s-]*(?P<stub>stub\s+)?acme(?P<rest>(?:[\s-].*)?)",
    re.IGNORECASE,
)


def read(text: str) -> Designation | None:
    """Read a text; capital or small letters and blanks are accepted.

    Raises:
        InputError: the text speaks of Acme and is no such designation.
    """
    if "acme" not in text.lower():
        return None
    match = _SIZE.fullmatch(text.strip())
    if match is None:
        _refuse(text)
    if match["stub"]:
        _refuse(text, f"{ALLOWED}; stub Acme is another form, which this program does not know")

    hand, hole_class = read_suffixes(text, match["rest"], read_class, _refuse)
    diameter = inches_of(match["size"]) or _refuse(text, "a size over 0 inches")
    pitch, starts = _pitch_and_starts(text, match)
    return Designation(
        family=Family.ACME,
        diameter=millimetres(diameter),
        pitch=millimetres(pitch),
        hand=hand,
        hole_class=hole_class,
        default_class="2G",
        text=text,
        starts=starts,
        size=size_text(diameter),
    )


def write(designation: Designation) -> str:
    """Standard text, always with the class, e.g. "1-5 ACME-2G-LH"."""
    pitch = Fraction(designation.pitch or 1.0) / MM
    threads = round(float(1 / pitch), 6)
    if designation.starts == 1 and threads == round(threads, 4):
        thread = f"{designation.size}-{plain(threads)} ACME"
    else:
        places = 4 if threads == round(threads) else 6
        lengths = (f"{plain(round(float(n * pitch), places))}" for n in (1, designation.starts))
        size = decimal_text(Fraction(round(designation.diameter / float(MM), 6)))
        thread = "{}-{}P-{}L-ACME".format(size, *lengths)
    hands = ["LH"] if designation.hand is Hand.LEFT else []
    return "-".join([thread, designation.effective_class, *hands])


def read_class(word: str) -> str:
    """2G, 3G or 4G in capital letters.

    Raises:
        InputError: anything else; a centralizing class is told from these.
    """
    name = word.strip().upper()
    if re.fullmatch("[2-6]C", name):
        allowed = f"{ALLOWED_CLASSES}; C marks centralizing threads, which this program cannot make"
        raise InputError("hole.class", word, allowed)
    if name not in ("2G", "3G", "4G"):
        raise InputError("hole.class", word, ALLOWED_CLASSES)
    return name


def _pitch_and_starts(text: str, match: re.Match[str]) -> tuple[Fraction, int]:
    """Pitch [in] and starts.

    A pitch of four or more places that is a rounded whole number of threads per inch means that.
    """
    if match["tpi"]:
        threads = Fraction(match["tpi"]) or _refuse(text, "more than 0 threads per inch")
        return 1 / threads, 1
    typed = Fraction(match["pitch"]) or _refuse(text, "a pitch over 0 inch")
    whole = Fraction(1, round(1 / typed) or 1)
    digit = _last_digit(match["pitch"])
    pitch = whole if digit <= FOUR_PLACES and abs(whole - typed) <= digit / 2 else typed
    lead = Fraction(match["lead"])
    starts = round(lead / pitch)
    near = min(_last_digit(match["lead"]), pitch / 50)
    if not 1 <= starts <= MAX_STARTS or abs(lead - starts * pitch) > near:
        _refuse(text, f"a lead L that is 1 to {MAX_STARTS} times the pitch P")
    return pitch, starts


def _last_digit(words: str) -> Fraction:
    """One unit of the last decimal that was typed."""
    return Fraction(1, 10 ** len(words.partition(".")[2]))


GRAMMAR = Grammar(read, write, read_class, "1/2-10 ACME-2G, 0.500-0.1P-0.2L-ACME")
