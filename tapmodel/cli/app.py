"""The commands by name, and the way from the words of a command line to an exit code."""

import sys
from typing import Annotated

import typer
from typer.core import TyperCommand

from tapmodel.cli.commands import (
    build,
    compare,
    design,
    dividing,
    gears,
    heat,
    measured,
    new,
    page,
    poster,
    route,
    schema,
    serve,
    set,  # noqa: A004  (a command is named as it is typed)
    sheet,
    verify,
    wires,
)
from tapmodel.cli.ending import code_of, say
from tapmodel.cli.joined import JobCommand
from tapmodel.version import __version__

app = typer.Typer(
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    help="From one thread designation to a verified 3-D model of the cutting tap for it.",
)


def _epilog(examples: tuple[str, ...]) -> str:
    """Examples below a command's help; the mark before them keeps their lines apart."""
    return "\n".join(["\b", "Examples:", *(f"  {line}" for line in examples)])


ROOMS = (
    *(
        design,
        new,
        set,
        build,
        verify,
        sheet,
        poster,
        route,
        page,
        serve,
        wires,
        measured,
        gears,
        dividing,
    ),
    *(heat, compare, schema),
)
for room in ROOMS:
    command = getattr(room, room.__name__.rpartition(".")[2])
    kind = TyperCommand if room in {schema, dividing, heat} else JobCommand
    app.command(cls=kind, epilog=_epilog(room.EXAMPLES))(command)


def _say_version(asked: bool) -> None:
    if asked:
        say(f"tapmodel {__version__}")
        raise typer.Exit


@app.callback()
def _options(
    version: Annotated[
        bool,
        typer.Option(
            "--version", help="Print the program's version.", callback=_say_version, is_eager=True
        ),
    ] = False,
) -> None:
    del version


def main() -> None:
    """Run the command line; one clear message for whatever goes wrong."""
    words = sys.argv[1:] or ["--help"]
    sys.exit(code_of(lambda: app(words, prog_name="tapmodel", standalone_mode=False)))
