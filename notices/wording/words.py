"""Wording of one programme, with dates as seen from its issue and the greens of its course."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from notices.calendar_days import ONE_DAY
from notices.operations import Noticed
from notices.programme.model import Hole, Period, Programme, Work
from notices.wording import texts
from notices.wording.blocks import Block
from notices.wording.dates import DateWords
from notices.wording.greens import name_greens, name_greens_between, name_greens_briefly, name_holes
from notices.wording.language import LANGUAGES, Language
from notices.wording.operation_facts import operation_facts, story_facts

DaysWithGreens = list[tuple[tuple[dt.date, ...], tuple[str, ...]]]
"""Days of work, each entry with the greens worked on."""


@dataclass(frozen=True, slots=True)
class Words:
    """Wording of one programme."""

    programme: Programme
    _texts: dict[str, tuple[Work, texts.OperationText]] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )
    """Cache of texts on works, since most are needed many times."""

    @property
    def language(self) -> Language:
        """Language of the programme."""
        return LANGUAGES[self.programme.club.language]

    @property
    def role(self) -> str:
        """Post of the person who signs."""
        return self.programme.club.sender.role or self.language.terms.course_manager

    @property
    def dates(self) -> DateWords:
        """Words for dates."""
        return DateWords(self.programme.club.language, self.programme.issued)

    def greens(self, keys: Sequence[str], *, short: bool = False) -> str:
        """Return names of greens, such as "greens 1 to 6 and the putting green"."""
        return name_greens(keys, self.programme.greens, short=short)

    def holes(self, holes: Sequence[Hole], *, short: bool = False) -> str:
        """Return names of holes, such as "holes 1 to 6"."""
        return name_holes(holes, self.programme.greens, short=short)

    def greens_briefly(self, keys: Sequence[str]) -> str:
        """Return short names of greens, such as "all greens" or "greens 1 to 6"."""
        return name_greens_briefly(keys, self.programme.greens)

    def greens_between(self, keys: Sequence[str]) -> str:
        """Return names of greens inside a sentence, such as "green 4" or "Oak 4 and Elm 11"."""
        return name_greens_between(keys, self.programme.greens)

    def operation(self, work: Work) -> texts.OperationText:
        """Return the text on a work, filled with its facts."""
        known, text = self._texts.get(work.id, (None, None))
        if text is None or known is not work:
            text = texts.operation_text(
                self.programme.club.language,
                work.operation.slug,
                operation_facts(work, self.programme),
                work.operation.text or self.own_text(f"operations/{work.operation.slug}"),
            )
            self._texts[work.id] = (work, text)
        return text

    def own_text(self, name: str) -> str:
        """Return the club's own text by its name without ending; empty if it uses ours."""
        return self.programme.texts.get(f"{name}.md", "")

    def text(
        self, name: str, facts: Mapping[str, object]
    ) -> tuple[Mapping[str, str], tuple[Block, ...]]:
        """Return the front matter and the blocks of a text, the club's own if it has one."""
        language = self.programme.club.language
        return texts.text_with_head(language, name, facts, self.own_text(name))

    def title(self, work: Work) -> str:
        """Return the name of a work as a heading."""
        return self.operation(work).title

    def story(self, period: Period) -> tuple[Block, ...]:
        """Return the text on why the works of a period are done, and done together."""
        return self.text("why", story_facts(period))[1]

    def days_of(self, period: Period) -> DaysWithGreens:
        """Return the days of a period with their greens."""
        return days_with_greens((day, period.greens_on(day)) for day in period.days)

    def main_period(self) -> Period | None:
        """Return the period that the notices lead with: the most noticed, then the longest."""
        return max(
            self.programme.periods,
            key=lambda p: (
                p.noticed,
                len(p.greens),
                sum(w.operation.noticed is Noticed.CLEARLY for w in p.works),
            ),
            default=None,
        )

    def other_periods(self) -> list[Period]:
        """Return the periods other than the main one, by date."""
        main = self.main_period()
        return [period for period in self.programme.periods if period is not main]


def days_with_greens(visits: Iterable[tuple[dt.date, tuple[str, ...]]]) -> DaysWithGreens:
    """Return days with their greens, neighbouring days with the same greens in one entry."""
    entries: DaysWithGreens = []
    for day, greens in sorted(visits):
        if entries and entries[-1][1] == greens and day - entries[-1][0][-1] == ONE_DAY:
            entries[-1] = ((*entries[-1][0], day), greens)
        else:
            entries.append(((day,), greens))
    return entries
