"""A designation of several words that was typed without quotes: Tr12x3 LH."""

from collections.abc import Collection, Sequence
from pathlib import Path
from typing import Any

from typer.core import TyperCommand

from tapmodel.errors import InputError, WriteError
from tapmodel.spec.lengths import bare_number

_UNITS = ("in", "inch", "inches", "mm")


class JobCommand(TyperCommand):
    """A command whose JOB may be of several words."""

    def __init__(self, *arguments: Any, **settings: Any) -> None:  # noqa: ANN401  (the library's own)
        """As the library's, but words beyond the arguments are looked at here."""
        super().__init__(*arguments, **settings)
        self.allow_extra_args = True

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:  # noqa: ANN401  (its own name)
        """Give what is left over to the JOB, where it reads as one with it.

        Raises:
            InputError: where it does not.
        """
        _refuse_parted(args, {name for one in self.params for name in _valued(one)})
        over = super().parse_args(ctx, args)
        if over and not ctx.resilient_parsing:
            _give(ctx.params, over)
            ctx.args = over = []
        return over


def _valued(param: Any) -> Sequence[str]:  # noqa: ANN401  (the library's own)
    """Names of an option that takes a value; none of whatever else it is."""
    return () if getattr(param, "is_flag", True) else param.opts


def _refuse_parted(args: Sequence[str], options: Collection[str]) -> None:
    """Refuse a length with a blank before its unit, as an option's value: --wire 0.035 in.

    Raises:
        WriteError: the unit would be taken for a word of the JOB.
    """
    for before, number, unit in zip(["", *args], args, args[1:], strict=False):
        option, _, value = number.partition("=") if "=" in number else ("", "", number)
        named = before in options or option in options
        if named and unit.lower() in _UNITS and bare_number(value) is not None:
            name = option if option in options else before
            typed = f"{number} {unit}" if before in options else f"{value} {unit}"
            whole = typed.replace(" ", "")
            raise WriteError(name, typed, f"{whole}, without the blank before {unit}")


def _give(values: dict[str, Any], over: Sequence[str]) -> None:
    """Put the words where they belong: `new` has a file behind its JOB."""
    if "designation" in values:
        *words, file = (values["designation"], str(values["file"]), *over)
        values |= {"designation": _joined(words), "file": Path(file)}
    else:
        values["job"] = _joined((values["job"], *over))


def _joined(words: Sequence[str]) -> str:
    """The words as one designation."""
    from tapmodel.spec.designation import parse

    text = " ".join(words)
    if any(word.lower().endswith(".toml") for word in words) or _reads(words[-1]):
        allowed = 'one JOB; a thread of several words is one in quotes: "Tr12x3 LH"'
        raise InputError("JOB", text, allowed)
    parse(text)
    return text


def _reads(word: str) -> bool:
    from tapmodel.spec.designation import parse

    try:
        parse(word)
    except InputError:
        return False
    return True
