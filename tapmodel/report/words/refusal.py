"""Why a job is refused, in words."""

from functools import partial

from tapmodel.errors import NoTapError, RefusedError
from tapmodel.findings import gravest_first
from tapmodel.report.words.findings import what
from tapmodel.report.words.no_solid import no_solid


def refusal(error: RefusedError) -> str:
    """What is said where the errors themselves are already told, and of a tap that is none."""
    if isinstance(error, NoTapError):
        return _no_tap(error)
    impossible = _impossible(error)
    if not impossible:
        return "not built, see the errors above; --force builds it anyway"
    even = "even --force cannot build it" if error.forced else "--force could not build it either"
    return f"not built, see the errors above; {even}: {impossible}"


def refusal_on_page(error: RefusedError) -> str:
    """The same beside the findings of a page, where a button builds what can be built."""
    if isinstance(error, NoTapError):
        return _no_tap(error)
    impossible = _impossible(error)
    if not impossible:
        return "Not built, as it breaks a rule: see what was found."
    return f"Not built, as no solid can be made of it: {impossible}."


def _no_tap(error: NoTapError) -> str:
    return " ".join(map(partial(what, units=error.units), gravest_first(error.findings)))


def _impossible(error: RefusedError) -> str:
    """Why there is no solid, each reason with the code of its finding; "" where there is one."""
    return "; ".join(
        f"{no_solid(f.no_solid, error.units)} [{f.code}]" for f in error.findings if f.no_solid
    )
