"""The command line: the only place that prints and exits.

Exit codes: 0 fine, 1 findings of severity error, 2 bad input, 3 our fault, 130 interrupted.
"""

import json
import os
import shlex
import sys
from collections.abc import Generator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tapmodel.cli.ending import code_of, say
from tapmodel.errors import InputError, KernelError, RefusedError, escaped
from tapmodel.export.formats import DEFAULT_FORMATS, parse_formats
from tapmodel.findings import Finding
from tapmodel.report.units import Look, Paper, Projection, Units
from tapmodel.run.crew import Limits
from tapmodel.run.wish import Wish
from tapmodel.run.workshop import (
    builders,
    inspect_with,
    inspectors,
    preview_with,
    previewers,
    produce_with,
)
from tapmodel.stages import Stage, Told
from tapmodel.words import Severity

if TYPE_CHECKING:
    from tapmodel.design.record import TapDesign
    from tapmodel.run.estimate import Estimate
    from tapmodel.spec.job import Job

_USUAL = Limits()
_LONGEST, _LARGEST = 1e6, 10_000_000
"""Seconds and megabytes that a limit may be set to."""

app = typer.Typer(
    add_completion=False,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    help="From one thread designation to a verified 3-D model of the cutting tap for it.",
)

JobArgument = Annotated[
    str, typer.Argument(metavar="JOB", help="A designation such as M18x0.75-LH, or a .toml file.")
]
Sets = Annotated[
    list[str] | None,
    typer.Option("--set", metavar="FIELD=VALUE", help="Override one value; may be repeated."),
]
Out = Annotated[Path, typer.Option(help="Folder for results.")]
PaperSize = Annotated[Paper, typer.Option(help="Size of the sheet.")]
TextUnits = Annotated[Units, typer.Option(help="Units of length on sheet and page.")]
View = Annotated[Projection, typer.Option(help="How views stand: first or third angle.")]
Seconds = Annotated[
    float, typer.Option("--limit-seconds", help="The longest that the work may take.")
]
Megabytes = Annotated[
    int, typer.Option("--limit-mb", help="The most memory that each process may ask for.")
]
AsJson = Annotated[bool, typer.Option("--json", help="Print the record as JSON and nothing else.")]


@app.command()
def design(job: JobArgument, sets: Sets = None, *, as_json: AsJson = False) -> None:
    """Print every number of a tap for the hole; no model is built."""
    from tapmodel.report.numbers import design_page
    from tapmodel.run.record import design_record

    settled, _ = _designed(job, sets)
    if as_json:
        _print_json(design_record(settled))
    else:
        say(design_page(settled))
    if _has_errors(settled):
        raise typer.Exit(1)


@app.command()
def new(
    designation: JobArgument,
    file: Annotated[Path, typer.Argument(metavar="FILE", help="The job file to write.")],
    sets: Sets = None,
    *,
    overwrite: Annotated[bool, typer.Option(help="Replace the file if it exists.")] = False,
) -> None:
    """Write a commented job file with every value chosen and why."""
    from tapmodel.export.atomic import write_whole
    from tapmodel.report.job_file import commented_job

    settled, job = _designed(designation, sets)
    taken = os.path.lexists(file)
    if taken and not overwrite:
        raise InputError("FILE", str(file), "a name that is not taken, or --overwrite")
    if (taken and not file.is_file()) or not file.name:
        raise InputError("FILE", str(file), "the name of an ordinary file")
    write_whole(file.resolve(), commented_job(job, settled).encode())
    written = f"wrote {file}; edit it, then: tapmodel build {shlex.quote(str(file))}"
    say(escaped(written), aside=True)
    _end(settled)


@app.command()
def build(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: JobArgument,
    out: Out = Path("out"),
    sets: Sets = None,
    formats: Annotated[
        str, typer.Option(help="Kinds of files to write, with commas; no others are written.")
    ] = DEFAULT_FORMATS,
    *,
    force: Annotated[bool, typer.Option(help="Build although the design breaks a rule.")] = False,
    preview: Annotated[bool, typer.Option(help="Only an unproved mesh and picture.")] = False,
    as_json: AsJson = False,
    paper: PaperSize = Paper.A4,
    units: TextUnits = Units.MM,
    projection: View = Projection.FIRST,
    seconds: Seconds = _USUAL.seconds,
    megabytes: Megabytes = _USUAL.memory_mb,
) -> None:
    """Build the solid, prove it, and write the files wanted and the record to OUT/NAME.

    With --force a design that breaks a rule is built all the same and the exit code is 0; one that
    leaves no tap to describe cannot be forced.
    """
    wanted = Wish(parse_formats(formats), Look(paper, units, projection))
    limits = _limits(seconds, megabytes)
    with previewers(None, limits) if preview else builders(wanted, limits) as crew:
        settled, _ = _designed(job, sets)
        from tapmodel.report.numbers import findings_text
        from tapmodel.report.summary import build_summary

        for line in findings_text(settled.findings):
            say(line, aside=True)
        _refuse_broken(settled, force=force)
        foreseen = _foreseen(settled, limits, preview=preview)
        with _progress(foreseen) as tell:
            if preview:
                _tell_preview(preview_with(crew, settled, out, tell), out, err=as_json)
                return
            record = produce_with(crew, settled, out, wanted, tell)
    if as_json:
        _print_json(record)
    else:
        say(build_summary(record, Path(escaped(str(out / settled.name)))))
    _tell_delivery(record)


@app.command()
def verify(
    file: Annotated[
        Path, typer.Argument(metavar="FILE", help="A STEP file, for instance back from CAM.")
    ],
    job: JobArgument,
    sets: Sets = None,
    *,
    as_json: AsJson = False,
) -> None:
    """Compare the solid in a STEP file with the tap that a job asks for."""
    with inspectors() as crew:
        from tapmodel.export.step.foreign import refuse_unreadable
        from tapmodel.report.summary import verify_summary

        settled, _ = _designed(job, sets)
        refuse_unreadable(file)
        with _progress() as tell:
            try:
                measured = inspect_with(crew, settled, file, tell)
            except KernelError as error:
                # Whatever becomes of the kernel over a file from elsewhere, the file did it.
                allowed = f"a STEP file of a sound solid ({error})"
                raise InputError("FILE", str(file), allowed) from None
    if as_json:
        _print_json(measured)
    else:
        say(verify_summary(measured))
    if measured["differences"]:
        raise typer.Exit(1)


@app.command()
def sheet(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: JobArgument,
    out: Out = Path("out"),
    sets: Sets = None,
    *,
    paper: PaperSize = Paper.A4,
    units: TextUnits = Units.MM,
    projection: View = Projection.FIRST,
) -> None:
    """Write the sheet to take to the machine, its page and all drawings; no model is built."""
    from tapmodel.report.page.write import PageContent, write_page
    from tapmodel.report.sheet.papers import write_papers
    from tapmodel.run.delivery.place import deliver
    from tapmodel.run.delivery.staging import staging
    from tapmodel.run.record import design_record

    settled, _ = _designed(job, sets)
    look = Look(paper, units, projection)
    with staging(out, settled.name) as staged:
        _, drawings = write_papers(settled, staged, look)
        page = staged / f"{settled.name}-sheet.html"
        write_page(page, settled, PageContent(drawings), look.units)
        record = deliver(staged, out / settled.name, design_record(settled))
    for path in record["delivery"]["written"]:
        say(escaped(str(out / settled.name / path)))
    _tell_delivery(record)
    _end(settled)


@app.command()
def page(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: JobArgument,
    out: Out = Path("out"),
    sets: Sets = None,
    *,
    units: TextUnits = Units.MM,
    projection: View = Projection.FIRST,
    seconds: Seconds = _USUAL.seconds,
    megabytes: Megabytes = _USUAL.memory_mb,
) -> None:
    """Write a page to turn the tap about in, with a mesh that is not proved; no model is built."""
    limits = _limits(seconds, megabytes)
    with previewers(Look(units=units, projection=projection), limits) as crew:
        settled, _ = _designed(job, sets)
        with _progress(_foreseen(settled, limits, preview=True)) as tell:
            record = preview_with(crew, settled, out, tell)
    _tell_preview(record, out)
    _end(settled)


def _tell_preview(record: dict[str, Any], out: Path, *, err: bool = False) -> None:
    for path in record["delivery"]["written"]:
        shown = escaped(str(out / record["name"] / path))
        say(f"preview, not proved: {shown}", aside=err)
    _tell_delivery(record)


def _tell_delivery(record: dict[str, Any]) -> None:
    """What could not be made, and what became of files that stood in the folder before."""
    for words in record.get("left_out", ()):
        say(f"note: left out, {words}", aside=True)
    delivery = record["delivery"]
    if delivery["replaced"]:
        words = f"another tap of this name, made {delivery['replaced']}, gave way to this one"
        say(f"note: {words}", aside=True)
    for old, new in delivery["kept"].items():
        say(escaped(f"note: your own {old} is kept as {new}"), aside=True)


@app.command()
def wires(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: Annotated[
        str | None,
        typer.Argument(metavar="[JOB]", help="A designation or .toml file; none for a free form."),
    ] = None,
    sets: Sets = None,
    *,
    wire: Annotated[float | None, typer.Option(help="Diameter of the wires in mm.")] = None,
    on_hand: Annotated[
        str, typer.Option(metavar="D,D,...", help="Wires to choose from, in mm.")
    ] = "",
    measured: Annotated[float | None, typer.Option(help="Value over the wires in mm.")] = None,
    compound: Annotated[float, typer.Option(help="Setting of the compound in degrees.")] = 0.0,
    pitch_diameter: Annotated[float | None, typer.Option(help="Instead of the basic one.")] = None,
    starts: Annotated[int | None, typer.Option(help="Number of threads side by side.")] = None,
    lead_angle: Annotated[float | None, typer.Option(help="Instead of that of the starts.")] = None,
    flank_angle: Annotated[
        float | None, typer.Option(help="Half the included angle of a free form, degrees.")
    ] = None,
    pitch: Annotated[float | None, typer.Option(help="Pitch of a free form in mm.")] = None,
    as_json: AsJson = False,
) -> None:
    """Measure a tap over wires: limits, and from a measured value the infeed still to take."""
    from tapmodel.report.wires_page import wires_page
    from tapmodel.shop.wires.answer import Wires, answer_wires
    from tapmodel.shop.wires.asked import Overrides, free_thread, thread_of_design
    from tapmodel.shop.wires.record import wires_record

    overrides = Overrides(pitch_diameter, starts, lead_angle)
    settled = None
    if job is not None:
        if flank_angle is not None or pitch is not None:
            raise InputError("JOB", job, "no JOB beside --flank-angle and --pitch")
        settled, _ = _designed(job, sets)
        asked = thread_of_design(settled, settled.basic_pitch_diameter, overrides)
    elif flank_angle is None or pitch is None:
        raise InputError("JOB", "none", "a JOB, or both --flank-angle and --pitch")
    elif sets:
        raise InputError("--set", sets[0], "no --set beside --flank-angle and --pitch")
    else:
        asked = free_thread(flank_angle, pitch, overrides)
    answer = answer_wires(asked, Wires(wire, _diameters(on_hand), measured, compound))
    if as_json:
        _print_json(wires_record(answer))
    else:
        say(wires_page(answer))
    if settled:
        _end(settled)


def _diameters(text: str) -> tuple[float, ...]:
    try:
        return tuple(float(word) for word in text.split(",") if word.strip())
    except ValueError:
        raise InputError("--on-hand", text, "diameters in mm with commas between") from None


@app.command()
def schema() -> None:
    """Print the JSON Schema of the job file."""
    from tapmodel.spec.job_file import json_schema

    _print_json(json_schema())


def _designed(text: str, sets: list[str] | None) -> "tuple[TapDesign, Job]":
    from tapmodel.design.design import design_tap
    from tapmodel.spec.job_file import job_for, read_job

    is_file = text.lower().endswith(".toml") or (os.sep in text and os.path.exists(text))  # noqa: PTH110  (never raises)
    job = read_job(Path(text), sets or []) if is_file else job_for(text, sets or [])
    return design_tap(job), job


def _has_errors(settled: "TapDesign") -> bool:
    return bool(_errors(settled))


def _errors(settled: "TapDesign") -> tuple[Finding, ...]:
    return tuple(f for f in settled.findings if f.severity is Severity.ERROR)


def _refuse_broken(settled: "TapDesign", *, force: bool) -> None:
    """Stop before the kernel: a broken rule that is not forced, or that leaves no solid."""
    if not _has_errors(settled):
        return
    impossible = [f"{f.no_solid} [{f.code}]" for f in settled.findings if f.no_solid]
    if impossible:
        even = "even --force cannot build it" if force else "--force could not build it either"
        raise RefusedError(f"not built, see the errors above; {even}: {'; '.join(impossible)}")
    if not force:
        raise RefusedError("not built, see the errors above; --force builds it anyway")


def _end(settled: "TapDesign") -> None:
    """Say which rules the design breaks beside what was handed over, and in the exit code."""
    if not _has_errors(settled):
        return
    from tapmodel.report.numbers import findings_text

    for line in findings_text(_errors(settled)):
        say(line, aside=True)
    raise typer.Exit(1)


def _print_json(value: object) -> None:
    say(json.dumps(value, indent=1, allow_nan=False))


def _limits(seconds: float, megabytes: int) -> Limits:
    if not 0 < seconds <= _LONGEST:
        raise InputError("--limit-seconds", seconds, f"more than 0, up to {_LONGEST:g}")
    if not 0 < megabytes <= _LARGEST:
        raise InputError("--limit-mb", megabytes, f"more than 0, up to {_LARGEST}")
    return Limits(seconds, megabytes)


def _foreseen(settled: "TapDesign", limits: Limits, *, preview: bool) -> "Estimate":
    """What the work will take; told where that is long, refused beyond the limits."""
    from tapmodel.run.estimate import BUILD, LONG, PREVIEW, demand_within, estimate

    foreseen = estimate(settled, PREVIEW if preview else BUILD)
    demand_within(foreseen, limits)
    if foreseen.seconds > LONG:
        say(f"note: {foreseen.teeth:.0f} teeth will take {foreseen}", aside=True)
    return foreseen


@contextmanager
def _progress(foreseen: "Estimate | None" = None) -> Generator[Told]:
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

        def tell(stage: Stage) -> None:
            bar.update(task, description=stage, advance=1)

        yield tell


def main() -> None:
    """Run the command line; one clear message for whatever goes wrong."""
    words = sys.argv[1:] or ["--help"]
    how = {"prog_name": "tapmodel", "standalone_mode": False, "complete_var": ""}
    sys.exit(code_of(lambda: app(words, **how)))


if __name__ == "__main__":
    main()
