"""The record as a file that other programs read, of this version and the one before."""

import json
from pathlib import Path
from typing import Any

import pytest

import tapmodel
from tapmodel.run.record.model import SCHEMA
from tapmodel.run.record.read import json_schema, record_of

# What versions 2 to 5 added, by the path to it.
ADDED = {
    (): ("version", "prediction"),
    ("thread",): ("rounded_crest", "rounded_root", "major_max"),
    ("choices", "*"): ("number", "unit"),
    ("blank",): ("full_thread_depth",),
    ("findings", "*"): ("field", "value", "low", "high", "unit"),
}


@pytest.fixture(scope="module")
def record() -> dict[str, Any]:
    # A broken rule, so that a cure stands in it.
    return tapmodel.design("M10", {"flutes.cutter_diameter": 9}).record()


def _at(table: Any, path: tuple[str, ...]) -> list[dict[str, Any]]:  # noqa: ANN401  (any JSON)
    if not path:
        return [table]
    inner = table if path[0] == "*" else [table[path[0]]]
    return [found for each in inner for found in _at(each, path[1:])]


def _as_before(record: dict[str, Any]) -> dict[str, Any]:
    """The record as version 1 wrote it."""
    old = json.loads(json.dumps(record)) | {"schema": "tapmodel.record/1"}
    for path, names in ADDED.items():
        for table in _at(old, path):
            for name in names:
                del table[name]
    return old


def test_it_says_version_and_program(record: dict[str, Any]) -> None:
    assert record["schema"] == SCHEMA == "tapmodel.record/5"
    assert record["version"] == tapmodel.__version__


def test_a_file_is_read_back_as_it_was_written(record: dict[str, Any], tmp_path: Path) -> None:
    file = tmp_path / "record.json"
    file.write_text(json.dumps(record))
    read = tapmodel.read_record(file)
    assert read.flutes.cutter_diameter == 9
    assert read.model_dump(mode="json", by_alias=True, exclude_unset=True) == record
    assert any(finding.cures for finding in read.findings)


def test_the_version_before_is_read_under_the_same_names(record: dict[str, Any]) -> None:
    old = record_of(_as_before(record), "old")
    new = record_of(record, "new")
    added = set(ADDED["thread",])
    assert old.thread.model_dump(exclude=added) == new.thread.model_dump(exclude=added)
    assert [choice.value for choice in old.choices] == [choice.value for choice in new.choices]
    assert (old.version, old.thread.rounded_crest) == ("", None)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"schema": "tapmodel.record/6"}, "file: schema: 'tapmodel.record/6'"),
        ({"drill": "thick"}, "file: drill: 'thick'"),
        ({"surprise": 1}, "file: surprise: 1"),
    ],
)
def test_what_is_no_record_is_named(
    record: dict[str, Any], change: dict[str, object], words: str
) -> None:
    with pytest.raises(tapmodel.InputError) as refused:
        record_of(record | change, "file")
    assert str(refused.value).startswith(words)


def test_a_file_that_is_none_is_named(tmp_path: Path) -> None:
    with pytest.raises(tapmodel.InputError, match="a file to read"):
        tapmodel.read_record(tmp_path / "none.json")
    (tmp_path / "text.json").write_text("no JSON")
    with pytest.raises(tapmodel.InputError, match="a record in JSON"):
        tapmodel.read_record(tmp_path / "text.json")


def test_a_back_taper_is_told_where_there_is_one(record: dict[str, Any]) -> None:
    """Left out where there is none, so that such a tap's record is what it was."""
    tapered = tapmodel.design("M10", {"thread.back_taper": 0.1}).record()
    none = tapmodel.design("M10", {"thread.back_taper": 0}).record()
    plain = tapmodel.design("M10").record()
    assert tapered["thread"]["back_taper"] == 0.1
    assert set(tapered["thread"]) - set(record["thread"]) == {"back_taper"}
    rubbing = tapered["prediction"]["rubbing"]
    assert rubbing["flank_clears_each_turn_um"] == pytest.approx(0.375)
    assert rubbing["flank_clears_at_end_um"] == pytest.approx(4.5)
    assert set(rubbing) - set(plain["prediction"]["rubbing"]) == {
        "flank_clears_each_turn_um",
        "flank_clears_at_end_um",
    }
    choice = next(each for each in none["choices"] if each["field"] == "thread.back_taper")
    assert choice["given"]
    none["choices"].remove(choice)
    assert none == plain


def test_the_schema_names_every_key_and_its_unit(record: dict[str, Any]) -> None:
    schema = json_schema()
    assert set(record) <= set(schema["properties"])
    thread = schema["$defs"]["Thread"]["properties"]
    tapered = tapmodel.design("M10", {"thread.back_taper": 0.1}).record()
    assert set(tapered["thread"]) == set(thread)
    assert thread["pitch"]["unit"] == "mm"
    assert schema["$defs"]["Flutes"]["properties"]["area"]["unit"] == "mm²"
