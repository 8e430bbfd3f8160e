"""Steps of sliders: a division of the dial by which the value is set at the machine."""

from enum import Enum, auto

from tapmodel.designing.record import TapDesign
from tapmodel.report.units import MM_PER_INCH
from tapmodel.spec.shop.dials import Dial, dial_of, mill_dials


class Step(Enum):
    """What a value is set by."""

    WHOLE = auto()
    HALF = auto()
    QUARTER = auto()
    SHARE = auto()
    HEAT = auto()
    SIDEWAYS = auto()
    """The mill's slide across the work."""
    DOWN = auto()
    """Its slide along the cutter."""
    TURNED = auto()
    """The lathe's cross slide, in diameter."""
    BAR = auto()
    """A rule, or the size of a bar or tool."""
    DROP = auto()
    """An indicator."""


_PLAIN = {Step.WHOLE: 1.0, Step.HALF: 0.5, Step.QUARTER: 0.25, Step.SHARE: 0.01, Step.HEAT: 5.0}

_USUAL = {
    Step.SIDEWAYS: (0.02, 0.001),
    Step.DOWN: (0.05, 0.001),
    Step.TURNED: (0.02, 0.001),
    Step.BAR: (0.5, 1 / 32),
    Step.DROP: (0.005, 0.0002),
}
"""In mm and in inches where the shop's dial is not known (common practice)."""


def step_of(step: Step, design: TapDesign, *, inch: bool) -> float:
    """A step in the unit of the box: the shop's own division where it reads in that unit."""
    if step in _PLAIN:
        return _PLAIN[step]
    usual = _USUAL[step][1 if inch else 0]
    if step is Step.DROP:
        own = design.number("shop.indicator_step")
        return own if own and not inch else usual
    dial = _dial(step, design)
    if dial is None or dial.inch is not inch:
        return usual
    # A dial that counts the radius moves the diameter by twice its division.
    counts = 2 if step is Step.TURNED and not dial.on_diameter else 1
    return counts * float(dial.division) / (MM_PER_INCH if inch else 1.0)


def _dial(step: Step, design: TapDesign) -> Dial | None:
    if step is Step.TURNED:
        text = design.text("shop.cross_slide")
        return None if text is None else dial_of(text, cross=True)
    text = design.text("shop.mill")
    dials = None if text is None else mill_dials(text)
    if dials is None:
        return None
    return {Step.SIDEWAYS: dials.sideways, Step.DOWN: dials.down}.get(step)
