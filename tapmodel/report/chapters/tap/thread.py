"""The tap's own thread at the cutting edge."""

from tapmodel.designing.limits.crests import major_zone
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Angle, Chapter, Length, Pitch, Row, Rows, Words, small_length
from tapmodel.shape.back_taper import narrowed_at_end
from tapmodel.spec.measured.sizes import Size


def chapter(design: TapDesign) -> Chapter:
    """Sizes and limits of the tap's thread; the root must stay inside the hole's minor."""
    thread, crests = design.tap.thread, crest_limits(design)
    root = Length(design.hole.minor_min)
    zone = (Length(design.limits.pitch_min, 4), Length(design.limits.pitch_max, 4))
    rows = [
        Row("class of the tap", Words(design.limits.tap_class)),
        Row("hand", Words(thread.hand.value)),
        Row("pitch", Pitch(thread.pitch)),
        Row("half angle of the thread", Angle(thread.flank_angle)),
        Row("major diameter", Length(thread.major), *crests, True, Size.MAJOR),
        Row("pitch diameter", Length(thread.pitch_diameter, 4), *zone, True, Size.PITCH_DIAMETER),
        Row("minor diameter", Length(thread.minor), None, root, True, Size.MINOR),
        _end("on the crest", thread.crest_flat, thread.crest_radius),
        _end("at the root (tool nose)", thread.root_flat, thread.root_radius),
    ]
    if thread.starts > 1:
        lead = (
            Row("starts", Words(str(thread.starts))),
            Row("lead, the advance in one turn", Pitch(thread.lead)),
        )
        rows[3:3] = lead
    rows += _back_taper(design)
    return Chapter("thread", "Cut the thread", (Rows(tuple(rows)),))


def crest_limits(design: TapDesign) -> tuple[Length, Length]:
    """Between which the blank is turned: lower the thread is too shallow, higher too sharp."""
    least, most = major_zone(design)
    return Length(least), Length(most)


def _back_taper(design: TapDesign) -> list[Row]:
    """How much thinner the thread gets, and where it is as the other rows say."""
    tap = design.tap
    if not tap.thread.back_taper:
        return []
    return [
        Row("back taper: diameter lost on 100 of length", Words(f"{tap.thread.back_taper:g}")),
        Row("all diameters are those at, from the front", Length(tap.chamfer_length)),
        Row("lost of each where the thread ends", Length(2 * narrowed_at_end(tap), 4)),
    ]


def _end(where: str, flat: float, radius: float) -> Row:
    """A crest or root is flat or round."""
    name, size = ("radius", radius) if radius else ("flat", flat)
    return Row(f"{name} {where}", small_length(size))
