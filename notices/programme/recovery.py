"""When each green comes back: after each work, and after all works of a period."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from notices.agronomy import recovery as model
from notices.agronomy.growth import Climate
from notices.agronomy.recovery import DateRange
from notices.programme.grounds import (
    Ground,
    Growth,
    Treatment,
    ground_of_healing,
    ground_of_putting,
)
from notices.programme.growing import Growing
from notices.programme.model import FittedRate, Recovery, SandOnGreen, Work
from notices.programme.sand import filled_by


class RecoveryModel:
    """The recovery model with one club's climate, and its own records where it has some."""

    def __init__(
        self, climate: Climate, records: Mapping[str, FittedRate] = MappingProxyType({})
    ) -> None:
        self._growing = Growing(climate)
        self._records = records

    def grounds(self, work: Work, treatment: Treatment) -> tuple[Ground, Ground]:
        """Return what putting smoothly rests on, and what healing does."""
        record = self._records.get(work.operation.name)
        return (
            ground_of_putting(work, treatment, record),
            ground_of_healing(work, treatment, record),
        )

    def span_of(self, ground: Ground, done: dt.date) -> DateRange:
        """Return the dates that follow from what a recovery rests on."""
        if isinstance(ground, Growth):
            return self._growing.span(ground.days, done)
        return ground.span

    def growth_stop(self, after: dt.date) -> dt.date | None:
        """Return the first day after another from which growth rests for a week."""
        return self._growing.stop_after(after)

    def growth_return(self, after: dt.date) -> dt.date | None:
        """Return the first day after another from which growth no longer rests."""
        return self._growing.return_after(after)

    def of_work(self, work: Work, green: str, treatment: Treatment) -> Recovery:
        """Return when one green comes back after one work.

        It does not putt smoothly before it is in play, nor is it healed before that.

        Parameters
        ----------
        work
            The work; it need not open the surface.
        green
            Key of the green.
        treatment
            What it did to the green.
        """
        done = treatment.done
        back = done + dt.timedelta(days=work.reopen_days)
        putting, healing = self.grounds(work, treatment)
        smooth = not_before(self.span_of(putting, done), DateRange.on(back))
        return self._with_winter(
            Recovery(
                green,
                done,
                DateRange.on(back),
                smooth,
                not_before(self.span_of(healing, done), smooth),
                grows_to_putt=isinstance(putting, Growth),
                grows_to_heal=isinstance(healing, Growth),
            )
        )

    def of_green(self, recoveries: Sequence[Recovery]) -> Recovery:
        """Return when a green comes back after several works.

        Holes and the dressing that fills them count as two: at worst they hinder one another,
        which brings October cores to the three to five weeks of common practice.
        """
        done = max(r.done for r in recoveries)
        back = max(r.back_in_play.early for r in recoveries)
        smooth = not_before(
            model.combine([r.putting_smoothly for r in recoveries], done), DateRange.on(back)
        )
        healed = not_before(model.combine([r.fully_healed for r in recoveries], done), smooth)
        return self._with_winter(
            Recovery(
                recoveries[0].green,
                done,
                DateRange.on(back),
                smooth,
                healed,
                grows_to_putt=any(r.grows_to_putt for r in recoveries),
                grows_to_heal=any(r.grows_to_heal for r in recoveries),
            )
        )

    def _with_winter(self, recovery: Recovery) -> Recovery:
        """Say when growth stops, where grass must grow and has not done so before then."""
        if not recovery.grows_to_heal:
            return recovery
        stop, late = self._growing.stop_after(recovery.done), recovery.fully_healed.late
        if stop is None or (late is not None and stop >= late):
            return recovery
        return replace(recovery, growth_stops=stop, growth_returns=self._growing.return_after(stop))


def not_before(span: DateRange, other: DateRange) -> DateRange:
    """Return a range moved so that none of its days comes before that of another."""
    return latest_of([span, other])


def latest_of(spans: Sequence[DateRange]) -> DateRange:
    """Return when the last of several has come, at best, as expected and at worst."""
    return DateRange(
        max(span.early for span in spans),
        max(span.expected for span in spans),
        model.latest(span.late for span in spans),
    )


def recover_works(
    works: Sequence[Work],
    needs: Sequence[SandOnGreen],
    recovery_model: RecoveryModel,
    others: Sequence[Work] = (),
) -> dict[str, tuple[Recovery, ...]]:
    """Return, by work, when each of its greens comes back; other works may fill their holes."""
    sand = {(need.work, need.green): need for need in needs}
    filled = filled_by((*others, *works), needs)
    found = {}
    for work in works:
        alike: dict[Treatment, Recovery] = {}
        recoveries = []
        for green in work.greens:
            key = work.id, green
            treatment = Treatment.of(work, green, sand.get(key), filled.get(key))
            recovery = alike.get(treatment)
            if recovery is None:
                recovery = alike[treatment] = recovery_model.of_work(work, green, treatment)
            recoveries.append(recovery.on(green))
        found[work.id] = tuple(recoveries)
    return found


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
    return tuple(recovery_model.of_green(found) for found in gathered.values())
