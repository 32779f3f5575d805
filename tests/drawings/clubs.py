"""The programmes that drawings are tried on: every example, each worked out once."""

from __future__ import annotations

import datetime as dt
from functools import cache

import notices
from notices.wording.words import Words
from tests.documents.building import EXAMPLES, ISSUED, NAMES

__all__ = ["NAMES", "words_of"]


@cache
def words_of(name: str) -> Words:
    """The words of an example."""
    loaded = notices.load_plan(EXAMPLES / name / "plan.yaml")
    issued: dt.date = loaded.plan.issued or ISSUED
    return Words(notices.work_out(loaded.plan, issued))
