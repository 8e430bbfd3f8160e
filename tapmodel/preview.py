"""A quick look: mesh and still straight from the numbers, no kernel, nothing proved.

Its files bear names of their own, so that they are never taken for a verified model.
"""

from pathlib import Path

from tapmodel.design.tap_design import TapDesign
from tapmodel.export.stl import write_stl
from tapmodel.geometry.preview import preview_mesh
from tapmodel.report.still import draw
from tapmodel.workshop import staging


def look(design: TapDesign, out: Path) -> list[Path]:
    """Write `<name>-preview.stl` and `.png` to `out/<name>` and return their paths.

    Raises:
        InputError: when `out` cannot be written.
    """
    mesh = preview_mesh(design)
    final = out / design.name
    with staging(out, design.name) as staged:
        stl, png = (staged / f"{design.name}-preview.{ending}" for ending in ("stl", "png"))
        write_stl(mesh, stl)
        draw(mesh.vertices, mesh.triangles, png)
        final.mkdir(exist_ok=True)
        return [path.replace(final / path.name) for path in (stl, png)]
