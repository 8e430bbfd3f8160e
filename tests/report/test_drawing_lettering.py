"""Lettering that can be read: nothing runs through it, nothing lies over it, nothing crowds it."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations, pairwise

import numpy as np
import pytest
from alone import drawing_of
from asked import settled_of
from ezdxf.entities import DXFEntity
from ezdxf.fonts import fonts
from unit_cases import in_turn

from tapmodel.export.dxf.document import FONT
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.drawings.drawing import MARGIN, Drawing
from tapmodel.report.drawings.lettering import spread
from tapmodel.report.units import Projection, Units

JOBS = {
    "M3": (),
    "M6x0.5-LH": ("flutes.count=3",),
    "M10": ("flutes.count=3", "relief.thread.kind=concentric", "relief.thread.applies_to=thread"),
    "M10-LH": (),
    "M12": ("relief.thread.kind=eccentric", "relief.thread.applies_to=thread"),
    "M16": ("flutes.count=2",),
    "M18x0.75": (),
    "M20xPh3P1.5": (),
    "M20x2": ("chamfer.form=taper",),
    "M28x0.75-5H": ("flutes.count=6", "chamfer.form=bottoming"),
    "M30": ("flutes.count=5", "chamfer.form=taper", "flutes.offset=0"),
    "M36": (),
    "1/2 BSW": (),
    "2 BA": (),
    "G 1/2": (),
    "Tr14x3-LH": (),
    "Tr16x6P3": (),
    "Tr16x8(P4)": (),
    "M64x1": (
        "hole.material=EN AW-6082",
        "shop.cutters=4,6,8,10,12",
        "hole.kind=blind",
        "hole.depth=25",
    ),
    "3/8 BSW LH": (),
    "1/2-10 Acme-2G": (),
    "7/16-26 UNS-2B": (),
    "1/4-20 UNC": (),
    # A roughing tap: the finished hole's open zone begins where the tap's own ends.
    "Tr16x8P4": (
        "set.number=1",
        "set.taps=3",
        "thread.pitch_diameter=14.059",
        "thread.major=14.03",
        "thread.root_flat=1.38",
    ),
}
CLEAR = 0.3  # around lettering [mm on paper]

Point = tuple[float, float]


@dataclass(frozen=True)
class Box:
    """Lettering and the room it takes on paper [mm]."""

    text: str
    left: float
    low: float
    right: float
    high: float

    def meets(self, other: "Box") -> bool:
        """Whether both take the same room."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.low < other.high
            and other.low < self.high
        )


def _parts(drawing: Drawing) -> Iterator[DXFEntity]:
    for entity in drawing.document.modelspace():
        if entity.dxftype() == "DIMENSION":
            yield from entity.virtual_entities()
        else:
            yield entity


def _boxes(drawing: Drawing) -> list[Box]:
    scale, boxes = drawing.scale, list[Box]()
    for entity in _parts(drawing):
        if entity.dxftype() == "TEXT":
            text, height = entity.dxf.text, entity.dxf.height
            align, at, _ = entity.get_placement()
            share = {"LEFT": 0.0, "CENTER": 0.5, "RIGHT": 1.0}[align.name.removeprefix("MIDDLE_")]
        elif entity.dxftype() == "MTEXT" and entity.text.strip():
            text, height, at, share = entity.text, entity.dxf.char_height, entity.dxf.insert, 0.5
        else:
            continue
        width = fonts.make_font(FONT, height).text_width(text)
        left, low = at.x - share * width, at.y - height / 2
        corner = (left * scale - CLEAR, low * scale - CLEAR)
        room = (width * scale + 2 * CLEAR, height * scale + 2 * CLEAR)
        boxes.append(Box(text, *corner, corner[0] + room[0], corner[1] + room[1]))
    return boxes


def _lines(drawing: Drawing) -> Iterator[tuple[Point, Point]]:
    scale = drawing.scale
    for entity in _parts(drawing):
        kind = entity.dxftype()
        if kind == "LINE":
            points = [entity.dxf.start, entity.dxf.end]
        elif kind in ("ARC", "CIRCLE"):
            points = list(entity.flattening(0.05 / scale))
        elif kind == "LWPOLYLINE":
            points = entity.get_points("xy")
            points = [*points, points[0]] if entity.closed else points
        elif kind == "HATCH":
            ring = entity.paths[0].vertices
            points = [*ring, ring[0]]
        elif kind == "SOLID":  # the arrow head of a dimension
            points = [*entity.wcs_vertices(), entity.dxf.vtx0]
        else:
            continue
        on_paper = [(float(p[0]) * scale, float(p[1]) * scale) for p in points]
        yield from pairwise(on_paper)


@dataclass(frozen=True)
class Seen:
    """All that is seen of a drawing, on paper [mm]."""

    boxes: list[Box]
    lines: list[tuple[Point, Point]]

    @property
    def width(self) -> float:
        """From the leftmost to the rightmost ink."""
        across = [x for line in self.lines for x, _ in line]
        across += [x for box in self.boxes for x in (box.left + CLEAR, box.right - CLEAR)]
        return max(across) - min(across)


def _seen(drawing: Drawing) -> Seen:
    return Seen(_boxes(drawing), list(_lines(drawing)))


def _faults(seen: Seen) -> list[str]:
    faults = [f"{a.text} | {b.text}" for a, b in combinations(seen.boxes, 2) if a.meets(b)]
    crossed = {box.text for box in _crossed(seen.boxes, seen.lines)}
    return [*faults, *(f"{text} is crossed" for text in crossed)]


def _crossed(boxes: list[Box], lines: list[tuple[Point, Point]]) -> list[Box]:
    """Boxes through which a line runs: each line is clipped to the width and the height of each."""
    if not boxes or not lines:
        return []
    ends = np.array(lines)[:, :, None]
    low = np.array([(box.left, box.low) for box in boxes])
    high = np.array([(box.right, box.high) for box in boxes])
    start, way = ends[:, 0], ends[:, 1] - ends[:, 0]
    with np.errstate(divide="ignore", invalid="ignore"):
        one, other = (low - start) / way, (high - start) / way
    # Along a side a line is between both others all its way, or never.
    between = np.where((low <= start) & (start <= high), np.inf, -np.inf)
    enters = np.where(way == 0, -between, np.minimum(one, other)).max(axis=2)
    leaves = np.where(way == 0, between, np.maximum(one, other)).min(axis=2)
    through = np.maximum(enters, 0.0) < np.minimum(leaves, 1.0)
    return [box for box, met in zip(boxes, through.any(axis=0), strict=True) if met]


def _interrupting(seen: Seen) -> list[str]:
    """Lettering that stands in a gap of an upright line, which looks as if it were crossed."""
    upright = [(x, *sorted((y, end))) for (x, y), (at, end) in seen.lines if abs(x - at) < 1e-6]
    found = list[str]()
    for box in seen.boxes:
        lines = [line for line in upright if box.left < line[0] < box.right]
        above = {round(x, 3) for x, low, _ in lines if 0 <= low - box.high < 1}
        below = {round(x, 3) for x, _, high in lines if 0 <= box.low - high < 1}
        found += [box.text] if above & below else []
    return found


def _in_turn(text: str, units: Units) -> Projection:
    """One of both for a job in each unit: they differ in where two of the views stand."""
    every = [*JOBS, "M80x0.75-LH"]
    return [*Projection][(every.index(text) + [*Units].index(units)) % 2]


@pytest.fixture(scope="module", params=in_turn(JOBS), ids="-".join, name="drawn")
def _drawn(request: pytest.FixtureRequest) -> dict[str, Drawing]:
    """All drawings of a job, once for all tests that look at it."""
    text, units = request.param
    return all_drawings(settled_of(text, JOBS[text]), _in_turn(text, units), units)


def test_nothing_touches_lettering(drawn: dict[str, Drawing]) -> None:
    for name, drawing in drawn.items():
        seen = _seen(drawing)
        assert _faults(seen) == [], name
        assert _interrupting(seen) == [], name
        # As far as lettering, of which the box is a little wider than its ink, tells it.
        assert seen.width + 2 * MARGIN <= 184, name


def test_the_picture_is_as_wide_as_what_is_seen_on_it() -> None:
    for name, drawing in all_drawings(settled_of("M18x0.75")).items():
        seen = _seen(drawing).width + 2 * MARGIN
        assert -0.1 < seen - drawing.width_mm < 0.8, name


def test_each_length_is_lettered_at_its_own_arrows(drawn: dict[str, Drawing]) -> None:
    drawing = drawn["side"]
    scale, boxes = drawing.scale, _boxes(drawing)
    overall = next(z for words, z in _lengths(drawing) if words.endswith("overall"))
    for words, z in _lengths(drawing):
        box = next(box for box in boxes if box.text == words)
        if words.endswith("square"):
            # from the rear end: between its arrows, or behind the one at that end
            begins = (overall - z) * scale
            inside = box.left > begins - CLEAR and box.right < overall * scale + CLEAR
            assert inside or 0 < box.left + CLEAR - overall * scale < 7, words
            continue
        over = box.left > -CLEAR and box.right < z * scale + CLEAR
        before = 0 < CLEAR - box.right < 7
        assert over or before or 0 < box.left + CLEAR - z * scale < 7, words


def test_no_length_is_lettered_nearer_than_a_letter_to_another(drawn: dict[str, Drawing]) -> None:
    _are_apart(drawn["side"])


@pytest.mark.parametrize("units", Units)
def test_nor_is_one_of_the_longest_beside_the_shortest(units: Units) -> None:
    text = "M80x0.75-LH"
    _are_apart(drawing_of("side", settled_of(text), _in_turn(text, units), units))


def _are_apart(drawing: Drawing) -> None:
    boxes = _boxes(drawing)
    told = [next(b for b in boxes if b.text == words) for words, _ in _lengths(drawing)]
    for one, other in combinations(told, 2):
        beside = max(one.left - other.right, other.left - one.right) + 2 * CLEAR
        under = max(one.low - other.high, other.low - one.high) + 2 * CLEAR
        assert max(beside, under) >= 2.5 - 1e-6, (one.text, other.text)


def _lengths(drawing: Drawing) -> Iterator[tuple[str, float]]:
    """Words of each length along the side view, and the length itself [mm]."""
    names = ("chamfer", "thread", "full depth", "run-out", "square", "overall", "neck")
    boxes = _boxes(drawing)
    unit = 25.4 if any(box.text.endswith("; inch") for box in boxes) else 1.0
    for box in boxes:
        number, _, name = box.text.partition(" ")
        name = name.rpartition(") ")[2]
        if box.text in names:  # its number stands above
            above = [
                o.text for o in boxes if abs(o.left - box.left) < 1e-6 and 0 < o.low - box.low < 9
            ]
            name, number = box.text, next(text for text in above if text[0].isdigit())
        if name in names and number[0].isdigit():
            yield box.text, float(number) * unit


def test_a_line_through_lettering_and_lettering_over_lettering_are_found() -> None:
    drawing = drawing_of("milling", settled_of("M18x0.75"))
    space = drawing.document.modelspace()
    heel = next(entity for entity in space.query("TEXT") if entity.dxf.text == "heel")
    at = heel.get_placement()[1]
    space.add_line((at.x, at.y + 1), (at.x, at.y + 3))
    assert _interrupting(_seen(drawing)) == []
    space.add_line((at.x, at.y - 1), (at.x, at.y - 3))
    assert _interrupting(_seen(drawing)) == ["heel"]
    space.add_line((at.x - 9, at.y), (at.x + 9, at.y))
    space.add_text("over it", height=1.0).set_placement((at.x - 2, at.y))
    assert "heel is crossed" in _faults(_seen(drawing))
    assert "heel | over it" in _faults(_seen(drawing))


@pytest.mark.parametrize("text", JOBS)
def test_limits_that_lie_close_are_lettered_apart(text: str) -> None:
    drawing = drawing_of("thread-form", settled_of(text, JOBS[text]))
    boxes = [box for box in _boxes(drawing) if box.text.replace(".", "").isdigit()]
    # The upper limit of the crests of a tap that another follows is its aim, and lettered once.
    assert len(boxes) == 12 - ("set.number=1" in JOBS[text])
    for one, other in combinations(boxes, 2):
        if one.left < other.right and other.left < one.right:
            assert abs(one.low - other.low) >= 1.3 * 2.5
    texts = {
        entity.dxf.text: entity.dxf.height for entity in drawing.document.modelspace().query("TEXT")
    }
    assert min(texts.values()) * drawing.scale == pytest.approx(2.5)


def test_crowding_labels_are_spread_about_their_middle_and_others_stay() -> None:
    assert spread([0.0, 10.0, 10.0, 10.5, 30.0], 4.0) == pytest.approx(
        [0.0, 10.1667 - 4, 10.1667, 10.1667 + 4, 30.0], abs=1e-4
    )
    assert spread([1.0], 4.0) == [1.0]
