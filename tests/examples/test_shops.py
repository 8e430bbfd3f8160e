"""A route asks for nothing that its shop does not have, where the shop says what it has.

The law reads what the route tells, as its reader would: every row, line and sentence.
"""

import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tapmodel.designing.design import settled_tap
from tapmodel.designing.record import TapDesign
from tapmodel.report.route.order import route_of
from tapmodel.run.route import route_record
from tapmodel.shop.gcode.wanted import index_of, programs_wanted
from tapmodel.shop.judged import judged
from tapmodel.spec.job import Job
from tapmodel.spec.job_file import read_job
from tapmodel.standards.drill_sets import inch_drills, metric_drill
from tapmodel.standards.materials.steels import steel_named, steel_names
from tapmodel.words import Index

EXAMPLES = Path(__file__).parents[2] / "examples"
JOBS = sorted(EXAMPLES.glob("*.toml"))
SHOPS = sorted((EXAMPLES / "shops").glob("*.toml"))
CASES = [(job, None) for job in JOBS] + [(job, shop) for job in JOBS for shop in SHOPS]
"""Every example as it stands, and in each of the shops."""

Record = dict[str, Any]


def _named(case: tuple[Path, Path | None]) -> str:
    job, shop = case
    return job.stem if shop is None else f"{job.stem} in {shop.stem}"


@pytest.fixture(scope="module", params=CASES, ids=_named, name="walked")
def _walked(request: pytest.FixtureRequest) -> tuple[Job, TapDesign, Record]:
    path, shop = request.param
    job = read_job(path, [] if shop is None else [f"shop.file={shop}"])
    design = judged(settled_tap(job))
    return job, design, route_record(design, route_of(design))


def _rows(record: Record, step: str) -> Iterator[Record]:
    """Every row of an operation that stands in a table of labels and values."""
    operation = next(one for one in record["operations"] if one["step"] == step)
    yield from (row for block in operation["settings"] for row in block.get("rows", ()))
    yield from (*operation["speeds"], *operation["measure"])


def _lines(record: Record, step: str, head: str) -> list[list[str]]:
    """The lines of the table of an operation whose head has that word."""
    operation = next(one for one in record["operations"] if one["step"] == step)
    tables = (block for block in operation["settings"] if head in block.get("head", ()))
    return [line for block in tables for line in block["lines"]]


def _text(record: Record) -> str:
    """All that it tells."""
    return "\n".join(_texts(record["operations"]))


def _texts(value: object) -> Iterator[str]:
    if isinstance(value, dict):
        for inner in value.values():
            yield from _texts(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from _texts(inner)
    elif isinstance(value, str):
        yield value


def _is_one(size: float, sizes: list[float]) -> bool:
    return any(abs(size - other) < 1e-4 for other in sizes)


def test_two_examples_are_of_a_shop_one_in_mm_and_one_in_inches() -> None:
    pointing = {read_job(job).shop.file for job in JOBS} - {None}
    assert {Path(str(file)).name for file in pointing} == {"metric.toml", "inch.toml"}
    assert {read_job(job).shop.tools for job in JOBS} >= {"metric", "inch"}


def test_every_cutter_is_on_hand(walked: tuple[Job, TapDesign, Record]) -> None:
    job, _, record = walked
    cutter = next(row for row in _rows(record, "flutes") if row["label"].startswith("cutter, ball"))
    assert job.shop.cutters is None or _is_one(cutter["mm"], job.shop.cutters)


def test_every_drill_is_of_a_set_on_hand(walked: tuple[Job, TapDesign, Record]) -> None:
    job, design, record = walked
    if job.shop.drills is None or design.bored:
        return
    drill = next(row for row in _rows(record, "prove") if row["label"].startswith("tap drill"))
    inch = [name for name in job.shop.drills if name != "metric"]
    sizes = [one.diameter for name in inch for one in inch_drills(name)]
    if "metric" in job.shop.drills:
        sizes.append(metric_drill(design.drill).diameter)
    assert _is_one(drill["mm"], sizes)


def test_every_wire_is_on_hand(walked: tuple[Job, TapDesign, Record]) -> None:
    job, design, record = walked
    if job.shop.wires is None or design.finds("wires"):
        return  # that none on hand suits is a finding of its own
    wires = [r for r in _rows(record, "thread") if r["label"].startswith("wire to use")]
    for wire in wires:
        assert _is_one(wire["mm"], job.shop.wires)


def test_every_wheel_is_on_hand_as_often_as_it_is_used(
    walked: tuple[Job, TapDesign, Record],
) -> None:
    job, _, record = walked
    lines = _lines(record, "thread", "drivers")
    assert bool(lines) == bool(job.shop.gears and job.shop.leadscrew)
    for drivers, driven, *_ in lines:
        used = Counter(map(int, re.findall(r"\d+", f"{drivers} {driven}")))
        assert not used - Counter(job.shop.gears)


def test_every_circle_is_on_a_plate_on_hand(walked: tuple[Job, TapDesign, Record]) -> None:
    job, _, record = walked
    if job.shop.plates is None:
        return
    text = _text({"operations": [one for one in record["operations"] if one["step"] == "flutes"]})
    circles = {int(found) for found in re.findall(r"\d+ (?:holes? )?on (\d+)", text)}
    assert circles <= set(job.shop.plates)
    assert circles or "any circle will do" in text


def test_every_steel_is_in_stock_and_the_furnace_hardens_it(
    walked: tuple[Job, TapDesign, Record],
) -> None:
    job, design, record = walked
    if job.shop.steels is not None:
        stock = {steel_named(word).name for word in job.shop.steels}
        named = {name for name in steel_names() if re.search(rf"\b{name}\b", _text(record))}
        assert design.work.steel.name in named <= stock
    if job.shop.furnace is not None:
        assert design.work.steel.furnace <= job.shop.furnace
        assert not design.finds("furnace-cold")


def test_every_machine_is_there(walked: tuple[Job, TapDesign, Record]) -> None:
    job, design, record = walked
    machines = " ".join(one["machine"] for one in record["operations"])
    if job.shop.mill_control == "manual":
        assert "program" not in machines
        assert not programs_wanted(design)
    if job.shop.mill_control == "cnc":
        assert machines.count("mill under its program") == 2
        assert programs_wanted(design)
    if job.shop.index == "by hand":
        assert "A axis" not in machines
        assert index_of(design) is Index.BY_HAND
