"""The file beside a job that keeps what was measured: found, read, and laid over by what is new."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from tapmodel.cli.job_words import is_file
from tapmodel.errors import InputError
from tapmodel.file_names import refuse_strange

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from tapmodel.designing.record import TapDesign
    from tapmodel.spec.job import Job
    from tapmodel.spec.measured.record import Found, Measured
    from tapmodel.spec.measured.sizes import Size

_NOTHING = "at least one value, such as --major 18.05 or --over-wires 18.21"


def kept_in(job: str, keep: Path | None) -> "tuple[Path | None, Measured | None]":
    """The file that keeps what is measured of a JOB, None for a bare designation; and what it has.

    Raises:
        InputError: a file that cannot be read, or a value in it that is none.
    """
    from tapmodel.spec.measured.file import beside, read_measured

    if keep is not None:
        refuse_strange("--keep", keep)
    file = keep or (beside(Path(job)) if is_file(job) else None)
    return file, read_measured(file) if file else None


def text_beside(job: str) -> str:
    """The text of the file beside a job file, which has been looked through; "" for none.

    Raises:
        InputError: a file that cannot be read, or a value in it that is none.
    """
    file, known = kept_in(job, None)
    return file.read_text(encoding="utf-8-sig") if file and known else ""


def merged(
    design: "TapDesign",
    before: "Measured | None",
    given: "Mapping[Size, Found]",
    forgotten: "Sequence[Size]",
) -> "Measured":
    """What is known now: the values kept, without those taken back, and the new ones over them.

    Raises:
        InputError: no value at all, one that is taken back and is not there, or one that cannot
            have been measured on this tap.
        NoWireError: a value over wires, where no wire suits.
    """
    from tapmodel.export.clock import stamp
    from tapmodel.shop.measured.questions import refuse_other_units
    from tapmodel.shop.measured.read import with_wire
    from tapmodel.spec.measured.record import Measured, measured_of
    from tapmodel.spec.measured.sizes import Size, rivals

    before = before or Measured()
    for size in forgotten:
        if before.get(size) is None:
            there = ", ".join(before) or "nothing, as nothing is kept"
            raise InputError("--forget", size.value, there)
    new = measured_of({size: replace(one, on=stamp()) for size, one in given.items()})
    refuse_other_units(design, new)
    found = dict(new.pairs)
    if Size.OVER_WIRES in found:
        found[Size.OVER_WIRES] = with_wire(design, found[Size.OVER_WIRES])
    gone = {*forgotten, *(other for size in found for other in rivals(size))}
    stays = {size: one for size, one in before.pairs if size not in gone}
    if not found and not stays and not forgotten:
        raise InputError("measured", "nothing", _NOTHING)
    known = measured_of(stays | found)
    return replace(known, earlier=before.earlier, strange=before.strange)


def with_kept(design: "TapDesign", job: "Job", text: str) -> "TapDesign":
    """A design with what is kept beside its job file, if anything is.

    Raises:
        InputError: a value of the file that is none, or cannot have been measured on this tap.
        NoWireError: a value over wires, where no wire suits.
    """
    _, known = kept_in(text, None)
    if known is None or not known.pairs:
        return design
    from tapmodel.shop.measured.judged import with_measured

    return with_measured(design, job, known)
