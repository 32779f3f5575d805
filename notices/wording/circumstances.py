"""What else golfers must know: closures, fixtures, restrictions, who decides, whom to ask."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable

from notices.operations import Opening, Weather
from notices.programme.fixtures import shut_for
from notices.programme.model import Closure, Decided, Fixture, Period, PlayStatus, Restriction, Work
from notices.programme.raised_cut import mown_higher_on
from notices.programme.same_greens import should_putt_well
from notices.wording.greens import course_phrase
from notices.wording.lists import and_list, counted, sentence, with_the
from notices.wording.reading_ease import LONGEST_SENTENCE, words_of
from notices.wording.words import Words

_PREPOSITIONS = frozenset({"after", "at", "before", "by", "in", "near", "on", "outside", "until"})


def closed_thing(words: Words, closed: Closure) -> str:
    """Practice ground closed; for lists."""
    subject = _subject(words, closed)[0] if closed.part else closed.what
    if closed.part:
        subject = subject.removeprefix("the ")
    state = "closed"
    if closed.has_temporary:
        state = "temporary green" if len(closed.greens) == 1 else "temporary greens"
    return f"{subject[:1].upper()}{subject[1:]}: {state}"


def closed_subject(words: Words, closed: Closure) -> str:
    """Name what is closed, inside a sentence: the practice ground."""
    return _subject(words, closed)[0]


def closure(words: Words, closed: Closure, *, dated: bool = True) -> str:
    """The practice ground is closed on …. Where a list says when, not ``dated``."""
    subject, many = _subject(words, closed)
    when = f" {words.dates.on_days(closed.dates)}" if dated else ""
    if closed.has_temporary:
        have = "have" if many else "has"
        said = _because(f"{subject} {have} {inside(closed.instead)}{when}", closed.reason)
        return f"{said} {temporary_is(closed, many=many)}"
    are = "are" if many else "is"
    said = _because(f"{subject} {are} closed{when}", closed.reason)
    return " ".join(filter(None, (said, instead(closed))))


def temporary_is(closed: Closure, *, many: bool) -> str:
    """Say where temporary greens lie and how good they are, or else that they are rough."""
    if closed.temporary:
        return sentence(f"temporary green{'s' if many else ''}: {closed.temporary}")
    several = "temporary greens" in closed.instead.lower()
    return f"Expect {'them' if several else 'it'} to be rough."


def instead(closed: Closure) -> str:
    """What to use while something is closed; empty where nothing is named but temporary greens."""
    if not closed.instead or closed.has_temporary:
        return ""
    return sentence(f"please use {closed.instead}")


KEEP_OUT = "Please keep out of what is closed. People and machines may be at work there."


def shuts_people_out(closed: Closure) -> bool:
    """Whether golfers who play on come by something closed, where people may be at work."""
    return closed.part not in ("", "course") and not closed.has_temporary


def _because(said: str, reason: str) -> str:
    """Add the reason, in a sentence of its own where one would be too long."""
    if not reason:
        return sentence(said)
    whole = sentence(f"{said}: {reason}")
    if len(words_of(whole)) <= LONGEST_SENTENCE:
        return whole
    return f"{sentence(said)} {sentence(f'the reason: {reason}')}"


def inside(text: str) -> str:
    """Fit words that a plan may write as a sentence into the middle of one."""
    words = text.rstrip(".")
    return words if words[1:2].isupper() else words[:1].lower() + words[1:]


def _subject(words: Words, closed: Closure) -> tuple[str, bool]:
    """Return what is closed, and whether it is several things."""
    match closed.part:
        case "course" if not closed.courses:
            return "the course", False
        case "course":
            return and_list([course_phrase(c) for c in closed.courses]), len(closed.courses) > 1
        case "greens":
            return words.greens(closed.greens), len(closed.greens) > 1
        case "holes":
            return words.holes(closed.holes), len(closed.holes) > 1
        case "":
            what = closed.what
            subject = what if what.lower().startswith("the ") else f"the {what}"
            return subject, _plural(what)
        case part:
            many = len(closed.holes) > 1
            noun = _several(part) if many else part
            return f"the {noun} of {words.holes(closed.holes)}", many or _plural(part)


def _several(part: str) -> str:
    """Name what several holes have: tees, approaches."""
    return part if part.endswith("s") else f"{part}{'es' if part.endswith('ch') else 's'}"


def _plural(what: str) -> bool:
    """Whether free words name several things: changing rooms, range and nets, but not tennis."""
    return " and " in what or (what.endswith("s") and not what.endswith(("ss", "is", "us")))


DECIDED = {"play on": "it goes ahead", "does not count": "it goes ahead, and scores will not count"}
"""What is said of a fixture that is played all the same."""


def fixtures(words: Words, *, brief: bool = False) -> list[str]:
    """Return what the works mean for each fixture ahead that meets them, and what is decided.

    Two fixtures that meet the same share a sentence, as long as one can read it at a go. In brief
    the days are short, as in a list of days.
    """
    name_day = words.dates.short_day if brief else words.dates.day
    said: list[str] = []
    single: dict[str, tuple[int, str]] = {}
    ahead = (one for one in words.programme.fixtures if one.date >= words.programme.issued)
    for fixture in ahead:
        name = f"{fixture.name}, {name_day(fixture.date)}"
        said += [sentence(text) for text in (_decided(fixture, name_day),) if text]
        means = _means(words, fixture)
        place, other = single.pop(means, (0, ""))
        both = sentence(f"{other}, and {name}: {means}")
        if other and len(words_of(both.partition(". ")[0])) <= LONGEST_SENTENCE:
            said[place] = both
        elif means:
            single[means] = len(said), name
            said.append(sentence(f"{name}: {means}"))
    return said


def _decided(fixture: Fixture, name_day: Callable[[dt.date], str]) -> str:
    """Say that it is moved or called off; empty where it is not."""
    day = name_day(fixture.date)
    if fixture.moved_from is not None:
        # Not "from … to …", which reads as if it lasted so long.
        was = name_day(fixture.moved_from)
        return f"{fixture.name} is moved to {day}. It was to be on {was}"
    if fixture.decided is Decided.MOVED:
        return f"{fixture.name}, {day}, is moved. We will tell you its new date"
    return f"{fixture.name}, {day}, is called off" if fixture.decided is Decided.CANCELLED else ""


def _means(words: Words, fixture: Fixture) -> str:
    """Say what it meets of the works; empty where it meets nothing."""
    if fixture.decided and fixture.goes_ahead and _meets(fixture):
        return _goes_ahead(words, fixture)
    if fixture.closed_greens:
        return _out_of_play(words, fixture)
    if not fixture.recovering_greens:
        return _besides(words, fixture)
    will = "may" if _healed_if_all_goes_well(words, fixture) else "will"
    return (
        f"{_healing(words, fixture)} {will} still be healing. Putts {will} be slower and may wander"
    )


def _besides(words: Words, fixture: Fixture) -> str:
    """Say what is closed of its holes, or that putts are slower; empty where nothing is."""
    for closed in shut_for(words.programme, fixture):
        subject, many = _subject(words, closed)
        return f"{subject} {'are' if many else 'is'} closed. {instead(closed)}".rstrip(" .")
    higher = mown_higher_on(words.programme, fixture.date)
    if any(fixture.meets(words.programme.greens[green]) for green in higher):
        return "we mow a little higher then, so putts are slower"
    return ""


def _meets(fixture: Fixture) -> bool:
    return bool(fixture.closed_greens or fixture.recovering_greens)


def _goes_ahead(words: Words, fixture: Fixture) -> str:
    """Say that it is played, on what, and whether it counts."""
    decided = DECIDED[fixture.decided.value] if fixture.decided else ""
    if fixture.closed_greens:
        away = _out_of_play(words, fixture)
        return f"{decided}. {away[:1].upper()}{away[1:]}"
    one = len(fixture.recovering_greens) == 1 < len(words.programme.greens)
    are = "is still" if one else "are still"
    if _healed_if_all_goes_well(words, fixture):
        are = "may still be"
    healing = f"{_healing(words, fixture)} {are} healing"
    return decided.replace("ahead", f"ahead while {healing}", 1)


def _healing(words: Words, fixture: Fixture) -> str:
    """Name the greens that still recover; "the greens" where all of them do."""
    some = len(fixture.recovering_greens) < len(words.programme.greens)
    return words.greens(fixture.recovering_greens) if some else "the greens"


def _healed_if_all_goes_well(words: Words, fixture: Fixture) -> bool:
    """Whether it falls between the days that members were given, expect-by and at-worst.

    Who has read "expect all by Wednesday" must not be told that they will be healing on Saturday.
    """
    return should_putt_well(words.programme.periods, fixture.date, fixture.recovering_greens)


def _out_of_play(words: Words, fixture: Fixture) -> str:
    """Say which greens are closed and which have a temporary one."""
    parts = []
    for status, one, several in (
        (PlayStatus.CLOSED, "is out of play that day", "are out of play that day"),
        (PlayStatus.TEMPORARY, "has a temporary green", "have temporary greens"),
    ):
        greens = [
            green
            for green in fixture.closed_greens
            if words.programme.status_on(fixture.date, green) is status
        ]
        if greens:
            parts.append(f"{words.greens(greens)} {one if len(greens) == 1 else several}")
    return and_list(parts)


def restrictions(words: Words) -> list[str]:
    """What golfers go without, a few sentences each."""
    return without(words, words.programme.restrictions)


def without(words: Words, restrictions: Iterable[Restriction]) -> list[str]:
    """What golfers go without of some restrictions, a few sentences each, the same one once."""
    return [
        gone_without(restriction, words.dates.on_days(restriction.dates))
        for restriction in dict.fromkeys(restrictions)
    ]


def gone_without(restriction: Restriction, when: str = "") -> str:
    """No buggies on … (except …). Please ask the shop. Where a list says when, no ``when``."""
    but = f"(except {restriction.exception.rstrip('.')})" if restriction.exception else ""
    no = sentence(" ".join(filter(None, (f"no {restriction.what}", when, but))))
    return f"{no} {sentence(f'please ask {restriction.ask}')}" if restriction.ask else no


def decision(words: Words) -> str:
    """Who decides, by when, and where it is announced."""
    # A closure for a county final does not wait for the weather.
    sentences = ["All dates depend on the weather."] if words.programme.works else []
    decided = words.programme.decision
    if decided is not None:
        decides = "decides" if words.programme.works else "decides on any change"
        sentences.append(sentence(f"{with_the(decided.by)} {decides} {_led(decided.when, 'at')}"))
        sentences.append(where_to_look(words))
    return " ".join(filter(None, sentences))


def where_to_look(words: Words) -> str:
    """Say where the last word on a day is told; empty where the plan does not say."""
    decided = words.programme.decision
    if decided is None:
        return ""
    final = words.language.clock(decided.confirmed) if decided.confirmed else ""
    where = _led(with_the(decided.where), "on") if decided.where else ""
    if final:
        final = f"{final} {words.language.terms.that_day}"
    return _where_to_look(where, final)


def go_or_no_go(words: Words, period: Period | None = None) -> str:
    """Say in what weather the works, or those of one period, are not done; empty where always."""
    programme, terms = words.programme, words.language.terms
    works = period.works if period else programme.works
    own = {work.id for work in works}
    limits = {limit: ids for limit, ids in programme.weather.items() if own.intersection(ids)}
    kept_dry = [w for w in works if w.id in limits.get(Weather.GROUND_NOT_WET, ())]
    rolling = any(work.operation.opening is Opening.NONE for work in kept_dry)
    tining = any(work.operation.opening is not Opening.NONE for work in kept_dry)
    verbs = [verb for verb, planned in ((terms.to_tine, tining), ("roll", rolling)) if planned]
    wet = f"{and_list(verbs, 'or')} wet greens" if verbs else ""
    frost = "work in frost or thaw" if Weather.NO_FROST in limits else ""
    sentences = [
        f"We do not {', or '.join(filter(None, (wet, frost)))}." if wet or frost else "",
        _CLAY if Weather.MOULDED_BELOW in limits else "",
        f"We {terms.to_sand} only when it is dry." if Weather.DRY in limits else "",
        "Where we use a product, we follow its label." if Weather.LABEL in limits else "",
    ]
    return " ".join(filter(None, sentences))


_CLAY = "We draw channels only when the clay is moist below and firm on top."


def way_of_the_plough(works: Iterable[Work]) -> str:
    """Say where channels begin, so that they drain (common practice); empty where none are drawn."""
    drawn = any(work.operation.opening is Opening.CHANNELS for work in works)
    return "Each channel is drawn from the drain or ditch upwards." if drawn else ""


def _where_to_look(where: str, final: str) -> str:
    """Say where the decision is told and from what time it holds; empty where neither is known."""
    word = "final" if final else "latest"
    if where and not where.lower().startswith("by "):
        time = f" from {final}" if final else ""
        return f"For the {word} word, look {where}{time}."
    # Nobody looks by email.
    comes = [where, f"at {final}" if final else ""]
    return f"The {word} word comes {' '.join(filter(None, comes))}." if any(comes) else ""


def _led(text: str, preposition: str) -> str:
    """Put the preposition before words that do not bring one of their own."""
    first = text.split(" ", 1)[0].lower()
    return text if first in _PREPOSITIONS else f"{preposition} {text}"


def own_record(words: Words, operation: str) -> str:
    """Say that an estimate rests on the club's own record; empty where it does not."""
    fitted = words.programme.records.get(operation)
    if fitted is None:
        return ""
    return f"We go by what we saw here in {counted(fitted.seasons, 'earlier season')}."


def own_record_in_figures(words: Words) -> list[str]:
    """Say for each kind of work how the club's own record differs from the book."""
    return [
        f"{operation[:1].upper()}{operation[1:]}: {counted(fitted.seasons, 'season')} on record. "
        f"In the best growing weather, an edge grew in by {fitted.rates.middle:.2f} mm a day here. "
        f"Our general figure is {fitted.book.middle:.2f} mm."
        for operation, fitted in words.programme.records.items()
    ]


def approval(words: Words) -> str:
    """Who approved the work; empty where that is not known."""
    given = words.programme.approval
    if given is None or given.pending or not given.by:
        return ""
    text = f"{with_the(given.by)} approved the plan"
    if given.date:
        text += f" on {words.dates.date(given.date)}"
    if given.reference:
        text += f" ({given.reference})"
    return sentence(text)


def sign_off(words: Words) -> str:
    """Last line of what is sent: name, post and club, or the club's own line."""
    club = words.programme.club
    return club.sign_off or ", ".join(filter(None, (club.sender.name, words.role, club.name)))


def booking(words: Words) -> str:
    """Where visitors write about a booking; empty where the plan names no office beside the contact."""
    club = words.programme.club
    if not club.reply_to or club.reply_to in club.contact:
        return ""
    return f"About your {words.language.terms.booking}, please write to {club.reply_to}."


def contact(words: Words) -> str:
    """Whom to ask."""
    club = words.programme.club
    if club.contact:
        return sentence(club.contact)
    if club.sender.placeholder:
        return "Any questions? Please ask at the club."
    return f"Any questions? Please ask the {words.role}, {club.sender.email}."
