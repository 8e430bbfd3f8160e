"""Whether a file that nothing else reads back is whole, from its first byte to its last."""

import csv
import io
import struct
import zlib
from collections.abc import Callable
from pathlib import Path
from xml.etree import ElementTree as ET

from tapmodel.errors import KernelError
from tapmodel.stages import Stage


def demand_complete(path: Path) -> Path:
    """Read a file back and hold it to its format; kinds that are measured elsewhere pass.

    Args:
        path: of the file; its suffix tells the format.

    Returns:
        `path`.

    Raises:
        KernelError: when it is cut off or damaged.
        OSError: when it cannot be read.
    """
    check = _CHECKS.get(path.suffix)
    if check is not None:
        try:
            check(path.read_bytes())
        except (ValueError, LookupError, struct.error, zlib.error, ET.ParseError) as error:
            raise KernelError(Stage.READ_BACK, f"{path.name} is not whole: {error}") from error
    return path


def _png(content: bytes) -> None:
    """Source: PNG specification, third edition, sections 5 and 9 (from memory)."""
    if content[:8] != b"\x89PNG\r\n\x1a\n":
        raise ValueError("no PNG")
    place, pixels, kind, head = 8, b"", b"", b""
    while kind != b"IEND":
        length, kind = struct.unpack_from(">I4s", content, place)
        data = content[place + 8 : place + 8 + length]
        (check,) = struct.unpack_from(">I", content, place + 8 + length)
        if zlib.crc32(kind + data) != check:
            raise ValueError("wrong check sum")
        head = data if kind == b"IHDR" else head
        pixels += data if kind == b"IDAT" else b""
        place += 12 + length
    width, height, depth, colours = struct.unpack_from(">IIBB", head)
    channels = {0: 1, 2: 3, 4: 2, 6: 4}[colours]
    row = 1 + (width * depth * channels + 7) // 8
    if len(zlib.decompress(pixels)) != height * row or place != len(content):
        raise ValueError("too few rows")


def _pdf(content: bytes) -> None:
    """Source: ISO 32000-1, 7.5 (from memory)."""
    lines = content.split()
    if not content.startswith(b"%PDF-") or lines[-1] != b"%%EOF" or lines[-3] != b"startxref":
        raise ValueError("no end of a PDF")
    table = content[int(lines[-2]) :]
    if not (table.startswith(b"xref") or table.split(None, 3)[2:3] == [b"obj"]):
        raise ValueError("no table of objects")


def _dxf(content: bytes) -> None:
    """Pairs of a number and a value, sections that end, and the mark of the end."""
    lines = content.decode().splitlines()
    pairs = list(zip(map(int, lines[::2]), lines[1::2], strict=True))
    begun, ended = pairs.count((0, "SECTION")), pairs.count((0, "ENDSEC"))
    if pairs[-1] != (0, "EOF") or begun != ended:
        raise ValueError("no end of a DXF file")


def _svg(content: bytes) -> None:
    ET.fromstring(content)  # noqa: S314  (a file of our own that was written a moment ago)


def _html(content: bytes) -> None:
    if not content.decode().rstrip().endswith("</html>"):
        raise ValueError("no end of a page")


def _stl(content: bytes) -> None:
    (facets,) = struct.unpack_from("<I", content, 80)
    if len(content) != 84 + 50 * facets:
        raise ValueError("too few facets")


def _csv(content: bytes) -> None:
    text = content.decode()
    lines = csv.reader(io.StringIO(text, newline=""))
    if not text.endswith("\n") or len({len(line) for line in lines}) != 1:
        raise ValueError("lines of different lengths")


_CHECKS: dict[str, Callable[[bytes], None]] = {
    ".png": _png,
    ".pdf": _pdf,
    ".dxf": _dxf,
    ".svg": _svg,
    ".html": _html,
    ".stl": _stl,
    ".csv": _csv,
}
