"""What a run will take, told before it begins: time, memory and size of its files.

All grow with the number of teeth, which is lands times turns, and little with anything else. The
constants were fitted on 2026-11-26 to M20x1.25 with 3 lands and 96 to 1500 turns, on two cores of a
server (see `tests/benchmarks/growth.py`); another tap or machine may take half or twice as much.
"""

from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.run.crew import Limits


@dataclass(frozen=True, slots=True)
class Law:
    """Seconds of the slower process, memory of the larger [MB], files [MB]: as `a + b * teeth`."""

    seconds: tuple[float, float]
    memory_mb: tuple[float, float]
    files_mb: tuple[float, float]


BUILD = Law((3.0, 0.02), (500.0, 0.55), (2.0, 0.042))
PREVIEW = Law((1.0, 0.005), (300.0, 0.2), (1.0, 0.01))

LONG = 30.0
"""Seconds from which a user is told beforehand."""

# Arcs in place of flats have a surface and triangles each.
_ROUNDED = 2.0


@dataclass(frozen=True, slots=True)
class Estimate:
    """What a run will take."""

    teeth: float
    seconds: float
    memory_mb: float
    files_mb: float

    def __str__(self) -> str:
        """As it is told."""
        time = f"{self.seconds:.0f} s" if self.seconds < 100 else f"{self.seconds / 60:.0f} min"
        memory = f"{self.memory_mb / 1000:.1f} GB of memory for each process"
        return f"about {time}, {memory}, {self.files_mb:.0f} MB of files"


def estimate(design: TapDesign, law: Law = BUILD) -> Estimate:
    """What a run of `design` will take."""
    thread = design.tap.thread
    teeth = design.tap.flutes.count * design.tap.blank.thread_length / thread.pitch
    weight = _ROUNDED if thread.crest_radius or thread.root_radius else 1.0
    seconds, memory, files = (
        fixed + each * weight * teeth for fixed, each in (law.seconds, law.memory_mb, law.files_mb)
    )
    return Estimate(teeth, seconds, memory, files)


def demand_within(foreseen: Estimate, limits: Limits) -> None:
    """Refuse a run that would be stopped on the way.

    Raises:
        InputError: when it will take more than `limits` allow; it says what to change.
    """
    for option, needed, allowed in (
        ("--limit-seconds", foreseen.seconds, limits.seconds),
        ("--limit-mb", foreseen.memory_mb, limits.memory_mb),
    ):
        if needed > allowed:
            enough = f"at least {needed:.0f} for the {foreseen.teeth:.0f} teeth of this tap"
            cure = "or a shorter thread, a coarser pitch, fewer flutes"
            raise InputError(option, allowed, f"{enough}; {cure}")
