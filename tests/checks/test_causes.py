"""Why a solid is not the designed tap: each cause made with the kernel, found, and no other."""

import math
from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest
from OCP.BRepBuilderAPI import BRepBuilderAPI_Transform
from OCP.gp import gp_Ax1, gp_Ax2, gp_Dir, gp_Pnt, gp_Trsf, gp_Vec

from tapmodel.checks.causes.causes import Causes, causes
from tapmodel.checks.causes.misplaced import Misplaced
from tapmodel.checks.causes.sizes_seen import SizeName, sizes_seen
from tapmodel.checks.proof.solid import prove_solid
from tapmodel.checks.proof.stations import cut
from tapmodel.checks.proof.verdict import FOREIGN, differences
from tapmodel.designing.settle import settle
from tapmodel.geometry.kernel.build import build_solid
from tapmodel.geometry.kernel.measure.sampling import sample_faces
from tapmodel.geometry.kernel.measure.solid import volume
from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces
from tapmodel.geometry.kernel.topology import Solid
from tapmodel.shape.figures import figures_of
from tapmodel.shape.flute_section import section_of
from tapmodel.spec.job_file import job_for
from tapmodel.tap.tap import Tap

ORIGIN = gp_Pnt(0, 0, 0)
Move = Callable[[gp_Trsf], None]


def _turned(way: tuple[int, int, int], degrees: float) -> Move:
    axis = gp_Ax1(ORIGIN, gp_Dir(*way))
    return lambda move: move.SetRotation(axis, math.radians(degrees))


def _scaled(factor: float) -> Move:
    return lambda move: move.SetScale(ORIGIN, factor)


def _shifted(x: float, y: float, z: float) -> Move:
    return lambda move: move.SetTranslation(gp_Vec(x, y, z))


def _mirrored(move: gp_Trsf) -> None:
    move.SetMirror(gp_Ax2(ORIGIN, gp_Dir(0, 1, 0)))


def _made(solid: Solid, *moves: Move) -> Solid:
    """The solid after each move, copied into its surfaces."""
    shape = solid.wrapped
    for set_up in moves:
        move = gp_Trsf()
        set_up(move)
        shape = BRepBuilderAPI_Transform(shape, move, True).Shape()
    return Solid(shape)


def _none(tap: Tap) -> Causes:
    """Nothing seen that is otherwise."""
    thread = tap.thread
    return Causes(None, None, tap.flutes.count, None, thread.starts, None, thread.pitch_diameter)


def _sizes(tap: Tap) -> dict[SizeName, float]:
    """Those that are looked for."""
    return {
        SizeName.OVERALL_LENGTH: tap.blank.overall_length,
        SizeName.THREAD_LENGTH: tap.blank.thread_length,
        SizeName.MAJOR: tap.thread.major,
        SizeName.CORE: tap.flutes.core_diameter,
        SizeName.CUTTER: tap.flutes.cutter_diameter,
        SizeName.RAKE: figures_of(tap).rake_crest,
    }


def _unlike(tap: Tap, made: Tap) -> dict[SizeName, tuple[float, float]]:
    """Sizes of the other tap that are not this one's, each with this one's.

    A rake is none that is otherwise at another diameter of the same face alone.
    """
    pairs = {name: (size, _sizes(tap)[name]) for name, size in _sizes(made).items()}
    if section_of(tap.flutes) == section_of(made.flutes):
        del pairs[SizeName.RAKE]
    return {name: pair for name, pair in pairs.items() if not math.isclose(*pair, abs_tol=1e-4)}


def _told(found: Causes) -> dict[SizeName, tuple[float, float]]:
    return {one.name: (one.seen, one.wanted) for one in found.sizes}


def _short(designation: str, *sets: str) -> Tap:
    """A tap by rule with little thread, which is soon made."""
    length = f"blank.thread_length={18 if designation.startswith('Tr') else 10.5}"
    return settle(job_for(designation, ["chamfer.pitches=2", length, *sets])).tap


@cache
def _solid(designation: str, *sets: str) -> Solid:
    return build_solid(_short(designation, *sets))


def _found(tap: Tap, solid: Solid) -> Causes:
    return causes(tap, solid, volume(solid))


AS_IT_IS = Misplaced(mirrored=False, turn=0.0, shift=(0.0, 0.0, 0.0), axis="z", scale=1.0)

SINGLE = {
    "along": ([_shifted(0, 0, 10)], {"shift": (0.0, 0.0, 10.0)}),
    "a micrometre along": ([_shifted(0, 0, 0.001)], {"shift": (0.0, 0.0, 0.001)}),
    "off": ([_shifted(3, -0.2, 0)], {"shift": (3.0, -0.2, 0.0)}),
    "turned": ([_turned((0, 0, 1), 30)], {"turn": 30.0}),
    "turned back": ([_turned((0, 0, 1), -71.3)], {"turn": -71.3}),
    "along X": ([_turned((0, 1, 0), 90)], {"axis": "x"}),
    "against X": ([_turned((0, 1, 0), -90)], {"axis": "-x"}),
    "along Y": ([_turned((1, 0, 0), -90)], {"axis": "y"}),
    "against Y": ([_turned((1, 0, 0), 90)], {"axis": "-y"}),
    "end for end": ([_turned((1, 0, 0), 180)], {"axis": "-z"}),
    "inches as mm": ([_scaled(1 / 25.4)], {"scale": 1 / 25.4}),
    "mm as inches": ([_scaled(25.4)], {"scale": 25.4}),
    "shrinkage": ([_scaled(1.01)], {"scale": 1.01}),
    "mirrored": ([_mirrored], {"mirrored": True}),
    "mirrored, turned, moved": (
        [_mirrored, _turned((0, 0, 1), 50), _shifted(0.5, 0, -4)],
        {"mirrored": True, "turn": 50.0, "shift": (0.5, 0.0, -4.0)},
    ),
}


@pytest.mark.parametrize("name", SINGLE)
def test_what_was_done_to_a_solid_is_found_and_nothing_else(
    name: str, small_tap: Tap, small_solid: Solid
) -> None:
    moves, wanted = SINGLE[name]
    found = _found(small_tap, _made(small_solid, *moves)).misplaced
    assert found is not None
    due = replace(AS_IT_IS, **wanted)
    assert (found.mirrored, found.axis) == (due.mirrored, due.axis)
    assert found.shift == pytest.approx(due.shift, abs=1e-6)
    assert found.scale == pytest.approx(due.scale, rel=1e-7)
    # how far it is turned depends on how one that lies down is put upright
    if due.axis == "z":
        assert found.turn == pytest.approx(due.turn, abs=1e-5)


def test_the_other_hand_is_the_mirror_image(left_tap: Tap, small_solid: Solid) -> None:
    found = _found(left_tap, small_solid)
    assert found == replace(_none(left_tap), misplaced=replace(AS_IT_IS, mirrored=True))


@pytest.mark.parametrize("moves", [[], [_shifted(1, 2, 3)]], ids=["in place", "moved"])
def test_another_number_of_flutes_is_counted(
    moves: list[Move], small_tap: Tap, small_solid: Solid
) -> None:
    four = replace(small_tap, flutes=replace(small_tap.flutes, count=4))
    assert _found(four, _made(small_solid, *moves)) == replace(_none(four), flutes=3)


OTHER_JOBS = {
    "flutes": ([], ["flutes.count=4"], {"flutes": 3}),
    "flutes and pitch diameter": (
        ["flutes.count=4", "thread.pitch_diameter=9.109"],
        [],
        {"flutes": 4, "pitch_diameter": 9.109},
    ),
    "pitch diameter": (["thread.pitch_diameter=9.109"], [], {"pitch_diameter": 9.109}),
    "a relieved flank": (
        ["thread.pitch_diameter=9.1", "relief.thread.applies_to=thread"],
        ["relief.thread.applies_to=thread"],
        {"pitch_diameter": 9.1},
    ),
    "a back taper": (
        ["thread.pitch_diameter=9.1", "thread.back_taper=0.1"],
        ["thread.back_taper=0.1"],
        {"pitch_diameter": 9.1},
    ),
}


@pytest.mark.parametrize("name", OTHER_JOBS)
def test_what_another_job_of_the_thread_has_otherwise_is_named(name: str) -> None:
    made, wanted, seen = OTHER_JOBS[name]
    tap = _short("M10", *wanted)
    found = _found(tap, _solid("M10", *made))
    due = replace(_none(tap), **{field: pytest.approx(value) for field, value in seen.items()})
    assert replace(found, sizes=()) == due
    assert _told(found) == {
        name: pytest.approx(pair) for name, pair in _unlike(tap, _short("M10", *made)).items()
    }


@pytest.mark.parametrize(
    ("made", "wanted", "starts"),
    [("M10", "M10xPh3P1.5", 1), ("M10xPh3P1.5 LH", "M10 LH", 2), ("Tr16x8(P4)", "Tr16x4", 2)],
)
def test_another_number_of_starts_is_named(made: str, wanted: str, starts: int) -> None:
    tap = _short(wanted)
    assert _found(tap, _solid(made)).starts == starts


@pytest.mark.parametrize(("made", "wanted"), [("M10xPh1.5P0.75", "M10"), ("M10", "M10xPh1.5P0.75")])
def test_a_thread_of_another_pitch_is_none_of_another_pitch_diameter(
    made: str, wanted: str
) -> None:
    tap = _short(wanted)
    found = _found(tap, _solid(made))
    assert replace(found, sizes=()) == _none(tap)
    assert _told(found) == {
        name: pytest.approx(pair) for name, pair in _unlike(tap, _short(made)).items()
    }


def test_a_pitch_diameter_is_told_from_a_micrometre_on(small_tap: Tap, small_solid: Solid) -> None:
    for more, told in ((0.001, True), (0.0001, False)):
        thread = replace(small_tap.thread, pitch_diameter=7.42 + more)
        found = _found(replace(small_tap, thread=thread), small_solid)
        assert (found.pitch_diameter == pytest.approx(7.42, abs=1e-6)) is told


OTHER_SIZES = {
    "overall length": ("blank", {"overall_length": 36.002}, SizeName.OVERALL_LENGTH),
    "thread length": ("blank", {"thread_length": 6.1}, SizeName.THREAD_LENGTH),
    "major diameter": ("thread", {"major": 8.052}, SizeName.MAJOR),
    "core": ("flutes", {"centre_radius": 3.21}, SizeName.CORE),
    "core and cutter": ("flutes", {"cutter_diameter": 3.5}, SizeName.CUTTER),
}


@pytest.mark.parametrize("name", OTHER_SIZES)
@pytest.mark.parametrize("moves", [[], [_shifted(1, 2, 3)]], ids=["in place", "moved"])
def test_another_size_is_named_to_a_tenth_of_a_micrometre_and_no_other(
    name: str, moves: list[Move], small_tap: Tap, small_solid: Solid
) -> None:
    part, change, size = OTHER_SIZES[name]
    other = replace(small_tap, **{part: replace(getattr(small_tap, part), **change)})
    found = _found(other, _made(small_solid, *moves))
    assert replace(found, sizes=()) == _none(other)
    due = _unlike(other, small_tap)
    assert size in due
    assert _told(found) == {one: pytest.approx(pair, abs=1e-6) for one, pair in due.items()}


@pytest.mark.parametrize("tap", ["small_tap", "left_tap"])
def test_a_tap_as_designed_has_no_other_size(
    tap: str, request: pytest.FixtureRequest, small_solid: Solid
) -> None:
    wanted: Tap = request.getfixturevalue(tap)
    faces = TrimmedFaces(small_solid)
    assert sizes_seen(wanted, faces, sample_faces(faces, 8, 0), (0.0, 0.0, 0.0)) == ()


@pytest.mark.parametrize("cut", ["1/2 BSW", "Tr16x4", "M10xPh3P1.5 LH"])
def test_core_and_cutter_are_read_whatever_the_thread(cut: str) -> None:
    made = _short(cut)
    other = replace(made, flutes=replace(made.flutes, cutter_diameter=5.2, centre_radius=5.1))
    found = _told(_found(other, _solid(cut)))
    assert found == {name: pytest.approx(pair) for name, pair in _unlike(other, made).items()}


@pytest.mark.parametrize(
    ("designation", "sets", "rake", "moves"),
    [
        ("M10", (), 11.0, []),
        ("M10", (), -5.0, [_shifted(1, 2, 3)]),
        ("M10 LH", (), 9.0, [_shifted(1, 2, 3)]),
        ("Tr16x4", (), 8.1, []),
        ("M10", ("relief.thread.applies_to=thread",), 12.0, []),
    ],
)
def test_another_rake_alone_is_named(
    designation: str, sets: tuple[str, ...], rake: float, moves: list[Move]
) -> None:
    tap = _short(designation, *sets)
    found = _found(tap, _made(_solid(designation, f"flutes.rake={rake}", *sets), *moves))
    assert replace(found, sizes=()) == _none(tap)
    assert _told(found) == {SizeName.RAKE: (pytest.approx(rake, abs=1e-5), pytest.approx(8))}


def test_what_is_no_such_cause_is_not_named(small_tap: Tap, small_solid: Solid) -> None:
    thicker = replace(small_tap, blank=replace(small_tap.blank, neck_diameter=6.5))
    wider = replace(small_tap, blank=replace(small_tap.blank, square_across_flats=4.9))
    for other in (thicker, wider):
        assert _found(other, small_solid) == _none(other)


@pytest.mark.parametrize("way", [(0, 1, 0), (1, 0, 0)], ids=["X", "Y"])
def test_a_tap_that_lies_down_is_measured_not_a_failure(
    way: tuple[int, int, int], small_tap: Tap, small_solid: Solid
) -> None:
    lying = _made(small_solid, _turned(way, 90))
    # Through the middle of a tap that lies down the planes cut far more than a tap's section.
    assert any(
        abs(station.area / station.area_expected - 1) > 1 for station in cut(small_tap, lying)
    )


def test_the_worst_difference_comes_first_in_a_unit_that_reads_well(
    small_tap: Tap, small_solid: Solid
) -> None:
    moved = prove_solid(small_tap, _made(small_solid, _shifted(0, 0, 0.16)))
    told = [text for text in differences(moved, FOREIGN) if text.endswith("m") or "m off" in text]
    assert told[0].endswith("by 0.16 mm") or told[0].endswith("0.16 mm off")
    lengths = {**moved.deviation_um_by_surface, **moved.ideal_um_by_feature}
    assert told[0].partition(":")[0] in lengths
    assert " µm" in " ".join(told[1:])
    assert "e+" not in " ".join(told)
