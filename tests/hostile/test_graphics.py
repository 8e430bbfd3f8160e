"""A machine that cannot draw: everything but the pictures is delivered, and a line says why."""

import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from entry import SHORT

from tapmodel.errors import MissingError
from tapmodel.report.pictures import graphics
from tapmodel.report.pictures.still import drawn_views
from tapmodel.report.pictures.view import View
from tapmodel.system_libraries import missing

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="OpenGL is part of the system")

Program = Callable[..., subprocess.CompletedProcess[str]]


@pytest.fixture
def without(tmp_path: Path) -> Program:
    """Run the program where the loader finds something that is no library under these names."""

    def run(libraries: tuple[str, ...], *words: str) -> subprocess.CompletedProcess[str]:
        hidden = tmp_path / "hidden"
        hidden.mkdir(exist_ok=True)
        for library in libraries:
            (hidden / library).write_text("no library")
        return subprocess.run(
            [
                sys.executable,
                "-P",
                "-m",
                "tapmodel.cli.start",
                *words,
                "--out",
                str(tmp_path / "out"),
            ],
            env=os.environ | {"LD_LIBRARY_PATH": str(hidden)},
            capture_output=True,
            text=True,
            check=False,
        )

    return run


def _names(folder: Path) -> set[str]:
    return {path.name.removeprefix(folder.name) for path in folder.iterdir()}


def test_a_build_delivers_all_but_the_pictures(without: Program, tmp_path: Path) -> None:
    ended = without(("libEGL.so.1",), "build", *SHORT, "--formats", "step,page,pictures", "--json")
    assert ended.returncode == 0, ended.stderr
    assert "left out, pictures: libEGL.so.1 is missing; install the package libegl1" in ended.stderr
    folder = tmp_path / "out" / "M3x0.5"
    assert _names(folder) == {".step", ".html", "record.json"}
    record = json.loads((folder / "record.json").read_text())
    assert "libegl1" in record["left_out"][0]
    assert record["model"]["solids"] == 1
    assert "data:image/png" not in (folder / "M3x0.5.html").read_text()


def test_preview_page_and_sheet_are_made_without_any_graphics(
    without: Program, tmp_path: Path
) -> None:
    hidden = ("libEGL.so.1", "libGL.so.1", "libX11.so.6")
    folder = tmp_path / "out" / "M3x0.5-preview"
    for words, made in (
        (("build", *SHORT, "--preview"), {".stl", "record.json"}),
        (("page", *SHORT), {".stl", ".html", "record.json"}),
    ):
        ended = without(hidden, *words)
        assert ended.returncode == 0, ended.stderr
        assert ended.stderr.count("libGL.so.1 is missing; install the package libgl1") == 1
        assert _names(folder) == made
    assert without(hidden, "sheet", "M3").returncode == 0


def test_a_kernel_that_cannot_load_is_one_message_with_the_package(
    without: Program, tmp_path: Path
) -> None:
    ended = without(("libGL.so.1",), "build", "M3")
    assert ended.returncode == 2
    last = ended.stderr.rstrip().splitlines()[-1]
    assert last.startswith("tapmodel: the kernel cannot be loaded: libGL.so.1 is missing")
    assert "libgl1" in last
    assert not (tmp_path / "out").exists()


def test_only_a_library_of_the_system_is_missing() -> None:
    assert missing(ImportError("No module named 'numpy'")) is None
    told = missing(ImportError("libFoo.so.3: cannot open shared object file: No such file"))
    assert "libFoo.so.3 is missing; install the package that holds it" in str(told)


def _forget() -> None:
    graphics.ask.cache_clear()
    graphics.hindrance.cache_clear()


@pytest.mark.parametrize(
    ("script", "told"),
    [
        ("import os; os.abort()", "libgl1-mesa-dri"),
        ("import sys; sys.exit(1)", "libgl1-mesa-dri"),
        ("import time; time.sleep(60)", "does not answer"),
    ],
    ids=["crash", "no driver", "hang"],
)
def test_a_driver_that_fails_in_whatever_way_is_a_hindrance(
    script: str, told: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    probe = tmp_path / "probe.py"
    probe.write_text(script)
    monkeypatch.setattr(graphics, "_PROBE", probe)
    monkeypatch.setattr(graphics, "_SECONDS", 0.5 if "sleep" in script else 20.0)
    _forget()
    try:
        assert told in str(graphics.hindrance())
        with pytest.raises(MissingError, match="no picture can be drawn"):
            drawn_views([], [], [View()])
    finally:
        _forget()
