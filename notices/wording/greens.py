"""Greens and holes in words: "greens 1 to 6 and the putting green", "hole 7 on the Oak course"."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from notices.programme.courses import KINDS_OF_COURSE
from notices.programme.model import Green, Hole
from notices.wording.lists import all_of, and_list

_SHARED = {2: "double", 3: "triple"}

FEW = 2
"""Most greens left out of several courses that are named as exceptions, instead of the rest."""


def name_greens(keys: Sequence[str], course: Mapping[str, Green], *, short: bool = False) -> str:
    """Return names of greens for a sentence, or for a narrow column.

    Parameters
    ----------
    keys
        Keys of the greens.
    course
        All greens of the club; if every numbered one is meant, the name is "all 18 greens".
    short
        Whether to give only numbers, as in a column headed "Greens".
    """
    picked = set(keys)
    chosen = [green for key, green in course.items() if key in picked]
    numbered = [green for green in chosen if green.holes]
    names = [green for green in chosen if not green.holes]
    if short:
        parts = list(_short_parts(numbered, courses_of(course)))
        joint = "; " if len(courses_of(course)) > 1 else ", "
        return joint.join([*parts, *(_named(green, article="") for green in names)])
    if but := _left_out(numbered, course):
        # The exception comes last, so that nothing else seems to be left out.
        return _joined([*map(_named, names), f"all greens except {but}"])
    parts = list(_long_parts(numbered, course))
    return _joined([*parts, *map(_named, names)]) or "no green"


def name_greens_briefly(keys: Sequence[str], course: Mapping[str, Green]) -> str:
    """Return short names of greens: "all greens", "all greens except Oak 4", "greens 1 to 6".

    "All greens" means all numbered ones, whether or not the putting green is among them.
    """
    picked = set(keys)
    numbered = [green for green in course.values() if green.holes]
    out = [green for green in numbered if green.key not in picked]
    if not out and len(numbered) > 1:
        return "all greens"
    if _are_few(out, course) and len(numbered) == len(picked) + len(out):
        return f"all greens except {and_list(list(_short_parts(out, courses_of(course))))}"
    return name_greens(keys, course)


def name_greens_between(keys: Sequence[str], course: Mapping[str, Green]) -> str:
    """Return names of greens for the middle of a sentence: "green 4", "Oak 4 and Elm 11"."""
    courses = courses_of(course)
    if len(courses) < 2:
        return name_greens(keys, course)
    chosen = [course[key] for key in course if key in set(keys)]
    numbered = [green for green in chosen if green.holes]
    parts = list(_short_parts(numbered, courses))
    return _joined([*parts, *(_named(green) for green in chosen if not green.holes)])


def name_holes(holes: Iterable[Hole], course: Mapping[str, Green], *, short: bool = False) -> str:
    """Return names of holes: "hole 7", "all 18 holes on the Oak course".

    If ``short``, only numbers, as for a column of holes: "1 to 9", "Oak 1 to 9; Elm 4".
    """
    by_course: dict[str, list[int]] = {}
    for name, number in holes:
        by_course.setdefault(name, []).append(number)
    courses = courses_of(course)
    parts = []
    for name in sorted(by_course, key=lambda name: courses.index(name) if name in courses else -1):
        numbers = by_course[name]
        if short:
            prefix = f"{short_course(name)} " if len(courses) > 1 else ""
            parts.append(prefix + and_list(_runs(numbers)))
            continue
        total = sum(len(green.holes) for green in course.values() if green.course == name)
        every = len(numbers) == total > 1
        noun = all_of(total, "holes") if every else _numbered("hole", _runs(numbers), len(numbers))
        parts.append(f"{noun}{_of(name, courses).replace(' of ', ' on ', 1)}")
    return "; ".join(parts) if short else and_list(parts)


def courses_of(course: Mapping[str, Green]) -> list[str]:
    """Return the names of courses with numbered greens, in the order of the plan."""
    return list(dict.fromkeys(g.course for g in course.values() if g.holes and g.course))


def course_phrase(name: str) -> str:
    """Return the name of a course in a sentence: "the Oak course", "the Red nine"."""
    words = name if name.casefold().startswith("the ") else f"the {name}"
    words = words[:1].lower() + words[1:]
    return words if words.split()[-1].casefold() in KINDS_OF_COURSE else f"{words} course"


def short_course(name: str) -> str:
    """Return the short name of a course: "Oak" for "The Oak course"."""
    words = name.split()
    if len(words) > 1 and words[0].casefold() == "the":
        words = words[1:]
    if len(words) > 1 and words[-1].casefold() in KINDS_OF_COURSE:
        words = words[:-1]
    return " ".join(words)


def label(green: Green) -> str:
    """Return the label of a green beside its course: "7", "2/16", "Putting green"."""
    return green.name or "/".join(map(str, green.holes))


def named(key: str, article: str = "the ") -> str:
    """Return the name of a green without a number in a sentence: "the putting green"."""
    words = key[:1].lower() + key[1:] if key[1:2].islower() else key
    return words if words.startswith("the ") else f"{article}{words}"


def _named(green: Green, article: str = "the ") -> str:
    """Return the name of a green without a number, with its course."""
    if not green.course:
        return named(green.name, article)
    return f"{article}{short_course(green.course)} {named(green.name, article='')}"


def _short_parts(greens: Sequence[Green], courses: Sequence[str]) -> Iterator[str]:
    """Yield the numbers of greens, as "1, 2/16 and 5 to 7", or as "Oak 1 to 9" for each course."""
    for name, own in _by_course(greens).items():
        prefix = f"{short_course(name)} " if name and len(courses) > 1 else ""
        yield prefix + and_list(_runs_with_shared(own))


def _long_parts(greens: Sequence[Green], course: Mapping[str, Green]) -> Iterator[str]:
    """Yield the greens of each course in words, first those of courses that are meant whole."""
    courses = courses_of(course)
    total = sum(bool(green.holes) for green in course.values())
    if len(greens) == total > 1:
        yield all_of(total, "greens")
        return
    by_course = _by_course(greens)
    of_whole = {
        name: len(own)
        for name, own in by_course.items()
        if len(courses) > 1
        and len(own) == sum(g.course == name and bool(g.holes) for g in course.values()) > 1
    }
    if of_whole:
        phrases = and_list([course_phrase(name) for name in of_whole])
        yield f"{all_of(sum(of_whole.values()), 'greens')} of {phrases}"
    for name, own in by_course.items():
        if name not in of_whole:
            of = _of(name, courses)
            yield from [_joined(list(_of_one_course(own))) + of] if of else _of_one_course(own)


def _left_out(greens: Sequence[Green], course: Mapping[str, Green]) -> str:
    """Return the greens left out of several courses in words; empty if they are many or none."""
    named = {green.key for green in greens}
    out = [green for key, green in course.items() if green.holes and key not in named]
    return and_list(list(_long_parts(out, course))) if _are_few(out, course) else ""


def _are_few(out: Sequence[Green], course: Mapping[str, Green]) -> bool:
    """Tell whether the greens left out of several courses are shorter to name than the rest."""
    total = sum(bool(green.holes) for green in course.values())
    return 0 < len(out) <= FEW < total - len(out) and len(courses_of(course)) > 1


def _of_one_course(greens: Sequence[Green]) -> Iterator[str]:
    """Yield the greens of one course in words, as "greens 1 to 6" and "the double green 2/16"."""
    numbers = [green.holes[0] for green in greens if len(green.holes) == 1]
    if numbers:
        yield _numbered("green", _runs(numbers), len(numbers))
    shared = [green for green in greens if len(green.holes) > 1]
    if not shared:
        return
    kinds = {_SHARED.get(len(green.holes), "shared") for green in shared}
    kind = kinds.pop() if len(kinds) == 1 else "shared"
    yield f"the {_numbered(f'{kind} green', [label(green) for green in shared], len(shared))}"


def _joined(parts: Sequence[str]) -> str:
    """Join names, with a comma before "and" if a name has an "and" of its own."""
    if len(parts) > 1 and any(" and " in part for part in parts):
        return f"{', '.join(parts[:-1])}, and {parts[-1]}"
    return and_list(parts)


def _numbered(noun: str, numbers: Sequence[str], count: int) -> str:
    return f"{noun}{'' if count == 1 else 's'} {and_list(numbers)}"


def _of(name: str, courses: Sequence[str]) -> str:
    return f" of {course_phrase(name)}" if name and len(courses) > 1 else ""


def _by_course(greens: Iterable[Green]) -> dict[str, list[Green]]:
    """Return greens by course, sorted by number."""
    found: dict[str, list[Green]] = {}
    for green in greens:
        found.setdefault(green.course, []).append(green)
    return {name: sorted(own, key=lambda green: green.holes) for name, own in found.items()}


def _runs_with_shared(greens: Sequence[Green]) -> list[str]:
    """Write greens in the order of their lowest numbers, a shared one as "2/16"."""
    words: list[str] = []
    run: list[int] = []
    for green in greens:
        if len(green.holes) == 1:
            run.append(green.holes[0])
        else:
            words += [*_runs(run), label(green)]
            run = []
    return [*words, *_runs(run)]


def _runs(numbers: Iterable[int]) -> list[str]:
    """Write 1, 2, 3, 5 as "1 to 3", "5"; a pair stays a pair."""
    runs: list[list[int]] = []
    for number in sorted(numbers):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    words = []
    for run in runs:
        if len(run) > 2:
            words.append(f"{run[0]} to {run[-1]}")
        else:
            words += [str(number) for number in run]
    return words
