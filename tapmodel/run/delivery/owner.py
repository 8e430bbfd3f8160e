"""Who works in a staging folder, and whether that process is surely gone.

A process id tells nothing: it may be of another machine, an earlier boot or another container, or
be given anew. A lock tells: the system holds it as long as its process lives and no longer. But
only the system that gave a lock knows of it, so the owner file names that too, and folders of other
machines are left alone.
"""

import contextlib
import json
import os
import platform
import uuid
from dataclasses import asdict, dataclass
from pathlib import Path

from tapmodel.export.clock import stamp
from tapmodel.run.delivery.locks import lock

_FILE = "owner.json"
_PROGRAM = "tapmodel"


@dataclass(frozen=True, slots=True)
class Owner:
    """What stands in the owner file.

    Attributes:
        program: ours.
        name: of the tap.
        system: the running system that holds the lock, empty when it gave none.
        pid, started, host: for people who look into the folder.
    """

    program: str
    name: str
    system: str
    pid: int
    started: str
    host: str


def claim(work: Path, name: str) -> int:
    """Write the owner file of a new folder and lock it.

    Args:
        work: the folder.
        name: of the tap.

    Returns:
        The handle that holds the lock; close it last.

    Raises:
        OSError: when it cannot be written.
    """
    handle = os.open(work / _FILE, os.O_RDWR | os.O_CREAT | os.O_EXCL, 0o644)
    try:
        # Locked before it says anything: an empty owner file proves nothing to others.
        system = _system() if lock(handle, wait=False) else ""
        owner = Owner(_PROGRAM, name, system, os.getpid(), stamp().isoformat(), platform.node())
        os.write(handle, json.dumps(asdict(owner), indent=1).encode())
        os.fsync(handle)
    except BaseException:
        os.close(handle)
        raise
    return handle


def owner_of(work: Path) -> Owner | None:
    """The owner file of a folder; None when it is not ours, or was not written whole."""
    with contextlib.suppress(OSError, ValueError, TypeError):
        owner = Owner(**json.loads((work / _FILE).read_bytes()))
        if owner.program == _PROGRAM and Path(owner.name).name == owner.name:
            return owner
    return None


def is_gone(work: Path) -> bool:
    """Whether the process that owns a folder has surely ended."""
    owner = owner_of(work)
    if owner is None or not owner.system or owner.system != _system():
        return False
    try:
        handle = os.open(work / _FILE, os.O_RDWR)
    except OSError:
        return False
    try:
        return lock(handle, wait=False)
    finally:
        os.close(handle)


def disown(work: Path) -> None:
    """Remove the owner file."""
    (work / _FILE).unlink(missing_ok=True)


def _system() -> str:
    """The running system: all its containers share it, no other machine and no later boot does."""
    with contextlib.suppress(OSError):
        return Path("/proc/sys/kernel/random/boot_id").read_text("ascii").strip()
    return f"{platform.node()} {uuid.getnode():012x}"
