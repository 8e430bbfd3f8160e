"""Dimensions as another program reads them: group codes of the DXF file, without its writer."""

import math
import os
import shutil
import subprocess
from pathlib import Path

import numpy as np
import pytest
from alone import drawing_of
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.drawings.drawing import MARGIN
from tapmodel.words import Units

README = Path(__file__).parents[2] / "README.md"

Codes = dict[int, list[str]]


def _dimensions(path: Path) -> list[Codes]:
    """Every DIMENSION of the entities section: its values by group code."""
    lines = path.read_text(encoding="utf-8").splitlines()
    pairs = [
        (int(code), value.strip()) for code, value in zip(lines[::2], lines[1::2], strict=True)
    ]
    start = pairs.index((2, "ENTITIES"))
    found: list[Codes] = []
    inside = False
    for code, value in pairs[start:]:
        if code == 0:
            inside = value == "DIMENSION"
            if inside:
                found.append({})
            if value == "ENDSEC":
                break
        elif inside:
            found[-1].setdefault(code, []).append(value)
    return found


def _lengths(path: Path) -> list[tuple[float, float]]:
    """Of each linear dimension: what it says it measures, and what lies between its points."""
    lengths: list[tuple[float, float]] = []
    for codes in _dimensions(path):
        if "AcDbRotatedDimension" not in codes[100]:
            continue
        x0, y0, x1, y1, angle = (float(codes[code][0]) for code in (13, 23, 14, 24, 50))
        turned = math.radians(angle)
        between = abs((x1 - x0) * math.cos(turned) + (y1 - y0) * math.sin(turned))
        lengths.append((float(codes[42][0]), between))
    return lengths


@pytest.fixture(scope="module")
def reference() -> TapDesign:
    return settled_of("M18x0.75")


def test_dimensions_say_what_lies_between_their_points(
    reference: TapDesign, tmp_path: Path
) -> None:
    flutes, blank, figures = reference.tap.flutes, reference.tap.blank, reference.figures
    known = {
        "milling": (abs(flutes.offset), figures.depth_from_top),
        "square": (blank.square_across_flats, blank.square_length, blank.shank_diameter),
        "side": (blank.overall_length, figures.runout_end, reference.tap.chamfer.point_diameter),
        "thread-form": (reference.tap.thread.pitch,),
        "cross-section": (reference.tap.thread.major,),
        "chamfer": (reference.tap.chamfer_length,),
    }
    for name, drawing in all_drawings(reference).items():
        path = tmp_path / f"{name}.dxf"
        drawing.write_dxf(path)
        lengths = _lengths(path)
        for said, between in lengths:
            assert said == pytest.approx(between, abs=1e-9)
        for value in known.get(name, ()):
            assert any(said == pytest.approx(value, rel=1e-9) for said, _ in lengths), (name, value)


def test_the_sizes_of_the_square_and_pitch_are_the_published_ones(
    reference: TapDesign, tmp_path: Path
) -> None:
    # ISO 237: 11.2 mm across flats, 14 mm long on a 14 mm shank; the pitch is in the designation.
    for name, expected in (("square", {11.2, 14.0}), ("thread-form", {0.75})):
        path = tmp_path / f"{name}.dxf"
        all_drawings(reference)[name].write_dxf(path)
        assert expected <= {round(said, 9) for said, _ in _lengths(path)}


def _ink(picture: Path) -> tuple[float, float]:
    """Width and height of what is not white in a grey picture [dots]."""
    head, size, _, dots = picture.read_bytes().split(b"\n", 3)
    assert head == b"P5"
    width, height = map(int, size.split())
    dark = np.frombuffer(dots, np.uint8).reshape(height, width) < 128
    down, across = (np.flatnonzero(dark.any(axis=axis)) for axis in (1, 0))
    return float(np.ptp(across)), float(np.ptp(down))


@pytest.mark.skipif(
    not (shutil.which("librecad") and shutil.which("pdftoppm")),
    reason="LibreCAD and poppler-utils are not installed",
)
def test_another_program_draws_it_as_large_as_the_picture(
    reference: TapDesign, tmp_path: Path
) -> None:
    drawing = drawing_of("milling", reference)
    drawing.write_dxf(tmp_path / "milling.dxf")
    environment = os.environ | {"QT_QPA_PLATFORM": "offscreen", "HOME": str(tmp_path)}
    subprocess.run(
        ["librecad", "dxf2pdf", "-a", "-m", "-p", "200x200", "milling.dxf"],
        cwd=tmp_path,
        env=environment,
        check=True,
        capture_output=True,
        timeout=60,
    )
    subprocess.run(
        ["pdftoppm", "-r", "100", "-gray", "milling.pdf", "page"], cwd=tmp_path, check=True
    )
    width, height = _ink(next(tmp_path.glob("page*.pgm")))
    own = (drawing.width_mm - 2 * MARGIN) / (drawing.height_mm - 2 * MARGIN)
    assert width / height == pytest.approx(own, rel=0.03)


@pytest.mark.parametrize(
    ("units", "told"),
    [
        (Units.MM, "mm 1:1"),
        (Units.INCH, "mm 1:1 as $INSUNITS says, though lettered in inch"),
        (Units.BOTH, "mm 1:1 as $INSUNITS says, though lettered in mm (inch)"),
    ],
)
def test_the_geometry_is_in_mm_whatever_the_letters_and_says_so(units: Units, told: str) -> None:
    design = settled_of("3/8-16 UNC")
    document = all_drawings(design, units=units)["side"].document
    assert document.header["$INSUNITS"] == 4
    assert ("drawn in", told) in document.header.custom_vars.properties
    ends = [line.dxf.end.x for line in document.modelspace().query("LINE")]
    # the rear face, 2.94 in from the front
    assert min(abs(end - 25.4 * 2.94) for end in ends) < 1e-6


def test_the_readme_says_so_too() -> None:
    text = " ".join(README.read_text(encoding="utf-8").split())
    assert "geometry of every DXF is in mm, 1:1, as its `$INSUNITS` says" in text
