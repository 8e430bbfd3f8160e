"""Keys of faces tell all faces apart, and one carrier's faces from another's."""

from itertools import pairwise

from tapmodel.geometry.surfaces.carriers import Carriers, Cone, Cylinder
from tapmodel.geometry.trace import keys
from tapmodel.geometry.trace.keys import FaceKind
from tapmodel.shape.form import Form
from tapmodel.shape.profile import Part
from tapmodel.shape.walls import FACE, HEEL
from tapmodel.tap.tap import Tap


def test_a_key_is_told_by_the_numbers_that_count() -> None:
    assert str(keys.strip(0, -3, Part.REAR_FLANK)) == "strip (land 0, turn -3, rear flank)"
    assert str(keys.wall(keys.wall_kind(HEEL), 2, 1)) == "heel (flute 2, length 1)"
    assert str(keys.turned(1, 2)) == "turned (number 1, land 2)"
    assert str(keys.FRONT) == "front"


def test_faces_of_two_kinds_or_numbers_are_two() -> None:
    kinds = [keys.wall_kind(side) for side in (FACE, HEEL)] + [FaceKind.FLOOR]
    named = [
        *(keys.strip(land, turn, part) for land in (0, 1) for turn in (0, 1) for part in Part),
        *(keys.flat(land, part) for land in (0, 1) for part in (Part.CREST, Part.ROOT)),
        *(keys.cone(land) for land in (0, 1)),
        *(keys.thread_end(land, outwards=out) for land in (0, 1) for out in (True, False)),
        *(
            keys.wall(kind, flute, length)
            for kind in kinds
            for flute in (0, 1)
            for length in (0, 1)
        ),
        *(keys.run_out(kind, 0) for kind in (FaceKind.RUN_OUT, FaceKind.BALL)),
        *(keys.turned(number, land) for number in (0, 1) for land in (0, 1)),
        *(keys.ring(number) for number in (0, 1)),
        keys.FRONT,
    ]
    assert len(set(named)) == len(named)


def test_a_ring_goes_round_and_a_turned_length_lies_on_each_land() -> None:
    assert keys.ring(1).on_land(2) == keys.ring(1)
    assert keys.turned(1).on_land(2) == keys.turned(1, 2)


def test_flat_crests_of_a_land_share_a_sheet_and_flanks_do_not(small_tap: Tap) -> None:
    carriers = Carriers(Form(small_tap))
    shared = {
        part: {carriers.shared(keys.strip(0, turn, part)) for turn in range(3)} for part in Part
    }
    assert [len(shared[part]) for part in Part] == [1, 3, 1, 3]
    assert carriers.shared(keys.wall(FaceKind.FLOOR, 1, 2)) == keys.wall(FaceKind.FLOOR, 1, 0)


def test_neck_and_shank_are_cylinders_with_a_cone_between(small_tap: Tap) -> None:
    form = Form(small_tap)
    carriers = Carriers(form)
    made = [carriers.carrier(keys.turned(number)) for number in range(3)]
    assert [type(carrier) for carrier in made] == [Cylinder, Cone, Cylinder]
    for carrier, piece in zip(made, form.turned, strict=True):
        assert isinstance(carrier, Cylinder | Cone)
        assert (carrier.radius, carrier.frame.origin[2]) == (piece.start_radius, piece.start)


def test_parts_follow_one_another_round_the_pitch(small_tap: Tap) -> None:
    segments = Form(small_tap).segments
    assert list(segments) == list(Part)
    for part, following in pairwise([*Part, Part.CREST]):
        assert part.following is following
    for part in (Part.CREST, Part.REAR_FLANK, Part.ROOT):
        assert segments[part].end == segments[part.following].start
    assert [part for part in Part if part.is_flank] == [Part.REAR_FLANK, Part.FRONT_FLANK]
