"""Whitworth threads, as the design room asks for them."""

from dataclasses import replace
from fractions import Fraction

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.designations.inches import size_text
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.cut_tap import cut_class, cut_limits_by
from tapmodel.standards.family_rules import FamilyRules, settled_pitch
from tapmodel.standards.inches import MM, inches, threads_per_inch
from tapmodel.standards.limits import HoleLimitsFound
from tapmodel.standards.thread_forms import WHITWORTH
from tapmodel.standards.whitworth.hole_limits import whitworth_hole_limits
from tapmodel.standards.whitworth.pitches import check_range, series_of, series_pitches
from tapmodel.words import Certainty


def _threads(designation: Designation) -> float:
    return threads_per_inch(settled_pitch(designation))


def _settle(designation: Designation) -> Designation:
    if designation.series == "Whit":
        diameter, threads = inches(designation.diameter), _threads(designation)
        check_range(designation.text, diameter, threads)
        return replace(designation, series=series_of(diameter, threads) or "Whit")
    threads = _listed_threads(designation)
    if designation.pitch is not None and _threads(designation) != threads:
        typed, size, series = _threads(designation), designation.size, designation.series
        allowed = f"{size}-{threads:g} {series}; or {size}-{typed:g} Whit, which is no {series}"
        raise InputError("designation", designation.text, allowed)
    return replace(designation, pitch=MM / threads)


def _listed_threads(designation: Designation) -> float:
    diameter, series = inches(designation.diameter), designation.series
    listed = series_pitches(series)
    if diameter in listed:
        return listed[diameter]
    nearest = sorted(sorted(listed, key=lambda size: abs(size - diameter))[:2])
    sizes = " and ".join(f"{size_text(Fraction(size))}-{listed[size]:g}" for size in nearest)
    raise InputError(
        "designation",
        designation.text,
        f"a diameter of the series {series}, nearest: {sizes} {series}; any other diameter with "
        f"threads per inch and Whit, as in {designation.size}-{listed[nearest[0]]:g} Whit",
    )


def _hole_limits(designation: Designation) -> HoleLimitsFound:
    diameter, threads = inches(designation.diameter), _threads(designation)
    return whitworth_hole_limits(diameter, threads, designation.effective_class, designation.text)


RULES = FamilyRules(
    form=WHITWORTH,
    settle=_settle,
    hole_limits=_hole_limits,
    tap_class=cut_class,
    tap_limits=cut_limits_by(_hole_limits),
    drop_to_drill=1.02,
    default_class=Source(
        "tapmodel",
        "rule of this program: class medium, whose holes class normal accepts too",
        Certainty.DERIVED,
    ),
)
