"""A build keeps off the network: members' plans go nowhere, and a clubhouse may have no line."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

EXAMPLE = Path(__file__).parents[1] / "examples" / "marlpit-common" / "plan.yaml"

REFUSED = 86
"""A status that nothing else exits with."""

# An exception raised by a hook could be caught on its way; os._exit cannot. The hook comes before
# the first import of the tool, so that importing is watched as well.
WATCH = f"""
import os, sys

NETWORK = {{
    "socket.connect", "socket.bind", "socket.sendto", "socket.sendmsg",
    "socket.getaddrinfo", "socket.gethostbyname", "socket.gethostbyaddr", "socket.getnameinfo",
}}

def refuse(event, arguments):
    if event in NETWORK:
        os.write(2, f"refused: {{event}}\\n".encode())
        os._exit({REFUSED})

sys.addaudithook(refuse)
"""

RUN_NOTICES = "from notices.cli import main; main()"


def watched(program: str, *arguments: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    """Run a program in a process of its own that dies when it turns to the network."""
    command = [sys.executable, "-c", WATCH + program, *arguments]
    return subprocess.run(command, cwd=cwd, capture_output=True, text=True, check=False)


@pytest.fixture(scope="session")
def watched_build(
    tmp_path_factory: pytest.TempPathFactory,
) -> tuple[subprocess.CompletedProcess[str], Path]:
    folder = tmp_path_factory.mktemp("network")
    pack = folder / "pack"
    return watched(RUN_NOTICES, "build", str(EXAMPLE), "--out", str(pack), cwd=folder), pack


def test_a_build_needs_no_network(
    watched_build: tuple[subprocess.CompletedProcess[str], Path],
) -> None:
    run, pack = watched_build
    assert run.returncode == 0, run.stderr
    assert (pack / "manifest.json").is_file()
    assert (pack / "board-notice-a4.pdf").is_file()


@pytest.mark.parametrize(
    ("event", "call"),
    [
        ("socket.connect", "socket.socket().connect(('127.0.0.1', 9))"),
        ("socket.bind", "socket.socket().bind(('127.0.0.1', 0))"),
        (
            "socket.sendto",
            "socket.socket(type=socket.SOCK_DGRAM).sendto(b'', ('127.0.0.1', 9))",
        ),
        ("socket.getaddrinfo", "socket.getaddrinfo('localhost', 80)"),
        ("socket.getaddrinfo", "urllib.request.urlopen('http://localhost/')"),
    ],
)
def test_the_watch_sees_a_turn_to_the_network(event: str, call: str, tmp_path: Path) -> None:
    program = (
        f"import socket, urllib.request\ntry:\n    {call}\nexcept BaseException:\n    sys.exit(0)"
    )
    run = watched(program, cwd=tmp_path)
    assert (run.returncode, run.stderr) == (REFUSED, f"refused: {event}\n")
