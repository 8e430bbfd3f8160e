"""The faster way to write paths is the library's, to the letter."""

from ezdxf.addons.drawing import layout, svg
from ezdxf.npshapes import NumpyPath2d
from ezdxf.path import Path

from tapmodel.report.drawings.pen import Pen

A4, SETTINGS = layout.Page(210, 297), layout.Settings()


def every_step() -> NumpyPath2d:
    path = Path((1.4, -2.6))
    path.line_to((3.5, 4.5))
    path.curve3_to((7.3, 1.2), (5.8, 9.1))
    path.curve4_to((2.2, 8.7), (6.6, 0.1), (-1.5, 3.3))
    path.move_to((20.2, 30.7))
    path.line_to((20.1, 30.9))
    return NumpyPath2d(path)


def test_paths_are_written_as_the_library_writes_them() -> None:
    ours, theirs = Pen.make_backend(A4, SETTINGS), svg.SVGRenderBackend(A4, SETTINGS)
    for close in (False, True):
        written = ours.make_path_str(every_step(), close)
        assert written == theirs.make_path_str(every_step(), close)
        assert written.count("q") == written.count("c") == written.count("m") == 1
    empty = NumpyPath2d(Path((1.0, 2.0)))
    assert ours.make_path_str(empty) == theirs.make_path_str(empty) == ""
