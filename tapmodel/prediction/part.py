"""The part that one tap of a set has in the work: what was cut before it, and what is the whole."""

from dataclasses import dataclass, replace

from tapmodel.prediction.thread_section import moment_above
from tapmodel.tap.tap import TapThread


@dataclass(frozen=True, slots=True)
class Part:
    """Which tap of a set it is.

    Attributes:
        number: 1 for the tap that goes first.
        taps: in the set.
        before: thread that the tap before leaves in the hole; None for the first.
        whole: thread of the last tap, which all of them cut together.
    """

    number: int
    taps: int
    before: TapThread | None
    whole: TapThread

    @property
    def last(self) -> bool:
        """Whether it cuts to size."""
        return self.number == self.taps

    def share(self, thread: TapThread, bore: float) -> float:
        """Of the moment about the axis of all that the set cuts, what this tap cuts.

        Args:
            thread: of this tap.
            bore: diameter of the drilled hole [mm].

        Source: derived here; at one specific force torques are as these moments.
        """
        done = 0.0 if self.before is None else moment_above(self.before, bore)
        whole = moment_above(self.whole, bore)
        return (moment_above(thread, bore) - done) / whole if whole else 1.0


def earlier(thread: TapThread, major: float, pitch_diameter: float) -> TapThread:
    """The thread of an earlier tap of the set that `thread` finishes; its crest is flat.

    Its root lies as much deeper as its pitch line does, so that one tool makes all of them.
    """
    return replace(
        thread,
        major=major,
        pitch_diameter=pitch_diameter,
        minor=thread.minor - (thread.pitch_diameter - pitch_diameter),
        rounded_crest=False,
    )
