"""Sentences on threads whose limits no printed table gives."""

from collections.abc import Callable, Mapping

from tapmodel.standards.limits import Unlisted
from tapmodel.values import Values


def note(values: Values) -> str:
    """Every sentence that the codes under "why" ask for."""
    why = values.words("why") if "why" in values else ()
    return " ".join(NOTES[code](values) for code in why)


def _metric(values: Values) -> str:
    return f"M{values.number('diameter'):g}x{values.number('pitch'):g}"


def _metric_tolerances(values: Values) -> str:
    return (
        f"ISO 965-1 prints no {', '.join(values.words('computed'))} for {_metric(values)} "
        f"{values.word('hole_class')}: computed by the formulas of its clause 13, rounded to the "
        "R40 series and whole micrometres."
    )


def _metric_scope(values: Values) -> str:
    return (
        f"No standard read by this program gives limits for {_metric(values)}: ISO 965-1 begins "
        "at 1 mm diameter and 0.2 mm pitch, and the formulas of its clause 13 are carried on to "
        f"{values.word('hole_class')} here. The pitch-diameter tolerance takes "
        f"{values.number('share'):.0%} of the depth above the pitch line; agree the limits with "
        "the maker of the screw."
    )


def _trapezoidal_pitch(values: Values) -> str:
    diameter, pitch = values.number("diameter"), values.number("pitch")
    return f"ISO 2902 does not list the pitch {pitch:g} mm with {diameter:g} mm."


def _trapezoidal_tolerances(_values: Values) -> str:
    return "ISO 2903 prints no tolerance for it: computed by its formula, to R40."


def _unified_series(_values: Values) -> str:
    return (
        "No series of ASME B1.1 has this pairing, UN no more than others, so it is taken as UNS: "
        "the formulas for special threads, with a length of engagement of 9 pitches, gave the "
        "limits."
    )


def _unified_scope(values: Values) -> str:
    return (
        f"The series of ASME B1.1 end at {values.number('finest'):g} threads per inch, so it is "
        "taken as UNS: the formulas for special threads are carried on to this pitch, with a "
        "length of engagement of 9 pitches; agree the limits with the maker of the screw."
    )


def _acme_starts(_values: Values) -> str:
    return (
        "ASME B1.5 prints no limits for several starts: the pitch diameter's tolerance of one "
        "start with the same pitch was widened, from memory, by 50 % for two starts, 75 % for "
        "three, 100 % for four and more."
    )


def _acme_pairing(_values: Values) -> str:
    return "ASME B1.5 does not list this pairing: its formulas gave the limits."


def _whitworth(values: Values) -> str:
    return (
        f"Neither BSW nor BSF has {values.number('threads'):g} threads per inch at this diameter: "
        "limits by the formulas of BS 84, with a length of engagement of one diameter."
    )


NOTES: Mapping[str, Callable[[Values], str]] = {
    Unlisted.METRIC_TOLERANCES: _metric_tolerances,
    Unlisted.METRIC_SCOPE: _metric_scope,
    Unlisted.TRAPEZOIDAL_PITCH: _trapezoidal_pitch,
    Unlisted.TRAPEZOIDAL_TOLERANCES: _trapezoidal_tolerances,
    Unlisted.UNIFIED_SERIES: _unified_series,
    Unlisted.UNIFIED_SCOPE: _unified_scope,
    Unlisted.ACME_STARTS: _acme_starts,
    Unlisted.ACME_PAIRING: _acme_pairing,
    Unlisted.WHITWORTH_SERIES: _whitworth,
}
"""By what is not listed."""
