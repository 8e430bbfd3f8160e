"""How well the model of a build agrees with its design, from the record of the run."""

import math
from functools import partial
from typing import Any

from tapmodel.report.units import MM_PER_INCH, distance_told, in_words, volume_in_words
from tapmodel.words import Units

_DECIMALS = {Units.MM: 4, Units.INCH: 6}
"""To which areas and volumes are told; what is less tells nobody anything."""


def proved(record: dict[str, Any], units: Units) -> list[tuple[str, str]]:
    """What was looked at, and what was found.

    Args:
        record: of a run that made a model.
        units: of the texts.
    """
    model, mesh = record["model"], record["mesh"]
    within = partial(_within, units=units)
    apart = abs(model["volume"] - model["volume_expected"])
    worst = max(abs(cut["area"] - cut["area_expected"]) for cut in model["stations"])
    off, features_off = (
        distance_told(model[farthest], units) for farthest in ("deviation_um_max", "ideal_um_max")
    )
    holes = "with no hole through it" if not model["genus"] else f"with {model['genus']} holes"
    return [
        ("sound", f"{model['solids']} closed solid {holes}, which nowhere cuts itself"),
        (
            "volume",
            f"{volume_in_words(model['volume'], units)}, within {within(apart, 3)} of the design",
        ),
        (
            "sections",
            (
                f"{len(model['stations'])} cuts square to the axis, areas within "
                f"{within(worst, 2)} of the design"
            ),
        ),
        ("surface", f"{model['deviation_points']} points, at most {off} off the design"),
        (
            "features",
            (
                f"{model['ideal_points']} points of {len(model['ideal_um_by_feature'])} features "
                f"and edges of the design, at most {features_off} off the solid"
            ),
        ),
        (
            "triangles",
            (
                f"{mesh['triangles']}, closed all round, at most "
                f"{in_words(mesh['chord_mm'], 'g', units)} off the solid"
            ),
        ),
    ]


def _within(difference: float, power: int, units: Units) -> str:
    """A difference of areas [mm²] or volumes [mm³], never less than it is."""
    sign = {2: "²", 3: "³"}[power]

    def text(unit: str, value: float, digits: int) -> str:
        steps = max(math.ceil(value * 10**digits), 1)
        return f"{steps / 10**digits:.{digits}f} {unit}{sign}"

    texts = {
        Units.MM: text("mm", difference, _DECIMALS[Units.MM]),
        Units.INCH: text("in", difference / MM_PER_INCH**power, _DECIMALS[Units.INCH]),
    }
    return texts[units] if units in texts else " = ".join(texts.values())
