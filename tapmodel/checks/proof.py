"""The records of a proof; apart from the measuring, so that reading them loads no kernel."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Station:
    """One section: where, of what, its area and the area it must have [mm, mm²]."""

    z: float
    what: str
    area: float
    area_expected: float


@dataclass(frozen=True, slots=True)
class ModelProof:
    """What was measured on the solid; the names are those of the record's model part."""

    volume: float
    volume_expected: float
    volume_relative_error: float
    stations: tuple[Station, ...]
    deviation_um_max: float
    deviation_um_by_surface: dict[str, float]
    deviation_points: int
    ideal_um_max: float
    ideal_um_by_feature: dict[str, float]
    ideal_points: int
    solids: int
    faces: int
    sliver_faces: int
    valid: bool
    genus: int


@dataclass(frozen=True, slots=True)
class MeshProof:
    """What was measured on the mesh."""

    triangles: int
    watertight: bool
    volume: float
    genus: int
    chord_mm: float
    self_intersecting: bool
