"""Every message that the plan sends is in the pack, says what it is to say, and fits its phone."""

from __future__ import annotations

import re

from notices.documents.model import Letter
from notices.programme.duties import DutyKind, duties
from notices.wording.blocks import Paragraph
from notices.wording.text_message import characters, parts
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
