"""The proof of a finished solid: measured against the definition, face by face and cut by cut."""

from dataclasses import replace

import numpy as np

from tapmodel import precision
from tapmodel.checks.coverage import largest_by_feature
from tapmodel.checks.deviation import distance_to_ideal, largest_by_surface
from tapmodel.checks.expected import section_area, solid_volume
from tapmodel.checks.ideal_points import ideal_points
from tapmodel.checks.mesh import check_mesh
from tapmodel.checks.proof import MeshProof, ModelProof, Station
from tapmodel.checks.self_intersection import self_intersections
from tapmodel.design.tap_design import TapDesign
from tapmodel.geometry.measure import counts, is_valid, volume
from tapmodel.geometry.mesh import Mesh
from tapmodel.geometry.sampling import sample_faces
from tapmodel.geometry.section import section_areas
from tapmodel.geometry.topology import Solid
from tapmodel.geometry.trimmed import TrimmedFaces

# Points looked at: on every face, and so many more shared out by area.
PER_FACE = 3
SPREAD_POINTS = 3000
# Asked of the kernel's volume for each face; on the faces of taps it then errs by some 1e-8. Where
# it does not agree with the design so closely, it is asked again as precisely as it can.
QUICK_VOLUME, AGREES = 1e-3, 1e-6


def prove_solid(design: TapDesign, solid: Solid) -> ModelProof:
    """Measure a solid of our own making against the design it must show; judges nothing.

    Source: the expectations are quadratures of the record's definitions, derived here.
    """
    return replace(compare(design, solid), stations=_stations(design, solid))


def compare(design: TapDesign, solid: Solid) -> ModelProof:
    """The same without sections, whatever kinds of surface the solid has.

    Source: as `prove_solid`.
    """
    faces = TrimmedFaces(solid)
    samples = sample_faces(faces, PER_FACE, SPREAD_POINTS)
    off = largest_by_surface(distance_to_ideal(design, samples.points))
    features = ideal_points(design)
    missed = largest_by_feature(features, faces)
    expected = solid_volume(design)
    measured = _volume(solid, expected)
    parts = counts(solid)
    return ModelProof(
        volume=measured,
        volume_expected=expected,
        volume_relative_error=measured / expected - 1,
        stations=(),
        deviation_um_max=1000 * max(off.values()),
        deviation_um_by_surface=_micrometres(off),
        deviation_points=len(samples.points),
        ideal_um_max=1000 * max(missed.values()),
        ideal_um_by_feature=_micrometres(missed),
        ideal_points=sum(map(len, features.values())),
        solids=parts.solids,
        faces=parts.faces,
        sliver_faces=samples.slivers,
        valid=is_valid(solid),
        genus=parts.genus,
    )


def _micrometres(lengths: dict[str, float]) -> dict[str, float]:
    return {name: 1000 * length for name, length in lengths.items()}


def _volume(solid: Solid, expected: float) -> float:
    """Volume, measured as closely as the judgement needs: again where the quick one disagrees."""
    quick = volume(solid, QUICK_VOLUME)
    return quick if abs(quick / expected - 1) <= AGREES else volume(solid)


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
