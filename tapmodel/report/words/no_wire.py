"""Why no wire measures a thread, in words."""

from tapmodel.errors import NoWireError
from tapmodel.report.units import in_words
from tapmodel.words import Units


def no_wire(error: NoWireError, units: Units = Units.MM) -> str:
    """What hinders it, and how else the thread is measured; lengths in `units`."""
    return (
        f"{error.name}: no wire suits: one that stands {in_words(error.air, 'g', units)} clear of "
        "the crests at the lower limit rests on their corners at the upper one; measure the "
        "pitch diameter with a thread micrometer or by its shadow on a projector"
    )
