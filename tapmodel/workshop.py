"""The kernel's own process: limits on time and memory, a staging folder, clean delivery.

A crash, a hang or an interruption of the kernel must cost nothing but the run. So the pipeline
runs in a child process that writes into a hidden folder beside the final one; the parent watches
it and, only when all is proved, puts the finished folder in its place by renaming.
"""

import contextlib
import multiprocessing
import os
import shutil
import signal
import tempfile
import time
from collections.abc import Callable, Generator
from dataclasses import dataclass
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any

from tapmodel.design.tap_design import TapDesign
from tapmodel.errors import InputError, KernelError, TapmodelError

STAGES = (
    "kernel",
    "edges",
    "faces",
    "rear",
    "mirror",
    "proof",
    "mesh",
    "files",
    "read back",
    "picture",
    "record",
)
"""The stages of a run in order, as the listener is told them; right hand has no mirror."""


@dataclass(frozen=True, slots=True)
class Limits:
    """What a run may take: seconds in all and address space in MB."""

    seconds: float = 600.0
    memory_mb: int = 12_000


def produce(
    design: TapDesign,
    out: Path,
    tell: Callable[[str], None],
    limits: Limits | None = None,
) -> dict[str, Any]:
    """Run the pipeline for `design` and deliver its files to `out/<name>`.

    Args:
        design: every number of the tap.
        out: folder for results; made if missing.
        tell: told each stage as it begins.
        limits: on the child process.

    Returns:
        The record.

    Raises:
        InputError: when `out` cannot be written.
        KernelError: when a stage failed, crashed, hung or ran out of memory; it names the stage.
    """
    with _staging(out, design.name) as staged:
        record = _run_child(design, staged, tell, limits or Limits())
        _deliver(staged, out / design.name)
    return record


@contextlib.contextmanager
def _staging(out: Path, name: str) -> Generator[Path]:
    try:
        out.mkdir(parents=True, exist_ok=True)
        staged = Path(tempfile.mkdtemp(prefix=f".{name}.", dir=out))
    except OSError as error:
        reason = error.strerror or type(error).__name__
        raise InputError("--out", str(out), f"a folder that can be written ({reason})") from error
    try:
        yield staged
    finally:
        shutil.rmtree(staged, ignore_errors=True)


def _deliver(staged: Path, final: Path) -> None:
    """Put the finished files in place, the record last: a folder with a record is whole."""
    staged.chmod(0o755)
    try:
        if not final.exists():
            staged.rename(final)
            return
        (final / "record.json").unlink(missing_ok=True)
        names = sorted(path.name for path in staged.iterdir())
        names.sort(key=lambda name: name == "record.json")
        for name in names:
            (staged / name).replace(final / name)
    except OSError as error:
        reason = error.strerror or type(error).__name__
        raise InputError("--out", str(final), f"a folder that can be written ({reason})") from error


def _run_child(
    design: TapDesign, folder: Path, tell: Callable[[str], None], limits: Limits
) -> dict[str, Any]:
    spawn = multiprocessing.get_context("spawn")
    receiver, sender = spawn.Pipe(duplex=False)
    child = spawn.Process(target=_child, args=(design, folder, sender, limits), daemon=True)
    child.start()
    sender.close()
    try:
        return _listen(child, receiver, tell, time.monotonic() + limits.seconds)
    finally:
        if child.is_alive():
            child.kill()
        child.join()
        receiver.close()


def _listen(
    child: Any,  # noqa: ANN401  (the context's own process class)
    receiver: Connection,
    tell: Callable[[str], None],
    deadline: float,
) -> dict[str, Any]:
    stage = STAGES[0]
    while True:
        if not receiver.poll(max(deadline - time.monotonic(), 0.0)):
            raise KernelError(stage, "took longer than allowed and was stopped")
        try:
            kind, content = receiver.recv()
        except EOFError:
            child.join()
            raise KernelError(stage, _died(child.exitcode)) from None
        if kind == "stage":
            stage = content
            tell(stage)
        elif kind == "error":
            raise content
        else:
            return content


def _died(code: int | None) -> str:
    if code is not None and code < 0:
        with contextlib.suppress(ValueError):
            return f"the kernel's process was ended by {signal.Signals(-code).name}"
    return f"the kernel's process ended without a result (exit code {code})"


def _child(design: TapDesign, folder: Path, sender: Connection, limits: Limits) -> None:
    # The parent alone answers to Ctrl-C; it ends this process.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    _limit_memory(limits.memory_mb)
    try:
        from tapmodel.pipeline import make  # noqa: PLC0415  (loads the kernel)

        sender.send(("record", make(design, folder, lambda name: sender.send(("stage", name)))))
    except MemoryError:
        sender.send(("error", KernelError("memory", f"needed more than {limits.memory_mb} MB")))
    except TapmodelError as error:
        sender.send(("error", error))
    except Exception as error:  # noqa: BLE001  (whatever the kernel throws must reach the user)
        what = f"{type(error).__name__}: {error}"
        sender.send(("error", KernelError("kernel", what)))
    finally:
        sender.close()
        # The kernel's own exit handlers can hang; everything of ours is written and closed.
        os._exit(0)


def _limit_memory(megabytes: int) -> None:
    try:
        import resource  # noqa: PLC0415  (not on every system)
    except ImportError:
        return
    _, hard = resource.getrlimit(resource.RLIMIT_AS)
    wanted = megabytes * 1_000_000
    soft = wanted if hard == resource.RLIM_INFINITY else min(wanted, hard)
    resource.setrlimit(resource.RLIMIT_AS, (soft, hard))
