"""The files of an order, made by processes of their own."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from tapmodel.export.atomic import write_whole
from tapmodel.report.view.building import ROUTE_AND_POSTER, STAGES
from tapmodel.run.crew import Crew, Limits
from tapmodel.run.delivery.folder import RECORD
from tapmodel.run.wish import Papers, Wish
from tapmodel.run.workshop import builders, paper_makers, papers_with, produce_with
from tapmodel.serve.building.asked import Ordered
from tapmodel.stages import Stage


def made(
    ordered: Ordered,
    out: Path,
    limits: Limits,
    hired: Callable[[Crew], Crew],
    on_stage: Callable[[str], None],
) -> tuple[dict[str, Any], dict[str, Path]]:
    """Make every file of an order.

    Args:
        ordered: what is wanted.
        out: folder of this order alone; made if missing.
        limits: on the processes.
        hired: told of processes as soon as they are there, so that they can be ended.
        on_stage: told each stage in words as it begins.

    Returns:
        The record of what was made; and the files by name, wherever they lie.

    Raises:
        KernelError: when a stage failed, crashed, hung or ran out of memory; it names the stage.
    """
    design, wish = ordered.told.design, ordered.wish
    record: dict[str, Any] = {}

    def begun(stage: Stage) -> None:
        on_stage(STAGES[stage])

    def begun_beside(_stage: Stage) -> None:
        on_stage(ROUTE_AND_POSTER)

    if ordered.model:
        with builders(wish, limits) as crew:
            record = produce_with(hired(crew), design, out, wish, begun)
    if ordered.route or ordered.poster or (wish.formats and not ordered.model):
        # Beside a model its desk has made the other papers.
        left = Wish((), wish.look) if ordered.model else wish
        papers = Papers(left, ordered.route, ordered.poster)
        with paper_makers(limits) as crew:
            told = begun_beside if ordered.model else begun
            later = papers_with(hired(crew), design, out, papers, told)
        record = record | later
    folder = out / design.name
    names = [file["path"] for file in record.get("files", ())] + [RECORD] * bool(record)
    files = {name: folder / name for name in names}
    if ordered.job_file:
        job_file = out / f"{design.name}.toml"
        out.mkdir(exist_ok=True)
        write_whole(job_file, ordered.job_file.encode())
        files[job_file.name] = job_file
    return record, files
