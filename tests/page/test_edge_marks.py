"""Marks of the cutting edge on the page against the definition of a flute, worked out anew."""

import math

import pytest

from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.report.drawings.views import cross_section
from tapmodel.report.units import Units
from tapmodel.report.view.section.edge_marks import EdgeMarks, crest_height, edge_marks
from tapmodel.report.view.tap import view_of
from tapmodel.shape.outlines.outline import Arc
from tapmodel.shape.outlines.section import section_outline
from tapmodel.spec.job_file import job_for

JOBS = [
    ("M10", []),
    ("M10", ["flutes.offset=0.5mm", "flutes.count=4"]),
    ("M18x0.75", ["flutes.offset=-1mm"]),
    ("M6", ["flutes.count=2"]),
    ("Tr20x4", []),
    ("1/4-20", []),
]

Point = tuple[float, float]


@pytest.fixture(scope="module", params=JOBS, ids=lambda job: " ".join([job[0], *job[1]]))
def design(request: pytest.FixtureRequest) -> TapDesign:
    name, sets = request.param
    return settle(job_for(name, sets))


@pytest.fixture(scope="module")
def marks(design: TapDesign) -> EdgeMarks:
    return edge_marks(design, Units.MM)


def wall(design: TapDesign, radius: float, side: int) -> Point:
    """(u, t) of a flute's wall at a radius: side 1 the cutting face, -1 the heel."""
    flutes = design.tap.flutes
    ball, offset, centre = flutes.cutter_diameter / 2, flutes.offset, flutes.centre_radius

    def at(turn: float) -> Point:
        # along the straight wall for turns above a quarter, else along the ball
        if turn > math.pi / 2:
            return centre + (turn - math.pi / 2) * 10 * ball, offset + side * ball
        return centre - ball * math.cos(turn), offset + side * ball * math.sin(turn)

    low, high = 0.0, math.pi
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if math.hypot(*at(middle)) < radius else (low, middle)
    return at(low)


def seen(design: TapDesign, point: Point, flute: int) -> Point:
    """(u, t) of a flute as the page shows it."""
    turned = math.atan2(point[1], point[0]) + 2 * math.pi * flute / design.tap.flutes.count
    return math.hypot(*point) * math.sin(turned), -math.hypot(*point) * math.cos(turned)


def between(first: Point, second: Point) -> float:
    """Angle from one direction to another [deg]."""
    return math.degrees(
        math.atan2(
            first[0] * second[1] - first[1] * second[0],
            first[0] * second[0] + first[1] * second[1],
        )
    )


def way(start: Point, end: Point) -> Point:
    return end[0] - start[0], end[1] - start[1]


def test_the_rake_is_that_of_two_points_of_the_face(design: TapDesign, marks: EdgeMarks) -> None:
    radius = design.tap.thread.major / 2
    edge = seen(design, wall(design, radius, 1), 0)
    inside = seen(design, wall(design, radius * (1 - 1e-5), 1), 0)
    assert marks.rake.edge == pytest.approx(edge, abs=2e-4)
    # On the page angles grow clockwise, towards the land of a right-hand tap.
    rake = -between(way(edge, (0.0, 0.0)), way(edge, inside))
    drawn = -between(
        way(marks.rake.edge, marks.rake.radial), way(marks.rake.edge, marks.rake.tangent)
    )
    told = float(name(marks, "rake").removesuffix("°"))
    assert drawn == pytest.approx(rake, abs=0.05)
    assert told == pytest.approx(rake, abs=0.02)


def name(marks: EdgeMarks, key: str) -> str:
    return next(one.text for one in marks.names if one.key == key)


def test_the_edge_lies_on_the_metal_at_the_height_of_the_view(
    design: TapDesign, marks: EdgeMarks
) -> None:
    outline = section_outline(design.tap, crest_height(design.tap)).loops[0]
    corners = [(piece.start[1], -piece.start[0]) for piece in outline]
    nearest = min(math.dist(corner, marks.rake.edge) for corner in corners)
    assert nearest < 2e-3 * design.tap.thread.major


def test_the_land_is_the_arc_between_the_walls_of_two_flutes(
    design: TapDesign, marks: EdgeMarks
) -> None:
    radius = design.tap.thread.major / 2
    heel = seen(design, wall(design, radius, -1), 1)
    assert marks.land.heel == pytest.approx(heel, abs=2e-4)
    angle = math.radians(between(marks.land.edge, heel)) % (2 * math.pi)
    assert float(name(marks, "land").split()[0]) == pytest.approx(radius * angle, abs=6e-4)


def test_the_core_touches_the_cutters_ball(design: TapDesign, marks: EdgeMarks) -> None:
    core = next(circle.diameter for circle in marks.circles if circle.kind == "core")
    ball = math.hypot(*marks.cutter.centre) - marks.cutter.radius
    assert core / 2 == pytest.approx(ball, abs=2e-4)
    outline = section_outline(design.tap, crest_height(design.tap)).loops[0]
    points = [
        math.hypot(*piece.at(piece.start_angle + (piece.end_angle - piece.start_angle) * n / 400))
        for piece in outline
        if isinstance(piece, Arc)
        for n in range(401)
    ]
    assert min(points) == pytest.approx(core / 2, rel=2e-4)


def test_the_offset_is_the_distance_of_the_cutters_axis(
    design: TapDesign, marks: EdgeMarks
) -> None:
    along = way(*marks.cutter.axis)
    size = math.hypot(*along)
    start = marks.cutter.axis[0]
    # positive towards the land whose edge it cuts: clockwise on the page for a right-hand tap
    beside = (along[0] * start[1] - along[1] * start[0]) / size
    assert beside == pytest.approx(design.tap.flutes.offset, abs=3e-4)
    assert float(name(marks, "offset").split()[0]) == pytest.approx(beside, abs=1e-3)


def test_page_and_drawing_say_the_same(design: TapDesign, marks: EdgeMarks) -> None:
    drawing = cross_section.draw(design).document.modelspace().query("TEXT")
    texts = " ".join(entity.dxf.text for entity in drawing)
    assert f"rake {name(marks, 'rake')}" in texts
    told = {line.label: line.text for line in marks.lines}
    assert f"drilled wall {told['rake at the drilled wall']}" in texts
    assert f"pitch line {told['rake at the pitch line']}" in texts
    assert f"chordal hook {told['chordal hook']}" in texts
    width = told["land"].split()[1]
    assert f"land {told['land'].split(',')[0]}, {float(width):g} wide" in texts
    assert f"core ⌀{float(told['core (web)'].strip('⌀').split()[0]):g}" in texts


def test_the_margin_ends_where_the_crest_begins_to_drop(
    design: TapDesign, marks: EdgeMarks
) -> None:
    x, y = map(float, marks.margin.split()[-2:])
    margin = between(marks.rake.edge, (x, y))
    assert margin == pytest.approx(design.tap.relief.thread.margin_angle, abs=0.02)


@pytest.mark.parametrize("thread", ["M10", "Tr20x4"])
def test_left_hand_is_the_mirror_image(thread: str) -> None:
    right, left = (
        edge_marks(settle(job_for(text, [])), Units.MM) for text in (thread, f"{thread} LH")
    )
    for of in ("edge", "radial", "tangent", "out"):
        x, y = getattr(right.rake, of)
        assert getattr(left.rake, of) == pytest.approx((-x, y), abs=2e-4)
    assert left.cutter.centre == pytest.approx(
        (-right.cutter.centre[0], right.cutter.centre[1]), abs=2e-4
    )
    # Counter-clockwise on the page, whose y runs downwards, is a negative turn.
    turns = [between(marks.turning[0], marks.turning[-1]) for marks in (right, left)]
    assert turns == pytest.approx([-26.0, 26.0], abs=0.1)
    assert [one.text for one in left.names] == [one.text for one in right.names]


def test_the_view_opens_where_the_first_edge_stands_at_the_crest() -> None:
    view = view_of(settle(job_for("M10")), Units.MM)
    assert view.section.z == view.marks.standing
    assert view.marks.heights[0] < view.section.z < view.marks.heights[1]
    assert view.frame.length == 80.0


@pytest.mark.parametrize(("thread", "unit"), [("1/4-20", "in"), ("M10", "mm"), ("G 1/2", "in")])
def test_names_are_told_as_the_thread_is_named_and_the_legend_in_both(
    thread: str, unit: str
) -> None:
    design = settle(job_for(thread))
    mm, both, inch = (edge_marks(design, one) for one in (Units.MM, Units.BOTH, Units.INCH))
    assert both.names == {"mm": mm, "in": inch}[unit].names
    assert name(both, "land").endswith(f" {unit}")
    land = float(name(mm, "land").split()[0])
    assert float(name(inch, "land").removesuffix(" in")) == pytest.approx(land / 25.4, abs=1e-4)
    assert f"{land:.3f} mm = " in next(line.text for line in both.lines if line.label == "land")
