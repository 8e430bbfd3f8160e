"""Lines and lettering in mm of the part, at one scale; the lettering has its size on paper."""

# pyright: reportUnknownMemberType=false, reportUnknownVariableType=false
# pyright: reportUnknownArgumentType=false
# The library leaves the type of its attribute dictionaries open.

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Literal

# Before any name of the library.
from tapmodel.export.dxf.library import FONT

# isort: split
from ezdxf.enums import TextEntityAlignment
from ezdxf.fonts import fonts

from tapmodel.export.dxf.document import HATCH, HIDDEN, LETTERS, TEXT_STYLE, THIN, new_document
from tapmodel.export.dxf.write import add_pieces
from tapmodel.report.blocks import Length
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lettering import bare, drawn_in, lettered, scale_text
from tapmodel.report.drawings.spared import spared
from tapmodel.report.units import Units, shown_high, shown_low
from tapmodel.shape.outlines.outline import Line, Piece, Point

LETTER_HEIGHT = 2.5
"""Height of capitals on paper [mm], the least that ISO 3098 allows."""

LINE = 4.2
"""Between lines of lettering on paper [mm]."""

_ALIGN = {
    "left": TextEntityAlignment.MIDDLE_LEFT,
    "centre": TextEntityAlignment.MIDDLE_CENTER,
    "right": TextEntityAlignment.MIDDLE_RIGHT,
}
Align = Literal["left", "centre", "right"]

_UNSEEN = 0.002
"""How far a point may lie off a line that passes it by, on paper [mm]."""

_SAMPLE, _BESIDE, _KEYS = 10.0, 1.5, 4.0
"""Of a line in a legend, to its words, and between two keys on paper [mm]."""

_DASHED = 9.1
"""Of one of dashes, so that it ends with a whole one [mm]."""


@dataclass(frozen=True, slots=True)
class Key:
    """What a kind of line means: a piece of it stands before the words.

    Attributes:
        layer: that lines of this kind lie on.
        words: that name the kind and what it shows.
    """

    layer: str
    words: str


Caption = str | tuple[Key, ...]
"""One line of lettering: plain words, or keys beside each other."""


class Canvas:
    """Draws with the lines of ISO 128, and letters."""

    def __init__(
        self,
        name: str,
        title: str,
        scale: float,
        units: Units = Units.MM,
        *,
        of_part: bool = True,
    ) -> None:
        """Begin a drawing at `scale` paper mm to one mm of the part, lettered in `units`.

        What shows no part but plots figures is not `of_part`.
        """
        self.scale, self.units, self.wanted = scale, drawn_in(units), units
        self._drawing = Drawing(name, title, new_document(scale), scale, of_part=of_part)
        self._space = self._drawing.document.modelspace()
        told = "mm 1:1"
        if units is not Units.MM:
            told += f" as $INSUNITS says, though lettered in {self.units_told}"
        self._drawing.document.header.custom_vars.append("drawn in", told)

    def paper(self, length: float) -> float:
        """Millimetres of the part that are `length` mm on paper."""
        return length / self.scale

    def finished(self) -> Drawing:
        """The drawing."""
        return self._drawing

    # --- numbers ----------------------------------------------------------------------------

    def plotted(self, value: float, digits: int = 3) -> str:
        """A length [mm] as a chart of the drawing has it: one number, without idle zeros in mm."""
        return lettered(value, digits, self.units)

    def mm(self, value: float, digits: int = 3) -> str:
        """The same as a dimension has it: where both units are wanted, with inches in brackets."""
        return self._both(self.plotted(value, digits), lettered(value, digits, Units.INCH))

    def length(self, value: float) -> str:
        """A length [mm] that general tolerances hold: to a thousandth of an inch."""
        inches = lettered(value, 2, Units.INCH)
        return inches if self.units is Units.INCH else self._both(self.plotted(value), inches)

    def fixed(self, value: float, digits: int = 3) -> str:
        """A dimension with all decimals, so that it stands beside its limits."""
        number = lettered(value, digits, self.units, whole=True)
        return self._both(number, lettered(value, digits, Units.INCH))

    def small(self, value: float) -> str:
        """A flat or radius: to a tenth of a micrometre, or a ten-thousandth of an inch."""
        inches = lettered(value, 3, Units.INCH)
        if self.units is Units.INCH:
            return inches
        return self._both(lettered(value, 4, self.units, whole=True), inches)

    def size(self, value: float) -> str:
        """A diameter with three decimals in mm."""
        return f"⌀{self.fixed(value)}"

    def at_least(self, value: float, digits: int = 3) -> str:
        """A lower limit, rounded into its zone as on the sheet."""
        return self._limit(shown_low, Length(value, digits))

    def at_most(self, value: float, digits: int = 3) -> str:
        """An upper limit, rounded into its zone as on the sheet."""
        return self._limit(shown_high, Length(value, digits))

    def _limit(self, rounded: Callable[[Length, Units], tuple[str, ...]], limit: Length) -> str:
        numbers = (bare(rounded(limit, units)) for units in (self.units, Units.INCH))
        return self._both(*numbers)

    def _both(self, number: str, inches: str) -> str:
        return f"{number} ({inches})" if self.wanted is Units.BOTH else number

    @property
    def units_told(self) -> str:
        """What the numbers are in: "mm", "inch" or "mm (inch)"."""
        return "mm (inch)" if self.wanted is Units.BOTH else self.units.value

    @property
    def scale_told(self) -> str:
        """The scale, and the units of the numbers where they are not mm alone."""
        scale = f"scale {scale_text(self.scale)}"
        return scale if self.wanted is Units.MM else f"{scale}; {self.units_told}"

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

    def ring(self, pieces: Iterable[Piece], layer: str) -> None:
        """A closed outline as one line, on which dashes run on from piece to piece."""
        points = [(*piece.start, _bulge(piece)) for piece in pieces]
        attributes = {"layer": layer}
        self._space.add_lwpolyline(points, format="xyb", close=True, dxfattribs=attributes)

    def curve(self, points: Sequence[Point], layer: str, *, closed: bool = False) -> None:
        """The same as one entity, for lines of many points, of which it keeps what is seen."""
        kept = spared(points, self.paper(_UNSEEN))
        self._space.add_lwpolyline(kept, close=closed, dxfattribs={"layer": layer})

    def dot(self, at: Point, radius: float = 0.5) -> None:
        """A filled spot, `radius` mm on paper."""
        size, corners = self.paper(radius), (math.radians(30 * n) for n in range(12))
        self.fill([(at[0] + size * math.cos(a), at[1] + size * math.sin(a)) for a in corners])

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

    def lines_of_text(self, at: Point, lines: Iterable[Caption], align: Align = "left") -> None:
        """Lettering one line below the other; keys of lines always to the right of `at`."""
        for number, line in enumerate(lines):
            place = at[0], at[1] - self.paper(LINE * number)
            if isinstance(line, str):
                self.text(place, line, align)
            else:
                self._keys(place, line)

    def _keys(self, at: Point, keys: tuple[Key, ...]) -> None:
        """On the layer of the lettering, so that no line of the part's own layers is not of it."""
        layers, (x, y) = self._drawing.document.layers, at
        for key in keys:
            like = layers.get(key.layer).dxf
            attributes = {
                "layer": LETTERS,
                "linetype": like.linetype,
                "lineweight": like.lineweight,
            }
            drawn = self.paper(_DASHED if key.layer == HIDDEN else _SAMPLE)
            self._space.add_line((x, y), (x + drawn, y), dxfattribs=attributes)
            self.text((x + self.paper(_SAMPLE + _BESIDE), y), key.words)
            x += self.paper(_SAMPLE + _BESIDE + self.width(key.words) + _KEYS)

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

    @staticmethod
    def width(text: Caption) -> float:
        """How wide lettering is on paper, with the lines in it [mm]."""
        if isinstance(text, str):
            return _width(text)
        keys = (_SAMPLE + _BESIDE + _width(key.words) for key in text)
        return sum(keys) + _KEYS * (len(text) - 1)


def _bulge(piece: Piece) -> float:
    """How far a piece stands off its chord, in half chords."""
    if isinstance(piece, Line):
        return 0.0
    return math.tan(math.radians(piece.end_angle - piece.start_angle) / 4)


@cache
def _width(text: str) -> float:
    return fonts.make_font(FONT, LETTER_HEIGHT).text_width(text)
