"""A sheet drawn on in mm of the part, at one scale: lines, lettering and dimensions."""

# pyright: reportUnknownMemberType=false, reportUnknownVariableType=false
# pyright: reportUnknownArgumentType=false
# The library leaves the type of its attribute dictionaries open.

from typing import Any

from tapmodel.export.dxf.document import STYLE
from tapmodel.report.drawings.canvas import Align, Canvas
from tapmodel.shape.outlines.outline import Point


class Sheet(Canvas):
    """Adds the dimensions of ISO 129."""

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
        entity = dimension.dimension
        entity.dxf.actual_measurement = entity.get_measurement()
        if not self._fits(text, ends, options["angle"]):
            entity.dxf.text_midpoint = (*middle, 0.0)
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
