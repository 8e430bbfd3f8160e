"""A design as a page shows it on which it can be changed."""

from dataclasses import replace
from typing import TypeVar

from tapmodel.designing.record import TapDesign
from tapmodel.report.units import Units
from tapmodel.report.view.controls.fields import fields_of
from tapmodel.report.view.controls.on_page import on_page
from tapmodel.report.view.findings import Found, findings_of
from tapmodel.report.view.in_the_hole.chips import ChipsView
from tapmodel.report.view.in_the_hole.rubbing import RubbingView
from tapmodel.report.view.in_the_hole.torque import TorqueView
from tapmodel.report.view.tap import TapView, view_of

Part = TypeVar("Part", ChipsView, TorqueView, RubbingView)


def changing_view_of(design: TapDesign, units: Units, z: float | None = None) -> TapView:
    """As `view_of`, with the controls, which a file of the page would load for nothing.

    What speaks of a field names its control.
    """
    view = view_of(design, units, z)
    return replace(
        view,
        verdict=on_page(view.verdict),
        chips=_judged_on_page(view.chips),
        torque=_judged_on_page(view.torque),
        rubbing=_judged_on_page(view.rubbing),
        findings=on_page(view.findings),
        fields=fields_of(design, units),
    )


def _judged_on_page(part: Part | None) -> Part | None:
    """A part with its verdict in the words of the page; its numbers name no field."""
    return replace(part, judged=on_page(part.judged)) if part else part


def changing_findings_of(design: TapDesign, units: Units) -> tuple[Found, ...]:
    """As `findings_of`, in the words of such a page."""
    return on_page(findings_of(design, units))
