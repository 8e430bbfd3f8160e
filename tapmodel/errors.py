"""Every exception of the package, on one page.

A message names the field, the value and what is allowed, and ends in the cure. A check that
fails is not an exception but a `tapmodel.findings.Finding`.
"""

from tapmodel.findings import Finding

INTERRUPTED = 130
"""Exit code of a run that the user ended."""


class TapmodelError(Exception):
    """Base of all errors raised on purpose. `exit_code` is what the command line returns."""

    exit_code = 3


class InputError(TapmodelError):
    """Something the user gave cannot be used: bad file, unknown key, nonsense value."""

    exit_code = 2

    def __init__(self, field: str, value: object, allowed: str) -> None:
        """Name the `field`, show the `value` as given, say what is `allowed`."""
        self.field, self.value, self.allowed = field, value, allowed
        shown = repr(value)
        if len(shown) > 120:
            # The end of a path is what tells the file.
            shown = f"{shown[:40]} ... {shown[-75:]}"
        super().__init__(f"{field}: {shown} cannot be used; allowed: {allowed}")

    def __reduce__(self) -> tuple[type["InputError"], tuple[str, object, str]]:
        """Let the error travel between processes."""
        return type(self), (self.field, self.value, self.allowed)


class RefusedError(TapmodelError):
    """The design breaks a rule; the findings say which and what to change."""

    exit_code = 1


class NoTapError(RefusedError):
    """The values leave no tap that could be described, let alone judged."""

    def __init__(self, finding: Finding) -> None:
        """The `finding` says which rule binds and what to change."""
        self.finding = finding
        super().__init__(finding.what)

    def __reduce__(self) -> tuple[type["NoTapError"], tuple[Finding]]:
        """Let the error travel between processes."""
        return type(self), (self.finding,)


class KernelError(TapmodelError):
    """The CAD kernel did not do what it was asked, or its result failed a proof."""

    exit_code = 3

    def __init__(self, stage: str, what: str) -> None:
        """Name the building `stage` and `what` went wrong there."""
        self.stage, self.what = stage, what
        super().__init__(f"{stage}: {what}")

    def __reduce__(self) -> tuple[type["KernelError"], tuple[str, str]]:
        """Let the error travel between processes."""
        return type(self), (self.stage, self.what)
