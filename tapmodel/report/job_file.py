"""The commented job file: what was asked for and the usual edits; all else with its reason."""

import json
import textwrap
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import tomlkit
from tomlkit import TOMLDocument
from tomlkit.items import Item, Table

from tapmodel.designing.choice import Choice
from tapmodel.designing.record import TapDesign
from tapmodel.report.job_lengths import TOOLS, in_inches, tool_size, typed_in_inches
from tapmodel.report.look_wanted import look_of
from tapmodel.report.units_wanted import units_of
from tapmodel.report.words.choices import source_text, why
from tapmodel.shop.dividing import PLATES, PLATES_SOURCE, RATIO
from tapmodel.sources import Source
from tapmodel.spec.job import Job, field_descriptions, field_names, unit_of
from tapmodel.spec.lengths import millimetres_of
from tapmodel.spec.overrides import apply_values, rivals
from tapmodel.spec.shop_file import FIELD as POINTER
from tapmodel.spec.shop_file import pointer_from, shop_values
from tapmodel.spec.units import Unit
from tapmodel.words import Units

_Open = TOMLDocument | Table
"""What lines can be added to."""

WIDTH = 96

_LONGEST_LIST, _INDENT = 84, "  "
"""Letters of a list that stands on the line of its key; white before those that it else takes."""

HEADER = """\
Job file of one tap. A bare number is a length in mm, whatever units the papers have; a text
with its unit, such as "1/4in", stands as it is typed. Angles in degrees.
Build it with: tapmodel build THIS-FILE
Lines without # are in force: what was asked for, and the usual edits with what a rule chose.
Change a value and build again; put # before a line, and its rule chooses.
Lines "# key = value" are chosen by rules, and anew whenever what they look at has changed. To
settle one yourself, take its # away and put one before the line that it stands "instead of"; of
two that settle the same thing set one. A file with both is refused.
Lines "# key =" hold nothing: no rule looks for a value there, but you may set one.
So another pitch or another number of flutes is one edit. For another size or form of thread look
at the usual edits again: number of flutes, chamfer, reliefs and cutters stay as they stand here.\
"""

USUAL_EDITS = (
    "hole.kind",
    "thread.aim",
    "chamfer.form",
    "flutes.count",
    "flutes.land_share",
    "relief.thread.kind",
    "relief.thread.applies_to",
    "relief.chamfer.kind",
    "shop.cutters",
    "shop.drills",
    "shop.plates",
    "shop.dividing_ratio",
)
"""What a toolmaker changes from one tap of a size to the next, and what he has on hand.

In force in the file though a rule chose it. A drill, a thread's length, a shank or a square is
changed as often, but follows from pitch, number of flutes, diameter or another length: in force
here, such a value would no longer move with it, so it stands as a comment. So does the rake, which
follows the material of the hole.
"""

ON_HAND: Mapping[str, tuple[list[str] | list[int] | int, Source]] = {
    "shop.plates": (list(PLATES), PLATES_SOURCE),
    "shop.dividing_ratio": (RATIO, PLATES_SOURCE),
}
"""Usual edits that are no choice of a design: what is taken where a job says nothing."""

REPLACES = {
    "units": "the rule: both for a size told in inches, else mm",
    "flutes.cutter_diameter": "the choice from shop.cutters",
    "name": "the designation, which names the files by rule",
}
"""What a value would stand instead of, where that is no line in force."""

EXAMPLES = {
    "hole.engagement": "70",
    "tap.material": '"silver steel"',
    "tap.temper": "230",
    "tap.hardness": "61",
    "shop.wires": '[0.5, "0.032in"]',
    "shop.leadscrew": '"8tpi"',
    "shop.gears": "[20, 30, 40, 40, 127]",
    "shop.cross_slide": '"0.02mm, 4mm a turn, on diameter"',
    "shop.top_slide": '"0.02mm, 2mm a turn"',
    "shop.mill": '"0.02mm, 4mm a turn; down 0.02mm, 2mm a turn"',
    "shop.rotary_table": '"90, 2min"',
    "shop.relief_by": '"centres"',
    "shop.wheels": '[150, "4in", 10]',
    "shop.offset_step": "0.05",
    "shop.indicator_step": "0.01",
    "shop.file": '"shop.toml"',
    "shop.furnace": "1000",
    "shop.steels": '["O1", "W1"]',
    "shop.mill_control": '"cnc"',
    "shop.index": '"by hand"',
    "shop.rate": "45",
}
"""What fields may hold in which no rule puts anything."""


def commented_job(job: Job, design: TapDesign, folder: Path = Path()) -> str:
    """The text of a job file that asks for exactly this `design`.

    Reading it back and designing gives the same numbers; the `USUAL_EDITS` then count as given.
    Where the job points to a file of the shop, that pointer is in force and what the file says is
    not: it stands as a comment.

    Args:
        job: that the design was made of.
        design: every number of the tap.
        folder: where the file is to lie, by which its pointer goes.
    """
    units = units_of(job)
    inch = units is Units.INCH
    held = _held(job)
    live = _pointing(_live(job, design, inch=inch), job, held, folder)
    table = apply_values({}, [(field, item.unwrap()) for field, item in live.items()])
    following = _following(design, inch=inch) | _look(job)
    file = tomlkit.document()
    for line in HEADER.splitlines():
        file.add(tomlkit.comment(line))
    tables: dict[str, _Open] = {"": file}
    last: _Open = file
    for field in field_names():
        choice = design.choice(field)
        chosen = None if choice is None else _item(choice, inch=inch)
        line = "" if field in live else _line(field, chosen, following, table, units)
        section, _, key = field.rpartition(".")
        if section not in tables:
            last.add(tomlkit.nl())
        last = _table(tables, section)
        told = _comment(field, choice, job, units)
        if field in held:
            told = f"{field_descriptions()[field]}; as {POINTER} has it"
            line = f"{key} = {tomlkit.item(job.typed()[field]).as_string()}"
        _write(_Entry(key, told, live.get(field), line), last)
    return tomlkit.dumps(file)


def _look(job: Job) -> dict[str, str]:
    """How the papers look where the job says nothing, as TOML."""
    look = look_of(job)
    looks = {"units": look.units, "report.paper": look.paper, "report.projection": look.projection}
    return {field: f'"{word}"' for field, word in looks.items()}


def _pointing(
    live: Mapping[str, Item], job: Job, held: frozenset[str], folder: Path
) -> dict[str, Item]:
    """What is in force where the job points to a file of the shop: of the shop only its own words.

    What else a rule takes of the shop would stand against a line that the file gets later.
    """
    if not job.shop.file:
        return dict(live)
    own = job.given().keys() - held
    kept = {f: item for f, item in live.items() if not f.startswith("shop.") or f in own}
    return kept | {POINTER: tomlkit.item(pointer_from(job.shop.file, folder))}


def _held(job: Job) -> frozenset[str]:
    """Fields for which the file of the shop says what the job says; none without a file."""
    if not job.shop.file:
        return frozenset()
    given = job.given()
    values = shop_values(Path(job.shop.file))
    return frozenset(field for field, value in values.items() if given.get(field) == value)


@dataclass(frozen=True, slots=True)
class _Entry:
    """A field of the file.

    Attributes:
        key: its name in its table.
        comment: above it.
        value: in force, None when a rule chooses it.
        line: what a rule chose, as a comment.
    """

    key: str
    comment: str
    value: Item | None
    line: str = ""


def _live(job: Job, design: TapDesign, *, inch: bool) -> dict[str, Item]:
    """What the file sets: what the job gave, and the usual edits with what a rule chose."""
    live = {"designation": tomlkit.item(job.designation)}
    live |= {field: tomlkit.item(value) for field, value in job.typed().items()}
    for field in USUAL_EDITS:
        choice = design.choice(field)
        if field in live:
            continue
        if choice is not None:
            live[field] = _item(choice, inch=inch)
        elif field in ON_HAND:
            live[field] = tomlkit.item(ON_HAND[field][0])
    return live


def _comment(field: str, choice: Choice | None, job: Job, units: Units) -> str:
    """What a field means, why it has its value, and who says so."""
    told = field_descriptions()[field]
    if units is Units.INCH:
        told = told.replace(" [mm]", " [mm if bare]")
    if choice is not None:
        reason = why(choice, units)
        return f"{told}; {reason} -- {source_text(choice)}"
    if field in ON_HAND and field not in job.given():
        return f"{told}; what a small shop is likely to have -- {ON_HAND[field][1]}"
    return told


def _line(
    field: str,
    chosen: Item | None,
    following: Mapping[str, str],
    table: Mapping[str, object],
    units: Units,
) -> str:
    """A value that a rule chose or that follows, as a line to be put in force; else an example.

    For a reader of both units a length stands behind it in the other one.
    """
    if chosen is not None:
        text, meant = chosen.as_string(), chosen.unwrap()
    elif field in following:
        text = following[field]
        meant = text.strip('"')
    else:
        example = EXAMPLES.get(field, "")
        return f"{field.rpartition('.')[2]} =  # such as {example}" if example else ""
    section, _, key = field.rpartition(".")
    against = [name.removeprefix(f"{section}.") for name in rivals(field, meant, table)]
    instead = " or ".join(against) or REPLACES.get(field, "")
    told = units is Units.BOTH and unit_of(field) is Unit.MM
    notes = [_in_other_unit(str(meant))] if told else []
    notes += [f"instead of {instead}"] if instead else []
    behind = "; ".join(note for note in notes if note)
    return f"{key} = {text}" + (f"  # {behind}" if behind else "")


def _in_other_unit(text: str) -> str:
    """A length that stands in a job, in the unit in which it does not; nothing for none."""
    mm = millimetres_of(text)
    if not mm:
        return ""
    if text.endswith("in"):
        return f"= {mm:.6g} mm"
    return f"= {in_inches(mm, 5).removesuffix('in')} in"


def _item(choice: Choice, *, inch: bool) -> Item:
    """A value that was chosen, as TOML; a whole number in a list stands there without its .0.

    A length is a text with its unit in a job for a reader of inches; a drill or a cutter, alone or
    in a list that a rule takes, is told in the unit that it is sold in.
    """
    value = choice.value
    sold = tool_size(value) if choice.field in TOOLS and isinstance(value, float) else ""
    if sold.endswith("in") and millimetres_of(sold) == value:
        return tomlkit.item(sold)
    if not isinstance(value, tuple):
        in_unit = inch and choice.unit is Unit.MM
        return tomlkit.item(typed_in_inches(choice.field, float(value)) if in_unit else value)
    entries = [_short(entry) if isinstance(entry, float) else entry for entry in value]
    flowing = tomlkit.item(entries)
    if len(flowing.as_string()) <= _LONGEST_LIST:
        return flowing
    lines = textwrap.wrap(", ".join(json.dumps(entry) for entry in entries), WIDTH - len(_INDENT))
    return tomlkit.value("[\n" + "".join(f"{_INDENT}{line}\n" for line in lines) + "]")


def _short(size: float) -> str | int | float:
    """Size of a tool [mm]: a bare number where it is sold so, a whole one without its .0."""
    sold = tool_size(size)
    if sold.endswith("in"):
        return sold
    return int(size) if size.is_integer() else size


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
        table.add(tomlkit.comment(entry.line or f"{entry.key} ="))
    else:
        table.add(entry.key, entry.value)


def _following(design: TapDesign, *, inch: bool = False) -> dict[str, str]:
    """Values that follow from others, rounded for reading, as TOML."""
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
        "chamfer.pitches": design.figures.chamfer_leads,
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
        field: f'"{in_inches(value, 5)}"' if inch and unit_of(field) is Unit.MM else f"{value:.4f}"
        for field, value in numbers.items()
        if value or not field.startswith(("relief.", "thread.crest_"))
    }
    words = {"name": tomlkit.item(design.name).as_string(), "blank.shank_must_pass": "false"}
    return texts | words
