"""What rubs behind the cutting edge: each surface, and its clearance along the land."""

from dataclasses import dataclass
from typing import NamedTuple

from tapmodel.designing.codes import Code
from tapmodel.designing.record import TapDesign
from tapmodel.prediction.prediction import Prediction
from tapmodel.prediction.rubbing.record import Contact, Trace
from tapmodel.prediction.rubbing.rubbing import clearance_along
from tapmodel.report.blocks import Length, small_length
from tapmodel.report.drawings.views.clearance import READABLE
from tapmodel.report.units import MM_PER_INCH, Units, as_text, in_words
from tapmodel.report.view.charts.axes import Axis, axis_of
from tapmodel.report.view.judged import Judged, judged_by

_CODES = (Code.CHAMFER_RUBS, Code.LAND_RUBS, Code.CHAMFER_SLIGHT)
_POINTS = 41
_UM_PER_TENTH = 2.54
"""Micrometres in the 0.0001 in that inch shops call a tenth."""


@dataclass(frozen=True, slots=True)
class Surface:
    """One surface of a land behind its edge.

    Attributes:
        key: "crest", "flank" or "chamfer".
        label: its name.
        rubs: how far it rubs, of its width.
        share: the same as a share from 0 to 1.
        clear: what is clear at the heel, or by how much it binds.
        binds: whether it stands proud of what its edge cut.
        along, clearance: its curve, in the units of the scales.
    """

    key: str
    label: str
    rubs: str
    share: float
    clear: str
    binds: bool
    along: tuple[float, ...]
    clearance: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class RubbingView:
    """Clearance behind the edges of a tap.

    Attributes:
        judged: what is to be thought of it.
        surfaces: crest, flanks, chamfer.
        along, clearance: the scales.
        touches: clearance below which a surface touches, on its scale; `touches_text` says so.
    """

    judged: Judged
    surfaces: tuple[Surface, ...]
    along: Axis
    clearance: Axis
    touches: float
    touches_text: str


def rubbing_view(design: TapDesign, foreseen: Prediction, units: Units) -> RubbingView:
    """Crest, flanks and chamfer: what each rubs, and its clearance from edge to heel."""
    inch = units is Units.INCH
    size, tenth = (MM_PER_INCH, _UM_PER_TENTH) if inch else (1.0, 1.0)
    traces = clearance_along(foreseen.tap, _POINTS, foreseen.task.hole.drill)
    rubbing = foreseen.rubbing
    drawn = (
        _Drawn("crest", "crest", traces.crest, rubbing.crest),
        _Drawn("flank", "flanks, pitch line", traces.flank, rubbing.flank),
        _Drawn("chamfer", "chamfer, pitch line", traces.chamfer, rubbing.chamfer),
    )
    touches = 1000 * rubbing.threshold.clearance
    low, high = _ends([one.trace for one in drawn], touches)
    long = max(float(one.trace.along[-1]) for one in drawn)
    clearance = f"clearance [{'0.0001 in' if inch else 'µm'}]"
    return RubbingView(
        judged=judged_by(design, _CODES, _fine(foreseen, units), units),
        surfaces=tuple(_surface(one, (size, tenth), units) for one in drawn),
        along=axis_of(f"behind the edge [{'in' if inch else 'mm'}]", 0.0, long / size, 6),
        clearance=axis_of(clearance, low / tenth, high / tenth, 5),
        touches=touches / tenth,
        touches_text=f"below {in_words(touches / 1000, '.3f', units)} it touches the work, which "
        "springs back (from memory)",
    )


class _Drawn(NamedTuple):
    """A surface: key and name, curve, and what it amounts to."""

    key: str
    label: str
    trace: Trace
    contact: Contact


def _surface(one: _Drawn, scales: tuple[float, float], units: Units) -> Surface:
    (key, label, trace, contact), (size, tenth) = one, scales
    rubs, wide = (
        as_text(Length(mm, 2), units) for mm in (contact.rubbing_length, contact.land_width)
    )
    width = contact.land_width
    return Surface(
        key=key,
        label=label,
        rubs=f"rubs along {rubs} of {wide}",
        share=min(contact.rubbing_length / width, 1.0) if width > 0 else 0.0,
        clear=_heel(contact, units),
        binds=contact.binds,
        along=tuple(round(float(mm) / size, 5) for mm in trace.along),
        clearance=tuple(round(float(um) / tenth, 3) for um in trace.clearance_um),
    )


def _heel(contact: Contact, units: Units) -> str:
    if contact.binds:
        return f"binds, {as_text(small_length(-contact.clearance_min_um / 1000), units)} proud"
    clear = contact.heel_clearance_um / 1000
    told = as_text(small_length(clear), units) if clear > 0 else "nothing"
    return f"{told} clear at the heel"


def _ends(traces: list[Trace], touches: float) -> tuple[float, float]:
    """Lowest and highest clearance that is drawn [µm]."""
    least = min(float(trace.clearance_um.min()) for trace in traces)
    most = max(float(trace.clearance_um.max()) for trace in traces)
    high = min(max(1.1 * most, 2 * touches), READABLE * touches)
    return max(1.1 * min(least, 0.0), -READABLE * touches), high


def _fine(foreseen: Prediction, units: Units) -> str:
    clear = as_text(small_length(foreseen.rubbing.chamfer.heel_clearance_um / 1000), units)
    return (
        f"The chamfer clears what it has cut, by {clear} at the heel, and "
        "no rule finds that the lands rub too far."
    )
