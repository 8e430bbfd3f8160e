"""Deliveries where the system refuses to rename as Windows does leave the old tap or the new one.

There a name cannot be given that is taken, nor one of a folder changed of which a file is open.
"""

import errno
import itertools
import os
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any

import pytest
from taps import NAME, content, forked, give, vouched

from tapmodel.errors import InputError
from tapmodel.export import renaming
from tapmodel.run.delivery import carry, locks, swap
from tapmodel.run.delivery.staging import staging

OLD, NEW = {"tap.step": "old", "tap.3mf": "old"}, {"tap.step": "new", "tap.glb": "new"}
MINE = {"notes.txt": "mine"}

ERRORS = {PermissionError: errno.EACCES, FileExistsError: errno.EEXIST, OSError: errno.EIO}
Name = str | os.PathLike[str]
real_rename, real_replace = os.rename, os.replace


def _as_windows(one: Name, other: Name) -> None:
    if os.path.lexists(other):
        raise FileExistsError(errno.EEXIST, "Cannot create a file when it exists", str(other))
    real_rename(one, other)


@pytest.fixture(autouse=True)
def _renames_as_windows(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "rename", _as_windows)
    monkeypatch.setattr(swap, "exchange", lambda _one, _other: False)


def _stand(out: Path) -> Path:
    give(out, OLD, rake=8)
    (out / NAME / "notes.txt").write_text("mine")
    return out / NAME


def _state(folder: Path) -> str:
    found = content(folder)
    assert {name: found.pop(name) for name in MINE} == MINE
    assert found == vouched(folder)
    return {str(OLD): "old", str(NEW): "new"}[str(dict(sorted(found.items(), reverse=True)))]


def _refusing(at: range, error: type[OSError]) -> Callable[[Name, Name], None]:
    """Refuses the renames of these numbers, and does the others."""
    numbers = itertools.count()

    def rename(one: Name, other: Name) -> None:
        if next(numbers) in at:
            raise error(ERRORS[error], "refused", str(one))
        _as_windows(one, other)

    return rename


def _refusal(run: Callable[[], object]) -> InputError | None:
    try:
        run()
    except InputError as error:
        return error
    return None


def test_over_a_folder_the_new_tap_takes_the_place_of_the_old(tmp_path: Path) -> None:
    folder = _stand(tmp_path)
    give(tmp_path, NEW, rake=12)
    assert _state(folder) == "new"
    assert list(tmp_path.iterdir()) == [folder]


@pytest.mark.parametrize("error", ERRORS)
@pytest.mark.parametrize("lasting", [1, 1000])
@pytest.mark.parametrize("number", range(6))
def test_a_refusal_at_any_rename_leaves_old_or_new(
    number: int, lasting: int, error: type[OSError], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = _stand(tmp_path)
    with monkeypatch.context() as refused:
        at = range(number, number + lasting)
        refused.setattr(os, "rename", _refusing(at, error))
        refusal = _refusal(lambda: give(tmp_path, NEW, rake=12))
        ended = refusal is None
        if refusal:
            assert refusal.field == "--out"
            assert ("has a file open" in refusal.allowed) == (error is PermissionError)
        if folder.exists():
            assert _state(folder) == ("new" if ended else "old")
        else:
            # Moved away and refused ever since: all of it lies beside, for the next run.
            assert (number, lasting) == (2, 1000)
    with staging(tmp_path, "other"):
        pass
    assert _state(folder) == ("new" if ended or (number, lasting) == (2, 1000) else "old")
    assert list(tmp_path.iterdir()) == [folder]


def test_a_refusal_that_passes_is_waited_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = _stand(tmp_path)
    monkeypatch.setattr(renaming, "PATIENCE", 2.0)
    for number in range(4):
        monkeypatch.setattr(os, "rename", _refusing(range(number, number + 3), PermissionError))
        give(tmp_path, NEW | {"tap.glb": f"{number}"}, rake=12)
        assert content(folder)["tap.glb"] == f"{number}"
    assert list(tmp_path.iterdir()) == [folder]


def test_a_file_that_cannot_be_replaced_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = _stand(tmp_path)

    def refuse(one: Name, _other: Name) -> None:
        raise PermissionError(errno.EACCES, "Access is denied", str(one))

    monkeypatch.setattr(os, "replace", refuse)
    with pytest.raises(InputError, match="Access is denied"):
        give(tmp_path, NEW, rake=12)
    monkeypatch.setattr(os, "replace", real_replace)
    assert _state(folder) == "old"
    assert list(tmp_path.iterdir()) == [folder]


def test_what_another_delivers_meanwhile_does_not_pass_for_the_users_own(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = _stand(tmp_path)
    monkeypatch.setattr(locks, "lock", lambda _handle, **_how: False)
    real, comes = carry.vouched, [True]

    def interrupted(old: Path) -> dict[str, dict[str, Any]]:
        found = real(old)
        if comes.pop() if comes else False:
            give(tmp_path, {"theirs.step": "theirs"}, rake=5)
        return found

    monkeypatch.setattr(carry, "vouched", interrupted)
    with pytest.raises(InputError, match="another run delivers there"):
        give(tmp_path, NEW, rake=12)
    assert content(folder) == {"theirs.step": "theirs"} | MINE
    assert vouched(folder) == {"theirs.step": "theirs"}
    assert list(tmp_path.iterdir()) == [folder]


def test_two_that_deliver_at_once_without_locks_never_mix(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = _stand(tmp_path)
    monkeypatch.setattr(locks, "lock", lambda _handle, **_how: False)

    def deliver_often(who: str) -> None:
        for n in range(12):
            # One that comes in between is refused.
            files = {f"{who}-{n}.step": who, "tap.step": who}
            _refusal(partial(give, tmp_path, files, rake=len(who)))

    runs = [forked(partial(deliver_often, who)) for who in ("one", "other")]
    assert [os.waitpid(run, 0)[1] for run in runs] == [0, 0]
    monkeypatch.undo()
    with staging(tmp_path, "other"):
        pass
    found = content(folder)
    notes = {name for name, text in found.items() if text == "mine"}
    assert notes
    assert {n: t for n, t in found.items() if n not in notes} == vouched(folder)
    assert len(set(vouched(folder).values())) == 1
