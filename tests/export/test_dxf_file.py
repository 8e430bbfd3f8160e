"""DXF files read back: entities, header, area; and drawn by a program that did not write them."""

import math
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import ezdxf
import pytest
from ezdxf.document import Drawing

from tapmodel.checks.ideal.expected import section_area
from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.export.dxf.write import write_profile_dxf, write_section_dxf
from tapmodel.shape.outlines.section import full_thread_height

HEADER = {
    "$INSUNITS": 4,
    "$MEASUREMENT": 1,
    "$DIMLFAC": 1.0,
    "$DIMSCALE": 1.0,
    "$DIMTXT": 2.5,
    "$DIMASZ": 2.5,
    "$DIMEXO": 0.6,
    "$DIMEXE": 1.5,
    "$DIMGAP": 0.7,
    "$DIMTAD": 1,
    "$DIMDEC": 3,
    "$DIMTDEC": 3,
    "$DIMZIN": 8,
    "$DIMTIH": 0,
    "$DIMTOH": 0,
}


def _read(path: Path) -> Drawing:
    document = ezdxf.readfile(path)
    assert not document.audit().errors
    return document


def _swept(entity) -> float:  # noqa: ANN001  (ezdxf entities of three kinds)
    """Area between the axis and an entity run counter-clockwise about its own centre [mm²]."""
    if entity.dxftype() == "LINE":
        (x0, y0, _), (x1, y1, _) = entity.dxf.start, entity.dxf.end
        return (x0 * y1 - y0 * x1) / 2
    (x0, y0, _), (x1, y1, _) = entity.start_point, entity.end_point
    cx, cy, _ = entity.dxf.center
    turn = math.radians((entity.dxf.end_angle - entity.dxf.start_angle) % 360)
    return (entity.dxf.radius**2 * turn + cx * (y1 - y0) - cy * (x1 - x0)) / 2


def _area(document: Drawing) -> float:
    """Area inside the entities, chained end to end as a stranger's program has to."""
    left = list(document.modelspace().query('*[layer!="TEXT"]'))
    ends = {e: _ends(e) for e in left}
    current = left.pop()
    first, at = ends[current]
    total = _swept(current)
    while left:
        following = min(left, key=lambda e: min(math.dist(at, end) for end in ends[e]))
        start, end = ends[following]
        forwards = math.dist(at, start) < math.dist(at, end)
        assert min(math.dist(at, start), math.dist(at, end)) < 1e-6
        total += _swept(following) if forwards else -_swept(following)
        at = end if forwards else start
        left.remove(following)
    assert math.dist(at, first) < 1e-6
    return abs(total)


def _ends(entity) -> tuple:  # noqa: ANN001
    if entity.dxftype() == "LINE":
        return tuple(entity.dxf.start)[:2], tuple(entity.dxf.end)[:2]
    return tuple(entity.start_point)[:2], tuple(entity.end_point)[:2]


@pytest.mark.parametrize("name", ["small_tap", "left_tap"])
def test_section_holds_the_area_in_lines_and_arcs(
    name: str, small_design: TapDesign, tmp_path: Path, request: pytest.FixtureRequest
):
    tap = request.getfixturevalue(name)
    write_section_dxf(replace(small_design, tap=tap), tmp_path / "section.dxf")
    document = _read(tmp_path / "section.dxf")
    drawn = document.modelspace().query('*[layer!="TEXT"]')
    assert {e.dxftype() for e in drawn} == {"LINE", "ARC"}
    expected = section_area(tap, full_thread_height(tap))
    assert _area(document) == pytest.approx(float(expected), rel=1e-5)


def test_arcs_of_the_flutes_are_the_cutter(small_design: TapDesign, tmp_path: Path):
    flutes = small_design.tap.flutes
    write_section_dxf(small_design, tmp_path / "section.dxf")
    arcs = _read(tmp_path / "section.dxf").modelspace().query("ARC")
    balls = [a for a in arcs if a.dxf.radius == pytest.approx(flutes.cutter_diameter / 2)]
    centres = sorted(math.degrees(math.atan2(a.dxf.center.y, a.dxf.center.x)) % 360 for a in balls)
    lean = math.degrees(math.atan2(flutes.offset, flutes.centre_radius))
    assert centres == pytest.approx([angle + lean for angle in flutes.angles])


@pytest.mark.parametrize("write", [write_section_dxf, write_profile_dxf])
def test_header_says_millimetres_and_true_dimensions(
    write: Callable[[TapDesign, Path], None], small_design: TapDesign, tmp_path: Path
):
    write(small_design, tmp_path / "a.dxf")
    document = _read(tmp_path / "a.dxf")
    assert {name: document.header[name] for name in HEADER} == HEADER
    style = document.dimstyles.get(document.header["$DIMSTYLE"])
    for name, value in HEADER.items():
        if name.startswith("$DIM"):
            assert style.dxf.get(name[1:].lower()) == value


def test_each_file_says_what_it_shows(small_design: TapDesign, tmp_path: Path):
    write_section_dxf(small_design, tmp_path / "section.dxf")
    write_profile_dxf(small_design, tmp_path / "profile.dxf")
    place, view = _read(tmp_path / "section.dxf").modelspace().query("TEXT")
    (profile,) = _read(tmp_path / "profile.dxf").modelspace().query("TEXT")
    height = full_thread_height(small_design.tap)
    assert f"section {height:.3f} mm from the cutting end" in place.dxf.text
    assert view.dxf.text == "seen from the square's end; mm, 1:1"
    assert "cutting end at x = 0" in profile.dxf.text


def test_profile_reaches_every_length(small_design: TapDesign, tmp_path: Path):
    write_profile_dxf(small_design, tmp_path / "profile.dxf")
    lines = _read(tmp_path / "profile.dxf").modelspace().query('LINE[layer=="VISIBLE"]')
    corners = [p for line in lines for p in (line.dxf.start, line.dxf.end)]
    ends = {(round(p.x, 9), round(p.y, 9)) for p in corners}
    blank = small_design.tap.blank
    assert (2.0, 4.025) in ends
    assert (blank.thread_length, blank.neck_diameter / 2) in ends
    assert (blank.overall_length - blank.rear_chamfer, blank.shank_diameter / 2) in ends


def test_refuses_a_place_that_is_not_there(small_design: TapDesign, tmp_path: Path):
    with pytest.raises(InputError, match="output file"):
        write_section_dxf(small_design, tmp_path / "none" / "a.dxf")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(
    not (shutil.which("librecad") and shutil.which("pdftoppm")),
    reason="LibreCAD and poppler-utils are not installed",
)
def test_another_program_draws_all_of_the_section(small_design: TapDesign, tmp_path: Path):
    write_section_dxf(small_design, tmp_path / "section.dxf")
    environment = os.environ | {"QT_QPA_PLATFORM": "offscreen", "HOME": str(tmp_path)}
    subprocess.run(
        ["librecad", "dxf2pdf", "-a", "-m", "-p", "200x200", "section.dxf"],
        cwd=tmp_path,
        env=environment,
        check=True,
        capture_output=True,
        timeout=60,
    )
    subprocess.run(
        ["pdftoppm", "-r", "100", "-gray", "section.pdf", "page"], cwd=tmp_path, check=True
    )
    assert _fenced(next(tmp_path.glob("page*.pgm"))) > 0.3


def _fenced(path: Path) -> float:
    """Share of the page that paint poured in at a corner does not reach: 0 if a gap is left."""
    magic, size, _, pixels = path.read_bytes().split(b"\n", 3)
    assert magic == b"P5"
    width, height = map(int, size.split())
    reached = bytearray(p < 128 for p in pixels)
    waiting, dry = [0], width * height
    while waiting:
        at = waiting.pop()
        if not 0 <= at < width * height or reached[at]:
            continue
        reached[at] = 1
        dry -= 1
        waiting += [at - width, at + width]
        waiting += [at - 1] if at % width else []
        waiting += [at + 1] if (at + 1) % width else []
    return dry / (width * height)


def test_a_drawing_is_the_same_whatever_order_sets_have():
    script = (
        "import hashlib; from tapmodel.export.dxf.document import dxf_bytes, new_document; "
        "print(hashlib.sha256(dxf_bytes(new_document())).hexdigest())"
    )
    found = {
        subprocess.run(
            [sys.executable, "-c", script],
            env=os.environ | {"PYTHONHASHSEED": str(seed), "SOURCE_DATE_EPOCH": "1764000000"},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in range(20, 23)
    }
    assert len(found) == 1
