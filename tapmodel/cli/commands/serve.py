"""`tapmodel serve`: the live page on the user's own machine."""

import webbrowser
from pathlib import Path
from typing import Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.job_words import is_file
from tapmodel.cli.options import Sets, TextUnits
from tapmodel.errors import InputError

EXAMPLES = ("tapmodel serve", "tapmodel serve M18x0.75", "tapmodel serve my-tap.toml --no-browser")


def serve(
    job: Annotated[
        str, typer.Argument(metavar="[JOB]", help="A designation or a job file.")
    ] = "M10",
    sets: Sets = None,
    *,
    port: Annotated[int, typer.Option(min=0, max=65535, help="0 for any that is free.")] = 0,
    no_browser: Annotated[bool, typer.Option("--no-browser", help="Open no browser.")] = False,
    units: TextUnits = None,
) -> None:
    """Change a tap on a page and see at once what it does."""
    from tapmodel.library.request import flat
    from tapmodel.serve.asked import Asked
    from tapmodel.serve.start import LOOPBACK
    from tapmodel.serve.start import serve as run
    from tapmodel.spec.job_file import apply_sets, read_job_table

    table = read_job_table(Path(job)) if is_file(job) else {"designation": job}
    first = Asked(job=dict(flat(apply_sets(table, sets or []))), units=units)

    def ready(address: str) -> None:
        say(address)
        if not no_browser:
            webbrowser.open(address)

    try:
        run(first, port, LOOPBACK, ready)
    except OSError as error:
        raise InputError("--port", port, f"a port that is free ({error.strerror})") from None
