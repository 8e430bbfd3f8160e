"""How far a wheel may come: held to a sampled wheel beside a sampled section of the tap."""

import math
from dataclasses import replace

import numpy as np
import pytest
from asked import settled_of

from tapmodel.prediction.rubbing.land import edges_of
from tapmodel.shape.outlines.outline import Line, Outline
from tapmodel.shape.outlines.section import full_thread_height, section_outline
from tapmodel.shape.relief import con_eccentric, concentric, eccentric_by_edge
from tapmodel.shop.relief.plan import plans_of
from tapmodel.shop.relief.reach import Crossing, Reach, reach_of
from tapmodel.shop.relief.span import Span
from tapmodel.tap.tap import Relief, Reliefs, Tap
from tapmodel.words import ReliefPlace

CREST, CHAMFER, THREAD = ReliefPlace.CREST, ReliefPlace.CHAMFER, ReliefPlace.THREAD


def _tap(text: str, thread: Relief, chamfer: Relief, *sets: str) -> tuple[Tap, float]:
    design = settled_of(text, sets)
    return replace(design.tap, relief=Reliefs(thread, chamfer)), design.figures.land_angle


def _sampled(outline: Outline, each: int) -> np.ndarray:
    points: list[tuple[float, float]] = []
    for loop in outline.loops[:1]:
        for piece in loop:
            share = np.linspace(0, 1, each)
            if isinstance(piece, Line):
                (x0, y0), (x1, y1) = piece.start, piece.end
                points += [(x0 + (x1 - x0) * s, y0 + (y1 - y0) * s) for s in share]
            else:
                sweep = piece.end_angle - piece.start_angle
                points += [piece.at(piece.start_angle + sweep * s) for s in share]
    return np.array(points)


def _other_lands(tap: Tap, crossing: Crossing, points: np.ndarray) -> np.ndarray:
    """Points of the land that follows on the one whose edge lies at angle 0."""
    edge = math.radians(tap.flutes.angles[0]) + math.radians(
        float(edges_of(tap, np.array([tap.thread.major / 2])).crest)
    )
    phi = np.degrees(np.arctan2(points[:, 1], points[:, 0]) - edge) % 360
    radii = np.hypot(points[:, 0], points[:, 1])
    spacing = crossing.face_at[0]
    keep = (phi > (crossing.heel + spacing) / 2) & (phi < spacing + 60)
    keep &= radii > tap.thread.minor / 2 - 1e-4
    turned = np.radians(phi[keep])
    return np.stack([radii[keep] * np.cos(turned), radii[keep] * np.sin(turned)], axis=1)


def _wheel(crossing: Crossing, radius: float, phi: float) -> np.ndarray:
    """Centre of a wheel that touches at `phi`, its normal by differences."""

    def at(angle: float) -> np.ndarray:
        r = crossing.base - float(crossing.span.drops(np.asarray(angle)))
        return r * np.array([math.cos(math.radians(angle)), math.sin(math.radians(angle))])

    along = at(phi + 1e-4) - at(phi - 1e-4)
    normal = np.array([along[1], -along[0]]) / np.linalg.norm(along)
    return at(phi) + radius * normal


@pytest.mark.parametrize("wheel", [6.0, 40.0, 150.0])
@pytest.mark.parametrize("angle", [3.0, 20.0, 38.0])
@pytest.mark.parametrize("count", [3, 6])
def test_the_clearance_is_that_of_a_sampled_section(wheel: float, angle: float, count: int) -> None:
    relief = eccentric_by_edge(THREAD, 18.05, angle)
    tap, land = _tap("M18x0.75", relief, concentric(CHAMFER), f"flutes.count={count}")
    (crossing,) = reach_of(tap, Span(relief, 18.05, land)).crossings
    # the envelope of all heights of a turn: the full crest is somewhere there
    low = full_thread_height(tap)
    heights = low + tap.thread.lead * np.linspace(0, 1, 13)
    points = np.concatenate([_sampled(section_outline(tap, float(z)), 400) for z in heights])
    others = _other_lands(tap, crossing, points)
    phi = crossing.heel
    centre = _wheel(crossing, wheel / 2, phi)
    nearest = float(np.min(np.linalg.norm(others - centre, axis=1))) - wheel / 2
    found = float(crossing.clearances(wheel / 2, np.array([phi]))[0])
    if found > 0:
        assert nearest == pytest.approx(found, abs=1e-3)
    else:
        assert nearest < 1e-3


def _steep() -> tuple[Tap, Reach]:
    """Lands so wide, and a relief so steep, that a large wheel meets the next land."""
    relief = eccentric_by_edge(CHAMFER, 18.05, 40.0)
    sets = ("flutes.count=8", "shop.cutters=3,4", "flutes.land_share=0.6")
    tap, land = _tap("M18x0.75", concentric(CREST), relief, *sets)
    return tap, reach_of(tap, Span(relief, 18.05, land))


def test_the_largest_wheel_just_touches() -> None:
    _, reach = _steep()
    assert math.isfinite(reach.largest)
    assert reach.clearance(reach.largest) == pytest.approx(0.0, abs=1e-6)
    assert reach.clearance(0.99 * reach.largest) > 0
    assert reach.clearance(1.01 * reach.largest) < 0


def test_where_a_wheel_stops_it_touches_the_next_edge() -> None:
    _, reach = _steep()
    wheel = 1.5 * reach.largest
    end = reach.goes_to(wheel)
    crossing = min(reach.crossings, key=lambda one: float(np.min(one.largest(one.places))))
    if end is None:
        first = np.array([crossing.begin])
        assert float(crossing.clearances(wheel / 2, first)[0]) <= 0
        return
    assert end < crossing.heel
    at = min(float(one.clearances(wheel / 2, np.array([end]))[0]) for one in reach.crossings)
    assert at == pytest.approx(0.0, abs=1e-4)


def test_a_surface_round_about_the_axis_lets_any_wheel_pass() -> None:
    """By hand: circles of 9 and 50 mm that touch, and an edge 60 degrees on."""
    span = Span(con_eccentric(CREST, 18.0, 30.0, 0.0, 1e-9), 18.0, 30.0)
    crossing = Crossing(span, 9.0, 0.0, 30.0, np.array([9.0]), np.array([90.0]))
    away = math.sqrt(59**2 + 81 - 2 * 59 * 9 * math.cos(math.radians(60))) - 50
    assert float(crossing.clearances(50.0, np.array([30.0]))[0]) == pytest.approx(away, abs=1e-6)
    assert math.isinf(float(crossing.largest(np.array([30.0]))[0]))


def test_usual_taps_let_any_wheel_pass_and_say_so() -> None:
    for text in ("M18x0.75", "M3", "Tr16x8(P4)", "3/8-16 UNC"):
        for plan in plans_of(settled_of(text)):
            assert math.isinf(plan.reach.largest)
            assert plan.reach.goes_to(150.0) == pytest.approx(plan.reach.crossings[0].heel, abs=3)
