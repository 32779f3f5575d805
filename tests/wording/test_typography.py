"""Marks that a keyboard has one sign for, set by what they mean."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import notices
from notices.wording.typography import typeset

SET = [
    # Apostrophes: of possession, of what is left out, of years.
    ("Captain's Cup", "Captain’s Cup"),
    ("the greenkeepers' sheds", "the greenkeepers’ sheds"),
    ("Ladies' Day and Seniors' Day", "Ladies’ Day and Seniors’ Day"),
    ("as in the '90s, and in '76 and the 1980's", "as in the ’90s, and in ’76 and the 1980’s"),
    ("'Tis rock 'n' roll, don't you know", "’Tis rock ’n’ roll, don’t you know"),
    # Quotations, one in another.
    ('"Wait," he said, "until we wave."', "“Wait,” he said, “until we wave.”"),
    ("play 'Oak' first", "play ‘Oak’ first"),
    ("He said: \"Don't play 'Oak' today.\"", "He said: “Don’t play ‘Oak’ today.”"),
    ('Say "hole 18" and ("hole 9")', "Say “hole 18” and (“hole 9”)"),
    ('"see https://club.example" he said', "“see https://club.example” he said"),
    # Feet and inches.
    ("5' 6\" deep, 6' apart", "5' 6\" deep, 6' apart"),
    ('1/2" tines at 2" x 2"', '1/2" tines at 2" x 2"'),
    ('"We use 1/2" tines" he said', '“We use 1/2" tines” he said'),
    # What is not prose.
    ('https://club.example/o\'neill?q="a"', 'https://club.example/o\'neill?q="a"'),
    ("write to o'neill@club.example, don't call", "write to o'neill@club.example, don’t call"),
    ("it's `a = 'b'`, isn't it", "it’s `a = 'b'`, isn’t it"),
    ("[it's](https://club.example \"it's\")", '[it’s](https://club.example "it\'s")'),
    # What nobody can tell stays.
    ('one " alone', 'one " alone'),
    ("set already: Captain’s “Cup”", "set already: Captain’s “Cup”"),
]


@pytest.mark.parametrize(("typed", "printed"), SET)
def test_marks_are_set_by_what_they_mean(typed: str, printed: str) -> None:
    assert typeset(typed) == printed
    assert typeset(printed) == printed


MARKS = {"'": "'’‘", '"': '"“”'}


@settings(max_examples=300)
@given(st.text("ab1 5/.'\"`()[]@:’“”", max_size=24) | st.text(max_size=12))
def test_nothing_but_marks_changes_and_only_once(typed: str) -> None:
    printed = typeset(typed)
    assert len(printed) == len(typed)
    assert all(new in MARKS.get(old, old) for old, new in zip(typed, printed, strict=True))
    assert typeset(printed) == printed


TYPED = """\
club: {name: "Captain's Hill", contact: "Ask in the greenkeepers' hut", sign_off: "The greens' team"}
course: {greens: [{green: 1-3}, {green: Captain's putting green}]}
works:
  - operation: hollow tining
    dates: 2026-09-01
    note: 'It''s "urgent"'
    why: Last summer's drought
closures: [{what: the juniors' range, dates: 2026-09-01, reason: the sand's there}]
fixtures: [{name: Captain's Cup, date: 2026-09-05, kind: visitors}]
"""


def test_what_a_club_typed_is_set_in_all_that_is_read(tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_text(TYPED, encoding="utf-8")
    programme = notices.work_out(notices.load_plan(path).plan, dt.date(2026, 8, 3))
    documents = notices.write_documents(programme, {"club": {"name": "Captain's Hill"}})
    # Text messages keep to the alphabet of the networks, which has no such marks.
    texts = repr([one for one in documents.documents if one.name != "short-messages"])
    for printed in ("Captain’s Hill", "greenkeepers’ hut", "It’s “urgent”", "Captain’s Cup"):
        assert printed in texts
    for typed in ("Captain's", "greenkeepers'", "summer's", "juniors'", "sand's", "greens' team"):
        found = texts.find(typed)
        assert found < 0, texts[found - 60 : found + 40]
    assert documents.records["plan.json"] == {"club": {"name": "Captain's Hill"}}
    assert programme.club.name == "Captain's Hill"
