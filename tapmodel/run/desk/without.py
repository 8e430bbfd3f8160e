"""What others would load beside themselves, and nothing at the desk asks them for."""

import sys
from collections.abc import Generator
from contextlib import contextmanager


@contextmanager
def without(library: str) -> Generator[None]:
    """While this lasts, a library that is not loaded yet is told not to be there.

    trimesh would take along scipy, which it can do without: three quarters of all its loading, for
    searches and fits that no proof and no file here needs. Only a process of our own may do so;
    elsewhere trimesh would be left without it for whoever else uses it.
    """
    if library in sys.modules:
        yield
        return
    # Python's own word for a module that cannot be imported.
    sys.modules[library] = None  # pyright: ignore[reportArgumentType]
    try:
        yield
    finally:
        del sys.modules[library]
