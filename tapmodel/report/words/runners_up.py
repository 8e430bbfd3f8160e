"""What stood next to a choice, in words: its value, and what it would have cost or saved."""

from collections.abc import Iterator

from tapmodel.designing.choice import RunnerUp
from tapmodel.report.units import distance_told
from tapmodel.report.words.sentence import Writer
from tapmodel.spec.units import Unit
from tapmodel.words import Units

SMALL = 0.005
"""Shares below this are no difference [1]."""

SAME_LENGTH = 0.01
"""Nor are shorter rubbing widths [mm]."""

BINDS = 1.0
"""A heel that stands proud by more binds [µm]."""


def runner_up_text(one: RunnerUp, unit: Unit, units: Units = Units.MM) -> str:
    """One sentence without a full stop.

    Args:
        one: the value that came next.
        unit: of that value, as its field has it.
        units: the reader's.
    """
    write = Writer(units)
    told = ", ".join(_differences(one, write)) or "the same in all that is weighed"
    return f"next came {_value(one.value, unit, write)}: {told}"


def _value(value: float | str, unit: Unit, write: Writer) -> str:
    if isinstance(value, str):
        return value
    return write(value, "g") if unit is Unit.MM else f"{value:g} {unit}".rstrip()


def _differences(one: RunnerUp, write: Writer) -> Iterator[str]:
    other, chosen = one.weight, one.chosen
    yield from _share("torque", other.torque / chosen.torque)
    yield from _share("strength", other.bears / chosen.bears)
    if abs(other.rubs - chosen.rubs) >= SAME_LENGTH:
        rubs, now = (write(width, ".2f") for width in (other.rubs, chosen.rubs))
        yield f"lands rub along {rubs} instead of {now} at the crests"
    if abs(other.chip / chosen.chip - 1) >= SMALL:
        chip, now = (write(thick, ".3f") for thick in (other.chip, chosen.chip))
        yield f"chips of {chip} instead of {now}"
    held, now = (write(length, ".2g|.2g") for length in (other.chips_held, chosen.chips_held))
    if held != now:
        yield f"room for the chips of {held} of thread instead of {now}"
    if other.chamfer_clears < -BINDS <= chosen.chamfer_clears:
        proud = distance_told(-other.chamfer_clears, write.units)
        yield f"the chamfer binds, its heel {proud} proud"
    if one.raised:
        yield f"found against it: {' and '.join(one.raised)}"


def _share(what: str, ratio: float) -> Iterator[str]:
    if abs(ratio - 1) >= SMALL:
        yield f"{abs(ratio - 1):.0%} {'more' if ratio > 1 else 'less'} {what}"
