"""The model in a browser: what its pictures show, held against the definition of the tap.

Places are projected here once more, from the views' own definition: nothing of the page's script
is asked where a point of the tap should be seen.
"""

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

import numpy as np
import pytest
from frames import until, until_drawn
from numpy.typing import NDArray

from tapmodel.designing.design import settled_tap
from tapmodel.designing.record import TapDesign
from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.report.page.solid import Model
from tapmodel.report.page.write import PageContent, write_page
from tapmodel.report.view.model.look import LOOK
from tapmodel.report.view.model.marks import marks_of
from tapmodel.report.view.section.sections import section_at
from tapmodel.shape.flute_section import face_angle, heel_angle, section_of
from tapmodel.shop.flute_setting import flute_setting
from tapmodel.shop.judged import judged
from tapmodel.spec.job_file import job_for
from tapmodel.words import Hand, Units

sync_api = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")

Picture = NDArray[np.int16]
Vector = tuple[float, float, float]
Size = dict[str, int]
Motion = Literal["no-preference", "reduce"]

MARGIN = 0.92
WINDOW = {"width": 1500, "height": 1000}
SMALL = {"width": 900, "height": 700}
"""For pictures of the milling, which a machine without a graphics card draws in seconds."""

SHORT = ("blank.thread_length=12",)
"""Half the thread, which is what such a picture's time goes into."""

RIGHT = "M10"
LEFT = "M10LH"


def turned(axis: str, angle: float) -> NDArray[np.float64]:
    c, s = math.cos(angle), math.sin(angle)
    if axis == "x":
        return np.array([[1, 0, 0], [0, c, -s], [0, s, c]])
    return np.array([[c, 0, s], [0, 1, 0], [-s, 0, c]])


# Rows: right, up and towards us, in the tap's frame.
SIDE = np.array([[0, 0, 1], [0, 1, 0], [-1, 0, 0]], dtype=float)
FRONT = np.array([[0, 1, 0], [1, 0, 0], [0, 0, -1]], dtype=float)
QUARTER = turned("x", 0.4) @ turned("y", 0.65) @ SIDE


@dataclass(frozen=True)
class Seen:
    """How the model stands on its canvas: rotation, pixels of a millimetre, the tap's origin."""

    turn: NDArray[np.float64]
    scale: float
    origin: tuple[float, float]

    def at(self, point: Vector) -> tuple[float, float]:
        """Where a point is seen on the canvas [px]."""
        x, y, _ = self.turn @ point
        return self.origin[0] + self.scale * x, self.origin[1] - self.scale * y


def fitted(
    low: NDArray[np.float64],
    high: NDArray[np.float64],
    turn: NDArray[np.float64],
    size: tuple[float, float],
) -> Seen:
    """A view of all of a box."""
    half = np.abs(turn) @ (high - low) / 2
    scale = MARGIN / 2 * min(size[0] / half[0], size[1] / half[1])
    x, y, _ = turn @ ((low + high) / 2)
    return Seen(turn, scale, (size[0] / 2 - scale * x, size[1] / 2 + scale * y))


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("model")


def page_of(folder: Path, job: str, sets: tuple[str, ...] = ()) -> tuple[TapDesign, Path]:
    design = judged(settled_tap(job_for(job, sets)))
    path = folder / f"{job}{len(sets)}{'-'.join(sets).replace('.', '_')}.html"
    if not path.exists():
        mesh = preview_mesh(design.tap)
        model = Model(mesh.vertices, mesh.triangles, "Preview, not verified")
        write_page(path, design, PageContent(model=model))
    return design, path


class Opened:
    """A page with its model."""

    def __init__(
        self,
        window: "sync_api.BrowserContext",
        file: Path,
        size: Size,
        motion: Motion = "no-preference",
    ) -> None:
        """Open a file in a window, by somebody who welcomes motion or does not."""
        self.page = window.new_page()
        self.page.set_viewport_size(size)
        self.page.emulate_media(reduced_motion=motion)
        self.complaints: list[str] = []
        self.page.on("pageerror", lambda error: self.complaints.append(str(error)))
        self.page.goto(file.as_uri())
        self.page.wait_for_selector("html[data-ready=yes]", state="attached")
        self.canvas = self.page.locator("#model")
        self.canvas.scroll_into_view_if_needed()
        self.folder = file.parent

    @property
    def size(self) -> tuple[float, float]:
        """Of the canvas [px]."""
        box = self.box
        return box["width"], box["height"]

    @property
    def box(self) -> dict[str, float]:
        """Of the canvas on the page [px]."""
        found = self.canvas.bounding_box()
        assert found is not None
        return found

    def shot(self) -> bytes:
        """The canvas with its words, once it is drawn."""
        until_drawn(self.page)
        return self.canvas.screenshot()

    def shows(self, picture: bytes) -> None:
        """Wait until the canvas looks like this."""
        until(self.page, lambda: self.shot() == picture)

    def picture(self) -> Picture:
        """Rows from the top, red, green and blue."""
        from vtkmodules.util.numpy_support import vtk_to_numpy  # noqa: PLC0415
        from vtkmodules.vtkIOImage import vtkPNGReader  # noqa: PLC0415

        path = self.folder / "shot.png"
        path.write_bytes(self.shot())
        reader = vtkPNGReader()
        reader.SetFileName(str(path))
        reader.Update()
        image = reader.GetOutput()
        width, height, _ = image.GetDimensions()
        pixels = vtk_to_numpy(image.GetPointData().GetScalars()).reshape(height, width, -1)
        return pixels[::-1, :, :3].astype(np.int16)

    def scene(self, name: str, place: float) -> None:
        """Show a scene at a place of its course."""
        self.page.check(f"input[name=scene][value={name}]")
        self.page.locator(".player input[type=range]").evaluate(
            "(slider, to) => { slider.value = to; slider.dispatchEvent(new Event('input')); }",
            place,
        )

    def view(self, name: str) -> None:
        """Look from a side."""
        self.page.click(f"button[data-view={name}]")
        self.page.mouse.move(2, 2)

    def close(self) -> None:
        """Nothing may have gone wrong in the script."""
        self.page.close()
        assert self.complaints == []


@pytest.fixture(scope="module")
def page(window: "sync_api.BrowserContext", folder: Path) -> Iterator[Opened]:
    opened = Opened(window, page_of(folder, RIGHT)[1], WINDOW)
    yield opened
    opened.close()


@pytest.fixture
def opened(page: Opened) -> Opened:
    """A page as it opens, whatever a test before did with it."""
    page.page.check("input[name=scene][value=alone]")
    page.page.check("#model-names")
    page.page.uncheck("#cut")
    page.page.uncheck("#cut-quarter")
    page.view("quarter")
    return page


def tap_box(design: TapDesign) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    vertices = preview_mesh(design.tap).vertices
    return vertices.min(axis=0), vertices.max(axis=0)


def colour(picture: Picture, at: tuple[float, float]) -> NDArray[np.int16]:
    x, y = (round(value - 0.5) for value in at)
    return picture[y, x]


def near(a: NDArray[np.int16], b: NDArray[np.int16], by: int) -> bool:
    return bool(np.max(np.abs(a - b)) <= by)


def test_turning_changes_the_picture_and_a_double_click_restores_it(opened: Opened) -> None:
    mouse, box = opened.page.mouse, opened.box
    first = opened.shot()
    mouse.move(box["x"] + 200, box["y"] + 200)
    mouse.down()
    mouse.move(box["x"] + 260, box["y"] + 230, steps=4)
    mouse.up()
    assert opened.shot() != first
    opened.canvas.dblclick(position={"x": 20, "y": 20})
    assert opened.shot() == first


def test_leaders_point_at_their_places(opened: Opened, folder: Path) -> None:
    design, _ = page_of(folder, RIGHT)
    marks = {mark.key: mark for mark in marks_of(design, Units.MM)}
    until_drawn(opened.page)
    for name, turn in (("quarter", QUARTER), ("side", SIDE), ("front", FRONT)):
        opened.view(name)
        until_drawn(opened.page)
        seen = fitted(*tap_box(design), turn, opened.size)
        shown = opened.page.locator(".labels .leader:visible")
        assert shown.count() >= (5 if name == "quarter" else 1)
        for word in shown.all():
            mark = marks[word.get_attribute("data-key") or ""]
            x, y = map(float, (word.get_attribute("data-at") or "").split())
            facing = [place for place in mark.places if turn[2] @ place.facing > 0]
            away = min(math.dist((x, y), seen.at(place.at)) for place in facing)
            assert away < 3, mark.key
            assert word.inner_text().split() == f"{mark.label} {mark.text}".split()


def test_words_overlap_nowhere_and_can_be_taken_away(opened: Opened) -> None:
    until_drawn(opened.page)
    boxes = [word.bounding_box() for word in opened.page.locator(".labels .leader:visible").all()]
    for n, a in enumerate(boxes):
        for b in boxes[n + 1 :]:
            assert a is not None
            assert b is not None
            apart = [a["x"] + a["width"] <= b["x"], b["x"] + b["width"] <= a["x"]]
            apart += [a["y"] + a["height"] <= b["y"], b["y"] + b["height"] <= a["y"]]
            assert any(apart)
    listed = opened.page.locator(".told-list").first
    listed.locator("summary").click()
    assert listed.locator("li").count() == 5
    opened.page.uncheck("#model-names")
    until_drawn(opened.page)
    assert opened.page.locator(".labels .leader:visible").count() == 0


def test_a_wall_in_close_up_shows_no_facets(opened: Opened, folder: Path) -> None:
    design, _ = page_of(folder, RIGHT)
    opened.page.uncheck("#model-names")
    opened.view("side")
    seen = fitted(*tap_box(design), SIDE, opened.size)
    # The shank, in the middle of its length, where 3-degree facets would stand 6 pixels and more.
    blank = design.tap.blank
    x, y = seen.at((0.0, 0.0, (blank.square_start + blank.thread_length) / 2 + 8))
    box, mouse = opened.box, opened.page.mouse
    opened.canvas.focus()
    opened.page.keyboard.down("Shift")
    mouse.move(box["x"] + x, box["y"] + y)
    mouse.down()
    mouse.move(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2, steps=2)
    mouse.up()
    opened.page.keyboard.up("Shift")
    for _ in range(9):
        opened.page.keyboard.press("+")
    mouse.move(2, 2)
    column = opened.picture()[:, round(box["width"] / 2)].astype(float) @ [0.299, 0.587, 0.114]
    half = 0.35 * blank.shank_diameter * seen.scale * 1.2**9
    middle = len(column) / 2
    inner = column[max(round(middle - half), 0) : round(middle + half)]
    steps = np.abs(np.diff(inner))
    assert np.ptp(inner) > 40, "the light goes round the shank"
    assert np.max(steps) < 3.0
    # Facets would be flat with steps between: nearly all pixels alike, the rest far apart.
    smooth = np.convolve(inner, np.ones(15) / 15, "valid")
    assert np.max(np.abs(inner[7:-7] - smooth)) < 1.6


def cap_pixels(picture: Picture) -> int:
    """Pixels in the tone of a cut, hatched or not: red over green over blue by its own shares."""
    red, green, blue = (picture[..., k].astype(float) for k in range(3))
    want = np.array(LOOK.cap)
    like = np.abs(green / np.maximum(red, 1) - want[1] / want[0]) < 0.06
    like &= np.abs(blue / np.maximum(red, 1) - want[2] / want[0]) < 0.09
    return int(np.sum(like & (red > 40)))


def test_a_cut_fills_the_section_that_it_shows(opened: Opened, folder: Path) -> None:
    design, _ = page_of(folder, RIGHT)
    opened.page.uncheck("#model-names")
    opened.view("front")
    assert cap_pixels(opened.picture()) < 100
    opened.page.check("#cut")
    text = opened.page.locator("#height-text").inner_text()
    z = float(re.findall(r"[0-9.]+", text)[0])
    area = section_at(design, z).area
    seen = fitted(*tap_box(design), FRONT, opened.size)
    assert cap_pixels(opened.picture()) / seen.scale**2 == pytest.approx(area, rel=0.03)


def test_a_quarter_is_cut_out_with_closed_faces(opened: Opened) -> None:
    opened.page.uncheck("#model-names")
    before = cap_pixels(opened.picture())
    opened.page.check("#cut-quarter")
    after = opened.picture()
    assert cap_pixels(after) > before + 8000
    opened.page.uncheck("#cut-quarter")
    assert cap_pixels(opened.picture()) == before


# --- milling --------------------------------------------------------------------------------------


def mill_seen(design: TapDesign, size: tuple[float, float]) -> Seen:
    """The set-up seen on the cutting end: what of it is fitted into the view."""
    blank, ball = design.tap.blank, design.tap.flutes.cutter_diameter / 2
    wide, major = blank.shank_diameter / 2, design.tap.thread.major
    high = np.array([major / 2 + 3.5 * ball, 4.2 * wide, blank.overall_length + 2.7 * wide])
    return fitted(np.array([-2.6 * wide, -2.6 * wide, -0.5 * major]), high, FRONT, size)


def wrong_in_milling(design: TapDesign, page: Opened) -> list[str]:
    """What the pictures of the milling show otherwise than the design says."""
    flutes, hand = design.tap.flutes, 1 if design.tap.thread.hand is Hand.RIGHT else -1
    void, count = section_of(flutes), flutes.count
    radius = 0.9 * design.tap.chamfer.point_diameter / 2
    face, heel = face_angle(void, radius), heel_angle(void, radius)
    seen, wrong = mill_seen(design, page.size), []

    def at(theta: float, r: float = radius) -> tuple[float, float]:
        turn = math.radians(theta)
        return seen.at((r * math.cos(turn), hand * r * math.sin(turn), 0.0))

    def inside(angle: float, side: int) -> list[tuple[float, float]]:
        """Places 6 degrees before a wall, at radii that the void reaches."""
        radii = np.linspace(max(0.55 * radius, 1.15 * void.core_diameter / 2), radius, 5)
        wall = face_angle if side > 0 else heel_angle
        return [at(angle + wall(void, r) - 6 * side, r) for r in radii.tolist()]

    page.scene("mill", 0.0)
    page.view("front")
    for done in range(1, count + 1):
        # Lifted out of this flute, and not yet indexed.
        page.page.locator(".player input[type=range]").evaluate(
            "(slider, to) => { slider.value = to; slider.dispatchEvent(new Event('input')); }",
            done - 1 + 0.8,
        )
        picture = page.picture()
        metal = colour(picture, at((face + heel) / 2 + 180 / count, 0.75 * radius))
        turned_by = 360 * (done - 1) / count
        for flute in range(count):
            angle = 360 * flute / count - turned_by
            milled = flute < done
            for name, side in (("face", 1), ("heel", -1)):
                cut = [not near(colour(picture, point), metal, 5) for point in inside(angle, side)]
                if (milled and sum(cut) < 3) or (not milled and any(cut)):
                    wrong.append(f"{name} of flute {flute + 1} after {done}")
                beyond = at(angle + (face if side > 0 else heel) + 6 * side)
                if not near(colour(picture, beyond), metal, 5):
                    wrong.append(f"land beside the {name} of flute {flute + 1} after {done}")
    return wrong


def cutter_side(design: TapDesign, page: Opened) -> str:
    """On which side of the centre line the milling cutter is seen."""
    page.scene("mill", 0.3)
    page.view("front")
    picture = page.picture()
    flutes, seen = design.tap.flutes, mill_seen(design, page.size)
    # Over the head, where nothing but the cutter stands before the stage.
    row = round(seen.at((1.25 * design.tap.blank.shank_diameter, 0.0, 0.0))[1] / 2)
    assert row > 2
    where = np.flatnonzero(np.max(np.abs(picture[row] - picture[row, 3]), axis=1) > 50)
    assert len(where) > 0.8 * flutes.cutter_diameter * seen.scale
    middle = (float(where.mean()) - seen.origin[0]) / seen.scale
    assert abs(middle) == pytest.approx(abs(flutes.offset), abs=0.15)
    return "" if abs(middle) < 0.1 else "right" if middle > 0 else "left"


@pytest.mark.parametrize("job", [RIGHT, LEFT])
def test_the_milling_shows_every_flute_where_it_is(
    window: "sync_api.BrowserContext", folder: Path, job: str
) -> None:
    design, file = page_of(folder, job, SHORT)
    page = Opened(window, file, SMALL)
    assert wrong_in_milling(design, page) == []
    assert cutter_side(design, page) == flute_setting(design).side
    page.close()


def test_the_milling_tells_wrong_taps_apart(
    window: "sync_api.BrowserContext", folder: Path
) -> None:
    """A flute less, the other hand, and the offset to the other side: each is seen."""
    design, _ = page_of(folder, RIGHT, SHORT)
    offset = design.tap.flutes.offset
    assert abs(offset) > 1
    other = [(LEFT, ()), (RIGHT, ("flutes.count=4",)), (RIGHT, (f"flutes.offset={-offset:g}",))]
    for job, sets in other:
        shown, file = page_of(folder, job, (*SHORT, *sets))
        page = Opened(window, file, SMALL)
        wrong = wrong_in_milling(design, page)
        assert len(wrong) >= 2, (job, sets)
        if shown.tap.flutes.count == design.tap.flutes.count:
            assert cutter_side(shown, page) != flute_setting(design).side
        page.close()


# --- in the hole ----------------------------------------------------------------------------------


def test_the_tap_in_its_hole_tells_turns_depth_and_teeth(opened: Opened, folder: Path) -> None:
    design, _ = page_of(folder, RIGHT)
    teeth = design.prediction.chips.teeth if design.prediction else ()
    depth = 6.0
    opened.scene("hole", depth)
    told = opened.page.locator(".player .told").inner_text()
    assert f"turn {depth / design.tap.thread.lead:.2f}" in told
    assert "6.00 mm" in told
    cutting = [n for n, tooth in enumerate(teeth, 1) if tooth.height < depth]
    assert f"teeth {cutting[0]} to {cutting[-1]} cut" in told
    until_drawn(opened.page)
    numbers = opened.page.locator(".labels .chip:visible").all_inner_texts()
    assert numbers
    assert {int(number) for number in numbers} <= set(cutting)
    steps = opened.page.get_by_role("button", name="step on")
    before = opened.shot()
    steps.click()
    assert opened.shot() != before
    after = float(opened.page.locator(".player input[type=range]").input_value())
    step = design.tap.thread.lead / design.tap.flutes.count
    begin = -2 * design.tap.thread.pitch
    assert after == pytest.approx(begin + step * (math.floor((depth - begin) / step + 1e-6) + 1))


def test_play_runs_and_pauses_and_stays_still_where_motion_is_unwelcome(
    window: "sync_api.BrowserContext", folder: Path
) -> None:
    _, file = page_of(folder, RIGHT, SHORT)
    page = Opened(window, file, SMALL)
    page.scene("mill", 0.0)
    page.page.get_by_role("button", name="play").click()
    page.page.wait_for_function(
        "() => Number(document.querySelector('.player input[type=range]').value) > 0.02"
    )
    page.page.get_by_role("button", name="pause").click()
    place = float(page.page.locator(".player input[type=range]").input_value())
    assert place > 0.02
    page.page.wait_for_timeout(300)
    assert float(page.page.locator(".player input[type=range]").input_value()) == place
    page.close()
    calm = Opened(window, file, SMALL, "reduce")
    calm.scene("mill", 0.0)
    assert calm.page.get_by_role("button", name="play").count() == 0
    calm.page.get_by_role("button", name="step on").click()
    assert "flute" in calm.page.locator(".player .told").inner_text()
    calm.close()


def test_a_lost_card_comes_back_with_the_picture(opened: Opened) -> None:
    first = opened.shot()
    opened.page.evaluate(
        "() => { const gl = document.getElementById('model').getContext('webgl2');"
        "gl.canvas.addEventListener('webglcontextlost', () => { window.lost = true; });"
        "window.lose = gl.getExtension('WEBGL_lose_context'); window.lose.loseContext(); }"
    )
    opened.page.wait_for_function("() => window.lost")
    assert opened.shot() != first
    opened.page.evaluate("() => window.lose.restoreContext()")
    opened.shows(first)
