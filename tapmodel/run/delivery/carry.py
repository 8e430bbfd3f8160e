"""What stays of a folder when a tap is delivered into it."""

import contextlib
import errno
import os
import shutil
import stat
import sys
from collections.abc import Generator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from tapmodel.export.atomic import sync
from tapmodel.run.delivery.folder import RECORD, entries, free_name, read_record, vouched
from tapmodel.run.record.parts import design_part


@dataclass(slots=True)
class Carried:
    """What was brought over.

    Attributes:
        record: of the same tap's earlier delivery, empty when there is none.
        files: its entries for the files that stay.
        kept: files of the user's that had to take another name: the old name and the new.
        replaced: when the other tap was made that stood there; empty when none did.
    """

    record: dict[str, Any] = field(default_factory=dict[str, Any])
    files: list[dict[str, Any]] = field(default_factory=list[dict[str, Any]])
    kept: dict[str, str] = field(default_factory=dict[str, str])
    replaced: str = ""


def carry(old: Path, new: Path, record: dict[str, Any]) -> Carried:
    """Bring into `new` what is to stay of `old`.

    Stays: what the old record vouches for, when it is of the very same tap and not made anew; and
    whatever no record vouches for, since it is the user's, under another name where its own is
    taken. `old` is left as it is.

    Args:
        old: the folder delivered before, may be missing.
        new: the folder with the new files.
        record: of the new files.

    Raises:
        OSError: when something cannot be brought over.
    """
    carried = Carried()
    if not old.is_dir():
        return carried
    with _unchanged(old):
        _carry(old, new, record, carried)
    return carried


@contextlib.contextmanager
def _unchanged(folder: Path) -> Generator[None]:
    """Without locks another run may swap the folder meanwhile.

    What that delivers would not be in the record that was read, and pass for the user's own.
    """
    before = folder.stat()
    yield
    if not os.path.samestat(before, folder.stat()):
        raise OSError(errno.EBUSY, "another run delivers there", str(folder))


def _carry(old: Path, new: Path, record: dict[str, Any], carried: Carried) -> None:
    before, intact = read_record(old), vouched(old)
    same = before is not None and design_part(before) == design_part(record)
    listed = _paths(before)
    if before is not None and same:
        carried.record = before
    elif before is not None:
        carried.replaced = str(before.get("made", "unknown date"))
    for entry in entries(old):
        name = entry.as_posix()
        if name == RECORD and before is not None:
            continue
        if (new / entry).is_dir() and (old / entry).is_dir() and not (old / entry).is_symlink():
            continue
        taken = os.path.lexists(new / entry) or name == RECORD
        if name in intact:
            if same and not taken:
                _bring(old / entry, new / entry)
                carried.files.append(intact[name])
            continue
        # A file of another tap that the user has changed may not pass for one of this tap.
        goal = entry
        if taken or (name in listed and not same):
            goal = free_name(entry, old, new)
            carried.kept[name] = goal.as_posix()
        _bring(old / entry, new / goal)


def _paths(record: dict[str, Any] | None) -> set[str]:
    with contextlib.suppress(TypeError, KeyError):
        return {entry["path"] for entry in (record or {}).get("files", [])}
    return set()


def _bring(source: Path, goal: Path) -> None:
    """The same file under another name; a copy where the file system has no second names."""
    if source.is_dir() and not source.is_symlink():
        goal.mkdir(parents=True, exist_ok=True)
        return
    goal.parent.mkdir(parents=True, exist_ok=True)
    try:
        _share(source, goal)
    except (OSError, NotImplementedError):
        if not (source.is_symlink() or source.is_file()):
            raise  # a pipe or the like would never end
        shutil.copy2(source, goal, follow_symlinks=False)
        if not goal.is_symlink():
            sync(goal)


def _share(source: Path, goal: Path) -> None:
    """Give a file a second name.

    Raises:
        OSError: when it cannot have one.
        NotImplementedError: the same, of a link on some systems.
    """
    if sys.platform == "win32" and not source.stat().st_mode & stat.S_IWRITE:
        # Windows removes no file that may not be written, and the old name is to be removed.
        raise PermissionError(errno.EACCES, "may not be written", str(source))
    os.link(source, goal, follow_symlinks=False)
