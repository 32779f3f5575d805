"""The line below a message: what of it is shown, and where the caret stands."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.excerpt import WIDEST, excerpt

TEN = "0123456789"


@pytest.mark.parametrize(
    ("line", "column", "shown", "caret"),
    [
        ("area: 480", 7, "area: 480", "      ^"),
        ("area: 480", 1, "area: 480", "^"),
        # Behind the end: something is missing there.
        ("area:", 6, "area:", "     ^"),
        ("area:", 99, "area:", "     ^"),
        ("area:", 0, "area:", "^"),
        ("", 1, "", "^"),
        # A tab goes to the next multiple of four.
        ("\tx", 2, "    x", "    ^"),
        ("ab\tx", 4, "ab  x", "    ^"),
        # The signs of East Asia take two columns, an accent of its own none.
        ("球: x", 4, "球: x", "    ^"),
        ("e\u0301: x", 5, "e\u0301: x", "   ^"),
        # What a terminal would obey is shown as a dot.
        ("a\x1b[31mb", 7, "a·[31mb", "      ^"),
        ("a\u202eb", 3, "a·b", "  ^"),
        ("a\u00a0b", 3, "a\u00a0b", "  ^"),
    ],
)
def test_the_caret_stands_below_the_spot(line: str, column: int, shown: str, caret: str) -> None:
    assert excerpt(line, column) == (shown, caret)


def test_a_long_line_is_cut_around_the_spot() -> None:
    line = TEN * 10
    # Twenty columns, two of them for the signs of cutting: nine digits before the fiftieth
    # character, which is a 9, and nine from there.
    assert excerpt(line, 50, widest=20) == ("…012345678901234567…", " " * 10 + "^")
    assert excerpt(line, 50, widest=20)[0][10] == "9"
    # At either end as much is shown as there is room for.
    assert excerpt(line, 1, widest=20) == (f"{TEN}01234567…", "^")
    assert excerpt(line, 100, widest=20) == (f"…23456789{TEN}", " " * 18 + "^")


@given(
    line=st.text(st.characters(exclude_characters="\r\n"), max_size=300), column=st.integers(0, 320)
)
def test_any_line_fits_a_terminal(line: str, column: int) -> None:
    shown, caret = excerpt(line, column)
    assert len(caret) <= WIDEST + 1
    assert all(sign.isprintable() or sign.isspace() for sign in shown)
    assert "\n" not in shown


def test_a_line_of_a_megabyte_is_no_matter() -> None:
    shown, caret = excerpt("x" * 5_000_000 + "y" + "x" * 5_000_000, 5_000_001)
    assert shown[len(caret) - 1] == "y"
    assert len(shown) <= WIDEST
