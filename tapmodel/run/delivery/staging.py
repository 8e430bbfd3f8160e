"""A hidden folder in which a run makes its files before anyone sees them."""

import contextlib
import os
import secrets
from collections.abc import Generator
from pathlib import Path

from tapmodel.errors import InputError
from tapmodel.export.refusal import is_full, refused
from tapmodel.file_names import refuse_strange
from tapmodel.run.delivery import moments
from tapmodel.run.delivery.fate import FATE, NOTHING
from tapmodel.run.delivery.folder import RECORD, read_record
from tapmodel.run.delivery.locks import alone
from tapmodel.run.delivery.owner import claim
from tapmodel.run.delivery.recovery import PREFIX, clear, recover
from tapmodel.run.delivery.swap import FILES

_PLACE = "a folder that can be written"


@contextlib.contextmanager
def staging(out: Path, name: str) -> Generator[Path]:
    """A new folder inside `out` for the files of one tap; see `place.deliver`.

    What earlier runs left there when they were killed is put in order first.

    Args:
        out: folder for results; made if missing.
        name: of the tap.

    Yields:
        An empty folder, gone at the end whatever happens.

    Raises:
        InputError: when `out` has a name that not all systems take or cannot be written, or the
            disk is full in the block.
    """
    refuse_strange("--out", out)
    # Path.exists() would raise for a name that is too long.
    missing = [f for f in (out, *out.parents) if not os.path.exists(f)]  # noqa: PTH110
    final, handle, work = out / name, None, out / (PREFIX + secrets.token_hex(8))
    FATE.words = NOTHING
    try:
        handle = _begin(out, work, name)
        FATE.words = NOTHING + _standing(final)
        moments.passed("staged")
        yield work / FILES
    except OSError as error:
        if handle is None or is_full(error):
            raise refused("--out", final, _PLACE, error) from error
        raise
    except InputError as error:
        inside = str(work / FILES)
        if inside not in str(error.value):
            raise
        shown = str(error.value).replace(inside, str(final))
        raise InputError("--out", shown, error.allowed) from error
    finally:
        if handle is not None:
            os.close(handle)
        with contextlib.suppress(OSError):
            clear(work)
        for folder in missing:
            with contextlib.suppress(OSError):
                folder.rmdir()


def _begin(out: Path, work: Path, name: str) -> int:
    final = out / name
    out.mkdir(parents=True, exist_ok=True)
    if final.is_symlink() or (final.exists() and not final.is_dir()):
        raise InputError("--out", str(final), "a name that is free or a folder")
    with alone(out) as sure:
        recover(out, name, alone=sure)
        work.mkdir()
        (work / FILES).mkdir()
        return claim(work, name)


def _standing(final: Path) -> str:
    """What stands in the folder, as the rest of a sentence."""
    if not final.is_dir():
        return ""
    made = (read_record(final) or {}).get("made")
    which = f"the tap made {made}" if made else "what it held"
    return f"; {final} still holds {which}" if (final / RECORD).exists() else ""
