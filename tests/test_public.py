"""The names that another program may import, and what importing them costs."""

from __future__ import annotations

import subprocess
import sys
from importlib.metadata import version

import pytest

import notices

HEAVY = (
    "PIL",
    "babel",
    "click",
    "css_inline",
    "icalendar",
    "jinja2",
    "markdown",
    "pydantic",
    "resvg_py",
    "weasyprint",
    "yaml",
)


def test_the_names_are_sorted() -> None:
    # Capitals and underscores where the eye expects them, as in the file itself.
    assert list(notices.__all__) == sorted(notices.__all__)
    assert len(set(notices.__all__)) == len(notices.__all__)


@pytest.mark.parametrize("name", notices.__all__)
def test_every_name_can_be_imported(name: str) -> None:
    found = getattr(notices, name)
    assert callable(found) or isinstance(found, str)
    if callable(found):
        assert found.__doc__
        assert found.__name__ == name


def test_no_other_name_is_public() -> None:
    with pytest.raises(AttributeError, match="no attribute 'load_plans'"):
        _ = notices.load_plans


def test_the_version_is_that_of_the_package() -> None:
    assert notices.__version__ == version("notices")


def test_importing_it_waits_for_nothing() -> None:
    program = f"import sys, notices; print(*[name for name in {HEAVY!r} if name in sys.modules])"
    run = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=False
    )
    assert (run.returncode, run.stdout.split()) == (0, []), run.stderr


def test_a_plan_is_checked_without_the_libraries_that_set_pages() -> None:
    program = (
        "import sys, notices; notices.load_plan; notices.work_out;"
        "print(*[n for n in ('weasyprint', 'PIL', 'babel', 'resvg_py') if n in sys.modules])"
    )
    run = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=False
    )
    assert (run.returncode, run.stdout.split()) == (0, []), run.stderr
