"""`tapmodel.compare`: rows, which is the best, and why."""

import pytest

import tapmodel

OFFSETS = [-1 + step / 2 for step in range(9)]


def _by_force(rows: list[dict[str, object]]) -> dict[str, object]:
    """The best row by the law, stage by stage."""
    left = [row for row in rows if not row["errors"]]
    left = [row for row in left if row["chamfer_clearance_um"] >= 0] or left
    fewest = min(len(row["warnings"].split()) for row in left)
    left = [row for row in left if len(row["warnings"].split()) == fewest]
    most = max(row["bears"] / row["torque_high"] for row in left)
    left = [row for row in left if row["bears"] / row["torque_high"] > most * (1 - 1e-9)]
    return min(left, key=lambda row: row["flank_rubbing"] + row["chamfer_rubbing"])


@pytest.mark.parametrize(
    "varied",
    [
        {"flutes.offset": OFFSETS},
        {"flutes.offset": OFFSETS, "relief.chamfer.kind": ["eccentric", "concentric"]},
        {"flutes.core_diameter": [7, 7.5, 8, 8.5, 9], "flutes.count": [3, 4, 5]},
        {"relief.thread.kind": ["concentric", "con-eccentric", "eccentric"]},
        {"flutes.rake": [-5, 0, 5, 10, 15, 20], "chamfer.form": ["taper", "plug", "bottoming"]},
    ],
)
def test_the_best_is_what_going_through_the_rows_gives(varied: dict[str, list[object]]) -> None:
    rows = tapmodel.compare("M18x0.75", varied)
    assert rows.best is _by_force(rows)
    told = rows.why
    assert f"no. {rows.index(rows.best) + 1} (" in told
    assert f"{rows.best['margin']:.3g}" in told
    assert "runner-up" in told


def test_the_margin_is_the_torque_to_stop_at_over_the_most() -> None:
    (row,) = tapmodel.compare("M10", {"flutes.count": [4]}, {"hole.material": "C45"})
    assert row["torque_low"] < row["torque_likely"] < row["torque_high"]
    assert row["margin"] == pytest.approx(row["bears"] / row["torque_high"], rel=1e-12)
    assert row["material"].startswith("C45") or row["material"] == "C45"


def test_the_best_is_none_where_each_breaks_a_rule() -> None:
    rows = tapmodel.compare("M10", {"flutes.core_diameter": [1, 1.1]})
    assert rows.best is None
    assert rows.why.startswith("Each of the 2 breaks a rule, so none is the best; most often: core")


def test_a_field_that_is_none_is_an_error() -> None:
    with pytest.raises(tapmodel.InputError, match=r"flutes\.number"):
        tapmodel.compare("M10", {"flutes.number": [3, 4]})


def test_no_values_are_an_error() -> None:
    with pytest.raises(tapmodel.InputError, match="combinations of values: 0"):
        tapmodel.compare("M10", {"flutes.count": []})


def test_too_many_combinations_are_refused_before_any_is_settled() -> None:
    many = [step / 100 for step in range(101)]
    with pytest.raises(tapmodel.InputError, match="5050 cannot be used; allowed: at most 5000"):
        tapmodel.compare("M10", {"flutes.offset": many, "flutes.core_diameter": range(1, 51)})
