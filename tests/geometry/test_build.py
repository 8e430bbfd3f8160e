"""The finished solid against the independent oracle."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from rounded import rounded

from tapmodel.checks.proof.record import ModelProof
from tapmodel.checks.proof.solid import prove_solid
from tapmodel.checks.proof.verdict import FOREIGN, differences
from tapmodel.geometry.kernel.build import build_solid
from tapmodel.geometry.kernel.measure.solid import counts, volume
from tapmodel.geometry.kernel.topology import Solid
from tapmodel.tap.tap import Tap, TapThread
from tapmodel.words import ReliefPlace


@pytest.fixture(scope="module")
def proof(small_tap: Tap, small_solid: Solid) -> ModelProof:
    return prove_solid(small_tap, small_solid)


def test_it_is_one_sound_solid(proof: ModelProof) -> None:
    assert (proof.solids, proof.genus, proof.valid) == (1, 0, True)


def test_volume_is_that_of_the_definition(proof: ModelProof) -> None:
    assert abs(proof.volume_relative_error) < 1e-6


def test_every_section_has_the_area_of_the_definition(proof: ModelProof) -> None:
    assert len(proof.stations) >= 10
    for station in proof.stations:
        assert station.area == pytest.approx(station.area_expected, rel=1e-6), station.what


def test_every_face_lies_where_the_definition_puts_it(proof: ModelProof) -> None:
    assert proof.deviation_points >= 3000
    surfaces = {"thread", "chamfer", "flute", "run-out", "blank", "square", "front"}
    assert set(proof.deviation_um_by_surface) == surfaces
    assert proof.deviation_um_max < 1e-3


def test_left_hand_is_the_mirror_image(left_tap: Tap, small_solid: Solid) -> None:
    left = build_solid(left_tap)
    assert volume(left) == pytest.approx(volume(small_solid), rel=1e-12)
    assert counts(left) == counts(small_solid)
    assert prove_solid(left_tap, left).deviation_um_max < 1e-3


def _crest_only(tap: Tap) -> Tap:
    crest = replace(tap.relief.thread, applies_to=ReliefPlace.CREST)
    return replace(tap, relief=replace(tap.relief, thread=crest))


def _no_neck(tap: Tap, shank: float) -> Tap:
    blank = replace(
        tap.blank,
        neck_diameter=0.0,
        neck_length=0.0,
        shank_diameter=shank,
        square_across_flats=0.8 * shank,
        rear_centre=0.0,
        front_centre=0.0,
    )
    return replace(tap, blank=blank)


# Forms, reliefs and starts have a family of their own: test_forms_reliefs_starts.py.
VARIANTS = {
    "no neck, shank below the root": lambda tap: _no_neck(tap, 6.4),
    "no neck, shank between root and crest": lambda tap: _no_neck(tap, 7.8),
    "no neck, shank above the crest": lambda tap: _no_neck(tap, 9.0),
    "rounded root under a flat relieved crest": lambda tap: _crest_only(rounded(tap, crest=0.0)),
    "rounded crest over a flat root": lambda tap: rounded(tap, root=0.0),
}


@pytest.mark.parametrize("name", VARIANTS)
def test_variants_are_proved_as_well(name: str, small_tap: Tap) -> None:
    tap = VARIANTS[name](small_tap)
    proof = prove_solid(tap, build_solid(tap))
    assert (proof.solids, proof.genus, proof.valid) == (1, 0, True)
    assert abs(proof.volume_relative_error) < 1e-6
    assert max(proof.deviation_um_max, proof.ideal_um_max) < 1e-3
    assert (proof.sliver_faces, proof.unmeasured) == (0, ())


@pytest.fixture(scope="module")
def round_tap(small_tap: Tap) -> tuple[Tap, Solid]:
    tap = rounded(small_tap)
    return tap, build_solid(tap)


def _larger_at_the_crest(thread: TapThread) -> TapThread:
    # A larger arc that touches both flanks ends farther from where they would meet.
    lost = 0.01 * thread.crest_radius * thread.flanks.short
    return replace(thread, major=thread.major - lost)


def _larger_at_the_root(thread: TapThread) -> TapThread:
    lost = 0.01 * thread.root_radius * thread.flanks.short
    return replace(thread, minor=thread.minor + lost)


@pytest.mark.parametrize("larger", [_larger_at_the_crest, _larger_at_the_root])
def test_a_radius_one_per_cent_off_is_found_out(
    larger: Callable[[TapThread], TapThread], round_tap: tuple[Tap, Solid]
) -> None:
    tap, solid = round_tap
    thread = larger(tap.thread)
    off = (
        thread.crest_radius / tap.thread.crest_radius,
        thread.root_radius / tap.thread.root_radius,
    )
    assert sorted(off) == pytest.approx([1.0, 1.01], rel=1e-9)
    assert differences(prove_solid(replace(tap, thread=thread), solid), FOREIGN)
