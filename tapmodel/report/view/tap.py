"""A design as its page shows it: plain records, which the page's script takes as JSON.

`report/page/script/src/types.d.ts` tells the script what is in them.
"""

from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.report.units import Units
from tapmodel.report.view.controls.record import Group
from tapmodel.report.view.figures import NamedFigure, named_figures
from tapmodel.report.view.findings import Found, findings_of
from tapmodel.report.view.first import Figure, first_figures, under, verdict_of
from tapmodel.report.view.in_the_hole.chips import ChipsView, chips_view
from tapmodel.report.view.in_the_hole.rubbing import RubbingView, rubbing_view
from tapmodel.report.view.in_the_hole.torque import TorqueView, torque_view
from tapmodel.report.view.judged import Judged
from tapmodel.report.view.model.model import model_key
from tapmodel.report.view.section.edge_marks import EdgeMarks, crest_height, edge_marks
from tapmodel.report.view.section.sections import Section, section_at
from tapmodel.report.words.sets import tap_for


@dataclass(frozen=True, slots=True)
class Frame:
    """What the section is drawn in.

    Attributes:
        reach: greatest radius of the tap [mm].
        length: of the tap, the greatest height of a section [mm].
    """

    reach: float
    length: float


@dataclass(frozen=True, slots=True)
class TapView:
    """What a page shows of one tap.

    Attributes:
        name: of the job, for files.
        title: heading.
        under: what stands under it.
        hand: "right" or "left".
        units: of every text.
        verdict: what is to be thought of it, in one line.
        first: the numbers that matter, in the order of the work.
        section: at the height that was asked for.
        frame: of sections.
        marks: of the cutting edge on them.
        chips, torque, rubbing: what it does in the hole; None where it breaks a rule of its
            geometry.
        figures: by which taps are compared.
        findings: the gravest first.
        fields: what can be changed; none on a page that changes nothing.
        model: another wherever the model, or a text on it, is another.
    """

    name: str
    title: str
    under: str
    hand: str
    units: str
    verdict: Judged
    first: tuple[Figure, ...]
    section: Section
    frame: Frame
    marks: EdgeMarks
    chips: ChipsView | None
    torque: TorqueView | None
    rubbing: RubbingView | None
    figures: tuple[NamedFigure, ...]
    findings: tuple[Found, ...]
    fields: tuple[Group, ...]
    model: str


def view_of(design: TapDesign, units: Units, z: float | None = None) -> TapView:
    """Everything that the page shows of a design.

    Args:
        design: every number of the tap.
        units: of every text.
        z: height of the section from the front [mm]; None for one in the middle of the whole
            thread, where the first land's edge lies at the crest.

    Returns:
        The records, of a page that changes nothing.
    """
    tap, blank, foreseen = design.tap, design.tap.blank, design.prediction
    reach = max(tap.thread.major, blank.shank_diameter, blank.neck_diameter) / 2
    return TapView(
        name=design.name,
        title=tap_for(design),
        under=under(design, units),
        hand=tap.thread.hand.value,
        units=units.value,
        verdict=verdict_of(design, units),
        first=first_figures(design, units),
        section=section_at(design, crest_height(tap) if z is None else z),
        frame=Frame(reach, blank.overall_length),
        marks=edge_marks(design, units),
        chips=chips_view(design, foreseen, units) if foreseen else None,
        torque=torque_view(design, foreseen, units) if foreseen else None,
        rubbing=rubbing_view(design, foreseen, units) if foreseen else None,
        figures=named_figures(design, units),
        findings=findings_of(design, units),
        fields=(),
        model=model_key(design, units),
    )
