"""Fixtures on days of a closure or of a raised cut, which no green's recovery shows.

Messages and suggestions end without a full stop; `Finding` sets it.
"""

from __future__ import annotations

from collections.abc import Iterator

from notices.findings import Finding, Weight
from notices.plan.model import Plan
from notices.programme.fixtures import shut_for
from notices.programme.model import Programme
from notices.programme.raised_cut import mown_higher_on


def fixture_with_something_shut(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Golf is planned while tees or a fairway are closed; with something in their stead, it can be."""
    for fixture in programme.fixtures:
        shut = shut_for(programme, fixture)
        if not shut or fixture.closed_greens:
            continue
        fine = fixture.goes_ahead or all(c.instead for c in shut)
        # With "the closure of", what is closed may be one thing or many.
        closed = " and of ".join(
            f"{c.what}, with {c.instead.rstrip('.')} instead," if c.instead else c.what
            for c in shut
        ).rstrip(",")
        yield Finding(
            "fixture-and-closure",
            Weight.INFORMATION if fine else Weight.THINK_AGAIN,
            f"{fixture.name} on {fixture.date} is planned during the closure of {closed}",
            ""
            if fine
            else "Move the closure or the fixture, write what is used instead, or accept the finding "
            "with a reason",
            ("fixtures", fixture.plan_index),
            dates=(fixture.date,),
        )


def fixture_on_higher_cut(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """The cut is up already for a work that comes later: nothing is wrong, and putts are slower."""
    for fixture in programme.fixtures:
        if fixture.closed_greens or fixture.recovering_greens:
            continue
        higher = tuple(
            green
            for green in mown_higher_on(programme, fixture.date)
            if fixture.meets(programme.greens[green])
        )
        if higher:
            yield Finding(
                "fixture-on-higher-cut",
                Weight.INFORMATION,
                f"{fixture.name} on {fixture.date} is played while the height of cut is raised "
                "ahead of the work, so putts are slower",
                "",
                ("fixtures", fixture.plan_index),
                greens=higher,
                dates=(fixture.date,),
            )


FIXTURE_CHECKS = (fixture_with_something_shut, fixture_on_higher_cut)
