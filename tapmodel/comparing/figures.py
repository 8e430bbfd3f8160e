"""The numbers by which taps are compared, by name."""

from collections.abc import Mapping
from dataclasses import asdict
from typing import cast

from tapmodel.comparing.variant import Cell, Merit
from tapmodel.designing.record import TapDesign
from tapmodel.prediction.prediction import Prediction
from tapmodel.prediction.rubbing.record import Contact

_RELIEF = {"edge_angle": "deg", "heel_drop": "mm", "arc_radius": "mm", "arc_direction": "deg"}

_TAP = {
    "cutter_diameter": "mm",
    "chamfer_length": "mm",
    **dict.fromkeys(("chamfer_pitches", "chamfer_leads", "chamfer_teeth"), ""),
    **dict.fromkeys(("chip_thickness", "depth_from_top", "core_diameter"), "mm"),
    **dict.fromkeys(("rake_crest", "rake_at_wall", "rake_pitch", "rake_root"), "deg"),
    **dict.fromkeys(("chordal_hook", "land_angle"), "deg"),
    "land_width": "mm",
    "flute_area": "mm²",
    "runout_end": "mm",
    **{f"thread_relief.{name}": unit for name, unit in _RELIEF.items()},
    **{f"chamfer_relief.{name}": unit for name, unit in _RELIEF.items()},
    "material": "",
}

_FORESEEN = {
    **dict.fromkeys(("torque_low", "torque_likely", "torque_high", "bears"), "N·m"),
    "margin": "",
    "chamfer_clearance_um": "µm",
    **dict.fromkeys(("flank_rubbing", "chamfer_rubbing", "chip_room"), "mm"),
    **dict.fromkeys(("chip_min", "chip_max"), "mm"),
}

UNITS: Mapping[str, str] = {**_TAP, **_FORESEEN}
"""Every figure with its unit, in the order of a table.

Those of `tapmodel.shape.figures` and of the cutter; the material tapped; the band of torque, what
the tap bears, and that over the most it takes; clearance of the
chamfer, negative where it binds; how far flank and chamfer rub; the length of thread whose chips
the flutes hold in a hole of the kind asked for; thinnest and thickest chip."""

NO_FIGURES: Mapping[str, Cell] = dict.fromkeys(UNITS)
"""Of what is no tap."""


def figures_by_name(design: TapDesign) -> dict[str, Cell]:
    """Every figure of `UNITS`; what a tap will do is None where it breaks a rule."""
    found: dict[str, Cell] = {"material": design.work.material.name}
    found |= {"cutter_diameter": design.tap.flutes.cutter_diameter}
    found |= {"rake_at_wall": design.rake_at_wall}
    for name, value in asdict(design.figures).items():
        if isinstance(value, dict):
            parts = cast("dict[str, Cell]", value)
            found |= {f"{name}.{part}": number for part, number in parts.items()}
        else:
            found[name] = value
    if design.prediction is not None:
        found |= _foreseen(design.prediction)
    return {name: found.get(name) for name in UNITS}


def _foreseen(prediction: Prediction) -> dict[str, Cell]:
    band, rubbing = prediction.torque.band, prediction.rubbing
    return {
        "torque_low": band.low,
        "torque_likely": band.likely,
        "torque_high": band.high,
        "bears": prediction.strength.bears,
        "margin": prediction.margin,
        "chamfer_clearance_um": clearance(rubbing.chamfer),
        "flank_rubbing": rubbing.flank.rubbing_length,
        "chamfer_rubbing": rubbing.chamfer.rubbing_length,
        "chip_room": prediction.chips_held,
        "chip_min": prediction.chips.thickness_min,
        "chip_max": prediction.chips.thickness_max,
    }


def clearance(contact: Contact) -> float:
    """At the heel; where a surface stands proud of its edge's cut, how far it does, negative [µm].

    The edge itself, where there is never any, tells nothing.
    """
    if contact.binds:
        return contact.clearance_min_um
    return max(0.0, contact.heel_clearance_um)


def merit_of(prediction: Prediction, warnings: int) -> Merit:
    """By what a tap that breaks no rule is ranked."""
    rubbing = prediction.rubbing
    return Merit(
        binds=rubbing.chamfer.binds,
        warnings=warnings,
        margin=prediction.margin,
        rubbing=rubbing.flank.rubbing_length + rubbing.chamfer.rubbing_length,
    )
