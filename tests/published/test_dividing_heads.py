"""Simple indexing on dividing heads against printed divisions.

Read: US Army Ordnance subcourse OD1644 (6 and 42 divisions at 40:1; 540 minutes of the spindle a
turn); a shop text of indexing exercises (divisions at 40, 60, 72 and 90 to one with the circles
offered; the answers were worked out from them); the 1916 edition of Machinery's Handbook (1 degree
is 2 holes on 18 or 3 on 27, and other angles); the 27th edition, p. 1995 (fractions of a turn to
four places); a club's article on indexing (the usual three plates, on which 127
divisions are impossible).
"""

from fractions import Fraction

import pytest

from tapmodel.shop.dividing import PLATES, Crank, exact_moves, indexing
from tapmodel.spec.shop.dividing import asked_for

# (divisions, ratio, circles): every move that gives it.
PRINTED = {
    (6, 40, (18, 39)): [(6, 12, 18), (6, 26, 39)],
    (42, 40, (21, 42)): [(0, 20, 21), (0, 40, 42)],
    (15, 40, (27, 36)): [(2, 18, 27), (2, 24, 36)],
    (20, 40, PLATES): [(2, 0, 0)],
    (8, 40, PLATES): [(5, 0, 0)],
    (7, 40, (21,)): [(5, 15, 21)],
    (26, 40, (44, 45, 47, 49, 52)): [(1, 28, 52)],
    (112, 40, (12, 14, 16, 18, 20)): [(0, 5, 14)],
    (60, 40, (15, 18, 20, 23, 24)): [(0, 10, 15), (0, 12, 18), (0, 16, 24)],
    (100, 40, (18, 20, 22, 25, 27)): [(0, 8, 20), (0, 10, 25)],
    (92, 60, (21, 22, 23, 24, 25)): [(0, 15, 23)],
    (14, 60, (21, 23, 25, 26, 28)): [(4, 6, 21), (4, 8, 28)],
    (37, 60, (33, 35, 37, 39, 42)): [(1, 23, 37)],
    (18, 60, (33, 35, 36, 38, 40)): [(3, 11, 33), (3, 12, 36)],
    (78, 72, (21, 23, 25, 26, 27)): [(0, 24, 26)],
    (19, 72, (19, 20, 21, 23, 25)): [(3, 15, 19)],
    (27, 90, (20, 21, 23, 25, 27)): [(3, 7, 21), (3, 9, 27)],
    (50, 90, (30, 33, 36, 38, 40)): [(1, 24, 30), (1, 32, 40)],
    (44, 90, (22, 24, 26, 28, 30)): [(2, 1, 22)],
    (25, 72, (33, 35, 36, 37, 39)): [],
    (125, 72, (24, 25, 27, 28, 30)): [],
    (127, 40, PLATES): [],
    (360, 40, (18, 27)): [(0, 2, 18), (0, 3, 27)],
}


@pytest.mark.parametrize("case", PRINTED)
def test_moves_that_are_printed(case: tuple[int, int, tuple[int, ...]]) -> None:
    count, ratio, circles = case
    assert list(indexing(count, circles, ratio).moves) == [Crank(*row) for row in PRINTED[case]]


# Not possible up to 100 with the three plates: worked out, and every other number is.
IMPOSSIBLE = {51, 53, 57, 59, 61, 63, 67, 69, 71, 73, 77, 79, 81, 83, 87, 89, 91, 93, 96, 97, 99}


def test_what_the_usual_plates_cannot_do() -> None:
    assert {n for n in range(2, 101) if not indexing(n).exact} == IMPOSSIBLE


def test_a_turn_of_the_crank_is_540_minutes() -> None:
    # 24 minutes are 1 hole on 23 with a small error (540/24 = 22.5): 540/23 = 23.478 minutes.
    one_hole = Fraction(540, 23)
    last = indexing(900, (23,)).stations[1]
    assert last.crank == Crank(0, 1, 23)
    assert last.error * 60 == one_hole - 24


# Angles by the 1916 edition of Machinery's Handbook, the arc of 54 minutes by OD1644.
ANGLES = {
    ("1deg", PLATES): [(0, 2, 18), (0, 3, 27)],
    ("1/2deg", PLATES): [(0, 1, 18)],
    ("20min", PLATES): [(0, 1, 27)],
    ("2 1/2deg", PLATES): [(0, 5, 18)],
    ("11 1/2deg", PLATES): [(1, 5, 18)],
    ("54min", (20,)): [(0, 2, 20)],
    ("18deg", PLATES): [(2, 0, 0)],
}


@pytest.mark.parametrize("case", ANGLES)
def test_angles_that_are_printed(case: tuple[str, tuple[int, ...]]) -> None:
    text, circles = case
    turns = asked_for("DIVISIONS", text).angle * 40 / 360
    assert list(exact_moves(turns, circles)) == [Crank(*row) for row in ANGLES[case]]


# Fractions of a turn on the first plates, Machinery's Handbook, 27th edition, p. 1995.
FRACTIONS = {
    "0.1915": (9, 47),
    "0.1935": (6, 31),
    "0.1951": (8, 41),
    "0.2000": (3, 15),
    "0.2041": (10, 49),
    "0.2051": (8, 39),
    "0.2069": (6, 29),
    "0.2222": (4, 18),
    "0.2258": (7, 31),
    "0.2308": (9, 39),
    "0.2326": (10, 43),
    "0.2340": (11, 47),
    "0.2353": (4, 17),
}


@pytest.mark.parametrize("printed", FRACTIONS)
def test_fractions_of_a_turn_that_are_printed(printed: str) -> None:
    holes, circle = FRACTIONS[printed]
    turn = Fraction(holes, circle)
    assert f"{float(turn):.4f}" == printed
    assert exact_moves(turn, (*PLATES, circle))[0] == Crank(0, holes, circle)
