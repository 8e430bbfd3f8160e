"""Lengths as a job file in inches has them: texts with their unit that read back to the same."""

from fractions import Fraction

from tapmodel.report.units import MM_PER_INCH
from tapmodel.spec.job import Job, unit_of
from tapmodel.spec.job_file import checked
from tapmodel.spec.lengths import millimetres_of
from tapmodel.spec.overrides import apply_values
from tapmodel.spec.units import Unit

TOOLS = frozenset({"hole.drill", "flutes.cutter_diameter"})
"""Fields that hold what is bought by its size, in whichever unit that is."""

PLACES = 6
"""Decimals of an inch, of 25 nm: finer than any length is told."""

_FINEST_PART = 64  # of an inch, in which tools are sold
_SAME = 1e-9  # a size that a tool is sold in [mm]


def in_inches(mm: float, places: int = PLACES) -> str:
    """A length [mm] in decimals of an inch, without idle zeros: "0.25in"."""
    number = f"{mm / MM_PER_INCH:.{places}f}".rstrip("0").rstrip(".")
    return f"{'0' if number == '-0' else number}in"


def tool_size(mm: float) -> str:
    """Size of a drill or cutter [mm] as it is sold: "27/64in", "0.332in", "6mm"."""
    parts = round(mm / MM_PER_INCH * _FINEST_PART)
    whole, part = divmod(Fraction(parts, _FINEST_PART), 1)
    size = " ".join(str(piece) for piece in (whole, part) if piece)
    for text in (f"{size}in" if size else "", in_inches(mm, 4)):
        found = millimetres_of(text)
        if found is not None and abs(found - mm) < _SAME:
            return text
    return f"{mm:.10g}mm"


def typed_in_inches(field: str, mm: float) -> str:
    """The text for a length [mm] of a field."""
    return tool_size(mm) if field in TOOLS else in_inches(mm)


def found_in_inches(job: Job, asked: Job) -> Job:
    """The job with every length that a rule found for it as a text in inches; those `asked` stay.

    Args:
        job: made of `asked`, whose lengths are in mm where they were not typed.
        asked: what was typed.

    Raises:
        InputError: a value that cannot be used at all.
    """
    typed, kept = job.typed(), asked.typed()
    texts = {
        field: typed_in_inches(field, value)
        for field, value in typed.items()
        if isinstance(value, float) and unit_of(field) is Unit.MM and kept.get(field) != value
    }
    return checked(apply_values(job.table(), [*(typed | texts).items()]))
