"""Every exception of the package, on one page.

A message names the field, the value and what is allowed, and ends in the cure; that of a refusal
is made of its findings where it is printed, by `tapmodel.report.words`. A check that fails is not
an exception but a `tapmodel.findings.Finding`.
"""

from typing import cast

from tapmodel.findings import Finding
from tapmodel.stages import Stage
from tapmodel.words import Units

INTERRUPTED = 130
"""Exit code of a run that the user ended."""


def escaped(text: str) -> str:
    """`text` on one line, with every letter that does not print written as its escape.

    What a user typed may hold control characters, which would command the terminal, and bytes that
    are no letters.
    """
    return "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in text)


def shortened(text: str, most: int) -> str:
    """`text` as `escaped`, its middle left out beyond `most` letters."""
    plain = escaped(text)
    if len(plain) <= most:
        return plain
    # The end of a path is what tells the file.
    head = most // 3
    return f"{plain[:head]} ... {plain[head + 5 - most :]}"


def shown(value: object) -> object:
    """`value`, or words for it where writing it out would itself fail or flood the screen."""
    if isinstance(value, int) and value.bit_length() > 200:
        return f"a whole number of {value.bit_length()} bits"
    if isinstance(value, dict | list):
        kind = "table" if isinstance(value, dict) else "list"
        return f"a {kind} of {len(cast('list[object]', value))}"
    return value


class TapmodelError(Exception):
    """Base of all errors raised on purpose. `exit_code` is what the command line returns."""

    exit_code = 3


class InputError(TapmodelError):
    """Something the user gave cannot be used: bad file, unknown key, nonsense value."""

    exit_code = 2

    def __init__(self, field: str, value: object, allowed: str) -> None:
        """Name the `field`, show the `value` as given, say what is `allowed`."""
        self.field, self.value, self.allowed = field, value, allowed
        where, given, wanted = (
            shortened(text, most)
            for text, most in ((field, 160), (repr(value), 120), (allowed, 800))
        )
        super().__init__(f"{where}: {given} cannot be used{self.then(wanted)}")

    @staticmethod
    def then(wanted: str) -> str:
        """How the message ends."""
        return f"; allowed: {wanted}"

    def __reduce__(self) -> tuple[type["InputError"], tuple[str, object, str]]:
        """Let the error travel between processes."""
        return type(self), (self.field, self.value, self.allowed)


class NoCountError(TapmodelError, ValueError):
    """An entry of a list that names no whole number of the kind.

    The checking of jobs takes it as it is, being a `ValueError`, and `InputError` tells of it. Its
    own message never holds the entry, which may be a text that cannot be written out.
    """

    exit_code = 2

    def __init__(self, entry: object, how: str) -> None:
        """Keep the `entry`, and `how` it may be written."""
        self.entry, self.how = entry, how
        super().__init__("no whole number or range of them")

    def __reduce__(self) -> tuple[type["NoCountError"], tuple[object, str]]:
        """Let the error travel between processes."""
        return type(self), (self.entry, self.how)


class NoWireError(TapmodelError):
    """No wire measures a thread; `tapmodel.report.words.no_wire` says what hinders it."""

    exit_code = 2

    def __init__(self, name: str, air: float) -> None:
        """Name the thread, and by how much a wire has to stand clear of its crests [mm]."""
        self.name, self.air, self.units = name, air, Units.MM
        super().__init__(f"{name}: no wire suits that stands {air:g} mm clear of the crests")

    def __reduce__(self) -> tuple[type["NoWireError"], tuple[str, float]]:
        """Let the error travel between processes."""
        return type(self), (self.name, self.air)


class MeantError(InputError):
    """As `InputError`, where what is allowed is a guess at what was meant."""

    @staticmethod
    def then(wanted: str) -> str:
        """How the message ends."""
        return f"; did you mean {wanted}?"


class WriteError(InputError):
    """As `InputError`, where what is allowed is the value as it is to be written."""

    @staticmethod
    def then(wanted: str) -> str:
        """How the message ends."""
        return f"; write {wanted}"


class UnknownError(InputError):
    """As `InputError`, where the field itself is unknown, whatever its value."""

    def __init__(self, field: str, value: object, allowed: str) -> None:
        """Name the `field`, keep its `value`; `allowed` is what it may have been meant for."""
        super().__init__(field, value, allowed)
        self.args = (f"{shortened(field, 160)}: no such field; {shortened(allowed, 800)}",)


class LackingError(InputError):
    """As `InputError`, where nothing was typed that could be shown."""

    def __init__(self, field: str, value: object, allowed: str) -> None:
        """Name the `field` that lacks its value, say what is `allowed`."""
        super().__init__(field, value, allowed)
        self.args = (f"{field} is needed: {allowed}",)


class MissingError(TapmodelError):
    """The machine lacks something of its system's that the program stands on."""

    exit_code = 2


class RefusedError(TapmodelError):
    """The design breaks rules; the findings say which and what to change."""

    exit_code = 1

    def __init__(self, findings: tuple[Finding, ...], *, forced: bool = False) -> None:
        """Hand on the `findings`; `forced` when not even force could build the design."""
        self.findings, self.forced = findings, forced
        self.units = Units.MM
        """In which it is told; whoever knows the reader sets others."""
        super().__init__("; ".join(map(_in_short, findings)))

    def __reduce__(self) -> tuple[object, ...]:
        """Let the error travel between processes."""
        return _refused, (self.findings, self.forced)


def _refused(findings: tuple[Finding, ...], forced: bool) -> RefusedError:
    return RefusedError(findings, forced=forced)


class NoTapError(RefusedError):
    """The values leave no tap that could be described, let alone judged."""

    def __init__(self, finding: Finding, *others: Finding) -> None:
        """The `finding` says which rule binds and what to change; `others` may explain it."""
        self.finding = finding
        super().__init__((finding, *others))

    def __reduce__(self) -> tuple[object, ...]:
        """Let the error travel between processes."""
        return type(self), self.findings


def _in_short(finding: Finding) -> str:
    """Code, field and numbers, for whoever has no sentence at hand."""
    limit, actual = finding.limit, finding.actual
    sides = ((">=", limit.low), ("<=", limit.high))
    ends = [f"allowed {sign} {end:.6g}" for sign, end in sides if end is not None]
    held = [f"held by {limit.held}"] if limit.held else []
    value = actual if isinstance(actual, str) else f"{actual:.6g} {limit.unit}".rstrip()
    return ", ".join([f"{finding.code}: {finding.field} = {value}", *ends, *held])


class KernelError(TapmodelError):
    """The CAD kernel did not do what it was asked, or its result failed a proof."""

    exit_code = 3

    def __init__(self, stage: Stage, what: str) -> None:
        """Name the `stage` and `what` went wrong there."""
        self.stage, self.what = stage, what
        super().__init__(f"{stage}: {what}")

    def __reduce__(self) -> tuple[type["KernelError"], tuple[Stage, str]]:
        """Let the error travel between processes."""
        return type(self), (self.stage, self.what)
