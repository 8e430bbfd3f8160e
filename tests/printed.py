"""What stands on the pages of a PDF and where, as a viewer's library reads it."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pypdfium2

_MM = 25.4 / 72  # in a point


@dataclass(frozen=True, slots=True)
class Page:
    """A printed page.

    Attributes:
        width: of the paper [mm].
        height: of the paper [mm].
        lines: of text, in the order in which they were set.
    """

    width: float
    height: float
    lines: tuple[str, ...]

    @property
    def text(self) -> str:
        """All of it with a blank between words, however the lines run."""
        return " ".join(" ".join(self.lines).split())


@dataclass(frozen=True, slots=True)
class Piece:
    """Words of one line and one lettering.

    Attributes:
        text: the words.
        left: from the left edge of the page to the ink of the first letter [mm].
        foot: from the lower edge of the page to the ink of the lowest letter [mm].
    """

    text: str
    left: float
    foot: float


def pages_of(pdf: Path | bytes) -> list[Page]:
    """The pages of a PDF, of which a file or the content is given."""
    return [
        Page(*(side * _MM for side in page.get_size()), lines=_lines(page)) for page in _opened(pdf)
    ]


def text_of(pdf: Path | bytes) -> str:
    """Of all pages, with a blank between words."""
    return " ".join(page.text for page in pages_of(pdf))


def pieces_of(pdf: Path | bytes) -> list[list[Piece]]:
    """The text of every page in pieces, in the order in which they were set."""
    return [_pieces(page) for page in _opened(pdf)]


# The library's types are partly unknown.
def _opened(pdf: Path | bytes) -> Any:  # noqa: ANN401
    return pypdfium2.PdfDocument(pdf)


def _lines(page: Any) -> tuple[str, ...]:  # noqa: ANN401
    return tuple(page.get_textpage().get_text_range().splitlines())


def _pieces(page: Any) -> list[Piece]:  # noqa: ANN401
    text = page.get_textpage()
    boxes = [text.get_rect(number) for number in range(text.count_rects())]
    return [Piece(text.get_text_bounded(*b).strip(), b[0] * _MM, b[1] * _MM) for b in boxes]
