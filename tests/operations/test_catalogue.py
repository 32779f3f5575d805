from __future__ import annotations

import re
from pathlib import Path

import pytest

from notices.operations import CATALOGUE, Kind, Noticed, Opening, Operation, Setting, WhileWorking

TEXTS = Path(__file__).parents[2] / "templates" / "en-GB" / "operations"

# The brief's words for kinds of work, under "Words".
TERMS = [
    "scarifying",
    "verticutting",
    "clean-up cut",
    "mole ploughing",
    "deep solid tining",
    "solid tining",
    "needle tining",
    "hollow tining",
    "slitting",
    "top dressing",
    "brushing",
    "rolling",
    "overseeding",
    "raising the height of cut",
    "feeding",
    "wetting agent",
    "drill and fill",
    "turfing",
    "drain trenching",
]

# The brief's table "Settings by operation".
TINES = {"tine_diameter", "spacing", "depth", "passes"}
BLADES = {"blade_width", "blade_spacing", "depth", "passes"}
SETTINGS = {
    "hollow tining": TINES | {"inside_diameter"},
    "solid tining": TINES,
    "deep solid tining": TINES,
    "needle tining": TINES,
    "scarifying": BLADES,
    "verticutting": BLADES,
    "slitting": BLADES,
    "mole ploughing": {"spacing", "depth", "channel_diameter"},
    "drill and fill": {"hole_diameter", "spacing", "depth"},
    "top dressing": {"rate", "fill", "dressings", "days_between"},
    "brushing": {"passes"},
    "rolling": {"passes"},
    "raising the height of cut": {"from", "to"},
    "clean-up cut": {"from", "to"},
    "overseeding": {"seed", "rate"},
    "feeding": {"product"},
    "wetting agent": {"product"},
    "turfing": {"area"},
    "drain trenching": {"area", "width", "spacing", "depth"},
}

ENTRIES = list(CATALOGUE.values())
each = pytest.mark.parametrize("operation", ENTRIES, ids=lambda entry: entry.slug)


def test_every_term_of_the_trade_is_there_and_no_other() -> None:
    assert sorted(CATALOGUE) == sorted(TERMS)


def test_the_catalogue_stands_in_the_usual_order() -> None:
    orders = [operation.order for operation in ENTRIES]
    assert orders == sorted(orders)
    assert len(set(orders)) == len(orders)


def test_a_renovation_goes_from_the_surface_down_and_ends_with_sand() -> None:
    told = [
        "raising the height of cut",
        "scarifying",
        "clean-up cut",
        "mole ploughing",
        "deep solid tining",
        "hollow tining",
        "top dressing",
        "brushing",
        "rolling",
    ]
    assert sorted(told, key=lambda name: CATALOGUE[name].order) == told


@each
def test_settings_have_the_names_of_the_format(operation: Operation) -> None:
    assert {setting.name for setting in operation.settings} == SETTINGS[operation.name]


@each
def test_the_usual_settings_are_sane(operation: Operation) -> None:
    for setting in operation.settings:
        assert setting.low < setting.high
        for number in numbers(setting):
            assert setting.low <= number <= setting.high, setting.name
            assert isinstance(number, int if setting.kind is Kind.COUNT else float), setting.name


def numbers(setting: Setting) -> tuple[float, ...]:
    if setting.default is None or isinstance(setting.default, str):
        return ()
    return setting.default if isinstance(setting.default, tuple) else (setting.default,)


@each
def test_only_words_and_what_must_be_measured_have_no_default(operation: Operation) -> None:
    without = {s.name for s in operation.settings if s.default is None}
    assert without <= {"product", "seed", "rate", "area", "inside_diameter", "fill"}


@each
def test_what_enters_the_ground_asks_for_a_look_at_the_services(operation: Operation) -> None:
    if operation.opening in (Opening.CHANNELS, Opening.TRENCHES, Opening.HOLES):
        assert operation.enters_ground
    if operation.opening in (Opening.NONE, Opening.SAND):
        assert not operation.enters_ground


@each
def test_what_is_filled_has_openings(operation: Operation) -> None:
    assert operation.filled is (operation.opening is Opening.HOLES)


@each
def test_what_leaves_a_green_open_is_not_what_a_golfer_notices_most(operation: Operation) -> None:
    if operation.while_working is WhileWorking.OPEN:
        assert operation.noticed < Noticed.CLEARLY


@each
def test_a_pace_is_that_of_people(operation: Operation) -> None:
    if operation.pace:
        assert 0.3 <= operation.pace.width_m <= 3
        assert 0.1 <= operation.pace.speed_km_h <= 8  # at a walk, or a slow drive
        assert 0 < operation.pace.efficiency <= 1
        assert 1 <= operation.pace.people <= 6
        assert operation.pace.minutes_between_greens > 0


@each
def test_a_name_fits_into_files_and_calendars(operation: Operation) -> None:
    assert re.fullmatch("[a-z]+(-[a-z]+)*", operation.slug)
    assert operation.setting("nothing") is None
    for setting in operation.settings:
        assert operation.setting(setting.name) is setting


@each
def test_every_kind_of_work_is_explained(operation: Operation) -> None:
    text = (TEXTS / f"{operation.slug}.md").read_text(encoding="utf-8")
    assert re.search("^title: .+", text, re.MULTILINE)
    assert re.search(r"^line: .+\.$", text, re.MULTILINE)
    first = ["What we do", "Why", "Why now", "If we do not"]
    sections = [*first, "What you will see", "Your game", "How long"]
    assert re.findall("^## (.+)$", text, re.MULTILINE) == sections
    for body in re.split("^## .+$", text, flags=re.MULTILINE)[1:]:
        assert body.strip()


def test_no_text_explains_a_work_that_is_not_in_the_catalogue() -> None:
    assert {path.stem for path in TEXTS.glob("*.md")} == {entry.slug for entry in ENTRIES}
