"""Days on which something is sent, as they are typed."""

from __future__ import annotations

import datetime as dt

import pytest

from notices.plan.moments import Moment, read_moment, read_sending, write_sending

FIRST, LAST = dt.date(2026, 10, 12), dt.date(2026, 10, 14)


@pytest.mark.parametrize(
    ("typed", "day"),
    [
        ("28 days before", "2026-09-14"),
        ("2 weeks before", "2026-09-28"),
        ("the day before", "2026-10-11"),
        ("Day before", "2026-10-11"),
        ("1 day before", "2026-10-11"),
        ("on the day", "2026-10-12"),
        ("when finished", "2026-10-14"),
        ("the day after", "2026-10-15"),
        ("3 days after", "2026-10-17"),
        ("2026-10-01", "2026-10-01"),
    ],
)
def test_a_day_to_send_on(typed: str, day: str) -> None:
    sending = read_sending(typed)
    assert sending.on(FIRST, LAST) == dt.date.fromisoformat(day)
    assert read_sending(write_sending(sending)) == sending


@pytest.mark.parametrize("typed", ["soon", "28 days", "90 weeks before", "", 28, "2026-09-31"])
def test_what_is_no_such_day_is_refused(typed: object) -> None:
    with pytest.raises(ValueError, match=": "):
        read_sending(typed)


def test_a_slip_in_a_moment_is_seen() -> None:
    assert read_moment("Called off") is Moment.CALLED_OFF
    with pytest.raises(ValueError, match='did you mean "reminder"'):
        read_moment("remainder")
