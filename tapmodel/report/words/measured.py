"""Sentences on what was measured of a tap."""

from collections.abc import Callable, Mapping, Sequence

from tapmodel.designing.record import Lacking, NotMade
from tapmodel.report.units import in_words, torque_in_words
from tapmodel.report.words.no_solid import no_solid
from tapmodel.report.words.wires import verdict
from tapmodel.shop.measured.verdicts import Judgement, Standing, Way, Why
from tapmodel.spec.measured.sizes import LENGTHS, Size
from tapmodel.values import Values
from tapmodel.words import Units

LABELS: Mapping[Size, str] = {
    Size.OVERALL_LENGTH: "overall length",
    Size.SHANK: "shank diameter",
    Size.MAJOR: "major diameter",
    Size.THREAD_LENGTH: "end of the thread",
    Size.NECK: "neck diameter",
    Size.OVER_WIRES: "over wires",
    Size.PITCH_DIAMETER: "pitch diameter",
    Size.MINOR: "minor (root) diameter",
    Size.CHAMFER_ANGLE: "chamfer, to the axis",
    Size.CHAMFER_LENGTH: "chamfer, length",
    Size.POINT_DIAMETER: "point diameter",
    Size.SQUARE: "square, across flats",
    Size.SQUARE_LENGTH: "square, length",
    Size.CORE: "core (web)",
    Size.LAND: "land, width along the arc",
    Size.HEEL_DROP: "chamfer, drop at the heel",
    Size.THREAD_HEEL_DROP: "thread, drop at the heel",
    Size.HARDNESS: "hardness",
}
"""What was measured, as papers call it."""

_FORM = ".4f"

_NO_WEAR = 0.00005  # mm, which that form shows as nothing


def judged(one: Judgement, units: Units = Units.MM) -> str:
    """The verdict on a size, and what is left to take or can be saved."""
    parts = [_standing(one, units)]
    if one.why is not None:
        parts.append(_WHY[one.why](one.values, units))
    parts += _taking(one, units)
    text = ". ".join(part[:1].upper() + part[1:] for part in parts[1:])
    first = f"{LABELS[one.size]}: {parts[0]}"
    return f"{first}. {text}." if text else f"{first}."


def as_wanted(one: Judgement) -> bool:
    """Whether there is no more to say of a size than that it is in limits."""
    return one.standing is Standing.IN_LIMITS and one.why is None and not one.take


def all_as_wanted(fine: Sequence[Judgement]) -> str:
    """The same of several sizes."""
    return f"In limits, with nothing left to take: {', '.join(LABELS[one.size] for one in fine)}."


def _standing(one: Judgement, units: Units) -> str:
    if one.reading is not None and one.why is not Why.ROUGH:
        return verdict(one.reading, units)
    if one.standing is Standing.NO_LIMITS:
        return f"{_unlike(one, units)} design"
    if one.standing is Standing.TO_TAKE:
        if one.size in _TOO_LONG:
            return "too long: it cannot be cut shorter any more"
        return "too little" if one.size is Size.HEEL_DROP else "too large: take more"
    if one.standing is Standing.IN_LIMITS:
        return "in limits"
    return f"too small: {'scrap' if one.standing is Standing.SCRAP else 'of use all the same'}"


_TOO_LONG = {Size.THREAD_LENGTH, Size.SQUARE_LENGTH}
"""Sizes from which nothing is taken."""

_SAME = 5e-5
"""Lengths, degrees and points of hardness that are told alike."""


def _unlike(one: Judgement, units: Units) -> str:
    """How a size without limits differs from the design."""
    more = one.value - one.aim
    if abs(more) < _SAME:
        return "as in the"
    size = abs(more)
    if one.size in LENGTHS:
        told = in_words(size, _FORM, units)
    else:
        told = f"{size:.3g}{'°' if one.size is Size.CHAMFER_ANGLE else ' HRC'}"
    return f"{told} {'more' if more > 0 else 'less'} than in the"


def _taking(one: Judgement, units: Units) -> list[str]:
    """What is left to take; nothing where nothing is, or where the size stands too low."""
    if one.way is None or not one.take or one.standing in {Standing.SCRAP, Standing.OF_USE}:
        return []
    text = _WAYS[one.way].format(in_words(one.take, _FORM, units))
    least, most = one.take_least, one.take_most
    if one.standing is Standing.TO_TAKE and least and most:
        low, high = (in_words(end, _FORM, units) for end in (least, most))
        text += f"; from {low} on it is in limits, beyond {high} below them"
    elif one.standing is Standing.TO_TAKE and least:
        text += f"; from {in_words(least, _FORM, units)} on it will do"
    elif most:
        text += f"; more than {in_words(most, _FORM, units)} is too much"
    return [text]


_WAYS: Mapping[Way, str] = {
    Way.SLIDE: "to the target feed the tool {} square to the axis",
    Way.RADIUS: "to the size designed take {} off the radius",
    Way.LENGTH: "to the size designed face {} off",
    Way.FLAT: "to the size designed take {} off each flat",
    Way.CUTTER: "to the core designed the cutter goes {} deeper along its own axis",
    Way.HEEL: "grind or stone {} more off the heel of each land",
}


def _worn(values: Values, units: Units) -> str:
    left = values.number("wear")
    if left < _NO_WEAR:
        return "take no more: GO just enters, and with any wear it does not"
    wear = in_words(left, _FORM, units)
    return f"take no more: GO still enters, until another {wear} is worn off"


def _under_hole(values: Values, units: Units) -> str:
    least = in_words(values.number("least"), _FORM, units)
    return (
        f"a tap that cuts true to its own size makes no hole that GO enters: {least} is the least "
        "that will do, and what a tap cuts larger is not to be relied on. Nothing puts metal back; "
        "what is left may make a tap of a smaller thread"
    )


def _rough(_values: Values, _units: Units) -> str:
    return "it leaves that much more to the tap that follows"


def _bears(values: Values, units: Units) -> str:
    now, then = (torque_in_words(values.number(name), units) for name in ("bears", "designed"))
    return f"by this alone the tap bears {now} instead of {then}"


def _too_weak(values: Values, units: Units) -> str:
    takes = torque_in_words(values.number("takes"), units)
    return f"{_bears(values, units)}, and takes about {takes}: it would break"


def _no_core(values: Values, units: Units) -> str:
    least = in_words(values.number("least"), ".3f", units)
    return f"a core below {least} does not drive a tap"


def _binds(values: Values, units: Units) -> str:
    proud = in_words(values.number("proud"), _FORM, units)
    return f"the chamfer binds: its land stands {proud} proud of what the edge cuts"


def _margin(values: Values, units: Units) -> str:
    margin = values.number("margin")
    cure = (
        f"grind the margin down to {margin:.1f}°, more drop behind it does not help"
        if margin
        else "no margin is narrow enough: let it drop from the edge on"
    )
    return f"{_binds(values, units)}. {cure[0].upper()}{cure[1:]}"


def _close(values: Values, units: Units) -> str:
    clear = in_words(values.number("clear"), _FORM, units)
    return f"the heel clears by {clear}, without a reserve for wear and spring of the wall"


def _not_enter(values: Values, units: Units) -> str:
    return f"the point does not enter the hole of {in_words(values.number('hole'), '.3f', units)}"


def _always(text: str) -> Callable[[Values, Units], str]:
    return lambda _values, _units: text


_WHY: Mapping[Why, Callable[[Values, Units], str]] = {
    Why.WORN: _worn,
    Why.UNDER_HOLE: _under_hole,
    Why.ROUGH: _rough,
    Why.BEARS: _bears,
    Why.TOO_WEAK: _too_weak,
    Why.NO_CORE: _no_core,
    Why.BINDS: _binds,
    Why.MARGIN: _margin,
    Why.CLOSE: _close,
    Why.NOT_ENTER: _not_enter,
    Why.NOT_BACK: _always("what is off stays off; no gauge feels it"),
    Why.LOOSE: _always("a wrench of the size designed has play: clamp it, or file a wrench to fit"),
}


def lacking(one: NotMade | None, units: Units = Units.MM) -> str:
    """Why what was measured leaves no tap, in one sentence; "" where it leaves one."""
    if one is None:
        return ""
    if one.finding is None:
        return f"What was measured leaves no tap to foretell anything of: {_LACKING[one.why]}."
    return (
        "What was measured leaves no tap to foretell anything of: "
        f"{no_solid(one.finding.no_solid, units)}."
    )


_LACKING: Mapping[Lacking, str] = {
    Lacking.ORDER: "root, pitch line and crest do not lie one above the other",
    Lacking.CREST: "the flanks of a ridge meet below the major diameter",
    Lacking.ROOT: "the flanks of a groove meet above the minor diameter",
    Lacking.CHAMFER: "the point is no smaller than the crests",
    Lacking.CORE: "the cutter stands further from the centre line than such a core allows",
    Lacking.LAND: "the flutes leave no land, or none wider than its margin",
    Lacking.DROP: "no land drops so far",
    Lacking.SOLID: "a rule finds no solid",
}
