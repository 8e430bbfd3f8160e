"""Law of the defaults: sizes that a standard lists, and the finest pitches, design."""

import sys
from itertools import chain
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from listed_jobs import metric, sampled

from tapmodel.designing.settle import settle
from tapmodel.spec.job_file import checked
from tapmodel.tap.tap import chamfer_length
from tapmodel.words import Severity

PARTS = 4
# Pitches below ISO 965-1 and the smallest diameters that the program takes [mm].
FINEST = [(0.3, 0.08), (0.5, 0.05), (0.8, 0.2), (1.0, 0.05), (1.0, 0.2), (2.5, 0.05), (10.0, 0.05)]
BEYOND = [(64.0, 6.0), (64.0, 0.5), (100.0, 0.25), (300.0, 8.0)]


def _jobs() -> list[str]:
    """A sample of the listed sizes, and the ends of the range."""
    grid = (
        metric(diameter, pitch, 1, left=left)
        for diameter, pitch in FINEST + BEYOND
        for left in (False, True)
    )
    return list(chain(grid, sampled()))


@pytest.mark.parametrize("part", range(PARTS))
def test_listed_sizes_design_without_an_error(part: int) -> None:
    jobs = _jobs()
    assert len(jobs) > 220
    for text in jobs[part::PARTS]:
        design = settle(checked({"designation": text}))
        broken = [f.code for f in design.findings if f.severity is Severity.ERROR]
        assert not broken, (text, broken)
        blank, tap = design.tap.blank, design.tap
        narrowest = min(tap.flutes.core_diameter, tap.chamfer.point_diameter)
        assert 0 <= blank.front_centre <= 0.5 * narrowest + 1e-9, text
        # the front stops where the blank is thicker than the hole, or at the wrench
        lead = chamfer_length(tap.thread, tap.chamfer)
        most = blank.square_start - lead
        assert 0 < design.full_thread_depth <= most, text
        if blank.shank_diameter > design.hole.minor_min:
            assert design.full_thread_depth < most, text
            assert design.full_thread_depth >= blank.thread_length - lead - 1e-9, text
