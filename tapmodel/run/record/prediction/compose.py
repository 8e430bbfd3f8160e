"""What the record says of the tap in the hole, put together."""

from dataclasses import asdict
from typing import Any

from tapmodel.designing.record import TapDesign
from tapmodel.designing.sets.need import set_of
from tapmodel.prediction.prediction import Prediction
from tapmodel.prediction.rubbing.record import ChamferCure, Contact, Rubbing
from tapmodel.prediction.strength.wrench import wrench_length
from tapmodel.prediction.torque.record import Course
from tapmodel.run.record.numbers import finite


def prediction_part(design: TapDesign) -> dict[str, Any] | None:
    """The part on what the tap will do; None where its geometry breaks a rule."""
    foreseen = design.prediction
    if foreseen is None:
        return None
    work = design.work
    return {
        "material": work.material.name,
        "material_assumed": work.assumed,
        "hardness": work.material.hardness,
        "chips": _chips(foreseen),
        "torque": _torque(foreseen),
        "strength": _strength(foreseen),
        "rubbing": _rubbing(foreseen),
        "gauge": _gauge(foreseen),
        "set": _set(design),
    }


def _chips(foreseen: Prediction) -> dict[str, Any]:
    chips = foreseen.chips
    return {
        "count": len(chips.teeth),
        "area_sum": chips.area_sum,
        "area_expected": chips.area_expected,
        "thickness_min": chips.thickness_min,
        "thickness_max": chips.thickness_max,
        "room": finite(foreseen.room.ratio),
        "room_depth": foreseen.chips_held,
        "teeth": [
            {
                "land": tooth.land,
                "turn": tooth.turn,
                "area": tooth.area,
                "thickness": tooth.thickness,
            }
            for tooth in chips.teeth
        ],
    }


def _torque(foreseen: Prediction) -> dict[str, Any]:
    torque, course = foreseen.torque, foreseen.course
    return {
        "cutting_max": torque.cutting,
        "friction": torque.friction.likely,
        **asdict(torque.band),
        "axial_force": torque.axial_force.likely,
        "formula_a": torque.formula_a,
        "formula_b": torque.formula_b,
        "along": _moments(course.course_in),
        "back": _moments(course.course_back),
    }


def _moments(course: Course | None) -> list[dict[str, float]]:
    if course is None:
        return []
    columns = (course.depth.tolist(), course.low.tolist(), course.high.tolist())
    return [
        {"depth": depth, "low": low, "high": high}
        for depth, low, high in zip(*columns, strict=True)
    ]


def _strength(foreseen: Prediction) -> dict[str, Any]:
    strength, governs = foreseen.strength, foreseen.strength.governs
    return {
        "steel": strength.steel.name,
        "steel_hardness": strength.steel.hardness,
        "sections": [
            {"what": cut.place, "z": cut.z, "J": cut.stiffness, "modulus": cut.modulus}
            for cut in strength.sections
        ],
        "notch": strength.notch.factor,
        "yield": strength.yields.low,
        "fracture": strength.breaks.low,
        "fracture_high": strength.breaks.high,
        "governs": f"{governs.place}, {governs.spot}",
        "margin": finite(foreseen.margin),
        "bears": strength.bears,
        "stop_at": foreseen.stop_at,
        "wrench_length": wrench_length(foreseen.stop_at),
    }


def _rubbing(foreseen: Prediction) -> dict[str, Any]:
    rubbing = foreseen.rubbing
    return {
        "crest": _contact(rubbing.crest, {}),
        "flank": _contact(rubbing.flank, {}),
        "chamfer": _contact(rubbing.chamfer, _chamfer_cure(rubbing.cure)),
        **_by_back_taper(rubbing),
    }


def _by_back_taper(rubbing: Rubbing) -> dict[str, float]:
    """Left out where there is none."""
    if not rubbing.flank_clears_each_turn:
        return {}
    return {
        "flank_clears_each_turn_um": rubbing.flank_clears_each_turn,
        "flank_clears_at_end_um": rubbing.flank_clears_at_end,
    }


def _contact(contact: Contact, cure: dict[str, float]) -> dict[str, Any]:
    return {
        "clearance_min_um": contact.clearance_min_um,
        "rubbing_length": contact.rubbing_length,
        "binds": contact.binds,
        "cure": cure if contact.binds else {},
    }


def _chamfer_cure(cure: ChamferCure) -> dict[str, float]:
    values = {
        "relief.chamfer.heel_drop": cure.safe_heel_drop,
        "relief.chamfer.edge_angle": cure.safe_edge_angle,
        "relief.chamfer.margin_angle": cure.margin_angle,
    }
    return {field: value for field, value in values.items() if value is not None}


def _gauge(foreseen: Prediction) -> dict[str, Any]:
    gauge = foreseen.gauge
    return {
        "go": gauge.go,
        "no_go": gauge.no_go,
        "oversize": gauge.oversize,
        "wear_left": gauge.wear_left,
        "sharpenings_face": gauge.sharpenings_face,
        "sharpenings_chamfer": gauge.sharpenings_chamfer,
    }


def _set(design: TapDesign) -> dict[str, Any]:
    found = set_of(design)
    return {"needed": found.needed, "reason": found.reason, "taps": found.taps}
