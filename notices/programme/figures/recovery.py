"""The three promises: of each work on each green, and of each period to the members."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from notices.agronomy.recovery import COLD_TO_WARM_YEAR_C, DateRange
from notices.operations import Opening
from notices.programme.climate import ClubClimate
from notices.programme.figures.quantity import Quantity
from notices.programme.grounds import Days, Ground, Growth, Treatment
from notices.programme.model import (
    Figure,
    FittedRate,
    Green,
    Input,
    Period,
    Programme,
    Promise,
    Recovery,
    SandOnGreen,
    Work,
)
from notices.programme.promises import LONGEST_SPAN, rain_delay
from notices.programme.recovery import RecoveryModel
from notices.programme.sand import filled_by

AFTER_WORK, AFTER_WORK_ONE = "days after the work", "day after the work"
AFTER_PERIOD, AFTER_PERIOD_ONE = (
    "days after the last day of work",
    "day after the last day of work",
)

ENDS = ("early", "expected", "late")
"""How the days of a `DateRange` are named in figures."""
BACK = {
    end: Quantity(
        f"back in play, {end}",
        AFTER_WORK,
        "days from the work until the green reopens",
        ("definition", "common_practice"),
        AFTER_WORK_ONE,
    )
    for end in ENDS
}
YEARS = ", ".join(f"{offset:+g}" for offset in COLD_TO_WARM_YEAR_C).replace("-", "−")
GROWN = (
    "first day on which the growth potential of each day, summed from the day after the work, "
    "reaches the growth days needed, which are {need}; daily temperatures from {days}, {years}"
)
IN_YEARS = {
    "early": f"in years {YEARS} °C off the usual, the earliest of the three",
    "expected": "in a usual year",
    "late": f"in years {YEARS} °C off the usual, the latest of the three",
}
PROMISED = {
    # What members are told, how the figures of its works are called, the formula.
    "open again": ("back in play", "the day on which the last green is back in play"),
    "putting well": ("putting smoothly", "the day on which the last green putts smoothly"),
    "fully healed": ("fully healed", "the day on which the last green has healed"),
}
JOINED = (
    "; where several works meet on a green, the slowest; at worst, half of the next slowest on "
    "top, both counted from the last work on it, and every work put off by the reserve delay"
)


@dataclass(frozen=True, slots=True)
class Ingredients:
    """What the recoveries of a programme were worked out from."""

    sand: Mapping[tuple[str, str], SandOnGreen]
    """What each dressing brings, by work and green."""
    filled: Mapping[tuple[str, str], Work]
    """The dressing that fills the holes of a work on a green."""
    greens: Mapping[str, Green]
    climate: ClubClimate
    recovery_model: RecoveryModel

    @classmethod
    def of(
        cls,
        programme: Programme,
        climate: ClubClimate,
        recovery_model: RecoveryModel,
    ) -> Ingredients:
        """Gather what recovery rests on from a programme whose figures are still wanting."""
        return cls(
            {(need.work, need.green): need for need in programme.sand},
            filled_by(programme.works, programme.sand),
            programme.greens,
            climate,
            recovery_model,
        )


@dataclass(frozen=True, slots=True)
class _Promised:
    """One promise of one work on one green, and the earlier one that it never undercuts."""

    quantity: str
    span: DateRange
    ground: Ground
    floor: DateRange
    floor_name: str
    floor_assumed: bool


@dataclass(frozen=True, slots=True)
class _Told:
    """A figure of a work but for its green: it stands for every green that was treated alike."""

    quantity: Quantity
    value: float | None
    inputs: Sequence[Input]
    default_used: bool


def figures_of_recovery(
    work: Work, recoveries: Sequence[Recovery], ingredients: Ingredients
) -> Iterator[Figure]:
    """Yield, for a work on each green, the promises as days after the work: all ends of each.

    A work that does not open the surface has only a day on which the green is back in play.
    """
    alike: dict[Treatment, list[_Told]] = {}
    for recovery in recoveries:
        key = work.id, recovery.green
        treatment = Treatment.of(
            work, recovery.green, ingredients.sand.get(key), ingredients.filled.get(key)
        )
        told = alike.get(treatment)
        if told is None:
            told = alike[treatment] = [*_of_work(work, recovery, treatment, ingredients)]
        green = ingredients.greens[recovery.green]
        for one in told:
            yield one.quantity.of(
                work.id, one.value, one.inputs, green=green, default_used=one.default_used
            )


def _of_work(
    work: Work, recovery: Recovery, treatment: Treatment, ingredients: Ingredients
) -> Iterator[_Told]:
    yield from _back(work, recovery)
    if work.operation.opening is Opening.NONE:
        return
    putting, healing = ingredients.recovery_model.grounds(work, treatment)
    putts = _Promised(
        "putting smoothly",
        recovery.putting_smoothly,
        putting,
        recovery.back_in_play,
        "back in play",
        not work.reopen_given,
    )
    heals = _Promised(
        "fully healed",
        recovery.fully_healed,
        healing,
        recovery.putting_smoothly,
        "putting smoothly",
        not work.reopen_given or _assumed(putting, ingredients.climate),
    )
    yield from _every_end(recovery.done, putts, ingredients)
    yield from _every_end(recovery.done, heals, ingredients)


def _back(work: Work, recovery: Recovery) -> Iterator[_Told]:
    for end, day in zip(ENDS, recovery.back_in_play.days, strict=True):
        yield _Told(
            BACK[end],
            _days(recovery.done, day),
            (
                Input("done", recovery.done.isoformat()),
                Input("reopens_after_days", work.reopen_days, "reopens after", "days"),
            ),
            not work.reopen_given,
        )


def _every_end(done: dt.date, promised: _Promised, ingredients: Ingredients) -> Iterator[_Told]:
    bare = ingredients.recovery_model.span_of(promised.ground, done)
    for end, day, without, at_least in zip(
        ENDS, promised.span.days, bare.days, promised.floor.days, strict=True
    ):
        recipe, inputs, source = _explained(promised.ground, end, without, ingredients.climate)
        held_back = day != without
        if held_back:
            recipe += f"; not before {promised.floor_name}"
            inputs = (*inputs, Input("not_before", at_least.isoformat() if at_least else None))
        yield _Told(
            Quantity(f"{promised.quantity}, {end}", AFTER_WORK, recipe, source, AFTER_WORK_ONE),
            _days(done, day),
            (
                Input("done", done.isoformat()),
                Input("day", day.isoformat() if day else None),
                *inputs,
            ),
            _assumed(promised.ground, ingredients.climate)
            or (held_back and promised.floor_assumed),
        )


def _explained(
    ground: Ground, end: str, day: dt.date | None, climate: ClubClimate
) -> tuple[str, tuple[Input, ...], tuple[str, ...]]:
    """Return recipe, inputs and sources of one end of a range."""
    if isinstance(ground, Days):
        return (
            ground.recipe,
            (
                Input("since", ground.since.isoformat()),
                Input("days_since", None if day is None else (day - ground.since).days),
            ),
            ground.source,
        )
    which = ENDS.index(end)
    inputs = (
        *ground.inputs,
        Input("growth_days_needed", ground.days[which]),
        *climate.inputs,
    )
    if ground.rates is not None:
        # The faster an edge grows, the earlier the opening has closed.
        rate = ground.rates[::-1][which]
        edge = "sideways growth of an edge"
        inputs = (*inputs, Input("sideways_growth_mm_per_day", rate, edge, "mm/day"))
    # What the ground needs names inputs in braces too; they are left as they are.
    recipe = GROWN.format(need=ground.recipe, days=climate.days, years=IN_YEARS[end])
    return recipe, inputs, (*ground.source, *climate.source)


def _assumed(ground: Ground, climate: ClubClimate) -> bool:
    """Whether anything that a ground rests on is not the club's own."""
    return ground.default_used or (isinstance(ground, Growth) and climate.default_used)


def figures_of_promises(period: Period, of_works: Sequence[Figure]) -> Iterator[Figure]:
    """Yield what members are told of a period; it stands under the first work that opens greens.

    Parameters
    ----------
    period
        The period.
    of_works
        The figures of recovery of its works.
    """
    leading = period.opening_works or period.works
    last = max(period.days)
    delay = rain_delay(period.days, period.reserve_dates).days
    inputs = (
        Input("last_day", last.isoformat()),
        Input("reserve_delay_days", delay, "reserve delay", "days"),
    )
    for quantity, promise in (
        ("open again", period.open_again),
        ("putting well", period.putting_well),
        ("fully healed", period.fully_healed),
    ):
        rests_on = [f for f in of_works if f.quantity.startswith(PROMISED[quantity][0])]
        source = dict.fromkeys([*(key for f in rests_on for key in f.source), "judgement"])
        for end, day in (("expect by", promise.expect_by), ("at worst", promise.at_worst)):
            if rests_on:
                formula = _formula_of_promise(quantity, end, promise)
                yield Quantity(
                    f"{quantity}, {end}", AFTER_PERIOD, formula, tuple(source), AFTER_PERIOD_ONE
                ).of(
                    leading[0].id,
                    _days(last, day),
                    (
                        *inputs,
                        *_of_slowest(rests_on, "expected" if end == "expect by" else "late"),
                        Input("day", day.isoformat() if day else None),
                    ),
                    default_used=any(f.default_used for f in rests_on),
                )


def _of_slowest(figures: Sequence[Figure], end: str) -> Iterator[Input]:
    """Yield the figures of the green that comes last: when it was done and what each work adds."""
    one_end = [figure for figure in figures if figure.quantity.endswith(end)]
    last = max(one_end, key=_day_of)
    own = [figure for figure in one_end if figure.green == last.green]
    yield Input("green", last.green)
    for figure in own:
        done = f"{figure.work}, done"
        yield Input(done, figure.inputs["done"], done)
    for figure in own:
        yield Input(figure.id, figure.value, figure.id)


def _day_of(figure: Figure) -> dt.date:
    """Return the day that a figure counts to; the end of days where there is none."""
    if figure.value is None:
        return dt.date.max
    return dt.date.fromisoformat(str(figure.inputs["done"])) + dt.timedelta(days=figure.value)


def _formula_of_promise(quantity: str, end: str, promise: Promise) -> str:
    told = PROMISED[quantity][1]
    if quantity == "open again":
        return f"{told}; at worst, every work put off by the reserve delay"
    if end == "expect by" and promise.at_worst == promise.expect_by + LONGEST_SPAN:
        return f"{told}{JOINED}; never more than {LONGEST_SPAN.days} days before the worst"
    return f"{told}{JOINED}"


def _days(since: dt.date, day: dt.date | None) -> float | None:
    return None if day is None else float((day - since).days)


FITTED = Quantity(
    "sideways growth",
    "mm/day",
    "the median over the records of: opening ÷ (2 × growth potential summed from the day after the "
    "work to the day on which it was seen closed); half of the opening where it was seen to putt "
    "smoothly",
    ("club_record", "recovery_model"),
)


def figures_of_records(
    works: Sequence[Work], records: Mapping[str, FittedRate], climate: ClubClimate
) -> Iterator[Figure]:
    """Yield the rate of recovery that the club's own record gives, under the first such work."""
    for operation, fitted in records.items():
        work = next(work for work in works if work.operation.name == operation)
        inputs = (
            *_of_records(fitted),
            Input("seasons_on_record", fitted.seasons),
            Input("book_rate_mm_per_day", fitted.book.middle, "book rate", "mm/day"),
            Input("low_mm_per_day", fitted.rates.low, "low", "mm/day"),
            Input("high_mm_per_day", fitted.rates.high, "high", "mm/day"),
            *climate.inputs,
        )
        sources = (*FITTED.source, *climate.source)
        yield replace(FITTED, source=sources).of(
            work.id, fitted.rates.middle, inputs, default_used=climate.default_used
        )


def _of_records(fitted: FittedRate) -> Iterator[Input]:
    for number, record in enumerate(fitted.records, 1):
        name, called = f"record_{number}", f"record {number}"
        rate = record.rate_mm_per_day
        yield Input(f"{name}_done", record.done.isoformat())
        yield Input(f"{name}_{record.what.replace(' ', '_')}", record.seen.isoformat())
        yield Input(f"{name}_opening_mm", record.opening_mm, f"{called} opening", "mm")
        yield Input(f"{name}_growth_days", record.growth_days, f"{called} growth", "days")
        yield Input(f"{name}_rate_mm_per_day", rate, f"{called} rate", "mm/day")
