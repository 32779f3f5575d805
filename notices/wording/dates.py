"""Dates in words, as they are said in the club's language."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from babel import Locale
from babel.dates import format_date

from notices.wording.lists import and_list

ONE_DAY = dt.timedelta(days=1)

_PATTERNS = {
    # weekday, day and month; the same short; without weekday; without month; day and month short
    "en-GB": ("EEEE d MMMM", "EEE d MMM", "d MMMM", "EEE d", "d MMM"),
}
_THIRDS = {"en-GB": ("early {}", "mid-{}", "late {}")}
_WEEKS = {"en-GB": ("first", "second", "third", "fourth", "last")}


@dataclass(frozen=True, slots=True)
class DateWords:
    """Words for dates in one language, seen from the date of issue.

    A year is named where it is not the year of issue.
    """

    language: str
    issued: dt.date

    def day(self, day: dt.date) -> str:
        """Monday 23 August."""
        return self._format(day, 0) + self._year(day)

    def short_day(self, day: dt.date) -> str:
        """Mon 23 Aug."""
        return self._format(day, 1) + self._year(day)

    def date(self, day: dt.date) -> str:
        """23 August 2027; always with its year."""
        return f"{self._format(day, 2)} {day.year}"

    def days(self, days: Iterable[dt.date]) -> str:
        """Monday 23 to Sunday 29 August; several runs are joined with "and"."""
        return and_list([self._run(run, 0) for run in runs_of_days(days)])

    def on_days(self, days: Iterable[dt.date]) -> str:
        """On Monday 23 August; from Monday 23 to Sunday 29 August."""
        return and_list(
            [
                f"{'from' if len(run) > 2 else 'on'} {self._run(run, 0)}"
                for run in runs_of_days(days)
            ]
        )

    def short_days(self, days: Iterable[dt.date]) -> str:
        """Mon 23 to Sun 29 Aug."""
        return and_list([self._run(run, 1) for run in runs_of_days(days)])

    def short_days_without_year(self, days: Iterable[dt.date]) -> str:
        """Mon 23 to Sun 29 Aug; where a heading says the year."""
        listed = sorted(days)
        return replace(self, issued=listed[0]).short_days(listed)

    def days_with_year(self, days: Iterable[dt.date]) -> str:
        """Monday 23 to Sunday 29 August 2027; for headings."""
        listed = sorted(days)
        words = self.days(listed)
        year = str(listed[-1].year)
        return words if words.endswith(year) else f"{words} {year}"

    def month(self, day: dt.date) -> str:
        """August; for the head of a column of days."""
        return format_date(day, "LLLL", locale=self._locale)

    def days_of_month(self, days: Iterable[dt.date]) -> str:
        """Mon 23 to Sun 29; under a head that says the month."""
        listed = sorted(days)
        if len(listed) == 1:
            return self.weekday(listed[0])
        joint = "and" if len(listed) == 2 else "to"
        return f"{self.weekday(listed[0])} {joint} {self.weekday(listed[-1])}"

    def weekday(self, day: dt.date) -> str:
        """Mon 23; where the month is plain from what stands around."""
        return self._format(day, 3)

    def month_day(self, day: dt.date) -> str:
        """23 Aug."""
        return self._format(day, 4)

    def span_of_month(self, days: Sequence[dt.date]) -> str:
        """9 to 12 Nov; for small labels."""
        first, last = min(days), max(days)
        if first.month == last.month:
            return f"{first.day} to {self.month_day(last)}"
        return f"{self.month_day(first)} on"

    def about(self, day: dt.date) -> str:
        """Mid-September, in small letters; for dates that nobody can promise."""
        third = min(2, (day.day - 1) // 10)
        month = format_date(day, "MMMM", locale=self._locale)
        return _THIRDS[self.language][third].format(month) + self._year(day)

    def week(self, day: dt.date) -> str:
        """The second week of May."""
        name = _WEEKS[self.language][min(4, (day.day - 1) // 7)]
        month = format_date(day, "MMMM", locale=self._locale)
        return f"the {name} week of {month}{self._year(day)}"

    @property
    def _locale(self) -> Locale:
        return Locale.parse(self.language.replace("-", "_"))

    def _format(self, day: dt.date, pattern: int) -> str:
        return format_date(day, _PATTERNS[self.language][pattern], locale=self._locale)

    def _year(self, day: dt.date) -> str:
        return "" if day.year == self.issued.year else f" {day.year}"

    def _run(self, run: Sequence[dt.date], pattern: int) -> str:
        first, last = run[0], run[-1]
        whole = self._format(last, pattern) + self._year(last)
        if first == last:
            return whole
        joint = "and" if len(run) == 2 else "to"
        if (first.year, first.month) == (last.year, last.month):
            # The month is said once, at the end.
            opening = self._format(first, pattern).rsplit(" ", 1)[0]
        else:
            opening = self._format(first, pattern)
            if first.year != last.year:
                opening += self._year(first)
        return f"{opening} {joint} {whole}"


def runs_of_days(days: Iterable[dt.date]) -> list[list[dt.date]]:
    """Return the days in runs without a gap."""
    runs: list[list[dt.date]] = []
    for day in sorted(set(days)):
        if runs and day - runs[-1][-1] == ONE_DAY:
            runs[-1].append(day)
        else:
            runs.append([day])
    return runs
