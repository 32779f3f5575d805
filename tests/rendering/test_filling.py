"""A drawing that does not fit on a page gives way to what comes after it, and no further than that."""

from __future__ import annotations

import pytest

from notices.rendering.filling import LATEST, Piece, filled_order

PAGE = 100.0


def text(name: str, height: float) -> Piece:
    return Piece(name, height, whole=False)


def drawn(name: str, height: float) -> Piece:
    return Piece(name, height, whole=True)


def order(*pieces: Piece, movable: frozenset[str] = frozenset({"drawing"})) -> tuple[str, ...]:
    now = [piece.section for piece in pieces]
    return filled_order(pieces, movable, begin=0.0, page=PAGE, now=now)


def test_text_flows_before_a_drawing_that_would_leave_a_gap() -> None:
    """40 of 100 are used, and the drawing needs 80: 60 would be empty."""
    assert order(text("one", 40), drawn("drawing", 80), text("two", 60)) == (
        "one",
        "two",
        "drawing",
    )


def test_what_fits_stays_where_it_is() -> None:
    before = text("one", 20), drawn("drawing", 80), text("two", 60)
    assert order(*before) == ("one", "drawing", "two")


def test_a_small_gap_moves_nothing() -> None:
    """15 of 100 stay empty, and 0.15² = 0.02 is less than 0.3² = 0.09."""
    before = text("one", 85), drawn("drawing", 80), text("two", 15)
    assert order(*before) == ("one", "drawing", "two")


def test_what_may_not_move_does_not() -> None:
    before = text("one", 40), drawn("drawing", 80), text("two", 60)
    assert order(*before, movable=frozenset()) == ("one", "drawing", "two")


def test_it_moves_no_further_than_one_would_look_for_it() -> None:
    """Only after five texts of 12 it would fit: 40 + 5 × 12 = 100."""
    texts = [text(f"text {number}", 12) for number in range(1, 6)]
    found = order(text("one", 40), drawn("drawing", 80), *texts)
    assert found.index("drawing") <= 1 + LATEST


@pytest.mark.parametrize("begin", [0.0, 25.0])
def test_of_two_gaps_the_smaller_is_taken(begin: float) -> None:
    """What stands above the first section counts: 25 + 40 leave 35 empty, and 40 alone 60."""
    pieces = [text("one", 40), drawn("drawing", 80), text("two", 35 if begin else 60)]
    now = ("one", "drawing", "two")
    found = filled_order(pieces, frozenset({"drawing"}), begin, PAGE, now)
    assert found == ("one", "two", "drawing")


def test_an_order_that_is_nearly_as_good_is_kept() -> None:
    """As written, 60 stay empty. With the drawing after the second text 20 do: 0.2² < 0.3².

    After the third text 5 do: 40 + 40 + 15 = 95.
    """
    pieces = [text("one", 40), drawn("drawing", 80), text("two", 40), text("three", 15)]
    kept, moved = ("one", "two", "drawing", "three"), ("one", "two", "three", "drawing")
    for now, found in ((kept, kept), (("one", "drawing", "two", "three"), moved)):
        assert filled_order(pieces, frozenset({"drawing"}), 0.0, PAGE, now) == found
