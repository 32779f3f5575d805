"""What an agronomist would say: a plan that brings each finding, and one that just does not."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from notices.findings import Weight
from notices.programme.agronomic_checks import AGRONOMIC_CHECKS
from notices.programme.model import Programme
from tests.programme.finding_tables import assert_found, assert_quiet, found

ProgrammeOf = Callable[..., Programme]

CLUB = "club: {name: Marl Hill, sender: {email: course@marlhill.example}}\n"
COURSE = """\
course:
  greens: [{green: 1-2, area: 480 m2}]
  optimum_temperature: 18 C
  monthly_mean_temperature: [4.1, 4.6, 6.2, 8.3, 11.0, 13.6, 15.8, 15.6, 13.3, 10.0, 6.6, 4.3]
"""
DRAINED = COURSE + "  drains: into the ditch\n"
ROLLING = "works: [{operation: rolling, dates: 2026-06-01}]\n"


def work(*texts: str) -> str:
    return "works:\n" + "".join(f"  - {{operation: {text}}}\n" for text in texts)


def soil(clay: int, sand: int) -> str:
    return DRAINED + f"  soil: {{clay: {clay} %, sand: {sand} %}}\n"


MOLES = "mole ploughing, dates: 2026-06-01, services_checked: true"
DEEP = "deep solid tining, dates: 2026-06-02, services_checked: true, settings: {depth: 300 mm}"
CORES = "hollow tining, dates: 2026-06-01, services_checked: true"
OPENED = "solid tining, dates: 2026-06-01, services_checked: true"


def dressed(settings: str, day: str = "2026-06-01") -> str:
    return work(f"top dressing, dates: {day}, settings: {{{settings}}}")


def measured(day: str, more: str = "thatch_depth: 22 mm") -> str:
    return f"measurements: [{{date: {day}, green: 2, {more}}}]\n"


# 50 mm deep and 20 mm of 100 × 100 mm: π/100 × 60 mm (deep holes count for 60 mm) = 1.885 mm,
# at 1.6 t/m³ 3.016 kg/m².
FULL = (
    "deep solid tining, dates: 2026-06-01, services_checked: true, "
    "settings: {tine_diameter: 20 mm, spacing: 100 x 100 mm}"
)
FILL = "top dressing, dates: 2026-06-01, settings: {fill: holes}"

TABLE = [
    (
        "soil-not-stated",
        Weight.THINK_AGAIN,
        DRAINED + work(MOLES),
        soil(47, 18) + work(MOLES),
    ),
    (
        # ahdb_moles: 30 % clay; agriculture_victoria2002: 35 %; ghane2022: 45 % and under 20 % sand.
        "soil-unsuitable-for-moles",
        Weight.INFORMATION,
        soil(45, 20) + work(MOLES),
        soil(45, 19) + work(MOLES),
    ),
    (
        "soil-unsuitable-for-moles",
        Weight.CANNOT_BUILD,
        soil(29, 30) + work(MOLES),
        soil(29, 30) + ROLLING,
    ),
    (
        "no-outfall-for-channels",
        Weight.THINK_AGAIN,
        COURSE + "  soil: {clay: 47 %, sand: 18 %}\n" + work(MOLES),
        soil(47, 18) + work(MOLES),
    ),
    (
        "deep-tining-into-channels",
        Weight.INFORMATION,
        soil(47, 18) + work(MOLES, DEEP),
        soil(47, 18) + work(MOLES, DEEP.replace("06-02", "05-31")),
    ),
    (
        "surface-against-targets",
        Weight.INFORMATION,
        COURSE + work(CORES),
        COURSE + ROLLING,
    ),
    (
        "sand-against-totals",
        Weight.INFORMATION,
        COURSE + dressed("rate: 0.7 kg/m2"),
        COURSE + ROLLING,
    ),
    (
        "dressing-too-heavy",
        Weight.THINK_AGAIN,
        COURSE + work(FULL, FILL),
        "sand: {most_per_dressing: 3.02 kg/m2}\n" + COURSE + work(FULL, FILL),
    ),
    (
        # Half of it at first.
        "dressing-too-heavy",
        Weight.THINK_AGAIN,
        COURSE + work(FULL, FILL),
        COURSE + work(FULL, FILL.replace("holes", "holes, dressings: 2")),
    ),
    (
        "sand-on-surface",
        Weight.THINK_AGAIN,
        COURSE + dressed("rate: 1.01 kg/m2"),
        COURSE + dressed("rate: 1 kg/m2"),
    ),
    (
        # The open holes take 3.016 kg/m², so of 4.1 some 1.08 stays, and of 4 some 0.98.
        "sand-on-surface",
        Weight.THINK_AGAIN,
        COURSE + work(FULL, FILL.replace("fill: holes", "rate: 4.1 kg/m2")),
        COURSE + work(FULL, FILL.replace("fill: holes", "rate: 4 kg/m2")),
    ),
    (
        # gelernter_stowell2005 with 18 °C and 5.5: 0.15 is reached at 18 − 5.5 × √(2 ln(1/0.15))
        # = 7.3 °C; Durham has 6.6 °C in November and 10.0 °C in October.
        "sand-on-surface",
        Weight.THINK_AGAIN,
        COURSE + dressed("rate: 0.2 kg/m2", "2026-11-20"),
        COURSE + dressed("rate: 0.2 kg/m2", "2026-10-20"),
    ),
    (
        # Measured after the work, it says nothing of it.
        "coring-and-thatch",
        Weight.INFORMATION,
        COURSE + work(CORES) + measured("2026-06-01"),
        COURSE + work(CORES) + measured("2026-06-02"),
    ),
    (
        "coring-and-thatch",
        Weight.INFORMATION,
        COURSE + work(CORES) + measured("2026-06-01"),
        COURSE + work(CORES) + measured("2026-06-01", "speed: 2.7 m"),
    ),
    (
        "nothing-measured",
        Weight.INFORMATION,
        COURSE + ROLLING + "measurements: [{date: 2026-01-01, green: 1, firmness: firm}]\n",
        COURSE + ROLLING + "measurements: [{date: 2026-01-01, green: 1, firmness: 105 g}]\n",
    ),
    (
        "record-not-used",
        Weight.INFORMATION,
        COURSE + work(CORES) + "observed: [{operation: hollow tining, done: 2025-06-01}]\n",
        COURSE
        + work(CORES)
        + "observed: [{operation: hollow tining, done: 2025-06-01, healed: 2025-06-15}]\n",
    ),
]


@pytest.mark.parametrize(("code", "weight", "plan", "_harmless"), TABLE)
def test_a_plan_that_brings_the_finding(
    programme_of: ProgrammeOf, code: str, weight: Weight, plan: str, _harmless: str
) -> None:
    assert_found(programme_of(CLUB + plan), code, weight)


@pytest.mark.parametrize(("code", "_weight", "_plan", "harmless"), TABLE)
def test_a_plan_that_just_does_not(
    programme_of: ProgrammeOf, code: str, _weight: Weight, _plan: str, harmless: str
) -> None:
    assert_quiet(programme_of(CLUB + harmless), code)


def test_every_check_is_in_the_table() -> None:
    # One code or more for each check; the soil has two.
    assert len({row[0] for row in TABLE}) == len(AGRONOMIC_CHECKS) + 1


def test_a_soil_is_held_against_each_limit(programme_of: ProgrammeOf) -> None:
    (finding,) = found(programme_of(CLUB + soil(38, 22) + work(MOLES)), "soil-unsuitable-for-moles")
    meets, misses = finding.message.split("it misses")
    assert "AHDB" in meets
    assert "Agriculture Victoria" in meets
    assert "Ghane" in misses


def test_what_stops_a_build_cannot_be_accepted(programme_of: ProgrammeOf) -> None:
    accepted = "accepted: [{finding: soil-unsuitable-for-moles, by: me, why: I like it}]\n"
    programme = programme_of(CLUB + soil(10, 80) + work(MOLES) + accepted)
    assert found(programme, "soil-unsuitable-for-moles")
    assert not programme.accepted


def test_what_is_said_of_deep_holes_over_channels(programme_of: ProgrammeOf) -> None:
    # Channels of 45 mm every metre, their middle at 300 mm: an 18 mm hole of 300 mm meets 63 mm in
    # 1,000 (6.3 %), one of 277 mm ends above the top at 277.5 mm.
    (meets,) = found(
        programme_of(CLUB + soil(47, 18) + work(MOLES, DEEP)), "deep-tining-into-channels"
    )
    assert "about 6.3 % of its holes" in meets.message
    short = DEEP.replace("300 mm", "277 mm")
    (none,) = found(
        programme_of(CLUB + soil(47, 18) + work(MOLES, short)), "deep-tining-into-channels"
    )
    assert "no hole meets a channel" in none.message
    assert "277.5 mm" in none.message


def test_a_year_is_told_with_what_has_been_published(programme_of: ProgrammeOf) -> None:
    # 10 mm at 50 × 50 mm is 3.1 % (woods2009), twice a year 6.3 %.
    settings = "settings: {tine_diameter: 10 mm, spacing: 50 x 50 mm}"
    plan = work(f"{CORES}, {settings}", f"{CORES.replace('06-01', '09-01')}, {settings}")
    (finding,) = found(programme_of(CLUB + COURSE + plan), "surface-against-targets")
    assert "about 6.3 %" in finding.message
    assert "15 to 20 %" in finding.message
    assert "at least 10 %, ideally 20 %" in finding.message
    assert "measured organic matter" in finding.message
    assert "slits" not in finding.message


def test_slits_are_told_beside_the_holes(programme_of: ProgrammeOf) -> None:
    """What is published is of coring: 1.5 mm blades at 12 mm, 12.5 %, are no part of it."""
    settings = "settings: {tine_diameter: 10 mm, spacing: 50 x 50 mm}"
    widths = "settings: {blade_width: 1.5 mm, blade_spacing: 12 mm}"
    blades = f"verticutting, dates: 2026-06-01, {widths}"
    plan = work(f"{CORES}, {settings}", blades)
    (finding,) = found(programme_of(CLUB + COURSE + plan), "surface-against-targets")
    assert "the holes of this plan open about 3.1 %" in finding.message
    assert "slits cut about 12.5 % besides" in finding.message
    assert found(programme_of(CLUB + COURSE + work(blades)), "surface-against-targets") == []


def test_a_year_of_sand_is_told_with_what_has_been_published(programme_of: ProgrammeOf) -> None:
    # Four dressings of 0.8 kg/m² at 1.6 t/m³ are 2 mm.
    plan = "sand: {density: 1.6 t/m3}\n" + COURSE + dressed("rate: 0.8 kg/m2, dressings: 4")
    (finding,) = found(programme_of(CLUB + plan), "sand-against-totals")
    assert "about 2.0 mm" in finding.message
    assert "3.2 kg/m²" in finding.message
    for published in ("12 to 15 mm", "7.6 to 10.7 mm", "2 to 8 kg/m²"):
        assert published in finding.message


def test_how_many_dressings_a_heavy_one_would_take(programme_of: ProgrammeOf) -> None:
    # 7 kg/m² at no more than 3 take three.
    (finding,) = found(programme_of(CLUB + COURSE + dressed("rate: 7 kg/m2")), "dressing-too-heavy")
    assert "brings 7.0 kg/m²" in finding.message
    assert finding.suggestion == "Spread it over 3 dressings"


def test_following_the_advice_on_a_heavy_fill_ends_the_finding(programme_of: ProgrammeOf) -> None:
    # Twice 3.016 kg/m² in 6.03: half is over 3, so three dressings, the first of 3.
    twice = FULL.replace("}", ", passes: 2}")
    heavy = programme_of(CLUB + COURSE + work(twice, FILL.replace("holes", "holes, dressings: 2")))
    (finding,) = found(heavy, "dressing-too-heavy")
    assert "most_per_dressing: 3 kg/m2 and dressings: 3" in finding.suggestion
    plan = COURSE + work(twice, FILL.replace("holes", "holes, dressings: 3"))
    better = programme_of(CLUB + "sand: {most_per_dressing: 3 kg/m2}\n" + plan)
    assert not found(better, "dressing-too-heavy")


@pytest.mark.parametrize(
    ("text", "said"),
    [(CORES, "takes material out"), (OPENED, "only opens the turf")],
)
def test_thatch_says_what_a_work_does(programme_of: ProgrammeOf, text: str, said: str) -> None:
    settings = ", settings: {depth: 30 mm}"
    plan = COURSE + work(text + settings) + measured("2026-06-01", "thatch_depth: 22 mm")
    (finding,) = found(programme_of(CLUB + plan), "coring-and-thatch")
    assert said in finding.message
    # 30 − 22 = 8 mm, and the usual is 10 to 15.
    assert "8 mm below" in finding.message
    assert "less than is usual" in finding.message


def test_greens_of_like_thatch_are_named_together(programme_of: ProgrammeOf) -> None:
    taken = ", ".join(
        f"{{date: 2026-06-01, green: {green}, thatch_depth: {depth} mm}}"
        for green, depth in ((1, 22), (2, 25), (3, 22))
    )
    plan = COURSE.replace("1-2", "1-3") + work(CORES + ", settings: {depth: 40 mm}")
    plan += f"measurements: [{taken}]\n"
    (finding,) = found(programme_of(CLUB + plan), "coring-and-thatch")
    # 40 − 22 = 18 mm and 40 − 25 = 15 mm.
    assert "18 mm below the 22 mm of thatch measured on greens 1 and 3 on 2026-06-01;" in (
        finding.message
    )
    assert "15 mm below the 25 mm of thatch measured on green 2 on 2026-06-01;" in finding.message


@pytest.mark.parametrize(
    ("record", "reason"),
    [
        ("operation: slitting, done: 2025-06-01, healed: 2025-07-01", "no work of this plan"),
        ("operation: rolling, done: 2025-06-01, healed: 2025-07-01", "no opening"),
        ("operation: hollow tining, done: 2025-06-01, putting_smoothly: 2025-06-20", "by the sand"),
        ("operation: hollow tining, done: 2025-06-01, healed: 2025-06-01", "no grass grew"),
        ("operation: hollow tining, done: 2025-06-01, healed: 2025-06-02", "mm a day"),
    ],
)
def test_why_a_record_is_not_used(programme_of: ProgrammeOf, record: str, reason: str) -> None:
    rolling = "rolling, dates: 2026-06-01"
    plan = COURSE + work(CORES, FILL, rolling) + f"observed: [{{{record}}}]\n"
    (finding,) = found(programme_of(CLUB + plan), "record-not-used")
    assert reason in finding.message
