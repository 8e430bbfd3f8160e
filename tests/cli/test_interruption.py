"""Whatever ends a build, no half-written result stands anywhere; see also tests/delivery."""

import hashlib
import json
import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tapmodel.designing.design import design_tap
from tapmodel.errors import KernelError
from tapmodel.run.crew import Limits, begin, dismiss
from tapmodel.run.workshop import preview_with, previewers, produce
from tapmodel.spec.job_file import job_for
from tapmodel.stages import Stage

# A small tap, so that the whole build takes a few seconds.
JOB = ("M4x0.7", "--set", "blank.thread_length=6", "--set", "name=small")
LONGEST = 6.0


def _start(out: Path, *more: str) -> subprocess.Popen[str]:
    command = [sys.executable, "-m", "tapmodel", "build", *JOB, *more, "--out", str(out)]
    return subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, start_new_session=True
    )


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


@pytest.mark.parametrize("round_", range(6))
def test_a_build_ended_at_a_random_moment_leaves_nothing_partial(
    round_: int, tmp_path: Path
) -> None:
    chance = random.Random(round_)  # noqa: S311  (repeatable on purpose)
    ending = (signal.SIGKILL, signal.SIGINT, signal.SIGTERM)[round_ % 3]
    run = _start(tmp_path / "out")
    time.sleep(chance.uniform(0.05, LONGEST))
    run.send_signal(ending)
    _, told = run.communicate(timeout=60)
    final = tmp_path / "out" / "small"
    if final.exists():
        assert _is_whole(final)
    elif ending is not signal.SIGKILL:
        assert run.returncode == 130, told
        assert "stopped" in told
        assert not (tmp_path / "out").exists()


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
        previewers(None, Limits(seconds=0.01)) as crew,
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
