"""What a proof's numbers must be for the solid to be the designed tap."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from tapmodel import precision
from tapmodel.checks.proof.length_told import length_told
from tapmodel.checks.proof.record import MeshProof, ModelProof

# Features and surfaces that belong to the thread, by their names in the proof.
THREAD = {"thread", "chamfer", "profile corners", "cutting edges", "heel edges"}


@dataclass(frozen=True, slots=True)
class Bounds:
    """How closely a solid must keep to its design.

    Attributes:
        volume, section_area: relative.
        any_face: how far a point of any face may lie off, either way [mm].
        thread_face: the same on thread and chamfer [mm].
    """

    volume: float
    section_area: float
    any_face: float
    thread_face: float


OWN = Bounds(precision.VOLUME, precision.SECTION_AREA, precision.ANY_FACE, precision.THREAD_FACE)
FOREIGN = Bounds(
    precision.FOREIGN_VOLUME,
    precision.FOREIGN_SECTION,
    precision.FOREIGN_FACE,
    precision.FOREIGN_FACE,
)


def faults(proof: ModelProof, mesh: MeshProof) -> list[str]:
    """Every way in which a model of ours misses what it must show; empty if none."""
    tests = [
        (mesh.genus == 0, f"the mesh has genus {mesh.genus} instead of 0"),
        (mesh.watertight, "the mesh is not watertight"),
        (not mesh.self_intersecting, "the mesh runs through itself"),
    ]
    return differences(proof) + [fault for good, fault in tests if not good]


def differences(proof: ModelProof, bounds: Bounds = OWN) -> list[str]:
    """Every way in which a solid, wherever it comes from, is not the designed tap."""
    size = abs(proof.volume) / proof.volume_expected - 1
    tests = [
        (proof.solids == 1, f"{proof.solids} solids instead of one"),
        (proof.valid, "the kernel finds the solid inconsistent"),
        (proof.genus == 0, f"genus {proof.genus} instead of 0"),
        (proof.volume > 0, f"the faces look inwards: the volume is {proof.volume:.4f} mm³"),
        (abs(size) <= bounds.volume, f"volume off by {_percent(size)}"),
    ]
    return [
        *proof.unmeasured,
        *(fault for good, fault in tests if not good),
        *_sections(proof, bounds.section_area),
        *faces(proof.deviation_um_by_surface, proof.ideal_um_by_feature, bounds),
    ]


def faces(
    lying_off: Mapping[str, float],
    missing: Mapping[str, float],
    bounds: Bounds,
    told_as: Callable[[float], str] = length_told,
) -> list[str]:
    """What lies off or is missing, the worst first; `differences` ends in it.

    Args:
        lying_off: distance of each surface's points from where they belong [µm].
        missing: distance of each feature's points from the solid [µm].
        bounds: up to which neither is told.
        told_as: tells a distance [µm].
    """
    told = [
        (off, name, text)
        for text, measured in (
            ("a face lies {} off", lying_off),
            ("missing on the solid by {}", missing),
        )
        for name, off in measured.items()
    ]
    wrong = [row for row in told if row[0] > 1000 * _allowed(row[1], bounds)]
    wrong.sort(key=lambda row: -row[0])
    return [f"{name}: {text.format(told_as(off))}" for off, name, text in wrong]


def _allowed(name: str, bounds: Bounds) -> float:
    return bounds.thread_face if name in THREAD else bounds.any_face


def _sections(proof: ModelProof, allowed: float) -> list[str]:
    # a solid turned inside out has negative areas, which its volume says once for all
    errors = {s.what: abs(s.area) / s.area_expected - 1 for s in proof.stations}
    worst = max(errors, key=lambda what: abs(errors[what]), default=None)
    if worst is None or abs(errors[worst]) <= allowed:
        return []
    return [f"{worst}: area off by {_percent(errors[worst])}"]


def _percent(share: float) -> str:
    """Three digits, without exponent down to what is allowed."""
    percent = 100 * share
    return f"{percent:+.3g} %" if abs(percent) < 100 else f"{percent:+.0f} %"
