"""Which designs are built."""

from typing import TYPE_CHECKING

from tapmodel.errors import RefusedError
from tapmodel.words import Units

if TYPE_CHECKING:
    from tapmodel.designing.record import TapDesign


def refuse_broken(design: "TapDesign", *, force: bool, units: Units = Units.MM) -> None:
    """Stop before the kernel: a broken rule that is not forced, or that leaves no solid.

    Args:
        design: every number of the tap, and what the rules find.
        force: build what breaks a rule.
        units: in which a refusal is told.

    Raises:
        RefusedError: with the broken rules.
    """
    errors = design.errors
    if errors and (not force or any(finding.no_solid for finding in errors)):
        refusal = RefusedError(errors, forced=force)
        refusal.units = units
        raise refusal
