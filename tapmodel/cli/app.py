"""The commands by name, and the way from the words of a command line to an exit code."""

import sys

import typer

from tapmodel.cli.commands.build import build
from tapmodel.cli.commands.design import design
from tapmodel.cli.commands.new import new
from tapmodel.cli.commands.page import page
from tapmodel.cli.commands.schema import schema
from tapmodel.cli.commands.sheet import sheet
from tapmodel.cli.commands.verify import verify
from tapmodel.cli.commands.wires import wires
from tapmodel.cli.ending import code_of

app = typer.Typer(
    add_completion=False,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    help="From one thread designation to a verified 3-D model of the cutting tap for it.",
)
for command in (design, new, build, verify, sheet, page, wires, schema):
    app.command()(command)


def main() -> None:
    """Run the command line; one clear message for whatever goes wrong."""
    words = sys.argv[1:] or ["--help"]
    how = {"prog_name": "tapmodel", "standalone_mode": False, "complete_var": ""}
    sys.exit(code_of(lambda: app(words, **how)))
