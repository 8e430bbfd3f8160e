"""Charts as the server answers them, against designs of each value."""

from typing import TYPE_CHECKING

import pytest

from tapmodel.comparing.variant import Variant
from tapmodel.designing.settle import settle
from tapmodel.report.units import Units
from tapmodel.report.view.charts.jumps import jumps_of
from tapmodel.spec.job_file import job_for

if TYPE_CHECKING:
    from served_page import Served

M10 = {"designation": "M10"}
FIGURES = ("rake_crest", "land_width")


def charted(served: "Served", **asked: object) -> dict:
    answer = served.post("chart", {"job": M10, "figures": FIGURES} | asked)
    assert answer.status_code == 200, answer.text
    return answer.json()["chart"]


def test_every_row_is_the_tap_of_its_value(served: "Served") -> None:
    chart = charted(served, start="-4", end="0", steps=9)
    assert [row["x"] for row in chart["rows"]] == pytest.approx([-4 + n / 2 for n in range(9)])
    for row in chart["rows"][::3]:
        design = settle(job_for("M10", [f"flutes.offset={row['value']}", *held(chart)]))
        assert row["y"] == pytest.approx([design.figures.rake_crest, design.figures.land_width])
        assert row["texts"][0] == f"{design.figures.rake_crest:.2f}°"


def held(chart: dict) -> list[str]:
    return [f"{name}={value}" for name, value in chart["held"].items() if value is not None]


def test_the_mill_is_not_set_anew_for_each_offset(served: "Served") -> None:
    figures = ["cutter_diameter", "depth_from_top"]
    for job in (M10, M10 | {"flutes.rake": 12.0}):
        chart = charted(served, job=job, figures=figures, start="-3", end="-1", steps=9)
        now = settle(job_for("M10", [f"{name}={value}" for name, value in job.items()][1:]))
        cutter, depth = now.tap.flutes.cutter_diameter, now.figures.depth_from_top
        assert [row["y"][0] for row in chart["rows"]] == pytest.approx([cutter] * 9)
        assert [row["y"][1] for row in chart["rows"]] == pytest.approx([depth] * 9, abs=6e-4)
        assert chart["held"]["flutes.rake"] is None
        assert chart["note"] == (
            "Drawn as if offset and depth were given, not rake and core: depth below the top "
            "and flutes and cutter are held as now, and a value that is taken brings them along."
        )
    setting = M10 | {"flutes.offset": -2.0, "flutes.depth_from_top": 4.0}
    chart = charted(served, job=setting, start="-3", end="-1", steps=3)
    assert (chart["held"], chart["note"]) == ({}, "")
    chart = charted(served, job=setting, field="flutes.rake", start="4", end="12", steps=3)
    assert set(chart["held"]) == {"flutes.core_diameter", "flutes.offset", "flutes.depth_from_top"}


def test_the_present_tap_is_marked(served: "Served") -> None:
    design = settle(job_for("M10"))
    present = charted(served)["present"]
    assert present["x"] == pytest.approx(design.tap.flutes.offset, abs=1e-6)
    assert present["y"] == pytest.approx([design.figures.rake_crest, design.figures.land_width])


def test_without_ends_it_runs_about_what_the_tap_has(served: "Served") -> None:
    for field in [one["key"] for one in charted(served, steps=2)["fields"]]:
        chart = charted(served, field=field, steps=3, figures=["margin"])
        first, last = chart["rows"][0]["x"], chart["rows"][-1]["x"]
        assert first < last
        assert first <= chart["present"]["x"] <= last, field


@pytest.mark.parametrize("field", ["thread.pitch_diameter", "thread.major"])
def test_of_a_large_tap_of_fine_pitch_too(served: "Served", field: str) -> None:
    chart = charted(served, job={"designation": "M110x2"}, field=field, steps=3)
    first, now, last = chart["rows"][0]["x"], chart["present"]["x"], chart["rows"][-1]["x"]
    # As far as the field says, a tenth of a mm or two to both sides.
    reach = {"thread.pitch_diameter": 0.1, "thread.major": 0.2}[field]
    assert (now - first, last - now) == pytest.approx((reach, reach), rel=0.05)


def test_values_are_as_round_as_a_dial_is_set(served: "Served") -> None:
    chart = charted(served, field="flutes.cutter_diameter")
    values = [row["value"] for row in chart["rows"][1:-1]]
    assert all(len(value.removesuffix("mm").partition(".")[2]) <= 2 for value in values)
    assert len(set(values)) == len(values) == 29
    inch = charted(served, field="flutes.cutter_diameter", units="inch")
    value = inch["rows"][10]["value"]
    assert value.endswith("in")
    assert float(value.removesuffix("in")) == pytest.approx(inch["rows"][10]["x"], abs=1e-6)
    assert inch["across"]["title"] == "cutter [in]"


@pytest.mark.parametrize(
    ("field", "units", "unit"),
    [
        ("flutes.cutter_diameter", "mm", "mm"),
        ("flutes.cutter_diameter", "both", "mm"),
        ("flutes.cutter_diameter", "inch", "in"),
        ("flutes.rake", "inch", "°"),
        ("tap.hardness", "inch", "HRC"),
        ("flutes.count", "inch", ""),
    ],
)
def test_the_unit_of_the_ends_stands_beside_them(
    served: "Served", field: str, units: str, unit: str
) -> None:
    chart = charted(served, field=field, units=units, steps=3)
    assert chart["unit"] == unit
    # So that they are bare numbers, in the unit of the scale.
    ends = float(chart["start"]), float(chart["end"])
    assert ends == pytest.approx((chart["rows"][0]["x"], chart["rows"][-1]["x"]), rel=1e-4)


def test_counts_are_whole(served: "Served") -> None:
    chart = charted(served, field="flutes.count", figures=["torque_likely"])
    assert [row["value"] for row in chart["rows"]] == [2, 3, 4, 5, 6]
    design = settle(job_for("M10", ["flutes.count=5"]))
    assert design.prediction is not None
    assert chart["rows"][3]["y"] == pytest.approx([design.prediction.torque.band.likely])


def test_what_is_chosen_anew_along_the_way_is_told_between_its_neighbours(
    served: "Served",
) -> None:
    chart = charted(served, field="flutes.rake", start="-4", end="20", steps=25)
    taps = [settle(job_for("M10", [f"flutes.rake={row['value']}"])).tap for row in chart["rows"]]
    chosen = [
        (one.count, one.cutter_diameter, round(one.core_diameter, 6))
        for one in (tap.flutes for tap in taps)
    ]
    assert all(not row["broken"] for row in chart["rows"])
    expected = [n for n in range(24) if chosen[n] != chosen[n + 1]]
    assert [(jump["first"], jump["last"]) for jump in chart["jumps"]] == [
        (n, n + 1) for n in expected
    ]
    assert len(expected) >= 2
    before, after = chosen[expected[-1]], chosen[expected[-1] + 1]
    assert chart["jumps"][-1]["text"] == (
        f"Between {chart['rows'][expected[-1]]['text']} and "
        f"{chart['rows'][expected[-1] + 1]['text']} the rules choose anew: "
        f"number of flutes {after[0]} instead of {before[0]}, "
        f"cutter {after[1]:.2f} mm instead of {before[1]:.2f} mm, "
        f"core (web) {after[2]:.2f} mm instead of {before[2]:.2f} mm."
    )
    inch = charted(served, field="flutes.rake", start="-4", end="20", steps=25, units="inch")
    assert f"core (web) {after[2] / 25.4:.3f} in instead" in inch["jumps"][-1]["text"]


def test_what_is_given_or_held_does_not_jump(served: "Served") -> None:
    given = M10 | {"flutes.cutter_diameter": 6, "flutes.count": 3, "flutes.core_diameter": 4}
    chart = charted(served, job=given, field="flutes.rake", start="-4", end="20", steps=25)
    assert chart["jumps"] == []
    assert charted(served, field="flutes.offset")["jumps"] == []
    # Between two numbers of flutes nothing lies, so each may be another tap.
    chart = charted(served, field="flutes.count")
    assert [jump["first"] for jump in chart["jumps"]] == [0, 1, 2, 3]


def test_what_changes_all_along_is_no_jump() -> None:
    def tap(number: int, core: float, cutter: float, *errors: str) -> Variant:
        chosen = {"flutes.core_diameter": core, "flutes.cutter_diameter": cutter}
        return Variant(number, {}, {}, errors, chosen=chosen)

    taps = [tap(1, 4.0, 6.0), tap(2, 4.1, 6.0), tap(3, 9.0, 9.0, "core"), tap(4, 4.2, 8.0)]
    taps += [tap(5, 4.3, 8.0)]
    found = jumps_of(taps, "abcde", Units.MM, whole=False)
    # A row that breaks a rule is passed over.
    assert [(jump.first, jump.last) for jump in found] == [(1, 3)]
    assert found[0].text.startswith("Between b and d the rules choose anew: cutter 8.00 mm")
    assert "core" not in found[0].text


def test_a_broken_rule_breaks_the_line_and_is_told(served: "Served") -> None:
    chart = charted(served, field="chamfer.point_diameter", start="8", end="9", steps=11)
    broken = [row["broken"] for row in chart["rows"]]
    # The drill is 8.5: a point as thick does not enter.
    assert broken == [row["x"] >= 8.5 for row in chart["rows"]]
    assert all((row["y"][0] is None) == row["broken"] for row in chart["rows"])
    assert len(chart["zones"]) == 1
    zone = chart["zones"][0]
    assert (zone["first"], zone["last"]) == (broken.index(True), 10)
    assert "will not start" in zone["text"]


def test_what_settles_the_same_gives_way(served: "Served") -> None:
    job = M10 | {"flutes.rake": 12.0}
    chart = charted(served, job=job, start="-3", end="-1", steps=3)
    design = settle(job_for("M10", ["flutes.offset=-2mm", *held(chart)]))
    assert chart["rows"][1]["y"][0] == pytest.approx(design.figures.rake_crest)
    assert chart["present"]["y"][0] == pytest.approx(12.0, abs=0.05)


BAD = [
    ({"field": "shop.gears"}, "field", "flutes: offset of the cutter"),
    ({"field": "x" * 61}, "field", "60"),
    ({"figures": ["colour"]}, "figures", "rake_crest"),
    ({"figures": []}, "figures", "1"),
    ({"figures": ["margin"] * 3}, "figures", "2"),
    ({"steps": 42}, "steps", "41"),
    ({"steps": 1}, "steps", "2"),
    ({"start": "3", "end": "2"}, "to", "more than the other end, 3 mm"),
    ({"start": "900"}, "to", "to: 0.7 cannot be used"),
    ({"start": "1/0in"}, "from", "from -1000 to 2000 mm"),
    ({"start": "much"}, "from", "from -1000 to 2000 mm"),
    ({"field": "flutes.rake", "end": "46"}, "to", "from -45 to 45°"),
    ({"field": "flutes.count", "start": "2", "end": "2.2"}, "to", "a whole number from 3"),
    ({"job": {"designation": "hello"}}, "designation", "'hello'"),
    ({"deep": 1}, "deep", ""),
]


@pytest.mark.parametrize(("asked", "field", "words"), BAD)
def test_bad_questions_are_refused(
    served: "Served", asked: dict[str, object], field: str, words: str
) -> None:
    answer = served.post("chart", {"job": M10, "figures": FIGURES} | asked)
    error = answer.json()["error"]
    assert answer.status_code == 422
    assert error["field"].startswith(field)
    assert words in error["message"]
