"""The proof of a solid: measured against the definition, and the definition against it."""

from collections.abc import Callable
from typing import TypeVar

from tapmodel.checks.ideal.deviation import distance_to_ideal, largest_by_surface
from tapmodel.checks.ideal.expected import solid_volume
from tapmodel.checks.ideal.points.all import ideal_points
from tapmodel.checks.proof.coverage import largest_by_feature
from tapmodel.checks.proof.record import ModelProof
from tapmodel.checks.proof.stations import cut
from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.measure.sampling import Samples, sample_faces
from tapmodel.geometry.kernel.measure.solid import Counts, counts, is_valid, volume
from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces
from tapmodel.geometry.kernel.mesh.triangulation import Facets
from tapmodel.geometry.kernel.topology import Solid
from tapmodel.tap.tap import Tap

# Points looked at: on every face, and so many more shared out by area.
PER_FACE = 3
SPREAD_POINTS = 3000
# Asked of the kernel's volume for each face; on the faces of taps it then errs by some 1e-8. Where
# it does not agree with the design so closely, it is asked again as precisely as it can.
QUICK_VOLUME, AGREES = 1e-3, 1e-6

T = TypeVar("T")


class _Attempts:
    """Measurements that may fail; what failed is remembered in words."""

    def __init__(self) -> None:
        self.failed: list[str] = []

    def __call__(self, measure: Callable[[], T], otherwise: T) -> T:
        try:
            return measure()
        except KernelError as error:
            self.failed.append(f"{error.stage}: {error.what}")
            return otherwise


def prove_solid(
    tap: Tap,
    solid: Solid,
    facets: Facets | None = None,
    valid: Callable[[Solid], bool] = is_valid,
) -> ModelProof:
    """Measure a solid, wherever it comes from, against the design it must show; judges nothing.

    Points of its faces are held against the ideal, points of the ideal against its faces. What
    cannot be measured is said in the proof.

    Args:
        tap: every number of the tap.
        solid: what ought to show it.
        facets: triangles of its faces, which show where to look; without, coarse ones replace the
            solid's own mesh.
        valid: whether the kernel finds the solid consistent; asked last.

    Source: the expectations are quadratures of the record's definitions, derived here.
    """
    attempt = _Attempts()
    faces = attempt(lambda: TrimmedFaces(solid, facets), None)
    off, samples = _off(tap, faces) if faces else ({}, None)
    features = ideal_points(tap)
    missed = attempt(lambda: largest_by_feature(features, faces), {}) if faces else {}
    expected = solid_volume(tap)
    measured = _volume(solid, expected)
    parts = attempt(lambda: counts(solid), Counts(solids=0, faces=0, edges=0, genus=0))
    return ModelProof(
        volume=measured,
        volume_expected=expected,
        volume_relative_error=measured / expected - 1,
        stations=attempt(lambda: cut(tap, solid), ()),
        deviation_um_max=1000 * max(off.values(), default=0.0),
        deviation_um_by_surface=_micrometres(off),
        deviation_points=len(samples.points) if samples else 0,
        ideal_um_max=1000 * max(missed.values(), default=0.0),
        ideal_um_by_feature=_micrometres(missed),
        ideal_points=sum(map(len, features.values())),
        solids=parts.solids,
        faces=parts.faces,
        sliver_faces=samples.slivers if samples else 0,
        genus=parts.genus,
        unmeasured=tuple(attempt.failed),
        valid=valid(solid),
    )


def _off(tap: Tap, faces: TrimmedFaces) -> tuple[dict[str, float], Samples]:
    samples = sample_faces(faces, PER_FACE, SPREAD_POINTS)
    return largest_by_surface(distance_to_ideal(tap, samples.points)), samples


def _micrometres(lengths: dict[str, float]) -> dict[str, float]:
    return {name: 1000 * length for name, length in lengths.items()}


def _volume(solid: Solid, expected: float) -> float:
    """Volume, measured as closely as the judgement needs: again where the quick one disagrees."""
    quick = volume(solid, QUICK_VOLUME)
    return quick if abs(abs(quick) / expected - 1) <= AGREES else volume(solid)
