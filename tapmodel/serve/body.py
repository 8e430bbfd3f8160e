"""The JSON that a request carries: shallow, and of nothing but what JSON knows."""

import json
from typing import NoReturn, cast

from starlette.exceptions import HTTPException
from starlette.requests import Request

DEEPEST = 8
"""Lists and tables within each other; a request has four."""


async def body_of(request: Request) -> object:
    """What a request carries.

    Raises:
        HTTPException: it is no JSON, or a kind of it that nobody sends in earnest.
    """
    text = await request.body()
    try:
        value = json.loads(text, parse_constant=_unknown)
        # Half a letter, which JSON can escape, could be written nowhere; 1e999 is no number.
        json.dumps(value, ensure_ascii=False, allow_nan=False).encode()
    except (ValueError, RecursionError):
        raise HTTPException(400, "a request is JSON in UTF-8, of finite numbers") from None
    if _is_deeper(value, DEEPEST):
        raise HTTPException(400, f"lists and tables stand at most {DEEPEST} deep in a request")
    return value


def _unknown(word: str) -> NoReturn:
    raise ValueError(word)


def _is_deeper(value: object, most: int) -> bool:
    level = [value]
    for _ in range(most):
        level = [part for one in level for part in _parts(one)]
    return any(isinstance(one, list | dict) for one in level)


def _parts(value: object) -> list[object]:
    if isinstance(value, dict):
        return list(cast("dict[str, object]", value).values())
    return cast("list[object]", value) if isinstance(value, list) else []
