"""The builds of a server: one at a time, the newest kept until they are fetched."""

import shutil
import tempfile
from pathlib import Path
from types import TracebackType
from typing import Self

from tapmodel.run.crew import Limits
from tapmodel.serve.building.asked import Ordered
from tapmodel.serve.building.build import Build, State

_KEPT = 4
"""Builds whose files can be fetched: two pages, each with its last and one before it."""


class BusyError(Exception):
    """Another build is running."""

    def __init__(self, other: Build) -> None:
        """Name the `other`, and how far it is."""
        self.other = other
        super().__init__(f"{other.name} is being built; wait until it has ended, or stop it")


class Builds:
    """Makes and keeps builds in a folder of its own, which is gone in the end."""

    def __init__(self, limits: Limits) -> None:
        """Hold every build to the limits."""
        self.limits = limits
        self._root = Path(tempfile.mkdtemp(prefix="tapmodel-serve-"))
        self._builds: dict[str, Build] = {}

    def __enter__(self) -> Self:
        """Nothing more to do."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """End what runs, and remove everything."""
        for build in self._builds.values():
            build.stop()
        shutil.rmtree(self._root, ignore_errors=True)

    @property
    def running(self) -> Build | None:
        """The build that runs."""
        # All at once: a build may be forgotten meanwhile, which is done in a thread.
        found = (one for one in tuple(self._builds.values()) if one.state is State.RUNNING)
        return next(found, None)

    def begin(self, ordered: Ordered) -> Build:
        """Begin a build; called where answers are made, so no two can begin at once.

        Raises:
            BusyError: when one is running.
        """
        if self.running:
            raise BusyError(self.running)
        while len(self._builds) >= _KEPT:
            self._builds.pop(next(iter(self._builds))).stop()
        build = Build(ordered, self._root, self.limits)
        self._builds[build.id] = build
        return build

    def of(self, key: str) -> Build | None:
        """The build of that id; None where there is none, or it is not kept any more."""
        return self._builds.get(key)

    def forget(self, key: str) -> None:
        """Stop a build, and keep nothing of it."""
        build = self._builds.get(key)
        if build:
            build.stop()
            self._builds.pop(key, None)
