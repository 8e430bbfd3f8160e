"""The page in a browser: what it asks for, shows, and answers to."""

import io
import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from asked import design_of
from frames import until_drawn
from PIL import Image

from tapmodel.designing.record import TapDesign
from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.report.blocks import Chapter, Paragraphs, Rows, Words
from tapmodel.report.blocks import Row as BlockRow
from tapmodel.report.chapters import cautions, choices
from tapmodel.report.chapters.order import OPERATIONS
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.page.html import chapter_html
from tapmodel.report.page.solid import Model
from tapmodel.report.page.templates import own_file
from tapmodel.report.page.write import PageContent, Picture, write_page
from tapmodel.report.units import Units
from tapmodel.report.view.section.sections import regions, sections
from tapmodel.shape.outlines.section import section_outline

sync_api = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
CHROMIUM = shutil.which("chromium")
browsed = pytest.mark.skipif(CHROMIUM is None, reason="the browser chromium is not installed")

# The smallest picture: one black pixel.
PIXEL = bytes.fromhex(
    "89504e470d0a1a0a0000000d4948445200000001000000010100000000376ef9240000000a49444154"
    "789c63600000000200015d0b2db40000000049454e44ae426082"
)

# Area of what is filled, by a picture of it: each pixel tells how much of it is covered.
AREA = """() => {
  const metal = document.querySelector("#section .metal"), box = metal.getBBox(), size = 1200;
  const pen = new OffscreenCanvas(size, size).getContext("2d");
  const scale = (size - 4) / Math.max(box.width, box.height);
  pen.setTransform(scale, 0, 0, scale, 2 - box.x * scale, 2 - box.y * scale);
  pen.fill(new Path2D(metal.getAttribute("d")), getComputedStyle(metal).fillRule);
  const { data } = pen.getImageData(0, 0, size, size);
  let sum = 0;
  for (let n = 3; n < data.length; n += 4) sum += data[n];
  return sum / 255 / scale ** 2;
}"""


@pytest.fixture(scope="module")
def design() -> TapDesign:
    # Everything that a job may have told is on the page, the change gears of its lathe too.
    lathe = ["shop.leadscrew=8tpi", "shop.gears=30,50,127"]
    return design_of("M18x0.75", ["thread.tap_class=2", *lathe])


@pytest.fixture(scope="module")
def drawings(design: TapDesign) -> dict[str, Drawing]:
    return all_drawings(design)


@pytest.fixture(scope="module")
def file(
    design: TapDesign, drawings: dict[str, Drawing], tmp_path_factory: pytest.TempPathFactory
) -> Path:
    mesh = preview_mesh(design.tap)
    content = PageContent(
        drawings,
        Model(mesh.vertices, mesh.triangles, "Preview, not verified"),
        (Picture("A picture", "what it shows", PIXEL, "dashed: what <lines> mean"),),
    )
    path = tmp_path_factory.mktemp("page") / "tap.html"
    write_page(path, design, content)
    return path


@pytest.fixture(scope="module")
def browser() -> Iterator["sync_api.Browser"]:
    with sync_api.sync_playwright() as play:
        # Without a card four samples of a pixel take four times as long as one.
        options = ["--no-sandbox", "--enable-unsafe-swiftshader", "--webgl-msaa-sample-count=0"]
        started = play.chromium.launch(executable_path=CHROMIUM, args=options)
        yield started
        started.close()


class Opened:
    """The page, and what it asked for and complained of."""

    def __init__(self, context: "sync_api.BrowserContext", file: Path) -> None:
        """Open the file and wait until all of it shows."""
        self.page = context.new_page()
        self.requests: list[str] = []
        self.complaints: list[str] = []
        self.page.on("request", lambda request: self.requests.append(request.url))
        self.page.on("pageerror", lambda error: self.complaints.append(str(error)))
        self.page.on("console", self._heard)
        self.page.goto(file.as_uri())
        self.page.wait_for_selector("html[data-ready=yes]", state="attached")

    def _heard(self, message: "sync_api.ConsoleMessage") -> None:
        if message.type == "error":
            self.complaints.append(message.text)

    def pixels(self) -> bytes:
        """The model as it is seen, once it is drawn."""
        until_drawn(self.page)
        return self.page.locator("#model").screenshot()


@pytest.fixture
def opened(browser: "sync_api.Browser", file: Path) -> Iterator[Opened]:
    context = browser.new_context(viewport={"width": 1000, "height": 600})
    page = Opened(context, file)
    yield page
    assert page.complaints == []
    assert page.requests == [file.as_uri()]
    context.close()


@browsed
def test_dragging_and_keys_turn_the_model(opened: Opened) -> None:
    canvas, mouse = opened.page.locator("#model"), opened.page.mouse
    first = opened.pixels()
    assert opened.pixels() == first
    box = canvas.bounding_box()
    assert box is not None
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    mouse.move(x, y)
    mouse.down()
    mouse.move(x + 90, y + 40, steps=5)
    mouse.up()
    dragged = opened.pixels()
    assert dragged != first
    canvas.focus()
    opened.page.keyboard.press("ArrowLeft")
    assert opened.pixels() != dragged
    opened.page.keyboard.press("0")
    assert opened.pixels() == first
    for name in ("cutting end", "side", "square"):
        opened.page.get_by_role("button", name=name, exact=True).click()
        assert opened.pixels() != first


@browsed
def test_the_slider_moves_the_section_and_the_cut(opened: Opened, design: TapDesign) -> None:
    page = opened.page
    page.check("#cut")
    seen = opened.pixels()
    for place in (3, 30, 45):
        page.locator("#height").fill(str(place))
        text = page.locator("#height-text").inner_text()
        z = float(re.findall(r"[0-9.]+", text)[0])
        expected = section_outline(design.tap, z).area
        assert page.evaluate(AREA) == pytest.approx(expected, rel=0.002)
        assert opened.pixels() != seen
        seen = opened.pixels()
    assert "mm²" in page.locator("#region").inner_text()


@browsed
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_it_fits_a_phone_light_and_dark(
    browser: "sync_api.Browser", file: Path, scheme: str
) -> None:
    size = {"width": 360, "height": 740}
    context = browser.new_context(viewport=size, color_scheme=scheme, has_touch=True)
    opened = Opened(context, file)
    assert opened.page.evaluate("document.scrollingElement.scrollWidth") <= 360
    ground = opened.page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert (ground == "rgb(245, 243, 238)") == (scheme == "light")
    # Paper between the lines of a drawing is as light as its page, on paper always white.
    assert (_lightness(opened.page) > LIGHT) == (scheme == "light")
    opened.page.emulate_media(media="print")
    assert _lightness(opened.page) > LIGHT
    assert not opened.page.locator(".panes").is_visible()
    assert not opened.page.locator("#contents").is_visible()
    assert opened.page.locator("#first").is_visible()
    assert opened.page.locator("#drawings").is_visible()
    assert opened.complaints == []
    context.close()


LIGHT = 128


def _lightness(page: "sync_api.Page") -> float:
    """Of the middle one of the first drawing's dots, from black to 255."""
    taken = Image.open(io.BytesIO(page.locator("#drawings .paper").first.screenshot()))
    return float(np.median(np.asarray(taken.convert("L"))))


@browsed
def test_a_phone_has_reasons_over_its_whole_width(
    browser: "sync_api.Browser", design: TapDesign, tmp_path: Path
) -> None:
    path = tmp_path / "tap.html"
    write_page(path, design, PageContent())
    context = browser.new_context(viewport={"width": 390, "height": 800})
    opened = Opened(context, path)
    why = opened.page.locator("#choices tbody tr").nth(2).locator("td").last.bounding_box()
    field = opened.page.locator("#choices tbody tr").nth(2).locator("th").bounding_box()
    assert why is not None
    assert field is not None
    assert why["width"] > 0.9 * 390
    assert why["y"] >= field["y"] + field["height"] - 1
    assert opened.page.evaluate("document.scrollingElement.scrollWidth") <= 390
    context.close()


@browsed
def test_drawings_fit_a_phone_and_are_read_in_their_full_size_at_a_press(
    browser: "sync_api.Browser", file: Path, drawings: dict[str, Drawing]
) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 800}, is_mobile=True)
    opened = Opened(context, file)
    cards = "[...document.querySelectorAll('#drawings .card svg')]"
    rights = opened.page.evaluate(f"{cards}.map(s => s.getBoundingClientRect().right)")
    assert len(rights) == len(drawings)
    assert max(rights) <= 390
    for drawing in drawings.values():
        opened.page.get_by_role("button", name=f"Full size: {drawing.title}").click()
        place = opened.page.locator("#full-place")
        shown = place.locator("svg").bounding_box()
        assert shown is not None
        assert shown["width"] >= 0.99 * drawing.width_mm * 96 / 25.4
        ends = place.evaluate("p => (p.scrollLeft = 9999, p.scrollLeft + p.clientWidth)")
        assert ends >= shown["width"]
        opened.page.locator("#full-close").click()
    assert opened.page.evaluate("document.scrollingElement.scrollWidth") <= 390
    context.close()


@browsed
def test_tables_and_drawings_stand_without_scripts(
    browser: "sync_api.Browser", file: Path, drawings: dict[str, Drawing]
) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(file.as_uri())
    shown = page.locator("#drawings svg")
    assert shown.count() == len(drawings)
    assert shown.first.is_visible()
    assert page.locator(".figure").count() == 5
    assert "17.25" in page.locator(".figure", has_text="tap drill").inner_text()
    assert page.locator("#hole table").first.is_visible()
    context.close()


@browsed
def test_a_script_that_was_put_in_does_not_run(
    browser: "sync_api.Browser", file: Path, tmp_path: Path
) -> None:
    put_in = file.read_text().replace("<main>", "<main><script>document.title = 'x'</script>")
    (tmp_path / "tap.html").write_text(put_in)
    context = browser.new_context()
    page = context.new_page()
    page.goto((tmp_path / "tap.html").as_uri())
    page.wait_for_selector("html[data-ready=yes]", state="attached")
    assert page.title() == "Tap for M18x0.75"
    context.close()


def test_a_picture_has_what_its_lines_mean_under_it(file: Path) -> None:
    assert "<figcaption>dashed: what &lt;lines&gt; mean</figcaption>" in file.read_text()


def test_everything_is_in_one_small_file(
    file: Path, design: TapDesign, drawings: dict[str, Drawing]
) -> None:
    text = file.read_text()
    assert len(text.encode()) <= 3_000_000
    assert not re.findall(r"(?:src|href)=[\"'](?!data:|#)", text)
    for drawing in drawings.values():
        assert f"<h3>{drawing.title}</h3>" in text
    # of a tap that nobody has measured nothing is told as measured
    made = [told for section in OPERATIONS if (told := section(design)).blocks]
    assert len(made) >= len(OPERATIONS) - 2
    for section in (*made, cautions.chapter(design), choices.chapter(design)):
        assert f'id="{section.key}"><h2>{section.title}</h2>' in text
        assert f'href="#{section.key}"' in text
    for finding in design.findings:
        assert finding.code in text
    assert 'alt="what it shows"' in text


def test_an_inch_page_says_so(design: TapDesign, tmp_path: Path) -> None:
    write_page(tmp_path / "inch.html", design, PageContent(), Units.INCH)
    text = (tmp_path / "inch.html").read_text()
    assert "z counts from the front; in inches" in text
    # 17.5578 mm, the aimed pitch diameter
    assert "0.69125\u00a0in" in text


def test_names_of_fields_break_behind_dots_and_strokes_alone(design: TapDesign) -> None:
    html = chapter_html(choices.chapter(design), Units.MM)
    assert "flutes.<wbr>core_<wbr>diameter" in html
    assert re.search(r"\d\.\d", html)
    assert not re.search(r"\d\.<wbr>", html)
    assert "overflow-wrap: anywhere; min-width" not in own_file("built/page.css")


def test_text_cannot_become_markup() -> None:
    evil = '<script>alert(1)</script> & "so on"'
    rows = Rows((BlockRow(evil, Words(evil)),), evil)
    html = chapter_html(Chapter("key", evil, (rows, Paragraphs((evil,)))), Units.MM)
    assert "<script>" not in html
    # the caption is the name of the frame that scrolls, too
    assert html.count("&lt;script&gt;") == 6


def test_a_neck_behind_the_run_out_is_called_so() -> None:
    names = [region.name for region in regions(design_of("M6"))]
    behind = ["neck", "flute run-out", "neck", "shoulder", "shank", "square"]
    assert names == ["chamfer", "thread", *behind]


def test_stations_cover_the_tap_in_order(design: TapDesign) -> None:
    found = regions(design)
    assert found[0].start == 0.0
    assert found[-1].end == design.tap.blank.overall_length
    assert [a.end for a in found[:-1]] == [b.start for b in found[1:]]
    assert {"chamfer", "thread", "flute run-out", "shank", "square"} == {r.name for r in found}
    heights = [section.z for section in sections(design)]
    assert heights == sorted(heights)
    for section in sections(design)[::7]:
        expected = section_outline(design.tap, section.z).area
        assert section.area == pytest.approx(expected, rel=1e-4)
