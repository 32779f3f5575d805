"""Time ``notices check`` as a whole process on a large club; run: python tests/benchmarks/time_check.py.

The club has two courses, 40 works in a year and 200 fixtures, most of which clash. Plain check must
stay under a second of computing; better dates under a few. Not a test: what a machine takes depends
on what else it does.
"""

from __future__ import annotations

import datetime as dt
import json
import resource
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Any

START = dt.date(2027, 3, 1)
KINDS = (
    *("hollow tining", "solid tining", "deep solid tining", "scarifying", "verticutting"),
    *("top dressing", "brushing", "rolling", "slitting", "overseeding"),
)


def large_club() -> dict[str, Any]:
    """A plan with a work of each kind in turn, two each week, and a cup on every day."""
    works = []
    for number in range(40):
        first = START + dt.timedelta(days=7 * (number // 2))
        works.append(
            {
                "operation": KINDS[number % len(KINDS)],
                "dates": f"{first} to {first + dt.timedelta(days=3)}",
                "greens": f"{('Oak', 'Elm')[number // len(KINDS) % 2]} 1-18",
            }
        )
    cups = [
        {"name": f"Cup {number}", "date": str(START + dt.timedelta(days=number))}
        for number in range(200)
    ]
    return {
        "issued": "2027-01-10",
        "club": {"name": "Broad Acre Golf Club", "country": "GB-ENG"},
        "course": {
            "greens": [
                {"green": "1-18", "course": "Oak", "area": "480 m2"},
                {"green": "1-18", "course": "Elm", "area": "500 m2"},
            ]
        },
        "crew": {"people": 9, "hired_people": 4},
        "works": works,
        "fixtures": cups,
    }


def main() -> None:
    """Print the computing time of each way to check."""
    with tempfile.TemporaryDirectory() as folder:
        plan = Path(folder) / "plan.yaml"
        plan.write_text(json.dumps(large_club(), indent=1), encoding="utf-8")
        before = 0.0
        for options in ((), ("--patterns",), ("--better-dates",)):
            command = [sys.executable, "-m", "notices", "check", str(plan), *options]
            subprocess.run(command, stdout=subprocess.DEVNULL, check=True)
            used = resource.getrusage(resource.RUSAGE_CHILDREN)
            taken = used.ru_utime + used.ru_stime
            print(f"check {' '.join(options)}: {taken - before:.2f} s of computing")
            before = taken


if __name__ == "__main__":
    main()
