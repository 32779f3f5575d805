"""What is hard to read is named: the document or the place in the plan, and the sentence."""

from __future__ import annotations

import datetime as dt
import json
import re
from collections.abc import Sequence
from pathlib import Path

import pytest

import notices
from notices.findings import Finding
from notices.plan.own_words import own_words
from notices.wording.reading_ease import measure
from tests.wording.small_plans import ISSUED, plan, work

LONG = (
    "We do this now because the machine is here and the weather is good and the grass is strong and "
    "you are all away on the long summer holiday that you have earned"
)
"""33 words."""

HARD = " ".join(
    ["Organisational considerations necessitate comprehensive agronomical intervention."] * 20
)


def found(tmp_path: Path, language: str = "en-GB", **more: object) -> list[Finding]:
    path = tmp_path / "plan.yaml"
    data = plan(
        work("scarifying", "2027-08-09"),
        work("hollow tining", "2027-08-09", **more),
        club={"language": language},
    )
    path.write_text(json.dumps(data, ensure_ascii=False), "utf-8")
    loaded = notices.load_plan(path)
    programme = notices.work_out(loaded.plan, ISSUED)
    documents = notices.write_documents(programme, notices.canonical(loaded.plan))
    return list(loaded.located(notices.check_words(documents, tuple(own_words(loaded.plan)))))


def doubts(findings: Sequence[Finding]) -> list[Finding]:
    """Leave out what is told of every document."""
    return [one for one in findings if one.code != "reading-ease"]


def told(findings: Sequence[Finding]) -> list[tuple[str, tuple[str | int, ...]]]:
    return [(finding.code, finding.path) for finding in findings]


@pytest.mark.parametrize("language", ["en-GB", "en-US"])
def test_our_own_words_pass(tmp_path: Path, language: str) -> None:
    assert doubts(found(tmp_path, language)) == []


def test_what_was_measured_is_told_of_every_document(tmp_path: Path) -> None:
    measured = {
        one.place.file: one.message
        for one in found(tmp_path)
        if one.code == "reading-ease" and one.place is not None
    }
    pattern = r"\d+ words, reading ease \d+, grade \d+\.\d, \d+\.\d words in a sentence on average"
    assert re.match(pattern, measured["member-email"])
    assert "questions-and-answers" in measured


def test_a_long_sentence_of_the_clubs_own_is_named_once_with_its_place(tmp_path: Path) -> None:
    assert len(LONG.split()) == 33
    (one,) = doubts(found(tmp_path, note=f"{LONG}. It is short."))
    assert told([one]) == [("sentence-too-long", ("works", 1, "note"))]
    assert one.place is not None
    assert "a sentence has 33 words: “We do this now because the machine is here" in one.message


def test_hard_words_are_told_with_the_place_in_the_plan_and_the_document(tmp_path: Path) -> None:
    findings = found(tmp_path, why=HARD)
    assert told(findings)[0] == ("hard-to-read", ("works", 1, "why"))
    assert measure(HARD).words == 120
    assert "hardest is: “Organisational considerations necessitate" in findings[0].message


def test_a_word_that_nothing_explains_is_named_with_its_meaning(tmp_path: Path) -> None:
    # The text on scarifying says what thatch is; nothing says what a wetting agent is.
    (one,) = doubts(found(tmp_path, note="The thatch is deep, and a wetting agent is used too."))
    assert told([one]) == [("word-not-explained", ("works", 1, "note"))]
    assert "“wetting agent”" in one.message
    assert "A product that helps water to soak in evenly" in one.suggestion


def test_a_text_of_the_clubs_own_is_measured_without_its_placeholders(tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    data = plan(
        work("air injection", "2027-08-09"),
        operations=[{"name": "air injection", "text": _TEXT}],
    )
    path.write_text(json.dumps(data, ensure_ascii=False), "utf-8")
    loaded = notices.load_plan(path)
    programme = notices.work_out(loaded.plan, dt.date(2027, 3, 1))
    documents = notices.write_documents(programme, notices.canonical(loaded.plan))
    findings = list(notices.check_words(documents, tuple(own_words(loaded.plan))))
    assert ("sentence-too-long", ("operations", 0, "text")) in told(findings)
    assert not any("{" in finding.message for finding in findings)


_TEXT = f"""\
title: Air injection
line: We blow air into the soil.

## What we do
We blow air into {{{{ each_green }}}}.

## Why
{LONG}.

## What you will see
You will see little.

## Your game
You will hardly notice.

## How long
It is over the same day.
"""
