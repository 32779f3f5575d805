"""Other dates for works that clash, in words for whoever plans them at a terminal."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence

from notices.programme.model import BetterDates


def better_dates_in_words(found: Sequence[BetterDates]) -> str:
    """Say what was found, in plain text."""
    if not found:
        return "No dates clash: there is nothing to look for."
    return "\n\n".join("\n".join(_lines(one)) for one in found)


def _lines(found: BetterDates) -> Iterator[str]:
    span = f"{found.days[0]}" + (f" to {found.days[-1]}" if len(found.days) > 1 else "")
    codes = ", ".join(dict.fromkeys(clash.code for clash in found.clashes))
    more = len(found.kinds) - 1
    what = found.kinds[0] + (f" and {more} more" if more else "")
    yield f"Better dates for {what}, planned for {span} ({codes}):"
    for option in found.options:
        distance = f"{_days(abs(option.move))} {'later' if option.move > 0 else 'earlier'}"
        yield (
            f"  start on {option.start}, {distance}: greens putt well "
            f"{_compared(option.putting_days)}, all is healed {_compared(option.healing_days)}"
            + (f"; works at a weekend on {_list(option.weekend)}" if option.weekend else "")
        )
    if not found.options:
        yield "  no start in the same month clears the clash"
    reasons = ", ".join(f"{reason} {count}" for reason, count in found.failed.items())
    tried = f"  {found.tried} other starts in the month tried, {found.good} of them good"
    yield tried + (f"; why the others fail: {reasons}" if reasons else "")
    if found.not_tried:
        yield (
            f"  {found.not_tried} more were not looked at: too many works of this plan clash. "
            "Settle some of them, and look again"
        )


def _compared(days: int | None) -> str:
    if days is None:
        return "at a time that cannot be told"
    if days == 0:
        return "after as many days"
    return f"after {_days(abs(days))} {'more' if days > 0 else 'fewer'}"


def _days(number: int) -> str:
    return f"{number} {'day' if number == 1 else 'days'}"


def _list(days: Sequence[dt.date]) -> str:
    return ", ".join(str(day) for day in days)
