"""A delivery killed at any step leaves the old tap or the new one, whole."""

import itertools
import os
import signal
from functools import partial
from pathlib import Path

import pytest
from taps import NAME, content, forked, give, killed_at, vouched

from tapmodel.run.delivery import swap
from tapmodel.run.delivery.moments import MOMENTS
from tapmodel.run.delivery.staging import staging

OLD = {"tap.step": "old solid", "tap.3mf": "old mesh", "drawings/side.txt": "old side"}
NEW = {"tap.step": "new solid", "tap.glb": "new still"}
MINE = {"notes.txt": "mine", "cam/job.nc": "my cuts"}

WAYS = {True: set(MOMENTS) - {"away", "placed"}, False: set(MOMENTS) - {"exchanged"}}


def _stand(out: Path) -> Path:
    give(out, OLD, rake=8)
    folder = out / NAME
    for name, text in MINE.items():
        (folder / name).parent.mkdir(exist_ok=True)
        (folder / name).write_text(text)
    return folder


def _next_run(out: Path) -> None:
    """Whatever command comes next, of this tap or another."""
    with staging(out, "other"):
        pass


def _state(folder: Path) -> str:
    found = content(folder)
    assert {name: found.pop(name) for name in MINE} == MINE
    assert found == vouched(folder)
    return {str(sorted(OLD.items())): "old", str(sorted(NEW.items())): "new"}[
        str(sorted(found.items()))
    ]


@pytest.mark.parametrize(
    ("exchanges", "moment"),
    [(way, moment) for way, reached in WAYS.items() for moment in MOMENTS if moment in reached],
)
def test_killed_once_and_killed_again_in_recovery(
    exchanges: bool, moment: str, tmp_path: Path
) -> None:
    before = {"staged", "carried", "whole"}
    for n, second in enumerate((None, "settled", "cleared")):
        out = tmp_path / str(n)
        folder = _stand(out)
        assert killed_at(moment, partial(give, out, NEW, rake=12), exchanges=exchanges)
        if moment != "away":
            assert _state(folder) == ("old" if moment in before else "new")
        if second:
            killed_at(second, partial(_next_run, out))
        _next_run(out)
        assert _state(folder) == ("old" if moment in before else "new")
        assert sorted(p.name for p in out.iterdir()) == [NAME]


@pytest.mark.parametrize("exchanges", [True, False])
def test_killed_while_it_clears_away_leaves_nothing_of_the_old_tap(
    exchanges: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = _stand(tmp_path)

    def cut_short(place: Path, **_how: object) -> None:
        if (place / "record.json").exists():
            (place / "record.json").unlink()
            os.kill(os.getpid(), signal.SIGKILL)

    with monkeypatch.context() as halfway:
        halfway.setattr("tapmodel.run.delivery.recovery.shutil.rmtree", cut_short)
        assert killed_at("", lambda: give(tmp_path, NEW, rake=12), exchanges=exchanges)
    _next_run(tmp_path)
    assert _state(folder) == "new"
    assert [path.name for path in tmp_path.iterdir()] == [NAME]


def test_every_moment_of_a_first_delivery_leaves_nothing_or_all(tmp_path: Path) -> None:
    reached = 0
    for moment in MOMENTS:
        out = tmp_path / moment
        reached += killed_at(moment, partial(give, out, NEW, rake=12))
        _next_run(out)
        if (out / NAME).exists():
            assert content(out / NAME) == NEW == vouched(out / NAME)
        else:
            assert list(out.iterdir()) == []
    assert reached == 6  # neither exchanged nor away


def test_a_delivery_begins_with_ending_the_one_before(tmp_path: Path) -> None:
    folder = _stand(tmp_path)
    assert killed_at("away", lambda: give(tmp_path, NEW, rake=12), exchanges=False)
    assert not folder.exists()
    give(tmp_path, {"tap.xyz": "newest"}, rake=12)
    assert content(folder) == MINE | NEW | {"tap.xyz": "newest"}
    assert vouched(folder) == NEW | {"tap.xyz": "newest"}


@pytest.mark.parametrize("exchanges", [True, False])
def test_what_the_user_saves_while_folders_are_swapped_is_not_lost(
    exchanges: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder, swapped = _stand(tmp_path), swap.swap

    def meanwhile(work: Path, final: Path) -> None:
        (final / "late.txt").write_text("saved late")
        (final / "tap.glb").write_text("my own picture")
        swapped(work, final)

    monkeypatch.setattr("tapmodel.run.delivery.place.swap", meanwhile)
    if not exchanges:
        monkeypatch.setattr(swap, "exchange", lambda _one, _other: False)
    give(tmp_path, NEW, rake=12)
    late = {"late.txt": "saved late", "tap.kept-1.glb": "my own picture"}
    assert content(folder) == NEW | MINE | late


def test_two_runs_that_deliver_at_once_never_mix(tmp_path: Path) -> None:
    folder = _stand(tmp_path)

    def deliver_often(who: str) -> None:
        for n in range(12):
            give(tmp_path, {f"{who}-{n}.step": who, "tap.step": who}, rake=len(who))

    runs = [forked(partial(deliver_often, who)) for who in ("one", "other")]
    assert [os.waitpid(run, 0)[1] for run in runs] == [0, 0]
    found = content(folder)
    assert {name: found.pop(name) for name in MINE} == MINE
    assert found == vouched(folder)
    assert len(set(found.values())) == 1
    assert [path.name for path in tmp_path.iterdir()] == [NAME]


def test_the_system_swaps_two_folders_at_once_here(tmp_path: Path) -> None:
    one, other = tmp_path / "one", tmp_path / "other"
    one.mkdir()
    (other / "x").mkdir(parents=True)
    if not swap.exchange(one, other):
        pytest.skip("this system or file system cannot exchange two names")
    assert ((one / "x").exists(), (other / "x").exists()) == (True, False)
    assert not swap.exchange(one, tmp_path / "none")


def test_a_rename_that_fails_leaves_the_old_tap(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder, rename = _stand(tmp_path), os.rename
    monkeypatch.setattr(swap, "exchange", lambda _one, _other: False)
    renames = itertools.count()

    def fail(one: Path, other: Path) -> None:
        # The first makes it whole, the second puts the old one away, the third is to place it.
        if next(renames) == 2:
            raise OSError(5, "Input/output error")
        rename(one, other)

    monkeypatch.setattr("pathlib.os.rename", fail)
    with pytest.raises(Exception, match=r"--out.*Input/output error"):
        give(tmp_path, NEW, rake=12)
    assert _state(folder) == "old"
    assert list(tmp_path.iterdir()) == [folder]
