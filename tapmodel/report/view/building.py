"""A build as the page shows it: what can be asked for, how far it is, what came of it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from tapmodel.export.formats import Format
from tapmodel.report.words.proved import proved
from tapmodel.stages import Stage
from tapmodel.words import Units

ROUTE, POSTER, JOB_FILE = "route", "poster", "job"
"""Files that a build of the command line does not write."""

LABELS: Mapping[str, str] = {
    Format.STEP: "STEP, the solid for CAD and CAM",
    Format.STL: "STL, its triangles",
    Format.THREEMF: "3MF, its triangles for a printer",
    Format.GLB: "GLB, its triangles to look at",
    Format.PICTURES: "pictures, PNG",
    Format.PAGE: "page to keep, HTML",
    Format.DXF: "section and profile, DXF",
    Format.SHEET: "sheet for the machine, PDF",
    Format.DRAWINGS: "drawings, SVG and DXF",
    ROUTE: "route through the shop, PDF, and programs of a mill",
    POSTER: "poster for the bench, PDF and PNG",
    JOB_FILE: "job file, TOML",
}
"""Kinds of files, in the order in which they are offered."""

WITHOUT_MODEL = frozenset({Format.DXF, Format.SHEET, Format.DRAWINGS, ROUTE, POSTER, JOB_FILE})
"""Kinds for which no solid is built where nothing else is asked for."""

STAGES: Mapping[Stage, str] = {
    Stage.LOADING: "getting ready",
    Stage.EDGES: "edges of the solid",
    Stage.FACES: "faces of the solid",
    Stage.REAR: "square and rear centre",
    Stage.MIRROR: "mirroring it to the left hand",
    Stage.MESH: "triangles of the solid",
    Stage.STEP_FILE: "STEP file",
    Stage.PROOF: "proving the solid",
    Stage.READ_BACK: "reading the STEP file back",
    Stage.PAPERS: "papers",
    Stage.WAITING: "waiting",
    Stage.MESH_PROOF: "proving the triangles",
    Stage.MESH_FILES: "files of triangles",
    Stage.PICTURES: "pictures",
    Stage.PAGE: "page to keep",
    Stage.DELIVERY: "putting the files in place",
}
"""What a maker is told of each stage that a run begins."""

ROUTE_AND_POSTER = "route and poster"
"""What is made last, where a solid is built too."""

_FURTHEST = 0.97
"""Share of a run that is told as long as it runs, however long it takes."""


@dataclass(frozen=True, slots=True)
class KindOfFile:
    """A kind of file to choose.

    Attributes:
        key: by which it is asked for.
        label: what it is.
        model: whether the solid is built for it.
    """

    key: str
    label: str
    model: bool


@dataclass(frozen=True, slots=True)
class Progress:
    """How far a run is.

    Attributes:
        share: of the time that it will take, from 0 to 1, as far as that was foreseen.
        stage: what is being done.
        time: that has gone, and that was foreseen.
    """

    share: float
    stage: str
    time: str


@dataclass(frozen=True, slots=True)
class BuiltFile:
    """A file to be fetched: by its name, its size in words beside it."""

    name: str
    size: str


@dataclass(frozen=True, slots=True)
class Built:
    """What came of a run.

    Attributes:
        verdict: one sentence.
        rows: what was looked at, and what was found.
        notes: what could not be made, and why; what can hurt.
        files: that can be fetched.
    """

    verdict: str
    rows: tuple[tuple[str, str], ...]
    notes: tuple[str, ...]
    files: tuple[BuiltFile, ...]


def kinds_of_files() -> tuple[KindOfFile, ...]:
    """Every kind of file that can be asked for."""
    return tuple(KindOfFile(key, label, key not in WITHOUT_MODEL) for key, label in LABELS.items())


def progress(stage: str, gone: float, foreseen: float) -> Progress:
    """How far a run is that is at a stage, after `gone` of the seconds that were foreseen."""
    share = min(gone / foreseen, _FURTHEST)
    time = f"{gone:.0f} s of about {foreseen:.0f} s"
    if gone > foreseen:
        time = f"{gone:.0f} s; {foreseen:.0f} s were foreseen, but this machine has more to do"
    return Progress(round(share, 3), stage, time)


def built(record: dict[str, Any], sizes: Iterable[tuple[str, int]], units: Units) -> Built:
    """What came of a run.

    Args:
        record: as it was delivered.
        sizes: bytes of every file by its name.
        units: of the texts.
    """
    files = tuple(BuiltFile(name, _size(count)) for name, count in sizes)
    notes = tuple(f"left out, {words}" for words in record.get("left_out", ()))
    if any(file.name.endswith(".ngc") for file in files):
        notes += ("Prove the programs in air first.",)
    if "model" not in record:
        return Built("Papers alone: no solid was built, so none was proved.", (), notes, files)
    verdict = "Proved: the solid, its triangles and the files read back agree with the design."
    broken = sum(finding["severity"] == "error" for finding in record["findings"])
    if broken:
        verdict += f" The design itself breaks {broken} rule{'s' if broken > 1 else ''}."
    return Built(verdict, tuple(proved(record, units)), notes, files)


def _size(count: int) -> str:
    return f"{count / 1e6:.1f} MB" if count >= 1e6 else f"{max(count / 1e3, 0.1):.1f} kB"
