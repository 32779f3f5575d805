"""Time every drawing of every example; run by hand: python tests/benchmarks/time_drawings.py.

Not a test: what a machine takes depends on what else it does. Processor time, the best of five.
"""

from __future__ import annotations

import datetime as dt
import time
from pathlib import Path

from notices.drawings.of_period import drawings_of
from notices.plan.load import load_plan
from notices.programme.work_out import work_out
from notices.wording.words import Words

EXAMPLES = Path(__file__).parents[2] / "examples"
RUNS = 5


def main() -> None:
    """Write milliseconds to a drawing, example by example."""
    for path in sorted(EXAMPLES.glob("*/plan.yaml")):
        plan = load_plan(path).plan
        words = Words(work_out(plan, plan.issued or dt.date(2027, 3, 1)))
        for period in words.programme.periods:
            times = []
            for _ in range(RUNS):
                start = time.process_time()
                drawn = drawings_of(words, period)
                times.append(time.process_time() - start)
            if drawn:
                each = 1000 * min(times) / len(drawn)
                print(f"{path.parent.name:20} {len(drawn)} drawings, {each:.1f} ms each")


if __name__ == "__main__":
    main()
