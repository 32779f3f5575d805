"""What must hold of recovery whatever the figures: order, ranges and the ends of the scale."""

from __future__ import annotations

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.agronomy.climate import BRITISH_MEAN
from notices.agronomy.growth import Climate, Grass
from notices.agronomy.recovery import (
    SIDEWAYS_GROWTH_MM_PER_DAY,
    DateRange,
    Range,
    combine,
    effective_opening_mm,
    first_day_reaching,
    fitted_range,
    growth_days_for_opening,
    growth_days_for_slit,
    growth_days_to_half_closed,
    observed_rate_mm_per_day,
    putting_smoothly_when_filled,
    sanded_surface,
    span,
)

BRITISH = Climate.from_monthly_means(BRITISH_MEAN, Grass.COOL_SEASON, 18)
BEST = Climate.from_monthly_means([20] * 12, Grass.COOL_SEASON)
FROZEN = Climate.from_monthly_means([-40] * 12, Grass.COOL_SEASON)

DATES = st.dates(dt.date(2020, 1, 1), dt.date(2040, 12, 31))
WIDTHS_MM = st.floats(0, 25)
RATES = st.floats(0.3, 1.0)
# At 13 °C at most, and one degree more, temperatures stay on the near side of every optimum used
# here: only there is colder slower. (Corners of the daily line may overshoot the means a little.)
COOL_YEARS = st.lists(st.floats(5, 13), min_size=12, max_size=12)

MAY = dt.date(2026, 5, 4)


def later_or_never(one: dt.date | None, other: dt.date | None) -> bool:
    """Whether `one` is no sooner than `other`, never being latest of all."""
    return one is None or (other is not None and one >= other)


@given(WIDTHS_MM, RATES)
def test_growth_days_are_proportional_to_the_opening(width: float, rate: float) -> None:
    once = growth_days_for_opening(width, rate)
    assert growth_days_for_opening(2 * width, rate) == pytest.approx(2 * once)
    assert growth_days_for_opening(width, 2 * rate) == pytest.approx(once / 2)
    assert growth_days_to_half_closed(once) == pytest.approx(once / 2)


@given(st.floats(0, 10), st.floats(0, 60), RATES)
def test_slits_never_take_more_than_the_published_setting(
    width: float, depth: float, rate: float
) -> None:
    assert 0 <= growth_days_for_slit(width, depth, rate) <= growth_days_for_slit(3, 19, rate)


@given(st.floats(0, 3), st.floats(0, 19), RATES)
def test_lighter_slits_take_less_in_proportion(width: float, depth: float, rate: float) -> None:
    expected = growth_days_for_slit(3, 19, rate) * width * depth / 57
    assert growth_days_for_slit(width, depth, rate) == pytest.approx(expected)


@given(WIDTHS_MM, WIDTHS_MM, DATES)
def test_a_larger_opening_is_never_sooner(one: float, other: float, done: dt.date) -> None:
    smaller, larger = sorted((one, other))
    assert later_or_never(
        first_day_reaching(growth_days_for_opening(larger, 0.6), done, BRITISH),
        first_day_reaching(growth_days_for_opening(smaller, 0.6), done, BRITISH),
    )


@given(COOL_YEARS, st.floats(0, 4), WIDTHS_MM, DATES)
def test_a_colder_year_is_never_sooner(
    means: list[float], colder_by: float, width: float, done: dt.date
) -> None:
    climate = Climate.from_monthly_means(means, Grass.WARM_SEASON, 25)
    needed = growth_days_for_opening(width, 0.6)
    assert later_or_never(
        first_day_reaching(needed, done, climate, -colder_by),
        first_day_reaching(needed, done, climate),
    )


@given(DATES, st.integers(1, 28), st.floats(0, 20))
def test_later_work_is_never_back_sooner(done: dt.date, delay: int, needed: float) -> None:
    later = done + dt.timedelta(days=delay)
    assert later_or_never(
        first_day_reaching(needed, later, BRITISH), first_day_reaching(needed, done, BRITISH)
    )


@given(DATES)
def test_nothing_to_heal_is_healed_the_same_day(done: dt.date) -> None:
    assert first_day_reaching(0, done, FROZEN) == done


@pytest.mark.parametrize(("needed", "days"), [(0.001, 1), (1, 1), (1.001, 2), (7, 7)])
def test_growth_counts_from_the_day_after_the_work(needed: float, days: int) -> None:
    # At the optimum every day is one growth day.
    assert first_day_reaching(needed, MAY, BEST) == MAY + dt.timedelta(days=days)


def test_frozen_ground_never_heals() -> None:
    assert first_day_reaching(1, MAY, FROZEN) is None


def test_horizon_is_the_last_day_looked_at() -> None:
    assert first_day_reaching(7, MAY, BEST, horizon_days=7) == dt.date(2026, 5, 11)
    assert first_day_reaching(7, MAY, BEST, horizon_days=6) is None


@given(st.tuples(*[st.floats(0, 30)] * 3), DATES)
def test_middling_growth_in_a_usual_year_is_to_be_expected(
    needed: tuple[float, float, float], done: dt.date
) -> None:
    fast, middle, slow = sorted(needed)
    dates = span(Range(fast, middle, slow), done, BRITISH)
    assert dates.expected == first_day_reaching(middle, done, BRITISH)
    assert dates.late is not None
    assert done <= dates.early <= dates.expected <= dates.late


def test_span_at_the_optimum_by_hand() -> None:
    # Growth potential 1 a day there in a usual year; one degree either way is slower than none.
    dates = span(Range(14, 20, 20), MAY, BEST)
    assert dates.early == MAY + dt.timedelta(days=14)
    assert dates.expected == MAY + dt.timedelta(days=20)
    assert dates.late is not None
    assert dates.late > dates.expected


def test_span_without_growth_is_open_from_the_horizon_on() -> None:
    horizon = MAY + dt.timedelta(days=730)
    assert span(Range(8, 11, 14), MAY, FROZEN) == DateRange(horizon, horizon, None)


def test_span_that_only_good_years_reach_is_open() -> None:
    # 3.3 °C all year: GP 0.0283 at an optimum of 18 °C, so about 20.7 in two years; a degree
    # colder gives 0.0169, about 12.3.
    barely = Climate.from_monthly_means([3.3] * 12, Grass.COOL_SEASON, 18)
    dates = span(Range(10, 14, 18), MAY, barely)
    assert dates.late is None
    assert dates.early < dates.expected < MAY + dt.timedelta(days=730)


@given(st.floats(3, 20), RATES, DATES)
def test_record_gives_back_the_rate_it_was_made_with(
    width: float, rate: float, done: dt.date
) -> None:
    healed = first_day_reaching(growth_days_for_opening(width, rate), done, BRITISH)
    assert healed is not None
    fitted = observed_rate_mm_per_day(width, done, healed, BRITISH)
    # Healed by the evening of that day, so at most as fast; less by no more than one day's growth.
    assert fitted <= rate * (1 + 1e-9)
    grown = width / (2 * fitted)
    assert grown - BRITISH.growth_on(healed) <= growth_days_for_opening(width, rate)


def test_filled_and_sanded_surfaces() -> None:
    day = dt.date(2026, 10, 12)
    assert putting_smoothly_when_filled(day) == DateRange(
        dt.date(2026, 10, 15), dt.date(2026, 10, 19), dt.date(2026, 10, 22)
    )
    assert sanded_surface(day, heavy=False) == DateRange(
        dt.date(2026, 10, 13), dt.date(2026, 10, 14), dt.date(2026, 10, 15)
    )
    assert sanded_surface(day, heavy=True) == DateRange(
        dt.date(2026, 10, 15), dt.date(2026, 10, 19), dt.date(2026, 10, 22)
    )


RANGES = st.builds(
    lambda days: DateRange(*(MAY + dt.timedelta(days=each) for each in sorted(days))),
    st.tuples(*[st.integers(0, 200)] * 3),
)


@given(RANGES)
def test_one_operation_combines_to_itself(only: DateRange) -> None:
    assert combine([only], MAY) == only


@given(st.lists(RANGES, min_size=1, max_size=5))
def test_combined_range_lies_between_the_longest_and_the_sum(
    ranges: list[DateRange],
) -> None:
    combined = combine(ranges, MAY)
    lates = [each.late for each in ranges if each.late is not None]
    assert combined.late is not None
    assert combined.early == max(each.early for each in ranges)
    assert combined.expected == max(each.expected for each in ranges)
    assert max(lates) <= combined.late
    assert (combined.late - MAY).days <= sum((late - MAY).days for late in lates)


@given(st.lists(RANGES, min_size=2, max_size=5))
def test_order_of_operations_does_not_matter(ranges: list[DateRange]) -> None:
    assert combine(ranges, MAY) == combine(ranges[::-1], MAY)


def test_combined_by_hand() -> None:
    # Latest late is 21 days on; the next is 7 days on, and half of 7 rounds up to 4.
    cores = DateRange(dt.date(2026, 5, 14), dt.date(2026, 5, 17), dt.date(2026, 5, 25))
    slits = DateRange(dt.date(2026, 5, 9), dt.date(2026, 5, 10), dt.date(2026, 5, 11))
    assert combine([slits, cores], MAY) == DateRange(
        dt.date(2026, 5, 14), dt.date(2026, 5, 17), dt.date(2026, 5, 29)
    )


def test_one_open_range_leaves_the_whole_open() -> None:
    cores = DateRange(dt.date(2026, 5, 14), dt.date(2026, 5, 22), None)
    slits = DateRange(dt.date(2026, 5, 20), dt.date(2026, 5, 21), dt.date(2026, 5, 25))
    assert combine([cores, slits], MAY) == DateRange(
        dt.date(2026, 5, 20), dt.date(2026, 5, 22), None
    )


def test_work_done_before_the_last_adds_nothing_to_it() -> None:
    # A slit that had closed before the cores were made does not shorten the wait either.
    cores = DateRange(dt.date(2026, 5, 14), dt.date(2026, 5, 17), dt.date(2026, 5, 25))
    slits = DateRange(dt.date(2026, 4, 9), dt.date(2026, 4, 14), dt.date(2026, 4, 20))
    assert combine([cores, slits], MAY) == cores


def test_rates_are_in_order() -> None:
    rates = SIDEWAYS_GROWTH_MM_PER_DAY
    assert 0 < rates.low < rates.middle < rates.high


def test_one_season_keeps_the_proportions_of_the_book() -> None:
    # The book: 0.45, 0.6, 0.75, a quarter either way.
    found = fitted_range([0.8])
    assert (found.low, found.middle, found.high) == pytest.approx((0.6, 0.8, 1.0))


def test_records_far_apart_widen_the_range() -> None:
    # Median 0.8; a quarter either way is 0.6 to 1.0, and the records reach from 0.3 to 1.2.
    found = fitted_range([1.2, 0.3, 0.8])
    assert (found.low, found.middle, found.high) == pytest.approx((0.3, 0.8, 1.2))


def test_no_record_fits_nothing() -> None:
    with pytest.raises(ValueError, match="at least one record"):
        fitted_range([])


@given(st.lists(st.floats(0.05, 5), min_size=1, max_size=9))
def test_a_fitted_range_holds_every_record(rates: list[float]) -> None:
    found = fitted_range(rates)
    assert found.low <= min(rates)
    assert found.high >= max(rates)
    assert found.low < found.middle < found.high


def test_an_opening_worked_backwards() -> None:
    assert effective_opening_mm(growth_days_for_opening(13, 0.6), 0.6) == pytest.approx(13)
