"""When a browser has done what it was told to, on a machine that does much else."""

import time
from collections.abc import Callable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Page


def until_drawn(page: "Page") -> None:
    """Wait until what was done is drawn, which takes a frame, however long one takes."""
    page.evaluate(
        "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"
    )


def until(page: "Page", done: Callable[[], object]) -> None:
    """Look again and again until it is done; the browser goes on between the looks."""
    latest = time.monotonic() + 60
    while not done():
        assert time.monotonic() < latest, "it was not done within a minute"
        page.wait_for_timeout(50)
