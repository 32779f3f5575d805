"""Years, loads, channels, the cut and the club's own records: values by hand, from whole plans."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable
from pathlib import Path

import pytest

from notices.agronomy.growth import Climate, Grass
from notices.agronomy.recovery import observed_rate_mm_per_day
from notices.plan.load import load_plan
from notices.programme import records
from notices.programme.model import Figure, Programme
from notices.programme.work_out import work_out

ProgrammeOf = Callable[..., Programme]

MEANS = [4.1, 4.6, 6.2, 8.3, 11.0, 13.6, 15.8, 15.6, 13.3, 10.0, 6.6, 4.3]
COURSE = f"""
course:
  greens: [{{green: 1-2, area: 500 m2}}]
  grass: cool-season
  optimum_temperature: 18 C
  monthly_mean_temperature: {MEANS}
sand: {{density: 1.5 t/m3}}
works:
"""
TINES = "settings: {tine_diameter: 12 mm, spacing: 50 x 50 mm, depth: 70 mm}"
"""woods2021: 4.5 % of the surface; the holes hold 3.167 mm."""


def figure(programme: Programme, quantity: str, work: str, green: str = "all") -> Figure:
    found = programme.figure(quantity, work, green)
    assert found is not None, (quantity, work, green)
    return found


def value(programme: Programme, quantity: str, work: str, green: str = "all") -> float:
    found = figure(programme, quantity, work, green).value
    assert found is not None
    return found


def test_mixed_operations_add_up_over_a_year(programme_of: ProgrammeOf) -> None:
    # 3 mm blades at 25 mm: 12 %, at 50 mm 6 %; 12 mm tines at 50 × 50 mm: 4.5239 %. Green 1 is
    # cored twice, green 2 once, and a new year begins anew.
    blades = "settings: {blade_width: 3 mm, blade_spacing: 25 mm}"
    wider = "settings: {blade_width: 3 mm, blade_spacing: 50 mm}"
    programme = programme_of(f"""{COURSE}
  - {{operation: scarifying, dates: 2026-09-01, greens: 1, {blades}}}
  - {{operation: verticutting, dates: 2026-06-01, greens: 1, {wider}}}
  - {{operation: hollow tining, dates: 2026-04-01, greens: 1, {TINES}}}
  - {{operation: hollow tining, dates: 2026-09-01, {TINES}}}
  - {{operation: hollow tining, dates: 2027-03-01, {TINES}}}
""")
    cored = 100 * math.pi * 36 / 2500
    holes, slits = "surface opened by holes, year", "surface cut by slits, year"
    assert value(programme, f"{holes} 2026", "all", "1") == pytest.approx(2 * cored)
    assert value(programme, f"{holes} 2026", "all", "2") == pytest.approx(cored)
    assert value(programme, f"{holes} 2026", "all") == pytest.approx(1.5 * cored)
    assert value(programme, f"{holes} 2027", "all") == pytest.approx(cored)
    # Published totals are of coring: slits are told apart, on the green that has them.
    assert value(programme, f"{slits} 2026", "all", "1") == pytest.approx(12 + 6)
    assert value(programme, f"{slits} 2026", "all") == pytest.approx(18)
    assert programme.figure(f"{slits} 2026", "all", "2") is None


def test_a_year_can_be_worked_again_from_its_inputs(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{COURSE}
  - {{operation: scarifying, dates: 2026-09-01, greens: 1}}
  - {{operation: hollow tining, dates: 2026-09-01, {TINES}}}
  - {{operation: top dressing, dates: 2026-12-30, settings: {{dressings: 3}}}}
""")
    checked = set()
    for found in programme.figures:
        kind = found.quantity.rstrip("0123456789 ")
        if kind in {
            "surface opened by holes, year",
            "surface cut by slits, year",
            "sand in the year",
            "rise of the surface",
        }:
            numbers = {k: float(v) for k, v in found.inputs.items() if isinstance(v, float | int)}
            expected = (
                numbers["sum_times_area"] / numbers["area_m2"]
                if found.green == "all"
                else sum(numbers.values())
            )
            assert found.value == pytest.approx(expected), found.id
            checked.add(found.quantity)
    # Holes of September are filled at half on 30 December and the rest in January.
    assert checked == {
        "surface opened by holes, year 2026",
        "surface cut by slits, year 2026",
        "sand in the year 2026",
        "sand in the year 2027",
        "rise of the surface",
    }
    whole = 1000 * math.pi * 36 / 2500 * 0.07
    assert value(programme, "sand in the year 2026", "all", "1") == pytest.approx(whole / 2)
    assert value(programme, "sand in the year 2027", "all", "1") == pytest.approx(whole / 2)


@pytest.mark.parametrize(
    ("operation", "filled", "rise_mm"),
    [
        # woods2021, printed to four figures.
        ("hollow tining", False, -3.167),
        ("hollow tining", True, 0.0),
        ("solid tining", True, 3.167),
    ],
)
def test_rise_and_fall_of_the_surface(
    programme_of: ProgrammeOf, operation: str, filled: bool, rise_mm: float
) -> None:
    fill = "  - {operation: top dressing, dates: 2026-09-01, settings: {fill: holes}}\n"
    programme = programme_of(
        f"{COURSE}  - {{operation: {operation}, dates: 2026-09-01, {TINES}}}\n"
        + (fill if filled else "")
    )
    assert value(programme, "rise of the surface", "all", "1") == pytest.approx(rise_mm, abs=5e-4)


def test_cores_in_barrows_and_trailers(programme_of: ProgrammeOf) -> None:
    # woods2021: 3.167 L/m² on 1,000 m² are 3.167 m³: 39.6 barrows of 0.08 m³, 2.1 trailers of 1.5.
    programme = programme_of(
        f"{COURSE}  - {{operation: hollow tining, dates: 2026-09-01, {TINES}}}\n"
    )
    assert value(programme, "barrows of material removed", "hollow-tining-1") == 40
    assert value(programme, "trailers of material removed", "hollow-tining-1") == 3
    # 1.58 m³ on a green.
    assert value(programme, "barrows of material removed", "hollow-tining-1", "1") == 20


def test_waste_and_lorries_of_the_club(programme_of: ProgrammeOf) -> None:
    # 3.167 m³ × 1.1 × 1.5 t/m³ = 5.226 t: two lorries of 3 t.
    programme = programme_of(
        COURSE.replace("{density: 1.5 t/m3}", "{density: 1.5 t/m3, waste: 10 %, lorry_load: 3 t}")
        + f"  - {{operation: hollow tining, dates: 2026-09-01, {TINES[:-1]}, passes: 1}}}}\n"
        + "  - {operation: top dressing, dates: 2026-09-01, settings: {fill: holes, dressings: 1}}\n"
    )
    assert value(programme, "mass of sand", "all") == pytest.approx(3.167 * 1.1 * 1.5, rel=2e-4)
    assert value(programme, "lorry loads", "all") == 2
    assert not figure(programme, "lorry loads", "all").default_used
    assert not figure(programme, "sand", "top-dressing-1").default_used


def test_sand_beyond_what_the_holes_take(programme_of: ProgrammeOf) -> None:
    # 6 kg/m² at 1.5 t/m³ are 4 mm, and open holes take 3.167 mm of it.
    programme = programme_of(f"""{COURSE}
  - {{operation: hollow tining, dates: 2026-09-01, {TINES}}}
  - {{operation: top dressing, dates: 2026-09-01, settings: {{rate: 6 kg/m2}}}}
  - {{operation: top dressing, dates: 2026-09-20, settings: {{rate: 0.75 kg/m2}}}}
""")
    on = "sand on the surface"
    assert value(programme, on, "top-dressing-1", "1") == pytest.approx(4 - 3.167, abs=5e-4)
    assert value(programme, f"mass of {on}", "top-dressing-1", "1") == pytest.approx(
        (4 - 3.167) * 1.5, abs=1e-3
    )
    # Nothing is open any more: all of the second lies on top.
    assert value(programme, on, "top-dressing-2", "1") == pytest.approx(0.5)
    assert value(programme, "dressings needed", "top-dressing-1") == 2


def test_deep_holes_over_channels(programme_of: ProgrammeOf) -> None:
    # Geometry: (20 + 40) mm in 500 mm.
    programme = programme_of(f"""{COURSE}
  - operation: mole ploughing
    dates: 2026-06-01
    settings: {{spacing: 500 mm, depth: 250 mm, channel_diameter: 40 mm}}
  - operation: deep solid tining
    dates: 2026-06-10
    settings: {{tine_diameter: 20 mm, depth: 250 mm}}
""")
    met = figure(programme, "deep holes that meet a channel", "deep-solid-tining-1")
    assert met.value == pytest.approx(12)
    assert not met.default_used
    assert value(programme, "life of channels on farmland, low", "mole-ploughing-1") == 5
    assert (
        "not promised"
        in figure(programme, "life of channels on farmland, high", "mole-ploughing-1").formula
    )


def test_the_cut_comes_down_after_the_greens_putt_well(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{COURSE}
  - {{operation: raising the height of cut, dates: 2026-08-25, settings: {{from: 3.5 mm, to: 4.5 mm}}}}
  - {{operation: hollow tining, dates: 2026-09-01}}
""")
    (period,) = programme.periods
    work = "raising-the-height-of-cut-1"
    for step, height in ((1, 4.0), (2, 3.5)):
        early = figure(programme, f"cut lowered, step {step}, early", work)
        late = figure(programme, f"cut lowered, step {step}, late", work)
        assert early.inputs["height_mm"] == height
        smooth = period.putting_well
        assert early.inputs["day"] == str(smooth.expect_by + dt.timedelta(days=4 * step))
        assert smooth.at_worst is not None
        assert late.inputs["day"] == str(smooth.at_worst + dt.timedelta(days=7 * step))
    assert programme.figure("cut lowered, step 3, early", work) is None


def test_depth_below_measured_thatch(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{COURSE}
  - {{operation: hollow tining, dates: 2026-09-01, {TINES}}}
measurements:
  - {{date: 2026-03-01, green: 1, thatch_depth: 30 mm}}
  - {{date: 2026-08-01, green: 1, thatch_depth: 25 mm}}
""")
    assert value(programme, "depth below the thatch", "hollow-tining-1", "1") == 70 - 25
    assert programme.figure("depth below the thatch", "hollow-tining-1", "2") is None


# Records

OBSERVED = """observed:
  - {operation: hollow tining, done: 2023-09-01, healed: 2023-09-25}
  - {operation: hollow tining, done: 2024-09-01, healed: 2024-09-20}
  - {operation: hollow tining, done: 2025-09-01, healed: 2025-10-05}
"""
CORED = f"{COURSE}  - {{operation: hollow tining, dates: 2026-09-01, {TINES}}}\n"


def test_a_record_sets_the_rate(programme_of: ProgrammeOf) -> None:
    fitted = programme_of(CORED + OBSERVED).records["hollow tining"]
    climate = Climate.from_monthly_means(MEANS, Grass.COOL_SEASON, 18)
    by_hand = [
        12 / (2 * sum(climate.growth_on(dt.date(year, 9, 1) + dt.timedelta(n)) for n in days))
        for year, days in ((2023, range(1, 25)), (2024, range(1, 20)), (2025, range(1, 35)))
    ]
    assert fitted.rates.middle == pytest.approx(sorted(by_hand)[1])
    assert fitted.seasons == 3
    assert fitted.book.middle == 0.6


def test_an_error_in_the_sums_is_not_told_of_the_record(
    programme_of: ProgrammeOf, monkeypatch: pytest.MonkeyPatch
) -> None:
    def out_of_range(*_arguments: object) -> float:
        raise ValueError("rate must be a finite number above zero, not 0.")

    monkeypatch.setattr(records, "growth_days_for_opening", out_of_range)
    with pytest.raises(ValueError, match="finite number above zero"):
        programme_of(CORED + OBSERVED)


def test_figures_say_that_they_rest_on_the_record(programme_of: ProgrammeOf) -> None:
    plain, own = programme_of(CORED), programme_of(CORED + OBSERVED)
    fitted = own.records["hollow tining"]
    for end, rate in (("early", fitted.rates.high), ("late", fitted.rates.low)):
        found = figure(own, f"fully healed, {end}", "hollow-tining-1", "1")
        assert "club_record" in found.source
        assert found.inputs["seasons_on_record"] == 3
        assert found.inputs["book_rate_mm_per_day"] == 0.6
        assert found.inputs["fitted_rate_mm_per_day"] == fitted.rates.middle
        assert found.inputs["sideways_growth_mm_per_day"] == rate
        assert found.inputs["growth_days_needed"] == pytest.approx(12 / (2 * rate))
        book = figure(plain, f"fully healed, {end}", "hollow-tining-1", "1")
        assert "club_record" not in book.source
        assert "seasons_on_record" not in book.inputs
    assert value(own, "sideways growth", "hollow-tining-1") == fitted.rates.middle


def test_slower_seasons_give_later_dates(programme_of: ProgrammeOf) -> None:
    quick, slow = (
        programme_of(
            CORED + f"observed: [{{operation: hollow tining, done: 2025-09-01, healed: {day}}}]\n"
        )
        .periods[0]
        .fully_healed
        for day in ("2025-09-15", "2025-10-15")
    )
    assert quick.expect_by < slow.expect_by
    assert quick.at_worst is not None
    assert slow.at_worst is not None
    assert quick.at_worst < slow.at_worst


def test_unfilled_holes_that_putted_smoothly_had_half_closed(programme_of: ProgrammeOf) -> None:
    record = (
        "observed: [{operation: hollow tining, done: 2025-09-01, putting_smoothly: 2025-09-12}]\n"
    )
    (season,) = programme_of(CORED + record).records["hollow tining"].records
    climate = Climate.from_monthly_means(MEANS, Grass.COOL_SEASON, 18)
    assert season.rate_mm_per_day == pytest.approx(
        observed_rate_mm_per_day(6, dt.date(2025, 9, 1), dt.date(2025, 9, 12), climate)
    )


def test_a_record_of_other_tines_says_so(programme_of: ProgrammeOf) -> None:
    narrow = OBSERVED.replace("}", ", opening: 6 mm}")
    own, other = (
        programme_of(CORED + text).records["hollow tining"] for text in (OBSERVED, narrow)
    )
    assert other.rates.middle == pytest.approx(own.rates.middle / 2)


def test_one_kind_of_work_does_not_learn_from_another(programme_of: ProgrammeOf) -> None:
    both = CORED + "  - {operation: slitting, dates: 2026-10-01}\n"
    plain, own = programme_of(both), programme_of(both + OBSERVED)
    assert plain.recoveries["slitting-1"] == own.recoveries["slitting-1"]
    assert plain.recoveries["hollow-tining-1"] != own.recoveries["hollow-tining-1"]


# Temperatures from a table


def test_measured_days_move_the_dates(tmp_path: Path) -> None:
    def programme(temperature: float | None) -> Programme:
        table = ""
        if temperature is not None:
            days = [dt.date(2026, 9, 1) + dt.timedelta(n) for n in range(60)]
            rows = "".join(f"{day},{temperature}\n" for day in days)
            (tmp_path / "station.csv").write_text("date,mean\n" + rows, encoding="utf-8")
            table = "  temperatures: station.csv\n"
        text = CORED.replace("sand:", f"{table}sand:")
        path = tmp_path / "plan.yaml"
        path.write_text("club: {name: Marl Hill}" + text, encoding="utf-8")
        return work_out(load_plan(path).plan, dt.date(2026, 1, 5))

    cold, usual, best = programme(8.0), programme(None), programme(18.0)
    healed = [p.recoveries["hollow-tining-1"][0].fully_healed for p in (best, usual, cold)]
    assert healed[0].early < healed[1].early < healed[2].early
    # At the optimum a colder and a warmer year are both slower: exp(−½ (1 ÷ 5.5)²) = 0.9836, and
    # 12 mm at 0.75 mm/day take 8 days at growth potential 1; at 0.45, 13.3 ÷ 0.9836 = 13.6.
    assert (healed[0].early, healed[0].late) == (dt.date(2026, 9, 9), dt.date(2026, 9, 15))
    growth = figure(best, "growth potential", "hollow-tining-1")
    assert growth.value == 1
    assert not growth.default_used
    assert growth.inputs["days_named"] == 60
