"""Drains and turf: trenches that cut channels drawn before them, turf that opens before it knits.

Messages and suggestions end without a full stop; `Finding` sets it.
"""

from __future__ import annotations

from collections.abc import Iterator

from notices.agronomy import moles
from notices.findings import Finding, Weight
from notices.operations import Opening
from notices.plan.model import Plan
from notices.programme.green_names import plan_greens
from notices.programme.model import Programme, Work

LAYS_TURF = frozenset({Opening.TRENCHES, Opening.BARE})


def trench_through_channels(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """A channel runs out into a drain that is there: a trench dug later cuts it (common practice)."""
    for trench in programme.works:
        if trench.operation.opening is not Opening.TRENCHES:
            continue
        for channels in programme.works:
            greens = _cut(trench, channels)
            if greens:
                first = min(channels.days_on(green)[0] for green in greens)
                yield Finding(
                    "trench-through-channels",
                    Weight.THINK_AGAIN,
                    f"{trench.operation.name} on {trench.dates[0]} cuts through the channels that "
                    f"{channels.operation.name} draws on {first} on {plan_greens(programme.greens, greens)}: the drain comes "
                    "first, and the channels are then drawn out of it (common practice)",
                    f"Dig the drain first, or leave {'it' if len(greens) == 1 else 'them'} out of "
                    f"{channels.operation.name} until the drain is there",
                    ("works", trench.plan_index, "dates"),
                    work=trench.id,
                    greens=greens,
                    dates=trench.dates,
                )


def _cut(trench: Work, channels: Work) -> tuple[str, ...]:
    """Return the greens on which a trench cuts channels that were drawn on an earlier day."""
    if channels.operation.opening is not Opening.CHANNELS:
        return ()
    ploughed = channels.settings
    top = moles.channel_top_mm(ploughed.number("depth"), ploughed.number("channel_diameter"))
    if trench.settings.number("depth") <= top:
        return ()
    return tuple(
        green
        for green in trench.greens
        if green in channels.greens and channels.days_on(green)[0] < trench.days_on(green)[0]
    )


def turf_opens_before_it_knits(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Golfers walk on turf that does not knit before spring: nobody should be surprised."""
    for work in programme.works:
        if work.operation.opening not in LAYS_TURF:
            continue
        loose = [
            recovery for recovery in programme.recoveries[work.id] if recovery.opens_before_growth
        ]
        if loose:
            opens = min(recovery.back_in_play.early for recovery in loose)
            stops = min(r.growth_stops for r in loose if r.growth_stops)
            knits = max(recovery.putting_smoothly.early for recovery in loose)
            greens = tuple(recovery.green for recovery in loose)
            yield Finding(
                "turf-opens-before-it-knits",
                Weight.INFORMATION,
                f"the turf laid on {plan_greens(programme.greens, greens)} ({work.operation.name}) "
                f"is played on from {opens}, before it has knitted: growth stops about {stops}, and it knits by about {knits} at the "
                "earliest (judgement)",
                "",
                ("works", work.plan_index, "reopen"),
                work=work.id,
                greens=greens,
                dates=(opens,),
            )


TRENCH_CHECKS = (trench_through_channels, turf_opens_before_it_knits)
