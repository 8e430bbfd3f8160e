"""A disk that fills at any size never ends with a torn file, and the message says that it is full.

A small file system is mounted where this process may; a file in it leaves the room wanted.
"""

import functools
import json
import os
import resource
import shutil
import subprocess
import sys
from collections.abc import Callable, Generator
from dataclasses import replace
from pathlib import Path

import pytest
from taps import NAME, content, give, record_of, vouched

from tapmodel.cli.commands.sheet import sheet as sheet_command
from tapmodel.designing.design import design_tap
from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.export import complete, manifest
from tapmodel.export.atomic import write_whole
from tapmodel.report.pictures.whole import three_quarter
from tapmodel.report.sheet import papers
from tapmodel.report.sheet import write as sheet
from tapmodel.run import preview
from tapmodel.run.delivery.place import deliver
from tapmodel.run.delivery.staging import staging
from tapmodel.run.glance import Glance
from tapmodel.run.record.compose import design_record
from tapmodel.spec.job_file import job_for
from tapmodel.stages import Stage

SIZE = 6000  # kB
PAGE = 4  # kB that the file system gives at a time
JOB = "M4x0.7"

Disk = Callable[[int], Path]


@pytest.fixture(scope="module")
def mounted(tmp_path_factory: pytest.TempPathFactory) -> Generator[Path]:
    place = tmp_path_factory.mktemp("disk")
    mount = shutil.which("mount")
    if mount is None:
        pytest.skip("a small file system cannot be mounted: no mount here")
    command = [mount, "-t", "tmpfs", "-o", f"size={SIZE}k", "tmpfs", str(place)]
    tried = subprocess.run(command, capture_output=True, text=True, check=False)
    if tried.returncode:
        pytest.skip(f"a small file system cannot be mounted: {tried.stderr.strip()}")
    try:
        yield place
    finally:
        if subprocess.run(["umount", str(place)], check=False).returncode:
            subprocess.run(["umount", "-l", str(place)], check=True)
            pytest.fail("a file of a delivery was left open")


@pytest.fixture
def disk(mounted: Path) -> Generator[Disk]:
    """Leaves so many kB free, and gives the folder for results."""
    out, filler = mounted / "out", mounted / "filler"

    def leave(free: int) -> Path:
        filler.unlink(missing_ok=True)
        filler.touch()
        room = os.statvfs(mounted)
        with filler.open("r+b") as stream:
            os.posix_fallocate(stream.fileno(), 0, room.f_bavail * room.f_bsize - free * 1024)
        return out

    yield leave
    filler.unlink(missing_ok=True)
    shutil.rmtree(out, ignore_errors=True)


def _is_whole(folder: Path) -> bool:
    record = json.loads((folder / "record.json").read_text())
    for file in record["files"]:
        path = complete.demand_complete(folder / file["path"])
        assert manifest.file_record(path, folder).sha256 == file["sha256"], path
    return True


def _ends(run: Callable[[], object]) -> bool:
    """Whether a run ended well; if not, it must have said that the disk is full."""
    try:
        run()
    except InputError as error:
        if error.field != "--out" or "the disk is full" not in error.allowed:
            raise
        return False
    return True


def _give_stubs(out: Path) -> None:
    with staging(out, NAME) as staged:
        for n in range(3):
            write_whole(staged / f"{n}.step", bytes([65 + n]) * 10_000)
        deliver(staged, out / NAME, record_of(9))


def test_at_every_page_the_old_tap_stands_or_the_new_one(disk: Disk) -> None:
    ended: list[bool] = []
    for free in range(0, 60, PAGE):
        out = disk(SIZE // 2)
        shutil.rmtree(out, ignore_errors=True)
        give(out, {"tap.step": "old"}, rake=8)
        out = disk(free)
        ended.append(_ends(functools.partial(_give_stubs, out)))
        assert len(content(out / NAME)) == (3 if ended[-1] else 1)
        assert content(out / NAME) == vouched(out / NAME)
        assert [path.name for path in out.iterdir()] == [NAME]
    # 3 files of 3 pages, the record and the owner file; names take no pages here.
    assert ended.index(True) == 11
    assert all(ended[11:])


def _only_once(monkeypatch: pytest.MonkeyPatch, owner: object, name: str) -> None:
    """Have something dear made once and given again and again."""
    real, made = getattr(owner, name), list[object]()

    def again(*of: object, **how: object) -> object:
        if not made:
            made.append(real(*of, **how))
        return made[0]

    monkeypatch.setattr(owner, name, again)


def test_a_sheet_is_whole_or_not_delivered(disk: Disk, monkeypatch: pytest.MonkeyPatch) -> None:
    _only_once(monkeypatch, papers, "all_drawings")
    _only_once(monkeypatch, sheet.typst, "compile")
    ended: list[bool] = []
    for free in range(0, 6000, 1000):
        out = disk(free)
        ended.append(_ends(functools.partial(sheet_command, JOB, out)))
        if ended[-1]:
            assert _is_whole(out / JOB)
            shutil.rmtree(out)
        else:
            assert not out.exists()
    assert ended == sorted(ended)
    # The files of a sheet take some 4 MB together.
    assert (ended[0], ended[-1]) == (False, True)


def _look(settled: TapDesign, out: Path) -> None:
    """A preview in this process."""
    with staging(out, settled.name) as staged:
        preview.draw(_Line(settled, staged))
        deliver(staged, out / settled.name, design_record(settled))


class _Line:
    """What a preview hears, and nobody to tell."""

    def __init__(self, design: TapDesign, folder: Path) -> None:
        self._order = Glance(design.tap, three_quarter(design), folder / design.name)

    def hear(self) -> Glance:
        return self._order

    def stage(self, _stage: Stage) -> None:
        pass

    def leave_out(self, _what: str, _why: str) -> None:
        pass


def test_a_picture_is_whole_or_not_delivered(disk: Disk, monkeypatch: pytest.MonkeyPatch) -> None:
    _only_once(monkeypatch, preview, "preview_mesh")
    _only_once(monkeypatch, preview, "drawn_views")
    monkeypatch.setattr(preview, "rehearse", lambda: None)
    folder = f"{JOB}-preview"
    settled = replace(design_tap(job_for(JOB)), name=folder)
    first = disk(SIZE // 2)
    _look(settled, first)
    sizes = [path.stat().st_size for path in (first / folder).glob(f"{JOB}*")]
    shutil.rmtree(first)
    ended: list[bool] = []
    for free in range(max(sizes) // 1024, sum(sizes) // 1024 + 60, 2 * PAGE):
        out = disk(free)
        ended.append(_ends(functools.partial(_look, settled, out)))
        if ended[-1]:
            assert _is_whole(out / folder)
            shutil.rmtree(out)
        else:
            assert not out.exists()
    assert ended == sorted(ended)
    assert (ended[0], ended[-1]) == (False, True)


def test_a_whole_build_on_a_full_disk_says_so_and_leaves_the_old_tap(disk: Disk) -> None:
    with staging(disk(SIZE // 2), JOB) as staged:
        write_whole(staged / "old.step", b"old")
        deliver(staged, staged.parents[1] / JOB, record_of(8, JOB))
    out = disk(300)  # less than the mesh alone takes
    command = [sys.executable, "-m", "tapmodel", "build", JOB, "--formats", "stl"]
    ended = subprocess.run(
        [*command, "--out", str(out)], capture_output=True, text=True, check=False
    )
    assert ended.returncode == 2, ended.stderr
    assert f"--out: '{out / JOB}" in ended.stderr
    assert "the disk is full" in ended.stderr
    assert content(out / JOB) == {"old.step": "old"} == vouched(out / JOB)
    assert [path.name for path in out.iterdir()] == [JOB]


@pytest.mark.parametrize("limit", [0, 4000, 9999, 10_000])
def test_a_file_that_the_user_may_not_make_so_large_is_no_torn_file(
    limit: int, tmp_path: Path
) -> None:
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (limit, hard))
    try:
        ended = _ends(functools.partial(_give_stubs, tmp_path / "out"))
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
    assert ended == (limit == 10_000)
    if ended:
        assert len(vouched(tmp_path / "out" / NAME)) == 3
    else:
        assert list(tmp_path.iterdir()) == []
