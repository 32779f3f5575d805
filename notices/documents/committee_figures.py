"""The figures of a briefing: how much, from what, on which days, at what cost."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Collection, Iterator, Sequence

from notices.documents.model import Fact, Section
from notices.drawings.year_totals import WOODS
from notices.programme.crew_days import CrewDays, crew_days
from notices.programme.model import Figure, Programme
from notices.programme.published import SAND_KG_M2, SAND_MM, SURFACE_PERCENT, PublishedTotal
from notices.programme.rounds import rounds_on
from notices.programme.sand_order import runs_of_sand
from notices.references import REFERENCES
from notices.wording import amounts, measures
from notices.wording.blocks import Block, Notes, Paragraph, Picture, Table
from notices.wording.hours import on_one_line
from notices.wording.lists import counted, number, sentence
from notices.wording.money import about
from notices.wording.period import PeriodWords
from notices.wording.words import Words

Part = tuple[Section, list[Fact]]

ALL = "all"

_SHOWN: tuple[tuple[str, str, Callable[[float, str], str]], ...] = (
    ("holes", "Holes", lambda value, _units: amounts.count(value)),
    ("slit length", "Length of slits", amounts.distance),
    ("channel length", "Length of channels", amounts.distance),
    ("trench length", "Length of trenches", amounts.distance),
    ("surface disturbed", "Surface opened", lambda value, _units: amounts.percent(value)),
    ("material removed", "Material taken out", amounts.volume),
    ("mass of material removed", "Its mass when dry", amounts.mass),
    ("turf laid", "Turf laid", amounts.area),
    ("sand", "Sand, by volume", amounts.volume),
    ("mass of sand", "Sand, by mass", amounts.mass),
)
"""Quantities of a work that a committee reads: figure, name, and how it is rounded."""

_SUMS = (
    ("cost of sand", "Sand"),
    ("cost of labour", "{labour}"),
    ("cost of hire", "Hire"),
    ("cost", "All that has a price"),
)


HOLES, SLITS = "surface opened by holes, year ", "surface cut by slits, year "
"""Figures of a year, before its number."""

IN_INCHES = (
    "The formulas take inches, feet, square feet and pounds. A cubic yard is 27 cubic feet, and a "
    "ton is 2,000 pounds."
)
"""What a reader needs to work a figure out again in the units of the club."""

ONE_AND_ITS_SUM = 2

_NOT_IN_THE_SUM = "Anything that has no price in the plan comes on top."


def percent(figure: Figure | None) -> str:
    """Write a share of the surface; empty where there is none."""
    return amounts.percent(figure.value) if figure is not None and figure.value else ""


def hours(figure: Figure | None) -> str:
    """Write hours of people; empty where none are known."""
    return amounts.hours(figure.value) if figure is not None and figure.value else ""


def figures(words: Words) -> Iterator[Part]:
    """List the quantities of each work with formula and sources, and the totals of the year."""
    rows: list[tuple[str, ...]] = []
    cited: dict[str, int] = {}
    assumed = False
    for work in words.programme.works:
        name = words.title(work)
        for quantity, label, rounded in _SHOWN:
            figure = words.programme.figure(quantity, work.id)
            if figure is None or not figure.value:
                continue
            sources = [str(cited.setdefault(key, len(cited) + 1)) for key in figure.source]
            star = "*" if figure.default_used else ""
            assumed = assumed or figure.default_used
            rows.append(
                (
                    name,
                    label,
                    f"{rounded(figure.value, words.programme.club.units)}{star}",
                    f"{_formula(figure, words.programme.club.units)} [{', '.join(sources)}]",
                )
            )
            name = ""
    if rows:
        head = ("Work", "What", "How much", "Worked out as [source]")
        table = Table("Quantities over all greens of each work, rounded", head, _named(rows), (2,))
        notes = tuple(sentence(REFERENCES[key].text) for key in cited)
        blocks: list[Block] = [table]
        if assumed:
            blocks.append(
                Paragraph.of(
                    "* This rests in part on a usual value, because the plan gives none of its own."
                )
            )
        if words.programme.club.units == "imperial":
            blocks.append(Paragraph.of(IN_INCHES))
        blocks.append(Notes(notes))
        yield Section("figures", tuple(blocks), "In figures"), []
    totals = tuple(_year(words))
    if totals:
        columns = ("What", "This plan", "Published for a year")
        caption = "Totals of a year, for comparison and not as targets to reach"
        beside: list[Block] = [Table(caption, columns, totals)]
        if _by_year(words.programme, HOLES):
            beside.append(Paragraph.of(WOODS))
        yield Section("year", tuple(beside), "Beside published totals"), []
        yield Section("year chart", (Picture("year-totals"),)), []


def _named(rows: Sequence[tuple[str, ...]]) -> tuple[tuple[str, ...], ...]:
    """Give every row its head: a reader by ear hears each row alone."""
    named, name = [], ""
    for row in rows:
        name = row[0] or name
        named.append((name, *row[1:]))
    return tuple(named)


def _formula(figure: Figure, units: str) -> str:
    # Our fonts have no Greek letters.
    formula = figure.formula.replace("π", "pi").removesuffix(", summed over the greens")
    return amounts.formula(formula, units)


def _year(words: Words) -> Iterator[tuple[str, str, str]]:
    """Set what the works add up to in a year beside what has been published for one."""
    units = words.programme.club.units
    for year, value in _by_year(words.programme, HOLES):
        published = _published(SURFACE_PERCENT, "%")
        yield (
            f"Surface opened by holes in {year}",
            f"about\N{NO-BREAK SPACE}{_percent(value)}",
            published,
        )
    for year, value in _by_year(words.programme, SLITS):
        apart = "Not counted: these totals are of coring"
        yield f"Surface cut by slits in {year}", f"about\N{NO-BREAK SPACE}{_percent(value)}", apart
    for year, value in _by_year(words.programme, "sand in the year "):
        amount, unit = measures.sand_in_year(value, units)
        yield (
            f"Sand in {year}",
            f"about\N{NO-BREAK SPACE}{amount:.1f}\N{NO-BREAK SPACE}{unit}",
            _published_sand(units),
        )


def _percent(value: float) -> str:
    return f"{value:.0f}\N{NO-BREAK SPACE}%"


def _by_year(programme: Programme, quantity: str) -> list[tuple[str, float]]:
    return [
        (figure.quantity.removeprefix(quantity), figure.value)
        for figure in programme.figures
        if figure.green == ALL and figure.quantity.startswith(quantity) and figure.value
    ]


def _published(totals: Sequence[PublishedTotal], unit: str) -> str:
    return "; ".join(
        f"at least {t.low:g} {unit}, ideally {t.high:g} {unit} ({t.by})"
        if t.open_ended
        else f"{t.low:g} to {t.high:g} {unit} ({t.by})"
        for t in totals
    )


def _published_sand(units: str) -> str:
    if units == "imperial":
        return "; ".join(
            f"{t.cubic_feet[0]:g} to {t.cubic_feet[1]:g} cubic feet per 1,000 square feet ({t.by})"
            for t in SAND_MM
            if t.cubic_feet
        )
    return f"{_published(SAND_MM, 'mm')}; {_published([SAND_KG_M2], 'kg/m²')}"


def days(words: Words) -> Iterator[Part]:
    """Tell each day with its work, its hours, and what of crew and light there is."""
    if not words.programme.works:
        return
    told = [*_crew_rows(words), *_rows_without_hours(words)]
    told.sort(key=lambda row: row[1].dates)
    table = Table(
        "Each day with its work",
        ("Day", "Work", "Greens", "At work", "Hours", "Crew hours", "Light"),
        tuple(row for row, _ in told),
        (4, 5),
    ).without_empty_columns()
    blocks: list[Block] = [table]
    total = words.programme.figure("hours of people", ALL)
    if total is not None and total.value:
        blocks.append(
            Paragraph.of(
                f"All works together take about {amounts.hours(total.value)} hours of "
                f"{words.language.terms.labour}. “Hours” is what the work takes, for that day or "
                "run of days. “Crew hours” is what the people for these works have, in the working "
                f"day and in daylight.{_kept_back(words)}"
            )
        )
    else:
        blocks.append(Paragraph.of("The plan does not say who works, so no hours are worked out."))
    yield Section("days", tuple(blocks), "Day by day"), [fact for _, fact in told]


def _kept_back(words: Words) -> str:
    """Say how many of the crew are not counted; empty where all are."""
    kept = max((day.kept_back for day in words.programme.timetables.values()), default=0)
    if not kept:
        return ""
    return " " + sentence(
        f"{number(kept)} of the crew {'is' if kept == 1 else 'are'} kept back for the daily work and "
        f"{'is' if kept == 1 else 'are'} not counted"
    )


def hours_chart(words: Words) -> Iterator[Part]:
    """Show each day's hours within the crew's and the light's."""
    charts = range(1, len(words.programme.timetables) + 1)
    drawn = tuple(Picture(f"work-hours-{n}") for n in charts)
    yield Section("hours chart", drawn, "Work, crew and daylight"), []


def _crew_rows(words: Words) -> Iterator[tuple[tuple[str, ...], Fact]]:
    for entry in crew_days(words.programme):
        when = words.dates.short_days(entry.dates)
        row = (
            when,
            *_works(words, entry),
            _from_and_to(words, entry),
            amounts.hours(entry.hours_of_people),
            amounts.hours(entry.hours_there),
            _light(words, entry),
        )
        yield row, Fact("day", when, entry.dates, entry.greens)


def _works(words: Words, entry: CrewDays) -> tuple[str, str]:
    """Name what is done, and on which greens: the work itself, and what is only done again."""
    main: dict[str, None] = {}
    again: dict[str, None] = {}
    greens: tuple[dict[str, None], dict[str, None]] = ({}, {})
    for day in entry.dates:
        for ordinal, done in rounds_on(words.programme, day).items():
            for work, keys in done:
                if work.id in entry.works:
                    (again if ordinal > 1 else main)[work.id] = None
                    greens[ordinal > 1].update(dict.fromkeys(keys))
    said = [_named_works(words, main), f"{_titles(words, again)} again" if again else ""]
    whole = "; ".join(filter(None, said))
    where = (words.greens_briefly(tuple(keys)) for keys in greens if keys)
    return f"{whole[:1].upper()}{whole[1:]}", "; ".join(where)


def _named_works(words: Words, ids: Collection[str]) -> str:
    """Name works: by their period where they are many."""
    works = [work for work in words.programme.works if work.id in ids]
    if len(works) > 2:
        period = next(p for p in words.programme.periods if works[0] in p.works)
        return PeriodWords(words, period).name()
    return _titles(words, ids)


def _titles(words: Words, ids: Collection[str]) -> str:
    titles = (words.title(work).lower() for work in words.programme.works if work.id in ids)
    return ", ".join(dict.fromkeys(titles))


def _from_and_to(words: Words, entry: CrewDays) -> str:
    """Return start and finish of the longest day as people are told them, and whether it is too long."""
    first, last = map(amounts.time_of_day, (entry.told_start, entry.told_finish))
    said = _from_to(words, first, last)
    return f"{said}: too long" if entry.too_long_by else said


def _light(words: Words, entry: CrewDays) -> str:
    day = entry.longest
    if day.light_from is None or day.light_until is None:
        return ""
    first, last = amounts.time_of_day(day.light_from), amounts.time_of_day(day.light_until)
    return _from_to(words, first, last)


def _from_to(words: Words, first: dt.time, last: dt.time) -> str:
    """Write two times of day, each of which stays on one line."""
    begins, ends = (on_one_line(words.language.clock(time)) for time in (first, last))
    return f"{begins} to {ends}"


def _rows_without_hours(words: Words) -> Iterator[tuple[tuple[str, ...], Fact]]:
    """Yield the days of works that go by no pace, such as drains, or for which nobody is named."""
    timed = {
        (task.work, day)
        for day, table in words.programme.timetables.items()
        for task in table.tasks
    }
    for period in words.programme.periods:
        for dates, greens in words.days_of(period):
            if not any((work.id, day) in timed for work in period.works for day in dates):
                when = words.dates.short_days(dates)
                named = words.greens_briefly(greens)
                row = (when, PeriodWords(words, period).name(), named, "", "", "", "")
                yield row, Fact("day", when, dates, greens)


def cost_and_sand(words: Words) -> Iterator[Part]:
    """Say what has a price, and what sand to order by when."""
    blocks: list[Block] = []
    rows = list(_costs(words))
    if len(rows) == 1:
        blocks.append(Paragraph.of(f"{rows[0][0]} costs {rows[0][1]}. {_NOT_IN_THE_SUM}"))
    elif rows:
        caption = "What has a price in the plan, rounded"
        blocks.append(Table(caption, ("What", "Sum"), tuple(rows), (1,)))
        blocks.append(Paragraph.of(_NOT_IN_THE_SUM))
    if blocks:
        yield Section("cost", tuple(blocks), "Cost"), []
    yield from _sand(words)


def _costs(words: Words) -> Iterator[tuple[str, str]]:
    labour = words.language.terms.labour.capitalize()
    rows = [
        (label.format(labour=labour), _money(words, figure))
        for quantity, label in _SUMS
        if (figure := words.programme.figure(quantity, ALL)) and figure.value
    ]
    # One price is its own sum.
    yield from rows[:1] if len(rows) == ONE_AND_ITS_SUM else rows


def _money(words: Words, figure: Figure) -> str:
    if len(figure.unit) == len("GBP") and figure.unit.isupper():
        return about(figure.value or 0.0, figure.unit, words.programme.club.language)
    return f"about {amounts.count(figure.value or 0.0)}"


def cost_in_brief(words: Words) -> str:
    """Return the sum of all that has a price, and what it covers; empty where nothing has one."""
    total = words.programme.figure("cost", ALL)
    if total is None or not total.value:
        return ""
    rows = list(_costs(words))
    covers = (
        f"for {rows[0][0].lower()} alone. Nothing else has a price in the plan"
        if len(rows) == 1
        else "for all that has a price in the plan"
    )
    return sentence(f"{_money(words, total)}, {covers}")


def sand_in_brief(words: Words) -> str:
    """Say how much sand is needed, and by when; empty where none is."""
    order = words.programme.sand_order
    if order is None:
        return ""
    mass = amounts.mass(order.mass_t, words.programme.club.units)
    loads = counted(order.lorry_loads, words.language.terms.lorry_load)
    due = "was due" if order.deliver_by < words.programme.issued else "delivered"
    return f"{mass}, {loads}, {due} by {words.dates.day(order.deliver_by)}."


def _sand(words: Words) -> Iterator[Part]:
    order = words.programme.sand_order
    if order is None:
        return
    units = words.programme.club.units
    delivered = f"by {words.dates.day(order.deliver_by)}"
    total = amounts.mass(order.mass_t, units)
    volume = amounts.volume(order.volume_m3, units)
    loads = counted(order.lorry_loads, words.language.terms.lorry_load)
    if order.deliver_by < words.programme.issued:
        text = (
            f"The works take {total} ({volume}), which is {loads}. It was due {delivered}, the "
            "last weekday before the first sand was needed. Waste is included."
        )
    else:
        text = (
            f"Order {total} ({volume}), which is {loads}, to be delivered {delivered}. "
            "That is the last weekday before the first sand is needed. Waste is included."
        )
    rows, facts = [], [Fact("sand", delivered, (order.deliver_by,))]
    for run in runs_of_sand(order):
        when = words.dates.short_days(run.dates)
        rows.append(
            (
                when,
                words.language.terms.top_up
                if run.top_up
                else f"first {words.language.terms.dressing}",
                _a_day(run.least_t, run.most_t, units),
                amounts.mass(run.mass_t, units),
            )
        )
        facts.append(Fact("sand", when, run.dates))
    table = Table("Sand by day", ("Days", "What", "A day", "In all"), tuple(rows), (2, 3))
    yield Section("sand", (Paragraph.of(text), table), "Sand to order"), facts
    yield Section("sand chart", (Picture("sand-by-day"),)), []


def _a_day(least: float, most: float, units: str) -> str:
    low, high = amounts.mass(least, units), amounts.mass(most, units)
    return high if low == high else f"{low.split(' ')[0]} to {high}"
