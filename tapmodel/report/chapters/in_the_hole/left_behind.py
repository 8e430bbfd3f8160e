"""How the tap clears what it has cut, the thread that it leaves, and how long it lasts."""

from collections.abc import Iterator

from tapmodel.designing.record import TapDesign
from tapmodel.prediction.gauge import Gauge
from tapmodel.prediction.rubbing.record import Contact, Rubbing
from tapmodel.report.blocks import (
    Block,
    Chapter,
    Length,
    Paragraphs,
    Quantity,
    Row,
    Rows,
    Table,
    Words,
    small_length,
)
from tapmodel.report.chapters.tap.roughed_hole import next_tap


def chapter(design: TapDesign) -> Chapter:
    """Clearance behind the edge, and the gauges; nothing for a tap that breaks a rule."""
    foreseen = design.prediction
    blocks: list[Block] = []
    if foreseen is not None:
        blocks += [_clearances(foreseen.rubbing), *_by_back_taper(foreseen.rubbing)]
        roughed = roughed_text(design)
        blocks.append(Paragraphs((roughed,)) if roughed else _gauges(design, foreseen.gauge))
    return Chapter("clearance", "Clearance, and the thread that is left", tuple(blocks))


ROUGHED = "No gauge enters behind this tap: the last of its set cuts to size."


def roughed_text(design: TapDesign) -> str:
    """That no gauge enters yet, and which tap comes next; empty for a tap that cuts to size."""
    part = design.part
    return f"{ROUGHED} {next_tap(part)}" if part is not None and design.roughs else ""


CLEARANCE = (
    "Clearance from what the edge cut: what rubs slides on that with hardly any, what binds stands "
    "proud of it"
)


def _clearances(rubbing: Rubbing) -> Table:
    """Each width is told at one radius: at the pitch line lands are narrower than at the crests."""
    contacts = (
        ("crest", rubbing.crest),
        ("flanks, pitch line", rubbing.flank),
        ("chamfer, pitch line", rubbing.chamfer),
    )
    lines = tuple(_line(name, contact) for name, contact in contacts)
    head = ("behind the edge", "rubs along", "of its width", "clear at the heel", "binds")
    return Table(head, lines, CLEARANCE)


def _by_back_taper(rubbing: Rubbing) -> list[Block]:
    """What the turns behind the first gain; nothing without a back taper."""
    if not rubbing.flank_clears_each_turn:
        return []
    rows = (
        Row("flanks clearer with each turn by", Length(rubbing.flank_clears_each_turn / 1000, 4)),
        Row("at the end of the thread", Length(rubbing.flank_clears_at_end / 1000, 4)),
    )
    return [Rows(rows, "Clearance that the back taper adds behind the chamfer")]


def _line(name: str, contact: Contact) -> tuple[Quantity, ...]:
    clear = contact.heel_clearance_um / 1000
    return (
        Words(name),
        Length(contact.rubbing_length, 2),
        Length(contact.land_width, 2),
        small_length(clear) if clear else Words("none"),
        Words("yes" if contact.binds else "no"),
    )


def _gauges(design: TapDesign, gauge: Gauge) -> Rows:
    return Rows(tuple(_verdicts(design, gauge)), "The thread that a sharp tap leaves")


WEAR = "wear in reserve, from target to the least of the hole"


def _verdicts(design: TapDesign, gauge: Gauge) -> Iterator[Row]:
    yield Row("larger than the tap by, as is common", Length(gauge.oversize))
    yield Row("pitch diameter of the hole", Length(gauge.pitch_diameter))
    yield Row("GO gauge", Words("enters" if gauge.go else "does not enter"))
    yield Row("NO-GO gauge", Words("stays out" if gauge.no_go else "enters"))
    yield Row(WEAR, Length(design.wear_reserve, 4))
    ends = f", the {gauge.face_limit} ends it"
    face = _times(gauge.sharpenings_face)
    several = f"{face}{ends}" if gauge.sharpenings_face <= _MANY else face
    yield Row("grinding the cutting faces", Words(several))
    yield Row("grinding the chamfer", Words(_times(gauge.sharpenings_chamfer)))


_MANY = 20


def _times(number: int) -> str:
    """How often; nobody counts on more than some."""
    return f"{number} times" if number <= _MANY else f"over {_MANY} times"
