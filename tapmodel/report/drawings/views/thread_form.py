"""Thread form of the tap in the thread of the hole, and the limit zones of both."""

from collections.abc import Sequence

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import CENTRE, HIDDEN, THIN, VISIBLE
from tapmodel.report.blocks import Pitch
from tapmodel.report.drawings.canvas import LINE, Caption, Key
from tapmodel.report.drawings.charts.flank_detail import RADIUS, flank_detail
from tapmodel.report.drawings.charts.limit_charts import WIDTH, charts
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.hole_line import hole_lines
from tapmodel.report.drawings.lead_words import lead_words
from tapmodel.report.drawings.lettering import degrees, fitting_scale, scale_text
from tapmodel.report.drawings.profile_line import between, profile_line
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.units import Units, shown
from tapmodel.shape.outlines.outline import Point
from tapmodel.shape.profile import Segment, segments

_PITCH = 50.0  # one pitch on paper, at most [mm]


def draw(design: TapDesign, units: Units = Units.MM) -> Drawing:
    """Axial section at the cutting edge, work above, and one chart for each diameter."""
    scale = fitting_scale(design.tap.thread.pitch, _PITCH)
    sheet = Sheet("thread-form", "Thread form", scale, units)
    _tap(sheet, design)
    _hole(sheet, design)
    low, right = _dimensions(sheet, design)
    detail = _reach(design) + sheet.paper(4 + RADIUS)
    # clear of the words on the root, which reach under it where the pitch is wide
    middle = max(-sheet.paper(6), low + sheet.paper(RADIUS + 2.2))
    flank_detail(sheet, design, (detail, middle))
    under = _legend(sheet, design, max(right, detail + sheet.paper(RADIUS)) + sheet.paper(4))
    first = -_reach(design) - sheet.paper(3) + sheet.paper(WIDTH / 2 - 5)
    charts(sheet, design, (first, min(low - sheet.paper(7), under)))
    return sheet.finished()


def form_alone(design: TapDesign, units: Units, room: float) -> Drawing:
    """The axial section, a pitch at most `room` mm on paper, without words and charts."""
    sheet = Sheet("form", "Thread form", fitting_scale(design.tap.thread.pitch, room), units)
    _tap(sheet, design)
    _hole(sheet, design)
    low, right = _dimensions(sheet, design)
    middle = (_height(design, design.tap.thread.major) + low) / 2
    flank_detail(sheet, design, (right + sheet.paper(4 + RADIUS), middle))
    return sheet.finished()


def _reach(design: TapDesign) -> float:
    return 0.75 * design.tap.thread.pitch


def _height(design: TapDesign, diameter: float) -> float:
    """Height of a diameter in the picture, its zero at the pitch line of the tap [mm]."""
    return (diameter - design.tap.thread.pitch_diameter) / 2


def _tap(sheet: Sheet, design: TapDesign) -> None:
    thread, reach = design.tap.thread, _reach(design)
    # a root stands in the middle of the picture
    line = profile_line(thread, -1.5 * thread.pitch, 2.5 * thread.pitch)
    points = [(z, _height(design, 2 * radius)) for z, radius in line]
    top = between(points, -reach, reach)
    bottom = _height(design, thread.minor) - sheet.paper(4)
    sheet.hatch([*top, (reach, bottom), (-reach, bottom)], spacing=2.4)
    sheet.path(top, VISIBLE)
    over = reach + sheet.paper(3)
    sheet.line((-over, 0.0), (over, 0.0), CENTRE)


def _hole(sheet: Sheet, design: TapDesign) -> None:
    """Least and largest thread of the hole: flanks at both limits of the pitch diameter."""
    hole = design.hole
    for pitch, minor in (
        (hole.pitch_min, hole.minor_min),
        (hole.pitch_max, hole.minor_max),
    ):
        layer = THIN if pitch == hole.pitch_min else HIDDEN
        for line in hole_lines(design, pitch, minor):
            points = [(z, _height(design, 2 * radius)) for z, radius in line]
            sheet.path(between(points, -_reach(design), _reach(design)), layer)


def _dimensions(sheet: Sheet, design: TapDesign) -> tuple[float, float]:
    """Pitch and crest above, root below; returns the lowest y and the right end [mm]."""
    thread, p = design.tap.thread, sheet.paper
    crest_part, _, root_part, _ = segments(thread)
    crest, root = crest_part.end - crest_part.start, root_part.end - root_part.start
    half = thread.pitch / 2
    top, bottom = _height(design, thread.major), _height(design, thread.minor)
    y = max(top, _height(design, design.hole.major_min)) + p(5)
    words = _pitch_words(sheet, thread.pitch)
    # Wider than the pitch itself it must stand clear of the ends of the extension lines.
    over = 8.4 if sheet.width(words) < thread.pitch * sheet.scale - 3 else 11.0
    text = (0.0, y + p(over)), "centre"
    sheet.linear(((-half, top), (half, top)), (0.0, y + p(6)), words, text)
    ends = ((half - crest / 2, top), (half + crest / 2, top))
    words, beside = _width_words(sheet, "crest", crest, crest_part), half + crest / 2 + p(6)
    _width(sheet, ends, (half, y), (beside, y), words)
    below = _width_words(sheet, "root", root, root_part)
    # the words stand clear of the hatching, of which the first of two lines is nearer
    low = bottom - p(8 + LINE * (len(below) - 1))
    ends = ((-root / 2, bottom), (root / 2, bottom))
    _width(sheet, ends, (0.0, low), (root / 2 + p(6), low), below)
    return low - p(LINE / 2 * (len(below) - 1)), beside + p(max(map(sheet.width, words)))


def _width(
    sheet: Sheet, ends: tuple[Point, Point], base: Point, at: Point, words: Sequence[str]
) -> None:
    """A width with its words beside it, of two lines one above the other."""
    high = at[1] + sheet.paper(LINE / 2 * (len(words) - 1))
    sheet.linear(ends, base, words[0], ((at[0], high), "left"))
    sheet.lines_of_text((at[0], high - sheet.paper(LINE)), words[1:])


def _pitch_words(sheet: Sheet, pitch: float) -> str:
    """With threads per inch where the reader wants inches, be it beside mm."""
    threads = shown(Pitch(pitch), Units.INCH)[0]
    told = f", {threads}" if sheet.wanted is not Units.MM and "(" not in threads else ""
    return f"pitch {sheet.mm(pitch)}{told}"


def _is_rounded(design: TapDesign) -> bool:
    return design.tap.thread.crest_radius > 0 or design.tap.thread.root_radius > 0


def _width_words(sheet: Sheet, name: str, width: float, part: Segment) -> tuple[str, ...]:
    """Of a rounded one that its arc is so wide, from end to end, and its radius on a line."""
    if not part.arc:
        return (f"{name} {sheet.small(width)}",)
    # numbers in both units leave no room for a word more
    told = f"{name} arc {sheet.small(width)}" + (" wide" if sheet.wanted is not Units.BOTH else "")
    return told, f"R{sheet.small(abs(part.arc))}"


def _legend(sheet: Sheet, design: TapDesign, left: float) -> float:
    """What the lines are; returns what anything below it has to stay under [mm]."""
    thread, p = design.tap.thread, sheet.paper
    lines: list[Caption] = [
        "axial section at the cutting edge",
        (Key(VISIBLE, "thick: tap at its targets"),),
        (Key(THIN, "thin: least thread of the hole"),),
        (Key(HIDDEN, "dashed: largest of the hole"),),
        *lead_words(sheet, design.tap.thread),
        *(_ROUNDED[sheet.wanted is Units.BOTH] if _is_rounded(design) else ()),
        *_scale_words(sheet, f"half angle {degrees(thread.flank_angle)}"),
    ]
    top = _height(design, thread.major) + p(7)
    sheet.lines_of_text((left, top), lines)
    return top - p(LINE * len(lines) + 1)


_ROUNDED = (
    ("   (flanks and bore, its rounding left out)",),
    ("   (flanks and bore,", "   its rounding left out)"),
)
"""Of the thread of the hole: on one line, or on two where numbers in both units take its room."""


def _scale_words(sheet: Sheet, angle: str) -> tuple[Caption, ...]:
    chain = (Key(CENTRE, "chain: pitch line of the tap"),)
    if sheet.wanted is Units.BOTH:
        return (
            *(chain, angle, sheet.scale_told),
            *(f"zones below in {sheet.units},", "   each on a scale of its own,"),
            "   the thick line its target",
        )
    return (
        *(chain, f"{angle}; scale {scale_text(sheet.scale)}"),
        *("zones below: each on a scale of its own,", "   the thick line its target"),
        *([f"all numbers in {sheet.units}"] if sheet.wanted is Units.INCH else []),
    )
