"""What a text that is no designation was most likely meant to be."""

import re

from tapmodel.spec.designations.reading.number_sizes import means_number

_NUMBER = r"(?:[0-9]{1,3}(?:\.[0-9]{1,4})?|\.[0-9]{1,4})"
_PAIR = re.compile(
    rf"(?P<size>{_NUMBER})\s*(?:mm)?\s*[x\s]\s*(?P<pitch>{_NUMBER})\s*(?:mm)?"
    r"(?P<rest>(?:[\s-]+[0-9a-z]{2,4}){0,2})",
    re.IGNORECASE,
)
_INCHES = re.compile(
    r"(?P<size>(?:[0-9][\s-])?[0-9]{1,2}/[0-9]{1,2})\s*(?:\"|in\b\.?)?"
    r"(?P<hand>[\s-]+[lr]h)?(?P<class>[\s-]+[123]b)?(?(class)(?P<last>[\s-]+[lr]h)?)",
    re.IGNORECASE,
)

COARSEST_METRIC, FINEST_TRAPEZOIDAL = 0.5, 1.5
"""Pitch by diameter above which no metric thread is read; pitch of the finest trapezoidal [mm]."""

COARSEST_NUMBER = 24.0
"""Threads per inch of the coarsest number sizes, 10 and 12."""


def meant(typed: str) -> str:
    """The designations that `typed` comes nearest to, "" where there is no telling."""
    pair = _PAIR.fullmatch(typed)
    if pair:
        return _of_pair(pair)
    inches = _INCHES.fullmatch(typed)
    if inches:
        return _of_inches(inches)
    return ""


def _of_inches(inches: re.Match[str]) -> str:
    size = inches["size"]
    hand = f" {(inches['hand'] or inches['last'] or '').strip(' -').upper()}".rstrip()
    if inches["class"]:
        named = inches["class"].strip(" -").upper()
        return f"a thread with threads per inch, as in {size}-20 {named}{hand}"
    offers = ", ".join(f"{offer}{hand}" for offer in (f"{size} BSW", f"{size} BSF", f"G {size}"))
    return f"{offers}, or with threads per inch as in {size}-20{hand}"


def _of_pair(pair: re.Match[str]) -> str:
    size, pitch, rest = (pair[name] for name in ("size", "pitch", "rest"))
    if "." in size and float(pitch) > float(size) and pitch.isdigit():
        return f"{size}-{pitch}{rest} (inches, and threads per inch)"
    coarse = float(pitch) >= COARSEST_NUMBER
    if size.isdigit() and coarse and means_number(int(size), float(pitch)):
        return f"#{size}-{pitch}{rest} (a number size, and threads per inch)"
    if not 0 < float(pitch) <= COARSEST_METRIC * float(size):
        return ""
    size, pitch = (f"0{text}" if text.startswith(".") else text for text in (size, pitch))
    metric = f"M{size}x{pitch}{rest}"
    if float(pitch) < FINEST_TRAPEZOIDAL:
        return metric
    return f"{metric} (metric) or Tr{size}x{pitch}{rest} (trapezoidal)"
