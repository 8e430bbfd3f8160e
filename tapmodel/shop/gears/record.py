"""The answer about change gears as plain numbers, for JSON. Lengths in mm."""

from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from tapmodel.shop.gears.trains import GearTrain


def gears_record(
    wanted: Fraction, leadscrew: Fraction, trains: Sequence[GearTrain]
) -> dict[str, Any]:
    """What is to be cut, and the trains, best first.

    `pitch_mm` is what the gears cut: the lead, where a thread has several starts. `error_ppm` is
    that of the train, in millionths of the one wanted, too long positive. `meshing` has driver and
    driven of each pair, from the spindle on, `fits` whether they clear the shafts there.
    """
    return {
        "pitch_mm": float(wanted),
        "leadscrew_mm": float(leadscrew),
        "trains": [
            {
                "drivers": list(train.drivers),
                "driven": list(train.driven),
                "pitch_mm": float(train.made),
                "error_ppm": train.ppm,
                "meshing": [list(pair) for pair in places.pairs],
                "fits": places.fits,
            }
            for train in trains
            for places in [train.meshing]
        ],
    }
