"""The risks of a briefing, what the club lives with, and what earlier years have shown."""

from __future__ import annotations

from collections.abc import Iterator

from notices.documents.model import Fact, Section
from notices.findings import Finding, Weight
from notices.programme.outcomes import outcomes
from notices.wording import circumstances, measures
from notices.wording.accepted import accepted_in_words
from notices.wording.amounts import percent
from notices.wording.blocks import Block, Bullets, Heading, Paragraph, Picture, Table
from notices.wording.finding_words import (
    finding_dates,
    finding_in_words,
    for_the_committee,
)
from notices.wording.lists import and_list, sentence
from notices.wording.outcomes import forecast_in_words, name_of, off_by
from notices.wording.period import PeriodWords
from notices.wording.words import Words

Part = tuple[Section, list[Fact]]


def to_think_about(words: Words) -> tuple[Finding, ...]:
    """Return the open findings that a committee should think about."""
    return tuple(
        found
        for found in words.programme.findings
        if found.weight is Weight.THINK_AGAIN and for_the_committee(found)
    )


def risks(words: Words) -> Iterator[Part]:
    """Tell what may go wrong, what is kept free for it, and what is open or accepted."""
    blocks: list[Block] = []
    facts: list[Fact] = []
    weather = list(_weather(words))
    if weather:
        blocks.append(Bullets.of(*weather))
        facts += [Fact("risk", text) for text in weather]
    for title, findings in (
        ("Still open", to_think_about(words)),
        ("For your information", _information(words)),
    ):
        if findings:
            said = _said(words, findings)
            blocks += [Heading(title), Bullets.of(*(text for text, _ in said))]
            facts += [fact for _, fact in said]
    accepted, of_accepted = _accepted(words)
    if accepted:
        blocks += [Heading("Accepted, and why"), accepted]
        facts += of_accepted
    if blocks:
        kept = words.language.reserve_days(2).lower()
        title = f"Risks and {kept}" if words.programme.works else "Risks"
        yield Section("risks", tuple(blocks), title), facts


def _weather(words: Words) -> Iterator[str]:
    for period in words.programme.periods:
        told = PeriodWords(words, period)
        if period.reserve_dates:
            yield told.reserve()
    limits = (
        circumstances.go_or_no_go(words),
        circumstances.way_of_the_plough(words.programme.works),
    )
    yield from filter(None, (" ".join(filter(None, limits)), circumstances.decision(words)))
    yield from circumstances.fixtures(words)


def _information(words: Words) -> tuple[Finding, ...]:
    return tuple(
        found
        for found in words.programme.findings
        if found.weight is Weight.INFORMATION and for_the_committee(found)
    )


def _said(words: Words, findings: tuple[Finding, ...]) -> list[tuple[str, Fact]]:
    """Word each finding once, the same words for the same dates."""
    told: dict[str, Fact] = {}
    for found in findings:
        text = finding_in_words(words, found)
        told.setdefault(text, Fact("finding", text, finding_dates(found)))
    return list(told.items())


def _accepted(words: Words) -> tuple[Table | None, list[Fact]]:
    """List what the club lives with, each finding of it; one reason for several stands once."""
    accepted = [one for one in words.programme.accepted if for_the_committee(one[0])]
    rows, facts = [], []
    for one in accepted_in_words(words, accepted):
        every = " ".join(text for text, _ in one.what)
        rows.append((every, sentence(one.by).rstrip("."), sentence(one.why)))
        facts += [Fact("finding", text, dates) for text, dates in one.what]
    if not rows:
        return None, []
    return Table("What the club lives with", ("What", "By", "Why"), tuple(rows)), facts


def record(words: Words) -> Iterator[Part]:
    """Set earlier seasons beside what the book would have said, and show what was measured."""
    date = words.dates.date
    rows, facts = [], []
    for outcome in outcomes(words.programme):
        rows.append(
            (
                name_of(words, outcome),
                date(outcome.done),
                forecast_in_words(words, outcome),
                f"{outcome.what.capitalize()} on {date(outcome.actual)}",
                off_by(outcome).capitalize(),
            )
        )
        facts += [Fact("record", date(day), (day,)) for day in (outcome.done, outcome.actual)]
    if rows:
        head = ("Work", "Done", "Forecast", "What we saw", "Off by")
        table = Table("Forecast and what happened", head, tuple(rows))
        own = circumstances.own_record_in_figures(words)
        blocks: list[Block] = [table, *map(Paragraph.of, (_READ_OFF, *own))]
        yield Section("record", tuple(blocks), "What we know from earlier"), facts
        yield Section("record chart", (Picture("forecast-and-record"),)), []
    if words.programme.measured:
        measured: list[Block] = [_measured(words)]
        measured += [Paragraph.of(text) for text in _below_thatch(words)]
        days = {day for one in words.programme.measured for day in one.by_date}
        on = [Fact("measured", words.dates.date(day), (day,)) for day in sorted(days)]
        # Below what earlier seasons have shown it needs no head of its own.
        yield Section("measured", tuple(measured), "" if rows else "What we measured"), on


_READ_OFF = (
    "“Off by” counts the days before the first or after the last day of the forecast. A season "
    "before this plan is set beside what our general figures would have said. The dates allow for "
    "a warm or a cold year."
)


def _measured(words: Words) -> Table:
    """Show what was measured, one row for each day, green and thing."""
    rows = [
        (
            words.dates.date(day),
            words.greens([one.green]),
            one.what,
            and_list([_value(words, value, one.unit) for value in values]),
        )
        for one in words.programme.measured
        for day, values in one.by_date.items()
    ]
    head = ("Date", "Where", "What", "Value")
    return Table("What was measured", head, tuple(rows), (3,))


def _value(words: Words, value: float, unit: str) -> str:
    if unit == "mm":
        return measures.length(value, words.programme.club.units)
    return percent(value) if unit == "percent" else f"{value:g} {unit.removeprefix('1')}".strip()


def _below_thatch(words: Words) -> Iterator[str]:
    """Say how far each work reaches below the thatch that was measured."""
    units = words.programme.club.units
    for figure in words.programme.figures:
        if figure.quantity != "depth below the thatch" or figure.value is None:
            continue
        work = next(work for work in words.programme.works if work.id == figure.work)
        reach = measures.length(abs(figure.value), units)
        where = "below" if figure.value >= 0 else "short of the foot of"
        yield (
            f"{words.title(work)} ends {reach} {where} the thatch of "
            f"{words.greens([figure.green])}. "
            f"Usual is {measures.in_units('10 to 15 mm', units)} below."
        )
