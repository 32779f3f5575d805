"""What is said beside the drawings of the ground."""

from __future__ import annotations

import pytest

from notices.wording.below_ground import share
from tests.wording.small_plans import plan, words, work


@pytest.mark.parametrize(("tag", "said"), [("en-GB", "4.5 %"), ("en-US", "4.5%")])
def test_a_share_is_written_as_the_language_writes_it(tag: str, said: str) -> None:
    """Tines of 12 mm every 50 mm: π × 6² / 50² = 113.1 / 2500 = 4.5 %."""
    settings = {"tine_diameter": "12 mm", "spacing": "50 x 50 mm"}
    told = words(
        plan(work("hollow tining", "2027-08-09", settings=settings), club={"language": tag})
    )
    (it,) = told.programme.works
    assert share(told, it) == said
