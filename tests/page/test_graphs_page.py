"""Section, graphs, variants, chart and bench in a browser, used as their user does."""

import base64
import json
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from frames import until
from opened import Live
from playwright.sync_api import Browser, BrowserContext, Page, expect

from tapmodel.designing.settle import settle
from tapmodel.report.page.write import PageContent, write_page
from tapmodel.report.units import Units
from tapmodel.report.view.tap import view_of
from tapmodel.serve.asked import Asked, answered
from tapmodel.spec.job_file import job_for

THREAD = "M18x0.75"

# The angle between the lines of the rake as they are drawn, clockwise.
RAKE = """() => {
  const read = (kind) => document.querySelector(`#section path.mark.${kind}`).getAttribute("d")
    .match(/-?[\\d.]+/g).map(Number);
  const radial = [...document.querySelectorAll("#section path.mark.fine")].pop().getAttribute("d")
    .match(/-?[\\d.]+/g).map(Number);
  const edge = read("edge");
  const turn = (a, b, c, d) => Math.atan2(d - b, c - a) * 180 / Math.PI;
  const angle = turn(...radial) - turn(...edge);
  return ((angle % 360) + 540) % 360 - 180;
}"""

WIDE = """() => [...document.querySelectorAll("main *")]
  .filter((one) => one.getBoundingClientRect().right > innerWidth + 1)
  .filter((one) => !one.closest(".scroll, svg, #papers"))
  .map((one) => `${one.tagName}#${one.id}.${one.className}`)"""


@pytest.fixture
def live(flat_window: BrowserContext, served: str) -> Iterator[Live]:
    page = Live(flat_window, served)
    yield page
    page.close()


def rake_of(*sets: str) -> float:
    return settle(job_for(THREAD, list(sets))).figures.rake_crest


def rake_now(page: Page) -> float:
    """What the design room makes of the job in the address."""
    return answered(Asked(job=job_in(page.url))).design.figures.rake_crest


def job_in(address: str) -> dict[str, object]:
    coded = address.partition("#job=")[2]
    padded = coded + "=" * (-len(coded) % 4)
    return json.loads(base64.urlsafe_b64decode(padded))["job"] if coded else {}


def set_offset(live: Live, text: str) -> None:
    """Give offset and depth instead of rake and core, then another offset."""
    live.page.get_by_role("radio", name="offset and depth").check()
    expect(live.page.locator("#saved")).not_to_be_empty()
    live.type("flutes.offset", text)
    live.shows("flutes.offset", text)
    expect(live.page.locator("#section [data-mark=offset]")).to_contain_text(text)
    # the address follows a little later
    until(live.page, lambda: str(job_in(live.page.url).get("flutes.offset")) == text)


def shows_rake(page: Page, rake: float) -> None:
    told = page.locator("#section [data-mark=rake]")
    expect(told).to_have_text(f"{rake:.2f}°")
    # the lines end on a thousandth of a mm
    assert page.evaluate(RAKE) == pytest.approx(rake, abs=0.1)


@pytest.mark.parametrize("width", [800, 1600])
def test_the_cutter_is_seen_whole(flat_window: BrowserContext, served: str, width: int) -> None:
    live = Live(flat_window, served, width, 900)
    if width < 992:
        live.page.get_by_role("button", name="Change the tap").click()
    live.type("designation", "M10")
    expect(live.page.locator("#title")).to_contain_text("M10")
    boxes = [
        live.page.locator(name).bounding_box() for name in ("#section", "#section circle.cutter")
    ]
    whole, circle = [box for box in boxes if box]
    assert circle["y"] + circle["height"] <= whole["y"] + whole["height"]
    assert circle["x"] >= whole["x"]
    live.close()


def test_another_offset_shows_another_rake(live: Live) -> None:
    shows_rake(live.page, rake_of())
    set_offset(live, "-1.5")
    changed = rake_now(live.page)
    assert abs(changed - rake_of()) > 1
    shows_rake(live.page, changed)
    expect(live.page.locator("#section [data-mark=offset]")).to_have_text("-1.500 mm")


def test_the_slider_shows_the_section_at_its_height(live: Live) -> None:
    page, design = live.page, settle(job_for(THREAD))
    page.locator("#height").fill(str(design.tap.blank.square_start + 1))
    expect(page.locator("#region")).to_contain_text("square")
    # Nothing is cut there: no marks of the edge.
    assert page.locator("#section path.mark.edge").count() == 0
    page.locator("#height").fill("20")
    view = view_of(design, Units.MM, 20.0)
    expect(page.locator("#region")).to_contain_text(f"{view.section.area:.1f} mm²")
    assert page.locator("#section .metal").get_attribute("d") == view.section.path
    page.locator("#marked").uncheck()
    assert page.locator("#section .mark").count() == 0


def test_graphs_follow_a_change(live: Live) -> None:
    page = live.page
    bars = page.locator("#chips-pane .bar-of-chip")
    before = settle(job_for(THREAD)).prediction
    assert before is not None
    expect(bars).to_have_count(len(before.chips.teeth))
    live.type("flutes.count", "6")
    after = settle(job_for(THREAD, ["flutes.count=6"])).prediction
    assert after is not None
    expect(bars).to_have_count(len(after.chips.teeth))
    stop = page.locator("#torque-pane dl").first
    expect(stop).to_contain_text(f"{after.torque.band.likely:.3g} N·m")
    expect(page.locator("#rubbing-pane .surfaces > div")).to_have_count(3)


def test_pressing_the_chart_takes_its_value(live: Live) -> None:
    page = live.page
    page.locator("#chart-pane, #chart").first.scroll_into_view_if_needed()
    expect(page.locator("#chart-readout")).to_contain_text("rake at the drilled wall")
    page.select_option("#chart-field", "flutes.offset")
    expect(page.locator("#chart-readout")).to_contain_text("offset of the cutter")
    place = page.locator(".chart-place")
    box = place.bounding_box()
    assert box is not None
    place.click(position={"x": box["width"] * 0.6, "y": box["height"] / 2})
    read = page.locator("#chart-readout").inner_text()
    offset = re.search(r"cutter (-?[\d.]+) mm", read)
    assert offset is not None
    told = float(offset[1])
    expect(live.box("flutes.offset")).to_have_value(re.compile(f"^{told:g}"))
    # What the chart held is taken with it.
    held = {
        "depth_from_top": live.number("flutes.depth_from_top"),
        "cutter_diameter": 8,
        "count": 4,
    }
    given = [f"flutes.{name}={value}" for name, value in held.items()]
    shows_rake(page, rake_of(f"flutes.offset={told}mm", *given))
    expect(page.locator("[data-state=given] #field-flutes-depth_from_top")).to_be_visible()
    page.locator("#undo").click()
    shows_rake(page, rake_of())


def test_the_chart_is_read_by_keys(live: Live) -> None:
    page = live.page
    page.locator("#chart").scroll_into_view_if_needed()
    expect(page.locator("#chart-readout")).to_contain_text("rake")
    page.select_option("#chart-field", "chamfer.point_diameter")
    drill = settle(job_for(THREAD)).drill
    broken = page.locator(".broken-list li")
    expect(broken.first).to_contain_text("will not start")
    page.locator("#chart-cursor").focus()
    page.keyboard.press("End")
    expect(page.locator("#chart-readout")).to_contain_text("breaks a rule")
    page.keyboard.press("Home")
    value = re.search(r"point diameter ([\d.]+) mm", page.locator("#chart-readout").inner_text())
    assert value is not None
    assert float(value[1]) < drill
    page.keyboard.press("Enter")
    live.shows("chamfer.point_diameter", f"{float(value[1]):g}")


def test_a_chart_is_typed_in_the_unit_beside_its_ends(live: Live) -> None:
    page = live.page
    page.locator("#units").select_option("inch")
    page.locator("#chart").scroll_into_view_if_needed()
    page.select_option("#chart-field", "flutes.cutter_diameter")
    end = page.locator("label", has=page.locator("#chart-end"))
    expect(end).to_have_text("to in")
    end.locator("input").fill("0.4")
    with page.expect_response("**/chart") as answer:
        page.keyboard.press("Enter")
    rows = answer.value.json()["chart"]["rows"]
    assert rows[-1]["text"] == "0.4000 in"
    expect(end.locator("input")).to_have_value("0.4")


def test_the_line_of_a_chart_ends_where_something_is_chosen_anew(live: Live) -> None:
    page = live.page
    page.locator("#chart").scroll_into_view_if_needed()
    page.select_option("#chart-field", "flutes.rake")
    told = page.locator(".jumps li")
    expect(told).to_have_count(2)
    expect(told.first).to_contain_text("cutter 10.00 mm instead of 8.00 mm")
    expect(page.locator(".chart-place .jump")).to_have_count(2)
    for number in range(2):
        path = page.locator(f".chart-place .plot-{number}").last.get_attribute("d")
        assert path is not None
        assert path.count("M") == 3
    page.select_option("#chart-field", "flutes.offset")
    expect(told).to_have_count(0)


def test_variants_are_pinned_compared_kept_and_gone_back_to(live: Live) -> None:
    page = live.page
    page.locator("#pin").click()
    expect(page.locator(".pinned li")).to_have_count(1)
    set_offset(live, "-1.5")
    now, then = rake_now(page), rake_of()
    shows_rake(page, now)
    row = page.locator("table.variants tr", has_text="rake at the crest")
    expect(row).to_contain_text(f"{now:.2f}°")
    expect(row.locator("td").nth(1)).to_have_text(f"{then:.2f}° {'▲' if then > now else '▼'}")
    same = page.locator("table.variants tr", has_text="depth of")
    assert same.count() == 0
    pinned = view_of(settle(job_for(THREAD)), Units.MM)
    assert page.locator(".overlay .variant.A").get_attribute("d") == pinned.section.path
    page.locator("#pin").click()
    expect(page.locator(".pinned li")).to_have_count(2)
    page.locator("[aria-label='Name of B']").fill("more offset")
    page.keyboard.press("Tab")
    page.reload()
    live.ready()
    expect(page.locator(".pinned li")).to_have_count(2)
    assert page.locator("[aria-label='Name of B']").input_value() == "more offset"
    page.locator("[data-letter=A] button", has_text="Go back").click()
    shows_rake(page, then)
    page.locator("#undo").click()
    shows_rake(page, now)
    page.locator("[aria-label='Remove A']").click()
    expect(page.locator(".pinned li")).to_have_count(1)


CUT_AT_3 = """() => {
  const slider = document.querySelector("#height");
  slider.value = 3;
  slider.dispatchEvent(new Event("input"));
}"""


def test_a_variant_keeps_what_is_typed_and_the_focus(live: Live) -> None:
    page = live.page
    page.locator("#pin").click()
    name = page.locator("[aria-label='Name of A']")
    name.fill("be")
    page.evaluate(CUT_AT_3)
    expect(page.locator("#height-text")).to_have_text("z = 3.00 mm")
    page.keyboard.type("fore")
    assert name.input_value() == "before"
    set_offset(live, "-1.5")
    back = page.locator("[data-letter=A] button", has_text="Go back")
    back.click()
    shows_rake(page, rake_of())
    expect(back).to_be_focused()


def test_what_is_pinned_while_others_are_told_in_other_units_stays(live: Live) -> None:
    page = live.page
    page.locator("#pin").click()
    # Away from the height of comparison each pin asks, and two of them are under way at once.
    page.evaluate(CUT_AT_3)
    expect(page.locator("#height-text")).to_have_text("z = 3.00 mm")
    page.locator("#units").select_option("inch")
    page.locator("#pin").dblclick()
    letters = page.locator(".pinned li strong")
    expect(letters).to_have_count(3)
    assert [letter.strip() for letter in letters.all_inner_texts()] == ["A", "B", "C"]
    core = page.locator("table.variants tr", has_text="core (web)").locator("td")
    for number in range(4):
        expect(core.nth(number)).to_have_text(re.compile(r"^0\.\d+ in$"))


def test_four_variants_are_the_most(live: Live) -> None:
    page = live.page
    for number in range(1, 5):
        page.locator("#pin").click()
        expect(page.locator(".pinned li")).to_have_count(number)
    assert page.locator("#pin").is_disabled()
    letters = page.locator(".pinned li strong").all_inner_texts()
    assert [letter.strip() for letter in letters] == ["A", "B", "C", "D"]
    dashes = page.evaluate(
        "[...document.querySelectorAll('.overlay .variant')]"
        ".map((line) => getComputedStyle(line).strokeDasharray)"
    )
    assert len(set(dashes)) == 4


def test_a_reading_over_wires_is_judged_at_the_machine(flat_browser: Browser, served: str) -> None:
    phone = flat_browser.new_context(is_mobile=True)
    live = Live(phone, served, 360, 740)
    page = live.page
    page.locator("summary", has_text="Measure over wires").click()
    body = page.locator("details.tool[open]")
    limits = body.locator("div", has_text="limits over wires").last
    expect(limits).to_contain_text(" to ")
    low, high = map(float, re.findall(r"[\d.]+", limits.locator("dd").inner_text())[:2])
    page.locator("#wires-measured").fill(f"{(low + high) / 2:.4f}")
    expect(body.locator(".judged")).to_contain_text("fine")
    expect(body.locator(".judged")).to_contain_text("in limits")
    page.locator("#wires-measured").fill(f"{high + 0.05:.4f}")
    expect(body.locator(".judged")).to_contain_text("take more")
    expect(body).to_contain_text("infeed to the target")
    page.locator("#wires-measured").fill("99")
    box, wrong = page.locator("#wires-measured"), page.locator("#wires-measured-wrong")
    expect(wrong).to_contain_text("99")
    expect(box).to_have_attribute("aria-invalid", "true")
    # The limits stay; of the reading before nothing does.
    expect(body.locator(".judged")).to_have_count(0)
    expect(body).not_to_contain_text("infeed to the target")
    expect(limits).to_contain_text(" to ")
    # Each box tells what is wrong with it, and with nothing beside it.
    box.fill(f"{high:.4f}")
    page.locator("#wires-wire").fill("thick")
    expect(page.locator("#wires-wire-wrong")).to_contain_text("such as 6.35mm")
    expect(wrong).to_be_hidden()
    expect(box).to_have_attribute("aria-invalid", "false")
    live.close()
    phone.close()


def test_the_counter_goes_round_the_flutes_and_survives_a_reload(live: Live) -> None:
    page, count = live.page, settle(job_for(THREAD)).tap.flutes.count
    page.locator("summary", has_text="Divide").click()
    place = page.locator("#dividing-place")
    expect(place).to_have_text(f"1 of {count}")
    for number in range(2, count + 1):
        page.locator(".counter button", has_text="Next").click()
        expect(place).to_have_text(f"{number} of {count}")
    assert page.locator(".counter button", has_text="Next").is_disabled()
    page.locator("#divisions").fill("401")
    expect(page.locator("#divisions-wrong")).to_contain_text("from 1 to 400")
    page.locator("#divisions").fill("")
    expect(page.locator("#divisions-wrong")).to_be_hidden()
    for _ in range(2, count + 1):
        page.locator(".counter button", has_text="Next").click()
    expect(page.locator("#dividing-move")).to_contain_text("turn")
    page.reload()
    live.ready()
    page.locator("summary", has_text="Divide").click()
    expect(place).to_have_text(f"{count} of {count}")


def test_measured_sizes_are_judged_beside_their_boxes(live: Live) -> None:
    page, core = live.page, settle(job_for(THREAD)).tap.flutes.core_diameter
    page.locator("summary", has_text="Measured sizes").click()
    page.locator("#measured-core").fill(f"{core / 2:.2f}")
    row = page.locator(".size", has=page.locator("#measured-core"))
    expect(row).to_contain_text("Too small")
    expect(row.locator(".judged")).to_have_class(re.compile("warning|error"))


def test_gears_are_found_once_the_lathe_is_named(live: Live) -> None:
    page = live.page
    page.locator("summary", has_text="Change gears").click()
    page.locator("#gears-leadscrew").fill("8tpi")
    page.locator("#gears-wheels").fill("20-65,127")
    page.locator("button", has_text="Put into the job").click()
    expect(page.locator("details.tool[open]")).to_contain_text("drivers")


@pytest.mark.parametrize("width", [360, 800, 1600])
def test_nothing_is_cut_off_at_any_width(
    flat_window: BrowserContext, served: str, width: int
) -> None:
    live = Live(flat_window, served, width, 800)
    page = live.page
    for _ in range(2):
        page.locator("#pin").click()
    expect(page.locator(".pinned li")).to_have_count(2)
    page.locator("#chart").scroll_into_view_if_needed()
    expect(page.locator("#chart-readout")).to_contain_text("rake")
    for summary in page.locator("details.tool > summary").all():
        summary.click()
        page.wait_for_timeout(300)
        assert page.evaluate(WIDE) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    if width == 360:
        sizes = page.evaluate(
            "[...document.querySelectorAll('.graph text')].filter((one) => one.getClientRects()[0])"
            ".map((one) => one.getBoundingClientRect().height)"
        )
        assert min(sizes) > 11
    live.close()


@pytest.mark.parametrize("width", [360, 1600])
def test_a_chart_that_comes_late_pushes_no_panel_away(
    flat_window: BrowserContext, served: str, width: int
) -> None:
    live = Live(flat_window, served, width, 740)
    page, held = live.page, []
    page.route("**/chart", lambda route: held.append(route))  # noqa: PLW0108  (it marks it)
    summary = page.locator("#bench summary", has_text="Measure over wires")
    page.locator("#bench").evaluate("(one) => one.scrollIntoView()")
    summary.click()
    expect(page.locator("#bench .legend").first).to_be_visible()
    chart = page.locator("#chart .chart-choices")
    expect(chart).to_be_hidden()
    before = summary.evaluate(PLACE)
    until(page, lambda: held)
    page.wait_for_timeout(300)
    assert len(held) == 1
    held[0].continue_()
    expect(chart).to_be_visible()
    assert abs(summary.evaluate(PLACE) - before) < 3
    live.close()


# From the top of the page, wherever it is scrolled to.
PLACE = "(one) => one.getBoundingClientRect().top + scrollY"


def test_the_file_shows_the_same_graphs(flat_window: BrowserContext, tmp_path: Path) -> None:
    design = settle(job_for(THREAD))
    file = tmp_path / "tap.html"
    write_page(file, design, PageContent())
    live = Live(flat_window, file.as_uri())
    shows_rake(live.page, design.figures.rake_crest)
    assert design.prediction is not None
    teeth = len(design.prediction.chips.teeth)
    assert live.page.locator("#chips-pane .bar-of-chip").count() == teeth
    for pane in ("torque", "rubbing"):
        assert live.page.locator(f"#{pane}-pane svg.graph").first.is_visible()
    assert live.page.locator("#pin, #chart-take, details.tool").count() == 0
    live.close()
