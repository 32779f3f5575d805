"""Who may import what: the stages keep to their direction because this reads every import."""

from __future__ import annotations

import ast
import graphlib
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "notices"


@dataclass(frozen=True)
class May:
    """What one folder, or one module at the top, may import beside the standard library."""

    own: frozenset[str]
    outside: frozenset[str]


def may(own: str = "", outside: str = "") -> May:
    return May(frozenset(own.split()), frozenset(outside.split()))


# In the order in which data meets them: plan → operations → programme → wording → drawings →
# documents → rendering → pack. Each may always import itself. This table is the
# rule: the rows of DEVELOPERS.md say what each stage is for.
RULES = {
    "units": may(),
    "references": may(),
    "paths": may(),
    "look": may(),
    "letters": may(),
    "calendar_days": may(),
    "makers": may("paths"),
    "stack": may(),
    "findings": may("errors"),
    "errors": may("findings"),
    "excerpt": may(),
    "disk": may("errors"),
    "terminal": may("errors findings excerpt", "click"),
    # Numbers in, numbers out: not even a finding.
    "agronomy": may("units references", "astral"),
    "operations": may("units errors findings agronomy", "pydantic"),
    "plan": may(
        "calendar_days units errors findings paths agronomy operations",
        "pydantic pydantic_core yaml icalendar recurring_ical_events email_validator PIL"
        " python_calamine",
    ),
    "programme": may(
        "calendar_days look letters errors plan operations agronomy units references findings",
        "holidays astral",
    ),
    # jinja2, because the texts that explain an operation hold placeholders.
    "wording": may(
        "calendar_days errors findings programme operations units references paths",
        "babel markdown jinja2",
    ),
    "drawings": may("errors findings programme wording units operations look"),
    "documents": may(
        "calendar_days errors programme operations wording drawings units references findings paths look",
        "babel markdown",
    ),
    # Never plan or programme: what a template wants, the document must hold.
    "rendering": may(
        "errors findings documents drawings wording paths look letters makers",
        "jinja2 markupsafe weasyprint pydyf css_inline icalendar resvg_py pypdfium2 PIL",
    ),
    "pack": may("disk errors findings rendering documents paths makers"),
    "__init__": may("buildable errors findings plan programme wording documents rendering pack"),
    # A plan written anew: it comes back from the reader, never from the programme.
    "convert": may("disk errors plan operations", "yaml openpyxl"),
    "starter": may("disk errors paths plan convert"),
    "buildable": may("findings plan programme wording"),
    "checking": may("buildable findings plan programme wording documents rendering"),
    # A change to a plan is checked by working it out before it is kept.
    "changing": may("buildable errors findings disk plan programme"),
    "since": may("errors findings plan programme documents rendering pack"),
    "building": may(
        "__init__ buildable since errors findings stack plan programme documents rendering pack"
    ),
    "cli": may(
        "__init__ building changing checking since units references paths findings errors terminal starter convert agronomy operations plan"
        " programme wording drawings documents rendering pack",
        "click",
    ),
    "__main__": may("cli"),
}

CLOCK_CALLS = {"now", "today", "utcnow", "time", "time_ns", "localtime", "gmtime"}
CLOCK_OWNERS = {"datetime", "date", "dt", "time"}
"""``dt`` is how this project spells the module datetime; ``dt.date.today()`` ends in ``date``."""

SLOW = ("PIL", "babel", "icalendar", "jinja2", "openpyxl", "pydantic", "weasyprint")
"""What ``notices --help`` must not wait for."""


@dataclass(frozen=True)
class Import:
    """One imported thing: a stage or module of ours ("own") or a distribution's top name."""

    name: str
    own: bool
    line: int


def part_of(module: str) -> str:
    """The stage or top-level module that a dotted name of ours belongs to."""
    parts = module.split(".")
    return parts[1] if len(parts) > 1 else "__init__"


def is_ours(name: str) -> bool:
    return (PACKAGE / f"{name}.py").exists() or (PACKAGE / name).is_dir() or name in RULES


def imported_from(node: ast.ImportFrom, package: str) -> Iterator[str]:
    """The dotted names that a ``from … import …`` reaches, relative ones made absolute."""
    module = node.module or ""
    if node.level:
        base = package.split(".")[: len(package.split(".")) - node.level + 1]
        module = ".".join([*base, module]).rstrip(".")
    if module == "notices":
        # "from notices import units" means the module; any other name comes from __init__.
        yield from (
            f"notices.{alias.name}" if is_ours(alias.name) else "notices" for alias in node.names
        )
    else:
        yield module


def imports_in(source: str, package: str) -> Iterator[Import]:
    """Every import, also those within functions and for the type checker alone."""
    for node in ast.walk(ast.parse(source)):
        match node:
            case ast.Import():
                names: Iterator[str] = (alias.name for alias in node.names)
            case ast.ImportFrom():
                names = imported_from(node, package)
            case _:
                continue
        for name in names:
            top = name.split(".")[0]
            own = top == "notices"
            yield Import(part_of(name) if own else top, own, node.lineno)


def forbidden_imports(source: str, part: str, package: str = "notices") -> list[str]:
    """What a file of this part imports against the table, each as a line for a person."""
    rule = RULES[part]
    faults: list[str] = []
    for found in imports_in(source, package):
        if found.own:
            allowed = found.name == part or found.name in rule.own
        else:
            allowed = found.name in rule.outside or found.name in sys.stdlib_module_names
        if not allowed:
            prefix = "notices." if found.own else ""
            faults.append(f"line {found.line}: {part} may not import {prefix}{found.name}")
    return faults


def clock_calls(source: str) -> list[str]:
    """Where a file asks what time it is."""
    faults: list[str] = []
    for node in ast.walk(ast.parse(source)):
        match node:
            case (
                ast.Call(func=ast.Attribute(attr=call, value=ast.Name(id=owner)))
                | ast.Call(func=ast.Attribute(attr=call, value=ast.Attribute(attr=owner)))
            ) if call in CLOCK_CALLS and owner in CLOCK_OWNERS:
                if (owner, call) != ("dt", "time"):  # dt.time(7, 30) is a time of day, not a clock
                    faults.append(f"line {node.lineno}: asks the clock ({owner}.{call})")
            case ast.ImportFrom(module="time"):
                faults.append(f"line {node.lineno}: imports from the module time")
            case _:
                pass
    return faults


def files() -> list[Path]:
    return sorted(PACKAGE.rglob("*.py"))


def part_name(path: Path) -> str:
    first = path.relative_to(PACKAGE).parts[0]
    return first.removesuffix(".py")


def package_name(path: Path) -> str:
    """The package in which a relative import of this file starts."""
    return ".".join(("notices", *path.relative_to(PACKAGE).parts[:-1]))


def label(path: Path) -> str:
    return str(path.relative_to(PACKAGE))


@pytest.mark.parametrize("path", files(), ids=label)
def test_a_file_imports_only_what_its_stage_may(path: Path) -> None:
    source = path.read_text(encoding="utf-8")
    assert part_name(path) in RULES, "a new folder or module needs a row in RULES"
    assert forbidden_imports(source, part_name(path), package_name(path)) == []


@pytest.mark.parametrize(
    "path", [path for path in files() if part_name(path) not in {"cli", "__main__"}], ids=label
)
def test_no_stage_asks_the_clock(path: Path) -> None:
    assert clock_calls(path.read_text(encoding="utf-8")) == []


def test_the_table_has_no_circle() -> None:
    # findings and errors are one vocabulary in two modules, and may know each other.
    vocabulary = {"errors", "findings"}
    graph = {
        part: rule.own - vocabulary if part in vocabulary else rule.own
        for part, rule in RULES.items()
    }
    assert tuple(graphlib.TopologicalSorter(graph).static_order())[-1] == "__main__"


def test_nothing_but_main_may_import_the_command_line() -> None:
    assert [part for part, rule in RULES.items() if "cli" in rule.own] == ["__main__"]


@pytest.mark.parametrize(
    ("part", "source"),
    [
        ("agronomy", "import pydantic"),
        ("agronomy", "from notices.findings import Finding"),
        ("rendering", "from notices.plan.model import Plan"),
        ("rendering", "def late():\n    from notices import programme"),
        ("documents", "from ..rendering import html"),
        ("pack", "from notices import load"),
        ("programme", "import notices.cli"),
    ],
)
def test_a_forbidden_import_is_seen(part: str, source: str) -> None:
    assert len(forbidden_imports(source, part, f"notices.{part}")) == 1


@pytest.mark.parametrize(
    ("part", "source"),
    [
        ("agronomy", "import math\nfrom notices import units\nfrom . import holes"),
        ("rendering", "import weasyprint\nfrom notices.documents.model import Document"),
        ("documents", "from ..wording.dates import spoken"),
    ],
)
def test_an_allowed_import_is_let_pass(part: str, source: str) -> None:
    assert forbidden_imports(source, part, f"notices.{part}") == []


@pytest.mark.parametrize(
    ("source", "asks"),
    [
        ("dt.date.today()", True),
        ("datetime.now(tz=zone)", True),
        ("time.time()", True),
        ("from time import monotonic", True),
        ("dt.time(7, 30)", False),
        ("dt.datetime(2026, 9, 14)", False),
        ("status.today", False),
    ],
)
def test_a_look_at_the_clock_is_seen(source: str, *, asks: bool) -> None:
    assert bool(clock_calls(source)) is asks


def test_the_command_line_starts_without_the_slow_libraries() -> None:
    program = f"import sys, notices.cli; print(*[name for name in {SLOW!r} if name in sys.modules])"
    run = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=False
    )
    assert run.returncode == 0, run.stderr
    assert run.stdout.split() == []
