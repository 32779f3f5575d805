"""Safety at work: what the works call for is said, and no more."""

from __future__ import annotations

import itertools
import re

import pytest

from notices.operations import CATALOGUE
from notices.wording.cautions import Cautions, cautions
from notices.wording.reading_ease import measure
from notices.wording.said import lines_of
from notices.wording.words import Words
from tests.wording.lint import faults_in
from tests.wording.small_plans import plan, programme, work

DAY = "2027-09-06"

NEEDED = {"turfing": {"area": "40 m2"}}

EVERY_WORK = {
    language: Words(
        programme(
            plan(
                *(work(n, DAY, greens="1", settings=NEEDED.get(n, {})) for n in CATALOGUE),
                club={"language": language},
            )
        )
    )
    for language in ("en-GB", "en-US")
}


def told(*names: str, language: str = "en-GB") -> Cautions:
    words = EVERY_WORK[language]
    return cautions(words, [w for w in words.programme.works if w.operation.name in names])


def titles(*names: str) -> set[str]:
    return {point.title for point in told(*names).points}


ALWAYS = {"Machines", "Slopes and wet grass", "Players"}
"""Whatever is done: a mower and a sprayer are machines too."""


@pytest.mark.parametrize(
    ("names", "called_for"),
    [
        (("feeding",), {"Products"}),
        (("brushing",), set()),
        (("top dressing",), {"Sand and dust", "Lifting"}),
        (("deep solid tining",), {"Pipes and cables in the ground"}),
        (("hollow tining",), {"Pipes and cables in the ground", "Lifting"}),
        (
            ("drain trenching",),
            {"Pipes and cables in the ground", "Open trenches", "Lifting"},
        ),
        (("turfing",), {"Lifting"}),
    ],
)
def test_works_call_for_their_own_cautions(names: tuple[str, ...], called_for: set[str]) -> None:
    assert titles(*names) == called_for | ALWAYS


def test_every_work_that_enters_the_ground_says_that_services_come_first() -> None:
    for operation in CATALOGUE.values():
        said = "Pipes and cables in the ground" in titles(operation.name)
        assert said == operation.enters_ground, operation.name


def test_what_is_not_yet_checked_is_named() -> None:
    data = plan(
        work("hollow tining", DAY, services_checked=True),
        work("deep solid tining", DAY),
    )
    words = Words(programme(data))
    (point,) = [p for p in cautions(words, words.programme.works).points if "Pipes" in p.title]
    assert lines_of(point.text)[-1].endswith(
        "Not yet marked as checked in the plan: deep solid tining."
    )


@pytest.mark.parametrize("language", EVERY_WORK)
def test_cautions_read_well_defer_and_name_no_number(language: str) -> None:
    for names in itertools.combinations(CATALOGUE, 1):
        found = told(*names, language=language)
        pieces = [*lines_of(found.lead), *(t for p in found.points for t in lines_of(p.text))]
        assert [fault for piece in pieces for fault in faults_in(piece, language)] == []
        assert measure(" ".join(pieces)).grade <= 8
        assert "law" in pieces[0]
        assert not re.search(r"\d", " ".join(pieces))
