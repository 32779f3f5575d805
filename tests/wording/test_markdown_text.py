"""Markdown becomes blocks of words; what is not a block that we know stays words."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.wording.blocks import Block, Bullets, Heading, Paragraph, Run, Runs, linked
from notices.wording.markdown_text import parse


def lines_in(blocks: tuple[Block, ...]) -> Iterator[Runs]:
    for block in blocks:
        match block:
            case Paragraph(runs):
                yield runs
            case Bullets(items):
                yield from items
            case Heading(text, _):
                yield (Run(text),)
            case _:
                pytest.fail(f"Markdown gives no {block}")


def runs_in(blocks: tuple[Block, ...]) -> Iterator[Run]:
    for line in lines_in(blocks):
        yield from line


def said(text: str) -> str:
    """All words of a text, whatever block they stand in, with a blank between two lines."""
    return " ".join("".join(run.text for run in line) for line in lines_in(parse(text)[1]))


def test_front_matter_and_sections() -> None:
    meta, blocks = parse("title: Rolling\nline: We press it smooth.\n\n## Why\nIt settles.\n")
    assert meta == {"title": "Rolling", "line": "We press it smooth."}
    assert blocks == (Heading("Why", 2), Paragraph((Run("It settles."),)))


def test_a_text_without_front_matter() -> None:
    assert parse("It settles.") == ({}, (Paragraph((Run("It settles."),)),))


def test_an_empty_text() -> None:
    assert parse("") == ({}, ())


def test_styles() -> None:
    (block,) = parse("Some **bold** and *leaning* words")[1]
    assert block == Paragraph(
        (
            Run("Some "),
            Run("bold", strong=True),
            Run(" and "),
            Run("leaning", emphasis=True),
            Run(" words"),
        )
    )


def test_lines_that_only_the_source_breaks_are_joined() -> None:
    (block,) = parse("one\ntwo\nthree")[1]
    assert block == Paragraph((Run("one two three"),))


@pytest.mark.parametrize(
    "address", ["https://club.example/a?b=1&c=2", "mailto:office@club.example"]
)
def test_links(address: str) -> None:
    (block,) = parse(f"See [our page]({address}).")[1]
    assert isinstance(block, Paragraph)
    assert Run("our page", link=address) in block.runs


@pytest.mark.parametrize(
    "address",
    [
        "javascript:alert(1)",
        "JavaScript:alert(1)",
        "data:text/html,hello",
        "http://club.example",
        "file:///etc/passwd",
        "//club.example",
        "HTTPS://club.example",
        "/index.html",
    ],
)
def test_other_addresses_are_no_links(address: str) -> None:
    runs = list(runs_in(parse(f"See [our page]({address}).")[1]))
    assert "our page" in "".join(run.text for run in runs)
    assert {run.link for run in runs} == {""}


@pytest.mark.parametrize("mark", ["*", "-", "1."])
def test_lists(mark: str) -> None:
    (block,) = parse(f"{mark} first\n{mark} second **here**")[1]
    assert block == Bullets(((Run("first"),), (Run("second "), Run("here", strong=True))))


def test_a_list_within_a_list_keeps_its_words_apart() -> None:
    assert said("* first\n    * inner\n* second").split() == ["first", "inner", "second"]


@pytest.mark.parametrize(
    "html",
    [
        "<script>alert(1)</script>",
        '<img src="x" onerror="alert(1)">',
        "<b>bold</b>",
        '<a href="https://club.example">here</a>',
        "<!-- hidden -->",
        "<style>p { display: none }</style>",
        "a < b & c > d",
    ],
)
def test_html_is_words_like_any_other(html: str) -> None:
    assert said(f"Before {html} after") == f"Before {html} after"
    # As a block of its own too.
    assert said(f"Before\n\n{html}\n\nafter") == f"Before {html} after"


def test_html_hides_no_link() -> None:
    assert {run.link for run in runs_in(parse('<a href="https://club.example">x</a>')[1])} == {""}


def test_entities_stay_as_typed() -> None:
    assert said("Fish &amp; chips &#60;b&#62; &copy;") == "Fish &amp; chips &#60;b&#62; &copy;"


def test_pictures_are_not_shown() -> None:
    blocks = parse("Look at ![a map](https://club.example/map.png) here")[1]
    assert "a map" in "".join(run.text for run in runs_in(blocks))


def test_the_library_s_own_marks_come_out_of_nowhere() -> None:
    text = said("one\x02two\x03 \x02amp\x03 \\* \x02wzxhzdk:0\x03 three")
    assert "\x02" not in text
    assert "\x03" not in text
    assert text.startswith("onetwo")
    assert text.endswith("three")


def test_an_escaped_sign_is_that_sign() -> None:
    assert said(r"5 \* 3 \_not leaning\_") == "5 * 3 _not leaning_"


def test_code_keeps_its_words() -> None:
    assert said("use `notices <build>` now") == "use notices <build> now"
    assert said("before\n\n    indented <code>\n\nafter").split() == [
        "before",
        "indented",
        "<code>",
        "after",
    ]


def test_a_quotation_is_paragraphs() -> None:
    assert parse("> said so")[1] == (Paragraph((Run("said so"),)),)


def test_a_rule_is_nothing() -> None:
    assert parse("one\n\n---\n\ntwo")[1] == (Paragraph((Run("one"),)), Paragraph((Run("two"),)))


SIGNS = st.sampled_from(
    [
        "*",
        "_",
        "#",
        "[",
        "]",
        "(",
        ")",
        "<",
        ">",
        "&",
        "`",
        "\\",
        "!",
        "\n",
        "\n\n",
        "    ",
        "- ",
        "1. ",
        "> ",
        "\x02",
        "\x03",
        "https://a.example",
        "mailto:a@b.example",
        "javascript:x",
        ":",
        "<script>",
        "</script>",
        "<img src=x>",
        "&lt;",
        "amp",
        "wzxhzdk:0",
        "klzzwxh:0",
        " ",
        "word",
        "===",
        "---",
        "title: ",
        '"',
        "{{ x }}",
        "{% y %}",
    ]
)


@given(st.lists(SIGNS | st.text(max_size=5), max_size=30).map("".join))
def test_whatever_is_typed_gives_words_and_safe_links(text: str) -> None:
    for run in runs_in(parse(text)[1]):
        assert run.link == "" or run.link.startswith(("https://", "mailto:"))
        assert not set("\x02\x03\n") & set(run.text)


@pytest.mark.parametrize(
    ("text", "links"),
    [
        ("Ask in the clubhouse.", []),
        ("Write to office@club.example.", [("office@club.example", "mailto:office@club.example")]),
        (
            "See https://club.example/news, or write to a.b+c@club.example!",
            [
                ("https://club.example/news", "https://club.example/news"),
                ("a.b+c@club.example", "mailto:a.b+c@club.example"),
            ],
        ),
        ("http://club.example is not safe", []),
        ("javascript:alert(1)", []),
        ("(https://club.example)", [("https://club.example", "https://club.example")]),
    ],
)
def test_addresses_in_plain_words_become_links(text: str, links: list[tuple[str, str]]) -> None:
    runs = linked(text)
    assert "".join(run.text for run in runs) == text
    assert [(run.text, run.link) for run in runs if run.link] == links


@given(
    st.lists(st.sampled_from(["@", ".", "https://", "a", "<", '"', " ", ":", "\n"])).map("".join)
)
def test_linking_changes_no_word(text: str) -> None:
    runs = linked(text)
    assert "".join(run.text for run in runs) == text
    for run in runs:
        assert run.link in ("", run.text, f"mailto:{run.text}")
