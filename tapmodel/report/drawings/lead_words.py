"""What drawings say of a thread of several starts."""

from tapmodel.report.drawings.sheet import Sheet
from tapmodel.tap.tap import TapThread


def lead_words(sheet: Sheet, thread: TapThread) -> tuple[str, ...]:
    """A line that tells lead and starts: "lead 8, 2 starts"; none for a single start."""
    if thread.starts == 1:
        return ()
    return (f"lead {sheet.mm(thread.lead)}, {thread.starts} starts",)
