"""What the flutes make of the tap: rake, hook, land, chip room."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Angle, Area, Chapter, Length, Row, Rows, Words
from tapmodel.spec.measured.sizes import Size


def chapter(design: TapDesign) -> Chapter:
    """Angles and sizes that follow from the milling."""
    flutes, figures = design.tap.flutes, design.figures
    rows = (
        Row("flutes", Words(str(flutes.count))),
        Row("rake at the crest (tangential hook)", Angle(figures.rake_crest)),
        Row("rake at the pitch line", Angle(figures.rake_pitch)),
        Row("rake at the drilled wall", Angle(design.rake_at_wall)),
        Row("rake at the root, which cuts nothing", Angle(figures.rake_root)),
        Row("chordal hook: of the straight line from crest to root", Angle(figures.chordal_hook)),
        Row("land, angle", Angle(figures.land_angle)),
        Row(
            "land, width along the arc",
            Length(figures.land_width, 2),
            measured=True,
            size=Size.LAND,
        ),
        Row("area of one flute", Area(figures.flute_area)),
    )
    return Chapter("angles", "Cutting angles and lands", (Rows(rows),))
