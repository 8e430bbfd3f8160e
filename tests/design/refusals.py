"""Jobs that leave no tap, and what their user is told."""

import re
from collections.abc import Iterator
from contextlib import contextmanager

import pytest

from tapmodel.errors import NoTapError
from tapmodel.report.words.refusal import refusal


@contextmanager
def refused(words: str) -> Iterator[pytest.ExceptionInfo[NoTapError]]:
    """What stands inside leaves no tap, and the sentence on it holds these words (a pattern)."""
    with pytest.raises(NoTapError) as caught:
        yield caught
    told = refusal(caught.value)
    assert re.search(words, told), told
