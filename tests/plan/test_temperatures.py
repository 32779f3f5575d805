"""Tables of daily temperatures: what is read, what is refused with its line, and what is kept."""

from __future__ import annotations

import contextlib
import datetime as dt
import json
import tempfile
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.errors import PlanFault
from notices.plan.csv_table import TableFault
from notices.plan.load import canonical, load_plan
from notices.plan.temperatures import read_temperatures

PLAN = """\
club: {name: Marl Hill}
course:
  greens: [{green: 1}]
  temperatures: station.csv
works: [{operation: hollow tining, dates: 2026-10-12}]
"""
DAY = dt.date(2026, 10, 12)
NEXT = dt.date(2026, 10, 13)


def read(folder: Path, text: str, encoding: str = "utf-8") -> dict[dt.date, float]:
    (folder / "station.csv").write_text(text, encoding=encoding)
    return read_temperatures(folder, "station.csv")


@pytest.mark.parametrize(
    "text",
    [
        "date,mean\n2026-10-12,10.5\n2026-10-13,9\n",
        "Date,Mean temperature (°C)\n2026-10-12,10.5\n2026-10-13,9.0\n",
        "date,min,max\n2026-10-12,6,15\n2026-10-13,4,14\n",
        "date;tmin;tmax\n2026-10-12;6,0;15,0\n2026-10-13;4,0;14,0\n",
        "day\ttmean\n2026-10-13\t9\n2026-10-12\t10.5\n",
        "station,date,rain,air_temp\nX,2026-10-12,3.2,10.5\nX,2026-10-13,0,9\n",
        "date,mean,min,max\n2026-10-12,10.5,0,1\n\n2026-10-13T00:00,9,,\n",
        '"date","low","high"\n"2026-10-12","6","15"\n"2026-10-13","4","14"\n',
    ],
)
def test_tables_as_stations_write_them(tmp_path: Path, text: str) -> None:
    assert read(tmp_path, text) == {DAY: 10.5, NEXT: 9.0}


def test_a_mark_at_the_start_of_the_file_is_no_letter(tmp_path: Path) -> None:
    assert read(tmp_path, "date,mean\n2026-10-12,10.5\n", "utf-8-sig") == {DAY: 10.5}


def test_a_day_without_a_value_keeps_its_monthly_mean(tmp_path: Path) -> None:
    text = "date,min,max\n2026-10-12,6,\n2026-10-13,4,14\n"
    assert read(tmp_path, text) == {NEXT: 9.0}


@pytest.mark.parametrize(
    ("text", "line", "said"),
    [
        ("", None, "empty"),
        ("2026-10-12,10.5\n", 1, "does not name the columns"),
        ("date,rain\n2026-10-12,3\n", 1, "does not name the columns"),
        ("date,min\n2026-10-12,3\n", 1, "does not name the columns"),
        ("date,mean,average\n2026-10-12,3,3\n", 1, "second column"),
        ("date,mean (°F)\n2026-10-12,50\n", 1, "in °F"),
        ("date,mean\n12/10/2026,10.5\n", 2, "is not a date"),
        ("date,mean\n2026-02-30,10.5\n", 2, "is not a date"),
        ("date,mean\n2026-10-12,mild\n", 2, "is not a temperature"),
        ("date,mean\n2026-10-12,1e9\n", 2, "is not a temperature"),
        ("date,mean\n2026-10-12,68\n", 2, "no mean temperature on Earth"),
        ("date,mean\n2026-10-12,9\n\n2026-10-12,9\n", 4, "in line 2 already"),
        ("date,min,max\n2026-10-12,15,6\n", 2, "above the highest"),
        ("date,mean\n2026-10-12,\n", 1, "no day has a temperature"),
    ],
)
def test_what_is_refused_and_where(tmp_path: Path, text: str, line: int | None, said: str) -> None:
    with pytest.raises(TableFault) as caught:
        read(tmp_path, text)
    ((where, refused),) = caught.value.faults
    assert where == line
    assert said in str(refused)


def test_many_faults_are_counted(tmp_path: Path) -> None:
    with pytest.raises(TableFault) as caught:
        read(tmp_path, "date,mean\n" + "never,9\n" * 30)
    assert len(caught.value.faults) == 11
    assert "20 lines more" in str(caught.value.faults[-1][1])


def test_what_is_no_text(tmp_path: Path) -> None:
    (tmp_path / "station.csv").write_bytes(b"\xff\xfe\x00date")
    with pytest.raises(TableFault, match="not plain text"):
        read_temperatures(tmp_path, "station.csv")


@pytest.mark.parametrize("name", ["../station.csv", "/etc/passwd", "C:station.csv", ".."])
def test_nothing_outside_the_folder_is_read(tmp_path: Path, name: str) -> None:
    with pytest.raises(ValueError, match="must lie beside the plan"):
        read_temperatures(tmp_path, name)


@given(st.text(max_size=200))
def test_any_text_is_read_or_refused_with_a_sentence(text: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "station.csv").write_text(text, encoding="utf-8", errors="replace")
        with contextlib.suppress(TableFault):
            read_temperatures(Path(folder), "station.csv")


# Through a plan


def test_a_fault_is_told_with_file_and_line(tmp_path: Path) -> None:
    (tmp_path / "plan.yaml").write_text(PLAN, encoding="utf-8")
    (tmp_path / "station.csv").write_text("date,mean\n2026-10-12,mild\n", encoding="utf-8")
    with pytest.raises(PlanFault) as caught:
        load_plan(tmp_path / "plan.yaml")
    (finding,) = caught.value.findings
    assert str(finding.place) == f"{tmp_path / 'station.csv'}:2"
    assert finding.path == ("course", "temperatures")


def test_a_missing_table_is_told_where_the_plan_names_it(tmp_path: Path) -> None:
    (tmp_path / "plan.yaml").write_text(PLAN, encoding="utf-8")
    (tmp_path / "stations.csv").write_text("", encoding="utf-8")
    with pytest.raises(PlanFault) as caught:
        load_plan(tmp_path / "plan.yaml")
    (finding,) = caught.value.findings
    assert str(finding.place).endswith("plan.yaml:4:17")
    assert 'Did you mean "stations.csv"?' in finding.suggestion


def test_the_canonical_plan_needs_no_other_file(tmp_path: Path) -> None:
    (tmp_path / "plan.yaml").write_text(PLAN, encoding="utf-8")
    (tmp_path / "station.csv").write_text(
        "date,mean\n2026-10-12,10.5\n2026-10-13,9.25\n", encoding="utf-8"
    )
    plan = load_plan(tmp_path / "plan.yaml").plan
    data = canonical(plan)
    assert data["course"]["daily_mean_temperature"] == {"2026-10-12": 10.5, "2026-10-13": 9.25}
    assert "temperatures" not in data["course"]
    alone = tmp_path / "elsewhere" / "plan.json"
    alone.parent.mkdir()
    alone.write_text(json.dumps(data), encoding="utf-8")
    again = load_plan(alone).plan
    assert again.course.daily_mean_temperature == plan.course.daily_mean_temperature
    assert canonical(again) == data


def test_days_in_two_places_are_refused(tmp_path: Path) -> None:
    both = PLAN.replace("works:", "  daily_mean_temperature: {2026-10-12: 10.5}\nworks:")
    (tmp_path / "plan.yaml").write_text(both, encoding="utf-8")
    with pytest.raises(PlanFault, match="Keep one of them"):
        load_plan(tmp_path / "plan.yaml")
