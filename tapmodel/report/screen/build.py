"""What a build ends with on the screen: what was made, how well it agrees, where it is."""

from functools import partial
from pathlib import Path
from typing import Any

from tapmodel.checks.proof.verdict import Bounds, faces
from tapmodel.report.screen.columns import columns
from tapmodel.report.units import distance_told, volume_in_words
from tapmodel.report.words.causes import causes_told
from tapmodel.words import Units


def build_summary(record: dict[str, Any], folder: Path) -> str:
    """A short table from the record of a run and the folder of its files."""
    model, mesh, flutes = record["model"], record["mesh"], record["flutes"]
    worst = max(abs(s["area"] / s["area_expected"] - 1) for s in model["stations"])
    rows = [
        (
            "made",
            (
                f"{record['designation']}: {flutes['count']} flutes, {model['faces']} faces, "
                f"{model['volume']:.2f} mm³"
            ),
        ),
        ("sound", f"{model['solids']} closed solid, genus {model['genus']}, no self-intersection"),
        ("volume", f"within {abs(model['volume_relative_error']):.1e} of the quadrature"),
        ("sections", f"{len(model['stations'])} cuts, areas within {worst:.1e}"),
        (
            "surface",
            (
                f"{model['deviation_points']} points, at most "
                f"{max(model['deviation_um_max'], 1e-5):.1g} µm off"
            ),
        ),
        (
            "features",
            (
                f"{len(model['ideal_um_by_feature'])} features and edges, {model['ideal_points']} "
                f"points found within {max(model['ideal_um_max'], 1e-5):.1g} µm"
            ),
        ),
        ("mesh", f"{mesh['triangles']} triangles, watertight, chord {mesh['chord_mm']:g} mm"),
        ("time", _cost(record["run"])),
    ]
    if any(model["moved_mm"].values()):
        rows.insert(-1, ("parted", model["simplifications"][-1]))
    rows += [
        ("file", f"{folder / file['path']}  ({file['bytes'] / 1000:.0f} kB)")
        for file in record["files"]
    ]
    rows.append(("file", f"{folder / 'record.json'}"))
    return _table(rows)


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
    return _table(rows)


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


def _cost(run: dict[str, Any]) -> str:
    memory = " and ".join(f"{p['peak_memory_mb']:.0f} MB" for p in run["processes"].values())
    return f"{run['seconds']:.1f} s, {memory}"


def _table(rows: list[tuple[str, str]]) -> str:
    return "\n".join(columns(rows))
