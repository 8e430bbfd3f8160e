"""The job file of a tap of a set, which says that it was written for it and not changed since."""

import hashlib
import re
from pathlib import Path

from tapmodel.designing.record import TapDesign
from tapmodel.report.job_file import commented_job
from tapmodel.spec.job import Job

_DIGITS = 16
"""Of the digest that a file ends in: 64 bits, which no edit meets by chance."""

_END = "# Tap {number} of a set of {taps} for {thread}, as tapmodel set wrote it: {digest}\n"
_ENDING = re.compile(
    r"\A(?P<before>.*)^# Tap (?P<number>[0-9]) of a set of (?P<taps>[0-9]) "
    rf"for (?P<thread>[^\n]+), as tapmodel set wrote it: (?P<digest>[0-9a-f]{{{_DIGITS}}})\n\Z",
    re.MULTILINE | re.DOTALL,
)


def job_of_set(job: Job, design: TapDesign, folder: Path = Path()) -> str:
    """The text of a job file as `commented_job` makes it, and a last line that proves it.

    Args:
        job: of a tap of a set.
        design: of that tap.
        folder: where the file is to lie.

    Raises:
        ValueError: a tap of no set.
    """
    if design.part is None:
        raise ValueError(f"{design.name} is no tap of a set")
    text, part = commented_job(job, design, folder), design.part
    number, taps, thread = part.number, part.taps, design.designation
    digest = _digest(text, number=number, taps=taps, thread=thread)
    return text + _END.format(number=number, taps=taps, thread=thread, digest=digest)


def is_job_of_set(text: str, number: int, thread: str) -> bool:
    """Whether a text is one that `job_of_set` made for that tap of a set, not a letter changed.

    Args:
        text: of a file.
        number: of the tap in its set.
        thread: that the set cuts, as a design names it.
    """
    found = _ENDING.fullmatch(text)
    if found is None or (int(found["number"]), found["thread"]) != (number, thread):
        return False
    made = _digest(found["before"], number=number, taps=int(found["taps"]), thread=thread)
    return made == found["digest"]


def _digest(text: str, *, number: int, taps: int, thread: str) -> str:
    told = f"{text}\n{number} {taps} {thread}"
    return hashlib.sha256(told.encode()).hexdigest()[:_DIGITS]
