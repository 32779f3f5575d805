"""Facts that fill the text on a kind of work, in words: sizes, shares, spans, counts."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from functools import partial

from notices.operations import Opening, WhileWorking
from notices.programme.brushing import not_brushed
from notices.programme.model import Period, Programme, Recovery, Work
from notices.wording import measures
from notices.wording.greens import name_greens, name_greens_between
from notices.wording.lists import counted, number

LATE_IN_YEAR = (10, 11, 12, 1, 2)
"""Months in which turf hardly knits in the north temperate zone; six months later in the south."""

GROWS_WELL = 0.5
"""Growth potential from which turf knits in any month: a warm country has no winter."""

_TIMES = {2: "twice"}

_ON_THE_DAY = {
    WhileWorking.CLOSED: "The green is closed while we work.",
    WhileWorking.TEMPORARY: "You play to a temporary green until the green opens again.",
    WhileWorking.OPEN: "The green stays open while we work.",
}
_ON_THE_DAY_OF_SEVERAL = {
    WhileWorking.CLOSED: "Each green is closed while we work on it.",
    WhileWorking.TEMPORARY: "You play to a temporary green until the green opens again.",
    WhileWorking.OPEN: "Each green stays open while we work.",
}


def operation_facts(work: Work, programme: Programme) -> dict[str, object]:
    """Return the facts that fill the text on a work."""
    settings = work.settings.values
    length = partial(_length, units=programme.club.units)
    width = next(
        (
            value
            for name in ("tine_diameter", "hole_diameter", "blade_width")
            if isinstance(value := settings.get(name), float | int)
        ),
        None,
    )
    disturbed = programme.figure("surface disturbed", work.id)
    dressings = settings.get("dressings")
    apart = settings.get("days_between")
    on_the_day = _ON_THE_DAY if len(work.greens) == 1 else _ON_THE_DAY_OF_SEVERAL
    kept = len(programme.kept_on_temporary(work)) == len(work.greens)
    met = WhileWorking.TEMPORARY if kept else work.while_working
    return {
        "the_greens": name_greens(work.greens, programme.greens),
        "on_the_day": on_the_day[met],
        "each_green": _each_green(work, programme),
        "width": length(width),
        "width_like": measures.like(width) if width is not None else "",
        "depth": length(settings.get("depth")),
        "spacing": _spacing(work, programme.club.units),
        "share": measures.share(disturbed.value) if disturbed and disturbed.value else "",
        "from_height": length(settings.get("from")),
        "to_height": length(settings.get("to")),
        "seed": work.settings.words("seed"),
        "product": work.settings.words("product"),
        "filled": programme.is_filled(work.id),
        "filling": programme.fills_holes(work.id),
        "brushed": work.operation.opening is Opening.SAND and not not_brushed(programme, work),
        "dressings": dressings if isinstance(dressings, int) else 1,
        "dressings_words": _times(dressings if isinstance(dressings, int) else 1),
        "days_between": _apart(apart if isinstance(apart, int) else 0),
        "grows": grows_well(work, programme),
        "opens_before_growth": any(r.opens_before_growth for r in programme.recoveries[work.id]),
        "late_in_year": _late_in_year(work, programme),
        **_healing(work, programme.recoveries[work.id]),
    }


def _each_green(work: Work, programme: Programme) -> str:
    """Return "each green", "the green", or if the period has more, "each green except green 12"."""
    own = (period for period in programme.periods if work.id in {w.id for w in period.works})
    of_period = next((period.greens for period in own), work.greens)
    done = set(work.greens)
    out = [green for green in of_period if green not in done]
    if not out:
        return "the green" if len(work.greens) == 1 else "each green"
    if len(out) < len(work.greens):
        return f"each green except {name_greens_between(out, programme.greens)}"
    return name_greens(work.greens, programme.greens)


def story_facts(period: Period) -> dict[str, object]:
    """Return the facts that fill the story of a period, on its kinds of opening."""
    kinds = {work.operation.opening for work in period.works}
    return {
        "holes": Opening.HOLES in kinds,
        "slits": Opening.SLITS in kinds,
        "sand": Opening.SAND in kinds,
        "channels": Opening.CHANNELS in kinds,
        "trenches": Opening.TRENCHES in kinds,
        "turf": Opening.BARE in kinds,
        "openings": bool(kinds & {Opening.HOLES, Opening.SLITS, Opening.CHANNELS}),
        "winter": False,
        "may_heal": False,
        "healed": "",
        "healed_early": "",
    }


def _late_in_year(work: Work, programme: Programme) -> bool:
    """Tell whether the work falls into the cold months of its place."""
    northern = month_in_the_north(work.dates[0], programme)
    return northern in LATE_IN_YEAR and not grows_well(work, programme)


def grows_well(work: Work, programme: Programme) -> bool:
    """Tell whether grass grows well when the work begins."""
    growth = programme.figure("growth potential", work.id)
    return growth is not None and growth.value is not None and growth.value >= GROWS_WELL


def month_in_the_north(day: dt.date, programme: Programme) -> int:
    """Return the month with the same season north of the equator: 7 for January in the south."""
    return (day.month + 5) % 12 + 1 if programme.club.southern else day.month


def _length(value: object, units: str) -> str:
    return measures.length(value, units) if isinstance(value, float | int) else ""


def _spacing(work: Work, units: str) -> str:
    for name in ("spacing", "blade_spacing"):
        value = work.settings.values.get(name)
        if isinstance(value, tuple):
            return measures.length(max(value), units)
        if isinstance(value, float | int):
            return measures.length(value, units)
    return ""


def _times(count: int) -> str:
    return _TIMES.get(count, f"{number(count)} times")


def _apart(days: int) -> str:
    if days and days % 7 == 0:
        return "a week" if days == 7 else counted(days // 7, "week")
    return counted(days, "day")


def _healing(work: Work, recoveries: Sequence[Recovery]) -> dict[str, object]:
    """Return the facts on the time from the work or the last dressing until nothing is seen."""
    spans = [(_last_visit(work, r.green), r.fully_healed) for r in recoveries]
    early = [(span.early - done).days for done, span in spans]
    late = [(span.late - done).days for done, span in spans if span.late]
    winter = any(
        r.growth_stops and (r.fully_healed.late is None or r.fully_healed.late > r.growth_stops)
        for r in recoveries
    )
    over_winter = any(
        r.growth_stops and r.fully_healed.expected >= r.growth_stops for r in recoveries
    )
    return {
        "winter": winter,
        # Greens expected to heal while growth rests may heal before; the text then says "may".
        "may_heal": not any(map(_waits_for_spring, recoveries)),
        "healed": measures.weeks([min(early), max(late, default=max(early))]),
        # Empty if even the early day comes after growth stops: weeks would promise too much.
        "healed_early": "" if over_winter else measures.weeks([max(early)]),
    }


def _waits_for_spring(recovery: Recovery) -> bool:
    """Tell whether a green heals only after growth returns, or even at best after growth stops."""
    stops, returns = recovery.growth_stops, recovery.growth_returns
    healed = recovery.fully_healed
    if stops is None:
        return False
    return healed.early >= stops or returns is None or healed.expected >= returns


def _last_visit(work: Work, green: str) -> dt.date:
    return max(visit.date for visit in work.visits if green in visit.greens)
