"""A finished drawing: its DXF document, and the picture of it.

One DXF document is the source of both outputs; the SVG is rendered from it, black on white, its
lettering as outlines, so that it looks alike wherever it is shown.
"""

import random
import re
from collections.abc import Generator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path

# Before any name of the library.
import tapmodel.export.dxf.library  # noqa: F401  # pyright: ignore[reportUnusedImport]

# isort: split
from ezdxf.addons.acadctb import ColorDependentPlotStyles, new_ctb
from ezdxf.addons.drawing import layout
from ezdxf.addons.drawing.config import (
    BackgroundPolicy,
    ColorPolicy,
    Configuration,
    LineweightPolicy,
)
from ezdxf.addons.drawing.frontend import Frontend
from ezdxf.addons.drawing.properties import RenderContext
from ezdxf.document import Drawing as Document

from tapmodel.export.dxf.write import save
from tapmodel.report.drawings.pen import Pen

MARGIN = 1.0
"""White around the picture on paper [mm]."""


@dataclass(frozen=True)
class Drawing:
    """A finished drawing.

    Attributes:
        name: short, for files.
        title: for people.
        document: the DXF document, 1:1 in mm of the part.
        scale: paper mm to one mm of the part.
        of_part: whether the part is shown, to that scale; else figures are plotted.
    """

    name: str
    title: str
    document: Document
    scale: float
    of_part: bool = True

    def svg(self) -> str:
        """The picture, true to scale in mm; safe to stand beside others in one page."""
        return self._svg

    @cached_property
    def _svg(self) -> str:
        backend = Pen()
        look = Configuration(
            background_policy=BackgroundPolicy.WHITE,
            color_policy=ColorPolicy.BLACK,
            lineweight_policy=LineweightPolicy.ABSOLUTE,
            # both in mm of the part, where the drawing is measured
            min_dash_length=0.1 / self.scale,
            max_flattening_distance=0.01 / self.scale,
        )
        context = RenderContext(self.document, ctb=_plot_styles())
        frontend = Frontend(context, backend, config=look)
        with _repeatable():
            frontend.draw_layout(self.document.modelspace())
        page = layout.Page(0, 0, layout.Units.mm, margins=layout.Margins.all(MARGIN))
        settings = layout.Settings(fit_page=False, scale=self.scale)
        text = backend.get_string(page, settings=settings, xml_declaration=False)
        # The backend numbers its classes alike in every picture.
        text = re.sub(r"\.C(\d+) \{", rf".{self.name}-\1 {{", text)
        return re.sub(r'class="C(\d+)"', rf'class="{self.name}-\1"', text)

    def write_dxf(self, path: Path) -> None:
        """Write the drawing as DXF, with dimension entities.

        Raises:
            InputError: when nothing can be written there.
        """
        save(self.document, path)

    @property
    def width_mm(self) -> float:
        """Of the picture on paper."""
        return self._size("width")

    @property
    def height_mm(self) -> float:
        """Of the picture on paper."""
        return self._size("height")

    def _size(self, which: str) -> float:
        found = re.search(rf'<svg[^>]* {which}="([0-9.]+)mm"', self._svg)
        return float(found[1]) if found else 0.0


@cache
def _plot_styles() -> ColorDependentPlotStyles:
    """The usual ones, which the renderer would make anew three times for each drawing."""
    return new_ctb()


@contextmanager
def _repeatable() -> Generator[None]:
    """The renderer moves the origin of every hatch by chance, to keep off corners."""
    before = random.getstate()
    random.seed(0)
    try:
        yield
    finally:
        random.setstate(before)
