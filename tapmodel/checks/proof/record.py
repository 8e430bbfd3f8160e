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
    """What was measured on the solid; the names are those of the record's model part.

    Attributes:
        volume, volume_expected: [mm³].
        volume_relative_error: of the one against the other.
        stations: sections, by height.
        deviation_um_max, deviation_um_by_surface: how far points of the faces lie from the ideal
            solid [µm], `deviation_points` of them.
        ideal_um_max, ideal_um_by_feature: how far points of the ideal solid, on each feature and
            edge, lie from the faces [µm], `ideal_points` of them.
        solids, faces: how many.
        sliver_faces: faces too narrow to hold points; those of their edges stood for them.
        valid: whether the kernel finds the solid consistent.
        genus: through holes.
        unmeasured: what could not be measured and why.
    """

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
    unmeasured: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class MeshProof:
    """What was measured on the mesh."""

    triangles: int
    watertight: bool
    volume: float
    genus: int
    chord_mm: float
    self_intersecting: bool
