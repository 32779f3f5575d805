"""From a file to a plan: every problem found at once, each with its place."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from notices.errors import PlanFault
from notices.findings import Finding, Place, Weight
from notices.operations import CATALOGUE
from notices.plan.days import all_days
from notices.plan.fixture_calendar import read_calendar
from notices.plan.green_list import GreenRef, parse_greens
from notices.plan.messages import Path as PlanPath
from notices.plan.messages import explain
from notices.plan.model import Fixture, Plan
from notices.plan.nearest import nearest
from notices.plan.settings import read_settings, write_settings
from notices.plan.yaml_file import PlanSource, read_yaml

DAYS_BEFORE, DAYS_AFTER = 60, 300
"""How far around the planned days a fixture calendar is read."""


@dataclass(frozen=True, slots=True)
class LoadedPlan:
    """A plan and the file that it came from."""

    plan: Plan
    source: PlanSource
    fixture_lines: tuple[int, ...] = ()
    """For each fixture, the line of the plan's list that it comes from."""

    def located(self, findings: Iterable[Finding]) -> tuple[Finding, ...]:
        """Return the findings with their places in the file filled in."""
        return tuple(
            finding if finding.place else finding.at(self.source.place(self._typed(finding.path)))
            for finding in findings
        )

    def _typed(self, path: PlanPath) -> PlanPath:
        """A fixture from a calendar stands where the calendar is named."""
        if path[:1] == ("fixtures",) and len(path) > 1 and isinstance(path[1], int):
            return ("fixtures", self.fixture_lines[path[1]], *path[2:])
        return path


def load_plan(path: Path) -> LoadedPlan:
    """Read and check a plan file.

    Raises
    ------
    PlanFault
        With every problem in the file.
    """
    source = read_yaml(path)
    # The cross-checks read what was typed, so that a fault elsewhere does not hide theirs.
    findings = [*_settings_at_fault(source), *_greens_at_fault(source), *_doubled_ids(source)]
    plan: Plan | None = None
    fixtures: list[tuple[int, Fixture]] = []
    try:
        plan = Plan.model_validate(source.data)
    except ValidationError as error:
        for details in error.errors(include_url=False):
            spot, message, suggestion = explain(details)
            unknown = details["type"] == "extra_forbidden"
            findings.append(_fault(source, spot, message, suggestion, key=unknown))
    if plan is not None and not findings:
        fixtures = _fixtures(plan, path, source, findings)
        plan = _with_settings(plan).model_copy(update={"fixtures": tuple(f for _, f in fixtures)})
    if plan is None or findings:
        raise PlanFault(sorted(dict.fromkeys(findings), key=_position))
    return LoadedPlan(plan, source, tuple(line for line, _ in fixtures))


def canonical(plan: Plan) -> dict[str, Any]:
    """Return the plan in canonical form: itself a plan that can be built.

    Empty parts are left out; quantities stand in the words in which one types them.
    """
    data: dict[str, Any] = plan.model_dump(mode="json", by_alias=True, exclude_none=True)
    for work, written in zip(plan.works, data["works"], strict=True):
        written["settings"] = write_settings(CATALOGUE[work.operation], work.settings)
    tidied = _without_empty(data)
    if not isinstance(tidied, dict):
        raise TypeError("a plan is a mapping")
    return tidied


def _without_empty(value: Any) -> Any:
    if isinstance(value, dict):
        return {k: _without_empty(v) for k, v in value.items() if v not in (None, "", [], {})}
    if isinstance(value, list):
        return [_without_empty(item) for item in value]
    return value


def _position(finding: Finding) -> tuple[int, int]:
    place = finding.place or Place("")
    return place.line or 0, place.column or 0


def _fault(
    source: PlanSource, path: PlanPath, message: str, suggestion: str = "", *, key: bool = False
) -> Finding:
    return Finding(
        code="plan-fault",
        weight=Weight.CANNOT_BUILD,
        message=message,
        suggestion=suggestion,
        path=path,
        place=source.place(path, key=key),
    )


def _typed_works(source: PlanSource) -> Iterator[tuple[int, Mapping[str, Any]]]:
    works = source.data.get("works")
    for index, work in enumerate(works if isinstance(works, list) else ()):
        if isinstance(work, dict):
            yield index, work


def _settings_at_fault(source: PlanSource) -> Iterator[Finding]:
    for index, work in _typed_works(source):
        operation = CATALOGUE.get(str(work.get("operation")).strip().lower())
        settings = work.get("settings")
        if operation is None or not isinstance(settings, dict):
            continue
        for problem in read_settings(operation, settings)[1]:
            yield _fault(
                source,
                ("works", index, "settings", problem.name),
                problem.message,
                problem.suggestion,
                key=problem.unknown_key,
            )


def _greens_at_fault(source: PlanSource) -> Iterator[Finding]:
    known = _typed_course(source)
    if not known:
        return
    for index, work in _typed_works(source):
        days: dict[str, PlanPath] = {}
        for path, greens in _typed_greens(index, work.get("greens")):
            for green in greens:
                word = str(green).casefold()
                if word not in known:
                    guess = None if isinstance(green, int) else nearest(word, known)
                    remedy = (
                        f'Did you mean "{known[guess]}"?'
                        if guess
                        else "Add it under course: greens, or take it out"
                    )
                    yield _fault(source, path, f"the course has no green {green}", remedy)
                elif days.get(word, path) != path:
                    yield _fault(
                        source,
                        path,
                        f"green {green} is named for two days",
                        "A work is done once on each green: keep one of them",
                    )
                days[word] = path


def _typed_course(source: PlanSource) -> dict[str, GreenRef]:
    """Return the course's greens by lower-case word; nothing where they are at fault."""
    course = source.data.get("course")
    lines = course.get("greens") if isinstance(course, dict) else None
    known: dict[str, GreenRef] = {}
    for line in lines if isinstance(lines, list) else ():
        try:
            greens = parse_greens(line["green"])
        except (ValueError, TypeError, KeyError):
            return {}
        known |= {str(green).casefold(): green for green in greens}
    return known


def _typed_greens(index: int, typed: Any) -> Iterator[tuple[PlanPath, tuple[GreenRef, ...]]]:
    path: PlanPath = ("works", index, "greens")
    lists = (
        [((*path, day), value) for day, value in typed.items()]
        if isinstance(typed, dict)
        else [(path, typed)]
    )
    for spot, value in lists:
        try:
            yield spot, parse_greens(value)
        except ValueError:
            continue  # the model says so


def _doubled_ids(source: PlanSource) -> Iterator[Finding]:
    seen: set[str] = set()
    for index, work in _typed_works(source):
        name = work.get("id")
        if not isinstance(name, str):
            continue
        if name in seen:
            yield _fault(
                source,
                ("works", index, "id"),
                f'the id "{name}" is already that of another work',
                "Give each work a name of its own",
            )
        seen.add(name)


def _with_settings(plan: Plan) -> Plan:
    works = (
        work.model_copy(
            update={"settings": read_settings(CATALOGUE[work.operation], work.settings)[0]}
        )
        for work in plan.works
    )
    return plan.model_copy(update={"works": tuple(works)})


def _fixtures(
    plan: Plan, path: Path, source: PlanSource, findings: list[Finding]
) -> list[tuple[int, Fixture]]:
    """Return the fixtures with the events of calendars, each with the line it comes from."""
    planned = [work.dates for work in plan.works] + [closure.dates for closure in plan.closures]
    days = [day for dates in planned for day in all_days(dates)]
    first = min(days) - dt.timedelta(days=DAYS_BEFORE)
    last = max(days) + dt.timedelta(days=DAYS_AFTER)
    zone = plan.club.place.timezone if plan.club.place else None
    fixtures: list[tuple[int, Fixture]] = []
    for index, fixture in enumerate(plan.fixtures):
        if fixture.calendar is None:
            fixtures.append((index, fixture))
            continue
        spot: PlanPath = ("fixtures", index, "calendar")
        # A plan from elsewhere must not make us read files outside its folder.
        if Path(fixture.calendar).name != fixture.calendar or fixture.calendar == "..":
            remedy = "Put the file into the plan's folder and write its name only"
            findings.append(_fault(source, spot, "a calendar must lie beside the plan", remedy))
            continue
        try:
            events = read_calendar(
                path.parent / fixture.calendar, first=first, last=last, zone=zone, template=fixture
            )
        except ValueError as error:
            findings.append(_fault(source, spot, str(error)))
        else:
            fixtures += ((index, event) for event in events)
    return fixtures
