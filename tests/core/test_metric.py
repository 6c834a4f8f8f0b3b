"""Sentences in metric: figures typed by hand, and that no figure of safety comes out milder."""

from __future__ import annotations

import csv
import re
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.metric import in_metric, in_us, us_contents
from tests.twin import american, metric

#: What is said in US measures, and in metric ones; NIST SP 811: 1 lb = 453.59 g, 1 in = 25.4 mm,
#: 1 ft = 0.3048 m, 1 US quart = 946.35 ml, 1 psi = 6.894757 kPa.
SAID = {
    # limits of cold: never warmer
    "40 F or below": "4.4 °C or below",
    "at 40 F at most": "at 4.4 °C at most",
    "Above 40 F for over 2 h": "Above 4.4 °C for over 2 h",
    "0 F or below": "-18 °C or below",
    "Freeze it at 0 °F": "Freeze it at -18 °C",
    "only below 36 F": "only below 2.2 °C",
    "cold, 37 F": "cold, 2.7 °C",
    "Chills below 45 F.": "Chills below 7.3 °C.",
    # limits of heat: never cooler
    "Heat it through to 165 F": "Heat it through to 73.9 °C",
    "Heat to 160 °F inside": "Heat to 71.2 °C inside",
    "at least 145 F": "at least 62.8 °C",
    "10 to 12 at 140 °F": "10 to 12 at 60 °C",
    "180-185 F for 30 minutes": "83 to 85 °C for 30 minutes",
    # ranges: never wider
    "60 to 65 F takes": "16 to 18 °C takes",
    "32 to 40 F": "0 to 4 °C",
    "36 to 37 F": "2.3 to 2.7 °C",
    "It stood at 40 to 41 F": "It stood at 4.4 to 5 °C",
    # measured: the nearest
    "Measured 42.8 F in fridge": "Measured 6 °C in fridge",
    "38 F is assumed for its place": "3.3 °C is assumed for its place",
    "basement › shelf 2 · pantry 60 °F · 14": "basement › shelf 2 · pantry 15.6 °C · 14",
    "-5 F was read inside": "-20.6 °C was read inside",
    # how much warmer
    "1.5 F warmer than it should be": "0.8 °C warmer than it should be",
    "a quarter per 10 F above 0 F": "a quarter per 5.6 °C above -18 °C",
    # weights
    "3 lb of carrots": "1.35 kg of carrots",
    "38 lb": "17.2 kg",
    "3×40 lb": "3×18.1 kg",
    "8 oz": "230 g",
    "1 oz": "28 g",
    "a day for each 5 lb begun": "a day for each 2.25 kg begun",
    "four ounces of meat": "113 g of meat",
    "2 to 3 lb": "910 g to 1.35 kg",
    # volumes
    "4 cups of vinegar to 2 of water": "960 ml of vinegar to 480 ml of water",
    "1/4 cup of it": "60 ml of it",
    "1-1/2 cups juice per 3 quarts tomatoes": "360 ml juice per 2.8 l tomatoes",
    "a pot of 8 quarts (7.6 L) or more": "a pot of 7.6 L or more",
    "2 tbsp of salt a quart": "2 tbsp of salt per 940 ml",
    "1 gallon crock": "3.8 l crock",
    # lengths
    "headspace: 1/2 inch": "headspace: 13 mm",
    "headspace: 0.25 in": "headspace: 6 mm",
    "1 inch (2.5 cm) above them": "2.5 cm above them",
    "at least 1 inch around": "at least 2.6 cm around",
    "1-inch cubes": "2.5 cm cubes",
    # heights and pressure
    "checked for 1,000 ft only": "checked for 304 m only",
    "altitude: 2953 ft": "altitude: 900 m",
    "For 2001 to 4000 ft.": "For 609 to 1,219 m.",
    "at 11 psi": "at 76 kPa",
    "psi: 11": "pressure: 76 kPa",
    # jars of published tables keep their name; jars that are wanted are metric ones
    "For quart jars": "For quart (1 litre) jars",
    "pint": "pint (500 ml)",
    "6 quart jars": "6 jars of 1 litre",
    "20 pint jars": "19 jars of 500 ml",
    # kitchen numbers
    "0.45 kg left": "450 g left",
    # as one types it
    "write 55F or 13C": "write 13C",
    "900 ft or 300 m": "300 m",
    "20 lb or 9 kg": "9 kg",
    "95 could be 95F or 95C": "95 could be 95F or 95C",
    # nothing of the kind
    "7F strawberry jam, 38F2": "7F strawberry jam, 38F2",
    "Fri 12 Feb 2027: used 2 of 3F": "Fri 12 Feb 2027: used 2 of 3F",
    "7 in cellar": "7 in cellar",
    "30 g of salt, 2 kg": "30 g of salt, 2 kg",
}  # fmt: skip


@pytest.mark.parametrize("text", SAID)
def test_a_sentence_in_metric(text: str) -> None:
    assert in_metric(text) == SAID[text]


@pytest.mark.parametrize("text", SAID)
def test_said_twice_it_is_the_same(text: str) -> None:
    assert in_metric(SAID[text]) == SAID[text]


def test_a_name_stays_as_it_was_typed() -> None:
    names = ("the 40 lb crate", "1 lb packs")
    text = "8 of 1 lb packs, 3 lb in all, in the 40 lb crate"
    assert in_metric(text, names) == "8 of 1 lb packs, 1.35 kg in all, in the 40 lb crate"


US = {
    "at 40 F or below": "at 40 °F or below",
    "pot of 8 quarts (7.6 L) or more": "pot of 8 quarts or more",
    "write 55F or 13C.": "write 55F.",
    "900 ft or 300 m": "900 ft",
    "95 could be 95F or 95C": "95 could be 95F or 95C",
    "7F jam on Fri 5 Feb": "7F jam on Fri 5 Feb",
    "15 g of salt": "15 g of salt",
}


@pytest.mark.parametrize("text", US)
def test_a_sentence_in_us_measures(text: str) -> None:
    assert in_us(text) == US[text]


@pytest.mark.parametrize(
    ("text", "said"),
    [("5 l", "5 1/4 quart"), ("17 kg", "37.5 lb"), ("3×9 kg", "3×19.75 lb"), ("500 ml", "1 pint"),
     ("7", "7"), ("38 lb", "38 lb"), ("2 of 5 l", "2 of 5 l")],
)  # fmt: skip
def test_contents_in_us_measures(text: str, said: str) -> None:
    assert us_contents(text) == said


def number(text: str) -> Fraction:
    found = re.search(r"-?[\d,]+(?:\.\d+)?", text)
    assert found
    return Fraction(found[0].replace(",", ""))


tenths = st.integers(-400, 3000).map(lambda n: Fraction(n, 10))


@given(tenths, st.sampled_from(["{} F or below", "at most {} F", "above {} F food goes", "{} F"]))
def test_a_limit_of_cold_is_never_warmer(degrees: Fraction, sentence: str) -> None:
    if degrees < 110:
        text = "keep it at " + sentence.format(f"{float(degrees):g}")
        assert number(in_metric(text).split("keep it at")[1]) <= (degrees - 32) * 5 / 9


@given(tenths, st.sampled_from(["at least {} F", "heat it to {} F", "{} F or hotter", "{} °F"]))
def test_a_limit_of_heat_is_never_cooler(degrees: Fraction, sentence: str) -> None:
    if degrees >= 110:
        said = in_metric(sentence.format(f"{float(degrees):g}"))
        assert number(said) >= (degrees - 32) * 5 / 9 - Fraction(1, 20) * (sentence == "{} °F")


@given(tenths, st.integers(1, 60))
def test_a_range_is_never_wider(low: Fraction, wide: int) -> None:
    high = low + wide
    said = in_metric(f"Keep it at {float(low):g} to {float(high):g} F.")
    ends = [Fraction(one) for one in re.findall(r"-?\d+(?:\.\d+)?", said)]
    assert (low - 32) * 5 / 9 <= ends[0] <= ends[-1] <= (high - 32) * 5 / 9


@given(st.integers(1, 40))
def test_pressure_is_never_less(psi: int) -> None:
    assert number(in_metric(f"20 min, {psi} psi").split(",", 1)[1]) >= psi * Fraction("6.894757")


@given(st.integers(1, 12000), st.sampled_from(["up to {} ft", "above {} ft", "for {} ft only"]))
def test_a_limit_of_height_is_never_higher(feet: int, sentence: str) -> None:
    assert number(in_metric(sentence.format(f"{feet:,}"))) <= feet * Fraction("0.3048")


@given(st.integers(1, 400), st.sampled_from(["for each {} lb", "up to {} lb", "salt for {} lb"]))
def test_what_a_dose_is_for_is_never_more(quarters: int, sentence: str) -> None:
    pounds = Fraction(quarters, 4)
    said = in_metric(sentence.format(f"{float(pounds):g}"))
    grams = number(said) * (1000 if "kg" in said else 1)
    assert grams <= pounds * Fraction("453.59237") or grams <= 200


DATA = Path(__file__).parents[2] / "data"
#: Columns of the tables that a person reads as sentences.
WORDINGS = (
    "wording", "note", "means", "do", "how", "reason", "alternative", "acidify", "why", "option",
    "hazard", "condition", "sign", "end_test", "prepare",
)  # fmt: skip


def sentences() -> list[str]:
    found: dict[str, None] = {}
    for path in sorted(DATA.glob("*.csv")):
        with path.open(encoding="utf-8", newline="") as handle:
            for row in csv.DictReader(handle):
                found.update(dict.fromkeys(row[name] for name in WORDINGS if row.get(name)))
    return list(found)


def test_every_wording_of_the_tables_is_said_in_one_system() -> None:
    spoken = sentences()
    assert len(spoken) > 500
    wrong = [line for one in spoken for line in american(in_metric(one))]
    assert wrong == []
    assert [line for one in spoken for line in metric(in_us(one))] == []
