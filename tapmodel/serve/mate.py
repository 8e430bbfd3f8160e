"""A process beside the server, for answers that take long: the page's next move waits for none.

Python works at one thing at a time however many threads there are, and each move of a slider wants
its answer within some hundredths of a second.
"""

import os
import sys
import threading
from collections.abc import Callable, Generator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass
from queue import Empty, SimpleQueue
from types import TracebackType
from typing import Self, TypeVar

from tapmodel.errors import KernelError
from tapmodel.run.crew import line_of_its_own, unharmed
from tapmodel.run.pipes import GoneError, listen, speak, understood
from tapmodel.run.process import Process, death
from tapmodel.stages import Stage

_CODE = "from tapmodel.serve.mate import attend; attend(can_wait={can_wait})"
_YIELDING = 5
"""Steps by which one that can wait stands back: a third of a processor that another wants too."""

LONGEST = 60.0
"""Seconds; three times as long as anyone waits for an answer, for at first it has to load."""

Asked = TypeVar("Asked")
Made = TypeVar("Made")


class Mate:
    """One process that does what it is asked, in order; a context that ends it.

    It begins to load at once. Should it die, or not come to an end, another takes its place.
    """

    def __init__(self, module: str, *, can_wait: bool = False) -> None:
        """Start it; it loads the module while nobody asks for anything.

        Args:
            module: with the work that it will do.
            can_wait: whether processes for which somebody waits go before it.
        """
        self.queue = ThreadPoolExecutor(1, "tapmodel-mate")
        """Where `do` waits its turn; what has not begun there can be given up."""
        self._module = module
        self._code = _CODE.format(can_wait=can_wait)
        self._ended = False
        self._turn = threading.Lock()
        self._start()

    def _start(self) -> None:
        self._heard = heard = SimpleQueue[bytes | None]()
        self._process = Process(self._code, self._module)
        self._process.listen(heard.put)

    def __enter__(self) -> Self:
        """Nothing more to do."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """End the process, whatever it does."""
        self._ended = True
        self.queue.shutdown(wait=False, cancel_futures=True)
        self._process.end()

    def do(self, work: Callable[[Asked], Made], asked: Asked) -> Made:
        """What `work`, which stands in some module, makes of `asked`; waits for it.

        Raises:
            KernelError: the process died of it, took more than `LONGEST`, or something went wrong
                there.
        """
        with self._turn:
            try:
                speak(self._process.hears, (work, asked))
                message = self._heard.get(timeout=LONGEST)
            except GoneError:
                message = None
            except Empty:
                # Or all that is asked later would wait for what nobody waits for any more.
                raise self._renewed(f"no end within {LONGEST:g} s") from None
            if message is None:
                raise self._renewed(death(self._process.popen.wait()))
        made: Made | KernelError = understood(message)
        if isinstance(made, KernelError):
            raise made
        return made

    def _renewed(self, words: str) -> KernelError:
        """Another process in place of this one; an error that says why."""
        self._process.end()
        if not self._ended:
            self._start()
        return KernelError(Stage.PREVIEW, words)


@dataclass(frozen=True, slots=True)
class Mates:
    """Two of them, so that a model need not wait for cures that are sought.

    Where they share two processors with the browser that draws the page, cures stand back as well.

    Attributes:
        shaper: for the model.
        seeker: for whatever else takes long: cures, charts, papers, files of jobs.
    """

    shaper: Mate
    seeker: Mate


@contextmanager
def hired() -> Generator[Mates]:
    """Both, as long as the context lasts."""
    seeking = Mate("tapmodel.serve.app", can_wait=True)
    with Mate("tapmodel.serve.answers.model") as shaper, seeking as seeker:
        yield Mates(shaper, seeker)


def attend(*, can_wait: bool = False) -> None:
    """Everything that happens in the process: load the module named, then do what is asked."""
    unharmed()
    hears, speaks = line_of_its_own()
    asked = SimpleQueue[bytes | None]()
    listen(hears, asked.put)
    if can_wait and sys.platform != "win32":
        os.nice(_YIELDING)
    __import__(sys.argv[1])
    while (message := asked.get()) is not None:
        try:
            speak(speaks, _outcome(message))
        except GoneError:
            return


def _outcome(message: bytes) -> object:
    try:
        work, asked = understood(message)
        return work(asked)
    except Exception as error:  # noqa: BLE001  (whatever went wrong is told on the page)
        return KernelError(Stage.PREVIEW, f"{type(error).__name__}: {error}")
