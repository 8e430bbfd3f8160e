"""The commented job file: every value that was chosen, why, and what follows from it."""

import textwrap
from collections.abc import Mapping
from dataclasses import dataclass

import tomlkit
from tomlkit import TOMLDocument
from tomlkit.items import Item, Table

from tapmodel.designing.choice import Choice, Settled
from tapmodel.designing.record import TapDesign
from tapmodel.report.words.choices import source_text, why
from tapmodel.spec.job import Job, field_descriptions, field_names

_Open = TOMLDocument | Table
"""What lines can be added to."""

WIDTH = 96

HEADER = """\
Job file of one tap: lengths in mm, angles in degrees. Build it with: tapmodel build THIS-FILE
Lines without # are in force, whatever rule first chose them; change a value and build again.
Take a line out, or put # before it, and its rule chooses anew from the other values.
Lines "# key = value" follow from the others. To settle one yourself, take its # away and take
out the line that it replaces (named beside it); a file with both is refused.
For another thread write a new file: sizes that fit this thread would stay in force here.\
"""

INSTEAD = {
    "thread.pitch_diameter": "aim",
    "thread.crest_flat": "major",
    "thread.crest_radius": "major",
    "thread.aim": "pitch_diameter",
    "thread.major": "crest_flat or crest_radius",
    "chamfer.form": "the other lengths",
    "chamfer.pitches": "form or the other lengths",
    "chamfer.length": "form or the other lengths",
    "chamfer.angle": "point_diameter or the lengths",
    "chamfer.point_diameter": "angle or the lengths",
    "flutes.cutter_diameter": "the choice from shop.cutters",
    "flutes.rake": "offset",
    "flutes.offset": "rake",
    "flutes.core_diameter": "depth_from_top",
    "flutes.depth_from_top": "core_diameter",
    "relief.thread.edge_angle": "heel_drop",
    "relief.thread.heel_drop": "edge_angle",
    "relief.chamfer.edge_angle": "heel_drop",
    "relief.chamfer.heel_drop": "edge_angle",
    "blank.square_length": "square_start",
    "blank.square_start": "square_length",
    "name": "the designation, which names the files by rule",
}
"""What a value that follows would replace, were it set."""

CHOSEN_ANEW = "flutes.cutter_diameter"
"""Written as following when a rule chose it, so that the cutters on hand keep deciding."""


def commented_job(job: Job, design: TapDesign) -> str:
    """The text of a job file that asks for exactly this `design`.

    Reading it back and designing gives the same numbers; only the choices then count as given.
    """
    settled = job.given() | {"designation": job.designation}
    following = _following(design)
    entries = [_entry(field, design.choice(field), settled, following) for field in field_names()]
    file = tomlkit.document()
    for line in HEADER.splitlines():
        file.add(tomlkit.comment(line))
    tables: dict[str, _Open] = {"": file}
    last: _Open = file
    for entry in filter(None, entries):
        if entry.section not in tables:
            last.add(tomlkit.nl())
        last = _table(tables, entry.section)
        _write(entry, last)
    return tomlkit.dumps(file)


@dataclass(frozen=True, slots=True)
class _Entry:
    """A field of the file.

    Attributes:
        section: its table, dotted; "" for none.
        key: its name there.
        comment: above it.
        value: in force, None when it follows from others.
        line: what follows, as a comment.
    """

    section: str
    key: str
    comment: str
    value: Item | None
    line: str = ""


def _entry(
    field: str,
    choice: Choice | None,
    settled: Mapping[str, object],
    following: Mapping[str, str],
) -> _Entry | None:
    section, _, key = field.rpartition(".")
    told = field_descriptions()[field]
    if choice is not None:
        told += f"; {why(choice)}"
    value = _in_force(field, choice, settled)
    if value is not None:
        return _Entry(section, key, f"{told} -- {source_text(choice)}" if choice else told, value)
    if field not in following:
        return None
    instead = f"  # instead of {INSTEAD[field]}" if field in INSTEAD else ""
    return _Entry(section, key, told, None, f"{key} = {following[field]}{instead}")


def _in_force(field: str, choice: Choice | None, settled: Mapping[str, object]) -> Item | None:
    """What the file sets: what the job gave, else what a rule chose and the file is to keep."""
    if field in settled:
        return tomlkit.item(settled[field])
    if choice is None or field == CHOSEN_ANEW:
        return None
    return _item(choice.value)


def _item(value: Settled) -> Item:
    """A value that was chosen, as TOML; a whole number in a list stands there without its .0."""
    if not isinstance(value, tuple):
        return tomlkit.item(value)
    short = [
        int(entry) if isinstance(entry, float) and entry.is_integer() else entry for entry in value
    ]
    return tomlkit.item(short)


def _table(tables: dict[str, _Open], section: str, *, bare: bool = False) -> _Open:
    """The table of a dotted section, opened where it is new; a bare one holds only tables."""
    if section not in tables:
        above, _, name = section.rpartition(".")
        opened = tomlkit.table(is_super_table=bare)
        _table(tables, above, bare=True).add(name, opened)
        tables[section] = opened
    return tables[section]


def _write(entry: _Entry, table: _Open) -> None:
    """An entry under its comment, after an empty line."""
    table.add(tomlkit.nl())
    for line in textwrap.wrap(entry.comment, WIDTH - len("# "), subsequent_indent="  "):
        table.add(tomlkit.comment(line))
    if entry.value is None:
        table.add(tomlkit.comment(entry.line))
    else:
        table.add(entry.key, entry.value)


def _following(design: TapDesign) -> dict[str, str]:
    """Values that follow from others, rounded for reading."""
    thread, chamfer, flutes, blank = (
        design.tap.thread,
        design.tap.chamfer,
        design.tap.flutes,
        design.tap.blank,
    )
    numbers = {
        "thread.pitch_diameter": thread.pitch_diameter,
        "thread.major": thread.major,
        "thread.crest_flat": thread.crest_flat,
        "thread.crest_radius": thread.crest_radius,
        "chamfer.pitches": design.figures.chamfer_pitches,
        "chamfer.length": design.tap.chamfer_length,
        "chamfer.angle": chamfer.angle,
        "chamfer.point_diameter": chamfer.point_diameter,
        "flutes.cutter_diameter": flutes.cutter_diameter,
        "flutes.rake": design.figures.rake_crest,
        "flutes.offset": flutes.offset,
        "flutes.core_diameter": flutes.core_diameter,
        "flutes.depth_from_top": design.figures.depth_from_top,
        "relief.thread.edge_angle": design.figures.thread_relief.edge_angle,
        "relief.thread.heel_drop": design.figures.thread_relief.heel_drop,
        "relief.chamfer.edge_angle": design.figures.chamfer_relief.edge_angle,
        "relief.chamfer.heel_drop": design.figures.chamfer_relief.heel_drop,
        "blank.square_length": blank.square_length,
        "blank.square_start": blank.square_start,
    }
    # 0 stands for "does not apply" in a relief and a crest, and is no value that a job may give.
    texts = {
        field: f"{value:.4f}"
        for field, value in numbers.items()
        if value or not field.startswith(("relief.", "thread.crest_"))
    }
    words = {"name": tomlkit.item(design.name).as_string(), "blank.shank_must_pass": "false"}
    return texts | words
