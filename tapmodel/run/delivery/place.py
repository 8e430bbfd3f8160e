"""Finished files put in their place: the only way by which a tap reaches its folder."""

import contextlib
import json
import stat
from dataclasses import asdict
from pathlib import Path
from typing import Any

from tapmodel.export.atomic import sync, write_whole
from tapmodel.export.clock import stamp
from tapmodel.export.complete import demand_complete
from tapmodel.export.manifest import file_record
from tapmodel.export.refusal import refused
from tapmodel.export.renaming import rename
from tapmodel.run.delivery import moments
from tapmodel.run.delivery.carry import carry
from tapmodel.run.delivery.fate import FATE
from tapmodel.run.delivery.folder import RECORD, entries
from tapmodel.run.delivery.locks import alone
from tapmodel.run.delivery.recovery import recover, settle
from tapmodel.run.delivery.swap import WHOLE, swap, undisturbed
from tapmodel.run.record.parts import filed


def deliver(staged: Path, final: Path, record: dict[str, Any]) -> dict[str, Any]:
    """Put the files of a staging folder in place of a folder, which then holds one tap.

    The folder is swapped as a whole: it is the old one or the new one, whatever ends this process.
    See `carry.carry` for what stays of the old one.

    Args:
        staged: the folder that `staging` gave, with all files in it.
        final: where they are to be, beside the staging folder.
        record: of the tap, with or without a model; delivery adds when it was made and all files.

    Returns:
        The record as it stands in the folder, and what is told but not filed (see
        `record.filed`), with `delivery`: the files `written`; when the tap was made that was
        `replaced`, if there was another; the user's files that were `kept` under another name.

    Raises:
        InputError: when the system refuses; then nothing has changed.
        KernelError: when a new file is not whole.
    """
    work = staged.parent
    try:
        with alone(final.parent) as sure:
            recover(final.parent, final.name, alone=sure)
            told = _completed(staged, final, record)
            moments.passed("carried")
            with undisturbed(lambda: _say_delivered(final)):
                _place(work, staged, final)
                # The tap stands; what cannot be cleared away now is left to the next run.
                with contextlib.suppress(OSError):
                    settle(work, final)
    except OSError as error:
        place = "a folder that can be written"
        if isinstance(error, PermissionError):
            place += ", of which no program has a file open"
        raise refused("--out", final, place, error) from error
    return told


def _place(work: Path, staged: Path, final: Path) -> None:
    whole = work / WHOLE
    rename(staged, whole)
    sync(work)
    moments.passed("whole")
    try:
        swap(work, final)
    except OSError:
        rename(whole, staged)
        raise


def _say_delivered(final: Path) -> None:
    FATE.words = f"{final} was delivered"


def _completed(staged: Path, final: Path, record: dict[str, Any]) -> dict[str, Any]:
    """Check the new files, bring over what stays, and write the record."""
    made = [asdict(file_record(demand_complete(staged / e), staged)) for e in entries(staged)]
    carried = carry(final, staged, record)
    files = sorted([*made, *carried.files], key=lambda file: file["path"])
    told = carried.record | record | {"made": stamp().isoformat(), "files": files}
    if final.is_dir():
        staged.chmod(stat.S_IMODE(final.stat().st_mode))
    text = json.dumps(filed(told), indent=1, allow_nan=False)
    write_whole(staged / RECORD, (text + "\n").encode())
    for folder in {(staged / file["path"]).parent for file in files}:
        sync(folder)
    written = sorted(file["path"] for file in made)
    delivery = {"written": written, "replaced": carried.replaced, "kept": carried.kept}
    return told | {"delivery": delivery}
