"""The model of the served page follows the job."""

import re
import shutil
import subprocess
import sys
from collections.abc import Iterator

import pytest

sync_api = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
CHROMIUM = shutil.which("chromium")
pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="the browser chromium is not installed")


@pytest.fixture
def address() -> Iterator[str]:
    words = [sys.executable, "-m", "tapmodel", "serve", "M10", "--no-browser", "--port", "0"]
    with subprocess.Popen(words, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        found = re.search(r"http://\S+", process.stdout.readline())
        assert found is not None
        yield found[0]
        process.terminate()


def test_a_change_is_followed_by_its_model_and_the_old_one_stays_dimmed(address: str) -> None:
    with sync_api.sync_playwright() as play:
        options = ["--no-sandbox", "--enable-unsafe-swiftshader"]
        browser = play.chromium.launch(executable_path=CHROMIUM, args=options)
        page = browser.new_page(viewport={"width": 1500, "height": 1000})
        complaints: list[str] = []
        page.on("pageerror", lambda error: complaints.append(str(error)))
        page.goto(address)
        land = page.locator(".labels .leader[data-key=land]")
        land.wait_for(state="visible")
        first, text = page.locator("#model").screenshot(), land.inner_text()
        asked: list[str] = []
        page.on("request", lambda request: asked.append(request.url.rsplit("/", 1)[1]))
        page.evaluate(
            "() => { const state = document.querySelector('#model-pane .state');"
            "const stage = document.querySelector('#model-pane .stage'); window.told = [];"
            "new MutationObserver(() => window.told.push("
            "[state.textContent, stage.classList.contains('waiting')]))"
            ".observe(state, { childList: true }); }"
        )
        # Three moves one behind the other: the model of the last alone is shown.
        count = page.locator(
            "#controls input[type=range][name='flutes.count'], #controls input"
        ).all()
        field = next(
            one for one in count if "flutes.count" in _names(one) and _kind(one) != "range"
        )
        for value in ("5", "2", "4"):
            field.fill(value)
            field.press("Enter")
        page.wait_for_function(
            "text => { const word = document.querySelector('.labels .leader[data-key=land]');"
            "return word && word.innerText !== text"
            " && !document.querySelector('#model-pane .waiting')"
            " && document.querySelectorAll('.told-list')[2].querySelectorAll('li').length === 4; }",
            arg=text,
        )
        page.wait_for_timeout(300)
        told = page.evaluate("window.told")
        assert told[0] == ["updating", True]
        assert told[-1] == ["", False]
        assert asked.count("model") <= asked.count("tap")
        assert page.locator("#model").screenshot() != first
        assert complaints == []
        browser.close()


def _names(one: "sync_api.Locator") -> str:
    return " ".join(one.get_attribute(name) or "" for name in ("id", "name", "data-field"))


def _kind(one: "sync_api.Locator") -> str:
    return one.get_attribute("type") or ""
