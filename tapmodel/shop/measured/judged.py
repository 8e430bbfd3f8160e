"""A design with what was measured of its tap, and the tap as it is, judged by the same rules."""

from collections.abc import Mapping
from dataclasses import replace

from tapmodel.designing.record import Lacking, NotMade, TapDesign
from tapmodel.designing.settle import rejudged
from tapmodel.errors import InputError
from tapmodel.shape.figures import figures_of
from tapmodel.shop.measured.made import NoTapError, Sizes, tap_of
from tapmodel.shop.measured.questions import refuse_other_units
from tapmodel.shop.measured.read import pitch_diameter_of, sizes_of
from tapmodel.shop.measured.zones import Wanted, wanted
from tapmodel.spec.job import Job
from tapmodel.spec.measured.record import Measured
from tapmodel.spec.measured.sizes import Size
from tapmodel.words import Units


def with_measured(design: TapDesign, job: Job, measured: Measured) -> TapDesign:
    """The design with what was measured of its tap, and the tap as it is.

    Args:
        design: of the tap.
        job: that it was designed for.
        measured: of the tap.

    Raises:
        InputError: a size that the tap does not have, or one that cannot have been measured.
        NoWireError: a value over wires, where no wire suits.

    Source: as the functions called here.
    """
    refuse_other_units(design, measured)
    of_tap = wanted(design)
    for size, found in measured.pairs:
        if size not in of_tap and size is not Size.OVER_WIRES:
            allowed = f"nothing, as this tap has no {size}"
            raise InputError(found.field, found.typed, allowed)
    _refuse_outside(of_tap, measured)
    found, _ = pitch_diameter_of(design, measured, 0.0, Units.MM)
    made = _made_by(design, job, sizes_of(measured, found)) if measured.pairs else None
    return replace(design, measured=measured, made=made)


_INSIDE = {Size.SQUARE: Size.SHANK, Size.CORE: Size.MAJOR, Size.POINT_DIAMETER: Size.MAJOR}
"""Sizes that no larger ones can be cut from."""


def _refuse_outside(of_tap: Mapping[Size, Wanted], measured: Measured) -> None:
    """A size that is larger than the round from which it is cut."""
    of_size = dict(measured.pairs)
    for size, around in _INSIDE.items():
        if size not in of_size:
            continue
        inner, outer = of_size[size], of_size.get(around)
        most = outer.number if outer else of_tap[around].high or of_tap[around].aim
        if inner.number > most:
            told = f"at most {most:.4g} mm, the {around} that it is cut from"
            more = "" if outer else "; measure that too where it is larger"
            raise InputError(inner.field, inner.typed, told + more)


def _made_by(design: TapDesign, job: Job, sizes: Sizes) -> TapDesign | NotMade:
    """The tap as it is, judged by the rules of its design and foreseen.

    Sizes that were not measured are as designed. The root, unless it was measured, lies as far
    under the pitch line as designed: the nose of the tool has made both.

    Args:
        design: of the tap.
        job: that it was designed for.
        sizes: measured; the pitch diameter in place of a value over wires.

    Source: derived here; the functions called name theirs.
    """
    try:
        tap = tap_of(design.tap, sizes)
        figures = figures_of(tap)
    except NoTapError as error:
        return NotMade(error.why)
    except ValueError:
        # A face that does not reach the crest has no angle there.
        return NotMade(Lacking.LAND)
    steel = design.work.steel
    if Size.HARDNESS in sizes:
        steel = replace(steel, hardness=sizes[Size.HARDNESS], temper=0.0)
    work = replace(design.work, steel=steel)
    made = rejudged(job, replace(design, tap=tap, figures=figures, work=work))
    lost = next((finding for finding in made.errors if finding.no_solid), None)
    return NotMade(Lacking.SOLID, lost) if lost else made
