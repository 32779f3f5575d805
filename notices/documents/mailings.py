"""What is sent: the announcement, and a message for each later occasion of the plan."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from notices.documents import phrases
from notices.documents.letters import letter
from notices.documents.member_email import member_email
from notices.documents.model import Document, Entry, Fact, Letter, Section
from notices.programme.duties import Duty, DutyKind, duties
from notices.programme.model import Moment, Period, Programme
from notices.wording import circumstances
from notices.wording.audience import Audience
from notices.wording.blocks import Block, Bullets, Paragraph, with_links
from notices.wording.moments import Message, News, message
from notices.wording.period import PeriodWords
from notices.wording.words import Words

READERS = {"member-email": Audience.MEMBERS, "visitor-notice": Audience.VISITORS}
"""Who is told, by the name of the document that is sent."""

IN_CASE = (Moment.CALLED_OFF, Moment.STOPPED, Moment.RECOVERY_LATE, Moment.BACK_TO_NORMAL)
"""What nobody can date beforehand; ready for the period that golfers notice most."""


def member_emails(programme: Programme) -> Entry:
    """Return the announcement to members with what to do with it."""
    return Entry(
        "Email to members",
        "All members",
        "Open member-email.eml in your mail program: it opens as a draft. Put the members "
        "into Bcc, so that nobody sees the others. For a mailing service, take "
        "member-email.html and member-email.txt.",
        (member_email(programme),),
        again="No need to send it again.",
    )


def later_messages(programme: Programme) -> Entry | None:
    """Return the messages of later occasions; None where nothing but an announcement is due."""
    letters = tuple(_dated(programme))
    if not letters:
        return None
    return Entry(
        "Later messages",
        "Members and visitors",
        "Send each on its day: the list above says when. Read it first, and change it in your "
        "mail program if the day went differently.",
        letters,
        again="Each is still to be sent on its day.",
    )


def messages_in_case(programme: Programme) -> Entry | None:
    """Return what to send if the work does not go as planned, or once all is well again."""
    words = Words(programme)
    main = words.main_period()
    if main is None:
        return None
    letters = [
        letter(
            _document(words, f"member-email-{_ending(moment)}", message(words, main, moment)),
            programme,
        )
        for moment in IN_CASE
        if moment not in {mailing.moment for mailing in programme.mailings}
    ]
    if not letters:
        return None
    return Entry(
        "Messages in case",
        "Members",
        "Send one only when it happens. Each speaks of the first day, or the last: change the day "
        "and the greens in your mail program. Where only some greens are done, write in which "
        "are done.",
        tuple(letters),
    )


def _dated(programme: Programme) -> Iterator[Letter]:
    words = Words(programme)
    made = set()
    for duty in duties(programme):
        reader = _reader(duty)
        if reader is None or duty.document in made:
            continue
        if duty.moment is Moment.REMINDER and duty.last < programme.issued:
            continue  # it reminds of days that are over
        made.add(duty.document)
        period = _period(programme, duty)
        if period is not None and duty.moment is not None:
            said = message(words, period, duty.moment, reader, _news(duty, period))
            more = _those_days(words, period) if _reminds_members(duty.moment, reader) else ()
            yield letter(_document(words, duty.document, said, more), programme)


def _reminds_members(moment: Moment, reader: Audience) -> bool:
    return moment is Moment.REMINDER and reader is Audience.MEMBERS


def _those_days(words: Words, period: Period) -> Iterator[tuple[Section, list[Fact]]]:
    """Yield sections on which green is worked on each day, and on limits to play on those days."""
    if len(period.days) > 1 and len(period.greens) > 1:
        table = phrases.days_table(words, period)
        yield (
            Section("days", (table,), "Which green on which day"),
            list(phrases.days_facts(words, period)),
        )
    told, days = PeriodWords(words, period), set(period.days)
    closed = [one for one in words.programme.closures if days & set(one.dates)]
    limits = [one for one in words.programme.restrictions if days & set(one.dates)]
    game = [
        told.raised_cut(),
        told.later_dressings(),
        told.reserve(),
        *(circumstances.closure(words, one) for one in closed),
        *circumstances.without(words, limits),
    ]
    if game := [text for text in game if text]:
        yield (
            Section("your game", (Bullets.of(*game),), "What it means for your game"),
            [Fact("your game", text) for text in game],
        )


def _reader(duty: Duty) -> Audience | None:
    """Return who is told on a later occasion."""
    if duty.kind is not DutyKind.SEND or duty.moment is Moment.ANNOUNCEMENT:
        return None
    return next(
        (who for name, who in READERS.items() if duty.document.startswith(f"{name}-")), None
    )


def _period(programme: Programme, duty: Duty) -> Period | None:
    return next(
        (
            period
            for period in programme.periods
            if duty.works and duty.works[0] in {work.id for work in period.works}
        ),
        None,
    )


def _news(duty: Duty, period: Period) -> News:
    """Progress is told as of the day on which it is sent."""
    days = [day for day in period.days if day <= duty.first]
    return News(day=days[-1]) if duty.moment is Moment.PROGRESS and days else News()


def _ending(moment: Moment) -> str:
    return moment.value.replace(" ", "-")


def _document(
    words: Words, name: str, said: Message, more: Iterable[tuple[Section, list[Fact]]] = ()
) -> Document:
    """Write a message; further sections, with their facts, follow what the text says."""
    added = tuple(more)
    programme = words.programme
    opening = tuple(with_links(block) for block in said.opening)
    following = tuple(with_links(block) for block in said.next)
    closing: list[Block] = [Paragraph.of(circumstances.sign_off(words))]
    if programme.club.website:
        closing.insert(0, Paragraph.of(f"The latest is always here: {programme.club.website}"))
    return Document.of(
        programme,
        name=name,
        title=said.subject,
        summary=_first_words(opening),
        sections=(
            Section("opening", opening),
            Section("next", following, said.heading),
            *(section for section, _ in added),
            Section("closing", tuple(closing)),
        ),
        facts=(
            *(Fact(said.moment.value, one.text, one.dates, one.greens) for one in said.facts),
            *(fact for _, facts in added for fact in facts),
        ),
    )


def _first_words(blocks: tuple[Block, ...]) -> str:
    return next((block.text for block in blocks if isinstance(block, Paragraph)), "")
