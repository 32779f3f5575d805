"""One period of work in words: what, when, which greens, when they are good again."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from notices.calendar_days import each_day
from notices.operations import Noticed, Opening, WhileWorking
from notices.programme.hours import to_half_hours
from notices.programme.model import Meeting, Period, PlayStatus, Promise, Visit, Work
from notices.programme.news import days_ahead
from notices.wording.dates import in_brief
from notices.wording.lists import and_list, number, sentence, span
from notices.wording.measures import up_to
from notices.wording.reading_ease import LONGEST_SENTENCE, words_of
from notices.wording.words import Words

_SLOWER_PUTTS = {
    "raising the height of cut": "Putts are slower until we mow lower again.",
    "overseeding": "Putts may be a little slower for a while.",
}
"""What putts are like after work that opens nothing, as the texts on that work have it."""


def name_of_works(words: Words, works: Sequence[Work], *, noticed: bool) -> str:
    """Name works that belong together: greens renovation; hollow tining and top dressing.

    Parameters
    ----------
    words
        The programme's words.
    works
        At least one, in their order.
    noticed
        Whether golfers clearly notice the period that they are of.
    """
    opening = [w for w in works if w.operation.opening is not Opening.NONE] or works
    kinds = {work.operation.opening for work in opening} - {Opening.SAND, Opening.NONE}
    if len(kinds) > 1 or (len(opening) > 2 and noticed):
        return words.language.terms.renovation
    first, *others = dict.fromkeys(words.title(work) for work in opening)
    return and_list([first, *(title.lower() for title in others[:1])])


@dataclass(frozen=True, slots=True)
class PeriodWords:
    """How one period of a programme is put into words."""

    words: Words
    period: Period

    def name(self) -> str:
        """Greens renovation; or the name of its one work."""
        return name_of_works(self.words, self.period.works, noticed=self.period.noticed)

    def inside(self) -> str:
        """The greens renovation; hollow tining: its name inside a sentence."""
        name = self.name()
        the = "the " if name == self.words.language.terms.renovation else ""
        return f"{the}{name[:1].lower()}{name[1:]}"

    def what(self, *, whole: bool = False) -> str:
        """Slits, holes and sand, in one sentence.

        Parameters
        ----------
        whole
            Whether it must be understood without the label "What" beside it.
        """
        opening = self.period.opening_works
        kinds = {work.operation.opening for work in opening}
        if not opening:
            return sentence(self.words.operation(self.period.works[0]).line)
        if kinds == {Opening.SLITS} and not self.period.noticed:
            return sentence(self.words.operation(opening[0]).line)
        parts = [
            words
            for kind, words in (
                (Opening.SLITS, "slits"),
                (Opening.HOLES, "holes"),
                (Opening.CHANNELS, "narrow drains"),
                (Opening.SAND, "sand"),
                (Opening.TRENCHES, "new drains"),
                (Opening.BARE, self.words.language.terms.new_turf),
            )
            if kind in kinds
        ]
        aim = _aim(kinds)
        listed = f"{and_list(parts)}, {aim}"
        return sentence(f"that means {listed}" if whole else listed)

    def when(self) -> str:
        """Monday 23 to Sunday 29 August 2027."""
        return self.words.dates.days_with_year(self.period.days)

    def title(self) -> str:
        """Greens renovation, Monday 23 to Sunday 29 August."""
        return f"{self.name()}, {self.words.dates.days(in_brief(self.period.days))}"

    def which(self) -> str:
        """All 18 greens and the putting green, two or three a day."""
        greens = self.words.greens(self.period.greens)
        if len(self.period.greens) == 1:
            return sentence(f"only {greens}")
        pace = self._pace()
        return sentence(f"{greens}, {pace}" if pace else greens)

    def _pace(self) -> str:
        counts = [len(self.period.greens_on(day)) for day in self.period.days]
        if len(self.period.days) == 1 or len(self.period.greens) <= len(self.period.days):
            return ""
        low, high = min(counts), max(counts)
        if low == high:
            return f"{number(low)} a day"
        joint = "or" if high == low + 1 else "to"
        return f"{span(low, high, joint)} a day"

    def status_while_working(self) -> str:
        """What golfers meet on the day."""
        one = len(self.period.greens) == 1
        statuses = [w.while_working for w in self.period.opening_works or self.period.works]
        kept = self._kept_on_temporary()
        every = len(kept) == len(self.period.greens)
        if every and WhileWorking.TEMPORARY not in statuses:
            return f"You play to the temporary green{'' if one else 's'} while we work."
        if WhileWorking.CLOSED in statuses and not every:
            left = self._holes_left()
            said = self._closed(holes_counted=bool(left)), left, self._keep(kept)
            return " ".join(filter(None, said))
        if WhileWorking.TEMPORARY in statuses:
            if one:
                until = self._last_day_away() or "the green opens again"
                return f"You play to a temporary green until {until}. {self._temporary('green')}"
            last = self._last_day_away(", the last of them until ")
            return f"You play to temporary greens where we work{last}. {self._temporary('greens')}"
        return self._stay_open()

    def _kept_on_temporary(self) -> tuple[str, ...]:
        """Return the greens that works of the period would close, were there no temporary ones."""
        works = self.period.opening_works or self.period.works
        closing = [work for work in works if work.while_working is WhileWorking.CLOSED]
        kept = {work.id: self.words.programme.kept_on_temporary(work) for work in closing}
        own = {
            green: [kept[work.id] for work in closing if green in work.greens]
            for green in self.period.greens
        }
        return tuple(g for g, on in own.items() if on and all(g in greens for greens in on))

    def _keep(self, kept: Sequence[str]) -> str:
        """Green 11 keeps its temporary green; empty where none does."""
        if not kept:
            return ""
        its = "keeps its temporary green" if len(kept) == 1 else "keep their temporary greens"
        return sentence(f"{self.words.greens(kept)} {its}")

    def away(self) -> str:
        """Say in a list what its greens are: "Green 12: temporary green"; where they are away for long."""
        greens = self.words.greens_briefly(self.period.greens).removeprefix("the ")
        return f"{greens[:1].upper()}{greens[1:]}: {self.state_while_away(self.period.greens)}"

    def days_away(self) -> tuple[dt.date, ...]:
        """Return every day from the first work to the last on which a green is away for long; else none."""
        last, first = self.period.away_until, self.period.days[0]
        if last is None:
            return ()
        return each_day(first, last)

    def away_until(self) -> str:
        """Temporary green until Thursday 25 November; empty where a green is soon back."""
        until = self._last_day_away(" until ")
        state = self.state_while_away(self.period.greens)
        return sentence(f"{state}{until}") if until else ""

    def state_while_away(self, greens: Sequence[str]) -> str:
        """Say in a list what some of its greens are while they are away: a temporary green; closed."""
        works = self.period.opening_works or self.period.works
        closed = any(work.while_working is WhileWorking.CLOSED for work in works)
        if closed and not set(greens) <= set(self._kept_on_temporary()):
            return "closed"
        return "temporary green" if len(greens) == 1 else "temporary greens"

    def _last_day_away(self, led: str = "") -> str:
        last = self.period.away_until
        return "" if last is None else f"{led}{self.words.dates.day(last)}"

    def _closed(self, *, holes_counted: bool) -> str:
        """Say what is closed: a hole with its green, unless the holes are counted anyhow."""
        holes = [self.words.programme.greens[green].holes for green in self.period.greens]
        long = self._last_day_away("until ") or "while we work"
        if not any(holes):
            the = "green is" if len(holes) == 1 else "greens are"
            return f"The {the} closed {long}."
        if len(holes) == 1:
            its = "hole" if len(holes[0]) == 1 else "holes"
            return f"The green and its {its} are closed {long}."
        if self._opens_the_same_day():
            works = self.period.opening_works or self.period.works
            longest = up_to(max(self._longest_away(work, work.main_visits) for work in works))
            lasting = f", for {longest}" if longest else ""
            return f"Each green and its hole are closed only while we work on the green{lasting}."
        if len(self.period.days) > 1 and self.period.away_until:
            return f"Each green we work on stays closed for a while, the last {long}."
        if len(self.period.days) > 1:
            too = "" if holes_counted else ", and their holes,"
            return f"Each day only the greens being worked on{too} are closed."
        return f"The greens and their holes are closed {long}."

    def _holes_left(self) -> str:
        """Say how many holes are left to play; empty where it is a matter of hours."""
        programme = self.words.programme
        days = [programme.play[day] for day in self.period.days if day in programme.play]
        if not days or self._opens_the_same_day():
            return ""
        every = len(programme.holes)
        left = [every - len(play.closed_throughout) for play in days]
        low, high = min(left), max(left)
        if not high:
            return "No hole is open that day." if len(days) == 1 else "No hole is open those days."
        most = " at most" if not low else ""
        count = (
            span(low, high, "or" if high == low + 1 else "to") if 0 < low < high else number(high)
        )
        fewer = [play.date for play in days if len(play.all_day.in_play) < low]
        hours = f" For part of {self.words.dates.days(fewer)} it is fewer." if fewer else ""
        return f"That leaves {count} of the {number(every)} holes to play{most}.{hours}"

    def _opens_the_same_day(self) -> bool:
        return {(r.back_in_play.early - r.done).days for r in self.period.recoveries} == {0}

    def _temporary(self, greens: str) -> str:
        """Say where temporary greens lie and how good they are, or else that they are rough."""
        works = self.period.opening_works or self.period.works
        described = dict.fromkeys(work.temporary for work in works if work.temporary)
        if described:
            return " ".join(sentence(f"temporary {greens}: {text}") for text in described)
        return f"Expect {'it' if greens == 'green' else 'them'} to be rough."

    def open_again(self, *, whole: bool = False) -> str:
        """Each green opens again the next morning. All are open by …, or by … if it rains.

        Parameters
        ----------
        whole
            Whether it must be understood without the label "Open again" beside it.
        """
        if self.stays_open():
            return self._stay_open()
        one = len(self.period.greens) == 1
        days = {(r.back_in_play.early - r.done).days for r in self.period.recoveries}
        by = f"by {self.open_again_by()}{self._or_if_it_rains()}"
        if days == {0}:
            return (
                f"{'The green' if whole else 'It'} opens again the same day, when we have finished."
                if one
                else "Each green opens again the same day, when we have finished it."
            )
        if days == {1} and not one:
            return f"Each green opens again the next morning. All are open {by}."
        return f"Expect {self._every('be open', whole=whole)}{by}."

    def open_again_by(self) -> str:
        """Name the day by which all greens are open again."""
        return self.words.dates.day(self.period.open_again.expect_by)

    def _every(self, state: str, *, whole: bool, but: Sequence[str] = ()) -> str:
        """It; all but Oak 4; in a whole sentence, all greens to be open."""
        one = len(self.period.greens) == 1
        if but:  # which names greens, so that "all greens but" would be too many
            every = f"all but {self.words.greens_between(but)}"
        elif whole:
            every = "the green" if one else "all greens"
        else:
            every = "it" if one else "all"
        return f"{every} to {state} " if whole else f"{every} "

    def stays_open(self) -> bool:
        """Whether golfers can play the greens throughout."""
        works = self.period.opening_works or self.period.works
        return {work.while_working for work in works} == {WhileWorking.OPEN}

    def leaves_putts_alone(self) -> bool:
        """Whether nothing is done that a putt would notice afterwards."""
        works = self.period.works
        return (
            not self.period.opening_works
            and not self._slower_putts()
            and all(work.operation.noticed is Noticed.HARDLY for work in works)
        )

    def _slower_putts(self) -> str:
        if self.period.opening_works:
            return ""
        said = (_SLOWER_PUTTS.get(work.operation.name, "") for work in self.period.works)
        return next(filter(None, said), "")

    def _or_if_it_rains(self) -> str:
        promise = self.period.open_again
        if promise.at_worst is None or promise.at_worst == promise.expect_by:
            return ""
        return f", or by {self.words.dates.day(promise.at_worst)} if it rains"

    def _stay_open(self) -> str:
        one = len(self.period.greens) == 1
        return "The green stays open." if one else "The greens stay open."

    def winter(self) -> str:
        """Say why nobody can name a day for what grass must do; empty where a day is named."""
        if self.leaves_putts_alone() or self._slower_putts():
            return ""
        promise = self.period.putts_well_after_all
        waits = promise.growth_stops is not None and not promise.through_winter
        named = promise.expect_by == promise.at_worst
        return "Grass does not grow in winter." if waits and not named else ""

    def putting_well(self, *, whole: bool = False, brief: bool = False, winter: bool = True) -> str:
        """Expect all by …. At worst, …. Before then comes slitting, on …; more work, until ….

        Parameters
        ----------
        whole
            Whether it must be understood without the label "Putting well" beside it.
        brief
            Whether to leave out what other works the date takes in, where these stand beside it
            or there is no room; the greens that take longer are then named in the promise itself.
        winter
            Whether to say why the date is a rough one, where nothing has said so already.
        """
        why = self.winter() if winter else ""
        if brief:
            said = [self._putting_well(whole=whole, but=self._takes_longer())]
        else:
            said = [self._putting_well(whole=whole), *self._other_works()]
        return " ".join([why, *said] if why else said)

    def _takes_longer(self) -> tuple[str, ...]:
        """Return the greens that another work keeps for longer than the rest."""
        others = [o for o in self.period.others if o.how is Meeting.KEEPS_SOME]
        longer = {green for other in others for green in other.greens}
        return tuple(green for green in self.period.greens if green in longer)

    def _other_works(self) -> Iterator[str]:
        """Say what else the date takes in, which greens it leaves out, and what comes next."""
        if self.leaves_putts_alone() or self._slower_putts():
            return
        dates, issued = self.words.dates, self.words.programme.issued
        these = "this green" if len(self.period.greens) == 1 else "these greens"
        ahead = [o for o in self.period.others if o.period.days[-1] >= issued]
        follow = [other for other in ahead if other.how is Meeting.FOLLOWS]
        if len(follow) == 1:
            work = PeriodWords(self.words, follow[0].period).inside()
            yield f"Before then comes {work}, {dates.on_days(in_brief(follow[0].days))}."
        elif follow:
            last = max(other.days[-1] for other in follow)
            yield f"More work follows on {these} until {dates.day(last)}."
        longer = [
            (other.greens, PeriodWords(self.words, other.period).inside())
            for other in self.period.others
            if other.how is Meeting.KEEPS_SOME
        ]
        if longer:
            takes = "takes" if sum(len(greens) for greens, _ in longer) == 1 else "take"
            named = and_list([f"{self.words.greens(greens)} ({work})" for greens, work in longer])
            yield f"Only {named} {takes} longer."
        for other in ahead:
            if other.how is Meeting.COMES_NEXT:
                begins = dates.day(other.period.days[0])
                work = PeriodWords(self.words, other.period).inside()
                yield f"The next work on {these} begins on {begins}: {work}."

    def _putting_well(self, *, whole: bool, but: Sequence[str] = ()) -> str:
        promise = self.period.putts_well_after_all
        if self.leaves_putts_alone():
            return "Your putts are not affected."
        if slower := self._slower_putts():
            return slower
        every = self._every("putt well", whole=whole, but=but)
        expect = f"Expect {every}by {self.putting_well_by()}"
        if promise.expect_by == promise.at_worst:
            return sentence(expect)
        if promise.growth_stops is None:
            return f"{expect}.{self._at_worst(promise)}"
        if promise.through_winter:
            return sentence(f"{expect}. {self._until_spring(promise, 'putts may not run true')}")
        return sentence(f"{expect}{self._at_worst_about(promise)}")

    def putting_well_by(self) -> str:
        """Name the day, or about when, by which all greens are expected to putt well."""
        promise = self.period.putts_well_after_all
        named = promise.growth_stops is None or promise.through_winter
        if named or promise.expect_by == promise.at_worst:
            return self.words.dates.day(promise.expect_by)
        return self.words.dates.about(promise.expect_by)

    def marks(self) -> str:
        """Say plainly when marks stay over winter; empty where they do not."""
        promise = self.period.healed_after_all
        if (
            promise.growth_stops is None
            or self.period.putts_well_after_all.growth_stops is not None
        ):
            return ""
        if promise.through_winter:
            return self._until_spring(promise, "you may see some marks")
        return ""

    def _until_spring(self, promise: Promise, what: str) -> str:
        autumn = self.words.language.terms.autumn
        if promise.at_worst is None:
            return f"If the {autumn} is cold, {what} until spring."
        return f"If the {autumn} is cold, {what} until {self.words.dates.about(promise.at_worst)}."

    def _at_worst(self, promise: Promise) -> str:
        if promise.at_worst is None or promise.at_worst == promise.expect_by:
            return ""
        return f" At worst, {self.words.dates.day(promise.at_worst)}."

    def _at_worst_about(self, promise: Promise) -> str:
        if promise.at_worst is None:
            return ""
        late, early = (
            self.words.dates.about(promise.at_worst),
            self.words.dates.about(promise.expect_by),
        )
        return "" if late == early else f", at worst {late}"

    def reserve(self) -> str:
        """Say which days are kept free for rain; empty where none are."""
        if not self.period.reserve_dates:
            return ""
        # Who reads of several works must know which of them is meant.
        stopped = self.inside() if len(self.words.programme.periods) > 1 else "us"
        return f"If rain stops {stopped}, we catch up {self._on_reserve_days()}."

    def if_it_rains(self) -> str:
        """Say which days are kept free for rain, or that none is; empty where rain stops nobody's game."""
        closes = any(work.while_working is not WhileWorking.OPEN for work in self.period.works)
        if self.period.reserve_dates or not closes:
            return self.reserve()
        return "We keep no day free for rain. If rain stops us, we will tell you the new day."

    def reserve_days(self) -> str:
        """Name the days kept free for rain, under a label that says what they are."""
        return f"We catch up {self._on_reserve_days()}."

    def _on_reserve_days(self) -> str:
        kept = days_ahead(self.period.reserve_dates, self.words.programme.issued)
        return self.words.dates.on_days(kept)

    def later_dressings(self, *, brief: bool = False) -> str:
        """Say when greens are sanded again, and unless briefly what one meets; else nothing."""
        parts = []
        for work in self.period.works:
            rounds = self._later_rounds(work)
            if not rounds:
                continue
            times = {1: "once more", 2: "twice more"}.get(
                len(rounds), f"{number(len(rounds))} times more"
            )
            several = len(work.greens) > 1 and len(work.dates) > 1
            order = ", green by green in the same order" if several else ""
            to_sand = self.words.language.terms.to_sand
            said = f"We {to_sand} {times}{order}"
            if _overlap(rounds):
                every = in_brief(day for days in rounds for day in days)
                whole = f"{said}, {self.words.dates.on_days(every)}."
            else:
                spans = [self.words.dates.on_days(in_brief(days)) for days in rounds]
                whole = f"{said}: {and_list(spans, 'and again')}."
                if len(words_of(whole)) > LONGEST_SENTENCE:
                    whole = _split(said, spans)
            parts.append(whole)
            if work.while_working is WhileWorking.CLOSED and not brief:
                which = "The" if len(work.greens) == 1 else "A"
                long = up_to(self._longest_away(work, work.follow_ups))
                lasting = f", for {long}" if long else ""
                parts.append(f"{which} green is closed only while we do it{lasting}.")
        return " ".join(parts)

    def _longest_away(self, work: Work, visits: Sequence[Visit]) -> float:
        """Return how long some visits take a green from golfers, as they are told it [min].

        Without end where nothing tells the hours.
        """
        programme = self.words.programme
        away = [
            stretch.ends - stretch.begins
            for visit in visits
            for green in visit.greens
            for stretch in to_half_hours(programme.stretches_on(visit.date, green))
            if work.id in stretch.because and stretch.status is PlayStatus.CLOSED
        ]
        return max(away, default=math.inf)

    def _later_rounds(self, work: Work) -> list[list[dt.date]]:
        """List the days of each later dressing that is still to come."""
        ahead = days_ahead((v.date for v in work.follow_ups), self.words.programme.issued)
        rounds: dict[int, list[dt.date]] = {}
        for visit in work.follow_ups:
            if visit.date in ahead:
                rounds.setdefault(visit.ordinal, []).append(visit.date)
        return [days for _, days in sorted(rounds.items())]

    def raised_cut(self) -> str:
        """Say when mowing is raised ahead of the work; empty where it is not."""
        for work in self.period.works:
            if work.operation.name == "raising the height of cut":
                if work.dates[0] <= self.words.programme.issued <= self.period.days[-1]:
                    return "We mow a little higher now, so putts are slower."
                return (
                    f"From {self.words.dates.day(work.dates[0])} we mow a little higher, "
                    "so putts are slower."
                )
        return ""


def _overlap(rounds: Sequence[Sequence[dt.date]]) -> bool:
    """Whether one begins before another ends, as where a day was put off."""
    return any(min(later) <= max(sooner) for sooner, later in pairwise(rounds))


def _split(said: str, spans: Sequence[str]) -> str:
    """Give each time a sentence of its own: several spans are too much to keep in mind."""
    leads = ("once", "again", *("and again" for _ in spans[2:]))
    each = [sentence(f"{lead} {span}") for lead, span in zip(leads, spans, strict=True)]
    return " ".join([sentence(said), *each])


def _aim(kinds: set[Opening]) -> str:
    if kinds & {Opening.TRENCHES, Opening.CHANNELS} and Opening.HOLES not in kinds:
        return "to let the water out"
    if kinds == {Opening.BARE}:
        return "where the old has failed"
    if kinds == {Opening.SAND}:
        return "to keep the surface smooth and firm"
    return "to let water and air down to the roots"
