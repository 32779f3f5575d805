"""What a text is made of."""

from __future__ import annotations

import pytest

from notices.wording.blocks import KeyFact


@pytest.mark.parametrize(
    ("stands_out", "strong"),
    [
        ("Monday 4 May", ["Monday 4 May"]),
        # In a text that ends with them, and in one that does not have them.
        ("Friday 8 May.", ["Friday 8 May."]),
        ("Tuesday 5 May", []),
        ("", []),
    ],
)
def test_words_of_a_fact_stand_out_and_none_is_lost(stands_out: str, strong: list[str]) -> None:
    fact = KeyFact(
        "Putting well", "Expect all by Monday 4 May. At worst, Friday 8 May.", stands_out
    )
    assert [run.text for run in fact.runs if run.strong] == strong
    assert "".join(run.text for run in fact.runs) == fact.text
    assert all(run.text for run in fact.runs)
