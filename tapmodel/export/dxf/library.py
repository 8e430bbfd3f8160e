"""The DXF library as every module must load it: import this one before any name of the library.

By itself the library reads settings from the working folder, the home and the environment, stops
the program over a broken one, and letters with the fonts that happen to be installed: on a bare
machine with none, so that drawings have no numbers. Here it reads none, and has the one font that
comes along with the renderer.
"""

import json
import os
from collections.abc import Generator
from configparser import ConfigParser
from contextlib import contextmanager
from importlib import resources
from importlib.util import find_spec
from pathlib import Path

FONT = "DejaVuSans.ttf"
FAMILY = "DejaVu Sans"


@contextmanager
def _own_settings() -> Generator[None]:
    """Nothing of the machine's settings or caches is seen within the block."""
    read, cache = ConfigParser.read, os.environ.get("XDG_CACHE_HOME")
    ConfigParser.read = lambda *_files, **_how: []  # pyright: ignore[reportUnknownLambdaType]
    os.environ["XDG_CACHE_HOME"] = str(resources.files("tapmodel.export.dxf") / "settings")
    try:
        yield
    finally:
        ConfigParser.read = read
        if cache is None:
            del os.environ["XDG_CACHE_HOME"]
        else:
            os.environ["XDG_CACHE_HOME"] = cache


def font_file() -> Path:
    """The file of the font that drawings are lettered with; others of its family lie beside it.

    Raises:
        ModuleNotFoundError: the package that brings it along is not installed.
    """
    # Of this package nothing but the font is used, so it is not loaded.
    spec = find_spec("matplotlib")
    if spec is None or spec.origin is None:
        raise ModuleNotFoundError("matplotlib", name="matplotlib")
    return Path(spec.origin).parent / "mpl-data" / "fonts" / "ttf" / FONT


with _own_settings():
    from ezdxf.fonts import fonts

fonts.font_manager.loads(
    json.dumps({"version": 2, "font-faces": [(str(font_file()), FAMILY, "Book", 400, 5)]})
)
