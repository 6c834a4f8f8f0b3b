"""Amounts, temperatures and altitudes as people write them."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.amounts import (
    UNITS,
    Amount,
    altitudes_in_digits,
    amount_of,
    exact_amount,
    in_digits,
    kitchen,
    read_altitude,
    read_amount,
    read_temperature,
)
from pantry_tui.errors import BadInput


@pytest.mark.parametrize(
    ("typed", "number", "unit"),
    [
        ("2", "2", ""),
        ("2 lb", "2", "lb"),
        ("40lb", "40", "lb"),
        (" 1.5 KG ", "3/2", "kg"),
        ("1/2 cup", "1/2", "cup"),
        ("1 1/2 cups", "3/2", "cup"),
        ("1½ lb", "3/2", "lb"),
        ("¼ tsp", "1/4", "tsp"),
        ("¾ pint", "3/4", "pint"),
        ("⅓ cup", "1/3", "cup"),
        ("⅔ cup", "2/3", "cup"),
        ("2⅛ oz.", "17/8", "oz"),
        ("3 fl oz", "3", "fl oz"),
        ("0.000001 g", "1/1000000", "g"),
        ("1000000 ml", "1000000", "ml"),
        ("2 Pounds", "2", "lb"),
        ("1 millilitre", "1", "ml"),
        ("2 gal", "2", "gallon"),
    ],
)
def test_an_amount_is_read_exactly(typed: str, number: str, unit: str) -> None:
    assert read_amount(typed) == (Fraction(number), unit)
    assert amount_of(typed) == Amount(Fraction(number), unit)


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("1,5 kg", "two ways"),
        ("1,500 g", "two ways"),
        ("", "no amount"),
        ("some", "no amount"),
        ("lb 2", "no amount"),
        ("-2 lb", "no amount"),
        ("1/0 lb", "divides by nothing"),
        ("1 2/0 lb", "divides by nothing"),
        ("2 stone", "no unit known"),
        ("2 lb lb", "no unit known"),
        ("0", "no possible amount"),
        ("0/3 cup", "no possible amount"),
        ("1000001 g", "no possible amount"),
    ],
)
def test_what_is_no_amount_is_refused_in_a_sentence(typed: str, why: str) -> None:
    with pytest.raises(BadInput, match=why) as said:
        read_amount(typed)
    assert str(said.value).endswith(".")


units = st.sampled_from(["", *sorted(set(UNITS.values()))])


@given(st.fractions(Fraction(1, 500), 500, max_denominator=500), units)
def test_what_the_log_keeps_is_read_back_exactly(number: Fraction, unit: str) -> None:
    assert exact_amount(Amount(number, unit).exact) == Amount(number, unit)


@pytest.mark.parametrize("hurt", ["2 stone", "two", "1/0", ""])
def test_a_hurt_amount_in_the_log_is_noticed(hurt: str) -> None:
    with pytest.raises((ValueError, ZeroDivisionError)):
        exact_amount(hurt)


@pytest.mark.parametrize(
    ("number", "unit", "shown"),
    [("24", "lb", "24 lb"), ("3/2", "kg", "1.5 kg"), ("113/3", "lb", "37.67 lb"), ("12", "", "12"),
     ("100", "g", "100 g"), ("1/100", "lb", "0.01 lb")],
)  # fmt: skip
def test_an_amount_is_shown_with_two_decimals_at_most(number: str, unit: str, shown: str) -> None:
    assert str(Amount(Fraction(number), unit)) == shown


@pytest.mark.parametrize(
    ("typed", "bare", "fahrenheit"),
    [
        ("55F", "F", 55.0), ("55 f", "C", 55.0), ("0C", "F", 32.0), ("13 °C", "F", 55.4),
        ("-18c", "F", -0.4), ("38", "F", 38.0), ("5", "C", 41.0), ("5", "c", 41.0),
        (" 4.5 C ", "F", 40.1), ("-100F", "F", -100.0), ("250", "F", 250.0), ("100C", "F", 212.0),
    ],
)  # fmt: skip
def test_a_temperature_is_fahrenheit_inside(typed: str, bare: str, fahrenheit: float) -> None:
    assert read_temperature(typed, bare) == pytest.approx(fahrenheit)


def test_a_bare_number_is_fahrenheit_where_nothing_else_is_said() -> None:
    assert read_temperature("38") == 38.0


@pytest.mark.parametrize("typed", ["", "warm", "55K", "1 000", "251F", "-101F", "130C", "38 F F"])
def test_what_is_no_temperature_of_a_place_is_refused(typed: str) -> None:
    with pytest.raises(BadInput, match="is no temperature"):
        read_temperature(typed)


@pytest.mark.parametrize(
    ("typed", "feet"),
    [("1800ft", 1800), ("1800", 1800), ("550 m", 1804), ("1000 Metres", 3281), ("0", 0),
     ("-200 feet", -200), (" 1 meters ", 3), ("1.8 km", 5906), ("2,4km", 7874)],
)  # fmt: skip
def test_an_altitude_is_in_feet_inside(typed: str, feet: int) -> None:
    assert read_altitude(typed) == feet


@pytest.mark.parametrize(
    ("typed", "feet"), [("1200", 3937), ("1200 ft", 1200), ("1200m", 3937), ("0", 0)]
)
def test_where_degrees_are_celsius_a_bare_altitude_is_metres(typed: str, feet: int) -> None:
    """The stricter reading: as feet, jars at 1,200 m would be canned as at 366 m."""
    assert read_altitude(typed, "C") == feet


@pytest.mark.parametrize("typed", ["", "a mile", "150 km", "high", "123456"])
def test_what_is_no_altitude_is_refused(typed: str) -> None:
    with pytest.raises(BadInput, match="is no altitude"):
        read_altitude(typed)


@pytest.mark.parametrize(
    ("typed", "feet"),
    [
        ("4,800 ft", 4800), ("4 800 ft", 4800), ("4'800ft", 4800), ("4\u202f800 ft", 4800),
        ("4,800", 4800), ("12,000 feet", 12000), ("4800'", 4800), ("1,463 m", 4800),
        ("1 463 m", 4800), ("4,800 ft above sea level", 4800), ("1,463 km", 4800),
        ("-1,200 ft", -1200),
    ],
)  # fmt: skip
def test_thousands_of_an_altitude_may_be_set_off(typed: str, feet: int) -> None:
    assert read_altitude(typed) == feet


@pytest.mark.parametrize("typed", ["4.800 m", "4.800", "1.463ft"])
def test_a_point_before_three_figures_is_asked_about(typed: str) -> None:
    with pytest.raises(BadInput, match="could be"):
        read_altitude(typed)


@pytest.mark.parametrize("typed", ["48,00 ft", "4,8000 ft", "4,80 ft", "4,800,0 ft", "4,800.5 ft"])
def test_what_sets_off_no_thousands_is_no_altitude(typed: str) -> None:
    with pytest.raises(BadInput):
        read_altitude(typed)


def test_numbers_in_a_text_lose_their_signs_only_where_those_set_off_thousands() -> None:
    assert in_digits("1,200 and 1 200 and 12,5 and 1.200") == "1200 and 1200 and 12,5 and 1.200"
    assert altitudes_in_digits("1,200 g at 4,800 ft") == "1,200 g at 4800 ft"


@pytest.mark.parametrize("typed", ["1,200 g", "1 200 g", "1,200"])
def test_of_a_weight_it_is_asked(typed: str) -> None:
    with pytest.raises(BadInput, match="could be"):
        read_amount(typed)


@pytest.mark.parametrize(
    ("number", "unit", "taken"),
    [
        (Fraction(276, 1000), "lb", Fraction(1, 4)),
        (Fraction(3, 5), "lb", Fraction(1, 2)),
        (Fraction(118, 1000), "lb", Fraction(1, 8)),
        (Fraction(176, 1000), "lb", Fraction(3, 16)),
        (Fraction(353, 1000), "lb", Fraction(3, 8)),
        (Fraction(1, 100), "lb", Fraction(1, 16)),
        (Fraction(54, 1000), "kg", Fraction(5, 100)),
        (Fraction(26, 1000), "kg", Fraction(3, 100)),
        (Fraction(14, 10), "kg", Fraction(14, 10)),
        (Fraction(12), "g", Fraction(10)),
        (Fraction(3, 16), "pint", Fraction(1, 4)),
        (Fraction(22, 10), "", Fraction(9, 4)),
    ],
)
def test_what_a_kitchen_takes_of_little_is_little(
    number: Fraction, unit: str, taken: Fraction
) -> None:
    assert kitchen(Amount(number, unit)) == Amount(taken, unit)


@given(st.fractions(Fraction(1, 10), Fraction(40), max_denominator=200))
def test_of_pounds_it_is_a_quarter_off_at_most(pounds: Fraction) -> None:
    """So that a portion serves about as many as it is said to serve, wherever it is shown."""
    taken = kitchen(Amount(pounds, "lb")).number
    assert abs(taken - pounds) <= pounds / 3
    assert taken - pounds <= Fraction(1, 8)
