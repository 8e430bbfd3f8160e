"""Builds: refused, begun, followed, stopped, fetched; nothing of one that was stopped is left."""

import io
import json
import os
import subprocess
import sys
import threading
import time
import zipfile
from collections.abc import Callable, Iterator
from contextlib import nullcontext
from pathlib import Path
from queue import Queue
from types import SimpleNamespace
from typing import Any

import pytest
from printed import text_of
from served_page import Served, serving

from tapmodel.errors import KernelError
from tapmodel.export.clock import VARIABLE
from tapmodel.export.formats import Format
from tapmodel.report.poster.paper import PosterPaper
from tapmodel.report.poster.write import write_poster
from tapmodel.report.units import Look, Units
from tapmodel.report.view.building import LABELS, STAGES, WITHOUT_MODEL, built, progress
from tapmodel.report.words.proved import proved
from tapmodel.run.crew import Limits
from tapmodel.serve.asked import Asked, answered
from tapmodel.serve.building import build as building
from tapmodel.serve.building import making
from tapmodel.serve.building.asked import BuildAsked, ordered
from tapmodel.serve.building.builds import Builds
from tapmodel.stages import Stage

SMALL = {"designation": "M4x0.7", "blank.thread_length": 4, "name": "small"}
FIXED = "1000000000"
BROKEN = SMALL | {"hole.drill": 3.9}
"""Breaks a rule, and leaves a solid."""


def _begun(served: Served, *formats: str, **more: object) -> str:
    answer = served.post("build", {"job": SMALL, "formats": formats} | more)
    assert answer.status_code == 202, answer.text
    return answer.json()["id"]


def _ended(served: Served, key: str) -> dict[str, Any]:
    for _ in range(400):
        told = served.get(f"build/{key}").json()
        if told["state"] != "running":
            return told
        time.sleep(0.1)
    raise AssertionError(told)


def _children() -> list[int]:
    """Processes that this one has begun to build with."""
    tasks = Path(f"/proc/{os.getpid()}/task").iterdir()
    pids = [int(pid) for task in tasks for pid in _told(task / "children").split()]
    return [pid for pid in pids if b"tapmodel.run.crew" in _told(Path(f"/proc/{pid}/cmdline"))]


def _told(file: Path) -> bytes:
    """What the system says; nothing of a thread or process that has ended since it was listed."""
    try:
        return file.read_bytes()
    except (FileNotFoundError, ProcessLookupError):
        return b""


@pytest.fixture(scope="module")
def finished() -> Iterator[SimpleNamespace]:
    """One real build of everything that the tests below look at."""
    before = os.environ.get(VARIABLE)
    os.environ[VARIABLE] = FIXED
    try:
        with Builds(Limits()) as builds:
            served = serving(builds)
            key = _begun(served, "step", "stl", "route", "job")
            yield SimpleNamespace(served=served, key=key, told=_ended(served, key))
            root = builds._root
        assert not root.exists()
    finally:
        os.environ.pop(VARIABLE)
        os.environ |= {VARIABLE: before} if before else {}


def test_a_step_file_is_that_of_the_command_line(finished: SimpleNamespace, tmp_path: Path) -> None:
    sets = [
        word
        for key, value in SMALL.items()
        if key != "designation"
        for word in ("--set", f"{key}={value}")
    ]
    command = [sys.executable, "-m", "tapmodel", "build", "M4x0.7", *sets, "--formats", "step,stl"]
    around = os.environ | {VARIABLE: FIXED}
    subprocess.run([*command, "--out", str(tmp_path)], env=around, check=True, capture_output=True)
    for name in ("small.step", "small.stl"):
        answer = finished.served.get(f"build/{finished.key}/files/{name}")
        assert answer.content == (tmp_path / "small" / name).read_bytes()
        assert answer.headers["content-disposition"] == f'attachment; filename="{name}"'
        assert len(answer.content) > 100_000
    records = [
        finished.served.get(f"build/{finished.key}/files/record.json").json(),
        json.loads((tmp_path / "small" / "record.json").read_text()),
    ]
    # Of the one the route is, too.
    assert [file["path"] for file in records[1]["files"]] == ["small.step", "small.stl"]
    assert records[0] | {"files": 0} == records[1] | {"files": 0}


def test_what_was_proved_is_told_in_words(finished: SimpleNamespace) -> None:
    told = finished.told
    assert (told["state"], told["name"]) == ("done", "small")
    assert told["made"]["verdict"].startswith("Proved: the solid")
    rows = dict(told["made"]["rows"])
    assert rows["sound"] == "1 closed solid with no hole through it, which nowhere cuts itself"
    assert {"volume", "sections", "surface", "features", "triangles"} < rows.keys()
    assert not [text for text in rows.values() if "genus" in text or "e-" in text]
    assert told["made"]["notes"] == ["Prove the programs in air first."]
    names = {one["name"] for one in told["made"]["files"]}
    assert names == {
        *("small.step", "small.stl", "small.toml", "record.json"),
        *("small-route.pdf", "small-flutes.ngc", "small-square.ngc"),
    }


def test_all_files_come_as_one_archive(finished: SimpleNamespace) -> None:
    answer = finished.served.get(f"build/{finished.key}/all.zip")
    assert answer.headers["content-disposition"] == 'attachment; filename="small.zip"'
    with zipfile.ZipFile(io.BytesIO(answer.content)) as archive:
        assert archive.testzip() is None
        assert set(archive.namelist()) == {one["name"] for one in finished.told["made"]["files"]}
        for name in archive.namelist():
            alone = finished.served.get(f"build/{finished.key}/files/{name}").content
            assert archive.read(name) == alone
        assert archive.getinfo("small.step").date_time == (2001, 9, 9, 1, 46, 40)


def test_the_job_file_of_a_build_is_what_was_built(finished: SimpleNamespace) -> None:
    text = finished.served.get(f"build/{finished.key}/files/small.toml").text
    read = finished.served.post("read", {"text": text}).json()["job"]
    assert read.items() >= SMALL.items()


@pytest.mark.parametrize(
    "name",
    [
        "",
        "other.step",
        "small.STEP",
        "../small/small.step",
        "..%2fsmall%2fsmall.step",
        "%2e%2e/%2e%2e/etc/passwd",
        "/etc/passwd",
        "small.step/",
        "small.step%00",
        "..\\small.step",
    ],
)
def test_only_names_of_the_list_are_fetched(finished: SimpleNamespace, name: str) -> None:
    assert finished.served.get(f"build/{finished.key}/files/{name}").status_code == 404


@pytest.mark.parametrize("key", ["", "x", "../build", "%2e%2e"])
def test_another_build_is_not_there(finished: SimpleNamespace, key: str) -> None:
    for path in (f"build/{key}/files/small.step", f"build/{key}/all.zip"):
        assert finished.served.get(path).status_code == 404


def test_a_build_that_is_done_with_is_gone(served: Served) -> None:
    key = _begun(served, "job")
    assert _ended(served, key)["state"] == "done"
    assert len(served.folders()) == 1
    assert served.delete(f"build/{key}").status_code == 204
    assert served.get(f"build/{key}").status_code == 404
    assert served.delete(f"build/{key}").status_code == 404
    assert served.folders() == []


def test_a_sheet_and_a_route_need_no_solid(served: Served) -> None:
    told = _ended(served, _begun(served, "sheet", "dxf", "route", "poster", units="inch"))
    assert told["state"] == "done", told
    assert told["made"]["rows"] == []
    assert told["made"]["verdict"].startswith("Papers alone")
    names = {one["name"] for one in told["made"]["files"]}
    assert {"small-sheet.pdf", "small-route.pdf", "small-section.dxf", "record.json"} <= names
    assert not any(name.endswith((".step", ".stl", ".svg")) for name in names)


def test_the_poster_of_a_build_is_that_of_the_command_line(served: Served, tmp_path: Path) -> None:
    key = _begun(served, "poster", units="inch")
    told = _ended(served, key)
    assert told["state"] == "done", told
    names = [one["name"] for one in told["made"]["files"]]
    assert {"small-poster.pdf", "small-poster.png"} <= set(names)
    content = served.get(f"build/{key}/files/small-poster.pdf").content
    own, design = tmp_path / "own.pdf", answered(Asked(job=SMALL), in_full=True).design
    look = Look(units=Units.INCH)
    write_poster(own, own.with_suffix(".png"), design, look, PosterPaper.A3)
    assert text_of(content) == text_of(own)
    picture = served.get(f"build/{key}/files/small-poster.png").content
    assert picture.startswith(b"\x89PNG")


@pytest.mark.parametrize("moment", [0.0, 0.8, 2.0])
def test_a_build_that_is_stopped_leaves_nothing(served: Served, moment: float) -> None:
    key = _begun(served, "step", "stl", "sheet")
    time.sleep(moment)
    assert served.delete(f"build/{key}").status_code == 204
    assert _children() == []
    assert served.folders() == []
    assert served.builds.running is None
    assert served.get(f"build/{key}").status_code == 404
    # And the next one can begin.
    served.delete(f"build/{_begun(served, 'step')}")


def test_a_second_build_is_refused_while_one_runs(served: Served) -> None:
    key = _begun(served, "step")
    answer = served.post("build", {"job": SMALL, "formats": ["step"]})
    assert answer.status_code == 409
    assert "small is being built" in answer.json()["error"]["message"]
    running = served.get("build").json()["running"]
    assert (running["id"], running["state"]) == (key, "running")
    # Designs are answered meanwhile, to whichever page.
    for count in (3, 4):
        job = {"designation": "M10", "flutes.count": count}
        assert served.post("tap", {"job": job}).status_code == 200
    served.delete(f"build/{key}")
    assert served.get("build").json()["running"] is None


def test_a_server_that_ends_ends_what_it_builds() -> None:
    with Builds(Limits()) as builds:
        _begun(serving(builds), "step")
        while not _children():
            time.sleep(0.01)
        root = builds._root
    assert _children() == []
    assert not root.exists()


def test_a_broken_rule_is_built_only_when_it_is_forced(served: Served) -> None:
    refused = served.post("build", {"job": BROKEN, "formats": ["step"]})
    error = refused.json()["error"]
    assert (refused.status_code, error["forceable"], error["field"]) == (
        422,
        True,
        "hole.drill",
    )
    forced = served.post("build", {"job": BROKEN, "formats": ["step"], "force": True})
    assert forced.status_code == 202
    served.delete(f"build/{forced.json()['id']}")
    # Papers of it are made as those of the command line.
    papers = served.post("build", {"job": BROKEN, "formats": ["job"]})
    assert papers.status_code == 202


def test_what_leaves_no_tap_cannot_be_forced(served: Served) -> None:
    job = {"designation": "M10", "flutes.offset": 4.9}
    answer = served.post("build", {"job": job, "formats": ["step"], "force": True})
    assert answer.status_code == 422
    assert "forceable" not in answer.json()["error"]


@pytest.mark.parametrize("formats", [[], ["exe"], ["step", "../x"], "step", [5]])
def test_only_known_kinds_of_files_are_made(served: Served, formats: object) -> None:
    answer = served.post("build", {"job": SMALL, "formats": formats})
    assert answer.status_code == 422
    assert served.builds.running is None


def test_more_than_the_limits_allow_is_not_begun() -> None:
    with Builds(Limits(seconds=1)) as builds:
        answer = serving(builds).post("build", {"job": SMALL, "formats": ["step"]})
        assert answer.status_code == 422
        assert "--limit-seconds" in answer.json()["error"]["message"]


@pytest.mark.parametrize(
    ("error", "words"),
    [
        (KernelError(Stage.PROOF, "not the tap"), "proof: not the tap"),
        (ZeroDivisionError("within"), "please report it: ZeroDivisionError: within"),
    ],
)
def test_a_build_that_fails_says_why_and_leaves_nothing(
    served: Served, monkeypatch: pytest.MonkeyPatch, error: Exception, words: str
) -> None:
    def fails(_ordered: object, out: Path, *_more: object) -> None:
        out.mkdir()
        raise error

    monkeypatch.setattr(building, "made", fails)
    told = _ended(served, _begun(served, "step"))
    assert told["state"] == "failed"
    assert told["error"]["message"].endswith(words)
    assert served.folders() == []


def test_the_newest_builds_are_kept(served: Served) -> None:
    keys = []
    for _ in range(6):
        keys.append(_begun(served, "job"))
        _ended(served, keys[-1])
    there = [served.get(f"build/{key}").status_code for key in keys]
    assert there == [404, 404, 200, 200, 200, 200]
    assert len(served.folders()) == 4


def test_every_format_can_be_asked_for(served: Served) -> None:
    kinds = served.get("build").json()["kinds"]
    assert {one["key"] for one in kinds} == {*Format, "route", "poster", "job"} == LABELS.keys()
    assert {one["key"] for one in kinds if not one["model"]} == WITHOUT_MODEL
    assert all(one["label"] for one in kinds)


def test_progress_is_a_share_of_what_was_foreseen() -> None:
    half = progress("triangles", 3.0, 6.0)
    assert (half.share, half.stage, half.time) == (0.5, "triangles", "3 s of about 6 s")
    late = progress("proof", 60.0, 6.0)
    assert late.share == 0.97
    # No time that has gone by already is still told as what it will take.
    assert late.time.startswith("60 s; 6 s were foreseen")


RECORD = {
    "model": {
        "solids": 1,
        "genus": 0,
        "volume": 1566.0,
        "volume_expected": 1566.01234,
        "stations": [
            {"area": 40.0, "area_expected": 40.0},
            {"area": 90.0, "area_expected": 89.99871},
        ],
        "deviation_points": 5242,
        "deviation_um_max": 0.0123,
        "ideal_points": 7317,
        "ideal_um_max": 0.0,
        "ideal_um_by_feature": {"core": 0.0, "thread": 0.0},
    },
    "mesh": {"triangles": 34386, "chord_mm": 0.005},
}


@pytest.mark.parametrize(
    ("units", "expected"),
    [
        (
            Units.MM,
            {
                "volume": "1566.0000 mm³, within 0.0124 mm³ of the design",
                "sections": "2 cuts square to the axis, areas within 0.0013 mm² of the design",
                "surface": "5242 points, at most 0.012 µm off the design",
                "features": (
                    "7317 points of 2 features and edges of the design, at most 0.001 µm off the "
                    "solid"
                ),
                "triangles": "34386, closed all round, at most 0.005 mm off the solid",
            },
        ),
        (
            Units.INCH,
            {
                "volume": "0.09556318 in³, within 0.000001 in³ of the design",
                "sections": "2 cuts square to the axis, areas within 0.000002 in² of the design",
                "surface": "5242 points, at most 0.00000048 in off the design",
                "triangles": "34386, closed all round, at most 0.00019685 in off the solid",
            },
        ),
    ],
)
def test_what_was_measured_is_told_with_its_unit(units: Units, expected: dict[str, str]) -> None:
    assert dict(proved(RECORD, units)).items() >= expected.items()
    both = dict(proved(RECORD, Units.BOTH))
    assert all(part in both["volume"] for part in ("0.0124 mm³ = ", "0.000001 in³"))


def test_each_stage_is_told_once(served: Served, monkeypatch: pytest.MonkeyPatch) -> None:
    handed: Queue[Callable[[str], None]] = Queue()
    go_on = threading.Event()

    def held(*given: Any) -> tuple[dict[str, Any], dict[str, Path]]:  # noqa: ANN401  (as the function in its place)
        handed.put(given[-1])
        go_on.wait(30)
        return {}, {}

    monkeypatch.setattr(building, "made", held)
    key = _begun(served, "job")
    on_stage = handed.get(timeout=30)
    found: list[str] = []
    for stage in (Stage.MESH, Stage.LOADING, Stage.PROOF, Stage.MESH, Stage.DELIVERY, Stage.PROOF):
        on_stage(STAGES[stage])
        found.append(served.get(f"build/{key}").json()["progress"]["stage"])
    go_on.set()
    assert [*dict.fromkeys(found)] == [
        "triangles of the solid",
        "proving the solid",
        "putting the files in place",
    ]
    assert found == sorted(found, key=[*dict.fromkeys(found)].index)
    begun = [*Stage][: [*Stage].index(Stage.SQUARE)]
    assert STAGES.keys() == set(begun)


def test_what_is_made_beside_a_solid_has_a_stage_of_its_own(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def tells(*given: Any) -> dict[str, Any]:  # noqa: ANN401  (the same)
        given[-1](Stage.PAPERS)
        return {}

    for name in ("produce_with", "papers_with"):
        monkeypatch.setattr(making, name, tells)
    for name in ("builders", "paper_makers"):
        monkeypatch.setattr(making, name, lambda *_given: nullcontext())
    found: list[str] = []
    for kinds in (("step", "route"), ("sheet", "route")):
        order = ordered(BuildAsked(job=SMALL, formats=kinds), Limits())
        making.made(order, tmp_path, Limits(), lambda crew: crew, found.append)
    assert found == ["papers", "route and poster", "papers"]


def test_a_forced_build_does_not_hide_its_broken_rules() -> None:
    model = {
        "stations": [{"area": 1, "area_expected": 1}],
        "moved_mm": {},
        "ideal_um_by_feature": {},
    }
    numbers = ("solids", "genus", "volume", "volume_expected", "deviation_points")
    more = ("deviation_um_max", "ideal_points", "ideal_um_max")
    mesh = {"triangles": 1, "chord_mm": 0.1}
    record = {"model": model | dict.fromkeys(numbers + more, 1), "mesh": mesh}
    findings = [{"severity": word} for word in ("error", "warning", "error")]

    def verdict(found: list[dict[str, str]]) -> str:
        return built(record | {"findings": found}, [], Units.MM).verdict

    assert verdict(findings).endswith("The design itself breaks 2 rules.")
    assert "breaks" not in verdict(findings[1:2])
