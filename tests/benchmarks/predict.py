"""What it takes to design one tap and to foretell it, once the program is loaded.

    python tests/benchmarks/predict.py

Chips, torque with its course, strength, rubbing and gauges: what a page that follows a slider asks
for at every step. The quickest of several counts; wanted are at most 50 ms.
"""

import time

from tapmodel.designing.design import design_tap
from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.prediction.prediction import predicted
from tapmodel.spec.job_file import job_for

TAPS = ("M3", "M10", "M20x1.25", "M64x1", "1/2 BSW", "Tr16x8(P4)", "M10x0.25")
ROUNDS = 5


def seconds(design: TapDesign) -> float:
    """Of the whole prediction."""
    began = time.perf_counter()
    foreseen = predicted(design.tap, design.task)
    _ = foreseen.course, foreseen.rubbing, foreseen.gauge
    return time.perf_counter() - began


def designing(text: str) -> float:
    """Of the design with its cures."""
    began = time.perf_counter()
    design_tap(job_for(text))
    return time.perf_counter() - began


def main() -> None:
    """Print a line a tap."""
    for text in TAPS:
        design = settle(job_for(text))
        foretold = min(seconds(design) for _ in range(ROUNDS))
        designed = min(designing(text) for _ in range(ROUNDS))
        print(f"{text:12} design {1000 * designed:6.1f} ms, foretold {1000 * foretold:6.1f} ms")


if __name__ == "__main__":
    main()
