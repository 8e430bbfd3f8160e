"""The programs of flutes and square, read by another interpreter and held to the ideal solid."""

import math
from itertools import groupby, pairwise
from pathlib import Path

import numpy as np
import pytest
from interpreter import Move, moves_of, needs_interpreter

from tapmodel.checks.ideal.deviation import distance_to_ideal
from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.shop.cam import BEFORE
from tapmodel.shop.end_mill import end_mill
from tapmodel.shop.gcode.flutes import flutes_program
from tapmodel.shop.gcode.program import ABOVE
from tapmodel.shop.gcode.square import square_program
from tapmodel.spec.job_file import job_for
from tapmodel.tap.tap import Tap
from tapmodel.words import Units

TAPS = (
    *("M10", "M18x0.75", "M6 LH", "1/2-12 BSW LH", "Tr16x4", "M10xPh3P1.5 LH"),
    *("M30x2 LH", "M64x1", "3/8-16 UNC"),
)
"""Of both hands, several starts, 3 to 6 flutes, with and without a front centre."""

NEAR = 0.005
"""How far from the tap's own surface what is milled may lie [mm]."""


def designed(text: str, *sets: str) -> TapDesign:
    return settle(job_for(text, sets))


def apart(tap: Tap, points: list[tuple[float, float, float]]) -> float:
    return float(np.abs(distance_to_ideal(tap, np.array(points)).distance).max())


def at_tap(x: float, y: float, z: float, a: float) -> tuple[float, float, float]:
    """A place beside the work, turned back by its A, in the frame of the model [mm, deg]."""
    turn = math.radians(a)
    return (
        z * math.cos(turn) - y * math.sin(turn),
        z * math.sin(turn) + y * math.cos(turn),
        -x,
    )


def last_cuts(moves: list[Move]) -> list[tuple[Move, Move]]:
    """Of each angle the deepest cut along X: where it begins and where it ends."""
    found = list[tuple[Move, Move]]()
    for _, group in groupby(moves, key=lambda move: move.a):
        turned = list(group)
        pairs = [(a, b) for a, b in pairwise(turned) if b.cuts and b.x != a.x]
        if pairs:
            found.append(pairs[-1])
    return found


@needs_interpreter
@pytest.mark.parametrize("units", [Units.MM, Units.INCH])
@pytest.mark.parametrize("text", TAPS)
def test_the_last_pass_leaves_the_flutes_of_the_tap(
    text: str, units: Units, tmp_path: Path
) -> None:
    design = designed(text)
    tap, ball = design.tap, design.tap.flutes.cutter_diameter / 2
    cuts = last_cuts(moves_of(flutes_program(design, units), tmp_path))
    assert len(cuts) == tap.flutes.count
    assert len({cut.a % 360 for cut, _ in cuts}) == tap.flutes.count
    core = tap.flutes.core_diameter / 2
    for begin, end in cuts:
        assert begin.x == pytest.approx(ball + BEFORE, abs=NEAR)
        assert end.x == pytest.approx(-tap.flutes.full_depth_length, abs=NEAR)
        # places of the ball's surface from the floor up each side, as far as it stands in the tap
        points = list[tuple[float, float, float]]()
        for x in (0.5 * end.x, 0.9 * end.x):
            for turn in np.radians(np.linspace(-80, 80, 9)):
                y, z = end.y + ball * math.sin(turn), end.z + ball - ball * math.cos(turn)
                if math.hypot(y, z) < 0.98 * tap.thread.minor / 2:
                    points.append(at_tap(x, y, z, end.a))
        assert len(points) > 5
        assert apart(tap, points) < NEAR
        assert math.hypot(end.y, end.z + ball) - ball == pytest.approx(core, abs=NEAR)


@needs_interpreter
@pytest.mark.parametrize("text", TAPS[:4])
def test_no_pass_is_deeper_than_a_tenth_of_the_cutter_and_rapids_are_in_the_air(
    text: str, tmp_path: Path
) -> None:
    design = designed(text)
    tap = design.tap
    moves = moves_of(flutes_program(design), tmp_path)
    thickest = max(tap.thread.major, tap.blank.shank_diameter) / 2
    for before, move in pairwise(moves):
        if not move.cuts and move.x != before.x:
            assert min(before.z, move.z) >= thickest + ABOVE - 1e-3
        if not move.cuts and move.z < thickest:
            # down in front of the work
            assert move.x >= tap.flutes.cutter_diameter / 2 + BEFORE - 1e-3
    depths = sorted({move.z for move in moves if move.cuts and move.x < 0}, reverse=True)
    tops = [tap.thread.major / 2, *(z for z in depths if z < tap.thread.major / 2)]
    steps = [a - b for a, b in pairwise(tops)]
    assert max(steps) <= 0.1 * tap.flutes.cutter_diameter + 1e-3


@needs_interpreter
@pytest.mark.parametrize("units", [Units.MM, Units.INCH])
@pytest.mark.parametrize("text", TAPS)
def test_the_square_is_that_of_the_tap(text: str, units: Units, tmp_path: Path) -> None:
    design = designed(text)
    tap, blank, mill = design.tap, design.tap.blank, end_mill(design)
    moves = moves_of(square_program(design, units), tmp_path)
    cuts = [(a, b) for a, b in pairwise(moves) if b.cuts]
    assert {b.a % 360 for _, b in cuts} == {0.0, 90.0, 180.0, 270.0}
    lowest = min(b.z for _, b in cuts)
    assert lowest == pytest.approx(blank.square_across_flats / 2, abs=NEAR)
    for angle in (0.0, 90.0, 180.0, 270.0):
        last = [(a, b) for a, b in cuts if b.a % 360 == angle and b.z < lowest + NEAR]
        # the mill's edge comes to the shoulder, and its ways leave nothing between them
        edges = sorted(b.x for _, b in last)
        assert edges[0] - mill / 2 == pytest.approx(-blank.square_length, abs=NEAR)
        assert all(b - a < mill for a, b in pairwise(edges))
        assert edges[-1] + mill / 2 > -1e-3
        # and none is past the rear face, in the air
        assert edges[-1] - mill / 2 < 0
        for a, b in last:
            reach = math.sqrt(blank.shank_diameter**2 / 4 - lowest**2) + mill / 2
            assert a.y < -reach
            assert b.y > reach
        points = [
            at_tap(blank.square_length * share - blank.overall_length, y, lowest, angle)
            for share in (0.3, 0.7)
            for y in (-0.3 * lowest, 0.0, 0.3 * lowest)
        ]
        assert apart(tap, points) < NEAR


def test_by_hand_it_stops_for_each_flute_and_says_how_far_to_turn() -> None:
    text = flutes_program(designed("M18x0.75"), by_hand=True)
    lines = text.splitlines()
    assert lines.count("M0") == 4
    assert "(turn the work to 270.0000 degrees, lock it, go on)" in lines
    assert not [line for line in lines if line.startswith("G0 A")]


@pytest.mark.parametrize("make", [flutes_program, square_program])
def test_unit_and_warning_stand_before_the_first_move(make: object) -> None:
    for units, word in ((Units.MM, "G21"), (Units.INCH, "G20"), (Units.BOTH, "G21")):
        text = make(designed("M10"), units)  # pyright: ignore[reportCallIssue]
        head, _, _ = text.partition("\nG0")
        assert f"\n{word} G17" in head
        assert "PROVE IT FIRST IN AIR" in head
        assert text.endswith("M5\nM2\n")
