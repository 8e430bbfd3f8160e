"""What was written: size and check sum of each file."""

import hashlib
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class FileRecord:
    """One file.

    Attributes:
        path: relative to the folder of the run, with forward slashes.
        bytes: its size.
        sha256: check sum, as hexadecimals.
    """

    path: str
    bytes: int
    sha256: str


def file_record(path: Path, folder: Path) -> FileRecord:
    """Read a file back and record it.

    Args:
        path: of the file.
        folder: of the run, which holds it.
    """
    with path.open("rb") as stream:
        digest = hashlib.file_digest(stream, "sha256").hexdigest()
    return FileRecord(path.relative_to(folder).as_posix(), path.stat().st_size, digest)
