"""Keeping what was measured in the file beside a job: nothing that stands there is lost."""

import tomllib
from collections.abc import Collection, Iterator, Mapping
from datetime import datetime
from pathlib import Path
from typing import cast

import tomlkit
from tomlkit import TOMLDocument
from tomlkit.exceptions import TOMLKitError
from tomlkit.items import AoT, InlineTable, Table

from tapmodel.errors import InputError
from tapmodel.export.atomic import write_whole
from tapmodel.export.clock import stamp
from tapmodel.spec.measured.file import EARLIER, ON, VALUE, WIRE, measured_in
from tapmodel.spec.measured.record import Found
from tapmodel.spec.measured.sizes import Size, rivals

SIZE, UNTIL = "size", "until"
"""Keys of a reading that counts no more, beside those of one that does."""

_HEAD = (
    "Measured of {}; kept by `tapmodel measured`, and may be edited by hand.",
    'Lengths are mm, or texts with their unit: "0.7095in"; angles degrees, hardness Rockwell C.',
    "A reading that is replaced or taken back stands under [[earlier]].",
)


def keep(
    path: Path, name: str, given: Mapping[Size, Found], forgotten: Collection[Size] = ()
) -> None:
    """Write readings into the file, made if it is not there, whole or not at all.

    A reading of the same size, or of one that settles the same, goes to the list of the earlier
    ones, as do those that are forgotten. Comments and whatever else stands in the file stay.

    Args:
        path: of the file, which has been read before.
        name: of the tap, for a new file.
        given: readings to keep.
        forgotten: sizes to take back.

    Raises:
        InputError: when the file cannot be written, or cannot be edited by a program.
    """
    file = _opened(path, name)
    text = _laid_over(file, str(path), given, forgotten)
    write_whole(path, text.encode())


def kept_over(
    text: str, name: str, given: Mapping[Size, Found], forgotten: Collection[Size] = ()
) -> str:
    """What `keep` makes of a file that holds `text`, or of none where that is empty.

    Raises:
        InputError: a text that cannot be edited by a program.
    """
    return _laid_over(_parsed(text, _TEXT) if text else _new(name), _TEXT, given, forgotten)


_TEXT = "measured sizes"
"""What messages call a text without a file."""


def _laid_over(
    file: TOMLDocument, where: str, given: Mapping[Size, Found], forgotten: Collection[Size]
) -> str:
    now = stamp()
    leaving = {*forgotten, *given, *(other for size in given for other in rivals(size))}
    for size in (size for size in Size if size in leaving and size.value in file):
        _retire(file, where, size, now)
        if size not in given:
            file.remove(size.value)
    for size, found in given.items():
        _put(file, size, found, found.on or now)
    text = tomlkit.dumps(file)
    _refuse_unless_kept(where, text, given)
    return text


def _opened(path: Path, name: str) -> TOMLDocument:
    if path.exists():
        try:
            text = path.read_text(encoding="utf-8-sig")
        except (OSError, ValueError) as failure:
            raise InputError(str(path), str(failure), _EDITABLE) from None
        return _parsed(text, str(path))
    return _new(name)


_EDITABLE = "a TOML file that can be edited"


def _parsed(text: str, where: str) -> TOMLDocument:
    try:
        return tomlkit.parse(text)
    except (TOMLKitError, ValueError) as failure:
        raise InputError(where, str(failure), _EDITABLE) from None


def _new(name: str) -> TOMLDocument:
    file = tomlkit.document()
    for line in _HEAD:
        file.add(tomlkit.comment(line.format(name)))
    file.add(tomlkit.nl())
    return file


def _put(file: TOMLDocument, size: Size, found: Found, now: datetime) -> None:
    """Into the table that stands there, or as one on a line of its own."""
    entry = dict(_pairs(found, now))
    if size.value in file and isinstance(standing := file[size.value], Table | InlineTable):
        if WIRE in standing and WIRE not in entry:
            standing.remove(WIRE)
        for key, value in entry.items():
            standing[key] = value
        return
    line = tomlkit.inline_table()
    for key, value in entry.items():
        line[key] = value
    file[size.value] = line


def _pairs(found: Found, now: datetime) -> Iterator[tuple[str, object]]:
    yield VALUE, found.typed
    if found.wire is not None:
        yield WIRE, found.wire if found.wire_typed is None else found.wire_typed
    yield ON, now


def _retire(file: TOMLDocument, where: str, size: Size, now: datetime) -> None:
    """Write the reading that stands there down among the earlier ones."""
    held = file[size.value]
    plain = cast("object", held.unwrap() if hasattr(held, "unwrap") else held)
    entry = tomlkit.table()
    entry[SIZE] = size.value
    for key, value in _of_reading(plain):
        entry[key] = value
    entry[UNTIL] = now
    if EARLIER not in file:
        file.add(tomlkit.nl())
        file.add(EARLIER, tomlkit.aot())
    listed = file[EARLIER]
    if not isinstance(listed, AoT):
        allowed = "a list of tables, each under [[earlier]]"
        raise InputError(f"{where}: {EARLIER}", type(listed).__name__, allowed)
    listed.insert(len(listed), entry)


def _of_reading(held: object) -> Iterator[tuple[str, object]]:
    """A reading as it stands, be it a table or a value alone; whatever else is in the table too."""
    if isinstance(held, dict):
        yield from cast("dict[str, object]", held).items()
    else:
        yield VALUE, held


def _refuse_unless_kept(where: str, text: str, given: Mapping[Size, Found]) -> None:
    """Read what is to be written: the editor of such files is a library, and this may not fail."""
    back = measured_in(tomllib.loads(text), where)
    for size, found in given.items():
        read = back.get(size)
        if read is None or (read.number, read.wire) != (found.number, found.wire):
            allowed = f"{size} on a line of its own above all [tables] of the file"
            raise InputError(where, size.value, allowed)
