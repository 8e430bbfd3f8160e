"""How the processes of a run share the work."""

from pathlib import Path
from typing import Any

from tapmodel.designing.record import TapDesign
from tapmodel.export.formats import Format, parse_formats
from tapmodel.export.step.read_back import prove_step
from tapmodel.geometry.kernel.solid import shapes as kernel
from tapmodel.geometry.kernel.solid_bytes import to_bytes
from tapmodel.geometry.kernel.topology import Solid, faces
from tapmodel.run.desk import work
from tapmodel.run.desk.handover import MeshFile, put_down_solid
from tapmodel.run.wish import Order, Wish
from tapmodel.stages import Stage


def test_a_desk_with_pictures_or_much_to_write_leaves_the_step_file_to_the_kernel():
    texts = ("step", "step,sheet", "step,stl", "stl", "step,stl,dxf", "step,pictures", "step,page")
    there = [text for text in texts if Wish(parse_formats(text)).step_at_desk]
    assert there == ["step", "step,sheet", "step,stl"]
    assert not Wish().step_at_desk


class _Line:
    """A line on which some messages have come already."""

    def __init__(self, *messages: object) -> None:
        self._messages = list(messages)
        self.passed: list[Any] = []
        self.stages: list[Stage] = []

    def hear(self) -> object:
        return self._messages.pop(0)

    def pass_on(self, what: object) -> None:
        self.passed.append(what)

    def stage(self, stage: Stage) -> None:
        self.stages.append(stage)


def test_the_desk_writes_and_judges_the_last_solid(
    small_design: TapDesign, small_solid: Solid, tmp_path: Path
):
    order = Order(small_design, tmp_path, Wish((Format.STEP,)))
    leaking = Solid(kernel.solid(faces(small_solid.wrapped)[:-1]))
    mesh = MeshFile(tmp_path / "mesh", 0.01)

    def heard(*solids: Solid) -> _Line:
        handed = [put_down_solid(to_bytes(solid), tmp_path) for solid in solids]
        line = _Line(*handed, mesh)
        assert work._from_solid(line, order) is mesh
        return line

    assert heard(leaking).passed == [False]
    # As when the first could not be meshed.
    both = heard(leaking, small_solid)
    assert both.passed == [True]
    assert both.stages == [*2 * [Stage.STEP_FILE, Stage.READ_BACK], Stage.PROOF]
    assert [path.suffix for path in tmp_path.iterdir()] == [".step"]
    prove_step(order.file(".step"), small_solid)


def test_a_desk_that_is_handed_no_solid_judges_none(small_design: TapDesign, tmp_path: Path):
    mesh = MeshFile(tmp_path / "mesh", 0.01)
    line = _Line(mesh)
    assert work._from_solid(line, Order(small_design, tmp_path, Wish((Format.STL,)))) is mesh
    assert (line.passed, line.stages) == ([], [])
