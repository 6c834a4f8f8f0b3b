"""What people write beside a jar: times, pressures, sizes, ways. Half understood is refused."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.safety.denial import denies
from pantry_tui.core.safety.jars import BIGGER, JARS, read_jar
from pantry_tui.core.safety.measured import (
    all_minutes,
    danger,
    read_canner,
    read_minutes,
    read_psi,
    spelled_out,
    unsafe_way,
)
from pantry_tui.core.safety.values import READERS, is_unknown, seal_failed

WORDS = {
    "zero": "0", "nine": "9", "ten": "10", "nineteen": "19", "twenty": "20", "ninety": "90",
    "twenty one": "21", "thirty-nine": "39", "forty - five": "45", "a hundred": "100",
    "2 hundred": "200", "one hundred and five": "105", "a hundred and twenty": "120",
    "twenty nineteen": "20 19", "half an hour": "30 minutes", "half hour": "30 minutes",
    "a half hour": "30 minutes", "an hour": "1 hour", "Seventy": "70", "stone": "stone",
    "twenty zero": "20 0", "twenty ten": "20 10",
}  # fmt: skip


@pytest.mark.parametrize(("said", "meant"), WORDS.items())
def test_numbers_in_words(said: str, meant: str) -> None:
    assert spelled_out(said) == meant


TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
ONES = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine"]


@given(st.integers(0, 7), st.integers(0, 8))
def test_every_number_below_a_hundred_is_read(tens: int, ones: int) -> None:
    minutes = read_minutes(f"{TENS[tens]}-{ONES[ones]} minutes")
    assert minutes == 20 + 10 * tens + 1 + ones


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("25", 25), ("25 minutes", 25), ("25m", 25), ("1 h 15", 75), ("1h15", 75), ("1:15", 75),
        ("1 hour and 15 min", 75), ("2 hrs", 120), ("1.5 h", 90), ("1,5 hours", 90),
        ("20-25", 20), ("20 to 25", 20), ("25 – 20", 20), ("for 25 min", 25),
        ("25 min at 11 psi", 25), ("11 psi and 25 min", 25), ("25 min @ 76 kPa", 25),
        ("25 min at 0.7 bar", 25), ("25 minutes, 10 lb", 25), ("7.5", 7.5), ("1:05", 65),
        ("25.", 25), ("(25 min)", 25),
        # Of several the shortest, in hours too.
        ("1-2 hours", 60), ("1 to 1.5 h", 60), ("2-1 hours", 2), ("30 minutes to 1 hour", 30),
        ("45 min - 1 hour", 45), ("1:30-1:15", 75), ("1h-1h15", 60), ("90, 75", 75),
        ("90 and 75 min", 75), ("75 (60)", 60), ("2 hours and 1 hour 15", 75),
        ("1 hour, 15 minutes", 15), ("2 hours, 90", 90), ("10-11 psi 25 min", 25),
        ("a while", None), ("25 or so", None), ("25 jars", None), ("", None), ("min", None),
        ("about 25", None), ("25 psi", None),
    ],
)  # fmt: skip
def test_minutes_the_shorter_of_a_range(text: str, minutes: float | None) -> None:
    assert read_minutes(text) == minutes


@pytest.mark.parametrize(
    ("text", "every"),
    [
        ("1-2 hours", [60, 120]), ("2-1 hours", [2, 120, 60]), ("20 - 1 hour", [20, 1200, 60]),
        ("20-25 m", [20, 25]), ("a while", []), ("1 h 15 to 1:30", [75, 90]), ("", []),
    ],
)  # fmt: skip
def test_every_time_that_is_named(text: str, every: list[float]) -> None:
    assert all_minutes(text) == every


@pytest.mark.parametrize(
    ("text", "psi"),
    [
        ("11", 11.0), ("11 lb", 11.0), ("11 lbs of pressure", 11.0), ("eleven pounds", 11.0),
        ("10-12 psi", 10.0), ("76 kPa", 11.02), ("0.7 bar", 10.15), ("11 psig", 11.0),
        ("loud", None), ("11 or so", None), ("psi", None), ("11 jars", None),
        ("15, 10", 10.0), ("15 lb at 10", 10.0), ("11 (10) psi", 10.0), ("11 psi, 76 kPa", 11.0),
        ("69-76 kPa", 10.01), ("1 bar", 14.5),
    ],
)  # fmt: skip
def test_pressures_the_lower_of_a_range(text: str, psi: float | None) -> None:
    assert read_psi(text) == (None if psi is None else pytest.approx(psi, abs=0.01))


@pytest.mark.parametrize(
    ("text", "jar"),
    [
        ("half-pint", "half-pint"), ("half pints", "half-pint"), ("½ pint", "half-pint"),
        ("1/2 pint", "half-pint"), ("8 oz", "half-pint"), ("8.1 oz", "pint"), ("pint", "pint"),
        ("7 pint jars", "pint"), ("2 pint jars", "quart"), ("1½ pints", "quart"),
        ("pint and a half", "quart"), ("16 ounces", "pint"), ("17 oz", "quart"), ("qt", "quart"),
        ("12 quarts", "quart"), ("2 quart", "half-gallon"), ("33 oz", "half-gallon"),
        ("half gallon", "half-gallon"), ("half-gallon", "half-gallon"), ("64 oz", "half-gallon"),
        ("1 gallon", BIGGER), ("65 oz", BIGGER), ("3 gal", BIGGER), ("2 l", BIGGER),
        ("200 ml", "half-pint"), ("237 ml", "pint"), ("473 ml", "pint"), ("475 ml", "quart"),
        ("0.5 litre", "quart"), ("1 liter", "half-gallon"), ("1.9 l", BIGGER),
        ("17 ounces", "quart"), ("1.5 pt", "quart"), ("1.5 quarts", "half-gallon"),
        ("1.5 qt", "half-gallon"), ("0.75 gallon", BIGGER), ("0.946 l", "quart"),
        ("0.947 l", "half-gallon"), ("0.946 litres", "quart"), ("0.947 liters", "half-gallon"),
        ("half litre", "quart"), ("1 3/4 pint jars", "quart"), ("1¼ pints", "quart"),
        ("3/4 pint", "pint"), ("1 1/3 quarts", "half-gallon"), ("1/4 litre", "pint"),
        ("3 pint jars", "pint"), ("7 pt jars", "pint"), ("7 pints", "pint"),
        # The size of one, and not how many: by its hyphen, or since it is one jar.
        ("3-quart jars", BIGGER), ("3 quart jar", BIGGER), ("3-pint", "half-gallon"),
        # In words, with a sign, behind a count, with a mark before three digits.
        ("two-quart", "half-gallon"), ("two pint", "quart"), ("three quart jar", BIGGER),
        ("one and a half quarts", "half-gallon"), ("1½ litre", "half-gallon"),
        ("two litre", BIGGER), ("6 500 ml jars", "quart"), ("7 16 oz jars", "pint"),
        ("500-750 ml", "quart"), ("1,000 ml", "half-gallon"), ("1.000 ml", "half-gallon"),
        ("10000 ml", BIGGER), ("12,000 ml", BIGGER), ("1,000,000 ml", BIGGER), ("0,75 l", "quart"),
        ("0,946 l", "quart"), ("1,5 l", "half-gallon"), ("750 millilitres", "quart"),
        ("750 milliliter", "quart"), ("33,5 oz", "half-gallon"),
        ("7 qt jars", "quart"), ("3 gallon jars", BIGGER),
        # Of several sizes the largest.
        ("pints and quarts", "quart"), ("pint or half-pint", "pint"), ("quart/pint", "quart"),
        ("pints, 2 quarts", "half-gallon"), ("500 ml or 1 l", "half-gallon"),
        ("a pint & a quart", "quart"), ("half-pint to pint", "pint"), ("pint; 8 oz", "pint"),
        ("pts", "pint"), ("small", None), ("", None), ("painted jar", None), ("3", None),
    ],
)  # fmt: skip
def test_a_jar_is_never_taken_for_a_smaller_one(text: str, jar: str | None) -> None:
    assert read_jar(text) == jar


@given(st.floats(0.1, 64))
def test_the_published_jar_holds_as_much_or_just_more(ounces: float) -> None:
    jar = read_jar(f"{ounces:.2f} oz")
    assert jar is not None
    held = round(ounces, 2)
    assert JARS[jar] >= held
    assert all(size < held for size in JARS.values() if size < JARS[jar])


@pytest.mark.parametrize(
    ("text", "canner"),
    [
        ("dial", "dial"), ("weighted gauge", "weighted"), ("jiggler", "weighted"),
        ("rocker", "weighted"), ("pressure", "pressure"), ("dial-gauge pressure canner", "dial"),
        ("Boiling water", "boiling-water"), ("water-bath", "boiling-water"),
        ("waterbath", "boiling-water"), ("steam", "steam"), ("atmospheric", "steam"),
        ("cauldron", None), ("", None),
        # Of two gauges nobody knows which it was; water may boil in a pressure canner too.
        ("dial or weighted", "pressure"), ("steam pressure canner", "pressure"),
        ("atmospheric pressure", "steam"), ("steam over boiling water", "steam"),
        ("water bath in a pressure canner", None), ("weighted or boiling water", None),
        ("no pressure canner", None), ("dial, not vented", None), ("the dial isn’t right", None),
        ("dial, vented", "dial"),
    ],
)  # fmt: skip
def test_canners(text: str, canner: str | None) -> None:
    assert read_canner(text) == canner


@pytest.mark.parametrize(
    "text",
    [
        "open kettle", "hot-fill", "ovens", "microwave", "dishwasher", "inverted", "upside down",
        "flipped", "turned over", "wax", "paraffin", "canning powder", "aspirin", "multi-cooker",
        "electric", "instant", "slow cooker", "crockpot", "air fryer", "sous vide",
        "pressure cooker", "pressure saucepan", "sun canned", "in the sun", "solar",
    ],
)  # fmt: skip
def test_a_way_that_no_publication_tests_is_danger_wherever_it_is_written(text: str) -> None:
    assert danger(text.upper())
    assert unsafe_way(text) == danger(text)


@pytest.mark.parametrize(
    "text", ["none", "No ", "not processed", "0", "00", "without", "no process"]
)
def test_not_processed_is_a_danger_where_the_way_is_written(text: str) -> None:
    unsafe = unsafe_way(text)
    assert unsafe is not None
    assert "not processed" in unsafe
    assert danger(text) is None, "vinegar=none is another thing"


@pytest.mark.parametrize("text", ["boiling-water", "pressure canner", "dial", "25", "Sunniva"])
def test_what_is_tested_is_no_danger(text: str) -> None:
    assert unsafe_way(text) is None


@pytest.mark.parametrize(
    ("value", "no"),
    [("none", True), ("no lemon", True), ("NOT added", True), ("without", True), ("0", True),
     ("0.0", True), ("forgotten", True), ("forgot it", True), ("nothing", True), ("note", False),
     ("0.5 tsp", False), ("yes", False), ("", False), ("2 tbsp", False), ("northern", False)],
)  # fmt: skip
def test_what_begins_with_a_no_says_no(value: str, no: bool) -> None:
    assert denies(value) is no


@pytest.mark.parametrize(
    ("value", "failed"),
    [("failed", True), ("No", True), ("n", True), ("false", True), ("not sealed", True),
     ("none did", True), ("LOOSE", True), ("tight", False), ("yes", False), ("all", False)],
)  # fmt: skip
def test_a_seal_that_failed(value: str, failed: bool) -> None:
    assert seal_failed(value) is failed


@pytest.mark.parametrize("value", ["", " ? ", "Unknown", "not recorded", "not known"])
def test_nobody_knows_is_an_answer(value: str) -> None:
    assert is_unknown(value)
    assert not is_unknown(f"{value.strip()} x")


#: Key -> what is understood, what is not.
UNDERSTOOD: dict[str, tuple[list[str], list[str]]] = {
    "process": (["boiling water", "usda tested recipe", "a guide", "Tested, proven"],
                ["as my mother did", "tested by me", "cauldron"]),
    "pack": (["hot", "RAW", "cold-pack", "hot packed"], ["hot and raw", "loosely", "hotly"]),
    "acid": (["lemon", "2 tbsp bottled lemon juice", "citric acid", "yes", "none", "0",
              "1/4 tsp citric"],
             ["some", "lemon curd", "juice", "2 tbsp", "magic lemon"]),
    "vinegar": (["5%", "cider vinegar 5 %", "white wine", "yes", "none", "homemade", "50 grain"],
                ["strong stuff", "", "%", "brandy"]),
    "altitude": (["1800ft", "550 m", "1,800 ft", "-1500", "20000", "0"],
                 ["a mile", "-1501", "20001", "high"]),
    "seal": (["tight", "Pinged", "failed", "yes", "no", "not yet"], ["perhaps", "2", "popped"]),
    "headspace": (["1/2 in", "1 inch", "1 cm"],
                  ["in", "1 thumb"]),
    "salt": (["2.25%", "3 tbsp per quart", "two tsp sea salt", "yes", "no"],
             ["to taste", "salt", "3 handfuls"]),
    "sugar": (["60%", "2 lb", "light syrup 30%", "40 brix"], ["sweet", "a lot"]),
    "ph": (["4.1"], ["sour", "4.1 lb"]),
    "vacuum": (["yes", "NO", "true"], ["rather", "2"]),
    "blanched": (["yes", "3 min", "no", "two minutes"], ["rather", "3 jars"]),
    "temperature": (["160F", "71 C", "160 degrees f", "71½ C"], ["hot", "160 K", "yes", "no"]),
    "cure": (["no 1", "pink 2", "yes", "0.25 percent", "prague powder no 1"], ["magic 3"]),
    "state": (["sealed", "OPEN", "thawed", "working", "in progress"], ["gone", "happy", ""]),
    "form": (["bone-in", "in water", "whole"], ["1", "a", "a 1", "not whole"]),
    "prepared": (["diced", "dry packed"], ["1", "a", "not diced", "pelled"]),
    "by": (["us", "Sunniva"], [""]),
    "amount": (["30lb"], [""]),
    "printed": (["2027-03-31"], [""]),
    "sold": (["shelf", "Chilled"], ["", "cold", "yes"]),
    "dated": (["use-by", "Best-before", "sell-by"], ["", "2027-03-31", "yes", "used by"]),
    "minutes": (["25", "1h15"], ["a while"]),
    "psi": (["11", "76kPa"], ["loud"]),
    "canner": (["dial"], ["pot"]),
    "jar": (["pint", "500ml"], ["small"]),
}  # fmt: skip


@pytest.mark.parametrize("key", list(READERS))
def test_what_may_stand_behind_a_key(key: str) -> None:
    understood, not_ = UNDERSTOOD[key]
    assert [one for one in understood if not READERS[key](one)] == []
    assert [one for one in not_ if READERS[key](one)] == []
