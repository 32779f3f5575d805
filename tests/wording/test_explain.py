"""One figure in plain text: everything of it, with the numbers put in."""

from __future__ import annotations

import ast
import datetime as dt
import math
import operator
import re
from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner

from notices.cli import main
from notices.plan.load import load_plan
from notices.programme.model import Programme
from notices.programme.work_out import work_out
from notices.wording.explain import explain

ProgrammeOf = Callable[..., Programme]

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*/plan.yaml"))

PLAN = """\
club: {name: Marl Hill}
course: {greens: [{green: 1-2, area: 480 m2}]}
works:
  - operation: hollow tining
    dates: 2026-09-01
    settings: {tine_diameter: 10 mm, spacing: 50 x 50 mm, depth: 50 mm, passes: 1}
  - {operation: top dressing, dates: 2026-09-01, settings: {fill: holes}}
"""


@pytest.fixture
def programme_of(tmp_path: Path) -> ProgrammeOf:
    """Write a plan, load it and work it out."""

    def make(text: str) -> Programme:
        path = tmp_path / "plan.yaml"
        path.write_text(text, encoding="utf-8")
        return work_out(load_plan(path).plan, dt.date(2026, 1, 5))

    return make


def test_a_figure_as_worked_by_hand(programme_of: ProgrammeOf) -> None:
    # woods2009: 10 mm at 50 × 50 mm is 3.1 %.
    text = explain(programme_of(PLAN), "hollow-tining-1/surface-disturbed/all")
    assert (
        text
        == """\
Surface disturbed: 3.14 %
  hollow tining (hollow-tining-1), 2026-09-01, all greens

How
  100 × (π × diameter² ÷ 4) ÷ (spacing along × spacing across) × passes
Put in
  100 × (π × (10 mm)² ÷ 4) ÷ (50 mm × 50 mm) × 1
With
  diameter: 10 mm
  spacing along: 50 mm
  spacing across: 50 mm
  passes: 1
Result
  3.14 %
Unrounded
  3.1415926535897936 %
Source
  plain geometry or the definition of a unit [derived]
  M. Woods, “Core aeration of putting greens: how much is enough?”, Asian Turfgrass
    Center, 2009 [trade press]
Default
  none: all of it rests on what the plan says
Id
  hollow-tining-1/surface-disturbed/all"""
    )


PUT_IN = [  # name of a figure of PLAN, and its formula with the numbers put in
    # 10 mm at 50 × 50 mm, 50 mm deep: π/100 × 50 mm = 1.570796327 L/m²; on 480 m² 0.7539822369 m³.
    ("top-dressing-1/sand/1", "1.570796327 L/m² ÷ 1000 × 1 × (1 + 0.05) × 480 m²"),
    (
        "hollow-tining-1/barrows-of-material-removed/1",
        "0.7539822369 m³ ÷ 0.08 m³ of a wheelbarrow, rounded up; volume as it lay in the ground",
    ),
    (
        "hollow-tining-1/mass-of-material-removed/1",
        "(π × (10 mm)² ÷ 4) ÷ (50 mm × 50 mm) × 50 mm ÷ 1000 × 1 × 480 m² × 1.292 t/m³",
    ),
    ("top-dressing-1/sand-on-the-surface/1", "1.570796327 mm × 1 − 1.570796327 L/m², not below 0"),
    ("all/rise-of-the-surface/1", "−1.570796327 mm + 1.570796327 mm"),
    ("hollow-tining-1/growth-potential/all", "at most 1 for warm-season grass above its optimum"),
]


@pytest.mark.parametrize(("name", "put_in"), PUT_IN)
def test_numbers_are_put_in_for_the_words_of_the_formula(
    programme_of: ProgrammeOf, name: str, put_in: str
) -> None:
    told = " ".join(explain(programme_of(PLAN), name).split())
    assert put_in in told.partition("Put in")[2].partition(" With ")[0]


def test_what_is_only_named_is_not_put_in(programme_of: ProgrammeOf) -> None:
    """A word of a formula that an input is called too need not be that input."""
    measured = "measurements: [{date: 2026-08-01, green: 1, thatch_depth: 22 mm}]\n"
    programme = programme_of(PLAN + measured)
    below = " ".join(explain(programme, "depth-below-the-thatch/1").split())
    # 50 mm deep, 22 mm of thatch.
    assert "Put in 50 mm − 22 mm; usual are 10 to 15 mm With" in below
    mean = explain(programme, "all/rise-of-the-surface/all")
    assert "mean over the greens, by area," in mean
    assert "\nPut in" not in mean


OPERATORS: Mapping[type[ast.operator], Callable[[float, float], float]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: operator.pow,
}
SIGNS = str.maketrans({"²": "**2", "½": "0.5", "π": repr(math.pi), "−": "-", "×": "*", "÷": "/"})
UNIT = re.compile(r"(?<=\d) [a-zA-Z°%]\S*?( of a \w+)?(?=[ )]|$)")


def worked(node: ast.expr) -> float:
    match node:
        case ast.Constant(value=int() | float() as number):
            return number
        case ast.BinOp(left=left, op=op, right=right):
            return OPERATORS[type(op)](worked(left), worked(right))
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return -worked(operand)
        case ast.Call(func=ast.Name(id="exp"), args=[power]):
            return math.exp(worked(power))
        case _:
            raise ValueError(ast.dump(node))


def by_hand(put_in: str) -> float | None:
    """Work out a formula with numbers put in; None where it is words."""
    sum_, *words = re.split(r", |; ", re.sub(r"(?<=\d),(?=\d{3})", "", put_in))
    try:
        value = worked(ast.parse(UNIT.sub("", sum_).translate(SIGNS), mode="eval").body)
    except (SyntaxError, ValueError):
        return None
    for said in words:
        if said.startswith("rounded up"):
            value = math.ceil(value - 1e-6)
        elif said == "not below 0":
            value = max(value, 0)
        elif said.startswith("× "):
            value *= float(said.removeprefix("× "))
    return value


def told_by_hand(programme: Programme) -> set[str]:
    """Check every figure whose formula is a sum to be done, and name their quantities."""
    found = set()
    for figure in programme.figures:
        text = explain(replace(programme, figures=(figure,)), figure.id)
        put_in = re.search(r"\n(?:Put in.*|How)\n((?:  .*\n)+)With\n", text)
        assert put_in, text
        value = by_hand(" ".join(put_in[1].split()))
        # Warm-season grass above its optimum grows as well as at it, as the formula says.
        if value is not None and not (figure.quantity.startswith("growth") and figure.value == 1):
            assert figure.value == pytest.approx(value, rel=1e-7, abs=1e-8), text
            found.add(re.sub(r", dressing \d+| \d{4}$", "", figure.quantity))
    return found


def test_who_works_the_formula_out_again_gets_the_figure(programme_of: ProgrammeOf) -> None:
    every = PLAN.replace("club: {name: Marl Hill}", "club: {name: Marl Hill, currency: GBP}")
    programme = programme_of(
        f"""{every}  - {{operation: scarifying, dates: 2026-09-01}}
  - {{operation: mole ploughing, dates: 2026-06-01}}
  - {{operation: drain trenching, dates: 2026-11-01}}
  - {{operation: turfing, dates: 2026-11-10, settings: {{area: 20 m2}}}}
  - {{operation: top dressing, dates: 2026-05-03, settings: {{rate: 0.7 kg/m2, dressings: 2}}}}
sand: {{price_per_tonne: 40}}
measurements:
  - {{date: 2026-03-01, green: 1, thatch_depth: 30 mm}}
  - {{date: 2026-12-01, green: 1, thatch_depth: 25 mm}}
crew:
  people: 3
  hour_price: 20
  clearing_cores: {{people: 3, m3_per_person_hour: 1.2}}
  hauling_sand: {{m3_per_load: 0.8, minutes_per_load: 10}}
"""
    )
    assert told_by_hand(programme) == {
        *("holes per m2", "holes", "surface disturbed", "slit length", "material removed"),
        *("mass of material removed", "barrows of material removed", "channel length"),
        *("trailers of material removed", "trench length", "turf laid", "growth potential"),
        *("sand", "mass of sand", "lorry loads", "sand on the surface", "dressings needed"),
        *("mass of sand on the surface", "cost of sand", "clearing time", "hauling time"),
        *("work time", "hours of people", "cost of labour", "cost", "rise of the surface"),
        *("surface opened by holes, year", "surface cut by slits, year", "sand in the year"),
        *("depth below the thatch", "depth of thatch, change"),
    }


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.parent.name)
def test_the_figures_of_an_example_can_be_worked_out_again(path: Path) -> None:
    programme = work_out(load_plan(path).plan, dt.date(2026, 1, 5))
    assert told_by_hand(programme) or not programme.figures
    for figure in programme.figures:
        plural = re.search(r"[a-z]{2,}s\b", figure.unit)
        if plural and "club_measurement" not in figure.source:
            assert figure.unit_of_one == re.sub(r"s\b", "", figure.unit, count=1)
        else:
            assert figure.unit_of_one == "", figure.id


def test_one_is_told_in_the_singular(programme_of: ProgrammeOf) -> None:
    # 0.75 m³ are less than one trailer of 1.5 m³.
    told = explain(programme_of(PLAN), "hollow-tining-1/trailers-of-material-removed/1")
    assert told.startswith("Trailers of material removed: 1 trailer load\n")


def test_every_figure_can_be_explained(programme_of: ProgrammeOf) -> None:
    programme = programme_of(PLAN)
    for figure in programme.figures:
        text = explain(programme, figure.id)
        for part in ("How", "With", "Result", "Source", "Default", "Id"):
            assert f"\n{part}\n" in text, figure.id
        assert figure.id in text
        for name, value in figure.inputs.items():
            if isinstance(value, str) and len(value) < 40:
                assert value in text, (figure.id, name)


def test_the_command(tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_text(PLAN, encoding="utf-8")
    done = CliRunner().invoke(
        main, ["explain", str(path), "lorry-loads/all", "--today", "2026-08-01"]
    )
    assert done.exit_code == 0
    assert done.stdout.startswith("Lorry loads: ")
    wrong = CliRunner().invoke(main, ["explain", str(path), "lorry-loafs/all"])
    assert wrong.exit_code == 1
    assert wrong.stdout == ""
    assert "all/lorry-loads/all" in wrong.stderr


def test_a_soil_that_cannot_hold_a_channel_stops_the_build(tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_text(
        "club: {name: Marl Hill}\n"
        "course: {greens: [{green: 1}], soil: {clay: 5 %, sand: 90 %}}\n"
        "works: [{operation: mole ploughing, dates: 2026-06-01}]\n",
        encoding="utf-8",
    )
    built = CliRunner().invoke(main, ["build", str(path), "--out", str(tmp_path / "pack")])
    assert built.exit_code == 1
    assert f"{path}:3:21: a soil with 5 % clay and 90 % sand meets none" in built.stderr
    assert not (tmp_path / "pack").exists()
    checked = CliRunner().invoke(main, ["check", str(path)])
    assert checked.exit_code == 1
    assert checked.stdout.startswith("Cannot be built:")


IN_INCHES = (
    PLAN.replace("Marl Hill", "Marl Hill, language: en-US, units: imperial")
    .replace("480 m2", "5400 sq ft")
    .replace("10 mm, spacing: 50 x 50 mm, depth: 50 mm", "1/2 in, spacing: 2 x 2 in, depth: 2 in")
)


@pytest.mark.parametrize(
    ("name", "told"),
    [
        # An inch is 25.4 mm by definition: 1/2 in is 12.7 mm, 2 in are 50.8 mm.
        ("surface-disturbed/all", "diameter: 0.5 in (12.7 mm) spacing along: 2 in (50.8 mm)"),
        (
            "surface-disturbed/all",
            "Put in, in the metric units of the formula 100 × (π × (12.7 mm)²",
        ),
        # 12 in of a foot hold 6 spacings of 2 in each way: 36 holes. A foot is 0.3048 m, so these
        # are 36 ÷ 0.3048² = 387.5 per m².
        ("holes-per-m2/all", "Result 36 per sq ft (388 per m²)"),
        # 5400 × 0.3048² = 501.676416.
        ("top-dressing-1/sand/1", "area: 5,400 sq ft (501.676416 m²)"),
        # Degrees between two temperatures: 18 °F = 10 °C apart; 5.5 °C apart are 9.9 °F.
        ("hollow-tining-1/growth-potential/all", "optimum: 68 °F (20 °C) spread: 9.9 °F (5.5 °C)"),
    ],
)
def test_a_club_that_measures_in_inches_reads_both(
    programme_of: ProgrammeOf, name: str, told: str
) -> None:
    assert told in " ".join(explain(programme_of(IN_INCHES), name).split())


def test_every_figure_can_be_explained_in_inches(programme_of: ProgrammeOf) -> None:
    programme = programme_of(IN_INCHES)
    metric = re.compile(r"\d (?:mm|m|m²|m³|L/m²|kg/m²|t|t/m³|km/h|°C)(?!\w)")
    for figure in programme.figures:
        text = explain(programme, figure.id)
        told = text.partition("\nWith\n")[2].partition("\nUnrounded\n")[0]
        assert not metric.search(re.sub(r"\([^()]*\)", "", told)), text
