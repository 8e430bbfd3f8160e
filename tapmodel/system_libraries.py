"""Libraries of the system that the program stands on and that a bare machine lacks."""

import re

from tapmodel.errors import MissingError

PACKAGES = {"libGL.so.1": "libgl1", "libEGL.so.1": "libegl1", "libX11.so.6": "libx11-6"}
"""Where Debian and Ubuntu have them."""

# The loader's words for a library that is not there, or no library.
_NAME = re.compile(r"(lib[\w+.-]+\.so[.\d]*): ")

# Windows names the module and not the library; what a fresh machine lacks is the runtime of its
# compiler.
_OF_WINDOWS = re.compile("DLL load failed")
_RUNTIME = "install the Microsoft Visual C++ Redistributable (x64)"


def lacking(library: str) -> str:
    """Words for a library that cannot be loaded, with the package to install."""
    package = PACKAGES.get(library, "that holds it")
    return f"{library} is missing; install the package {package} (name on Debian and Ubuntu)"


def missing(error: ImportError) -> MissingError | None:
    """The error for the user where a module failed to load for want of a system's library.

    Of one that failed for want of memory it would tell the wrong cause; see `out_of_memory`.
    """
    if _OF_WINDOWS.match(str(error)):
        return MissingError(f"the kernel cannot be loaded: {error}; {_RUNTIME}")
    named = _NAME.search(str(error))
    return MissingError(f"the kernel cannot be loaded: {lacking(named[1])}") if named else None
