"""A sheet that is drawn on in millimetres of the part, at one scale, with lettering of paper size.

One DXF document is the source of both outputs; the SVG is rendered from it, black on white, its
lettering as outlines, so that it looks alike wherever it is shown.
"""

# pyright: reportUnknownMemberType=false, reportUnknownVariableType=false
# pyright: reportUnknownArgumentType=false
# The library leaves the type of its attribute dictionaries open.

import math
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any, Literal

from ezdxf.addons.drawing import layout, svg
from ezdxf.addons.drawing.config import (
    BackgroundPolicy,
    ColorPolicy,
    Configuration,
    LineweightPolicy,
)
from ezdxf.addons.drawing.frontend import Frontend
from ezdxf.addons.drawing.properties import RenderContext
from ezdxf.document import Drawing as Document
from ezdxf.enums import TextEntityAlignment
from ezdxf.fonts import fonts

from tapmodel.design.outline import Line, Piece, Point
from tapmodel.export.dxf import add_pieces, save
from tapmodel.export.dxf_document import FONT, HATCH, LETTERS, STYLE, TEXT_STYLE, THIN, new_document

LETTER_HEIGHT = 2.5
"""Height of capitals on paper [mm], the least that ISO 3098 allows."""

MARGIN = 2.0

_ALIGN = {
    "left": TextEntityAlignment.MIDDLE_LEFT,
    "centre": TextEntityAlignment.MIDDLE_CENTER,
    "right": TextEntityAlignment.MIDDLE_RIGHT,
}
Align = Literal["left", "centre", "right"]


@dataclass(frozen=True)
class Drawing:
    """A finished drawing.

    Attributes:
        name: short, for files.
        title: for people.
        document: the DXF document, 1:1 in mm of the part.
        scale: paper mm to one mm of the part.
    """

    name: str
    title: str
    document: Document
    scale: float

    def svg(self) -> str:
        """The picture, true to scale in mm; safe to stand beside others in one page."""
        return self._svg

    @cached_property
    def _svg(self) -> str:
        backend = svg.SVGBackend()
        look = Configuration(
            background_policy=BackgroundPolicy.WHITE,
            color_policy=ColorPolicy.BLACK,
            lineweight_policy=LineweightPolicy.ABSOLUTE,
            # both in mm of the part, where the drawing is measured
            min_dash_length=0.1 / self.scale,
            max_flattening_distance=0.01 / self.scale,
        )
        frontend = Frontend(RenderContext(self.document), backend, config=look)
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


class Sheet:
    """Draws with the lines of ISO 128 and the dimensions of ISO 129."""

    def __init__(self, name: str, title: str, scale: float) -> None:
        """Begin a drawing at `scale` paper mm to one mm of the part."""
        self.scale = scale
        self._drawing = Drawing(name, title, new_document(scale), scale)
        self._space = self._drawing.document.modelspace()

    def paper(self, length: float) -> float:
        """Millimetres of the part that are `length` mm on paper."""
        return length / self.scale

    def finished(self) -> Drawing:
        """The drawing."""
        return self._drawing

    # --- lines ------------------------------------------------------------------------------

    def pieces(self, pieces: Iterable[Piece], layer: str) -> None:
        """Lines and arcs."""
        add_pieces(self._space, pieces, layer)

    def line(self, start: Point, end: Point, layer: str) -> None:
        """One straight line."""
        add_pieces(self._space, [Line(start, end)], layer)

    def path(self, points: Sequence[Point], layer: str, *, closed: bool = False) -> None:
        """Straight lines from point to point."""
        ring = [*points, points[0]] if closed else list(points)
        add_pieces(self._space, map(Line, ring, ring[1:]), layer)

    def circle(self, centre: Point, radius: float, layer: str) -> None:
        """A circle."""
        self._space.add_circle(centre, radius, dxfattribs={"layer": layer})

    def hatch(self, points: Sequence[Point], angle: float = 45.0, spacing: float = 1.6) -> None:
        """Narrow parallel lines over a polygon, at `spacing` mm on paper."""
        hatch = self._space.add_hatch(dxfattribs={"layer": HATCH})
        step = self.paper(spacing)
        across = math.radians(angle + 90)
        offset = (step * math.cos(across), step * math.sin(across))
        hatch.set_pattern_fill("ANSI31", definition=[[angle, (0.0, 0.0), offset, []]])
        hatch.paths.add_polyline_path(points, is_closed=True)

    def fill(self, points: Sequence[Point]) -> None:
        """A solid black polygon."""
        hatch = self._space.add_hatch(color=7, dxfattribs={"layer": THIN})
        hatch.paths.add_polyline_path(points, is_closed=True)

    # --- lettering --------------------------------------------------------------------------

    def text(
        self, at: Point, text: str, align: Align = "left", height: float = LETTER_HEIGHT
    ) -> None:
        """One line of lettering whose middle height is at `at`; `height` mm on paper."""
        attributes = {"layer": LETTERS, "style": TEXT_STYLE}
        entity = self._space.add_text(text, height=self.paper(height), dxfattribs=attributes)
        entity.set_placement(at, align=_ALIGN[align])

    def lines_of_text(self, at: Point, lines: Iterable[str], align: Align = "left") -> None:
        """Lettering one line below the other."""
        for number, line in enumerate(lines):
            below = self.paper(1.8 * LETTER_HEIGHT * number)
            self.text((at[0], at[1] - below), line, align)

    def arrow(self, tail: Point, tip: Point) -> None:
        """A thin line with a filled head at `tip`."""
        self.line(tail, tip, THIN)
        self.head(math.degrees(math.atan2(tip[1] - tail[1], tip[0] - tail[0])), tip)

    def head(self, direction: float, tip: Point) -> None:
        """A filled arrow head that points in `direction` [deg]."""
        length, ends = self.paper(2.5), list[Point]()
        for lean in (170.0, 190.0):
            turned = math.radians(direction + lean)
            ends.append((tip[0] + length * math.cos(turned), tip[1] + length * math.sin(turned)))
        self.fill([tip, *ends])

    def leader(self, tip: Point, elbow: Point, text: str, align: Align = "left") -> None:
        """A reference line from lettering to a place on the part."""
        self.arrow(elbow, tip)
        gap = self.paper(1.0 if align == "left" else -1.0)
        self.text((elbow[0] + gap, elbow[1]), text, align)

    # --- dimensions -------------------------------------------------------------------------

    def linear(
        self,
        ends: tuple[Point, Point],
        base: Point,
        text: str,
        at: tuple[Point, Align],
        *,
        upright: bool = False,
    ) -> None:
        """A dimension between two points, its line through `base`.

        Args:
            ends: what is measured.
            base: a point of the dimension line.
            text: as lettered, always level.
            at: where the text stands, in the middle of its height, and how it is set there.
            upright: measures along y instead of x.
        """
        self._dimension(ends, base, text, at, {"angle": 90.0 if upright else 0.0})

    def across(
        self,
        ends: tuple[Point, Point],
        text: str,
        at: tuple[Point, Align],
        *,
        upright: bool = True,
    ) -> None:
        """A dimension on the line through its own ends, without extension lines."""
        override = {"dimse1": 1, "dimse2": 1}
        angle = 90.0 if upright else 0.0
        self._dimension(ends, ends[0], text, at, {"angle": angle, "override": override})

    def _dimension(
        self,
        ends: tuple[Point, Point],
        base: Point,
        text: str,
        at: tuple[Point, Align],
        options: dict[str, Any],
    ) -> None:
        (x, y), align = at
        shift = {"left": 0.5, "centre": 0.0, "right": -0.5}[align]
        middle = (x + shift * self.paper(self.width(text)), y)
        dimension = self._space.add_linear_dim(
            base=base,
            p1=ends[0],
            p2=ends[1],
            location=middle,
            # Programs move or turn text that does not fit between the arrows, each in its own
            # way; such text is lettering of its own beside a dimension that shows none.
            text=text if self._fits(text, ends, options["angle"]) else " ",
            text_rotation=0.0,
            dimstyle=STYLE,
            **options,
        )
        dimension.render()
        if not self._fits(text, ends, options["angle"]):
            dimension.dimension.dxf.text_midpoint = (*middle, 0.0)
            self.text(middle, text, "centre")

    def _fits(self, text: str, ends: tuple[Point, Point], angle: float) -> bool:
        length = abs(ends[1][0] - ends[0][0]) * self.scale
        return angle == 0.0 and self.width(text) < length - 6

    def angular(
        self, centre: Point, ends: tuple[Point, Point], base: Point, text: str, at: Point
    ) -> None:
        """An angle counter-clockwise between two points about `centre`, its text at `at`."""
        # Between two lines: some programs do not draw the kind with three points.
        dimension = self._space.add_angular_dim_2l(
            base=base,
            line1=(centre, ends[1]),
            line2=(centre, ends[0]),
            location=at,
            text=" ",
            dimstyle=STYLE,
        )
        dimension.render()
        points = dimension.dimension.dxf
        # The library draws the angle from the second line to the first and measures from the
        # first to the second.
        points.defpoint2, points.defpoint4 = points.defpoint4, points.defpoint2
        points.defpoint3, points.defpoint = points.defpoint, points.defpoint3
        points.text_midpoint = (*at, 0.0)
        self.text(at, text, "centre")

    @staticmethod
    def width(text: str) -> float:
        """How wide lettering is on paper [mm]."""
        font = fonts.make_font(FONT, LETTER_HEIGHT)
        return font.text_width(text)
