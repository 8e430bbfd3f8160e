"""Jobs drawn at random over the whole design space, each by its seed.

Plain enough that about one in four is admitted by the design rules; the others try the rules.
"""

import random
from typing import Any

Job = dict[str, Any]


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
