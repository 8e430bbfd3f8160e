"""A design as a page shows it on which it can be changed."""

from dataclasses import replace

from tapmodel.designing.record import TapDesign
from tapmodel.report.units import Units
from tapmodel.report.view.controls.fields import fields_of
from tapmodel.report.view.tap import TapView, view_of


def changing_view_of(design: TapDesign, units: Units, z: float | None = None) -> TapView:
    """As `view_of`, with the controls, which a file of the page would load for nothing."""
    return replace(view_of(design, units, z), fields=fields_of(design, units))
