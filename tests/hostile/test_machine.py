"""What a machine may do to a run: streams closed, a strange folder, environment, clock, signals."""

import os
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
from entry import SHORT
from sweeps import in_part

PROGRAM = [sys.executable, "-P", "-m", "tapmodel"]
Ran = subprocess.CompletedProcess[str]


def program(*words: str, env: Mapping[str, str] | None = None, cwd: Path | None = None) -> Ran:
    return subprocess.run(
        [*PROGRAM, *words],
        env=os.environ | (env or {}),
        cwd=cwd,
        capture_output=True,
        text=True,
        errors="surrogateescape",
        check=False,
        stdin=subprocess.DEVNULL,
    )


def _sound(ended: Ran) -> bool:
    return "Traceback" not in ended.stderr and "fault of this program" not in ended.stderr


BROKEN = ("design", "M6", "--set", "blank.square_across_flats=7")
# A line of the shell with the program for "$@", and the exit code that it must have.
STREAMS: dict[str, tuple[str, tuple[str, ...], int]] = {
    "stdout closed": ('"$@" >&-', ("design", "M6"), 0),
    "stderr closed": ('"$@" >/dev/null 2>&-', ("design", "M6"), 0),
    "stdin closed": ('"$@" <&- >/dev/null', ("design", "M6"), 0),
    "all closed": ('"$@" <&- >&- 2>&-', ("design", "M6"), 0),
    "stdout closed on a broken rule": ('"$@" >&-', BROKEN, 1),
    "stderr closed on bad input": ('"$@" 2>&-', ("design", "M6x"), 2),
    "all closed on bad input": ('"$@" <&- >&- 2>&-', ("design", "M6x"), 2),
    "stdout full": ('"$@" >/dev/full', ("design", "M6"), 2),
    "stdout full of JSON": ('"$@" >/dev/full', ("design", "M6", "--json"), 2),
    "stderr full on bad input": ('"$@" 2>/dev/full', ("design", "M6x"), 2),
    "both full": ('"$@" >/dev/full 2>&1', ("schema",), 2),
    "nobody reads": ('"$@" | true; exit ${PIPESTATUS[0]}', ("design", "M6"), 0),
    "nobody reads much": ('"$@" | true; exit ${PIPESTATUS[0]}', ("schema",), 0),
    "nobody reads a broken rule": ('"$@" | true; exit ${PIPESTATUS[0]}', BROKEN, 1),
    "nobody reads complaints": (
        '"$@" 2>&1 >/dev/null | true; exit ${PIPESTATUS[0]}',
        ("design", "M6x"),
        2,
    ),
    "a reader of one line": ('"$@" | head -n 1; exit ${PIPESTATUS[0]}', ("design", "M6"), 0),
    "stdout closed at papers": ('"$@" >&-', ("sheet", "M6", "--out", "out"), 0),
    "all closed at papers": ('"$@" <&- >&- 2>&-', ("sheet", "M6", "--out", "out"), 0),
    "all closed at a build": (
        '"$@" <&- >&- 2>&-',
        ("build", *SHORT, "--formats", "step", "--out", "out"),
        0,
    ),
    "nobody reads a build": (
        '"$@" 2>&1 | true; exit ${PIPESTATUS[0]}',
        ("build", *SHORT, "--preview", "--out", "out"),
        0,
    ),
}


@pytest.mark.parametrize("name", STREAMS)
def test_the_exit_code_is_kept_whatever_the_streams_do(name: str, tmp_path: Path) -> None:
    line, words, code = STREAMS[name]
    ended = subprocess.run(
        ["bash", "-c", line, "bash", *PROGRAM, *words],
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
    )
    assert (ended.returncode, _sound(ended)) == (code, True), ended.stderr
    if "build" in name and "closed" in name:
        # Nothing that a library printed has strayed into a file.
        step = (tmp_path / "out" / "M3x0.5" / "M3x0.5.step").read_bytes()
        assert step.startswith(b"ISO-10303-21;")


# Files in the working folder that a library would read or load, by name and content.
STRAYS: dict[str, bytes] = {
    "ezdxf.ini": b"[core\nthis is not a settings file",
    "matplotlibrc": b"backend: nonsense\n",
    "pyproject.toml": b"[tool\n",
    "setup.cfg": b"[broken\n",
    "pydantic.ini": b"\xff\xfe",
    ".env": b"PYTHONPATH=/nowhere\n",
    "typst.toml": b"[package\n",
    "sitecustomize.py": b"raise SystemExit('a stray module was loaded')\n",
    "usercustomize.py": b"raise SystemExit('a stray module was loaded')\n",
}
MODULES = ["numpy", "json", "typer", "rich", "typst", "ezdxf", "trimesh", "struct", "random"]
MODULES += ["signal", "tempfile", "multiprocessing", "pickle", "scipy", "vtkmodules", "OCP"]
MODULES += ["tapmodel", "ctypes", "subprocess"]


def test_nothing_in_the_working_folder_is_taken_for_the_program_s_own(tmp_path: Path) -> None:
    for name, content in STRAYS.items():
        (tmp_path / name).write_bytes(content)
    for name in MODULES:
        (tmp_path / f"{name}.py").write_text("raise SystemExit('a stray module was loaded')\n")
    for words in (
        ("page", "M3"),
        ("build", *SHORT, "--formats", "step,stl,sheet"),
    ):
        ended = program(*words, cwd=tmp_path)
        assert (ended.returncode, _sound(ended)) == (0, True), ended.stderr
        assert "stray" not in ended.stdout + ended.stderr


@pytest.mark.parametrize("name", ["ezdxf.ini", "UTF-16"])
def test_settings_of_the_home_are_not_read(name: str, tmp_path: Path) -> None:
    content = "[core]\nDEFAULT_DIMENSION_TEXT_STYLE = x\n".encode("utf-16")
    for folder in (".config", ".cache"):
        (tmp_path / folder / "ezdxf").mkdir(parents=True)
    broken = content if name == "UTF-16" else b"x"
    (tmp_path / ".config" / "ezdxf" / "ezdxf.ini").write_bytes(broken)
    (tmp_path / ".cache" / "ezdxf" / "font_manager_cache.json").write_bytes(b"[]")
    home = {"HOME": str(tmp_path), "XDG_CONFIG_HOME": "", "XDG_CACHE_HOME": ""}
    ended = program("sheet", "M3", "--out", str(tmp_path / "out"), env=home)
    assert (ended.returncode, ended.stderr) == (0, "")


ENVIRONMENTS: dict[str, dict[str, str]] = {
    "no home": {"HOME": "/nonexistent"},
    "empty home": {"HOME": ""},
    "home is a file": {"HOME": "/dev/null"},
    "no place for temporary files": {"TMPDIR": "/nonexistent"},
    "plain letters": {"PYTHONIOENCODING": "ascii"},
    "letters of Windows": {"PYTHONIOENCODING": "cp1252"},
    "C": {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"},
    "unknown locale": {"LC_ALL": "xx_YY.nonsense", "LANG": "?"},
    "colours forced": {"FORCE_COLOR": "1", "CLICOLOR_FORCE": "1", "TTY_COMPATIBLE": "1"},
    "no colours": {"NO_COLOR": "1", "TERM": "dumb"},
    "strange terminal": {"TERM": "\x1b[31m", "COLUMNS": "abc", "LINES": "-5"},
    "narrow terminal": {"COLUMNS": "1", "TERMINAL_WIDTH": "1"},
    "rich of nonsense": {"TYPER_USE_RICH": "maybe", "RICH_THEME": "x"},
    "plugins": {"PYDANTIC_DISABLE_PLUGINS": "nonsense"},
    "settings elsewhere": {"EZDXF_CONFIG_FILE": "/dev/null/x", "EZDXF_TEST_FILES": "/x"},
    "matplotlib elsewhere": {"MPLCONFIGDIR": "/dev/null", "MPLBACKEND": "nonsense"},
    "threads of nonsense": {"OMP_NUM_THREADS": "abc", "OPENBLAS_NUM_THREADS": "-1"},
    "no screen": {"DISPLAY": "nonsense:99", "WAYLAND_DISPLAY": "nonsense"},
    "no zone": {"TZ": "Nowhere/Nothing"},
    "warnings shown": {"PYTHONWARNINGS": "default", "PYTHONDEVMODE": "1"},
    "epoch 0": {"SOURCE_DATE_EPOCH": "0"},
    "strange values": {"STRANGE": "\udcff", "\udcfe": "x"},
}


@pytest.mark.parametrize("name", in_part([*ENVIRONMENTS]))
def test_an_environment_changes_no_numbers(name: str, tmp_path: Path) -> None:
    words = ("wires", "M6", "--json")
    ended = program(*words, env=ENVIRONMENTS[name], cwd=tmp_path)
    assert (ended.returncode, ended.stderr) == (0, "")
    assert ended.stdout == _plain_answer(words)


ANSWERS: dict[tuple[str, ...], str] = {}


def _plain_answer(words: tuple[str, ...]) -> str:
    if words not in ANSWERS:
        ANSWERS[words] = program(*words).stdout
    return ANSWERS[words]


@pytest.mark.parametrize("name", ["plain letters", "letters of Windows", "C"])
def test_letters_that_a_terminal_lacks_are_written_otherwise(name: str) -> None:
    ended = program("design", "M6", env=ENVIRONMENTS[name])
    assert (ended.returncode, ended.stderr) == (0, "")
    assert "included angle" in ended.stdout


def test_papers_are_drawn_without_home_screen_and_temporary_files(tmp_path: Path) -> None:
    names = ("no home", "no place for temporary files", "no screen", "matplotlib elsewhere")
    env = {key: value for name in names for key, value in ENVIRONMENTS[name].items()}
    ended = program("sheet", "M3", "--out", str(tmp_path / "bare"), env=env)
    assert (ended.returncode, ended.stderr) == (0, "")
    drawn = "M3x0.5/drawings/M3x0.5-side.svg"
    assert program("sheet", "M3", "--out", str(tmp_path / "usual")).returncode == 0
    usual = (tmp_path / "usual" / drawn).read_bytes()
    # With its numbers: without a font the drawing would have a sixth of these bytes.
    assert len(usual) > 50_000
    assert (tmp_path / "bare" / drawn).read_bytes() == usual


def test_the_working_folder_may_be_gone(tmp_path: Path) -> None:
    line = 'mkdir gone && cd gone && rmdir ../gone && "$@"'
    for words, code in ((("design", "M6"), 0), (("sheet", "M6"), 2), (("design", "a.toml"), 2)):
        ended = subprocess.run(
            ["bash", "-c", line, "bash", *PROGRAM, *words],
            cwd=tmp_path,
            capture_output=True,
            text=True,
            check=False,
        )
        assert (ended.returncode, _sound(ended)) == (code, True), ended.stderr


def test_names_of_bytes_are_refused_or_written(tmp_path: Path) -> None:
    plain, strange = os.fsdecode(b"o\xff"), os.fsdecode(b"o\xff\x1b[31m")
    shown = r"o\udcff\x1b[31m"
    sheet = program("sheet", "M3", "--out", plain, cwd=tmp_path)
    assert (sheet.returncode, sheet.stderr) == (0, "")
    assert r"o\udcff" in sheet.stdout
    build = program("build", "M3", "--formats", "step", "--out", plain, cwd=tmp_path)
    assert build.returncode == 2
    assert r"o\udcff" in build.stderr
    assert "UTF-8" in build.stderr
    for words in (
        ("sheet", "M3", "--out", strange),
        ("design", strange),
        ("design", f"{strange}.toml"),
        (strange,),
    ):
        ended = program(*words, cwd=tmp_path)
        assert (ended.returncode, _sound(ended)) == (2, True)
        assert shown in ended.stderr
        assert "\x1b" not in ended.stderr


@pytest.mark.skipif(shutil.which("faketime") is None, reason="faketime is not installed")
@pytest.mark.parametrize(("formats", "code"), [("3mf,dxf,sheet", 0), ("step", 2)])
def test_a_clock_that_was_never_set_is_named_where_it_matters(
    formats: str, code: int, tmp_path: Path
) -> None:
    clock = ["faketime", "-f", "@1970-01-01 00:00:10"]
    ended = subprocess.run(
        [*clock, *PROGRAM, "build", *SHORT, "--formats", formats],
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
    )
    assert (ended.returncode, _sound(ended)) == (code, True), ended.stderr
    assert ("the machine's clock: '1970-01-01'" in ended.stderr) == bool(code)
    assert (tmp_path / "out" / "M3x0.5" / "M3x0.5.3mf").is_file() == (not code)


@pytest.mark.parametrize(
    ("limit", "words"),
    [
        ("ulimit -f 0", ("new", "M6", "job.toml")),
        ("ulimit -f 8", ("sheet", "M6", "--out", "out")),
        ("ulimit -n 12", ("sheet", "M6", "--out", "out")),
        ("umask 777", ("new", "M6", "job.toml")),
    ],
)
def test_a_limit_of_the_system_is_no_fault_of_the_program(
    limit: str, words: tuple[str, ...], tmp_path: Path
) -> None:
    ended = subprocess.run(
        ["bash", "-c", f'{limit}; "$@"', "bash", *PROGRAM, *words],
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
    )
    assert ended.returncode in (0, 2), ended.stderr
    assert _sound(ended), ended.stderr
    if ended.returncode:
        assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("ending", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_a_signal_while_loading_is_one_line(ending: signal.Signals, tmp_path: Path) -> None:
    run: Callable[..., subprocess.Popen[str]] = subprocess.Popen
    with run([*PROGRAM, "build", "M6", "--out", str(tmp_path)], stderr=-1, text=True) as started:
        assert started.stderr is not None
        started.stderr.readline()  # the first finding: the job is read, the kernel loads
        started.send_signal(ending)
        told = started.stderr.read()
    assert started.returncode == 130
    assert "tapmodel: stopped" in told
    assert "Traceback" not in told
    assert list(tmp_path.iterdir()) == []
