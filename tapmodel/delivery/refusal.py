"""What is said when the operating system refuses a folder."""

from pathlib import Path

from tapmodel.errors import InputError


def unusable(folder: Path, error: OSError) -> InputError:
    """The error that names `folder` and the reason."""
    reason = error.strerror or type(error).__name__
    return InputError("--out", str(folder), f"a folder that can be written ({reason})")
