"""The one time stamp that files bear; everything else in them follows from the job alone."""

import os
from datetime import UTC, datetime

from tapmodel.errors import InputError

VARIABLE = "SOURCE_DATE_EPOCH"
"""Environment variable that fixes the stamp. Source: reproducible-builds.org, SOURCE_DATE_EPOCH."""

_LAST = 253_402_300_799  # the end of the year 9999, beyond which no calendar here reaches


def stamp() -> datetime:
    """The time that files are to say they were made, in UTC and whole seconds.

    Returns:
        What `SOURCE_DATE_EPOCH` says where it is set, else now.

    Raises:
        InputError: when `SOURCE_DATE_EPOCH` is no number of seconds.
    """
    text = os.environ.get(VARIABLE)
    if text is None:
        return datetime.now(UTC).replace(microsecond=0)
    if not (text.isascii() and text.isdigit() and len(text) <= 12 and int(text) <= _LAST):
        raise InputError(VARIABLE, text, f"whole seconds since 1970, from 0 to {_LAST}")
    return datetime.fromtimestamp(int(text), UTC)
