"""A designed tap as a library's user holds it: numbers at once, solid, mesh and files on demand."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from os import PathLike
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from tapmodel import precision
from tapmodel.designing.choice import Choice
from tapmodel.designing.design import design_tap
from tapmodel.designing.record import TapDesign
from tapmodel.errors import KernelError, RefusedError
from tapmodel.findings import Finding
from tapmodel.library.request import Request, job_of
from tapmodel.shape.figures import Figures
from tapmodel.shape.outlines.points import outline_points
from tapmodel.shape.outlines.section import section_outline
from tapmodel.shop.judged import judged
from tapmodel.spec.job import Job
from tapmodel.stages import Stage
from tapmodel.tap.tap import Tap

if TYPE_CHECKING:
    import cadquery
    import trimesh

    from tapmodel.geometry.kernel.topology import Solid

Floats = NDArray[np.float64]


def design(
    what: Request, sets: Mapping[str, object] | None = None, /, **groups: object
) -> "DesignedTap":
    """Design a tap; no kernel is loaded and no model built.

    Args:
        what: a designation ("M18x0.75"), a job file (a path, or text that ends in ".toml"), a
            nested table as a job file holds it, or a `Job`.
        sets: values laid over it, keys dotted as for `--set`.
        groups: the same by sections of the job file, such as `flutes={"count": 5}`.

    Returns:
        The tap, also where it breaks a rule: see `findings`.

    Raises:
        InputError: a value that cannot be used at all, or an unknown field.
        NoTapError: values that leave no tap to describe.

    >>> tap = design("M10", {"flutes.count": 3}, chamfer={"form": "bottoming"})
    >>> tap.tap.flutes.count, round(tap.figures.chamfer_pitches, 6)
    (3, 1.5)
    """
    job = job_of(what, {**(sets or {}), **groups})
    return DesignedTap(job, judged(design_tap(job)))


@dataclass(frozen=True)
class DesignedTap:
    """One designed tap.

    Attributes:
        job: what was asked for.
        design: everything that was settled.
    """

    job: Job
    design: TapDesign

    @property
    def name(self) -> str:
        """Of the job; files are called so."""
        return self.design.name

    @property
    def tap(self) -> Tap:
        """What the tap is: its definition, in which nothing follows from anything else."""
        return self.design.tap

    @property
    def figures(self) -> Figures:
        """What follows from the definition: rakes, lands, core, run-out."""
        return self.design.figures

    @property
    def choices(self) -> tuple[Choice, ...]:
        """Every value that was settled, and by which rule; `record` has it in words too."""
        return self.design.choices

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What the rules found."""
        return self.design.findings

    @property
    def errors(self) -> tuple[Finding, ...]:
        """Findings for which no solid is built."""
        return self.design.errors

    def record(self) -> dict[str, Any]:
        """The record of the design, as `tapmodel design --json` prints it."""
        from tapmodel.run.record.compose import design_record  # noqa: PLC0415

        return design_record(self.design)

    def section(self, z: float, chord: float = 0.001) -> list[Floats]:
        """Points of the section square to the axis at height `z`.

        Args:
            z: height above the front [mm].
            chord: largest distance between the tap and the chords from point to point [mm].

        Returns:
            Closed loops, shape (n, 2) [mm]: the outside counter-clockwise seen from +z, a centre
            clockwise. The first point is not repeated.

        Raises:
            InputError: a height that is not on the tap.

        >>> [loop.shape[1] for loop in design("M10").section(5.0)]
        [2]
        """
        return outline_points(section_outline(self.tap, z), chord)

    def solid(self) -> "cadquery.Solid":
        """The solid, built and proved against its definition; kept for the next call.

        Raises:
            RefusedError: the design breaks a rule.
            KernelError: the solid could not be made, or failed its proof.
        """
        from tapmodel.geometry.kernel.modelling import modelled  # noqa: PLC0415

        return modelled(self._proved)

    def workplane(self) -> "cadquery.Workplane":
        """A workplane with the solid on its stack, to go on modelling.

        Raises:
            RefusedError, KernelError: as `solid`.
        """
        from tapmodel.geometry.kernel.modelling import workplane  # noqa: PLC0415

        return workplane(self._proved)

    @cached_property
    def _proved(self) -> "Solid":
        from tapmodel.checks.proof.mesh import prove_mesh  # noqa: PLC0415
        from tapmodel.checks.proof.solid import prove_solid  # noqa: PLC0415
        from tapmodel.checks.proof.verdict import faults  # noqa: PLC0415
        from tapmodel.geometry.kernel.build import build  # noqa: PLC0415

        self._refuse_broken()
        chord = precision.mesh_chord(self.tap.thread.pitch, self.tap.thread.major)
        built = build(self.tap, chord)
        proof = prove_solid(self.tap, built.solid, built.facets)
        wrong = faults(proof, prove_mesh(built.mesh, chord))
        if wrong:
            raise KernelError(Stage.PROOF, "; ".join(wrong))
        return built.solid

    def mesh(self) -> "trimesh.Trimesh":
        """A quick closed mesh for looking at, made without the kernel and not verified.

        Raises:
            RefusedError: the design breaks a rule.
            KernelError: the mesh does not close.
        """
        from trimesh import Trimesh  # noqa: PLC0415

        from tapmodel.geometry.preview.quick_mesh import preview_mesh  # noqa: PLC0415

        self._refuse_broken()
        mesh = preview_mesh(self.tap)
        return Trimesh(mesh.vertices, mesh.triangles, process=False)

    def write(
        self, out: str | PathLike[str] = "out", formats: Iterable[str] | None = None
    ) -> dict[str, Any]:
        """Build, prove and write the tap's files to the folder `out`/`name`.

        Args:
            out: folder for results; made if missing.
            formats: kinds of files, such as ("step", "stl") or "step,stl"; all by default.

        Returns:
            The record of the run, the files among it.

        Raises:
            InputError: an unknown kind of file, or a folder that cannot be written.
            RefusedError, KernelError: as `solid`.
        """
        from tapmodel.export.formats import DEFAULT_FORMATS, parse_formats  # noqa: PLC0415
        from tapmodel.report.look_wanted import look_of  # noqa: PLC0415
        from tapmodel.run.wish import Wish  # noqa: PLC0415
        from tapmodel.run.workshop import produce  # noqa: PLC0415

        self._refuse_broken()
        given = DEFAULT_FORMATS if formats is None else formats
        # a text is no list of its letters
        wanted = parse_formats(given if isinstance(given, str) else ",".join(given))
        wish = Wish(wanted, look_of(self.job))
        return produce(self.design, Path(out), lambda _stage: None, wish)

    def _refuse_broken(self) -> None:
        if self.errors:
            raise RefusedError(self.errors)

    def __str__(self) -> str:
        """Every number with its unit, as `tapmodel design` prints it."""
        from tapmodel.report.screen.design import design_page  # noqa: PLC0415

        return design_page(self.design, every=True)

    def __repr__(self) -> str:
        """Which tap it is, in one line."""
        flutes = self.tap.flutes.count
        broken = f", {len(self.errors)} errors" if self.errors else ""
        return f"<tap for {self.design.designation}, {flutes} flutes{broken}>"

    def _repr_html_(self) -> str:
        """How a notebook shows it: section, key numbers, findings."""
        from tapmodel.report.page.notebook import card  # noqa: PLC0415

        return card(self.design)
