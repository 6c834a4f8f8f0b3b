"""Acidity, warmth, room and shares as people write them: in digits, in words, as a fraction. What
a record understands, its judges read."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.jars import ounces, read_jar
from pantry_tui.core.safety.measured import (
    all_fahrenheit,
    all_inches,
    read_inches,
    read_percent,
    read_ph,
)
from pantry_tui.core.safety.record import read_details


@pytest.mark.parametrize(
    ("typed", "value"),
    [
        ("4.1", 4.1), ("4,1", 4.1), ("3.8 to 4.2", 4.2), ("five", 5.0), ("4 3/4", 4.75),
        ("3 1/2", 3.5), ("3.8/3.9", 3.9),
        # Of what may mean two things the less sour.
        ("4/5", 5.0), ("unknown", None), ("", None),
    ],
)  # fmt: skip
def test_the_highest_ph_counts(typed: str, value: float | None) -> None:
    assert read_ph(typed) == value


def test_a_ph_in_words_is_as_little_believed_as_one_in_digits() -> None:
    for value in ("14", "fourteen", "zero", "0.5"):
        assert read_details([("ph", value)]).problems, value
    assert not read_details([("ph", "four")]).problems


@pytest.mark.parametrize(
    ("typed", "value"),
    [
        ("2.5%", 2.5), ("2,5 percent", 2.5), ("5 per cent", 5.0), ("60 brix", 60.0),
        ("3% to 2%", 2.0), ("1-2%", 1.0),
        ("3 to 2.5 percent", 2.5), ("2 % of 3", 2.0),
        ("one percent", 1.0), ("twenty-five percent", 25.0), ("1/2%", 0.5),
        ("1 1/2 %", 1.5), ("10 11/12 %", 10.9167), ("12.1/2%", 2.0), ("3 tbsp", None), ("", None),
    ],
)  # fmt: skip
def test_the_smallest_percent_counts(typed: str, value: float | None) -> None:
    assert read_percent(typed) == (None if value is None else pytest.approx(value))


@pytest.mark.parametrize(
    ("typed", "degrees"),
    [
        ("70F", [70]), ("68-72 F", [68, 72]), ("70/80F", [70, 80]), ("20-22 C", [68, 71.6]),
        ("-18C", [-0.4]), ("ninety", [90]), ("seventy to ninety F", [70, 90]),
        ("twenty C", [68]), ("unknown", []),
    ],
)  # fmt: skip
def test_every_number_of_degrees(typed: str, degrees: list[float]) -> None:
    assert all_fahrenheit(typed) == pytest.approx(degrees)


@pytest.mark.parametrize(
    ("typed", "inches"),
    [
        ("1/2 in", 0.5), ("half an inch", 0.5), ("one half inch", 0.5), ("one-half", 0.5),
        ("a quarter inch", 0.25), ("one quarter inch", 0.25), ("three quarters inch", 0.75),
        ("three-quarter inch", 0.75), ("1 1/4", 1.25), ("one and a half in", 1.5),
        ("two inches", 2.0), ("two", 2.0), ("2.54 cm", 1.0), ("unknown", None),
    ],
)  # fmt: skip
def test_the_room_above_the_food(typed: str, inches: float | None) -> None:
    assert read_inches(typed) == inches


@pytest.mark.parametrize(
    ("key", "value"),
    [("ph", ">4.6"), ("ph", "4.6+"), ("vinegar", "<5%"), ("temperature", "<165F"), ("salt", "<2%")],
)
def test_more_or_less_than_a_number_is_no_number(key: str, value: str) -> None:
    assert read_details([(key, value)]).problems
    assert not read_details([(key, value.strip("<>+"))]).problems
    assert not read_details([("by", value)]).problems


@pytest.mark.parametrize(
    ("typed", "inches"),
    [
        ("1/2-1 in", [0.5, 1]), ("1-1/2 in", [1.5]), ("1/4 to 1/2 in", [0.25, 0.5]),
        ("1 to 2 inches", [1, 2]), ("2.54 to 5.08 cm", [1, 2]), ("25.4mm", [1]), ("½\"", [0.5]),
        ("1/8 or 2 in", [0.125, 2]), ("unknown", []),
    ],
)  # fmt: skip
def test_every_length_of_several(typed: str, inches: list[float]) -> None:
    assert all_inches(typed) == pytest.approx(inches)


@pytest.mark.parametrize(
    ("typed", "degrees"),
    [("180F-185F", [180, 185]), ("82C - 85C", [179.6, 185]), ("-20 to -18", [-20, -18]),
     ("-18C", [-0.4]), ("180-185 F", [180, 185])],
)  # fmt: skip
def test_a_range_of_degrees_is_none_below_nought(typed: str, degrees: list[float]) -> None:
    assert all_fahrenheit(typed) == pytest.approx(degrees)


@pytest.mark.parametrize("typed", ["imperial pint", "UK pint jars", "1 british pint"])
def test_a_pint_of_the_empire_is_larger(typed: str) -> None:
    """20 fluid ounces of it are 568 ml; a US pint is 473."""
    assert ounces(typed) == pytest.approx(568.26 / 29.5735, rel=0.001)
    assert read_jar(typed) == "quart"
