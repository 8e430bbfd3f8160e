"""How a relief is made in the shop, and what it becomes there, in sentences. Common practice."""

from tapmodel.report.units import in_words
from tapmodel.shop.relief.plan import Plan, heel_made
from tapmodel.words import ReliefKind, ReliefPlace, ReliefWay, Units

WHEEL_FORM = ".1f|.3f"
"""Of a wheel's diameter: three eighths of an inch is 0.375."""

AS_MADE = {
    ReliefWay.CENTRES: "as ground",
    ReliefWay.WHEEL: "as ground",
    ReliefWay.FILE: "as filed",
}

BY = {
    ReliefWay.CENTRES: "on offset centres",
    ReliefWay.WHEEL: "by a wheel past a tooth rest",
    ReliefWay.FILE: "by file or stone",
}

CENTRES = (
    "Each land has a centre of its own: index the tap in the holder until that land's point stands "
    "out, set the offset, clock it, and rock the tap by the swing while the wheel passes. The "
    "offset is set to the next graduation that is not less."
)

WHEEL = (
    "The tap lies between its own centres, the wheel's axis beside it, the cutting face on the "
    "tooth rest, level with the axis. Raise the wheel's centre, or lower tap and rest, by the "
    "height told, so that the wheel leans to the heel. Touch where the drop begins; then let the "
    "edge down, by a dividing head or the screw of the rest: first turn, then feed, pass by pass. "
    "Each feed is set to the last division that is reached, never beyond: that would take the edge."
)

WHEEL_MARGIN = "Behind a margin: turn until its end is level with the axis, and touch there."

FILE = (
    "Dye the land, scribe the corners of the flats, and file from the heel forward, one flat after "
    "the other, until the indicator reads what the corner is to have. Count the strokes that move "
    "it by its first division at the heel: the heel takes about so many for each of its divisions, "
    "and more as the flat gets wider. The line of dye before the first flat stays."
)

FLATS = (
    "A flat lies below the arc that it stands for: it clears where the arc does, and leaves the "
    "tooth thinner behind its edge. Corners may be stoned round down to the arc, no further."
)

CHECK = (
    "Check: the tap between its own centres, an indicator that points at the axis, its foot flat "
    "and as wide as two crests; zero at the cutting edge, then turn the tap by the angles told."
)

BINDS = (
    "As it is made it stands proud of what its own edge cuts: a finer division "
    "(shop.indicator_step), another way (shop.relief_by), or more drop in the design."
)

FLANKS_TOO = (
    "Relief of the whole thread moves the flanks, too: wheel or file has the form of the thread "
    "and stays in its groove along the helix."
)

USUAL = "Wheels and divisions of usual sizes, as the job names none in [shop] (from memory)."

LIMITS = (
    "Reckoned without wear of the wheel, play and spring; on the chamfer the wheel is dressed to "
    "its angle, its axis beside the tap's."
)


def place_of(plan: Plan) -> str:
    """Of the relief: crest, thread or chamfer."""
    return plan.span.relief.applies_to.value


def from_text(plan: Plan) -> str:
    """Where its drop begins."""
    margin = plan.span.relief.kind is ReliefKind.CON_ECCENTRIC
    return "the margin's end" if margin else "the edge"


def division_text(plan: Plan, units: Units) -> str:
    """The heel as made in divisions of the indicator: "8 of 0.010 mm"."""
    step = plan.shop.indicator_step
    return f"{round(heel_made(plan) / step)} of {in_words(step, '.3f', units)}"


def offset_text(plan: Plan, units: Units) -> str:
    """What is set in an eccentric holder."""
    step = in_words(plan.shop.offset_step, ".3f", units)
    return f"offset to set, in steps of {step}"


def clear_text(diameter: float, units: Units) -> str:
    """A wheel beside the next land."""
    return f"a wheel of {in_words(diameter, WHEEL_FORM, units)} clears the next land by"


def stops_text(diameter: float, units: Units) -> str:
    """A wheel that would cut the next land."""
    return f"a wheel of {in_words(diameter, WHEEL_FORM, units)} must stop before the heel by"


def nowhere_text(diameter: float, units: Units) -> str:
    """A wheel that does not even reach where the drop begins."""
    return f"a wheel of {in_words(diameter, WHEEL_FORM, units)}"


def none_free(plan: Plan, units: Units) -> str:
    """No wheel on hand reaches the heel."""
    most = in_words(plan.reach.largest, WHEEL_FORM, units)
    return (
        f"No wheel on hand reaches the heel of the {place_of(plan)} without touching the next "
        f"land: file or stone what it leaves, or take a mounted point of {most} at most."
    )


def plunger_text(share: float) -> str:
    """The chamfer's drops under an indicator that stands otherwise."""
    return (
        "Drops are told along the radius: an indicator square to the chamfer reads "
        f"{share:.3f} of them."
    )


def in_short(plan: Plan, units: Units) -> str:
    """What a relief becomes, in one sentence."""
    way, drop = plan.shop.way, in_words(heel_made(plan), ".3f", units)
    where = " and ".join(_touching(plan, units))
    many = f", in {plan.flats.count} flats" if way is ReliefWay.FILE else ""
    return (
        f"The {place_of(plan)} {AS_MADE[way]} with what the shop has{many}: it drops by {drop} at "
        f"the heel; {where}."
    )


def _touching(plan: Plan, units: Units) -> list[str]:
    several = len(plan.touching) > 1
    return [
        f"{f'on the {one.name} ' if several else ''}it rubs along "
        f"{in_words(one.made.rubbing_length, '.2f', units)} behind the edge and "
        f"{'BINDS' if one.binds else 'does not bind'}"
        for one in plan.touching
    ]


def work_of(plan: Plan) -> str:
    """What is done."""
    return {ReliefWay.CENTRES: CENTRES, ReliefWay.WHEEL: WHEEL, ReliefWay.FILE: FILE}[plan.shop.way]


def whole_thread(plan: Plan) -> bool:
    """Whether flanks are relieved, too."""
    return plan.span.relief.applies_to is ReliefPlace.THREAD
