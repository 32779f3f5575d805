"""Time ``work_out`` for 18, 180 and 1,800 greens; run by hand: python tests/benchmarks/time_work_out.py.

The plan is that of examples/withy-hollow, its renovation spread over ever more greens on the
same seven days. Reading the file and importing are not in it. Not a test: what a machine takes
depends on what else it does. Processor time.
"""

from __future__ import annotations

import datetime as dt
import json
import time
from pathlib import Path
from typing import Any

from notices.plan.days import format_days
from notices.plan.load import canonical, load_plan
from notices.plan.model import Plan
from notices.programme.as_json import programme_as_json
from notices.programme.work_out import work_out

EXAMPLE = Path(__file__).parents[2] / "examples" / "withy-hollow" / "plan.yaml"
ISSUED = dt.date(2027, 7, 19)
RUNS = 5


def enlarged(plan: Plan, count: int) -> Plan:
    """The example with so many greens; each work over all of them, settings as they were read."""
    names = [f"green {chr(97 + number % 26)}{number}" for number in range(1, count + 1)]
    data: dict[str, Any] = canonical(plan)
    data["course"]["greens"] = [{"green": names, "area": "480 m2"}]
    for work, read in zip(data["works"], plan.works, strict=True):
        work.pop("after", None)  # it follows a work by its greens, which are others now
        work["dates"] = format_days(read.dates)
        work["greens"] = names if work["operation"] != "drain trenching" else names[:1]
    large = Plan.model_validate(data)
    works = (
        work.model_copy(update={"settings": read.settings})
        for work, read in zip(large.works, plan.works, strict=True)
    )
    return large.model_copy(update={"works": tuple(works)})


def best_ms(plan: Plan) -> tuple[float, float]:
    """The first run and the best of several, in milliseconds."""
    taken = []
    for _ in range(RUNS):
        start = time.process_time()
        work_out(plan, ISSUED)
        taken.append(1000 * (time.process_time() - start))
    return taken[0], min(taken)


def main() -> None:
    """Print one line for each size."""
    plan = load_plan(EXAMPLE).plan
    first, best = best_ms(plan)
    print(f"the example as it is: first {first:.1f} ms, best of {RUNS} {best:.1f} ms")
    for count in (18, 180, 1_800):
        large = enlarged(plan, count)
        first, best = best_ms(large)
        programme = work_out(large, ISSUED)
        size = len(json.dumps(programme_as_json(programme)))
        print(
            f"{count:>5} greens: first {first:8.1f} ms, best of {RUNS} {best:8.1f} ms, "
            f"{len(programme.figures):>6} figures, programme.json {size / 1e6:.1f} MB"
        )


if __name__ == "__main__":
    main()
