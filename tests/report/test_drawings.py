"""The drawings say what the record says, and on the right side."""

import math
import re
from collections.abc import Sequence
from itertools import pairwise
from pathlib import Path

import ezdxf
import pytest
from alone import drawing_of
from asked import settled_of
from ezdxf.entities import DXFEntity

from tapmodel.designing.limits.crests import major_zone
from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import CENTRE, HIDDEN, LETTERS, PHANTOM, THIN, VISIBLE
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.drawings.charts.flank_detail import RADIUS
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.hole_line import hole_lines
from tapmodel.report.drawings.lettering import scale_text
from tapmodel.report.drawings.views import side, thread_form
from tapmodel.report.drawings.views.chamfer_teeth import teeth
from tapmodel.report.units import Projection, Units


def _design(text: str, *sets: str) -> TapDesign:
    return settled_of(text, sets)


def _words(drawing: Drawing) -> str:
    space = drawing.document.modelspace()
    texts = [entity.dxf.text for entity in space.query("TEXT")]
    texts += [entity.text for entity in space.query("MTEXT")]
    return "\n".join(texts)


def _cutter_x(drawing: Drawing) -> float:
    """Where the half circle of the ball is drawn, beside the centre line [mm]."""
    arcs = drawing.document.modelspace().query("ARC")
    balls = [
        arc
        for arc in arcs
        if math.isclose(arc.dxf.start_angle % 360, 180)
        and math.isclose(arc.dxf.end_angle % 360, 0, abs_tol=1e-9)
    ]
    assert len(balls) == 1
    return float(balls[0].dxf.center.x)


@pytest.mark.parametrize("text", ["M18x0.75", "M10", "M28x0.75", "M30"])
def test_the_cutter_is_offset_to_the_side_that_the_record_means(text: str) -> None:
    # Seen on the cutting end, with the first flute on top, +theta of a right-hand tap runs
    # clockwise: a positive offset, towards +theta, lies to the right.
    design = _design(text)
    assert _cutter_x(drawing_of("milling", design)) == pytest.approx(design.tap.flutes.offset)


def test_a_left_hand_tap_is_milled_on_the_other_side() -> None:
    right, left = _design("M6x0.5"), _design("M6x0.5-LH")
    assert left.tap.flutes.offset == right.tap.flutes.offset
    assert _cutter_x(drawing_of("milling", left)) == pytest.approx(-right.tap.flutes.offset)


def test_the_side_and_the_settings_are_written_out() -> None:
    design = _design("M18x0.75")
    words = _words(drawing_of("milling", design))
    assert f"{abs(design.tap.flutes.offset):.3f} to the left" in words
    assert f"{design.figures.depth_from_top:.3f} from the top" in words
    assert "seen on the cutting end" in words


@pytest.mark.parametrize("count", [3, 4, 6])
def test_every_flute_shows_in_the_section(count: int) -> None:
    design = _design("M28x0.75", f"flutes.count={count}")
    arcs = drawing_of("cross-section", design).document.modelspace().query("ARC")
    radius = design.tap.flutes.cutter_diameter / 2
    floors = {
        (round(arc.dxf.center.x, 6), round(arc.dxf.center.y, 6))
        for arc in arcs
        if arc.dxf.layer == VISIBLE and math.isclose(arc.dxf.radius, radius, rel_tol=1e-9)
    }
    assert len(floors) == count


@pytest.mark.parametrize("text", ["M18x0.75", "1/2 BSW", "M6x0.5-LH", "M64x1"])
def test_the_whole_ball_of_the_cutter_shows_in_one_flute(text: str) -> None:
    design = _design(text)
    space = drawing_of("cross-section", design).document.modelspace()
    radius = design.tap.flutes.cutter_diameter / 2
    (ball,) = (
        circle
        for circle in space.query("CIRCLE")
        if circle.dxf.layer == PHANTOM and math.isclose(circle.dxf.radius, radius, rel_tol=1e-9)
    )
    floors = [
        math.dist(arc.dxf.center, ball.dxf.center)
        for arc in space.query("ARC")
        if arc.dxf.layer == VISIBLE and math.isclose(arc.dxf.radius, radius, rel_tol=1e-9)
    ]
    assert min(floors) == pytest.approx(0, abs=1e-9)
    assert sum(away < radius for away in floors) == 1
    axis = [
        line
        for line in space.query("LINE")
        if line.dxf.layer == CENTRE
        and math.isclose(_beside(line, ball.dxf.center), 0, abs_tol=1e-9)
    ]
    assert any(
        _beside(line, (0, 0)) == pytest.approx(abs(design.tap.flutes.offset)) for line in axis
    )


def _beside(line: DXFEntity, point: Sequence[float]) -> float:
    """How far a point lies off a line carried on."""
    (x, y, _), (end, top, _) = line.dxf.start, line.dxf.end
    cross = (end - x) * (point[1] - y) - (top - y) * (point[0] - x)
    return abs(cross) / math.hypot(end - x, top - y)


def test_dimensions_measure_what_the_record_says() -> None:
    design = _design("M18x0.75")
    found: dict[str, list[float]] = {}
    for name, drawing in all_drawings(design).items():
        dimensions = drawing.document.modelspace().query("DIMENSION")
        found[name] = [float(dimension.get_measurement()) for dimension in dimensions]
    for set_up in (abs(design.tap.flutes.offset), design.figures.depth_from_top):
        assert any(math.isclose(v, set_up, rel_tol=1e-6) for v in found["milling"])
    section = found["cross-section"]
    assert any(math.isclose(v, design.tap.thread.major, rel_tol=1e-6) for v in section)
    assert any(math.isclose(v, design.figures.land_angle, rel_tol=1e-6) for v in section)
    assert any(math.isclose(v, design.figures.rake_crest, rel_tol=1e-6) for v in section)


def test_pictures_are_true_to_scale_and_share_no_styles() -> None:
    drawings = all_drawings(_design("M18x0.75"))
    classes: set[str] = set()
    for drawing in drawings.values():
        svg = drawing.svg()
        assert re.search(r'<svg[^>]* width="[0-9.]+mm"', svg)
        assert 60 < drawing.width_mm <= 184
        own = set(re.findall(r'class="([^"]+)"', svg))
        assert not own & classes
        classes |= own


def test_the_dxf_passes_the_audit_of_its_library(tmp_path: Path) -> None:
    for name, drawing in all_drawings(_design("M10")).items():
        path = tmp_path / f"{name}.dxf"
        drawing.write_dxf(path)
        document = ezdxf.readfile(path)
        assert not document.audit().has_errors
        assert document.header["$DIMLFAC"] == 1.0
        assert len(document.modelspace()) > 10


JOBS = {
    "M18x0.75": (),
    "M10": (),
    "M6x0.5-LH": (),
    "M28x0.75": ("flutes.count=6",),
    "M30": ("chamfer.form=taper",),
    "1/2 BSW": (),
    "2 BA": (),
    "Tr14x3-LH": (),
    "Tr16x6P3": (),
    "1/2-10 Acme-2G": (),
    "7/16-26 UNS-2B": (),
}


def _ends(design: TapDesign) -> list[float]:
    """Width of crest and root: of the flat, or of an arc whose ends touch the flanks [mm]."""
    thread = design.tap.thread
    lean = math.cos(math.radians(thread.flank_angle))
    return [
        thread.crest_flat + 2 * thread.crest_radius * lean,
        thread.root_flat + 2 * thread.root_radius * lean,
    ]


def _measured(drawing: Drawing, path: Path) -> list[float]:
    """What the dimensions of a drawing measure, in the file as written."""
    drawing.write_dxf(path)
    space = ezdxf.readfile(path).modelspace()
    return sorted(float(entity.get_measurement()) for entity in space.query("DIMENSION"))


@pytest.mark.parametrize("text", JOBS)
def test_every_dimension_of_the_file_is_a_number_of_the_record(text: str, tmp_path: Path) -> None:
    design = _design(text, *JOBS[text])
    thread, flutes, blank = design.tap.thread, design.tap.flutes, design.tap.blank
    figures = design.figures
    necked = [blank.thread_length + blank.neck_length, blank.neck_diameter]
    over_corners = math.sqrt(2) * blank.square_across_flats
    expected = {
        "side": [
            design.tap.chamfer_length,
            design.tap.chamfer.point_diameter,
            blank.thread_length,
            thread.major,
            flutes.full_depth_length,
            figures.runout_end,
            *(necked if blank.neck_length else []),
            blank.shank_diameter,
            blank.square_length,
            blank.square_across_flats,
            blank.overall_length,
        ],
        "thread-form": [thread.pitch, *_ends(design)],
        "milling": [abs(flutes.offset), figures.depth_from_top],
        "cross-section": [thread.major, figures.land_angle, abs(figures.rake_crest)],
        "chamfer": [design.tap.chamfer_length],
        "square": [blank.square_across_flats, blank.square_length, blank.shank_diameter],
    }
    drawings = all_drawings(design)
    for name, values in expected.items():
        measured = _measured(drawings[name], tmp_path / f"{name}.dxf")
        assert measured == pytest.approx(sorted(values), rel=1e-6), name
    corners = min(over_corners, blank.shank_diameter)
    assert f"{corners:.3f} over corners" in _words(drawings["square"])


@pytest.mark.parametrize("text", JOBS)
def test_the_teeth_of_the_chamfer_are_numbered_in_order_of_the_helix(text: str) -> None:
    design = _design(text, *JOBS[text])
    found, count = teeth(design), design.tap.flutes.count
    assert len(found) == design.figures.chamfer_teeth
    # From one land to the next a helix climbs by its lead over the number of lands, and the
    # helices of all starts stand a pitch apart: lands cut side by side where both have a divisor.
    abreast = math.gcd(count, design.tap.thread.starts)
    step = design.tap.thread.pitch * abreast / count
    for number, (one, other) in enumerate(pairwise(found), 1):
        assert other.z - one.z == pytest.approx(0 if number % abreast else step, abs=1e-9)
        if number % abreast:
            assert other.land == one.land + count // abreast
        elif design.tap.thread.starts == 1:
            assert other.land == (one.land + 1) % count
    texts = drawing_of("chamfer", design).document.modelspace().query("TEXT")
    at = {int(t.dxf.text): t for t in texts if t.dxf.text.isdigit()}
    for land in range(count):
        mine = [tooth for tooth in found if tooth.land == land]
        shown = [tooth.number for tooth in mine if tooth.number in at]
        assert {mine[0].number, mine[-1].number} <= set(shown)
        apart = design.tap.thread.pitch * drawing_of("chamfer", design).scale
        assert len(shown) == len(mine) or apart < 5.6
        assert len({round(at[number].get_placement()[1].y, 6) for number in shown}) == 1
        for one, other in pairwise(shown):
            between = at[other].get_placement()[1].x - at[one].get_placement()[1].x
            assert between * drawing_of("chamfer", design).scale > 5.5
    for tooth in found:
        if tooth.number in at:
            assert at[tooth.number].get_placement()[1].x == pytest.approx(tooth.z)


def test_the_section_of_a_left_hand_tap_is_the_mirror_image() -> None:
    floors: list[list[tuple[float, float]]] = []
    for text in ("M6x0.5", "M6x0.5-LH"):
        design = _design(text)
        arcs = drawing_of("cross-section", design).document.modelspace().query("ARC")
        ball = design.tap.flutes.cutter_diameter / 2
        walls = [arc for arc in arcs if arc.dxf.layer == VISIBLE]
        centres = [a.dxf.center for a in walls if math.isclose(a.dxf.radius, ball, rel_tol=1e-9)]
        floors.append([(round(float(c.x), 6), round(float(c.y), 6)) for c in centres])
    right, left = map(sorted, floors)
    assert len(left) == _design("M6x0.5").tap.flutes.count
    assert sorted((-x, y) for x, y in right) == left
    assert right != left


def test_the_tap_is_drawn_turning_towards_its_cutting_faces() -> None:
    # Seen on the cutting end a right-hand tap turns counter-clockwise: below, to the right.
    for text, way in (("M6x0.5", 1.0), ("M6x0.5-LH", -1.0)):
        design = _design(text)
        space = drawing_of("milling", design).document.modelspace()
        heads = [hatch.paths[0].vertices for hatch in space.query("HATCH") if hatch.dxf.solid_fill]
        below = [head for head in heads if head[0][1] < -design.tap.thread.major / 4]
        assert len(below) == 1
        assert below[0][0][0] * way > 0


def test_the_wall_named_as_cutting_face_is_the_one_towards_which_the_tap_turns() -> None:
    for text, wall in (("M6x0.5", "right"), ("M6x0.5-LH", "left")):
        space = drawing_of("milling", _design(text)).document.modelspace()
        words = {entity.dxf.text: entity.get_placement()[1].x for entity in space.query("TEXT")}
        assert f"cutting face: the {wall} wall" in words
        assert (words["cutting face"] > 0) == (wall == "right")
        assert (words["heel"] < 0) == (wall == "right")


@pytest.mark.parametrize("text", JOBS)
def test_drawings_are_at_a_scale_of_iso_5455(text: str) -> None:
    for drawing in all_drawings(_design(text, *JOBS[text])).values():
        assert re.fullmatch("[125]0*(:1)?|1:[125]0*", scale_text(drawing.scale).removesuffix(":1"))
        assert f"scale {scale_text(drawing.scale)}" in _words(drawing)


LIMITED = ("1/2 BSW", "2 BA", "G 1/2", "1/2-10 Acme-2G", "1/4-20 UNC", "M18x0.75")


@pytest.mark.parametrize("text", LIMITED)
def test_limits_are_lettered_inside_their_zones(text: str) -> None:
    design = _design(text)
    limits, hole, drawings = design.limits, design.hole, all_drawings(design)
    line = next(line for line in _words(drawings["side"]).splitlines() if " thread, " in line)
    _, major, most, low, high = map(float, re.findall(r"\d+\.\d{3}", line))
    chart = {
        float(word)
        for word in _words(drawings["thread-form"]).splitlines()
        if re.fullmatch(r"\d+\.\d{3}", word)
    }
    assert {major, most, low, high} <= chart
    for limit, lettered, way in (
        (limits.major_min, major, 1),
        (major_zone(design)[1], most, -1),
        (limits.pitch_min, low, 1),
        (limits.pitch_max, high, -1),
    ):
        assert -1e-8 <= way * (lettered - limit) < 0.001
    for limit, way in ((hole.pitch_min, 1), (hole.pitch_max, -1), (hole.minor_max, -1)):
        assert any(-1e-8 <= way * (lettered - limit) < 0.001 for lettered in chart)


@pytest.mark.parametrize("text", ["M18x0.75", "1/2 BSW", "2 BA", "Tr14x3-LH"])
def test_the_thread_of_the_hole_is_drawn_as_its_limits_state_it(text: str) -> None:
    design = _design(text)
    thread, hole, rounded = design.tap.thread, design.hole, design.tap.thread.crest_radius > 0
    tangent = math.tan(math.radians(thread.flank_angle))
    limits = ((hole.pitch_min, hole.minor_min), (hole.pitch_max, hole.minor_max))
    for pitch_diameter, minor in limits:
        lines = hole_lines(design, pitch_diameter, minor)
        bore = [line for line in lines if line[0][1] == line[1][1] == minor / 2]
        assert len(bore) == 1
        flanks = [line for line in lines if line[0][1] != line[1][1]]
        assert len(flanks) == 4
        for (z0, r0), (z1, r1) in flanks:
            assert abs((z1 - z0) / (r1 - r0)) == pytest.approx(tangent)
            # on the pitch line groove and ridge are both half a pitch wide
            on_pitch_line = z0 + (z1 - z0) * (pitch_diameter / 2 - r0) / (r1 - r0)
            assert abs(on_pitch_line) % (thread.pitch / 2) == pytest.approx(thread.pitch / 4)
        tops = [line for line in lines if line[0][1] == line[1][1] > pitch_diameter / 2]
        assert len(tops) == (0 if rounded else 2)


@pytest.mark.parametrize("text", ["1/2 BSW", "2 BA", "G 1/2"])
def test_no_corner_of_a_rounded_hole_is_drawn_in_the_metal_of_the_tap(text: str) -> None:
    design = _design(text)
    thread, minor = design.tap.thread, design.hole.minor_min
    (start, end), *_ = hole_lines(design, design.hole.pitch_min, minor)
    # the bore ends on the arc of the tap's root, whose centre stands on the groove's middle
    above = thread.minor / 2 + thread.root_radius - minor / 2
    assert end[0] == pytest.approx(math.sqrt(thread.root_radius**2 - above**2))
    assert start[0] == -end[0]
    words = _words(drawing_of("thread-form", design))
    assert "its rounding left out" in words
    assert "rounding" not in _words(drawing_of("thread-form", _design("1/4-20 UNC")))


FLANKS = ("M18x0.75", "M64x1", "3/8 BSW LH", "Tr16x4")


@pytest.mark.parametrize("text", FLANKS)
def test_the_flanks_of_tap_and_hole_are_told_apart_where_they_are_enlarged(text: str) -> None:
    design = _design(text)
    drawing = drawing_of("thread-form", design)
    scale = float(re.findall(r"A (\d+):1", _words(drawing))[0])
    assert scale >= 2 * drawing.scale
    lean = math.radians(design.tap.thread.flank_angle)
    lines = [
        (line.dxf.layer, line.dxf.start, line.dxf.end)
        for line in drawing.document.modelspace().query("LINE")
    ]
    spot = next(
        circle.dxf.center
        for circle in drawing.document.modelspace().query("CIRCLE")
        if circle.dxf.radius * drawing.scale == pytest.approx(RADIUS)
    )
    # right of the picture, up along the flank
    within = [
        (layer, start, end)
        for layer, start, end in lines
        if layer in {VISIBLE, THIN, HIDDEN}
        and math.dist(start.vec2, spot.vec2) * drawing.scale == pytest.approx(RADIUS)
        and math.dist(end.vec2, spot.vec2) * drawing.scale == pytest.approx(RADIUS)
    ]
    assert [layer for layer, *_ in within] == [VISIBLE, THIN, HIDDEN]
    away = {}
    for layer, start, end in within:
        assert (start.x - end.x) / (start.y - end.y) == pytest.approx(math.tan(lean))
        away[layer] = (spot.x - end.x) * math.cos(lean) - (spot.y - end.y) * math.sin(lean)
    for layer, limit in ((THIN, design.hole.pitch_min), (HIDDEN, design.hole.pitch_max)):
        drop = (limit - design.tap.thread.pitch_diameter) / 2 * math.sin(lean)
        assert away[layer] * drawing.scale == pytest.approx(drop * scale, rel=1e-6)
    # the wide line is half a millimetre wide
    assert abs(away[HIDDEN] - away[VISIBLE]) * drawing.scale > 2


def test_kinds_of_line_that_are_told_in_words_are_shown_beside_them() -> None:
    kinds = {
        "thick": ("CONTINUOUS", 50),
        "thin": ("CONTINUOUS", 18),
        "dashed": ("DASHED", 25),
        "chain": ("CENTER", 18),
        "double chain": ("DIVIDE", 18),
    }
    design, found = _design("M18x0.75"), set[str]()
    for name, drawing in all_drawings(design).items():
        space = drawing.document.modelspace()
        for text in space.query("TEXT"):
            kind, _, told = text.dxf.text.partition(": ")
            if kind not in kinds or not told:
                assert not any(f"({kind})" in text.dxf.text for kind in kinds), name
                continue
            at = text.get_placement()[1]
            (sample,) = (
                line.dxf
                for line in space.query("LINE")
                if line.dxf.layer == LETTERS
                and line.dxf.end.y == pytest.approx(at.y)
                and 0 < (at.x - line.dxf.end.x) * drawing.scale < 3
            )
            assert (sample.linetype, sample.lineweight) == kinds[kind], name
            assert (sample.end.x - sample.start.x) * drawing.scale > 9
            found.add(kind)
    assert found == set(kinds)


def test_teeth_that_are_not_numbered_are_told_of() -> None:
    designs = _design("M10"), _design("M64x1", "flutes.count=6")
    few, many = (_words(drawing_of("chamfer", design)) for design in designs)
    assert "numbered as they meet the work\n" in few + "\n"
    assert "every" not in few
    assert "24 teeth, numbered as they meet the work:" in many
    assert "   of a land the first, the last, and every second" in many


def test_the_length_of_the_chamfer_stands_apart_from_what_it_counts() -> None:
    for text, told in (("M64x1", "4 (4 pitches)"), ("Tr16x8(P4)", "48 (12 pitches, 6 leads)")):
        drawing = drawing_of("chamfer", _design(text))
        (length,) = drawing.document.modelspace().query("DIMENSION")
        assert told in (length.dxf.text, *_words(drawing).splitlines())


def test_a_pitch_has_its_threads_per_inch_wherever_inches_are_wanted() -> None:
    for units, told in (
        (Units.MM, "pitch 1.954"),
        (Units.BOTH, "pitch 1.954 (0.0769), 13 per inch"),
    ):
        drawing = drawing_of("thread-form", _design("1/2-13 UNC"), units=units)
        texts = [d.dxf.text for d in drawing.document.modelspace().query("DIMENSION")]
        assert told in [*texts, *_words(drawing).splitlines()]
    metric = drawing_of("thread-form", _design("M10"), units=Units.BOTH)
    assert "per inch" not in _words(metric)


def test_the_lines_of_an_enlarged_land_are_told() -> None:
    words = _words(drawing_of("cross-section", _design("M18x0.75"))).splitlines()
    assert words.count("double chain: without relief") == 2
    assert any(line.startswith("chain: none over ") for line in words)
    rubbing = _design("M10", "relief.thread.kind=concentric", "relief.chamfer.kind=concentric")
    assert "without relief" not in _words(drawing_of("cross-section", rubbing))


def _lettered(drawing: Drawing) -> list[str]:
    return [e.dxf.text for e in drawing.document.modelspace() if e.dxftype() == "TEXT"]


@pytest.mark.parametrize(
    ("text", "told", "units"),
    [
        ("Tr16x8(P4)", ["lead 8, 2 starts"], Units.MM),
        ("M20xPh4.5P1.5-LH", ["lead 4.5, 3 starts"], Units.MM),
        ("Tr16x8(P4)", ["lead 0.3150, 2 starts"], Units.INCH),
        ("Tr16x4", [], Units.MM),
    ],
)
def test_the_drawings_of_a_thread_of_several_starts_tell_lead_and_starts(
    text: str, told: list[str], units: Units
) -> None:
    design = settled_of(text)
    for drawing in (thread_form.draw(design, units), side.draw(design, Projection.FIRST, units)):
        assert [words for words in _lettered(drawing) if words.startswith("lead")] == told
