"""The script of the page: its types, its bundle, and what needs no browser."""

import json
import re
from pathlib import Path

from running import Run

SCRIPT = Path(__file__).parents[2] / "tapmodel" / "report" / "page" / "script"
BUILT = SCRIPT.parent / "built"
TESTS = Path(__file__).parent / "script"


def test_types_hold(run_node: Run, node_modules: Path) -> None:
    run_node(str(node_modules / "typescript" / "bin" / "tsc"), "--project", "tsconfig.json")


def test_the_bundle_is_that_of_the_modules(
    run_node: Run, node_modules: Path, tmp_path: Path
) -> None:
    words = json.loads((SCRIPT / "package.json").read_text())["scripts"]["build"].split()
    assert words[0] == "esbuild"
    assert words[-1] == "--outdir=../built"
    bundler = str(node_modules / "esbuild" / "bin" / "esbuild")
    # Its program is node's own script only until it is installed, when it is the bundler itself.
    run_node("-e", BUNDLE, bundler, *words[1:-1], f"--outdir={tmp_path}")
    for name in ("page.js", "page.css"):
        fresh = (tmp_path / name).read_text()
        assert len(fresh) > 10_000
        assert fresh == (BUILT / name).read_text(), f"stale {name}: run npm run build in {SCRIPT}"


BUNDLE = """
const [program, ...words] = process.argv.slice(1);
const done = require("node:child_process").spawnSync(program, words, { stdio: "inherit" });
process.exit(done.status ?? 1);
"""


def test_what_needs_no_browser(run_node: Run) -> None:
    told = run_node("--test", *sorted(str(file) for file in TESTS.glob("*.test.js")))
    passed = re.search(r"pass (\d+)", told)
    assert passed is not None, told
    assert int(passed[1]) >= 20
