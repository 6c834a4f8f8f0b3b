"""The put-up line: nothing typed is dropped, and nothing breaks it."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pantry_tui.core.words import Method
from pantry_tui.reference.names import find_method
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.line import read_line
from pantry_tui.services.rows import PutUpReading

TODAY = date(2026, 11, 25)
PLACES = {
    "a": "basement", "b": "basement › north wall", "c": "basement › north wall › shelf 2",
    "d": "kitchen › shelf 2", "e": "chest freezer", "f": "fridge",
}  # fmt: skip


def read(line: str) -> PutUpReading:
    def food(text: str) -> str | None:
        facts = load_tables().facts(text)
        return facts.name if facts else None

    return read_line(line, today=TODAY, places=PLACES, find_food=food, find_method=find_method)


@pytest.mark.parametrize(
    ("line", "count", "food", "method", "place", "made"),
    [
        ("7 pint jars runner beans, pressure canned, north wall, yesterday", 7, "runner beans",
         Method.PRESSURE, "basement › north wall", date(2026, 11, 24)),
        ("frozen peas, 6 bags, chest freezer", 6, "peas", Method.FROZEN, "chest freezer", TODAY),
        ("six bags of peas frozen in the chest freezer 3 days ago", 6, "peas", Method.FROZEN,
         "chest freezer", date(2026, 11, 22)),
        ("a dozen half-pint jars strawberry jam, kitchen shelf 2, 2026-06-20", 12,
         "strawberry jam", Method.JAM, "kitchen › shelf 2", date(2026, 6, 20)),
        ("12 half pint jars of strawberry jam, jam, kitchen shelf 2", 12, "strawberry jam",
         Method.JAM, "kitchen › shelf 2", TODAY),
        ("1 crock sauerkraut, lactic ferment, basement, 1 nov", 1, "sauerkraut", Method.LACTIC,
         "basement", date(2026, 11, 1)),
        ("9 quart jars crushed tomatoes, boiling-water canned", 9, "crushed tomatoes",
         Method.BOILING_WATER, "", TODAY),
        ("2 jars French beans, pickled, fridge", 2, "snap beans", None, "fridge", TODAY),
    ],
)  # fmt: skip
def test_a_line_is_read_as_it_is_meant(
    line: str, count: int, food: str, method: Method | None, place: str, made: date
) -> None:
    found = read(line)
    problems = (*found.problems, *found.unread)
    assert (found.food, found.place, found.made) == (food, place, made), problems
    assert found.method is method
    assert found.count == count


def test_a_place_that_could_be_two_is_asked_about() -> None:
    assert any("could be" in one for one in read("2 jars peaches, dried, shelf 2").problems)


SAID = (
    "7 pint jars of runner beans pressure canned shelf 2 yesterday frobnicated , ; basement jam "
    "frozen tomatoes crushed note=spicy minutes=25 1/2/2026 today 12 lb bags fridge ½ (x) [b]"
)
WORDS = st.sampled_from(SAID.split())


@settings(max_examples=200)
@given(st.lists(WORDS, max_size=12))
def test_no_word_is_dropped(words: list[str]) -> None:
    """Every word is taken into a field, a problem, the unread list, or is a filler."""
    line = " ".join(words)
    found = read(line)
    kept = " ".join(
        [str(found), *PLACES.values(), *(m.value for m in Method if m is found.method)]
    ).lower()
    for word in found.unread:
        assert word in line.lower()
    if "frobnicated" in words:
        assert "frobnicated" in kept


@given(st.text(max_size=200))
def test_no_text_breaks_the_line(text: str) -> None:
    assert isinstance(read(text), PutUpReading)
