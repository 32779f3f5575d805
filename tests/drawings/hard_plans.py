"""Programmes that drawings are tested on: the examples, and plans that are hard to draw."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

from notices.drawings.model import Drawing
from notices.drawings.of_period import drawings_of
from notices.drawings.sizes import PAGE, PHONE
from notices.operations import CATALOGUE, TEXT_SECTIONS, Opening, Operation
from notices.programme.model import Programme
from notices.wording.words import Words
from tests.documents.building import ISSUED
from tests.drawings.clubs import NAMES, words_of
from tests.wording.small_plans import plan, programme, work

DAY = "2027-08-09"

OPENS = {Opening.HOLES, Opening.SLITS, Opening.CHANNELS, Opening.TRENCHES}
OPENING = [name for name, entry in CATALOGUE.items() if entry.opening in OPENS]
CLAY = {"clay": "40 %", "sand": "20 %"}


def at_once(*works: dict[str, Any], club: dict[str, object] | None = None, **course: object) -> Any:
    data = plan(*works, club=club)
    data["course"] |= course
    return data


def _at(operation: Operation, end: str) -> dict[str, Any]:
    """Return a work with all of its sizes as small, or as large, as may be."""
    settings: dict[str, object] = {}
    for setting in operation.settings:
        size = getattr(setting, end)
        if setting.name in {"inside_diameter", "area"}:
            continue
        unit = {"length": "mm", "spacing": "mm"}.get(setting.kind.value, "")
        settings[setting.name] = (
            f"{size:g} x {size:g} mm"
            if setting.kind.value == "spacing"
            else (f"{size:g} {unit}" if unit else int(size))
        )
    if end == "low" and operation.opening is Opening.TRENCHES:
        settings["depth"] = "300 mm"
    if end == "high" and operation.opening is not Opening.CHANNELS and "passes" in settings:
        settings["passes"] = 2
    return work(operation.name, DAY, settings=settings)


US: dict[str, object] = {"language": "en-US", "units": "imperial"}

LONG_NAME = "Pressing compressed air into the ground far below the green with a long hollow lance"


LONG_TEXT = "\n\n".join(
    [f"title: {LONG_NAME}\nline: We do it."] + [f"## {part}\nWords." for part in TEXT_SECTIONS]
)


def _everything() -> list[dict[str, Any]]:
    names = ["scarifying", "verticutting", "mole ploughing", "slitting", "deep solid tining"]
    names += ["solid tining", "needle tining", "hollow tining", "drill and fill", "top dressing"]
    return [work(name, DAY) for name in names]


HARD: dict[str, Any] = {
    "everything": at_once(*_everything(), soil=CLAY, drains="a ditch"),
    "everything in inches": at_once(*_everything(), club=US, soil=CLAY),
    "a trench among holes": at_once(work("drain trenching", DAY), work("hollow tining", DAY)),
    "a drain named": at_once(work("hollow tining", DAY), work("brushing", DAY), drains="a tile"),
    "sand alone": at_once(work("top dressing", DAY)),
    "turf alone": at_once(work("turfing", DAY)),
    "turf alone in inches": at_once(work("turfing", DAY), club=US),
    "a roller alone": at_once(work("rolling", DAY)),
    "sand alone in inches": at_once(work("top dressing", DAY), club=US),
    "deep sand": at_once(work("top dressing", DAY, settings={"rate": "15 kg/m2"})),
    "higher and lower grass": at_once(
        work("raising the height of cut", DAY, settings={"from": "1.5 mm", "to": "30 mm"}),
        work("clean-up cut", DAY, settings={"from": "8 mm", "to": "3.5 mm"}),
    ),
    "shallow slits and sand": at_once(work("verticutting", DAY), work("top dressing", DAY)),
    "two passes": at_once(
        work("hollow tining", DAY, settings={"passes": 2}),
        work("scarifying", DAY, settings={"passes": 2}),
        work("top dressing", DAY, settings={"fill": "holes"}),
    ),
    "oblong pattern": at_once(work("solid tining", DAY, settings={"spacing": "60 x 35 mm"})),
    "close and wide together": at_once(
        work("drill and fill", DAY, settings={"spacing": "400 x 400 mm"}),
        work("verticutting", DAY, settings={"blade_spacing": "5 mm", "passes": 6}),
    ),
    "sand by nature": at_once(
        work("needle tining", DAY), work("top dressing", DAY), soil={"clay": "3 %", "sand": "94 %"}
    ),
    "thick thatch": {
        **at_once(work("hollow tining", DAY), work("scarifying", DAY)),
        "measurements": [
            {"date": "2027-02-01", "green": 3, "thatch_depth": "180 mm"},
            {"date": "2027-02-01", "green": 4, "thatch_depth": "22 mm"},
        ],
    },
    **{f"smallest {name}": at_once(_at(CATALOGUE[name], "low"), soil=CLAY) for name in OPENING},
    **{f"largest {name}": at_once(_at(CATALOGUE[name], "high"), soil=CLAY) for name in OPENING},
}


def _long_named() -> Programme:
    """A programme in which a kind of work bears a name longer than any label."""
    found = programme(HARD["everything"], ISSUED)
    renamed = tuple(
        replace(each, operation=replace(each.operation, text=LONG_TEXT)) for each in found.works
    )
    by_id = {each.id: each for each in renamed}
    periods = tuple(
        replace(period, works=tuple(by_id[each.id] for each in period.works))
        for period in found.periods
    )
    return replace(found, works=renamed, periods=periods)


@cache
def clubs() -> dict[str, Programme]:
    """Every programme by its name."""
    found = {name: words_of(name).programme for name in NAMES}
    found |= {name: programme(data, ISSUED) for name, data in HARD.items()}
    return found | {"a long name": _long_named()}


@cache
def drawn() -> dict[str, tuple[Words, Drawing]]:
    """Every drawing of every programme, by the names of both."""
    return {
        f"{name}: {drawing.name}": (Words(programme), drawing)
        for name, programme in clubs().items()
        for period in programme.periods
        for sizes in (PAGE, PHONE)
        for drawing in drawings_of(Words(programme), period, sizes)
    }
