"""Lists and counts as one says them."""

from __future__ import annotations

import pytest

from notices.wording.lists import and_list, counted, number, sentence, span, with_the


@pytest.mark.parametrize(
    ("items", "said"),
    [
        ([], ""),
        (["sand"], "sand"),
        (["holes", "sand"], "holes and sand"),
        (["slits", "holes", "sand"], "slits, holes and sand"),
    ],
)
def test_lists(items: list[str], said: str) -> None:
    assert and_list(items) == said


def test_a_list_joined_by_other_words() -> None:
    assert and_list(["in May", "in June"], "and again") == "in May and again in June"


@pytest.mark.parametrize(
    ("count", "said"),
    [(0, "no"), (1, "one"), (2, "two"), (10, "ten"), (11, "11"), (1234, "1,234")],
)
def test_numbers(count: int, said: str) -> None:
    assert number(count) == said


@pytest.mark.parametrize(
    ("count", "said"),
    [
        (0, "no greens"),
        (1, "one green"),
        (2, "two greens"),
        (11, "11 greens"),
        (1234, "1,234 greens"),
    ],
)
def test_counts(count: int, said: str) -> None:
    assert counted(count, "green") == said


def test_a_count_of_what_has_a_plural_of_its_own() -> None:
    assert counted(1, "turf", "turves") == "one turf"
    assert counted(2, "turf", "turves") == "two turves"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", ""),
        ("  ", ""),
        ("sand", "Sand."),
        ("sand.", "Sand."),
        (" is it? ", "Is it?"),
        ("École", "École."),
        ("18 greens", "18 greens."),
        ("iPad is a name, and begins a sentence", "IPad is a name, and begins a sentence."),
    ],
)
def test_sentences(text: str, said: str) -> None:
    assert sentence(text) == said


def test_a_span_is_in_words_or_in_figures_and_never_in_both() -> None:
    assert span(2, 3, "or") == "two or three"
    assert span(8, 10) == "eight to ten"
    assert span(10, 12) == "10 to 12"


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("Greens committee", "the Greens committee"),
        ("clubhouse board and website", "the clubhouse board and website"),
        ("Course Manager", "the Course Manager"),
        # An article or a possessive is there already.
        ("the Board", "the Board"),
        ("our website", "our website"),
        ("the club’s website", "the club’s website"),
        # People, addresses and what needs no article.
        ("Jo Ames", "Jo Ames"),
        ("Jo Ames, Course Manager", "Jo Ames, Course Manager"),
        ("email", "email"),
        ("https://www.fallow.example/board", "https://www.fallow.example/board"),
        ("", ""),
    ],
)
def test_an_article_for_what_is_named_as_on_a_form(typed: str, said: str) -> None:
    assert with_the(typed) == said
