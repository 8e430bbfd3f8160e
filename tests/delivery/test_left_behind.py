"""Only what this program surely left, of processes that have surely ended, is removed."""

import json
import subprocess
import sys
from pathlib import Path

import pytest
from taps import NAME, content, give, killed_at

from tapmodel.errors import InputError
from tapmodel.run.delivery import owner
from tapmodel.run.delivery.staging import staging


def _left(out: Path) -> Path:
    """The staging folder of a run that was killed before it delivered."""
    before = set(out.iterdir()) if out.exists() else set[Path]()
    assert killed_at("carried", lambda: give(out, {"tap.step": "half"}, rake=8))
    (left,) = set(out.iterdir()) - before
    assert (left / "files" / "tap.step").read_text() == "half"
    return left


def test_a_killed_run_is_cleared_away_by_the_next_of_any_tap(tmp_path: Path) -> None:
    left = _left(tmp_path)
    with staging(tmp_path, "another"):
        assert not left.exists()


@pytest.mark.parametrize(
    "name",
    [
        ".tap.2024.backup",
        ".tap.20251125203000.bak",
        ".tap.99999.abcd",
        ".tapmodel-backup",
        ".tapmodel-0123456789abcdef",
        "tap.99999",
    ],
)
def test_a_folder_of_the_users_is_never_touched(name: str, tmp_path: Path) -> None:
    mine = tmp_path / name
    mine.mkdir()
    (mine / "precious.txt").write_text("mine")
    (mine / "files").mkdir()
    give(tmp_path, {"tap.step": "solid"}, rake=8)
    (mine / "owner.json").write_text(json.dumps({"program": "another", "name": NAME}))
    give(tmp_path, {"tap.step": "solid"}, rake=8)
    assert (mine / "precious.txt").read_text() == "mine"
    assert (mine / "files").is_dir()


@pytest.mark.parametrize(
    "change",
    [
        {"system": "0d9a4b8e-another-boot-or-machine"},
        {"system": ""},
        {"program": "another"},
        {"name": "../tap"},
        {"more": 1},
    ],
)
def test_a_folder_of_another_machine_or_program_is_left(
    change: dict[str, object], tmp_path: Path
) -> None:
    left = _left(tmp_path)
    file = left / "owner.json"
    file.write_text(json.dumps(json.loads(file.read_text()) | change))
    with staging(tmp_path, NAME):
        assert left.exists()
    assert (left / "files" / "tap.step").exists()


def test_an_owner_file_that_was_cut_off_proves_nothing(tmp_path: Path) -> None:
    left = _left(tmp_path)
    (left / "owner.json").write_bytes((left / "owner.json").read_bytes()[:20])
    with staging(tmp_path, NAME):
        pass
    assert left.exists()


def test_two_runs_whose_names_look_alike_leave_each_other_alone(tmp_path: Path) -> None:
    with staging(tmp_path, "tap") as one, staging(tmp_path, "tap.99999") as other:
        (one / "x").write_text("x")
        with staging(tmp_path, "tap") as again:
            (other / "y").write_text("y")
            assert len({one, other, again}) == 3
        assert (one / "x").exists()
        assert (other / "y").exists()
    assert list(tmp_path.iterdir()) == []


def test_a_run_that_lives_is_left_alone_by_other_processes(tmp_path: Path) -> None:
    script = (
        "import sys, pathlib\n"
        "from tapmodel.run.delivery.staging import staging\n"
        "with staging(pathlib.Path(sys.argv[1]), 'tap'): pass\n"
    )
    with staging(tmp_path, "tap") as staged:
        (staged / "x").write_text("x")
        subprocess.run([sys.executable, "-c", script, str(tmp_path)], check=True)
        assert (staged / "x").exists()
    assert list(tmp_path.iterdir()) == []


def test_without_locks_nothing_is_taken_for_abandoned(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    left = _left(tmp_path)
    monkeypatch.setattr(owner, "lock", lambda _handle, **_how: False)
    with staging(tmp_path, NAME) as staged:
        assert json.loads((staged.parent / "owner.json").read_text())["system"] == ""
        assert left.exists()


def test_a_delivery_that_another_machine_is_at_is_not_ended_without_locks(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    give(tmp_path, {"tap.step": "old"}, rake=8)
    new = {"tap.step": "new"}
    assert killed_at("away", lambda: give(tmp_path, new, rake=9), exchanges=False)
    with monkeypatch.context() as elsewhere:
        elsewhere.setattr("tapmodel.run.delivery.locks.lock", lambda _handle, **_how: False)
        elsewhere.setattr(owner, "lock", lambda _handle, **_how: False)
        with pytest.raises(InputError, match="no other run delivers to"):
            give(tmp_path, new, rake=9)
        assert not (tmp_path / NAME).exists()
    with staging(tmp_path, "another"):
        pass
    assert content(tmp_path / NAME) == new
