"""What is done by hand: burrs, marks, cutting faces."""

from dataclasses import replace

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Angle, Paragraphs, Row, Rows, Words
from tapmodel.report.chapters import cautions
from tapmodel.report.chapters.machines.turning import marks
from tapmodel.report.route.operation import Operation
from tapmodel.shop.order_of_work import Step, order_of_work


def deburr(design: TapDesign) -> Operation:
    """What the cutters have thrown up."""
    lands = Row("edges to go along, front and back of each land", Words(str(_edges(design))))
    return Operation(
        Step.DEBURR,
        "Deburr",
        "bench",
        "by hand, or the shank in a vice with soft jaws",
        "fine three-square file, brass brush, stone; the thin first turn at the end of the thread "
        "is dressed back until it is as thick as the others",
        why="while the steel is soft: a burr gets hard, breaks off in the first hole and scores it",
        settings=(
            Rows((lands,)),
            Paragraphs(("From a cutting edge take the burr alone: it gets no chamfer.",)),
        ),
    )


def _edges(design: TapDesign) -> int:
    return 2 * design.tap.flutes.count


def mark(design: TapDesign) -> Operation:
    """What nobody can read from the tap later."""
    rows = (
        Row("stamp on the shank", Words(design.designation)),
        Row("steel, which a later regrind asks for", Words(design.work.steel.told)),
        Row("class of the tap", Words(design.limits.tap_class)),
    )
    return Operation(
        Step.MARK,
        "Mark the shank",
        "bench",
        "the shank in a vee block, the thread free",
        "letter stamps, light blows; file off what they raise, as the shank must still pass",
        why="before hardening: no stamp enters hard steel, and a blow on it breaks it",
        settings=(Rows(rows), *marks(design.part)),
        instead="etch or engrave after hardening, which raises nothing.",
    )


def hone(design: TapDesign) -> Operation:
    """Sharp at last."""
    rake = Row("rake to keep at the crest", Angle(design.figures.rake_crest))
    ground = () if Step.RELIEVE in order_of_work(design) else (cautions.GRINDING,)
    faces = Row("cutting faces", Words(str(design.tap.flutes.count)))
    edge = Row("edge under a glass", Words("no light line along it"))
    return Operation(
        Step.HONE,
        "Hone the cutting faces",
        "bench",
        "the shank in a vice with soft jaws",
        "slip stone as round as the flute, with oil, along the face; or a wheel of that form",
        why="after tempering, for scale and the heat have taken the edge; honing the face alone "
        "changes no diameter",
        settings=(Rows((rake, faces)),),
        measure=(replace(edge, measured=True),),
        cautions=ground,
    )
