"""The briefing for a committee: what to decide, what is done, what it costs, what may go wrong."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from notices.documents import committee_figures, committee_risks, phrases
from notices.documents.model import Document, Entry, Fact, Fit, Section, Sheet
from notices.documents.questions_and_answers import facts_of
from notices.drawings.committee import committee_charts
from notices.drawings.course_days import course_day_by_day
from notices.drawings.model import Drawing
from notices.drawings.of_period import whole_of
from notices.drawings.sizes import BESIDE, SHEET
from notices.drawings.surface import surface
from notices.programme.day_by_day import course_days
from notices.programme.model import Period, Programme, RuleOfGolf, Work
from notices.programme.openings import StageOfHealing
from notices.units import MM_PER_INCH
from notices.wording import circumstances
from notices.wording.audience import Audience
from notices.wording.blocks import (
    Block,
    Bullets,
    Heading,
    KeyFact,
    KeyFacts,
    Paragraph,
    Picture,
    Table,
)
from notices.wording.dates import in_brief, runs_of_days
from notices.wording.hours import on_one_line
from notices.wording.lists import and_list, counted, sentence
from notices.wording.period import PeriodWords
from notices.wording.questions import questions
from notices.wording.settings import depth_in_words, settings_in_words
from notices.wording.words import Words

PAGES = 8
"""Nobody reads a ninth page to a committee."""

SAID_IN_TABLES = frozenset({"year chart", "sand chart", "hours chart", "course days"})
"""Drawings that may go first: a table beside each says the same."""

DRAWN = SAID_IN_TABLES | {"record chart", "recovery", "ground"}

FITS = (
    Fit(),
    Fit("close closer", room=0.76),
    Fit("close closer", frozenset({"year chart", "sand chart"}), room=0.75),
    Fit("close closer", SAID_IN_TABLES, room=0.6),
    Fit("close closer", DRAWN, room=0.46),
)
"""Ways to set it: closer, with smaller charts, and only then with fewer drawings."""

LETTERS = 2200
"""Number of letters that about fill a page in the first way, headings and tables included."""

MOVABLE = frozenset({"ground", "course days", "hours chart"})
"""Drawings under headings of their own, which may stand later where they would leave a gap.

How the greens come back is not among them: a committee finds it at the same place in each briefing."""

BELOW, FROM_ABOVE = "below-ground", "from-above"
"""Names of the drawings of the greens that stand side by side."""

PATCH_MM = {"metric": 100.0, "imperial": 4 * MM_PER_INCH}
"""How much of the surface is shown in true size, beside what lies below it.

It holds two deep holes each way, which are 75 mm or 3 inches apart."""

PATCH_LETTERS = 12.2
"""Size of the letters below it: as those beside it are printed, and those of a caption."""

ASKED = frozenset(
    {
        "why-now",
        "why-not-another-season",
        "it-took-longer",
        "money-off",
        "putting-on-a-fairway",
    }
)
"""What members will ask that a committee should be able to answer."""

TOLD_IN_FULL = frozenset({"what-it-costs"})
"""Questions of the committee that a section of its own answers."""

Part = tuple[Section, list[Fact]]


def committee_briefings(programme: Programme) -> Entry:
    """Return the briefing with what to do with it."""
    return Entry(
        "Briefing for the committee",
        "Greens committee and board",
        "Send it with the agenda, or hand it out at the table. It prints in black and white.",
        (
            Sheet(
                committee_briefing(programme), "committee-briefing", FITS, PAGES, MOVABLE, LETTERS
            ),
        ),
        again="No need to print it again.",
    )


def committee_briefing(programme: Programme) -> Document:
    """Write the briefing."""
    words = Words(programme)
    main = words.main_period()
    several = len(programme.periods) > 1
    name = PeriodWords(words, main).name() if main and not several else "Work on the course"
    drawings = _drawings(words)
    shown = {drawing.name for drawing in drawings}
    parts = [
        (kept, facts)
        for write in _PARTS
        for section, facts in write(words)
        if (kept := phrases.as_drawn(section, shown)).blocks
    ]
    return Document.of(
        programme,
        name="committee-briefing",
        title=f"Committee briefing: {name[:1].lower()}{name[1:]}",
        summary="What to decide, what is planned, what it costs and what may go wrong.",
        sections=(section for section, _ in parts),
        facts=(fact for _, facts in parts for fact in facts),
        drawings=drawings,
    )


def _drawings(words: Words) -> tuple[Drawing, ...]:
    main = words.main_period()
    ground = [whole_of(words, main, BELOW, BESIDE), _from_above(words, main)] if main else []
    found = (*committee_charts(words), *ground, *course_day_by_day(words, SHEET))
    return tuple(drawing for drawing in found if drawing is not None)


def _from_above(words: Words, period: Period) -> Drawing | None:
    side = PATCH_MM[words.programme.club.units]
    return surface(
        words, period, StageOfHealing.AFTER, FROM_ABOVE, side_mm=side, letters=PATCH_LETTERS
    )


def _decision(words: Words) -> Iterator[Part]:
    """Say what is asked of the committee, and the plan at a glance."""
    blocks: list[Block] = [Paragraph.of(_asked_of_committee(words))]
    points = list(_points(words))
    if points:
        blocks += [Paragraph.of("Please also decide:"), Bullets.of(*points)]
    facts = []
    main = words.main_period()
    if main is not None:
        told = PeriodWords(words, main)
        several = len(words.programme.periods) > 1
        rows = [
            KeyFact("Main work", f"{told.name()}." if several else ""),
            KeyFact("When", f"{told.when()}."),
            KeyFact("Greens", told.which()),
            *phrases.good_again(told),
            KeyFact(words.language.reserve_days(len(main.reserve_dates)), told.reserve()),
            KeyFact("Healed", _healed(words, main)),
            KeyFact("Sand", committee_figures.sand_in_brief(words)),
            KeyFact("Cost", committee_figures.cost_in_brief(words)),
        ]
        blocks.append(KeyFacts(tuple(row for row in rows if row.text)))
        facts = list(phrases.period_facts(told))
    approval = words.programme.approval
    if approval and approval.date and not words.programme.draft:
        facts.append(Fact("approval", circumstances.approval(words), (approval.date,)))
    yield Section("decision", tuple(blocks), "What we ask of you"), facts


def _asked_of_committee(words: Words) -> str:
    dates = "the dates" if words.programme.works else "the closures"
    if words.programme.draft:
        return f"We ask you to approve {dates} in this paper. Nothing is sent out before you do."
    if approved := circumstances.approval(words):
        return f"{approved} This paper is for you to note. It shows what follows from the plan."
    return f"We ask you to {words.language.terms.to_agree} {dates} in this paper."


def _points(words: Words) -> Iterator[str]:
    """Yield what else waits for a decision."""
    found = {rule.rule for rule in words.programme.rules}
    local = [
        f"{rule.value} ({what})"
        for rule, what in (
            (RuleOfGolf.RELIEF_FROM_HOLES, "free relief from holes"),
            (RuleOfGolf.TEMPORARY_GREENS, "temporary greens"),
        )
        if rule in found
    ]
    if local:
        yield sentence(f"whether {and_list(local)} {'is' if len(local) == 1 else 'are'} in force")
    accepted = {
        found.path
        for found, _, _ in words.programme.accepted
        if found.code in ("fixture-in-closure", "fixture-in-recovery")
    }
    fixtures = [
        fixture.name
        for fixture in words.programme.fixtures
        if (fixture.closed_greens or fixture.recovering_greens)
        and not fixture.goes_ahead
        and ("fixtures", fixture.plan_index) not in accepted
    ]
    met = list(dict.fromkeys(fixtures))
    if met:
        # Not in the middle of a sentence, where some names want an article and some bear none.
        it = "it" if len(met) == 1 else "they"
        yield sentence(f"{and_list(met)}: how {it} will be played")
    open_findings = committee_risks.to_think_about(words)
    if open_findings:
        count = counted(len(open_findings), "point")
        verb = "is" if len(open_findings) == 1 else "are"
        yield sentence(f"what to do about {count} that {verb} still open; see the risks")


def _healed(words: Words, period: Period) -> str:
    """Say when nothing is left to see: for a committee, and not for members."""
    promise = period.healed_after_all
    said = words.dates.day if promise.growth_stops is None else words.dates.about
    early = said(promise.expect_by)
    late = said(promise.at_worst) if promise.at_worst else ""
    by = "by " if promise.growth_stops is None else ""
    return sentence(f"{by}{early}, at worst {late}" if late not in ("", early) else f"{by}{early}")


def _why(words: Words) -> Iterator[Part]:
    main = words.main_period()
    if main is None:
        return
    own = dict.fromkeys(sentence(work.why) for work in words.programme.works if work.why)
    yield Section("why", (*words.story(main), *map(Paragraph.of, own)), "Why"), []


def _what(words: Words) -> Iterator[Part]:
    """List each work with its settings, its depth and how much of the surface it opens."""
    works = words.programme.works
    if works:
        rows, facts = [], []
        for work in works:
            days = in_brief(work.dates)
            when = words.dates.short_days(days)
            disturbed = words.programme.figure("surface disturbed", work.id)
            rows.append(
                (
                    words.title(work),
                    on_one_line(when) if len(runs_of_days(days)) == 1 else when,
                    _greens(words, work),
                    settings_in_words(work, words.programme.club.units),
                    depth_in_words(work, words.programme.club.units),
                    committee_figures.percent(disturbed),
                    committee_figures.hours(words.programme.figure("hours of people", work.id)),
                )
            )
            facts.append(Fact("work", when, tuple(days), work.greens))
        head = ("Work", "When", "Greens", "Settings", "Depth", "Surface", "Hours")
        labour = words.language.terms.labour
        caption = f"Each work, the share of the surface that it opens, and hours of {labour}"
        table = Table(caption, head, tuple(rows), (4, 5, 6)).without_empty_columns()
        yield Section("what", (table,), "What we do"), facts
        yield Section("come back", tuple(_come_back(words))), []
        main = words.main_period()
        if main is not None:
            chart = Picture(f"recovery-{words.programme.periods.index(main) + 1}")
            yield Section("recovery", (chart,), "How the greens come back"), []
    others = [
        text
        for closed in words.programme.closures
        if (text := circumstances.closure(words, closed))
    ]
    others += circumstances.restrictions(words)
    if others:
        title = "Other closures and limits" if works else "What is closed"
        facts = [Fact("closure", text) for text in others]
        yield Section("closures", (Bullets.of(*others),), title), facts
    if works:
        ground = (Picture(BELOW), Picture(FROM_ABOVE))
        yield Section("ground", ground, "The green, below and from above"), []


def _come_back(words: Words) -> Iterator[Table]:
    """Say of each period when its greens come back, where there are several."""
    periods = words.programme.periods
    if len(periods) < 2:
        return
    rows = []
    for period in periods:
        told = PeriodWords(words, period)
        name = f"{told.name()}, {words.dates.short_days(period.days)}"
        rows.append((name, told.open_again(), told.putting_well(), _healed(words, period)))
    head = ("Work", "Open again", "Putting well", "Healed")
    yield Table("When the greens come back", head, tuple(rows))


def _greens(words: Words, work: Work) -> str:
    """Name the greens of a work: all of them only where it leaves out no putting green either."""
    every = set(work.greens) == set(words.programme.greens)
    return words.greens_briefly(work.greens) if every else words.greens(work.greens)


def _course_days(words: Words) -> Iterator[Part]:
    """Show each green on each day, in as many drawings as the days need."""
    most = len(course_days(words.programme))
    names = (f"course-day-by-day{SHEET.suffix}-{number}" for number in range(1, most + 1))
    # Where nothing is worked on, it shows what has just been said, and follows it.
    heading = "The course day by day" if words.programme.works else ""
    yield Section("course days", tuple(map(Picture, names)), heading), []


def _rules(words: Words) -> Iterator[Part]:
    for section in phrases.rules_section(words):
        title = "Rules and scores"
        yield Section(section.name, section.blocks, title), list(phrases.rules_facts(words))


def _asked(words: Words) -> Iterator[Part]:
    """Answer what members will ask a committee, and what a committee asks itself."""
    asked = [
        one
        for one in questions(words)
        if one.slug in ASKED
        or (one.audience is Audience.COMMITTEE and one.slug not in TOLD_IN_FULL)
    ]
    if not asked:
        return
    blocks: list[Block] = []
    for one in asked:
        blocks += [Heading(one.question), *one.answer]
    facts = [fact for one in asked for fact in facts_of(one)]
    yield Section("questions", tuple(blocks), "What members will ask"), facts


_PARTS: tuple[Callable[[Words], Iterator[Part]], ...] = (
    _decision,
    _why,
    _what,
    committee_figures.figures,
    committee_figures.days,
    _course_days,
    committee_figures.hours_chart,
    committee_figures.cost_and_sand,
    committee_risks.risks,
    _rules,
    _asked,
    committee_risks.record,
)
