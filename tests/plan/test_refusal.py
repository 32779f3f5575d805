from __future__ import annotations

from notices.plan.refusal import Refusal


def test_both_sentences_are_kept_apart() -> None:
    refusal = Refusal('"480" has no unit', 'write "480 m2"')
    assert refusal.sentences == ('"480" has no unit', 'Write "480 m2"')
    # In one line they stand as somebody would say them.
    assert str(refusal) == '"480" has no unit: write "480 m2"'


def test_there_may_be_nothing_to_suggest() -> None:
    assert Refusal("this is empty").sentences == ("this is empty", "")
    assert str(Refusal("this is empty")) == "this is empty"
