"""Findings that a club has accepted, in words: one entry for each kind and reason."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from notices.findings import Finding
from notices.wording.finding_words import finding_dates, finding_in_words
from notices.wording.period import PeriodWords
from notices.wording.words import Words

INTO_WINTER = "recovery-into-winter"


@dataclass(frozen=True, slots=True)
class LivedWith:
    """Findings accepted for one reason, each text with the days that it names."""

    what: tuple[tuple[str, tuple[dt.date, ...]], ...]
    by: str
    why: str


def accepted_in_words(
    words: Words, accepted: Iterable[tuple[Finding, str, str]]
) -> Iterator[LivedWith]:
    """Yield an entry for each kind of finding and reason, with every text only once."""
    kinds: dict[tuple[str, str, str], list[Finding]] = {}
    for found, by, why in accepted:
        kinds.setdefault((found.code, by, why), []).append(found)
    for (code, by, why), findings in kinds.items():
        if code == INTO_WINTER and len(findings) > 1:
            told = {_into_winter(words, findings): _days(words, findings)}
        else:
            told = {finding_in_words(words, one): finding_dates(one) for one in findings}
        yield LivedWith(tuple(told.items()), by, why)


def _into_winter(words: Words, findings: Sequence[Finding]) -> str:
    """Return one text for works that may not heal before winter, with the return of growth once."""
    after: dict[tuple[str, ...], list[str]] = {}
    for found in findings:
        period = _period(words, found)
        done = f"{period.inside()} {words.dates.on_days(period.period.days)}"
        after.setdefault(found.greens, []).append(done)
    each = "; ".join(
        f"{words.greens(greens)} after {', and after '.join(done)}"
        for greens, done in after.items()
    )
    returns = _returns(words, findings)
    back = f" It does not return before about {words.dates.day(max(returns))}." if returns else ""
    return f"Growth may stop before these greens have healed.{back} They are {each}."


def _days(words: Words, findings: Sequence[Finding]) -> tuple[dt.date, ...]:
    days = {day for found in findings for day in _period(words, found).period.days}
    return tuple(sorted({*days, *sorted(_returns(words, findings))[-1:]}))


def _returns(words: Words, findings: Sequence[Finding]) -> set[dt.date]:
    return {
        recovery.growth_returns
        for found in findings
        for recovery in _period(words, found).period.recoveries
        if recovery.growth_stops and recovery.growth_returns
    }


def _period(words: Words, found: Finding) -> PeriodWords:
    """Return the period of the work that a finding is about."""
    return next(
        PeriodWords(words, period)
        for period in words.programme.periods
        if any(work.id == found.work for work in period.works)
    )
