"""What a drawing shows stands in its key, and nothing stands there that it does not show."""

from __future__ import annotations

import dataclasses
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from functools import cache

import pytest

from notices.drawings.course import greens_by_day
from notices.drawings.course_days import course_day_by_day
from notices.drawings.model import Drawing
from notices.drawings.of_period import drawings_of
from notices.drawings.palette import INK, LINE, LOAM, PAPER, QUIET, ROOT_ZONE, SHADE, THATCH
from notices.drawings.recovery import recovery_chart
from notices.drawings.sand_days import sand_by_day
from notices.drawings.sizes import PAGE, PHONE, SHEET
from notices.drawings.work_hours import work_hours
from notices.wording.below_ground import SUBSOIL, name_of
from notices.wording.period import PeriodWords
from notices.wording.words import Words
from tests.drawings.hard_plans import OPENS, clubs, drawn
from tests.drawings.metrics import SVG, texts_in
from tests.wording.small_plans import plan, words, work

Looks = dict[str, str]


def shapes(drawing: Drawing, **looks: str) -> int:
    """How many shapes of a drawing look like this."""
    root = ET.fromstring(drawing.svg)  # noqa: S314, it was drawn here
    wanted = {name.replace("_", "-"): value for name, value in looks.items()}
    return sum(
        all(shape.get(name) == value for name, value in wanted.items())
        for shape in root.iter()
        if shape.tag != f"{SVG}text"
    )


def is_seen(drawing: Drawing, fill: str) -> bool:
    """Whether a box of this colour is more than a hair high."""
    root = ET.fromstring(drawing.svg)  # noqa: S314
    boxes = (box for box in root.iter(f"{SVG}rect") if box.get("fill") == fill)
    return any(float(box.attrib["height"]) >= 2 for box in boxes)


def said(drawing: Drawing) -> set[str]:
    return {text.text.replace("\N{NO-BREAK SPACE}", " ") for text in texts_in(drawing.svg)}


COURSE: dict[str, Looks] = {
    "weekend": {"fill": SHADE},
    "several days, alike but for recovery": {"stroke": QUIET, "stroke_dasharray": "2 3"},
    "open, with short waits": {"stroke": QUIET, "stroke_dasharray": "3 2"},
    "competition": {"fill": LOAM, "stroke": LOAM, "stroke_width": "1.2"},
    "another {fixture}": {"fill": PAPER, "stroke": QUIET, "stroke_width": "1.2"},
}
HOURS: dict[str, Looks] = {
    "work": {"fill": INK},
    "waiting for dew to go or sand to dry": {"stroke": INK, "stroke_dasharray": "2 2"},
    "hours of the crew": {"fill": PAPER, "stroke": QUIET},
    "dark": {"fill": LINE},
    "dew is off, sand can be spread": {"fill": LOAM, "stroke": PAPER},
    "after the day’s end": {"fill": PAPER, "stroke": LOAM},
}
RECOVERY: dict[str, Looks] = {
    "days of work": {"fill": INK, "height": "22"},
    "later than we can say": {"fill": QUIET},
    "competition": {"fill": LOAM, "stroke": LOAM, "stroke_width": "1.2"},
    "another {fixture}": {"fill": PAPER, "stroke": QUIET, "stroke_width": "1.2"},
}
SAND: dict[str, Looks] = {"{top_up}": {"fill": PAPER, "stroke": LOAM}}


def in_one(parts: tuple[Drawing, ...]) -> Drawing | None:
    """Parts with one key below the last, as if they were one drawing."""
    if not parts:
        return None
    whole = f'<svg xmlns="{SVG.strip("{}")}">{"".join(part.svg for part in parts)}</svg>'
    return dataclasses.replace(parts[-1], svg=whole)


@cache
def charts() -> dict[str, tuple[Words, Drawing, dict[str, Looks]]]:
    """Every chart with a key, of every programme, with what its key may say."""
    return {
        f"{name}: {drawing.name}": (told, drawing, key)
        for name, programme in clubs().items()
        for told in (Words(programme),)
        for drawing, key in _charts(told)
    }


def _charts(told: Words) -> Iterator[tuple[Drawing, dict[str, Looks]]]:
    for sizes in (PAGE, SHEET, PHONE):
        if drawing := in_one(course_day_by_day(told, sizes)):
            yield drawing, COURSE
    yield from ((drawing, HOURS) for drawing in work_hours(told))
    for sizes in (PAGE, PHONE):
        for period in told.programme.periods:
            if drawing := recovery_chart(told, period, sizes):
                yield drawing, RECOVERY
    if drawing := sand_by_day(told):
        yield drawing, SAND


def is_explained(told: Words, entry: str, drawing: Drawing) -> bool:
    """Whether the key of a drawing has an entry, in the words of the club's language."""
    terms = told.language.terms
    return entry.format(fixture=terms.fixture.lower(), top_up=terms.top_up) in said(drawing)


@pytest.mark.parametrize("name", charts())
def test_the_key_says_what_is_drawn_and_no_more(name: str) -> None:
    """What it explains is drawn once in the key and at least once above it; the rest nowhere."""
    told, drawing, key = charts()[name]
    for entry, looks in key.items():
        explained = is_explained(told, entry, drawing)
        # The key of a day of work shows it in another size.
        in_key = explained and "height" not in looks
        assert (shapes(drawing, **looks) - in_key > 0) is explained, entry


def test_every_entry_of_a_key_is_met() -> None:
    """Or the test above would prove nothing of it."""
    met = {
        (id(key), entry)
        for told, drawing, key in charts().values()
        for entry in key
        if is_explained(told, entry, drawing)
    }
    for key in (COURSE, HOURS, RECOVERY, SAND):
        never = {entry for entry in key if (id(key), entry) not in met}
        assert never <= {"another {fixture}", "after the day’s end", "later than we can say"}


def test_every_layer_of_a_section_is_named() -> None:
    """In the panel or beside it, and where it is too thin for that in the key."""
    for name, programme in clubs().items():
        told = Words(programme)
        below = SUBSOIL[programme.profile.subsoil].capitalize()
        for period in programme.periods:
            for drawing in (d for s in (PAGE, PHONE) for d in drawings_of(told, period, s)):
                if not drawing.name.startswith("section") or "Before" not in said(drawing):
                    continue
                named = {text for text in said(drawing) if text in {"Thatch", "Root zone", below}}
                if any(text.startswith("Thatch: ") for text in said(drawing)):  # numbered
                    named.add("Thatch")
                for layer, fill in (("Thatch", THATCH), ("Root zone", ROOT_ZONE)):
                    if is_seen(drawing, fill):
                        assert layer in named, f"{name}: {drawing.name}"


def test_the_key_of_a_square_names_what_is_drawn_in_it_and_no_more() -> None:
    """At each moment: what has healed by then is neither drawn nor named below."""
    for name, (told, drawing) in drawn().items():
        if ": surface" not in name:
            continue
        root = ET.fromstring(drawing.svg)  # noqa: S314
        shown = {
            group.get("data-work")
            for group in root.iter(f"{SVG}g")
            if "cut" in (group.get("class") or "").split()
        }
        key = " ".join(text.text for text in texts_in(drawing.svg)).replace(
            "\N{NO-BREAK SPACE}", " "
        )
        for work_of_plan in told.programme.works:
            if work_of_plan.operation.opening in OPENS:
                named = f"{name_of(told, work_of_plan)}:" in key
                assert named or work_of_plan.id not in shown, f"{name}: {work_of_plan.id}"
        assert (shown == set()) is not any(
            f"{name_of(told, each)}:" in key
            for each in told.programme.works
            if each.operation.opening in OPENS
        ), name


def test_boxes_of_greens_say_why_some_are_shaded() -> None:
    told = words(plan(work("hollow tining", "2027-08-09 to 2027-08-10")))
    (period,) = told.programme.periods
    drawing = greens_by_day(told, PeriodWords(told, period))
    assert "The shading changes with each day." in drawing.caption
