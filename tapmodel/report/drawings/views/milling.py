"""The milling set-up: which way the cutter is offset, how deep it goes, how the tap turns."""

import math

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import CENTRE, HIDDEN, PHANTOM, THIN, VISIBLE
from tapmodel.report.drawings.canvas import Caption, Key
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lettering import fitting_scale, plain
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.drawings.views.end_view import SEEN, in_flute, on_face, on_heel, placed_loop
from tapmodel.report.units import Units
from tapmodel.shape.outlines.outline import Arc, Point
from tapmodel.shape.outlines.section import full_thread_height, section_outline
from tapmodel.shop.flute_setting import flute_setting
from tapmodel.words import Hand

_VIEW = 62.0  # of the blank on paper, at most [mm]


def draw(design: TapDesign, units: Units = Units.MM) -> Drawing:
    """Blank in the dividing head seen on the cutting end, cutter above, first flute on top."""
    scale = fitting_scale(design.tap.thread.major, _VIEW)
    sheet = Sheet("milling", "Milling the flutes", scale, units)
    _blank(sheet, design)
    _cutter(sheet, design)
    _offset(sheet, design)
    _depth(sheet, design)
    _sense(sheet, design)
    _names(sheet, design)
    _set_up(sheet, design)
    _captions(sheet, design)
    return sheet.finished()


def view_alone(design: TapDesign, units: Units, room: float) -> Drawing:
    """The same view at most `room` mm wide on paper, without its words: a poster sets its own."""
    scale = fitting_scale(design.tap.thread.major, room)
    sheet = Sheet("milling-view", "Milling the flutes", scale, units)
    _blank(sheet, design)
    _cutter(sheet, design)
    _offset(sheet, design)
    _depth(sheet, design)
    _sense(sheet, design)
    _names(sheet, design)
    return sheet.finished()


def _blank(sheet: Sheet, design: TapDesign) -> None:
    radius = design.tap.thread.major / 2
    over = radius + sheet.paper(4)
    sheet.circle((0.0, 0.0), radius, VISIBLE)
    for loop in section_outline(design.tap, full_thread_height(design.tap)).loops:
        sheet.pieces(placed_loop(loop), THIN)
    sheet.circle((0.0, 0.0), design.tap.flutes.core_diameter / 2, HIDDEN)
    sheet.line((-over, 0.0), (over, 0.0), CENTRE)
    sheet.line((0.0, -over), (0.0, _top(sheet, design)), CENTRE)


def _top(sheet: Sheet, design: TapDesign) -> float:
    """Height to which the cutter is drawn [mm]."""
    return design.tap.thread.major / 2 + sheet.paper(20)


def _cutter(sheet: Sheet, design: TapDesign) -> None:
    flutes = design.tap.flutes
    x, _ = in_flute(design, flutes.centre_radius, flutes.offset)
    ball, top = flutes.cutter_diameter / 2, _top(sheet, design) - sheet.paper(6)
    for side in (-ball, ball):
        sheet.line((x + side, flutes.centre_radius), (x + side, top), VISIBLE)
    sheet.pieces([Arc((x, flutes.centre_radius), ball, 180.0, 360.0)], VISIBLE)
    wave = [
        (x - ball + ball * n / 8, top + ball / 12 * math.sin(n * math.pi / 4)) for n in range(17)
    ]
    sheet.path(wave, THIN)
    sheet.line((x, flutes.centre_radius - ball * 1.2), (x, _top(sheet, design)), CENTRE)


def _offset(sheet: Sheet, design: TapDesign) -> None:
    setting = flute_setting(design)
    x, _ = in_flute(design, design.tap.flutes.centre_radius, design.tap.flutes.offset)
    height = _top(sheet, design) + sheet.paper(3)
    if setting.side:
        start = _top(sheet, design)
        words = f"offset {sheet.plotted(setting.offset)} to the {setting.side.upper()}"
        text = (0.0, height + sheet.paper(3.6)), "centre"
        sheet.linear(((0.0, start), (x, start)), (0.0, height), words, text)
    else:
        sheet.text((0.0, height), "no offset: cutter on the centre line", "centre")


def _depth(sheet: Sheet, design: TapDesign) -> None:
    """On the side away from the cutting face, where nothing else is dimensioned."""
    flutes, radius = design.tap.flutes, design.tap.thread.major / 2
    x, _ = in_flute(design, flutes.centre_radius, flutes.offset)
    away = -_face_side(design)
    bottom = flutes.centre_radius - flutes.cutter_diameter / 2
    at = away * (_away_reach(design) + sheet.paper(7))
    ends = ((0.0, radius), (x, bottom))
    words = _depth_words(sheet, design)
    align = "left" if away > 0 else "right"
    text = (at + away * sheet.paper(1), (radius + bottom) / 2), align
    sheet.linear(ends, (at, 0.0), words, text, upright=True)


def _depth_words(sheet: Sheet, design: TapDesign) -> str:
    return f"depth {sheet.plotted(design.figures.depth_from_top)}"


def _away_reach(design: TapDesign) -> float:
    """How far tap or cutter reach to the side away from the cutting face [mm]."""
    flutes = design.tap.flutes
    return max(design.tap.thread.major / 2, flutes.cutter_diameter / 2 - flutes.offset)


def _face_side(design: TapDesign) -> float:
    """+1 where the cutting face of the first flute lies to the right in the view."""
    return 1.0 if design.tap.thread.hand is Hand.RIGHT else -1.0


def _sense(sheet: Sheet, design: TapDesign) -> None:
    """How the tap turns in use: towards its cutting faces."""
    radius = design.tap.thread.major / 2 + sheet.paper(6)
    turn = _face_side(design)
    arc = Arc((0.0, 0.0), radius, 270.0 - turn * 35, 270.0 + turn * 35)
    sheet.pieces([arc], THIN)
    sheet.head(arc.end_angle + turn * 85, arc.end)
    words = "the finished tap turns this way when it cuts"
    sheet.text((0.0, -radius - sheet.paper(4)), words, "centre")


def _names(sheet: Sheet, design: TapDesign) -> None:
    side, radius = _face_side(design), design.tap.thread.major / 2
    root = design.tap.thread.minor / 2
    face, heel = (on(design, (radius + root) / 2) for on in (on_face, on_heel))
    align = ("left", "right") if side > 0 else ("right", "left")
    row = radius + sheet.paper(6)
    out = radius * 0.75 + sheet.paper(8)
    sheet.leader(face, (side * out, row), "cutting face", align[0])
    below = min(heel[1], radius - design.figures.depth_from_top) - sheet.paper(7)
    sheet.leader(heel, (-side * (radius + sheet.paper(6)), below), "heel", align[1])


def _column(sheet: Sheet, design: TapDesign) -> float:
    """Left end of what stands beside the view [mm]."""
    radius = design.tap.thread.major / 2
    beside = max(30.0, 11.0 + sheet.width(_depth_words(sheet, design)))
    face, heel = 0.75 * radius + sheet.paper(33), _away_reach(design) + sheet.paper(beside)
    return face if _face_side(design) > 0 else max(face, heel)


def _set_up(sheet: Sheet, design: TapDesign) -> None:
    """Small picture from the side: from where the view is taken. Not to scale."""
    p = sheet.paper
    left, middle = _column(sheet, design) + p(14), _top(sheet, design) - p(17)

    def box(x0: float, y0: float, x1: float, y1: float, layer: str = VISIBLE) -> list[Point]:
        points = [(left + p(x), middle + p(y)) for x, y in ((x0, y0), (x1, y0), (x1, y1), (x0, y1))]
        sheet.path(points, layer, closed=True)
        return points

    box(0, -2, 22, 2)  # blank
    box(22, -3.5, 27, 3.5)  # chuck
    sheet.hatch(box(27, -8, 39, 8))  # dividing head
    box(2, -11, 39, -8, PHANTOM)  # table
    box(6, 3, 9, 13)  # cutter
    sheet.line((left - p(3), middle), (left + p(41), middle), CENTRE)
    sheet.arrow((left - p(14), middle), (left - p(4), middle))
    sheet.text((left - p(14), middle + p(3.5)), "eye")
    sheet.text((left + p(5), middle + p(10)), "cutter", "right")
    sheet.text((left + p(39), middle + p(11)), "dividing head", "right")
    sheet.text((left - p(14), middle - p(5)), "cutting end")
    sheet.text((left - p(14), middle + p(17)), "view taken from here (no scale)")


def _cutter_words(sheet: Sheet, design: TapDesign) -> tuple[str, ...]:
    """On two lines where a size in both units would reach too far."""
    flutes, size = design.tap.flutes, f"⌀{sheet.mm(design.tap.flutes.cutter_diameter)}"
    first = f"{flutes.count} flutes, ball-nose cutter"
    return (first, f"   {size}") if sheet.wanted is Units.BOTH else (f"{first} {size}",)


def _depth_told(sheet: Sheet, design: TapDesign) -> tuple[str, ...]:
    depth, major = sheet.mm(design.figures.depth_from_top), sheet.mm(design.tap.thread.major)
    if sheet.wanted is Units.BOTH:
        return f"depth {depth}", "   from the top of the blank", f"   of ⌀{major}"
    return f"depth {depth} from the top", f"   of the blank of ⌀{major}"


def _hand_words(sheet: Sheet, design: TapDesign) -> tuple[str, ...]:
    words = f"{design.tap.thread.hand.value}-hand tap", sheet.scale_told
    return words if sheet.wanted is Units.BOTH else ("; ".join(words),)


def _captions(sheet: Sheet, design: TapDesign) -> None:
    flutes, setting = design.tap.flutes, flute_setting(design)
    wall = "right" if _face_side(design) > 0 else "left"
    turn = plain(f"{360 / flutes.count:.4f}")
    lines: list[Caption] = [
        *_cutter_words(sheet, design),
        f"index {flutes.count} times {turn}°",
        f"offset {sheet.mm(setting.offset)} to the {setting.side}" if setting.side else "no offset",
        *_depth_told(sheet, design),
        f"cutting face: the {wall} wall",
        (Key(HIDDEN, f"dashed: core ⌀{sheet.mm(flutes.core_diameter)}"),),
        *_hand_words(sheet, design),
        SEEN,
    ]
    top = _top(sheet, design) - sheet.paper(34)
    sheet.lines_of_text((_column(sheet, design), top), lines)
