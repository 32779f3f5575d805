"""Names of figures: whole ones, parts of them, and slips of the pen."""

from __future__ import annotations

import pytest

from notices.errors import UnknownFigure
from notices.programme.figure_names import find_figure
from tests.wording.test_explain import PLAN, ProgrammeOf


@pytest.mark.parametrize(
    ("name", "identity"),
    [
        ("hollow-tining-1/holes/2", "hollow-tining-1/holes/2"),
        ("HOLES/2", "hollow-tining-1/holes/2"),
        ("lorry loads", "all/lorry-loads/all"),
        ("holes per m2", "hollow-tining-1/holes-per-m2/all"),
    ],
)
def test_ways_to_name_a_figure(programme_of: ProgrammeOf, name: str, identity: str) -> None:
    assert find_figure(programme_of(PLAN).figures, name).id == identity


def test_several_figures_of_one_name_are_listed(programme_of: ProgrammeOf) -> None:
    with pytest.raises(UnknownFigure) as caught:
        find_figure(programme_of(PLAN).figures, "material removed")
    assert "hollow-tining-1/material-removed/all" in str(caught.value)
    assert "figures have this name" in str(caught.value)


def test_a_slip_of_the_pen_is_met_with_what_is_near(programme_of: ProgrammeOf) -> None:
    with pytest.raises(UnknownFigure, match="hollow-tining-1/holes-per-m2/all"):
        find_figure(programme_of(PLAN).figures, "hollow-tinning-1/holes-per-m2/all")


def test_one_green_stands_for_all_among_what_is_near(programme_of: ProgrammeOf) -> None:
    with pytest.raises(UnknownFigure) as caught:
        find_figure(programme_of(PLAN).figures, "holes of tining")
    near = [line.strip().rpartition("/")[0] for line in str(caught.value).splitlines()[1:]]
    assert len(near) == len(set(near)) > 1


@pytest.mark.parametrize("name", ["", " ", "/", "…", "100 % of it"])
def test_any_name_gets_an_answer(programme_of: ProgrammeOf, name: str) -> None:
    with pytest.raises(UnknownFigure):
        find_figure(programme_of(PLAN).figures, name)
