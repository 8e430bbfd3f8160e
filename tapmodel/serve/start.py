"""Serving the live page until it is stopped."""

import secrets
import socket
from collections.abc import Callable

import uvicorn

from tapmodel.serve.app import application
from tapmodel.serve.asked import Asked

LOOPBACK = "127.0.0.1"


def serve(first: Asked, port: int, host: str, ready: Callable[[str], None]) -> None:
    """Serve the page until the process is interrupted.

    Args:
        first: what the page opens with.
        port: 0 for any that is free.
        host: address to listen at.
        ready: told the whole address, token included, once it is answered.

    Raises:
        OSError: when the port cannot be had.
    """
    token = secrets.token_urlsafe(24)
    listening = socket.create_server((host, port))
    config = uvicorn.Config(application(token, first), log_level="error", access_log=False)
    address = f"http://{host}:{listening.getsockname()[1]}/{token}/"
    ready(address)
    uvicorn.Server(config).run(sockets=[listening])
