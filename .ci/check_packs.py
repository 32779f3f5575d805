#!/usr/bin/env python3
"""Put built packs through the independent checkers: ``.ci/check_packs.py PACK…``.

Two folders are named by the environment:

CHECK_ENV
    The scratch folder in which the checkers' own packages are ready, made as their README says:
    ``node_modules`` from package.json, ``venv`` from requirements.txt.
NOTICES_CHECKS
    The checkers themselves; ``../shared/checks`` beside the checkout when not given.

Needs node, chromium, a JDK and nothing from PyPI. Every checker runs, whatever the others said; the
exit status is 1 if one of them found something, 2 if this could not start.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

WEB_PAGES = (
    "index.html",
    "course-page.html",
    "questions-and-answers.html",
    "visitor-notice*.html",
)
"""Pages for a browser: these answer for WCAG and for every warning of the HTML checker."""

EMAILS = ("member-email*.html", "change-notice.html")
"""HTML that mail programs show; a table layout earns warnings that a web page must not have."""

AUDITED_EMAIL = "member-email.html"
PLAIN_WORDS = "member-email.txt"

EMAIL_LIMIT = 61_440
"""Bytes of HTML in an email: well below what mail programs are known to cut at."""

PAGE_LIMITS = {"board-notice-a4.pdf": 1, "board-notice-a3.pdf": 1, "committee-briefing.pdf": 8}
"""A notice is one sheet; nobody reads a ninth page to a committee."""

AT_ONCE = min(4, os.cpu_count() or 1)
"""Each web audit starts a Chromium and each PDF check a Java: more at once only swap."""


@dataclass(frozen=True)
class Check:
    """One call of one checker."""

    name: str
    command: list[str]


@dataclass(frozen=True)
class Outcome:
    """What a checker answered."""

    check: Check
    status: int
    output: str


@dataclass(frozen=True)
class Tools:
    """Where the checkers and their packages lie."""

    checks: Path
    environment: Path

    def node(self, script: str, *arguments: str | Path) -> list[str]:
        """Call one of the checkers written in JavaScript."""
        return ["node", str(self.checks / script), *map(str, arguments)]

    def python(self, script: str, *arguments: str | Path) -> list[str]:
        """Call one of the checkers written in Python."""
        interpreter = self.environment / "venv" / "bin" / "python"
        return [str(interpreter), str(self.checks / script), *map(str, arguments)]

    def vnu(self, *arguments: str | Path) -> list[str]:
        """Call the Nu HTML checker."""
        jar = self.environment / "node_modules" / "vnu-jar" / "build" / "dist" / "vnu.jar"
        return ["java", "-jar", str(jar), *map(str, arguments)]

    def html_validate(self, *pages: Path) -> list[str]:
        """Call html-validate with the checks' own settings."""
        program = self.environment / "node_modules" / ".bin" / "html-validate"
        return [str(program), "-c", str(self.checks / "htmlvalidate.json"), *map(str, pages)]


def found(pack: Path, *patterns: str) -> list[Path]:
    """List the files of a pack that match, each once and in a fixed order."""
    return sorted({path for pattern in patterns for path in pack.glob(pattern)})


def calendar_checks(tools: Tools, label: str, calendar: Path) -> Iterator[Check]:
    """Let two parsers that share no code read the same calendar."""
    yield Check(f"ics_check {label}", tools.python("ics_check.py", calendar))
    yield Check(f"ics_cross {label}", tools.node("ics_cross.mjs", calendar))


def web_checks(tools: Tools, pack: Path) -> Iterator[Check]:
    """Check the pages for a browser and the HTML of emails."""
    pages, emails = found(pack, *WEB_PAGES), found(pack, *EMAILS)
    if pages:
        audit = tools.node("axe_audit.mjs", *pages, "--best-practice")
        yield Check(f"axe_audit {pack.name} web pages", audit)
        yield Check(f"vnu {pack.name} web pages", tools.vnu("--Werror", *pages))
        yield Check(f"html-validate {pack.name} web pages", tools.html_validate(*pages))
    if emails:
        lint = tools.node("email_lint.mjs", *emails, "--limit", str(EMAIL_LIMIT))
        yield Check(f"email_lint {pack.name} emails", lint)
        yield Check(f"vnu {pack.name} emails", tools.vnu("--errors-only", *emails))
    if (pack / AUDITED_EMAIL).exists():
        audit = tools.node("axe_audit.mjs", pack / AUDITED_EMAIL)
        yield Check(f"axe_audit {pack.name}/{AUDITED_EMAIL}", audit)
    if (pack / PLAIN_WORDS).exists():
        measure = tools.python("readability_check.py", pack / PLAIN_WORDS)
        yield Check(f"readability_check {pack.name}/{PLAIN_WORDS}", measure)


def pdf_checks(tools: Tools, pack: Path) -> Iterator[Check]:
    """Check every PDF, grouped by what is asked of it: veraPDF is slow to start."""
    groups: dict[tuple[str, ...], list[Path]] = {}
    for pdf in found(pack, "*.pdf"):
        wanted = ["--page", "A3" if pdf.stem.endswith("-a3") else "A4"]
        if pdf.name in PAGE_LIMITS:
            wanted += ["--max-pages", str(PAGE_LIMITS[pdf.name])]
        groups.setdefault(tuple(wanted), []).append(pdf)
    for options, pdfs in groups.items():
        command = tools.python("pdf_check.py", *options, "--require-vera", *pdfs)
        yield Check(f"pdf_check {' '.join(options)} {pack.name}", command)


def message_checks(tools: Tools, pack: Path, parts: Path) -> Iterator[Check]:
    """Check every email as a whole; its parts are taken out into a folder and checked afterwards."""
    for eml in found(pack, "*.eml"):
        out = parts / f"{pack.name}-{eml.stem}"
        taken_out = ("--html-out", f"{out}.html", "--ics-out", f"{out}.ics")
        yield Check(
            f"eml_check {pack.name}/{eml.name}", tools.python("eml_check.py", eml, *taken_out)
        )
        yield Check(f"eml_cross {pack.name}/{eml.name}", tools.node("eml_cross.mjs", eml))


def part_checks(tools: Tools, parts: Path) -> Iterator[Check]:
    """Check what arrives inside the emails, which need not be what lies beside them."""
    for html in found(parts, "*.html"):
        lint = tools.node("email_lint.mjs", html, "--limit", str(EMAIL_LIMIT))
        yield Check(f"email_lint inside {html.stem}.eml", lint)
    for calendar in found(parts, "*.ics"):
        yield from calendar_checks(tools, f"inside {calendar.stem}.eml", calendar)


def pack_checks(tools: Tools, pack: Path, parts: Path) -> Iterator[Check]:
    """Gather everything that is asked of one pack."""
    yield from web_checks(tools, pack)
    yield from pdf_checks(tools, pack)
    yield from message_checks(tools, pack, parts)
    for calendar in found(pack, "*.ics"):
        yield from calendar_checks(tools, f"{pack.name}/{calendar.name}", calendar)


def run(check: Check, tools: Tools) -> Outcome:
    """Run one checker; Node looks its packages up from the folder it stands in."""
    done = subprocess.run(
        check.command,
        cwd=tools.environment,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        errors="replace",
        check=False,
    )
    return Outcome(check, done.returncode, done.stdout)


def run_all(checks: Iterator[Check], tools: Tools) -> list[str]:
    """Run checks a few at a time, report each in order, and return the names of those that failed."""
    failed: list[str] = []
    with ThreadPoolExecutor(AT_ONCE) as pool:
        for outcome in pool.map(lambda check: run(check, tools), checks):
            print(f"{'ok  ' if outcome.status == 0 else 'FAIL'} {outcome.check.name}", flush=True)
            if outcome.status != 0:
                failed.append(outcome.check.name)
                print(outcome.output.rstrip(), flush=True)
    return failed


def report_unchecked(pack: Path) -> None:
    """Say which pages no checker looked at, so that a new document is not forgotten here."""
    looked_at = found(pack, *WEB_PAGES, *EMAILS)
    for page in found(pack, "*.html"):
        if page not in looked_at:
            print(
                f"note {pack.name}/{page.name} is in no list of {Path(__file__).name}: not checked"
            )


def tools_from_environment() -> Tools:
    """Find the checkers, or say what is missing."""
    beside = Path(__file__).resolve().parents[1].parent / "shared" / "checks"
    checks = Path(os.environ.get("NOTICES_CHECKS") or beside).resolve()
    environment = Path(os.environ.get("CHECK_ENV") or "CHECK_ENV-is-not-set").resolve()
    for needed in (
        checks / "README.md",
        environment / "node_modules",
        environment / "venv" / "bin" / "python",
    ):
        if not needed.exists():
            print(f"{needed} is missing; {Path(__file__).name} says what it needs", file=sys.stderr)
            sys.exit(2)
    return Tools(checks, environment)


def main() -> int:
    """Check the packs named on the command line."""
    tools = tools_from_environment()
    packs = [Path(argument).resolve() for argument in sys.argv[1:]]
    # A build that wrote nothing must not pass for a pack without faults.
    empty = [pack for pack in packs if not (pack / "manifest.json").exists()]
    if not packs or empty:
        names = ", ".join(map(str, empty)) or "no folder given"
        print(f"not a pack (no manifest.json): {names}", file=sys.stderr)
        return 2
    with tempfile.TemporaryDirectory() as scratch:
        parts = Path(scratch)
        checks = (check for pack in packs for check in pack_checks(tools, pack, parts))
        failed = run_all(checks, tools) + run_all(part_checks(tools, parts), tools)
    for pack in packs:
        report_unchecked(pack)
    print(f"{len(failed)} failed" + "".join(f"\n  {name}" for name in failed))
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
