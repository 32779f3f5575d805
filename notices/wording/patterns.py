"""Other layouts of the main works, in words for the committee and the course manager."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from notices.programme.model import Layout, Pattern, Promise
from notices.wording.blocks import Table
from notices.wording.lists import and_list, counted, number
from notices.wording.words import Words

NAMES = {
    Layout.ALL_AT_ONCE: "All at once",
    Layout.NINE_A_DAY: "A nine a day",
    Layout.AS_PLANNED: "As planned",
    Layout.SPREAD: "Spread over weeks",
}
"""Names of layouts in headings."""


MOST_NAMED = 3
"""Most fixtures named in one cell."""

_DONE = {
    Layout.ALL_AT_ONCE: "Done all at once",
    Layout.NINE_A_DAY: "Done a nine a day",
    Layout.AS_PLANNED: "As planned",
    Layout.SPREAD: "Spread over weeks",
}
"""Beginnings of the sentences on layouts."""


@dataclass(frozen=True, slots=True)
class PatternWords:
    """Comparison of the layouts of one programme."""

    words: Words
    patterns: tuple[Pattern, ...]

    @classmethod
    def of(cls, words: Words) -> PatternWords:
        """Return the comparison for a programme."""
        return cls(words, words.programme.patterns)

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the layouts."""
        return tuple(NAMES[pattern.layout] for pattern in self.patterns)

    def table(self) -> Table | None:
        """Return a table with a column for each layout; None if there is only one."""
        if len(self.patterns) < 2:
            return None
        return Table(
            "The same work in other ways",
            ("What is compared", *self.names),
            tuple((label, *cells) for label, cells in self.rows()),
        )

    def rows(self) -> Iterator[tuple[str, tuple[str, ...]]]:
        """Yield the label of each thing compared, with its value for each layout."""
        fixtures = f"{self.words.language.terms.fixture}s"
        every = self.patterns
        yield "Days of work", tuple(f"{len(one.days)}" for one in every)
        yield "First day", tuple(self.words.dates.month_day(one.dates[0]) for one in every)
        yield "Last day", tuple(self.words.dates.month_day(one.dates[-1]) for one in every)
        yield "Greens closed, day by day", tuple(f"{one.green_days_closed}" for one in every)
        if any(one.green_days_temporary for one in every):
            cells = tuple(f"{one.green_days_temporary}" for one in every)
            yield "On temporary greens, day by day", cells
        for label, holes in (
            ("Days with fewer than nine holes to their own greens", "days_under_nine"),
            ("Days with fewer than eighteen", "days_under_eighteen"),
        ):
            counts = [getattr(one, holes) for one in every]
            if None not in counts:
                yield label, tuple(map(str, counts))
        mixed = "Days when a round meets greens done and greens still to do"
        yield mixed, tuple(f"{one.mixed_days}" for one in every)
        if every[0].person_hours is not None:
            hours = tuple(f"{one.person_hours or 0:.0f}" for one in every)
            yield "Hours of people", hours
            yield "Fits the team and the daylight", tuple(map(_fit, every))
        if every[0].hire_days is not None:
            yield "Days of hire", tuple(f"{one.hire_days}" for one in every)
        yield "Putting well, expect by", tuple(self._expected(one.putting_well) for one in every)
        yield "Putting well, at worst", tuple(self._at_worst(one.putting_well) for one in every)
        if any(one.fixtures_on_closed for one in every):
            cells = tuple(_named(one.fixtures_on_closed) for one in every)
            yield f"{fixtures} with greens out of play", cells
        if any(one.fixtures_in_recovery for one in every):
            cells = tuple(_named(one.fixtures_in_recovery) for one in every)
            yield f"{fixtures} on recovering greens", cells

    def sentences(self) -> tuple[str, ...]:
        """Return the case for and against each layout, in a few sentences."""
        if len(self.patterns) < 2:
            return ()
        return tuple(" ".join(self._said(one)) for one in self.patterns)

    def _said(self, one: Pattern) -> Iterator[str]:
        name = _DONE[one.layout]
        if one.layout is Layout.AS_PLANNED:
            yield f"{name}, the work takes {counted(len(one.days), 'day')}{_fits(one)}."
        elif one.fits is False:
            yield (
                f"{name}, the work would not fit: {counted(len(one.too_long), 'day')} would run "
                f"over, by up to {_hours(one.longest_minutes_over)}."
            )
        else:
            yield f"{name}, the work would take {counted(len(one.days), 'day')}{_fits(one)}."
        would = "" if one.layout is Layout.AS_PLANNED else "would "
        if one.days_under_nine:
            have = "has" if not would else "have"
            yield (
                f"The course {would}{have} fewer than nine holes to their own greens on "
                f"{counted(one.days_under_nine, 'day')}."
            )
        if one.mixed_days:
            meet = "meet" if would else "meets"
            yield (
                f"On {counted(one.mixed_days, 'day')} a round {would}{meet} greens that are done "
                "and greens still to do."
            )

    def _expected(self, promise: Promise) -> str:
        return self.words.dates.month_day(promise.expect_by) + self._year(promise)

    def _at_worst(self, promise: Promise) -> str:
        if promise.at_worst is None:
            return "not known"
        dates = self.words.dates
        return dates.month_day(promise.at_worst) + dates.year_of(promise.at_worst)

    def _year(self, promise: Promise) -> str:
        return self.words.dates.year_of(promise.expect_by)


def patterns_in_words(words: Words) -> str:
    """Return the comparison as plain text, with a paragraph for each layout."""
    said = PatternWords.of(words)
    if len(said.patterns) < 2:
        return "There is nothing to lay out in another way."
    rows = list(said.rows())
    parts = [
        "\n".join([f"{name}:", *(f"  {label}: {cells[column]}" for label, cells in rows)])
        for column, name in enumerate(said.names)
    ]
    return "\n\n".join(["The main works laid out in other ways:", *parts])


def _fits(one: Pattern) -> str:
    if one.fits is None:
        return ""
    if one.fits:
        return ", and every day’s work fits"
    return f", and {counted(len(one.too_long), 'day')} would run over"


def _fit(one: Pattern) -> str:
    if one.fits:
        return "yes"
    days = counted(len(one.too_long), "day")
    return f"no: {days} too long, by up to {_hours(one.longest_minutes_over)}"


def _hours(minutes: float) -> str:
    """Return a duration to the hour, or to ten minutes if it is under an hour and a half."""
    if minutes < 90:
        return f"{max(1, round(minutes / 10)) * 10} minutes"
    return f"{number(round(minutes / 60))} hours"


def _named(names: tuple[str, ...]) -> str:
    told = tuple(dict.fromkeys(names))
    if len(told) > MOST_NAMED + 1:
        told = (*told[:MOST_NAMED], f"{len(told) - MOST_NAMED} more")
    return and_list(told) or "none"
