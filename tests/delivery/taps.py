"""Stub taps for tests of delivery: small files and a record, delivered as the commands do."""

import hashlib
import json
import os
import signal
import warnings
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from tapmodel.run.delivery import moments, swap
from tapmodel.run.delivery.folder import entries
from tapmodel.run.delivery.place import deliver
from tapmodel.run.delivery.staging import staging

NAME = "tap"


def record_of(rake: float, name: str = NAME) -> dict[str, Any]:
    """A record of a design that only its rake tells from others."""
    return {"schema": "tapmodel.record/1", "name": name, "flutes": {"rake": rake}}


def give(out: Path, files: Mapping[str, str], rake: float, **more: Any) -> dict[str, Any]:  # noqa: ANN401
    """Deliver files of a tap to `out/tap`."""
    record = record_of(rake) | more
    with staging(out, NAME) as staged:
        for name, text in files.items():
            (staged / name).parent.mkdir(exist_ok=True)
            (staged / name).write_text(text)
        return deliver(staged, out / NAME, record)


def content(folder: Path) -> dict[str, str]:
    """Text of every file but the record, by path."""
    found = {e.as_posix(): folder / e for e in entries(folder)}
    return {n: p.read_text() for n, p in found.items() if n != "record.json" and p.is_file()}


def vouched(folder: Path) -> dict[str, str]:
    """Text of every file that the record lists; each must have its check sum."""
    files = json.loads((folder / "record.json").read_text())["files"]
    for file in files:
        data = (folder / file["path"]).read_bytes()
        assert len(data) == file["bytes"], file
        assert hashlib.sha256(data).hexdigest() == file["sha256"], file
    return {file["path"]: (folder / file["path"]).read_text() for file in files}


def forked(work: Callable[[], object]) -> int:
    """Number of a process of its own that does some work and ends with 0 when it went well."""
    with warnings.catch_warnings():
        # Newer Pythons warn of threads, of which the test runner has some; none holds a lock here.
        warnings.simplefilter("ignore", DeprecationWarning)
        child = os.fork()
    if child == 0:
        try:
            work()
            os._exit(0)
        finally:
            os._exit(1)
    return child


def killed_at(moment: str, work: Callable[[], object], *, exchanges: bool = True) -> bool:
    """Run `work` in a process that ends by SIGKILL at a moment; False when it never came."""

    def watched() -> None:
        moments.passed = lambda now: os.kill(os.getpid(), signal.SIGKILL * (now == moment))
        if not exchanges:
            swap.exchange = lambda _one, _other: False
        work()

    _, status = os.waitpid(forked(watched), 0)
    return os.WIFSIGNALED(status) and os.WTERMSIG(status) == signal.SIGKILL
