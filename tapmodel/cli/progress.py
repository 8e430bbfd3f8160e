"""Limits, an estimate before long work, and a bar while it goes on."""

import sys
from collections.abc import Callable, Generator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from tapmodel.cli.ending import say
from tapmodel.errors import InputError
from tapmodel.run.crew import Limits
from tapmodel.stages import OnStage, Stage

if TYPE_CHECKING:
    from tapmodel.designing.record import TapDesign
    from tapmodel.run.estimate import Estimate


_LONGEST, _LARGEST = 1e6, 10_000_000
"""Seconds and megabytes that a limit may be set to."""


def limits_of(seconds: float, megabytes: int) -> Limits:
    """The limits that a command was given.

    Raises:
        InputError: a limit that is no limit.
    """
    if not 0 < seconds <= _LONGEST:
        raise InputError("--limit-seconds", seconds, f"more than 0, up to {_LONGEST:g}")
    if not 0 < megabytes <= _LARGEST:
        raise InputError("--limit-mb", megabytes, f"more than 0, up to {_LARGEST}")
    return Limits(seconds, megabytes)


def foreseen_for(settled: "TapDesign", limits: Limits, *, preview: bool) -> "Estimate":
    """What the work will take; told where that is long, refused beyond the limits."""
    from tapmodel.run.estimate import BUILD, LONG, PREVIEW, demand_within, estimate

    foreseen = estimate(settled, PREVIEW if preview else BUILD)
    demand_within(foreseen, limits)
    if foreseen.seconds > LONG:
        say(f"note: {foreseen.teeth:.0f} teeth will take {foreseen}", aside=True)
    return foreseen


@contextmanager
def progress(foreseen: "Estimate | None" = None) -> Generator[OnStage]:
    """A bar on stderr that names the running stage; silent where nobody watches."""
    if not sys.stderr.isatty():
        yield lambda _stage: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn

    about = f"of {foreseen}" if foreseen else ""
    columns = (TextColumn("{task.description:<12}"), BarColumn(20), TimeElapsedColumn())
    console = Console(stderr=True)
    with Progress(*columns, TextColumn(about), console=console, transient=True) as bar:
        task = bar.add_task(Stage.LOADING, total=len(Stage))

        def on_stage(stage: Stage) -> None:
            bar.update(task, description=stage, advance=1)

        yield on_stage


_MANY = 200
"""Taps that take a second; no bar is worth its while for fewer."""


@contextmanager
def counted(total: int) -> Generator[Callable[[int], None]]:
    """A bar on stderr for the settling of many taps; silent where nobody watches."""
    if total < _MANY or not sys.stderr.isatty():
        yield lambda _done: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TimeRemainingColumn

    columns = (BarColumn(20), MofNCompleteColumn(), TimeRemainingColumn())
    with Progress(*columns, console=Console(stderr=True), transient=True) as bar:
        task = bar.add_task("", total=total)

        def on_done(done: int) -> None:
            bar.update(task, completed=done)

        yield on_done
