"""Whatever ends a build, no half-written result stands anywhere; see also tests/delivery."""

import hashlib
import itertools
import json
import os
import signal
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest

from tapmodel.designing.design import design_tap
from tapmodel.errors import KernelError
from tapmodel.run.begun import begin, dismiss
from tapmodel.run.crew import Limits
from tapmodel.run.delivery.place import deliver
from tapmodel.run.delivery.staging import staging
from tapmodel.run.workshop import preview_with, previewers, produce
from tapmodel.spec.job_file import job_for
from tapmodel.stages import Stage

# A small tap, so that a whole build takes two seconds.
SETS = ("--set", "blank.thread_length=6", "--set", "name=small")
JOB = ("M4x0.7", *SETS)

# Every moment of a build with a job and files that soon lead there: two before the work, then each
# stage that the command is told of.
ROUTES: dict[str, tuple[str, str]] = {
    "begun": ("M4x0.7", "stl"),
    "settled": ("M4x0.7", "stl"),
    Stage.LOADING: ("M4x0.7", "stl"),
    Stage.PAPERS: ("M4x0.7", "dxf"),
    Stage.PAGE: ("M4x0.7", "page"),
    Stage.EDGES: ("M4x0.7", "stl"),
    Stage.FACES: ("M4x0.7", "stl"),
    Stage.REAR: ("M4x0.7", "stl"),
    Stage.MIRROR: ("M4x0.7-LH", "stl"),
    Stage.MESH: ("M4x0.7", "stl"),
    Stage.STEP_FILE: ("M4x0.7", "step"),
    Stage.READ_BACK: ("M4x0.7", "step"),
    Stage.PROOF: ("M4x0.7", "stl"),
    Stage.MESH_PROOF: ("M4x0.7", "stl"),
    Stage.MESH_FILES: ("M4x0.7", "stl"),
    Stage.PICTURES: ("M4x0.7", "pictures"),
    Stage.DELIVERY: ("M4x0.7", "stl"),
}
ENDINGS = ("SIGKILL", "SIGINT", "SIGTERM")

SCRIPT = """
    import contextlib, os, signal
    from tapmodel.cli import progress, start

    def passed(moment):
        if moment == {moment!r}:
            os.kill(os.getpid(), signal.{ending})

    def begin(*modules, begin=start.begin):
        begin(*modules)
        passed("begun")

    @contextlib.contextmanager
    def watched(_foreseen):
        passed("settled")
        yield passed

    start.begin, progress.progress = begin, watched
    start.main()
"""


def _ended(moment: str, ending: str, out: Path) -> tuple[int, str]:
    """Code and words of a build that sends itself a signal at a moment.

    Its processes complain to the same pipe, which has no end while one of them lives: one that
    outlives the command is waited for.
    """
    job, formats = ROUTES[moment]
    script = textwrap.dedent(SCRIPT).format(moment=str(moment), ending=ending)
    command = [sys.executable, "-c", script, "build", job, *SETS, "--formats", formats]
    ended = subprocess.run(
        [*command, "--out", str(out)], capture_output=True, text=True, check=False, timeout=60
    )
    return ended.returncode, ended.stderr


def _is_whole(folder: Path) -> bool:
    """Whether a delivered folder holds just the files of its record."""
    record = json.loads((folder / "record.json").read_text())
    files = {file["path"]: file["sha256"] for file in record["files"]}
    written = {p.relative_to(folder).as_posix() for p in folder.rglob("*") if p.is_file()}
    assert written == {*files, "record.json"}
    return all(
        hashlib.sha256((folder / name).read_bytes()).hexdigest() == digest
        for name, digest in files.items()
    )


def test_every_stage_that_is_ever_begun_has_its_route() -> None:
    # From the square on they only say closer where something failed; of waits nobody is told.
    stages = list(Stage)
    begun = stages[: stages.index(Stage.SQUARE)]
    assert {*begun, "begun", "settled"} - {Stage.WAITING} == set(ROUTES)


# Each signal in turn, and with no tap of that name there before or with one.
CASES = [*zip(ROUTES, itertools.cycle(ENDINGS), itertools.cycle((False, True)), strict=False)]


@pytest.mark.parametrize(("moment", "ending", "stands"), CASES)
def test_a_build_ended_at_any_moment_leaves_nothing_partial(
    moment: str, ending: str, tmp_path: Path, *, stands: bool
) -> None:
    out = tmp_path / "out"
    if stands:
        _give(out)
    code, told = _ended(moment, ending, out)
    if ending == "SIGKILL":
        assert code == -signal.SIGKILL, told
        _next_run(out)
    else:
        assert code == 130, told
        assert "stopped; nothing was delivered" in told
        assert out.exists() == stands
    assert [path.name for path in out.glob("*")] == ["small"] * stands
    assert not stands or _is_whole(out / "small")


def _give(out: Path) -> None:
    """Deliver an older tap of the same name."""
    with staging(out, "small") as staged:
        (staged / "small.step").write_text("an older solid")
        deliver(staged, out / "small", {"schema": "tapmodel.record/1", "name": "small"})


def _next_run(out: Path) -> None:
    """What any command that comes next begins with: it sweeps up what a kill has left."""
    with staging(out, "other"):
        pass


def test_an_interruption_while_a_class_is_made_ends_alike(tmp_path: Path) -> None:
    # Classes are made by exec, through which Python remembers an interruption as not caught; it
    # tells only where a module is run.
    run = "c.main = lambda: exec('raise KeyboardInterrupt')"
    script = f"import tapmodel.cli.app as c; {run}; import tapmodel.cli.start as s; s.main()"
    (tmp_path / "interrupted.py").write_text(script)
    command = [sys.executable, "-m", "interrupted"]
    ended = subprocess.run(command, cwd=tmp_path, capture_output=True, check=False)
    assert ended.returncode == 130
    assert b"stopped" in ended.stderr


def _produce(out: Path, limits: Limits) -> None:
    produce(design_tap(job_for("M4x0.7")), out, lambda _stage: None, limits=limits)


def test_a_run_that_takes_too_long_is_stopped_and_names_its_stage(tmp_path: Path) -> None:
    with pytest.raises(KernelError, match="loading: took longer"):
        _produce(tmp_path / "out", Limits(seconds=0.3))
    assert not (tmp_path / "out").exists()


def test_a_run_that_needs_too_much_memory_is_an_error(tmp_path: Path) -> None:
    with pytest.raises(KernelError):
        # Some libraries spin instead of failing when they cannot load: the time limit ends them.
        _produce(tmp_path / "out", Limits(memory_mb=600, seconds=15))
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("which", [0, 1])
def test_a_crash_of_either_process_is_an_error_that_ends_both(which: int, tmp_path: Path) -> None:
    def crash(stage: Stage) -> None:
        if stage is Stage.EDGES:
            os.kill(_spawned()[which], signal.SIGSEGV)

    with pytest.raises(KernelError, match="SIGSEGV"):
        produce(design_tap(job_for("M4x0.7")), tmp_path / "out", crash)
    assert not (tmp_path / "out").exists()
    assert _spawned() == []


def test_a_preview_keeps_to_its_limits_too(tmp_path: Path) -> None:
    design = design_tap(job_for("M4x0.7"))
    told = lambda _stage: None  # noqa: E731
    with (
        previewers(Limits(seconds=0.01)) as crew,
        pytest.raises(KernelError, match="loading: took longer"),
    ):
        preview_with(crew, design, tmp_path / "out", told)
    assert not (tmp_path / "out").exists()
    assert _spawned() == []


def test_a_process_begun_ahead_is_taken_by_its_crew_or_dismissed() -> None:
    before = _children(os.getpid())
    begin("tapmodel.run.preview", "tapmodel.run.model")
    ahead = [pid for pid in _children(os.getpid()) if pid not in before]
    assert len(ahead) == 2
    with previewers():
        assert _children(os.getpid()) == [*before, *ahead]
    assert _children(os.getpid()) == [*before, ahead[1]]
    dismiss()
    assert _children(os.getpid()) == before


@pytest.mark.parametrize("words", [("--preview",), ("--help",), ("--preview", "--limit-mb", "0")])
def test_no_process_outlives_the_command_that_began_it(
    words: tuple[str, ...], tmp_path: Path
) -> None:
    # Into files: to wait for pipes is to wait for whoever holds them.
    with (tmp_path / "printed").open("w") as printed:
        command = [sys.executable, "-m", "tapmodel", "build", *JOB, *words]
        run = subprocess.Popen(
            [*command, "--out", str(tmp_path)],
            stdout=printed,
            stderr=printed,
            start_new_session=True,
        )
        assert run.wait(timeout=60) == (2 if "--limit-mb" in words else 0)
    running = [entry.name for entry in Path("/proc").iterdir() if entry.name.isdecimal()]
    assert not any(_is_of(run.pid, process) for process in running)


def _is_of(session: int, process: str) -> bool:
    try:
        return os.getsid(int(process)) == session
    except ProcessLookupError:
        return False


def _spawned() -> list[int]:
    return [pid for pid in _children(os.getpid()) if _is_spawned(pid)]


def _children(parent: int) -> list[int]:
    text = Path(f"/proc/{parent}/task/{parent}/children").read_text()
    return [int(word) for word in text.split()]


def _is_spawned(process: int) -> bool:
    return b"tapmodel.run.crew" in Path(f"/proc/{process}/cmdline").read_bytes()
