"""Recovery: promises told apart, both of their dates, winter, and every letter in its place."""

from __future__ import annotations

import pytest

from notices.drawings.model import Drawing
from notices.drawings.recovery import recovery_chart
from notices.drawings.sizes import PAGE, PHONE, Sizes
from notices.wording.words import Words
from tests.drawings.clubs import NAMES, words_of
from tests.drawings.metrics import assert_well_set, faults, texts_in
from tests.wording.small_plans import MILD_WINTER, plan, words, work


def drawn(told: Words, sizes: Sizes = PAGE) -> Drawing:
    """Draw the first period."""
    drawing = recovery_chart(told, told.programme.periods[0], sizes)
    assert drawing is not None
    return drawing


def said(drawing: Drawing) -> list[str]:
    return [placed.text for placed in texts_in(drawing.svg)]


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("sizes", [PAGE, PHONE], ids=["page", "phone"])
def test_every_letter_is_in_its_place(name: str, sizes: Sizes) -> None:
    told = words_of(name)
    drawings = [recovery_chart(told, period, sizes) for period in told.programme.periods]
    for drawing in drawings:
        assert drawing is not None
        assert drawing.width == sizes.width
        assert faults(drawing.svg) == []
    if drawings and drawings[-1] and sizes is PHONE:
        assert_well_set(drawings[-1].svg)


def test_three_promises_by_word_and_both_dates() -> None:
    told = words(
        plan(
            work("hollow tining", "2027-08-09", reserve_dates="2027-08-11"),
            temperatures=MILD_WINTER,
        )
    )
    drawing = drawn(told)
    texts = said(drawing)
    assert {"Open again", "Putting well", "Fully healed"} <= set(texts)
    # Closed until the next morning; two days later if it rains.
    assert "Tue 10 Aug, at worst Thu 12 Aug" in texts
    assert "Open again, all greens: Tue 10 Aug, at worst Thu 12 Aug." in drawing.description
    (period,) = told.programme.periods
    worst = period.putting_well.at_worst
    assert worst is not None
    assert any(f"at worst {told.dates.short_day(worst)}" in text for text in texts)


def test_each_promise_has_a_shape_of_its_own() -> None:
    """Squares, circles and diamonds: filled in the accent, hollow on paper."""
    svg = drawn(words(plan(work("hollow tining", "2027-08-09", reserve_dates="2027-08-11")))).svg
    for tag, times in (("<circle", 4), ("L", 4)):
        assert svg.count(tag) >= times
    assert 'fill="#ffffff" stroke="#7a4a1e"' in svg


def test_winter_is_said_with_its_dates() -> None:
    told = words(plan(work("hollow tining", "2027-10-25")))
    drawing = drawn(told)
    season = told.programme.season
    assert season is not None
    stops = season.rests[0].stops
    assert stops is not None
    assert f"Growth stops about {told.dates.month_day(stops)}" in " ".join(said(drawing))
    assert f"Growth stops about {told.dates.day(stops)}" in drawing.description


def test_in_the_middle_of_winter_only_its_end_is_said() -> None:
    told = words(plan(work("hollow tining", "2028-01-17")))
    assert "No growth until about" in " ".join(said(drawn(told)))


def test_no_winter_no_words_on_it() -> None:
    drawing = drawn(words(plan(work("hollow tining", "2027-10-25"), temperatures=MILD_WINTER)))
    assert "growth" not in " ".join(said(drawing)).replace("Growth of grass", "").casefold()


def test_where_it_may_never_heal_an_arrow_and_words_say_so() -> None:
    """At 3 °C all year growth is exp(−½ × (15 ÷ 5.5)²) = 0.024 of the best."""
    told = words(plan(work("hollow tining", "2027-10-25"), temperatures=[3.0] * 12))
    (period,) = told.programme.periods
    assert period.fully_healed.at_worst is None
    drawing = drawn(told)
    assert "No growth" in said(drawing)
    assert any("at worst later than we can say" in text for text in said(drawing))
    assert "with no date at worst" in drawing.description
    assert_well_set(drawing.svg)


def test_many_fixtures_are_flags_without_names() -> None:
    fixtures = [
        {"name": f"Medal {day}", "date": f"2027-08-{day}", "kind": "competition"}
        for day in range(10, 20)
    ]
    told = words(plan(work("hollow tining", "2027-08-09"), fixtures=fixtures))
    drawing = drawn(told)
    assert not [text for text in said(drawing) if text.startswith("Medal")]
    assert "Medal 12 (competition): Thursday 12 August." in drawing.description
    few = words(plan(work("hollow tining", "2027-08-09"), fixtures=fixtures[:2]))
    assert {"Medal 10", "Medal 11"} <= set(said(drawn(few)))


def test_work_that_opens_nothing_has_no_chart() -> None:
    told = words(plan(work("brushing", "2027-08-09")))
    assert [recovery_chart(told, period) for period in told.programme.periods] == [None]
