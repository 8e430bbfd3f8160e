"""The command line: the only place that prints and exits.

Exit codes: 0 fine, 1 findings of severity error, 2 bad input, 3 our fault, 130 interrupted.
"""

import json
import os
import shlex
import sys
from collections.abc import Callable, Generator
from contextlib import contextmanager
from pathlib import Path
from typing import Annotated

import typer

from tapmodel.design.design import design_tap
from tapmodel.design.tap_design import TapDesign
from tapmodel.errors import INTERRUPTED, InputError, RefusedError, TapmodelError
from tapmodel.export.atomic import whole_file
from tapmodel.export.formats import DEFAULT_FORMATS, parse_formats
from tapmodel.record import design_record
from tapmodel.report.job_file import commented_job
from tapmodel.report.numbers import design_page, findings_text
from tapmodel.report.summary import build_summary, verify_summary
from tapmodel.report.units import Look, Paper, Projection, Units
from tapmodel.report.wires_page import wires_page
from tapmodel.shop.wires_answer import Wires, answer_wires
from tapmodel.shop.wires_asked import Overrides, free_thread, thread_of_design
from tapmodel.shop.wires_record import wires_record
from tapmodel.spec.job import Job
from tapmodel.spec.job_file import job_for, json_schema, read_job
from tapmodel.wish import Wish
from tapmodel.words import Severity
from tapmodel.workshop import STAGES, inspect, produce

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
AsJson = Annotated[bool, typer.Option("--json", help="Print the record as JSON and nothing else.")]


@app.command()
def design(job: JobArgument, sets: Sets = None, *, as_json: AsJson = False) -> None:
    """Print every number of a tap for the hole; no model is built."""
    settled, _ = _designed(job, sets)
    if as_json:
        _print_json(design_record(settled))
    else:
        typer.echo(design_page(settled))
    if _has_errors(settled):
        raise typer.Exit(1)


@app.command()
def new(
    designation: JobArgument,
    file: Annotated[Path, typer.Argument(help="The job file to write.")],
    sets: Sets = None,
    *,
    overwrite: Annotated[bool, typer.Option(help="Replace the file if it exists.")] = False,
) -> None:
    """Write a commented job file with every value chosen and why."""
    settled, job = _designed(designation, sets)
    taken = os.path.lexists(file)
    if taken and not overwrite:
        raise InputError("FILE", str(file), "a name that is not taken, or --overwrite")
    if (taken and not file.is_file()) or not file.name:
        raise InputError("FILE", str(file), "the name of an ordinary file")
    with whole_file(file.resolve()) as draft:
        draft.write_text(commented_job(job, settled), encoding="utf-8")
    typer.echo(f"wrote {file}; edit it, then: tapmodel build {shlex.quote(str(file))}", err=True)


@app.command()
def build(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: JobArgument,
    out: Out = Path("out"),
    sets: Sets = None,
    formats: Annotated[str, typer.Option(help="Files to write, with commas.")] = DEFAULT_FORMATS,
    *,
    force: Annotated[bool, typer.Option(help="Build although the design breaks a rule.")] = False,
    preview: Annotated[bool, typer.Option(help="Only an unproved mesh and picture.")] = False,
    as_json: AsJson = False,
    paper: PaperSize = Paper.A4,
    units: TextUnits = Units.MM,
    projection: View = Projection.FIRST,
) -> None:
    """Build the solid, prove it, and write model files, pictures, papers and record to OUT/NAME.

    With --force a design that breaks a rule is built all the same and the exit code is 0; one that
    leaves no tap to describe cannot be forced.
    """
    wanted = Wish(parse_formats(formats), Look(paper, units, projection))
    settled, _ = _designed(job, sets)
    for line in findings_text(settled.findings):
        typer.echo(line, err=True)
    _refuse_broken(settled, force=force)
    if preview:
        from tapmodel.preview import look  # noqa: PLC0415  (loads mesh libraries)

        for path in look(settled, out):
            typer.echo(f"preview, not proved: {path}", err=as_json)
        return
    with _progress() as tell:
        record = produce(settled, out, tell, wanted)
    if as_json:
        _print_json(record)
    else:
        typer.echo(build_summary(record, out / settled.name))


@app.command()
def verify(
    file: Annotated[Path, typer.Argument(help="A STEP file, for instance back from CAM.")],
    job: JobArgument,
    sets: Sets = None,
    *,
    as_json: AsJson = False,
) -> None:
    """Compare the solid in a STEP file with the tap that a job asks for."""
    settled, _ = _designed(job, sets)
    if not file.is_file():
        raise InputError("FILE", str(file), "a STEP file that exists")
    with _progress() as tell:
        measured = inspect(settled, file, tell)
    if as_json:
        _print_json(measured)
    else:
        typer.echo(verify_summary(measured))
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
    from tapmodel.report.page.write import PageContent, write_page  # noqa: PLC0415  (as below)
    from tapmodel.report.papers import write_papers  # noqa: PLC0415  (loads the typesetter)

    settled, _ = _designed(job, sets)
    folder = _folder(out, settled)
    look = Look(paper, units, projection)
    written, drawings = write_papers(settled, folder, look)
    page = folder / f"{settled.name}-sheet.html"
    write_page(page, settled, PageContent(drawings), look.units)
    for path in (*written, page):
        typer.echo(path)


@app.command()
def page(
    job: JobArgument,
    out: Out = Path("out"),
    sets: Sets = None,
    *,
    units: TextUnits = Units.MM,
    projection: View = Projection.FIRST,
) -> None:
    """Write a page to turn the tap about in, with a mesh that is not proved; no model is built."""
    from tapmodel.preview import look_closely  # noqa: PLC0415  (loads mesh libraries)

    settled, _ = _designed(job, sets)
    for path in look_closely(settled, out, Look(units=units, projection=projection)):
        typer.echo(f"preview, not proved: {path}")


def _folder(out: Path, settled: TapDesign) -> Path:
    folder = out / settled.name
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        allowed = f"a folder that can be written ({error.strerror})"
        raise InputError("--out", str(out), allowed) from error
    return folder


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
    overrides = Overrides(pitch_diameter, starts, lead_angle)
    if job is not None:
        if flank_angle is not None or pitch is not None:
            raise InputError("JOB", job, "no JOB beside --flank-angle and --pitch")
        settled, _ = _designed(job, sets)
        asked = thread_of_design(settled, settled.basic_pitch_diameter, overrides)
    elif flank_angle is None or pitch is None:
        raise InputError("JOB", "none", "a JOB, or both --flank-angle and --pitch")
    else:
        asked = free_thread(flank_angle, pitch, overrides)
    answer = answer_wires(asked, Wires(wire, _diameters(on_hand), measured, compound))
    if as_json:
        _print_json(wires_record(answer))
    else:
        typer.echo(wires_page(answer))


def _diameters(text: str) -> tuple[float, ...]:
    try:
        return tuple(float(word) for word in text.split(",") if word.strip())
    except ValueError:
        raise InputError("--on-hand", text, "diameters in mm with commas between") from None


@app.command()
def schema() -> None:
    """Print the JSON Schema of the job file."""
    _print_json(json_schema())


def _designed(text: str, sets: list[str] | None) -> tuple[TapDesign, Job]:
    is_file = text.lower().endswith(".toml") or (os.sep in text and Path(text).exists())
    job = read_job(Path(text), sets or []) if is_file else job_for(text, sets or [])
    return design_tap(job), job


def _refuse_broken(settled: TapDesign, *, force: bool) -> None:
    """Stop before the kernel: a broken rule that is not forced, or that leaves no solid."""
    if not _has_errors(settled):
        return
    impossible = [f"{f.no_solid} [{f.code}]" for f in settled.findings if f.no_solid]
    if impossible:
        even = "even --force cannot build it" if force else "--force could not build it either"
        raise RefusedError(f"not built, see the errors above; {even}: {'; '.join(impossible)}")
    if not force:
        raise RefusedError("not built, see the errors above; --force builds it anyway")


def _has_errors(settled: TapDesign) -> bool:
    return any(finding.severity is Severity.ERROR for finding in settled.findings)


def _print_json(value: object) -> None:
    sys.stdout.write(json.dumps(value, indent=1, allow_nan=False) + "\n")


@contextmanager
def _progress() -> Generator[Callable[[str], None]]:
    """A bar on stderr that names the running stage; silent where nobody watches."""
    from rich.console import Console  # noqa: PLC0415  (only long work shows a bar)
    from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn  # noqa: PLC0415

    columns = (TextColumn("{task.description:<12}"), BarColumn(), TimeElapsedColumn())
    with Progress(*columns, console=Console(stderr=True), transient=True) as bar:
        task = bar.add_task("kernel", total=len(STAGES))

        def tell(stage: str) -> None:
            bar.update(task, description=stage, completed=STAGES.index(stage))

        yield tell


def main() -> None:
    """Run the command line; one clear message for whatever goes wrong."""
    try:
        app(standalone_mode=True)
    except SystemExit as ending:
        if ending.code == INTERRUPTED:
            raise KeyboardInterrupt from None
        raise
    except TapmodelError as error:
        sys.stderr.write(f"tapmodel: {error}\n")
        sys.exit(error.exit_code)
    except OSError as error:
        sys.stderr.write(f"tapmodel: {error.filename or 'output'}: {error.strerror}\n")
        sys.exit(2)
    except Exception as error:  # noqa: BLE001  (the user gets one line, and the code for our fault)
        what = f"{type(error).__name__}: {error}"
        sys.stderr.write(f"tapmodel: our fault, please report it: {what}\n")
        sys.exit(3)


if __name__ == "__main__":
    main()
