"""Colour on a terminal, and none in a file, a pipe or where the user wants none."""

import os
import sys

import typer

from tapmodel.report.screen.columns import Mark, Pen, plain


def pen(*, aside: bool = False) -> Pen:
    """How to write on stdout, or `aside` on stderr.

    Source: NO_COLOR (no-color.org) and TERM=dumb ask for plain text, common practice.
    """
    stream = sys.stderr if aside else sys.stdout
    refused = bool(os.environ.get("NO_COLOR")) or os.environ.get("TERM") == "dumb"
    return plain if refused or not stream.isatty() else _coloured


def _coloured(text: str, mark: Mark) -> str:
    match mark:
        case Mark.HEADING:
            return typer.style(text, bold=True)
        case Mark.VALUE:
            return typer.style(text, fg=typer.colors.CYAN)
        case Mark.ASIDE:
            return typer.style(text, dim=True)
        case Mark.ERROR:
            return typer.style(text, fg=typer.colors.RED, bold=True)
        case Mark.WARNING:
            return typer.style(text, fg=typer.colors.YELLOW, bold=True)
