"""Facts that fill a message on one occasion: the period, the day, the greens done."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from notices.operations import Opening
from notices.programme.model import WHOLE_DAY, Moment, Period, PlayStatus
from notices.programme.news import days_ahead
from notices.wording import circumstances
from notices.wording.lists import and_list, sentence
from notices.wording.period import PeriodWords
from notices.wording.said import Said
from notices.wording.words import Words


@dataclass(frozen=True, slots=True)
class News:
    """Events on the course that a message needs and that a plan cannot know."""

    day: dt.date | None = None
    """Day that the message is about; by default the last of the work once it is over, and the
    first before."""
    done: tuple[str, ...] | None = None
    """Greens that are done; by default unknown for a day that was stopped, else as planned."""
    resume: tuple[dt.date, ...] = ()
    """New days for the greens left; by default the next day that the plan has for them."""
    new_date: dt.date | None = None
    """Day by which greens should now putt well; by default the promise's "at worst"."""
    reason: str = ""
    """Reason in the club's words."""


@dataclass(frozen=True, slots=True)
class Occasion:
    """One occasion on which people get a message about a period of work."""

    words: Words
    period: Period
    moment: Moment
    news: News

    @property
    def told(self) -> PeriodWords:
        """The period in words."""
        return PeriodWords(self.words, self.period)

    @property
    def day(self) -> dt.date:
        """Day that the message is about."""
        over = self.moment in (Moment.FINISHED, Moment.RECOVERY_LATE, Moment.BACK_TO_NORMAL)
        ahead = days_ahead(self.period.days, self.words.programme.issued)
        return self.news.day or ahead[-1 if over else 0]

    @property
    def of_day(self) -> tuple[str, ...]:
        """Greens that the plan has for the day; all of the period on a day not in the plan."""
        return self.period.greens_on(self.day) or self.period.greens

    @property
    def planned(self) -> tuple[str, ...]:
        """Greens to be done by the end of the day; a job of several days ends with the last."""
        later = [day for day in self.period.days if day > self.day]
        open_still = {green for day in later for green in self.period.greens_on(day)}
        return tuple(green for green in self.period.greens if green not in open_still)

    @property
    def done(self) -> tuple[str, ...]:
        """Greens that are done."""
        if self.news.done is not None:
            return self.news.done
        return () if self.moment is Moment.STOPPED else self.planned

    @property
    def which_left_unknown(self) -> bool:
        """Whether work stopped among several greens, and nobody has reported at which."""
        return self.moment is Moment.STOPPED and self.news.done is None and len(self.left) > 1

    @property
    def left(self) -> tuple[str, ...]:
        """Greens still to do: those of the day if it was stopped, else of the period."""
        of = self.of_day if self.moment is Moment.STOPPED else self.period.greens
        return tuple(green for green in of if green not in self.done)

    @property
    def behind(self) -> tuple[str, ...]:
        """Greens that should be done by now and are not."""
        return tuple(green for green in self.planned if green not in self.done)

    @property
    def resume(self) -> tuple[dt.date, ...]:
        """Days on which the greens left will be done; none if the plan keeps no day free."""
        if self.news.resume:
            return self.news.resume
        kept = set(self.period.reserve_dates)
        if self.moment is Moment.STOPPED:
            kept |= set(self._goes_on)
        return tuple(sorted(day for day in kept if day > self.day)[:1])

    @property
    def _goes_on(self) -> tuple[dt.date, ...]:
        """Days that have only greens of this day, such as those of a job of several days."""
        own = set(self.of_day)
        return tuple(day for day in self.period.days if own >= set(self.period.greens_on(day)))

    @property
    def new_date(self) -> dt.date | None:
        """Day by which greens should now putt well; None if nobody can say."""
        promise = self.period.putts_well_after_all
        if self.news.new_date or promise.at_worst is None:
            return self.news.new_date
        return promise.at_worst if promise.at_worst > promise.expect_by else None


def moment_facts(occasion: Occasion) -> dict[str, object]:
    """Return the facts that fill the texts of all moments."""
    words, period, told = occasion.words, occasion.period, occasion.told
    dates, programme = words.dates, words.programme
    one = len(period.greens) == 1
    names = {work.operation.name for work in period.works}
    approval = circumstances.approval(words)
    new_date = occasion.new_date
    return {
        "club": programme.club.name,
        "name": told.name(),
        "name_inside": told.inside(),
        "what": told.what(whole=True),
        "when": told.when(),
        "on_days": dates.on_days(period.days),
        "days": dates.days(period.days),
        "days_short": dates.short_days(period.days),
        "first_day": dates.day(period.days[0]),
        "last_day": dates.day(max([*period.days, *occasion.news.resume])),
        "last_day_ahead": max([*period.days, *occasion.news.resume]) > occasion.day,
        "that_day": "that day" if len(period.days) == 1 else "those days",
        "greens": words.greens(period.greens),
        "greens_short": words.greens_briefly(period.greens),
        "which": told.which(),
        "it": "it" if one else "they",
        "they": "the green" if one else "the greens",
        "they_start": "The green" if one else "The greens",
        "are": "is" if one else "are",
        "need": "needs" if one else "need",
        "status": told.status_while_working(),
        "stays_open": told.stays_open(),
        "open": "" if told.stays_open() else told.open_again(whole=True),
        "opened": _opened(occasion),
        "all_open": told.stays_open() or _all_open_by(occasion) <= occasion.day,
        "well": told.putting_well(whole=True),
        "well_short": told.putting_well(whole=True, brief=True),
        "marks": told.marks(),
        "dressings": told.later_dressings(),
        "raised_cut": told.raised_cut(),
        "raised": "raising the height of cut" in names,
        "reserve": told.reserve(),
        "sand": any(work.operation.opening is Opening.SAND for work in period.works),
        "services": any(work.operation.enters_ground for work in period.works),
        "limits": circumstances.go_or_no_go(words, period),
        "decision": circumstances.decision(words),
        "where_to_look": circumstances.where_to_look(words),
        "contact": circumstances.contact(words),
        "approval": approval,
        "reason": sentence(occasion.news.reason),
        "old_date": _promised(occasion, period.putts_well_after_all.expect_by),
        "new_date": _promised(occasion, new_date) if new_date else "",
        "new_date_short": _promised(occasion, new_date, short=True) if new_date else "",
        "new_date_is_worst": new_date is not None and occasion.news.new_date is None,
        "make_up": dates.on_days(occasion.resume),
        "make_up_days": dates.days(occasion.resume),
        "make_up_short": dates.short_days(occasion.resume),
        **_of_day(occasion),
        **_greens(occasion, "done", occasion.done),
        **_greens(occasion, "left", occasion.left),
        **_left(occasion),
        **_greens(occasion, "behind", occasion.behind),
    }


def known_in_moment(occasion: Occasion, facts: dict[str, object]) -> Iterator[Said]:
    """Yield every statement with a day or a green that a message may contain."""
    words, period = occasion.words, occasion.period

    def said(name: str, *dates: dt.date, greens: tuple[str, ...] = ()) -> Said:
        return Said(str(facts[name]), dates, greens)

    yield said("when", *period.days)
    yield said("on_days", *period.days)
    yield said("first_day", period.days[0])
    yield said("last_day", max([*period.days, *occasion.news.resume]))
    yield said("day", occasion.day)
    yield said("make_up", *occasion.resume)
    yield said("greens", greens=period.greens)
    yield said("day_greens", greens=occasion.of_day)
    yield said("off_greens", greens=occasion.of_day)
    yield said("done", greens=occasion.done)
    yield said("left", greens=occasion.left)
    approval = words.programme.approval
    yield said("approval", *((approval.date,) if approval and approval.date else ()))
    for name in (
        "open",
        "opened",
        "well",
        "well_short",
        "marks",
        "dressings",
        "raised_cut",
        "reserve",
        "day_state",
        "left_state",
    ):
        yield said(name)
    yield said("old_date", *_exactly(occasion, period.putts_well_after_all.expect_by))
    if occasion.new_date:
        yield said("new_date", *_exactly(occasion, occasion.new_date))
    for name in ("day_open", "decision", "contact"):
        yield said(name)


def _of_day(occasion: Occasion) -> dict[str, object]:
    """Return the facts about the day."""
    words, day, greens = occasion.words, occasion.day, occasion.of_day
    one = len(greens) == 1
    closed = words.programme.holes_closed_on(day)
    state = "is" if len(closed) == 1 else "are"
    return {
        "day": words.dates.day(day),
        "day_short": words.dates.short_day(day),
        "day_greens": words.greens(greens),
        # "We will not work on all 18 greens" may mean that we work on some.
        "off_greens": "the greens"
        if len(greens) > 1 and _are_all(words, greens)
        else words.greens(greens),
        "day_are": "is" if one else "are",
        "day_they": "it" if one else "they",
        "day_they_start": "It" if one else "They",
        "day_them": "it" if one else "them",
        "day_state": _state(occasion),
        "day_open": _opens_again(occasion),
        "first": day == occasion.period.days[0],
        "elsewhere": _elsewhere(occasion),
        "hours": _hours(occasion),
        "holes_closed": sentence(
            f"{words.holes(closed)} {state} closed for at least part of the day"
        )
        if closed
        else "",
    }


def _are_all(words: Words, greens: Sequence[str]) -> bool:
    """Tell whether the greens include every one that has a hole."""
    return all(key in greens for key, green in words.programme.greens.items() if green.holes)


def _state(occasion: Occasion) -> str:
    """Return the state of the day's greens in words: "greens 1 to 3 are closed for work"."""
    words = occasion.words
    groups: dict[PlayStatus, list[str]] = {}
    for green in occasion.of_day:
        groups.setdefault(words.programme.status_on(occasion.day, green), []).append(green)
    parts = []
    for status, one, several in (
        (PlayStatus.CLOSED, "is closed for work", "are closed for work"),
        (PlayStatus.TEMPORARY, "has a temporary green", "have temporary greens"),
    ):
        if greens := groups.pop(status, []):
            parts.append(f"{words.greens(greens)} {one if len(greens) == 1 else several}")
    if open_greens := [green for greens in groups.values() for green in greens]:
        stays = "it stays open" if len(open_greens) == 1 else "they stay open"
        parts.append(f"we work on {words.greens(open_greens)}, and {stays}")
    return and_list(parts)


def _opens_again(occasion: Occasion) -> str:
    """Return "They open again on Tuesday 24 August."; empty if they stay open."""
    if occasion.told.stays_open():
        return ""
    greens = set(occasion.of_day)
    back = [r.back_in_play.early for r in occasion.period.recoveries if r.green in greens]
    # "It" could be the temporary green that the sentence before names.
    one = sentence(occasion.words.greens(occasion.of_day)).rstrip(".")
    they = f"{one} opens" if len(greens) == 1 else "They open"
    if max(back) <= occasion.day:
        return f"{they} again the same day, when we have finished."
    return f"{they} again on {occasion.words.dates.day(max(back))}."


def _opened(occasion: Occasion) -> str:
    """Return that all greens are open, or will be by a day, in words; empty if they stayed open."""
    if occasion.told.stays_open():
        return ""
    by, one = _all_open_by(occasion), len(occasion.period.greens) == 1
    if by <= occasion.day:
        return "The green is open again." if one else "All greens are open again."
    subject = "The green will be" if one else "All greens will be"
    return f"{subject} open again by {occasion.words.dates.day(by)}."


def _all_open_by(occasion: Occasion) -> dt.date:
    promise = occasion.period.open_again
    on_time = occasion.day <= occasion.period.days[-1] or promise.at_worst is None
    return promise.expect_by if on_time else promise.at_worst or promise.expect_by


def _elsewhere(occasion: Occasion) -> str:
    """Return a sentence that the other greens are open; empty unless all are."""
    away = (PlayStatus.CLOSED, PlayStatus.TEMPORARY)
    programme = occasion.words.programme
    others = [green for green in programme.greens if green not in occasion.of_day]
    if not others or any(programme.status_on(occasion.day, g) in away for g in others):
        return ""
    if len(others) == 1:
        return sentence(f"{occasion.words.greens(others)} is open")
    return "All other greens are open."


def _hours(occasion: Occasion) -> str:
    """Return the team's hours in a sentence, to the half hour; empty if they are unknown."""
    day = occasion.words.programme.timetables.get(occasion.day)
    if day is None:
        return ""
    start = _clock(occasion.words, day.told_start)
    finish = _clock(occasion.words, day.told_finish)
    return sentence(f"we plan to work from {start} to {finish}") if start and finish else ""


def _clock(words: Words, minutes: float) -> str:
    return words.language.clock_at(minutes) if minutes < WHOLE_DAY[1] else ""


def _greens(occasion: Occasion, name: str, greens: Sequence[str]) -> dict[str, object]:
    named = occasion.words.greens(greens) if greens else ""
    one = len(greens) == 1
    return {
        name: named,
        f"{name}_start": named[:1].upper() + named[1:],
        f"{name}_are": "is" if one else "are",
        f"{name}_them": "it" if one else "them",
    }


def _left(occasion: Occasion) -> dict[str, object]:
    """Return the facts about the greens left on a stopped day, even if nobody knows which."""
    greens, unknown = occasion.left, occasion.which_left_unknown
    named = occasion.words.greens(greens) if greens else ""
    one = len(greens) == 1
    if unknown:
        whole = named if named.startswith(("all ", "both ")) else f"all of {named}"
        state, them = f"We did not finish {whole}.", "the rest"
    elif one and occasion.news.done is None:
        state, them = f"We did not finish {named}.", "it"
    elif greens:
        state = sentence(f"{named} {'is' if one else 'are'} still to do")
        them = "it" if one else "them"
    else:
        state, them = "", "it"
    return {"left_unknown": unknown, "left_state": state, "left_them": them}


def _exactly(occasion: Occasion, day: dt.date) -> tuple[dt.date, ...]:
    """Return the day if `_promised` names it exactly, and nothing if only roughly."""
    stops = occasion.period.putts_well_after_all.growth_stops
    return () if stops is not None and day >= stops else (day,)


def _promised(occasion: Occasion, day: dt.date, *, short: bool = False) -> str:
    stops = occasion.period.putts_well_after_all.growth_stops
    return occasion.words.dates.promised(day, stops, short=short)
