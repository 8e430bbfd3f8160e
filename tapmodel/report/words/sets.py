"""Whether one tap is enough, and how a set shares its work, in words."""

from collections.abc import Iterator, Sequence

from tapmodel.designing.codes import Code
from tapmodel.designing.record import TapDesign
from tapmodel.designing.sets.need import Reason, Set
from tapmodel.designing.sets.sharing import Way
from tapmodel.findings import Cure
from tapmodel.report.units import torque_in_words
from tapmodel.report.words.cures import advice
from tapmodel.report.words.findings import said
from tapmodel.words import Severity, Units

NUMBERS = {1: "one", 2: "two", 3: "three"}

_NO_CURE = (
    "and neither a stouter core (flutes.core_diameter), another number of flutes nor a larger "
    "drill inside the minor limits, all tried, lets one of three bear it: tap a softer material"
)

_WAYS = {
    Way.USUAL: (
        "The usual shares: the last tap is left little to cut, so that it cuts clean and to size, "
        "and lasts."
    ),
    Way.EQUAL_TORQUE: (
        "Shares of about equal torque: by the usual ones one of them might come to its stop, or "
        "would be pressed harder."
    ),
}


def need(
    design: TapDesign,
    found: Set,
    units: Units = Units.MM,
    asked: int | None = None,
    cures: tuple[Cure, ...] = (),
) -> str:
    """Whether a set is needed and why.

    Args:
        design: of the one tap, which has its prediction.
        found: whether its work is to be shared.
        units: of torques.
        asked: number of taps that the reader wants, needed or not.
        cures: with which a set of three is enough where it is not.
    """
    if found.reason is Reason.ONE_DOES:
        most = _most(design, units)
        told = f"One tap is enough: it {_pressed(design, units)}{most}.{_asked_for(asked)}"
        return told + _bottom(design, units)
    if found.reason is Reason.TOO_MUCH_FOR_THREE:
        pressed, mended = _pressed(design, units), _mended(cures, units)
        told = f"Not even a set of three is enough: one tap {pressed}{mended}."
        return told + _asked_for(asked)
    other = "" if asked == found.taps else _asked_for(asked)
    enough = f"A set of {NUMBERS[found.taps]} is enough."
    return f"One tap is not enough: it {_pressed(design, units)}. {enough}{other}"


def _bottom(design: TapDesign, units: Units) -> str:
    """That another tap is wanted all the same where the chamfer of the one is too long below."""
    found = (one for one in design.findings if one.code == Code.CHAMFER_BLIND)
    return "".join(
        f" The bottom of the hole may want another all the same. {said(one, units)}"
        for one in found
    )


def _mended(cures: tuple[Cure, ...], units: Units) -> str:
    """What lets a set of three bear it, or that nothing does."""
    if not cures:
        return f", {_NO_CURE}"
    return f". A set of three is enough if you {advice(cures, units)}"


def _asked_for(taps: int | None) -> str:
    """That the set is of another number of taps than the rules found."""
    return f" Here the work is shared among {NUMBERS[taps]}, as asked for." if taps else ""


def _pressed(design: TapDesign, units: Units) -> str:
    foreseen, work = design.prediction, design.work
    if foreseen is None:
        return "breaks a rule"
    material = f"{work.material.told}, assumed" if work.assumed else work.material.told
    likely, stop = (
        torque_in_words(torque, units) for torque in (foreseen.torque.band.likely, foreseen.stop_at)
    )
    return f"likely takes {likely} in {material}, and is to be stopped at {stop}"


def _most(design: TapDesign, units: Units) -> str:
    """What the tap may take where that is too much."""
    foreseen = design.prediction
    if foreseen is None or foreseen.torque.band.high <= foreseen.stop_at:
        return ""
    most = torque_in_words(foreseen.torque.band.high, units)
    return f"; it may take up to {most}, so turn it by feel"


def tap_for(design: TapDesign) -> str:
    """What a paper is of: "Tap for M10", "Tap 2 of a set of 3 for M10"."""
    part = design.part
    tap = f"Tap {part.number} of a set of {part.taps}" if part else "Tap"
    return f"{tap} for {design.designation}"


def warned(designs: Sequence[TapDesign]) -> Iterator[str]:
    """Which taps of a set have warnings, and of what: one sentence, or none.

    Args:
        designs: of its taps, first to last.
    """
    told = [
        f"tap {number}: {' '.join(codes)}"
        for number, codes in enumerate(map(_warnings, designs), start=1)
        if codes
    ]
    if told:
        yield f"Warnings of {'; '.join(told)}. `tapmodel design` of its file tells each."


def _warnings(design: TapDesign) -> list[str]:
    found = (f for f in design.findings if f.severity is Severity.WARNING)
    return list(dict.fromkeys(str(finding.code) for finding in found))


def way(shared: Way) -> str:
    """Why the work is shared as it is."""
    return _WAYS[shared]
