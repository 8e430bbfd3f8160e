"""What stood next to a choice, in words: its value, and what it would have cost or saved."""

from collections.abc import Iterator

from tapmodel.designing.choice import RunnerUp

SMALL = 0.005
"""Shares below this are no difference [1]."""

SAME_LENGTH = 0.01
"""Nor are shorter rubbing widths [mm]."""

BINDS = 1.0
"""A heel that stands proud by more binds [µm]."""


def runner_up_text(one: RunnerUp) -> str:
    """One sentence without a full stop."""
    value = one.value if isinstance(one.value, str) else f"{one.value:g}"
    told = ", ".join(_differences(one)) or "the same in all that is weighed"
    return f"next came {value}: {told}"


def _differences(one: RunnerUp) -> Iterator[str]:
    other, chosen = one.weight, one.chosen
    yield from _share("torque", other.torque / chosen.torque)
    yield from _share("strength", other.bears / chosen.bears)
    if abs(other.rubs - chosen.rubs) >= SAME_LENGTH:
        yield f"lands rub along {other.rubs:.2f} mm instead of {chosen.rubs:.2f} mm"
    if abs(other.chip / chosen.chip - 1) >= SMALL:
        yield f"chips of {other.chip:.3f} mm instead of {chosen.chip:.3f} mm"
    held, now = f"{other.chips_held:.2g}", f"{chosen.chips_held:.2g}"
    if held != now:
        yield f"room for the chips of {held} mm of thread instead of {now} mm"
    if other.chamfer_clears < -BINDS <= chosen.chamfer_clears:
        yield f"the chamfer binds, its heel {-other.chamfer_clears:.0f} µm proud"
    if one.raised:
        yield f"found against it: {' and '.join(one.raised)}"


def _share(what: str, ratio: float) -> Iterator[str]:
    if abs(ratio - 1) >= SMALL:
        yield f"{abs(ratio - 1):.0%} {'more' if ratio > 1 else 'less'} {what}"
