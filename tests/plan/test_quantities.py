"""Conversions are checked against NIST.

Exact definitions: NIST Handbook 44 (2024), appendix C: 1 in = 25.4 mm, 1 ft = 0.3048 m,
1 yd = 0.9144 m, 1 mi = 1.609344 km, 1 ft² = 0.09290304 m², 1 yd² = 0.83612736 m²,
1 acre = 43 560 ft², 1 lb = 0.45359237 kg. Rounded factors, where the definition has none:
NIST Special Publication 811 (2008), appendix B.8: 1 lb/ft² = 4.882428 kg/m²,
1 lb/ft³ = 16.01846 kg/m³.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.plan import quantities as q

Reader = Callable[[object], Any]


@pytest.mark.parametrize(
    ("typed", "mm"),
    [
        ("13 mm", 13),
        ("13mm", 13),
        ("13 mm.", 13),
        ("13\u00a0mm", 13),
        ("1.3 cm", 13),
        ("0.8 m", 800),
        ("1,200 mm", 1200),
        (".5 in", 12.7),
        ("1/2 in", 12.7),
        ("½ in", 12.7),
        ("1 ⁄ 2 in", 12.7),
        ('0.5"', 12.7),
        ("0.5''", 12.7),
        ("1 1/2 in", 38.1),
        ("1½ inches", 38.1),
        ("1½ in.", 38.1),
        ("3/4 Inch", 19.05),
        ("3 ft", 914.4),
        ("3'", 914.4),
        ("1 foot", 304.8),
        ("1 yard", 914.4),
        ("25 millimetres", 25),
        ("25 millimeters", 25),
    ],
)
def test_reads_lengths(typed: str, mm: float) -> None:
    assert q.length_mm(typed) == mm


@pytest.mark.parametrize(("typed", "m"), [("0.8 m", 0.8), ("32 in", 0.8128), ("800 mm", 0.8)])
def test_reads_long_lengths(typed: str, m: float) -> None:
    assert q.length_m(typed) == m


@pytest.mark.parametrize(
    ("typed", "along", "across"),
    [
        ("50 x 50 mm", 50, 50),
        ("50 × 60 mm", 50, 60),
        ("50x60mm", 50, 60),
        ("50 by 60 mm", 50, 60),
        ("5 cm x 60 mm", 50, 60),
        ("2 in x 1.5 in", 50.8, 38.1),
        ('2" x 1 1/2"', 50.8, 38.1),
        ("1 1/3 x 1.5 in", 25.4 * 4 / 3, 38.1),
        ("50 mm", 50, 50),
        ("2 in", 50.8, 50.8),
    ],
)
def test_reads_spacings(typed: str, along: float, across: float) -> None:
    assert q.spacing_mm(typed) == pytest.approx((along, across), rel=1e-15)


@pytest.mark.parametrize(
    ("typed", "m2"),
    [
        ("480 m2", 480),
        ("480 m²", 480),
        ("480 m^2", 480),
        ("480 sq m", 480),
        ("480 sq. m", 480),
        ("480 square metres", 480),
        ("0.05 ha", 500),
        ("5200 ft2", 483.095808),
        ("5,200 sq ft", 483.095808),
        ("5200 square feet", 483.095808),
        ("100 sq yd", 83.612736),
        ("0.1 acres", 404.68564224),
    ],
)
def test_reads_areas(typed: str, m2: float) -> None:
    assert q.area_m2(typed) == m2


@pytest.mark.parametrize(
    ("typed", "kg_m2"),
    [
        ("0.7 kg/m2", 0.7),
        ("0.7 kg / m²", 0.7),
        ("0.7 kg per square metre", 0.7),
        ("700 g/m2", 0.7),
        ("7 t/ha", 0.7),
        # 0.45359237 kg x 16 oz to the pound
        ("16 oz/yd2", 0.45359237 / 0.83612736),
    ],
)
def test_reads_metric_rates(typed: str, kg_m2: float) -> None:
    assert q.rate_kg_m2(typed) == pytest.approx(kg_m2, rel=1e-15)


@pytest.mark.parametrize(
    "typed",
    [
        "150 lb/1000 ft2",
        "150 lb/1,000 ft2",
        "150 lbs/1000ft²",
        "150 lb per 1,000 sq. ft.",
        "0.15 lb/ft2",
    ],
)
def test_reads_american_rates(typed: str) -> None:
    assert q.rate_kg_m2(typed) == pytest.approx(0.150 * 4.882428, rel=1e-6)


def test_reads_densities() -> None:
    assert q.density_t_m3("1.55 t/m3") == 1.55
    assert q.density_t_m3("1550 kg/m³") == 1.55
    assert q.density_t_m3("1.55 kg/l") == 1.55
    assert q.density_t_m3("100 lb/ft3") == pytest.approx(1.601846, rel=1e-6)


@pytest.mark.parametrize("typed", ["38 %", "38%", "38 percent", "38 per cent"])
def test_reads_percentages(typed: str) -> None:
    assert q.percent(typed) == 38


def test_reads_zero_and_all_percent() -> None:
    assert q.percent("0 %") == 0
    assert q.percent("100 %") == 100


@pytest.mark.parametrize(
    ("typed", "celsius"),
    [
        ("18 C", 18),
        ("18 °C", 18),
        ("18 ºC", 18),
        ("18 ℃", 18),
        ("18 degrees Celsius", 18),
        ("-3 C", -3),
        ("−3 °C", -3),
        ("0 C", 0),
        ("68 F", 20),
        ("50 °F", 10),
        ("-40 F", -40),
    ],
)
def test_reads_temperatures(typed: str, celsius: float) -> None:
    assert q.temperature_c(typed) == celsius


@pytest.mark.parametrize(
    ("typed", "km_h"),
    [("1.2 km/h", 1.2), ("1.2 kph", 1.2), ("0.75 mph", 1.207008), ("20 m/min", 1.2)],
)
def test_reads_speeds(typed: str, km_h: float) -> None:
    assert q.speed_km_h(typed) == km_h


@pytest.mark.parametrize(("typed", "number"), [(3, 3), (0, 0), ("3", 3), ("1,200", 1200)])
def test_reads_whole_numbers(typed: object, number: int) -> None:
    assert q.whole_number(typed) == number


@pytest.mark.parametrize(
    ("read", "typed", "message"),
    [
        (q.length_mm, "13", '"13" has no unit: write "13 mm"'),
        (q.length_mm, 13, '"13" has no unit: write "13 mm"'),
        (q.length_mm, 0.5, '"0.5" has no unit: write "0.5 mm"'),
        (q.area_m2, 480, '"480" has no unit: write "480 m2"'),
        (q.percent, 38, '"38" has no unit: write "38 %"'),
        (q.percent, 0.38, 'write "38 %", or "0.38 %" if you mean so little'),
        (q.length_mm, "13 kg", 'kg is not a length: write a length such as "13 mm"'),
        (q.length_mm, "13 m2", "m2 is not a length"),
        (q.area_m2, "480 m", 'm is not an area: write an area such as "480 m2"'),
        (q.rate_kg_m2, "0.7 kg", "kg is not a rate"),
        (q.density_t_m3, "1.55 kg/m2", "kg/m2 is not a density"),
        (q.temperature_c, "18 %", "% is not a temperature"),
        (q.length_mm, "64 F", "F is not a length"),
        (q.length_mm, "13 mn", 'there is no unit "mn": write a length such as "13 mm"'),
        (q.length_mm, "12,5 mm", 'has a comma for a decimal point: write "12.5 mm"'),
        (q.length_mm, "12,5", 'has a comma for a decimal point: write "12.5 mm"'),
        (q.density_t_m3, "0,155 t/m3", 'write "0.155 t/m3"'),
        (q.area_m2, "5 200 ft2", 'has a space within the number: write "5200 ft2"'),
        (q.area_m2, "1,2,3 m2", "has no clear number"),
        (q.length_mm, "-13 mm", '"-13 mm" is negative'),
        (q.length_mm, "0 mm", '"0 mm" is nothing'),
        (q.length_mm, "nan mm", "has no number"),
        (q.length_mm, "inf mm", "has no number"),
        (q.length_mm, float("nan"), "has no number"),
        (q.length_mm, float("inf"), "has no number"),
        (q.length_mm, "mm", '"mm" has no number at its start'),
        (q.length_mm, "1e3 mm", "is not in plain figures"),
        (q.length_mm, "1e999999999 mm", "is not in plain figures"),
        (q.length_mm, 1e-7, "is not in plain figures"),
        pytest.param(q.length_mm, 10**5000, "has no number", id="very long length"),
        (q.length_mm, "9" * 50 + " mm", "has no clear number"),
        (q.length_mm, "1/0 in", "divides by nothing"),
        (q.length_mm, "1 3/2 in", "is not a fraction"),
        (q.length_mm, "10-12 mm", "is a range: write one figure such as 13 mm"),
        (q.length_mm, "10 to 12 mm", "is a range"),
        (q.length_mm, "0.0000001 mm", "is less than can be meant"),
        (q.length_mm, "999999999 mm", "is more than can be meant"),
        (q.percent, "101 %", "is more than can be meant: write at most 100 %"),
        (q.temperature_c, "-300 C", "is less than can be meant: write at least -90 C"),
        (q.rate_kg_m2, "1 ton/acre", "can be one of three weights"),
        (q.rate_kg_m2, "1 kg/0 m2", "there is no unit"),
        (q.length_mm, True, '"true" is not a length'),
        (q.length_mm, None, '"" is not a length'),
        (q.length_mm, [13], '"[…]" is not a length'),
        (q.length_mm, "", "nothing is written here"),
        (q.length_mm, "1" * 100, "is too long"),
        (q.length_mm, "１３ mm\x00", "there is no unit"),
        (q.spacing_mm, "50", '"50" has no unit: write "50 x 50 mm"'),
        (q.spacing_mm, 50, '"50" has no unit: write "50 x 50 mm"'),
        (q.spacing_mm, "50 x 50", 'has no unit at its end: write "50 x 50 mm"'),
        (q.spacing_mm, "2 in x 1.5", 'has no unit at its end: write "2 x 1.5 in"'),
        (q.spacing_mm, "50 x 50 x 50 mm", "is not a spacing: write two lengths"),
        (q.spacing_mm, "50 x", "is not a spacing"),
        (q.spacing_mm, "50 x 50 kg", "kg is not a length"),
        (q.spacing_mm, [50, 50], "is not a spacing"),
        (q.whole_number, 3.0, '"3.0" is not a whole number: write one such as 3'),
        (q.whole_number, "3.5", '"3.5" is not a whole number'),
        (q.whole_number, -3, '"-3" is negative'),
        (q.whole_number, True, '"true" is not a whole number'),
        (q.whole_number, "three", '"three" is not a whole number'),
        pytest.param(q.whole_number, 10**5000, "is not a whole number", id="very long number"),
        (q.whole_number, None, "is not a whole number"),
    ],
)
def test_refuses_in_words(read: Reader, typed: object, message: str) -> None:
    with pytest.raises(ValueError, match=r".") as caught:
        read(typed)
    assert message in str(caught.value)
    assert not str(caught.value).endswith(".")


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        (q.format_length_mm(13), "13 mm"),
        (q.format_length_mm(12.7), "12.7 mm"),
        (q.format_length_m(0.8), "0.8 m"),
        (q.format_spacing_mm((50, 60.5)), "50 x 60.5 mm"),
        (q.format_area_m2(1234567), "1234567 m2"),
        (q.format_rate_kg_m2(0.00001), "0.00001 kg/m2"),
        (q.format_density_t_m3(1.55), "1.55 t/m3"),
        (q.format_percent(38), "38 %"),
        (q.format_temperature_c(-3), "-3 C"),
        (q.format_speed_km_h(1.2), "1.2 km/h"),
    ],
)
def test_writes_in_canonical_words(words: str, expected: str) -> None:
    assert words == expected


numbers = st.floats(1e-6, 24)


@pytest.mark.parametrize(
    ("read", "write"),
    [
        (q.length_mm, q.format_length_mm),
        (q.length_m, q.format_length_m),
        (q.area_m2, q.format_area_m2),
        (q.rate_kg_m2, q.format_rate_kg_m2),
        (q.density_t_m3, q.format_density_t_m3),
        (q.percent, q.format_percent),
        (q.temperature_c, q.format_temperature_c),
        (q.speed_km_h, q.format_speed_km_h),
    ],
)
@given(number=numbers)
def test_reads_back_exactly_what_it_writes(
    read: Reader, write: Callable[[float], str], number: float
) -> None:
    assert read(write(number)) == number


@given(st.tuples(numbers, numbers))
def test_reads_back_spacings(spacing: tuple[float, float]) -> None:
    assert q.spacing_mm(q.format_spacing_mm(spacing)) == spacing


@given(st.floats(1e-6, 1e7))
def test_reads_back_large_areas(area: float) -> None:
    assert q.area_m2(q.format_area_m2(area)) == area


READERS = (
    q.length_mm,
    q.length_m,
    q.spacing_mm,
    q.area_m2,
    q.rate_kg_m2,
    q.density_t_m3,
    q.percent,
    q.temperature_c,
    q.speed_km_h,
    q.whole_number,
)
likely = st.text(st.sampled_from("0123456789.,/-½¼ \"'mcintfkg2²%CFx×per"), max_size=24)


@given(st.text() | likely | st.integers() | st.floats() | st.booleans() | st.none())
def test_any_value_is_read_or_refused(typed: object) -> None:
    for read in READERS:
        try:
            read(typed)
        except ValueError as error:
            assert str(error)  # noqa: PT017, any other error fails the test
