"""Sand, from a whole plan: what is opened, what fills it, how it is shared out."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from notices.programme.model import Programme

ProgrammeOf = Callable[..., Programme]

WASTE = 1.05  # brief: "an order adds waste (default 5 %)"


def value(programme: Programme, quantity: str, work: str, green: str = "all") -> float:
    figure = programme.figure(quantity, work, green)
    assert figure is not None
    assert figure.value is not None
    return figure.value


def test_woods_2021_through_a_whole_plan(programme_of: ProgrammeOf) -> None:
    # woods2021: 12 mm, 50 × 50 mm, 70 mm deep: holes hold 3.167 mm (litres per m²) of sand;
    # 4,092 g/m² of material come out of holes as wide as the tine. Printed to four figures.
    programme = programme_of("""
        course: {greens: [{green: 1, area: 1000 m2}]}
        works:
          - operation: hollow tining
            dates: 2026-10-12
            settings: {tine_diameter: 12 mm, spacing: 50 x 50 mm, depth: 70 mm}
          - {operation: top dressing, dates: 2026-10-12, settings: {fill: holes}}
    """)
    # 1,000 m² × 3.167 L/m² = 3.167 m³ of holes.
    assert value(programme, "sand", "top-dressing-1") == pytest.approx(3.167 * WASTE, rel=2e-4)
    assert value(programme, "mass of material removed", "hollow-tining-1") == pytest.approx(
        4.092, rel=2e-4
    )
    assert value(programme, "surface disturbed", "hollow-tining-1") == pytest.approx(4.5, abs=0.05)
    # Without a density of the club's own it is 1.6 t/m³ (daniels2018).
    assert value(programme, "mass of sand", "top-dressing-1") == pytest.approx(
        3.167 * WASTE * 1.6, rel=2e-4
    )


@pytest.mark.parametrize(("depth", "counted_mm"), [("225 mm", 60), ("60 mm", 60), ("55 mm", 55)])
def test_deep_solid_holes_count_for_sixty_millimetres_only(
    programme_of: ProgrammeOf, depth: str, counted_mm: float
) -> None:
    # Common practice, no published source: below 60 mm they close in clay.
    programme = programme_of(f"""
        course: {{greens: [{{green: 1, area: 1000 m2}}]}}
        works:
          - operation: deep solid tining
            dates: 2026-10-12
            settings: {{tine_diameter: 20 mm, spacing: 100 x 100 mm, depth: {depth}}}
          - {{operation: top dressing, dates: 2026-10-12, settings: {{fill: holes}}}}
    """)
    # A hole of 314.16 mm² in 10,000 mm² is 3.1416 % of the surface.
    assert value(programme, "sand", "top-dressing-1") == pytest.approx(
        math.pi / 100 * counted_mm * WASTE
    )


def test_half_of_a_fill_at_first_and_the_rest_in_equal_parts(programme_of: ProgrammeOf) -> None:
    # Common practice, no published source.
    programme = programme_of("""
        course: {greens: [{green: 1-2, area: 500 m2}]}
        works:
          - {operation: hollow tining, dates: 2026-10-12}
          - {operation: top dressing, dates: 2026-10-12, settings: {fill: holes, dressings: 3}}
    """)
    whole = value(programme, "sand", "top-dressing-1")
    shares = [
        value(programme, f"sand, dressing {number}", "top-dressing-1") / whole
        for number in (1, 2, 3)
    ]
    assert shares == pytest.approx([0.5, 0.25, 0.25])


def test_every_dressing_of_a_rate_is_a_whole_one(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        sand: {density: 1.5 t/m3}
        course: {greens: [{green: 1, area: 100 m2}]}
        works:
          - operation: top dressing
            dates: 2026-05-12
            settings: {rate: 0.75 kg/m2, dressings: 4, days_between: 14}
    """)
    # woods2017: 75 kg on 100 m² are 0.5 mm, and 1 L is 1.5 kg: 0.05 m³ each time.
    assert value(programme, "sand, dressing 3", "top-dressing-1") == pytest.approx(0.05)
    assert value(programme, "mass of sand, dressing 3", "top-dressing-1") == pytest.approx(0.075)
    assert value(programme, "sand", "top-dressing-1") == pytest.approx(0.2)


def test_a_filling_takes_all_holes_since_the_last_one(programme_of: ProgrammeOf) -> None:
    settings = "{tine_diameter: 10 mm, spacing: 50 x 50 mm, depth: 50 mm}"
    programme = programme_of(f"""
        course: {{greens: [{{green: 1, area: 1000 m2}}]}}
        works:
          - {{operation: top dressing, dates: 2026-09-20, settings: {{fill: holes}}}}
          - {{operation: solid tining, dates: 2026-09-01, settings: {settings}}}
          - {{operation: top dressing, dates: 2026-09-05, settings: {{rate: 0.5 kg/m2}}}}
          - {{operation: hollow tining, dates: 2026-09-20, settings: {settings}}}
          - {{operation: hollow tining, dates: 2026-10-20, settings: {settings}}}
          - {{operation: top dressing, dates: 2026-10-21, settings: {{fill: holes}}}}
    """)
    # woods2009 prints 3.1 % for 10 mm at 50 × 50 mm; π/100 exactly. 50 mm deep: 1.5708 L/m².
    one = math.pi / 100 * 50 * WASTE
    by_work = {need.work: need for need in programme.sand}
    assert by_work["top-dressing-1"].fills == ("solid-tining-1", "hollow-tining-1")
    assert value(programme, "sand", "top-dressing-1") == pytest.approx(2 * one)
    assert by_work["top-dressing-2"].fills == ()
    assert by_work["top-dressing-3"].fills == ("hollow-tining-2",)
    assert value(programme, "sand", "top-dressing-3") == pytest.approx(one)
    assert value(programme, "sand", "all") == pytest.approx(3 * one + 0.5 / 1.6)


def test_slits_and_channels_take_no_sand(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1}]}
        works:
          - {operation: scarifying, dates: 2026-09-01}
          - {operation: mole ploughing, dates: 2026-09-01}
          - {operation: slitting, dates: 2026-09-01}
          - {operation: top dressing, dates: 2026-09-01, settings: {fill: holes}}
    """)
    assert value(programme, "sand", "top-dressing-1") == 0


def test_a_dressing_before_the_holes_does_not_fill_them(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1}]}
        works:
          - {operation: top dressing, dates: 2026-09-01, settings: {fill: holes}}
          - {operation: hollow tining, dates: 2026-09-02}
    """)
    assert programme.sand[0].fills == ()
    assert not programme.is_filled("hollow-tining-1")


def test_a_dressing_that_says_nothing_fills_or_covers_green_by_green(
    programme_of: ProgrammeOf,
) -> None:
    programme = programme_of("""
        sand: {density: 1.6 t/m3}
        course: {greens: [{green: 1-2, area: 1000 m2}]}
        works:
          - operation: hollow tining
            dates: 2026-09-01
            greens: 1
            settings: {tine_diameter: 10 mm, spacing: 50 x 50 mm, depth: 50 mm}
          - {operation: top dressing, dates: 2026-09-02}
    """)
    filled = math.pi / 100 * 50 * WASTE
    covered = 0.7 / 1.6  # the catalogue's 0.7 kg/m² on 1,000 m²: no waste, nothing misses
    assert value(programme, "sand", "top-dressing-1", "1") == pytest.approx(filled)
    assert value(programme, "sand", "top-dressing-1", "2") == pytest.approx(covered)
    assert value(programme, "sand", "top-dressing-1") == pytest.approx(filled + covered)


def test_a_job_of_several_days_opens_and_fills_once(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1, area: 1000 m2}]}
        works:
          - operation: hollow tining
            dates: 2026-09-01 to 2026-09-03
            settings: {tine_diameter: 10 mm, spacing: 50 x 50 mm, depth: 50 mm}
          - {operation: top dressing, dates: 2026-09-01 to 2026-09-03, settings: {fill: holes}}
          - {operation: top dressing, dates: 2026-09-20, settings: {fill: holes}}
    """)
    assert value(programme, "sand", "top-dressing-1") == pytest.approx(math.pi / 100 * 50 * WASTE)
    assert value(programme, "sand", "top-dressing-2") == 0


def test_sand_costs_what_the_plan_says(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        club: {name: Marl Hill, currency: GBP, sender: {email: course@marlhill.example}}
        sand: {density: 1.5 t/m3, price_per_tonne: 48}
        course: {greens: [{green: 1, area: 100 m2}]}
        works:
          - {operation: top dressing, dates: 2026-05-12, settings: {rate: 0.75 kg/m2, dressings: 2}}
    """)
    # 75 kg twice are 0.15 t at 48.
    cost = programme.figure("cost of sand", "all")
    assert cost is not None
    assert cost.value == pytest.approx(7.20)
    assert cost.unit == "GBP"
    assert not cost.default_used
