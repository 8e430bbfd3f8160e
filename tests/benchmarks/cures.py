"""Every cure that a finding offers, tried: random designs are mended and judged again.

    python tests/benchmarks/cures.py [COUNT] [FIRST SEED]

Prints each cure that does not hold what it promises, and the table at the end.
"""

import sys
import time
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "design"))

from broken_jobs import broken_job
from cure_trials import judged_cures


def main() -> None:
    """Try the cures of `COUNT` seeds."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 0
    total: Counter[str] = Counter()
    by_code: dict[str, Counter[str]] = {}
    slowest = 0.0
    for seed in range(first, first + count):
        began = time.process_time()
        for tried in judged_cures(broken_job(seed)):
            total.update(tried.marks)
            by_code.setdefault(tried.code, Counter()).update(tried.marks)
            for wrong in tried.wrong:
                print(f"{seed}\t{tried.code}\t{wrong}", flush=True)
        slowest = max(slowest, time.process_time() - began)
    columns = ["findings", "cures", "failed", "not positive", "not nearest", "no number", "no cure"]
    print("\n" + "".join(f"{name:>14}" for name in ["", *columns]))
    for code, marks in [*sorted(by_code.items()), ("all", total)]:
        print(f"{code:>18}" + "".join(f"{marks[name]:>14}" for name in columns))
    print(f"\nslowest job with all its trials: {slowest:.2f} s of processor time")


if __name__ == "__main__":
    main()
