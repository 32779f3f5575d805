"""What a terminal shows and a file does not: colours, and a bar while one waits."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
MISTAKE = "tests/plan/mistakes/unit-missing.yaml"
ESCAPE = "\x1b["


def on_a_terminal(*command: str, **environment: str) -> str:
    """Run a command with a terminal for both its outputs; return what the terminal got."""
    ours, theirs = pty.openpty()
    kept = {key: value for key, value in os.environ.items() if key not in ("NO_COLOR", "TERM")}
    process = subprocess.Popen(
        [sys.executable, *command],
        cwd=ROOT,
        env=kept | {"TERM": "xterm"} | environment,
        stdout=theirs,
        stderr=theirs,
        stdin=subprocess.DEVNULL,
    )
    os.close(theirs)
    parts: list[bytes] = []
    try:
        while part := os.read(ours, 65536):
            parts.append(part)
    except OSError:  # so Linux says that the other end is closed
        pass
    os.close(ours)
    process.wait()
    return b"".join(parts).decode()


def test_a_terminal_gets_colour_and_the_same_words() -> None:
    shown = on_a_terminal("-m", "notices", "check", MISTAKE)
    assert f"{ESCAPE}1m{MISTAKE}:6:23:{ESCAPE}0m" in shown
    assert f"{ESCAPE}31m{ESCAPE}1m^{ESCAPE}0m" in shown
    plain = shown.replace("\r\n", "\n")
    for code in ("0m", "1m", "31m"):
        plain = plain.replace(f"{ESCAPE}{code}", "")
    written = subprocess.run(
        [sys.executable, "-m", "notices", "check", MISTAKE],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert plain == written.stdout


@pytest.mark.parametrize("asked", [{"NO_COLOR": "1"}, {"TERM": "dumb"}], ids=str)
def test_who_wants_no_colour_gets_none(asked: dict[str, str]) -> None:
    assert ESCAPE not in on_a_terminal("-m", "notices", "check", MISTAKE, **asked)


BAR = """
from notices import terminal
terminal.WAIT = {wait}
with terminal.progress("Building") as told:
    for number in range(6):
        told(number, 5)
"""


def test_a_bar_is_shown_while_one_waits() -> None:
    shown = on_a_terminal("-c", BAR.format(wait=-1))
    assert "Building" in shown
    assert "100%" in shown


def test_no_bar_for_what_is_quickly_done() -> None:
    assert on_a_terminal("-c", BAR.format(wait=60)) == ""


def test_no_bar_where_nobody_looks() -> None:
    done = subprocess.run(
        [sys.executable, "-c", BAR.format(wait=-1)], cwd=ROOT, capture_output=True, check=True
    )
    assert (done.stdout, done.stderr) == (b"", b"")
