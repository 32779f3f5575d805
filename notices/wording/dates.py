"""Dates in words, in the club's language."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from babel import Locale
from babel.dates import format_date

from notices.calendar_days import ONE_DAY, each_day
from notices.wording.language import LANGUAGES, DatePatterns
from notices.wording.lists import and_list

MOST_RUNS = 2
"""Most runs of days that a title names; more would make it a list."""

NO_BREAK = "\N{NO-BREAK SPACE}"

_MONTH = "(?:January|February|March|April|May|June|July|August|September|October|November|December)"
_DATE = re.compile(
    r"(?:(?:Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day,? )?"
    rf"(?:{_MONTH} \d{{1,2}}\b(?:, \d{{4}})?|\d{{1,2}} {_MONTH}(?: \d{{4}})?)"
    r"|(?:Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day \d{1,2}\b"
)
"""A date as either language says it, with or without its weekday and its year."""

_THIRDS = ("early {}", "mid-{}", "late {}")


@dataclass(frozen=True, slots=True)
class DateWords:
    """Words for dates in one language; a year is named only if it is not the year of issue."""

    language: str
    issued: dt.date

    def day(self, day: dt.date) -> str:
        """Write a day, such as "Monday 23 August"."""
        return self._format(day, self._patterns.day) + self._year(day)

    def short_day(self, day: dt.date) -> str:
        """Write a day in short, such as "Mon 23 Aug"."""
        return self._format(day, self._patterns.short_day) + self._year(day)

    def date(self, day: dt.date) -> str:
        """Write a date with its year, such as "23 August 2027"."""
        return self._format(day, self._patterns.date)

    def days(self, days: Iterable[dt.date]) -> str:
        """Write days, such as "Monday 23 to Sunday 29 August", with "and" between several runs."""
        return and_list([self._run(run, self._patterns.day) for run in runs_of_days(days)])

    def on_days(self, days: Iterable[dt.date]) -> str:
        """Write days, such as "on Monday 23 August" or "from Monday 23 to Sunday 29 August"."""
        return and_list(
            [
                f"{'from' if len(run) > 2 else 'on'} {self._run(run, self._patterns.day)}"
                for run in runs_of_days(days)
            ]
        )

    def from_to(self, before: dt.date, after: dt.date) -> str:
        """Write a move between days, such as "from Tuesday 13 to Thursday 15 October"."""
        opening = self._format(before, self._patterns.day)
        if (before.year, before.month) != (after.year, after.month):
            opening += self._year(before)
        elif self._patterns.month_last:
            opening = opening.rsplit(" ", 1)[0]
        return f"from {opening} to {self.day(after)}"

    def short_days(self, days: Iterable[dt.date]) -> str:
        """Write days in short, such as "Mon 23 to Sun 29 Aug"."""
        return and_list([self._run(run, self._patterns.short_day) for run in runs_of_days(days)])

    def short_days_without_year(self, days: Iterable[dt.date]) -> str:
        """Write days in short below a heading that names the year."""
        listed = sorted(days)
        return replace(self, issued=listed[0]).short_days(listed)

    def days_with_year(self, days: Iterable[dt.date]) -> str:
        """Write days with their year for a heading, as "Monday 23 to Sunday 29 August 2027"."""
        listed = sorted(days)
        words = self.days(listed)
        year = self._patterns.year.format(listed[-1].year)
        return words if words.endswith(year) else words + year

    def month(self, day: dt.date) -> str:
        """Write a month alone, for the head of a column of days."""
        return format_date(day, "LLLL", locale=self._locale)

    def days_of_month(self, days: Iterable[dt.date]) -> str:
        """Write days below a head that names the month, such as "Mon 23 to Sun 29"."""
        listed = sorted(days)
        if len(listed) == 1:
            return self.weekday(listed[0])
        joint = "and" if len(listed) == 2 else "to"
        return f"{self.weekday(listed[0])} {joint} {self.weekday(listed[-1])}"

    def weekday(self, day: dt.date) -> str:
        """Write a day without its month, such as "Mon 23"."""
        return self._format(day, self._patterns.weekday)

    def month_day(self, day: dt.date) -> str:
        """Write a day without its weekday, such as "23 Aug"."""
        return self._format(day, self._patterns.month_day)

    def span_of_month(self, days: Sequence[dt.date]) -> str:
        """Write a span of days for a small label, such as "9 to 12 Nov"."""
        first, last = min(days), max(days)
        if first.month != last.month:
            return f"{self.month_day(first)} on"
        if self._patterns.month_last:
            return f"{first.day} to {self.month_day(last)}"
        return f"{self.month_day(first)} to {last.day}"

    def about(self, day: dt.date) -> str:
        """Write a date that nobody can promise, such as "mid-September"."""
        third = min(2, (day.day - 1) // 10)
        month = format_date(day, "MMMM", locale=self._locale)
        return _THIRDS[third].format(month) + self._plain_year(day)

    def promised(self, day: dt.date, growth_stops: dt.date | None, *, short: bool = False) -> str:
        """Write a promised day, but only roughly if it depends on the return of growth."""
        if growth_stops is not None and day >= growth_stops:
            return self.about(day)
        return self.short_day(day) if short else self.day(day)

    def year_of(self, day: dt.date) -> str:
        """Return the year to add to a day; empty for the year of issue."""
        return self._year(day)

    @property
    def _locale(self) -> Locale:
        return Locale.parse(self._patterns.locale)

    @property
    def _patterns(self) -> DatePatterns:
        return LANGUAGES[self.language].dates

    def _format(self, day: dt.date, pattern: str) -> str:
        return format_date(day, pattern, locale=self._locale)

    def _year(self, day: dt.date) -> str:
        return "" if day.year == self.issued.year else self._patterns.year.format(day.year)

    def _plain_year(self, day: dt.date) -> str:
        """Return the year to add to a month alone, without a comma in any language."""
        return "" if day.year == self.issued.year else f" {day.year}"

    def _run(self, run: Sequence[dt.date], pattern: str) -> str:
        first, last = run[0], run[-1]
        whole = self._format(last, pattern) + self._year(last)
        if first == last:
            return whole
        joint = "and" if len(run) == 2 else "to"
        one_month = (first.year, first.month) == (last.year, last.month)
        if one_month and self._patterns.month_last:
            # The month is named once, at the end.
            opening = self._format(first, pattern).rsplit(" ", 1)[0]
        else:
            opening = self._format(first, pattern)
            if first.year != last.year:
                opening += self._year(first)
        return f"{opening} {joint} {whole}"


def unbroken(text: str) -> str:
    """Return a heading in which each date moves to the next line whole: no year stands there alone."""
    return _DATE.sub(lambda date: date[0].replace(" ", NO_BREAK), text)


def in_brief(days: Iterable[dt.date]) -> Sequence[dt.date]:
    """Return the days, or every day from the first to the last if they have many gaps.

    For titles, and for days that are listed one by one elsewhere.
    """
    runs = runs_of_days(days)
    if len(runs) <= MOST_RUNS:
        return [day for run in runs for day in run]
    first, last = runs[0][0], runs[-1][-1]
    return each_day(first, last)


def runs_of_days(days: Iterable[dt.date]) -> list[list[dt.date]]:
    """Return the days in runs without a gap."""
    runs: list[list[dt.date]] = []
    for day in sorted(set(days)):
        if runs and day - runs[-1][-1] == ONE_DAY:
            runs[-1].append(day)
        else:
            runs.append([day])
    return runs
