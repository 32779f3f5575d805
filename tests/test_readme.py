"""The README shows what really happens: its files, and the output of its commands."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text("utf-8")
BLOCK = r"<!-- {kind}: (?P<what>[^\n]+?) -->\n```\w*\n(?P<shown>.*?)```"


def blocks(kind: str) -> list[tuple[str, str]]:
    found = re.finditer(BLOCK.format(kind=kind), README, flags=re.DOTALL)
    return [(match["what"], match["shown"]) for match in found]


@pytest.mark.parametrize(("path", "shown"), blocks("file"))
def test_files_are_shown_as_they_are(path: str, shown: str) -> None:
    assert (ROOT / path).read_text("utf-8") == shown


@pytest.mark.parametrize(("command", "shown"), blocks("output"))
def test_commands_say_what_is_shown(
    command: str, shown: str, request: pytest.FixtureRequest
) -> None:
    program, *arguments = command.split()
    assert program == "notices"
    done = subprocess.run(
        [sys.executable, "-m", "notices", *arguments],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode in (0, 1), done.stderr
    if request.config.getoption("--renew"):
        readme = ROOT / "README.md"
        fence = f"<!-- output: {command} -->\n```\n"
        text = readme.read_text("utf-8")
        readme.write_text(text.replace(f"{fence}{shown}```", f"{fence}{done.stdout}```"), "utf-8")
    else:
        assert done.stdout == shown


def test_both_start_commands_are_there() -> None:
    assert {what for what, _ in blocks("run")} == {"example", "tests"}
