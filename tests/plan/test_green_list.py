from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.plan.green_list import GreenRef, format_greens, parse_greens


@pytest.mark.parametrize(
    ("typed", "greens"),
    [
        ("1-3, 12", (1, 2, 3, 12)),
        ("1-2, 9, Putting green", (1, 2, 9, "Putting green")),
        (7, (7,)),
        ("7", (7,)),
        ("07", (7,)),
        ("1 to 3", (1, 2, 3)),
        ("1–3", (1, 2, 3)),
        ("1 - 3", (1, 2, 3)),
        ("18, 1-2", (18, 1, 2)),
        ([1, "3-4", "Putting green"], (1, 3, 4, "Putting green")),
        ("Par-3 green A, 9A", ("Par-3 green A", "9A")),
        ("  Putting \n green ", ("Putting green",)),
        ("2nd putting green", ("2nd putting green",)),
        ("Prés-Hauts", ("Prés-Hauts",)),
    ],
)
def test_reads(typed: object, greens: tuple[GreenRef, ...]) -> None:
    assert parse_greens(typed) == greens


def test_reads_the_longest_range() -> None:
    assert parse_greens("1-72") == tuple(range(1, 73))


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ("1-", '"1-" has no last green: write a range such as "1-9"'),
        ("-9", '"-9" has no first green: write a range such as "1-9"'),
        ("9-1", '"9-1" runs backwards: write "1-9"'),
        ("3-3", '"3-3" is one green only: write "3"'),
        ("0-3", '"0-3" is not a green: greens count from 1'),
        (0, '"0" is not a green: greens count from 1'),
        (-3, '"-3" is not a green: greens count from 1'),
        ("480", '"480" is too high for a green: the highest is 99'),
        ("9" * 5000, "is too high for a green: the highest is 99"),
        ("1-80", '"1-80" is 80 greens: the longest range is 72'),
        ("1-9, 7", "green 7 stands twice in the list: name each green once"),
        ("Putting green, putting GREEN", '"putting GREEN" stands twice in the list'),
        ("1,,2", '"1,,2" has a comma with no green beside it: take the comma out'),
        ("1, 2,", "has a comma with no green beside it"),
        ("1 2 3", '"1 2 3" misses commas: write "1, 2, 3"'),
        ("1 and 2", '"1 and 2" misses commas: write "1, 2"'),
        ("1; 2", '"1; 2" misses commas: write "1, 2"'),
        ("1-2-3", '"1-2-3" is neither a green nor a range'),
        ("1.5", '"1.5" is neither a green nor a range'),
        ("greens 1-9", '"greens 1-9" needs its numbers only: write "1-9"'),
        ("Hole 7", '"Hole 7" needs its numbers only: write "7"'),
        ("1-9 Putting green", '"1-9 Putting green" misses a comma: write "1-9, Putting green"'),
        ("", "this names no green: list the greens such as"),
        ([], "this names no green"),
        ("***", '"***" is neither a number nor a name'),
        ("Putting\u200bgreen", "holds invisible characters"),
        ("x" * 61, "is too long for the name of a green"),
        (1.5, '"1.5" is no list of greens'),
        (True, '"true" is no list of greens'),
        (None, '"" is no list of greens'),
        ({"a": 1}, '"{…}" is no list of greens'),
        ([[1]], '"[…]" is no list of greens'),
    ],
)
def test_refuses_in_words(typed: object, message: str) -> None:
    with pytest.raises(ValueError, match=r".") as caught:
        parse_greens(typed)
    assert message in str(caught.value)
    assert not str(caught.value).endswith(".")


@pytest.mark.parametrize(
    ("greens", "words"),
    [
        ((1, 2, 3, 4, 5, 6, 9, "Putting green"), "1-6, 9, Putting green"),
        ((1, 2), "1, 2"),
        ((3, 2, 1), "3, 2, 1"),
        (("Putting green", 1, 2, 3), "Putting green, 1-3"),
        ((), ""),
        (tuple(range(1, 100)), "1-72, 73-99"),
    ],
)
def test_writes_runs_as_ranges_in_the_order_given(greens: tuple[GreenRef, ...], words: str) -> None:
    assert format_greens(greens) == words


@given(st.lists(st.integers(1, 99) | st.sampled_from(["Putting green", "Par-3 A"]), unique=True))
def test_reads_back_what_it_writes(greens: list[GreenRef]) -> None:
    if greens:
        assert parse_greens(format_greens(greens)) == tuple(greens)


likely = st.text(st.sampled_from("0123456789-–,; ato.PG"), max_size=20)


@given(st.text() | likely | st.integers() | st.floats() | st.lists(likely))
def test_refuses_or_reads_back(typed: object) -> None:
    try:
        greens = parse_greens(typed)
    except ValueError as error:
        assert "Traceback" not in str(error)  # noqa: PT017, any other error fails the test
    else:
        assert parse_greens(format_greens(greens)) == greens
