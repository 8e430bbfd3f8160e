"""The page as it is served."""

from collections.abc import Iterator

import pytest
from served_page import Served, serving

from tapmodel.run.crew import Limits
from tapmodel.serve.building.builds import Builds


@pytest.fixture
def served() -> Iterator[Served]:
    """Opens with M10, and builds nothing yet."""
    with Builds(Limits()) as builds:
        yield serving(builds)
