"""`tapmodel set` as a user types it: the table, the job files, and what it refuses."""

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "hostile"))

from entry import Ended, run

from tapmodel.designing.settle import settle
from tapmodel.spec.job_file import read_job

C45 = ("--set", "hole.material=C45")


def shared(folder: Path, *words: str) -> Ended:
    return run(("set", *words, "--out", str(folder)))


def files(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir()) if folder.exists() else []


def test_a_set_is_told_and_written(tmp_path: Path) -> None:
    done = shared(tmp_path / "jobs", "Tr20x4", *C45)
    assert done.code == 0, done.err
    told = " ".join(done.out.split())
    assert "One tap is not enough: it likely takes" in told
    assert "A set of two is enough." in told
    assert files(tmp_path / "jobs") == ["Tr20x4-1.toml", "Tr20x4-2.toml"]
    rows = [line.split() for line in done.out.splitlines() if line.strip()[:1] in {"1", "2"}]
    designs = [settle(read_job(tmp_path / "jobs" / f"Tr20x4-{n}.toml")) for n in (1, 2)]
    for number, (row, design) in enumerate(zip(rows, designs, strict=True), start=1):
        thread, foreseen = design.tap.thread, design.prediction
        assert foreseen is not None
        assert design.name == f"Tr20x4-{number}"
        assert row[:2] == [str(number), str(2 - number)]
        assert float(row[2]) == pytest.approx(thread.major, abs=5e-4)
        assert float(row[4]) == pytest.approx(thread.pitch_diameter, abs=5e-5)
        margin = foreseen.strength.bears / foreseen.torque.band.likely
        assert float(row[-1]) == pytest.approx(margin, abs=5.1e-3)
        assert f"build {tmp_path}/jobs/Tr20x4-{number}.toml" in done.err
    assert "stop at" in done.out
    shares = [int(row[row.index("%") - 1]) for row in rows]
    assert sum(shares) == 100


def test_the_files_are_jobs_that_every_command_takes(tmp_path: Path) -> None:
    assert shared(tmp_path, "Tr20x4", *C45).code == 0
    for number in (1, 2):
        done = run(("design", str(tmp_path / f"Tr20x4-{number}.toml"), "--all"))
        assert done.code == 0
        assert f"Tap {number} of a set of 2 for Tr20x4" in done.out
        assert ("one ring round the shank, below the square" in done.out) is (number == 1)


def test_a_name_that_is_taken_is_refused_before_anything_is_written(tmp_path: Path) -> None:
    (tmp_path / "Tr20x4-2.toml").write_text("mine")
    refused = shared(tmp_path, "Tr20x4", *C45)
    assert refused.code == 2
    assert "--overwrite" in refused.err
    assert files(tmp_path) == ["Tr20x4-2.toml"]
    assert (tmp_path / "Tr20x4-2.toml").read_text() == "mine"
    assert shared(tmp_path, "Tr20x4", *C45, "--overwrite").code == 0
    assert read_job(tmp_path / "Tr20x4-2.toml").tap_set.number == 2


def test_where_one_tap_is_enough_nothing_is_written_unless_asked_for(tmp_path: Path) -> None:
    done = shared(tmp_path / "jobs", "M10", *C45)
    assert done.code == 0
    assert done.out.startswith("One tap is enough: it likely takes ")
    assert files(tmp_path / "jobs") == []
    assert shared(tmp_path / "jobs", "M10", *C45, "--taps", "3").code == 0
    assert files(tmp_path / "jobs") == [f"M10x1.5-{n}.toml" for n in (1, 2, 3)]


def test_a_chamfer_too_long_for_a_blind_hole_asks_for_another_tap(tmp_path: Path) -> None:
    blind = ("--set", "hole.kind=blind", "--set", "hole.depth=18", "--set", "hole.material=brass")
    told = " ".join(shared(tmp_path, "Tr16x6(P2)", *blind).out.split())
    # 18 mm, four leads of chamfer and one pitch
    assert "The bottom of the hole may want another all the same." in told
    assert "For 18.0 mm of full thread the hole has to be drilled 44.0 mm deep" in told


def test_where_not_even_three_are_enough_the_cure_is_told(tmp_path: Path) -> None:
    thin = ("--set", "flutes.core_diameter=5")
    done = shared(tmp_path / "jobs", "Tr16x4", *C45, *thin)
    assert done.code == 1
    assert done.out.startswith("Not even a set of three is enough")
    assert max(map(len, done.out.splitlines())) <= 100
    told = " ".join(done.out.split())
    assert "A set of three is enough if you set flutes.core_diameter at least 6.1" in told
    assert "flutes.count to 2" in told
    assert "softer material" not in told
    assert files(tmp_path / "jobs") == []
    two = shared(tmp_path / "jobs", "Tr16x4", *C45, *thin, "--set", "flutes.count=2")
    assert two.code == 0, two.err


def test_where_nothing_lets_three_bear_it_that_is_told(tmp_path: Path) -> None:
    done = shared(tmp_path / "jobs", "Tr10x12(P3)", "--set", "hole.material=1.2379")
    assert done.code == 1
    told = " ".join(done.out.split())
    assert "Not even a set of three is enough" in told
    assert "and neither a stouter core (flutes.core_diameter), another number of flutes" in told
    assert "tap a softer material" in told


def test_a_job_of_a_set_is_not_shared_again(tmp_path: Path) -> None:
    assert shared(tmp_path, "Tr20x4", *C45).code == 0
    again = shared(tmp_path, str(tmp_path / "Tr20x4-1.toml"))
    assert again.code == 2
    assert "without [set]" in again.err


def test_a_tap_that_breaks_another_rule_is_told_so(tmp_path: Path) -> None:
    done = shared(tmp_path / "jobs", "M10", "--set", "flutes.cutter_diameter=9")
    assert done.code == 1
    assert "flutes.cutter_diameter" in done.err
    assert files(tmp_path / "jobs") == []


def test_an_overload_in_a_named_material_is_refused_by_build(tmp_path: Path) -> None:
    refused = run(("build", "Tr20x4", *C45, "--out", str(tmp_path)))
    assert refused.code == 1
    assert "tapmodel set JOB" in refused.err
    assert files(tmp_path) == []


def test_the_number_asked_for_is_told_beside_the_number_that_is_enough(tmp_path: Path) -> None:
    for words, told in (
        (("Tr16x4", *C45, "--taps", "2"), "A set of two is enough.\n"),
        (("Tr16x4", *C45, "--taps", "3"), "A set of two is enough. Here the work is shared among"),
        (("M10", *C45, "--taps", "2"), "N·m. Here the work is shared among two, as asked for.\n"),
    ):
        done = shared(tmp_path, *words, "--overwrite")
        assert done.code == 0
        paragraph = " ".join(done.out.partition("\n\n")[0].split())
        assert told in f"{paragraph}\n"
    assert "Here the work" not in shared(tmp_path / "none", "M10", *C45).out


def test_warnings_are_told_by_the_tap_that_has_them(tmp_path: Path) -> None:
    done = shared(tmp_path, "Tr16x4", *C45, "--taps", "2")
    designs = [settle(read_job(tmp_path / f"Tr16x4-{n}.toml")) for n in (1, 2)]
    assert all(design.finds("land-rubs") for design in designs)
    assert "Warnings of tap 1: land-rubs; tap 2: land-rubs." in done.out
    assert "Warnings of" not in shared(tmp_path, "M10", *C45, "--taps", "2").out


def test_two_taps_that_are_not_enough_are_no_claim_about_one(tmp_path: Path) -> None:
    thin = ("--set", "flutes.core_diameter=5")
    done = shared(tmp_path, "Tr16x4", *C45, *thin, "--taps", "2")
    assert done.code == 1
    told = " ".join(done.err.split())
    for number in (1, 2):
        assert f"Tap {number} of a set of 2 for Tr16x4: WARNING [tap-overloaded]" in told
    assert told.count("Two taps are not enough: in C45 this one takes about") == 2
    assert "tapmodel set --taps 3" in told
    assert "One tap" not in told
    three = shared(tmp_path, "Tr16x4", *C45, *thin, "--taps", "3", "--overwrite").err
    assert "Three taps are not enough" in three
    assert "--taps" not in three


def test_fix_mends_what_a_set_does_not(tmp_path: Path) -> None:
    low = ("--set", "flutes.full_depth_length=25mm")
    assert shared(tmp_path, "Tr16x4", *C45, *low).code == 1
    done = shared(tmp_path, "Tr16x4", *C45, *low, "--fix")
    assert done.code == 0, done.err
    assert done.err.startswith("fixed: flutes.full_depth_length")
    # the overload is what the set is for: the core stays, and the work is shared
    assert "core_diameter" not in done.err
    assert files(tmp_path) == ["Tr16x4-1.toml", "Tr16x4-2.toml"]
    nothing = shared(tmp_path, "Tr16x4", *C45, "--fix", "--overwrite")
    assert nothing.err.startswith("fixed: nothing, for no rule is broken")


@pytest.mark.parametrize(
    ("designation", "words", "inch"),
    [
        ("Tr20x4", ("--units", "inch"), True),
        ("Tr20x4", ("--set", "units=inch"), True),
        ("1/2-10 Acme", ("--units", "inch"), True),
        # told in both units by rule, and written in mm by `new`, too
        ("1/2-10 Acme", (), False),
        ("1/2-10 Acme", ("--units", "mm", "--set", "units=inch"), False),
    ],
)
def test_files_are_written_in_the_units_that_new_would_write(
    tmp_path: Path, designation: str, words: tuple[str, ...], inch: bool
) -> None:
    done = shared(tmp_path, designation, *C45, *words, "--set", "blank.shank_diameter=12.25mm")
    assert done.code == 0, done.err
    one = tmp_path / "new.toml"
    assert run(("new", designation, str(one), *C45, *words)).code in {0, 1}
    assert [line for line in one.read_text().splitlines() if line.startswith("units")] == [
        line
        for line in next(tmp_path.glob("*-2.toml")).read_text().splitlines()
        if line.startswith("units")
    ]
    before, after = (read_job(next(tmp_path.glob(f"*-{number}.toml"))) for number in (1, 2))
    typed = after.typed()
    lengths = ("set.before_major", "set.before_pitch_diameter", "chamfer.point_diameter")
    for field in (*lengths, "flutes.core_diameter", "flutes.offset"):
        value = typed[field]
        assert isinstance(value, str) is inch, field
        assert (not inch) or str(value).endswith("in")
    # What was typed stays, and what one tap leaves is what the next is told, to the last digit.
    assert typed["blank.shank_diameter"] == "12.25mm"
    left = settle(before).tap.thread
    part = settle(after).part
    assert part is not None
    assert part.before is not None
    assert (part.before.major, part.before.pitch_diameter) == (left.major, left.pitch_diameter)
    assert settle(after).errors == ()


def test_of_an_older_set_only_what_it_wrote_is_taken_away(tmp_path: Path) -> None:
    third, mine = tmp_path / "Tr20x4-3.toml", tmp_path / "Tr20x4-4.toml"
    mine.write_text("mine")

    def again(*words: str) -> Ended:
        return shared(tmp_path, "Tr20x4", *C45, *words)

    assert again("--taps", "3").code == 0
    written = third.read_bytes()
    # Nothing is touched, nor written, without leave.
    (tmp_path / "Tr20x4-1.toml").unlink()
    (tmp_path / "Tr20x4-2.toml").unlink()
    refused = again()
    assert refused.code == 2
    assert "Tr20x4-3.toml" in refused.err
    assert files(tmp_path) == ["Tr20x4-3.toml", "Tr20x4-4.toml"]
    done = again("--overwrite")
    assert done.code == 0
    assert f"removed {third}: a tap of the older set" in done.err
    assert files(tmp_path) == ["Tr20x4-1.toml", "Tr20x4-2.toml", "Tr20x4-4.toml"]
    assert mine.read_text() == "mine"
    edited = written.replace(b"taps = 3", b"taps = 2")
    for other in (
        b"mine",
        edited,
        written + b"\n",
        written[:-2] + bytes([written[-2] ^ 1]) + b"\n",
        b"\xff",
        b"",
    ):
        third.write_bytes(other)
        left = again("--overwrite")
        assert left.code == 0
        assert f"left {third}: " in left.err
        assert third.read_bytes() == other
    third.unlink()
    third.symlink_to(mine)
    mine.write_bytes(written)
    assert f"left {third}: " in again("--overwrite").err
    assert third.is_symlink()
    third.unlink()
    third.mkdir()
    assert again("--overwrite").code == 0
    assert third.is_dir()


def test_a_set_of_another_thread_is_no_older_one_of_this(tmp_path: Path) -> None:
    named = ("--set", "name=tap", *C45)
    assert shared(tmp_path, "M10", *named, "--taps", "3").code == 0
    done = shared(tmp_path, "Tr20x4", *named, "--overwrite")
    assert done.code == 0
    assert "left " in done.err
    assert files(tmp_path) == ["tap-1.toml", "tap-2.toml", "tap-3.toml"]
