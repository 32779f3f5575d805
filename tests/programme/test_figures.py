"""Figures: values by hand, and that each can be worked again from what it names."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from notices.programme.figures.quantity import Quantity, area_of
from notices.programme.model import Figure, Input, Programme
from notices.references import REFERENCES

ProgrammeOf = Callable[..., Programme]

GIVEN = """
course:
  greens: [{green: 1-2, area: 480 m2}]
  grass: cool-season
  optimum_temperature: 18 C
  monthly_mean_temperature: [4.1, 4.6, 6.2, 8.3, 11.0, 13.6, 15.8, 15.6, 13.3, 10.0, 6.6, 4.3]
sand: {density: 1.5 t/m3}
works:
"""


def figure(programme: Programme, quantity: str, work: str, green: str = "all") -> Figure:
    found = programme.figure(quantity, work, green)
    assert found is not None, (quantity, work, green)
    return found


def one(programme_of: ProgrammeOf, operation: str, settings: str = "{}", **more: str) -> Programme:
    rest = "".join(f", {name}: {value}" for name, value in more.items())
    return programme_of(
        f"{GIVEN}  - {{operation: {operation}, dates: 2026-10-12, settings: {settings}{rest}}}\n"
    )


HAND = [
    # woods2009: 10 mm at 50 × 50 mm: 400 holes/m², 3.1 %; 25 × 25 mm: 1,600 holes/m².
    ("solid tining", "{tine_diameter: 10 mm, spacing: 50 x 50 mm}", "holes per m2", 400),
    ("solid tining", "{tine_diameter: 10 mm, spacing: 25 x 25 mm}", "holes per m2", 1600),
    ("solid tining", "{spacing: 50 x 50 mm, passes: 2}", "holes per m2", 800),
    ("solid tining", "{spacing: 50 x 50 mm}", "holes", 400 * 960),
    ("solid tining", "{tine_diameter: 10 mm, spacing: 50 x 50 mm}", "surface disturbed", math.pi),
    # gcsaa_forum2013: 0.625 in outside at 1.5 × 1.5 in: 13.63 %.
    ("hollow tining", "{tine_diameter: 5/8 in, spacing: 1.5 x 1.5 in}", "surface disturbed", 13.63),
    # 13 mm outside, 10 mm inside: the core is π × 25 mm² in 2,500 mm², 80 mm deep, on 960 m².
    (
        "hollow tining",
        "{inside_diameter: 10 mm, spacing: 50 x 50 mm, depth: 80 mm}",
        "material removed",
        math.pi / 100 * 0.08 * 960,
    ),
    # The book's arithmetic for 2 mm blades at 25 mm: 8.0 %; 1,000 ÷ 25 = 40 m of slit per m².
    ("scarifying", "{blade_width: 2 mm, blade_spacing: 25 mm}", "surface disturbed", 8.0),
    ("scarifying", "{blade_spacing: 25 mm}", "slit length", 40 * 960),
    (
        "scarifying",
        "{blade_width: 2 mm, blade_spacing: 25 mm, depth: 20 mm}",
        "material removed",
        0.08 * 0.020 * 960,
    ),
    # Geometry: 1 ha at 2 m is 5,000 m, so 960 m² are 480 m.
    ("mole ploughing", "{spacing: 2 m}", "channel length", 480),
    ("drain trenching", "{spacing: 3 m, area: 300 m2}", "trench length", 200),
    ("drain trenching", "{spacing: 2 m, width: 100 mm}", "surface disturbed", 5),
    (
        "drain trenching",
        "{spacing: 2 m, width: 100 mm, depth: 500 mm, area: 300 m2}",
        "material removed",
        0.05 * 0.5 * 600,
    ),
    ("turfing", "{area: 20 m2}", "turf laid", 40),
]


@pytest.mark.parametrize(("operation", "settings", "quantity", "expected"), HAND)
def test_by_hand(
    programme_of: ProgrammeOf, operation: str, settings: str, quantity: str, expected: float
) -> None:
    programme = one(programme_of, operation, settings)
    found = figure(programme, quantity, programme.works[0].id)
    assert found.value == pytest.approx(expected, rel=4e-4)


def test_work_time_by_hand(programme_of: ProgrammeOf) -> None:
    # iowa_pm696: km/h × m × efficiency ÷ 10 = ha/h: 1.2 × 0.8 × 0.6 ÷ 10 = 0.0576 ha/h, so
    # 480 m² take 50 minutes; and 8 between greens.
    programme = programme_of(f"""{GIVEN}  - {{operation: hollow tining, dates: 2026-10-12}}
crew:
  people: 3
  machines: [{{operation: hollow tining, width: 0.8 m, speed: 1.2 km/h, efficiency: 60 %,
              minutes_between_greens: 8}}]
""")
    assert figure(programme, "work time", "hollow-tining-1", "1").value == pytest.approx(58)
    assert figure(programme, "work time", "hollow-tining-1").value == pytest.approx(116)


def test_clearing_and_hauling_by_hand(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{GIVEN}
  - operation: hollow tining
    dates: 2026-10-12
    settings: {{tine_diameter: 13 mm, inside_diameter: 10 mm, spacing: 50 x 50 mm, depth: 75 mm, passes: 1}}
  - {{operation: top dressing, dates: 2026-10-12, settings: {{fill: holes, dressings: 2}}}}
crew:
  people: 3
  clearing_cores: {{people: 3, m3_per_person_hour: 1.2}}
  hauling_sand: {{m3_per_load: 0.8, minutes_per_load: 10}}
""")
    # definition: 400 cores per m², each π × 5² × 75 mm³ = 5.890 cm³, are 2.356 L/m², and 1.131 m³
    # from 480 m²; three people at 1.2 m³ an hour take 0.314 h.
    cleared = figure(programme, "clearing time", "hollow-tining-1", "1")
    assert cleared.value == pytest.approx(18.85, abs=0.01)
    assert figure(programme, "clearing time", "hollow-tining-1").value == pytest.approx(
        37.70, abs=0.02
    )
    # Holes of 400 × π × 6.5² × 75 mm³ are 3.982 L/m²; half of them and 5 % waste for 480 m² are
    # 1.003 m³, two loads of 0.8.
    hauled = figure(programme, "hauling time, dressing 1", "top-dressing-1", "1")
    assert (hauled.value, hauled.inputs["loads"]) == (20, 2)
    both = figure(programme, "hauling time, dressing 1", "top-dressing-1")
    assert (both.value, both.inputs["loads"]) == (40, 4)
    assert hauled.default_used  # the waste
    assert not cleared.default_used


def test_the_length_of_a_day_can_be_traced(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{GIVEN}  - {{operation: rolling, dates: 2026-06-01}}
crew:
  people: 3
  working_day: 07:00 to 09:00
  machines: [{{operation: rolling, width: 1 m, speed: 1 km/h, efficiency: 60 %,
              minutes_between_greens: 12}}]
""")
    # Two greens of an hour each, and the rest of an hour from 07:30.
    found = figure(programme, "length of the day, 2026-06-01", "all")
    assert found.value == 180
    assert (found.inputs["start"], found.inputs["finish"]) == ("07:00", "10:00")
    assert found.inputs["limited_by"] == "a machine"
    assert found.default_used


def test_growth_potential_is_that_of_its_temperature(programme_of: ProgrammeOf) -> None:
    found = figure(one(programme_of, "scarifying"), "growth potential", "scarifying-1")
    inputs = {name: value for name, value in found.inputs.items() if isinstance(value, float)}
    # gelernter_stowell2005, with the optimum for annual meadow-grass.
    assert found.value == pytest.approx(
        math.exp(-0.5 * ((inputs["temperature_c"] - 18) / 5.5) ** 2)
    )
    # Durham's October mean is 10.0 °C; on the 12th it is a little warmer than in mid-month.
    assert 10.0 < inputs["temperature_c"] < 11.0


# What each recipe says in words, written again from the words.
WORKED: dict[str, Callable[[dict[str, float]], float]] = {
    "holes per m2": lambda i: 1e6 / (i["along_mm"] * i["across_mm"]) * i["passes"],
    "holes": lambda i: 1e6 / (i["along_mm"] * i["across_mm"]) * i["passes"] * i["area_m2"],
    "slit length": lambda i: i["area_m2"] / (i["blade_spacing_mm"] / 1000) * i["passes"],
    "channel length": lambda i: i["area_m2"] / i["spacing_m"],
    "trench length": lambda i: i["area_m2"] / i["spacing_m"],
    "turf laid": lambda i: i["area_m2"],
    "mass of sand": lambda i: i["volume_m3"] * i["density_t_m3"],
    "growth potential": lambda i: math.exp(
        -0.5 * ((i["temperature_c"] - i["optimum_c"]) / i["spread_c"]) ** 2
    ),
    "work time": lambda i: (
        60 * i["area_m2"] / (1000 * i["speed_km_h"] * i["width_m"] * i["efficiency"]) * i["passes"]
        + i["minutes_between_greens"] * i.get("greens", 1)
    ),
    "clearing time": lambda i: 60 * i["volume_m3"] / (i["people"] * i["m3_per_person_hour"]),
    "hauling time, dressing 1": lambda i: (
        math.ceil(i["volume_m3"] / i["m3_per_load"]) * i["minutes_per_load"]
        if "volume_m3" in i
        else i["loads"] * i["minutes_per_load"]
    ),
    "back in play, early": lambda i: i["reopens_after_days"],
}

EVERY_WORK = f"""{GIVEN}
  - {{operation: scarifying, dates: 2026-09-01}}
  - {{operation: verticutting, dates: 2026-08-01, settings: {{passes: 2}}}}
  - {{operation: hollow tining, dates: 2026-09-01 to 2026-09-02}}
  - {{operation: deep solid tining, dates: 2026-09-01 to 2026-09-02, greens: 1}}
  - {{operation: drill and fill, dates: 2026-03-01}}
  - {{operation: mole ploughing, dates: 2026-09-01}}
  - {{operation: drain trenching, dates: 2026-11-01, reopen: 14 days later}}
  - {{operation: turfing, dates: 2026-11-10, settings: {{area: 20 m2}}}}
  - {{operation: top dressing, dates: 2026-09-03, settings: {{fill: holes, dressings: 3}}}}
  - {{operation: top dressing, dates: 2026-05-03, settings: {{rate: 0.7 kg/m2, dressings: 2}}}}
  - {{operation: top dressing, dates: 2026-06-03}}
  - {{operation: rolling, dates: 2026-06-03}}
  - {{operation: overseeding, dates: 2026-06-03}}
"""


def test_every_figure_can_be_worked_again_from_its_inputs(programme_of: ProgrammeOf) -> None:
    worked = set()
    for found in programme_of(EVERY_WORK).figures:
        if (recipe := WORKED.get(found.quantity)) is not None:
            inputs = {n: float(v) for n, v in found.inputs.items() if isinstance(v, float | int)}
            assert found.value == pytest.approx(recipe(inputs)), found.id
            worked.add(found.quantity)
    assert worked == set(WORKED)


def test_sand_can_be_worked_again_from_its_inputs(programme_of: ProgrammeOf) -> None:
    found = [
        f
        for f in programme_of(EVERY_WORK).figures
        if f.quantity == "sand" or f.quantity.startswith("sand, ")
    ]
    for each in found:
        i = {n: float(v) for n, v in each.inputs.items() if isinstance(v, float | int)}
        if each.work == "all":
            expected = sum(i.values())
        elif "open_m3" in i:
            expected = i["open_m3"] * i["share"] * (1 + i["waste"])
        elif "share" in i:
            expected = i["open_l_per_m2"] / 1000 * i["share"] * (1 + i["waste"]) * i["area_m2"]
        else:
            expected = i["rate_kg_m2"] / i["density_t_m3"] / 1000 * i["dressings"] * i["area_m2"]
        assert each.value == pytest.approx(expected), each.id
    assert len({each.formula for each in found}) == 4


def test_every_figure_says_how_and_on_whose_authority(programme_of: ProgrammeOf) -> None:
    programme = programme_of(EVERY_WORK)
    assert len({found.id for found in programme.figures}) == len(programme.figures)
    for found in programme.figures:
        assert found.formula, found.id
        assert found.unit, found.id
        assert found.inputs, found.id
        assert len(found.inputs) == len(found.worked_from), found.id  # no name twice
        assert not set("{}") & set(found.formula), found.id
        assert found.source, found.id
        assert set(found.source) <= set(REFERENCES), found.id
        assert len(set(found.source)) == len(found.source), found.id
        assert " " not in found.id
        assert "," not in found.id


def test_a_recipe_can_only_name_what_the_figure_is_worked_out_from() -> None:
    length = Quantity("trench length", "m", "{area_m2} ÷ {spacing_m}", ("definition",))
    spacing = Input("spacing_m", 3.0, "spacing", "m")
    made = length.of("work", 160.0, (area_of(480.0), spacing), default_used=False)
    assert made.formula == "area ÷ spacing"
    with pytest.raises(ValueError, match="area_m2"):
        length.of("work", 160.0, (spacing,), default_used=False)


def test_the_parts_of_a_sum_have_its_unit() -> None:
    # 1.5 + 2.25 = 3.75
    hours = Quantity("hours of people", "h", "sum over the works", ("definition",))
    both = hours.sum_of("all", {"cores": 1.5, "sand": 2.25}, default_used=False)
    assert both.value == 3.75
    assert both.inputs == {"cores": 1.5, "sand": 2.25}
    assert {part.unit for part in both.worked_from} == {"h"}


def test_names_of_greens_cannot_make_two_figures_one(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: "All, Practice green, Practice-green, 练习"}]}
        works: [{operation: scarifying, dates: 2026-10-12}]
    """)
    assert [green.slug for green in programme.greens.values()] == [
        "all-2",
        "practice-green",
        "practice-green-2",
        "green",
    ]
    assert len({found.id for found in programme.figures}) == len(programme.figures)


FULL_HOLES = "{tine_diameter: 12 mm, spacing: 50 x 50 mm, depth: 70 mm, passes: 1}"
WITHOUT = [
    # quantity, setting that is missing, whether it matters
    ("holes per m2", "spacing: 50 x 50 mm, ", True),
    ("holes per m2", ", passes: 1", True),
    ("holes per m2", "tine_diameter: 12 mm, ", False),
    ("holes per m2", "depth: 70 mm, ", False),
    ("surface disturbed", "tine_diameter: 12 mm, ", True),
    ("surface disturbed", "depth: 70 mm, ", False),
    ("fully healed, late", "tine_diameter: 12 mm, ", True),
    ("fully healed, late", "spacing: 50 x 50 mm, ", False),
    ("fully healed, late", "depth: 70 mm, ", False),
]


@pytest.mark.parametrize(("quantity", "missing", "matters"), WITHOUT)
def test_a_default_is_told_where_it_matters(
    programme_of: ProgrammeOf, quantity: str, missing: str, matters: bool
) -> None:
    full = one(programme_of, "solid tining", FULL_HOLES, reopen="next morning")
    less = one(
        programme_of,
        "solid tining",
        FULL_HOLES.replace(missing, ""),
        reopen="next morning",
    )
    green = "1" if "," in quantity else "all"
    assert not figure(full, quantity, "solid-tining-1", green).default_used
    assert figure(less, quantity, "solid-tining-1", green).default_used is matters


OF_THE_PLAN = [
    # what is taken out of the plan, quantity, whether it matters
    (", area: 480 m2", "holes", True),
    (", area: 480 m2", "holes per m2", False),
    ("  optimum_temperature: 18 C\n", "growth potential", True),
    ("  grass: cool-season\n", "growth potential", True),
    ("  optimum_temperature: 18 C\n", "holes", False),
]


@pytest.mark.parametrize(("missing", "quantity", "matters"), OF_THE_PLAN)
def test_a_default_of_the_course_is_told_where_it_matters(
    programme_of: ProgrammeOf, missing: str, quantity: str, matters: bool
) -> None:
    work = f"  - {{operation: solid tining, dates: 2026-10-12, settings: {FULL_HOLES}}}\n"
    assert missing in GIVEN
    full, less = programme_of(GIVEN + work), programme_of(GIVEN.replace(missing, "") + work)
    assert not figure(full, quantity, "solid-tining-1").default_used
    assert figure(less, quantity, "solid-tining-1").default_used is matters


def test_material_removed_rests_on_a_default_without_an_inside_diameter(
    programme_of: ProgrammeOf,
) -> None:
    programme = one(programme_of, "hollow tining", FULL_HOLES)
    assert figure(programme, "material removed", "hollow-tining-1").default_used
    told = one(programme_of, "hollow tining", FULL_HOLES.replace("}", ", inside_diameter: 9 mm}"))
    assert not figure(told, "material removed", "hollow-tining-1").default_used
    # Nobody has weighed the cores of this club.
    assert figure(told, "mass of material removed", "hollow-tining-1").default_used


@pytest.mark.parametrize("missing", ["rate: 0.7 kg/m2, ", "dressings: 2, "])
def test_sand_by_rate_rests_on_what_the_club_left_out(
    programme_of: ProgrammeOf, missing: str
) -> None:
    settings = "{rate: 0.7 kg/m2, dressings: 2, days_between: 7}"
    full = one(programme_of, "top dressing", settings)
    less = one(programme_of, "top dressing", settings.replace(missing, ""))
    assert not figure(full, "mass of sand", "top-dressing-1").default_used
    assert figure(less, "mass of sand", "top-dressing-1").default_used


def test_sand_that_fills_holes_always_rests_on_the_usual_waste(
    programme_of: ProgrammeOf,
) -> None:
    programme = one(programme_of, "top dressing", "{fill: holes, dressings: 2, days_between: 7}")
    assert figure(programme, "sand", "top-dressing-1").default_used


def test_work_time_of_a_half_described_machine_rests_on_the_book(
    programme_of: ProgrammeOf,
) -> None:
    def timed(machine: str) -> bool:
        return figure(
            programme_of(
                f"{GIVEN}  - {{operation: clean-up cut, dates: 2026-10-12}}\n"
                f"crew: {{people: 3, machines: [{{operation: clean-up cut, {machine}}}]}}\n"
            ),
            "work time",
            "clean-up-cut-1",
        ).default_used

    assert timed("width: 0.5 m, speed: 4 km/h")
    assert not timed("width: 0.5 m, speed: 4 km/h, efficiency: 60 %, minutes_between_greens: 6")


def test_the_members_dates_can_be_traced(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{GIVEN}
  - {{operation: hollow tining, dates: 2026-10-12 to 2026-10-13, reserve_dates: 2026-10-15}}
""")
    period = programme.periods[0]
    for quantity, day in (
        ("open again, expect by", period.open_again.expect_by),
        ("open again, at worst", period.open_again.at_worst),
        ("putting well, expect by", period.putting_well.expect_by),
        ("putting well, at worst", period.putting_well.at_worst),
    ):
        found = figure(programme, quantity, "hollow-tining-1")
        assert day is not None
        assert found.value == (day - period.days[-1]).days
        assert found.inputs["day"] == day.isoformat()
        assert found.inputs["reserve_delay_days"] == 2
        assert found.inputs["green"] == "2"


def test_a_work_that_opens_nothing_has_nothing_to_heal(programme_of: ProgrammeOf) -> None:
    programme = one(programme_of, "rolling")
    assert programme.figure("fully healed, late", "rolling-1", "1") is None
    assert figure(programme, "back in play, late", "rolling-1", "1").value == 0
