"""What was measured of a tap, and what that means, for a program."""

from collections.abc import Mapping
from dataclasses import dataclass
from os import PathLike
from pathlib import Path
from typing import Any

from tapmodel.designing.design import design_tap
from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.findings import Finding
from tapmodel.library.request import Request, job_of
from tapmodel.prediction.prediction import Prediction
from tapmodel.shop.judged import judged
from tapmodel.shop.measured.answer import MeasuredAnswer, answer_measured
from tapmodel.shop.measured.judged import with_measured
from tapmodel.shop.measured.read import with_wire
from tapmodel.shop.measured.verdicts import Judgement
from tapmodel.spec.measured.file import read_measured
from tapmodel.spec.measured.record import Measured, found_of, measured_of
from tapmodel.spec.measured.sizes import Size
from tapmodel.tap.tap import Tap

Values = Mapping[str, float | str] | str | PathLike[str]


def measured(
    what: Request,
    values: Values,
    sets: Mapping[str, object] | None = None,
    /,
    *,
    wire: float | str | None = None,
    compound: float = 0.0,
) -> "MeasuredTap":
    """Tell what measured values mean, and foretell the tap as it is; nothing is kept.

    Args:
        what: the tap that was designed, as for `design`.
        values: by the names of the command's options, such as {"major": 18.02, "core": "0.32in"};
            or the file in which `tapmodel measured` has kept them.
        sets: values laid over the job, keys dotted as for `--set`.
        wire: over which "over_wires" was measured [mm]; None for the wire to use.
        compound: angle of the compound slide, from square to the axis [deg].

    Raises:
        InputError: a value that cannot be used, or an unknown name.
        NoTapError: values that leave no tap to describe.
        NoWireError: a value over wires, where no wire suits.

    >>> tap = measured("M18x0.75", {"major": 18.1})
    >>> tap.verdicts[0].standing.value, round(tap.verdicts[0].take, 6)
    ('in limits', 0.025)
    """
    if wire is not None and not (isinstance(values, Mapping) and Size.OVER_WIRES in values):
        raise InputError("--wire", wire, "only beside over_wires")
    job = job_of(what, sets or {})
    design = judged(design_tap(job))
    known = _with_wire(design, _known(values, wire))
    return MeasuredTap(answer_measured(with_measured(design, job, known), compound))


@dataclass(frozen=True)
class MeasuredTap:
    """A tap that was made and measured.

    Attributes:
        answer: everything that can be said of it.
    """

    answer: MeasuredAnswer

    @property
    def design(self) -> TapDesign:
        """As it was designed."""
        return self.answer.design

    @property
    def verdicts(self) -> tuple[Judgement, ...]:
        """The meaning of each size, in the order of the work."""
        return self.answer.judgements

    @property
    def tap(self) -> Tap | None:
        """The definition of the tap as it is; None where the sizes leave none."""
        return self.answer.made.tap if self.answer.made else None

    @property
    def prediction(self) -> Prediction | None:
        """What the tap will do as it is; None where that cannot be foretold."""
        return self.answer.made.prediction if self.answer.made else None

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What the rules find of the tap as it is, and did not of its design."""
        return self.answer.risen

    def record(self) -> dict[str, Any]:
        """The same as plain numbers and words, as `tapmodel measured --json` prints it."""
        from tapmodel.report.measured_record import record_of  # noqa: PLC0415

        return record_of(self.answer)

    def __str__(self) -> str:
        """The page that `tapmodel measured` prints."""
        from tapmodel.report.screen.measured import measured_page  # noqa: PLC0415

        return measured_page(self.answer)


def _known(values: Values, wire: float | str | None) -> Measured:
    if isinstance(values, Mapping):
        found = {
            (size := _size(name)): found_of(
                size, typed, size.option, wire if size is Size.OVER_WIRES else None
            )
            for name, typed in values.items()
        }
        return measured_of(found)
    kept = read_measured(Path(values))
    if kept is None:
        raise InputError("measured file", str(values), "an existing file; check the path")
    return kept


def _size(name: str) -> Size:
    try:
        return Size(name)
    except ValueError:
        raise InputError("measured", name, ", ".join(Size)) from None


def _with_wire(design: TapDesign, known: Measured) -> Measured:
    over = known.get(Size.OVER_WIRES)
    if over is None:
        return known
    return measured_of(dict(known.pairs) | {Size.OVER_WIRES: with_wire(design, over)})
