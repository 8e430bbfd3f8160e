"""A script of its own: whether this machine can draw off-screen, tried as the renderer would.

A machine without the libraries, or with a broken driver, may end the process that tries; so that
must be one that nobody misses. Prints the name of a library that is missing, or nothing; ends
with 0 where a picture can be drawn.

Source: EGL 1.5 and EGL_EXT_platform_device (Khronos, from memory) for functions and numbers.
"""

import ctypes
import sys

_PLATFORM_DEVICE, _OPENGL_API = 0x313F, 0x30A2
_NONE, _SURFACE_TYPE, _PBUFFER, _RENDERABLE, _OPENGL = 0x3038, 0x3033, 1, 0x3040, 8
_MAJOR, _MINOR, _PROFILE, _CORE = 0x3098, 0x30FB, 0x30FD, 1


def _library(name: str) -> ctypes.CDLL:
    try:
        return ctypes.CDLL(name)
    except OSError:
        sys.stdout.write(name)
        sys.exit(1)


def _displays(egl: ctypes.CDLL) -> list[int | None]:
    """Of the first device, and the one that the system holds for usual."""
    egl.eglGetDisplay.restype = ctypes.c_void_p
    found: list[int | None] = [egl.eglGetDisplay(None)]
    egl.eglGetProcAddress.restype = ctypes.c_void_p
    query = egl.eglGetProcAddress(b"eglQueryDevicesEXT")
    display_of = egl.eglGetProcAddress(b"eglGetPlatformDisplayEXT")
    if query and display_of:
        pointer, number = ctypes.c_void_p, ctypes.c_int
        device, count = pointer(), number()
        ask = ctypes.CFUNCTYPE(ctypes.c_uint, number, pointer, pointer)(query)
        if ask(1, ctypes.addressof(device), ctypes.addressof(count)) and count.value:
            get = ctypes.CFUNCTYPE(pointer, ctypes.c_uint, pointer, pointer)(display_of)
            found.insert(0, get(_PLATFORM_DEVICE, device, None))
    return found


def _numbers(*values: int) -> ctypes.Array[ctypes.c_int]:
    return (ctypes.c_int * len(values))(*values)


def _draws(egl: ctypes.CDLL, display: int | None) -> bool:
    """Whether a display gives a context of OpenGL 3.2."""
    pointer = ctypes.c_void_p
    egl.eglCreateContext.restype = pointer
    shown = pointer(display)
    if not (display and egl.eglInitialize(shown, None, None) and egl.eglBindAPI(_OPENGL_API)):
        return False
    config, count = pointer(), ctypes.c_int()
    wanted = _numbers(_SURFACE_TYPE, _PBUFFER, _RENDERABLE, _OPENGL, _NONE)
    chosen = egl.eglChooseConfig(shown, wanted, ctypes.byref(config), 1, ctypes.byref(count))
    version = _numbers(_MAJOR, 3, _MINOR, 2, _PROFILE, _CORE, _NONE)
    return bool(chosen and count.value and egl.eglCreateContext(shown, config, None, version))


if __name__ == "__main__":
    _library("libGL.so.1")
    library = _library("libEGL.so.1")
    sys.exit(not any(_draws(library, display) for display in _displays(library)))
