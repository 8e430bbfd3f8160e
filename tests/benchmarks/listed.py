"""Laws that tests hold a sample of the listed sizes to, held to every one of them.

    python tests/benchmarks/listed.py

Runs those tests with every size that a standard lists, in either hand and with 1 to 4 starts.
"""

import os
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from listed_jobs import EVERY

TESTS = Path(__file__).parents[1]
SAMPLING = (
    *("design/test_lands_and_chips.py", "design/test_listed.py"),
    "shop/test_wires_of_listed_sizes.py",
)


def main() -> None:
    """Run them."""
    os.environ[EVERY] = "1"
    sys.exit(pytest.main(["-n", "2", *(str(TESTS / name) for name in SAMPLING)]))


if __name__ == "__main__":
    main()
