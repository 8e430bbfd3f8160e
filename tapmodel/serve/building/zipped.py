"""Many files as one, written while it is being sent."""

import io
import zipfile
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from tapmodel.export.clock import stamp

if TYPE_CHECKING:
    from typing_extensions import Buffer

_BLOCK = 1 << 18


class _Sent(io.RawIOBase):
    """What was written and not yet taken; the archive finds that it cannot go back in it."""

    def __init__(self) -> None:
        self._blocks: list[bytes] = []

    def writable(self) -> bool:
        return True

    def write(self, block: "Buffer", /) -> int:
        self._blocks.append(bytes(block))
        return len(self._blocks[-1])

    def taken(self) -> bytes:
        blocks, self._blocks = self._blocks, []
        return b"".join(blocks)


def zipped(files: Mapping[str, Path]) -> Iterator[bytes]:
    """An archive of files by their names in it, a block at a time."""
    sent, when = _Sent(), stamp().timetuple()[:6]
    with zipfile.ZipFile(sent, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, path in files.items():
            entry = zipfile.ZipInfo(name, when)
            entry.compress_type = zipfile.ZIP_DEFLATED
            with path.open("rb") as file, archive.open(entry, "w", force_zip64=True) as packed:
                while block := file.read(_BLOCK):
                    packed.write(block)
                    yield sent.taken()
    yield sent.taken()
