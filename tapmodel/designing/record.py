"""The design of a tap: what it is, what follows from that, why, and what is wrong with it."""

from dataclasses import dataclass
from enum import StrEnum

from tapmodel.designing.choice import Choice
from tapmodel.designing.work import Work
from tapmodel.findings import Finding
from tapmodel.prediction.part import Part
from tapmodel.prediction.prediction import Prediction, Task
from tapmodel.prediction.torque.record import HoleToTap
from tapmodel.shape.figures import Figures, ReliefFigures
from tapmodel.shape.flute_section import rake, section_of
from tapmodel.shape.turned import reach
from tapmodel.spec.measured.record import Measured
from tapmodel.standards.limits import HoleLimits, TapLimits
from tapmodel.tap.tap import Relief, Tap
from tapmodel.words import Severity

ROOM_IN_PITCHES = 1.0
"""Under the tap's front in a hole with a bottom, beside room for the chips that fall."""


class Lacking(StrEnum):
    """Why sizes that were measured leave no tap."""

    ORDER = "order"
    """Root, pitch line and crest do not lie one above the other."""
    CREST = "crest"
    """The flanks of a ridge meet below the crest."""
    ROOT = "root"
    """The flanks of a groove meet above the root."""
    CHAMFER = "chamfer"
    """The point is as thick as the crests."""
    CORE = "core"
    """The cutter stands so far aside that no core as thin is left."""
    LAND = "land"
    """The flutes leave no land."""
    DROP = "drop"
    """No land drops so far."""
    SOLID = "solid"
    """A rule finds no solid; its finding stands in the design."""


@dataclass(frozen=True, slots=True)
class NotMade:
    """Sizes that were measured and leave no tap to describe.

    Attributes:
        why: in short.
        finding: of the rule that says so, with `Lacking.SOLID` alone.
    """

    why: Lacking
    finding: Finding | None = None


@dataclass(frozen=True, slots=True)
class TapDesign:
    """Everything that is settled about one tap.

    Attributes:
        name: of the job, for files.
        designation: of the thread to be cut, as its standard writes it.
        hole: limits of that thread.
        basic_pitch_diameter: of its nominal size, without any allowance [mm].
        drill: for the hole [mm].
        work: what is tapped, and the steel of the tap.
        limits: of the tap's own thread.
        tap: what the tap is.
        figures: what follows from that.
        choices: every value that was settled, in that order, and why.
        findings: what the rules found.
        wires: for measuring that are on hand, none where the job lists none [mm].
        part: in the work of a set; None for a tap that does all of it.
        prediction: what it will do in the hole; None where it breaks a rule of its geometry.
        measured: what was measured of the tap that was made by it; None where nothing was.
        made: the tap as it is by that, judged and foreseen, or why there is none.
    """

    name: str
    designation: str
    hole: HoleLimits
    basic_pitch_diameter: float
    drill: float
    work: Work
    limits: TapLimits
    tap: Tap
    figures: Figures
    choices: tuple[Choice, ...]
    findings: tuple[Finding, ...]
    wires: tuple[float, ...] = ()
    part: Part | None = None
    prediction: Prediction | None = None
    measured: Measured | None = None
    made: "TapDesign | NotMade | None" = None

    @property
    def errors(self) -> tuple[Finding, ...]:
        """The rules that the design breaks."""
        return tuple(f for f in self.findings if f.severity is Severity.ERROR)

    @property
    def roughs(self) -> bool:
        """Whether another tap of its set finishes the thread."""
        return self.part is not None and not self.part.last

    @property
    def reliefs(self) -> tuple[tuple[Relief, ReliefFigures], tuple[Relief, ReliefFigures]]:
        """The relief of the thread and that of the chamfer, each with its figures."""
        relief, figures = self.tap.relief, self.figures
        return (relief.thread, figures.thread_relief), (relief.chamfer, figures.chamfer_relief)

    @property
    def rake_at_wall(self) -> float:
        """Rake where the wall of the drilled hole begins [deg]; further in nothing is cut."""
        thread = self.tap.thread
        wall = min(max(self.drill, thread.minor), thread.major) / 2
        return rake(section_of(self.tap.flutes), wall)

    @property
    def wear_reserve(self) -> float:
        """How far the tap may wear from its target before the hole falls below its least size [mm].

        In pitch diameter. That a hole is mostly larger than its tap is not counted on. 0 or less
        for a tap that is too small when it is new.

        Source: derived here.
        """
        return self.tap.thread.pitch_diameter - self.hole.pitch_min

    def number(self, field: str) -> float | None:
        """The number that a field of the job was settled to; None where there is none."""
        choice = self.choice(field)
        return float(choice.value) if choice and isinstance(choice.value, int | float) else None

    def numbers(self, field: str) -> tuple[float, ...]:
        """The numbers that a list of the job was settled to; empty where there is none."""
        choice = self.choice(field)
        listed = choice.value if choice and isinstance(choice.value, tuple) else ()
        return tuple(float(entry) for entry in listed)

    def text(self, field: str) -> str | None:
        """The text that a field of the job was settled to; None where there is none."""
        choice = self.choice(field)
        return choice.value if choice and isinstance(choice.value, str) else None

    def words(self, field: str) -> tuple[str, ...]:
        """The words that a list of the job was settled to; empty where there is none."""
        choice = self.choice(field)
        listed = choice.value if choice and isinstance(choice.value, tuple) else ()
        return tuple(str(entry) for entry in listed)

    def choice(self, field: str) -> Choice | None:
        """How a field of the job was settled; None for one that was not, or follows from others."""
        return next((choice for choice in self.choices if choice.field == field), None)

    def finds(self, code: str) -> bool:
        """Whether a rule of that code found something."""
        return any(finding.code == code for finding in self.findings)

    @property
    def task(self) -> Task:
        """What the tap has to do; the least major diameter of the hole is the nominal one."""
        work = self.work
        hole = HoleToTap(self.hole.major_min, self.drill, work.depth, work.blind)
        return Task(self.hole, hole, work.material, work.steel, self.part)

    @property
    def bored(self) -> bool:
        """Whether a rule found no drill on hand: the hole is bored or reamed to its limits."""
        chosen = self.choice("hole.drill")
        return bool(chosen and chosen.rule and chosen.rule.code == "bore-to-limits")

    @property
    def full_thread_depth(self) -> float:
        """How deep the thread of the hole can be full: what enters it, less the chamfer [mm]."""
        entering = reach(self.tap.blank, self.tap.thread.major, self.hole.minor_min)
        return max(0.0, entering - self.tap.chamfer_length)

    @property
    def hole_depth(self) -> float:
        """How deep a blind hole is drilled at least, for full thread as deep as wanted [mm].

        The chamfer goes on below that, and its point must not touch the bottom.
        """
        below = self.tap.chamfer_length + ROOM_IN_PITCHES * self.tap.thread.pitch
        return self.work.depth + below

    @property
    def smallest_hole(self) -> float:
        """What the point must enter [mm]: no drill cuts smaller than it is, a boring bar may."""
        least = self.hole.minor_min
        smaller = self.bored and self.tap.chamfer.point_diameter < least
        return min(self.drill, least) if smaller else self.drill
