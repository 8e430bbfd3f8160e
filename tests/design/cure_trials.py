"""Applying the cures of a design's findings as its user would, and what became of each."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from tapmodel.designing.codes import Code
from tapmodel.designing.cures.advice import SILENCED
from tapmodel.designing.design import cured, design_at_once, settled_tap
from tapmodel.designing.rules.load import CODES
from tapmodel.designing.settle import settled_as_mm
from tapmodel.errors import InputError, NoTapError
from tapmodel.findings import Bound, Cure, Finding, Setting
from tapmodel.report.words.cures import cure_text
from tapmodel.report.words.findings import what
from tapmodel.spec.job import Job
from tapmodel.spec.job_file import checked
from tapmodel.spec.overrides import apply_values
from tapmodel.words import Severity

MAY_BE_ZERO = ("blank.front_centre", "blank.rear_centre", "blank.rear_chamfer", "blank.neck_")
"""0 means none here."""
SIGNED = ("flutes.offset", "flutes.rake")
BETWEEN = 7
"""Values looked at between the advised one and the present one; none of them may be legal."""

Table = dict[str, Any]


@dataclass
class Tried:
    """One finding with its cures: marks to be counted, and what is wrong in words."""

    code: str
    marks: list[str] = field(default_factory=list[str])
    wrong: list[str] = field(default_factory=list[str])

    def mark(self, name: str, words: str) -> None:
        """Note a fault."""
        self.marks.append(name)
        self.wrong.append(f"{name}: {words}")


def judged_cures(table: Table, only: str = "") -> Iterator[Tried]:
    """Findings of a job that ask for a change, cures tried; `only` those of a code."""
    try:
        found = _cured(checked(table), only)
    except NoTapError as error:
        found = (error.finding,)
    except InputError:
        return
    before = _codes(found) or {}
    for finding in found:
        if finding.severity is not Severity.NOTE and only in {"", finding.code}:
            yield _judged(table, finding, before)


def _cured(job: Job, only: str) -> tuple[Finding, ...]:
    """What is found of a job, with cures; of a warning alone where only that is asked for.

    An error may be told the cure of another, so all are sought where there is one.
    """
    design = settled_tap(job)
    warned = {f.code for f in design.findings if f.severity is Severity.WARNING}
    if only in warned and not design.errors:
        return cured(design, job, {only}).findings
    return design_at_once(job).findings


def _judged(table: Table, finding: Finding, before: dict[str, Severity]) -> Tried:
    tried = Tried(finding.code, ["findings"])
    if not re.search(r"\d", what(finding)):
        tried.mark("no number", what(finding))
    if finding.severity is Severity.ERROR and not finding.cures:
        tried.mark("no cure", f"{what(finding)} {table}")
    for cure in finding.cures:
        tried.marks.append("cures")
        if not _mends(table, cure, finding, before):
            tried.mark("failed", f"{cure_text(cure)} {table}")
        for setting in cure.settings:
            _judge_setting(tried, table, (finding, cure, setting), before)
    return tried


def _judge_setting(
    tried: Tried,
    table: Table,
    offer: tuple[Finding, Cure, Setting],
    before: dict[str, Severity],
) -> None:
    finding, cure, setting = offer
    if isinstance(setting.value, str):
        return
    least = 0 if setting.field.startswith(MAY_BE_ZERO) else 1e-12
    if setting.value < least and setting.field not in SIGNED:
        tried.mark("not positive", cure_text(cure))
    if setting.bound is Bound.EXACTLY:
        return
    # A cure that leaves no rule broken is the nearest of those that do.
    leaves = _leaves(table, cure)
    for value in _nearer(finding, setting):
        number = int(value) if setting.digits == 0 else value
        other = [(s.field, number if s == setting else s.value) for s in cure.settings]
        # A cure with a margin is the nearest of those that have one.
        silent = "" if cure.leaves else SILENCED.get(finding.code, "")
        told = _brought_to_light(cure, before)
        if _mends_values(table, other, finding, before | told, silent=silent, whole=not leaves):
            tried.mark("not nearest", f"{cure_text(cure)}; also {value:g}: {table}")
            return


def _nearer(finding: Finding, setting: Setting) -> Iterator[float]:
    """The next value towards the present one, and some beyond it."""
    step = 10.0**-setting.digits
    value = float(setting.value)
    towards = 1 if setting.bound is Bound.AT_MOST else -1
    lever = next((e for e in finding.levers if e.field == setting.field and e.now), None)
    now = value + 2 * towards * step if lever is None or lever.now is None else lever.now
    if towards * (now - value) <= 1.001 * step:
        return
    yield round(value + towards * step, setting.digits)
    for part in range(1, BETWEEN + 1):
        between = round(value + (now - value) * part / (BETWEEN + 1), setting.digits)
        if towards * (now - between) > 1e-9 and between != value:
            yield between


def _leaves(table: Table, cure: Cure) -> bool:
    """Whether some rule stays broken, or there is no tap at all."""
    found = _found_with(table, [(s.field, s.value) for s in cure.settings])
    return found is None or any(f.severity is Severity.ERROR for f in found)


def _found_with(table: Table, values: list[tuple[str, Any]]) -> tuple[Finding, ...] | None:
    """What is found of a job with these values; None where there is no tap."""
    try:
        return settled_as_mm(checked(apply_values(table, values))).findings
    except (InputError, NoTapError):
        return None


def _mends(table: Table, cure: Cure, finding: Finding, before: dict[str, Severity]) -> bool:
    """Whether the values, typed in as they are written, mend the finding and break nothing."""
    typed = [
        (s.field, s.value if isinstance(s.value, str) else type(s.value)(s.text))
        for s in cure.settings
    ]
    return _mends_values(table, typed, finding, before | _brought_to_light(cure, before))


def _brought_to_light(cure: Cure, before: dict[str, Severity]) -> dict[str, Severity]:
    """Warnings of the prediction that a cure tells of, and an error kept from being found.

    While a rule is broken no prediction is made, so what it warns of is not the cure's doing; it
    must be told with the cure.
    """
    if Severity.ERROR not in before.values():
        return {}
    return {
        found.code: found.severity
        for found in cure.worsens
        if found.code in CODES and found.severity is Severity.WARNING
    }


def _mends_values(  # noqa: PLR0913  (all that a cure is held to)
    table: Table,
    values: list[tuple[str, Any]],
    mended: Finding,
    before: dict[str, Severity],
    *,
    silent: str = "",
    whole: bool = False,
) -> bool:
    """Whether the values mend a finding and bring no other; `whole` if no rule may stay broken."""
    found = _found_with(table, values)
    if found is None or any(finding.code == silent for finding in found):
        return False
    after = _codes(found)
    broken = {c for c, severity in after.items() if severity is Severity.ERROR}
    was = {c for c, severity in before.items() if severity is Severity.ERROR and not whole}
    # A warning, and a load that is too much, are cured only by what brings no other warning.
    warned = mended.severity is Severity.WARNING or mended.code == Code.TAP_OVERLOADED
    noted = not warned or after.keys() <= before.keys()
    return mended.code not in after and broken <= was and noted


def _codes(found: tuple[Finding, ...]) -> dict[str, Severity]:
    return {f.code: f.severity for f in found if f.severity is not Severity.NOTE}
