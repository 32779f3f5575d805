"""Plans that a club could write, made by hypothesis; for the tests of every stage.

``plans()`` gives plain data as typed, ready to be written as YAML or JSON. Every plan is valid:
settings lie within the catalogue's limits, and the dates agree with one another.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Mapping
from typing import Any

from hypothesis import strategies as st

from notices.operations import CATALOGUE, Kind, Operation, Setting
from notices.plan import quantities as q
from notices.plan.settings import read_settings

FIRST, LAST = dt.date(2026, 1, 1), dt.date(2029, 12, 31)

texts = (
    st.text(
        # Neither invisible signs nor bare surrogates, which the reader of files refuses.
        st.characters(codec="utf-8", exclude_categories=["C", "Zl", "Zp"]),
        min_size=1,
        max_size=30,
    )
    .map(str.strip)
    .filter(bool)
)
days = st.dates(FIRST, LAST)


def _optional(strategy: st.SearchStrategy[Any], **keys: st.SearchStrategy[Any]) -> Any:
    """Add any of these keys to what a strategy for a block gives."""
    return st.builds(
        lambda block, more: block | more, strategy, st.fixed_dictionaries({}, optional=keys)
    )


_WRITTEN: Mapping[Kind, Callable[[float], str]] = {
    Kind.LENGTH: q.format_length_mm,
    Kind.SPACING: lambda side: q.format_spacing_mm((side, side)),
    Kind.AREA: q.format_area_m2,
    Kind.RATE: q.format_rate_kg_m2,
}


def _typed(setting: Setting) -> st.SearchStrategy[str | int]:
    match setting.kind:
        case Kind.COUNT:
            return st.integers(int(setting.low), int(setting.high))
        case Kind.WORDS:
            return texts
        case Kind.FILL:
            return st.just("holes")
        case kind:
            return st.floats(setting.low, setting.high).map(_WRITTEN[kind])


@st.composite
def settings_of(draw: st.DrawFn, operation: Operation) -> dict[str, str | int]:
    """Settings of a kind of work as typed, none of them at odds with another."""
    typed = {
        setting.name: draw(_typed(setting)) for setting in operation.settings if draw(st.booleans())
    }
    # Each setting is likely by itself; what does not go with another is left out.
    while problems := read_settings(operation, typed)[1]:
        del typed[problems[0].name]
    return typed


@st.composite
def works(draw: st.DrawFn, greens: list[str], number: int) -> dict[str, Any]:
    """One work as typed, on some of these greens."""
    operation = draw(st.sampled_from(sorted(CATALOGUE)))
    first = draw(days)
    length = draw(st.integers(1, 10))
    all_of_it = [first + dt.timedelta(days=n) for n in range(length)]
    last = all_of_it[-1]
    work: dict[str, Any] = {
        "operation": operation,
        "dates": str(first) if length == 1 else f"{first} to {last}",
        "settings": draw(settings_of(CATALOGUE[operation])),
    }
    chosen = draw(st.lists(st.sampled_from(greens), unique=True, max_size=len(greens)))
    by_day = draw(st.booleans())
    if chosen and by_day:
        work["greens"] = {str(draw(st.sampled_from(all_of_it))): ", ".join(chosen)}
    elif chosen:
        work["greens"] = ", ".join(chosen)
    if draw(st.booleans()):
        work["reserve_dates"] = str(last + dt.timedelta(days=draw(st.integers(1, 20))))
    if draw(st.booleans()):
        work["id"] = f"work-{number}"
    more = st.fixed_dictionaries(
        {},
        optional={
            "while_working": st.sampled_from(["open", "temporary green", "closed"]),
            "services_checked": st.booleans(),
            "reopen": st.sampled_from(["when finished", "next morning", "2 days later"]),
            "note": texts,
        },
    )
    return work | draw(more)


clubs = _optional(
    st.fixed_dictionaries({"name": texts}),
    sender=_optional(st.just({"email": "course@club.example"}), role=texts, name=texts),
    reply_to=st.just("office@club.example"),
    website=st.just("https://www.club.example"),
    place=st.fixed_dictionaries(
        {
            "latitude": st.floats(-90, 90),
            "longitude": st.floats(-180, 180),
            "timezone": st.sampled_from(["Europe/London", "America/New_York", "UTC"]),
        }
    ),
    units=st.sampled_from(["metric", "imperial"]),
    currency=st.sampled_from(["GBP", "EUR"]),
    country=st.sampled_from(["GB-ENG", "IE"]),
    contact=texts,
)
courses = _optional(
    st.fixed_dictionaries({}),
    grass=st.sampled_from(["cool-season", "warm-season"]),
    optimum_temperature=st.floats(5, 35).map(q.format_temperature_c),
    soil=st.just({"clay": "38.5 %", "sand": "22 %"}),
    mowing_height=st.floats(2, 9).map(q.format_length_mm),
    monthly_mean_temperature=st.lists(st.floats(-30, 40), min_size=12, max_size=12),
    drains=texts,
    daily_mean_temperature=st.dictionaries(days.map(str), st.floats(-30, 40), min_size=1),
)
crews = _optional(
    st.fixed_dictionaries({"people": st.integers(1, 30)}),
    hired_people=st.integers(0, 10),
    hired_dates=st.just("2027-08-23 to 2027-08-29"),
    working_day=st.just("06:30 to 15:30"),
    kept_back=st.just(0),
    breaks=st.integers(0, 240),
    dew_off=st.just("09:30"),
    drying=st.integers(0, 480),
    clearing_cores=st.just({"people": 3, "m3_per_person_hour": 0.8}),
    hauling_sand=st.just({"m3_per_load": 0.6, "minutes_per_load": 12}),
    machines=st.lists(
        st.fixed_dictionaries(
            {
                "operation": st.sampled_from(sorted(CATALOGUE)),
                "width": st.floats(0.2, 5).map(q.format_length_m),
                "speed": st.floats(0.2, 20).map(q.format_speed_km_h),
            }
        ),
        max_size=2,
    ),
)
fixtures = st.lists(
    _optional(
        st.fixed_dictionaries({"name": texts, "date": days.map(str)}),
        kind=st.sampled_from(["competition", "visitors", "society", "match", "away match", "open"]),
        decision=st.sampled_from(["play on", "does not count", "moved", "cancelled"]),
    ),
    max_size=3,
)
closures = st.lists(
    _optional(
        st.fixed_dictionaries(
            {"what": st.sampled_from(["course", "greens 1-3", "practice ground"])}
            | {"dates": days.map(str)}
        ),
        instead=texts,
        reason=texts,
    ),
    max_size=3,
)
approvals = st.just("pending") | _optional(
    st.fixed_dictionaries({"by": texts}),
    date=days.map(str),
    reference=texts,
    pending=st.booleans(),
)


@st.composite
def plans(draw: st.DrawFn) -> dict[str, Any]:
    """A whole plan as typed."""
    numbers = draw(st.integers(3, 18))
    names = draw(st.sampled_from([[""], [""], ["Oak"], ["Oak", "Red nine"]]))
    prefixes = [f"{name} " if len(names) > 1 else "" for name in names]
    greens = [f"{prefix}{n}" for prefix in prefixes for n in range(1, numbers + 1)]
    greens.append("Putting green")
    lines: list[dict[str, Any]] = [
        {"green": f"1-{numbers}", **({"course": name} if name else {})} for name in names
    ]
    lines.append({"green": "Putting green"})
    if draw(st.booleans()):  # a green that two holes share
        lines.append({**lines[0], "green": 1, "also": numbers})
    if draw(st.booleans()):
        lines[0]["area"] = q.format_area_m2(draw(st.floats(50, 2000)))
    count = draw(st.integers(1, 4))
    plan: dict[str, Any] = {
        "club": draw(clubs),
        "course": draw(courses) | {"greens": lines},
        "works": [draw(works(greens, number)) for number in range(count)],
    }
    more = st.fixed_dictionaries(
        {},
        optional={
            "issued": days.map(str),
            "crew": crews,
            "sand": st.fixed_dictionaries(
                {},
                optional={
                    "density": st.just("1.55 t/m3"),
                    "price_per_tonne": st.floats(0, 900),
                    "waste": st.floats(0.01, 50).map(q.format_percent),
                    "most_per_dressing": st.floats(0.5, 20).map(q.format_rate_kg_m2),
                    "lorry_load": st.floats(1, 40).map(q.format_weight_t),
                    "kiln_dried": st.booleans(),
                },
            ),
            "closures": closures,
            "fixtures": fixtures,
            "restrictions": st.lists(
                st.fixed_dictionaries({"what": texts, "dates": days.map(str), "except": texts}),
                max_size=2,
            ),
            "approval": approvals,
            "decision": _optional(
                st.fixed_dictionaries({"by": texts, "when": texts}),
                confirmed=st.just("06:30"),
                where=texts,
            ),
            "accepted": st.lists(
                st.fixed_dictionaries({"finding": texts, "by": texts, "why": texts}), max_size=2
            ),
        },
    )
    whole = plan | draw(more)
    for closure in whole.get("closures", ()):
        closure["what"] = closure["what"].replace("greens 1-3", f"greens {prefixes[0]}1-3")
    return whole
