"""What a club lives with, where one reason answers several findings of a kind."""

from __future__ import annotations

import datetime as dt

from notices.wording.accepted import accepted_in_words
from tests.wording.small_plans import plan, words, work

WHY = {"finding": "recovery-into-winter", "by": "the Committee", "why": "few play in winter"}


def test_greens_that_do_not_heal_before_winter_are_told_in_one_entry() -> None:
    """Greens of two works in November: one reason, one entry, and each sentence of it once."""
    tined = work("deep solid tining", "2027-11-08", greens="1-9")
    cored = work("hollow tining", "2027-11-22", greens="10")
    told = words(plan(tined, cored, accepted=[WHY]))
    several = [one for one, _, _ in told.programme.accepted]
    assert [one.code for one in several] == ["recovery-into-winter"] * 2
    (entry,) = accepted_in_words(told, told.programme.accepted)
    ((text, days),) = entry.what
    spring = max(
        r.growth_returns
        for period in told.programme.periods
        for r in period.recoveries
        if r.growth_returns
    )
    assert text == (
        "Growth may stop before these greens have healed. "
        f"It does not return before about {told.dates.day(spring)}. They are greens 1 to 9 after "
        "deep solid tining on Monday 8 November; green 10 after hollow tining on Monday "
        "22 November."
    )
    assert days == (dt.date(2027, 11, 8), dt.date(2027, 11, 22), spring)


def test_one_finding_keeps_its_own_words() -> None:
    told = words(plan(work("deep solid tining", "2027-11-08", greens="1-9"), accepted=[WHY]))
    (entry,) = accepted_in_words(told, told.programme.accepted)
    ((text, _),) = entry.what
    assert text.startswith("Greens 1 to 9 may not have healed when growth stops")
