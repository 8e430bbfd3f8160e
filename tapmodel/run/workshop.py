"""One run: its processes, its staging folder, its record, and clean delivery.

The kernel's process and the desk's write into a staging folder; it is delivered only when all is
proved.
"""

import time
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from tapmodel.errors import InputError
from tapmodel.export.formats import Format
from tapmodel.report.units import Look
from tapmodel.run.crew import Crew, Done, Limits, Task
from tapmodel.run.delivery.place import deliver
from tapmodel.run.delivery.staging import staging
from tapmodel.run.glance import Glance
from tapmodel.run.wish import Order, Papers, Wish
from tapmodel.stages import OnStage, Stage

if TYPE_CHECKING:
    from tapmodel.designing.record import TapDesign
    from tapmodel.spec.job import Job

_FIRST_YEAR = 1979
_KERNEL, _DESK, _PREVIEW, _PAPERS = "kernel", "desk", "preview", "papers"


def builders(wish: Wish, limits: Limits | None = None) -> Crew:
    """The processes that build: they begin to load at once, and `produce` hands them the design."""
    tasks = [
        Task(_KERNEL, "tapmodel.run.model:make"),
        Task(_DESK, "tapmodel.run.desk.work:write", (wish,)),
    ]
    return Crew(tasks, limits or Limits())


def produce(
    design: "TapDesign",
    out: Path,
    on_stage: OnStage,
    wish: Wish | None = None,
    limits: Limits | None = None,
) -> dict[str, Any]:
    """Build `design` and deliver its files to `out/<name>`.

    Args:
        design: every number of the tap.
        out: folder for results; made if missing.
        on_stage: told each stage as it begins.
        wish: which files; all by default.
        limits: on the processes.

    Returns:
        The record.

    Raises:
        InputError: when `out` cannot be written.
        KernelError: when a stage failed, crashed, hung or ran out of memory; it names the stage.
    """
    wish = wish or Wish()
    with builders(wish, limits) as crew:
        return produce_with(crew, design, out, wish, on_stage)


def produce_with(
    crew: Crew, design: "TapDesign", out: Path, wish: Wish, on_stage: OnStage
) -> dict[str, Any]:
    """As `produce`, with `builders` of this wish that are there already."""
    # The words and the model of the record are loaded while the other processes load theirs.
    from tapmodel.run.record.compose import full_record  # noqa: PLC0415

    began = time.perf_counter()
    _demand_letters(out)
    if Format.STEP in wish.formats:
        _demand_clock()
    with staging(out, design.name) as staged:
        order = Order(design, staged, wish)
        done = crew.work({_KERNEL: order.of_solid, _DESK: order}, on_stage)
        on_stage(Stage.DELIVERY)
        run = _run(done, began)
        record = full_record(design, done[_KERNEL].result, done[_DESK].result, run)
        record |= {"left_out": list(done[_DESK].left_out)}
        return deliver(staged, out / design.name, record)


def _demand_letters(out: Path) -> None:
    try:
        str(out).encode()
    except UnicodeEncodeError:
        allowed = "a name in UTF-8, for the kernel writes to no other"
        raise InputError("--out", str(out), allowed) from None


def _demand_clock() -> None:
    """The kernel dates its files and knows no year before 1979."""
    if time.gmtime().tm_year < _FIRST_YEAR:
        shown = time.strftime("%Y-%m-%d", time.gmtime())
        raise InputError("the machine's clock", shown, f"a date from {_FIRST_YEAR} on; set it")


def _run(done: Mapping[str, Done], began: float) -> dict[str, Any]:
    """How a run went, for its record."""
    processes = {
        name: {
            "seconds": {stage: round(taken.wall, 3) for stage, taken in one.taken.items()},
            "processor_seconds": {s: round(taken.processor, 3) for s, taken in one.taken.items()},
            "peak_memory_mb": round(one.peak_memory_mb, 1),
        }
        for name, one in done.items()
    }
    return {"seconds": round(time.perf_counter() - began, 3), "processes": processes}


def paper_makers(limits: Limits | None = None) -> Crew:
    """The process that makes papers of a design; it begins to load at once."""
    return Crew([Task(_PAPERS, "tapmodel.run.papers:write")], limits or Limits())


def papers_with(
    crew: Crew, design: "TapDesign", out: Path, papers: Papers, on_stage: OnStage
) -> dict[str, Any]:
    """Deliver papers without a model to `out/<name>`, beside what stands there of the same tap.

    Args:
        crew: `paper_makers`.
        design: every number of the tap.
        out: folder for results; made if missing.
        papers: which, and how they look.
        on_stage: told each stage as it begins.

    Returns:
        The record, as it stands in the folder, with `delivery`.

    Raises:
        InputError: when `out` cannot be written.
        KernelError: when a stage failed, crashed, hung or ran out of memory; it names the stage.
    """
    # The record's words and model are loaded while the process loads.
    from tapmodel.run.record.compose import design_record  # noqa: PLC0415

    with staging(out, design.name) as staged:
        crew.work({_PAPERS: (Order(design, staged, papers.wish), papers)}, on_stage)
        on_stage(Stage.DELIVERY)
        return deliver(staged, out / design.name, design_record(design))


def inspectors(limits: Limits | None = None) -> Crew:
    """The process that inspects; it begins to load at once."""
    return Crew([Task(_KERNEL, "tapmodel.run.model:inspect")], limits or Limits())


def inspect_with(crew: Crew, design: "TapDesign", file: Path, on_stage: OnStage) -> dict[str, Any]:
    """Compare a STEP file with `design`; see `pipeline.inspect`."""
    return crew.work({_KERNEL: (design, file)}, on_stage)[_KERNEL].result


def previewers(limits: Limits | None = None, *, page: bool = False) -> Crew:
    """The process that makes the preview's mesh and picture, or its page."""
    draw = "draw_page" if page else "draw"
    return Crew([Task(_PREVIEW, f"tapmodel.run.preview:{draw}")], limits or Limits())


def preview_with(  # noqa: PLR0913  (whatever a preview hangs on)
    crew: Crew,
    design: "TapDesign",
    out: Path,
    on_stage: OnStage,
    *,
    look: Look | None = None,
    of_job: "Job | None" = None,
) -> dict[str, Any]:
    """Deliver a preview to a folder of its own, `out/<name>-preview`, and return its record.

    Folder, files and record say that it is a preview: a look at another tap never takes the place
    of a verified model. A page is made in the `look` wanted, which `previewers` of one are told.
    The design `of_job` was made at once: its runners-up are weighed while others draw.

    Raises:
        InputError: when `out` cannot be written.
        KernelError: when a stage failed, crashed, hung or ran out of memory; it names the stage.
    """
    named, began = replace(design, name=f"{design.name}-preview"), time.perf_counter()
    record: dict[str, Any] = {}

    def compose() -> None:
        # Nobody who draws has to wait for the runners-up, or the record's words and model.
        from tapmodel.designing.design import weighed  # noqa: PLC0415
        from tapmodel.run.record.compose import design_record  # noqa: PLC0415

        record.update(design_record(weighed(named, of_job) if of_job else named))

    with staging(out, named.name) as staged:
        job = (named, staged, look) if look else _glance(named, staged)
        done = crew.work({_PREVIEW: job}, on_stage, compose)
        on_stage(Stage.DELIVERY)
        record |= {"preview": "not verified", "run": _run(done, began)}
        record |= {"left_out": list(done[_PREVIEW].left_out)}
        return deliver(staged, out / named.name, record)


def _glance(design: "TapDesign", folder: Path) -> Glance:
    # The command line loads no pictures before somebody wants one.
    from tapmodel.report.pictures.whole import three_quarter  # noqa: PLC0415

    return Glance(design.tap, three_quarter(design), folder / design.name)
