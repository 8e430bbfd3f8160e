"""What the flutes make of the tap: rake, hook, land, chip room."""

from tapmodel.design.record import TapDesign
from tapmodel.report.sheet.blocks import Angle, Length, Row, Rows, Section, Words


def section(design: TapDesign) -> Section:
    """Angles and sizes that follow from the milling."""
    flutes = design.tap.flutes
    rows = (
        Row("flutes", Words(str(flutes.count))),
        Row("rake at the crest (tangential hook)", Angle(design.figures.rake_crest)),
        Row("rake at the pitch line", Angle(design.figures.rake_pitch)),
        Row("rake at the root", Angle(design.figures.rake_root)),
        Row("chordal hook", Angle(design.figures.chordal_hook)),
        Row("land, angle", Angle(design.figures.land_angle)),
        Row("land, width along the arc", Length(design.figures.land_width, 2), measured=True),
        Row(
            "area of one flute",
            Words(
                f"{design.figures.flute_area:{'.2f' if design.figures.flute_area > 1 else '.3g'}} mm²"
            ),
        ),
    )
    return Section("angles", "Cutting angles and lands", (Rows(rows),))
