"""A programme as plain JSON types: what programme.json holds and the next comparison reads.

Dates are ISO 8601, numbers are not rounded, and everything stands in the programme's own
order, so that the same plan gives the same text. Findings name the work, never a line: the
pack travels, the plan file stays.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from typing import Any

from notices.agronomy.recovery import DateRange, Range
from notices.findings import Finding
from notices.operations import SettingValue
from notices.programme.model import (
    Closure,
    DayOfPlay,
    DayTimetable,
    Figure,
    FittedRate,
    Fixture,
    Green,
    GreensBack,
    Hole,
    HolesInPlay,
    Measured,
    OtherWork,
    Pattern,
    Period,
    Programme,
    Promise,
    Recovery,
    Restriction,
    RuleInPlay,
    ScoreDay,
    Season,
    Stretch,
    Task,
    Work,
    clock,
)
from notices.programme.outcomes import Outcome, outcomes
from notices.programme.sand_order import SandOrder
from notices.references import REFERENCES

FORMAT = 1
"""Version of the form that this module writes."""

Json = dict[str, Any]


def programme_as_json(programme: Programme) -> Json:
    """Return all of a programme that a later reader may want."""
    return {
        "format": FORMAT,
        "club": {
            "name": programme.club.name,
            "slug": programme.club.slug,
            "language": programme.club.language,
            "units": programme.club.units,
            "country": programme.club.country,
        },
        "issued": programme.issued.isoformat(),
        "edition": {
            "number": programme.edition.number,
            "version": programme.edition.version,
            "replaces": programme.replaces.number if programme.replaces else None,
        },
        "draft": programme.draft,
        "greens": [_green(green) for green in programme.greens.values()],
        "works": [_work(work) for work in programme.works],
        "periods": [_period(period) for period in programme.periods],
        "recoveries": [
            {"work": work, **_recovery(recovery)}
            for work, recoveries in programme.recoveries.items()
            for recovery in recoveries
        ],
        "status": {
            day.isoformat(): {green: status.value for green, status in on_day.items()}
            for day, on_day in sorted(programme.status.items())
        },
        "stretches": {
            day.isoformat(): {
                green: [_stretch(stretch) for stretch in stretches]
                for green, stretches in on_day.items()
            }
            for day, on_day in programme.stretches.items()
        },
        "holes_in_play": [_day_of_play(day, programme) for day in programme.play.values()],
        "weather": [
            {"limit": limit.value, "works": list(works)}
            for limit, works in programme.weather.items()
        ],
        "rules_of_play": [_rule(rule) for rule in programme.rules],
        "scores": [_score_day(day) for day in programme.scores],
        "closures": [_closure(closure) for closure in programme.closures],
        "fixtures": [_fixture(fixture) for fixture in programme.fixtures],
        "restrictions": [_restriction(restriction) for restriction in programme.restrictions],
        "timetables": [_timetable(day) for day in programme.timetables.values()],
        "sand_order": _sand_order(programme.sand_order) if programme.sand_order else None,
        "season": _season(programme.season) if programme.season else None,
        "greens_back": [_greens_back(back) for back in programme.greens_back.values()],
        "records": [_record(record) for record in programme.records.values()],
        "outcomes": [_outcome(one) for one in outcomes(programme)],
        "measurements": [_measured(measured) for measured in programme.measured],
        "patterns": [pattern_as_json(pattern) for pattern in programme.patterns],
        "figures": [_figure(figure) for figure in programme.figures],
        "findings": [_finding(finding) for finding in programme.findings],
        "accepted": [
            {**_finding(finding), "by": by, "why": why} for finding, by, why in programme.accepted
        ],
    }


def _sand_order(order: SandOrder) -> Json:
    return {
        "volume_m3": order.volume_m3,
        "mass_t": order.mass_t,
        "lorry_loads": order.lorry_loads,
        "deliver_by": order.deliver_by.isoformat(),
        "days": [
            {
                "date": day.date.isoformat(),
                "volume_m3": day.volume_m3,
                "mass_t": day.mass_t,
                "top_up": day.top_up,
                "trailer_loads": day.trailer_loads,
            }
            for day in order.days
        ],
        "top_ups": _dates(order.top_ups),
    }


def _season(season: Season) -> Json:
    return {
        "growth_potential": {day.isoformat(): value for day, value in season.growth.items()},
        "growth_rests": [
            {
                "stops": _date(rest.stops),
                "returns": _date(rest.returns),
            }
            for rest in season.rests
        ],
        "rests_below": season.rests_below,
        "default_used": season.default_used,
    }


def _greens_back(back: GreensBack) -> Json:
    return {
        "work": back.work,
        "back_in_play": _range(back.back_in_play),
        "putting_smoothly": _range(back.putting_smoothly),
        "fully_healed": _range(back.fully_healed),
    }


def _outcome(outcome: Outcome) -> Json:
    return {
        "operation": outcome.operation,
        "work": outcome.work or None,
        "done": outcome.done.isoformat(),
        "what": outcome.what,
        "forecast": _range(outcome.forecast),
        "actual": outcome.actual.isoformat(),
        "days_off": outcome.days_off,
    }


def _green(green: Green) -> Json:
    return {
        "green": green.key,
        "number": green.number,
        "course": green.course,
        "holes": list(green.holes),
        "area_m2": green.area_m2,
        "area_given": green.area_given,
    }


def _work(work: Work) -> Json:
    return {
        "id": work.id,
        "operation": work.operation.name,
        "settings": {
            name: {"value": _setting(value), "given": name in work.settings.given}
            for name, value in work.settings.values.items()
        },
        "visits": [
            {
                "date": visit.date.isoformat(),
                "greens": list(visit.greens),
                "ordinal": visit.ordinal,
            }
            for visit in work.visits
        ],
        "reserve_dates": _dates(work.reserve_dates),
        "while_working": work.while_working.value,
        "reopen_days": work.reopen_days,
        "services_checked": work.services_checked,
        "temporary": work.temporary,
        "note": work.note,
        "why": work.why,
        "put_off_because": work.put_off_because,
    }


def _setting(value: SettingValue | None) -> object:
    return list(value) if isinstance(value, tuple) else value


def _period(period: Period) -> Json:
    return {
        "works": [work.id for work in period.works],
        "days": _dates(period.days),
        "greens": list(period.greens),
        "noticed": period.noticed,
        "reserve_dates": _dates(period.reserve_dates),
        "open_again": _promise(period.open_again),
        "putting_well": _promise(period.putting_well),
        "fully_healed": _promise(period.fully_healed),
        "putts_well_after_all": _promise(period.putts_well_after_all),
        "healed_after_all": _promise(period.healed_after_all),
        "others": [_other_work(other) for other in period.others],
        "recoveries": [_recovery(recovery) for recovery in period.recoveries],
    }


def _other_work(other: OtherWork) -> Json:
    return {
        "works": [work.id for work in other.period.works],
        "greens": list(other.greens),
        "how": other.how.value,
    }


def pattern_as_json(pattern: Pattern) -> Json:
    """Return one layout of the main works as plain JSON types."""
    return {
        "layout": pattern.layout.value,
        "works": list(pattern.works),
        "days": [{"date": day.isoformat(), "greens": greens} for day, greens in pattern.days],
        "green_days_closed": pattern.green_days_closed,
        "green_days_temporary": pattern.green_days_temporary,
        "days_under_nine": pattern.days_under_nine,
        "days_under_eighteen": pattern.days_under_eighteen,
        "mixed_days": pattern.mixed_days,
        "person_hours": pattern.person_hours,
        "hire_days": pattern.hire_days,
        "fits": pattern.fits,
        "too_long": _dates(pattern.too_long),
        "longest_minutes_over": pattern.longest_minutes_over,
        "open_again": _promise(pattern.open_again),
        "putting_well": _promise(pattern.putting_well),
        "fully_healed": _promise(pattern.fully_healed),
        "fixtures_on_closed": list(pattern.fixtures_on_closed),
        "fixtures_in_recovery": list(pattern.fixtures_in_recovery),
    }


def _promise(promise: Promise) -> Json:
    return {
        "expect_by": promise.expect_by.isoformat(),
        "at_worst": _date(promise.at_worst),
        "growth_stops": _date(promise.growth_stops),
    }


def _recovery(recovery: Recovery) -> Json:
    return {
        "green": recovery.green,
        "done": recovery.done.isoformat(),
        "back_in_play": _range(recovery.back_in_play),
        "putting_smoothly": _range(recovery.putting_smoothly),
        "fully_healed": _range(recovery.fully_healed),
        "growth_stops": _date(recovery.growth_stops),
        "growth_returns": _date(recovery.growth_returns),
    }


def _range(span: DateRange) -> Json:
    return {
        "early": span.early.isoformat(),
        "expected": span.expected.isoformat(),
        "late": _date(span.late),
    }


def _stretch(stretch: Stretch) -> Json:
    return {
        "status": stretch.status.value,
        **_time("from", stretch.begins),
        **_time("until", stretch.ends),
        "because": list(stretch.because),
        "passing": stretch.passing,
        "hours_known": stretch.hours_known,
    }


def _day_of_play(day: DayOfPlay, programme: Programme) -> Json:
    return {
        "date": day.date.isoformat(),
        "all_day": _holes_in_play(day.all_day),
        "nines": [
            {
                "holes": _holes(nine),
                "open": _holes(h for h in nine if h in day.all_day.open),
                "temporary": _holes(h for h in nine if h in day.all_day.temporary),
                "closed": _holes(h for h in nine if h in day.all_day.closed),
            }
            for nine in programme.nines
        ],
        "by_hour": [_holes_in_play(hours) for hours in day.by_hour],
    }


def _holes_in_play(hours: HolesInPlay) -> Json:
    return {
        **_time("from", hours.begins),
        **_time("until", hours.ends),
        "open": _holes(hours.open),
        "temporary": _holes(hours.temporary),
        "closed": _holes(hours.closed),
        "closed_part_of_day": _holes(hours.part_of_day),
        "starts": [
            {"from": _holes([start.hole])[0], "holes": _holes(start.holes)}
            for start in hours.starts
        ],
    }


def _holes(holes: Iterable[Hole]) -> list[Json]:
    return [{"course": course, "hole": number} for course, number in holes]


def _rule(rule: RuleInPlay) -> Json:
    return {
        "rule": rule.rule.value,
        "dates": _dates(rule.dates),
        "greens": list(rule.greens),
        "works": list(rule.works),
        "source": [REFERENCES[key].text for key in rule.source],
    }


def _score_day(day: ScoreDay) -> Json:
    return {
        "date": day.date.isoformat(),
        "holes": _holes(day.holes),
        "temporary": _holes(day.temporary),
        "limit": day.limit,
        "within_limit": day.within_limit,
        "preferred_lies": day.preferred_lies,
        "source": [REFERENCES[key].text for key in day.source],
    }


def _closure(closure: Closure) -> Json:
    return {
        "id": closure.id,
        "what": closure.what,
        "greens": list(closure.greens),
        "whole_course": closure.whole_course,
        "part": closure.part,
        "holes": _holes(closure.holes),
        "dates": _dates(closure.dates),
        "instead": closure.instead,
        "temporary": closure.temporary,
        "reason": closure.reason,
    }


def _fixture(fixture: Fixture) -> Json:
    return {
        "name": fixture.name,
        "date": fixture.date.isoformat(),
        "kind": fixture.kind,
        "course": fixture.course or None,
        "decision": fixture.decided.value if fixture.decided else None,
        "moved_from": _date(fixture.moved_from),
        "closed_greens": list(fixture.closed_greens),
        "recovering_greens": list(fixture.recovering_greens),
    }


def _restriction(restriction: Restriction) -> Json:
    return {
        "what": restriction.what,
        "dates": _dates(restriction.dates),
        "except": restriction.exception,
        "ask": restriction.ask,
    }


def _timetable(day: DayTimetable) -> Json:
    return {
        "date": day.date.isoformat(),
        "people": day.people,
        "kept_back": day.kept_back,
        **_time("working_day_begins", day.begins),
        **_time("working_day_ends", day.ends),
        **_time("light_from", day.light_from),
        **_time("light_until", day.light_until),
        "light": day.light,
        **_time("rest_from", day.rest[0]),
        **_time("rest_until", day.rest[1]),
        **_time("dew_off", day.dew_off),
        "drying_minutes": day.drying,
        **_time("start", day.first_start),
        **_time("finish", day.last_finish),
        "too_long_by_minutes": day.too_long_by,
        "limited_by": day.limited_by.value,
        "busiest": day.busiest,
        "busiest_minutes": day.busiest_minutes,
        "default_used": day.default_used,
        "tasks": [_task(task) for task in day.tasks],
    }


def _task(task: Task) -> Json:
    return {
        "work": task.work,
        "green": task.green,
        "task": task.name,
        "ordinal": task.ordinal,
        "people": task.people,
        **_time("start", task.start_minutes),
        **_time("finish", task.finish_minutes),
    }


def _time(name: str, minutes: float | None) -> Json:
    """Return a time of day to the minute, and unrounded in minutes from midnight."""
    return {name: None if minutes is None else clock(minutes), f"{name}_minutes": minutes}


def _record(record: FittedRate) -> Json:
    return {
        "operation": record.operation,
        "seasons": record.seasons,
        "rate_mm_per_day": _rates(record.rates),
        "book_mm_per_day": _rates(record.book),
        "records": [
            {
                "done": season.done.isoformat(),
                "seen": season.seen.isoformat(),
                "what": season.what,
                "putting_smoothly": season.putting_smoothly and season.putting_smoothly.isoformat(),
                "forecast": _range(season.forecast),
                "rate_mm_per_day": season.rate_mm_per_day,
            }
            for season in record.records
        ],
    }


def _measured(measured: Measured) -> Json:
    return {
        "green": measured.green,
        "what": measured.what,
        "unit": measured.unit,
        "readings": [
            {"date": reading.date.isoformat(), "value": reading.value}
            for reading in measured.readings
        ],
        "works_between": list(measured.works_between),
    }


def _rates(rates: Range) -> Json:
    return {"low": rates.low, "middle": rates.middle, "high": rates.high}


def _figure(figure: Figure) -> Json:
    return {
        "id": figure.id,
        "quantity": figure.quantity,
        "scope": {"work": figure.work, "green": figure.green},
        "value": figure.value,
        "unit": figure.unit,
        "formula": figure.formula,
        "source": [REFERENCES[key].text for key in figure.source],
        "inputs": dict(figure.inputs),
        "default_used": figure.default_used,
    }


def located_finding_as_json(finding: Finding) -> Json:
    """Return a finding with its place in the plan file, for programs that show it there."""
    place = finding.place
    cell = {"sheet": place.sheet, "cell": place.cell or None} if place and place.sheet else {}
    return {
        **_what_was_found(finding),
        "file": place.file if place else None,
        "line": place.line if place else None,
        "column": place.column if place else None,
        **cell,
        **_what_it_is_about(finding),
    }


def _finding(finding: Finding) -> Json:
    return {**_what_was_found(finding), **_what_it_is_about(finding)}


def _what_was_found(finding: Finding) -> Json:
    return {
        "code": finding.code,
        "weight": finding.weight.value,
        "message": finding.message,
        "suggestion": finding.suggestion,
    }


def _what_it_is_about(finding: Finding) -> Json:
    return {
        "work": finding.work or None,
        "greens": list(finding.greens),
        "dates": _dates(finding.dates),
    }


def _date(day: dt.date | None) -> str | None:
    return None if day is None else day.isoformat()


def _dates(days: tuple[dt.date, ...]) -> list[str]:
    return [day.isoformat() for day in days]
