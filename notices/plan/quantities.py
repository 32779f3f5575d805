"""Quantities as a greenkeeper types them: "13 mm", "1/2 in", "50 x 50 mm", "150 lb/1000 ft2".

Each kind of quantity has a function that reads it into one unit, and one that writes it back so
that reading gives exactly the same number again. Arithmetic is done in fractions and rounded once
at the end, so 1.3 cm is 13 mm and not 13.000000000000002 mm.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cache

from notices.plan.nearest import quoted
from notices.plan.refusal import Refusal
from notices.units import KG_PER_LB, MM_PER_INCH

_LONGEST_TEXT = 80
_SMALLEST = Fraction(1, 1_000_000)


@dataclass(frozen=True, slots=True)
class _Kind:
    """A kind of quantity: its name, the unit it is kept in, and what can be meant at all.

    The limits only stop slips of the finger that no work on any green explains; what is sensible
    for a setting is said where the setting is.
    """

    name: str
    unit: str
    example: str
    most: int
    least: int = 0
    zero: bool = False

    def __str__(self) -> str:
        return f"{'an' if self.name[0] in 'aeiou' else 'a'} {self.name}"

    @property
    def remedy(self) -> str:
        return f'write {self} such as "{self.example}"'


_LENGTH_MM = _Kind("length", "mm", "13 mm", most=10_000_000)
_LENGTH_M = _Kind("length", "m", "0.8 m", most=10_000)
_AREA = _Kind("area", "m2", "480 m2", most=10_000_000)
_RATE = _Kind("rate", "kg/m2", "0.7 kg/m2", most=1_000)
_DENSITY = _Kind("density", "t/m3", "1.55 t/m3", most=25)
_WEIGHT = _Kind("weight", "t", "20 t", most=1_000)
_PERCENTAGE = _Kind("percentage", "%", "38 %", most=100, zero=True)
_TEMPERATURE = _Kind("temperature", "C", "18 C", most=60, least=-90, zero=True)
_SPEED = _Kind("speed", "km/h", "1.2 km/h", most=200)


def length_mm(value: object) -> float:
    """Read a length such as "13 mm", "1.3 cm" or "1 1/2 in".

    Returns
    -------
    float
        The length [mm].

    Raises
    ------
    Refusal
        With a sentence for the person who typed it; so do all readers of this module.
    """
    return _read(value, _LENGTH_MM)


def length_m(value: object) -> float:
    """Read a length such as "0.8 m" or "32 in" [m]."""
    return _read(value, _LENGTH_M)


def spacing_mm(value: object) -> tuple[float, float]:
    """Read a spacing such as "50 x 60 mm", "2 in x 1.5 in" or, for a square, "50 mm".

    Returns
    -------
    tuple of float
        The distances along and across the direction of travel [mm].
    """
    text = _text(value, _LENGTH_MM, "spacing")
    sides = re.split("x|×|[*]|(?<![a-z])by(?![a-z])", text, flags=re.IGNORECASE)
    if len(sides) == 1:
        if not _split(text)[1] and _split(text)[0]:
            raise Refusal(f"{quoted(value)} has no unit", f'write "{text} x {text} mm"')
        side = _measure(text, _LENGTH_MM)
        return side, side
    if len(sides) > 2 or not all(side.strip() for side in sides):
        raise Refusal(
            f"{quoted(value)} is not a spacing",
            'write two lengths such as "50 x 50 mm", or one for a square',
        )
    along, across = (side.strip() for side in sides)
    if not _split(across)[1]:
        unit = _split(along)[1] or "mm"
        write = f"{_split(along)[0]} x {_split(across)[0]} {unit}"
        raise Refusal(f"{quoted(value)} has no unit at its end", f'write "{write}"')
    if not _split(along)[1]:
        along = f"{along} {_split(across)[1]}"
    return _measure(along, _LENGTH_MM), _measure(across, _LENGTH_MM)


def area_m2(value: object) -> float:
    """Read an area such as "480 m2", "0.05 ha", "5,200 sq ft" or "0.1 acres" [m2]."""
    return _read(value, _AREA)


def rate_kg_m2(value: object) -> float:
    """Read a rate such as "0.7 kg/m2", "700 g/m2" or "150 lb/1000 ft2" [kg/m2]."""
    return _read(value, _RATE)


def density_t_m3(value: object) -> float:
    """Read a density such as "1.55 t/m3", "1550 kg/m3" or "100 lb/ft3" [t/m3]."""
    return _read(value, _DENSITY)


def weight_t(value: object) -> float:
    """Read a weight such as "20 t" or "18,000 kg" [t]."""
    return _read(value, _WEIGHT)


def percent(value: object) -> float:
    """Read a percentage such as "38 %" or "38 percent" [%].

    A bare number is refused: 0.38 could be a share or a percentage.
    """
    return _read(value, _PERCENTAGE)


def temperature_c(value: object) -> float:
    """Read a temperature such as "18 C", "18 °C" or "64 F" [°C]."""
    return _read(value, _TEMPERATURE)


def speed_km_h(value: object) -> float:
    """Read a speed such as "1.2 km/h" or "0.75 mph" [km/h]."""
    return _read(value, _SPEED)


def whole_number(value: object) -> int:
    """Read a whole number, zero or more, such as 3 or "1,200"."""
    text = str(value) if type(value) is int and abs(value) < 10**12 else value
    if not isinstance(text, str):
        raise Refusal(f"{quoted(value)} is not a whole number", "write one such as 3")
    text = text.strip()
    if re.fullmatch("-[0-9]+", text):
        raise Refusal(f"{quoted(value)} is negative", "write a whole number such as 3")
    if not re.fullmatch("[0-9]{1,12}|[1-9][0-9]{0,2}(?:,[0-9]{3}){1,3}", text):
        raise Refusal(f"{quoted(value)} is not a whole number", "write one such as 3")
    return int(text.replace(",", ""))


def format_length_mm(value: float) -> str:
    """Write a length [mm]: "13 mm"."""
    return _write(value, _LENGTH_MM)


def format_length_m(value: float) -> str:
    """Write a length [m]: "0.8 m"."""
    return _write(value, _LENGTH_M)


def format_spacing_mm(value: tuple[float, float]) -> str:
    """Write a spacing [mm]: "50 x 60 mm"."""
    along, across = value
    return f"{_digits(along)} x {format_length_mm(across)}"


def format_area_m2(value: float) -> str:
    """Write an area [m2]: "480 m2"."""
    return _write(value, _AREA)


def format_rate_kg_m2(value: float) -> str:
    """Write a rate [kg/m2]: "0.7 kg/m2"."""
    return _write(value, _RATE)


def format_density_t_m3(value: float) -> str:
    """Write a density [t/m3]: "1.55 t/m3"."""
    return _write(value, _DENSITY)


def format_weight_t(value: float) -> str:
    """Write a weight [t]: "20 t"."""
    return _write(value, _WEIGHT)


def format_percent(value: float) -> str:
    """Write a percentage: "38 %"."""
    return _write(value, _PERCENTAGE)


def format_temperature_c(value: float) -> str:
    """Write a temperature [°C]: "18 C"."""
    return _write(value, _TEMPERATURE)


def format_speed_km_h(value: float) -> str:
    """Write a speed [km/h]: "1.2 km/h"."""
    return _write(value, _SPEED)


def units_of(kind: str) -> tuple[str, ...]:
    """Return every spelling of the units of a kind, such as "length", in small letters."""
    return tuple(name for name, (of, _) in _simple_units().items() if of == kind)


def _write(value: float, kind: _Kind) -> str:
    return f"{_digits(value)} {kind.unit}"


def _digits(value: float) -> str:
    """Return the shortest digits that read back as the same number, without an exponent."""
    text = format(Decimal(repr(float(value))), "f")
    return text.removesuffix(".0")


def _read(value: object, kind: _Kind) -> float:
    return _measure(_text(value, kind, kind.name), kind)


def _text(value: object, kind: _Kind, name: str) -> str:
    """Return what was typed with its many ways of spelling signs and spaces made one."""
    if isinstance(value, int | float) and not isinstance(value, bool):
        value = str(value) if abs(value) < 10**12 else quoted(value).strip('"')
    if not isinstance(value, str):
        raise Refusal(f"{quoted(value)} is not a {name}", kind.remedy)
    if not value.strip():
        raise Refusal("nothing is written here", kind.remedy)
    if len(value) > _LONGEST_TEXT:
        raise Refusal(f"{quoted(value)} is too long", kind.remedy)
    # "1½" must not become "11/2", nor the ordinal sign, which stands for a degree, become "o".
    text = re.sub("([\u00bc-\u00be\u2150-\u215f])", r" \1", value.replace("º", "°"))
    text = unicodedata.normalize("NFKC", text)
    text = text.replace("\u2044", "/").replace("\u2212", "-")
    text = re.sub("\u2032\u2032|''|[“”]", '"', text)
    text = re.sub("[\u2032’]", "'", text)
    return " ".join(text.split())


def _split(text: str) -> tuple[str, str]:
    """Part the number from the unit that follows it."""
    number = re.match("-?[0-9., /]*", text)
    digits = number[0] if number else ""
    # What is left of "0.8 /m" is "/m": a slash or a stop after a space belongs to the unit.
    digits = re.sub("[ /.,]+$", "", digits)
    return digits, text[len(digits) :].strip()


def _measure(text: str, kind: _Kind) -> float:
    digits, unit = _split(text)
    if not digits.strip("-"):
        raise Refusal(f"{quoted(text)} has no number at its start", kind.remedy)
    if re.match("(?:-|–|—|to )[ ]?[0-9.]", unit, re.IGNORECASE):
        raise Refusal(f"{quoted(text)} is a range", f"write one figure such as {kind.example}")
    if re.match("e[-+]?[0-9]", unit, re.IGNORECASE):
        raise Refusal(f"{quoted(text)} is not in plain figures", kind.remedy)
    number = _number(digits, unit, text, kind)
    if not unit:
        raise Refusal(f"{quoted(text)} has no unit", f"write {_with_unit(digits, number, kind)}")
    factor, offset = _conversion(unit, kind)
    return _possible(number * factor + offset, text, kind)


def _with_unit(digits: str, number: Fraction, kind: _Kind) -> str:
    if kind is _PERCENTAGE and 0 < number < 1:
        return f'"{_digits(float(number * 100))} %", or "{digits} %" if you mean so little'
    return f'"{digits} {kind.unit}"'


def _number(digits: str, unit: str, text: str, kind: _Kind) -> Fraction:
    sign, amount = (-1, digits[1:].strip()) if digits.startswith("-") else (1, digits)
    if re.fullmatch(r"[0-9]{1,12}(?:\.[0-9]{1,30})?|\.[0-9]{1,30}", amount):
        return sign * Fraction(amount)
    if re.fullmatch(r"[1-9][0-9]{0,2}(?:,[0-9]{3}){1,3}(?:\.[0-9]{1,30})?", amount):
        return sign * Fraction(amount.replace(",", ""))
    if parts := re.fullmatch("(?:([0-9]{1,6}) )?([0-9]{1,6}) ?/ ?([0-9]{1,6})", amount):
        whole, above, below = int(parts[1] or 0), int(parts[2]), int(parts[3])
        if not below:
            raise Refusal(f"{quoted(text)} divides by nothing", kind.remedy)
        if parts[1] and above >= below:
            raise Refusal(f'{quoted(text)} is not a fraction such as "1 1/2"', kind.remedy)
        return sign * (whole + Fraction(above, below))
    if re.fullmatch("[0-9]{1,12},[0-9]{1,30}", amount):
        write = f"{amount.replace(',', '.')} {unit or kind.unit}"
        raise Refusal(f"{quoted(text)} has a comma for a decimal point", f'write "{write}"')
    if re.fullmatch("[0-9]{1,3}(?: [0-9]{3})+", amount):
        write = f"{amount.replace(' ', '')} {unit or kind.unit}"
        raise Refusal(f"{quoted(text)} has a space within the number", f'write "{write}"')
    raise Refusal(f"{quoted(text)} has no clear number", kind.remedy)


def _possible(exact: Fraction, text: str, kind: _Kind) -> float:
    if exact < 0 and not kind.least:
        raise Refusal(f"{quoted(text)} is negative", kind.remedy)
    if exact == 0 and not kind.zero:
        raise Refusal(f"{quoted(text)} is nothing", kind.remedy)
    if exact > kind.most:
        limit = f"{kind.most} {kind.unit}"
        raise Refusal(f"{quoted(text)} is more than can be meant", f"write at most {limit}")
    if exact < kind.least:
        limit = f"{kind.least} {kind.unit}"
        raise Refusal(f"{quoted(text)} is less than can be meant", f"write at least {limit}")
    if exact and abs(exact) < _SMALLEST:
        raise Refusal(f"{quoted(text)} is less than can be meant", kind.remedy)
    return float(exact)


def _conversion(unit: str, kind: _Kind) -> tuple[Fraction, Fraction]:
    """Return what to multiply with, and then to add, to come from this unit to the kind's own."""
    tidy = _tidy(unit)
    if tidy in ("f", "fahrenheit"):
        name, factor, offset = "temperature", Fraction(5, 9), Fraction(-160, 9)
    else:
        (name, factor), offset = _unit(tidy), Fraction(0)
    if name == "ton":
        raise Refusal('a "ton" can be one of three weights', kind.remedy)
    if not name:
        raise Refusal(f"there is no unit {quoted(unit)}", kind.remedy)
    if name != kind.name:
        raise Refusal(f"{unit} is not {kind}", kind.remedy)
    return factor / _unit(_tidy(kind.unit))[1], offset


def _tidy(unit: str) -> str:
    text = re.sub(r"\.(?![0-9])|\^|(?<=[0-9]),(?=[0-9]{3})", "", unit.lower())
    text = text.replace("per cent", "percent").replace("°", "").replace("degrees ", "")
    text = re.sub("(?<![a-z])per(?![a-z])", "/", text)
    text = re.sub("square(?![a-z])", "sq", text)
    text = re.sub("cubic(?![a-z])", "cu", text)
    text = re.sub(" ?/ ?", "/", text)
    return " ".join(text.split())


def _unit(tidy: str) -> tuple[str, Fraction]:
    """Return the kind of a unit and its size in the base unit of that kind; "" when unknown."""
    units = _simple_units()
    if tidy in units:
        return units[tidy]
    above, stroke, below = tidy.partition("/")
    count = re.match("([1-9][0-9]{0,6}) ?", below)
    if not stroke:
        return "", Fraction(1)
    above_kind, above_size = units.get(above, ("", Fraction(1)))
    below_kind, below_size = units.get(below[count.end() :] if count else below, ("", Fraction(1)))
    if "ton" in (above_kind, below_kind):
        return "ton", Fraction(1)
    name = {
        ("weight", "area"): "rate",
        ("weight", "volume"): "density",
        ("length", "time"): "speed",
    }.get((above_kind, below_kind), "")
    return name, above_size / (below_size * int(count[1]) if count else below_size)


@cache
def _simple_units() -> dict[str, tuple[str, Fraction]]:
    """Return every spelling of a unit without a stroke; bases are m, m2, m3, kg, h, °C and %.

    All customary units follow from the inch and the pound, which are exact by definition: a foot
    is 12 inches, a yard 36, a mile 1760 yards, an acre 4840 square yards, a pound 16 ounces.
    """
    inch = Fraction(str(MM_PER_INCH)) / 1000
    pound = Fraction(str(KG_PER_LB))
    foot, yard = 12 * inch, 36 * inch
    one = Fraction(1)
    table: list[tuple[str, Fraction, str]] = [
        ("length", one / 1000, "mm|millimetre|millimeter"),
        ("length", one / 100, "cm|centimetre|centimeter"),
        ("length", one, "m|metre|meter"),
        ("length", 1000 * one, "km|kilometre|kilometer"),
        ("length", inch, 'in|inch|inches|"'),
        ("length", foot, "ft|foot|feet|'"),
        ("length", yard, "yd|yard"),
        ("length", 1760 * yard, "mi|mile"),
        ("area", one / 10_000, "cm2"),
        ("area", one, "m2|sq m|sqm|m sq|sq metre|sq meter"),
        ("area", 10_000 * one, "ha|hectare"),
        ("area", foot**2, "ft2|sq ft|sqft|sq foot|sq feet"),
        ("area", yard**2, "yd2|sq yd|sqyd|sq yard"),
        ("area", 4840 * yard**2, "ac|acre"),
        ("volume", one, "m3|cu m|cu metre|cu meter"),
        ("volume", one / 1000, "l|litre|liter"),
        ("volume", foot**3, "ft3|cu ft|cu foot|cu feet"),
        ("volume", yard**3, "yd3|cu yd|cu yard"),
        ("weight", one / 1000, "g|gram|gramme"),
        ("weight", one, "kg|kilo|kilogram|kilogramme"),
        ("weight", 1000 * one, "t|tonne|metric ton"),
        ("weight", pound, "lb|pound"),
        ("weight", pound / 16, "oz|ounce"),
        ("ton", one, "ton|short ton|long ton"),
        ("time", one, "h|hr|hour"),
        ("time", one / 60, "min|minute"),
        ("time", one / 3600, "s|sec|second"),
        ("speed", 1000 * one, "kph|kmh"),
        ("speed", 1760 * yard, "mph"),
        ("temperature", one, "c|celsius|deg c"),
        ("percentage", one, "%|percent|pct"),
    ]
    units: dict[str, tuple[str, Fraction]] = {}
    for kind, size, spellings in table:
        for spelling in spellings.split("|"):
            units[spelling] = (kind, size)
            if len(spelling) > 1 and spelling[-1].isalpha():
                units.setdefault(f"{spelling}s", (kind, size))
    return units
