"""A day's work on greens, to the minute: machines and people that follow one another.

The day is a permutation flow shop [johnson1954]_ with people: every green goes through the
stages in one order, and every stage through the greens. A stage is one operation, or a task
beside it such as clearing cores. It starts on a green as soon as

* its machine has left the green before,
* every earlier stage has left this green, and the green has waited as long as it must after it:
  sand dries before it is brushed (a stage *beside* the green waits for none of that),
* it may start at all: sand waits until the dew is off,
* nobody is at rest, and
* enough people are free.

Whoever can start does so. Where there are not enough people for all that could start, the
earliest green goes first, and on one green the earlier stage; what does not fit is passed over
until people are free. Nobody is called away from work that has begun. This is the list scheduling
of [graham1969]_: a person more, or a quicker machine, can now and then end such a day later.
Without a limit to the people none of this bites, and the day ends as early as it can. With two
stages a wait is a time lag of [mitten1959]_: what leaves the first one is free, only the green is
not.
"""

from __future__ import annotations

import heapq
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from notices.agronomy.limits import non_negative

Minutes = Sequence[Sequence[float | None]]
"""For each green, in the order in which they are done, the time of each stage [min]; None where
it is not done."""

Break = tuple[float, float]
"""From when to when everybody rests [min from midnight]."""


_A_MOMENT = 1e-9
"""What sums of minutes may be out by [min]: nobody waits an hour's rest for a rounding error."""


@dataclass(frozen=True, slots=True)
class Stage:
    """One operation, or a task beside it, that goes from green to green."""

    machine: str
    """What there is one of; stages that name the same one take turns."""
    people: int = 1
    """How many it takes."""
    earliest: float = 0.0
    """Before this it does not start [min from midnight]."""
    beside: bool = False
    """Whether it is done beside the green, and need not wait for what is done on it."""
    wait: float = 0.0
    """How long a green is left alone after it, on the clock: a rest is no rest from drying [min]."""


class Slot(NamedTuple):
    """When one stage is on one green."""

    green: int
    stage: int
    start: float
    """[min from midnight]"""
    finish: float
    """[min from midnight]"""


def timetable(
    minutes: Minutes,
    stages: Sequence[Stage],
    people: int | None = None,
    start: float = 0.0,
    breaks: Sequence[Break] = (),
) -> tuple[Slot, ...]:
    r"""Return when each stage is on each green.

    .. math:: s_{g,o} = \min \{ t \ge \max(f_{g-1,o}, f_{g,<o} + w_{<o}, e_o) :
        \text{people free at } t \ge n_o \}, \quad f_{g,o} = s_{g,o} + p_{g,o}

    A break stops all work, which goes on after it; nothing starts within one. It goes from event
    to event, so that it takes no longer for a long day than for a busy one.

    Parameters
    ----------
    minutes : sequence of sequences of float or None
        For each green, in the order in which they are done, the time of each stage, 0 or more;
        None where it is not done. [min]
    stages : sequence of Stage
        In the order in which a green goes through them.
    people : int, optional
        People present, at least as many as any stage that is done takes; without it there are
        always enough.
    start : float
        When work starts, 0 or more. [min from midnight]
    breaks : sequence of (float, float)
        From when to when everybody rests, in their order, apart from one another.
        [min from midnight]

    Returns
    -------
    tuple of Slot
        In the order in which they start; at one time, by green and by stage.

    Raises
    ------
    ValueError
        If a time is negative or not finite, greens differ in their stages, breaks overlap, or a
        stage takes more people than there are.

    References
    ----------
    [johnson1954]_, [graham1969]_, [mitten1959]_
    """
    _check(minutes, stages, people)
    clock = _Clock(non_negative("start", start), breaks)
    day = _Day(minutes, stages, people, clock)
    # Starts at one time are found green by green already, but a break may lie between.
    return tuple(sorted(day.run(), key=lambda slot: (slot.start, slot.green, slot.stage)))


def end_of_day(slots: Sequence[Slot], start: float = 0.0) -> float:
    """Return when the last stage leaves the last green, or the start where nothing is done.

    Parameters
    ----------
    slots : sequence of Slot
        What `timetable` returned.
    start : float
        When work starts. [min from midnight]

    Returns
    -------
    float
        End of the last slot. [min from midnight]

    References
    ----------
    [johnson1954]_
    """
    return max((slot.finish for slot in slots), default=start)


def _check(minutes: Minutes, stages: Sequence[Stage], people: int | None) -> None:
    for green in minutes:
        if len(green) != len(stages):
            raise ValueError("Every green must have a time for each stage, or None.")
        for stage, time in zip(stages, green, strict=True):
            if time is None:
                continue
            non_negative("minutes", time)
            if people is not None and stage.people > people:
                raise ValueError(
                    f"{stage.machine} takes {stage.people} people, and there are {people}."
                )
    for stage in stages:
        non_negative("earliest", stage.earliest)
        non_negative("wait", stage.wait)
        non_negative("people", stage.people)


class _Clock:
    """Minutes at work beside those on the clock: the same, but breaks take none."""

    def __init__(self, start: float, breaks: Sequence[Break]) -> None:
        self.start = start
        self.breaks: list[Break] = []
        last = 0.0
        for begin, end in breaks:
            if not last <= begin <= end < float("inf"):
                raise ValueError(f"A break from {begin} to {end} is none, or meets the one before.")
            last = end
            if end > max(begin, start):
                self.breaks.append((max(begin, start), end))

    def at_work(self, time: float) -> float:
        """Return a time on the clock in minutes at work; all of a break is one such minute."""
        rested = 0.0
        for begin, end in self.breaks:
            if time > begin:
                rested += min(time, end) - begin
        return time - rested

    def starting(self, worked: float) -> float:
        """Return when work begins that may begin after so many minutes at work."""
        for begin, end in self.breaks:
            if worked >= begin - _A_MOMENT:
                worked += end - begin
        return worked

    def finishing(self, worked: float) -> float:
        """Return when work is done that takes until so many minutes at work."""
        for begin, end in self.breaks:
            if worked > begin + _A_MOMENT:
                worked += end - begin
        return worked


class _Day:
    """The state of one day as its events pass."""

    def __init__(
        self, minutes: Minutes, stages: Sequence[Stage], people: int | None, clock: _Clock
    ) -> None:
        self.minutes, self.stages, self.clock = minutes, stages, clock
        self.free = float("inf") if people is None else float(people)
        self.now = clock.at_work(clock.start)
        self.earliest = [clock.at_work(stage.earliest) for stage in stages]
        self.machines = [stage.machine for stage in stages]
        # The greens that each stage still has before it, the next one last; none has none.
        self.waiting = {
            o: greens
            for o in range(len(stages))
            if (greens := [g for g in range(len(minutes))[::-1] if minutes[g][o] is not None])
        }
        self.running: list[tuple[float, int, int]] = []
        """When each stage leaves its green, with its people and its machine."""
        self.leaving: list[tuple[float, int, int]] = []
        """When each green may be gone on again."""
        self.busy: set[str] = set()
        self.finished: list[set[int]] = [set() for _ in minutes]
        self.first_open = [self._first_open(g, 0) for g in range(len(minutes))]

    def run(self) -> list[Slot]:
        slots: list[Slot] = []
        while True:
            self._leave()
            slots += self._begin()
            later = [self.earliest[o] for o in self.waiting if self.earliest[o] > self.now]
            later += [soonest[0][0] for soonest in (self.running, self.leaving) if soonest]
            if not later:
                return slots
            self.now = min(later)

    def _leave(self) -> None:
        """Let everything go that is done by now."""
        while self.running and self.running[0][0] <= self.now:
            _, _, stage = heapq.heappop(self.running)
            self.free += self.stages[stage].people
            self.busy.discard(self.stages[stage].machine)
        while self.leaving and self.leaving[0][0] <= self.now:
            _, green, stage = heapq.heappop(self.leaving)
            self.finished[green].add(stage)
            self.first_open[green] = self._first_open(green, self.first_open[green])

    def _begin(self) -> list[Slot]:
        """Start whatever can start now, the earliest green first."""
        ready = [
            (greens[-1], o)
            for o, greens in self.waiting.items()
            if self.machines[o] not in self.busy
            and self.earliest[o] <= self.now
            and (self.first_open[greens[-1]] >= o or self.stages[o].beside)
        ]
        ready.sort()
        slots = []
        for green, o in ready:
            stage, time = self.stages[o], self.minutes[green][o]
            if stage.people > self.free or stage.machine in self.busy or time is None:
                continue
            self.waiting[o].pop()
            if not self.waiting[o]:
                del self.waiting[o]
            self.free -= stage.people
            self.busy.add(stage.machine)
            begins = self.clock.starting(self.now)
            ends = max(begins, self.clock.finishing(self.now + time))
            done = self.now + time
            free = self.clock.at_work(ends + stage.wait) if stage.wait else done
            heapq.heappush(self.running, (done, green, o))
            heapq.heappush(self.leaving, (max(done, free), green, o))
            slots.append(Slot(green, o, begins, ends))
        return slots

    def _first_open(self, green: int, stage: int) -> int:
        """Return the first stage, from this one on, that has still to be done on a green."""
        times, done = self.minutes[green], self.finished[green]
        while stage < len(times) and (times[stage] is None or stage in done):
            stage += 1
        return stage
