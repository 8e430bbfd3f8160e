"""Makes the pictures that README.md and examples/README.md show, from proved models.

Run from the root of the repository: python examples/pictures.py [JOB ...]
"""

import sys
import tempfile
from pathlib import Path

from tapmodel.designing.design import design_tap
from tapmodel.export.formats import Format
from tapmodel.run.wish import Wish
from tapmodel.run.workshop import produce
from tapmodel.spec.job_file import read_job

HERE = Path(__file__).parent
PICTURES = HERE / "pictures"
SHOWN_WHOLE = "lens-cell"
"""The job of which every picture is shown, not the three-quarter view alone."""


def main(names: list[str]) -> None:
    """Build the jobs, all by default, and keep their pictures."""
    PICTURES.mkdir(exist_ok=True)
    for job in sorted(HERE.glob("*.toml")):
        if names and job.stem not in names:
            continue
        with tempfile.TemporaryDirectory() as scratch:
            produce(design_tap(read_job(job, [])), Path(scratch), print, Wish((Format.PICTURES,)))
            pattern = "*.png" if job.stem == SHOWN_WHOLE else f"{job.stem}.png"
            for picture in sorted((Path(scratch) / job.stem).glob(pattern)):
                (PICTURES / picture.name).write_bytes(picture.read_bytes())


if __name__ == "__main__":
    main(sys.argv[1:])
