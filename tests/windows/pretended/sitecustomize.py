"""Python as the program finds it on Windows; loaded before anything else where PYTHONPATH says so.

The program's own modules see another `sys.platform`, no module and no name that Windows lacks, and
its locks. Files are held to its rules for every module: what is open is not renamed or removed,
nothing is renamed over a folder, no folder is opened, and what may only be read is neither synced
nor removed. Libraries are not tried: they have releases of their own for Windows.

Source: the availability notes of Python's library reference (from memory).
"""

import builtins
import contextlib
import errno
import fcntl
import os
import shutil
import signal
import socket
import stat
import struct
import subprocess
import sys
import types
from collections.abc import Generator, Mapping
from pathlib import Path

import psutil  # whose release for this system wants a module that is hidden below

NO_MODULES = ("resource", "fcntl", "termios", "pwd", "grp", "tty", "pty", "syslog", "readline")
NO_NAMES = {
    "os": (
        "chown chroot confstr ctermid fchdir fchmod fchown fdatasync fork forkpty geteuid getegid "
        "getgid getgroups getloadavg getpgid getpgrp getpriority getsid getuid kill killpg lchown "
        "lockf mkfifo mknod nice openpty pathconf pipe2 posix_fadvise posix_fallocate posix_spawn "
        "pread pwrite register_at_fork sched_getaffinity sendfile setgid setpgid setpriority "
        "setsid setuid setxattr statvfs sync sysconf tcgetpgrp ttyname uname wait wait3 wait4 "
        "waitid WIFEXITED WIFSIGNALED WTERMSIG O_CLOEXEC O_DIRECTORY O_NOFOLLOW O_NONBLOCK O_SYNC"
    ),
    "signal": (
        "SIGALRM SIGBUS SIGCHLD SIGCONT SIGHUP SIGKILL SIGPIPE SIGQUIT SIGSTOP SIGTSTP SIGUSR1 "
        "SIGUSR2 alarm getitimer pause pthread_kill pthread_sigmask setitimer siginterrupt sigwait"
    ),
    "socket": "AF_UNIX socketpair send_fds recv_fds",
}
"""`os.kill` exists on Windows, but ends a process whatever the number: nobody may use it."""


class Pretended(types.ModuleType):
    """A module with some names missing and some others."""

    def __init__(self, real: types.ModuleType, other: Mapping[str, object]) -> None:
        """Of a `real` module, with the `other` names in it."""
        super().__init__(real.__name__)
        missing = frozenset(NO_NAMES.get(real.__name__, "").split())
        vars(self).update(other, _real=real, _missing=missing)

    def __getattr__(self, name: str) -> object:
        """What the real module has under a name that Windows knows."""
        if name in vars(self)["_missing"]:
            raise AttributeError(f"module {self.__name__!r} has no attribute {name!r}")
        return getattr(vars(self)["_real"], name)

    def __setattr__(self, name: str, value: object) -> None:
        """Change the real module."""
        setattr(vars(self)["_real"], name, value)


class Popen(subprocess.Popen):
    """Takes what Windows takes."""

    def __init__(self, *of: object, creationflags: int = 0, **how: object) -> None:
        """Start a process."""
        strange = {"pass_fds", "preexec_fn", "start_new_session", "process_group"} & how.keys()
        if strange:
            raise ValueError(f"{strange} are not supported on Windows platforms")
        super().__init__(*of, start_new_session=bool(creationflags & 0x200), **how)


LK_NBLCK = 2


def locking(handle: int, mode: int, length: int) -> None:
    """A lock of one opened handle on some bytes of a file, as Windows has them."""
    place = os.lseek(handle, 0, os.SEEK_CUR)
    wanted = struct.pack("hhqqi4x", fcntl.F_WRLCK, os.SEEK_SET, place, length, 0)
    assert mode == LK_NBLCK
    try:
        fcntl.fcntl(handle, fcntl.F_OFD_SETLK, wanted)
    except OSError:
        raise PermissionError(errno.EACCES, "Permission denied") from None


def _is_held(path: Path) -> bool:
    """Whether any process works in a folder or has a file open there."""
    wanted = os.path.realpath(path)
    return any(held == wanted or held.startswith(wanted + os.sep) for held in _all_held())


def _all_held() -> Generator[str]:
    for process in filter(str.isdecimal, os.listdir("/proc")):  # noqa: PTH208
        # Processes and what they have open come and go meanwhile.
        with contextlib.suppress(OSError):
            yield os.readlink(f"/proc/{process}/cwd")  # noqa: PTH115  (the text as it stands)
            for number in os.listdir(f"/proc/{process}/fd"):  # noqa: PTH208
                with contextlib.suppress(OSError):
                    yield os.readlink(f"/proc/{process}/fd/{number}")  # noqa: PTH115


def _refuse_held(path: Path) -> None:
    if not path.is_symlink() and path.exists() and _is_held(path):
        words = "The process cannot access the file because it is being used by another process"
        raise PermissionError(errno.EACCES, words, str(path))


real_open, real_fsync, real_rename = os.open, os.fsync, os.rename
real_replace, real_unlink = os.replace, os.unlink


@contextlib.contextmanager
def _at_once() -> Generator[None]:
    """No other process opens or removes a file meanwhile: to look and to remove are one step."""
    handle = real_open(Path(__file__).parent, os.O_RDONLY)
    try:
        fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)


def _open(path: object, flags: int, *mode: int, **how: object) -> int:
    if isinstance(path, str | Path) and Path(path).is_dir():
        raise PermissionError(errno.EACCES, "Permission denied", str(path))
    with _at_once():
        return real_open(path, flags, *mode, **how)


def _fsync(handle: int) -> None:
    if fcntl.fcntl(handle, fcntl.F_GETFL) & os.O_ACCMODE == os.O_RDONLY:
        raise OSError(errno.EBADF, "Bad file descriptor")
    real_fsync(handle)


def _rename(one: object, other: object) -> None:
    if os.path.lexists(other):
        raise FileExistsError(errno.EEXIST, "Cannot create a file when it exists", str(other))
    _refuse_held(Path(one))
    real_rename(one, other)


def _replace(one: object, other: object) -> None:
    if Path(other).is_dir():
        raise PermissionError(errno.EACCES, "Access is denied", str(other))
    _refuse_held(Path(one))
    _refuse_held(Path(other))
    real_replace(one, other)


def _unlink(path: object) -> None:
    file = Path(path)
    if not file.is_symlink() and file.exists() and not file.stat().st_mode & stat.S_IWRITE:
        raise PermissionError(errno.EACCES, "Access is denied", str(path))
    with _at_once():
        _refuse_held(file)
        real_unlink(path)


os.open, os.fsync, os.rename, os.replace = _open, _fsync, _rename, _replace
os.unlink = os.remove = _unlink
shutil._use_fd_functions = False

msvcrt = types.ModuleType("msvcrt")
vars(msvcrt).update(locking=locking, LK_NBLCK=LK_NBLCK)
PRETENDED: dict[str, types.ModuleType] = {
    "os": Pretended(os, {"name": "nt"}),
    "sys": Pretended(sys, {"platform": "win32"}),
    "signal": Pretended(signal, {}),
    "socket": Pretended(socket, {}),
    "subprocess": Pretended(
        subprocess,
        {"Popen": Popen, "CREATE_NEW_PROCESS_GROUP": 0x200, "CREATE_NO_WINDOW": 0x8000000},
    ),
    "msvcrt": msvcrt,
}
assert psutil
sys.modules.update(dict.fromkeys(NO_MODULES))
real_import = builtins.__import__


def _import(name: str, *how: object, **more: object) -> types.ModuleType:
    asker = str((how[0] if how else more.get("globals") or {}).get("__name__", ""))
    if asker.partition(".")[0] == "tapmodel":
        root = name.partition(".")[0]
        if root in PRETENDED and root in {name, "os"}:
            return PRETENDED[root]
    return real_import(name, *how, **more)


builtins.__import__ = _import
