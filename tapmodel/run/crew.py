"""Processes beside the one that answers the user: started at once, watched, ended together.

A crash, a hang or an interruption of the kernel must cost nothing but the run, and two cores are
there to be used. So the work is done by child processes. Each begins to load its libraries while
the job is still being designed, or before the command line is even read (`begin`); then it is
handed the job. What one child makes for another goes through the parent, in small messages;
whatever goes wrong in one ends all.

They are plain processes that hear and speak by their standard input, a socket: Python's own way to
spawn one starts a third for resources that none here has, and loads the parent's main module again.
"""

import contextlib
import gc
import importlib
import os
import signal
import subprocess
import sys
import time
from collections.abc import Sequence
from dataclasses import dataclass, field
from multiprocessing.connection import Connection, Pipe, wait
from types import TracebackType
from typing import Any, Self

from tapmodel.errors import InputError, KernelError, TapmodelError
from tapmodel.stages import Clock, Stage, Taken, Told
from tapmodel.system_libraries import missing


@dataclass(frozen=True, slots=True)
class Limits:
    """What a run may take: seconds in all, and address space of each process in MB."""

    seconds: float = 600.0
    memory_mb: int = 12_000


@dataclass(frozen=True, slots=True)
class Task:
    """What one process is there for.

    Attributes:
        name: of the process, in messages and in the record.
        do: `module:function`; the function takes a `Line` and what is `known`, loads what it needs
            and then hears the job.
        known: before there is a job.
    """

    name: str
    do: str
    known: tuple[object, ...] = ()


@dataclass(frozen=True, slots=True)
class Done:
    """What a process ended with.

    Attributes:
        result: of its function.
        taken: by stage.
        peak_memory_mb: the most it held.
        left_out: what was wanted and could not be made on this machine, and why.
    """

    result: Any
    taken: dict[Stage, Taken]
    peak_memory_mb: float
    left_out: tuple[str, ...] = ()


class Line:
    """A child's line to the parent."""

    def __init__(self, connection: Connection) -> None:
        """Speak and hear through `connection`."""
        self.clock = Clock()
        self.left_out: tuple[str, ...] = ()
        self._connection = connection

    def stage(self, stage: Stage) -> None:
        """Tell that `stage` begins."""
        self.clock.begin(stage)
        self._connection.send((_STAGE, stage))

    def pass_on(self, what: object) -> None:
        """Hand something small to the other child."""
        self._connection.send((_PASSED, what))

    def leave_out(self, what: str, reason: str | None) -> None:
        """Have the run's end tell that `what` is not made; nothing to tell without a reason."""
        if reason:
            self.left_out += (f"{what}: {reason}",)

    def hear(self) -> Any:  # noqa: ANN401  (whatever was sent)
        """The next that was sent to this child; waits for it."""
        self.clock.begin(Stage.WAITING)
        return self._connection.recv()


_STAGE, _PASSED, _FAILED, _DONE = "stage", "passed", "failed", "done"


class _Process:
    """A running process, and the line to it."""

    def __init__(self, module: str) -> None:
        """Start one that loads `module`, and then hears what it is there for."""
        self.connection, theirs = Pipe()
        command = [sys.executable, "-P", "-c", _ATTEND, module]
        # In a session of its own: Ctrl-C is the parent's to answer, which ends its children.
        self.popen = subprocess.Popen(  # noqa: S603  (our own code)
            command, stdin=theirs.fileno(), start_new_session=True
        )
        theirs.close()

    def end(self) -> None:
        """End it, whatever it does."""
        self.popen.kill()
        self.popen.wait()
        self.connection.close()


_ATTEND = "from tapmodel.run.crew import attend; attend()"
_BEGUN: dict[str, _Process] = {}
"""By the module that they load: processes that no crew has taken yet."""


def begin(*modules: str) -> None:
    """Start processes that a crew will want, before there is one."""
    _BEGUN.update({module: _Process(module) for module in modules})


def dismiss() -> None:
    """End the processes begun that no crew has taken."""
    while _BEGUN:
        _BEGUN.popitem()[1].end()


@dataclass(slots=True, eq=False)
class _Child:
    """A member of a crew as its parent sees it."""

    name: str
    process: _Process
    stage: Stage = Stage.LOADING
    done: Done | None = field(default=None)


class Crew:
    """Child processes that load at once and wait for a job; a context that ends them all."""

    def __init__(self, tasks: Sequence[Task], limits: Limits) -> None:
        """Start a process for every task, or take one that was begun for it."""
        self._limits = limits
        self._children: list[_Child] = []
        for task in tasks:
            module = _module(task)
            self._children.append(_Child(task.name, _BEGUN.pop(module, None) or _Process(module)))
            _send(self._children[-1], (task, limits))

    def __enter__(self) -> Self:
        """Nothing more to do."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """End every process, whatever it does."""
        self._end()

    def _end(self) -> None:
        for child in self._children:
            child.process.end()

    def work(self, job: object, tell: Told) -> dict[str, Done]:
        """Hand the job to every process and wait until all have done it.

        Args:
            job: what each process hears first.
            tell: told each stage as it begins.

        Returns:
            What each process ended with, by its name.

        Raises:
            KernelError: when one crashed, hung or ran out of memory; it names the stage.
            TapmodelError: whatever one raised.
        """
        try:
            return self._work(job, tell)
        except BaseException:
            # Nobody may write any more where the caller now clears away.
            self._end()
            raise

    def _work(self, job: object, tell: Told) -> dict[str, Done]:
        deadline = time.monotonic() + self._limits.seconds
        for child in self._children:
            _send(child, job)
        while busy := [child for child in self._children if child.done is None]:
            left = max(deadline - time.monotonic(), 0.0)
            ready = wait([child.process.connection for child in busy], left)
            if not ready:
                stage = busy[0].stage
                raise KernelError(
                    stage, f"took longer than {self._limits.seconds:g} s and was stopped"
                )
            for child in busy:
                if child.process.connection in ready:
                    self._listen(child, tell)
        return {child.name: child.done for child in self._children if child.done}

    def _listen(self, child: _Child, tell: Told) -> None:
        try:
            kind, content = child.process.connection.recv()
        except (EOFError, ConnectionError):
            raise KernelError(child.stage, _death(child.process.popen.wait())) from None
        if kind == _STAGE:
            child.stage = content
            tell(content)
        elif kind == _PASSED:
            for other in self._children:
                if other is not child:
                    _send(other, content)
        elif kind == _FAILED:
            raise content
        else:
            child.done = content


def _send(child: _Child, what: object) -> None:
    # A child that cannot hear has failed, and its own last words say how.
    with contextlib.suppress(ConnectionError):
        child.process.connection.send(what)


def _module(task: Task) -> str:
    return task.do.partition(":")[0]


def _death(code: int) -> str:
    if code < 0:
        with contextlib.suppress(ValueError):
            ended = signal.Signals(-code)
            cause = "; a system out of memory does that" if ended.name == "SIGKILL" else ""
            return f"the process at it was ended by {ended.name}{cause}"
    return f"the process at it ended without a result (exit code {code})"


def attend() -> None:
    """Everything that happens in a child: load the module named, hear the task, do it."""
    # The parent alone answers to Ctrl-C; it ends this process.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    # Little of what a run makes forms circles, and to look for them takes a tenth of its time.
    gc.set_threshold(100_000, 50, 100)
    connection = Connection(os.dup(0))
    # A process that this one starts must not hold the line.
    os.dup2(os.open(os.devnull, os.O_RDONLY), 0)
    try:
        # A parent that is gone hears nothing and needs nothing.
        with contextlib.suppress(EOFError, ConnectionError):
            connection.send(_outcome(Line(connection), sys.argv[1]))
    finally:
        connection.close()
        # The kernel's own exit handlers can hang; everything of ours is written and closed.
        os._exit(0)


def _outcome(line: Line, module: str) -> tuple[str, object]:
    limits = Limits()
    try:
        line.stage(Stage.LOADING)
        loaded = importlib.import_module(module)
        task, limits = line.hear()
        line.clock.begin(Stage.LOADING)
        _limit_memory(limits.memory_mb)
        name = task.do.partition(":")[2]
        result = getattr(loaded, name)(line, *task.known)
        return _DONE, Done(result, line.clock.stop(), _peak_memory_mb(), line.left_out)
    except MemoryError:
        return _FAILED, KernelError(Stage.MEMORY, f"needed more than {limits.memory_mb} MB")
    except TapmodelError as error:
        return _FAILED, error
    except (EOFError, ConnectionError):
        raise
    except ImportError as error:
        return _FAILED, missing(error) or KernelError(Stage.LOADING, str(error))
    except OSError as error:
        reason = error.strerror or type(error).__name__
        return _FAILED, InputError("output", str(error.filename or ""), f"files ({reason})")
    except Exception as error:  # noqa: BLE001  (whatever the kernel throws must reach the user)
        return _FAILED, KernelError(Stage.KERNEL, f"{type(error).__name__}: {error}")


def _limit_memory(megabytes: int) -> None:
    try:
        import resource  # noqa: PLC0415  (not on every system)
    except ImportError:
        return
    _, hard = resource.getrlimit(resource.RLIMIT_AS)
    wanted = megabytes * 1_000_000
    soft = wanted if hard == resource.RLIM_INFINITY else min(wanted, hard)
    resource.setrlimit(resource.RLIMIT_AS, (soft, hard))


def _peak_memory_mb() -> float:
    try:
        import resource  # noqa: PLC0415  (not on every system)
    except ImportError:
        return 0.0
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    # Linux counts in kB, macOS in bytes.
    return peak / (1e6 if sys.platform == "darwin" else 1e3)
