"""Which finding a club lives with, and why."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator
from dataclasses import replace

from notices.findings import Finding, Weight
from notices.plan.model import Accepted, Plan
from notices.programme.model import Programme

IDLE = "nothing-to-accept"


AcceptedFinding = tuple[Finding, str, str]
"""What is accepted, by whom, and why."""


def weighed(
    findings: Iterable[Finding], programme: Programme, plan: Plan
) -> tuple[tuple[Finding, ...], tuple[AcceptedFinding, ...], frozenset[int]]:
    """Return the findings that are open, those that are accepted, and by which entries.

    Entries of the plan are counted from 0.
    """
    open_findings, accepted, used = [], [], set()
    entries = {id(one): index for index, one in enumerate(plan.accepted)}
    for finding in findings:
        if (reason := reason_to_accept(finding, programme, plan)) is not None:
            accepted.append((finding, reason.by, reason.why))
            used.add(entries[id(reason)])
        else:
            open_findings.append(finding)
    return tuple(open_findings), tuple(accepted), frozenset(used)


def reason_to_accept(finding: Finding, programme: Programme, plan: Plan) -> Accepted | None:
    """Return what the plan says of living with a finding; None where it says nothing.

    An entry that names the work or the fixture counts before one that stands for all.
    """
    if finding.weight is Weight.CANNOT_BUILD:
        return None  # with what stops a build nobody can live
    of_code = [one for one in plan.accepted if one.finding == finding.code]
    if not of_code:
        return None
    names = names_of(finding, programme)
    about = [
        one for one in of_code if one.about and " ".join(one.about.split()).casefold() in names
    ]
    for_all = [one for one in of_code if not one.about]
    return next(iter([*about, *reversed(for_all)]), None)


def with_more(programme: Programme, plan: Plan, findings: Iterable[Finding]) -> Programme:
    """Return a programme with findings that come up once it is compared with another."""
    open_findings, accepted, used = weighed(findings, programme, plan)
    idle = {("accepted", index) for index in used}
    known = (f for f in programme.findings if f.code != IDLE or f.path not in idle)
    return replace(
        programme,
        findings=(*known, *open_findings),
        accepted=(*programme.accepted, *accepted),
    )


def idle_acceptances(plan: Plan, used: Container[int]) -> Iterator[Finding]:
    """Yield the entries by which nothing is accepted: the finding is gone, or misspelt.

    Parameters
    ----------
    plan
        The plan.
    used
        Those entries, counted from 0, by which something is.
    """
    for index, one in enumerate(plan.accepted):
        if index not in used:
            of = f" of {one.about}" if one.about else ""
            yield Finding(
                IDLE,
                Weight.INFORMATION,
                f"there is no finding {one.finding}{of}, so nothing is accepted here",
                "Take it out, or correct its words",
                ("accepted", index),
            )


def names_of(finding: Finding, programme: Programme) -> set[str]:
    """Return the names by which a plan may call what a finding is about, in small letters."""
    names = {
        name.casefold()
        for work in programme.works
        if work.id == finding.work
        for name in (work.id, work.operation.name)
    }
    match finding.path:
        case ("fixtures", index, *_):
            names |= {f.name.casefold() for f in programme.fixtures if f.plan_index == index}
    return names
