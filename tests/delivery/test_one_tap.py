"""A folder holds one tap, and what is the user's own."""

import json
import os
from pathlib import Path

import pytest
from taps import NAME, content, give, vouched

from tapmodel.errors import InputError, KernelError
from tapmodel.run.delivery.staging import staging

PROOF = {"model": {"volume": 9.5}, "run": {"seconds": 1.0}}


def test_files_of_another_tap_give_way(tmp_path: Path) -> None:
    give(tmp_path, {"tap.step": "old", "tap.3mf": "old", "drawings/side.txt": "old"}, rake=8)
    made = json.loads((tmp_path / NAME / "record.json").read_text())["made"]
    told = give(tmp_path, {"tap.step": "new"}, rake=8.1)
    assert content(tmp_path / NAME) == {"tap.step": "new"} == vouched(tmp_path / NAME)
    assert not (tmp_path / NAME / "drawings").exists()
    assert told["delivery"] == {"written": ["tap.step"], "replaced": made, "kept": {}}


def test_files_of_the_very_same_tap_stay_and_are_vouched_for(tmp_path: Path) -> None:
    give(tmp_path, {"tap.step": "solid", "drawings/side.txt": "old side"}, rake=8, **PROOF)
    told = give(tmp_path, {"sheet.txt": "sheet", "drawings/side.txt": "side"}, rake=8)
    all_of_it = {"tap.step": "solid", "sheet.txt": "sheet", "drawings/side.txt": "side"}
    assert content(tmp_path / NAME) == all_of_it == vouched(tmp_path / NAME)
    assert told["delivery"]["replaced"] == ""
    # The proof of the model that still stands there is still told.
    record = json.loads((tmp_path / NAME / "record.json").read_text())
    assert record["model"] == {"volume": 9.5}


def test_the_proof_goes_with_the_model_it_proves(tmp_path: Path) -> None:
    give(tmp_path, {"tap.step": "solid"}, rake=8, **PROOF)
    give(tmp_path, {"sheet.txt": "sheet"}, rake=9)
    assert "model" not in json.loads((tmp_path / NAME / "record.json").read_text())


def test_what_the_run_took_is_told_and_not_filed(tmp_path: Path) -> None:
    told = give(tmp_path, {"tap.step": "solid"}, rake=8, **PROOF)
    assert told["run"] == PROOF["run"]
    record = json.loads((tmp_path / NAME / "record.json").read_text())
    assert record.keys() == {"schema", "name", "flutes", "model", "made", "files"}


def test_the_users_own_files_are_never_lost(tmp_path: Path) -> None:
    give(tmp_path, {"tap.step": "solid", "tap.3mf": "mesh"}, rake=8)
    folder = tmp_path / NAME
    (folder / "notes.txt").write_text("notes")
    (folder / "tap.glb").write_text("my own")  # in the way of a file to come
    (folder / "tap.kept-1.glb").write_text("mine too")
    (folder / "tap.3mf").write_text("changed by me")  # no longer what the record vouches for
    (folder / "drawings").write_text("a file where a folder is to come")
    (folder / "cam").symlink_to(tmp_path)
    (folder / "empty").mkdir()
    told = give(tmp_path, {"tap.step": "new", "tap.glb": "new", "drawings/side.txt": "x"}, rake=9)
    new = {"tap.step": "new", "tap.glb": "new", "drawings/side.txt": "x"}
    kept = {
        "notes.txt": "notes",
        "tap.kept-1.glb": "mine too",
        "tap.kept-2.glb": "my own",
        "tap.kept-1.3mf": "changed by me",
        "drawings.kept-1": "a file where a folder is to come",
    }
    assert content(folder) == new | kept
    assert vouched(folder) == new
    assert (folder / "cam").readlink() == tmp_path
    assert (folder / "empty").is_dir()
    assert told["delivery"]["kept"] == {
        "tap.glb": "tap.kept-2.glb",
        "tap.3mf": "tap.kept-1.3mf",
        "drawings": "drawings.kept-1",
    }


def test_a_changed_file_of_the_same_tap_keeps_its_name_but_is_not_vouched_for(
    tmp_path: Path,
) -> None:
    give(tmp_path, {"tap.step": "solid", "tap.3mf": "mesh"}, rake=8)
    (tmp_path / NAME / "tap.3mf").write_text("MESH")  # of the same size
    give(tmp_path, {"tap.glb": "new"}, rake=8)
    assert content(tmp_path / NAME)["tap.3mf"] == "MESH"
    assert vouched(tmp_path / NAME) == {"tap.step": "solid", "tap.glb": "new"}


@pytest.mark.parametrize("text", ["my record of purchases", '{"mine": 1}', "[]", ""])
def test_a_record_that_is_not_ours_is_the_users(text: str, tmp_path: Path) -> None:
    (tmp_path / NAME).mkdir()
    (tmp_path / NAME / "record.json").write_text(text)
    give(tmp_path, {"tap.step": "solid"}, rake=8)
    assert content(tmp_path / NAME) == {"tap.step": "solid", "record.kept-1.json": text}
    assert vouched(tmp_path / NAME) == {"tap.step": "solid"}


@pytest.mark.parametrize("files", ["none", {"a": 1}, [3], [{"path": 3}], [{"path": "tap.3mf"}]])
def test_a_record_that_makes_no_sense_vouches_for_nothing(files: object, tmp_path: Path) -> None:
    give(tmp_path, {"tap.3mf": "mesh"}, rake=8)
    path = tmp_path / NAME / "record.json"
    path.write_text(json.dumps(json.loads(path.read_text()) | {"files": files}))
    give(tmp_path, {"tap.step": "solid"}, rake=8)
    assert content(tmp_path / NAME) == {"tap.step": "solid", "tap.3mf": "mesh"}
    assert vouched(tmp_path / NAME) == {"tap.step": "solid"}


def test_without_second_names_the_files_are_copied(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_names: object, **_how: object) -> None:
        raise OSError(95, "Operation not supported")

    monkeypatch.setattr(os, "link", refuse)
    give(tmp_path, {"tap.step": "solid"}, rake=8)
    (tmp_path / NAME / "notes.txt").write_text("notes")
    give(tmp_path, {"tap.glb": "new"}, rake=8)
    assert content(tmp_path / NAME) == {"tap.step": "solid", "tap.glb": "new", "notes.txt": "notes"}
    os.mkfifo(tmp_path / NAME / "pipe")
    with pytest.raises(InputError, match="not supported"):
        give(tmp_path, {"tap.glb": "newer"}, rake=8)
    assert content(tmp_path / NAME)["tap.glb"] == "new"


def test_a_file_that_is_cut_off_is_not_delivered(tmp_path: Path) -> None:
    give(tmp_path, {"tap.step": "solid"}, rake=8)
    with pytest.raises(KernelError, match=r"tap\.svg is not whole"):
        give(tmp_path, {"tap.svg": "<svg><path"}, rake=9)
    assert content(tmp_path / NAME) == {"tap.step": "solid"}
    assert [p.name for p in tmp_path.iterdir()] == [NAME]


def test_the_folder_keeps_its_permissions(tmp_path: Path) -> None:
    give(tmp_path, {"tap.step": "solid"}, rake=8)
    (tmp_path / NAME).chmod(0o2750)
    give(tmp_path, {"tap.step": "new"}, rake=9)
    assert (tmp_path / NAME).stat().st_mode & 0o7777 == 0o2750


@pytest.mark.parametrize("blocked", ["file", "link", "dangling"])
def test_a_name_that_is_no_folder_is_refused_and_left(blocked: str, tmp_path: Path) -> None:
    final, goal = tmp_path / "out" / NAME, tmp_path / "elsewhere"
    final.parent.mkdir()
    if blocked == "file":
        final.write_text("mine")
    else:
        final.symlink_to(goal)
        _ = blocked == "link" and goal.mkdir()
    with pytest.raises(InputError, match="--out"), staging(tmp_path / "out", NAME):
        pass
    assert os.path.lexists(final)
    assert list((tmp_path / "out").iterdir()) == [final]


def test_folders_made_for_nothing_are_removed(tmp_path: Path) -> None:
    def stop() -> None:
        with staging(tmp_path / "a" / "b", NAME) as staged:
            (staged / "x").write_text("x")
            raise ValueError("stop")

    with pytest.raises(ValueError, match="stop"):
        stop()
    assert list(tmp_path.iterdir()) == []
