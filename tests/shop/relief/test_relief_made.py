"""Reliefs as a shop makes them: the laws of their settings, and what they become."""

import math

import numpy as np
import pytest
from asked import settled_of

from tapmodel.designing.design import design_tap
from tapmodel.prediction.rubbing.rubbing import rubbing_of
from tapmodel.report.blocks import Angle, Length, Row, Rows, Table
from tapmodel.report.chapters.tap.relief_made import made_in_short
from tapmodel.report.route.relieved import relieve
from tapmodel.shape.relief import con_eccentric, drop, eccentric_by_drop, eccentric_by_edge
from tapmodel.shop.order_of_work import Step, order_of_work
from tapmodel.shop.relief.clears import touching
from tapmodel.shop.relief.made import OnCentres, flat_departs, flats, on_centres
from tapmodel.shop.relief.on_hand import on_hand
from tapmodel.shop.relief.passes import RIDGE, Rest, passes
from tapmodel.shop.relief.plan import Plan, edge_angle_made, heel_made, heel_wanted, plans_of
from tapmodel.shop.relief.span import Span
from tapmodel.spec.job_file import job_for
from tapmodel.words import ReliefPlace, ReliefWay, Units

CREST, CHAMFER = ReliefPlace.CREST, ReliefPlace.CHAMFER
SPANS = {
    "margin": Span(con_eccentric(CREST, 18.05, 35.8, 11.9, 0.072), 18.05, 35.8),
    "edge": Span(eccentric_by_edge(CHAMFER, 18.05, 4.0), 18.05, 35.8),
    "drop": Span(eccentric_by_drop(CHAMFER, 3.02, 45.0, 0.074), 3.02, 45.0),
    "wide": Span(con_eccentric(CREST, 1.02, 92.0, 30.0, 0.01), 1.02, 92.0),
}
WAYS = tuple(ReliefWay)


def plans(text: str, *sets: str) -> tuple[Plan, ...]:
    return plans_of(settled_of(text, sets))


@pytest.fixture(params=SPANS.values(), ids=SPANS.keys())
def span(request: pytest.FixtureRequest) -> Span:
    return request.param


def _point(radius: float, angle: float) -> np.ndarray:
    return radius * np.array([math.cos(math.radians(angle)), math.sin(math.radians(angle))])


def test_offset_turn_and_radius_make_the_drops(span: Span) -> None:
    """Every point of the surface is as far from the centre that is set as the arc's radius."""
    arc = span.arc
    centre = _point(arc.offset, arc.direction)
    for phi in np.linspace(span.begin, span.heel, 9):
        fallen = float(span.drops(np.asarray(phi)))
        point = _point(span.major / 2 - fallen, float(phi))
        assert float(np.linalg.norm(point - centre)) == pytest.approx(arc.radius, abs=1e-9)


def test_the_swing_carries_one_end_to_the_other(span: Span) -> None:
    centre = _point(span.arc.offset, span.arc.direction)
    first, last = (
        _point(span.major / 2 - float(span.drops(np.asarray(phi))), phi) - centre
        for phi in (span.begin, span.heel)
    )
    turned = math.degrees(math.acos(float(first @ last) / span.arc.radius**2))
    assert span.swing == pytest.approx(turned, abs=1e-6)


@pytest.mark.parametrize("step", [0.05, 0.0254, 0.001])
def test_an_offset_is_the_next_graduation_and_clears_as_much(span: Span, step: float) -> None:
    made = on_centres(span, step)
    offset = made.relief.arc_offset
    if offset != span.relief.arc_offset:
        assert offset / step == pytest.approx(round(offset / step))
        assert 0 <= offset - span.relief.arc_offset < step
    phi = np.linspace(span.begin, span.heel, 50)
    assert np.all(made.drop(phi) >= span.drops(phi) - 1e-12)


def test_a_flat_departs_by_the_sagitta() -> None:
    # by hand: arc of 10 mm about the axis itself, chord over 60 degrees: 10 (1 - cos 30)
    ring = Span(con_eccentric(CREST, 20.0, 60.0, 0.0, 1e-9), 20.0, 60.0)
    assert flat_departs(ring) == pytest.approx(10 * (1 - math.sqrt(3) / 2), rel=1e-6)
    assert flat_departs(ring, 2) == pytest.approx(10 * (1 - math.cos(math.radians(15))), rel=1e-6)


@pytest.mark.parametrize("count", [1, 2, 5])
def test_flats_are_chords_of_the_arc(span: Span, count: int) -> None:
    made = flats(span, count)
    centre = _point(span.arc.offset, span.arc.direction)
    assert made.drop(made.corners) == pytest.approx(span.drops(made.corners), abs=1e-12)
    least = span.arc.radius
    for first, last in zip(made.corners, made.corners[1:], strict=False):
        phi = np.linspace(first, last, 2001)
        points = [
            _point(span.major / 2 - float(fallen), float(at))
            for at, fallen in zip(phi, made.drop(phi), strict=True)
        ]
        along = points[-1] - points[0]
        for point in points[::200]:
            away = point - points[0]
            assert abs(along[0] * away[1] - along[1] * away[0]) < 1e-9
        least = min(least, *(float(np.linalg.norm(point - centre)) for point in points))
    assert span.arc.radius - least == pytest.approx(flat_departs(span, count), rel=1e-4)


@pytest.mark.parametrize("wheel", [150.0, 10.0, 1e5])
def test_a_wheel_fed_by_the_table_touches_the_arc_from_outside(span: Span, wheel: float) -> None:
    rest = Rest(span, wheel / 2, span.heel)
    made = passes(rest)
    assert rest.infeed(0.0) == 0.0
    assert rest.touches(0.0) == pytest.approx(span.begin, abs=1e-6)
    touched = np.array([rest.touches(float(turn)) for turn in made.turns])
    inside = touched[touched <= span.heel]
    assert made.drop(inside) == pytest.approx(span.drops(inside), abs=1e-8)
    assert touched[-1] > span.heel - rest.step / 50
    phi = np.linspace(span.begin, span.heel, 500)
    proud = span.drops(phi) - made.drop(phi)
    assert np.all(proud > -1e-8)
    assert RIDGE / 50 < float(np.max(proud)) < 1.25 * RIDGE or rest.step in {5.0, 0.25}


def test_the_wheel_stands_over_the_axis_by_the_sine_of_the_relief_angle() -> None:
    span = SPANS["edge"]
    rest = Rest(span, 75.0, span.heel)
    assert rest.height == pytest.approx(75 * math.sin(math.radians(4.0)), abs=1e-9)
    # the tangent of the wheel at the edge leans by the relief angle
    near = passes(rest).drop(np.array([0.0, 1e-4]))
    assert near[0] == pytest.approx(0.0, abs=1e-9)
    slope = float(near[1] - near[0]) / (math.radians(1e-4) * span.major / 2)
    assert math.degrees(math.atan(slope)) == pytest.approx(4.0, abs=1e-3)


def test_feeds_never_go_beyond_the_exact_ones() -> None:
    rest = Rest(SPANS["edge"], 75.0, 35.8)
    exact, made = passes(rest), passes(rest, 0.01)
    assert np.all(made.infeeds <= exact.infeeds + 1e-9)
    assert np.all(exact.infeeds - made.infeeds < 0.01)
    assert made.infeeds / 0.01 == pytest.approx(np.round(made.infeeds / 0.01))
    assert float(made.drop(np.zeros(1))[0]) == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize("text", ["M18x0.75", "Tr16x8(P4)", "3/8-16 UNC", "1/2 BSW LH"])
def test_an_arc_made_exactly_touches_as_it_is_foretold(text: str) -> None:
    """The prediction of the design is the same question with the law itself."""
    design = settled_of(text)
    foretold = rubbing_of(design.tap, design.drill)
    for relief, _ in design.reliefs:
        if relief.arc_offset == 0:
            continue
        exact = OnCentres(relief, design.tap.thread.major)
        for one in touching(design.tap, design.drill, relief.applies_to, exact):
            right = {"crest": foretold.crest, "chamfer": foretold.chamfer}[one.name]
            assert one.designed == right
            assert one.made.rubbing_length == pytest.approx(right.rubbing_length, abs=1e-6)
            assert one.made.heel_clearance_um == pytest.approx(right.heel_clearance_um, abs=1e-6)
            assert one.made.binds is right.binds


def test_a_relief_that_is_not_fed_binds() -> None:
    """A coarse feed leaves the chamfer of a small tap as good as concentric."""
    (_, coarse), (_, fine) = (
        plans("M3", "shop.relief_by=wheel", f"shop.indicator_step={step}") for step in (0.1, 0.001)
    )
    assert coarse.touching[0].binds
    assert not fine.touching[0].binds
    assert heel_made(coarse) < 0.01 < heel_made(fine) == pytest.approx(heel_wanted(fine), rel=0.06)


def test_one_flat_leaves_the_edge_as_steep_as_its_chord() -> None:
    _, chamfer = plans("M18x0.75")
    span = chamfer.span
    alone = flats(span, 1)
    # between the tangent of the arc and a chord lies half the angle of the arc over it
    steep = span.lean + span.swing / 2
    assert edge_angle_made(alone, span) == pytest.approx(steep, abs=0.01)
    assert not any(one.binds for one in chamfer.one_flat)


def test_what_comes_off_a_land_is_a_segment() -> None:
    """Of a single flat over nearly the whole drop: sector less triangle."""
    crest, _ = plans("M18x0.75", "relief.thread.heel_drop=0.3", "shop.indicator_step=0.001")
    r, made = crest.span.major / 2, crest.flats
    corners, radii = np.radians(made.corners), r - made.drops
    sector = r**2 / 2 * (corners[-1] - corners[0])
    fans = radii[:-1] * radii[1:] * np.sin(np.diff(corners)) / 2
    assert crest.taken == pytest.approx(float(sector - np.sum(fans)), rel=1e-4)


@pytest.mark.parametrize("way", WAYS)
def test_a_left_hand_tap_is_the_mirror_image(way: ReliefWay) -> None:
    right, left = (settled_of(text, [f"shop.relief_by={way}"]) for text in ("M10", "M10-LH"))
    assert (
        relieve(left) == relieve(right) or relieve(left).settings[:2] == relieve(right).settings[:2]
    )
    for one, other in zip(plans_of(right), plans_of(left), strict=True):
        assert one.span == other.span
        assert one.touching == other.touching
        assert one.reach.largest == other.reach.largest
        assert one.reach.clearance(100.0) == other.reach.clearance(100.0)


def test_the_way_follows_from_what_the_job_names() -> None:
    cases = {
        (): ReliefWay.FILE,
        ("shop.wheels=100",): ReliefWay.WHEEL,
        ("shop.offset_step=0.02",): ReliefWay.CENTRES,
        ("shop.wheels=100", "shop.relief_by=file"): ReliefWay.FILE,
    }
    for sets, way in cases.items():
        design = settled_of("M10", sets)
        assert on_hand(design).way is way
        order = order_of_work(design)
        hard = order.index(Step.RELIEVE) > order.index(Step.HARDEN)
        assert hard is (way is not ReliefWay.FILE)
        assert order.index(Step.RELIEVE) < order.index(Step.HONE)


def test_the_sheet_tells_it_where_the_job_says_what_there_is() -> None:
    for sets, many in (((), 0), (("shop.relief_by=centres",), 2), (("shop.wheels=100",), 2)):
        sentences = made_in_short(settled_of("M18x0.75", sets))
        assert len(sentences) == many
        for sentence in sentences:
            assert "as ground with what the shop has: it drops by " in sentence(Units.MM)
            assert "does not bind" in sentence(Units.MM)


def test_a_case_is_not_ground_off() -> None:
    design = design_tap(
        job_for("M10", ["tap.material=case-hardened mild steel", "shop.relief_by=wheel"])
    )
    order = order_of_work(design)
    assert order.index(Step.RELIEVE) < order.index(Step.CARBURISE)
    assert "case" in str(relieve(design).why)


def _tables(text: str, way: ReliefWay) -> list[Table]:
    design = settled_of(text, [f"shop.relief_by={way}"])
    found = [block for block in relieve(design).settings if isinstance(block, Table)]
    return [table for table in found if table.head[-1] == "from the last"]


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("text", ["M18x0.75", "M3", "3/8-16 UNC"])
def test_differences_of_the_indicator_add_up_to_the_drops(text: str, way: ReliefWay) -> None:
    tables = _tables(text, way)
    assert len(tables) == 2
    reliefs = settled_of(text).reliefs
    major = settled_of(text).tap.thread.major
    for table, (relief, figures) in zip(tables, reliefs, strict=True):
        columns = list(zip(*table.lines, strict=True))
        angles = np.array([cell.degrees for cell in columns[0] if isinstance(cell, Angle)])
        arc, made, since = (
            [cell.mm for cell in column if isinstance(cell, Length)] for column in columns[2:]
        )
        assert arc == pytest.approx(drop(relief, major, angles), abs=1e-12)
        assert np.cumsum(since) == pytest.approx(made, abs=1e-12)
        assert arc[-1] == pytest.approx(figures.heel_drop, abs=1e-9)


@pytest.mark.parametrize("way", WAYS)
def test_the_route_tells_what_the_relief_becomes(way: ReliefWay) -> None:
    design = settled_of("M18x0.75", [f"shop.relief_by={way}"])
    rows: list[Row] = []
    for block in relieve(design).settings:
        rows += block.rows if isinstance(block, Rows) else ()
    so = "as filed" if way is ReliefWay.FILE else "as ground"
    for plan in plans_of(design):
        (one,) = plan.touching
        by_label = {row.label: row.value for row in rows if isinstance(row.label, str)}
        rubs = by_label[f"{so}: {one.name} rubs behind the edge"]
        assert isinstance(rubs, Length)
        assert rubs.mm == one.made.rubbing_length
        assert f"{so}: {one.name} binds" in by_label
