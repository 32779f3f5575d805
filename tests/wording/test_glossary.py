"""Words of the trade: every one that a text uses is found, and the right one."""

from __future__ import annotations

import pytest

from notices.operations import CATALOGUE
from notices.paths import templates_folder
from notices.wording.blocks import KeyFact
from notices.wording.glossary import entries, glossary, terms_in, unexplained_in
from notices.wording.markdown_text import parse
from notices.wording.reading_ease import measure
from tests.wording.lint import faults_in

LANGUAGES = ("en-GB", "en-US")


@pytest.mark.parametrize("language", LANGUAGES)
def test_meanings_read_well(language: str) -> None:
    for entry in entries(language):
        assert faults_in(entry.meaning, language) == [], entry.term
        assert measure(entry.meaning).average <= 18
        # A word is not explained by itself.
        assert entry.explained_by, entry.term
    assert measure(" ".join(entry.meaning for entry in entries(language))).grade <= 8


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_order_is_that_of_the_alphabet_and_no_form_stands_twice(language: str) -> None:
    terms = [entry.term for entry in entries(language)]
    assert terms == sorted(terms, key=str.casefold)
    forms = [form for entry in entries(language) for form in entry.forms]
    assert len(forms) == len(set(forms))


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_kind_of_work_is_explained_but_those_with_plain_names(language: str) -> None:
    plain = {"feeding", "raising-the-height-of-cut"}
    for operation in CATALOGUE.values():
        path = templates_folder() / language / "operations" / f"{operation.slug}.md"
        title = parse(path.read_text("utf-8"))[0]["title"]
        found = terms_in([title], language)
        assert len(found) == (0 if operation.slug == "feeding" else 1), title
        if operation.slug not in plain:
            assert title.lower() in found[0].forms


@pytest.mark.parametrize(
    ("text", "terms"),
    [
        ("We start with deep solid tining.", ["deep solid tining"]),
        ("Deep solid tining, then solid tining.", ["deep solid tining", "solid tining"]),
        ("The hollow tines take cores.", ["core", "tine"]),
        ("The corers scored a score.", []),
        ("Preferred lies and temporary\ngreens.", ["preferred lies", "temporary green"]),
        ("A non-thatch word.", []),
    ],
)
def test_words_are_found(text: str, terms: list[str]) -> None:
    assert [entry.term for entry in terms_in([text], "en-GB")] == terms


@pytest.mark.parametrize(
    ("text", "terms"),
    [
        ("The thatch is 22 mm deep.", ["thatch"]),
        ("A layer like felt, called thatch, holds water. The thatch is deep.", []),
        ("We verticut on Monday.", ["verticutting"]),
        ("We verticut on Monday. Fine blades brush the surface.", []),
    ],
)
def test_words_that_a_text_leaves_unexplained(text: str, terms: list[str]) -> None:
    assert [entry.term for entry in unexplained_in(text, "en-GB")] == terms


def test_a_glossary_of_what_is_used() -> None:
    made = glossary(["The thatch is deep.", "We use a wetting agent."], "en-GB")
    assert made is not None
    assert made.rows == (
        KeyFact("Thatch", "A layer of dead roots and stems just below the grass."),
        KeyFact("Wetting agent", "A product that helps water to soak in evenly."),
    )
    assert glossary(["Nothing of the kind."], "en-GB") is None
