"""The live page in a browser: what is changed, undone, kept, refused."""

import re
import time
import tomllib
from collections.abc import Generator, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from frames import until
from sweeps import in_part

from tapmodel.designing.design import settled_tap
from tapmodel.report.units import Units
from tapmodel.report.view.tap import view_of
from tapmodel.spec.job_file import job_for

sync_api = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")

from opened import Live  # noqa: E402  (it needs what may be lacking)

if TYPE_CHECKING:
    from playwright.sync_api import Browser, BrowserContext, Route

expect = sync_api.expect

CUTTER = "flutes.cutter_diameter=8"
"""It is in the mill, so it stays as the offset is changed."""

BAD = (
    ("flutes.offset", "-1,5,0", "a number"),
    ("flutes.offset", "9999", "at most 1000"),
    ("flutes.count", "4.5", "whole number"),
    ("flutes.count", "99", "at most 12"),
    ("hole.class", "6h", "small letters"),
    ("hole.material", "unobtainium", "standard name"),
    ("hole.depth", "deep", "a number, more than 0"),
    ("chamfer.angle", "95", "less than 90"),
    ("designation", "M18x", "M18x"),
    ("shop.mill", "fine", "a division and a turn"),
)
"""Fields, what is typed, and a part of what is said of it."""


@pytest.fixture
def live(flat_window: "BrowserContext", served: str) -> Iterator[Live]:
    opened = Live(flat_window, served)
    yield opened
    opened.close()


def rake(*sets: str) -> float:
    """What the design room itself makes of a job."""
    return settled_tap(job_for("M18x0.75", sets)).figures.rake_crest


def by_setting(live: Live) -> None:
    live.page.get_by_role("radio", name="offset and depth").check()
    expect(live.page.locator("#saved")).to_have_text("changed, not saved")


@contextmanager
def answer_held(live: Live) -> Generator[None]:
    """Whatever is done meanwhile is done before the page hears of its first change."""
    held: list[Route] = []
    live.page.route("**/tap", lambda route: held.append(route))  # noqa: PLW0108  (it marks it)
    yield
    live.page.wait_for_timeout(100)
    until(live.page, lambda: held)
    held[0].continue_()
    live.page.unroute("**/tap")


def test_the_offset_is_changed_and_the_rake_read(live: Live) -> None:
    by_setting(live)
    depth = live.number("flutes.depth_from_top")
    live.type("flutes.offset", "-1.5")
    expected = rake("flutes.offset=-1.5", f"flutes.depth_from_top={depth}", CUTTER)
    live.shows("flutes.rake", f"{expected:.2f}".rstrip("0").rstrip("."))
    assert expected > rake() + 4
    assert "1.500 mm" in live.figure("cutter")


def test_the_arrow_keys_move_by_a_division_of_the_dial(live: Live) -> None:
    by_setting(live)
    live.type("shop.mill", "0.05mm, 5mm a turn")
    box = live.box("flutes.offset")
    expect(live.slider("flutes.offset")).to_have_attribute("step", "0.05")
    before = live.number("flutes.offset")
    box.focus()
    live.page.keyboard.press("ArrowUp")
    live.shows("flutes.offset", f"{before + 0.05:.3f}".rstrip("0"))


def test_a_tool_that_is_chosen_anew_with_another_value_is_told(live: Live) -> None:
    told = live.page.locator("#anew")
    expect(told).to_be_hidden()
    live.type("flutes.rake", "12")
    expect(told).to_have_text(
        "With that the rules chose anew: ball-nose cutter 10\u00a0mm instead of 8\u00a0mm."
    )
    live.type("flutes.cutter_diameter", "8")
    expect(told).to_be_hidden()
    live.type("designation", "M30x2")
    live.shows("designation", "M30x2")
    live.page.locator("#units").select_option("inch")
    live.shows("hole.depth", "1.77165")
    expect(told).to_be_hidden()


def test_undo_and_redo_by_keys_and_buttons(live: Live) -> None:
    live.type("flutes.count", "3")
    live.shows("flutes.count", "3")
    live.type("flutes.rake", "12")
    expect(live.page.locator("#undo")).to_have_attribute("aria-disabled", "false")
    expect(live.page.locator("[data-state=given] #field-flutes-rake")).to_be_visible()
    live.page.locator("#undo").click()
    live.shows("flutes.rake", "8")
    live.shows("flutes.count", "3")
    live.page.keyboard.press("Control+z")
    live.shows("flutes.count", "4")
    live.page.keyboard.press("Control+Shift+Z")
    live.shows("flutes.count", "3")
    live.page.locator("#redo").click()
    live.shows("flutes.rake", "12")


def test_what_is_begun_in_a_box_stays_when_an_answer_to_another_comes(live: Live) -> None:
    with answer_held(live):
        live.type("flutes.count", "3")
        live.box("flutes.rake").fill("12")
    expect(live.page.locator("[data-state=given] #field-flutes-count")).to_be_visible()
    live.shows("flutes.rake", "12")
    live.page.keyboard.press("Enter")
    expect(live.page.locator("[data-state=given] #field-flutes-rake")).to_be_visible()


@pytest.mark.parametrize("left_by", ["Tab", "Escape"])
def test_what_is_begun_and_given_up_gives_way_to_what_holds_now(live: Live, left_by: str) -> None:
    settled = [settled_tap(job_for("M18x0.75", [f"flutes.count={count}"])) for count in (4, 3)]
    cores = [f"{design.tap.flutes.core_diameter:.4g}" for design in settled]
    assert cores[0] != cores[1]
    live.shows("flutes.core_diameter", cores[0])
    with answer_held(live):
        live.type("flutes.count", "3")
        live.box("flutes.core_diameter").press_sequentially("9")
        live.page.keyboard.press("Backspace")
    expect(live.page.locator("[data-state=given] #field-flutes-count")).to_be_visible()
    live.shows("flutes.core_diameter", cores[0])
    live.page.keyboard.press(left_by)
    live.shows("flutes.core_diameter", cores[1])


def test_classes_are_offered_where_the_family_has_them(live: Live) -> None:
    box, options = live.box("hole.class"), live.page.locator("#field-hole-class-list option")
    expect(box).to_have_attribute("list", "field-hole-class-list")
    assert [one.get_attribute("value") for one in options.all()] == ["4H", "5H", "6H", "7H", "6G"]
    live.type("designation", "1/4 BSW")
    expect(live.page.locator("#title")).to_contain_text("BSW")
    assert box.get_attribute("list") is None
    live.type("designation", "1/4-20 UNC")
    expect(box).to_have_attribute("list", "field-hole-class-list")
    assert [one.get_attribute("value") for one in options.all()] == ["1B", "2B", "3B"]


def test_keys_that_undo_in_a_box_of_a_number_leave_the_tap(live: Live) -> None:
    live.type("flutes.count", "3")
    live.shows("flutes.count", "3")
    undo = live.page.locator("#undo")
    expect(undo).to_have_attribute("aria-disabled", "false")
    live.page.locator("summary", has_text="Divide").click()
    divisions = live.page.locator("#divisions")
    divisions.press_sequentially("7")
    divisions.press("Control+z")
    live.page.wait_for_timeout(300)
    assert undo.get_attribute("aria-disabled") == "false"
    assert live.box("flutes.count").input_value() == "3"


def test_a_drawn_slider_is_undone_in_one_step_and_the_last_place_stands(live: Live) -> None:
    by_setting(live)
    before = live.number("flutes.offset")
    asked = live.taps_asked()
    live.slider("flutes.offset").evaluate(DRAWN, 200)
    live.shows("flutes.offset", "-0.02")
    expect(live.page.locator(".figure", has_text="cutter")).to_contain_text("0.020 mm")
    live.page.wait_for_timeout(300)
    assert live.taps_asked() - asked < 200
    depth = live.number("flutes.depth_from_top")
    expected = rake("flutes.offset=-0.02", f"flutes.depth_from_top={depth}", CUTTER)
    assert live.number("flutes.rake") == pytest.approx(expected, abs=0.006)
    live.page.locator("#undo").click()
    live.shows("flutes.offset", f"{before:.3f}")


DRAWN = """async (slider, count) => {
  for (let n = 1; n <= count; n++) {
    slider.value = String(-2 - 0.02 + n * 0.01);
    slider.dispatchEvent(new Event("input", { bubbles: true }));
    if (n % 5 === 0) await new Promise((rest) => setTimeout(rest, 5));
  }
}"""


def test_units_follow_the_thread_until_somebody_chooses(live: Live) -> None:
    chosen = live.page.locator("#units")
    expect(chosen).to_have_value("mm")
    live.type("designation", "3/8-16 UNC")
    expect(chosen).to_have_value("both")
    chosen.select_option("inch")
    live.type("designation", "M10")
    live.shows("hole.depth", "0.59055")
    expect(chosen).to_have_value("inch")


def test_nothing_is_lost_when_the_page_is_loaded_again(live: Live) -> None:
    live.type("flutes.count", "3")
    live.shows("flutes.count", "3")
    live.page.locator("#units").select_option("inch")
    live.shows("hole.depth", "1.06299")
    live.type("hole.depth", "oops")
    expect(live.page.locator("#field-hole-depth-wrong")).to_be_visible()
    # The page's policy lets no text wait there itself.
    state = "'hole.depth' in (history.state?.refused ?? {})"
    until(live.page, lambda: live.page.evaluate(state))
    live.page.reload()
    live.ready()
    live.shows("flutes.count", "3")
    live.shows("hole.depth", "oops")
    expect(live.page.locator("#field-hole-depth-wrong")).to_contain_text("a number, more than 0")
    expect(live.page.locator(".figure", has_text="tap drill")).to_contain_text(" in")
    expect(live.page.locator("#saved")).to_have_text("changed, not saved")


def test_steps_are_gone_back_and_forth_after_the_page_is_loaded_again(live: Live) -> None:
    for rake in ("9", "10"):
        live.type("flutes.rake", rake)
        live.shows("flutes.rake", rake)
    live.page.locator("#undo").click()
    # The address is written a moment later, at most three times a second.
    state = "history.state?.steps?.jobs.length === 3 && history.state.steps.place === 1"
    until(live.page, lambda: live.page.evaluate(state))
    live.page.reload()
    live.ready()
    live.page.locator("#redo").click()
    live.shows("flutes.rake", "10")
    for rake in ("9", "8"):
        live.page.locator("#undo").click()
        live.shows("flutes.rake", rake)
    expect(live.page.locator("#undo")).to_have_attribute("aria-disabled", "true")


def test_back_to_what_is_recommended_with_its_reason(live: Live) -> None:
    live.type("flutes.rake", "12")
    row = live.page.locator(".field", has=live.page.locator("#field-flutes-rake"))
    back = row.locator(".back")
    expect(back).to_have_text("back to 8°")
    row.locator(".state").click()
    expect(row.locator(".why")).to_contain_text("low-carbon steel")
    back.click()
    live.shows("flutes.rake", "8")
    expect(row.locator(".state")).to_have_text("recommended")


def test_what_is_pressed_stands_and_goes_back_by_its_own_button(live: Live) -> None:
    page = live.page
    blind = page.locator(".field.words", has_text="hole is")
    page.get_by_role("radio", name="blind").check()
    expect(blind).to_have_attribute("data-state", "given")
    live.box("blank.shank_must_pass").check()
    passes = page.locator(".field.flag", has=page.locator("#field-blank-shank_must_pass"))
    expect(passes).to_have_attribute("data-state", "given")
    assert page.get_by_role("radio", name="blind").is_checked()
    blind.locator(".back").click()
    expect(page.get_by_role("radio", name="through")).to_be_checked()
    expect(page.locator("#field-blank-shank_must_pass")).to_be_checked()
    page.locator("#undo").click()
    page.locator("#undo").click()
    expect(page.locator("#field-blank-shank_must_pass")).not_to_be_checked()
    expect(page.get_by_role("radio", name="blind")).to_be_checked()


def test_a_cure_is_applied_by_one_press_and_undone_as_one(
    flat_window: "BrowserContext", served: str
) -> None:
    live = Live(flat_window, served)
    live.type("designation", "Tr16x4")
    expect(live.page.locator("#title")).to_contain_text("Tr16x4")
    before = [found.code for found in found_of("Tr16x4")]
    assert "tap-overloaded" in before
    cure = live.page.locator(".found > li", has_text="tap-overloaded").locator(".cure").first
    assert "core" in cure.inner_text()
    assert "thread" in cure.inner_text()
    cure.click()
    expect(live.page.locator(".found > li", has_text="tap-overloaded")).to_have_count(0)
    assert "Tr16x4" in live.page.locator("#title").inner_text()
    live.page.locator("#undo").click()
    expect(live.page.locator(".found > li", has_text="tap-overloaded")).to_have_count(1)
    live.close()


def found_of(designation: str):
    return view_of(settled_tap(job_for(designation)), Units.MM).findings


def test_ten_bad_inputs_give_messages_and_lose_nothing(live: Live) -> None:
    drill = live.figure("tap drill")
    for field, typed, told in BAD:
        live.type(field, typed)
        wrong = live.page.locator(f"#field-{field.replace('.', '-')}-wrong")
        expect(wrong).to_contain_text(told)
        expect(live.page.locator("#notice")).to_contain_text(told)
        assert live.box(field).input_value() == typed
        assert live.box(field).get_attribute("aria-invalid") == "true"
        assert live.page.locator("main").get_attribute("class") == "stale"
        assert live.figure("tap drill") == drill
    assert live.page.locator("#saved").inner_text() == ""
    live.page.locator("#field-hole-depth").fill("20")
    live.page.keyboard.press("Enter")
    expect(live.page.locator("main")).not_to_have_class("stale")
    expect(live.page.locator("#notice")).to_be_hidden()
    # What is wrong elsewhere is still told there.
    expect(live.page.locator("#field-hole-material-wrong")).to_be_visible()


def test_two_tabs_do_not_corrupt_each_other(flat_window: "BrowserContext", served: str) -> None:
    one, other = Live(flat_window, served), Live(flat_window, served)
    one.type("flutes.count", "3")
    other.type("flutes.rake", "12")
    one.shows("flutes.count", "3")
    expect(other.page.locator("[data-state=given] #field-flutes-rake")).to_be_visible()
    other.shows("flutes.count", "4")
    one.shows("flutes.rake", "8")
    one.close()
    other.close()


def test_a_job_file_is_saved_and_opened_again(live: Live, tmp_path: Path) -> None:
    live.type("flutes.count", "3")
    live.shows("flutes.count", "3")
    with live.page.expect_download() as saving:
        live.page.locator("#save").click()
    path = tmp_path / saving.value.suggested_filename
    saving.value.save_as(path)
    assert path.suffix == ".toml"
    expect(live.page.locator("#saved")).to_have_text("")
    live.type("flutes.count", "6")
    live.shows("flutes.count", "6")
    live.page.locator("#file").set_input_files(path)
    live.shows("flutes.count", "3")
    expect(live.page.locator("#saved")).to_have_text("")


def test_the_keyboard_skips_to_the_controls(live: Live) -> None:
    live.page.keyboard.press("Tab")
    expect(live.page.locator(".skip")).to_be_in_viewport()
    live.page.keyboard.press("Enter")
    expect(live.page.locator("#controls")).to_be_focused()
    # In the address stands the job, which a link within the page must not take away.
    assert not live.page.url.endswith("#controls")


def test_what_is_saved_waits_for_what_was_typed(live: Live, tmp_path: Path) -> None:
    def late(route: "Route") -> None:
        time.sleep(0.4)
        route.continue_()

    live.page.route("**/tap", late)
    live.type("flutes.count", "3")
    with live.page.expect_download() as saving:
        live.page.locator("#save").click()
    path = tmp_path / saving.value.suggested_filename
    saving.value.save_as(path)
    assert tomllib.loads(path.read_text())["flutes"]["count"] == 3
    expect(live.page.locator("#saved")).to_have_text("")


def test_leaving_asks_only_while_something_is_not_saved(
    flat_window: "BrowserContext", served: str
) -> None:
    live = Live(flat_window, served)
    asked: list[str] = []
    live.page.on("dialog", lambda dialog: asked.append(dialog.type))
    live.page.locator("h1").click()
    live.page.goto("about:blank")
    assert asked == []
    live.page.goto(served)
    live.ready()
    live.type("flutes.count", "3")
    live.shows("flutes.count", "3")
    live.page.goto("about:blank")
    assert asked == ["beforeunload"]
    live.close()


@pytest.mark.parametrize("width", [360, 800, 1600])
def test_nothing_is_cut_off(flat_window: "BrowserContext", served: str, width: int) -> None:
    live = Live(flat_window, served, width, 800)
    assert live.page.evaluate("document.scrollingElement.scrollWidth") <= width
    if width < 992:
        # The button of the drawer takes a bar of its own, from which the page keeps away.
        bar = live.page.locator("#drawer").bounding_box()
        assert bar is not None
        assert (bar["x"], bar["width"], bar["y"] + bar["height"]) == (0, width, 800)
        live.page.evaluate("scrollTo({top: 1e6, behavior: 'instant'})")
        foot = live.page.locator("footer p").last.bounding_box()
        assert foot is not None
        assert foot["y"] + foot["height"] <= bar["y"]
        live.page.evaluate("scrollTo({top: 0, behavior: 'instant'})")
        assert not live.page.locator("#controls").is_visible()
        live.page.get_by_role("button", name="Change the tap").click()
        assert live.page.locator("#controls").is_visible()
        assert live.page.evaluate("document.scrollingElement.scrollWidth") <= width
        live.page.locator("#field-hole-depth").focus()
        live.page.keyboard.press("Escape")
        assert not live.page.locator("#controls").is_visible()
    over = live.page.evaluate(OVER)
    assert over == []
    live.close()


@pytest.mark.parametrize("width", in_part([360, 1600]))
def test_nothing_is_cut_off_once_all_is_there(
    flat_window: "BrowserContext", served: str, width: int
) -> None:
    live = Live(flat_window, served, width, 800)
    if width < 992:
        live.page.get_by_role("button", name="Change the tap").click()
    live.type("designation", "Tr16x8(P4)LH")
    expect(live.page.locator("#saved")).to_contain_text("not saved")
    expect(live.page.locator("#under")).to_contain_text("left hand")
    if width < 992:
        live.page.get_by_role("button", name="Close the controls").click()
    # Nobody has looked there: they come all the same, as paper wants them.
    expect(live.page.locator("#drawings .card svg").first).to_be_attached(timeout=90_000)
    live.page.locator("#chart").scroll_into_view_if_needed()
    expect(live.page.locator("#chart-take")).to_be_visible()
    assert live.page.locator("#chart path.plot-1").count() == 2
    assert live.page.evaluate("document.scrollingElement.scrollWidth") <= width
    assert live.page.evaluate(OVER) == []
    assert live.page.evaluate(SCROLLED) == []
    live.page.get_by_text("All chapters").click()
    live.page.locator("#chapter-list a").last.click()
    live.close()


# Whether an element is what is met in its middle.
SEEN = """(name) => {
  const one = document.querySelector(name);
  const { left, top, width, height } = one.getBoundingClientRect();
  return one.contains(document.elementFromPoint(left + width / 2, top + height / 2));
}"""


def test_a_job_file_is_dropped_on_the_page(live: Live) -> None:
    dropped = live.page.evaluate_handle(DROPPED, 'designation = "M10"\n[flutes]\ncount = 2\n')
    live.page.dispatch_event("main", "dragover", {"dataTransfer": dropped})
    assert "drop" in (live.page.locator("body").get_attribute("class") or "")
    live.page.dispatch_event("main", "drop", {"dataTransfer": dropped})
    live.shows("flutes.count", "2")
    live.shows("designation", "M10")
    assert live.page.locator("#saved").inner_text() == ""
    assert "drop" not in (live.page.locator("body").get_attribute("class") or "")


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("flutes = many\n", "line 1: 'flutes = many' cannot be used"),
        ("[flutes]\nrake = 99\n", "“hole: thread” is needed"),
        ('designation = "M10"\n[flutes]\nrake = 99\n', "“flutes: rake at the crest”: 99 cannot"),
        ('designation = "M10"\n[flutes]\noffset = 4.9\n', "With a core of "),
    ],
)
def test_a_file_that_is_refused_leaves_the_page_as_it_was(live: Live, text: str, told: str) -> None:
    drill = live.figure("tap drill")
    wrong = live.page.evaluate_handle(DROPPED, text)
    live.page.dispatch_event("main", "drop", {"dataTransfer": wrong})
    notice = live.page.locator("#notice")
    expect(notice).to_contain_text(re.compile(rf"^job\.toml was not opened: .*{told}"))
    expect(notice.locator(".still")).to_be_hidden()
    assert "stale" not in (live.page.locator("main").get_attribute("class") or "")
    assert live.page.locator("[aria-invalid=true]").count() == 0
    assert live.figure("tap drill") == drill
    live.type("flutes.count", "3")
    live.shows("flutes.count", "3")
    expect(notice).to_be_hidden()


def test_what_is_no_job_file_is_refused_without_its_lines(
    flat_browser: "Browser", served: str
) -> None:
    # A window of its own, whose time stands still: it passes by what is told here alone, however
    # slow the machine is.
    window = flat_browser.new_context()
    live = Live(window, served)
    live.page.clock.install(time="2026-01-01T12:00:00")
    live.page.clock.pause_at("2026-01-01T13:00:00")
    step = live.page.evaluate_handle(DROPPED.replace("job.toml", "tap.step"), "ISO-10303-21;\n")
    live.page.dispatch_event("main", "drop", {"dataTransfer": step})
    told = "tap.step was not opened: a job is a .toml file, such as “Save job file” writes"
    text = live.page.locator("#notice [role=alert]")
    expect(text).to_have_text(told)
    close = live.page.get_by_role("button", name="Close the message")
    live.page.clock.fast_forward(9_900)
    assert live.page.evaluate(SEEN, "#notice")
    expect(close).to_be_visible()
    live.page.clock.fast_forward(200)
    # It covers nothing any more, and is still there to be read out.
    assert not live.page.evaluate(SEEN, "#notice")
    expect(close).to_be_hidden()
    expect(text).to_have_text(told)
    expect(live.page.get_by_role("alert").filter(has_text="tap.step")).to_have_count(1)
    live.close()
    window.close()


def test_a_decimal_comma_is_taken_as_a_point(live: Live) -> None:
    live.type("flutes.rake", "7,250")
    live.shows("flutes.rake", "7.25")
    expect(live.page.locator("#notice")).to_be_hidden()
    live.page.get_by_text("Measure over wires").click()
    live.page.locator("#wires-measured").fill("18,1")
    expect(live.page.locator("#bench .judged").first).to_be_visible()


DROPPED = """(text) => {
  const carried = new DataTransfer();
  carried.items.add(new File([text], "job.toml", { type: "application/toml" }));
  return carried;
}"""


def test_what_is_changed_while_nobody_answers_stands_once_somebody_does(live: Live) -> None:
    link = live.page.locator("#link")
    assert not link.is_visible()
    live.context.set_offline(offline=True)
    live.type("flutes.count", "3")
    expect(link).to_contain_text("still running")
    live.context.set_offline(offline=False)
    expect(live.page.locator("[data-state=given] #field-flutes-count")).to_have_value("3")
    expect(link).to_be_hidden()


def test_what_a_busy_program_had_no_time_for_stands_once_it_has(live: Live) -> None:
    link = live.page.locator("#link")
    refused: list[str] = []

    def busy(route: "Route") -> None:
        refused.append(route.request.url)
        route.fulfill(status=429, json={})

    # Not even the look whether it has time again is answered.
    live.page.route(re.compile("/(tap|build)$"), busy)
    live.type("flutes.count", "3")
    expect(link).to_have_text("The program is busy; your change is on its way.")
    until(live.page, lambda: sum(url.endswith("/tap") for url in refused) >= 6)
    until(live.page, lambda: refused[-1].endswith("build"))
    live.page.unroute(re.compile("/(tap|build)$"))
    expect(live.page.locator("[data-state=given] #field-flutes-count")).to_have_value("3")
    expect(link).to_be_hidden()


SCROLLED = """[...document.querySelectorAll('.columns .scroll')]
  .filter((one) => one.scrollWidth > one.clientWidth + 1).map((one) => one.innerText)"""
OVER = """() => [...document.querySelectorAll("main *, header *, aside *")]
  .filter((node) => !node.closest(".scroll, nav, svg"))
  .filter((node) => node.getBoundingClientRect().right > innerWidth + 1)
  .map((node) => node.outerHTML.slice(0, 80))"""


def test_tables_and_drawings_come_when_they_are_looked_at(live: Live) -> None:
    live.type("flutes.count", "3")
    live.shows("flutes.count", "3")
    live.page.locator("#papers").scroll_into_view_if_needed()
    drawings = live.page.locator("#drawings .card svg")
    expect(drawings.first).to_be_visible(timeout=90_000)
    assert drawings.count() >= 6
    expect(live.page.locator("#milling")).to_contain_text("ball-nose")
    expect(live.page.locator("#choices")).to_contain_text("flutes.")
    live.page.get_by_role("button", name="Full size: Side view").click()
    assert live.page.locator("#full svg").is_visible()
    live.page.keyboard.press("Escape")
    assert not live.page.locator("#full").is_visible()


def test_paper_says_what_is_not_on_it(live: Live) -> None:
    page = live.page
    told = "getComputedStyle(document.getElementById('papers'), '::before').content"
    assert not page.locator(".on-paper").is_visible()
    page.emulate_media(media="print")
    assert "not there yet" in page.evaluate(told)
    assert "the chart" in page.locator(".on-paper").inner_text()
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    expect(page.locator("#papers")).to_have_attribute("aria-busy", "false", timeout=90_000)
    assert page.evaluate(told) == "none"
    for part in ("milling", "choices", "drawings"):
        assert page.locator(f"#{part}").is_visible()
    # What the lowest button takes on a screen would begin a page of paper.
    page.set_viewport_size({"width": 794, "height": 1000})
    assert page.evaluate("getComputedStyle(document.body).paddingBottom") == "0px"


def test_papers_of_another_tap_say_so_until_they_are_there(live: Live) -> None:
    page = live.page
    told = "getComputedStyle(document.getElementById('papers'), '::before').content"
    refused: list[str] = []

    def too_late(route: "Route") -> None:
        refused.append(route.request.url)
        route.fulfill(status=503, json={"error": {"message": "no answer", "field": ""}})

    page.route("**/papers", too_late)
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    until(page, lambda: refused)
    page.wait_for_timeout(300)
    page.unroute("**/papers")
    page.emulate_media(media="print")
    assert "not there yet" in page.evaluate(told)
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    expect(page.locator("#papers")).to_have_attribute("aria-busy", "false", timeout=90_000)
    assert page.evaluate(told) == "none"


def test_back_and_forth_between_links_keeps_what_is_not_saved(live: Live) -> None:
    saved = live.page.locator("#saved")
    live.type("flutes.count", "5")
    expect(saved).to_have_text("changed, not saved")
    kept = live.page.wait_for_function(
        "() => atob(location.hash.slice(5)).includes('count') && location.hash"
    ).json_value()
    live.page.evaluate(PASTED, {"designation": "M8"})
    expect(live.page.locator("#title")).to_contain_text("M8")
    expect(saved).to_have_text("")
    live.page.go_back()
    live.shows("flutes.count", "5")
    expect(live.page.locator("#title")).to_contain_text("M18")
    expect(saved).to_have_text("changed, not saved")
    assert live.page.evaluate("location.hash") == kept
    live.page.go_forward()
    expect(live.page.locator("#title")).to_contain_text("M8x1.25")
    expect(saved).to_have_text("")


PASTED = """(job) => {
  location.hash = "job=" + btoa(JSON.stringify({ job, units: null })).replaceAll("=", "");
}"""


def test_who_hears_the_page_hears_no_ornament(live: Live) -> None:
    heard = live.page.locator("#controls").aria_snapshot()
    assert 'heading "Flutes"' in heard
    assert "›" not in heard
    # Texts beside each other are parted.
    rubs = live.page.locator("#rubbing-pane .surfaces")
    assert re.search(r"rubs along [\d.]+ mm of [\d.]+ mm, ", rubs.aria_snapshot())
