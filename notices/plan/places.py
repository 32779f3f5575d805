"""What a closure is about: the course, greens, holes, the tees of holes, or free words."""

from __future__ import annotations

import re
from dataclasses import dataclass

from notices.plan.club_greens import ClubGreens, Hole, Problem, course_word
from notices.plan.green_list import GreenRef, parse_greens
from notices.plan.messages import did_you_mean
from notices.plan.nearest import nearest, quoted
from notices.plan.refusal import Refusal

_COURSE = re.compile(r"(?:whole )?course|(?:all |both |all the |both the )?courses", re.IGNORECASE)
_ONE_COURSE = re.compile(r"courses?\s+(?P<names>.+)", re.IGNORECASE)
_LISTED = re.compile(
    r"(?P<part>greens?|holes?|(?:[a-z-]+\s+)?(?:tees?|fairways?|approach(?:es)?|bunkers?))"
    r"\s+(?P<list>.+)",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Place:
    """What is closed, as far as it is said in words that we know."""

    part: str = ""
    """course, greens, holes, or what is closed of holes as typed, such as tees; else empty."""
    greens: tuple[str, ...] = ()
    """Greens that are out of play with it."""
    holes: tuple[Hole, ...] = ()
    """Holes named."""
    courses: tuple[str, ...] = ()
    """Courses that are closed as a whole."""
    whole_course: bool = False
    """Whether it is all that the club has."""
    problems: tuple[Problem, ...] = ()


def read_place(what: str, club: ClubGreens) -> Place:
    """Say what a closure is about.

    "greens 1-9" names greens; "greens committee room" is free words, and so is whatever else
    begins like a list and is none.
    """
    text = re.sub(r"^the ", "", " ".join(what.split()), flags=re.IGNORECASE)
    if _COURSE.fullmatch(text):
        return Place("course", whole_course=True, courses=club.courses)
    if (whole := _whole_courses(text, club)) is not None:
        return whole
    if (own := club.named(text)) is not None:
        return Place("greens", (own,))
    match = _LISTED.fullmatch(text)
    return _listed(match["part"].lower(), match["list"], club) if match else Place()


def place_in_a_sentence(what: str) -> str:
    """Return what is closed as typed, but as people say it: the practice ground; greens 4-6."""
    first = what.partition(" ")[0].casefold()
    known = {"the", "green", "greens", "hole", "holes"}
    return what if first in known else f"the {what}"


def _whole_courses(text: str, club: ClubGreens) -> Place | None:
    """Return the courses that are closed: "Oak", "the Oak course", "courses Oak, Elm"."""
    match = _ONE_COURSE.fullmatch(text)
    names = re.split(r"\s*,\s*|\s+and\s+", match["names"]) if match else [text]
    found = [club.course(name) for name in names]
    courses = tuple(course for course in found if course is not None)
    if len(courses) == len(found):
        greens = tuple(green for course in courses for green in club.of_course(course))
        holes = tuple(hole for course in courses for hole in club.holes_of(course))
        return Place("course", greens, holes, courses)
    if match and club.courses:
        lost = next(name for name, course in zip(names, found, strict=True) if course is None)
        if nearest(course_word(lost), map(course_word, club.courses)):
            guess = did_you_mean(lost, club.courses, otherwise="")
            return Place(problems=(Problem(f"there is no course {quoted(lost)}", guess),))
    return None


def _listed(part: str, typed: str, club: ClubGreens) -> Place:
    try:
        refs = parse_greens(typed)
    except Refusal as error:
        return Place(problems=(Problem(*error.sentences),)) if typed[0].isdigit() else Place()
    if not (isinstance(refs[0], int) or club.knows(refs[0]) or club.may_mean_course(refs[0])):
        return Place()
    part = {"green": "greens", "hole": "holes"}.get(part, part)
    chosen = club.choose(refs)
    problems = chosen.problems or tuple(_no_holes(part, refs, club))
    if problems:
        return Place(problems=problems)
    if part == "greens":
        return Place(part, chosen.greens, chosen.holes)
    greens = club.closed_with(chosen.holes) if part == "holes" else ()
    return Place(part, greens, chosen.holes)


def _no_holes(part: str, refs: tuple[GreenRef, ...], club: ClubGreens) -> list[Problem]:
    """Refuse the tees of a putting green."""
    if part == "greens":
        return []
    names = [ref for ref in refs if isinstance(ref, str) and club.is_without_hole(ref)]
    return [Problem(f"{quoted(name)} is no hole", "Name holes by their numbers") for name in names]
