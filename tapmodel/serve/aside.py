"""Work beside the loop that answers: a slow request makes no other wait."""

import asyncio
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from typing import TypeVar

from starlette.exceptions import HTTPException
from starlette.requests import Request

LONGEST = 20.0
"""Seconds; a design takes some hundredths, the papers of one a second."""

_THREADS = ThreadPoolExecutor(4, "tapmodel-aside")

Result = TypeVar("Result")


async def aside(
    request: Request,
    work: Callable[[], Result],
    queue: ThreadPoolExecutor | None = None,
    longest: float = LONGEST,
) -> Result:
    """Have a thread, of `queue` or of those of all, do the work of a request whose body is read.

    Work that has not begun when the page has lost interest never begins: a slider that is drawn
    asks for many designs, of which it shows one. A thread cannot be ended; one that takes too long
    goes on, but nobody waits for it.

    Raises:
        HTTPException: it took too long, or nobody waits any more.
    """
    working = asyncio.get_running_loop().run_in_executor(queue or _THREADS, work)
    leaving = asyncio.ensure_future(_left(request))
    waited: tuple[asyncio.Future[Result], asyncio.Future[None]] = (working, leaving)
    await asyncio.wait(waited, timeout=longest, return_when=asyncio.FIRST_COMPLETED)
    leaving.cancel()
    if working.done():
        return working.result()
    working.cancel()
    raise HTTPException(503, f"no answer within {longest:g} s; the values before stay as they were")


async def _left(request: Request) -> None:
    while (await request.receive())["type"] != "http.disconnect":
        pass
