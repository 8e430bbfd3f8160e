"""The picture of a comparison: as many outlines as told, each in a line of its own."""

import math
import re

import pytest

from tapmodel.comparing.spread import spread
from tapmodel.comparing.variants import Asked, compare_taps
from tapmodel.export.dxf.document import VISIBLE
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.views.compared import draw
from tapmodel.report.words.comparison import named
from tapmodel.shape.outlines.section import full_thread_height, section_outline
from tapmodel.words import Units

CASES = {
    "M18x0.75": {"flutes.offset": tuple(-1 + n / 2 for n in range(9))},
    "M10-LH": {"flutes.count": (3, 4, 5)},
    "M12": {"flutes.core_diameter": (5, 6), "relief.chamfer.kind": ("concentric", "eccentric")},
}


def _drawn(text: str, units: Units = Units.MM):  # noqa: ANN202
    compared = compare_taps(Asked({"designation": text}, CASES[text]))
    best = compared.verdict.best
    assert best is not None
    chosen = spread(compared.verdict)
    return draw(chosen, best, "sections", units), chosen, best


def _swept(start: tuple[float, float, float], end: tuple[float, float, float]) -> float:
    """Half of x dy - y dx along a line, or an arc whose quarter has the tangent in `start`."""
    chord = (start[0] * end[1] - start[1] * end[0]) / 2
    turn = 4 * math.atan(start[2])
    if not turn:
        return chord
    radius = math.dist(start[:2], end[:2]) / 2 / math.sin(turn / 2)
    return chord + radius**2 * (turn - math.sin(turn)) / 2


def _areas(drawing: Drawing) -> dict[str, float]:
    """Area inside each closed outline, by the layer whose line it is drawn in [mm²]."""
    found: dict[str, float] = {}
    for ring in drawing.document.modelspace().query("LWPOLYLINE"):
        assert ring.closed
        assert ring.dxf.layer not in found
        corners = ring.get_points("xyb")
        pieces = zip(corners, [*corners[1:], corners[0]], strict=True)
        found[ring.dxf.layer] = abs(math.fsum(_swept(*piece) for piece in pieces))
    return found


@pytest.mark.parametrize(("text", "number"), [("M18x0.75", 6), ("M10-LH", 3), ("M12", 2)])
def test_each_section_is_drawn_once_in_its_own_line(text: str, number: int) -> None:
    drawing, chosen, best = _drawn(text)
    areas = _areas(drawing)
    assert len(areas) == len(chosen) == number
    heights = [full_thread_height(variant.tap) for variant in chosen]
    expected = {
        variant.number: section_outline(variant.tap, max(heights)).area for variant in chosen
    }
    assert areas[VISIBLE] == pytest.approx(expected[best.number], rel=1e-9)
    assert sorted(areas.values()) == pytest.approx(sorted(expected.values()), rel=1e-9)


def test_lines_differ_in_width_or_dashes() -> None:
    drawing, _, _ = _drawn("M18x0.75")
    layers = [drawing.document.layers.get(name) for name in _areas(drawing)]
    assert len({(layer.dxf.lineweight, layer.dxf.linetype) for layer in layers}) == 6
    # Beside the widest line only one is not broken, and that a third as wide.
    plain = sorted(one.dxf.lineweight for one in layers if one.dxf.linetype == "CONTINUOUS")
    assert plain == [18, 50]


@pytest.mark.parametrize("units", [Units.MM, Units.INCH])
def test_the_legend_names_every_line_beside_a_piece_of_it(units: Units) -> None:
    drawing, chosen, best = _drawn("M18x0.75", units)
    space = drawing.document.modelspace()
    texts = {text.dxf.text: text for text in space.query("TEXT")}
    samples = {round(line.dxf.start.y, 6): line.dxf.layer for line in space.query("LINE")}
    areas = _areas(drawing)
    heights = [full_thread_height(variant.tap) for variant in chosen]
    for variant in chosen:
        told = named(variant, units) + ", the best" * (variant is best)
        layer = samples[round(texts[told].get_placement()[1].y, 6)]
        area = section_outline(variant.tap, max(heights)).area
        assert areas[layer] == pytest.approx(area, rel=1e-9), told
    assert named(best, units).endswith((" mm)", " in)")[units is Units.INCH])


def test_the_picture_is_in_black_alone_and_on_paper() -> None:
    drawing, _, _ = _drawn("M18x0.75")
    assert set(re.findall(r"stroke: (#\w+)", drawing.svg())) == {"#000000"}
    assert 60 < drawing.width_mm <= 184
