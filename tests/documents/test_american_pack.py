"""No document of an American club has a British word or turn of phrase in it."""

from __future__ import annotations

import re

from notices.rendering.text import plain_text
from tests.documents.building import BuiltPack, of
from tests.wording.lint import british

QUOTED = re.compile(r"“[^”]*”")
"""Titles of what others wrote, in their own spelling."""


@of("live-oak")
def test_an_american_reads_no_british(pack: BuiltPack) -> None:
    found = {
        document.name: words
        for document in pack.documents.documents
        if (words := british(QUOTED.sub("", plain_text(document, ""))))
    }
    assert found == {}


@of("live-oak")
def test_an_american_sees_no_british_in_a_drawing(pack: BuiltPack) -> None:
    shown = [drawing for document in pack.documents.documents for drawing in document.drawings]
    assert shown
    for drawing in shown:
        said = f"{drawing.title} {drawing.description} {drawing.caption}"
        assert british(said) == [], drawing.name


@of("live-oak")
def test_an_american_office_is_told_in_american(pack: BuiltPack) -> None:
    for entry in pack.documents.entries:
        assert british(f"{entry.title}. {entry.whom}. {entry.todo} {entry.again}") == []
