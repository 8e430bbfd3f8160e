"""When a browser has drawn what it was told to."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Page


def until_drawn(page: "Page") -> None:
    """Wait until what was done is drawn, which takes a frame, however long one takes."""
    page.evaluate(
        "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"
    )
