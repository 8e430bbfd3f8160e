"""Jobs drawn at random that break rules on purpose, each by its seed; every rule gets its turn."""

import random
import sys
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from random_jobs import in_mm, random_job

from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settled_as_mm
from tapmodel.errors import InputError, NoTapError
from tapmodel.run.record.compose import design_record
from tapmodel.spec.job_file import checked
from tapmodel.spec.overrides import apply_values

Job = dict[str, Any]

SIZES = ("M10", "M6", "M18x0.75", "M2", "M30x2", "Tr16x4", "1/2-13 UNC", "G 1/4", "1/2 BSW", "4 BA")

# Fields with the place of their value in the design; most rules are broken by scaling one.
SCALED = (
    *("thread.major", "thread.pitch_diameter", "thread.root_flat", "thread.crest_flat"),
    *("chamfer.length", "chamfer.point_diameter", "chamfer.angle"),
    *("flutes.core_diameter", "flutes.cutter_diameter", "flutes.depth_from_top"),
    *("flutes.full_depth_length", "relief.thread.heel_drop", "relief.chamfer.heel_drop"),
    *("relief.thread.margin_angle", "relief.chamfer.edge_angle"),
    *("blank.overall_length", "blank.thread_length", "blank.neck_diameter", "blank.neck_length"),
    *("blank.shoulder_angle", "blank.shank_diameter", "blank.square_across_flats"),
    *("blank.square_length", "blank.square_start", "blank.rear_chamfer", "blank.rear_centre"),
    "hole.drill",
)
SPAN = {"thread.major": 1.15, "thread.pitch_diameter": 1.1, "hole.drill": 1.2}
SPECIAL: tuple[Job, ...] = (
    {"blank.front_centre": 1e-4},
    {"blank.front_centre": 0.9},
    {"blank.rear_chamfer": 1e-5},
    {"blank.rear_centre": 1e-4},
    {"blank.neck_length": 1e-6, "blank.neck_diameter": 0.7},
    {"flutes.cutter_diameter": 0.01},
    {"relief.thread.kind": "con-eccentric", "relief.thread.margin_angle": 0.05},
    {"relief.thread.kind": "eccentric", "relief.thread.edge_angle": 12.0},
    {"relief.thread.kind": "eccentric", "relief.thread.edge_angle": 25.0},
    {"relief.thread.applies_to": "thread", "relief.thread.heel_drop": 0.11},
    {"relief.thread.kind": "con-eccentric", "relief.thread.margin_angle": 80.0},
    {"relief.chamfer.heel_drop": 0.21},
    {"relief.chamfer.kind": "concentric"},
    {"flutes.count": 2, "flutes.core_diameter": 0.12},
    {"flutes.count": 8},
    {"flutes.count": 8, "flutes.cutter_diameter": 0.4},
    {"flutes.count": 6, "flutes.cutter_diameter": 0.45},
    {"hole.engagement": 45.0},
    {"flutes.cutter_diameter": 0.5},
    {"flutes.rake": 31.0},
    {"flutes.rake": -29.0},
    {"flutes.offset": 0.45},
    {"flutes.offset": -0.6},
    {"flutes.offset": 0.0, "flutes.depth_from_top": 0.1, "flutes.cutter_diameter": 0.4},
    {"flutes.depth_from_top": 0.8},
    {"blank.shank_must_pass": True, "blank.shank_diameter": 1.0},
    {"thread.root_flat": 0.006},
    {"thread.root_radius": 0.0005},
    {"thread.crest_radius": 0.0003},
    {"relief.thread.applies_to": "crest", "thread.crest_radius": 0.005},
    {"flutes.offset": 0.42, "flutes.cutter_diameter": 0.3, "flutes.core_diameter": 0.7},
    {"flutes.count": 2, "flutes.rake": -20.0, "relief.chamfer.edge_angle": 14.12}
    | {"flutes.cutter_diameter": 0.15},
    {"blank.neck_diameter": 0.555, "blank.neck_length": 3.8}
    | {"blank.shoulder_angle": 75.0, "blank.shank_diameter": 0.994},
    {"blank.thread_length": 240.0},
    {"blank.overall_length": 900.0},
    {"blank.shank_diameter": 1.9},
    {"blank.square_length": 40.0},
    {"hole.depth": 160.0},
    {"chamfer.angle": 0.5},
    {"chamfer.angle": 70.0},
    {"chamfer.pitches": 0.7},
    {"chamfer.form": "bottoming", "flutes.count": 2},
    {"chamfer.pitches": 2.4, "flutes.count": 2},
    {"chamfer.pitches": 25.0, "flutes.count": 6},
    {"flutes.cutter_diameter": 0.2, "flutes.count": 3},
    {"relief.thread.kind": "concentric", "flutes.cutter_diameter": 0.2},
    {"relief.thread.applies_to": "thread", "relief.thread.margin_angle": 52.0}
    | {"flutes.cutter_diameter": 0.2, "flutes.count": 3},
)
"""Values of lengths are shares of the nominal diameter where that is what breaks the rule."""

SHARES = ("cutter_diameter", "core_diameter", "offset", "depth_from_top", "heel_drop")
SHARED = (*SHARES, "shank_diameter", "neck_diameter", "root_flat", "root_radius", "crest_radius")


def broken_job(seed: int) -> Job:
    """A job table with one or two values moved far out, whatever becomes of it."""
    chance = random.Random(seed)  # noqa: S311  (repeatable on purpose)
    table = random_job(seed) if chance.random() < 0.4 else {"designation": chance.choice(SIZES)}
    try:
        design = settled_as_mm(checked(table))
    except (InputError, NoTapError):
        return in_mm(table)
    if chance.random() < 0.35:
        pairs = tuple(_scaled(chance.choice(SPECIAL), design.tap.thread.major).items())
    else:
        fields = chance.sample(SCALED, chance.choice([1, 1, 2]))
        pairs = tuple((field, _moved(design, field, chance)) for field in fields)
    return in_mm(apply_values(table, pairs))


def _scaled(values: Job, major: float) -> Job:
    return {
        field: round(value * major, 4)
        if field.endswith(SHARED) and value < 1.01 and value > -1 and field != "blank.front_centre"
        else value
        for field, value in values.items()
    }


def _moved(design: TapDesign, field: str, chance: random.Random) -> float:
    """The design's own value, moved by a factor."""
    here: Any = design_record(design)
    for part in ["drill"] if field == "hole.drill" else field.split("."):
        here = here[part]
    span = SPAN.get(field, 8.0)
    factor = span ** chance.uniform(-1, 1)
    return round((float(here) or 1.0) * factor, chance.choice([1, 2, 3, 4])) or 0.1
