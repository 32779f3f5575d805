"""Charts for the committee, in the order of its questions."""

from __future__ import annotations

from notices.drawings.forecast import forecast_and_record
from notices.drawings.model import Drawing
from notices.drawings.recovery import recovery_chart
from notices.drawings.sand_days import sand_by_day
from notices.drawings.work_hours import work_hours
from notices.drawings.year_totals import year_totals
from notices.programme.outcomes import outcomes
from notices.wording.words import Words


def committee_charts(words: Words) -> tuple[Drawing, ...]:
    """Return the charts that have something to show.

    They are recovery, hours, sand, the year, and forecast and record. The course day by day is not
    among them: see `notices.drawings.course_days`.
    """
    recoveries = [recovery_chart(words, period) for period in words.programme.periods]
    found = (
        *recoveries,
        *work_hours(words),
        sand_by_day(words),
        year_totals(words),
        forecast_and_record(words, outcomes(words.programme)),
    )
    return tuple(each for each in found if each is not None)
