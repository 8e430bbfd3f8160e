"""A shop described once: jobs point to its file, and their own values win."""

import sys
from pathlib import Path

import pytest

import tapmodel
from tapmodel.comparing.variants import Asked, compare_taps
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError
from tapmodel.report.job_file import commented_job
from tapmodel.spec.job_file import job_for, read_job, read_job_table
from tapmodel.spec.shop_file import pointer_from, shop_schema

sys.path.insert(0, str(Path(__file__).parents[1] / "hostile"))

from entry import run

SHOP = """\
[shop]
cutters = ["1/4in", 5]
plates = "15-17"
leadscrew = "8tpi"
furnace = 800
steels = ["W1"]
"""


@pytest.fixture(name="folder")
def _folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with `jobs/job.toml` that points to `shops/shop.toml`; one works in another."""
    for name in ("jobs", "shops", "elsewhere"):
        (tmp_path / name).mkdir()
    (tmp_path / "shops" / "shop.toml").write_text(SHOP)
    job = 'designation = "M10"\n[shop]\nfile = "../shops/shop.toml"\nfurnace = 900\n'
    (tmp_path / "jobs" / "job.toml").write_text(job)
    monkeypatch.chdir(tmp_path / "elsewhere")
    return tmp_path


def test_the_file_holds_where_the_job_says_nothing(folder: Path) -> None:
    shop = read_job(folder / "jobs" / "job.toml").shop
    assert shop.cutters == pytest.approx([6.35, 5])
    assert shop.plates == [15, 16, 17]
    assert shop.leadscrew == pytest.approx(25.4 / 8)
    assert shop.steels == ["W1"]
    assert shop.furnace == 900
    assert shop.wires is None


def test_a_path_goes_by_the_jobs_folder_and_on_the_command_line_by_ones_own(folder: Path) -> None:
    by_job = read_job(Path("../jobs/job.toml"))
    assert by_job.shop.cutters == pytest.approx([6.35, 5])
    typed = job_for("M10", ["shop.file=../shops/shop.toml"])
    assert typed.shop.furnace == 800
    (folder / "elsewhere" / "mine.toml").write_text('[shop]\nfurnace = 870\nmill_control = "cnc"\n')
    other = read_job(folder / "jobs" / "job.toml", ["shop.file=mine.toml"]).shop
    assert (other.mill_control, other.cutters, other.furnace) == ("cnc", None, 900)


def test_what_was_settled_stands_in_the_record(folder: Path) -> None:
    design = tapmodel.design(folder / "jobs" / "job.toml")
    choices = {one["field"]: one["value"] for one in design.record()["choices"]}
    assert choices["shop.cutters"] == "6.35, 5 mm"
    assert choices["shop.furnace"] == "900.0 °C"
    assert choices["tap.material"] == "W1"
    assert design.tap.flutes.cutter_diameter in {6.35, 5.0}


def test_every_variant_and_every_cure_is_of_that_shop(folder: Path) -> None:
    table = read_job_table(folder / "jobs" / "job.toml")
    compared = compare_taps(Asked(table, {"flutes.count": [3, 4]}))
    assert compared.job.shop.cutters == pytest.approx([6.35, 5])
    done = run(("design", str(folder / "jobs" / "job.toml"), "--fix", "--set", "flutes.count=6"))
    assert "not among shop.cutters" not in done.out


def test_new_keeps_the_pointer_and_copies_no_value(folder: Path) -> None:
    path = folder / "elsewhere" / "new.toml"
    done = run(("new", "../jobs/job.toml", "new.toml", "--set", "shop.wires=0.9"))
    assert done.code == 0
    shop = path.read_text().split("\n[shop]\n")[1].split("\n[")[0]
    assert [line for line in shop.splitlines() if line and line[0] != "#"] == [
        'file = "../shops/shop.toml"',
        "wires = [0.9]",
        "furnace = 900.0",
    ]
    again = read_job(path)
    assert settle(again).tap == settle(read_job(folder / "jobs" / "job.toml")).tap
    # what the shop buys later holds in the job that was written before
    (folder / "shops" / "shop.toml").write_text("[shop]\ncutters = [4, 5]\ndrills = ['number']\n")
    later = read_job(path).shop
    assert (later.cutters, later.drills) == ([4, 5], ["number"])


def test_the_pointer_of_a_file_elsewhere_leads_to_the_same_shop(folder: Path) -> None:
    job = read_job(folder / "jobs" / "job.toml")
    text = commented_job(job, settle(job), folder / "shops")
    assert str(folder / "shops" / "shop.toml") not in text or Path(str(job.shop.file)).is_absolute()
    assert pointer_from("../shops/shop.toml", folder / "shops") == "shop.toml"
    assert pointer_from("/srv/shop.toml", folder) == "/srv/shop.toml"


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ('designation = "M10"\n', r"wrong\.toml: designation: 'M10' .*this is a job file"),
        ("cutters = [3]\n", r'wrong\.toml: cutters: .*"shop\.cutters".*put \[shop\] above it'),
        ("[lathe]\nbed = 3\n", r"wrong\.toml: lathe: 'a table of 1' .*\[shop\] as in a job"),
        ("[shop]\nfile = 'wrong.toml'\n", r"wrong\.toml: shop\.file: 'wrong\.toml' .*no pointer"),
        (
            "[shop]\ncutter = 3\n",
            r"wrong\.toml: shop\.cutter: no such field; did you mean shop\.cutters\?",
        ),
        ("[shop]\nfurnace = 3\n", r"wrong\.toml: shop\.furnace: 3 .*at least 100, at most 1500"),
        ("[shop]\ncutters = ['x']\n", r"wrong\.toml: shop\.cutters: .*or with its unit"),
        ("shop = 3\n", r"wrong\.toml: shop: 3 .*keys of the table \[shop\]"),
        ("[shop\n", r"wrong\.toml, line 1: .*a TOML file"),
    ],
)
def test_what_is_wrong_names_file_field_value_and_what_is_allowed(
    text: str, message: str, tmp_path: Path
) -> None:
    path = tmp_path / "wrong.toml"
    path.write_text(text)
    with pytest.raises(InputError, match=message):
        job_for("M10", [f"shop.file={path}"])


@pytest.mark.parametrize("pointer", ["nowhere.toml", "/dev/zero", ".", "a\0b"])
def test_what_is_no_file_is_refused_as_the_pointer_that_it_is(pointer: str) -> None:
    with pytest.raises(InputError, match=r"shop\.file: "):
        job_for("M10", [f"shop.file={pointer}"])


def test_a_job_that_points_to_itself_is_a_job_file(tmp_path: Path) -> None:
    path = tmp_path / "job.toml"
    path.write_text('designation = "M10"\n[shop]\nfile = "job.toml"\n')
    with pytest.raises(InputError, match=r"job\.toml: designation: 'M10' .*this is a job file"):
        read_job(path)


def test_the_schema_has_the_fields_of_the_job() -> None:
    fields = shop_schema()["$defs"]["Shop"]["properties"]
    assert {"cutters", "furnace", "steels", "mill_control", "index", "rate"} <= set(fields)
    assert "shop" in shop_schema()["properties"]
