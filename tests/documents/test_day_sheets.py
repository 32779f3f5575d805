"""The sheets for staff and the signs: a page a day, and on it what the programme has for that day."""

from __future__ import annotations

import datetime as dt
import math
import re
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from notices.documents.model import Document, Fact
from notices.documents.starter_sheet import starter_sheet
from notices.documents.team_sheet import team_sheet
from notices.documents.tee_sign import signs, tee_sign, tee_signs
from notices.programme.model import PlayStatus
from notices.wording.blocks import Heading, KeyFacts, Paragraph, Table
from notices.wording.words import Words
from tests.documents.building import BuiltPack, build_data, of
from tests.documents.dates_in_words import days_in, read_dates, read_greens
from tests.documents.reading import Sheet, plain, tight
from tests.wording.small_plans import HOUR_A_GREEN, MILD_WINTER, plan, programme, work

DAY_SHEETS = ("starter-sheet", "team-sheet", "tee-sign")
STATUS = re.compile(r" (?=(?:Open|Closed|Temporary green|Wait)\b)")
TIME = re.compile(r"\b(\d{1,2}):(\d\d)\b")


def sheets(pack: BuiltPack) -> Iterator[tuple[Document, Sheet]]:
    for document in pack.documents.documents:
        if document.name in DAY_SHEETS:
            yield document, Sheet.read(pack.files[f"{document.name}.pdf"])


def pages_of(document: Document) -> list[list[Fact]]:
    """The facts of each page: it begins with its days."""
    pages: list[list[Fact]] = []
    for fact in document.facts:
        if fact.subject in ("day", "when") and fact.dates:
            pages.append([])
        pages[-1].append(fact)
    return pages


def texts_of(document: Document, sheet: Sheet) -> list[list[str]]:
    """Words of the page, or pages, of each section, which begin with its heading or its days."""
    starts = [tight(facts[0].text) for facts in pages_of(document)]
    starts += [tight(one.heading) for one in document.sections[len(starts) :]]
    found: list[list[str]] = []
    for text in sheet.texts:
        if len(found) < len(starts) and starts[len(found)] in tight(text)[:120]:
            found.append([])
        found[-1].append(plain(text))
    return found


def text_of(document: Document, sheet: Sheet, day: dt.date) -> str:
    """Words of the page of a day."""
    number = next(n for n, facts in enumerate(pages_of(document)) if day in facts[0].dates)
    return " ".join(texts_of(document, sheet)[number])


def test_each_day_has_a_page_of_its_own_and_all_of_its_facts_on_it(pack: BuiltPack) -> None:
    for document, sheet in sheets(pack):
        texts = texts_of(document, sheet)
        assert len(texts) == len(document.sections)
        for facts, pages in zip(pages_of(document), texts, strict=False):
            assert len(pages) == 1, f"{document.name}: {facts[0].text}"
            words = tight(" ".join(pages))
            for fact in facts:
                assert tight(fact.text) in words, f"{document.name}, {facts[0].text}: {fact.text}"


def test_each_page_says_which_it_is_of_how_many_and_of_when(pack: BuiltPack) -> None:
    for document, sheet in sheets(pack):
        for number, text in enumerate(sheet.texts, 1):
            # A sign stands alone.
            numbered = f"Page {number} of {sheet.pages}" in plain(text)
            assert numbered is (document.name != "tee-sign"), document.name
            said = read_dates(plain(text).partition("Issued ")[2], pack.programme.issued)
            assert pack.programme.issued in said[0].days


def test_the_starter_reads_what_each_green_is(pack: BuiltPack) -> None:
    programme = pack.programme
    document = pack.documents.document("starter-sheet")
    told: set[dt.date] = set()
    for facts in pages_of(document):
        rows: dict[str, set[str]] = {}
        for fact in facts:
            if fact.subject == "greens":
                named, status = STATUS.split(fact.text, maxsplit=1)
                assert read_greens(named, programme.greens) == set(fact.greens)
                rows.setdefault(status, set()).update(fact.greens)
        greens = [green for named in rows.values() for green in named]
        assert sorted(greens) == sorted(programme.greens), "each green once"
        for day in facts[0].dates:
            told.add(day)
            for status, named in rows.items():
                for green in named:
                    worst = programme.status_on(day, green)
                    if worst is PlayStatus.CLOSED:
                        assert "losed" in status
                    elif worst is PlayStatus.TEMPORARY:
                        assert "emporary" in status
                    elif "Wait" not in status:
                        assert status.startswith("Open")
    away = {PlayStatus.CLOSED, PlayStatus.TEMPORARY}
    assert told >= {day for day, greens in programme.status.items() if away & set(greens.values())}
    assert told >= {day for closed in programme.closures for day in closed.dates}


def test_the_team_reads_greens_times_and_sand_of_each_working_day(working_pack: BuiltPack) -> None:
    programme = working_pack.programme
    document = working_pack.documents.document("team-sheet")
    sheet = Sheet.read(working_pack.files["team-sheet.pdf"])
    days = {visit.date for work in programme.works for visit in work.visits}
    pages = pages_of(document)
    assert [facts[0].dates for facts in pages] == [(day,) for day in sorted(days)]
    for facts in pages:
        (day,) = facts[0].dates
        visited = {g for w in programme.works for v in w.visits if v.date == day for g in v.greens}
        (greens,) = (fact for fact in facts if fact.subject == "greens")
        assert set(greens.greens) == visited
        text = text_of(document, sheet, day)
        if (timetable := programme.timetables.get(day)) is not None:
            # To five minutes, and not before work can begin.
            assert {int(minute) % 5 for _, minute in TIME.findall(text)} == {0}
            begun = 5 * round(timetable.first_start / 5)
            hour, minute = divmod(max(begun, 5 * math.ceil(timetable.work_from / 5)), 60)
            assert f"{(hour - 1) % 12 + 1}:{minute:02}" in text or f"{hour:02}:{minute:02}" in text
    brought = (
        {one.date: one.mass_t for one in programme.sand_order.days} if programme.sand_order else {}
    )
    for day, tonnes in brought.items():
        said = re.search(r"Sand today (\d+\.\d) (tons|t)", text_of(document, sheet, day))
        assert said is not None
        # A US ton is 2,000 lb of 0.45359237 kg each.
        whole = float(said[1]) * (2000 * 0.45359237 / 1000 if said[2] == "tons" else 1)
        assert whole == pytest.approx(tonnes, abs=0.051)


@of("withy-hollow")
def test_the_first_trips_of_the_day_are_counted(pack: BuiltPack) -> None:
    programme = pack.programme
    assert programme.sand_order is not None
    first = programme.sand_order.days[0]
    # Loads of 1 m³, and to each of three greens two: half of its fill is more than one.
    assert first.volume_m3 > 3
    assert first.trailer_loads == 6


def test_a_sign_can_be_read_from_a_buggy(pack: BuiltPack) -> None:
    document = pack.documents.document("tee-sign")
    sheet = Sheet.read(pack.files["tee-sign.pdf"])
    large = tight(" ".join(span.text for span in sheet.spans if span.size > 49.9))
    for facts in pages_of(document):
        sign = facts[1]
        assert tight(sign.text) in large
        if sign.greens:
            named = re.sub(
                r"(?: closed.*|: temp.*)$|^(?:We are working|Fresh sand) on ", "", sign.text
            )
            # Without the putting green, to which nobody plays from a tee.
            assert read_greens(named, pack.programme.greens) == set(sign.greens)
    for text, facts in zip(sheet.texts, pages_of(document), strict=True):
        (taken_down,) = (fact for fact in facts if fact.subject == "take down")
        down = plain(text).partition("Take down ")[2].partition(".")[0]
        assert days_in(read_dates(down, pack.programme.issued)) == taken_down.dates
        until = facts[0].text.startswith("Until about ")
        assert until or taken_down.dates == facts[0].dates[-1:]


@pytest.mark.parametrize(
    ("greens", "closed", "said"),
    [
        # Large stands what golfers play to.
        (
            "13-18, Putting green",
            [],
            [
                (
                    "Greens 13 to 18 closed",
                    "The putting green is closed too. All open again tomorrow",
                )
            ],
        ),
        ("Putting green", [], [("Putting green closed", "Open again tomorrow morning.")]),
        # What the club closes itself has a sign of its own, and no second one.
        (
            "13-18, Putting green",
            [{"what": "Putting green", "dates": "2027-08-09", "instead": "the nets"}],
            [
                ("Greens 13 to 18 closed", "Open again tomorrow morning."),
                ("Putting green closed", "Please use the nets."),
            ],
        ),
    ],
)
def test_a_sign_says_that_the_putting_green_is_closed(
    greens: str, closed: list[dict[str, object]], said: list[tuple[str, str]]
) -> None:
    cores = work("hollow tining", "2027-08-09", greens=greens)
    course = "1-18, Putting green"
    document = tee_sign(programme(plan(cores, greens=course, closures=closed)))
    found = [
        (plain(heading.text), plain(below.text))
        for _, heading, below, *_ in (section.blocks for section in document.sections)
        if isinstance(heading, Heading) and isinstance(below, Paragraph)
        if "healing" not in heading.text
    ]
    assert [large for large, _ in found] == [large for large, _ in said]
    assert all(small.startswith(start) for (_, small), (_, start) in zip(found, said, strict=True))


def test_signs_stay_few(pack: BuiltPack) -> None:
    # Fourteen for a stage at most, and one for each closure and restriction.
    assert len(pack.documents.document("tee-sign").sections) <= 20


def test_the_sign_on_healing_stands_until_the_greens_putt_well() -> None:
    """What is expected is no day to take it down: members were given a later one, at worst."""
    found = programme(plan(work("hollow tining", "2027-08-09"), temperatures=MILD_WINTER))
    promise = found.periods[0].putts_well_after_all
    assert promise.at_worst is not None
    assert promise.expect_by < promise.at_worst
    dates = Words(found).dates
    (sign,) = (
        [block.text for block in section.blocks if isinstance(block, Paragraph)]
        for section in tee_sign(found).sections
        if any(getattr(block, "text", "") == "The greens are healing" for block in section.blocks)
    )
    assert sign[0] == f"Until about {dates.day(promise.expect_by)}"
    assert sign[-1].startswith(
        f"Take down once the greens putt well, at the latest after {dates.day(promise.at_worst)}."
    )


def test_a_closed_practice_ground_has_a_sign_that_hangs_there() -> None:
    closed = {"what": "practice ground", "dates": "2027-08-09", "instead": "the nets"}
    entry = tee_signs(programme(plan(closures=[closed])))
    assert entry is not None
    assert entry.todo.endswith("Hang the sign for the practice ground there.")
    (sign,) = tee_sign(programme(plan(closures=[closed]))).sections
    assert [block.text for block in sign.blocks if isinstance(block, Heading | Paragraph)][:3] == [
        "Monday 9 August",
        "Practice ground closed",
        "Please use the nets.",
    ]


def test_no_sign_where_nobody_is_sent_elsewhere() -> None:
    """Greens that stay open, and nothing closed."""
    rolled = work("rolling", "2027-08-09")
    assert tee_signs(programme(plan(rolled))) is None


@of("marlpit-common")
def test_who_comes_early_is_not_sent_away_from_greens_that_are_sanded_later(
    pack: BuiltPack,
) -> None:
    """On 19 October the first of six greens is closed at 10:00, and the last opens by 13:30."""
    day = dt.date(2026, 10, 19)
    hours = [
        one
        for green in map(str, range(1, 7))
        for one in pack.programme.stretches_on(day, green)
        if one.status is PlayStatus.CLOSED
    ]
    assert (hours[0].start, max(one.ends for one in hours) <= 13.5 * 60) == ("10:00", True)
    facts = next(f for f in pages_of(pack.documents.document("tee-sign")) if f[0].dates == (day,))
    assert [fact.text for fact in facts if fact.subject == "sign"] == [
        "Fresh sand on greens 1 to 6",
        "From 10:00. No flag? Please do not play to that green.",
    ]


def sign_on(pack: BuiltPack, day: dt.date) -> list[str]:
    """The words of the signs of a day on which greens are taken from golfers."""
    return [
        f"{sign.large}. {sign.small}"
        for sign in signs(pack.programme)
        if day in sign.days and sign.stage
    ]


@of("skelmarram-links")
def test_a_sign_names_double_greens_by_their_numbers(pack: BuiltPack) -> None:
    """ "Fresh sand on greens 1, 3, 4 and 6, and the double greens 2/16 and 5/13": 15 words."""
    assert sign_on(pack, dt.date(2027, 9, 13)) == [
        (
            "Fresh sand on greens 1, 2/16, 3, 4, 5/13 and 6. "
            "From 10:00. No flag? Please do not play to that green."
        )
    ]
    assert sign_on(pack, dt.date(2027, 8, 31)) == [
        "Greens 7/11, 8 to 10 and 12 closed. Open again tomorrow morning."
    ]


def test_greens_that_take_more_than_a_dozen_words_are_not_named_on_a_sign() -> None:
    """Their names are five words each, so that three of them take 15 and two "and"."""
    names = "Under the old red oak, Over the wide mill pond, Behind the long stone wall"
    found = programme(plan(work("hollow tining", "2027-08-09", greens=names), greens=names))
    first = signs(found)[0]
    assert (first.large, first.small, first.greens) == (
        "Some greens closed",
        "No flag? Please do not play to that green. Open again tomorrow morning.",
        (),
    )


def large_words(pack: BuiltPack) -> Iterator[tuple[str, list[str], float]]:
    """The days of each sign, the lines of its large words, and how large they are [pt]."""
    sheet = Sheet.read(pack.files["tee-sign.pdf"])
    for number, sign in enumerate(signs(pack.programme), 1):
        spans = [span for span in sheet.spans if span.page == number]
        size = max(span.size for span in spans)
        lines = [plain(span.text) for span in spans if span.size == size]
        assert tight("".join(lines)) == tight(sign.large)
        yield sign.when(Words(pack.programme)), lines, size


@of("marlpit-common", "live-oak", "withy-hollow", "quillerby")
def test_no_range_on_a_sign_is_torn(pack: BuiltPack) -> None:
    """From a buggy "Greens 13 to", and below it "18 closed", reads as green 18 alone."""
    found = [lines for _, lines, _ in large_words(pack)]
    assert any(len(lines) > 1 for lines in found)
    for lines in found:
        torn = r"\d\n(to|and)\b|\d (to|and)\n\d|\b([Hh]ole|[Gg]reen)\n\d"
        assert re.search(torn, "\n".join(lines)) is None, lines


@of("marlpit-common", "withy-hollow")
def test_signs_of_one_work_are_of_one_size(pack: BuiltPack) -> None:
    """ "Fresh sand on greens 1 to 6" has room for larger letters than "… 13 to 18"."""
    sizes: dict[str, set[float]] = {}
    chosen = [section.style for section in pack.documents.document("tee-sign").sections]
    for sign, style, (_, _, size) in zip(
        signs(pack.programme), chosen, large_words(pack), strict=True
    ):
        assert style.split()[0] == f"size-{size:.0f}", "the template has it too"
        if sign.work:
            sizes.setdefault(sign.work, set()).add(size)
    assert len(sizes) > 1
    assert all(len(of_work) == 1 for of_work in sizes.values())


@of("alderfleet-park")
def test_a_temporary_green_elsewhere_drops_no_sign(pack: BuiltPack) -> None:
    """Heron 4 has a temporary green from 22 November; on 8 December people wait on the Mill."""
    day = dt.date(2027, 12, 8)
    assert pack.programme.status_on(day, "Heron 4") is PlayStatus.TEMPORARY
    assert sign_on(pack, day) == [
        "We are working on all 18 greens of the Mill course. Please wait until we wave you on."
    ]
    assert len(sign_on(pack, day - dt.timedelta(1))) == 1


@of("live-oak")
def test_a_sign_says_no_time_to_the_minute(pack: BuiltPack) -> None:
    """Work begins on August 16 with the light: at 6:34 a.m., which nobody calls a time of day."""
    timetable = pack.programme.timetables[dt.date(2027, 8, 16)]
    assert (timetable.begins < timetable.work_from, timetable.told_start % 15 > 0) == (True, True)
    (said,) = sign_on(pack, dt.date(2027, 8, 16))
    assert said.startswith("We are working on all 18 greens. From first light. No flag?")


def test_brushing_makes_no_other_sign_of_the_same_sand() -> None:
    """It goes along with the second dressing, and opens nothing."""
    twice = {"dressings": 2, "days_between": 7}
    sand = work("top dressing", "2027-08-09", greens="1-6", settings=twice)
    brush = work("brushing", "2027-08-16", greens="1-6")
    (large,) = [
        sign.large
        for sign in signs(programme(plan(sand, brush, crew=HOUR_A_GREEN)))
        if sign.days[0] == dt.date(2027, 8, 16)
    ]
    assert large == "Fresh sand on greens 1 to 6"


def test_a_draft_says_so_on_every_page(tmp_path: Path) -> None:
    data = plan(work("hollow tining", "2027-08-09 to 2027-08-10"), approval="pending")
    pack = build_data(data, tmp_path)
    for name in pack.files:
        if name.endswith(".pdf"):
            for text in Sheet.read(pack.files[name]).texts:
                assert "DRAFT: not yet approved" in plain(text), name


def test_many_greens_that_come_back_one_by_one_stand_in_two_halves() -> None:
    crew = {
        "people": 4,
        "machines": [
            {"operation": "needle tining", "width": "1.2 m", "speed": "1.5 km/h", "people": 1}
        ],
    }
    greens = {"2027-08-16": "1-18"}
    needles = work("needle tining", "2027-08-16", greens=greens, reopen="when finished")
    document = starter_sheet(programme(plan(needles, crew=crew)))
    (section,) = document.sections
    (halves,) = (block for block in section.blocks if isinstance(block, Table) and block.halves)
    assert [row[0] for row in halves.rows] == [str(green) for green in range(1, 19)]
    assert all(re.fullmatch(r"Closed \d\d:\d0 to \d\d:\d0\.", row[1]) for row in halves.rows)
    texts = [block.text for block in section.blocks if isinstance(block, Paragraph)]
    assert "Needle tining. After its hours each green is open, recovering." in texts


def test_the_starter_has_a_page_for_days_of_a_restriction_and_of_a_fixture_on_healing_greens() -> (
    None
):
    """Nobody works then, and yet people ask."""
    data = plan(
        work("hollow tining", "2027-08-09"),
        restrictions=[{"what": "buggies", "dates": "2027-08-09 to 2027-08-12"}],
        fixtures=[
            {"name": "August Medal", "date": "2027-08-14", "kind": "competition"},
            {"name": "Autumn Medal", "date": "2027-11-14", "kind": "competition"},
        ],
    )
    told = {
        day: {fact.text for fact in facts}
        for facts in pages_of(starter_sheet(programme(data)))
        for day in facts[0].dates
    }
    assert max(told) == dt.date(2027, 8, 14)
    assert "No buggies that day." in told[dt.date(2027, 8, 12)]
    assert dt.date(2027, 8, 13) not in told
    assert "August Medal." in told[dt.date(2027, 8, 14)]


ONE = "At most one person at a time is needed; the other "
SPARE = [
    # One in five of ten is kept back, and one of the other eight is at the job.
    (
        {"people": 10},
        f"{ONE}seven are free, and two more do the daily work.",
    ),
    ({"people": 3, "kept_back": 1}, f"{ONE}one is free, and one more does the daily work."),
    ({"people": 2, "kept_back": 0}, f"{ONE}one is free."),
    ({"people": 2, "kept_back": 1}, "One more does the daily work."),
    ({"people": 1}, ""),
]


@pytest.mark.parametrize(("crew", "said"), SPARE)
def test_the_team_reads_who_is_not_at_the_jobs(crew: dict[str, object], said: str) -> None:
    document = team_sheet(programme(plan(work("slitting", "2027-08-16"), crew=crew)))
    facts = [
        row.text
        for section in document.sections[:1]
        for block in section.blocks
        if isinstance(block, KeyFacts)
        for row in block.rows
        if row.label == "People"
    ]
    assert facts == [said] * bool(said)


def signs_of(*closures: Mapping[str, object]) -> list[str]:
    """What stands on the signs of closures, large words and small."""
    made = programme(plan(closures=[{"dates": "2027-08-09", **shut} for shut in closures]))
    return [fact.text for fact in tee_sign(made).facts if fact.subject == "sign"]


def test_a_sign_keeps_people_off_what_is_closed_or_replaced() -> None:
    assert signs_of({"what": "green 4", "instead": "a temporary green"}) == [
        "Green 4: temporary green",
        "Please stay off the green itself.",
    ]
    several = {"what": "greens 4-5", "instead": "temporary greens", "temporary": "40 m short"}
    assert signs_of(several)[1] == "Please stay off the greens themselves. 40 m short."
    assert signs_of({"what": "holes 10-18", "instead": "holes 1-9"})[1] == (
        "Please use holes 1-9. Please keep out: people may be at work."
    )
    assert signs_of({"what": "course"}) == ["Course closed"]


def test_the_starter_tells_people_to_keep_out_on_the_day() -> None:
    shut = [{"what": "holes 10-18", "dates": "2027-08-09", "reason": "trees are felled"}]
    (page,) = starter_sheet(programme(plan(closures=shut))).sections
    said = [fact.text for fact in starter_sheet(programme(plan(closures=shut))).facts]
    assert "Please keep out of what is closed. People and machines may be at work there." in said
    assert page.heading == "Monday 9 August"
