"""Photographs of the club and the works that they belong to."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from notices.findings import Finding, Weight
from notices.plan.model import Photograph as Planned
from notices.plan.model import Plan
from notices.programme.model import Photograph, Programme, Work


def photographs(planned: Sequence[Planned], works: Sequence[Work]) -> tuple[Photograph, ...]:
    """Return the photographs, each with the works that it belongs to."""
    return tuple(
        Photograph(
            data=one.file,
            shows=one.shows,
            caption=one.caption or "",
            works=tuple(_named(one, works)),
        )
        for one in planned
        if not one.work or any(_named(one, works))
    )


def photograph_of_nothing(programme: Programme, plan: Plan) -> Iterator[Finding]:
    """A photograph of work that is not planned is shown nowhere."""
    for index, one in enumerate(plan.photographs):
        if one.work and not any(_named(one, programme.works)):
            yield Finding(
                "photograph-of-nothing",
                Weight.THINK_AGAIN,
                f"this photograph belongs to {one.work}, which is not planned, so nobody sees it",
                "Name a work that is planned, or leave the name out",
                ("photographs", index, "work"),
            )


def _named(one: Planned, works: Sequence[Work]) -> Iterator[str]:
    return (work.id for work in works if one.work in (work.id, work.operation.name))
