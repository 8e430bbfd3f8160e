"""The model of the served page follows the job."""

from typing import TYPE_CHECKING

import pytest

sync_api = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")

from opened import Live  # noqa: E402  (it needs what may be lacking)

if TYPE_CHECKING:
    from playwright.sync_api import BrowserContext


def test_a_change_is_followed_by_its_model_and_the_old_one_stays_dimmed(
    window: "BrowserContext", served: str
) -> None:
    live = Live(window, served)
    page = live.page
    land = page.locator(".labels .leader[data-key=land]")
    land.wait_for(state="visible")
    first, text = page.locator("#model").screenshot(), land.inner_text()
    page.evaluate(
        "() => { const state = document.querySelector('#model-pane .state');"
        "const stage = document.querySelector('#model-pane .stage'); window.told = [];"
        "new MutationObserver(() => window.told.push("
        "[state.textContent, stage.classList.contains('waiting')]))"
        ".observe(state, { childList: true }); }"
    )
    # One behind the other: the model of the last is what is shown in the end.
    for count in ("5", "2", "3"):
        live.type("flutes.count", count)
    page.wait_for_function(
        "() => document.querySelectorAll('#model-pane .told-list')[2]"
        ".querySelectorAll('li').length === 3 && !document.querySelector('#model-pane .waiting')"
    )
    page.wait_for_timeout(300)
    told = page.evaluate("window.told")
    assert told[0] == ["updating", True]
    assert told[-1] == ["", False]
    assert land.inner_text() != text
    assert page.locator("#model").screenshot() != first
    models = sum(url.endswith("/model") for url in live.asked)
    assert 2 <= models <= live.taps_asked() + 1
    live.close()


def test_what_does_not_change_the_model_asks_for_none(
    window: "BrowserContext", served: str
) -> None:
    live = Live(window, served)
    live.page.locator(".labels .leader[data-key=land]").wait_for(state="visible")
    live.page.wait_for_timeout(500)
    before = sum(url.endswith("/model") for url in live.asked)
    asked = live.taps_asked()
    height = live.page.locator("#height")
    height.evaluate(
        "(slider) => { slider.value = slider.max / 2;slider.dispatchEvent(new Event('input')); }"
    )
    live.page.wait_for_timeout(1500)
    assert live.taps_asked() > asked
    assert sum(url.endswith("/model") for url in live.asked) == before
    live.close()


@pytest.mark.parametrize("width", [360, 1600])
def test_leaders_lie_on_the_model(window: "BrowserContext", served: str, width: int) -> None:
    live = Live(window, served, width, 800)
    live.page.locator(".labels .leader:visible").first.wait_for()
    # They are drawn on a sheet of their own.
    sheets = [live.page.locator(name).bounding_box() for name in ("#model", ".leaders")]
    assert sheets[0] == sheets[1]
    live.close()
