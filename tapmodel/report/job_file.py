"""The commented job file: every value that was chosen, why, and what follows from it."""

import json
import textwrap
from itertools import groupby

from tapmodel.design.record import Choice, TapDesign
from tapmodel.spec.job import Job, field_descriptions

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
    lines = textwrap.indent(HEADER, "# ").splitlines()
    choices = {choice.field: choice for choice in design.choices}
    settled = job.given() | {"designation": job.designation}
    for section, fields in groupby(field_descriptions(), key=_section):
        entries = [_entry(field, choices, settled, design) for field in fields]
        written = [line for entry in entries if entry for line in ("", *entry)]
        if written:
            lines += ["", f"[{section}]", *written] if section else written
    return "\n".join(lines) + "\n"


def _section(field: str) -> str:
    return field.rpartition(".")[0]


def _entry(
    field: str, choices: dict[str, Choice], settled: dict[str, object], design: TapDesign
) -> list[str]:
    key = field.rpartition(".")[2]
    choice = choices.get(field)
    if field in settled:
        return [*_comment(field, choice), f"{key} = {_toml(settled[field])}"]
    if choice is not None and field != CHOSEN_ANEW:
        return [*_comment(field, choice), f"{key} = {_toml_text(choice.value)}"]
    following = _following(design).get(field)
    if following is None:
        return []
    why = f"; {choice.why}" if choice is not None else ""
    instead = f"  # instead of {INSTEAD[field]}" if field in INSTEAD else ""
    return [*_wrapped(field_descriptions()[field] + why), f"# {key} = {following}{instead}"]


def _comment(field: str, choice: Choice | None) -> list[str]:
    text = field_descriptions()[field]
    if choice is not None:
        text += f"; {choice.why} -- {choice.source}"
    return _wrapped(text)


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent="# ", subsequent_indent="#   ")


def _toml_text(value: str) -> str:
    """A choice's text as TOML: a number without its unit, a list, or a quoted word."""
    if ", " in value:
        return f"[{value.rsplit(' ', 1)[0]}]"
    first = value.split(maxsplit=1)[0]
    try:
        float(first)
    except ValueError:
        return json.dumps(value)
    return first


def _toml(value: object) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False)
    return repr(value)


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
    words = {"name": json.dumps(design.name), "blank.shank_must_pass": "false"}
    return texts | words
