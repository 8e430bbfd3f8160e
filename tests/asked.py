"""Designs that tests ask for: in one process each job is designed once, whoever asks again."""

from collections.abc import Iterable
from functools import lru_cache

from tapmodel.designing.design import design_tap, settled_tap
from tapmodel.designing.record import TapDesign
from tapmodel.spec.job_file import job_for


def design_of(designation: str, sets: Iterable[str] = ()) -> TapDesign:
    """The design of a designation with values set, its cures and runners-up sought.

    Raises:
        InputError, NoTapError: as `design_tap`.
    """
    return _designed(designation, tuple(sets))


def settled_of(designation: str, sets: Iterable[str] = ()) -> TapDesign:
    """The same tap and findings without cures and runners-up, in a tenth of the time.

    Raises:
        InputError, NoTapError: as `settled_tap`.
    """
    return _settled(designation, tuple(sets))


# Designs are frozen, so that no test can change what another is given.
@lru_cache(maxsize=256)
def _designed(designation: str, sets: tuple[str, ...]) -> TapDesign:
    return design_tap(job_for(designation, sets))


@lru_cache(maxsize=1024)
def _settled(designation: str, sets: tuple[str, ...]) -> TapDesign:
    return settled_tap(job_for(designation, sets))
