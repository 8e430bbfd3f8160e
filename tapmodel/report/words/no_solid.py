"""Why no solid can be made of a design, in words."""

from collections.abc import Callable, Mapping

from tapmodel.designing.codes import Lost
from tapmodel.findings import NoSolid
from tapmodel.report.words.sentence import Length, Writer
from tapmodel.values import Values
from tapmodel.words import Units

_Clause = Callable[[Values, Length], str]


def no_solid(reason: NoSolid | None, units: Units = Units.MM) -> str:
    """The reason as part of a sentence, its lengths in `units`; "" for none."""
    return "" if reason is None else REASONS[reason.code](reason.values, Writer(units))


def _always(text: str) -> _Clause:
    return lambda _values, _length: text


def _with(before: str, name: str, after: str) -> _Clause:
    """A length [mm] between two parts of a sentence."""
    return lambda values, length: f"{before} {length(values.number(name), '.3f')}{after}"


REASONS: Mapping[str, _Clause] = {
    Lost.CREST: _with("the flanks of a ridge meet below the major diameter of", "major", ""),
    Lost.CHAMFER_FALLS: _always("the chamfer does not rise from the point to the crests"),
    Lost.POINT: _always("the cone ends before the front face"),
    Lost.RELIEF_SURFACE: _always("the relief has no surface over the whole land"),
    Lost.RELIEF_DEPTH: lambda values, _length: (
        f"the surface of {values.word('section')} falls below what lies under it"
    ),
    Lost.FLUTES_MEET: _always("neighbouring flutes cut into each other"),
    Lost.LANDS: _always("the lands are cut off at the root of the thread"),
    Lost.LAST_THREAD: _always(
        "the last thread ends in no flute, so it has no face and no heel there"
    ),
    Lost.FLUTE_ENDS: _with("the flutes end in the air over a neck or shank of", "slim", ""),
    Lost.RUNOUT_IN_SQUARE: _with("the flutes run out at", "end", ", inside the square"),
    Lost.RUNOUT_PARTED: _always("the flutes run out in two pieces, which no face here describes"),
    Lost.THREAD_END: _always("the thread would end in a face without width"),
    Lost.FLATS_OUTSIDE: _always("the flats of the square lie outside the shank"),
    Lost.SQUARE_BEHIND_REAR: _always("the square begins behind the rear face"),
    Lost.SQUARE_BEFORE_SHANK: _with(
        "the square begins in front of the shank, which begins at", "shank", ""
    ),
    Lost.FRONT_CENTRE_OPEN: _with(
        "the front centre opens into the flutes, which leave", "between", " between them"
    ),
    Lost.REAR_CENTRE_WIDE: _with("the rear centre is wider than the rear face of", "face", ""),
    Lost.REAR_CENTRE_SMALL: _always("a rear centre so small is lost among the kernel's tolerances"),
    Lost.NECK_SHORT: _always("a neck so short is lost among the tolerances of the mesh"),
    Lost.REAR_FACE: _with("a rear chamfer of", "widest", " or more leaves no rear face"),
}
"""By the code of the reason."""
