"""Sweeps whose members differ little: a run of all tests takes a part of each."""

import os
from collections.abc import Sequence
from typing import TypeVar

WHOLE = "TAPMODEL_WHOLE_SWEEPS"
"""Name in the environment by which tests take all of it (`tests/benchmarks/whole.py`)."""

Member = TypeVar("Member")


def whole() -> bool:
    """Whether all of every sweep is wanted."""
    return WHOLE in os.environ


def in_part(members: Sequence[Member], first: int = 0, every: int = 2) -> Sequence[Member]:
    """One of `every` members, from that numbered `first` on; all of them where the whole is wanted.

    Where several sweeps of the same members stand beside one another, each takes another `first`,
    such as its own number, so that together they meet every member.
    """
    return members if whole() else members[first % every :: every]
