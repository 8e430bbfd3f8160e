"""A file that lacks its end, or any byte of it, is noticed."""

import struct
import zlib
from pathlib import Path

import ezdxf
import pytest
import typst

from tapmodel.errors import KernelError
from tapmodel.export.complete import demand_complete
from tapmodel.export.dxf.document import dxf_bytes, new_document


def _chunk(kind: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))


def _png(rows: int) -> bytes:
    """A grey picture of 3 by 4 pixels, said; with so many rows."""
    head = struct.pack(">IIBBBBB", 3, 4, 8, 0, 0, 0, 0)
    pixels = zlib.compress(b"\0abc" * rows)
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        _chunk(*part) for part in ((b"IHDR", head), (b"IDAT", pixels), (b"IEND", b""))
    )


WHOLE = {
    "a.png": _png(4),
    "a.pdf": typst.compile(b"Numbers of a tap"),
    "a.dxf": dxf_bytes(new_document()),
    "a.svg": b'<svg xmlns="http://www.w3.org/2000/svg"><path d="M 0 0"/></svg>',
    "a.html": b"<!doctype html><html><body>tap</body></html>\n",
    "a.stl": b"binary".ljust(80) + struct.pack("<I", 2) + bytes(100),
}


def _is_whole(path: Path, content: bytes) -> bool:
    path.write_bytes(content)
    try:
        return demand_complete(path) == path
    except KernelError as error:
        return path.name not in str(error)


@pytest.mark.parametrize("name", WHOLE)
def test_a_whole_file_passes_and_one_cut_off_anywhere_does_not(name: str, tmp_path: Path) -> None:
    content, path = WHOLE[name], tmp_path / name
    assert _is_whole(path, content)
    # What ends a text may lack its line end and still be whole.
    ends = [*range(0, len(content) - 3, max(1, len(content) // 50)), len(content.rstrip()) - 1]
    assert [end for end in ends if _is_whole(path, content[:end])] == []


def test_a_picture_with_a_changed_byte_or_too_few_rows_is_not_whole(tmp_path: Path) -> None:
    path = tmp_path / "a.png"
    assert not _is_whole(path, _png(3))
    for place in range(len(_png(4))):
        changed = bytearray(_png(4))
        changed[place] ^= 1
        assert not _is_whole(path, bytes(changed)), place


def test_a_file_of_zeros_is_not_whole(tmp_path: Path) -> None:
    for name, content in WHOLE.items():
        if not name.endswith("stl"):
            half = len(content) // 2
            torn = content[:half] + bytes(len(content) - half)
            assert not _is_whole(tmp_path / name, torn), name


def test_what_passes_as_a_plan_is_opened_by_a_reader(tmp_path: Path) -> None:
    path = tmp_path / "a.dxf"
    path.write_bytes(WHOLE["a.dxf"])
    assert ezdxf.readfile(path).audit().has_errors is False
