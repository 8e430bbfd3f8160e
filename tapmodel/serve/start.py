"""Serving the live page until it is stopped."""

import secrets
from collections.abc import Callable
from socket import socket

from tapmodel.run.crew import Limits
from tapmodel.run.delivery.fate import FATE
from tapmodel.serve.address import Address, address_of, listening_at
from tapmodel.serve.asked import Opening
from tapmodel.serve.mate import Mates, hired

_PATIENCE = 1
"""Seconds for answers that are under way when the program is stopped."""


def serve(
    first: Opening, at: tuple[str, int], limits: Limits, ready: Callable[[str, Address], None]
) -> None:
    """Serve the page until the process is interrupted.

    Args:
        first: what the page opens with.
        at: host, and port or 0 for any that is free.
        limits: on the processes of a build.
        ready: told the whole address, token included, as soon as a browser can be led there.

    Raises:
        InputError: when nobody can listen there.
        KeyboardInterrupt: when it is stopped; by then nothing is left of it.
    """
    token = secrets.token_urlsafe(24)
    with listening_at(*at) as listening:
        address = address_of(listening, at[0])
        ready(address.link(token), address)
        try:
            # All of it loads while the browser starts, whose first request waits for it.
            with hired() as mates:
                _answer(first, token, (address, listening), limits, mates)
        finally:
            FATE.words = "the page is not served any more"


def _answer(
    first: Opening, token: str, at: tuple[Address, socket], limits: Limits, mates: Mates
) -> None:
    """Answer until the process is interrupted."""
    import uvicorn  # noqa: PLC0415

    from tapmodel.serve.app import application  # noqa: PLC0415
    from tapmodel.serve.building.builds import Builds  # noqa: PLC0415

    address, listening = at
    with Builds(limits) as builds:
        config = uvicorn.Config(
            application(token, address.hosts, first, builds, mates),
            http="h11",
            ws="none",
            lifespan="off",
            # Who asks is who is connected, whatever a request says.
            proxy_headers=False,
            server_header=False,
            access_log=False,
            # Whatever goes wrong is told on the page.
            log_level="critical",
            timeout_graceful_shutdown=_PATIENCE,
        )
        uvicorn.Server(config).run(sockets=[listening])
