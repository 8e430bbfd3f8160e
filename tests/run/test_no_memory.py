"""However the system tells that there is no memory left, no file or option is to blame for it."""

import errno
import os
from pathlib import Path

import pytest

from tapmodel.cli.ending import code_of
from tapmodel.errors import InputError, KernelError, MissingError, TapmodelError
from tapmodel.export.atomic import whole_file
from tapmodel.run.crew import Crew, Limits, Task

SHORT = os.strerror(errno.ENOMEM)
UNMAPPED = "libTKernel.so.7.9: failed to map segment from shared object"
UNOPENED = f"libTKernel.so.7.9: cannot open shared object file: {SHORT}"

# What a child raises, and how its parent is told.
ENDINGS = {
    f"OSError({errno.ENOMEM}, {SHORT!r}, 'tapmodel/spec')": (KernelError, "memory: {}"),
    f"ImportError({UNMAPPED!r})": (KernelError, "memory: {}"),
    f"ImportError({UNOPENED!r})": (KernelError, "memory: {}"),
    "MemoryError()": (KernelError, "memory: {}"),
    f"OSError({errno.EACCES}, 'Permission denied', 'there')": (InputError, "output: 'there'"),
    "ImportError('libGL.so.1: cannot open shared object file')": (MissingError, "package libgl1"),
    "ImportError('no module named so')": (KernelError, "loading: no module named so"),
    "ArithmeticError('odd')": (KernelError, "kernel: ArithmeticError: odd"),
}


@pytest.mark.parametrize("raised", ENDINGS)
@pytest.mark.parametrize(
    ("module", "short"),
    [
        ("raise {}", "the machine has not enough"),
        ("def work(line): raise {}", "needed more than 900 MB"),
    ],
)
def test_a_child_tells_want_of_memory_from_other_faults(
    module: str, short: str, raised: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    kind, told = ENDINGS[raised]
    (tmp_path / "starved.py").write_text(module.format(raised))
    monkeypatch.setenv("PYTHONPATH", str(tmp_path))
    task = Task("kernel", "starved:work")
    with (
        Crew([task], Limits(memory_mb=900, seconds=60)) as crew,
        pytest.raises(TapmodelError, match=told.format(short)) as caught,
    ):
        crew.work({"kernel": None}, lambda _stage: None)
    assert type(caught.value) is kind


@pytest.mark.parametrize(
    ("number", "code", "told"),
    [
        (errno.ENOMEM, 3, "not enough memory"),
        (errno.EACCES, 2, f"there: {os.strerror(errno.EACCES)}"),
    ],
)
def test_a_command_that_ran_out_is_no_mistake_of_its_user(
    number: int, code: int, told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    def command() -> None:
        raise OSError(number, os.strerror(number), "there")

    assert code_of(command) == code
    assert told in capsys.readouterr().err


def test_no_path_is_to_blame_where_a_file_finds_no_memory(tmp_path: Path) -> None:
    with pytest.raises(MemoryError, match=SHORT), whole_file(tmp_path / "tap.stl"):
        raise OSError(errno.ENOMEM, SHORT)
    assert list(tmp_path.iterdir()) == []
