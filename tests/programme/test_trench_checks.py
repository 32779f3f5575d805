"""Trenches through channels, and turf that opens before it knits."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from notices.findings import Finding, Weight
from notices.programme.model import Programme
from notices.wording.operation_facts import operation_facts
from notices.wording.texts import operation_text
from tests.wording.small_plans import plan, programme, work

ProgrammeOf = Callable[..., Programme]

# In December a mean of 3 °C lets nothing grow.
COURSE = """\
course:
  greens: [{green: 1-9, area: 480 m2}]
  soil: {clay: 47 %, sand: 18 %}
  drains: a ditch
  monthly_mean_temperature: [3, 3, 6, 8, 12, 15, 17, 17, 14, 10, 6, 3]
works:
"""
CHANNELS = "  - {operation: mole ploughing, dates: 2026-06-01, settings: {depth: 300 mm, channel_diameter: 45 mm}}\n"


def trench(day: str, depth: str = "500 mm", more: str = "") -> str:
    return (
        f"  - {{operation: drain trenching, dates: {day}, greens: 4, "
        f"settings: {{depth: {depth}}}{more}}}\n"
    )


def found(programme: Programme, code: str) -> list[Finding]:
    return [finding for finding in programme.findings if finding.code == code]


@pytest.mark.parametrize(
    ("day", "depth", "cuts"),
    [
        ("2026-06-02", "500 mm", True),
        ("2026-11-09", "500 mm", True),
        ("2026-05-31", "500 mm", False),  # the drain comes first
        # A channel of 45 mm whose middle lies 300 mm down begins at 277.5 mm.
        ("2026-11-09", "280 mm", True),
        ("2026-11-09", "270 mm", False),
    ],
)
def test_a_trench_cuts_the_channels_that_are_there(
    programme_of: ProgrammeOf, day: str, depth: str, *, cuts: bool
) -> None:
    findings = found(
        programme_of(COURSE + CHANNELS + trench(day, depth)), "trench-through-channels"
    )
    assert [(f.weight, f.greens) for f in findings] == (
        [(Weight.THINK_AGAIN, ("4",))] if cuts else []
    )


def test_a_green_with_its_own_drain_may_go_without_channels(programme_of: ProgrammeOf) -> None:
    spared = CHANNELS.replace("2026-06-01,", '2026-06-01, greens: "1-3, 5-9",')
    both = programme_of(COURSE + spared + trench("2026-11-09"))
    assert not found(both, "trench-through-channels")
    assert not found(both, "green-left-out")
    # Without the drain nothing says why.
    assert [f.greens for f in found(programme_of(COURSE + spared), "green-left-out")] == [("4",)]


@pytest.mark.parametrize(
    ("day", "early"),
    [
        ("2026-11-09", True),  # opens two weeks later; nothing grows before spring
        ("2026-05-04", False),  # knits in summer
    ],
)
def test_turf_that_opens_before_it_knits(
    programme_of: ProgrammeOf, day: str, *, early: bool
) -> None:
    opened = programme_of(COURSE + trench(day, more=", reopen: 14 days later"))
    findings = found(opened, "turf-opens-before-it-knits")
    assert [(f.weight, f.greens) for f in findings] == (
        [(Weight.INFORMATION, ("4",))] if early else []
    )
    # 9 November and fourteen days.
    start = "the turf laid on green 4 (drain trenching) is played on from 2026-11-23, before"
    assert all(one.message.startswith(start) for one in findings)


@pytest.mark.parametrize("language", ["en-GB", "en-US"])
@pytest.mark.parametrize("name", ["drain trenching", "turfing"])
def test_words_do_not_promise_roots_before_the_green_opens(language: str, name: str) -> None:
    for day, early in (("2027-11-09", True), ("2027-05-03", False)):
        made = programme(plan(work(name, day, greens="1", reopen="14 days later")))
        (it,) = made.works
        text = operation_text(language, it.operation.slug, operation_facts(it, made))
        said = str(text.sections)
        assert ("opens before" in said) is early
        assert ("roots hold" in said) is (name == "turfing" and not early)
