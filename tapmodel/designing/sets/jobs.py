"""A job for each tap of a set, out of the job for the one tap whose work they share."""

from collections.abc import Iterator

from tapmodel.designing.record import TapDesign
from tapmodel.designing.sets.sharing import SharedTap, Sharing
from tapmodel.spec.conflicts import BEFORE
from tapmodel.spec.job import Job
from tapmodel.spec.job_file import checked
from tapmodel.spec.overrides import apply_values

_DIGITS = 4

Pairs = Iterator[tuple[str, float | int | str]]


def jobs_of(job: Job, design: TapDesign, sharing: Sharing) -> tuple[Job, ...]:
    """The jobs, first tap to last.

    All taps are milled in one setting and cut with one threading tool: flutes and root are given
    as the one tap has them. Its drill and its kind of hole stay, whatever the chamfers would ask.

    Args:
        job: for the one tap.
        design: of that tap.
        sharing: of its work.

    Raises:
        InputError: a value that cannot be used at all, such as a name too long for a number.
    """
    befores = (None, *sharing.taps[:-1])
    return tuple(
        _job(job, design, tap, before) for tap, before in zip(sharing.taps, befores, strict=True)
    )


def _job(job: Job, design: TapDesign, tap: SharedTap, before: SharedTap | None) -> Job:
    """The chamfer is told anew, as two of its lengths and its angle settle the third."""
    typed = apply_values(job.table(), [*job.typed().items()])
    table = {key: value for key, value in typed.items() if key != "chamfer"}
    pairs = [*_of_all(design, tap), *_of_set(tap, before)]
    if not tap.part.last:
        pairs += _of_roughing(tap)
    return checked(apply_values(table, pairs))


def _of_all(design: TapDesign, tap: SharedTap) -> Pairs:
    flutes = design.tap.flutes
    yield "name", f"{design.name}-{tap.part.number}"
    yield "hole.drill", design.drill
    yield "hole.kind", design.work.kind
    yield "chamfer.pitches", tap.chamfer_leads
    yield "chamfer.point_diameter", round(design.tap.chamfer.point_diameter, _DIGITS)
    yield "flutes.count", flutes.count
    yield "flutes.cutter_diameter", flutes.cutter_diameter
    yield "flutes.offset", round(flutes.offset, _DIGITS)
    yield "flutes.core_diameter", round(flutes.core_diameter, _DIGITS)


def _of_set(tap: SharedTap, before: SharedTap | None) -> Pairs:
    yield "set.number", tap.part.number
    yield "set.taps", tap.part.taps
    if before is not None:
        sizes = before.thread.major, before.thread.pitch_diameter
        yield from zip(BEFORE, sizes, strict=True)


def _of_roughing(tap: SharedTap) -> Pairs:
    thread = tap.thread
    yield "thread.major", thread.major
    yield "thread.pitch_diameter", thread.pitch_diameter
    if thread.rounded_root:
        yield "thread.root_radius", round(thread.root_radius, _DIGITS + 2)
    else:
        yield "thread.root_flat", round(thread.root_flat, _DIGITS + 2)
