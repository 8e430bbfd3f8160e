"""How soon the live page shows a change: from the input to the drawn frame, in a real browser.

Run from the root: python tests/benchmarks/page.py [DESIGNATION ...]. Wanted: 50 ms in the median.
"""

import json
import shutil
import statistics
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Browser, Page, sync_playwright

WANTED = 50.0
"""From input to redraw [ms]."""
MOVES = 60
THREADS = ("M18x0.75", "Tr16x4")

# One move after the other, each waited for until the frame with its answer is drawn. The server's
# share is from the request to the last byte of its answer, as the browser's own clock has it.
MEASURED = """async ({ field, low, step, count }) => {
  const box = document.getElementById(field), row = box.closest(".field");
  const slider = row.querySelector("input[type=range]");
  const rake = document.getElementById("field-flutes-rake");
  const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)));
  const told = [];
  for (let n = 0; n < count; n++) {
    await new Promise((rest) => setTimeout(rest, 30));
    performance.clearResourceTimings();
    const before = rake.value, begun = performance.now();
    slider.value = String(low + n * step);
    slider.dispatchEvent(new Event("input", { bubbles: true }));
    while (rake.value === before && performance.now() - begun < 5000)
      await new Promise((rest) => setTimeout(rest, 0));
    const drawn = performance.now();
    await frame();
    const all = performance.getEntriesByType("resource");
    const asked = all.find(({ name }) => name.endsWith("/tap"));
    const server = asked ? asked.responseEnd - asked.startTime : 0;
    const ended = performance.now();
    told.push({ all: ended - begun, server, script: drawn - begun - server, frame: ended - drawn });
  }
  return told;
}"""


@contextmanager
def served(designation: str) -> Iterator[str]:
    """The address of a page that a process of its own serves."""
    command = [sys.executable, "-m", "tapmodel", "serve", designation, "--no-browser"]
    running = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
    try:
        assert running.stdout is not None
        yield running.stdout.readline().strip()
    finally:
        running.terminate()
        running.wait(10)


def opened(browser: Browser, address: str) -> Page:
    """The page, its flutes given by offset and depth."""
    page = browser.new_page(viewport={"width": 1600, "height": 1000})
    page.goto(address)
    page.wait_for_selector("html[data-ready=yes]", state="attached")
    page.get_by_role("radio", name="offset and depth").check()
    page.locator("[data-state=given] #field-flutes-offset").wait_for()
    time.sleep(2)
    return page


def model_time(page: Page) -> float:
    """Seconds from a change to a drawn model of it."""
    told = """async () => {
      const pane = document.getElementById("model-pane");
      const made = () => !pane.textContent.includes("updating");
      const until = async (so) => {
        while (!so() && performance.now() - begun < 20000)
          await new Promise((rest) => setTimeout(rest, 2));
      };
      const begun = performance.now(), box = document.getElementById("field-flutes-count");
      box.value = box.value === "4" ? "3" : "4";
      box.dispatchEvent(new Event("change"));
      await until(() => !made());
      await until(made);
      return (performance.now() - begun) / 1000;
    }"""
    return float(page.evaluate(told))


def tell(designation: str, moves: list[dict[str, float]]) -> None:
    """One line for each part."""
    print(f"{designation}: {len(moves)} moves of the offset [ms]")
    for part in ("all", "server", "script", "frame"):
        times = sorted(move[part] for move in moves)
        p95 = times[int(0.95 * (len(times) - 1))]
        wanted = f"  wanted {WANTED:.0f}" if part == "all" else ""
        print(f"  {part:7s} median {statistics.median(times):6.1f}  p95 {p95:6.1f}{wanted}")


def main(designations: list[str]) -> None:
    """Measure every thread and tell it."""
    with sync_playwright() as play:
        options = ["--no-sandbox", "--enable-unsafe-swiftshader"]
        browser = play.chromium.launch(executable_path=shutil.which("chromium"), args=options)
        for designation in designations:
            with served(designation) as address:
                page = opened(browser, address)
                low = float(page.locator("#field-flutes-offset").input_value())
                asked = {"field": "field-flutes-offset", "low": low, "step": 0.02, "count": MOVES}
                moves = json.loads(json.dumps(page.evaluate(MEASURED, asked)))
                tell(designation, moves[5:])
                model = model_time(page)
                print(
                    "  model   not told"
                    if model is None
                    else f"  model   {model:.2f} s, wanted 0.5"
                )
                page.close()
        browser.close()


if __name__ == "__main__":
    main(sys.argv[1:] or list(THREADS))
