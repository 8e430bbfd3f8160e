"""The program under what Windows lacks and forbids; see `pretended/sitecustomize.py`."""

import json
import os
import signal
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest

from tapmodel.file_names import fault

PRETENDED = Path(__file__).with_name("pretended")
PROGRAM = (sys.executable, "-P", "-m", "tapmodel")
SHORT = ("M6", "--set", "blank.thread_length=6")
"""A tap that is soon built."""
EPOCH = {"SOURCE_DATE_EPOCH": "1764000000"}
Ran = subprocess.CompletedProcess[str]


def _environment(*, windows: bool = True) -> dict[str, str]:
    return os.environ | EPOCH | ({"PYTHONPATH": str(PRETENDED)} if windows else {})


def _run(*words: str, cwd: Path, windows: bool = True) -> Ran:
    return subprocess.run(
        words,
        cwd=cwd,
        env=_environment(windows=windows),
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=False,
    )


def _files(folder: Path) -> dict[str, bytes]:
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in _inside(folder)}


def _inside(folder: Path) -> list[Path]:
    return sorted(path for path in folder.rglob("*") if path.is_file())


# What must fail there, each as a module of the program; the test of this test.
FORBIDDEN = {
    "import resource": "ModuleNotFoundError",
    "from fcntl import flock": "ModuleNotFoundError",
    "import importlib; importlib.import_module('termios')": "ModuleNotFoundError",
    "import os; os.fork()": "AttributeError",
    "import os; os.kill(os.getpid(), 0)": "AttributeError",
    "from os import getuid": "ImportError",
    "from signal import SIGKILL": "ImportError",
    "import signal; signal.SIGHUP": "AttributeError",
    "import socket; socket.socketpair()": "AttributeError",
    "import subprocess; subprocess.Popen(['true'], pass_fds=(0,))": "ValueError",
    "import subprocess; subprocess.Popen(['true'], start_new_session=True)": "ValueError",
    "import os; os.open('.', os.O_RDONLY)": "PermissionError",
    "import os; os.mkdir('a'); os.mkdir('b'); os.rename('a', 'b')": "FileExistsError",
    "import os; os.mkdir('c'); f = open('c/x', 'w'); os.rename('c', 'd')": "PermissionError",
    "from pathlib import Path; f = open('x', 'w'); Path('x').unlink()": "PermissionError",
    "from pathlib import Path; f = open('y', 'w'); Path('z').touch(); Path('z').replace('y')": (
        "PermissionError"
    ),
    "import sys; assert sys.platform == 'linux'": "AssertionError",
}


@pytest.mark.parametrize("line", FORBIDDEN)
def test_what_windows_lacks_is_missing(line: str, tmp_path: Path) -> None:
    script = f"exec({line!r}, {{'__name__': 'tapmodel.tried'}})"
    ended = _run(sys.executable, "-c", script, cwd=tmp_path)
    assert ended.returncode == 1
    assert ended.stderr.splitlines()[-1].startswith(FORBIDDEN[line]), ended.stderr


def test_every_module_loads(tmp_path: Path) -> None:
    script = """
        import importlib, pkgutil, tapmodel
        found = [m.name for m in pkgutil.walk_packages(tapmodel.__path__, "tapmodel.")]
        for name in found:
            if not name.endswith("__main__") and "egl_probe" not in name:
                importlib.import_module(name)
        print(len(found))
    """
    ended = _run(sys.executable, "-c", textwrap.dedent(script), cwd=tmp_path)
    assert (ended.returncode, ended.stderr) == (0, "")
    modules = list((PRETENDED.parents[2] / "tapmodel").rglob("*.py"))
    # Packages count once, the root not at all.
    assert int(ended.stdout) == len(modules) - 1


def test_design_and_sheet_are_as_elsewhere(tmp_path: Path) -> None:
    told: list[tuple[str, dict[str, bytes]]] = []
    for windows in (True, False):
        cwd = tmp_path / str(windows)
        cwd.mkdir()
        design = _run(*PROGRAM, "design", "M6", "--json", cwd=cwd, windows=windows)
        sheet = _run(*PROGRAM, "sheet", "M6", cwd=cwd, windows=windows)
        assert (design.returncode, design.stderr) == (0, "")
        assert (sheet.returncode, sheet.stderr) == (0, "")
        told.append((design.stdout, _files(cwd / "out")))
    assert told[0] == told[1]
    assert len(told[0][1]) > 10


def test_a_build_gives_the_same_bytes_and_takes_the_place_of_the_one_before(
    tmp_path: Path,
) -> None:
    build = (*PROGRAM, "build", *SHORT, "--formats", "step,stl", "--json")
    runs: list[dict[str, bytes]] = []
    for windows in (True, False):
        cwd = tmp_path / str(windows)
        cwd.mkdir()
        ended = _run(*build, cwd=cwd, windows=windows)
        assert ended.returncode == 0, ended.stderr
        for process in json.loads(ended.stdout)["run"]["processes"].values():
            assert process["peak_memory_mb"] > 50
        runs.append(_files(cwd / "out"))
    assert runs[0] == runs[1]
    assert sorted(runs[0]) == ["M6x1/M6x1.step", "M6x1/M6x1.stl", "M6x1/record.json"]
    cwd = tmp_path / "True"
    mine = cwd / "out" / "M6x1" / "mine.txt"
    mine.write_text("mine")
    mine.chmod(0o444)  # Windows removes no such file
    ended = _run(*build, "--set", "flutes.rake=9", cwd=cwd)
    assert ended.returncode == 0, ended.stderr
    after = _files(cwd / "out")
    assert after.keys() == runs[0].keys() | {"M6x1/mine.txt"}
    assert after["M6x1/M6x1.step"] != runs[0]["M6x1/M6x1.step"]
    assert mine.stat().st_mode & 0o777 == 0o444
    assert [path.name for path in (cwd / "out").iterdir()] == ["M6x1"]
    assert {name for path in after for name in path.split("/") if fault(name)} == set()


def test_a_folder_in_use_is_left_as_it_is(tmp_path: Path) -> None:
    first = _run(*PROGRAM, "sheet", "M6", cwd=tmp_path)
    assert first.returncode == 0, first.stderr
    before = _files(tmp_path / "out")
    with (tmp_path / "out" / "M6x1" / "M6x1-sheet.pdf").open("rb"):
        ended = _run(*PROGRAM, "sheet", "M6", "--set", "flutes.rake=9", cwd=tmp_path)
    assert ended.returncode == 2
    assert "--out: 'out/M6x1'" in ended.stderr
    assert "of which no program has a file open" in ended.stderr
    assert _files(tmp_path / "out") == before
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["M6x1"]


def test_memory_is_watched_where_the_system_keeps_no_limit(tmp_path: Path) -> None:
    words = ("build", *SHORT, "--formats", "step", "--limit-mb", "150")
    ended = _run(*PROGRAM, *words, cwd=tmp_path)
    # Refused beforehand by the estimate, or ended: the library's tap is estimated at some 400 MB.
    assert ended.returncode in (2, 3)
    script = """
        from pathlib import Path
        from tapmodel.designing.design import design_tap
        from tapmodel.run.crew import Limits
        from tapmodel.run.workshop import produce
        from tapmodel.spec.job_file import job_for
        from tapmodel.errors import KernelError
        try:
            produce(design_tap(job_for("M6")), Path("out"), lambda _: None, None, Limits(60, 150))
        except KernelError as error:
            print(error)
    """
    ended = _run(sys.executable, "-c", textwrap.dedent(script), cwd=tmp_path)
    assert ended.stdout == "memory: needed more than 150 MB\n", ended.stderr
    assert list(tmp_path.iterdir()) == []


SCRIPT = """
    import os, sys
    from pathlib import Path
    from tapmodel.run.delivery import moments
    from tapmodel.run.delivery.place import deliver
    from tapmodel.run.delivery.staging import staging

    moments.passed = lambda now: now == sys.argv[1] and os._exit(9)
    with staging(Path("out"), sys.argv[2]) as staged:
        (staged / "tap.step").write_text(sys.argv[3])
        record = {"schema": "tapmodel.record/1", "name": "tap", "rake": sys.argv[3]}
        deliver(staged, Path("out") / sys.argv[2], record)
"""


def _deliver(moment: str, name: str, text: str, cwd: Path) -> int:
    words = (sys.executable, "-c", textwrap.dedent(SCRIPT), moment, name, text)
    return _run(*words, cwd=cwd).returncode


@pytest.mark.parametrize("moment", ["staged", "carried", "whole", "away", "placed", "cleared"])
def test_a_delivery_that_is_killed_is_ended_by_the_next(moment: str, tmp_path: Path) -> None:
    assert _deliver("", "tap", "old", tmp_path) == 0
    assert _deliver(moment, "tap", "new", tmp_path) == 9
    assert _deliver("", "other", "x", tmp_path) == 0
    found = sorted(path.name for path in (tmp_path / "out").iterdir())
    assert found == ["other", "tap"]
    stands = (tmp_path / "out" / "tap" / "tap.step").read_text()
    assert stands == ("old" if moment in {"staged", "carried", "whole"} else "new")


def test_two_that_deliver_at_once_wait_for_each_other(tmp_path: Path) -> None:
    words = (sys.executable, "-c", textwrap.dedent(SCRIPT), "", "tap")
    runs = [subprocess.Popen([*words, text], cwd=tmp_path, env=_environment()) for text in "abcd"]
    assert [run.wait(60) for run in runs] == [0, 0, 0, 0]
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["tap"]
    assert sorted(path.name for path in (tmp_path / "out" / "tap").iterdir()) == [
        "record.json",
        "tap.step",
    ]


def test_a_user_who_stops_a_build_is_told(tmp_path: Path) -> None:
    words = [*PROGRAM, "build", *SHORT, "--formats", "step"]
    pipe = subprocess.PIPE
    with subprocess.Popen(
        words, cwd=tmp_path, env=_environment(), stderr=pipe, text=True
    ) as started:
        assert started.stderr is not None
        started.stderr.readline()
        started.send_signal(signal.SIGINT)
        told = started.stderr.read()
    assert started.returncode == 130
    assert "tapmodel: stopped; nothing was delivered" in told
    assert list(tmp_path.iterdir()) == []


def test_without_the_modules_of_this_system_a_build_is_made_all_the_same(tmp_path: Path) -> None:
    # Everything else here is as it is; the library that watches memory does not load then either.
    names = ["resource", "fcntl", "termios", "pwd", "grp", "tty", "pty", "syslog", "readline"]
    hidden = f"import sys\nsys.modules.update(dict.fromkeys({names}))\n"
    (tmp_path / "sitecustomize.py").write_text(hidden)
    env = os.environ | {"PYTHONPATH": str(tmp_path)}
    words = ("build", *SHORT, "--formats", "step,stl", "--out", "out")
    ended = subprocess.run([*PROGRAM, *words], cwd=tmp_path, env=env, check=False)
    assert ended.returncode == 0
    found = sorted(path.name for path in (tmp_path / "out" / "M6x1").iterdir())
    assert found == ["M6x1.step", "M6x1.stl", "record.json"]
