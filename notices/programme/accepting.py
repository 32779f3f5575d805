"""Which finding a club lives with, and why."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from notices.findings import Finding, Weight
from notices.plan.model import Accepted, Plan
from notices.programme.model import Programme

IDLE = "nothing-to-accept"


AcceptedFinding = tuple[Finding, str, str]
"""What is accepted, by whom, and why."""


def weighed(
    findings: Iterable[Finding], programme: Programme, plan: Plan
) -> tuple[tuple[Finding, ...], tuple[AcceptedFinding, ...], Mapping[int, Sequence[Finding]]]:
    """Return the findings that are open, those that are accepted, and what each entry accepts.

    Entries of the plan are counted from 0.
    """
    open_findings, accepted = [], []
    used: dict[int, list[Finding]] = {}
    entries = {id(one): index for index, one in enumerate(plan.accepted)}
    for finding in findings:
        if (reason := reason_to_accept(finding, programme, plan)) is not None:
            accepted.append((finding, reason.by, reason.why))
            used.setdefault(entries[id(reason)], []).append(finding)
        else:
            open_findings.append(finding)
    return tuple(open_findings), tuple(accepted), used


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


def doubtful_acceptances(
    plan: Plan, programme: Programme, used: Mapping[int, Sequence[Finding]]
) -> Iterator[Finding]:
    """Yield entries by which nothing is accepted, or more than whoever gave the reason may think.

    Parameters
    ----------
    plan
        The plan.
    programme
        The programme, which knows what findings are about.
    used
        What is accepted by each entry, counted from 0, by which something is.
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
        elif len(met := _fixtures(used[index], programme)) > 1 and not one.about:
            yield Finding(
                "accepted-for-several",
                Weight.INFORMATION,
                f"this reason is taken for {', '.join(met[:-1])} and {met[-1]}",
                "Where it is meant for one of them, name it with about:",
                ("accepted", index),
            )


def _fixtures(findings: Sequence[Finding], programme: Programme) -> list[str]:
    """Name the fixtures that findings are about; each is played by a decision of its own."""
    paths = {found.path for found in findings}
    return [
        f"{fixture.name} on {fixture.date}"
        for fixture in programme.fixtures
        if ("fixtures", fixture.plan_index) in paths
    ]


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
