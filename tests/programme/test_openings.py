"""What each work opens, as drawings measure it."""

from __future__ import annotations

from notices.operations import Opening
from notices.programme.openings import Cut, Moment, cuts
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


def test_how_wide_it_looks_later() -> None:
    fill = work("top dressing", DAY, settings={"fill": "holes"})
    got = found(work("hollow tining", DAY), work("scarifying", DAY), fill)
    cores, slits = got["hollow tining"], got["scarifying"]
    assert [cores.width_at(moment) for moment in Moment] == [13, 13, 0]
    assert [slits.width_at(moment) for moment in Moment] == [3, 1.5, 0]


def test_drains_lie_under_turf_that_is_put_back() -> None:
    (trench,) = found(work("drain trenching", DAY)).values()
    assert trench.kind is Opening.TRENCHES
    assert [trench.width_at(moment) for moment in Moment] == [100, 100, 0]
