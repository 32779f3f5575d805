"""What the club has to do about the work besides doing it, and when.

To send, print, put up, take down, order, take delivery, confirm, and to look whether a green has
come back as promised: one list, for the calendar of the team, the sheet of the secretary and
``notices due`` alike. Words for it are in ``wording/duties.py``.
"""

from __future__ import annotations

import datetime as dt
import enum
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain

from notices.calendar_days import ONE_DAY
from notices.operations import WhileWorking
from notices.plan.moments import LONGEST_AHEAD, Moment, Sending
from notices.programme.hours import days_asked_about
from notices.programme.model import Mailing, Period, Programme, Promise
from notices.programme.news import last_day_of_news
from notices.programme.slugs import slug

ORDER_AHEAD = dt.timedelta(days=14)
"""Sand is ordered two weeks before it must lie there (judgement: a merchant wants some notice)."""

DELIVERY_WATCHED = dt.timedelta(days=2)
"""How many days before the last one the team looks out for the lorry (judgement)."""

A_WEEK = dt.timedelta(days=7)
"""Time to take a sheet down, and to send what tells of something that is over (judgement)."""

SHORT_MESSAGE = "short message"

USUAL_MAILINGS = (
    Mailing("member email", Moment.ANNOUNCEMENT, Sending(days=-LONGEST_AHEAD)),
    Mailing("member email", Moment.REMINDER, Sending(days=-3)),
    Mailing("member email", Moment.FINISHED, Sending(from_end=True)),
)
"""What is sent where the plan does not say: as soon as it is issued, shortly before the work of each
period, and when it is over (judgement: more would not be read)."""


class DutyKind(enum.Enum):
    """What there is to do, in the order in which one day's duties are read."""

    SEND = "send"
    PRINT = "print"
    PUT_UP = "put up"
    TAKE_DOWN = "take down"
    CHANGE_SIGNS = "change signs"
    ORDER = "order"
    DELIVER = "deliver"
    CONFIRM = "confirm"
    LOOK = "look"


class DutySubject(enum.Enum):
    """What is confirmed or looked at."""

    APPROVAL = "approval"
    GO_AHEAD = "go ahead"
    OPEN_AGAIN = "open again"
    PUTTING_WELL = "putting well"
    FULLY_HEALED = "fully healed"


@dataclass(frozen=True, slots=True)
class Duty:
    """One thing to do between two days, both included."""

    id: str
    """The same when the dates move, and like no other's in the programme."""
    kind: DutyKind
    first: dt.date
    last: dt.date
    """The last day on which it is still of use."""
    document: str = ""
    """What is sent or printed: name of a file of the pack without its ending."""
    moment: Moment | None = None
    """On what occasion something is sent."""
    subject: DutySubject | None = None
    works: tuple[str, ...] = ()
    """Works that it is about; none where it is about all."""
    greens: tuple[str, ...] = ()
    """Greens to look at: those of which nothing is on record yet."""
    day: dt.date | None = None
    """The day that it is about, such as that of the work that goes ahead or not."""
    up: tuple[str, ...] = ()
    """Signs that go up that day, by what stands large on them."""
    down: tuple[str, ...] = ()
    """Signs that come down: the day before was their last."""

    def due_on(self, day: dt.date) -> bool:
        """Whether it is to be done now."""
        return self.first <= day <= self.last

    def missed_on(self, day: dt.date) -> bool:
        """Whether a promised date is past and nobody has recorded what came of it."""
        return self.kind is DutyKind.LOOK and day > self.last


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet of the pack that hangs or is handed out."""

    document: str
    hangs: bool
    for_each_period: bool = False
    """Whether it is printed for each period of work, the day before its first page; else once."""
    only_with_work: bool = False
    """Whether it is of no use for closures alone."""
    only_where_asked: bool = False
    """Whether it has pages for no other days than those about which people ask."""


PAPERS = (
    Paper("board-notice-a4", hangs=True),
    Paper("counter-handout", hangs=False),
    Paper("starter-sheet", hangs=False, for_each_period=True, only_where_asked=True),
    Paper("team-sheet", hangs=False, for_each_period=True, only_with_work=True),
)
"""The sheets of the pack; one that is added gets its row here."""

SIGNS = "tee-sign"
"""The document of the signs, a page for each."""


@dataclass(frozen=True, slots=True)
class Hung:
    """A sign, and from which day to which it hangs."""

    large: str
    """What stands large on it."""
    first: dt.date
    last: dt.date


@dataclass(frozen=True, slots=True)
class _Event:
    """Days of which golfers hear together: a period of work, or the closures of a plan."""

    id: str
    first: dt.date
    last: dt.date
    works: tuple[str, ...]


def duties(
    programme: Programme, papers: Sequence[Paper] = PAPERS, signs: Sequence[Hung] = ()
) -> tuple[Duty, ...]:
    """Return everything that is to be done besides the work itself, by date.

    Parameters
    ----------
    programme
        A plan, worked out. What is on record in it is not looked at again. Duties count from
        the first of the notices that replace one another, so that a later one calls none off.
    papers
        The sheets that are printed.
    signs
        Every sign of the plan with its days, whether they are over or not.
    """
    events = list(_events(programme))
    days = [day for period in programme.periods for day in period.days]
    days += [day for closed in programme.closures for day in closed.dates]
    known_by = max(programme.edition.begun, min(days) - ONE_DAY)
    found = [
        *_to_send(programme, events, known_by),
        *_to_print(programme, papers, known_by),
        *_to_hang(programme, signs),
        *_to_buy(programme),
        *_to_confirm(programme, known_by),
        *_to_look_at(programme),
    ]
    order = list(DutyKind)
    return tuple(sorted(found, key=lambda d: (d.first, d.last, order.index(d.kind))))


def due(found: Iterable[Duty], day: dt.date) -> tuple[Duty, ...]:
    """Return what is to be done on a day, what ends first before the rest.

    Promised dates that are past without a word are among it.
    """
    open_duties = [duty for duty in found if duty.due_on(day) or duty.missed_on(day)]
    return tuple(sorted(open_duties, key=lambda duty: duty.last))


def _events(programme: Programme) -> Iterator[_Event]:
    """Yield the periods that golfers notice, or else all periods, or else the closures."""
    noticed = [period for period in programme.periods if period.noticed]
    for period in noticed or programme.periods:
        works = tuple(work.id for work in period.works)
        yield _Event(works[0], period.days[0], period.days[-1], works)
    if not programme.periods and programme.closures:
        days = [day for closed in programme.closures for day in closed.dates]
        yield _Event(programme.closures[0].id, min(days), max(days), ())


def _printed_for(programme: Programme) -> Iterator[_Event]:
    """Yield every period, noticed or not, and each run of days outside of them that have a page."""
    if not programme.periods:
        yield from _events(programme)
        return
    spans = []
    for period in programme.periods:
        visits = [visit.date for work in period.works for visit in work.visits]
        away = [period.away_until] if period.away_until else []
        spans.append((min(visits), max([*visits, *away])))
        yield _Event(period.works[0].id, *spans[-1], tuple(work.id for work in period.works))
    besides: list[tuple[dt.date, dt.date]] = []
    for day in days_asked_about(programme):
        if any(first <= day <= last for first, last in spans):
            continue
        if besides and day - besides[-1][1] <= A_WEEK:
            besides[-1] = besides[-1][0], day
        else:
            besides.append((day, day))
    for number, (first, last) in enumerate(besides, 1):
        yield _Event(f"besides-{number}", first, last, ())


def _to_send(programme: Programme, events: Sequence[_Event], known_by: dt.date) -> Iterator[Duty]:
    """Announce all at once; remind, and tell how it went, of each event by itself."""
    mailings = programme.mailings or USUAL_MAILINGS
    for number, event in enumerate(events):
        dated = sorted(
            (mailing.send.on(event.first, event.last), order, mailing)
            for order, mailing in enumerate(mailings)
            if number == 0 or mailing.moment is not Moment.ANNOUNCEMENT
        )
        counts: dict[str, int] = {}
        for index, (day, _, mailing) in enumerate(dated):
            following = [later for later, _, other in dated[index + 1 :] if later > day]
            until = _until(day, event, following)
            if mailing.moment is Moment.ANNOUNCEMENT:
                until = min([known_by, *(later - ONE_DAY for later in following)])
            elif until < programme.edition.begun:
                continue  # its time was over before anything was issued
            if mailing.moment is not Moment.ANNOUNCEMENT and not event.works:
                continue  # of a closure all is said when it is announced
            document = document_of(mailing, "" if number == 0 else event.id)
            name = f"send-{document}-{event.id}"
            counts[name] = counts.get(name, 0) + 1
            first = max(day, programme.edition.begun)
            yield Duty(
                id=name if counts[name] == 1 else f"{name}-{counts[name]}",
                kind=DutyKind.SEND,
                first=first,
                last=max(first, until),
                document=document,
                moment=mailing.moment,
                works=() if mailing.moment is Moment.ANNOUNCEMENT else event.works,
            )


def document_of(mailing: Mailing, event: str) -> str:
    """Return the name of what is sent.

    That of the document, of the moment if it is not the first, and of the period if there are
    several. Short messages stand in one file.
    """
    if mailing.document == SHORT_MESSAGE:
        return "short-messages"
    if mailing.moment is Moment.ANNOUNCEMENT:
        return slug(mailing.document)
    parts = [mailing.document, mailing.moment.value, *([event] if event else [])]
    return "-".join(slug(part) for part in parts)


def _until(day: dt.date, event: _Event, following: Sequence[dt.date]) -> dt.date:
    """Return the last day for something to send: before the next one, and before the work."""
    if day < event.first:
        return min([event.first, *following]) - ONE_DAY
    return min([day + A_WEEK, *following])


def _to_print(programme: Programme, papers: Sequence[Paper], known_by: dt.date) -> Iterator[Duty]:
    begun, down = programme.edition.begun, last_day_of_news(programme)
    for paper in papers:
        kind = DutyKind.PUT_UP if paper.hangs else DutyKind.PRINT
        if not paper.for_each_period:
            yield Duty(f"print-{paper.document}", kind, begun, known_by, document=paper.document)
        for event in _printed_for(programme) if paper.for_each_period else ():
            first = _first_page(programme, paper, event)
            if first is None:
                continue
            day = max(begun, first - ONE_DAY)
            yield Duty(
                f"print-{paper.document}-{event.id}",
                kind,
                day,
                day,
                document=paper.document,
                works=event.works,
                day=first,
            )
        if paper.hangs:
            yield Duty(
                f"take-down-{paper.document}",
                DutyKind.TAKE_DOWN,
                down + ONE_DAY,
                down + A_WEEK,
                document=paper.document,
            )


def _first_page(programme: Programme, paper: Paper, event: _Event) -> dt.date | None:
    """Return the first day of an event that a sheet has a page for; None where it is of no use."""
    if paper.only_with_work and not event.works:
        return None
    if not paper.only_where_asked:
        return event.first
    asked = days_asked_about(programme)
    return min((day for day in asked if event.first <= day <= event.last), default=None)


def _to_hang(programme: Programme, signs: Sequence[Hung]) -> Iterator[Duty]:
    """Yield once to print the signs, and each day on which some go up or come down."""
    if not signs:
        return
    begun = programme.edition.begun
    last = max(begun, min(sign.first for sign in signs) - ONE_DAY)
    yield Duty(f"print-{SIGNS}", DutyKind.PRINT, begun, last, document=SIGNS)
    days = {day for sign in signs for day in (sign.first, sign.last + ONE_DAY)}
    for number, day in enumerate(sorted(days), 1):
        yield Duty(
            f"change-{SIGNS}-{number}",
            DutyKind.CHANGE_SIGNS,
            day,
            day,
            document=SIGNS,
            day=day,
            up=tuple(sign.large for sign in signs if sign.first == day),
            down=tuple(sign.large for sign in signs if sign.last + ONE_DAY == day),
        )


def _to_buy(programme: Programme) -> Iterator[Duty]:
    order = programme.sand_order
    if order is None or order.deliver_by < programme.edition.begun:
        return  # who begins to give notice in the middle of the work has the sand
    works = tuple(dict.fromkeys(need.work for need in programme.sand))
    first, day = programme.edition.begun, order.deliver_by
    yield Duty(
        "order-sand",
        DutyKind.ORDER,
        first,
        max(first, day - ORDER_AHEAD),
        works=works,
        day=day,
    )
    watched = max(first, day - DELIVERY_WATCHED)
    yield Duty("deliver-sand", DutyKind.DELIVER, watched, max(watched, day), works=works, day=day)


def _to_confirm(programme: Programme, known_by: dt.date) -> Iterator[Duty]:
    """Yield approval, and of each day whether work goes ahead."""
    if programme.draft:
        yield Duty(
            "confirm-approval",
            DutyKind.CONFIRM,
            programme.edition.begun,
            known_by,
            subject=DutySubject.APPROVAL,
        )
    if programme.decision is None:
        return
    for period in programme.periods:
        for number, day in enumerate(period.days, 1):
            yield Duty(
                f"confirm-{period.works[0].id}-{number}",
                DutyKind.CONFIRM,
                day - ONE_DAY,
                day,
                subject=DutySubject.GO_AHEAD,
                works=tuple(w.id for w in period.works if day in w.dates),
                day=day,
            )


def _to_look_at(programme: Programme) -> Iterator[Duty]:
    """Yield each promise of a period that golfers notice, with the greens not yet on record."""
    for period in programme.periods:
        if not period.noticed:
            continue
        works = tuple(work.id for work in period.opening_works or period.works)
        for subject, promise in _promises(period):
            if greens := _without_a_word(programme, period, subject):
                yield Duty(
                    f"look-{slug(subject.value)}-{works[0]}",
                    DutyKind.LOOK,
                    promise.expect_by,
                    promise.at_worst or promise.expect_by,
                    subject=subject,
                    works=works,
                    greens=greens,
                )


def _promises(period: Period) -> Iterator[tuple[DutySubject, Promise]]:
    works = period.opening_works or period.works
    if any(work.while_working is not WhileWorking.OPEN for work in works):
        yield DutySubject.OPEN_AGAIN, period.open_again
    if period.opening_works:
        yield DutySubject.PUTTING_WELL, period.putts_well_after_all
        yield DutySubject.FULLY_HEALED, period.healed_after_all


def _without_a_word(programme: Programme, period: Period, subject: DutySubject) -> tuple[str, ...]:
    """Return the greens of a period for which no record answers a promise."""
    told: set[str] = set()
    for seen in chain.from_iterable(programme.seen.get(work.id, ()) for work in period.works):
        answers = {
            DutySubject.OPEN_AGAIN: True,
            DutySubject.PUTTING_WELL: seen.putting_smoothly is not None or seen.healed is not None,
            DutySubject.FULLY_HEALED: seen.healed is not None,
        }
        if answers[subject]:
            told.update(seen.greens)
    return tuple(green for green in period.greens if green not in told)
