"""Whether a JOB is a file."""

import os


def is_file(text: str) -> bool:
    """Whether a JOB is a file rather than a designation."""
    has_folder = any(sep in text for sep in (os.sep, os.altsep) if sep)
    return text.lower().endswith(".toml") or (has_folder and os.path.exists(text))  # noqa: PTH110  (never raises)
