"""The charts for a committee: sand, hours, the year, forecast and record."""

from __future__ import annotations

import datetime as dt
import re
import xml.etree.ElementTree as ET
from xml.sax.saxutils import escape

import pytest

from notices.agronomy.recovery import DateRange
from notices.drawings.committee import committee_charts
from notices.drawings.forecast import LEFT, forecast_and_record
from notices.drawings.model import Drawing
from notices.drawings.palette import LOAM, SAND
from notices.drawings.sand_days import sand_by_day
from notices.drawings.work_hours import work_hours
from notices.drawings.year_totals import year_totals
from notices.paths import font_files
from notices.programme.model.timetable import clock
from notices.programme.outcomes import Outcome, outcomes
from notices.programme.published import SAND_MM
from notices.references import REFERENCES
from notices.rendering.png import svg_to_png
from notices.units import MM_PER_FT3_PER_1000_FT2
from notices.wording.words import Words
from tests.drawings.clubs import NAMES, words_of
from tests.drawings.metrics import assert_well_set, faults, texts_in
from tests.wording.small_plans import plan, words, work

SVG = "{http://www.w3.org/2000/svg}"


def said(drawing: Drawing) -> list[str]:
    return [placed.text for placed in texts_in(drawing.svg)]


def heights(drawing: Drawing, fill: str) -> list[float]:
    """Heights of the boxes of one colour."""
    root = ET.fromstring(drawing.svg)  # noqa: S314, it was drawn here
    boxes = root.iter(f"{SVG}rect")
    return [float(box.attrib["height"]) for box in boxes if box.get("fill") == fill]


def dressed(club: dict[str, object] | None = None) -> Words:
    """Ten greens of 500 m², 2 kg/m² on each of two days: 5 greens × 500 × 2 = 5 t a day.

    A rate is what is brought, waste or no waste; four days make 20 t.
    """
    return words(
        plan(
            work(
                "top dressing",
                "2027-08-09 to 2027-08-10",
                greens={"2027-08-09": "1-5", "2027-08-10": "6-10"},
                settings={"rate": "2 kg/m2", "dressings": 2, "days_between": 7},
            ),
            greens="1-10",
            club=club,
        )
        | {"course": {"greens": [{"green": "1-10", "area": "500 m2"}]}}
    )


@pytest.mark.parametrize("name", NAMES)
def test_every_letter_is_in_its_place(name: str) -> None:
    charts = committee_charts(words_of(name))
    assert len({chart.name for chart in charts}) == len(charts)
    for chart in charts:
        assert faults(chart.svg) == []
        assert f"<title>{chart.title}</title><desc>{escape(chart.description)}</desc>" in chart.svg
    for chart in charts[-1:]:
        assert_well_set(chart.svg)


def test_only_closures_leave_nothing_to_draw() -> None:
    assert committee_charts(words_of("quillerby")) == ()


def test_sand_by_day_in_tonnes() -> None:
    drawing = sand_by_day(dressed())
    assert drawing is not None
    texts = said(drawing)
    assert texts.count("5.0") == 4
    assert {"Sand by day, in tonnes", "first dressing", "top-up", "August 2027"} <= set(texts)
    assert "Monday 9 August, first dressing: 5.0 t." in drawing.description
    assert "Monday 16 August, top-up: 5.0 t." in drawing.description
    assert any(text.startswith("In all 20 t, ") for text in texts)
    assert_well_set(drawing.svg)


def test_bars_are_as_high_as_their_amounts() -> None:
    """All four days bring the same: the two first dressings stand filled and equal."""
    drawing = sand_by_day(dressed())
    assert drawing is not None
    filled = [height for height in heights(drawing, "#7a4a1e") if height > 20]
    assert len(filled) == 2
    assert len(set(filled)) == 1


def test_american_clubs_order_tons() -> None:
    """5 t are 5 ÷ 0.90718474 = 5.51 US tons."""
    drawing = sand_by_day(dressed(club={"language": "en-US", "units": "imperial"}))
    assert drawing is not None
    assert said(drawing).count("5.5") == 4
    assert "first topdressing" in said(drawing)


def test_no_sand_no_chart() -> None:
    assert sand_by_day(words(plan(work("slitting", "2027-08-09")))) is None


def test_many_days_of_sand_take_a_further_row() -> None:
    told = words(
        plan(
            work(
                "top dressing",
                "2027-08-02 to 2027-08-10",
                settings={"rate": "1 kg/m2", "dressings": 4, "days_between": 10},
            )
        )
    )
    drawing = sand_by_day(told)
    assert drawing is not None
    order = told.programme.sand_order
    assert order is not None
    assert len(order.days) == 36
    assert_well_set(drawing.svg)


CREW = {"people": 4, "working_day": "07:00 to 15:30"}
PLACE = {"place": {"latitude": 53.1, "longitude": -2.2, "timezone": "Europe/London"}}


def test_each_working_day_has_its_hours() -> None:
    told = words(plan(work("hollow tining", "2027-08-09 to 2027-08-10"), crew=CREW, club=PLACE))
    (drawing,) = work_hours(told)
    texts = said(drawing)
    assert {"Mon 9 Aug", "Tue 10 Aug", "hours of the crew", "dark"} <= set(texts)
    first = min(told.programme.timetables)
    day = told.programme.timetables[first]
    assert day.first_start == 7 * 60
    assert any(text.startswith("07:00 to ") for text in texts)
    assert "Monday 9 August: work 07:00 to " in drawing.description
    assert "crew 07:00 to 15:30; light from 04:5" in drawing.description
    assert_well_set(drawing.svg)


@pytest.mark.parametrize(
    ("crew", "told_as"),
    [
        (CREW, r"07:00 to \d\d:[03]0: too long"),
        # One person alone goes on past midnight.
        ({"people": 1, "working_day": "08:00 to 12:00"}, "08:00 on: far too long"),
    ],
    ids=["evening", "midnight"],
)
def test_a_day_that_is_too_long_says_so(crew: dict[str, object], told_as: str) -> None:
    told = words(plan(work("hollow tining", "2027-08-09"), crew=crew, club=PLACE, greens="1-9"))
    (day,) = told.programme.timetables.values()
    (drawing,) = work_hours(told)
    assert [text for text in said(drawing) if re.fullmatch(told_as, text)]
    assert f"too long by {day.too_long_by:.0f} minutes" in drawing.description
    assert "after the day’s end" in said(drawing)
    assert_well_set(drawing.svg)


def test_without_a_place_nothing_is_said_of_light() -> None:
    (drawing,) = work_hours(words(plan(work("hollow tining", "2027-08-09"), crew=CREW)))
    assert "dark" not in said(drawing)
    assert "light" not in drawing.description


def test_no_crew_no_hours() -> None:
    assert work_hours(words(plan(work("hollow tining", "2027-08-09")))) == ()


def test_the_year_beside_what_is_published() -> None:
    """10 mm holes at 50 by 50 mm open π × 25 ÷ 2500 = 3.1 % of the surface."""
    settings = {"tine_diameter": "10 mm", "spacing": "50 x 50 mm", "depth": "50 mm"}
    drawing = year_totals(words(plan(work("hollow tining", "2027-08-09", settings=settings))))
    assert drawing is not None
    texts = said(drawing)
    assert {"This plan, 2027", "3.1 %", "Hartwiger and O’Brien 2001", "15 to 20 %"} <= set(texts)
    assert "at least 10 %, ideally 20 %" in texts
    assert "For comparison, not targets to reach." in texts
    assert "This plan, 2027: 3.1 %." in drawing.description
    assert not [text for text in texts if "Sand" in text or "slits" in text]


def test_slits_stand_apart_from_what_is_published_of_holes() -> None:
    """2 mm blades at 40 mm cut 5.0 %: no bar of a source stands beside it."""
    settings = {"blade_width": "2 mm", "blade_spacing": "40 mm", "depth": "20 mm"}
    drawing = year_totals(words(plan(work("scarifying", "2027-08-09", settings=settings))))
    assert drawing is not None
    texts = said(drawing)
    assert {"This plan, 2027", "5.0 %"} <= set(texts)
    assert not [text for text in texts if "2001" in text or "Woods" in text]
    assert_well_set(drawing.svg)


def test_sand_of_a_year_in_the_units_of_its_sources() -> None:
    metric, imperial = dressed(), dressed(club={"language": "en-US", "units": "imperial"})
    for told, expected in ((metric, "12 to 15 mm"), (imperial, "40 to 50")):
        drawing = year_totals(told)
        assert drawing is not None
        assert expected in said(drawing)


def test_both_units_of_the_published_totals_agree() -> None:
    """To a tenth of a millimetre, or to the whole one to which the first source is quoted."""
    for total in SAND_MM:
        assert total.source in REFERENCES
        assert total.cubic_feet is not None
        for mm, feet in zip((total.low, total.high), total.cubic_feet, strict=True):
            assert feet * MM_PER_FT3_PER_1000_FT2 == pytest.approx(mm, abs=0.3)


def seen(
    done: str, early: str, late: str | None, actual: str, operation: str = "hollow tining"
) -> Outcome:
    """A season on record."""
    day = dt.date.fromisoformat
    span = DateRange(day(early), day(early), day(late) if late else None)
    return Outcome(operation, "", day(done), "healed", span, day(actual))


def test_forecast_and_record_in_days() -> None:
    """From 1 August the 21st is 20 days and 10 September 40; 15 September is 5 days after that."""
    told = words(plan(work("hollow tining", "2027-08-09")))
    long = "a very long name of a kind of work that goes on and on"
    drawing = forecast_and_record(
        told,
        [
            seen("2024-08-01", "2024-08-21", "2024-09-10", "2024-08-31"),
            seen("2025-08-01", "2025-08-21", "2025-09-10", "2025-09-15"),
            seen("2026-08-01", "2026-08-21", None, "2026-08-13"),
            seen("2023-08-01", "2023-08-02", "2023-08-03", "2023-08-03", long),
        ],
    )
    assert drawing is not None
    texts = said(drawing)
    assert {
        "Forecast and what happened, in days after the work",
        "20 to 40 days, took 30: as forecast",
        "20 to 40 days, took 45: five days late",
        "20 or more days, took 12: eight days early",
        "no latest day",
    } <= set(texts)
    assert "2025, healed: forecast 20 to 40 days, took 45: five days late." in drawing.description
    assert "goes on and on 2023, healed: " in drawing.description
    assert_well_set(drawing.svg)
    assert forecast_and_record(told, []) is None


def test_a_long_forecast_is_told_in_weeks() -> None:
    """13 October to 8 November is 26 days, 4 weeks; to 25 April 194 days, 28; 42 days are 6."""
    drawing = forecast_and_record(
        words(plan(work("hollow tining", "2027-08-09"))),
        [seen("2025-10-13", "2025-11-08", "2026-04-25", "2025-11-24")],
    )
    assert drawing is not None
    assert {
        "Forecast and what happened, in weeks after the work",
        "4 to 28 weeks, took 6: as forecast",
    } <= set(said(drawing))


def test_the_chart_and_the_table_show_the_same_seasons() -> None:
    told = words_of("marlpit-common")
    charts = {chart.name: chart for chart in committee_charts(told)}
    assert len(outcomes(told.programme)) == 1
    assert "Hollow tining 2025, healed: forecast " in charts["forecast-and-record"].description


def test_a_bar_and_its_mark_stand_where_their_days_are() -> None:
    """Bar from 20 to 40 days and mark at 30: the mark is in the middle of the bar."""
    drawing = forecast_and_record(
        words(plan(work("hollow tining", "2027-08-09"))),
        [seen("2024-08-01", "2024-08-21", "2024-09-10", "2024-08-31")],
    )
    assert drawing is not None
    root = ET.fromstring(drawing.svg)  # noqa: S314, it was drawn here
    bar = next(b for b in root.iter(f"{SVG}rect") if b.get("fill") == SAND)
    left, wide = float(bar.attrib["x"]), float(bar.attrib["width"])
    mark = next(p for p in root.iter(f"{SVG}path") if p.get("fill") == LOAM)
    top = float(mark.attrib["d"].removeprefix("M").split()[0])
    assert top == pytest.approx(left + wide / 2, abs=0.01)
    # Forty days are as far from nought as twenty from the begin of the bar, twice over.
    assert wide == pytest.approx(20 / 40 * (left + wide - LEFT), abs=0.01)


def test_charts_become_pictures() -> None:
    for chart in committee_charts(words_of("marlpit-common")):
        assert svg_to_png(chart.svg, width_px=340, fonts=font_files()).startswith(b"\x89PNG")


def test_the_same_programme_gives_the_same_charts() -> None:
    told = words_of("withy-hollow")
    assert committee_charts(told) == committee_charts(told)


def test_nobody_is_shown_at_work_while_all_wait_for_the_dew() -> None:
    """On later visits of Marlpit Common work begins at 06:30, and sand waits until 10:00."""
    told = words_of("marlpit-common")
    day = told.programme.timetables[dt.date(2026, 10, 26)]
    mown, spread = day.at_work[0], day.at_work[1]
    assert mown[0] == 6.5 * 60
    assert spread[0] == day.dew_off == 10 * 60
    assert day.waits == ((mown[1], spread[0]),)
    (drawing,) = work_hours(told)
    assert "waiting for dew to go or sand to dry" in said(drawing)
    assert f"; waiting from {clock(mown[1])} to 10:00" in drawing.description


def test_it_says_for_how_long_sand_dries_where_a_green_waits_for_it() -> None:
    """An hour, if the plan says no other; nothing where sand is kiln-dried or nobody goes on it again."""
    dries = "Before a green is brushed or rolled, its sand has 60 minutes to dry."
    for name, is_said in (
        ("skelmarram-links", True),
        ("withy-hollow", False),
        ("marlpit-common", False),
    ):
        for drawing in work_hours(words_of(name)):
            assert (dries in drawing.caption) is is_said
            assert (dries in drawing.description) is is_said
