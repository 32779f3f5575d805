"""Forecasts beside what happened, in words."""

from __future__ import annotations

from notices.programme.outcomes import Outcome
from notices.wording.lists import counted, sentence
from notices.wording.words import Words


def outcome_in_words(words: Words, outcome: Outcome) -> str:
    """Hollow tining of 13 October 2025: healed on 24 November 2025, three days later than forecast."""
    date = words.dates.date
    return (
        f"{name_of(words, outcome)} of {date(outcome.done)}: {outcome.what} on "
        f"{date(outcome.actual)}, {error_in_words(outcome)} ({forecast_in_words(words, outcome)})."
    )


def name_of(words: Words, outcome: Outcome) -> str:
    """Name the work as its title in this plan, where it is in it."""
    titles = {work.operation.name: words.title(work) for work in words.programme.works}
    return titles.get(outcome.operation, sentence(outcome.operation).removesuffix("."))


def forecast_in_words(words: Words, outcome: Outcome) -> str:
    """8 November 2025 to 25 April 2026; 8 November 2025 or later."""
    date, forecast = words.dates.date, outcome.forecast
    if forecast.late is None:
        return f"{date(forecast.early)} or later"
    if forecast.late == forecast.early:
        return date(forecast.early)
    return f"{date(forecast.early)} to {date(forecast.late)}"


def error_in_words(outcome: Outcome) -> str:
    """As forecast; three days later than forecast."""
    if outcome.days_off == 0:
        return "as forecast"
    earlier = "later" if outcome.days_off > 0 else "earlier"
    return f"{counted(abs(outcome.days_off), 'day')} {earlier} than forecast"


def off_by(outcome: Outcome) -> str:
    """Nothing; three days late: for a table or a drawing."""
    if outcome.days_off == 0:
        return "nothing"
    late = "late" if outcome.days_off > 0 else "early"
    return f"{counted(abs(outcome.days_off), 'day')} {late}"
