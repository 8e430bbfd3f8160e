"""Symptoms and their causes in words, with the tap's own numbers."""

from collections.abc import Callable, Mapping
from functools import partial

from tapmodel.designing.record import TapDesign
from tapmodel.prediction.strength.record import Place
from tapmodel.report.blocks import Force
from tapmodel.report.units import HOLE_DEPTH, as_text
from tapmodel.report.words.cures import advice
from tapmodel.report.words.sentence import Writer
from tapmodel.shop.symptoms.record import Cause, Sign, Why
from tapmodel.shop.tapping_speed import revolutions
from tapmodel.values import Values
from tapmodel.words import Units

TITLES: Mapping[Sign, str] = {
    Sign.BINDS: "It binds, or turns hard",
    Sign.TEARS: "The thread is torn or rough",
    Sign.SQUEALS: "It squeals or chatters",
    Sign.LARGE: "The hole comes out large",
    Sign.TAPERS: "The hole is wider at its mouth",
    Sign.SNAPS: "It snaps at the square",
}


def _chamfer_proud(values: Values, write: Writer) -> str:
    proud = write(values.number("proud"), ".4f")
    return f"the chamfer stands {proud} proud of what its edge has cut"


def _lands_rub(values: Values, write: Writer) -> str:
    rubs, width, most = (write(values.number(at), ".2f") for at in ("rubs", "width", "most"))
    return (
        f"each land's flanks rub along {rubs} of its {width}, where {most} is reckoned the most "
        "that does no harm"
    )


def _crests_rub(values: Values, write: Writer) -> str:
    rubs, width = (write(values.number(at), ".2f") for at in ("rubs", "width"))
    return f"each crest, which has no relief, rubs along {rubs} of its {width}"


def _chips_jam(values: Values, write: Writer) -> str:
    held, depth = (write(values.number(at), HOLE_DEPTH) for at in ("held", "depth"))
    if values.number("held") < values.number("lead"):
        return (
            f"chips jam: the flutes hold those of less than one turn and the hole is {depth} deep; "
            "back right out and clear them at every half turn"
        )
    return (
        f"chips jam: the flutes hold those of {held} of thread and the hole is {depth} deep; back "
        f"out and clear them each {held}"
    )


def _hole_tight(values: Values, write: Writer) -> str:
    drill, low, high = (write(values.number(at), ".3f") for at in ("drill", "low", "high"))
    return (
        f"the hole is on the small side: drilled {drill}, where {low} to {high} is allowed; take a "
        "larger drill in these limits"
    )


def _near_stop(values: Values, write: Writer) -> str:
    likely, high, stop = (write.torque(values.number(at)) for at in ("likely", "high", "stop"))
    share = values.number("high") / values.number("stop")
    return (
        f"it takes {likely} sharp and may take {high}, {share:.0%} of the {stop} to stop at: "
        "what is beyond that comes of dull edges, a dry hole or jammed chips"
    )


def _rake_low(values: Values, _write: Writer) -> str:
    wall, crest, low, high = (values.number(at) for at in ("wall", "crest", "low", "high"))
    return (
        f"the edge has a rake of {wall:.1f}° at the drilled wall ({crest:.1f}° at the crest), "
        f"where {low:g} to {high:g}° suit this material"
    )


def _rake_high(values: Values, _write: Writer) -> str:
    crest, low, high = (values.number(at) for at in ("crest", "low", "high"))
    return (
        f"the edge digs in: its rake at the crest is {crest:.1f}°, where {low:g} to {high:g}° suit "
        "this material"
    )


def _chip(too: str, values: Values, write: Writer) -> str:
    chip, least, most = (write(values.number(at), ".4f") for at in ("chip", "least", "most"))
    return (
        f"the chip of a tooth is rather {too}: {chip}, where {least} to {most} suits this material"
    )


def _high_in_zone(values: Values, write: Writer) -> str:
    reckoned, left, over = (
        write(values.number(at), ".3f") for at in ("pitch_diameter", "left", "oversize")
    )
    share, spare = values.number("share"), values.number("left")
    rest = (
        f"{left} under what NO-GO lets pass, so that it must cut {over} and that much larger than "
        "it is"
        if spare > 0
        else "beyond what NO-GO lets pass"
    )
    return f"its pitch diameter is foreseen at {reckoned}, {share:.0%} up the tolerance, {rest}"


def _hole_wide(values: Values, write: Writer) -> str:
    drill, low, left = (write(values.number(at), ".3f") for at in ("drill", "low", "left"))
    return (
        f"the hole itself is large: drilled {drill} it has {left} left to its limit; take a "
        f"smaller drill, of {low} at least"
    )


def _no_margin(values: Values, _write: Writer) -> str:
    angle = values.number("angle")
    return f"nothing guides it: its lands fall away by {angle:.1f}° from the very edge"


def _point_slack(values: Values, write: Writer) -> str:
    point, drill, slack = (write(values.number(at), ".2f") for at in ("point", "drill", "slack"))
    return f"its point of {point} has {slack} of play in the hole of {drill}, and starts crooked"


def _short_chamfer(values: Values, _write: Writer) -> str:
    leads, usual = values.number("leads"), values.number("usual")
    return (
        f"its chamfer of {leads:.3g} leads does not find the axis by itself as one of {usual:g} "
        "would: hold it in a guide"
    )


def _short_guide(values: Values, write: Writer) -> str:
    guide, wanted = (write(values.number(at), ".1f") for at in ("guide", "wanted"))
    return f"the full thread that guides it is {guide} long, against {wanted} of its diameter"


def _pressed(values: Values, write: Writer) -> str:
    force = as_text(Force(values.number("force")), write.units)
    return (
        f"it was leant on: some {force} start it, and once two turns have caught the thread draws "
        "it in and none is wanted"
    )


def _square_weak(values: Values, write: Writer) -> str:
    alone, first, stop = (write.torque(values.number(at)) for at in ("alone", "first", "stop"))
    place, share = values.word("place"), values.number("share")
    if place == Place.SQUARE:
        return f"it is the weakest part: turning alone breaks it at {alone}; stop at {stop}"
    return (
        f"turning alone breaks the square at {alone}, but the tap before it at {first} ({place}); "
        f"at {stop}, where to stop, the square is loaded to {share:.0%} of what breaks it, so a "
        "break there tells of a wrench pulled askew, by one end, or on worn flats"
    )


def _hard(values: Values, _write: Writer) -> str:
    hardness, softer = values.number("hardness"), values.number("softer")
    return (
        f"the shank is as hard as the teeth, {hardness:.3g} HRC: draw it back with a torch, the "
        f"teeth in water, or temper all to {softer:.3g} HRC"
    )


SENTENCES: Mapping[Why, Callable[[Values, Writer], str]] = {
    Why.CHAMFER_PROUD: _chamfer_proud,
    Why.LANDS_RUB: _lands_rub,
    Why.CRESTS_RUB: _crests_rub,
    Why.CHIPS_JAM: _chips_jam,
    Why.HOLE_TIGHT: _hole_tight,
    Why.NEAR_STOP: _near_stop,
    Why.RAKE_LOW: _rake_low,
    Why.RAKE_HIGH: _rake_high,
    Why.CHIP_THIN: partial(_chip, "thin"),
    Why.CHIP_THICK: partial(_chip, "thick"),
    Why.HIGH_IN_ZONE: _high_in_zone,
    Why.HOLE_WIDE: _hole_wide,
    Why.NO_MARGIN: _no_margin,
    Why.POINT_SLACK: _point_slack,
    Why.SHORT_CHAMFER: _short_chamfer,
    Why.SHORT_GUIDE: _short_guide,
    Why.PRESSED: _pressed,
    Why.SQUARE_WEAK: _square_weak,
    Why.HARD: _hard,
}
"""Why it happens, as the end of a sentence without its point."""

NAMES: Mapping[Why, str] = {
    Why.CHAMFER_PROUD: "the chamfer stands proud",
    Why.LANDS_RUB: "the lands rub",
    Why.CRESTS_RUB: "the crests rub",
    Why.CHIPS_JAM: "chips jam",
    Why.NEAR_STOP: "too much torque",
    Why.RAKE_HIGH: "the edge digs in",
    Why.CHIP_THIN: "thin chips",
    Why.CHIP_THICK: "thick chips",
    Why.POINT_SLACK: "play of the point",
}
"""Those of several symptoms, where they are told a second time."""


def why_text(cause: Cause, units: Units) -> str:
    """A cause with its numbers."""
    return SENTENCES[cause.why](cause.values, Writer(units))


def cause_text(cause: Cause, units: Units) -> str:
    """The same, and what to change."""
    words = why_text(cause, units)
    cures = advice(cause.cures[:1], units)
    return f"{words}; {cures}" if cures else words


def at_the_bench(sign: Sign, design: TapDesign, *, by_machine: bool) -> str:
    """What no number of the tap rules out; common practice.

    Args:
        sign: that is noticed.
        design: of the tap.
        by_machine: whether a speed in a machine is told.
    """
    group, major = design.work.material.group, design.tap.thread.major
    fast = float(f"{revolutions(group.speed[1], major):.2g}")
    speed = f"in a machine more than {fast:g} turns each minute, " if by_machine else ""
    return {
        Sign.BINDS: "dull edges, a drill that has cut small, a hole that runs beside the tap",
        Sign.TEARS: f"dull edges, chips welded to them, another oil than {group.lubricant}",
        Sign.SQUEALS: f"{speed}dull edges, too little oil",
        Sign.LARGE: "chips welded to the edges, a spindle or wrench that does not run true",
        Sign.TAPERS: "started askew, work that has slipped, pressed on after it had caught",
        Sign.SNAPS: "a wrench with worn jaws, a scratch or a sharp corner where the flats end",
    }[sign]
