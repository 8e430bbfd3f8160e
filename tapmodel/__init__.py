"""From one thread designation to a verified 3-D model of the cutting tap for it.

    >>> import tapmodel
    >>> tap = tapmodel.design("M18x0.75", {"flutes.count": 5})
    >>> round(tap.figures.rake_crest, 6)
    8.0

Nothing is loaded before it is used: the kernel only when a solid is asked for.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

from tapmodel.version import __version__

if TYPE_CHECKING:
    from tapmodel.errors import InputError, KernelError, NoTapError, RefusedError, TapmodelError
    from tapmodel.library.comparison import Comparison, compare
    from tapmodel.library.designed import DesignedTap, design
    from tapmodel.library.measured import MeasuredTap, measured
    from tapmodel.run.record.model import Record
    from tapmodel.run.record.read import read_record
    from tapmodel.spec.job import Job

_HOMES = {
    "Comparison": "tapmodel.library.comparison",
    "DesignedTap": "tapmodel.library.designed",
    "InputError": "tapmodel.errors",
    "Job": "tapmodel.spec.job",
    "KernelError": "tapmodel.errors",
    "MeasuredTap": "tapmodel.library.measured",
    "NoTapError": "tapmodel.errors",
    "Record": "tapmodel.run.record.model",
    "RefusedError": "tapmodel.errors",
    "TapmodelError": "tapmodel.errors",
    "compare": "tapmodel.library.comparison",
    "design": "tapmodel.library.designed",
    "measured": "tapmodel.library.measured",
    "read_record": "tapmodel.run.record.read",
}

__all__ = [
    "Comparison",
    "DesignedTap",
    "InputError",
    "Job",
    "KernelError",
    "MeasuredTap",
    "NoTapError",
    "Record",
    "RefusedError",
    "TapmodelError",
    "__version__",
    "compare",
    "design",
    "measured",
    "read_record",
]


def __getattr__(name: str) -> Any:  # noqa: ANN401  (whatever the name stands for)
    if name not in _HOMES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    found = getattr(import_module(_HOMES[name]), name)
    globals()[name] = found
    return found


def __dir__() -> list[str]:
    return __all__
