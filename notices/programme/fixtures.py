"""The fixtures of a plan, what is decided about them, and what the greens are like on their days."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import replace

from notices.plan.model import Fixture as WrittenFixture
from notices.plan.model import Plan
from notices.programme.hours import AWAY
from notices.programme.model import Closure, Decided, Fixture, Green, PlayStatus, Programme
from notices.programme.model.fixtures import AWAY_MATCH


def fixtures_of(
    plan: Plan,
    greens: Mapping[str, Green],
    statuses: Mapping[dt.date, Mapping[str, PlayStatus]],
) -> list[Fixture]:
    """Return the fixtures by date, each with the greens that it meets away or recovering."""
    fixtures = []
    for index, written in enumerate(plan.fixtures):
        if written.date is None or written.name is None:
            continue
        fixture = Fixture(
            name=written.name,
            date=written.moved_to or written.date,
            kind=written.kind,
            plan_index=index,
            course=written.course or "",
            decided=_decided(written),
            moved_from=written.date if written.moved_to else None,
        )
        fixtures.append(met_by(fixture, greens, statuses.get(fixture.date, {})))
    return sorted(fixtures, key=lambda fixture: (fixture.date, fixture.name))


def met_by(
    fixture: Fixture, greens: Mapping[str, Green], on_day: Mapping[str, PlayStatus]
) -> Fixture:
    """Return a fixture with the greens that it meets on its day."""
    met = {green: s for green, s in on_day.items() if fixture.meets(greens[green])}
    return replace(
        fixture,
        closed_greens=tuple(g for g, s in met.items() if s in AWAY),
        recovering_greens=tuple(g for g, s in met.items() if s is PlayStatus.RECOVERING),
    )


def shut_for(programme: Programme, fixture: Fixture) -> tuple[Closure, ...]:
    """Return what the club closes of the holes of a fixture on its day: tees, a fairway, the hole.

    Greens out of play stand in the fixture, and what is closed beside the holes hinders no round.
    """
    if not fixture.is_on or fixture.kind == AWAY_MATCH:
        return ()
    return tuple(
        closed
        for closed in programme.closures
        if closed.part not in ("", "greens")
        and fixture.date in closed.dates
        and _on_its_course(closed, fixture)
    )


def _on_its_course(closed: Closure, fixture: Fixture) -> bool:
    courses = {course.casefold() for course, _ in closed.holes} | {
        course.casefold() for course in closed.courses
    }
    return not fixture.course or not courses or fixture.course.casefold() in courses


def _decided(written: WrittenFixture) -> Decided | None:
    if written.moved_to is not None:
        return Decided.MOVED
    if written.decision == "canceled":  # as it is spelt in American English
        return Decided.CANCELLED
    return Decided(written.decision) if written.decision else None
