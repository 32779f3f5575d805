"""Every message that the plan sends is in the pack, says what it is to say, and fits its phone."""

from __future__ import annotations

import re

from notices.documents.model import Letter
from notices.programme.duties import DutyKind, duties
from notices.programme.model import Moment
from notices.wording.blocks import Paragraph
from notices.wording.text_message import characters, parts
from notices.wording.words import Words
from tests.documents.building import BuiltPack


def test_whatever_is_to_be_sent_is_there(pack: BuiltPack) -> None:
    for duty in duties(pack.programme):
        if duty.kind is DutyKind.SEND:
            assert f"{duty.document}.txt" in pack.files


def test_the_subjects_differ_and_each_message_has_an_identity(pack: BuiltPack) -> None:
    letters = [item for item in pack.documents.items if isinstance(item, Letter)]
    assert len({letter.message_id for letter in letters}) == len(letters)
    for letter in letters:
        text = pack.text(f"{letter.document.name}.txt")
        assert letter.document.title in " ".join(text.split())


def test_short_messages_have_the_length_that_they_say(working_pack: BuiltPack) -> None:
    document = working_pack.documents.document("short-messages")
    blocks = [block for section in document.sections for block in section.blocks]
    said = [block.text for block in blocks if isinstance(block, Paragraph)]
    messages, lengths = said[::2], said[1::2]
    lines = working_pack.text("short-messages.txt").splitlines()
    assert set(messages) <= set(lines)  # each on one line, to be copied
    assert len(messages) >= 9  # one at least for each occasion
    for message, length in zip(messages, lengths, strict=True):
        count = re.match(r"\(([\d,]+) characters?, (\w+) messages?", length)
        assert count, length
        assert int(count[1].replace(",", "")) == characters(message) <= 280
        assert {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5}[count[2]] == parts(message)


def test_a_reminder_names_the_greens_of_each_day(working_pack: BuiltPack) -> None:
    """It is what members read three days before, when they plan their game."""
    programme = working_pack.programme
    words = Words(programme)
    found = 0
    for duty in duties(programme):
        if duty.moment is not Moment.REMINDER or not duty.document.startswith("member-email"):
            continue
        (period,) = (p for p in programme.periods if duty.works[0] in {w.id for w in p.works})
        text = " ".join(working_pack.text(f"{duty.document}.txt").split())
        if len(period.days) > 1 and len(period.greens) > 1:
            assert "Which green on which day" in text
            for days, greens in words.days_of(period):
                assert f"{words.dates.days(days)}: {words.greens(greens, short=True)}" in text
            found += 1
        for limit in programme.restrictions:
            if set(limit.dates) & set(period.days):
                assert f"No {limit.what}" in text
    several = [p for p in programme.periods if len(p.days) > 1 and len(p.greens) > 1]
    assert found or not several
