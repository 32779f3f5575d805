"""The day's timetable: the textbook flow shop without a limit to people, a clock with one."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notices.agronomy.timetable import Break, Slot, Stage, end_of_day, timetable

Grid = list[list[float | None]]


def stages_of(*people: int) -> list[Stage]:
    return [Stage(f"machine {index}", count) for index, count in enumerate(people)]


def grids(times: st.SearchStrategy[float | None], most: int = 5) -> st.SearchStrategy[Grid]:
    return st.integers(1, 4).flatmap(
        lambda count: st.lists(st.lists(times, min_size=count, max_size=count), max_size=most)
    )


def spans(slots: tuple[Slot, ...]) -> list[tuple[int, int, float, float]]:
    return [(slot.green, slot.stage, slot.start, slot.finish) for slot in slots]


# Without a limit to people; tests/published/test_work_time.py has the textbook's two machines.

GRIDS = grids(st.none() | st.floats(0, 1e4), 8)


def makespan(minutes: Grid) -> float:
    """Work out by recurrence when the last machine leaves the last green of a flow shop.

    A machine starts on a green when it is free and the one before it has left that green; a green
    on which it has nothing to do it passes by without waiting.
    """
    left = [0.0] * len(minutes[0]) if minutes else []
    for green in minutes:
        ready = 0.0
        for machine, time in enumerate(green):
            if time is not None:
                ready = left[machine] = max(ready, left[machine]) + time
    return max(left, default=0.0)


def day_of(minutes: Grid) -> float:
    return end_of_day(timetable(minutes, stages_of(*[3] * (len(minutes[0]) if minutes else 0))))


@given(GRIDS)
def test_without_a_limit_to_people_it_is_the_flow_shop_to_the_last_bit(minutes: Grid) -> None:
    assert day_of(minutes) == makespan(minutes)


@given(GRIDS)
def test_no_sooner_than_the_busiest_machine_and_no_later_than_one_after_another(
    minutes: Grid,
) -> None:
    total = day_of(minutes)
    by_machine = [sum(time or 0 for time in times) for times in zip(*minutes, strict=True)]
    by_green = [sum(time or 0 for time in green) for green in minutes]
    assert total >= max(by_machine, default=0) - 1e-6
    assert total >= max(by_green, default=0) - 1e-6
    assert total <= sum(by_green) + 1e-6


@given(GRIDS, st.floats(0.1, 10))
def test_slower_machines_take_longer_in_proportion(minutes: Grid, factor: float) -> None:
    slower = [[None if time is None else time * factor for time in green] for green in minutes]
    assert day_of(slower) == pytest.approx(day_of(minutes) * factor)


@given(GRIDS)
def test_a_green_more_never_shortens_the_day(minutes: Grid) -> None:
    assert day_of(minutes[:-1]) <= day_of(minutes)


def test_a_machine_passes_by_a_green_that_it_has_nothing_to_do_on() -> None:
    # The second machine is only wanted on the second green, which the first leaves at once: it
    # need not wait for the first green.
    assert day_of([[100, None], [None, 50]]) == 100
    # With no time at all it would have to be there, and wait.
    assert day_of([[100, 0], [0, 50]]) == 150


@given(st.lists(st.tuples(st.floats(0, 500), st.floats(0, 500)), max_size=10))
def test_two_operations_follow_the_textbook_recurrence(pairs: list[tuple[float, float]]) -> None:
    # The first machine never waits; the second starts when both it and the first are done.
    first = second = 0.0
    for a, b in pairs:
        first += a
        second = max(first, second) + b
    slots = timetable(pairs, stages_of(1, 1))
    assert end_of_day(slots) == second


# A wait after the first of two machines is what mitten1959 calls a time lag (from memory): there a
# green may be begun on the second machine a start lag after it was begun on the first, and done
# there no sooner than a stop lag after it was done on the first. With times a and b and a wait w
# after the first machine the start lag is a + w, and the stop lag w + b.
LAGGED = st.lists(
    st.tuples(st.integers(0, 60), st.integers(0, 60)), min_size=1, max_size=5
).flatmap(lambda pairs: st.tuples(st.just(pairs), st.integers(0, 90)))


def with_a_wait(pairs: list[tuple[int, int]], wait: int) -> float:
    return end_of_day(timetable(pairs, [Stage("first", wait=wait), Stage("second")]))


@given(LAGGED)
def test_two_operations_with_a_wait_follow_the_recurrence_with_stop_lags(
    day: tuple[list[tuple[int, int]], int],
) -> None:
    pairs, wait = day
    first = second = 0
    for a, b in pairs:
        first += a
        # Straight on after the green before; and not before the stop lag is over.
        second = max(second + b, first + (wait + b))
    assert with_a_wait(pairs, wait) == second
    # The same as one sum: some green decides, up to which the first machine never waits and from
    # which the second never does.
    ways = (
        sum(a for a, _ in pairs[: k + 1]) + wait + sum(b for _, b in pairs[k:])
        for k in range(len(pairs))
    )
    assert with_a_wait(pairs, wait) == max(ways)


@given(LAGGED)
@settings(max_examples=30)
def test_the_best_order_with_a_wait_is_that_of_the_rule_for_time_lags(
    day: tuple[list[tuple[int, int]], int],
) -> None:
    # The rule of johnson1954 upon start lag and stop lag: those with the shorter start lag first,
    # the shortest at the head; then the others, the shortest stop lag at the end.
    pairs, wait = day
    lags = [(a + wait, wait + b, (a, b)) for a, b in pairs]
    head = sorted((lag for lag in lags if lag[0] <= lag[1]), key=lambda lag: lag[0])
    tail = sorted((lag for lag in lags if lag[0] > lag[1]), key=lambda lag: -lag[1])
    best = min(with_a_wait(list(order), wait) for order in permutations(pairs))
    assert with_a_wait([pair for _, _, pair in head + tail], wait) == best


def simulate(
    minutes: Grid,
    stages: list[Stage],
    people: int,
    start: int = 0,
    rest: tuple[int, int] = (0, 0),
) -> dict[tuple[int, int], tuple[int, int]]:
    """Let a clock run minute by minute; nothing here knows of events.

    In each minute those who are done go home first, then whoever may begin begins: green by
    green, and on each green stage by stage.
    """
    todo = {
        (g, o): int(time)
        for g, green in enumerate(minutes)
        for o, time in enumerate(green)
        if time is not None
    }
    left = dict(todo)
    begun: dict[tuple[int, int], int] = {}
    done: dict[tuple[int, int], int] = {}
    clock = start
    while len(done) < len(todo):
        resting = rest[0] <= clock < rest[1]
        if not resting:
            for g, o in sorted(todo):
                if (g, o) in begun:
                    continue
                at_it = [key for key in begun if key not in done]
                hands = people - sum(stages[stage].people for _, stage in at_it)
                taken = {stages[stage].machine for _, stage in at_it}
                own_turn = all((h, o) in done for h in range(g) if (h, o) in todo)
                entered = stages[o].beside or all(
                    (g, p) in done and clock >= done[g, p] + stages[p].wait
                    for p in range(o)
                    if (g, p) in todo
                )
                if (
                    own_turn
                    and entered
                    and clock >= stages[o].earliest
                    and hands >= stages[o].people
                    and stages[o].machine not in taken
                ):
                    begun[g, o] = clock
            for key in begun:
                if key not in done:
                    left[key] -= 1
                    if left[key] == 0:
                        done[key] = clock + 1
        clock += 1
    return {key: (begun[key], done[key]) for key in todo}


@st.composite
def days(draw: st.DrawFn) -> tuple[Grid, list[Stage], int, int, tuple[int, int]]:
    count = draw(st.integers(1, 4))
    time: st.SearchStrategy[float | None] = st.none() | st.integers(1, 6)
    row = st.lists(time, min_size=count, max_size=count)
    minutes: Grid = draw(st.lists(row, max_size=5))
    stages = [
        Stage(
            draw(st.sampled_from([f"own {index}", "shared"])),
            draw(st.integers(0, 4)),
            draw(st.sampled_from([0, 0, 7, 12])),
            beside=draw(st.sampled_from([False, False, True])),
            wait=draw(st.sampled_from([0, 0, 3, 11])),
        )
        for index in range(count)
    ]
    people = draw(st.integers(max(stage.people for stage in stages), 9))
    begin = draw(st.integers(0, 20))
    return (
        minutes,
        stages,
        people,
        draw(st.integers(0, 9)),
        (begin, begin + draw(st.integers(0, 5))),
    )


@given(days())
def test_it_agrees_with_a_clock(
    day: tuple[Grid, list[Stage], int, int, tuple[int, int]],
) -> None:
    minutes, stages, people, start, rest = day
    slots = timetable(minutes, stages, people, start, [rest])
    found = {(slot.green, slot.stage): (slot.start, slot.finish) for slot in slots}
    assert found == simulate(minutes, stages, people, start, rest)


@given(days())
def test_people_without_limit_are_never_slower(
    day: tuple[Grid, list[Stage], int, int, tuple[int, int]],
) -> None:
    # No more is true: by graham1969 one person more may end a day later.
    minutes, stages, people, start, rest = day
    own = [replace(stage, machine=f"own {o}") for o, stage in enumerate(stages)]
    few = timetable(minutes, own, people, start, [rest])
    many = timetable(minutes, own, None, start, [rest])
    assert end_of_day(many) <= end_of_day(few)


@given(days())
def test_nobody_is_in_two_places(
    day: tuple[Grid, list[Stage], int, int, tuple[int, int]],
) -> None:
    minutes, stages, people, start, rest = day
    slots = timetable(minutes, stages, people, start, [rest])
    for slot in slots:
        at_once = [s for s in slots if s.start <= slot.start < s.finish]
        assert sum(stages[s.stage].people for s in at_once) <= people
        machines = [stages[s.stage].machine for s in at_once]
        assert len(set(machines)) == len(machines)
        assert slot.start >= max(start, stages[slot.stage].earliest)
        assert not rest[0] <= slot.start < rest[1]


def test_by_hand() -> None:
    # Three people; the first machine takes two of them, the second two as well, so that they never
    # work at once. Green 1: 10 then 4; green 2: 10 then 4. At 10 both may go on: the earliest green
    # first, so the second machine is on green 1 from 10 to 14 and the first waits for its people.
    slots = timetable([[10, 4], [10, 4]], stages_of(2, 2), people=3)
    assert spans(slots) == [(0, 0, 0, 10), (0, 1, 10, 14), (1, 0, 14, 24), (1, 1, 24, 28)]
    # With a fourth person the first machine goes straight on: 10, 20, and the second ends at 24.
    slots = timetable([[10, 4], [10, 4]], stages_of(2, 2), people=4)
    assert spans(slots) == [(0, 0, 0, 10), (0, 1, 10, 14), (1, 0, 10, 20), (1, 1, 20, 24)]


def test_who_fits_is_not_kept_waiting_by_who_does_not() -> None:
    # Two machines side by side. At 0 the first starts on green 1 with two of three people; the
    # second, beside the green, takes two and is passed over; the third takes one and starts.
    stages = [Stage("a", 2), Stage("b", 2, beside=True), Stage("c", 1, beside=True)]
    slots = timetable([[5, 5, 5]], stages, people=3)
    assert spans(slots) == [(0, 0, 0, 5), (0, 2, 0, 5), (0, 1, 5, 10)]


def test_what_is_done_beside_the_green_waits_for_nothing_but_is_waited_for() -> None:
    # Sand is hauled while the green is cored, and must be there before it is spread.
    stages = [Stage("coring"), Stage("hauling", beside=True), Stage("spreading")]
    assert spans(timetable([[10, 30, 5]], stages)) == [
        (0, 0, 0, 10),
        (0, 1, 0, 30),
        (0, 2, 30, 35),
    ]


@pytest.mark.parametrize(
    ("rest", "expected"),
    [
        ((5, 8), [(0, 0, 0, 13), (0, 1, 13, 15)]),  # in the midst of the first: 3 later
        ((10, 13), [(0, 0, 0, 10), (0, 1, 13, 15)]),  # just between: only the second waits
        ((12, 15), [(0, 0, 0, 10), (0, 1, 10, 12)]),  # after the last
        ((0, 3), [(0, 0, 3, 13), (0, 1, 13, 15)]),  # at once
    ],
)
def test_a_break_stops_everybody(
    rest: Break, expected: list[tuple[int, int, float, float]]
) -> None:
    assert spans(timetable([[10, 2]], stages_of(1, 1), 2, 0, [rest])) == expected


def test_two_breaks_stop_it_twice() -> None:
    (slot,) = timetable([[10]], stages_of(1), 1, 100, [(90, 101), (105, 107), (109, 110)])
    # 101 to 105 are 4, 107 to 109 are 2, and 4 are left from 110.
    assert (slot.start, slot.finish) == (101, 114)


def test_sand_waits_for_the_dew() -> None:
    stages = [Stage("coring"), Stage("sand", earliest=540)]
    slots = timetable([[30, 10], [30, 10]], stages, 9, 420)
    # Cored at 07:30 and 08:00; sand at 09:00 and straight on.
    assert [slot.start for slot in slots] == [420, 450, 540, 550]
    assert end_of_day(slots) == 560


def test_sand_dries_before_it_is_brushed_while_the_spreader_goes_on() -> None:
    stages = [Stage("spreader", wait=60), Stage("brush")]
    # Spread until 0:20 and 0:40; brushed from 1:20, and from 1:40.
    slots = timetable([[20, 10], [20, 10]], stages)
    assert spans(slots) == [(0, 0, 0, 20), (1, 0, 20, 40), (0, 1, 80, 90), (1, 1, 100, 110)]


@pytest.mark.parametrize(
    ("rest", "brushed"),
    [
        ((30, 60), 80),  # while it dries: it dries on
        ((70, 100), 100),  # dry at 80, and everybody is at rest
        ((10, 40), 110),  # in the midst of spreading: done at 50, dry an hour later
    ],
)
def test_sand_dries_while_everybody_rests(rest: Break, brushed: float) -> None:
    slots = timetable([[20, 10]], [Stage("spreader", wait=60), Stage("brush")], 1, 0, [rest])
    assert slots[-1].start == brushed


def test_nothing_waits_after_the_last_stage() -> None:
    assert end_of_day(timetable([[20]], [Stage("spreader", wait=60)])) == 20


def test_one_machine_for_two_works_takes_turns() -> None:
    both = [Stage("roller"), Stage("roller")]
    slots = timetable([[10, None], [None, 10]], both)
    assert spans(slots) == [(0, 0, 0, 10), (1, 1, 10, 20)]


def test_nothing_to_do_ends_when_it_starts() -> None:
    assert timetable([], [], 3, 420) == ()
    assert timetable([[None]], stages_of(9), 3, 420) == ()
    assert end_of_day((), 420) == 420


@pytest.mark.parametrize(
    ("minutes", "people", "start", "breaks"),
    [
        ([[-1.0]], 1, 0.0, []),
        ([[math.nan]], 1, 0.0, []),
        ([[math.inf]], 1, 0.0, []),
        ([[1.0, 2.0]], 1, 0.0, []),
        ([[1.0]], 0, 0.0, []),
        ([[1.0]], 1, -1.0, []),
        ([[1.0]], 1, 0.0, [(5.0, 4.0)]),
        ([[1.0]], 1, 0.0, [(5.0, 8.0), (7.0, 9.0)]),
        ([[1.0]], 1, 0.0, [(5.0, math.inf)]),
        ([[1.0]], 1, 0.0, [(math.nan, 6.0)]),
    ],
)
def test_what_is_no_day_is_refused(
    minutes: Grid, people: int, start: float, breaks: list[Break]
) -> None:
    with pytest.raises(ValueError, match=r"must be|must have|takes|break"):
        timetable(minutes, stages_of(1), people, start, breaks)


@pytest.mark.parametrize(
    "stage", [Stage("a", -1), Stage("a", earliest=math.nan), Stage("a", wait=-1)]
)
def test_a_stage_is_one_of_people(stage: Stage) -> None:
    with pytest.raises(ValueError, match="must be"):
        timetable([[1]], [stage])
