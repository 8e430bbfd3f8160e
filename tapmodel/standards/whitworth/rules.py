"""Whitworth threads, as the design room asks for them."""

from dataclasses import replace
from fractions import Fraction
from math import isclose

from tapmodel.errors import InputError, MeantError
from tapmodel.sources import Source
from tapmodel.spec.designations.reading.inches import size_text
from tapmodel.spec.designations.record import Designation
from tapmodel.spec.designations.whitworth import write
from tapmodel.standards.cut_tap import cut_class, cut_limits_by
from tapmodel.standards.family_rules import FamilyRules, settled_pitch
from tapmodel.standards.inches import MM, inches, threads_per_inch
from tapmodel.standards.limits import HoleLimitsFound
from tapmodel.standards.thread_forms import WHITWORTH
from tapmodel.standards.whitworth.hole_limits import whitworth_hole_limits
from tapmodel.standards.whitworth.pitches import (
    check_range,
    series_of,
    series_pitches,
)
from tapmodel.words import Certainty

EXAMPLE = 40
"""Threads per inch where some have to be named, for no series lists the size."""


def _threads(designation: Designation) -> float:
    return threads_per_inch(settled_pitch(designation))


def _settle(designation: Designation) -> Designation:
    if designation.series == "Whit" and designation.pitch is None:
        designation = _of_the_trade(designation)
    if designation.series == "Whit":
        diameter, threads = inches(designation.diameter), _threads(designation)
        check_range(designation.text, diameter, threads)
        return replace(designation, series=series_of(diameter, threads) or "Whit")
    threads = _listed_threads(designation)
    if designation.pitch is not None and _threads(designation) != threads:
        listed = write(replace(designation, pitch=MM / threads))
        other = write(replace(designation, series="Whit"))
        allowed = f"{listed}; or {other}, which is no {designation.series}"
        raise InputError("designation", designation.text, allowed)
    return replace(designation, pitch=MM / threads)


def _of_the_trade(designation: Designation) -> Designation:
    """The trade calls the coarse series by its inventor's name alone: 3/8 Whitworth is 3/8 BSW.

    Raises:
        InputError: the coarse series has no such size; with the fine one where that has it.

    Source: common practice.
    """
    diameter = inches(designation.diameter)
    if diameter in series_pitches("BSW"):
        return replace(designation, series="BSW")
    if diameter in series_pitches("BSF"):
        fine = write(replace(designation, series="BSF"))
        raise MeantError("designation", designation.text, fine)
    other = write(replace(designation, pitch=MM / EXAMPLE))
    allowed = f"threads per inch with Whit, as in {other}; no series lists this size"
    raise InputError("designation", designation.text, allowed)


def _listed_threads(designation: Designation) -> float:
    diameter, series = inches(designation.diameter), designation.series
    listed = series_pitches(series)
    if diameter in listed:
        return listed[diameter]
    in_mm = next((size for size in listed if isclose(MM * size, diameter, rel_tol=1e-4)), None)
    if in_mm is not None:
        # A size in mm where one in inches belongs: 9.525 is 3/8 in.
        meant = write(replace(designation, size=size_text(Fraction(in_mm)), pitch=None))
        raise MeantError("designation", designation.text, meant)
    nearest = sorted(sorted(listed, key=lambda size: abs(size - diameter))[:2])
    sizes = " and ".join(
        write(replace(designation, size=size_text(Fraction(size)), pitch=MM / listed[size]))
        for size in nearest
    )
    allowed = f"a diameter of the series {series}, nearest: {sizes}"
    threads = listed[nearest[0]] if designation.pitch is None else _threads(designation)
    other = replace(designation, series="Whit", pitch=MM / threads)
    try:
        check_range(designation.text, diameter, threads)
    except InputError as error:
        raise InputError("designation", designation.text, f"{error.allowed}; {allowed}") from None
    allowed += f"; any other diameter with threads per inch and Whit, as in {write(other)}"
    raise InputError("designation", designation.text, allowed)


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
