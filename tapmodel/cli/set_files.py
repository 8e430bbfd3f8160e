"""The job files of a set: all are written or none, and none of an older set stays beside them."""

import os
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from tapmodel.cli.ending import say
from tapmodel.cli.new_file import refuse_taken
from tapmodel.cli.telling import shell_word
from tapmodel.errors import InputError, escaped

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tapmodel.designing.record import TapDesign
    from tapmodel.spec.job import Job


@dataclass(frozen=True, slots=True)
class SetFiles:
    """Where the jobs of a set go.

    Attributes:
        folder: of the files.
        name: of the one tap whose work is shared, with which every file's name begins.
        most: taps that a set of this program may have.
    """

    folder: Path
    name: str
    most: int

    def of(self, number: int) -> Path:
        """The file of the tap with that number."""
        return self.folder / f"{self.name}-{number}.toml"


def write_set(
    to: SetFiles, jobs: "Sequence[Job]", designs: "Sequence[TapDesign]", *, overwrite: bool
) -> None:
    """Write all files or, where a name is taken, none; then take an older set's others away.

    Only a file is taken away that is to the letter what this program wrote for a tap of a set of
    that name and thread; any other that is named like one is told, and stays.

    Raises:
        InputError: a name that is taken, or what the operating system refuses.
    """
    from tapmodel.export.atomic import write_whole
    from tapmodel.report.set_job_file import job_of_set

    files = [to.folder / f"{design.name}.toml" for design in designs]
    thread = designs[-1].designation
    beyond = {number: to.of(number) for number in range(len(files) + 1, to.most + 1)}
    ours = [file for number, file in beyond.items() if _is_ours(file, number, thread)]
    for file in (*files, *ours):
        refuse_taken(file, overwrite=overwrite)
    to.folder.mkdir(parents=True, exist_ok=True)
    for file, job, design in zip(files, jobs, designs, strict=True):
        write_whole(file.resolve(), job_of_set(job, design, to.folder).encode())
        say(escaped(f"wrote {file}; then: tapmodel build {shell_word(str(file))}"), aside=True)
    for file in beyond.values():
        _clear(file, ours=file in ours)


def _is_ours(file: Path, number: int, thread: str) -> bool:
    """Whether the program wrote it; what cannot be read, or is a link, nobody can tell."""
    from tapmodel.report.set_job_file import is_job_of_set
    from tapmodel.spec.toml_file import LARGEST_FILE

    try:
        if file.is_symlink() or not file.is_file() or file.stat().st_size > LARGEST_FILE:
            return False
        return is_job_of_set(file.read_bytes().decode(), number, thread)
    except (OSError, ValueError):
        return False


def _clear(file: Path, *, ours: bool) -> None:
    if not os.path.lexists(file):
        return
    if not ours:
        say(escaped(f"left {file}: it is not as a set of this thread wrote it"), aside=True)
        return
    try:
        file.unlink()
    except OSError as error:
        raise InputError("FILE", str(file), "a file of an older set that can be removed") from error
    say(escaped(f"removed {file}: a tap of the older set"), aside=True)
