"""The greens of a club: one course or several, double greens, and which of them a list names.

A list of greens is read without the course in mind (`green_list`); what its words mean is said
here: "Oak 1-9" are nine greens where the club has a course of that name.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Protocol

from notices.plan.green_list import GreenRef, format_greens, parse_greens
from notices.plan.messages import did_you_mean, listed
from notices.plan.nearest import nearest, quoted
from notices.plan.refusal import Refusal

KINDS_OF_COURSE = ("course", "nine", "eighteen", "loop", "links")
"""What a course's name may end with, so that nothing need be added to say that it is one."""

Hole = tuple[str, int]
"""A course by its name, empty where it has none, and a number."""

_NUMBERS = re.compile(r"(?P<course>.*?\S)\s+(?P<numbers>[0-9].*)")


class Line(Protocol):
    """One line of the plan's list of greens."""

    @property
    def green(self) -> tuple[GreenRef, ...]:
        """The greens named."""

    @property
    def course(self) -> str | None:
        """Course that they belong to."""

    @property
    def also(self) -> tuple[GreenRef, ...] | None:
        """Further holes that are played to the one green named."""


@dataclass(frozen=True, slots=True)
class KnownGreen:
    """A green as the plan names it."""

    course: str
    holes: tuple[int, ...]
    """Numbers of the holes played to it; none for a putting green."""
    name: str = ""
    """Its name where it has no number."""

    @property
    def key(self) -> str:
        """What it is known by: "7", "2/16", "Oak 7", "Putting green"."""
        own = self.name or "/".join(map(str, self.holes))
        return f"{self.course} {own}" if self.course else own


@dataclass(frozen=True, slots=True)
class Problem:
    """Why greens cannot be told, and what would be right; both without a full stop."""

    message: str
    suggestion: str = ""


@dataclass(frozen=True, slots=True)
class LineProblem:
    """What is wrong with a line of the plan's list of greens."""

    line: int
    key: str
    problem: Problem


@dataclass(frozen=True, slots=True)
class Chosen:
    """What a list of greens means."""

    greens: tuple[str, ...] = ()
    """Keys in the listed order, a green that is named by several of its holes once."""
    holes: tuple[Hole, ...] = ()
    """The numbers named, as they were named."""
    problems: tuple[Problem, ...] = ()


def course_word(name: str) -> str:
    """Return a course's name as one may also type it: "oak" for "The Oak course"."""
    words = name.casefold().split()
    if len(words) > 1 and words[0] == "the":
        words = words[1:]
    if len(words) > 1 and words[-1] in KINDS_OF_COURSE:
        words = words[:-1]
    return " ".join(words)


def format_hole(hole: Hole) -> str:
    """Write a hole as a list of greens names it: "7", "Oak 7"."""
    course, number = hole
    return f"{course} {number}" if course else str(number)


@dataclass(frozen=True)
class ClubGreens:
    """Every green of a club, and how each may be named."""

    greens: tuple[KnownGreen, ...]

    @cached_property
    def courses(self) -> tuple[str, ...]:
        """Names of the courses that have numbered greens, in the order of the plan."""
        return tuple(dict.fromkeys(g.course for g in self.greens if g.holes and g.course))

    @cached_property
    def _by_hole(self) -> dict[Hole, KnownGreen]:
        return {(green.course, hole): green for green in self.greens for hole in green.holes}

    @cached_property
    def _by_name(self) -> dict[str, KnownGreen]:
        """Greens by their keys, and by the name alone where only one has it."""
        alone = Counter(green.name.casefold() for green in self.greens)
        named = {g.name.casefold(): g for g in self.greens if alone[g.name.casefold()] == 1}
        return named | {green.key.casefold(): green for green in self.greens}

    @cached_property
    def _by_course(self) -> dict[str, str]:
        return {course_word(name): name for name in self.courses}

    @cached_property
    def _spelling(self) -> dict[str, str]:
        return {green.course.casefold(): green.course for green in self.greens}

    def course(self, word: str) -> str | None:
        """Return the course of this name, however it is typed."""
        return self._by_course.get(course_word(word))

    def line_greens(self, line: Line) -> tuple[KnownGreen, ...]:
        """Return the greens that a line of the plan's list of greens names."""
        course = self._spelling.get((line.course or "").casefold(), "")
        return tuple(
            self._by_hole[course, ref]
            if isinstance(ref, int)
            else self._by_name[KnownGreen(course, (), ref).key.casefold()]
            for ref in line.green
        )

    def named(self, name: str) -> str | None:
        """Return the key of the green of this name."""
        green = self._by_name.get(name.casefold())
        return green.key if green else None

    def is_without_hole(self, name: str) -> bool:
        """Whether this is a putting green or the like."""
        green = self._by_name.get(name.casefold())
        return green is not None and not green.holes

    def knows(self, text: str) -> bool:
        """Whether this names a green, a course, or begins with the name of a course."""
        if self.named(text) is not None or self.course(text) is not None:
            return True
        found = _NUMBERS.fullmatch(text)
        return found is not None and self.course(found["course"]) is not None

    def may_mean_course(self, text: str) -> bool:
        """Whether this is numbers after a word that is nearly the name of a course."""
        found = _NUMBERS.fullmatch(text)
        return found is not None and self._near_course(found["course"]) is not None

    def _near_course(self, word: str) -> str | None:
        near = nearest(course_word(word), self._by_course)
        return self._by_course[near] if near else None

    def of_course(self, course: str) -> tuple[str, ...]:
        """Return the keys of all numbered greens of a course."""
        return tuple(green.key for green in self.greens if green.course == course and green.holes)

    def holes_of(self, course: str) -> tuple[Hole, ...]:
        """Return the holes of a course in their order."""
        return tuple(sorted(hole for hole in self._by_hole if hole[0] == course))

    def choose_hole(self, hole: Hole) -> tuple[str, ...]:
        """Return the key of the green of a hole, if there is one."""
        green = self._by_hole.get(hole)
        return (green.key,) if green else ()

    def closed_with(self, holes: Iterable[Hole]) -> tuple[str, ...]:
        """Return the greens that nobody plays to while these holes are closed.

        A double green stays in play for the other of its holes.
        """
        closed = set(holes)
        return tuple(
            green.key
            for green in self.greens
            if green.holes and all((green.course, hole) in closed for hole in green.holes)
        )

    def choose(self, refs: Iterable[GreenRef]) -> Chosen:
        """Say which greens a list names.

        Every problem is told at once; a number that is named twice is one, two holes that share
        a green are none.
        """
        greens: list[KnownGreen] = []
        named: list[Hole] = []
        problems: list[Problem] = []
        loose: list[int] = []
        unknown: dict[str, list[int]] = {}
        last_course = ""
        for ref in refs:
            if isinstance(ref, int):
                if len(self.courses) > 1:
                    loose.append(ref)
                    continue
                holes = [(next(iter(self.courses), ""), ref)]
            else:
                if (green := self._by_name.get(ref.casefold())) is not None:
                    greens.append(green)
                    named += [(green.course, hole) for hole in green.holes]
                    continue
                try:
                    holes = list(self._holes(ref))
                except Refusal as error:
                    problems.append(Problem(*error.sentences))
                    continue
                if not holes:
                    problems.append(self._unknown_name(ref))
                    continue
                last_course = holes[0][0]
            for hole in holes:
                if (green := self._by_hole.get(hole)) is None:
                    unknown.setdefault(hole[0], []).append(hole[1])
                else:
                    greens.append(green)
                    named.append(hole)
        if loose:
            problems.insert(0, self._without_course(loose, last_course))
        problems[:0] = [self._unknown_numbers(*numbers) for numbers in unknown.items()]
        problems += _twice(named)
        return Chosen(
            tuple(dict.fromkeys(green.key for green in greens)), tuple(named), tuple(problems)
        )

    def _holes(self, text: str) -> Iterator[Hole]:
        """Yield the holes that a name and numbers mean; nothing where it is no course of ours."""
        if (whole := self.course(text)) is not None:
            yield from self.holes_of(whole)
            return
        words = text.split(" ")
        for length in range(len(words) - 1, 0, -1):
            course, rest = self.course(" ".join(words[:length])), " ".join(words[length:])
            if course is not None and rest[:1].isdigit():
                for number in parse_greens(rest):
                    if not isinstance(number, int):
                        raise Refusal(f"{quoted(text)} is not understood", _example(course))
                    yield (course, number)
                return

    def _unknown_numbers(self, course: str, numbers: Sequence[int]) -> Problem:
        what = f"green{'s' * (len(numbers) > 1)} {format_greens(numbers)}"
        where = f"{quoted(course)}" if len(self.courses) > 1 else "the course"
        it = "it" if len(numbers) == 1 else "them"
        return Problem(f"{where} has no {what}", f"Add {it} under course: greens, or take {it} out")

    def _unknown_name(self, ref: str) -> Problem:
        several = len(self.courses) > 1
        found = _NUMBERS.fullmatch(ref)
        if found and (course := self._near_course(found["course"])):
            right = f"{course} {found['numbers']}"
            message = f"there is no course {quoted(found['course'])}"
            return Problem(message, f"Did you mean {quoted(right)}?")
        alike = [g.key for g in self.greens if g.name.casefold() == ref.casefold()]
        if alike:
            right = listed([quoted(key) for key in alike[:3]], "or")
            return Problem(f"{quoted(ref)} does not say of which course", f"Write {right}")
        known = [*(green.name for green in self.greens if green.name), *self.courses]
        if found and self.courses and nearest(ref, known) is None:
            courses = listed([quoted(name) for name in self.courses])
            message = f"there is no course {quoted(found['course'])}"
            return Problem(message, f"Known {'is' if len(self.courses) < 2 else 'are'} {courses}")
        otherwise = "Add it under course: greens, or take it out"
        club = "club" if several else "course"
        return Problem(
            f"the {club} has no green {quoted(ref)}", did_you_mean(ref, known, otherwise=otherwise)
        )

    def _without_course(self, numbers: Sequence[int], last_course: str) -> Problem:
        typed = format_greens(numbers)
        having = [
            course
            for course in self.courses
            if all((course, number) in self._by_hole for number in numbers)
        ]
        meant = [last_course] if last_course in having else having or list(self.courses)
        right = listed([quoted(_of_course(course, typed)) for course in meant[:3]], "or")
        return Problem(f"{quoted(typed)} does not say of which course", f"Write {right}")


def read_lines(lines: Sequence[Line]) -> tuple[ClubGreens, list[LineProblem]]:
    """Return the greens that the lines of a plan name, and what is wrong with the lines.

    A course or a green that is named again keeps the capitals of its first line, and its place.
    """
    courses: dict[str, str] = {}
    names: dict[str, str] = {}
    known: dict[Hole | str, KnownGreen] = {}
    problems: list[LineProblem] = []
    several = any(line.course for line in lines)
    for index, line in enumerate(lines):
        course = courses.setdefault((line.course or "").casefold(), line.course or "")
        for ref in line.green:
            green = (
                KnownGreen(course, (ref,))
                if isinstance(ref, int)
                else KnownGreen(course, (), names.setdefault(ref.casefold(), ref))
            )
            known.setdefault(_place(green), green)
        if several and not course and any(isinstance(ref, int) for ref in line.green):
            numbers = format_greens([ref for ref in line.green if isinstance(ref, int)])
            problem = Problem(
                f"{quoted(numbers)} does not say of which course, as other lines do",
                "Add course: to this line",
            )
            problems.append(LineProblem(index, "green", problem))
        elif line.also and line.green:
            try:
                _join(known, course, line)
            except Refusal as error:
                problems.append(LineProblem(index, "also", Problem(*error.sentences)))
    greens = ClubGreens(tuple(dict.fromkeys(known.values())))
    if not problems:
        problems += _names_for_two_things(lines, greens)
    return greens, problems


def _place(green: KnownGreen) -> Hole | str:
    return (green.course, green.holes[0]) if green.holes else green.key.casefold()


def _join(known: dict[Hole | str, KnownGreen], course: str, line: Line) -> None:
    """Make one green of the holes of a line."""
    also = line.also or ()
    first = line.green[0]
    if not isinstance(first, int):
        raise Refusal(
            f"{quoted(first)} has no number, and holes share a green that has one",
            "write such as {green: 2, also: 16}",
        )
    if len(line.green) > 1:
        raise Refusal(
            "this line names more than one green, and only one can be shared",
            "give each double green a line of its own, such as {green: 2, also: 16}",
        )
    numbers: list[int] = [first]
    for ref in also:
        if not isinstance(ref, int):
            raise Refusal(f"{quoted(ref)} is not a hole", "write the number of the other hole")
        if ref == first:
            raise Refusal(f"{ref} is this green itself", "write the number of the other hole")
        numbers.append(ref)
    shared = KnownGreen(course, tuple(sorted(numbers)))
    for number in numbers:
        before = known.get((course, number))
        if before and len(before.holes) > 1 and before != shared:
            raise Refusal(
                f"green {number} is already shared by {listed([str(n) for n in before.holes])}",
                "write all holes of a green on one line",
            )
    for number in numbers:
        known[course, number] = shared


def _names_for_two_things(lines: Sequence[Line], greens: ClubGreens) -> Iterator[LineProblem]:
    """Yield where a name would mean a course and a green, or two courses."""
    names = {green.name.casefold() for green in greens.greens if green.name}
    words: dict[str, str] = {}
    seen: set[str] = set()
    for index, line in enumerate(lines):
        course = line.course or ""
        if not course or course.casefold() in seen:
            continue
        seen.add(course.casefold())
        other = words.setdefault(course_word(course), course)
        if other != course:
            message = f"the courses {quoted(other)} and {quoted(course)} are hardly told apart"
            yield LineProblem(
                index, "course", Problem(message, "Spell them alike, or name one of them anew")
            )
        elif course.casefold() in names or course_word(course) in names:
            message = f"{quoted(course)} is the name of a green too"
            yield LineProblem(index, "course", Problem(message, "Give one of the two another name"))


def _twice(named: Sequence[Hole]) -> Iterator[Problem]:
    seen: set[Hole] = set()
    for hole in named:
        if hole in seen:
            what = quoted(format_hole(hole)) if hole[0] else f"green {hole[1]}"
            yield Problem(f"{what} stands twice in the list", "Name each green once")
        seen.add(hole)


def _of_course(course: str, typed: str) -> str:
    """Write numbers with their course: "Oak 1-9, Oak 12"."""
    return ", ".join(f"{course} {part}" for part in typed.split(", "))


def _example(course: str) -> str:
    return f'write such as "{course} 1-9"'
