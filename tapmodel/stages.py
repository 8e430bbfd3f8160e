"""The stages of a run by name, and a clock that keeps what each takes."""

import time
from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum


class Stage(StrEnum):
    """What a process is doing; the value is what the user and the record are told.

    The second group is never begun: it says closer where within a stage something failed.
    """

    LOADING = "loading"
    EDGES = "edges"
    FACES = "faces"
    REAR = "rear"
    MIRROR = "mirror"
    MESH = "mesh"
    STEP_FILE = "STEP file"
    PROOF = "proof"
    READ_BACK = "read back"
    PAPERS = "papers"
    WAITING = "waiting"
    MESH_PROOF = "mesh proof"
    MESH_FILES = "mesh files"
    PICTURES = "pictures"
    PAGE = "page"
    DELIVERY = "delivery"

    SQUARE = "square"
    REAR_CENTRE = "rear centre"
    PREVIEW = "preview"
    MEASURE = "measure"
    SECTION = "section"
    LIKENESS = "likeness"
    STEP = "STEP"
    STL = "STL"
    GLB = "GLB"
    THREE_MF = "3MF"
    KERNEL = "kernel"
    MEMORY = "memory"


OnStage = Callable[[Stage], None]
"""A listener: told each stage as it begins."""


@dataclass(slots=True)
class Taken:
    """Seconds by the clock and of the processors."""

    wall: float = 0.0
    processor: float = 0.0


class Clock:
    """What each stage of one process takes."""

    def __init__(self) -> None:
        """Begin with loading."""
        self.taken: dict[Stage, Taken] = {}
        self._stage, self._since = Stage.LOADING, _now()

    def begin(self, stage: Stage) -> None:
        """Close the running stage and begin `stage`, which may have run before."""
        now, taken = _now(), self.taken.setdefault(self._stage, Taken())
        taken.wall += now.wall - self._since.wall
        taken.processor += now.processor - self._since.processor
        self._stage, self._since = stage, now

    def stop(self) -> dict[Stage, Taken]:
        """Close the running stage; what all took."""
        self.begin(self._stage)
        return self.taken


def _now() -> Taken:
    return Taken(time.perf_counter(), time.process_time())
