"""Where the page is served, and by which names a browser may ask for it."""

import contextlib
import errno
import ipaddress
import socket
from collections.abc import Iterator
from dataclasses import dataclass

from tapmodel.errors import InputError

LOOPBACK = "127.0.0.1"

_USUAL_PORT = 80
"""Which no browser names."""


@dataclass(frozen=True, slots=True)
class Address:
    """Where a socket listens.

    Attributes:
        host: as it was asked for; if all of the machine's were, the one by which others reach it.
        port: a number.
        hosts: what a browser may call it (`Host`), in small letters, with the port.
        is_loopback: whether this machine alone can reach it.
    """

    host: str
    port: int
    hosts: frozenset[str]
    is_loopback: bool

    def link(self, token: str) -> str:
        """The whole address of the page."""
        return f"http://{_bracketed(self.host)}:{self.port}/{token}/"


def listening_at(host: str, port: int) -> socket.socket:
    """A socket that browsers can knock at from now on.

    Args:
        host: an address of this machine, or a name of one.
        port: 0 for any that is free.

    Raises:
        InputError: naming the option to be changed.
    """
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    try:
        listening = socket.create_server((host, port), family=family)
    except (OSError, UnicodeError, TypeError) as error:
        if isinstance(error, OSError) and error.errno in {errno.EADDRINUSE, errno.EACCES}:
            reason = "it is taken" if error.errno == errno.EADDRINUSE else "the system keeps it"
            raise InputError("--port", port, f"a port that is free ({reason}); 0 for any") from None
        allowed = f"an address of this machine, or none for {LOOPBACK}"
        raise InputError("--host", host, allowed) from None
    # Or the second part of an answer waits until the browser has acknowledged the first, which it
    # puts off for 40 ms. Connections have it from the socket that they come by.
    listening.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
    return listening


def address_of(listening: socket.socket, host: str) -> Address:
    """Where a socket listens that was asked to listen at `host`."""
    bound, port = listening.getsockname()[:2]
    where = ipaddress.ip_address(bound)
    named = [host, bound]
    if where.is_unspecified:
        named = [_own_address(listening.family), socket.gethostname()]
    if where.is_loopback or where.is_unspecified:
        named += [LOOPBACK, "localhost", "::1"]
    hosts = frozenset(spelt for name in named for spelt in _with_port(name.lower(), port))
    return Address(named[0], port, hosts, where.is_loopback)


def _own_address(family: socket.AddressFamily) -> str:
    """By which others reach this machine, as far as it knows."""
    # Nothing is sent: the system only looks which of its addresses it would send from. Addresses of
    # documentation: RFC 5737 and RFC 3849.
    elsewhere = "2001:db8::1" if family == socket.AF_INET6 else "192.0.2.1"
    with socket.socket(family, socket.SOCK_DGRAM) as looking, contextlib.suppress(OSError):
        looking.connect((elsewhere, 9))
        return looking.getsockname()[0]
    return socket.gethostname()


def _with_port(name: str, port: int) -> Iterator[str]:
    yield f"{_bracketed(name)}:{port}"
    if port == _USUAL_PORT:
        yield _bracketed(name)


def _bracketed(name: str) -> str:
    return f"[{name}]" if ":" in name else name
