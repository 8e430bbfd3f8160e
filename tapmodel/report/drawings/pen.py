"""The library's own way to write a picture as SVG, but for the speed of its paths.

Letters are outlines: ten drawings have twenty thousand steps, which the library makes objects of,
one by one, before it writes them down. The text is the same to the letter.
"""

from collections.abc import Iterator, Sequence

from ezdxf.addons.drawing import layout, svg
from ezdxf.npshapes import NumpyPath2d
from ezdxf.path.commands import Command

_STEPS = {
    Command.LINE_TO: "l %.0f %.0f",
    Command.CURVE3_TO: "q %.0f %.0f %.0f %.0f",
    Command.CURVE4_TO: "c %.0f %.0f %.0f %.0f %.0f %.0f",
    Command.MOVE_TO: "m %.0f %.0f",
}
_WRITTEN = {int(command): (text, text.count("%") // 2) for command, text in _STEPS.items()}
"""How a step is written, and how many points it takes."""


class Pen(svg.SVGBackend):
    """Draws as SVG."""

    @staticmethod
    def make_backend(page: layout.Page, settings: layout.Settings) -> svg.SVGRenderBackend:
        """What writes a page down."""
        return _Writer(page, settings)


class _Writer(svg.SVGRenderBackend):
    @staticmethod
    def make_path_str(path: NumpyPath2d, close: bool = False) -> str:
        """A path as SVG has it, every point from the end of the step before."""
        if len(path) == 0:
            return ""
        points = path.to_list()
        steps = _steps(points, path.command_codes())
        begin = "M {:.0f} {:.0f}".format(*points[0])
        return " ".join([begin, *steps, *(["Z"] if close else [])])


def _steps(points: Sequence[Sequence[float]], codes: Sequence[int]) -> Iterator[str]:
    x, y = points[0]
    first = 1
    for code in codes:
        text, count = _WRITTEN[code]
        taken = points[first : first + count]
        yield text % tuple(value for u, v in taken for value in (u - x, v - y))
        x, y = taken[-1]
        first += count
