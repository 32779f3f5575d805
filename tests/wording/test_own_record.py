"""An estimate that rests on the club's own record says so, to members and to the committee."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

import notices
from notices.wording.circumstances import own_record, own_record_in_figures
from notices.wording.question_facts import records_said
from notices.wording.words import Words

PLAN = """\
club: {name: Bramble Hill Golf Club}
course: {greens: [{green: 1-9, area: 400 m2}]}
works:
  - {operation: hollow tining, dates: 2027-08-16, services_checked: true}
  - {operation: needle tining, dates: 2027-09-13, services_checked: true}
observed:
"""

SEASONS = (
    "  - {operation: hollow tining, done: 2025-08-18, healed: 2025-09-01}\n",
    "  - {operation: hollow tining, done: 2026-08-17, healed: 2026-08-31}\n",
)


def words(tmp_path: Path, *records: str) -> Words:
    path = tmp_path / "plan.yaml"
    path.write_text(PLAN + "".join(records), "utf-8")
    return Words(notices.work_out(notices.load_plan(path).plan, dt.date(2027, 7, 1)))


@pytest.mark.parametrize(
    ("count", "said"),
    [
        (1, "We go by what we saw here in one earlier season."),
        (2, "We go by what we saw here in two earlier seasons."),
    ],
)
def test_members_hear_how_many_seasons_it_rests_on(tmp_path: Path, count: int, said: str) -> None:
    told = words(tmp_path, *SEASONS[:count])
    assert own_record(told, "hollow tining") == said
    assert own_record(told, "needle tining") == ""


def test_the_front_page_sets_the_record_beside_the_book(tmp_path: Path) -> None:
    (said,) = own_record_in_figures(words(tmp_path, *SEASONS))
    assert said.startswith(
        "Hollow tining: two seasons on record. In the best growing weather, an edge "
    )
    # The middle of 0.45 to 0.75 mm/day, the model's own rate (agronomy.recovery).
    assert said.endswith("Our general figure is 0.60 mm.")


@pytest.mark.usefixtures("few_documents")
def test_the_email_says_it_below_the_work(tmp_path: Path) -> None:
    programme = words(tmp_path, *SEASONS).programme
    documents = notices.write_documents(programme, {})
    files = {file.name: file for file in notices.render_pack(documents)}
    text = files["member-email.txt"].content.decode()
    assert text.count("We go by what we saw here in two earlier seasons.") == 1
    assert "two seasons on record" in files["index.html"].content.decode()


def test_the_record_of_putting_well_is_told_too(tmp_path: Path) -> None:
    """It is what members are promised. From 18 August to 15 September are 28 days, four weeks."""
    season = (
        "  - {operation: hollow tining, done: 2025-08-18, putting_smoothly: 2025-08-30,"
        " healed: 2025-09-15}\n"
    )
    (said,) = records_said(words(tmp_path, season))
    assert said.text == (
        "Hollow tining on 18 August 2025: putting smoothly on 30 August 2025, and healed on "
        "15 September 2025, after about four weeks."
    )
    assert said.dates == tuple(dt.date(2025, *day) for day in ((8, 18), (8, 30), (9, 15)))
