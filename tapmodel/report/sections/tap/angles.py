"""What the flutes make of the tap: rake, hook, land, chip room."""

from tapmodel.report.sheet.blocks import Angle, Length, Row, Rows, Section, Words
from tapmodel.tap.design import TapDesign


def section(design: TapDesign) -> Section:
    """Angles and sizes that follow from the milling."""
    flutes = design.flutes
    rows = (
        Row("flutes", Words(str(flutes.count))),
        Row("rake at the crest (tangential hook)", Angle(flutes.rake_crest)),
        Row("rake at the pitch line", Angle(flutes.rake_pitch)),
        Row("rake at the root", Angle(flutes.rake_root)),
        Row("chordal hook", Angle(flutes.chordal_hook)),
        Row("land, angle", Angle(flutes.land_angle)),
        Row("land, width along the arc", Length(flutes.land_width, 2), measured=True),
        Row("area of one flute", Words(f"{flutes.area:{'.2f' if flutes.area > 1 else '.3g'}} mm²")),
    )
    return Section("angles", "Cutting angles and lands", (Rows(rows),))
