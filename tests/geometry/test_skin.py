"""The skin without the kernel: it closes, and it is one sphere."""

from dataclasses import replace

import numpy as np
import pytest

from tapmodel.errors import KernelError
from tapmodel.geometry.surfaces.carriers import Carriers, Ruled
from tapmodel.geometry.trace import skin as skin_module
from tapmodel.geometry.trace.keys import FaceKind, wall
from tapmodel.geometry.trace.skin import Skin, first_skin, skin_of
from tapmodel.geometry.trace.tracing import Edge
from tapmodel.shape.form import Form
from tapmodel.tap.tap import Tap


@pytest.fixture(scope="module")
def small_skin(small_tap: Tap) -> Skin:
    return first_skin(small_tap)


def test_every_edge_joins_two_faces(small_skin: Skin) -> None:
    uses = [number for loops in small_skin.loops.values() for loop in loops for number, _ in loop]
    assert sorted(uses) == sorted(2 * list(range(len(small_skin.edges))))


def test_corners_edges_and_faces_make_one_disc_up_to_the_joint(small_skin: Skin) -> None:
    # The ring is open above: with one circle and one seam added there, it is a disc, and the
    # whole a sphere without a cap, V - E + F = 1. The ring's own cycle counts as its border.
    corners, edges = len(small_skin.corners), len(small_skin.edges)
    faces = sum(
        len(loops) for key, loops in small_skin.loops.items() if key.kind is not FaceKind.RING
    )
    assert corners - edges + faces == 1


def test_all_corners_lie_on_the_surfaces_of_the_form(small_tap: Tap, small_skin: Skin) -> None:
    form = Form(small_tap)
    radius = np.hypot(small_skin.corners[:, 0], small_skin.corners[:, 1])
    assert radius.max() == pytest.approx(form.crest_radius, abs=1e-12)
    assert small_skin.corners[:, 2].min() == 0.0


def test_strips_have_surfaces_hardly_longer_than_they_are(small_skin: Skin) -> None:
    carriers, used = Carriers(small_skin.form), list[tuple[float, float]]()
    strips = [key for key in small_skin.loops if key.kind is FaceKind.STRIP]
    for key in strips:
        carrier = carriers.carrier(key)
        assert isinstance(carrier, Ruled)
        numbers = [number for loop in small_skin.loops[key] for number, _ in loop]
        points = [small_skin.edges[number].samples.reshape(-1, 3) for number in numbers]
        u = carrier.uv(np.concatenate(points))[:, 0]
        used.append((float(u.min()), float(u.max())))
        assert carrier.knots[0] < u.min() < u.max() < carrier.knots[-1]
    longest = max(end for _, end in used) - min(start for start, _ in used)
    assert carrier.knots[-1] - carrier.knots[0] < 1.05 * longest


def test_a_lost_edge_is_noticed(small_tap: Tap, monkeypatch: pytest.MonkeyPatch) -> None:
    honest = skin_module.trace

    def forgetful(*arguments: object) -> list[Edge]:
        return honest(*arguments)[1:]  # type: ignore[arg-type]

    monkeypatch.setattr(skin_module, "trace", forgetful)
    with pytest.raises(KernelError, match="does not close"):
        skin_of(Form(small_tap))


@pytest.mark.parametrize("turns", [50, 51, 101])
def test_no_wall_of_a_flute_has_many_more_turns_than_fifty(small_tap: Tap, turns: int) -> None:
    blank = replace(small_tap.blank, thread_length=float(turns), overall_length=turns + 40.0)
    flutes = replace(small_tap.flutes, full_depth_length=turns + 2.0)
    skin = first_skin(replace(small_tap, blank=blank, flutes=flutes))
    floors = {key: loops for key, loops in skin.loops.items() if key.kind is FaceKind.FLOOR}
    lengths = -(-turns // 50)
    assert set(floors) == {wall(FaceKind.FLOOR, f, n) for f in range(3) for n in range(lengths)}
    for loops in floors.values():
        z = [skin.corners[skin.ends[number], 2] for loop in loops for number, _ in loop]
        assert np.ptp(z) < turns / lengths + 3
    # Lengths of one wall meet along its whole section.
    joints = {float(skin.edges[n].start[2]) for n, e in enumerate(skin.edges) if _inside(e)}
    assert sorted(joints) == pytest.approx(skin.form.joints.tolist())


def _inside(edge: Edge) -> bool:
    first, second = edge.carriers
    return first.kind is second.kind is FaceKind.FLOOR
