"""The chapter for a mill that is programmed: frame, coordinates and angles in the units wanted."""

import pytest
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Paragraphs, Rows, Table
from tapmodel.report.chapters.machines import cam
from tapmodel.report.chapters.order import operations
from tapmodel.report.units import shown, told
from tapmodel.words import Units


def _design(text: str) -> TapDesign:
    return settled_of(text)


def _tables(found: Chapter, units: Units = Units.MM) -> list[dict[str, list[str]]]:
    """Each table's lines by their first cell."""
    return [
        {
            shown(line[0])[0]: [" = ".join(shown(cell, units)) for cell in line[1:]]
            for line in block.lines
        }
        for block in found.blocks
        if isinstance(block, Table)
    ]


def _prose(found: Chapter) -> str:
    return " ".join(told(t) for b in found.blocks if isinstance(b, Paragraphs) for t in b.texts)


def test_it_stands_behind_the_indexing_of_the_flutes() -> None:
    keys = [chapter.key for chapter in operations(_design("M10"))]
    assert keys.index("cam") == keys.index("dividing") + 1


@pytest.mark.parametrize(("text", "side"), [("M18x0.75", "+Y"), ("M18x0.75 LH", "-Y")])
def test_the_frame_is_told_with_the_hand(text: str, side: str) -> None:
    words = _prose(cam.chapter(_design(text)))
    for part in ("in mm", "Z = 0 the front face of the cutting end", "towards the square"):
        assert part in words
    assert f"on its {side} side: a {'left' if 'LH' in text else 'right'}-hand tap" in words


def test_coordinates_and_angles_are_those_of_the_definition() -> None:
    design = _design("M18x0.75")
    flutes = design.tap.flutes
    path, angles = _tables(cam.chapter(design))
    c, e, b = flutes.centre_radius, flutes.offset, flutes.cutter_diameter / 2
    due = {
        "starts in front": (c, e, -b - 1.0),
        "stops at full depth": (c, e, flutes.full_depth_length),
        "lifted clear": (design.tap.thread.major / 2 + b, e, flutes.full_depth_length),
    }
    assert path == {name: [f"{v:.3f} mm" for v in at] for name, at in due.items()}
    assert list(angles) == ["1", "2", "3", "4"]
    assert angles["2"] == ["90.00°", f"{-e:.3f} mm", f"{c:.3f} mm", "-90.00°"]


def test_the_holder_has_a_second_length_where_the_shank_is_thicker() -> None:
    for text, rows in (("M18x0.75", 1), ("M3", 2)):
        design = _design(text)
        (sizes,) = (b for b in cam.chapter(design).blocks if isinstance(b, Rows))
        flutes, shank = design.tap.flutes, design.tap.blank.shank_diameter / 2
        tip = flutes.centre_radius - flutes.cutter_diameter / 2
        assert len(sizes.rows) == rows
        assert shown(sizes.rows[0].value) == (f"{design.tap.thread.major / 2 - tip:.3f} mm",)
        if rows == 2:
            assert shown(sizes.rows[1].value) == (f"{shank - tip:.3f} mm",)


def test_coordinates_follow_the_units_but_the_models_do_not() -> None:
    design = _design("M10")
    found = cam.chapter(design)
    path, _ = _tables(found, Units.INCH)
    stop = design.tap.flutes.full_depth_length / 25.4
    assert path["stops at full depth"][2] == f"{stop:.4f} in"
    assert "The STEP model, always in mm:" in _prose(found)
