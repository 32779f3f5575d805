"""What each work opens, as drawings measure it."""

from __future__ import annotations

import pytest

from notices.operations import Opening
from notices.programme.openings import Cut, StageOfHealing, closed, cuts
from tests.wording.small_plans import plan, programme, work

DAY = "2027-08-09"


def found(*works: dict[str, object]) -> dict[str, Cut]:
    worked_out = programme(plan(*works))
    return {cut.work.operation.name: cut for cut in cuts(worked_out.works, worked_out)}


def test_the_sizes_are_the_settings_the_deepest_first() -> None:
    got = found(
        work("scarifying", DAY, settings={"blade_width": "2 mm", "blade_spacing": "40 mm"}),
        work("hollow tining", DAY, settings={"spacing": "60 x 50 mm", "depth": "70 mm"}),
        work("mole ploughing", DAY),
        work("top dressing", DAY),
        work("rolling", DAY),
    )
    assert list(got) == ["mole ploughing", "hollow tining", "scarifying"]
    moles, cores, slits = got.values()
    assert (moles.channel, moles.depth, moles.across) == (45, 300, 1000)
    assert moles.bottom == 300 + 45 / 2
    assert (cores.width, cores.depth, cores.along, cores.across) == (13, 70, 60, 50)
    assert (slits.width, slits.depth, slits.along, slits.across) == (2, 20, 0, 40)


def test_sand_goes_to_the_bottom_but_not_of_deep_holes() -> None:
    """Of deep solid holes it fills the top 60 mm; slits it does not fill."""
    fill = work("top dressing", DAY, settings={"fill": "holes"})
    names = ("hollow tining", "deep solid tining", "scarifying")
    filled = found(*(work(name, DAY) for name in names), fill)
    assert [filled[name].filled for name in names] == [75, 60, 0]
    unfilled = found(*(work(name, DAY) for name in names))
    assert [unfilled[name].filled for name in names] == [0, 0, 0]
    assert found(work("drill and fill", DAY))["drill and fill"].filled == 250


AT_ITS_BEST = [18.0] * 12
"""Each day brings a whole growth day to a British green, whose optimum is 18 °C."""


def how_far_closed(*works: dict[str, object]) -> dict[str, list[float]]:
    worked_out = programme(plan(*works, temperatures=AT_ITS_BEST))
    (period,) = worked_out.periods
    return {
        cut.work.operation.name: [
            closed(cut, period, moment, worked_out) for moment in StageOfHealing
        ]
        for cut in cuts(worked_out.works, worked_out)
    }


def test_it_closes_as_the_grass_grows() -> None:
    """Holes of 13 mm: 13 ÷ (2 × 0.6) = 10.83, so eleven days; half of that, 5.42, so six days."""
    got = how_far_closed(work("hollow tining", DAY))
    assert got == {"hollow tining": [0, pytest.approx(6 / 11), 1]}


def test_what_has_healed_is_gone_when_the_green_putts_smoothly() -> None:
    """Slits 3 mm wide and 20 mm deep decide: 2 × 12.7 ÷ (2 × 0.6) = 21.17, so 22 days to heal.

    Half of it, 10.58, is eleven days to putt smoothly; by then the cores have healed.
    """
    fill = work("top dressing", DAY, settings={"fill": "holes"})
    got = how_far_closed(work("hollow tining", DAY), work("scarifying", DAY), fill)
    assert got == {"hollow tining": [0, 1, 1], "scarifying": [0, pytest.approx(11 / 22), 1]}


def test_what_healed_before_the_last_work_is_not_there_just_after_it() -> None:
    """Needle tines of 6 mm close in 6 ÷ (2 × 0.6) = 5 days; scarifying takes eight."""
    needles = work("needle tining", "2027-08-09", settings={"tine_diameter": "6 mm"})
    slits = work("scarifying", "2027-08-09 to 2027-08-16", greens="1-8")
    got = how_far_closed(needles, slits)
    assert got["needle tining"] == [1, 1, 1]
    assert got["scarifying"][0] == 0


def test_drains_lie_under_turf_that_is_put_back() -> None:
    """Its seams are gone after 18 weeks of growth, and it putts smoothly after eight."""
    trench = work("drain trenching", DAY)
    (cut,) = found(trench).values()
    assert cut.kind is Opening.TRENCHES
    # 6 to 10 weeks and 10 to 26, in the middle 8 and 18, of 7 × 0.75 growth days each, of which a
    # day brings one: 42 and 94.5.
    assert how_far_closed(trench)["drain trenching"] == [0, pytest.approx(42 / 95), 1]
