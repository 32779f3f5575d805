"""Plans that a club might write, made up at random; settings as plan.load leaves them."""

from __future__ import annotations

import datetime as dt
from typing import Any

from hypothesis import strategies as st

from notices.agronomy.climate import STATIONS
from notices.operations import CATALOGUE, Kind, Operation, Setting
from notices.plan.load import _with_settings
from notices.plan.model import Plan

GREENS = [*(str(number) for number in range(1, 10)), "Putting green"]

FIRST_DAYS = st.dates(dt.date(2024, 1, 1), dt.date(2032, 12, 31))
AUTUMN_DAYS = st.builds(
    dt.date, st.integers(2024, 2032), st.sampled_from([9, 10, 11]), st.integers(1, 30)
)

SHORT_DAY = "08:10 to 11:40"
"""So short that many a day's work does not fit."""

CLIMATES = st.one_of(
    st.none(),
    st.sampled_from([list(means) for means in STATIONS.values()]),
    st.lists(st.floats(-10, 32).map(lambda t: round(t, 1)), min_size=12, max_size=12),
)
COOL_CLIMATES = st.lists(st.floats(4, 13).map(lambda t: round(t, 1)), min_size=12, max_size=12)
"""So cool that even in a warm year it is never past the optimum of 18 °C."""


@st.composite
def spells(draw: st.DrawFn, first_days: st.SearchStrategy[dt.date]) -> str:
    """One to six days, running or with a gap."""
    first = draw(first_days)
    length = draw(st.integers(1, 5))
    last = first + dt.timedelta(days=length - 1)
    running = f"{first} to {last}" if length > 1 else f"{first}"
    gap = draw(st.sampled_from([None, None, 2, 3]))
    return f"{running}, {last + dt.timedelta(days=gap)}" if gap else running


def setting_values(setting: Setting) -> st.SearchStrategy[Any]:
    """Values that a person may type for a setting: near the default, so that they fit together."""
    match setting.kind:
        case Kind.COUNT:
            return st.integers(1, 4)
        case Kind.RATE:
            return st.sampled_from(["0.05 kg/m2", "0.7 kg/m2", "3 kg/m2"])
        case Kind.LENGTH if isinstance(setting.default, float):
            usual = float(setting.default)
            return st.sampled_from([f"{round(usual * n, 2)} mm" for n in (0.8, 1.0, 1.1)])
        case Kind.FILL:
            return st.just("holes")
        case _:
            return st.none()


@st.composite
def settings_of(draw: st.DrawFn, operation: Operation) -> dict[str, Any]:
    """Some of the settings of a kind of work."""
    chosen: dict[str, Any] = {}
    for setting in operation.settings:
        if setting.name in ("from", "to", "inside_diameter") or not draw(st.booleans()):
            continue
        value = draw(setting_values(setting))
        if value is not None and not ("fill" in chosen and setting.name == "rate"):
            chosen[setting.name] = value
    if "fill" in chosen:
        chosen.pop("rate", None)
    return chosen


@st.composite
def written_works(
    draw: st.DrawFn, first_days: st.SearchStrategy[dt.date], dates: list[str]
) -> dict[str, Any]:
    """One work; some share their dates with another."""
    operation = CATALOGUE[draw(st.sampled_from(sorted(CATALOGUE)))]
    shared = bool(dates) and draw(st.booleans())
    days = draw(st.sampled_from(dates) if shared else spells(first_days))
    dates.append(days)
    work: dict[str, Any] = {"operation": operation.name, "dates": days}
    if draw(st.booleans()):
        chosen = draw(st.lists(st.sampled_from(GREENS), unique=True, min_size=1))
        work["greens"] = ", ".join(chosen)
    if draw(st.booleans()):
        work["settings"] = draw(settings_of(operation))
    if draw(st.booleans()):
        work["reopen"] = draw(
            st.sampled_from(["when finished", "next morning", "2 days later", "20 days later"])
        )
    if draw(st.booleans()):
        work["while_working"] = draw(st.sampled_from(["closed", "temporary green", "open"]))
    if draw(st.booleans()):
        last = max(
            dt.date.fromisoformat(word) for word in days.replace(",", "").split() if word != "to"
        )
        work["reserve_dates"] = str(last + dt.timedelta(days=draw(st.integers(1, 5))))
    return work


@st.composite
def written_closures(draw: st.DrawFn, first_days: st.SearchStrategy[dt.date]) -> dict[str, Any]:
    """One closure of greens, a hole or the course."""
    what = ["course", "greens 1-5", "greens 4-9", "hole 3", "Putting green", "practice ground"]
    closure = {"what": draw(st.sampled_from(what)), "dates": draw(spells(first_days))}
    if draw(st.booleans()):
        closure["instead"] = "temporary greens"
    return closure


@st.composite
def plan_data(
    draw: st.DrawFn,
    first_days: st.SearchStrategy[dt.date] = FIRST_DAYS,
    climates: st.SearchStrategy[list[float] | None] = CLIMATES,
) -> dict[str, Any]:
    """A plan of one to five works within one year or so, as a file would hold it."""
    # Works of one plan lie within three months of one another, so that they meet.
    start = draw(first_days)
    near = st.integers(0, 90).map(lambda days: start + dt.timedelta(days=days))
    dates: list[str] = []
    count = draw(st.integers(1, 5))
    course: dict[str, Any] = {
        "greens": [
            {"green": "1-9", **draw(st.sampled_from([{}, {"area": "480 m2"}]))},
            {"green": "Putting green", "area": "350 m2"},
        ],
        "grass": draw(st.sampled_from(["cool-season", "warm-season"])),
    }
    if (means := draw(climates)) is not None:
        course["monthly_mean_temperature"] = means
    return {
        "club": {"name": "Marl Hill"},
        "course": course,
        "works": [draw(written_works(near, dates)) for _ in range(count)],
        "closures": [draw(written_closures(near)) for _ in range(draw(st.integers(0, 2)))],
        "crew": draw(st.sampled_from([{"people": 4}, {"people": 9, "working_day": SHORT_DAY}])),
    }


def read(data: dict[str, Any]) -> Plan:
    """Read a plan without a file."""
    return _with_settings(Plan.model_validate(data))


def plans() -> st.SearchStrategy[Plan]:
    """Plans, read."""
    return plan_data().map(read)
