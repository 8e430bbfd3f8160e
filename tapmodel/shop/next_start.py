"""How a lathe goes from one start of a thread to the next."""

from dataclasses import dataclass

from tapmodel.tap.tap import TapThread


@dataclass(frozen=True, slots=True)
class StartShift:
    """Either of two ways from one start to the next.

    Attributes:
        along: of the tool, along the axis [mm].
        turned: of the work against the spindle, the carriage standing still [deg].
    """

    along: float
    turned: float


def next_start(thread: TapThread) -> StartShift | None:
    """The shift to each further start; None where there is none.

    Source: definition of pitch and lead, the starts evenly spaced.
    """
    if thread.starts == 1:
        return None
    return StartShift(thread.pitch, 360 / thread.starts)
