"""The poster: one page that holds all it promises, on either paper, whatever the tap."""

import re
from pathlib import Path

import pytest
from asked import design_of
from ezdxf.bbox import extents
from printed import Piece, pages_of, pieces_of
from unit_cases import in_turn

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import VISIBLE
from tapmodel.report.drawings.views.end_view import true_end
from tapmodel.report.poster import hero as heroes
from tapmodel.report.poster.hero import Hero
from tapmodel.report.poster.limits import limit_rows
from tapmodel.report.poster.paper import MARGIN, SIZES, PosterPaper
from tapmodel.report.poster.write import write_poster
from tapmodel.report.units import Look, Units

TAPS = ("M2", "M10-LH", "M18x0.75", "M64x1", "Tr16x8(P4)", "1/2 BSW", "3/8-16", "G 1/2")
LEAST_PICTURE = 85.0  # height of the large picture [mm]


def _design(text: str, *sets: str) -> TapDesign:
    return design_of(text, sets)


@pytest.fixture(autouse=True)
def small_picture(monkeypatch: pytest.MonkeyPatch) -> None:
    """A small one, for the large takes longer than all the rest."""
    monkeypatch.setattr(heroes, "_SIZE", (260, 130))


def _written(
    folder: Path, design: TapDesign, look: Look | None = None, paper: PosterPaper = PosterPaper.A3
) -> Path:
    path = folder / "poster.pdf"
    write_poster(path, path.with_suffix(".png"), design, look or Look(), paper)
    return path


def _pieces(path: Path) -> list[Piece]:
    """Every piece of text of the one page."""
    (page,) = pieces_of(path)
    return page


FITTED = in_turn(TAPS)
"""Every other on Tabloid; the fullest of them on both."""


@pytest.mark.parametrize(
    ("text", "units", "paper"),
    [
        *((*one, [*PosterPaper][(number + number // 2) % 2]) for number, one in enumerate(FITTED)),
        ("Tr16x8(P4)", Units.BOTH, PosterPaper.TABLOID),
        ("1/2 BSW", Units.BOTH, PosterPaper.TABLOID),
    ],
)
def test_all_of_it_stands_on_one_page(
    text: str, units: Units, paper: PosterPaper, tmp_path: Path
) -> None:
    path, size = _written(tmp_path, _design(text), Look(units=units), paper), SIZES[paper]
    (page,) = pages_of(path)
    assert page.width == pytest.approx(size.width, abs=0.05)
    assert page.height == pytest.approx(size.height, abs=0.05)
    lines = [(piece.text, piece.left, piece.foot) for piece in _pieces(path)]
    # the title block is the foot of the right column: what was too high would push it down
    (foot,) = {round(y, 1) for text, _, y in lines if text.startswith("Calculated, not measured")}
    assert MARGIN < foot < MARGIN + 8
    assert all(MARGIN - 0.5 < y < size.height - MARGIN for _, _, y in lines)
    assert all(MARGIN - 0.5 < x < size.width - MARGIN for _, x, _ in lines)
    (under,) = [y for text, _, y in lines if text.startswith("Preview model")]
    below_head = min(y for text, _, y in lines if re.match("[✔▲✖]", text))
    assert below_head - under > LEAST_PICTURE
    left = size.left + MARGIN
    for title in ("Thread form", "Milling the flutes", "Calculated, not measured"):
        (high,) = [y for text, _, y in lines if text.startswith(title)]
        above = [
            y for text, x, y in lines if x > left and high + 1 < y < high + 4.4
        ]  # a title is 2.3 high
        assert not above, title
    titles = {text for text, _, _ in lines}
    for title in ("Side view", "Cutting end", "Thread form", "Milling the flutes"):
        assert title in titles
    assert "Chips by tooth" in titles


def test_the_limits_are_those_of_the_record_rounded_into_their_zone() -> None:
    design = _design("M10")
    major, pitch, minor = limit_rows(design, Units.MM)
    assert major.target == (f"{design.tap.thread.major:.3f} mm",)
    low, high = pitch.tap[0].removesuffix(" mm").split(" – ")
    assert 0 <= float(low) - design.limits.pitch_min < 1e-4
    assert 0 <= design.limits.pitch_max - float(high) < 1e-4
    assert major.tap == (f"{design.limits.major_min:.3f} – 10.186 mm",)
    assert float(minor.tap[0].strip("≤ m")) <= design.hole.minor_min
    assert minor.hole[0].startswith(f"{design.hole.minor_min:.3f}")
    inch = limit_rows(design, Units.INCH)[1]
    assert inch.target == (f"{design.tap.thread.pitch_diameter / 25.4:.5f} in",)


@pytest.mark.parametrize("text", ["M2", "M3"])
def test_the_cutting_end_is_as_large_as_the_tap(text: str) -> None:
    design = _design(text)
    end = true_end(design)
    # of these small taps the shank is thicker than the thread, and seen whole
    seen = [one for one in end.document.modelspace() if one.dxf.layer == VISIBLE]
    assert end.scale == 1
    assert extents(seen).size.x == pytest.approx(design.tap.blank.shank_diameter, rel=1e-3)


def test_a_date_stands_on_it_only_where_one_is_given(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)
    undated = {piece.text for piece in _pieces(_written(tmp_path, _design("M10")))}
    assert not any(re.fullmatch(r"\d{4}-\d\d-\d\d", text) for text in undated)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1000000000")
    assert "2001-09-09" in {piece.text for piece in _pieces(_written(tmp_path, _design("M10")))}


def test_the_picture_says_that_it_is_a_preview_or_why_it_is_not_there(tmp_path: Path) -> None:
    shown = heroes.hero(_design("M10"))
    assert shown.png.startswith(b"\x89PNG")
    assert shown.told == "Preview model, not verified."
    broken = _design("M10", "thread.pitch_diameter=9.3")
    assert heroes.hero(broken) == Hero(
        b"", "No picture: a rule is broken.", heroes.hero(broken).size
    )
    lines = {piece.text for piece in _pieces(_written(tmp_path, broken))}
    assert "No picture: a rule is broken." in lines
    assert any(text.startswith("✖ This tap cannot be made so") for text in lines)


def test_a_machine_that_cannot_draw_is_told_of(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(heroes, "hindrance", lambda: "install the package libegl1")
    shown = heroes.hero(_design("M10"))
    assert not shown.png
    assert "install the package libegl1" in shown.told
