"""Each cause of trouble in the hole, weighed by the tap's own number for it."""

import math
from collections.abc import Iterator

from tapmodel.designing.codes import Code
from tapmodel.designing.limits.chips import ChipRange, chip_range
from tapmodel.designing.limits.lands import most_rubbing
from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.findings import Bound, Cure, Setting
from tapmodel.prediction.prediction import Prediction
from tapmodel.prediction.strength.record import Place
from tapmodel.prediction.strength.steel import tensile
from tapmodel.prediction.strength.wrench import HAND_FORCE
from tapmodel.shop.symptoms.record import Cause, Why
from tapmodel.standards.materials.steels import hardness_after
from tapmodel.values import Values
from tapmodel.words import ReliefKind, ReliefPlace

LISTED = 0.75
"""Weight from which a cause is listed: three quarters of its limit. Rule of this program."""

RAKE_OFF = 10.0
"""So many degrees beside the usual rake are as grave as any limit broken; a degree changes the
cutting force by a per cent and a half. Rule of this program."""

SLACK = 0.2
"""Play of the point in the drilled hole, in pitches, that lets a tap start crooked; the rule leaves
half of that. Rule of this program."""

STARTING = 3.0
"""Leads of a chamfer that lead a tap straight by themselves; common practice."""

LOW_HALF = 0.25
"""Added to a place in the tolerance of the drilled hole, so that its half counts as listed."""

LEAST_HELD = 0.01
"""Share of the hole whose chips flutes are taken to hold at least, so that weights have an end."""

GUIDING = 1.0
"""Full thread that guides a tap once it is in, in diameters; common practice."""

DRAWN = 50.0
"""Degrees by which a temper is raised to make a tap tougher [deg C]; common practice."""

HARD = 60.0
"""Hardness from which a shank is as brittle as its teeth [HRC]; common practice."""

_EQUAL = 1e-9

Causes = Iterator[Cause]


def binding(design: TapDesign, foreseen: Prediction) -> Causes:
    """What lets it bind, or turn hard."""
    yield from _chamfer_proud(design, foreseen)
    yield from _lands_rub(design, foreseen)
    yield from _crests_rub(design, foreseen)
    yield from _chips_jam(design, foreseen)
    yield from _hole_tight(design)
    yield from _near_stop(design, foreseen)


def tearing(design: TapDesign, foreseen: Prediction) -> Causes:
    """What lets the thread tear."""
    yield from _rake_low(design)
    yield from _thin(design)
    yield from _thick(design)
    yield from _chips_jam(design, foreseen)
    yield from _lands_rub(design, foreseen)


def squealing(design: TapDesign, foreseen: Prediction) -> Causes:
    """What lets it squeal or chatter."""
    yield from _chamfer_proud(design, foreseen)
    yield from _lands_rub(design, foreseen)
    yield from _crests_rub(design, foreseen)
    yield from _thin(design)
    yield from _rake_high(design)


def cutting_large(design: TapDesign, foreseen: Prediction) -> Causes:
    """What lets the hole come out large."""
    yield from _high_in_zone(design, foreseen)
    yield from _hole_wide(design)
    yield from _rake_high(design)
    yield from _no_margin(design)
    yield from _point_slack(design)


def tapering(design: TapDesign, foreseen: Prediction) -> Causes:
    """What lets the mouth of the hole come out wider than its bottom."""
    yield from _pressed(foreseen)
    yield from _point_slack(design)
    yield from _short_chamfer(design)
    yield from _short_guide(design)


def snapping(design: TapDesign, foreseen: Prediction) -> Causes:
    """What lets it break at the square."""
    yield from _square_weak(design, foreseen)
    yield from _hard(design)
    yield from _near_stop(design, foreseen)


def _chamfer_proud(design: TapDesign, foreseen: Prediction) -> Causes:
    chamfer = foreseen.rubbing.chamfer
    if chamfer.binds:
        threshold = 1000 * foreseen.rubbing.threshold.clearance
        proud = -chamfer.clearance_min_um
        cures = _found(design, Code.CHAMFER_RUBS)
        values = Values(proud=proud / 1000)
        yield Cause(Why.CHAMFER_PROUD, 2 + proud / threshold, values, cures, tried=bool(cures))


def _lands_rub(design: TapDesign, foreseen: Prediction) -> Causes:
    tap, contact = design.tap, foreseen.rubbing.flank
    if contact.rubbing_length <= 0:
        return
    most = most_rubbing(tap.thread.major, tap.flutes.count)
    values = Values(rubs=contact.rubbing_length, width=contact.land_width, most=most)
    tried, relief = _found(design, Code.LAND_RUBS), tap.relief.thread
    alone = relief.kind is not ReliefKind.CONCENTRIC and relief.applies_to is not ReliefPlace.THREAD
    ruled = (_cure("relief.thread.applies_to", "thread"),) if alone else ()
    weight = contact.rubbing_length / most
    yield Cause(Why.LANDS_RUB, weight, values, tried or ruled, tried=bool(tried))


def _crests_rub(design: TapDesign, foreseen: Prediction) -> Causes:
    """Only where they have no relief at all: a margin guides the tap."""
    crest = foreseen.rubbing.crest
    if design.tap.relief.thread.kind is ReliefKind.CONCENTRIC and crest.rubbing_length > 0:
        values = Values(rubs=crest.rubbing_length, width=crest.land_width)
        weight = crest.rubbing_length / crest.land_width
        yield Cause(Why.CRESTS_RUB, weight, values, (_cure("relief.thread.kind", "con-eccentric"),))


def _chips_jam(design: TapDesign, foreseen: Prediction) -> Causes:
    held, depth = foreseen.chips_held, design.work.depth
    if held < depth:
        # Half of the chips of a through hole fall out of it; some flutes hold none.
        times = depth / max(held, LEAST_HELD * depth)
        weight = times if design.work.blind else times / 2
        yield Cause(
            Why.CHIPS_JAM, weight, Values(held=held, depth=depth, lead=design.tap.thread.lead)
        )


def _hole_tight(design: TapDesign) -> Causes:
    low, high, drill = design.hole.minor_min, design.hole.minor_max, design.drill
    weight = LOW_HALF + (high - drill) / (high - low)
    values = Values(drill=drill, low=low, high=high)
    yield Cause(Why.HOLE_TIGHT, weight, values)


def _near_stop(design: TapDesign, foreseen: Prediction) -> Causes:
    """How much of the torque to stop at a sharp tap may take."""
    band, stop = foreseen.torque.band, foreseen.stop_at
    cures = _found(design, Code.TAP_OVERLOADED)
    values = Values(likely=band.likely, high=band.high, stop=stop)
    yield Cause(Why.NEAR_STOP, band.high / stop, values, cures, tried=bool(cures))


def _rake_low(design: TapDesign) -> Causes:
    low, high = design.work.material.group.rake
    wall, crest = design.rake_at_wall, design.figures.rake_crest
    if wall < low:
        cures = _found(design, Code.RAKE_AT_WALL, Code.EDGE_SCRAPES)
        smaller = _straight_wall(design, low)
        values = Values(wall=wall, crest=crest, low=low, high=high)
        weight = LISTED + (low - wall) / RAKE_OFF
        yield Cause(Why.RAKE_LOW, weight, values, cures or smaller, tried=bool(cures))


def _straight_wall(design: TapDesign, rake: float) -> tuple[Cure, ...]:
    """The largest cutter on hand whose straight wall reaches down to the drilled wall.

    Source: the arc of a ball whose centre is m from the axis has a rake of
    `asin((r**2 + b**2 - m**2)/(2*r*b))` there.
    """
    wall, core = design.drill / 2, design.tap.flutes.core_diameter
    sine = math.sin(math.radians(rake))
    ball = (wall**2 - core**2 / 4) / (2 * wall * sine + core)
    now = design.tap.flutes.cutter_diameter
    fit = [one for one in design.numbers("shop.cutters") if one <= 2 * ball and one < now]
    if not fit:
        return ()
    size = max(fit)
    digits = next((n for n in range(6) if abs(round(size, n) - size) < _EQUAL), 6)
    return (Cure((Setting("flutes.cutter_diameter", Bound.EXACTLY, size, "mm", digits),)),)


def _rake_high(design: TapDesign) -> Causes:
    low, high = design.work.material.group.rake
    crest = design.figures.rake_crest
    if crest > high:
        values = Values(crest=crest, low=low, high=high)
        weight = LISTED + (crest - high) / RAKE_OFF
        yield Cause(Why.RAKE_HIGH, weight, values, (_most("flutes.rake", high, 0, "deg"),))


def _chip(design: TapDesign) -> tuple[float, ChipRange]:
    """Chip of a tooth, and what is usual in the material [mm]."""
    usual = chip_range(design.work.material.group, design.tap.thread.pitch)
    return design.figures.chip_thickness, usual


def _thin(design: TapDesign) -> Causes:
    """Thinner than an edge cuts."""
    chip, usual = _chip(design)
    leads = design.figures.chamfer_leads * chip / usual.least
    cures = _found(design, Code.CHIP_THIN, Code.CHIP_KEEN)
    ruled = (_most("chamfer.pitches", leads, 1, ""),)
    values = Values(chip=chip, least=usual.least, most=usual.most)
    yield Cause(Why.CHIP_THIN, usual.least / chip, values, cures or ruled, tried=bool(cures))


def _thick(design: TapDesign) -> Causes:
    """Thicker than a thread bears."""
    chip, usual = _chip(design)
    leads = design.figures.chamfer_leads * chip / usual.most
    cures = _found(design, Code.CHIP_THICK)
    ruled = (_least("chamfer.pitches", max(leads, design.figures.chamfer_leads + 1), 1, ""),)
    values = Values(chip=chip, least=usual.least, most=usual.most)
    yield Cause(Why.CHIP_THICK, chip / usual.most, values, cures or ruled, tried=bool(cures))


def _high_in_zone(design: TapDesign, foreseen: Prediction) -> Causes:
    """Where in the hole's tolerance the thread comes out, and what is left to NO-GO."""
    gauge, hole = foreseen.gauge, design.hole
    zone = hole.pitch_max - hole.pitch_min
    place = (gauge.pitch_diameter - hole.pitch_min) / zone
    values = Values(
        pitch_diameter=gauge.pitch_diameter,
        low=hole.pitch_min,
        high=hole.pitch_max,
        share=place,
        oversize=gauge.oversize,
        left=hole.pitch_max - gauge.pitch_diameter,
    )
    lower = _lower(design)
    yield Cause(Why.HIGH_IN_ZONE, _always(place), values, (lower,) if lower else ())


def _lower(design: TapDesign) -> Cure | None:
    """The lowest place of the pitch diameter in its zone that is lower than now."""
    thread, limits = design.tap.thread, design.limits
    if thread.pitch_diameter <= limits.pitch_min + 1e-6 or design.roughs:
        return None
    given = design.choice("thread.pitch_diameter")
    gone = ("thread.pitch_diameter",) if given and given.given else ()
    return Cure((Setting("thread.aim", Bound.EXACTLY, 0.0, digits=0, replaces=gone),))


def _hole_wide(design: TapDesign) -> Causes:
    low, high, drill = design.hole.minor_min, design.hole.minor_max, design.drill
    weight = LOW_HALF + (drill - low) / (high - low)
    values = Values(drill=drill, low=low, high=high, left=high - drill)
    yield Cause(Why.HOLE_WIDE, weight, values)


def _no_margin(design: TapDesign) -> Causes:
    """Relieved from the edge on, nothing guides the thread but its edges."""
    relief, figures = design.reliefs[0]
    if relief.kind is ReliefKind.ECCENTRIC:
        cures = (_cure("relief.thread.kind", "con-eccentric"),)
        yield Cause(Why.NO_MARGIN, 1.0, Values(angle=figures.edge_angle), cures)


def _point_slack(design: TapDesign) -> Causes:
    point, pitch = design.tap.chamfer.point_diameter, design.tap.thread.pitch
    slack = design.drill - point
    near = design.drill - SLACK / 2 * pitch
    values = Values(point=point, drill=design.drill, slack=slack)
    cures = (_least("chamfer.point_diameter", near, 2, "mm"),) if near > point + 0.01 else ()
    yield Cause(Why.POINT_SLACK, slack / (SLACK * pitch), values, cures)


def _short_chamfer(design: TapDesign) -> Causes:
    leads = design.figures.chamfer_leads
    if leads < STARTING:
        cures = (_cure("chamfer.form", "taper"),)
        yield Cause(Why.SHORT_CHAMFER, STARTING / leads, Values(leads=leads, usual=STARTING), cures)


def _short_guide(design: TapDesign) -> Causes:
    thread = design.tap.thread
    guide = design.tap.blank.thread_length - design.tap.chamfer_length
    wanted = GUIDING * thread.major
    if guide < wanted:
        cures = (_least("blank.thread_length", design.tap.chamfer_length + wanted, 1, "mm"),)
        weight = wanted / guide if guide > 0 else math.inf
        yield Cause(Why.SHORT_GUIDE, weight, Values(guide=guide, wanted=wanted), cures)


def _pressed(foreseen: Prediction) -> Causes:
    """Force until the thread draws the tap in."""
    force = foreseen.torque.axial_force.likely
    if force > 0:
        yield Cause(Why.PRESSED, _always(force / HAND_FORCE), Values(force=force))


def _square_weak(design: TapDesign, foreseen: Prediction) -> Causes:
    """What breaks the square by turning alone, against what breaks the tap first."""
    strength = foreseen.strength
    square = next((one for one in strength.sections if one.place is Place.SQUARE), None)
    if square is None:
        return
    alone = tensile(strength.steel.hardness).likely / square.shear
    first = strength.governs
    values = Values(
        alone=alone,
        first=first.torque,
        place=first.place,
        stop=foreseen.stop_at,
        share=foreseen.stop_at / alone,
        flats=design.tap.blank.square_across_flats,
    )
    yield Cause(Why.SQUARE_WEAK, _always(first.torque / alone), values)


def _hard(design: TapDesign) -> Causes:
    steel = design.work.steel
    if steel.hardness < HARD or steel.case_depth or not steel.temper:
        return
    temper = round(steel.temper + DRAWN)
    try:
        softer, _ = hardness_after(steel.name, temper)
    except InputError:  # the steel's table ends before
        return
    if softer < steel.hardness:
        values = Values(hardness=steel.hardness, softer=softer)
        cures = (_least("tap.temper", temper, 0, "°C"),)
        yield Cause(Why.HARD, steel.hardness / HARD, values, cures)


def _always(share: float) -> float:
    """Weight of what is listed whatever its number, which is 1 where its limit is reached."""
    return LISTED + (1 - LISTED) * share


def _found(design: TapDesign, *codes: Code) -> tuple[Cure, ...]:
    """The cures of the first finding of these codes that has any."""
    cures = (one.cures for one in design.findings if one.code in codes)
    return next((some for some in cures if some), ())


def _cure(field: str, word: str) -> Cure:
    return Cure((Setting(field, Bound.EXACTLY, word),))


def _most(field: str, value: float, digits: int, unit: str) -> Cure:
    """A value or less, rounded down."""
    scale = 10**digits
    rounded = math.floor(value * scale + 1e-6) / scale
    return Cure((Setting(field, Bound.AT_MOST, rounded, unit, digits),))


def _least(field: str, value: float, digits: int, unit: str) -> Cure:
    """A value or more, rounded up."""
    scale = 10**digits
    rounded = math.ceil(value * scale - 1e-6) / scale
    return Cure((Setting(field, Bound.AT_LEAST, rounded, unit, digits),))
