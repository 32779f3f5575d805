"""Facts that fill the answers to questions about a programme."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from notices.operations import Noticed, Opening
from notices.programme.brushing import all_brushed
from notices.programme.model import Period, PlayStatus, SeasonOnRecord, Work
from notices.wording import circumstances, measures
from notices.wording.lists import and_list, sentence
from notices.wording.money import about
from notices.wording.operation_facts import grows_well, month_in_the_north
from notices.wording.period import PeriodWords
from notices.wording.reading_ease import LONGEST_SENTENCE, words_of
from notices.wording.said import Said
from notices.wording.words import Words

SUMMER_MONTHS = (6, 7, 8)

MOST_RECORDS = 4
"""Most records of earlier years that an answer lists."""

MOST_TEMPORARY = 6
"""Most entries on temporary greens in an answer; more are summed up in one sentence."""

_MUST_HEAL = frozenset({Opening.HOLES, Opening.SLITS, Opening.CHANNELS})

_SUMS = {
    "cost of sand": "for sand",
    "cost of labour": "for hours of people",
    "cost of hire": "for hire",
}


def question_facts(words: Words) -> dict[str, object]:
    """Return the facts that fill the answers, under the same names for every plan."""
    programme = words.programme
    main = words.main_period()
    works = programme.works
    felt = [w for w in (main.works if main else ()) if w.operation.noticed is not Noticed.HARDLY]
    kinds = {work.operation.opening for work in felt}
    names = {work.operation.name for work in works}
    limits = circumstances.go_or_no_go(words)
    return {
        "works": bool(works),
        "many": len(programme.greens) > 1,
        "holes": Opening.HOLES in kinds,
        "slits": Opening.SLITS in kinds,
        "sand": any(work.operation.opening is Opening.SAND for work in works),
        "channels": Opening.CHANNELS in kinds,
        "trenches": Opening.TRENCHES in kinds,
        "turf": Opening.BARE in kinds,
        "openings": bool(kinds & _MUST_HEAL),
        "thatch": any(work.operation.removes_core for work in works),
        "filling": any(programme.fills_holes(work.id) for work in works),
        "brushed": all_brushed(programme),
        "rolled": "rolling" in names,
        "raised": "raising the height of cut" in names,
        "limits": limits,
        "decision": circumstances.decision(words),
        "where_to_look": circumstances.where_to_look(words),
        "contact": circumstances.contact(words),
        "answers": programme.club.answers.rstrip("."),
        "reasons": " ".join(dict.fromkeys(sentence(work.why) for work in works if work.why)),
        "approval": circumstances.approval(words),
        "pending": programme.draft,
        "cost": _cost(words),
        "cost_parts": _cost_parts(words),
        "fixtures": tuple(said.text for said in fixtures_said(words)),
        "records": tuple(said.text for said in records_said(words)),
        "temporary": tuple(said.text for said in temporary_said(words)),
        **_of_period(words, main),
    }


def _of_period(words: Words, main: Period | None) -> dict[str, object]:
    """Return the facts about the period that the notices lead with."""
    if main is None:
        empty = dict.fromkeys(("when", "open", "well", "marks", "dressings", "reserve"), "")
        return empty | dict.fromkeys(("noticed", "grows", "summer", "warm_season"), False)
    told = PeriodWords(words, main)
    opening = [work for work in main.works if _must_heal(work)]
    first = min(main.days)
    return {
        "when": told.when(),
        "open": told.open_again(whole=True),
        "well": told.putting_well(whole=True),
        "marks": told.marks(),
        "dressings": told.later_dressings(),
        "reserve": " ".join(
            dict.fromkeys(
                said
                for period in words.programme.periods
                if (said := PeriodWords(words, period).reserve())
            )
        ),
        "noticed": main.noticed,
        "grows": bool(opening) and all(grows_well(work, words.programme) for work in opening),
        "summer": month_in_the_north(first, words.programme) in SUMMER_MONTHS,
        "warm_season": any(_on_warm_season_grass(words, work) for work in main.works),
    }


def known_facts(words: Words) -> Iterator[Said]:
    """Yield every statement with a day or a green that an answer may contain."""
    for period in words.programme.periods:
        told = PeriodWords(words, period)
        yield Said(told.when(), period.days)
        yield from map(Said, (told.open_again(whole=True), told.putting_well(whole=True)))
        yield from map(Said, (told.marks(), told.later_dressings(), told.reserve()))
    yield from fixtures_said(words)
    yield from records_said(words)
    yield from temporary_said(words)
    approval = words.programme.approval
    given = (approval.date,) if approval and approval.date else ()
    yield Said(circumstances.approval(words), given)
    yield from map(Said, (circumstances.contact(words), circumstances.decision(words)))
    yield from map(Said, (_cost(words), _cost_parts(words)))


def fixtures_said(words: Words) -> tuple[Said, ...]:
    """Return a sentence on each fixture that the works affect."""
    return tuple(Said(text) for text in circumstances.fixtures(words))


def records_said(words: Words) -> tuple[Said, ...]:
    """Return sentences on when greens came back in earlier years, the latest first."""
    titles = {work.operation.name: words.title(work) for work in words.programme.works}
    seen = [
        (titles[name], record)
        for name, fitted in words.programme.records.items()
        if name in titles
        for record in fitted.records
    ]
    seen.sort(key=lambda one: (one[1].done, one[1].seen), reverse=True)
    return tuple(_on_record(words, title, record) for title, record in seen[:MOST_RECORDS])


def _on_record(words: Words, title: str, record: SeasonOnRecord) -> Said:
    """Hollow tining on 10 August 2026: healed on 7 September 2026, after about four weeks."""
    date, smooth = words.dates.date, record.putting_smoothly
    first = f"putting smoothly on {date(smooth)}, and " if smooth else ""
    return Said(
        f"{title} on {date(record.done)}: {first}{record.what} on {date(record.seen)}, after "
        f"{measures.weeks([(record.seen - record.done).days])}.",
        (record.done, *([smooth] if smooth else []), record.seen),
    )


def temporary_said(words: Words) -> tuple[Said, ...]:
    """Return sentences on the greens that have temporary ones and their days, if there are any."""
    days: dict[str, list[dt.date]] = {}
    for day, on_day in sorted(words.programme.status.items()):
        for green, status in on_day.items():
            if status is PlayStatus.TEMPORARY:
                days.setdefault(green, []).append(day)
    groups: dict[tuple[dt.date, ...], list[str]] = {}
    for green, found in days.items():
        groups.setdefault(tuple(found), []).append(green)
    said = tuple(
        _temporary(words, tuple(greens), dates) for dates, greens in sorted(groups.items())
    )
    if len(said) > MOST_TEMPORARY:
        first, last = min(min(d) for d in groups), max(max(d) for d in groups)
        text = f"Some greens have temporary ones between {words.dates.day(first)} and {words.dates.day(last)}."
        return (Said(text, (first, last)),)
    return said


def _temporary(words: Words, greens: tuple[str, ...], dates: tuple[dt.date, ...]) -> Said:
    """Return a sentence on days with temporary greens, with only first and last if it gets long."""
    several = len(greens) > 1
    subject = (
        f"{words.greens(greens)} {'have temporary greens' if several else 'has a temporary green'}"
    )
    whole = sentence(f"{subject} {words.dates.on_days(dates)}")
    if len(words_of(whole)) <= LONGEST_SENTENCE:
        return Said(whole, dates, greens)
    first, last = words.dates.day(dates[0]), words.dates.day(dates[-1])
    rough = sentence(f"{subject} on most days between {first} and {last}")
    return Said(rough, (dates[0], dates[-1]), greens)


def _cost(words: Words) -> str:
    total = words.programme.figure("cost", "all")
    if total is None or not total.value or not _is_currency(total.unit):
        return ""
    sum_of_all = about(total.value, total.unit, words.programme.club.language)
    return f"The work that is planned comes to {sum_of_all}."


def _cost_parts(words: Words) -> str:
    found = [(words.programme.figure(name, "all"), purpose) for name, purpose in _SUMS.items()]
    parts = [
        f"{about(figure.value, figure.unit, words.programme.club.language)} {purpose}"
        for figure, purpose in found
        if figure is not None and figure.value and _is_currency(figure.unit)
    ]
    if not _cost(words) or not parts:
        return ""
    if len(parts) == 1:
        return f"All of it is {parts[0].split(' for ', 1)[1]}."
    return f"That is {and_list(parts)}."


def _is_currency(unit: str) -> bool:
    """Tell whether a unit is a currency; a plan may leave it out."""
    return len(unit) == len("GBP") and unit.isupper()


def _must_heal(work: Work) -> bool:
    return work.operation.opening in _MUST_HEAL and work.operation.noticed is not Noticed.HARDLY


def _on_warm_season_grass(words: Words, work: Work) -> bool:
    growth = words.programme.figure("growth potential", work.id)
    return growth is not None and growth.inputs.get("grass") == "warm-season"
