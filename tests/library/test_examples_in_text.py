"""Every example in a docstring runs as it stands there."""

import doctest
from importlib import import_module

import pytest

MODULES = (
    *("tapmodel", "tapmodel.library.designed", "tapmodel.library.comparison"),
    "tapmodel.library.measured",
)


@pytest.mark.parametrize("name", MODULES)
def test_examples(name: str) -> None:
    found = doctest.testmod(import_module(name))
    assert found.attempted > 0
    assert found.failed == 0
