"""Whatever a club plans, the documents say its days and greens, and no other days."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import icalendar
import pytest
from hypothesis import HealthCheck, given, settings

import notices
from notices.documents.model import Letter
from notices.programme.news import last_day_of_news
from notices.rendering import forms
from notices.rendering.text import plain_text
from notices.rendering.whole_pack import _calendar
from tests.documents.building import ISSUED, days_of
from tests.documents.dates_in_words import read_dates
from tests.documents.reading import Page, plain, unwrapped
from tests.plan.strategies import plans

READ = {
    "member-email",
    "board-notice-a4",
    "counter-handout",
    "starter-sheet",
    "team-sheet",
    "tee-sign",
}
"""Documents whose facts name their days in full, or under a head that says the month."""


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("any") / "plan.yaml"


@settings(
    max_examples=25,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(data=plans())
def test_any_plan_is_told(path: Path, data: dict[str, Any]) -> None:
    path.write_text(json.dumps(data, ensure_ascii=False), encoding="utf-8")
    loaded = notices.load_plan(path)
    programme = notices.work_out(loaded.plan, ISSUED)
    documents = notices.write_documents(programme, notices.canonical(loaded.plan))
    known = days_of(programme) | {last_day_of_news(programme)}
    for document in documents.documents:
        if document.name not in READ:
            continue
        for fact in document.facts:
            assert fact.text.strip()
            if not fact.dates:
                continue
            head = fact.dates[0]
            said = [day for one in read_dates(fact.text, ISSUED, head) for day in one.days]
            assert tuple(said) == fact.dates
    email = documents.document("member-email")
    text = unwrapped(plain_text(email, "Footer."))
    letter = next(item for item in documents.items if isinstance(item, Letter))
    page = Page(forms.email_html(letter, {})).text
    for fact in email.facts:
        assert plain(fact.text) in text
        assert plain(fact.text) in page
    for section in email.sections:
        if section.name in ("at a glance", "days", "also planned", "other dates"):
            for one in read_dates(" ".join(_words(section.blocks)), ISSUED):
                assert set(one.days) & known if one.rough else set(one.days) <= known, one
    calendar = icalendar.Calendar.from_ical(_calendar(documents.calendar()).content)
    events = {str(event["UID"]) for event in calendar.walk("VEVENT")}
    assert len(events) == len(documents.calendar().entries)


def _words(blocks: tuple[Any, ...]) -> list[str]:
    found: list[str] = []
    for block in blocks:
        found += [row.text for row in getattr(block, "rows", ()) if hasattr(row, "text")]
        found += [
            cell for row in getattr(block, "rows", ()) if isinstance(row, tuple) for cell in row
        ]
    return found
