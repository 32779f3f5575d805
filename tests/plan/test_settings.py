from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.operations import CATALOGUE, SettingValue
from notices.plan.settings import read_settings, write_settings
from tests.plan import strategies

HOLLOW = CATALOGUE["hollow tining"]


@pytest.mark.parametrize(
    ("operation", "typed", "values"),
    [
        ("hollow tining", {}, {}),
        (
            "hollow tining",
            {"tine_diameter": "1/2 in", "spacing": "2 x 3 in", "depth": "7.5 cm", "passes": 2},
            # 25.4 mm to the inch, by definition.
            {"tine_diameter": 12.7, "spacing": (50.8, 76.2), "depth": 75.0, "passes": 2},
        ),
        ("mole ploughing", {"spacing": "1 m"}, {"spacing": 1000.0}),
        ("top dressing", {"rate": "700 g/m2"}, {"rate": 0.7}),
        ("top dressing", {"fill": "Holes"}, {"fill": "holes"}),
        ("turfing", {"area": "45 m2"}, {"area": 45.0}),
        ("feeding", {"product": " 6-0-12 "}, {"product": "6-0-12"}),
        ("overseeding", {"seed": 5}, {"seed": "5"}),
    ],
)
def test_reads_settings_into_the_units_of_the_catalogue(
    operation: str, typed: dict[str, object], values: dict[str, SettingValue]
) -> None:
    assert read_settings(CATALOGUE[operation], typed) == (values, [])


@pytest.mark.parametrize(
    ("operation", "typed", "names"),
    [
        ("hollow tining", {"rate": "1 kg/m2"}, ["rate"]),
        ("hollow tining", {"depth": "50 kg/m2"}, ["depth"]),
        ("hollow tining", {"depth": None}, ["depth"]),
        ("hollow tining", {"depth": "9.9 mm"}, ["depth"]),
        ("hollow tining", {"spacing": "50 x 301 mm"}, ["spacing"]),
        ("brushing", {"passes": 0}, ["passes"]),
        ("brushing", {"passes": 7}, ["passes"]),
        ("feeding", {"product": ""}, ["product"]),
        ("feeding", {"product": True}, ["product"]),
        ("top dressing", {"fill": "slits"}, ["fill"]),
        ("top dressing", {"fill": ["holes"]}, ["fill"]),
        # Beside a default: the usual hollow tine is 13 mm, the usual drain 100 mm wide.
        ("hollow tining", {"inside_diameter": "13 mm"}, ["inside_diameter"]),
        ("deep solid tining", {"spacing": "18 mm"}, ["spacing"]),
        ("drain trenching", {"width": "600 mm", "spacing": "500 mm"}, ["spacing"]),
        ("slitting", {"blade_width": "9 mm", "blade_spacing": "8 mm"}, ["blade_spacing"]),
        ("drill and fill", {"hole_diameter": "50 mm", "spacing": "50 mm"}, ["spacing"]),
        # One mistake is told once: no doubts about the inside of a tine that nobody can have.
        (
            "hollow tining",
            {"tine_diameter": "99 mm", "inside_diameter": "20 mm"},
            ["tine_diameter"],
        ),
        ("raising the height of cut", {"from": "5 mm", "to": "5 mm"}, ["to"]),
    ],
)
def test_refuses_what_cannot_be(operation: str, typed: dict[str, object], names: list[str]) -> None:
    assert [problem.name for problem in read_settings(CATALOGUE[operation], typed)[1]] == names


@pytest.mark.parametrize(
    ("operation", "typed"),
    [
        ("clean-up cut", {"from": "5 mm", "to": "5 mm"}),
        ("hollow tining", {"depth": "10 mm"}),
        ("hollow tining", {"depth": "150 mm"}),
        ("hollow tining", {"inside_diameter": "12.9 mm"}),
        ("hollow tining", {"tine_diameter": "20 mm", "inside_diameter": "16 mm"}),
        ("top dressing", {"fill": "holes", "dressings": 8, "days_between": 60}),
    ],
)
def test_lets_pass_what_lies_on_the_edge(operation: str, typed: dict[str, object]) -> None:
    assert read_settings(CATALOGUE[operation], typed)[1] == []


def test_an_unlikely_value_is_named_with_its_limits() -> None:
    (problem,) = read_settings(HOLLOW, {"depth": "20 in"})[1]
    assert problem.message == '508 mm is not a likely "depth" of hollow tining'
    assert problem.suggestion == "It should lie between 10 mm and 150 mm"


@given(data=st.data())
def test_settings_are_the_same_when_written_and_read_again(data: st.DataObject) -> None:
    operation = CATALOGUE[data.draw(st.sampled_from(sorted(CATALOGUE)))]
    values, problems = read_settings(operation, data.draw(strategies.settings_of(operation)))
    assert problems == []
    assert read_settings(operation, write_settings(operation, values)) == (values, [])


def test_settings_that_were_not_read_yet_stand_as_typed() -> None:
    assert write_settings(HOLLOW, {"depth": "2 in", "what": [1]}) == {"depth": "2 in", "what": [1]}
