"""What was measured of a tap, set beside its design: verdicts, and the tap as it is."""

from dataclasses import dataclass

from tapmodel.designing.record import NotMade, TapDesign
from tapmodel.findings import Finding
from tapmodel.shop.measured.read import OverWires, pitch_diameter_of, sizes_of
from tapmodel.shop.measured.verdicts import Judgement, judgements
from tapmodel.spec.measured.record import Measured
from tapmodel.words import Units


@dataclass(frozen=True, slots=True)
class MeasuredAnswer:
    """What was measured of a tap, and what that means.

    Attributes:
        design: with what was measured, and the tap as it is.
        judgements: of each size, in the order of the work.
        over_wires: None where no value over wires was measured.
        made: the tap as it is; None where it cannot be told.
        lacking: why it cannot; None where it can, or nothing was measured.
        risen: what the rules find of the tap as it is, and did not of its design.
    """

    design: TapDesign
    judgements: tuple[Judgement, ...]
    over_wires: OverWires | None
    made: TapDesign | None
    lacking: NotMade | None
    risen: tuple[Finding, ...]


def answer_measured(
    design: TapDesign, compound: float = 0.0, units: Units = Units.MM
) -> MeasuredAnswer:
    """What was measured of a tap, and what that means.

    Args:
        design: as `with_measured` gives it.
        compound: angle of the compound slide, from square to the axis [deg].
        units: of the reader, in which a refusal tells first what is allowed.

    Raises:
        InputError, NoWireError: as `with_measured`.

    Source: as the functions called here.
    """
    measured = design.measured or Measured()
    reading, over = pitch_diameter_of(design, measured, compound, units)
    made = design.made if isinstance(design.made, TapDesign) else None
    known = {(finding.code, finding.field) for finding in design.findings}
    risen = made.findings if made else ()
    return MeasuredAnswer(
        design=design,
        judgements=tuple(judgements(design, made, sizes_of(measured, reading), reading)),
        over_wires=over,
        made=made,
        lacking=design.made if isinstance(design.made, NotMade) else None,
        risen=tuple(f for f in risen if (f.code, f.field) not in known),
    )
