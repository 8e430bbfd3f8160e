"""Drills by name as people write them: "Z", "letter Z", "#7", "No. 7", "5/16"."""

import re

NAME = r"^([A-Z]|#([1-9]|[1-7][0-9]|80))$"
"""Pattern of a name: a letter, or a number from 1 to 80 behind its mark."""

_SPELLED = re.compile(
    r"(?:(?:letter\s*)?(?P<letter>[a-z])|(?:#|no\.?|number)\s*(?P<number>[0-9]{1,2}))",
    re.IGNORECASE | re.ASCII,
)


def drill_name(value: object) -> object:
    """A text that names a drill, as it is stamped; whatever else it is, as it is."""
    found = _SPELLED.fullmatch(value.strip()) if isinstance(value, str) else None
    if found is None:
        return value
    return found["letter"].upper() if found["letter"] else f"#{int(found['number'])}"


_FRACTION = re.compile(r"(?:[0-9]{1,2}[ -])?[0-9]{1,2}/(?:2|4|8|16|32|64)", re.ASCII)


def with_inches(value: object) -> object:
    """A text that is the name of a fraction drill, "5/16", with its unit; else as it is."""
    named = isinstance(value, str) and _FRACTION.fullmatch(value.strip())
    return f"{str(value).strip()}in" if named else value
