"""Finished files put in their place."""

import contextlib
import os
from collections.abc import Generator
from pathlib import Path

from tapmodel.delivery.refusal import unusable


def deliver(staged: Path, final: Path) -> None:
    """Put the finished files in place, the record last: a folder with a record is whole."""
    staged.chmod(0o755)
    try:
        with _alone(final.parent):
            final.mkdir(exist_ok=True)
            (final / "record.json").unlink(missing_ok=True)
            names = sorted(p.relative_to(staged) for p in staged.rglob("*") if p.is_file())
            names.sort(key=lambda name: name.name == "record.json")
            for name in names:
                (final / name).parent.mkdir(exist_ok=True)
                (staged / name).replace(final / name)
    except OSError as error:
        raise unusable(final, error) from error


@contextlib.contextmanager
def _alone(folder: Path) -> Generator[None]:
    """No other run delivers into `folder` meanwhile, where the system has such locks."""
    try:
        import fcntl  # noqa: PLC0415  (not on every system)
    except ImportError:
        yield
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)
