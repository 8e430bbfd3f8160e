"""The route of a tap of mild steel, which is carburised before it is hardened."""

import pytest
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Rows, Table
from tapmodel.report.route.operation import Operation
from tapmodel.report.route.order import route_of
from tapmodel.report.units import shown
from tapmodel.shop.heat.asked import asked_carburising
from tapmodel.shop.heat.carburised import carburised_of
from tapmodel.shop.order_of_work import Step, order_of_work

MILD = "tap.material=case-hardened mild steel"


@pytest.fixture(scope="module")
def design() -> TapDesign:
    return settled_of("M10", (MILD,))


@pytest.fixture(scope="module")
def operation(design: TapDesign) -> Operation:
    (found,) = (one for one in route_of(design) if one.step is Step.CARBURISE)
    return found


def _lines(operation: Operation) -> list[list[str]]:
    (table,) = (block for block in operation.settings if isinstance(block, Table))
    return [[shown(cell)[0] for cell in line] for line in table.lines]


def test_only_steel_that_takes_a_case_is_carburised(design: TapDesign) -> None:
    assert Step.CARBURISE in order_of_work(design)
    assert Step.CARBURISE not in order_of_work(settled_of("M10"))


def test_the_hours_told_give_the_case_that_strength_reckons_with(
    design: TapDesign, operation: Operation
) -> None:
    rows = [row for block in operation.settings if isinstance(block, Rows) for row in block.rows]
    (hours,) = (float(shown(row.value)[0]) for row in rows if "hours" in str(row.label))
    found = carburised_of(asked_carburising(0.18, 1.1, 925.0, hours), design.tap.thread, None)
    assert found.case == pytest.approx(design.work.steel.case_depth, rel=0.01)
    (piece,) = operation.measure
    assert shown(piece.value)[0] == f"{found.flat.case:.2f} mm"


def test_the_longer_at_heat_the_more_carbon_is_in_a_tooth(operation: Operation) -> None:
    lines = _lines(operation)
    columns = list(zip(*lines, strict=True))
    for column in columns:
        numbers = [float(cell.split()[0]) for cell in column]
        assert numbers == sorted(numbers)
        assert numbers[0] < numbers[-1]
    # By `tapmodel heat --carburise --hours 0.5 M10`, whose numbers have tests of their own.
    assert ["0.5", "0.26 mm", "0.55 %", "61 HRC"] in lines
