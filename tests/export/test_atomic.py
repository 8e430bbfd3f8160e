import os
from pathlib import Path

import pytest

from tapmodel.errors import InputError
from tapmodel.export.atomic import whole_file, write_whole


def test_the_file_appears_only_when_the_block_has_ended(tmp_path: Path):
    goal = tmp_path / "part.txt"
    with whole_file(goal) as draft:
        draft.write_text("all of it")
        assert draft.parent == tmp_path
        assert draft.name.startswith(".")
        assert not goal.exists()
        with whole_file(goal) as other:
            assert other != draft
            other.write_text("of another")
    assert goal.read_text() == "all of it"
    assert list(tmp_path.iterdir()) == [goal]


@pytest.mark.parametrize("stop", [RuntimeError, KeyboardInterrupt, SystemExit])
def test_after_a_failure_the_old_file_stands_and_nothing_else(
    tmp_path: Path, stop: type[BaseException]
):
    goal = tmp_path / "part.txt"
    goal.write_text("old")

    def fail() -> None:
        with whole_file(goal) as draft:
            draft.write_text("half of")
            raise stop

    with pytest.raises(stop):
        fail()
    assert goal.read_text() == "old"
    assert list(tmp_path.iterdir()) == [goal]


def test_the_data_are_on_the_disk_before_the_name_changes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    goal = tmp_path / "part.txt"
    there: list[bool] = []
    synced = os.fsync
    monkeypatch.setattr(os, "fsync", lambda handle: (there.append(goal.exists()), synced(handle)))
    with whole_file(goal) as draft:
        draft.write_text("x")
    assert there == [False]


def test_a_missing_folder_is_bad_input(tmp_path: Path):
    with (
        pytest.raises(InputError, match=r"nowhere.*No such file"),
        whole_file(tmp_path / "nowhere" / "part.txt") as draft,
    ):
        draft.write_text("x")


def test_a_folder_in_the_way_is_bad_input_and_leaves_no_draft(tmp_path: Path):
    (tmp_path / "part.txt").mkdir()
    with pytest.raises(InputError), whole_file(tmp_path / "part.txt") as draft:
        draft.write_text("x")
    assert [item.name for item in tmp_path.iterdir()] == ["part.txt"]


def test_bytes_that_read_back_otherwise_never_take_the_name(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    goal = tmp_path / "part.txt"
    write_whole(goal, b"whole")
    assert goal.read_bytes() == b"whole"
    with monkeypatch.context() as torn:
        torn.setattr(Path, "read_bytes", lambda _path: b"whol")
        with pytest.raises(InputError, match="reads back otherwise"):
            write_whole(goal, b"whole again")
    assert goal.read_bytes() == b"whole"
    assert list(tmp_path.iterdir()) == [goal]
