"""Sweeps of which the tests take a part, whole: every listed size, every value, unit and paper.

    python tests/benchmarks/whole.py [FILE ...]

Runs the files of tests that hold such sweeps, or those that are named.
"""

import os
import re
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1]))

from sweeps import WHOLE

TESTS = Path(__file__).parents[1]
PARTED = re.compile(r"import .*\b(in_part|in_turn|sampled|whole)$", re.MULTILINE)
"""What a file of tests says that takes a part."""


def main(named: list[str]) -> None:
    """Run them."""
    os.environ[WHOLE] = "1"
    files = sorted(TESTS.rglob("test_*.py"))
    parted = [str(path) for path in files if PARTED.search(path.read_text(encoding="utf-8"))]
    sys.exit(pytest.main(["-n", "2", *(named or parted)]))


if __name__ == "__main__":
    main(sys.argv[1:])
