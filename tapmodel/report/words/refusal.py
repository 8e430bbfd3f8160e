"""Why a job is refused, in words."""

from functools import partial

from tapmodel.errors import NoTapError, RefusedError
from tapmodel.findings import gravest_first
from tapmodel.report.words.findings import what
from tapmodel.report.words.no_solid import no_solid


def refusal(error: RefusedError) -> str:
    """What is said where the errors themselves are already told, and of a tap that is none."""
    if isinstance(error, NoTapError):
        return " ".join(map(partial(what, units=error.units), gravest_first(error.findings)))
    impossible = [
        f"{no_solid(f.no_solid, error.units)} [{f.code}]" for f in error.findings if f.no_solid
    ]
    if not impossible:
        return "not built, see the errors above; --force builds it anyway"
    even = "even --force cannot build it" if error.forced else "--force could not build it either"
    return f"not built, see the errors above; {even}: {'; '.join(impossible)}"
