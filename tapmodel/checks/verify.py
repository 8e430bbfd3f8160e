"""The proof of a finished solid: measured against the definition, face by face and cut by cut."""

from dataclasses import replace

import numpy as np

from tapmodel import precision
from tapmodel.checks.deviation import distance_to_ideal, largest_by_surface
from tapmodel.checks.expected import section_area, solid_volume
from tapmodel.checks.mesh import check_mesh
from tapmodel.checks.proof import MeshProof, ModelProof, Station
from tapmodel.checks.self_intersection import self_intersections
from tapmodel.design.tap_design import TapDesign
from tapmodel.geometry.measure import counts, is_valid, volume
from tapmodel.geometry.mesh import Mesh
from tapmodel.geometry.sampling import sample_faces
from tapmodel.geometry.section import section_areas
from tapmodel.geometry.topology import Solid

# Points looked at: on every face, and at least so many in all.
PER_FACE = 4
LEAST_POINTS = 3000


def prove_solid(design: TapDesign, solid: Solid) -> ModelProof:
    """Measure a solid of our own making against the design it must show; judges nothing.

    Source: the expectations are quadratures of the record's definitions, derived here.
    """
    return replace(compare(design, solid), stations=_stations(design, solid))


def compare(design: TapDesign, solid: Solid) -> ModelProof:
    """The same without sections, whatever kinds of surface the solid has.

    Source: as `prove_solid`.
    """
    expected, measured = solid_volume(design), volume(solid)
    points, _, _ = sample_faces(solid, PER_FACE, LEAST_POINTS)
    deviation = distance_to_ideal(design, points)
    by_surface = {k: v * 1000 for k, v in largest_by_surface(deviation).items()}
    parts = counts(solid)
    return ModelProof(
        volume=measured,
        volume_expected=expected,
        volume_relative_error=measured / expected - 1,
        stations=(),
        deviation_um_max=max(by_surface.values()),
        deviation_um_by_surface=by_surface,
        deviation_points=len(points),
        solids=parts.solids,
        faces=parts.faces,
        valid=is_valid(solid),
        genus=parts.genus,
    )


def prove_mesh(mesh: Mesh, chord: float) -> MeshProof:
    """Measure a mesh; judges nothing."""
    report = check_mesh(mesh.vertices, mesh.triangles)
    return MeshProof(
        triangles=report.triangles,
        watertight=report.watertight,
        volume=report.volume,
        genus=report.genus,
        chord_mm=chord,
        self_intersecting=self_intersections(mesh.vertices, mesh.triangles) > 0,
    )


def station_heights(design: TapDesign) -> dict[str, float]:
    """Heights worth cutting at, by what is cut there [mm].

    The fractions are uneven on purpose: no corner of a regular tap lies there.
    """
    blank, chamfer, flutes = design.blank, design.chamfer, design.flutes
    end, length = blank.thread_length, chamfer.length
    full = end - length
    heights = {
        "chamfer, near the point": 0.137 * length,
        "chamfer, middle": 0.513 * length,
        "chamfer, last thread": 0.871 * length,
        "full thread, first": length + 0.2371 * full,
        "full thread, second": length + 0.6183 * full,
        "full thread, last": length + 0.9127 * full,
        "behind the thread": end + 0.4142 * (flutes.full_depth_length - end),
        "flute run-out": flutes.full_depth_length
        + 0.5773 * (flutes.runout_end - flutes.full_depth_length),
        "shank": flutes.runout_end + 0.6180 * (blank.square_start - flutes.runout_end),
        "square": blank.square_start + 0.4571 * blank.square_length,
    }
    if blank.neck_length > 0:
        heights["neck"] = end + 0.7071 * blank.neck_length
    return heights


def _stations(design: TapDesign, solid: Solid) -> tuple[Station, ...]:
    named = station_heights(design)
    heights = list(named.values())
    measured = section_areas(solid, heights)
    expected = section_area(design, np.array(heights)).tolist()
    rows = zip(named, heights, measured, expected, strict=True)
    stations = [Station(z, what, area, due) for what, z, area, due in rows]
    return tuple(sorted(stations, key=lambda station: station.z))


def faults(proof: ModelProof, mesh: MeshProof) -> list[str]:
    """Every way in which a model of ours misses what it must show; empty if none."""
    station = max(proof.stations, key=lambda s: abs(s.area / s.area_expected - 1))
    worst = abs(station.area / station.area_expected - 1)
    tests = [
        (mesh.genus == 0, f"the mesh has genus {mesh.genus} instead of 0"),
        (worst <= precision.SECTION_AREA, f"{station.what}: area off by {worst:.1e} of itself"),
        (mesh.watertight, "the mesh is not watertight"),
        (not mesh.self_intersecting, "the mesh runs through itself"),
    ]
    return differences(proof) + [fault for good, fault in tests if not good]


def differences(
    proof: ModelProof,
    volume_error: float = precision.VOLUME,
    any_face: float = precision.ANY_FACE,
    thread_face: float = precision.THREAD_FACE,
) -> list[str]:
    """Every way in which a solid, wherever it comes from, is not the designed tap.

    Args:
        proof: what was measured on it.
        volume_error: allowed, relative.
        any_face: how far any face may lie off [mm].
        thread_face: how far a face of the thread or the chamfer may [mm].
    """
    thread = max(proof.deviation_um_by_surface.get(k, 0.0) for k in ("thread", "chamfer"))
    where = max(proof.deviation_um_by_surface, key=lambda k: proof.deviation_um_by_surface[k])
    tests = [
        (proof.solids == 1, f"{proof.solids} solids instead of one"),
        (proof.valid, "the kernel finds the solid inconsistent"),
        (proof.genus == 0, f"genus {proof.genus} instead of 0"),
        (
            abs(proof.volume_relative_error) <= volume_error,
            f"volume off by {proof.volume_relative_error:.1e} of itself",
        ),
        (
            proof.deviation_um_max <= 1000 * any_face,
            f"{where}: a face lies {proof.deviation_um_max:.3f} µm off",
        ),
        (thread <= 1000 * thread_face, f"a thread face lies {thread:.3f} µm off"),
    ]
    return [fault for good, fault in tests if not good]
