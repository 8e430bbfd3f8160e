"""The moment that files say they were made at, from one place."""

import os
from datetime import UTC, datetime

from tapmodel.errors import InputError

_NAME = "SOURCE_DATE_EPOCH"


def stamp() -> datetime:
    """Now in UTC, or the moment that `SOURCE_DATE_EPOCH` fixes, so that bytes can be made again.

    The variable counts whole seconds from 1970; see reproducible-builds.org.

    Raises:
        InputError: when the variable is set to something else.
    """
    fixed = os.environ.get(_NAME)
    if not fixed:
        return datetime.now(UTC)
    try:
        return datetime.fromtimestamp(int(fixed), UTC)
    except (ValueError, OverflowError, OSError):
        raise InputError(_NAME, fixed, "a number of seconds from 1970 on") from None
