"""Change gears in words."""

from fractions import Fraction

from tapmodel.report.blocks import Length, Pitch
from tapmodel.report.units import MM_PER_INCH, as_text
from tapmodel.shop.gears.another_wheel import LEAST, MOST, OF_LEAD, OF_ZONE, AnotherWheel
from tapmodel.shop.gears.lead_room import LeadRoom
from tapmodel.shop.gears.meshing import CLEAR
from tapmodel.shop.gears.trains import INCH_PRIME, GearTrain
from tapmodel.shop.next_start import next_start
from tapmodel.spec.designations.reading.inches import MM
from tapmodel.tap.tap import TapThread
from tapmodel.words import Hand, Units

IDLER = "An idler between two wheels changes no ratio, only the direction."
"""How a train is set up; common practice."""

PLACES = (
    "Four wheels stand as they mesh: the first driver, on the spindle's stud, turns the first "
    "driven; the second driver, on the same stud as that, turns the second driven, on the "
    "leadscrew. So each clears the shaft that it passes: a pair together has "
    f"{CLEAR} teeth at least more than the other pair's wheel on the stud (common practice; your "
    "quadrant decides)."
)
"""Which wheel goes where."""

DIRECTION = {
    Hand.RIGHT: (
        "Right hand: spindle forward, the carriage must run towards the headstock; if it does "
        "not, put in one idler more or less, or throw the tumbler over."
    ),
    Hand.LEFT: (
        "Left hand: one idler more or less than for the right hand, or the tumbler thrown over, "
        "so that with the spindle forward the carriage runs towards the tailstock; begin at the "
        "headstock end."
    ),
}
"""Which way the leadscrew turns, by the hand of the thread; common practice."""

EITHER_HAND = (
    "For a left hand put in one idler more or less, and begin at the headstock end; with several "
    "starts give the lead, which is what the gears cut."
)
"""The same where no thread is named."""

INCH_WHEEL = (
    f"Only a wheel of {INCH_PRIME} teeth, or a multiple of that, makes this exact: an inch is "
    "25.4 mm."
)
"""Why metric threads on a leadscrew in inches, and the reverse, have an error without it."""

BEYOND = (
    "Even the best of these trains takes more than the whole zone of the tap's pitch diameter: it "
    "needs other wheels, or a shorter thread."
)


_GROSS = Fraction(1, 100)
"""Error from which a train only shows that the wheels do not do."""

_MANY_ZONES = 10
"""Zones of the pitch diameter beyond which nobody asks how many."""


def teeth_text(wheels: tuple[int, ...]) -> str:
    """Wheels of one side of a train."""
    return ", ".join(map(str, wheels))


def foul_text(train: GearTrain) -> str:
    """A train of which no order fits."""
    drivers, driven = teeth_text(train.drivers), teeth_text(train.driven)
    return (
        f"{drivers} driving {driven} may foul a shaft in any order: put an idler between the "
        "wheels of the tighter pair."
    )


def another_wheel_text(found: AnotherWheel, at_hand: tuple[int, ...], *, of_tap: bool) -> str:
    """Which one wheel to buy, where no train of those at hand is close enough.

    Args:
        found: what one wheel more would do.
        at_hand: teeth of each wheel there.
        of_tap: whether what is close enough is told by the zone of a tap.
    """
    near = f"{OF_ZONE:.0%} of the tap's zone" if of_tap else f"{float(OF_LEAD) * 1e6:.0f} ppm"
    if found.nearest is None:
        return (
            f"None is within {near}, and no single wheel of {LEAST} to {MOST} teeth bought would "
            "help: one more is not enough."
        )
    if found.train is None:
        nearest = _with_wheel(*found.nearest, at_hand)
        return f"None is within {near}, nor with one wheel more; nearest comes {nearest}."
    told = f"None is within {near}: buy {_with_wheel(*found.train, at_hand)}"
    if found.exact is not None and found.exact != found.train:
        told += f"; or {_with_wheel(*found.exact, at_hand)}"
    return f"{told}."


def _with_wheel(teeth: int, train: GearTrain, at_hand: tuple[int, ...]) -> str:
    places = train.meshing
    drivers, driven = teeth_text(places.drivers), teeth_text(places.driven)
    one = "a second wheel" if teeth in at_hand else "a wheel"
    return f"{one} of {teeth} teeth, for {drivers} driving {driven}, {error_text(train)}"


def pitch_text(mm: Fraction) -> str:
    """A pitch, as threads per inch too where they are a number that lathes have."""
    metric = f"{float(mm):.7g} mm"
    return f"{metric} = {float(MM / mm):g} per inch" if _by_the_inch(mm) else metric


def made_text(train: GearTrain, units: Units) -> str:
    """What a train cuts, with as many digits as an error shows in.

    For a reader of both units in that of the lead wanted: one is enough to compare it by.
    """
    made = float(train.made)
    by_the_inch = _by_the_inch(train.made / (1 + train.error))
    if units is Units.INCH or (units is Units.BOTH and by_the_inch):
        return f"{MM_PER_INCH / made:.5f} per inch"
    return f"{made:.6f} mm"


def _by_the_inch(mm: Fraction) -> bool:
    """Whether a pitch is a number of threads per inch that lathes have, quarters among them."""
    return 4 % (MM / mm).denominator == 0


def error_text(train: GearTrain) -> str:
    """The error in millionths, a gross one in hundredths."""
    if not train.error:
        return "exact"
    return f"{train.ppm:+.1f} ppm" if abs(train.error) < _GROSS else f"{float(train.error):+.1%}"


def along_text(train: GearTrain, room: LeadRoom, units: Units) -> str:
    """What the error adds up to over the tap's thread."""
    error = train.along(room.length)
    metric, inches = f"{error * 1000:+.1f} µm", f"{error / MM_PER_INCH:+.5f} in"
    return {Units.MM: metric, Units.INCH: inches, Units.BOTH: f"{metric} = {inches}"}[units]


def share_text(train: GearTrain, room: LeadRoom) -> str:
    """What that takes of the zone of the tap's pitch diameter."""
    share = room.share(train)
    return f"{share:.1%}" if share < _MANY_ZONES else f"over {_MANY_ZONES:.0%}"


def room_text(room: LeadRoom, units: Units) -> str:
    """What the last columns are of."""
    length = as_text(Length(room.length, 1), units)
    zone = as_text(Length(room.zone, 4), units)
    return (
        f"The error adds up over the whole thread, {length} long. In pitch diameter it counts by "
        f"the cotangent of the flank angle, which is the share told of the tap's zone of {zone}."
    )


def starts_text(thread: TapThread, units: Units) -> str:
    """That the gears cut the lead alone; nothing for one start."""
    shift = next_start(thread)
    if shift is None:
        return ""
    lead, pitch = (as_text(Pitch(length), units) for length in (thread.lead, shift.along))
    return (
        f"{thread.starts} starts: the gears cut the lead of {lead}; the pitch of {pitch} is set "
        f"by the slide from one start to the next, or the work is turned by {shift.turned:g}°."
    )
