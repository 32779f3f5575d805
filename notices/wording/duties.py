"""Duties around the work, in words for the team and the secretary."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable

from notices.programme.duties import SIGNS, Duty, DutyKind, DutySubject
from notices.programme.duties_again import TO_VISITORS
from notices.programme.model import Moment, Programme
from notices.wording.amounts import mass
from notices.wording.lists import and_list, counted, sentence, with_the
from notices.wording.period import PeriodWords
from notices.wording.words import Words

_SENT = {
    Moment.ANNOUNCEMENT: "the announcement",
    Moment.REMINDER: "the reminder",
    Moment.DAY_BEFORE: "the note for the day before",
    Moment.CALLED_OFF: "the note that the day is called off",
    Moment.STOPPED: "the note that the work stopped",
    Moment.PROGRESS: "the note on progress",
    Moment.FINISHED: "the note that we have finished",
    Moment.RECOVERY_LATE: "the note that the greens need longer",
    Moment.BACK_TO_NORMAL: "the note that all is back to normal",
}

_RECOVERED = {
    DutySubject.OPEN_AGAIN: "open again",
    DutySubject.PUTTING_WELL: "putting well again",
    DutySubject.FULLY_HEALED: "fully healed",
}


LOOK_NOW = "Look, record what you see, and tell members if it takes longer."


def duty_in_words(words: Words, duty: Duty) -> str:
    """Return a duty in words: "Send the reminder: hollow tining (member-email-reminder)."."""
    match duty.kind:
        case DutyKind.SEND:
            sent = _SENT[duty.moment] if duty.moment else _change(duty.document)
            said = f"Send {sent}{_of_period(words, duty)} ({duty.document})."
        case DutyKind.PRINT:
            said = _print(words, duty)
        case DutyKind.PUT_UP | DutyKind.TAKE_DOWN | DutyKind.CHANGE_SIGNS:
            said = _hang(duty)
        case DutyKind.ORDER:
            said = f"Order {_sand(words.programme)}, to be here by {_day(words, duty)}."
        case DutyKind.DELIVER:
            said = f"See that the sand is here by {_day(words, duty)}: {_sand(words.programme)}."
        case DutyKind.CONFIRM:
            said = _confirm(words, duty)
        case DutyKind.LOOK:
            said = f"Look and record whether {_recovered(words, duty)}."
    return said


def missed_in_words(words: Words, duty: Duty) -> str:
    """Return sentences on a promised date that has passed with nothing recorded."""
    greens = words.greens(duty.greens)
    many = "were" if len(duty.greens) > 1 else "was"
    state = _RECOVERED[duty.subject] if duty.subject else "open again"
    return (
        f"{greens[:1].upper()}{greens[1:]} {many} to be {state} "
        f"by {words.dates.day(duty.last)}{_of_period(words, duty, ' after ')}. "
        "Nothing is recorded."
    )


def as_seen(words: Words, duty: Duty, today: dt.date) -> str:
    """Return a duty in words, or the promised date that has passed with nothing recorded."""
    return missed_in_words(words, duty) if duty.missed_on(today) else duty_in_words(words, duty)


def until_in_words(words: Words, duty: Duty, today: dt.date) -> str:
    """Return the last day of a duty, as "today" or "by Sunday 9 August"."""
    return "today" if duty.last == today else f"by {words.dates.day(duty.last)}"


def due_in_words(words: Words, duties: Iterable[Duty], today: dt.date) -> str:
    """Return the duties of a day: promised dates with nothing recorded, and then the rest."""
    late, now = [], []
    for duty in duties:
        if duty.missed_on(today):
            late.append(f"  {missed_in_words(words, duty)}")
        else:
            until = until_in_words(words, duty, today)
            now.append(f"  {sentence(until)[:-1]}: {duty_in_words(words, duty)}")
    parts = []
    if late:
        parts.append("\n".join(["Promised, and not recorded:", *late, f"  {LOOK_NOW}"]))
    if now:
        parts.append("\n".join([f"To do on {words.dates.day(today)}:", *now]))
    return "\n\n".join(parts) or f"Nothing is due on {words.dates.day(today)}."


def _print(words: Words, duty: Duty) -> str:
    """Return the duty to print a document for a period or for days of closures."""
    if duty.document == SIGNS:
        return f"Print {duty.document}.pdf. The team calendar says when each sign goes up and comes down."
    if not duty.works and duty.day:
        return f"Print {duty.document}.pdf, from {_day(words, duty)} on."
    return f"Print {duty.document}.pdf{_of_period(words, duty, ' for ')}."


def _hang(duty: Duty) -> str:
    """Return the duty to put up or take down a document, or to change named signs."""
    if duty.kind is DutyKind.PUT_UP:
        return f"Print {duty.document}.pdf and put it up."
    if duty.kind is DutyKind.TAKE_DOWN:
        return f"Take down {duty.document}.pdf."
    parts = [
        f"{verb} {and_list([f'“{large}”' for large in signs])}"
        for verb, signs in (("put up", duty.up), ("take down", duty.down))
        if signs
    ]
    return sentence(f"signs: {'; '.join(parts)}")


def _change(document: str) -> str:
    """Return the thing to send about a change, by the name of the document."""
    if not document.startswith(TO_VISITORS):
        return "the change notice"
    return f"{'visitors' if document == TO_VISITORS else 'the party'} what has changed"


def _confirm(words: Words, duty: Duty) -> str:
    if duty.subject is DutySubject.APPROVAL:
        return "Get the plan approved. Until then every file says DRAFT."
    decision = words.programme.decision
    who = with_the(decision.by) if decision else words.role
    when = f", {decision.when}" if decision else ""
    where = f", and say so: {decision.where}" if decision and decision.where else ""
    day = _day(words, duty)
    return f"Decide whether the work of {day} goes ahead ({who}{when}){where}."


def _recovered(words: Words, duty: Duty) -> str:
    are = "are" if len(duty.greens) > 1 else "is"
    state = _RECOVERED[duty.subject] if duty.subject else "open again"
    return f"{words.greens(duty.greens)} {are} {state}{_of_period(words, duty, ' after ')}"


def _of_period(words: Words, duty: Duty, joint: str = ": ") -> str:
    """Return the period of a duty in words; empty if the duty is about all periods."""
    for period in words.programme.periods:
        if duty.works and duty.works[0] in {work.id for work in period.works}:
            return f"{joint}{PeriodWords(words, period).inside()}"
    return ""


def _sand(programme: Programme) -> str:
    order = programme.sand_order
    if order is None:
        return "the sand"
    total = mass(order.mass_t, programme.club.units)
    return f"{total} of sand ({counted(order.lorry_loads, 'load')})"


def _day(words: Words, duty: Duty) -> str:
    return words.dates.day(duty.day) if duty.day else ""
