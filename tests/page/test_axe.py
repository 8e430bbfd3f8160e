"""Whoever sees, hears or points otherwise: what the checker axe finds of both lives."""

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from tapmodel.designing.design import design_tap
from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.page.solid import Model
from tapmodel.report.page.write import PageContent, write_page
from tapmodel.spec.job_file import job_for

pytest.importorskip("playwright.sync_api", reason="playwright is not installed")

from opened import Live

if TYPE_CHECKING:
    from playwright.sync_api import Browser

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


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 1600])
def test_the_live_page(browser: "Browser", served: str, axe: str, scheme: str, width: int) -> None:
    size = {"width": width, "height": 900}
    # The checker is put into the page, which its policy forbids to everybody.
    live = Live(browser, served, color_scheme=scheme, viewport=size, bypass_csp=True)
    if width < 992:
        live.page.locator("#drawer").click()
    else:
        live.type("designation", "Tr16x4")
    opened = "document.querySelectorAll('details.group').forEach((group) => { group.open = true; })"
    live.page.evaluate(opened)
    live.page.wait_for_timeout(700)
    assert grave(live, axe) == []
    live.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_file(browser: "Browser", tmp_path: Path, axe: str, scheme: str) -> None:
    design = design_tap(job_for("Tr16x4"))
    mesh = preview_mesh(design.tap)
    few = dict(list(all_drawings(design).items())[:1])
    path = tmp_path / "tap.html"
    write_page(path, design, PageContent(few, Model(mesh.vertices, mesh.triangles, "Preview")))
    live = Live(browser, path.as_uri(), color_scheme=scheme, bypass_csp=True)
    assert grave(live, axe) == []
    live.close()
