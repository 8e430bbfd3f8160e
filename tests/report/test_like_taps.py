"""What papers say of like taps: of another size, turned by a flute, of the other hand."""

import re
import sys
from collections.abc import Iterator
from dataclasses import fields
from pathlib import Path
from typing import Any

import pytest
from ezdxf.entities import DXFEntity
from ezdxf.math import Vec3

sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from asked import settled_of
from like_taps import left_handed, scaled_design, shifted, turned, with_tap

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import (
    Angle,
    Area,
    Growth,
    Length,
    Pitch,
    Quantity,
    Row,
    Rows,
    Table,
    Told,
    Tool,
    Words,
)
from tapmodel.report.chapters.in_the_hole import left_behind, turning_it
from tapmodel.report.chapters.machines import hardening
from tapmodel.report.chapters.order import OPERATIONS
from tapmodel.report.drawings import canvas
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.units import told
from tapmodel.shape.figures import Figures, ReliefFigures
from tapmodel.shape.outlines import section_tops
from tapmodel.shop.cam import ball_paths

EXACT = 1e-9
"""Relative: numbers are the same but for the last digits."""

FORESEEN = {"chips", "torque", "strength", "clearance"}
"""Drawings of what does not grow by a power of the size: forces of chips, breaking of steel, the
usual chip of a material, and how far work springs back."""

LINES = {"LINE", "LWPOLYLINE"}
"""Of the side view: how much of a line is seen is asked point by point, where a tie of what hides
it falls either way. Its dimensions and texts are like those of every drawing."""

FLAT = 1e-7
"""Centres of flat arcs, which are laid through three close points [mm]."""

# Flat and round profiles, several starts, three to four flutes, both kinds of arc; no drill that
# has a name in inches, which its double would not bear.
JOBS: dict[str, tuple[str, ...]] = {
    "M18x0.75": (),
    "M10": ("relief.thread.kind=eccentric", "relief.chamfer.kind=con-eccentric"),
    "M6x0.5": ("blank.neck_length=0", "relief.thread.kind=concentric"),
    "Tr16x6P3": (),
    "1/2 BSW": ("hole.drill=10.5",),
}


@pytest.fixture(scope="module", params=JOBS)
def design(request: pytest.FixtureRequest) -> TapDesign:
    made = settled_of(request.param, JOBS[request.param])
    assert not made.errors
    return made


# --- figures --------------------------------------------------------------------------------------

# By what power of the size a figure grows; the others are lengths.
POWERS = {
    **dict.fromkeys(("chamfer_pitches", "chamfer_leads", "chamfer_teeth"), 0),
    **dict.fromkeys(("rake_crest", "rake_pitch", "rake_root", "chordal_hook", "land_angle"), 0),
    **dict.fromkeys(("edge_angle", "arc_direction"), 0),
    "flute_area": 2,
}


def _grown(figures: Figures | ReliefFigures, times: float) -> dict[str, Any]:
    """What the figures must be of a tap so many times as large."""
    expected: dict[str, Any] = {}
    for field in fields(figures):
        value = getattr(figures, field.name)
        if isinstance(value, ReliefFigures):
            expected |= {f"{field.name}.{n}": v for n, v in _grown(value, times).items()}
        else:
            expected[field.name] = value * times ** POWERS.get(field.name, 1)
    return expected


@pytest.mark.parametrize("times", [2.0, 10.0, 1 / 3])
def test_figures_of_a_larger_tap_have_larger_lengths_and_the_same_angles(
    design: TapDesign, times: float
) -> None:
    found = _grown(scaled_design(design, times).figures, 1.0)
    assert found == pytest.approx(_grown(design.figures, times), rel=EXACT, abs=1e-12)


def test_neither_a_pitch_along_nor_a_flute_round_changes_a_figure(design: TapDesign) -> None:
    tap, expected = design.tap, pytest.approx(_grown(design.figures, 1.0), rel=EXACT)
    for other in (shifted(tap, tap.thread.pitch), turned(tap, 1), left_handed(tap)):
        assert _grown(with_tap(design, other).figures, 1.0) == expected


# --- the sheet's tables ---------------------------------------------------------------------------


# What a tap does in the hole does not grow with it: a thicker chip takes less force for its area.
# Nor does what a quench does in it.
DOES_NOT_GROW = (turning_it.chapter, left_behind.chapter, hardening.chapter)


def _lines(design: TapDesign) -> Iterator[tuple[str, tuple[Quantity | None, ...]]]:
    """Every line of every table of the sheet, by chapter, caption and label."""
    for of in (of for of in OPERATIONS if of not in DOES_NOT_GROW):
        chapter = of(design)
        for block in chapter.blocks:
            if isinstance(block, Rows):
                for row in block.rows:
                    yield f"{chapter.key}: {block.caption}: {told(row.label)}", _cells(row)
            elif isinstance(block, Table):
                for number, line in enumerate(block.lines):
                    yield f"{chapter.key}: {block.caption}: {number}", line
            else:
                # A tailstock goes over as far for a large tap as for a small one, of either hand.
                for text in () if chapter.key == "chamfer" else block.texts:
                    kind = "text" if isinstance(text, str) else "told"
                    yield f"{chapter.key}: {kind}", (Words(told(text)),)


def _cells(row: Row) -> tuple[Quantity | None, ...]:
    return row.value, row.low, row.high


def _plain(cell: Quantity | None, times: float = 1.0) -> Any:  # noqa: ANN401  (a number or words)
    """A cell as a number, lengths so many times as long, or as words."""
    if isinstance(cell, Length | Pitch | Tool):
        return pytest.approx(cell.mm * times, rel=EXACT, abs=1e-9)
    if isinstance(cell, Angle):
        return pytest.approx(cell.degrees, rel=EXACT, abs=1e-9)
    if isinstance(cell, Area):
        return pytest.approx(cell.mm2 * times**2, rel=EXACT)
    if isinstance(cell, Growth):
        return pytest.approx(cell.factor, rel=EXACT)
    return _number(cell)


def _number(cell: Quantity | None) -> Any:  # noqa: ANN401
    if isinstance(cell, Length | Pitch | Tool):
        return cell.mm
    if isinstance(cell, Angle):
        return cell.degrees
    if isinstance(cell, Area):
        return cell.mm2
    if isinstance(cell, Growth):
        return cell.factor
    if isinstance(cell, Told):
        return told(cell.text)
    return cell


def _numbers(design: TapDesign) -> list[tuple[str, list[Any]]]:
    return [(label, [_number(cell) for cell in cells]) for label, cells in _lines(design)]


def _expected(design: TapDesign, times: float = 1.0) -> list[tuple[str, list[Any]]]:
    return [(label, [_plain(cell, times) for cell in cells]) for label, cells in _lines(design)]


TABLED = {
    "turning: : overall length",
    "turning: : end of the thread, from the front",
    "turning: : neck diameter",
    "turning: : end of the neck, from the front",
    "turning: : shank diameter",
    "chamfer: : length",
    "square: : across flats",
    "square: : length, from the rear end",
    "milling: : core (web) left between the flutes",
}
"""Sizes whose limits are published by ranges of size, not as a share of it."""


@pytest.mark.parametrize("times", [2.0, 10.0])
def test_a_larger_tap_has_larger_lengths_in_every_table(design: TapDesign, times: float) -> None:
    found = _numbers(scaled_design(design, times))
    assert len(found) > 50
    best = any("wire to use, the best" in label for label, _ in found)
    for (label, one), (same, other) in zip(found, _expected(design, times), strict=True):
        assert label == same
        if label.endswith(": told"):
            continue  # a sentence with lengths in it
        if label in TABLED:
            # A published tolerance goes in steps; that it is about the size is held elsewhere.
            assert one[0] == other[0]
            continue
        if "percentage of thread" in label:
            continue  # a share of the thread that the designation names, and that stays
        if "centre drill" in label:
            continue  # one of a published series
        if label == "cam: : 0":
            # The air before the front stays a millimetre.
            assert one[:3] == other[:3]
            continue
        if "those that suit" in label and best:
            # The air over the crests, on which the thinnest wire depends, stays 0.1 mm.
            assert one[::2] == other[::2]
        elif best or not label.startswith("wires: : ") or "best wire" in label:
            assert one == other, label


def test_a_tap_turned_by_a_flute_has_the_same_tables(design: TapDesign) -> None:
    found = _numbers(with_tap(design, turned(design.tap, 1)))
    for one, other in zip(found, _expected(design), strict=True):
        assert one == other


# Of the wires, and of what is left of metal, these words tell no side.
_SIDE = re.compile(r"\b(?:right|left|headstock|tailstock)\b(?! between|, of)")
_OTHER = {"right": "left", "left": "right", "headstock": "tailstock", "tailstock": "headstock"}


def _other_side(text: str) -> str:
    """A text with every word of hand or side for the other."""
    return _SIDE.sub(lambda word: _OTHER[word[0]], text)


def test_the_tables_of_a_left_hand_tap_differ_by_words_of_hand_alone(design: TapDesign) -> None:
    def told_of(of: TapDesign, word: Any) -> list[tuple[str, list[Any]]]:  # noqa: ANN401
        # The two touches of the blank's sides change places.
        lines = [
            (
                word(label),
                [Words(word(c.text)) if isinstance(c, Words) else _number(c) for c in cells],
            )
            for label, cells in _lines(of)
            if not label.startswith("cam: ")  # coordinates, which are mirrored: see below
        ]
        return sorted(lines, key=lambda line: (line[0], str(line[1])))

    right = told_of(design, str)
    left = told_of(with_tap(design, left_handed(design.tap)), _other_side)
    assert [label for label, _ in left] == [label for label, _ in right]
    for (label, one), (_, other) in zip(left, right, strict=True):
        numbers = [(a, b) for a, b in zip(one, other, strict=True) if isinstance(b, float)]
        assert [a for a, _ in numbers] == pytest.approx([b for _, b in numbers], rel=EXACT), label
        assert [a for a in one if not isinstance(a, float)] == [
            b for b in other if not isinstance(b, float)
        ]


def test_the_coordinates_of_a_left_hand_tap_are_mirrored_in_y(design: TapDesign) -> None:
    left = with_tap(design, left_handed(design.tap))
    first, *others = ball_paths(design.tap)
    mirrored = [first, *reversed(others)]
    for one, other in zip(ball_paths(left.tap), mirrored, strict=True):
        assert one.turned == pytest.approx(-other.turned % 360)
        for name in ("front", "last", "lifted"):
            x, y, z = getattr(other, name)
            assert getattr(one, name) == pytest.approx((x, -y, z), rel=EXACT, abs=EXACT)


# --- drawings -------------------------------------------------------------------------------------


def _places(entity: DXFEntity) -> list[float]:
    """Every coordinate and radius that an entity of a drawing has [mm of the part]."""
    found: list[float] = []
    for name, value in sorted(entity.dxf.all_existing_dxf_attribs().items()):
        if isinstance(value, Vec3) and name != "extrusion":
            found += [value.x, value.y]
        elif name in {"radius", "height"}:
            found.append(value)
    if entity.dxftype() == "LWPOLYLINE":
        found += [c for corner in entity.get_points("xy") for c in corner]
    if entity.dxftype() == "HATCH":
        found += [c for path in entity.paths for corner in path.vertices for c in corner[:2]]
    return found


def _kind(entity: DXFEntity) -> tuple[str, str]:
    return entity.dxftype(), entity.dxf.layer


def test_a_tap_ten_times_as_large_is_drawn_alike_at_a_tenth_of_the_scale(
    design: TapDesign, monkeypatch: pytest.MonkeyPatch
) -> None:
    # Numbers ten times as large take more room: here all lettering is equally wide.
    monkeypatch.setattr(canvas, "_width", lambda _text: 10.0)
    first = all_drawings(design)
    # How closely arcs follow a relieved top is a length like any other.
    monkeypatch.setattr(section_tops, "ARC_DEVIATION", 10 * section_tops.ARC_DEVIATION)
    second = all_drawings(scaled_design(design, 10.0))
    assert set(first) >= FORESEEN
    for name, drawing in first.items():
        if name in FORESEEN:
            continue
        assert second[name].scale == pytest.approx(drawing.scale / 10, rel=1e-12), name
        before, after = (list(d.document.modelspace()) for d in (drawing, second[name]))
        assert [_kind(entity) for entity in after] == [_kind(entity) for entity in before], name
        for one, other in zip(before, after, strict=True):
            if name == "side" and one.dxftype() in LINES:
                continue
            expected = [10 * number for number in _places(one)]
            assert _places(other) == pytest.approx(expected, rel=EXACT, abs=FLAT), (name, one)


@pytest.fixture(scope="module")
def drawn(design: TapDesign) -> dict[str, Drawing]:
    """All drawings of the tap, for all tests that hold others against them."""
    return all_drawings(design)


@pytest.fixture(scope="module")
def drawn_on(design: TapDesign) -> dict[str, Drawing]:
    """All drawings of the same tap, its thread a pitch on."""
    return all_drawings(with_tap(design, shifted(design.tap, design.tap.thread.pitch)))


def _measured(drawings: dict[str, Drawing]) -> dict[str, list[tuple[bool, float]]]:
    """What the dimensions of each drawing measure, and whether it is an angle."""
    return {
        name: [
            (entity.dimtype in {2, 5}, float(entity.get_measurement()))
            for entity in drawing.document.modelspace().query("DIMENSION")
        ]
        for name, drawing in drawings.items()
    }


def test_dimensions_double_with_the_tap_and_angles_stay(
    design: TapDesign, drawn: dict[str, Drawing]
) -> None:
    first, second = _measured(drawn), _measured(all_drawings(scaled_design(design, 2.0)))
    assert sum(angle for drawing in first.values() for angle, _ in drawing) == 2
    for name, dimensions in first.items():
        expected = [value if angle else 2 * value for angle, value in dimensions]
        assert [value for _, value in second[name]] == pytest.approx(expected, rel=EXACT), name


def test_dimensions_are_those_of_the_other_hand_and_of_the_turned_tap(
    design: TapDesign, drawn: dict[str, Drawing], drawn_on: dict[str, Drawing]
) -> None:
    first, tap = _measured(drawn), design.tap
    others = [all_drawings(with_tap(design, of)) for of in (left_handed(tap), turned(tap, 1))]
    for other in (*others, drawn_on):
        for name, dimensions in _measured(other).items():
            values = [value for _, value in dimensions]
            expected = [value for _, value in first[name]]
            assert values == pytest.approx(expected, rel=EXACT), name


def test_a_tap_a_pitch_on_is_drawn_alike(
    drawn: dict[str, Drawing], drawn_on: dict[str, Drawing]
) -> None:
    for name, drawing in drawn.items():
        before, after = (list(d.document.modelspace()) for d in (drawing, drawn_on[name]))
        assert [_kind(entity) for entity in after] == [_kind(entity) for entity in before], name
        for one, other in zip(before, after, strict=True):
            assert _places(other) == pytest.approx(_places(one), rel=EXACT, abs=FLAT), (name, one)
