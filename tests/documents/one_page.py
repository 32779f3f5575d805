"""What visitors get is short: each form of it is a page, and says every fact."""

from __future__ import annotations

from notices.documents.model import CalendarDocument, Item
from notices.rendering.whole_pack import render_item
from tests.documents.reading import Page, Sheet, plain, tight, unwrapped


def assert_one_page_says_all(item: Item) -> None:
    """Render a document alone, read it back, and look for each of its facts."""
    assert not isinstance(item, CalendarDocument)
    (file,) = render_item(item, {})
    facts = [fact.text for fact in item.document.facts]
    assert facts
    if file.name.endswith(".pdf"):
        sheet = Sheet.read(file.content)
        assert sheet.pages == 1
        assert [fact for fact in facts if tight(fact) not in tight(sheet.text)] == []
        return
    source = file.content.decode()
    text = Page(source).text if file.name.endswith(".html") else unwrapped(source)
    assert [fact for fact in facts if plain(fact) not in text] == []
