"""What has become of a delivery, in words for a user who stops the run; loads nothing."""

from dataclasses import dataclass

NOTHING = "nothing was delivered"


@dataclass(slots=True)
class Fate:
    """The words that are true at this moment."""

    words: str = NOTHING


FATE = Fate()
"""Of this process, which delivers one tap at a time."""
