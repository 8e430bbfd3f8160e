"""What a verification ends with on the screen: how the file agrees, and the verdict."""

from functools import partial
from typing import Any

from tapmodel.checks.proof.verdict import Bounds, faces
from tapmodel.report.screen.columns import columns
from tapmodel.report.units import distance_told, volume_in_words
from tapmodel.report.words.causes import causes_told
from tapmodel.words import Units

_MOST_DIFFERENCES = 6
"""Lines; a tap that is moved differs in every face, which --json tells one by one."""


def verify_summary(measured: dict[str, Any], units: Units = Units.MM) -> str:
    """A short table of what a STEP file holds against its design, ending in the verdict."""
    wrong, bounds = measured["differences"], measured["bounds"]
    rows = [
        ("solids", f"{measured['solids']}, genus {measured['genus']}, {measured['faces']} faces"),
        (
            "volume",
            (
                f"{volume_in_words(measured['volume'], units)}, the design's "
                f"{volume_in_words(measured['volume_expected'], units)} "
                f"({measured['volume_relative_error']:+.1e})"
            ),
        ),
    ]
    rows += _differences(measured, units) if wrong else _measures(measured, units)
    rows.append(
        (
            "allowed",
            (
                f"{distance_told(1000 * bounds['any_face'], units)} at every face, "
                f"{bounds['volume']:.0e} of volume and of sections"
            ),
        )
    )
    rows.append(
        ("verdict", _failed(measured["causes"], units) if wrong else "this is the designed tap")
    )
    return "\n".join(columns(rows))


def _measures(measured: dict[str, Any], units: Units) -> list[tuple[str, str]]:
    rows = [
        (surface, f"at most {distance_told(micrometres, units)} off")
        for surface, micrometres in measured["deviation_um_by_surface"].items()
    ]
    features = (
        f"{measured['ideal_points']} points of the design at most "
        f"{distance_told(measured['ideal_um_max'], units)} from the faces"
    )
    return [*rows, ("features", features)]


def _differences(measured: dict[str, Any], units: Units) -> list[tuple[str, str]]:
    """The list of differences ends in the faces, which are told in the reader's units."""
    off = faces(
        measured["deviation_um_by_surface"],
        measured["ideal_um_by_feature"],
        Bounds(**measured["bounds"]),
        partial(distance_told, units=units),
    )
    wrong = [*measured["differences"][: len(measured["differences"]) - len(off)], *off]
    rows = [("DIFFERS", text) for text in wrong[:_MOST_DIFFERENCES]]
    left = len(wrong) - len(rows)
    return [*rows, ("", f"and {left} more differences: --json tells all")] if left else rows


def _failed(causes: dict[str, Any], units: Units) -> str:
    """The verdict on a solid that is not the designed tap, with why."""
    told = causes_told(causes, units)
    if not told:
        return "NOT the designed tap; no single cause was found"
    undone = "; without that every face agrees" if causes["misplaced"] else ""
    return f"NOT the designed tap: {'; '.join(told)}{undone}"
