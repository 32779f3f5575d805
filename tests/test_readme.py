"""The README shows what really happens: its files, and the output of its commands."""

from __future__ import annotations

import inspect
import os
import re
import subprocess
import sys
from pathlib import Path

import click
import pytest

from notices.cli import main
from notices.errors import NoticesError

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


REFERENCE = re.compile(
    "(?<=<!-- reference -->\\n).*?(?=<!-- end of reference -->)", flags=re.DOTALL
)


def reference() -> str:
    """Every command with its arguments and options, as its help has them."""
    parts = []
    for name, command in main.commands.items():
        above = click.Context(main, **main.context_settings)
        context = click.Context(command, info_name=name, parent=above)
        options = [one for one in command.params if isinstance(one, click.Option)]
        rows = [record for one in options if (record := one.get_help_record(context))]
        needed = [record[0] for one, record in zip(options, rows, strict=True) if one.required]
        pieces = [*command.collect_usage_pieces(context), *needed]
        usage = " ".join(piece for piece in pieces if piece != "[OPTIONS]")
        help_text = inspect.cleandoc(command.help or "").partition("\b")[0].strip()
        parts.append(f"### `notices {name} {usage}".rstrip() + f"`\n\n{help_text}\n")
        if rows:
            cells = [f"| `{option}` | {what} |" for option, what in rows]
            parts.append("\n".join(["| option | what it does |", "|---|---|", *cells, ""]))
    return "\n" + "\n".join(parts) + "\n"


def test_the_reference_is_that_of_the_code(request: pytest.FixtureRequest) -> None:
    if request.config.getoption("--renew"):
        readme = ROOT / "README.md"
        text = readme.read_text("utf-8")
        readme.write_text(REFERENCE.sub(lambda _: reference(), text), "utf-8")
    else:
        shown = REFERENCE.search(README)
        assert shown
        assert shown[0] == reference()


def test_each_exit_status_is_documented() -> None:
    table = README.partition("| exit status |")[2].partition("\n\n")[0]
    named = set(re.findall(r"^\| (\d) \|", table, flags=re.MULTILINE))
    assert named == {"0", str(NoticesError.exit_status), str(click.UsageError.exit_code)}


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_the_line_for_completion_works(shell: str) -> None:
    assert f"_NOTICES_COMPLETE={shell}_source notices" in README
    program = "from notices.cli import main; main(prog_name='notices')"
    # What the shell's own function asks for "notices ch".
    words = {"COMP_WORDS": "notices ch", "COMP_CWORD": "ch" if shell == "fish" else "1"}
    done = subprocess.run(
        [sys.executable, "-c", program],
        env=os.environ | words | {"_NOTICES_COMPLETE": f"{shell}_complete"},
        capture_output=True,
        text=True,
        check=True,
    )
    assert "check" in done.stdout


def test_both_start_commands_are_there() -> None:
    assert {what for what, _ in blocks("run")} == {"example", "tests"}
