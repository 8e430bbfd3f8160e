"""Whoever sees, hears or points otherwise: what the checker axe finds of both lives."""

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from sweeps import in_part

from tapmodel.designing.design import settled_tap
from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.page.solid import Model
from tapmodel.report.page.write import PageContent, write_page
from tapmodel.spec.job_file import job_for

pytest.importorskip("playwright.sync_api", reason="playwright is not installed")

from opened import Live

if TYPE_CHECKING:
    from playwright.sync_api import Browser, BrowserContext

GRAVE = {"serious", "critical"}


def grave(live: Live, axe: str) -> list[str]:
    """What is grave, with the elements it is found at."""
    live.page.evaluate(f"(() => {{ {axe} }})()")
    found = live.page.evaluate("axe.run(document, { resultTypes: ['violations'] })")
    return [
        f"{one['id']}: {node['html'][:120]}"
        for one in found["violations"]
        if one["impact"] in GRAVE
        for node in one["nodes"]
    ]


@pytest.fixture(scope="module")
def axe(node_modules: Path) -> str:
    return (node_modules / "axe-core" / "axe.min.js").read_text()


@pytest.fixture(scope="module", params=["light", "dark"])
def lit(browser: "Browser", request: pytest.FixtureRequest) -> "BrowserContext":
    """Windows in both schemes. The checker is put in, which the page's policy forbids to others."""
    return browser.new_context(color_scheme=request.param, bypass_csp=True)


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    design = settled_tap(job_for("Tr16x4"))
    mesh = preview_mesh(design.tap)
    few = dict(list(all_drawings(design).items())[:1])
    path = tmp_path_factory.mktemp("file") / "tap.html"
    write_page(path, design, PageContent(few, Model(mesh.vertices, mesh.triangles, "Preview")))
    return path


CASES = in_part([("light", 360), ("dark", 360), ("dark", 1600), ("light", 1600)])


@pytest.mark.parametrize(("lit", "width"), CASES, indirect=["lit"])
def test_the_live_page(lit: "BrowserContext", served: str, axe: str, width: int) -> None:
    live = Live(lit, served, width)
    if width < 992:
        live.page.locator("#drawer").click()
    else:
        live.type("designation", "Tr16x4")
    opened = "document.querySelectorAll('details.group').forEach((group) => { group.open = true; })"
    live.page.evaluate(opened)
    live.page.wait_for_timeout(700)
    assert grave(live, axe) == []
    live.close()


def test_the_file(lit: "BrowserContext", file: Path, axe: str) -> None:
    live = Live(lit, file.as_uri())
    assert grave(live, axe) == []
    live.close()
