"""What an earlier run left behind when it was killed: ended, or cleared away."""

import contextlib
import os
import shutil
import stat
import sys
from pathlib import Path

from tapmodel.errors import InputError
from tapmodel.export.atomic import sync
from tapmodel.export.manifest import file_record
from tapmodel.export.renaming import rename
from tapmodel.run.delivery import moments
from tapmodel.run.delivery.folder import RECORD, entries, free_name, read_record, vouched
from tapmodel.run.delivery.owner import disown, is_gone, owner_of
from tapmodel.run.delivery.swap import DONE, FILES, OLD, WHOLE

PREFIX = ".tapmodel-"
"""Of staging folders; their names are drawn by lot and say nothing of the tap."""


def recover(out: Path, name: str, *, alone: bool) -> None:
    """End deliveries into `out` that were killed, and remove the staging folders they left.

    Only a folder with an owner file of ours is touched, and then only when its process has surely
    ended, or was in the middle of a delivery that nobody but us can be at.

    Args:
        out: folder for results.
        name: of the tap that is to be delivered.
        alone: whether no other run is delivering there.

    Raises:
        InputError: when what stood in the tap's folder lies in a staging folder that cannot be
            touched.
    """
    for work in sorted(out.glob(f"{PREFIX}*")):
        owner = None if work.is_symlink() else owner_of(work)
        if owner is None:
            continue
        if not _is_begun(work):
            if is_gone(work):
                clear(work)
            continue
        if alone or is_gone(work):
            with contextlib.suppress(OSError):
                settle(work, out / owner.name)
        if owner.name == name and (work / OLD).is_dir() and not os.path.lexists(out / name):
            allowed = f"a folder no other run delivers to; what it held is in {work / OLD}"
            raise InputError("--out", str(out / name), allowed)


def _is_begun(work: Path) -> bool:
    return (work / WHOLE).is_dir() or (work / OLD).is_dir()


def settle(work: Path, final: Path) -> None:
    """End a delivery that was begun, and remove its staging folder.

    A kill leaves `final` old or new; missing only between the two renames, and then both are here.

    Raises:
        OSError: when the system refuses; then nothing is removed.
    """
    if not os.path.lexists(final):
        rename(work / (WHOLE if (work / WHOLE).is_dir() else OLD), final)
        sync(final.parent)
    moments.passed("settled")
    for left in (work / OLD, work / WHOLE):
        if left.is_dir():
            _rescue(left, final)
            # From here on it is no longer asked what of it might be missing in the final folder.
            _remove(work / DONE)
            rename(left, work / DONE)
    moments.passed("cleared")
    clear(work)


def clear(work: Path) -> None:
    """Remove a staging folder, its owner file last; what was begun stays for `settle`."""
    for name in (FILES, DONE):
        _remove(work / name)
    # What is left, since somebody has it open, is still ours to remove: the next run will.
    if not any((work / name).exists() for name in (FILES, DONE, WHOLE, OLD)):
        with contextlib.suppress(OSError):
            disown(work)
            work.rmdir()


def _remove(folder: Path) -> None:
    if sys.platform == "win32":
        # Windows removes no file that may not be written.
        for place, _, files in os.walk(folder):
            for file in files:
                with contextlib.suppress(OSError):
                    path = Path(place, file)
                    if not path.stat().st_mode & stat.S_IWRITE:
                        path.chmod(stat.S_IWRITE)
    shutil.rmtree(folder, ignore_errors=True)


def _rescue(left: Path, final: Path) -> None:
    """Save what came into the old folder after it was looked through."""
    known, has_record = vouched(left), read_record(left) is not None
    strangers = [
        entry
        for entry in entries(left)
        if entry.as_posix() not in known
        and not (left / entry).is_dir()
        and not (entry.as_posix() == RECORD and has_record)
    ]
    for entry in strangers:
        if not _is_there(left / entry, final):
            goal = entry if not os.path.lexists(final / entry) else free_name(entry, final)
            (final / goal).parent.mkdir(parents=True, exist_ok=True)
            rename(left / entry, final / goal)


def _is_there(path: Path, folder: Path) -> bool:
    """Whether a folder holds this very file, or one with the same content."""
    others = [folder / entry for entry in entries(folder)]
    if path.is_symlink():
        return any(p.is_symlink() and p.readlink() == path.readlink() for p in others)
    mine = path.stat()
    alike = [p for p in others if not p.is_symlink() and p.stat().st_size == mine.st_size]
    # A file system without numbers of its own for files gives 0.
    if mine.st_ino and any(os.path.samestat(p.stat(), mine) for p in alike):
        return True
    digest = file_record(path, path.parent).sha256
    return any(p.is_file() and file_record(p, folder).sha256 == digest for p in alike)
