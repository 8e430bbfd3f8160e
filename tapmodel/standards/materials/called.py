"""Names of materials as people call them, beside those of the tables."""

import re


def key(text: str) -> str:
    """A name without case and signs; a plus stays, which alone tells a heat-treated steel."""
    return re.sub(r"[^0-9a-z+]", "", text.casefold())


def told_beside(called: str, name: str) -> str:
    """What a material is called, with its name behind: "brass (CuZn39Pb3)"; once if they agree."""
    word = " ".join(called.split())
    return name if not word or key(word) == key(name) else f"{word} ({name})"
