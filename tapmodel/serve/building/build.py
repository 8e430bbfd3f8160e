"""One build: begun, watched, ended at any moment."""

import secrets
import shutil
import threading
import time
from dataclasses import asdict
from enum import StrEnum
from pathlib import Path

from tapmodel.errors import TapmodelError
from tapmodel.report.view.building import STAGES, Built, built, progress
from tapmodel.run.crew import Crew, Limits
from tapmodel.serve.building.asked import Ordered
from tapmodel.serve.building.making import made
from tapmodel.serve.refusal import Refusal, refused, refused_by
from tapmodel.stages import Stage

_LETS_GO = 10.0
"""Seconds within which a build that is stopped has cleared away."""


class State(StrEnum):
    """What has become of a build."""

    RUNNING = "running"
    DONE = "done"
    FAILED = "failed"
    STOPPED = "stopped"


class _StoppedError(Exception):
    """Nobody wants the build any more."""


class Build:
    """A build that runs in a thread of its own, which only waits for the processes at work."""

    def __init__(self, ordered: Ordered, root: Path, limits: Limits) -> None:
        """Begin to build `ordered` in a new folder inside `root`."""
        self.id = secrets.token_urlsafe(12)
        self.name = ordered.told.design.name
        self.state = State.RUNNING
        self.files: dict[str, Path] = {}
        self._ordered, self._limits = ordered, limits
        self._folder = root / self.id
        self._began = time.monotonic()
        self._stages = [STAGES[Stage.LOADING]]
        self._made: Built | None = None
        self._error: Refusal = {}
        self._crew: Crew | None = None
        self._stopped = False
        self._thread = threading.Thread(target=self._run, name="tapmodel-build", daemon=True)
        self._thread.start()

    def told(self) -> dict[str, object]:
        """How far it is, or what came of it, as the page takes it."""
        gone = time.monotonic() - self._began
        return {
            "id": self.id,
            "name": self.name,
            "state": self.state.value,
            "progress": asdict(progress(self._stages[-1], gone, self._ordered.seconds)),
            "made": asdict(self._made) if self._made else None,
            **self._error,
        }

    def stop(self) -> None:
        """End it if it runs, and remove whatever it has made; nothing is left on return."""
        # In this order: a crew that is hired after the first line looks for it itself.
        self._stopped = True
        if self._crew and self.state is State.RUNNING:
            self._crew.end()
        self._thread.join(_LETS_GO)
        self._clear()

    def _clear(self) -> None:
        self.files = {}
        shutil.rmtree(self._folder, ignore_errors=True)

    def _run(self) -> None:
        # The state comes last: whoever sees it finds the rest as it is.
        try:
            record, files = made(
                self._ordered, self._folder, self._limits, self._hired, self._on_stage
            )
            self._refuse_if_stopped()
            sizes = [(name, path.stat().st_size) for name, path in files.items()]
            self._made, self.files = built(record, sizes, self._ordered.told.units), files
            self.state = State.DONE
        except Exception as error:  # noqa: BLE001  (whatever went wrong is told on the page)
            self._clear()
            # Processes that were ended on purpose fail, too.
            self._error = {} if self._stopped else _error(error)
            self.state = State.STOPPED if self._stopped else State.FAILED

    def _hired(self, crew: Crew) -> Crew:
        self._crew = crew
        self._refuse_if_stopped()
        return crew

    def _on_stage(self, stage: str) -> None:
        self._refuse_if_stopped()
        # Two processes are at work: what the one has told is no news from the other.
        if stage not in self._stages:
            self._stages.append(stage)

    def _refuse_if_stopped(self) -> None:
        if self._stopped:
            raise _StoppedError


def _error(error: Exception) -> Refusal:
    if isinstance(error, TapmodelError):
        return refused_by(error)
    words = f"a fault of this program, please report it: {type(error).__name__}: {error}"
    return refused(words)
