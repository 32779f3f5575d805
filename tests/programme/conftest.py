"""Plans as short texts, worked out."""

from __future__ import annotations

import datetime as dt
import sys
import textwrap
from collections.abc import Callable
from pathlib import Path

import pytest

from notices.plan.load import load_plan
from notices.programme.model import Programme
from notices.programme.work_out import work_out

# The strategies beside this file are imported as tests.programme.strategies, and an installed
# wheel does not bring them: the checkout comes last, so that the wheel stays what is tested.
sys.path.append(str(Path(__file__).parents[2]))

HEAD = """\
club:
  name: Marl Hill
  sender: {email: course@marlhill.example}
"""

ProgrammeOf = Callable[..., Programme]


@pytest.fixture
def programme_of(tmp_path: Path) -> ProgrammeOf:
    """Write a plan, load it and work it out; a plan without a club gets one."""

    def make(text: str, issued: dt.date = dt.date(2026, 1, 5)) -> Programme:
        plan = textwrap.dedent(text)
        if not plan.startswith("club:") and "\nclub:" not in plan:
            plan = HEAD + plan
        path = tmp_path / "plan.yaml"
        path.write_text(plan, encoding="utf-8")
        return work_out(load_plan(path).plan, issued)

    return make
