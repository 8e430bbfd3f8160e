"""How numbers are written on drawings: rounded here and nowhere earlier."""


def mm(value: float, digits: int = 3) -> str:
    """A length without its unit, without idle zeros."""
    return f"{value:.{digits}f}".rstrip("0").rstrip(".")


def size(value: float) -> str:
    """A diameter with three decimals, so that it stands beside its limits."""
    return f"⌀{value:.3f}"


def degrees(value: float) -> str:
    """An angle to a hundredth of a degree."""
    return f"{value:.2f}°"


def scale_text(scale: float) -> str:
    """A scale as drawings state it, e.g. "2:1" or "1:2"."""
    return f"{scale:g}:1" if scale >= 1 else f"1:{1 / scale:g}"


_SCALES = [step * 10.0**power for power in (-1, 0, 1, 2) for step in (1, 2, 3, 4, 5, 6, 8)]


def fitting_scale(length: float, paper: float) -> float:
    """Largest round scale at which `length` [mm] of the part is at most `paper` mm long."""
    return max((s for s in _SCALES if s * length <= paper), default=_SCALES[0])
