"""Processes started before there is a crew to take them, or even a command line that was read.

Loads next to nothing: a process that is started a hundredth of a second later ends as much later.
"""

from tapmodel.run.process import Process

_ATTEND = "from tapmodel.run.crew import attend; attend()"
_BEGUN: dict[str, Process] = {}
"""By the module that they load: those that no crew has taken yet."""


def begin(*modules: str) -> None:
    """Start processes that a crew will want."""
    _BEGUN.update({module: Process(_ATTEND, module) for module in modules})


def taken(module: str) -> Process:
    """The process that was begun for a module, else a new one."""
    return _BEGUN.pop(module, None) or Process(_ATTEND, module)


def dismiss() -> None:
    """End the processes begun that no crew has taken."""
    while _BEGUN:
        _BEGUN.popitem()[1].end()
