"""How well the model of a build agrees with its design, from the record of the run."""

from typing import Any


def proved(record: dict[str, Any]) -> list[tuple[str, str]]:
    """What was looked at, and what was found."""
    model, mesh = record["model"], record["mesh"]
    worst = max(abs(s["area"] / s["area_expected"] - 1) for s in model["stations"])
    return [
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
    ]
