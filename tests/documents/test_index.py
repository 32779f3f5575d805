"""The front page tells the office what to do and when, and names every file."""

from __future__ import annotations

import re

from notices.documents.index import index
from notices.documents.model import CHANGE_NOTICE, Document, Entry, PlainText
from notices.documents.to_do import to_do
from notices.programme.duties import DutyKind
from tests.documents.building import BuiltPack, of
from tests.documents.reading import Page


def test_all_that_is_sent_printed_put_up_and_taken_down_has_a_box_to_tick(pack: BuiltPack) -> None:
    page = Page(pack.text("index.html"))
    (sheet,) = (table for table in page.tables if table[0][0] == "Done")
    done = [row[2] for row in sheet[1:]]
    for duty in to_do(pack.programme):
        files = [words for words in done if duty.document and duty.document in words]
        if duty.kind in (DutyKind.SEND, DutyKind.PRINT, DutyKind.PUT_UP, DutyKind.TAKE_DOWN):
            assert files, duty.id
    assert [row[0] for row in sheet[1:]] == [""] * len(done)


def test_every_file_is_named_once(pack: BuiltPack) -> None:
    links = Page(pack.text("index.html")).links
    files = [link for link in links if "://" not in link and not link.startswith("mailto:")]
    assert sorted(files) == sorted(pack.files.keys() - {"index.html"})


def test_a_link_is_read_aloud_with_the_whole_name_of_its_file(pack: BuiltPack) -> None:
    """The eye reads "member-email.eml · .html · .txt"; a list of links has nothing to lean on."""
    links = re.findall(r'<a href="([^":]+)">(.*?)</a>', pack.text("index.html"))
    said = {file: re.sub(r"<[^>]*>", "", words) for file, words in links}
    assert said.keys() == pack.files.keys() - {"index.html"}
    assert all(file == words for file, words in said.items())


@of("tansy-down")
def test_a_change_is_the_first_thing_to_send(pack: BuiltPack) -> None:
    programme = pack.programme
    notice = Document.of(programme, name="change-notice", title="", summary="", sections=())
    entry = Entry(CHANGE_NOTICE, "Members", "Send it first.", (PlainText(notice),))
    first = index(programme, [entry]).todo[0]
    assert (first.what, first.whom) == ("Send the change notice (change-notice).", "Members")
