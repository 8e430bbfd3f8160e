"""`tapmodel serve`: the live page on the user's own machine."""

import threading
import webbrowser
from typing import TYPE_CHECKING, Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.measured_file import text_beside
from tapmodel.cli.options import USUAL, Megabytes, Seconds, Sets, TextUnits
from tapmodel.cli.progress import limits_of
from tapmodel.cli.settled import designed

if TYPE_CHECKING:
    from tapmodel.serve.address import Address

EXAMPLES = (
    "tapmodel serve",
    "tapmodel serve M18x0.75",
    "tapmodel serve my-tap.toml --no-browser --port 8000",
)

_OPEN = (
    "note: whoever in the network has this address can use the page until you stop it with Ctrl-C; "
    "what is sent is not encrypted"
)


def serve(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: Annotated[
        str, typer.Argument(metavar="[JOB]", help="A designation or a job file.")
    ] = "M10",
    sets: Sets = None,
    *,
    port: Annotated[int, typer.Option(min=0, max=65535, help="0 for any that is free.")] = 0,
    host: Annotated[
        str,
        typer.Option(
            help="An address of this machine that others in the network shall reach, for a phone "
            "at the lathe; by default nobody else does."
        ),
    ] = "",
    no_browser: Annotated[bool, typer.Option("--no-browser", help="Open no browser.")] = False,
    units: TextUnits = None,
    seconds: Seconds = USUAL.seconds,
    megabytes: Megabytes = USUAL.memory_mb,
) -> None:
    """Change a tap on a page and see at once what it does.

    The page's address stands on stdout; it holds a token, without which nothing is answered. Ctrl-C
    ends it.
    """
    limits = limits_of(seconds, megabytes)
    _, asked = designed(job, sets, units=units, briefly=True)
    from tapmodel.serve.address import LOOPBACK
    from tapmodel.serve.asked import Opening
    from tapmodel.serve.start import serve as run
    from tapmodel.spec.shop_file import FIELD

    # The page has the shop's values, and no way to a file.
    values = {field: value for field, value in asked.typed().items() if field != FIELD}

    def ready(link: str, address: "Address") -> None:
        say(link)
        if not address.is_loopback:
            say(_OPEN, aside=True)
        if not no_browser:
            # One in the terminal is over when its user leaves it, who waits for it until then.
            threading.Thread(target=webbrowser.open, args=(link,), daemon=True).start()

    # Values laid over the job make another tap, of which nothing was measured.
    measured = "" if sets else text_beside(job)
    run(
        Opening(job=values, units=units, measured=measured), (host or LOOPBACK, port), limits, ready
    )
