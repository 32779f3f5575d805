"""Forecasts beside what happened, in words."""

from __future__ import annotations

from notices.programme.outcomes import Outcome
from notices.wording.lists import counted
from notices.wording.words import Words


def outcome_in_words(words: Words, outcome: Outcome) -> str:
    """Hollow tining of 13 October 2025: healed on 24 November 2025, three days later than forecast."""
    date = words.dates.date
    name = f"{outcome.operation[:1].upper()}{outcome.operation[1:]}"
    late = f"to {date(outcome.forecast.late)}" if outcome.forecast.late else "or later"
    return (
        f"{name} of {date(outcome.done)}: {outcome.what} on {date(outcome.actual)}, "
        f"{error_in_words(outcome)} ({date(outcome.forecast.early)} {late})."
    )


def error_in_words(outcome: Outcome) -> str:
    """As forecast; three days later than forecast."""
    if outcome.days_off == 0:
        return "as forecast"
    earlier = "later" if outcome.days_off > 0 else "earlier"
    return f"{counted(abs(outcome.days_off), 'day')} {earlier} than forecast"
