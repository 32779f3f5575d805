"""Settings in words: what the machine is set to, and nothing that says nothing."""

from __future__ import annotations

import pytest

from notices.wording.settings import depth_in_words, settings_in_words
from tests.wording.small_plans import plan, words, work


@pytest.mark.parametrize(
    ("operation", "settings", "said", "depth"),
    [
        (
            "hollow tining",
            {
                "tine_diameter": "13 mm",
                "inside_diameter": "10 mm",
                "spacing": "50 x 60 mm",
                "depth": "75 mm",
                "passes": 2,
            },
            "Tines 13 mm wide, cores 10 mm wide, 50 mm by 60 mm apart, two passes",
            "75 mm",
        ),
        (
            "scarifying",
            {"blade_width": "2 mm", "blade_spacing": "40 mm", "depth": "20 mm"},
            "Blades 2 mm wide, 40 mm apart",
            "20 mm",
        ),
        (
            "top dressing",
            {"rate": "0.8 kg/m2", "dressings": 2, "days_between": 14},
            "0.8 kg/m², two dressings, 14 days apart",
            "",
        ),
        ("top dressing", {"rate": "1 kg/m2", "dressings": 1}, "1 kg/m²", ""),
        (
            "raising the height of cut",
            {"from": "3.5 mm", "to": "5 mm"},
            "Mown from 3.5 mm to 5 mm",
            "",
        ),
        ("clean-up cut", {"from": "5 mm", "to": "5 mm"}, "5 mm", ""),
        ("turfing", {"area": "60 m2"}, "60 m² on each green", ""),
        ("overseeding", {"seed": "browntop bent"}, "Browntop bent", ""),
    ],
)
def test_settings(operation: str, settings: dict[str, object], said: str, depth: str) -> None:
    told = words(plan(work(operation, "2027-08-09", settings=settings)))
    (only,) = told.programme.works
    assert settings_in_words(only, "metric").startswith(said)
    assert depth_in_words(only, "metric") == depth
