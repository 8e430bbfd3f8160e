"""Slips of the pen in designations, mended: what is offered in place of a text that is not read.

A letter too many or too few (MF64x1, T16x8, W3/8), a stroke for a cross (M64/1), the name of
Whitworth misspelt, lead and pitch in each other's place, a pitch in brackets without its P.
"""

import re
from difflib import get_close_matches

from tapmodel.spec.designations.refusal import starts_of

_NUMBER = r"[0-9]{1,4}(?:\.[0-9]{1,5})?"
_INCHES = r"(?:[0-9]{1,2}[ -])?[0-9]{1,2}/[0-9]{1,2}"

_SLIPS = (
    (re.compile(r"^mf(?=\s*[0-9])", re.IGNORECASE), "M"),
    (re.compile(rf"^(m\s*{_NUMBER})\s*/\s*(?=[0-9])", re.IGNORECASE), r"\1x"),
    (re.compile(rf"^t(?=\s*{_NUMBER}\s*x)", re.IGNORECASE), "Tr"),
    (re.compile(rf"\(\s*(?={_NUMBER}\s*\)$|{_NUMBER}\s*\)[\s-])"), "(P"),
    (re.compile(rf"^w\s*(?={_INCHES})", re.IGNORECASE), "BSW "),
    (re.compile(rf"^({_INCHES})[\s-]*w\b", re.IGNORECASE), r"\1 BSW"),
)
"""What is mistyped, and what was meant by it."""

_SWAPPED = re.compile(
    rf"(?P<head>x\s*(?:ph\s*)?)(?P<lead>{_NUMBER})(?P<between>\s*\(?\s*p\s*)(?P<pitch>{_NUMBER})",
    re.IGNORECASE,
)
_WORD = re.compile(r"[a-z]{6,12}", re.IGNORECASE)
_NEAR = 0.75


def respelled(typed: str) -> str:
    """The text with its slips mended; itself where it has none that is known."""
    for slip, mended in _SLIPS:
        typed = slip.sub(mended, typed)
    return _WORD.sub(_name, _SWAPPED.sub(_in_order, typed, count=1))


def _in_order(found: re.Match[str]) -> str:
    """The lead before the pitch, where they fit each other the other way round alone."""
    lead, pitch = float(found["lead"]), float(found["pitch"])
    if not 0 < lead < pitch or starts_of(pitch, lead) is None:
        return found[0]
    return f"{found['head']}{found['pitch']}{found['between']}{found['lead']}"


def _name(found: re.Match[str]) -> str:
    word = found[0]
    return "Whitworth" if get_close_matches(word.lower(), ["whitworth"], cutoff=_NEAR) else word
