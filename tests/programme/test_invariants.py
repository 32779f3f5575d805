"""What must hold of every programme, whatever the plan."""

from __future__ import annotations

import datetime as dt
import itertools
import math
import re
from collections import Counter
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from notices.plan.model import Plan
from notices.programme.hours import to_half_hours
from notices.programme.model import WHOLE_DAY, Layout, PlayStatus, Programme, Promise
from notices.programme.patterns import main_period, patterns
from notices.programme.play import worst
from notices.programme.timetable import HAULING
from notices.programme.work_out import work_out
from tests.programme.strategies import AUTUMN_DAYS, COOL_CLIMATES, plan_data, plans, read

ISSUED = dt.date(2024, 1, 1)
A_MONTH = dt.timedelta(days=31)
NEVER = dt.date.max

slowly = settings(deadline=None, max_examples=40, suppress_health_check=[HealthCheck.too_slow])


def done(plan: Plan) -> Programme:
    return work_out(plan, ISSUED)


def promises(programme: Programme) -> list[Promise]:
    return [
        promise
        for period in programme.periods
        for promise in (period.open_again, period.putting_well, period.fully_healed)
    ]


@slowly
@given(plans())
def test_every_green_of_a_work_has_its_day_and_only_that(plan: Plan) -> None:
    for written, work in zip(plan.works, done(plan).works, strict=True):
        days = {day for spell in written.dates for day in spell}
        one_job = len(work.greens) < len(days)
        for green in work.greens:
            taken = work.days_on(green)
            assert set(taken) <= days
            assert len(set(taken)) == len(taken)
            assert len(taken) == 1 or one_job
            between = [day for day in days if min(taken) <= day <= max(taken)]
            assert len(between) == len(taken), "a job goes on running"
        for visit in work.visits:
            assert len(set(visit.greens)) == len(visit.greens)


@slowly
@given(plans())
def test_every_green_has_one_status_on_each_day(plan: Plan) -> None:
    programme = done(plan)
    for on_day in programme.status.values():
        assert list(on_day) == list(programme.greens)
        assert any(status is not PlayStatus.OPEN for status in on_day.values())


def past_midnight(programme: Programme, day: dt.date) -> set[str]:
    """Return the greens on which the work of a day ends on the next."""
    timetable = programme.timetables.get(day)
    tasks = timetable.tasks if timetable else ()
    return {task.green for task in tasks if task.finish_minutes > WHOLE_DAY[1]}


@slowly
@given(plans())
def test_every_green_has_just_one_status_at_any_time(plan: Plan) -> None:
    programme = done(plan)
    assert set(programme.stretches) >= {v.date for work in programme.works for v in work.visits}
    for day, on_day in programme.stretches.items():
        assert list(on_day) == list(programme.greens)
        for green, stretches in on_day.items():
            for told in (stretches, to_half_hours(stretches, programme.work_from(day))):
                assert (told[0].begins, told[-1].ends) == WHOLE_DAY
                for one, after in itertools.pairwise(told):
                    assert one.begins < one.ends == after.begins
            # What the day is told to be is its worst, a passing machine apart. Where work goes on
            # past midnight, which is found too long, the green shows it on the next day alone.
            lasting = {s.status for s in stretches if not s.passing}
            if green not in past_midnight(programme, day):
                assert worst(*lasting) is programme.status_on(day, green)


@slowly
@given(plans())
def test_a_green_is_closed_all_day_or_within_the_working_day(plan: Plan) -> None:
    programme = done(plan)
    for day, on_day in programme.stretches.items():
        for stretch in itertools.chain.from_iterable(on_day.values()):
            if stretch.status is PlayStatus.CLOSED and not stretch.all_day:
                timetable = programme.timetables[day]
                # A day that is too long goes on until its last task is done; a finding says so.
                until = max(timetable.work_until, timetable.last_finish)
                assert timetable.work_from <= stretch.begins
                assert stretch.ends <= until


@slowly
@given(plans())
def test_a_green_is_never_open_while_a_machine_is_on_it(plan: Plan) -> None:
    programme = done(plan)
    for day, timetable in programme.timetables.items():
        for task in timetable.tasks:
            if task.name == HAULING:  # to the green's edge
                continue
            for stretch in programme.stretches_on(day, task.green):
                overlap = min(stretch.ends, task.finish_minutes) - max(
                    stretch.begins, task.start_minutes
                )
                if overlap > 0:
                    assert stretch.status in (PlayStatus.CLOSED, PlayStatus.TEMPORARY)


@slowly
@given(plans())
def test_to_the_half_hour_a_green_is_never_better_than_it_is(plan: Plan) -> None:
    programme = done(plan)
    for day, on_day in programme.stretches.items():
        earliest = programme.work_from(day)
        for stretches in on_day.values():
            told = to_half_hours(stretches, earliest)
            for one, said in itertools.product(stretches, told):
                if min(one.ends, said.ends) - max(one.begins, said.begins) > 1e-6:
                    assert worst(one.status, said.status) is said.status
            # To the half hour, or to the minute at which work can begin.
            begun = [said.begins for said in told[1:]]
            assert all(time % 30 == 0 or time == math.floor(earliest) for time in begun)
            assert all(time >= math.floor(earliest) for time in begun)


@slowly
@given(plans())
def test_greens_by_status_add_up_to_all_greens(plan: Plan) -> None:
    programme = done(plan)
    for day in {*programme.status, *programme.stretches}:
        for minute in (0, 7.5 * 60, 10.75 * 60, 14 * 60):
            at_once: Counter[PlayStatus] = Counter(
                stretch.status
                for green in programme.greens
                for stretch in programme.stretches_on(day, green)
                if stretch.begins <= minute < stretch.ends
            )
            assert at_once.total() == len(programme.greens)


@slowly
@given(plans())
def test_the_three_promises_come_in_their_order(plan: Plan) -> None:
    programme = done(plan)
    every = [r for found in programme.recoveries.values() for r in found]
    every += [r for period in programme.periods for r in period.recoveries]
    for recovery in every:
        three = (recovery.back_in_play, recovery.putting_smoothly, recovery.fully_healed)
        assert recovery.done <= three[0].early
        for span in three:
            assert span.early <= (span.late or NEVER)
        for earlier, later in itertools.pairwise(three):
            assert earlier.early <= later.early
            assert (earlier.late or NEVER) <= (later.late or NEVER)
        if recovery.growth_stops is not None:
            assert recovery.done < recovery.growth_stops < (recovery.fully_healed.late or NEVER)


@slowly
@given(plans())
def test_members_are_told_a_month_at_most_unless_growth_stops_in_between(plan: Plan) -> None:
    for promise in promises(done(plan)):
        if promise.at_worst is None:
            continue
        assert promise.expect_by <= promise.at_worst
        if not promise.through_winter and promise.growth_stops is not None:
            assert promise.growth_stops <= promise.expect_by
        assert promise.through_winter or promise.at_worst - promise.expect_by <= A_MONTH


@slowly
@given(plans())
def test_no_green_comes_back_later_than_members_are_told(plan: Plan) -> None:
    for period in done(plan).periods:
        for recovery in period.recoveries:
            assert recovery.back_in_play.early <= period.open_again.expect_by
            assert (recovery.putting_smoothly.late or NEVER) <= (
                period.putting_well.at_worst or NEVER
            )
            assert (recovery.fully_healed.late or NEVER) <= (period.fully_healed.at_worst or NEVER)


@slowly
@given(plans())
def test_figures_are_numbers_of_their_own(plan: Plan) -> None:
    figures = done(plan).figures
    assert len({figure.id for figure in figures}) == len(figures)
    for figure in figures:
        if figure.value is None:
            assert figure.quantity.endswith(("late", "at worst"))
        else:
            assert math.isfinite(figure.value)
            if figure.quantity not in MAY_SINK:
                assert figure.value >= 0, figure.id


MAY_SINK = {"rise of the surface", "depth below the thatch"}
ADD_UP = {"holes", "slit length", "channel length", "trench length", "turf laid", "work time"}
ADD_UP |= {"material removed", "mass of material removed", "sand"}


@slowly
@given(plans())
def test_greens_add_up_to_all(plan: Plan) -> None:
    parts: dict[tuple[str, str], list[float]] = {}
    totals: dict[tuple[str, str], float] = {}
    for figure in done(plan).figures:
        key = (figure.work, figure.quantity)
        additive = figure.quantity in ADD_UP or figure.quantity.startswith("sand, dressing")
        if not additive or figure.work == "all" or figure.value is None:
            continue
        if figure.green == "all":
            totals[key] = figure.value
        else:
            parts.setdefault(key, []).append(figure.value)
    assert set(parts) == set(totals)
    for key, total in totals.items():
        assert math.isclose(sum(parts[key]), total, rel_tol=1e-9, abs_tol=1e-12), key


def moved(data: dict[str, Any], by: dt.timedelta) -> dict[str, Any]:
    """The same plan some time later."""

    def later(match: re.Match[str]) -> str:
        return (dt.date.fromisoformat(match[0]) + by).isoformat()

    works = [
        {
            key: re.sub(r"\d{4}-\d\d-\d\d", later, value) if key.endswith("dates") else value
            for key, value in work.items()
        }
        for work in data["works"]
    ]
    closures = [
        {**closure, "dates": re.sub(r"\d{4}-\d\d-\d\d", later, closure["dates"])}
        for closure in data["closures"]
    ]
    return {**data, "works": works, "closures": closures}


@slowly
@given(plan_data())
def test_a_plan_52_weeks_later_is_worked_52_weeks_later(data: dict[str, Any]) -> None:
    year = dt.timedelta(weeks=52)
    now, then = (done(read(plan)) for plan in (data, moved(data, year)))
    for work, same in zip(now.works, then.works, strict=True):
        assert [(v.date + year, v.greens, v.ordinal) for v in work.visits] == [
            (v.date, v.greens, v.ordinal) for v in same.visits
        ]
        assert [day + year for day in work.reserve_dates] == list(same.reserve_dates)
    assert [[w.id for w in period.works] for period in now.periods] == [
        [w.id for w in period.works] for period in then.periods
    ]
    assert [need.depth_mm for need in now.sand] == [need.depth_mm for need in then.sand]


EVEN = st.just([14.0] * 12)
"""A place where every day is as good for grass as any other."""


@settings(slowly, max_examples=25)
@given(plan_data(climates=EVEN), st.integers(1, 30))
def test_whole_weeks_later_every_date_is_as_much_later(data: dict[str, Any], weeks: int) -> None:
    by = dt.timedelta(weeks=weeks)
    now, then = (done(read(plan)) for plan in (data, moved(data, by)))
    assert {day + by: on_day for day, on_day in now.status.items()} == then.status
    for one, other in zip(promises(now), promises(then), strict=True):
        assert one.expect_by + by == other.expect_by
        assert (one.at_worst and one.at_worst + by) == other.at_worst
    assert [day + by for day in now.timetables] == list(then.timetables)


@slowly
@given(plans())
def test_holes_by_what_they_are_add_up_to_all_holes(plan: Plan) -> None:
    programme = done(plan)
    for day in programme.play.values():
        assert (day.by_hour[0].begins, day.by_hour[-1].ends) == WHOLE_DAY
        for hours in (day.all_day, *day.by_hour):
            assert Counter((*hours.open, *hours.temporary, *hours.closed)) == Counter(
                programme.holes
            )
            assert set(hours.part_of_day) <= set(hours.closed)
        # What holds from morning to evening is no better than at any hour.
        for hours in day.by_hour:
            assert set(day.all_day.open) <= set(hours.open)


@settings(slowly, max_examples=20)
@given(plans())
def test_other_ways_keep_what_is_done_and_the_plan_s_own_is_the_plan(plan: Plan) -> None:
    programme = done(plan)
    found = patterns(plan, programme)
    period = main_period(programme)
    for one in found:
        assert period is not None
        assert one.works == tuple(work.id for work in period.works)
        # Whatever is put together, nothing is done twice or left out.
        assert one.person_hours is not None
        assert math.isclose(one.person_hours, found[0].person_hours or 0.0, abs_tol=1e-6)
        if one.layout is Layout.AS_PLANNED:
            assert (one.open_again, one.putting_well) == (period.open_again, period.putting_well)
            assert one.dates == period.days


@slowly
@given(plan_data(first_days=AUTUMN_DAYS, climates=COOL_CLIMATES), st.floats(0.5, 4))
def test_a_colder_place_never_heals_sooner(data: dict[str, Any], colder: float) -> None:
    means = data["course"]["monthly_mean_temperature"]
    cold_course = {
        **data["course"],
        "monthly_mean_temperature": [round(mean - colder, 1) for mean in means],
    }
    usual, cold = done(read(data)), done(read({**data, "course": cold_course}))
    for work, recoveries in usual.recoveries.items():
        for recovery, later in zip(recoveries, cold.recoveries[work], strict=True):
            assert (recovery.fully_healed.late or NEVER) <= (later.fully_healed.late or NEVER)
    for period, same in zip(usual.periods, cold.periods, strict=True):
        assert (period.fully_healed.at_worst or NEVER) <= (same.fully_healed.at_worst or NEVER)


@slowly
@given(plans())
def test_the_same_plan_gives_the_same_programme(plan: Plan) -> None:
    assert done(plan) == done(plan)
