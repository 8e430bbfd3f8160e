"""Controls of the two reliefs; the numbers that a kind takes, no others."""

from collections.abc import Callable

from tapmodel.designing.record import TapDesign
from tapmodel.report.view.controls.entry import Entry, EntryGroup, always, named
from tapmodel.report.view.controls.record import Kind
from tapmodel.report.view.controls.steps import Step
from tapmodel.shape.figures import ReliefFigures
from tapmodel.spec.conflicts import RELIEF_NUMBERS
from tapmodel.tap.tap import Relief

Part = Callable[[TapDesign], tuple[Relief, ReliefFigures]]


def _thread(design: TapDesign) -> tuple[Relief, ReliefFigures]:
    return design.reliefs[0]


def _chamfer(design: TapDesign) -> tuple[Relief, ReliefFigures]:
    return design.reliefs[1]


def _takes(part: Part, number: str) -> Callable[[TapDesign], bool]:
    return lambda design: number in RELIEF_NUMBERS[part(design)[0].kind.value]


def _drops(design: TapDesign) -> tuple[float, float]:
    return 0.0, 0.5 * design.tap.thread.pitch


def _numbers(place: str, part: Part) -> tuple[Entry, ...]:
    return (
        Entry(
            f"relief.{place}.margin_angle",
            "margin without drop",
            step=Step.HALF,
            span=lambda design: (0.0, design.figures.land_angle),
            follows=lambda design: part(design)[0].margin_angle,
            shown=_takes(part, "margin_angle"),
        ),
        Entry(
            f"relief.{place}.edge_angle",
            "relief angle at the edge",
            step=Step.HALF,
            span=always(0.5, 15.0),
            follows=lambda design: part(design)[1].edge_angle,
            by=f"relief.{place}.heel_drop",
            shown=_takes(part, "edge_angle"),
        ),
        Entry(
            f"relief.{place}.heel_drop",
            "drop at the heel",
            step=Step.DROP,
            span=_drops,
            follows=lambda design: part(design)[1].heel_drop,
            by=f"relief.{place}.edge_angle",
            shown=_takes(part, "heel_drop"),
        ),
    )


_KINDS = named(*RELIEF_NUMBERS)

THREAD_RELIEF = EntryGroup(
    "thread-relief",
    "Relief of the thread",
    (
        Entry("relief.thread.kind", "kind", Kind.WORDS, options=_KINDS),
        Entry("relief.thread.applies_to", "surface", Kind.WORDS, options=named("crest", "thread")),
        *_numbers("thread", _thread),
    ),
)

CHAMFER_RELIEF = EntryGroup(
    "chamfer-relief",
    "Relief of the chamfer",
    (
        Entry("relief.chamfer.kind", "kind", Kind.WORDS, options=_KINDS),
        *_numbers("chamfer", _chamfer),
    ),
)
