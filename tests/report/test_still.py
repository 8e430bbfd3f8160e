"""The stills show the tap of the record, and would show a wrong one as wrong."""

from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from asked import settled_of
from sight import INK, Picture, drawn, errors, read, small
from sweeps import in_part

from tapmodel.checks.ideal.laws import (
    cone_radius,
    from_crest,
    profile_radius,
    right_hand,
    void_depth,
)
from tapmodel.designing.record import TapDesign
from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.geometry.triangles import Mesh
from tapmodel.report.pictures.catalogue import all_pictures, drawn_all, write_pictures
from tapmodel.report.pictures.still import draw_views, drawn_views, rehearse, renderer
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand

TAPS = (
    ("M18x0.75",),
    ("M10-LH",),
    ("M3",),
    ("M6", "flutes.count=2"),
    ("M60x2", "flutes.count=8"),
    ("M12", "chamfer.form=bottoming"),
    ("1/2 BSW",),
    ("Tr14x3-LH",),
    ("1/2-10 Acme-2G",),
)


def _design(text: str, *sets: str) -> TapDesign:
    return settled_of(text, sets)


@cache
def _mesh(text: str, *sets: str) -> Mesh:
    return preview_mesh(_design(text, *sets).tap)


def _name(value: object) -> str:
    return " ".join(value) if isinstance(value, tuple) else str(value)


def _missing_flute(tap: Tap) -> Tap:
    return replace(tap, flutes=replace(tap.flutes, count=tap.flutes.count - 1))


def _other_hand(tap: Tap) -> Tap:
    hand = Hand.RIGHT if tap.thread.hand is Hand.LEFT else Hand.LEFT
    return replace(tap, thread=replace(tap.thread, hand=hand))


def _thread_alone_of_other_hand(tap: Tap) -> Tap:
    # Mirrored twice, the flutes stand where they stood.
    return _other_hand(_offset_to_other_side(tap))


def _offset_to_other_side(tap: Tap) -> Tap:
    return replace(tap, flutes=replace(tap.flutes, offset=-tap.flutes.offset))


# What is wrong with the tap, and by which of the errors the pictures must tell.
SPOILT = {
    "missing flute": (_missing_flute, "front face"),
    "other hand": (_other_hand, "front face"),
    "thread alone of the other hand": (_thread_alone_of_other_hand, "twist"),
    "offset to the other side": (_offset_to_other_side, "front face"),
}


@pytest.mark.parametrize("tap", in_part(TAPS), ids=_name)
def test_every_picture_shows_the_solid_of_the_record(tap: tuple[str, ...], tmp_path: Path) -> None:
    assert {k: v for k, v in errors(_design(*tap), _mesh(*tap), tmp_path).items() if v >= 1} == {}


WRONG = [
    (tap, wrong)
    for number, tap in enumerate((TAPS[0], TAPS[1], TAPS[3]))
    for wrong in in_part([*SPOILT], number)
]


@pytest.mark.parametrize(("tap", "wrong"), WRONG, ids=_name)
def test_a_wrong_tap_is_told_apart(tap: tuple[str, ...], wrong: str, tmp_path: Path) -> None:
    spoil, sign = SPOILT[wrong]
    design = _design(*tap)
    assert errors(design, preview_mesh(spoil(design.tap)), tmp_path)[sign] > 2


@pytest.mark.parametrize("tap", TAPS, ids=_name)
def test_pictures_are_filled_and_nothing_is_cut_off(tap: tuple[str, ...], tmp_path: Path) -> None:
    pictures = drawn(_design(*tap), _mesh(*tap), tmp_path)
    for name in ("three-quarter", "end"):
        part = pictures[name] < 255
        assert not part[[0, -1]].any()
        assert not part[:, [0, -1]].any()
        filled = max(part.any(axis=0).mean(), part.any(axis=1).mean())
        assert 0 < filled - 1 / 1.04 < 2 / 200  # the part reaches into one pixel at each end
    for name in ("chamfer", "land"):
        part = pictures[name] < 255
        assert not part[-1].any()
        # a chamfer of 8 pitches is as long as the tap is thick, whose lower side then shows
        assert part[0].mean() > (0.55 if _design(*tap).figures.chamfer_pitches < 6 else 0.25)
        assert 0.5 < part.mean() < 0.9


def test_left_hand_close_ups_mirror_the_right_hand(tmp_path: Path) -> None:
    right = drawn(_design("M10"), _mesh("M10"), tmp_path)
    left = drawn(_design("M10-LH"), _mesh("M10-LH"), tmp_path)
    for name in ("end", "chamfer", "land"):
        assert _differing(right[name], left[name][:, ::-1]) < 0.01, name
    for name in ("chamfer", "land"):
        assert _differing(right[name], left[name]) > 0.01, name


def _differing(one: Picture, other: Picture) -> float:
    return float(np.mean((one == 255) != (other == 255)))


@pytest.mark.parametrize("tap", TAPS, ids=_name)
def test_dashed_lines_lie_where_the_land_would_without_relief(tap: tuple[str, ...]) -> None:
    design = _design(*tap)
    tapped = design.tap
    lines = all_pictures(design)["land"].references
    assert len(lines) > 3
    for line in lines:
        x, y, z = right_hand(tapped, line).T
        w = from_crest(tapped.thread, np.degrees(np.arctan2(y, x)), z)
        undropped = np.minimum(profile_radius(tapped.thread, w), cone_radius(tapped.chamfer, z))
        np.testing.assert_allclose(np.hypot(x, y), undropped, atol=1e-4)
    on_wall = void_depth(tapped.flutes, right_hand(tapped, lines[-1])).max(axis=0)
    np.testing.assert_allclose(on_wall, 0.0, atol=1e-9)


def test_dashed_lines_are_seen(tmp_path: Path) -> None:
    tap = ("M6", "flutes.count=2")
    bare = small(all_pictures(_design(*tap))["land"])
    lined = replace(bare, references=all_pictures(_design(*tap))["land"].references)
    paths = (tmp_path / "bare.png", tmp_path / "lined.png")
    mesh = _mesh(*tap)
    draw_views(mesh.vertices, mesh.triangles, list(zip((bare, lined), paths, strict=True)))
    inked = [np.mean(read(path) < INK) for path in paths]
    assert inked[1] > 1.1 * inked[0]


def test_a_picture_shows_nothing_of_those_before_it() -> None:
    one, other = _mesh("M3"), _mesh("M6", "flutes.count=2")
    views = [small(view) for view in all_pictures(_design("M3")).values()][:2]
    first = drawn_views(one.vertices, one.triangles, views)
    rehearse()
    here, there = (renderer()(mesh.vertices, mesh.triangles) for mesh in (one, other))
    assert there.png(views[0]) != first[0]
    assert [here.png(view) for view in views] == first
    assert there.png(views[0]) != here.png(views[0]) == first[0]


def test_files_are_named_after_the_tap_and_small(tmp_path: Path) -> None:
    design = _design("M60x1.5", "flutes.count=8")
    drawn = drawn_all(design, _mesh("M60x1.5", "flutes.count=8"))
    paths = write_pictures(design, drawn, tmp_path)
    endings = (".png", "-end.png", "-chamfer.png", "-land.png")
    assert paths == [tmp_path / f"{design.name}{ending}" for ending in endings]
    sizes = [read(path).shape for path in paths]
    assert sizes == [(640, 1280), (800, 800), (640, 1280), (640, 1280)]
    assert all(path.stat().st_size < 300_000 for path in paths)  # colours take twice what grey does


@pytest.mark.parametrize(
    ("tap", "words"),
    [
        (("M10",), "the gap below the dashes is the relief"),
        (("1/2 BSW",), "no relief there"),
        (("M10", "relief.thread.kind=concentric", "relief.chamfer.kind=concentric"), "no relief."),
    ],
    ids=_name,
)
def test_the_land_is_described_with_the_relief_that_it_has(
    tap: tuple[str, ...], words: str
) -> None:
    assert words in all_pictures(_design(*tap))["land"].caption


def test_every_picture_has_words_of_its_own() -> None:
    views = all_pictures(_design("M10-LH")).values()
    assert len({view.title for view in views}) == len({view.alt for view in views}) == 4
    assert all("M10" in view.alt for view in views)


def test_a_thread_too_fine_for_lines_is_shaded_and_its_surroundings_keep_theirs(
    tmp_path: Path,
) -> None:
    # 1600 pixels on 72 mm leave 2.2 for a pitch of 0.1, on 112 mm 10.7 for 0.75
    assert all_pictures(_design("M18x0.75"))["three-quarter"].fine is None
    tap = ("M8x0.1", "blank.thread_length=8")
    view, mesh = all_pictures(_design(*tap))["three-quarter"], _mesh(*tap)
    paths = (tmp_path / "shaded.png", tmp_path / "lined.png")
    views = (view, replace(view, fine=None))
    draw_views(mesh.vertices, mesh.triangles, list(zip(views, paths, strict=True)))
    shaded, lined = (read(path) < INK for path in paths)
    assert not (shaded & ~lined).any()
    assert 0.0005 < shaded.mean() < 0.2 * lined.mean()


def test_a_slim_tap_fills_the_picture_of_its_cutting_end() -> None:
    assert all_pictures(_design("M2"))["end"].window is None
    design = _design("M0.5x0.125")
    window = all_pictures(design)["end"].window
    assert window is not None
    assert window.height == pytest.approx(2.5 * design.tap.thread.major)
    assert window.height < design.tap.blank.shank_diameter
