"""Works in an order that undoes one of them, and greens that are left out.

Messages and suggestions end without a full stop; `Finding` sets it. Spans are common practice,
no published source.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from itertools import chain

from notices.findings import Finding, Weight
from notices.operations import Opening
from notices.plan.model import Plan
from notices.programme.brushing import BRUSHED_WITHIN, not_brushed
from notices.programme.green_names import plan_greens
from notices.programme.model import Programme, Work
from notices.programme.periods import FIRST_OPENING_ORDER
from notices.programme.turf_checks import is_loose

FRESH_SAND = dt.timedelta(days=14)
"""How long a dressing lies in the surface, so that cores take it out again (judgement)."""

SEEDLINGS = dt.timedelta(days=42)
"""How long blades tear out what was sown (judgement)."""

FINISHING = ("brushing", "rolling")

SMALLEST_COURSE = 3
"""With fewer greens, one that is left out is no sign of a slip."""


def cored_after_dressing(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Cores would take the new sand off again."""
    for core, sand, greens in _too_soon_after(
        programme, "hollow tining", "top dressing", FRESH_SAND
    ):
        yield _undoes(
            "cored-after-dressing",
            programme,
            core,
            greens,
            f"dressed from {sand.dates[0]}, so the cores take the new sand out again",
            "Take the cores first, then dress",
        )


def scarified_after_seed(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Blades would tear out the seedlings."""
    for blades, seed, greens in _too_soon_after(programme, "scarifying", "overseeding", SEEDLINGS):
        yield _undoes(
            "scarified-after-seed",
            programme,
            blades,
            greens,
            f"sown from {seed.dates[0]}, and tears out the seedlings",
            "Scarify first, then sow into the slits",
        )


def _too_soon_after(
    programme: Programme, later: str, earlier: str, within: dt.timedelta
) -> Iterator[tuple[Work, Work, tuple[str, ...]]]:
    """Yield each later work with the earlier one that it follows too soon, and on which greens."""
    for second in _of(programme, later):
        for first in _of(programme, earlier):
            if greens := _soon_before(first, second, within):
                yield second, first, greens


def _undoes(
    code: str, programme: Programme, work: Work, greens: tuple[str, ...], harm: str, remedy: str
) -> Finding:
    return Finding(
        code,
        Weight.THINK_AGAIN,
        f"{work.operation.name} begins on {work.dates[0]} on "
        f"{plan_greens(programme.greens, greens)}, {harm}",
        remedy,
        ("works", work.plan_index, "dates"),
        work=work.id,
        greens=greens,
        dates=work.dates,
    )


def finished_before_dressing(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Brushing and rolling come once the sand is down and dry."""
    for period in programme.periods:
        sands = [work for work in period.works if work.operation.name == "top dressing"]
        for work in period.works:
            if work.operation.name not in FINISHING:
                continue
            early = tuple(
                green
                for green in work.greens
                if (days := [s.days_on(green)[0] for s in sands if s.days_on(green)])
                and work.last_day_on(green) < min(days)
            )
            # Another job of the same kind may come at the right time.
            early = tuple(g for g in early if not _again(period.works, sands, work, g))
            if early:
                first = min(s.dates[0] for s in sands)
                yield Finding(
                    "finished-before-dressing",
                    Weight.THINK_AGAIN,
                    f"{work.operation.name} ends on {work.dates[-1]} on "
                    f"{plan_greens(programme.greens, early)}, which "
                    f"{'is' if len(early) == 1 else 'are'} dressed later, from {first}",
                    f"Put {work.operation.name} on the days of the dressing, once the sand is dry",
                    ("works", work.plan_index, "dates"),
                    work=work.id,
                    greens=early,
                    dates=work.dates,
                )


def dressing_not_brushed(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Sand that nobody brushes in lies on the grass and in the mower, a top-up no less."""
    for sand in _of(programme, "top dressing"):
        loose = not_brushed(programme, sand)
        if not loose:
            continue
        greens = tuple(dict.fromkeys(chain.from_iterable(loose.values())))
        later = () if 1 in loose else sorted(loose)
        which = (
            f"the {_and(later)} dressing{'s' if len(later) > 1 else ''}"
            if later
            else "the dressing"
        )
        are = "are" if len(later) > 1 else "is"
        yield Finding(
            "dressing-not-brushed" if 1 in loose else "top-up-not-brushed",
            Weight.THINK_AGAIN if 1 in loose else Weight.INFORMATION,
            f"{which} on {plan_greens(programme.greens, greens)} {are} not brushed in within "
            f"{BRUSHED_WITHIN.days} days",
            "Add brushing on the same days; it is done once the sand is dry" if 1 in loose else "",
            ("works", sand.plan_index),
            work=sand.id,
            greens=greens,
            dates=tuple(
                sorted({day for on_greens in loose.values() for day in on_greens.values()})
            ),
        )


_ORDINALS = {2: "second", 3: "third", 4: "fourth", 5: "fifth", 6: "sixth"}


def _and(numbers: Sequence[int]) -> str:
    """Name dressings by their numbers: second and third; 12th."""
    *first, last = (_ORDINALS.get(number, f"{number}th") for number in numbers)
    return f"{', '.join(first)} and {last}" if first else last


def orders_that_are_fine(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Orders that look wrong and are not."""
    for solid in _of(programme, "solid tining"):
        for sand in _of(programme, "top dressing"):
            if greens := _soon_before(sand, solid, FRESH_SAND):
                yield Finding(
                    "sand-before-solid-tining",
                    Weight.INFORMATION,
                    f"solid tining from {solid.dates[0]} follows the dressing of "
                    f"{plan_greens(programme.greens, greens)}: "
                    "that is usual, as the tines carry the sand down",
                    "",
                    ("works", solid.plan_index, "dates"),
                    work=solid.id,
                    greens=greens,
                    dates=solid.dates,
                )
    for deep in _of(programme, "deep solid tining"):
        for core in _of(programme, "hollow tining"):
            for code, first, then, does in (
                ("deep-tining-after-coring", core, deep, "follows"),
                ("deep-tining-before-coring", deep, core, "comes before"),
            ):
                if greens := _soon_before(first, then, FRESH_SAND):
                    yield Finding(
                        code,
                        Weight.INFORMATION,
                        f"deep solid tining from {deep.dates[0]} {does} the coring of "
                        f"{plan_greens(programme.greens, greens)}: it may come before or after",
                        "",
                        ("works", deep.plan_index, "dates"),
                        work=deep.id,
                        greens=greens,
                        dates=deep.dates,
                    )


def green_left_out(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """One green of a course has no work where all others have it, for no reason to be seen."""
    courses: dict[str, list[str]] = {}
    for green in programme.greens.values():
        if green.holes:
            courses.setdefault(green.course, []).append(green.key)
    for period in programme.periods:
        done: dict[str, list[Work]] = {}
        for work in period.works:
            done.setdefault(work.operation.name, []).append(work)
        missed: dict[str, list[Work]] = {}
        for works in done.values():
            covered = set(chain.from_iterable(work.greens for work in works))
            for greens in courses.values():
                out = [green for green in greens if green not in covered]
                if len(greens) < SMALLEST_COURSE or len(out) != 1:
                    continue
                # Turf that has not rooted is left alone on purpose, and so is a green with a drain.
                spared = _drained_else(programme, works[-1], out[0])
                if not spared and not is_loose(programme, out[0], works[-1].dates):
                    missed.setdefault(out[0], []).append(works[-1])
        for key, works in missed.items():
            names = ", ".join(work.operation.name for work in works)
            yield Finding(
                "green-left-out",
                Weight.THINK_AGAIN,
                f"green {key} is left out of {names}, which all the others have",
                "Add the green, or accept the finding with a reason",
                ("works", works[0].plan_index),
                work=works[0].id,
                greens=(key,),
                dates=works[0].dates,
            )


def _drained_else(programme: Programme, work: Work, green: str) -> bool:
    """Whether channels spare a green in which trenches are dug: it is left out on purpose."""
    return work.operation.opening is Opening.CHANNELS and any(
        other.operation.opening is Opening.TRENCHES and green in other.greens
        for other in programme.works
    )


def reserve_after_next_work(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """A day kept free comes after the next work on the same greens has begun."""
    for work in programme.works:
        if not work.reserve_dates:
            continue
        last, reserve = work.dates[-1], work.reserve_dates[-1]
        following = [
            other
            for other in programme.works
            if other.operation.order >= FIRST_OPENING_ORDER
            and not _once_more(programme.works, other, last)
            and last < other.dates[0] < reserve
            and set(other.greens) & set(work.greens)
        ]
        if following:
            next_work = min(following, key=lambda other: (other.dates[0], other.plan_index))
            yield Finding(
                "reserve-after-next-work",
                Weight.THINK_AGAIN,
                f"the reserve date {reserve} for {work.operation.name} comes after "
                f"{next_work.operation.name} begins on the same greens, on {next_work.dates[0]}",
                "Choose an earlier reserve date, or move the next work",
                ("works", work.plan_index, "reserve_dates"),
                work=work.id,
                greens=tuple(green for green in work.greens if green in next_work.greens),
                dates=(reserve,),
            )


def _once_more(works: Sequence[Work], finish: Work, by: dt.date) -> bool:
    """Whether brushing or rolling comes again, for a later dressing: the work has had its own."""
    return finish.operation.name in FINISHING and any(
        other.operation.name == finish.operation.name
        and other.dates[0] <= by
        and set(other.greens) >= set(finish.greens)
        for other in works
    )


def _again(works: Sequence[Work], sands: Sequence[Work], work: Work, green: str) -> bool:
    """Whether the same job is done on a green once more when it has been dressed."""
    dressed = min(s.days_on(green)[0] for s in sands if s.days_on(green))
    same = (other for other in works if other.operation.name == work.operation.name)
    return any(day >= dressed for other in same for day in other.days_on(green))


def _soon_before(first: Work, then: Work, within: dt.timedelta) -> tuple[str, ...]:
    """Return the greens on which a work is done on an earlier day than another, and not long."""
    return tuple(
        green
        for green in then.greens
        if any(
            dt.timedelta(0) < then.days_on(green)[0] - day <= within
            for day in first.every_day_on(green)
        )
    )


def _of(programme: Programme, name: str) -> list[Work]:
    return [work for work in programme.works if work.operation.name == name]


ORDER_CHECKS = (
    cored_after_dressing,
    scarified_after_seed,
    finished_before_dressing,
    dressing_not_brushed,
    orders_that_are_fine,
    green_left_out,
    reserve_after_next_work,
)
