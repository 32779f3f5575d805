"""Documents as plain text: written for reading, in lines that no mail program breaks."""

from __future__ import annotations

import datetime as dt

from notices.documents.model import Document, Imprint, Section
from notices.programme.model import Edition
from notices.rendering.text import plain_text
from notices.wording.blocks import (
    Block,
    Bullets,
    Folded,
    Heading,
    KeyFact,
    KeyFacts,
    Notes,
    Paragraph,
    Picture,
    Run,
    Table,
)

LONG = "The greens are closed while we work, and open again on the morning after. " * 3
ADDRESS = "https://www.fallow-mead.example/" + "a-very-long-way/" * 6


def written(*blocks: Block, heading: str = "", draft: bool = False, title: str = "Work") -> str:
    document = Document(
        name="member-email",
        title=title,
        language="en-GB",
        club="Fallow Mead Golf Club",
        imprint=Imprint(Edition(dt.date(2027, 3, 1))),
        summary="",
        sections=(Section("only", blocks, heading),),
        facts=(),
        draft=draft,
    )
    return plain_text(document, "Fallow Mead Golf Club. Issued 1 March 2027.")


def test_a_whole_text() -> None:
    text = written(
        KeyFacts((KeyFact("When", "Monday 9 August 2027."),)),
        Table("", ("Day", "Greens"), (("Monday 9 August", "1 to 6"),)),
        Picture("greens-by-day"),
        Heading("Rolling"),
        Bullets.of("First.", "Second."),
        heading="Which green on which day",
    )
    assert text == (
        "Fallow Mead Golf Club\nWork\n====\n\n\n"
        "Which green on which day\n------------------------\n\n"
        "When: Monday 9 August 2027.\n\n"
        "* Monday 9 August: 1 to 6.\n\n"
        "ROLLING\n\n"
        "* First.\n* Second.\n\n\n"
        "Fallow Mead Golf Club. Issued 1 March 2027.\n"
    )


def test_no_line_is_longer_than_72_signs() -> None:
    text = written(
        Paragraph.of(LONG),
        Bullets.of(LONG),
        KeyFacts((KeyFact("When", LONG),)),
        Table("", ("", ""), ((LONG, LONG),)),
        heading=LONG,
        title=LONG,
    )
    assert max(len(line) for line in text.splitlines()) <= 72


def test_a_row_with_whole_sentences_reads_as_prose() -> None:
    row = ("Mon 9 Aug", "Tining, all greens", "They stay open.", "No doubt.")
    text = written(Table("", ("When", "What", "Play", "Sure"), (row,)))
    # Of a fourth column nobody would know what it answers.
    assert "* Mon 9 Aug: Tining, all greens. They stay open. Sure: No doubt.\n" in text


def test_what_is_folded_on_a_screen_lies_open_in_a_text() -> None:
    text = written(Folded("Why?", (Paragraph.of("Because."),)), Notes(("One.", "Two.")))
    assert "WHY?\n\nBecause.\n\n1. One.\n2. Two.\n" in text


def test_an_address_is_never_cut() -> None:
    assert ADDRESS in written(Paragraph.of(f"The latest word is on {ADDRESS}"))


def test_a_link_under_other_words_is_written_out() -> None:
    page = Run("our page", link="https://fallow.example")
    assert "See our page (https://fallow.example)." in written(
        Paragraph((Run("See "), page, Run(".")))
    )
    # An address that is its own link stands once.
    text = written(Paragraph.of("Write to office@fallow.example."))
    assert text.count("office@fallow.example") == 1


def test_a_draft_says_so_before_anything_else() -> None:
    lines = written(Paragraph.of("Words."), draft=True).splitlines()
    assert lines[4] == "DRAFT: not yet approved. Please do not send."


def test_there_are_never_more_than_two_blank_lines() -> None:
    assert "\n\n\n\n" not in written(Picture("x"), heading="Heading")
