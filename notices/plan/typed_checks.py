"""Checks on the plan as typed, across its parts.

They read what stands in the file, not the finished plan, so that a fault in one place does not
hide theirs in another: a person is told everything at once.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from notices.findings import Finding, Weight
from notices.operations import Operation
from notices.plan.club_greens import ClubGreens, format_hole, read_lines
from notices.plan.green_choice import day_lines
from notices.plan.green_list import GreenRef, parse_greens
from notices.plan.messages import Path, did_you_mean, listed
from notices.plan.nearest import quoted
from notices.plan.own_operations import whole_catalogue
from notices.plan.places import read_place
from notices.plan.refusal import Refusal
from notices.plan.settings import read_settings
from notices.plan.source import PlanSource


def fault(
    source: PlanSource, path: Path, message: str, suggestion: str = "", *, key: bool = False
) -> Finding:
    """Return a finding that stops the build, with its place; ``key`` points at the key itself."""
    return Finding(
        code="plan-fault",
        weight=Weight.CANNOT_BUILD,
        message=message,
        suggestion=suggestion,
        path=path,
        place=source.place(path, key=key),
    )


def tidy(source: PlanSource) -> tuple[PlanSource, list[Finding]]:
    """Return the source without its empty keys, and a finding for each of them.

    A decimal that does not look as it was typed becomes the text that was typed, so that minute
    14.10 does not become minute 14.1; whoever wants a number reads it from that text.
    """
    findings: list[Finding] = []
    return replace(source, data=_tidied(source, source.data, (), findings)), findings


def _tidied(source: PlanSource, value: object, path: Path, findings: list[Finding]) -> object:
    if isinstance(value, dict):
        inside = {k: _tidied(source, v, (*path, k), findings) for k, v in value.items()}
        return {k: v for k, v in inside.items() if v is not None}
    if isinstance(value, list):
        return [_tidied(source, item, (*path, n), findings) for n, item in enumerate(value)]
    if value is None:
        findings.append(_nothing_at(source, path))
    if isinstance(value, float):
        typed = source.typed(path)
        return value if typed is None or typed == str(value) else typed
    return value


_REMARK = re.compile(r"(?:^|\s)(#\w.*)")


def _nothing_at(source: PlanSource, path: Path) -> Finding:
    """Say that a value is missing, or that what was meant for it reads as a remark."""
    last = path[-1] if path else ""
    place = source.place(path)
    remark = _REMARK.match((place.text or "")[max(0, (place.column or 1) - 1) :])
    if remark and isinstance(last, str):
        text = re.split(r"[\s,}\]]", remark[1])[0]
        what = f"what stands after {quoted(last)} begins with #, which makes it a remark"
        return fault(source, path, what, f"Put it in quotes: {quoted(text)}")
    if isinstance(last, str):
        what, remedy = (
            f"nothing is written after {quoted(last)}",
            "Write something, or take the key out",
        )
    else:
        what, remedy = "nothing is written in this place of the list", "Fill it, or take it out"
    return fault(source, path, what, remedy)


def check_typed(source: PlanSource) -> Iterator[Finding]:
    """Return everything that is wrong across the parts of the plan."""
    for check in _CHECKS:
        yield from check(source)


def _items(source: PlanSource, key: str) -> Iterator[tuple[int, Mapping[str, Any]]]:
    items = source.data.get(key)
    for index, item in enumerate(items if isinstance(items, list) else ()):
        if isinstance(item, dict):
            yield index, item


def _operation(work: Mapping[str, object], catalogue: Mapping[str, Operation]) -> Operation | None:
    typed = work.get("operation")
    words = re.sub(r"[\s_]+", " ", typed.strip().lower()) if isinstance(typed, str) else ""
    return catalogue.get(words)


def _settings(source: PlanSource) -> Iterator[Finding]:
    catalogue = whole_catalogue(source.data.get("operations"))
    for index, work in _items(source, "works"):
        operation, settings = _operation(work, catalogue), work.get("settings")
        if operation is None or not isinstance(settings, dict):
            continue
        for problem in read_settings(operation, settings)[1]:
            yield fault(
                source,
                ("works", index, "settings", problem.name),
                problem.message,
                problem.suggestion,
                key=problem.unknown_key,
            )


def _greens_of_course(source: PlanSource) -> Iterator[Finding]:
    for found in read_lines(_lines(source))[1]:
        path = ("course", "greens", found.line, found.key)
        yield fault(source, path, found.problem.message, found.problem.suggestion)


def _greens_of_works(source: PlanSource) -> Iterator[Finding]:
    club = _club_greens(source)
    for index, work in _items(source, "works"):
        path: Path = ("works", index, "greens")
        typed = work.get("greens")
        if not isinstance(typed, dict):
            yield from _unknown_greens(source, path, _greens(typed), club)
            continue
        first_day: dict[str, str] = {}
        for line in day_lines(typed):
            spot = (*path, line.key)
            if line.fault:
                yield fault(source, spot, *line.fault.sentences, key=line.at_key)
            yield from _unknown_greens(source, spot, line.greens, club)
            for green in _once(line.greens, club):
                day = first_day.setdefault(green, line.key)
                if day != line.key:
                    yield fault(
                        source,
                        spot,
                        f"green {green} is named for {day} already",
                        "A work is done once on each green: keep one of them",
                    )


def _once(greens: Sequence[GreenRef], club: ClubGreens | None) -> tuple[str, ...]:
    """Return what must stand on one day only; two holes that share a green may stand on two."""
    if club is None:
        return tuple(str(green).casefold() for green in greens)
    chosen = club.choose(greens)
    holed = {green for hole in chosen.holes for green in club.choose_hole(hole)}
    names = [green for green in chosen.greens if green not in holed]
    return (*(format_hole(hole) for hole in chosen.holes), *names)


def _greens_of_measurements(source: PlanSource) -> Iterator[Finding]:
    club = _club_greens(source)
    for index, measurement in _items(source, "measurements"):
        path: Path = ("measurements", index, "green")
        yield from _unknown_greens(source, path, _greens(measurement.get("green")), club)


def _places_of_closures(source: PlanSource) -> Iterator[Finding]:
    club = _club_greens(source)
    for index, closure in _items(source, "closures"):
        what = closure.get("what")
        if club is not None and isinstance(what, str):
            for problem in read_place(what, club).problems:
                path = ("closures", index, "what")
                yield fault(source, path, problem.message, problem.suggestion)


def _courses_of_fixtures(source: PlanSource) -> Iterator[Finding]:
    club = _club_greens(source)
    for index, fixture in _items(source, "fixtures"):
        name = fixture.get("course")
        if club is None or not isinstance(name, str | int):
            continue
        words = " ".join(str(name).split())
        if words.casefold() not in {course.casefold() for course in club.courses}:
            known = f"The plan names {listed(club.courses)}" if club.courses else ""
            remedy = known or "Take it out: no line of course: greens: names a course"
            yield fault(
                source,
                ("fixtures", index, "course"),
                f"there is no course {quoted(words)}",
                did_you_mean(words, club.courses, otherwise=remedy),
            )


def _unknown_greens(
    source: PlanSource, path: Path, greens: Sequence[GreenRef], club: ClubGreens | None
) -> Iterator[Finding]:
    for problem in club.choose(greens).problems if club else ():
        yield fault(source, path, problem.message, problem.suggestion)


@dataclass(frozen=True, slots=True)
class _Line:
    """A line of the course's greens, as far as it can be read."""

    green: tuple[GreenRef, ...]
    course: str | None
    also: tuple[GreenRef, ...] | None


def _lines(source: PlanSource) -> list[_Line]:
    course = source.data.get("course")
    lines = course.get("greens") if isinstance(course, dict) else None
    found = []
    for line in lines if isinstance(lines, list) else ():
        typed = line if isinstance(line, dict) else {}
        name = typed.get("course")
        found.append(
            _Line(
                _greens(typed.get("green")),
                " ".join(str(name).split()) if isinstance(name, str | int) else None,
                _greens(typed["also"]) if "also" in typed else None,
            )
        )
    return found


def _club_greens(source: PlanSource) -> ClubGreens | None:
    """Return the club's greens; nothing where they are at fault themselves."""
    lines = _lines(source)
    club, problems = read_lines(lines)
    complete = lines and not problems and all(line.green for line in lines)
    return club if complete else None


def _greens(typed: object) -> tuple[GreenRef, ...]:
    try:
        return parse_greens(typed)
    except Refusal:
        return ()  # the model says what is wrong


def _doubled_ids(source: PlanSource) -> Iterator[Finding]:
    seen: set[str] = set()
    for index, work in _items(source, "works"):
        name = work.get("id")
        if not isinstance(name, str):
            continue
        if name in seen:
            yield fault(
                source,
                ("works", index, "id"),
                f"the id {quoted(name)} is already that of another work",
                "Give each work a name of its own",
            )
        seen.add(name)


_CHECKS: Sequence[Callable[[PlanSource], Iterator[Finding]]] = (
    _settings,
    _greens_of_course,
    _greens_of_works,
    _greens_of_measurements,
    _places_of_closures,
    _courses_of_fixtures,
    _doubled_ids,
)
