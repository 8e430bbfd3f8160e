"""Build and verify on the page: followed, stopped, fetched, by the keyboard alone."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from served_process import Running, start

sync_api = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
expect = sync_api.expect
expect.set_options(timeout=30_000)

CHROMIUM = shutil.which("chromium")
pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="the browser chromium is not installed")

LONG = 120_000
"""For a build on a machine that does much else [ms]."""


@pytest.fixture(scope="module")
def running(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Running]:
    small = ("--set", "blank.thread_length=4", "--set", "name=small")
    started = start(tmp_path_factory.mktemp("served"), "M4x0.7", *small)
    yield started
    started.process.kill()
    started.process.communicate()


@pytest.fixture(scope="module")
def browser() -> Iterator["sync_api.Browser"]:
    with sync_api.sync_playwright() as play:
        options = ["--no-sandbox", "--enable-unsafe-swiftshader"]
        started = play.chromium.launch(executable_path=CHROMIUM, args=options)
        yield started
        started.close()


@pytest.fixture
def page(browser: "sync_api.Browser", running: Running) -> Iterator["sync_api.Page"]:
    complaints: list[str] = []
    context = browser.new_context(viewport={"width": 800, "height": 900})
    context.set_default_timeout(20_000)
    opened = context.new_page()
    opened.on("pageerror", lambda error: complaints.append(str(error)))
    opened.on("dialog", lambda dialog: dialog.accept())
    opened.goto(running.link)
    yield opened
    context.close()
    assert complaints == []


def _only(page: "sync_api.Page", *kinds: str) -> None:
    """Ask for these kinds of files and no others."""
    boxes = page.locator("#build .kinds input")
    expect(boxes).not_to_have_count(0)
    for box in boxes.all():
        box.set_checked(box.get_attribute("value") in kinds)


def _button(page: "sync_api.Page", name: str) -> "sync_api.Locator":
    return page.get_by_role("button", name=name, exact=True)


def _flutes(page: "sync_api.Page", number: str) -> None:
    """Give the tap so many flutes, in the drawer of a narrow page."""
    _button(page, "Change the tap").click()
    page.locator("#field-flutes-count").fill(number)
    page.keyboard.press("Enter")
    _button(page, "Close the controls").click()


def test_papers_are_written_and_fetched_by_the_keyboard(page: "sync_api.Page") -> None:
    _only(page, "job")
    _button(page, "Write the papers").focus()
    page.keyboard.press("Enter")
    expect(page.locator("#build .verdict")).to_contain_text("no solid was built")
    link = page.locator("#build .files a")
    expect(link).to_have_count(1)
    with page.expect_download() as download:
        link.first.press("Enter")
    assert download.value.suggested_filename == "small.toml"
    assert 'designation = "M4x0.7"' in Path(download.value.path()).read_text()


def test_nothing_is_asked_for_without_a_kind_of_file(page: "sync_api.Page") -> None:
    _only(page)
    expect(_button(page, "Write the papers")).to_be_disabled()


def test_a_build_is_followed_and_stopped_and_another_page_told(page: "sync_api.Page") -> None:
    _only(page, "step")
    build, stop = _button(page, "Build and verify"), _button(page, "Stop")
    build.focus()
    page.keyboard.press("Enter")
    bar = page.get_by_role("progressbar", name="build")
    expect(bar).to_be_visible()
    expect(stop).to_be_focused()
    expect(page.locator("#build .running [role=status]")).to_have_text("getting ready")
    other = page.context.new_page()
    other.goto(page.url)
    _only(other, "step")
    _button(other, "Build and verify").click()
    expect(other.locator("#build [role=alert]")).to_contain_text("small is being built")
    other.close()
    page.keyboard.press("Enter")
    expect(bar).to_be_hidden()
    expect(build).to_be_focused()
    expect(page.locator("#build [role=alert]")).to_be_empty()


def test_a_build_is_found_again_when_the_page_is_loaded_anew(page: "sync_api.Page") -> None:
    _only(page, "step")
    _button(page, "Build and verify").click()
    expect(_button(page, "Stop")).to_be_visible()
    page.reload()
    expect(page.locator("#build .verdict")).to_contain_text("Proved", timeout=LONG)
    assert "1 closed solid with no hole" in page.locator("#build .proof").inner_text()
    assert page.locator("#build .files a").all_inner_texts() == ["small.step", "record.json"]
    with page.expect_download() as download:
        page.get_by_role("link", name="small.step").click()
    assert Path(download.value.path()).read_bytes().startswith(b"ISO-10303-21;")


def test_a_build_is_stopped_from_another_page(page: "sync_api.Page") -> None:
    _only(page, "step")
    _button(page, "Build and verify").click()
    expect(_button(page, "Stop")).to_be_visible()
    other = page.context.new_page()
    other.goto(page.url)
    _only(other, "step")
    _button(other, "Build and verify").click()
    expect(other.locator("#build [role=alert]")).to_contain_text("small is being built")
    _button(other, "Stop").click()
    expect(_button(other, "Build and verify")).to_be_visible()
    expect(other.locator("#build [role=alert]")).to_be_empty()
    other.close()
    expect(page.locator("#build [role=alert]")).to_contain_text("not kept any more")
    expect(_button(page, "Build and verify")).to_be_visible()


def test_a_page_that_is_loaded_anew_knows_what_was_built_and_wanted(page: "sync_api.Page") -> None:
    _only(page, "job")
    _button(page, "Write the papers").click()
    verdict, changed = page.locator("#build .verdict"), page.locator("#build .changed")
    expect(verdict).to_contain_text("no solid was built")
    expect(changed).to_be_hidden()
    _flutes(page, "3")
    expect(changed).to_be_visible()
    page.wait_for_function("() => atob(location.hash.slice(5)).includes('count')")
    page.reload()
    expect(verdict).to_contain_text("no solid was built")
    expect(changed).to_be_visible()
    expect(page.locator("#build .kinds input:checked")).to_have_count(1)
    _flutes(page, "")
    expect(changed).to_be_hidden()
