"""Words that a first reader need not know are explained where they stand, or are not used."""

from asked import design_of

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Rows, Table
from tapmodel.report.chapters.order import operations
from tapmodel.report.screen import comparison, sets
from tapmodel.report.screen.design import design_page
from tapmodel.report.units import told
from tapmodel.words import Units


def _design(text: str, *values: str) -> TapDesign:
    return design_of(text, list(values))


def _labels(design: TapDesign) -> list[str]:
    blocks = [block for chapter in operations(design) for block in chapter.blocks]
    return [told(row.label) for block in blocks if isinstance(block, Rows) for row in block.rows]


def _clearance(design: TapDesign) -> Chapter:
    return next(chapter for chapter in operations(design) if chapter.key == "clearance")


def test_hook_and_leads_are_explained_beside_their_numbers() -> None:
    labels = _labels(_design("M10xPh3P1.5"))
    assert "chordal hook: of the straight line from crest to root" in labels
    assert "lead, the advance in one turn" in labels
    assert "length in leads, turns of the tap, as chamfer.pitches counts several starts" in labels


def test_what_rubs_is_explained_over_its_numbers() -> None:
    table = next(b for b in _clearance(_design("M10")).blocks if isinstance(b, Table))
    assert table.head[1:3] == ("rubs along", "of its width")
    assert "what rubs slides on that" in table.caption


def test_no_tap_bears_anything() -> None:
    # the one may be stopped by what is safe, the other by twice what a sharp tap takes
    for design in (_design("M3"), _design("M18x0.75"), _design("Tr16x4", "hole.material=C45")):
        page = design_page(design, Units.MM, every=True, sources=True)
        assert " bears" not in page
        assert " rubs over" not in page


def test_every_head_of_a_set_that_needs_it_stands_in_the_legend() -> None:
    for word in ("marks:", "chamfer:", "share:", "stop at:", "safe/likely:"):
        assert word in sets.LEGEND
        assert word[:-1] in sets.HEAD
    assert not {"rings", "bears"} & set(sets.HEAD)


def test_a_margin_is_of_a_land_and_a_safety_factor_of_torque() -> None:
    assert "margin" not in comparison.LEGEND + sets.LEGEND
    assert "safety: the factor of that over the most" in comparison.LEGEND
    page = design_page(_design("M18x0.75"), Units.MM, every=True, sources=True)
    assert "margin without drop, behind the edge" in page
