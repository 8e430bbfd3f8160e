"""Which of several taps is the best, and why, in words."""

from collections import Counter
from collections.abc import Iterator

from tapmodel.comparing.ranking import Verdict
from tapmodel.comparing.variant import Merit, Variant
from tapmodel.comparing.variants import Compared
from tapmodel.errors import shortened
from tapmodel.report.units import in_words, torque_in_words
from tapmodel.spec.job import unit_of
from tapmodel.spec.units import Unit
from tapmodel.words import Units

_ALIKE = 0.01
"""Safety factors nearer than this are told as all but the same: no torque is known so well."""

_NO_MARGIN = 1.05
"""Safety factors below this are no margin, as the torque is known no better. Rule of this
program."""

_CODES_NAMED = 3

_RUBBING = "flank and chamfer, added up at the pitch line, rub along"

_LONGEST = 40
"""Letters of a value that is a word."""


def named(variant: Variant, units: Units = Units.MM) -> str:
    """A variant by its number and its values: "no. 4 (flutes.offset = 0.5 mm)"."""
    values = ", ".join(_value(field, value, units) for field, value in variant.values.items())
    return f"no. {variant.number} ({values})"


def _value(field: str, value: object, units: Units) -> str:
    unit = unit_of(field)
    if unit is Unit.MM and isinstance(value, float | int):
        return f"{field} = {in_words(value, 'g', units)}"
    if isinstance(value, float | int) and not isinstance(value, bool):
        return f"{field} = {value:g} {unit}".rstrip()
    return f"{field} = {shortened(str(value), _LONGEST)}"


def why(compared: Compared, units: Units = Units.MM) -> str:
    """Which variant is the best and by what, and what the next one would cost."""
    verdict, total = compared.verdict, len(compared.variants)
    best = verdict.best
    if best is None or best.merit is None:
        return _none(verdict, total)
    reasons = ", ".join(_reasons(verdict, best, best.merit, total, units))
    told = f"The best is {named(best, units)}: {reasons}."
    return " ".join(
        filter(None, (told, _unsafe(compared, best.merit), _runner_up(verdict, best, units)))
    )


def _unsafe(compared: Compared, best: Merit) -> str:
    """That the best has no margin, and what to do about it; empty where it has one."""
    if best.margin >= _NO_MARGIN:
        return ""
    if best.margin >= 1:
        return "A safety factor of 1 is no margin: it may take all that is safe."
    factors = [variant.merit.margin for variant in compared.variants if variant.merit]
    told = "A safety factor below 1 is no margin: it may take more than is safe."
    if max(factors) >= 1:
        return f"{told} Others are safe, but have more warnings."
    if compared.job.tap_set.number is not None:
        return f"{told} {_subject(len(factors))} safe: leave less work to this tap of the set."
    return (
        f"{told} {_subject(len(factors))} safe as one tap: `tapmodel set` shares its work among "
        "several."
    )


def _subject(total: int) -> str:
    return f"None of the {total} is" if total > 1 else "It is not"


def _none(verdict: Verdict, total: int) -> str:
    found = Counter(code for variant in verdict.ranked for code in variant.errors)
    most = ", ".join(f"{code} ({times})" for code, times in found.most_common(_CODES_NAMED))
    subject = f"Each of the {total} breaks a rule" if total > 1 else "It breaks a rule"
    return f"{subject}, so none is the best; most often: {most}."


def _reasons(
    verdict: Verdict, best: Variant, merit: Merit, total: int, units: Units
) -> Iterator[str]:
    """Sieve by sieve, how many are left."""
    unbroken, clear, fewest, greatest, least = verdict.sieved
    yield _sound(unbroken, total)
    yield _binding(unbroken, clear, binds=merit.binds)
    yield _warned(clear, fewest, best.warnings)
    most = "" if fewest == 1 else "the greatest safety factor of these, "
    borne, high = (
        torque_in_words(best.number_of(name), units) for name in ("bears", "torque_high")
    )
    factor = f"safe up to {borne}, it takes {high} at the most"
    yield f"{most or 'safety factor '}{merit.margin:.3g} ({factor})"
    if greatest > 1:
        along = f"{_RUBBING} {in_words(merit.rubbing, '.2f', units)}"
        alike = f", and as the first of {least} that are alike in all this" * (least > 1)
        yield f"and of {greatest} with that safety factor the least rubbing ({along}){alike}"


def _sound(unbroken: int, total: int) -> str:
    if unbroken == total:
        return f"none of {total} breaks a rule" if total > 1 else "it breaks no rule"
    return f"{unbroken} of {total} break{'s' * (unbroken == 1)} no rule"


def _binding(unbroken: int, clear: int, *, binds: bool) -> str:
    if unbroken == 1:
        return "and it binds" if binds else "and it does not bind"
    if binds:
        return "each of these binds"
    return "none of these binds" if clear == unbroken else f"{clear} of these {_do(clear)} not bind"


def _do(number: int) -> str:
    return "does" if number == 1 else "do"


def _warned(clear: int, fewest: int, codes: tuple[str, ...]) -> str:
    """Codes tell the best's alone: others may have as many of another kind."""
    number = f"{len(codes)} warning{'s' * (len(codes) > 1)}" if codes else "no warning"
    named_codes = f" (here {' '.join(codes)})" if codes else ""
    if clear == 1:
        return f"with {number}{named_codes}"
    if fewest == clear:
        return f"all with {number}{named_codes}"
    return f"{fewest} of these with {number}{named_codes}, the others with more"


def _runner_up(verdict: Verdict, best: Variant, units: Units) -> str:
    second = verdict.runner_up
    if second is None or second.merit is None or best.merit is None:
        return "Each of the others breaks a rule." if len(verdict.ranked) > 1 else ""
    told = "; ".join(_cost(best, best.merit, second, second.merit, units))
    return f"The runner-up is {named(second, units)}: {told}."


def _cost(
    best: Variant, first: Merit, second: Variant, other: Merit, units: Units
) -> Iterator[str]:
    """What it would cost to take the second."""
    if other.binds and not first.binds:
        proud = -second.number_of("chamfer_clearance_um") / 1000
        yield f"its chamfer binds by {in_words(proud, '.4f', units)}"
    if other.warnings != first.warnings:
        codes = " ".join(second.warnings) or "none"
        yield f"warnings {other.warnings} instead of {first.warnings} ({codes})"
    yield f"safety factor {other.margin:.3g} instead of {first.margin:.3g} ({_share(other, first)})"
    likely = [torque_in_words(one.number_of("torque_likely"), units) for one in (second, best)]
    yield from _instead("likely torque", *likely)
    rubbing = [in_words(merit.rubbing, ".2f", units) for merit in (other, first)]
    yield from _instead(_RUBBING, *rubbing)


def _instead(what: str, new: str, old: str) -> Iterator[str]:
    if new != old:
        yield f"{what} {new} instead of {old}"


def _share(other: Merit, first: Merit) -> str:
    """By how much the one safety factor is less than the other."""
    if other.margin == first.margin:
        return "the same"
    less = 1 - other.margin / first.margin
    size, way = abs(less), "less" if less > 0 else "more"
    if size < _ALIKE:
        return f"{size:.2%} {way}, all but the same"
    return f"{size:.0%} {way}"
