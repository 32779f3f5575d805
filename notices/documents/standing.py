"""What a notice changes and what it leaves as it was, for the front page of its pack."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from notices.documents.model import (
    CHANGE_NOTICES,
    Entry,
    Imprint,
    Item,
    Letter,
    Sheet,
    file_names,
    imprint_of,
)
from notices.programme.model import Edition, Programme
from notices.wording.edition import day_of
from notices.wording.words import Words

NEW = "new"
"""Mark of a file that has changed where others beside it have not."""

SEND, PRINT, SCREENS, EMAILS = "Send", "Print", "On screens", "Emails that have changed"
SENT = "Whoever has had the old one gets the change notice, and not the email again."
_THEN = {
    SCREENS: "Put {each} in place of the old one.",
    EMAILS: f"Use {{these}} for what is still to be sent. {SENT}",
}
"""What is done with one file of a kind, or with several."""


@dataclass(frozen=True, slots=True)
class News:
    """One line of what a notice changes, or leaves as it was."""

    label: str
    text: str = ""
    files: tuple[str, ...] = ()
    """What it is said of."""


def is_new(programme: Programme, item: Item) -> bool:
    """Whether the notice brings it or changes a word of it."""
    return imprint_of(item).edition.number == programme.edition.number


def new_documents(programme: Programme, entries: Sequence[Entry]) -> dict[str, Imprint]:
    """Return the names of what the notice brings or changes, and what each comes in place of."""
    return {
        name.rpartition(".")[0]: imprint_of(item)
        for entry in entries
        for item in entry.items
        if is_new(programme, item)
        for name in file_names(item)
    }


def what_is_new(words: Words, entries: Sequence[Entry]) -> Iterator[News]:
    """Yield what to send, print and put up with a notice that replaces another, and what stands."""
    programme = words.programme
    before = programme.replaces
    if before is None:
        return
    followed = f"{_named(words, before)}{', a draft' if before.draft else ''}"
    yield News("Notice", f"{programme.edition.number}. It follows {followed}.")
    new: dict[str, list[str]] = {label: [] for label in (SEND, PRINT, SCREENS, EMAILS)}
    old: dict[str, list[str]] = {}
    for entry in entries:
        for item in entry.items:
            if is_new(programme, item):
                new[_use(entry, item)].append(file_names(item)[0])
            elif isinstance(item, Sheet):
                day = _day(words, imprint_of(item).edition)
                old.setdefault(day, []).append(file_names(item)[0])
    for label, names in new.items():
        if names:
            yield News(label, _of(_THEN.get(label, ""), names), tuple(names))
    if not any(new.values()):
        yield News("Changed", "Nothing. There is nothing to send, print or put up.")
    for day, names in old.items():
        said = _of("No need to print {these} again.", names)
        yield News(f"Still holds, of {day}", said, tuple(names))


def _of(sentence: str, files: Sequence[str]) -> str:
    """Say a sentence of one file or of several."""
    if len(files) == 1:
        return sentence.format(each="it", these="it")
    return sentence.format(each="each", these="these")


def _use(entry: Entry, item: Item) -> str:
    """Return what is done with a file that is new."""
    if isinstance(item, Sheet):
        return PRINT
    if entry.title in CHANGE_NOTICES:
        return SEND
    return EMAILS if isinstance(item, Letter) else SCREENS


def standing_of(words: Words, entry: Entry) -> str:
    """Say whether an entry is new with a notice that replaces another."""
    programme = words.programme
    if programme.replaces is None:
        return ""
    new = [item for item in entry.items if is_new(programme, item)]
    if len(new) == len(entry.items):
        days = {of.replaces for item in new if (of := imprint_of(item))}
        only = days.pop() if len(days) == 1 else None
        if only is None:
            return "New."
        sent = f" {SENT}" if isinstance(new[0], Letter) else ""
        return f"New. It replaces the one of {_day(words, only)}.{sent}"
    if new:
        return f"Only what is marked “{NEW}” has changed."
    named = {_named(words, imprint_of(item).edition): None for item in entry.items}
    said = f"The same as in {' and '.join(named)}."
    return f"{said} {entry.again}".strip()


def marks(words: Words, entry: Entry) -> dict[str, str]:
    """Return for each file whether it is new, or else of what day, where that is not one for all."""
    found = {
        name: NEW
        if is_new(words.programme, item)
        else f"of {_day(words, imprint_of(item).edition)}"
        for item in entry.items
        for name in file_names(item)
    }
    return found if len(set(found.values())) > 1 else dict.fromkeys(found, "")


def old_one(words: Words, imprint: Imprint | None, *, hangs: bool) -> str:
    """Say what becomes of the sheet that a new one replaces; empty where there was none."""
    if imprint is None or imprint.replaces is None:
        return ""
    day = _day(words, imprint.replaces)
    return f"Take down the one of {day}." if hangs else f"Throw away the one of {day}."


def _named(words: Words, edition: Edition) -> str:
    return f"notice {edition.number} of {_day(words, edition)}"


def _day(words: Words, edition: Edition) -> str:
    return day_of(edition, words.programme.club.language)
