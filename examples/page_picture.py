"""Makes the picture of the live page that README.md shows.

Run from the root of the repository: python examples/page_picture.py
"""

import shutil
import subprocess
import sys
from pathlib import Path

from playwright.sync_api import sync_playwright

PICTURE = Path(__file__).parent / "pictures" / "page.png"
THREAD = "Tr16x4"
"""It needs two cures, and its flutes are deep enough to be seen."""
SIZE = {"width": 1600, "height": 1000}
SETTLES = 2_000
"""Until model and cures are there [ms]."""


def main() -> None:
    """Serve the page, give its flutes by offset and depth, and keep what is seen."""
    command = [sys.executable, "-m", "tapmodel", "serve", THREAD, "--no-browser"]
    running = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)  # noqa: S603  (itself)
    try:
        if running.stdout is None:
            return
        address = running.stdout.readline().strip()
        with sync_playwright() as play:
            options = ["--no-sandbox", "--enable-unsafe-swiftshader"]
            browser = play.chromium.launch(executable_path=shutil.which("chromium"), args=options)
            page = browser.new_page(viewport=SIZE, color_scheme="light")
            page.goto(address)
            page.wait_for_selector("html[data-ready=yes]", state="attached")
            page.get_by_role("radio", name="offset and depth").check()
            page.locator("[data-state=given] #field-flutes-offset").wait_for()
            page.wait_for_timeout(SETTLES)
            page.locator("#model-pane").get_by_text("updating").wait_for(state="hidden")
            page.wait_for_timeout(SETTLES)
            page.locator("#controls").evaluate("(place) => { place.scrollTop = 320; }")
            page.screenshot(path=PICTURE)
            browser.close()
    finally:
        running.terminate()
        running.wait(10)


if __name__ == "__main__":
    main()
