"""Jobs drawn at random over the whole design space, each by its seed.

Plain enough that about one in four is admitted by the design rules; the others try the rules.
"""

import random
from collections.abc import Callable
from typing import Any

from tapmodel.spec.job import job_fields, unit_of
from tapmodel.spec.units import Unit

Job = dict[str, Any]


def in_mm(table: Job, prefix: str = "") -> Job:
    """The same job, each length with its unit: a bare one that chance makes may be asked back."""
    return {
        key: in_mm(value, f"{prefix}{key}.")
        if isinstance(value, dict)
        else _with_unit(prefix + key, value)
        for key, value in table.items()
    }


def _with_unit(field: str, value: object) -> object:
    is_length = isinstance(value, int | float) and field in job_fields()
    return f"{value!r}mm" if is_length and unit_of(field) is Unit.MM else value


def random_job(seed: int) -> Job:
    """A job table as a TOML file would hold it."""
    chance = random.Random(seed)  # noqa: S311  (repeatable on purpose)
    diameter = round(2 * 30 ** chance.random(), 2)
    pitch = round(min(6.0, max(0.25, diameter * chance.uniform(0.02, 0.22))), 3)
    starts = chance.choice([1, 1, 1, 2, 3, 4])
    lead = f"xPh{starts * pitch:.6g}P{pitch:g}" if starts > 1 else f"x{pitch:g}"
    hand = chance.choice(["", "", "", "-LH"])
    return {
        "designation": f"M{diameter:g}{lead}{hand}",
        "flutes": _flutes(chance, diameter),
        "chamfer": _chamfer(chance),
        "relief": {
            "thread": _relief(chance, diameter, 0.02),
            "chamfer": _relief(chance, diameter, 0.06),
        },
        "blank": _blank(chance, diameter, pitch),
    } | ({} if chance.random() < 0.5 else {"thread": {"aim": round(chance.random(), 2)}})


def _flutes(chance: random.Random, diameter: float) -> Job:
    flutes: Job = {"count": chance.randint(2, 8)}
    if chance.random() < 0.6:
        flutes["cutter_diameter"] = round(diameter * chance.uniform(0.08, 1.6 / flutes["count"]), 2)
    if chance.random() < 0.3:
        flutes["offset"] = chance.choice([0.0, round(diameter * chance.uniform(-0.2, 0.2), 3)])
    else:
        flutes["rake"] = round(chance.uniform(-20, 25), 2)
    if chance.random() < 0.5:
        flutes["core_diameter"] = round(diameter * chance.uniform(0.2, 0.7), 3)
    return flutes


def _chamfer(chance: random.Random) -> Job:
    return chance.choice(
        [
            {"form": chance.choice(["taper", "plug", "bottoming"])},
            {"pitches": round(chance.uniform(0.8, 12), 2)},
            {"angle": round(chance.uniform(2, 45), 2)},
        ]
    )


def _relief(chance: random.Random, diameter: float, most: float) -> Job:
    """`most` bounds the drop as a share of the diameter; it tells the chamfer from the thread."""
    kind = chance.choice(["concentric", "con-eccentric", "eccentric"])
    relief: Job = {"kind": kind}
    if most < 0.05:
        relief["applies_to"] = chance.choice(["crest", "thread"])
    if kind == "con-eccentric":
        relief["margin_angle"] = round(chance.uniform(0.5, 15), 1)
    if kind == "eccentric" and chance.random() < 0.5:
        relief["edge_angle"] = round(chance.uniform(0.1, 8), 2)
    elif kind != "concentric":
        relief["heel_drop"] = round(diameter * chance.uniform(0.0005, most), 4)
    return relief


def _blank(chance: random.Random, diameter: float, pitch: float) -> Job:
    blank: Job = {"thread_length": round(pitch * chance.uniform(4, 30), 2)}
    shape = chance.random()
    if shape < 0.3:
        blank["neck_length"] = 0.0
    elif shape < 0.6:
        blank["neck_length"] = round(diameter * chance.uniform(0.05, 1.0), 2)
        blank["neck_diameter"] = round(diameter * chance.uniform(0.6, 1.05), 2)
    if chance.random() < 0.4:
        blank["shank_diameter"] = round(diameter * chance.uniform(0.6, 1.4), 2)
    if chance.random() < 0.2:
        blank["front_centre"] = round(diameter * chance.uniform(0.05, 0.2), 2)
    return blank


def round_job(seed: int) -> Job:
    """Round numbers throughout, so that surfaces meet where they usually do not."""
    chance = random.Random(seed)  # noqa: S311  (repeatable on purpose)
    diameter = chance.choice([2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 30])
    pitches = [0.1, 0.2, 0.25, 0.4, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3]
    pitch = chance.choice([p for p in pitches if diameter / 100 <= p <= diameter / 5])
    starts = chance.choice([1, 1, 1, 2, 4])
    lead = f"xPh{starts * pitch:g}P{pitch:g}" if starts > 1 else f"x{pitch:g}"
    steps = max(pitch, 0.5)
    cutter = chance.choice([diameter / n for n in (8, 6, 5, 4, 3, 2.5, 2)])
    blank: Job = {"thread_length": chance.choice([6, 8, 10, 20]) * pitch}
    if chance.random() < 0.4:
        blank["neck_length"] = 0.0
    else:
        blank["neck_length"] = chance.choice([1, 2, 3, 4, cutter / 2, cutter / steps]) * steps
        blank["neck_diameter"] = diameter - chance.choice([0, 0.5, 1, 2]) * pitch
    if chance.random() < 0.7:
        blank["shank_diameter"] = diameter + chance.choice([-2, -1, -0.5, 0, 0, 1]) * pitch
    flutes: Job = {
        "count": chance.choice([2, 3, 4, 4, 5, 6]),
        "cutter_diameter": cutter,
        "offset": chance.choice([0.0, 0.0, diameter / 20, diameter / 10, -diameter / 20]),
    }
    if chance.random() < 0.5:
        flutes["core_diameter"] = diameter * chance.choice([0.25, 0.3, 0.4, 0.5, 0.6])
    thread: Job = {}
    if chance.random() < 0.5:
        thread["major"] = diameter + chance.choice([0.05, 0.1])
        if chance.random() < 0.5:
            blank["shank_diameter"] = thread["major"]
    kind = chance.choice(["concentric", "con-eccentric", "eccentric"])
    drop: Job = {} if kind == "concentric" else {"heel_drop": diameter / 100}
    return {
        "designation": f"M{diameter:g}{lead}",
        "thread": thread,
        "flutes": flutes,
        "chamfer": chance.choice(
            [{"pitches": 1.0}, {"pitches": 2.0}, {"pitches": 4.0}, {"angle": 45.0}, {"angle": 30.0}]
        ),
        "relief": {"thread": {"kind": kind} | drop, "chamfer": {"kind": "eccentric"}},
        "blank": blank,
    }


def extreme_job(seed: int) -> Job:
    """A random job with one to three of its values moved to where the rules just let it pass."""
    chance = random.Random(seed)  # noqa: S311  (repeatable on purpose)
    job = random_job(chance.randrange(10**9))
    diameter = float(job["designation"][1:].partition("x")[0])
    flutes, blank = job["flutes"], job["blank"]
    moves = {
        "cutter": lambda: flutes.update(
            cutter_diameter=round(diameter * chance.choice([0.02, 0.05, 0.8, 1.2]), 3)
        ),
        "core": lambda: flutes.update(
            core_diameter=round(diameter * chance.choice([0.05, 0.1, 0.75, 0.85]), 3)
        ),
        "rake": lambda: (
            flutes.pop("offset", None),
            flutes.update(rake=chance.choice([-40.0, -30.0, 30.0, 40.0])),
        ),
        "count": lambda: flutes.update(count=chance.choice([2, 7, 8])),
        "chamfer": lambda: job.update(
            chamfer=chance.choice([{"angle": 1.0}, {"angle": 70.0}, {"pitches": 0.3}])
        ),
        "short": lambda: blank.update(thread_length=round(diameter * 0.1, 3)),
        "long": lambda: blank.update(thread_length=round(diameter * 4.0, 3)),
        "root": lambda: blank.update(
            neck_length=round(diameter * 0.3, 3),
            neck_diameter=round(diameter * chance.choice([0.8, 0.85, 0.9]), 3),
        ),
        "crest": lambda: blank.update(
            neck_length=0.0, shank_diameter=round(diameter * chance.choice([0.99, 1.0, 1.01]), 3)
        ),
    }
    for name in chance.sample(sorted(moves), chance.randint(1, 3)):
        moves[name]()
    return job


def _written(draw: Callable[[int], Job]) -> Callable[[int], Job]:
    return lambda seed: in_mm(draw(seed))


SAMPLERS = {
    "uniform": _written(random_job),
    "round": _written(round_job),
    "extreme": _written(extreme_job),
}
