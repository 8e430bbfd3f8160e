"""Cutters that a cure may name: of those on hand, and of those that can be bought."""

from collections.abc import Iterator
from dataclasses import dataclass

from tapmodel.designing.choose.cutters import among, cutters_likely, cutters_to_buy
from tapmodel.designing.choose.tools import ruled_tools
from tapmodel.errors import InputError
from tapmodel.findings import Bound, Lever
from tapmodel.spec.designation import parse
from tapmodel.spec.job import Job
from tapmodel.words import ToolSizes

CUTTER = "flutes.cutter_diameter"

_SAME = 1e-6
"""Closer than that two sizes are one [mm]."""


@dataclass(frozen=True, slots=True)
class Shelf:
    """Cutters in groups: nothing is sought in one before nothing is found in those before it.

    Attributes:
        listed: those that the shop listed, none where it listed none [mm].
        groups: on hand, or likely to be; then of others [mm].
    """

    listed: tuple[float, ...]
    groups: tuple[tuple[float, ...], ...]

    def at_hand(self, cutter: float) -> bool:
        """Whether the shop has it, as far as it said what it has."""
        return not self.listed or among(cutter, self.listed)

    def beyond(self, lever: Lever) -> Iterator[tuple[float, ...]]:
        """Of each group those on the lever's side of the present one, nearest first."""
        now, falling = lever.now or 0.0, lever.bound is Bound.AT_MOST
        for group in self.groups:
            sizes = sorted({*group}, reverse=falling)
            yield tuple(c for c in sizes if (c < now - _SAME if falling else c > now + _SAME))


def shelf_of(job: Job) -> Shelf:
    """The shelf of the shop that a job is for.

    Source: as `cutters_likely`; that inch tools are gone beyond as in the choice of a cutter.
    """
    listed = tuple(job.shop.cutters or ())
    if listed:
        return Shelf(listed, (listed, cutters_to_buy(listed)))
    try:
        thread = parse(job.designation)
    except InputError:
        return Shelf((), ((),))
    tools = ToolSizes(job.shop.tools) if job.shop.tools else ruled_tools(thread.family)
    metric = cutters_likely(thread.diameter, ToolSizes.METRIC)
    if tools is ToolSizes.METRIC:
        return Shelf((), (metric,))
    return Shelf((), (cutters_likely(thread.diameter, tools), metric))
