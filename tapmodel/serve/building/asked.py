"""What a request asks to be built, settled before a process starts for it."""

from dataclasses import dataclass

from tapmodel.errors import InputError
from tapmodel.export.formats import Format
from tapmodel.report.job_file import commented_job
from tapmodel.report.look_wanted import look_of
from tapmodel.report.view.building import JOB_FILE, LABELS, POSTER, ROUTE, WITHOUT_MODEL
from tapmodel.run.admitted import refuse_broken
from tapmodel.run.crew import Limits
from tapmodel.run.estimate import demand_within, estimate
from tapmodel.run.wish import Wish
from tapmodel.serve.asked import Answered, Asked, answered

_PAPERS_TAKE = 3.0
"""Seconds that sheet, drawings and route take together, most of them to load (measured)."""


class BuildAsked(Asked):
    """A job, and the kinds of files wanted of it.

    Attributes:
        formats: keys of `report.view.building.LABELS`.
        force: build what breaks a rule.
    """

    formats: tuple[str, ...]
    force: bool = False


@dataclass(frozen=True, slots=True)
class Ordered:
    """What is to be built.

    Attributes:
        told: the design.
        wish: the files that a run makes, and how they look.
        model: whether the solid is built.
        route: the way through the shop too.
        poster: the one to hang over the bench too.
        job_file: text of one; empty where none is wanted.
        seconds: that it will take, as far as can be foreseen.
    """

    told: Answered
    wish: Wish
    model: bool
    route: bool
    poster: bool
    job_file: str
    seconds: float


def ordered(asked: BuildAsked, limits: Limits) -> Ordered:
    """Settle what is asked for.

    Raises:
        InputError: as `answered`; no kind of file, or more than the limits allow.
        RefusedError: a design that breaks a rule, unless it is forced and can be.
    """
    wanted = set(asked.formats)
    if not wanted or not wanted <= LABELS.keys():
        raise InputError("formats", list(asked.formats), f"one or more of {', '.join(LABELS)}")
    told = answered(asked, in_full=True)
    design, model = told.design, not wanted <= WITHOUT_MODEL
    seconds = _PAPERS_TAKE
    if model:
        refuse_broken(design, force=asked.force, units=told.units)
        foreseen = estimate(design)
        demand_within(foreseen, limits)
        seconds += foreseen.seconds
    wish = Wish(tuple(kind for kind in Format if kind in wanted), look_of(told.job, told.units))
    job_file = commented_job(told.job, design) if JOB_FILE in wanted else ""
    route, poster = ROUTE in wanted, POSTER in wanted
    return Ordered(told, wish, model, route, poster, job_file, seconds)
