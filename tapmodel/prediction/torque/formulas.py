"""Three printed formulas of the tapping torque, each with constants of its own.

Their specific forces are three numbers of one name beside that of Kienzle: none may be put into
another's formula.
"""

import math
from functools import cache

import numpy as np

from tapmodel.standards.materials.work import WorkMaterial, work_material
from tapmodel.standards.metric.pitches import coarse_pitches
from tapmodel.standards.tables import read_table
from tapmodel.tap.tap import TapThread

SHORT = 2.0
"""Turns of chamfer up to which a tap has the factor of a bottoming one."""

COARSE = 0.92
"""A thread counts as coarse from this share of the coarse pitch of its diameter on."""

USUAL_CHIP = 0.05
"""Chip [mm] at which the forces of two materials are compared where no formula is printed for one;
some 2/1000 in are usual in the chamfers of hand taps (from memory, low certainty)."""

STEEP = 20.0
"""Flank angle [deg] from which on a thread is the V thread that the formulas mean."""


def formula_a(
    diameter: float, drill: float, flank_angle: float, force: float, factor: float
) -> float:
    """`K kc tan(a) (D - Do)^2 (D + 2 Do) / 24000` [N·m].

    With K = 1 that is the exact integral of kc over a V of depth (D - Do)/2, each part at its own
    radius.

    Args:
        diameter: D of the tap [mm].
        drill: Do of the bored hole [mm].
        flank_angle: a, half the angle of the thread [deg].
        force: kc of its own table [N/mm²].
        factor: K of its own table.

    Source: a tap maker's general catalogue 2016-17, technical part p. 781; read.
    """
    deep = max(diameter - drill, 0.0)
    area_at = math.tan(math.radians(flank_angle)) * deep**2 * (diameter + 2 * drill)
    return factor * force * area_at / 24000


def formula_b(diameter: float, pitch: float, force: float) -> float:
    """`kc P^2 D / 8000` [N·m]; a chip of P^2/4 at the radius D/2.

    Source: a tap maker's page of calculation formulas (lubero.de); read.
    """
    return force * pitch**2 * diameter / 8000


def formula_c(diameter: float, pitch: float, row: str) -> float:
    """`10 Cm D^q P^y` [N·m], of machine taps.

    Raises:
        KeyError: no such row.

    Source: a Soviet technologist's handbook, vol. 2, tapping; from memory, medium certainty.
    """
    scale, of_diameter, of_pitch = _constants_c()[row]
    return 10 * scale * diameter**of_diameter * pitch**of_pitch


def torque_by_a(
    material: WorkMaterial, thread: TapThread, diameter: float, drill: float, turns: float
) -> float | None:
    """Formula A for a straight-fluted hand tap whose chamfer has so many `turns` [N·m].

    Each of several threads takes a torque of its own.

    Source: `formula_a`; None where its tables have no constant, or the thread is no V thread.
    """
    chamfer = "bottoming" if turns <= SHORT else "plug"
    coarse = is_coarse(diameter, thread.pitch)
    factor = _factors_a().get((material.group.a_row, chamfer, coarse))
    force = material.torque_a
    if force is None or factor is None or thread.flank_angle < STEEP:
        return None
    return thread.starts * formula_a(diameter, drill, thread.flank_angle, force, factor)


def torque_by_b(material: WorkMaterial, thread: TapThread, diameter: float) -> float | None:
    """Formula B [N·m]; each of several threads takes a torque of its own.

    Source: `formula_b`; None where its table has no constant, or the thread is no V thread.
    """
    if material.torque_b is None or thread.flank_angle < STEEP:
        return None
    return thread.starts * formula_b(diameter, thread.pitch, material.torque_b)


def torque_by_c(material: WorkMaterial, thread: TapThread, diameter: float) -> float | None:
    """Formula C of a coarse thread [N·m]; each of several threads takes a torque of its own.

    Its row of steel is one of 750 N/mm²: for a softer or harder one it is told by `force_share`.

    At fine pitches it was compared with nothing, and there it falls with P^1.5 where the section of
    the thread falls with P^2.

    Source: `formula_c`, from memory; None where it has no constants, or the thread is fine or no V
    thread.
    """
    return _by_row(material, thread, diameter, material.group.c_row)


def torque_carried_over(material: WorkMaterial, thread: TapThread, diameter: float) -> float | None:
    """Formula C of the nearest kind of material, where it has no row for this one [N·m].

    Without it a material of which less is known had the narrower band.

    Source: rule of this program, `WorkGroup.c_like` and `force_share`; None as `torque_by_c`.
    """
    return _by_row(material, thread, diameter, material.group.c_like)


def _by_row(material: WorkMaterial, thread: TapThread, diameter: float, row: str) -> float | None:
    if not row or thread.flank_angle < STEEP or not is_coarse(diameter, thread.pitch):
        return None
    share = force_share(material, work_material(_held_for()[row]))
    return share * thread.starts * formula_c(diameter, thread.pitch, row)


def force_share(material: WorkMaterial, other: WorkMaterial) -> float:
    """Force that a material takes in that of another one.

    The geometric mean of how the constants of A and of B stand to each other, as far as both are
    printed for both; where neither is, that of Kienzle's law at `USUAL_CHIP`.

    Source: rule of this program.
    """
    pairs = (
        (material.torque_a, other.torque_a),
        (material.torque_b, other.torque_b),
    )
    shares = [own / its for own, its in pairs if own is not None and its is not None]
    if shares:
        return math.prod(shares) ** (1 / len(shares))
    own, its = (
        one.kienzle.specific_force(USUAL_CHIP, one.kienzle.rake) for one in (material, other)
    )
    return own / its


def is_coarse(diameter: float, pitch: float) -> bool:
    """Whether a pitch counts as coarse for its diameter, both [mm].

    Source: rule of this program, on the coarse pitches of ISO 261 and between them.
    """
    sizes, pitches = _coarse()
    return pitch >= COARSE * float(np.interp(diameter, sizes, pitches))


@cache
def _coarse() -> tuple[list[float], list[float]]:
    return list(coarse_pitches()), list(coarse_pitches().values())


@cache
def _factors_a() -> dict[tuple[str, str, bool], float]:
    """K by kind of work, kind of chamfer, and whether the thread is coarse."""
    return {
        (row["work"], row["chamfer"], column == "coarse"): float(row[column])
        for row in read_table("tapping_torque_k")
        for column in ("coarse", "fine")
        if row[column]
    }


@cache
def _constants_c() -> dict[str, tuple[float, float, float]]:
    return {
        row["work"]: (float(row["cm"]), float(row["q"]), float(row["y"]))
        for row in read_table("tapping_torque_c")
    }


@cache
def _held_for() -> dict[str, str]:
    """By row of formula C the material that it holds for."""
    return {row["work"]: row["held_for"] for row in read_table("tapping_torque_c")}
