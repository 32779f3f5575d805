"""Time a whole process: ``best_of_five.py 0.25 COMMAND…`` fails if the best of five runs is slower.

The best, not the mean: what else the machine does can only add to it.
"""

from __future__ import annotations

import subprocess
import sys
import time


def seconds(command: list[str]) -> float:
    """How long one run takes; a command that fails has no time."""
    start = time.perf_counter()
    run = subprocess.run(command, capture_output=True, text=True, check=False)
    taken = time.perf_counter() - start
    if run.returncode != 0:
        sys.exit(f"{' '.join(command)} exited with {run.returncode}\n{run.stderr}")
    return taken


if __name__ == "__main__":
    limit, command = float(sys.argv[1]), sys.argv[2:]
    best = min(seconds(command) for _ in range(5))
    print(f"{best:.3f} s (at most {limit} s): {' '.join(command)}")
    sys.exit(best > limit)
