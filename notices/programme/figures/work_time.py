"""How long a machine is on a green, moving from the one before included."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from notices.agronomy import work_time
from notices.programme.figures.quantity import Quantity
from notices.programme.model import Figure, Green, Work
from notices.programme.pace import ClubPace, pace_of
from notices.programme.sand import passes

WORK_TIME = Quantity(
    "work time",
    "minutes",
    "60 × area ÷ (1000 × speed × width × efficiency) × passes + minutes between greens, "
    "for one visit",
    ("iowa_pm696", "judgement"),
)
FOR_ALL = (
    "60 × area ÷ (1000 × speed × width × efficiency) × passes "
    "+ minutes between greens × number of greens, for one visit to each"
)


def figures_of_time(
    work: Work, greens: Mapping[str, Green], paces: Mapping[str, ClubPace]
) -> Iterator[Figure]:
    """Yield the machine's time on each green and in all; none for work by hand."""
    own = pace_of(work, paces)
    if own is None:
        return
    pace, count = own.pace, passes(work)
    inputs = {
        "width_m": pace.width_m,
        "speed_km_h": pace.speed_km_h,
        "efficiency": pace.efficiency,
        "minutes_between_greens": pace.minutes_between_greens,
        "passes": count,
    }
    assumed = not own.given or (
        "passes" in work.settings.values and work.settings.rests_on_default("passes")
    )
    total = 0.0
    for key in work.greens:
        green = greens[key]
        minutes = pace.minutes_between_greens + work_time.minutes_for_area(
            green.area_m2, pace.speed_km_h, pace.width_m, pace.efficiency, count
        )
        total += minutes
        yield WORK_TIME.of(
            work.id,
            minutes,
            {**inputs, "area_m2": green.area_m2},
            green=green,
            default_used=assumed or not green.area_given,
        )
    worked = [greens[key] for key in work.greens]
    yield WORK_TIME.of(
        work.id,
        total,
        {**inputs, "area_m2": sum(green.area_m2 for green in worked), "greens": len(worked)},
        formula=FOR_ALL,
        default_used=assumed or not all(green.area_given for green in worked),
    )
