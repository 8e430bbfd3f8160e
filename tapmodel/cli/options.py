"""Arguments and options that several commands share."""

from pathlib import Path
from typing import Annotated

import typer

from tapmodel.errors import InputError
from tapmodel.file_names import refuse_strange
from tapmodel.report.units import Paper, Projection
from tapmodel.run.crew import Limits
from tapmodel.words import Units

USUAL = Limits()

JobArgument = Annotated[
    str, typer.Argument(metavar="JOB", help="A designation such as M18x0.75-LH, or a .toml file.")
]


def _fields(incomplete: str) -> list[str]:
    from tapmodel.spec.job import field_names

    return [f"{name}=" for name in field_names() if name.startswith(incomplete)]


Sets = Annotated[
    list[str] | None,
    typer.Option(
        "--set",
        metavar="FIELD=VALUE",
        help="Override one value; may be repeated.",
        autocompletion=_fields,
    ),
]


def _single_fields(incomplete: str) -> list[str]:
    from tapmodel.spec.job import DESCRIBED, is_list, job_fields

    fields = job_fields().items()
    names = [name for name, field in fields if not is_list(field) and name not in DESCRIBED]
    return [f"{name}=" for name in names if name.startswith(incomplete)]


Varied = Annotated[
    list[str] | None,
    typer.Option(
        "--vary",
        metavar="FIELD=VALUES",
        help="Values to compare: flutes.count=3,4,5, or a range in even steps, "
        "flutes.offset=-1:3:9 (from, to, how many); may be repeated.",
        autocompletion=_single_fields,
    ),
]


def for_every_system(out: Path | None) -> Path | None:
    """The folder, whose name every system takes.

    Raises:
        InputError: one does not.
    """
    if out is not None:
        refuse_strange("--out", out)
    return out


Out = Annotated[Path, typer.Option(help="Folder for results.", callback=for_every_system)]
PaperSize = Annotated[
    Paper | None,
    typer.Option(help="Size of the sheet; by default the job's, else A4.", case_sensitive=False),
]
_SPELLINGS = {"in": Units.INCH, "inches": Units.INCH, '"': Units.INCH, "metric": Units.MM}


def _units_named(text: str) -> Units:
    word = text.strip().lower()
    if word in _SPELLINGS:
        return _SPELLINGS[word]
    try:
        return Units(word)
    except ValueError:
        raise InputError("--units", text, "mm, inch (or in) or both") from None


TextUnits = Annotated[
    Units | None,
    typer.Option(
        help="Units of length in what is written; by default the job's.",
        parser=_units_named,
        metavar="[mm|inch|both]",
    ),
]
View = Annotated[
    Projection | None,
    typer.Option(
        help="How views stand, in first or third angle; by default the job's, else first.",
        case_sensitive=False,
    ),
]
Seconds = Annotated[
    float, typer.Option("--limit-seconds", help="The longest that the work may take.")
]
Megabytes = Annotated[
    int, typer.Option("--limit-mb", help="The most memory that each process may ask for.")
]
Fix = Annotated[
    bool, typer.Option("--fix", help="Apply the cures of broken rules first, and say which.")
]
NoStrength = Annotated[
    bool,
    typer.Option("--no-strength", help="Say nothing of what the tap will do in the hole."),
]
AsJson = Annotated[bool, typer.Option("--json", help="Print the record as JSON and nothing else.")]
