"""A quick look: mesh and still straight from the numbers, no kernel, nothing proved.

Its files bear names of their own, so that they are never taken for a verified model.
"""

from dataclasses import replace
from pathlib import Path

from tapmodel.design.tap_design import TapDesign
from tapmodel.export.stl import write_stl
from tapmodel.geometry.preview import preview_mesh
from tapmodel.report.pictures.catalogue import draw_all
from tapmodel.workshop import staging


def look(design: TapDesign, out: Path) -> list[Path]:
    """Write `<name>-preview.stl` and its pictures to `out/<name>` and return their paths.

    Raises:
        InputError: when `out` cannot be written.
    """
    mesh, named = preview_mesh(design), replace(design, name=f"{design.name}-preview")
    final = out / design.name
    with staging(out, design.name) as staged:
        stl = staged / f"{named.name}.stl"
        write_stl(mesh, stl)
        pictures = draw_all(named, mesh, staged)
        final.mkdir(exist_ok=True)
        return [path.replace(final / path.name) for path in (stl, *pictures)]
