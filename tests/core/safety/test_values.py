"""What may stand behind each key of a record, tried at the edge of what any kitchen writes."""

from __future__ import annotations

import re

import pytest

from pantry_tui.core.safety.jars import JARS, ounces
from pantry_tui.core.safety.record import KEYS, read_details
from pantry_tui.core.safety.values import HINTS, READERS, says


def understood(key: str, value: str) -> bool:
    return not read_details([(key, value)]).problems


@pytest.mark.parametrize("key", KEYS)
def test_what_a_hint_says_may_be_written_is_understood(key: str) -> None:
    assert key in READERS
    examples = re.findall(r"\w+=(\S+?),?(?= |$)", HINTS[key])
    assert examples
    for example in examples:
        assert understood(key, example), example


@pytest.mark.parametrize("key", [key for key in KEYS if key not in ("by", "amount", "printed")])
def test_what_is_not_understood_is_told_what_may_be_written(key: str) -> None:
    assert READERS[key]("&?") is False
    (said,) = read_details([(key, "&?")]).problems
    assert said == f"{key}=&? is not understood: {HINTS[key]}."


@pytest.mark.parametrize(
    ("key", "most", "more"),
    [
        ("minutes", "6000", "6001"), ("minutes", "100h", "101h"), ("psi", "60 psi", "61 psi"),
        ("psi", "413 kPa", "415 kPa"), ("temperature", "1000F", "1001F"),
        ("headspace", "6in", "6.1in"), ("headspace", "15 cm", "16 cm"), ("ph", "10", "10.1"),
        ("ph", "1", "0.9"), ("ph", "4", "4+"),
        ("salt", "100%", "101%"), ("sugar", "100 percent", "100.5 percent"),
        ("by", "a" * 200, "a" * 201), ("form", "whole " * 33, "whole " * 34),
        ("prepared", "sliced " * 28, "sliced " * 29), ("salt", "1000000 g", "1000001 g"),
        ("altitude", "20000ft", "20001ft"),
    ],
)  # fmt: skip
def test_more_than_any_kitchen_reaches_is_refused(key: str, most: str, more: str) -> None:
    assert understood(key, most)
    assert not understood(key, more)


@pytest.mark.parametrize("key", ["salt", "sugar", "minutes", "psi", "headspace", "ph", "cure"])
def test_nothing_is_below_nought(key: str) -> None:
    for sign in ("-", "−", "–"):
        assert not understood(key, f"{sign}2"), sign
    assert understood(key, "2")


def test_degrees_feet_and_free_words_may_begin_with_a_line() -> None:
    for key, value in (
        ("temperature", "-18C"), ("altitude", "-100ft"), ("by", "-2 to -4 Mill Lane"),
        ("form", "-2 in pieces"), ("amount", "-5 lb"), ("printed", "-1"),
    ):  # fmt: skip
        assert understood(key, value), key


@pytest.mark.parametrize("value", ["1/0 in", "1/00 in", "1.123456789 in"])
def test_a_number_that_is_none(value: str) -> None:
    assert not understood("headspace", value)


@pytest.mark.parametrize(
    ("value", "fine"),
    [
        ("light syrup", True), ("extra heavy syrup", True), ("honey syrup", True), ("syrup", True),
        ("maple syrup", False), ("light", False), ("syrup light", False), ("60%", True),
    ],
)  # fmt: skip
def test_a_syrup_has_its_names(value: str, fine: bool) -> None:
    assert understood("sugar", value) is fine


@pytest.mark.parametrize(
    ("value", "fine"),
    [("sealed", True), ("Open", True), ("thawed", True), ("gone", False), ("new", False)],
)
def test_a_state_is_one_that_a_jar_can_come_in(value: str, fine: bool) -> None:
    assert understood("state", value) is fine


@pytest.mark.parametrize(
    ("name", "value"), [("lemon", "2"), ("citric", "1/2"), ("lemon", "half"), ("citric", "2 g")]
)
def test_an_amount_of_acid_is_of_a_spoon_a_cup_or_ml(name: str, value: str) -> None:
    """Half of what: a lemon, a spoon? What nobody can reckon is asked about."""
    (said,) = read_details([(name, value)]).problems
    assert said == f"{name}={value} is not understood: {HINTS['acid']}."
    assert read_details([(name, f"{value.removesuffix(' g')} tsp")]).problems == ()


def test_a_record_says_a_thing_of_its_own_key_in_any_letters() -> None:
    record = (("sold", "Shelf"), ("vacuum", "yes"))
    assert says(record, "sold", "shelf")
    assert not says(record, "sold", "chilled")
    assert not says(record, "vacuum", "shelf")
    assert not says((), "sold", "shelf")


@pytest.mark.parametrize("jar", JARS)
def test_a_jar_by_its_name_holds_what_it_does_among_other_words(jar: str) -> None:
    said = {
        ounces(text) for text in (jar, f"{jar} jar", f"{jar} jars", f"in {jar} jars, tall ones")
    }
    assert said == {float(JARS[jar])}
