"""The sheet as a reader of PDF sees it."""

from pathlib import Path

import pytest
from pypdf import PdfReader

from tapmodel.design.design import design_tap
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.sheet import write_sheet
from tapmodel.report.units import Paper, Units
from tapmodel.spec.job_file import job_for

POINTS_PER_MM = 72 / 25.4
SIZES = {Paper.A4: (210.0, 297.0), Paper.LETTER: (215.9, 279.4)}


def _read(tmp_path: Path, paper: Paper = Paper.A4, units: Units = Units.MM) -> PdfReader:
    design = design_tap(job_for("M18x0.75"))
    path = tmp_path / "sheet.pdf"
    write_sheet(path, design, all_drawings(design), paper, units)
    return PdfReader(path)


def _text(reader: PdfReader) -> str:
    return " ".join(" ".join(page.extract_text() for page in reader.pages).split())


@pytest.mark.parametrize("paper", Paper)
def test_the_paper_has_the_size_of_its_name(paper: Paper, tmp_path: Path) -> None:
    reader = _read(tmp_path, paper)
    box = reader.pages[0].mediabox
    size = (float(box.width) / POINTS_PER_MM, float(box.height) / POINTS_PER_MM)
    assert size == pytest.approx(SIZES[paper], abs=0.1)
    assert 2 <= len(reader.pages) <= 10


def test_limits_settings_and_cautions_stand_on_it(tmp_path: Path) -> None:
    text = _text(_read(tmp_path))
    design = design_tap(job_for("M18x0.75"))
    assert f"{design.thread.pitch_min:.4f} mm to {design.thread.pitch_max:.4f} mm" in text
    assert f"{design.flutes.depth_from_top:.3f} mm" in text
    assert "Eye protection" in text
    assert "Milling the flutes" in text


def test_inches_are_the_millimetres_over_25_4(tmp_path: Path) -> None:
    text = _text(_read(tmp_path, units=Units.INCH))
    depth = design_tap(job_for("M18x0.75")).flutes.depth_from_top
    assert f"{depth / 25.4:.4f} in" in text
    assert " mm " not in text.split("Milling the flutes")[0].replace("mm²", "")
