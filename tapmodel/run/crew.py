"""Processes beside the one that answers the user: started at once, watched, ended together.

A crash, a hang or an interruption of the kernel must cost nothing but the run, and two cores are
there to be used. So the work is done by child processes. Each begins to load its libraries while
the job is still being designed, or before the command line is even read (`begun`); then it is
handed the job. What one child makes for another goes through the parent, in small messages;
whatever goes wrong in one ends all.

They are plain processes that hear by their standard input and speak by their standard output
(`pipes`): Python's own way to spawn one starts a third for resources that none here has, and loads
the parent's main module again.
"""

import contextlib
import gc
import importlib
import os
import signal
import sys
import time
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from queue import Empty, SimpleQueue
from types import TracebackType
from typing import IO, Any, Self

from tapmodel.errors import InputError, KernelError, TapmodelError
from tapmodel.out_of_memory import ran_out
from tapmodel.run import memory
from tapmodel.run.begun import taken
from tapmodel.run.pipes import GoneError, listen, speak, understood
from tapmodel.run.process import Process, death
from tapmodel.stages import Clock, OnStage, Stage, Taken
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

    def __init__(self, hears: IO[bytes], speaks: IO[bytes]) -> None:
        """Hear and speak through these pipes; the process ends with the first of them."""
        self.clock = Clock()
        self.left_out: tuple[str, ...] = ()
        self._heard = SimpleQueue[bytes]()
        self._speaks = speaks
        listen(hears, self._hear)

    def _hear(self, message: bytes | None) -> None:
        if message is None:
            # A parent that is gone hears nothing and needs nothing.
            os._exit(0)
        self._heard.put(message)

    def say(self, kind: str, content: object) -> None:
        """Tell the parent."""
        speak(self._speaks, (kind, content))

    def stage(self, stage: Stage) -> None:
        """Tell that `stage` begins."""
        self.clock.begin(stage)
        self.say(_STAGE, stage)

    def pass_on(self, what: object) -> None:
        """Hand something small to the other child."""
        self.say(_PASSED, what)

    def leave_out(self, what: str, reason: str | None) -> None:
        """Have the run's end tell that `what` is not made; nothing to tell without a reason."""
        if reason:
            self.left_out += (f"{what}: {reason}",)

    def hear(self) -> Any:  # noqa: ANN401  (whatever was sent)
        """The next that was sent to this child; waits for it."""
        self.clock.begin(Stage.WAITING)
        return understood(self._heard.get())


_BORN, _STAGE, _PASSED, _FAILED, _DONE = "born", "stage", "passed", "failed", "done"


@dataclass(slots=True, eq=False)
class _Child:
    """A member of a crew as its parent sees it."""

    name: str
    process: Process
    watch: memory.Watch | None = None
    stage: Stage = Stage.LOADING
    done: Done | None = field(default=None)


_LOOK = 0.2
"""Seconds between two looks at the clock, the memory and, on Windows, whether the user stops."""


class Crew:
    """Child processes that load at once and wait for a job; a context that ends them all."""

    def __init__(self, tasks: Sequence[Task], limits: Limits) -> None:
        """Start a process for every task, or take one that was begun for it."""
        self._limits = limits
        self._children: list[_Child] = []
        self._heard = SimpleQueue[tuple[_Child, bytes | None]]()
        for task in tasks:
            process = taken(_module(task))
            child = _Child(task.name, process)
            self._children.append(child)
            process.listen(partial(self._hear, child))
            _send(child, (task, limits))

    def _hear(self, child: _Child, message: bytes | None) -> None:
        self._heard.put((child, message))

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
        self.end()

    def end(self) -> None:
        """End every process; whoever waits for their work in another thread has it fail."""
        for child in self._children:
            child.process.end()

    def work(
        self,
        jobs: Mapping[str, object],
        on_stage: OnStage,
        meanwhile: Callable[[], None] = lambda: None,
    ) -> dict[str, Done]:
        """Hand every process its job and wait until all have done it.

        Args:
            jobs: what each process hears first, by its name.
            on_stage: told each stage as it begins.
            meanwhile: done here while the processes work.

        Returns:
            What each process ended with, by its name.

        Raises:
            KernelError: when one crashed, hung or ran out of memory; it names the stage.
            TapmodelError: whatever one raised.
        """
        try:
            return self._work(jobs, on_stage, meanwhile)
        except BaseException:
            # Nobody may write any more where the caller now clears away.
            self.end()
            raise

    def _work(
        self, jobs: Mapping[str, object], on_stage: OnStage, meanwhile: Callable[[], None]
    ) -> dict[str, Done]:
        deadline = time.monotonic() + self._limits.seconds
        for child in self._children:
            _send(child, jobs[child.name])
        meanwhile()
        while busy := [child for child in self._children if child.done is None]:
            try:
                child, message = self._heard.get(timeout=_LOOK)
            except Empty:
                self._look(busy, deadline)
                continue
            self._understand(child, message, on_stage)
            self._look(busy, deadline)
        return {child.name: child.done for child in self._children if child.done}

    def _look(self, busy: Sequence[_Child], deadline: float) -> None:
        """Hold the children to their limits."""
        if time.monotonic() > deadline:
            limit = f"{self._limits.seconds:g} s"
            raise KernelError(busy[0].stage, f"took longer than {limit} and was stopped")
        most = self._limits.memory_mb
        if any(child.watch and child.watch.held_mb() > most for child in busy):
            raise _too_much(most)

    def _understand(self, child: _Child, message: bytes | None, on_stage: OnStage) -> None:
        if message is None:
            if child.done is None:
                raise KernelError(child.stage, death(child.process.popen.wait()))
            return
        kind, content = understood(message)
        if kind == _BORN:
            child.watch = memory.Watch(content) if memory.WATCHED else None
        elif kind == _STAGE:
            child.stage = content
            on_stage(content)
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
    with contextlib.suppress(GoneError):
        speak(child.process.hears, what)


def _module(task: Task) -> str:
    return task.do.partition(":")[0]


_NONE_LEFT = "the machine has not enough of it to load the libraries"


def _too_much(megabytes: int) -> KernelError:
    return KernelError(Stage.MEMORY, f"needed more than {megabytes} MB")


def attend() -> None:
    """Everything that happens in a child: load the module named, hear the task, do it."""
    unharmed()
    hears, speaks = line_of_its_own()
    try:
        with contextlib.suppress(GoneError):
            line = Line(hears, speaks)
            line.say(_BORN, os.getpid())
            line.say(*_outcome(line, sys.argv[1]))
    finally:
        # The kernel's own exit handlers can hang; everything of ours is written and closed.
        os._exit(0)


def unharmed() -> None:
    """Let the parent alone answer to Ctrl-C and Ctrl-Break; it ends this process."""
    for name in ("SIGINT", "SIGBREAK"):
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), signal.SIG_IGN)
    # Little of what a run makes forms circles, and to look for them takes a tenth of its time.
    gc.set_threshold(100_000, 50, 100)


def line_of_its_own() -> tuple[IO[bytes], IO[bytes]]:
    """Take the line off standard input and output.

    What a library prints must not get in between, a process that this one starts must not hold the
    line, and on Windows a library that loads would wait for the listener to leave standard input.
    """
    line = os.fdopen(os.dup(0), "rb"), os.fdopen(os.dup(1), "wb")
    os.dup2(os.open(os.devnull, os.O_RDONLY), 0)
    try:
        os.dup2(2, 1)
    except OSError:  # it was closed
        os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
    return line


def _outcome(line: Line, module: str) -> tuple[str, object]:
    limits = None
    try:
        line.stage(Stage.LOADING)
        loaded = importlib.import_module(module)
        task, limits = line.hear()
        line.clock.begin(Stage.LOADING)
        memory.limit_own(limits.memory_mb)
        name = task.do.partition(":")[2]
        result = getattr(loaded, name)(line, *task.known)
        return _DONE, Done(result, line.clock.stop(), memory.own_peak_mb(), line.left_out)
    except GoneError:
        raise
    except Exception as error:  # noqa: BLE001  (whatever the kernel throws must reach the user)
        return _FAILED, _told(error, limits)


def _told(error: Exception, limits: Limits | None) -> TapmodelError:
    """What the parent is to raise for an error of this process; no `limits` bound it yet."""
    if isinstance(error, TapmodelError):
        return error
    if ran_out(error):
        return _too_much(limits.memory_mb) if limits else KernelError(Stage.MEMORY, _NONE_LEFT)
    if isinstance(error, ImportError):
        return missing(error) or KernelError(Stage.LOADING, str(error))
    if isinstance(error, OSError):
        reason = error.strerror or type(error).__name__
        return InputError("output", str(error.filename or ""), f"files ({reason})")
    return KernelError(Stage.KERNEL, f"{type(error).__name__}: {error}")
