"""The season that works fall into: growth by day, winters, and when each work is over."""

from __future__ import annotations

import datetime as dt
import math

import pytest

from notices.programme.model import Programme
from tests.wording.small_plans import MILD_WINTER, plan, programme, work


@pytest.fixture(scope="module")
def autumn() -> Programme:
    return programme(
        plan(
            work(
                "hollow tining",
                "2027-10-11 to 2027-10-12",
                greens={"2027-10-11": "1-9", "2027-10-12": "10-18"},
            )
        )
    )


def test_growth_is_known_on_every_day_from_two_weeks_before_until_all_has_healed(
    autumn: Programme,
) -> None:
    assert autumn.season is not None
    days = list(autumn.season.growth)
    assert days[0] == dt.date(2027, 9, 27)
    assert days == [days[0] + dt.timedelta(days=number) for number in range(len(days))]
    (period,) = autumn.periods
    assert period.fully_healed.at_worst is not None
    assert days[-1] == period.fully_healed.at_worst


def test_growth_is_that_of_the_formula() -> None:
    """14 °C all year and an optimum of 18 °C: exp(−½ × (4 ÷ 5.5)²)."""
    mild = programme(plan(work("hollow tining", "2027-10-11"), temperatures=MILD_WINTER))
    assert mild.season is not None
    expected = math.exp(-0.5 * (4 / 5.5) ** 2)
    growth = list(mild.season.growth.values())
    assert growth == pytest.approx([expected] * len(growth))
    assert mild.season.rests == ()


def test_winter_is_when_growth_rests(autumn: Programme) -> None:
    """Below a tenth of the best on the first day of the rest, and not on the day of return."""
    assert autumn.season is not None
    (rest,) = autumn.season.rests
    assert rest.stops is not None
    assert rest.returns is not None
    growth = autumn.season.growth
    assert (
        growth[rest.stops] < autumn.season.rests_below <= growth[rest.stops - dt.timedelta(days=1)]
    )
    assert rest.stops.month in (11, 12)
    assert rest.returns.month in (2, 3)
    if rest.returns in growth:
        assert growth[rest.returns] >= autumn.season.rests_below


def test_a_work_is_over_when_its_last_green_is(autumn: Programme) -> None:
    back = autumn.greens_back["hollow-tining-1"]
    own = autumn.recoveries["hollow-tining-1"]
    assert back.back_in_play.early == dt.date(2027, 10, 13)
    assert back.putting_smoothly.early == max(r.putting_smoothly.early for r in own)
    assert back.putting_smoothly.early > min(r.putting_smoothly.early for r in own)
    assert back.fully_healed.late == max(r.fully_healed.late for r in own if r.fully_healed.late)


def test_without_work_there_is_no_season() -> None:
    idle = programme(
        {**plan(greens="1-9"), "closures": [{"what": "green 1", "dates": "2027-10-11"}]}
    )
    assert idle.season is None
    assert idle.greens_back == {}


def test_a_winter_that_has_begun_before_has_no_first_day() -> None:
    """Work in January: two weeks before it growth rests already."""
    told = programme(plan(work("hollow tining", "2028-01-17")))
    assert told.season is not None
    first = told.season.rests[0]
    assert first.stops is None
    assert first.returns is not None
    assert first.returns > dt.date(2028, 1, 17)


def test_growth_that_never_comes_has_no_return() -> None:
    """At 3 °C all year growth is exp(−½ × (15 ÷ 5.5)²) = 0.024 of the best."""
    told = programme(plan(work("hollow tining", "2027-08-09"), temperatures=[3.0] * 12))
    assert told.season is not None
    assert [(rest.stops, rest.returns) for rest in told.season.rests] == [(None, None)]
