"""A hidden folder in which a run makes its files before anyone sees them."""

import contextlib
import os
import shutil
import tempfile
from collections.abc import Generator
from pathlib import Path

from tapmodel.delivery.refusal import unusable
from tapmodel.errors import InputError


@contextlib.contextmanager
def staging(out: Path, name: str) -> Generator[Path]:
    """A hidden folder inside `out`, gone at the end whatever happens."""
    made = not out.exists()
    try:
        out.mkdir(parents=True, exist_ok=True)
        if (out / name).is_symlink() or ((out / name).exists() and not (out / name).is_dir()):
            raise InputError("--out", str(out / name), "a name that is free or a folder")
        _sweep(out, name)
        staged = Path(tempfile.mkdtemp(prefix=f".{name}.{os.getpid()}.", dir=out))
    except OSError as error:
        raise unusable(out, error) from error
    try:
        yield staged
    finally:
        shutil.rmtree(staged, ignore_errors=True)
        if made:
            with contextlib.suppress(OSError):
                out.rmdir()


def _sweep(out: Path, name: str) -> None:
    """Remove staging folders of runs that were killed."""
    for left in out.glob(f".{name}.*.*"):
        owner = left.name.removeprefix(f".{name}.").partition(".")[0]
        if owner.isdigit() and not _alive(int(owner)):
            shutil.rmtree(left, ignore_errors=True)


def _alive(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except OSError:
        return True
    return True
