"""Thread forms other than the usual one are drawn as the design has them."""

import dataclasses

import numpy as np
import pytest
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import VISIBLE
from tapmodel.report.chapters.tap import thread as thread_chapter
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.drawings.profile_line import between, height_at, profile_line
from tapmodel.shape.figures import figures_of
from tapmodel.shape.profile import profile_radius, segments


@pytest.fixture(scope="module")
def rounded() -> TapDesign:
    """An invented form: flanks at 27.5°, crest and root arcs of 0.137 P."""
    design = settled_of("M10")
    radius = 0.137 * design.tap.thread.pitch
    thread = dataclasses.replace(
        design.tap.thread, flank_angle=27.5, rounded_crest=True, rounded_root=True
    )
    middle, height = thread.pitch_diameter, thread.flanks.arc_height(radius)
    thread = dataclasses.replace(thread, major=middle + height, minor=middle - height)
    tap = dataclasses.replace(design.tap, thread=thread)
    return dataclasses.replace(design, tap=tap, figures=figures_of(tap))


def test_its_line_follows_the_profile(rounded: TapDesign) -> None:
    thread = rounded.tap.thread
    line = np.array(profile_line(thread, 0.3, 0.3 + 2 * thread.pitch))
    radii = profile_radius(segments(thread), line[:, 0] - 0.3)
    assert line[:, 1] == pytest.approx(radii, abs=1e-12)
    assert np.ptp(line[:, 0]) == pytest.approx(2 * thread.pitch, rel=0.2)
    assert line[:, 1].max() == pytest.approx(thread.major / 2)
    assert line[:, 1].min() == pytest.approx(thread.minor / 2)


def test_thread_form_and_chamfer_are_drawn_with_its_arcs(rounded: TapDesign) -> None:
    drawings = all_drawings(rounded)
    for name in ("thread-form", "chamfer"):
        lines = drawings[name].document.modelspace().query("LINE")
        assert sum(line.dxf.layer == VISIBLE for line in lines) > 50
    space = drawings["thread-form"].document.modelspace()
    visible = [line for line in space.query("LINE") if line.dxf.layer == VISIBLE]
    top = max(line.dxf.start.y for line in visible)
    thread = rounded.tap.thread
    assert top == pytest.approx((thread.major - thread.pitch_diameter) / 2)
    words = [text.dxf.text for text in space.query("TEXT")]
    assert any(f"R{thread.crest_radius:.4f}" in text for text in words)
    assert any("half angle 27.50°" in text for text in words)


def test_the_sheet_asks_for_a_radius_where_there_is_no_flat(rounded: TapDesign) -> None:
    labels = [row.label for row in thread_chapter.chapter(rounded).blocks[0].rows]
    assert "radius on the crest" in labels
    assert not any(label.startswith("flat") for label in labels)


def test_a_line_of_points_is_read_and_cut_between_them() -> None:
    line = [(0.0, 0.0), (2.0, 4.0), (3.0, 4.0)]
    assert height_at(line, 0.5) == 1.0
    assert between(line, 1.0, 2.5) == [(1.0, 2.0), (2.0, 4.0), (2.0, 4.0), (2.5, 4.0)]
