"""The kernel's own process, with limits on time and memory.

A crash, a hang or an interruption of the kernel must cost nothing but the run. So the pipeline
runs in a child process that writes into a staging folder; the parent watches it and has the folder
delivered only when all is proved.
"""

import contextlib
import multiprocessing
import os
import signal
import time
from collections.abc import Callable
from dataclasses import dataclass
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any

from tapmodel.delivery.place import deliver
from tapmodel.delivery.staging import staging
from tapmodel.design.tap_design import TapDesign
from tapmodel.errors import KernelError, TapmodelError
from tapmodel.wish import Wish

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
    "pictures",
    "papers",
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
    wish: Wish | None = None,
    limits: Limits | None = None,
) -> dict[str, Any]:
    """Run the pipeline for `design` and deliver its files to `out/<name>`.

    Args:
        design: every number of the tap.
        out: folder for results; made if missing.
        tell: told each stage as it begins.
        wish: which files; all by default.
        limits: on the child process.

    Returns:
        The record.

    Raises:
        InputError: when `out` cannot be written.
        KernelError: when a stage failed, crashed, hung or ran out of memory; it names the stage.
    """
    with staging(out, design.name) as staged:
        record = _run_child("make", (design, staged, wish or Wish()), tell, limits or Limits())
        return deliver(staged, out / design.name, record)


def inspect(design: TapDesign, file: Path, tell: Callable[[str], None]) -> dict[str, Any]:
    """Compare a STEP file with `design`, in a child process as well; see `pipeline.inspect`."""
    return _run_child("inspect", (design, file), tell, Limits())


def _run_child(
    task: str, arguments: tuple[object, ...], tell: Callable[[str], None], limits: Limits
) -> dict[str, Any]:
    spawn = multiprocessing.get_context("spawn")
    receiver, sender = spawn.Pipe(duplex=False)
    child = spawn.Process(target=_child, args=(task, arguments, sender, limits), daemon=True)
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


def _child(task: str, arguments: tuple[object, ...], sender: Connection, limits: Limits) -> None:
    # The parent alone answers to Ctrl-C; it ends this process.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    _limit_memory(limits.memory_mb)
    try:
        from tapmodel import pipeline  # noqa: PLC0415  (loads the kernel)

        def tell(stage: str) -> None:
            sender.send(("stage", stage))

        sender.send(("record", getattr(pipeline, task)(*arguments, tell)))
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
