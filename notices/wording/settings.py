"""Settings of a work in words, for readers who want to know exactly."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from notices.operations import SettingValue
from notices.programme.model import Work
from notices.units import kg_per_m2_to_lb_per_1000_ft2
from notices.wording import amounts, measures
from notices.wording.lists import counted, number

Said = Callable[[SettingValue, str], str]
"""Function from a value and the system of units to words, which may be empty."""


def _length(words: str) -> Said:
    def said(value: SettingValue, units: str) -> str:
        return words.format(measures.length(value, units)) if isinstance(value, float | int) else ""

    return said


def _spacing(value: SettingValue, units: str) -> str:
    if not isinstance(value, tuple):
        return _length("{} apart")(value, units)
    along, across = (measures.length(side, units) for side in value)
    return f"{along} apart" if along == across else f"{along} by {across} apart"


def _passes(value: SettingValue, _units: str) -> str:
    return f"{number(value)} passes" if isinstance(value, int) and value > 1 else ""


def _rate(value: SettingValue, units: str) -> str:
    if not isinstance(value, float | int):
        return ""
    if units == "imperial":
        return f"{kg_per_m2_to_lb_per_1000_ft2(value):.0f} lb per 1,000 square feet"
    return f"{value:g} kg/m²"


def _words(value: SettingValue, _units: str) -> str:
    return str(value)


_SAID: Mapping[str, Said] = {
    "tine_diameter": _length("tines {} wide"),
    "inside_diameter": _length("cores {} wide"),
    "hole_diameter": _length("holes {} wide"),
    "blade_width": _length("blades {} wide"),
    "channel_diameter": _length("channels {} wide"),
    "width": _length("trenches {} wide"),
    "spacing": _spacing,
    "blade_spacing": _spacing,
    "passes": _passes,
    "from": _length("mown from {} to"),
    "to": _length("{}"),
    "area": lambda value, units: (
        f"{amounts.area(value, units)} on each green" if isinstance(value, float | int) else ""
    ),
    "fill": lambda _value, _units: "fills the holes",
    "rate": _rate,
    "dressings": lambda value, _units: counted(value, "dressing") if isinstance(value, int) else "",
    "days_between": lambda value, _units: (
        f"{counted(value, 'day')} apart" if isinstance(value, int) else ""
    ),
    "seed": _words,
    "product": _words,
}


def settings_in_words(work: Work, units: str) -> str:
    """Return settings such as "Tines 13 mm wide, 50 mm apart"; empty if there are none to name.

    Depth has a column of its own: see `depth_in_words`.
    """
    values = work.settings.values
    left_out = {"depth"}
    if values.get("fill"):
        left_out.add("rate")
    if values.get("dressings", 1) in (1, None):
        left_out |= {"dressings", "days_between"}
    if values.get("from") == values.get("to"):
        left_out.add("from")
    if values.get("inside_diameter") == values.get("tine_diameter"):
        left_out.add("inside_diameter")
    said = [
        words(value, units)
        for name, words in _SAID.items()
        if name not in left_out and (value := values.get(name)) is not None
    ]
    text = ", ".join(filter(None, said)).replace(" to, ", " to ")
    if len(work.greens) == 1:
        text = text.replace(" on each green", "")
    return f"{text[:1].upper()}{text[1:]}"


def depth_in_words(work: Work, units: str) -> str:
    """Return the depth of a work, such as "75 mm"; empty if it does not enter the ground."""
    depth = work.settings.values.get("depth")
    return measures.length(depth, units) if isinstance(depth, float | int) else ""
