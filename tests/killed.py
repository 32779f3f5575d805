"""A program of its own that is killed at one of the steps that it takes in the file system."""

from __future__ import annotations

import subprocess
import sys

WATCH = """
import os, signal

last, step = int(sys.argv[1]), 0
# Python announces every step that it takes in the file system before it takes it.
STEPS = {"open", "os.mkdir", "os.rename", "os.remove", "os.rmdir", "os.utime", "os.chmod"}

def watch(event, _arguments):
    global step
    if event in STEPS:
        step += 1
        if step == last:
            os.kill(os.getpid(), signal.SIGKILL)

fsync = os.fsync
def before_and_after(handle):
    watch("open", ())
    fsync(handle)
    watch("open", ())
os.fsync = before_and_after

sys.addaudithook(watch)
"""


def run_killed(
    step: int, ready: str, go: str, *arguments: object
) -> subprocess.CompletedProcess[str]:
    """Run a program until it takes the step of this number, counted from 1.

    Parameters
    ----------
    step
        At which it is killed; 0 to let it come to its end and print how many steps it took.
    ready
        What it does before its steps count: it imports what it needs; `sys` is there.
    go
        What it does then.
    arguments
        In `sys.argv`, from the second on.
    """
    program = f"import sys\n{ready}\n{WATCH}\n{go}\nlast = 0\nprint(step)\n"
    return subprocess.run(
        [sys.executable, "-c", program, str(step), *map(str, arguments)],
        capture_output=True,
        text=True,
        check=False,
    )
