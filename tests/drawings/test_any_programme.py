"""Charts of programmes that nobody thought of: no letter out of place, no fact left out."""

from __future__ import annotations

import datetime as dt

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from notices.drawings.committee import committee_charts
from notices.drawings.course_days import course_day_by_day
from notices.drawings.recovery import recovery_chart
from notices.drawings.sizes import PAGE, PHONE, SHEET
from tests.drawings.metrics import faults
from tests.wording.small_plans import CENTRAL_ENGLAND, MILD_WINTER, plan, words, work

JANUARY = dt.date(2027, 1, 1)
NAMES = ("Medal", "A & B <Cup>", "The President’s Extraordinary Invitation Foursomes Trophy")

days = st.integers(0, 200).map(lambda number: JANUARY + dt.timedelta(days=number))


@st.composite
def spans(draw: st.DrawFn, longest: int = 9) -> str:
    first = draw(days)
    return f"{first} to {first + dt.timedelta(days=draw(st.integers(0, longest)))}"


@st.composite
def works(draw: st.DrawFn) -> dict[str, object]:
    operation = draw(
        st.sampled_from(["hollow tining", "needle tining", "scarifying", "top dressing", "turfing"])
    )
    more: dict[str, object] = {
        "while_working": draw(st.sampled_from(["closed", "temporary green", "open"])),
        "reopen": draw(st.sampled_from(["when finished", "next morning", "20 days later"])),
    }
    if operation == "top dressing":
        more["settings"] = {
            "rate": "1 kg/m2",
            "dressings": draw(st.integers(1, 4)),
            "days_between": 7,
        }
    return work(operation, draw(spans()), **more)


FIXTURES = st.lists(
    st.builds(
        lambda name, day, kind: {"name": name, "date": str(day), "kind": kind},
        st.sampled_from(NAMES),
        days,
        st.sampled_from(["competition", "visitors"]),
    ),
    max_size=12,
)
RESTRICTIONS = st.lists(
    st.builds(
        lambda what, dates: {"what": what, "dates": dates},
        st.sampled_from(["buggies", "trolleys on the path between the sheds and the clubhouse"]),
        spans(120),
    ),
    max_size=2,
)
CLOSURES = st.lists(
    st.builds(
        lambda what, dates: {"what": what, "dates": dates},
        st.sampled_from(["course", "greens 1-3", "holes 2-3", "the path behind the sheds"]),
        spans(20),
    ),
    max_size=3,
)


@settings(max_examples=8, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    st.lists(works(), min_size=1, max_size=4),
    FIXTURES,
    CLOSURES,
    RESTRICTIONS,
    st.sampled_from(["1-9", "1-18, The practice green by the old clubhouse"]),
    st.sampled_from([CENTRAL_ENGLAND, MILD_WINTER, [3.0] * 12]),
    st.sampled_from([{"people": 1, "working_day": "09:00 to 11:00"}, {"people": 9}]),
    st.sampled_from([{"language": "en-GB"}, {"language": "en-US", "units": "imperial"}]),
)
def test_no_letter_is_out_of_place(
    planned: list[dict[str, object]],
    fixtures: list[dict[str, object]],
    closures: list[dict[str, object]],
    restrictions: list[dict[str, object]],
    greens: str,
    temperatures: list[float],
    crew: dict[str, object],
    club: dict[str, object],
) -> None:
    told = words(
        plan(
            *planned,
            greens=greens,
            temperatures=temperatures,
            club=club,
            fixtures=fixtures,
            closures=closures,
            restrictions=restrictions,
            crew=crew,
        ),
        issued=JANUARY,
    )
    periods = told.programme.periods
    drawings = [
        *course_day_by_day(told, PAGE),
        *course_day_by_day(told, SHEET),
        *course_day_by_day(told, PHONE),
        *committee_charts(told),
        *(drawn for p in periods if (drawn := recovery_chart(told, p, PHONE)) is not None),
    ]
    assert drawings
    for drawing in drawings:
        assert faults(drawing.svg) == [], drawing.name
    names = [drawing.name for drawing in drawings]
    assert len(set(names)) == len(names)
