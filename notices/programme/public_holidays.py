"""Public holidays of the club's country, and the working days between them."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from functools import lru_cache

from notices.calendar_days import ONE_DAY


def holiday(day: dt.date, country: str | None) -> str:
    """Name the public holiday of a day; nothing where there is none, or no country."""
    return _holidays(country, day.year).get(day, "") if country else ""


def working_day_before(day: dt.date, country: str | None) -> dt.date:
    """Return the last day before another that is no Saturday, Sunday or public holiday."""
    before = day - ONE_DAY
    while before.weekday() > 4 or holiday(before, country):
        before -= ONE_DAY
    return before


@lru_cache(maxsize=32)
def _holidays(country: str, year: int) -> Mapping[dt.date, str]:
    """Return the public holidays of a country, or of a part that has its own, in a year."""
    from holidays import country_holidays  # noqa: PLC0415, start-up time

    nation, _, part = country.partition("-")
    for subdivision in dict.fromkeys((part or None, None)):
        try:
            return dict(country_holidays(nation, subdiv=subdivision, years=year))
        except NotImplementedError:
            continue  # a part, or a country, that the library does not know
    return {}
