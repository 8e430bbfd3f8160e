"""Chips, torque and strength are drawn as they are foreseen."""

import math
import re
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
from alone import drawing_of
from asked import settled_of
from ezdxf.entities import LWPolyline

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import CENTRE, HIDDEN, THIN, VISIBLE
from tapmodel.export.formats import Format
from tapmodel.prediction.prediction import Prediction
from tapmodel.prediction.rubbing.rubbing import clearance_along
from tapmodel.prediction.strength.edge import edge_of
from tapmodel.prediction.strength.field import field_at
from tapmodel.prediction.strength.outlines import slices_of
from tapmodel.prediction.strength.record import Place, Spot
from tapmodel.prediction.strength.steel import tensile
from tapmodel.prediction.strength.torsion import torsion_of
from tapmodel.report.drawings.catalogue import DRAWINGS, all_drawings, at_machine
from tapmodel.report.drawings.charts.axis import figure, marks
from tapmodel.report.drawings.charts.stress_lines import SHARES, Seen
from tapmodel.report.drawings.charts.tooth_bars import every, lettered_teeth
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.views import torque as torque_view
from tapmodel.report.drawings.views.torque import READABLE
from tapmodel.report.page.write import PageContent, write_page
from tapmodel.report.sheet.papers import write_papers
from tapmodel.report.units import Look, Units
from tapmodel.words import Hand

JOBS = ("M10", "M18x0.75", "Tr16x8(P4)", "1/2-12 BSW LH", "M64x1", "M3")
FORESEEN = ("chips", "torque", "strength", "clearance")


@pytest.fixture(scope="module", params=JOBS)
def design(request: pytest.FixtureRequest) -> TapDesign:
    return settled_of(request.param, ())


def _foreseen(design: TapDesign) -> Prediction:
    assert design.prediction is not None
    return design.prediction


def _words(drawing: Drawing) -> list[str]:
    return [entity.dxf.text for entity in drawing.document.modelspace().query("TEXT")]


def _curves(drawing: Drawing, layer: str, *, closed: bool) -> list[LWPolyline]:
    found = drawing.document.modelspace().query("LWPOLYLINE")
    return [curve for curve in found if curve.dxf.layer == layer and curve.closed == closed]


def _points(curve: LWPolyline) -> np.ndarray:
    return np.array(list(curve.get_points("xy")))


def _area(points: np.ndarray) -> float:
    x, y = points.T
    return abs(float(np.sum(x * np.roll(y, -1) - y * np.roll(x, -1)))) / 2


def _areas_by_start(design: TapDesign) -> list[list[float]]:
    """Areas of the chips of each start, told apart by the advance of its helix [mm²]."""
    thread, flutes = design.tap.thread, design.tap.flutes
    groups = dict[int, list[float]]()
    first = _foreseen(design).chips.teeth[0]
    for tooth in _foreseen(design).chips.teeth:
        advance = thread.lead * (tooth.land - first.land) / flutes.count
        start = round((tooth.height - first.height - advance) / thread.pitch) % thread.starts
        groups.setdefault(start, []).append(tooth.area)
    return [sorted(areas) for areas in groups.values()]


@pytest.mark.parametrize("units", Units)
def test_each_is_drawn_in_every_unit(design: TapDesign, units: Units) -> None:
    assert [kind.name for kind in DRAWINGS][-4:] == list(FORESEEN)
    drawings = {name: drawing_of(name, design, units=units) for name in FORESEEN}
    for name in FORESEEN:
        assert drawings[name].width_mm <= 184
        # Three of them stand on one page of a sheet.
        assert drawings[name].height_mm < 80
    (axis,) = (word for word in _words(drawings["torque"]) if word.startswith("depth of the tap"))
    assert axis.endswith("[in]" if units is Units.INCH else "[mm]")
    titles = [word for word in _words(drawings["chips"]) if "tooth" in word]
    assert len(titles) == 2
    assert all((" in" in title) == (units is Units.INCH) for title in titles)


def test_the_chips_drawn_have_the_area_of_the_teeth(design: TapDesign) -> None:
    drawing, teeth = drawing_of("chips", design), _foreseen(design).chips.teeth
    curves = [_points(curve) for curve in _curves(drawing, THIN, closed=True)]
    # What follows the chips are the bars of both charts.
    count = len(curves) // 3
    areas = [_area(points) for points in curves[:count]]
    starts = _areas_by_start(design)
    assert len(starts) == design.tap.thread.starts
    alike = [told for told in starts if len(told) == count]
    assert any(sorted(areas) == pytest.approx(told, rel=2e-3) for told in alike)
    if design.tap.thread.starts == 1:
        assert count == len(teeth)
        assert areas == pytest.approx([tooth.area for tooth in teeth], rel=2e-3)
        heights = [
            [float(np.ptp(bar[:, 1])) for bar in curves[n : n + count]] for n in (count, 2 * count)
        ]
        thickest = max(tooth.thickness for tooth in teeth)
        largest = max(tooth.area for tooth in teeth)
        for found, told in (
            (heights[0], [tooth.area / largest for tooth in teeth]),
            (heights[1], [tooth.thickness / thickest for tooth in teeth]),
        ):
            assert [height / max(found) for height in found] == pytest.approx(told, rel=1e-9)


def test_what_the_tap_before_took_is_drawn_otherwise_and_its_chips_are_left_out() -> None:
    """Tr16x4 after a tap of 14.07 mm over flat crests, 0.08 mm thinner."""
    before = ("set.before_major=14.07", "set.before_pitch_diameter=14.044")
    design = settled_of("Tr16x4", ("set.number=2", "set.taps=2", *before))
    foreseen, drawing = _foreseen(design), drawing_of("chips", design)
    teeth = foreseen.chips.teeth
    curves = [_points(curve) for curve in _curves(drawing, THIN, closed=True)]
    areas = [_area(points) for points in curves[: len(curves) - 2 * len(teeth)]]
    assert sum(areas) == pytest.approx(sum(tooth.area for tooth in teeth), rel=2e-3)
    (gone,) = (_points(curve) for curve in _curves(drawing, HIDDEN, closed=False))
    # the groove of the tap before, from the drilled wall up
    wall = design.drill / 2
    assert np.max(gone[:, 1]) == pytest.approx(14.07 / 2 - wall)
    foot = 4 / 2 + (14.044 - 2 * wall) * math.tan(math.radians(15))
    assert np.ptp(gone[:, 0]) == pytest.approx(foot)
    assert "wide hatching: what earlier taps have cut" in _words(drawing)
    alone = drawing_of("chips", settled_of("Tr16x4"))
    assert not any("earlier taps" in words for words in _words(alone))


@pytest.mark.parametrize("text", ["M10", "M18x0.75", "1/2-12 BSW LH"])
def test_the_least_and_the_greatest_chip_are_written(text: str) -> None:
    design = settled_of(text, ())
    chips = _foreseen(design).chips
    words = _words(drawing_of("chips", design))
    (thickness,) = (word for word in words if word.startswith("thickness: "))
    told = re.fullmatch(r"thickness: ([\d.]+) \(tooth (\d+)\) to ([\d.]+) mm \((\d+)\)", thickness)
    assert told
    assert float(told[1]) == pytest.approx(chips.thickness_min, abs=5.1e-5)
    assert float(told[3]) == pytest.approx(chips.thickness_max, abs=5.1e-5)
    for at, value in ((told[2], chips.thickness_min), (told[4], chips.thickness_max)):
        assert chips.teeth[int(at) - 1].thickness == pytest.approx(value, rel=1e-9)
    (area,) = (word for word in words if word.startswith("area: "))
    least, most = (float(number) for number in re.findall(r"[\d.]+(?= \(tooth| mm²)", area))
    assert least == pytest.approx(min(tooth.area for tooth in chips.teeth), rel=6e-3)
    assert most == pytest.approx(max(tooth.area for tooth in chips.teeth), rel=6e-3)


def test_limits_of_the_chip_are_lines_or_stand_above(design: TapDesign) -> None:
    drawing, limits = drawing_of("chips", design), design.work.material.group.chip
    teeth = _foreseen(design).chips.teeth
    bars = [_points(curve) for curve in _curves(drawing, THIN, closed=True)]
    count = len(bars) // 3
    foot = float(bars[-1][:, 1].min())
    per_mm = max(float(np.ptp(bar[:, 1])) for bar in bars[2 * count :])
    per_mm /= max(tooth.thickness for tooth in teeth)
    lines = drawing.document.modelspace().query("LINE")
    drawn = sorted((line.dxf.start.y - foot) / per_mm for line in lines if line.dxf.layer == HIDDEN)
    thickest = max(tooth.thickness for tooth in teeth)
    # The teeth of one groove and of all are as thick but for what the first of each takes.
    assert drawn == pytest.approx([v for v in limits if v <= 3 * thickest], rel=1e-3)
    for limit, told in zip(limits, ("least", "most"), strict=True):
        assert f"{told} {limit:g}" in _words(drawing)
    beyond = any(word.startswith("arrow: above the chart") for word in _words(drawing))
    assert beyond == (limits[1] > 3 * thickest)


def test_the_torque_is_drawn_as_its_course_runs(design: TapDesign) -> None:
    drawing, foreseen = drawing_of("torque", design), _foreseen(design)
    course = foreseen.course
    assert course.course_in is not None
    assert course.course_back is not None
    thin = [_points(curve) for curve in _curves(drawing, THIN, closed=False)]
    thick = [_points(curve) for curve in _curves(drawing, VISIBLE, closed=False)]
    assert (len(thin), len(thick)) == (4, 2)
    per_torque = thin[1][:, 1].max() / foreseen.torque.band.high
    for points, way, torque in (
        (thin[0], course.course_in, course.course_in.low),
        (thin[1], course.course_in, course.course_in.high),
        (thick[0], course.course_in, course.course_in.likely),
        (thin[2], course.course_back, -course.course_back.low),
        (thin[3], course.course_back, -course.course_back.high),
        (thick[1], course.course_back, -course.course_back.likely),
    ):
        # Depth is true to scale; the first of two points of one depth stands before a step.
        assert points[:, 0].max() == pytest.approx(float(way.depth.max()))
        assert np.abs(points[:, 1]).max() / per_torque == pytest.approx(
            float(np.abs(torque).max()), rel=1e-6, abs=1e-9
        )
        # A line may pass by points that lie 2 um off it on paper.
        drawn = np.trapezoid(points[:, 1], points[:, 0]) / per_torque
        off = 0.002 / drawing.scale * float(np.ptp(way.depth)) / per_torque
        assert drawn == pytest.approx(float(np.trapezoid(torque, way.depth)), rel=1e-6, abs=off)


ALUMINIUM = ("hole.material=EN AW-6082", "shop.cutters=4,6,8,10,12")
SLIPPERY = {
    "M64x1": (*ALUMINIUM, "hole.kind=blind", "hole.depth=25"),
    "M80x0.75-LH": (*ALUMINIUM, "hole.depth=20"),
}
"""Threads whose lands rub with much of the torque."""


@pytest.mark.parametrize("text", SLIPPERY)
def test_the_thick_line_peaks_at_the_likely_torque_told(text: str) -> None:
    design = settled_of(text, SLIPPERY[text])
    # whatever makes the likely torque another than the highest of its course
    told = _foreseen(design).torque
    band = replace(told.band, likely=told.band.likely / 1.3)
    foreseen = replace(_foreseen(design), torque=replace(told, band=band))
    drawing, course = torque_view.draw(design, foreseen), foreseen.course
    assert course.course_in is not None
    assert course.course_back is not None
    assert course.course_in.likely.max() > 1.2 * band.likely
    thin = [_points(curve)[:, 1] for curve in _curves(drawing, THIN, closed=False)]
    thick = [_points(curve)[:, 1] for curve in _curves(drawing, VISIBLE, closed=False)]
    per_torque = thin[1].max() / band.high
    assert thin[0].max() / per_torque == pytest.approx(band.low)
    assert thick[0].max() / per_torque == pytest.approx(band.likely)
    # friction is one on both ways, so both lines are lowered alike
    lowered = band.likely / course.course_in.likely.max()
    back = lowered * course.course_back.likely.max()
    assert -thick[1].min() / per_torque == pytest.approx(back)
    (word,) = (word for word in _words(drawing) if word.startswith("peak likely"))
    assert float(word.split()[-1]) == pytest.approx(thick[0].max() / per_torque, rel=5.1e-3)


def test_a_blind_hole_tells_where_the_tap_stops() -> None:
    # 25 mm of thread above a chamfer of four pitches
    blind = settled_of("M64x1", SLIPPERY["M64x1"])
    drawing = drawing_of("torque", blind)
    assert "stops at 29" in _words(drawing)
    lines = drawing.document.modelspace().query("LINE")
    upright = [line for line in lines if line.dxf.start.x == line.dxf.end.x]
    assert any(
        line.dxf.layer == THIN
        and line.dxf.start.x == pytest.approx(29)
        and abs(line.dxf.end.y - line.dxf.start.y) * drawing.scale > 39
        for line in upright
    )
    through = drawing_of("torque", settled_of("M64x1", ()))
    assert not any(word.startswith("stops at") for word in _words(through))


def test_the_torques_that_decide_are_written_and_drawn_where_they_can_be_read(
    design: TapDesign,
) -> None:
    drawing, foreseen = drawing_of("torque", design), _foreseen(design)
    band, strength = foreseen.torque.band, foreseen.strength
    words = _words(drawing)
    for told, torque in (
        ("peak at least", band.low),
        ("peak likely", band.likely),
        ("peak up to", band.high),
        ("stop at", foreseen.stop_at),
        ("may break from", strength.breaks.low),
        ("breaks by", strength.breaks.high),
        ("way back up to", foreseen.torque.back.high),
    ):
        (word,) = (word for word in words if word.startswith(told))
        assert float(word.removeprefix(told)) == pytest.approx(torque, rel=5.1e-3)
    assert any("a model with its band, not a measurement" in word for word in words)
    lines = drawing.document.modelspace().query("LINE")
    stops = [line.dxf.start.y for line in lines if line.dxf.layer == HIDDEN]
    highest = _points(_curves(drawing, THIN, closed=False)[1])[:, 1].max()
    drawn = foreseen.stop_at <= READABLE * band.high
    assert any("dashed: torque to stop at" in words for words in _words(drawing)) == drawn
    if drawn:
        assert stops == [pytest.approx(highest * foreseen.stop_at / band.high)]
    else:
        assert stops == []


def test_labels_of_torques_are_led_to_from_what_they_name(design: TapDesign) -> None:
    drawing, foreseen = drawing_of("torque", design), _foreseen(design)
    space = drawing.document.modelspace()
    ends = {
        text.dxf.text: text.get_placement()[1] - (0.8 / drawing.scale, 0)
        for text in space.query("TEXT")
    }
    begun = {
        told: line.dxf.start
        for told, end in ends.items()
        for line in space.query("LINE")
        if line.dxf.layer == THIN and line.dxf.end.isclose(end, abs_tol=1e-6)
    }
    way = foreseen.course.course_in
    assert way is not None
    per_torque = _points(_curves(drawing, THIN, closed=False)[1])[:, 1].max() / way.high.max()
    for told, torque in (("least", way.low), ("likely", way.likely), ("up to", way.high)):
        (start,) = (at for words, at in begun.items() if words.startswith("peak") and told in words)
        assert start.y == pytest.approx(per_torque * float(torque.max()), rel=1e-6)
        there = torque[np.isclose(way.depth, start.x, rtol=1e-9)]
        assert float(there.max()) == pytest.approx(float(torque.max()), rel=1e-6)
    heights = [(at.y, ends[words].y) for words, at in begun.items()]
    assert len(heights) >= 4
    for one, other in pairwise(sorted(heights)):
        # in the order of what they name, and a line of lettering apart
        assert (other[1] - one[1]) * drawing.scale > 3.9


def test_lines_of_equal_shear_run_where_the_shear_is_so(design: TapDesign) -> None:
    foreseen = _foreseen(design)
    where = foreseen.strength.governs
    section = next(
        s for s in foreseen.strength.sections if (s.place, s.z) == (where.place, where.z)
    )
    seen = Seen(design.tap, section)
    cut = next(c for c in slices_of(design.tap) if (c.place, c.z) == (where.place, where.z))
    torsion = torsion_of(edge_of(cut.sector, cut.turns, cut.bore))
    side = 1 if design.tap.thread.hand is Hand.RIGHT else -1
    assert {line.share for line in seen.lines} == set(SHARES)
    rim = seen.rim()
    for line in seen.lines:
        assert np.hypot(*line.points.T).max() <= seen.radius * (1 + 1e-9)
        assert line.closed or all(
            np.hypot(*(rim - end).T).min() < 0.02 * seen.radius for end in line.points[[0, -1]]
        )
        inside = line.points if line.closed else line.points[1:-1]
        # Lines are seen with the first flute, which the section has along x, on top.
        x, y = inside[:, 1], side * inside[:, 0]
        shear = field_at(torsion, x, y).shear * 1e3 / section.shear
        assert shear == pytest.approx(np.full_like(shear, line.share), abs=0.005)
    assert len(_curves(drawing_of("strength", design), THIN, closed=False)) > 0


def test_a_round_section_has_rings() -> None:
    design = settled_of("M10", ())
    shank = next(s for s in _foreseen(design).strength.sections if s.place is Place.SHANK)
    seen = Seen(design.tap, shank)
    rings = {line.share: np.hypot(*line.points.T) for line in seen.lines}
    for share, radii in rings.items():
        assert radii == pytest.approx(np.full_like(radii, share * seen.radius))
    assert seen.peak()[1] == pytest.approx(seen.radius)


def test_the_peak_and_all_sections_are_written(design: TapDesign) -> None:
    drawing, foreseen = drawing_of("strength", design), _foreseen(design)
    words, strength = _words(drawing), foreseen.strength
    weakest = [word for word in words if word.endswith(", weakest")]
    assert len(weakest) == 1
    for section in strength.sections:
        told = f"{section.place.value} at {f'{section.z:.1f}'.removesuffix('.0')}: "
        (word,) = (word for word in words if word.startswith(told))
        number = float(word.removeprefix(told).removesuffix(", weakest"))
        assert number == pytest.approx(section.shear, rel=5.1e-3)
        governs = (section.place, section.z) == (strength.governs.place, strength.governs.z)
        notched = strength.governs.spot is Spot.THREAD_ROOT
        assert (governs and not notched) == (word == weakest[0])
        if governs:
            (peak,) = (word for word in words if word.startswith("peak ") and "MPa at" in word)
            at_stop = float(peak.split()[1])
            assert at_stop == pytest.approx(section.shear * foreseen.stop_at, rel=5.1e-3)
            assert f"{figure(foreseen.stop_at)} N·m" in peak
    most = max(section.shear for section in strength.sections)
    told = float(weakest[0].removesuffix(", weakest").rpartition(" ")[2])
    # what is called the weakest has the greatest of all numbers told
    assert told >= most * (1 - 5.1e-3)
    (breaks,) = (word for word in words if word.startswith("breaks first here"))
    ends = f"{figure(strength.breaks.low)} to {figure(strength.breaks.high)} N·m"
    assert breaks.endswith(ends)


def test_a_notch_that_decides_is_in_the_number_of_the_weakest_place() -> None:
    # of four flutes it would be the neck behind the thread that breaks
    design = settled_of("3/8 BSW LH", ("flutes.count=3",))
    drawing, foreseen = drawing_of("strength", design), _foreseen(design)
    words, strength = _words(drawing), foreseen.strength
    assert strength.governs.spot is Spot.THREAD_ROOT
    # one stress breaks it at the root of the thread, by the torque at which it does
    root = tensile(strength.steel.hardness).likely / strength.thread_root.likely
    (weakest,) = (word for word in words if word.endswith(", weakest"))
    told = re.fullmatch(r"notch of its thread: ([\d.]+), weakest", weakest)
    assert told
    assert float(told[1]) == pytest.approx(root, rel=5.1e-3)
    assert "of the section alone, without the notch of its thread" in words
    (why,) = (word for word in words if "notch factor" in word)
    land, factor = map(float, re.findall(r"\d[\d.]*", why)[:2])
    assert factor == pytest.approx(strength.notch.factor, rel=5.1e-3)
    assert land * factor == pytest.approx(root, rel=1.1e-2)
    other = _words(drawing_of("strength", settled_of("M64x1", ())))
    assert not any("notch" in word for word in other)


@pytest.mark.parametrize("kind", ["concentric", "eccentric"])
def test_clearances_are_drawn_as_they_are_and_no_further_than_can_be_read(kind: str) -> None:
    design = settled_of("M12", (f"relief.chamfer.kind={kind}",))
    foreseen, drawing = _foreseen(design), drawing_of("clearance", design)
    traces = clearance_along(foreseen.tap, 240, foreseen.task.hole.drill)
    # 0 and the highest mark stand at the left end of the axis, and tell its scale.
    marked = {
        text.dxf.text: text.dxf.align_point.y
        for text in drawing.document.modelspace().query("TEXT")
        if text.dxf.align_point.x < 0
    }
    per_um = (marked["20"] - marked["0"]) / 20
    for layer, trace in ((VISIBLE, traces.crest), (CENTRE, traces.chamfer)):
        (curve,) = (_points(curve) for curve in _curves(drawing, layer, closed=False))
        clear = (curve[:, 1] - marked["0"]) / per_um
        assert clear == pytest.approx(
            np.interp(curve[:, 0], trace.along, trace.clearance_um), abs=0.2
        )
        assert np.ptp(clear) > 10
        assert clear.max() <= 10 * 3.0
    words = _words(drawing)
    proud = f"{figure(-foreseen.rubbing.chamfer.clearance_min_um, 2)} µm proud"
    assert (f"chamfer: binds, {proud}" in words) == (kind == "concentric")
    rubs = foreseen.rubbing.crest
    told = f"rubs along {rubs.rubbing_length:.2f} of {rubs.land_width:.2f}"
    assert told in [re.sub(r"(\.\d)\b", r"\g<1>0", word) for word in words]


def test_what_binds_is_drawn_down_to_where_it_stands_though_nothing_clears() -> None:
    sets = ("relief.chamfer.kind=concentric", "relief.thread.kind=concentric")
    design = settled_of("M12", sets)
    drawing, foreseen = drawing_of("clearance", design), _foreseen(design)
    trace = clearance_along(foreseen.tap, 120, foreseen.task.hole.drill).chamfer
    (curve,) = (_points(curve) for curve in _curves(drawing, CENTRE, closed=False))
    marked = {
        text.dxf.text: text.dxf.align_point.y
        for text in drawing.document.modelspace().query("TEXT")
        if text.dxf.align_point.x < 0
    }
    per_um = (marked["6"] - marked["0"]) / 6
    drawn = (curve[:, 1].min() - marked["0"]) / per_um
    assert drawn == pytest.approx(float(trace.clearance_um.min()), rel=0.01)
    # three times as far as the chart reaches upwards
    assert drawn < -3 * 6


def test_it_stays_off_the_sheet() -> None:
    drawings = all_drawings(settled_of("M10", ()))
    assert [drawing.name for drawing in at_machine(drawings)] == [
        name for name in drawings if name != "clearance"
    ]


def test_the_section_of_a_left_hand_tap_is_seen_as_its_mirror_image() -> None:
    right, left = (settled_of(text, ()) for text in ("M6x0.5", "M6x0.5-LH"))
    seen = [Seen(d.tap, _foreseen(d).strength.sections[0]) for d in (right, left)]
    assert seen[1].rim() == pytest.approx(seen[0].rim() * [-1, 1])
    for one, other in zip(seen[0].lines, seen[1].lines, strict=True):
        assert other.points == pytest.approx(one.points * [-1, 1])


def test_what_nothing_is_foreseen_of_is_drawn_without(tmp_path: Path) -> None:
    broken = settled_of("M10", ("blank.square_across_flats=12",))
    assert broken.prediction is None
    drawings = all_drawings(broken)
    assert list(drawings) == [kind.name for kind in DRAWINGS if kind.name not in FORESEEN]
    write_papers(broken, tmp_path, (Format.SHEET, Format.DRAWINGS), Look())
    files = {path.name for path in (tmp_path / "drawings").iterdir()}
    assert len(files) == 2 * len(drawings)


def test_page_and_folder_show_them(tmp_path: Path) -> None:
    design = settled_of("M10", ())
    drawings = write_papers(design, tmp_path, (Format.DRAWINGS,), Look())
    for name in FORESEEN:
        for kind in ("svg", "dxf"):
            assert (tmp_path / "drawings" / f"{design.name}-{name}.{kind}").stat().st_size > 1000
    write_page(tmp_path / "page.html", design, PageContent(drawings))
    text = (tmp_path / "page.html").read_text()
    for name in FORESEEN:
        assert f"<h3>{drawings[name].title}</h3>" in text


def test_marks_are_round_and_few() -> None:
    assert marks(33.4, 6) == pytest.approx([0, 10, 20, 30])
    assert marks(0.0716, 4) == pytest.approx([0, 0.02, 0.04, 0.06])
    assert marks(1.0, 5) == pytest.approx([0, 0.2, 0.4, 0.6, 0.8, 1.0])
    for high in np.geomspace(1e-4, 1e5, 60).tolist():
        found = marks(high, 5)
        assert 2 <= len(found) <= 6
        assert found[-1] <= high * (1 + 1e-9) < found[-1] + found[1] * (1 + 1e-6)
        assert all(b - a == pytest.approx(found[1]) for a, b in pairwise(found))


def test_figures_have_three_digits_and_no_exponent() -> None:
    assert [figure(v) for v in (0.0, 12345.0, 9.996, 0.00012345, 46.21)] == [
        "0",
        "12300",
        "10.0",
        "0.000123",
        "46.2",
    ]


def test_teeth_are_lettered_as_there_is_room() -> None:
    assert every(13, 60.0, 3.5) == 1
    assert every(26, 60.0, 5.5) == 5
    assert lettered_teeth(7, 2) == [1, 3, 5, 7]
    # the last always, and none too near to it
    assert lettered_teeth(8, 2) == [1, 3, 5, 8]
    assert lettered_teeth(12, 5) == [1, 5, 12]
    assert lettered_teeth(14, 5) == [1, 5, 10, 14]
    assert lettered_teeth(3, 1) == [1, 2, 3]
    assert lettered_teeth(1, 5) == [1]


def test_areas_in_inches_have_their_unit_before_them() -> None:
    design = settled_of("3/8 BSW LH", ())
    words = _words(drawing_of("chips", design, units=Units.INCH))
    (area,) = (word for word in words if word.startswith("area"))
    told = re.fullmatch(r"area in 10⁻⁶ in²: ([\d.]+) \(tooth \d+\) to ([\d.]+) \(\d+\)", area)
    assert told
    areas = [tooth.area / 25.4**2 * 1e6 for tooth in _foreseen(design).chips.teeth]
    ends = float(told[1]), float(told[2])
    assert ends == pytest.approx((min(areas), max(areas)), rel=6e-3)


def test_torques_and_shears_are_in_pounds_and_inches_where_lengths_are() -> None:
    design = settled_of("3/8-16", ())
    foreseen = _foreseen(design)
    strength = foreseen.strength
    torque, shear = (
        _words(drawing_of(name, design, units=Units.INCH)) for name in ("torque", "strength")
    )
    assert "way in, torque [lbf·in]" in torque
    (stop,) = (word for word in torque if word.startswith("stop at"))
    # 1 lbf·in is 0.112985 N·m, 1 psi 0.00689476 MPa.
    assert float(stop.split()[-1]) == pytest.approx(foreseen.stop_at / 0.112985, rel=5.1e-3)
    (peak,) = (word for word in shear if word.startswith("peak ") and "psi at" in word)
    section = next(s for s in strength.sections if s.z == strength.governs.z)
    at_stop = section.shear * foreseen.stop_at / 0.00689476
    assert float(peak.split()[1]) == pytest.approx(at_stop, rel=5.1e-3)
    assert "peak shear in 1 lbf·in [psi]" in shear
    each = section.shear / 0.00689476 * 0.112985
    (weakest,) = (word for word in shear if word.startswith(f"{section.place.value} at"))
    told = float(weakest.removesuffix(", weakest").split()[-1])
    assert told == pytest.approx(each, rel=5.1e-3)
    assert not any("N·m" in word or "MPa" in word for word in (*torque, *shear))
