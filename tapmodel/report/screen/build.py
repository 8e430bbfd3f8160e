"""What a build ends with on the screen: what was made, how well it agrees, where it is."""

from pathlib import Path
from typing import Any

from tapmodel.report.screen.columns import columns


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
    return "\n".join(columns(rows))


def _cost(run: dict[str, Any]) -> str:
    memory = " and ".join(f"{p['peak_memory_mb']:.0f} MB" for p in run["processes"].values())
    return f"{run['seconds']:.1f} s, {memory}"
