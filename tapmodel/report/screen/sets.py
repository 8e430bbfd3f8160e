"""The taps of a set as a table on the screen."""

from collections.abc import Sequence

from tapmodel.designing.record import TapDesign
from tapmodel.designing.sets.sharing import SharedTap, Sharing
from tapmodel.report.blocks import Chapter, Length, Paragraphs, Quantity, Table, Torque, Words
from tapmodel.report.screen.chapter import chapter_lines
from tapmodel.report.screen.columns import Pen, plain
from tapmodel.report.units import Units
from tapmodel.report.words.sets import NUMBERS, warned, way

HEAD = (
    *("tap", "marks", "major", "pitch diameter", "chamfer"),
    *("share", "likely torque", "stop at", "safe/likely"),
)
LEGEND = (
    "marks: rings round the shank, below the square, for telling the taps apart. chamfer: its "
    "length in turns of the tap. share: of the section that is cut. stop at: the torque at which "
    "to stop turning. safe/likely: the torque that the tap is safe to take over the likely one; "
    "above 1 it likely does, by a model. The safety factor of compare is over the most that it "
    "may take."
)


def set_page(
    sharing: Sharing, designs: Sequence[TapDesign], units: Units = Units.MM, pen: Pen = plain
) -> str:
    """Each tap with its sizes, its share and its load, as it was designed.

    Args:
        sharing: of the work.
        designs: of its taps, first to last.
        units: of lengths and torques.
        pen: writes for a screen that can show what a text is.
    """
    lines = tuple(_line(*pair) for pair in zip(sharing.taps, designs, strict=True))
    title = f"A set of {NUMBERS[len(designs)]} for {designs[-1].designation}"
    blocks = (
        Paragraphs((way(sharing.way),)),
        Table(HEAD, lines),
        Paragraphs((*warned(designs), LEGEND)),
    )
    return "\n".join(chapter_lines(Chapter("set", title, blocks), units, pen))


def _line(shared: SharedTap, design: TapDesign) -> tuple[Quantity, ...]:
    thread, foreseen = design.tap.thread, design.prediction
    sizes = (
        Words(str(shared.part.number)),
        Words(str(shared.rings)),
        Length(thread.major),
        Length(thread.pitch_diameter, 4),
        Words(f"{design.figures.chamfer_leads:.3g} turns"),
        Words(f"{100 * shared.share:.0f} %"),
    )
    if foreseen is None:
        return (*sizes, Words("-"), Words("-"), Words("-"))
    likely, stop = foreseen.torque.band.likely, foreseen.stop_at
    return (*sizes, Torque((likely,)), Torque((stop,)), Words(f"{1 / foreseen.load:.2f}"))
