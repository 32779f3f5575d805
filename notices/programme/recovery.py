"""When each green comes back: after each work, and after all works of a period."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from functools import cache

from notices.agronomy import recovery as model
from notices.agronomy.growth import Climate
from notices.agronomy.recovery import DateRange
from notices.operations import Opening
from notices.programme.model import Promise, Recovery, SandOnGreen, Work
from notices.programme.sand import hole_diameter_mm

MOLE_SLOT_MM = 12.0
"""Width of the slot that the leg of a mole plough leaves (common practice, no published source)."""

TURF_SMOOTH_GROWTH_DAYS = (42.0, 70.0)
"""Laid turf: six to ten weeks of growth (common practice)."""

TURF_HEALED_GROWTH_DAYS = (70.0, 120.0)
"""Seams gone from sight (judgement)."""

TRENCH_HEALED_GROWTH_DAYS = (70.0, 180.0)
"""Trench lines sink and want sand for a season (common practice)."""

HEAVY_DRESSING_MM = 0.65
"""About 1 kg/m²: the upper end of one dressing in the growing season (trade press)."""

LONGEST_SPAN = dt.timedelta(days=31)
"""A member is shown a span of a month at most; the earlier date gives way."""


class RecoveryModel:
    """The recovery model with one club's climate; answers are kept, as days repeat."""

    def __init__(self, climate: Climate) -> None:
        self.climate = climate
        self._span = cache(self._span_uncached)
        self._stop = cache(lambda done: model.growth_stop(done, climate))
        self._returns = cache(lambda after: model.growth_returns(after, climate))

    def _span_uncached(self, slow_days: float, fast_days: float, done: dt.date) -> DateRange:
        return model.span(slow_days, fast_days, done, self.climate)

    def of_work(self, work: Work, green: str, filled_on: dt.date | None) -> Recovery:
        """Return when one green comes back after one work.

        Parameters
        ----------
        work
            The work; it need not open the surface.
        green
            Key of the green.
        filled_on
            Day of the last dressing that fills the holes of this work, if one does.
        """
        done = work.last_day_on(green)
        back = done + dt.timedelta(days=work.reopen_days)
        healed = self._span(*_growth_days_to_heal(work), done)
        if work.operation.opening is Opening.SAND:
            last = max(v.date for v in work.visits if green in v.greens)
            smooth = model.sanded_surface(last, heavy=_is_heavy(work))
            healed = smooth
        elif filled_on is not None:
            smooth = model.putting_smoothly_when_filled(filled_on)
        else:
            smooth = self._span(*_growth_days_to_putt(work), done)
        return self._with_winter(green, done, DateRange(back, back), smooth, healed)

    def of_green(self, green: str, recoveries: Sequence[Recovery]) -> Recovery:
        """Return when a green comes back after several works, never before it is in play."""
        done = max(r.done for r in recoveries)
        back = max(r.back_in_play.early for r in recoveries)
        smooth = model.combine([r.putting_smoothly for r in recoveries], done)
        healed = model.combine([r.fully_healed for r in recoveries], done)
        return self._with_winter(
            green, done, DateRange(back, back), _not_before(smooth, back), _not_before(healed, back)
        )

    def _with_winter(
        self,
        green: str,
        done: dt.date,
        back: DateRange,
        smooth: DateRange,
        healed: DateRange,
    ) -> Recovery:
        # Something waits for spring only where growth stops before the late date.
        late = healed.late or dt.date.max
        stop = self._stop(done) if healed.late != done else None
        if stop is not None and stop >= late:
            stop = None
        returns = self._returns(stop) if stop else None
        return Recovery(green, done, back, smooth, healed, stop, returns)


def _is_heavy(work: Work) -> bool:
    if "rate" in work.settings.given:
        return work.settings.number("rate") / 1.5 > HEAVY_DRESSING_MM
    return "fill" in work.settings.given


def _growth_days_to_heal(work: Work) -> tuple[float, float]:
    """Return the growth days until healed, at slow and at fast growth."""
    rates = model.SIDEWAYS_GROWTH_MM_PER_DAY
    kind = work.operation.opening
    if kind is Opening.HOLES:
        width = hole_diameter_mm(work)
    elif kind is Opening.CHANNELS:
        width = MOLE_SLOT_MM
    elif kind is Opening.SLITS:
        blade, depth = work.settings.number("blade_width"), work.settings.number("depth")
        return (
            model.growth_days_for_slit(blade, depth, rates.low),
            model.growth_days_for_slit(blade, depth, rates.high),
        )
    elif kind is Opening.TRENCHES:
        return TRENCH_HEALED_GROWTH_DAYS[::-1]
    elif kind is Opening.BARE:
        return TURF_HEALED_GROWTH_DAYS[::-1]
    else:
        return 0.0, 0.0
    return (
        model.growth_days_for_opening(width, rates.low),
        model.growth_days_for_opening(width, rates.high),
    )


def _growth_days_to_putt(work: Work) -> tuple[float, float]:
    if work.operation.opening in (Opening.TRENCHES, Opening.BARE):
        return TURF_SMOOTH_GROWTH_DAYS[::-1]
    slow, fast = _growth_days_to_heal(work)
    return model.growth_days_to_half_closed(slow), model.growth_days_to_half_closed(fast)


def _not_before(span: DateRange, day: dt.date) -> DateRange:
    early = max(span.early, day)
    return DateRange(early, None if span.late is None else max(span.late, early))


def recover_works(
    works: Sequence[Work], needs: Sequence[SandOnGreen], recovery_model: RecoveryModel
) -> dict[str, tuple[Recovery, ...]]:
    """Return, by work, when each of its greens comes back."""
    by_id = {work.id: work for work in works}
    filled: dict[tuple[str, str], dt.date] = {}
    for need in needs:
        dressing = by_id[need.work]
        last = max(v.date for v in dressing.visits if need.green in v.greens)
        for opened in need.fills:
            filled[opened, need.green] = last
    return {
        work.id: tuple(
            recovery_model.of_work(work, green, filled.get((work.id, green)))
            for green in work.greens
        )
        for work in works
    }


def recover_period(
    works: Sequence[Work],
    by_work: Mapping[str, Sequence[Recovery]],
    recovery_model: RecoveryModel,
) -> tuple[Recovery, ...]:
    """Return when each green of a period comes back after all its works."""
    gathered: dict[str, list[Recovery]] = {}
    for work in works:
        for recovery in by_work[work.id]:
            gathered.setdefault(recovery.green, []).append(recovery)
    return tuple(recovery_model.of_green(green, found) for green, found in gathered.items())


def promise(spans: Sequence[DateRange], recoveries: Sequence[Recovery]) -> Promise:
    """Return what members are told of several greens: all of them by then.

    Parameters
    ----------
    spans
        The range of each green.
    recoveries
        Where they come from; they know when growth stops.
    """
    expect = max(span.early for span in spans)
    lates = [span.late for span in spans if span.late is not None]
    worst = max(lates) if len(lates) == len(spans) else None
    stops = [r.growth_stops for r in recoveries if r.growth_stops is not None]
    stop = min(stops) if stops and (worst is None or worst >= min(stops)) else None
    # Where growth stops in between, the span is told in words, not shortened.
    if worst is not None and (stop is None or expect >= stop):
        expect = max(expect, worst - LONGEST_SPAN)
    return Promise(expect, worst, stop)
