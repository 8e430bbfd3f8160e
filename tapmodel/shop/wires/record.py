"""The answer about wires as plain numbers and words, for JSON. Lengths in mm, angles in degrees."""

from collections.abc import Sequence
from dataclasses import asdict
from typing import Any

from tapmodel.shop.wires import over_wires
from tapmodel.shop.wires.answer import WiresAnswer
from tapmodel.shop.wires.reading import Reading


def wires_record(answer: WiresAnswer, notes: Sequence[str]) -> dict[str, Any]:
    """Keys and values of the answer; what is unknown for a free form is None.

    `formula_error` is how much each formula gives more than the exact value, `reading_per_wire` by
    how much the reading grows for each mm that the wires are thicker. A thread with a back taper
    says `measured_at` which height of the middle of the wires limits and target hold; pitch
    diameters are those where the chamfer ends.

    Args:
        answer: of the thread.
        notes: its notes in words.
    """
    asked, groove, at_basic = answer.asked, answer.asked.groove, answer.at_basic
    record: dict[str, Any] = {
        "thread": asked.name,
        "flank_angle": groove.flank_angle,
        "pitch": groove.pitch,
        "starts": asked.starts,
        "lead": groove.lead,
        "lead_angle": groove.lead_angle,
        "basic_pitch_diameter": groove.pitch_diameter,
        "wire": answer.wire,
        "wire_is_best": answer.is_best,
        "best_wire": answer.best_wire,
        "conventional_wire": answer.conventional_wire,
        "wire_min": answer.allowed.least if answer.allowed else None,
        "wire_max": answer.allowed.greatest if answer.allowed else None,
        "measurement_min": answer.measurement_min,
        "measurement_max": answer.measurement_max,
        "measurement_target": answer.measurement_target,
        "reading_per_wire": answer.wire_counts,
        "measurement_at_basic_pitch_diameter": asdict(at_basic),
        "formula_error": {
            "simple": at_basic.simple - at_basic.exact,
            "lead_corrected": at_basic.lead_corrected - at_basic.exact,
        },
        "target_pitch_diameter": asked.target,
        "notes": list(notes),
        "sources": {
            "exact": str(over_wires.EXACT_SOURCE),
            "simple": str(over_wires.SIMPLE_SOURCE),
            "lead_corrected": str(over_wires.LEAD_CORRECTED_SOURCE),
        },
    }
    if asked.place:
        record["measured_at"] = asked.place.z
        record["diameter_lost_there"] = asked.place.lost
        record["reading_falls_per_turn"] = asked.place.each_turn
    return record | (_reading(answer.reading) if answer.reading else {})


def _reading(reading: Reading) -> dict[str, Any]:
    return {
        "measured": reading.measured,
        "pitch_diameter": reading.pitch_diameter,
        "verdict": reading.verdict.value,
        "scrap_below": reading.scrap_below,
        "wear_left": reading.wear_left,
        "compound": reading.compound,
        "infeed": reading.infeed,
        "infeed_least": reading.infeed_least,
        "infeed_most": reading.infeed_most,
        "infeed_at_compound": {f"{angle:g}": feed for angle, feed in reading.infeed_at_compound},
    }
