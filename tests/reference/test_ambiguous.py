"""Words that could be either of several foods: the table, and what it answers."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from pantry_tui.errors import DataError
from pantry_tui.reference.ambiguous import could_be, load_ambiguous, read_ambiguous
from pantry_tui.reference.tables import load_tables

Spoil = Callable[[str, int, str, str], None]


@pytest.mark.parametrize(
    "said", ["chili", "chilli", "Chile", "CHILI", "frozen chili", "chilli, homemade", "some chilli"]
)
def test_the_dish_and_the_vegetable_are_told_apart_by_asking(said: str) -> None:
    found = could_be(said)
    assert found is not None
    assert set(found.foods) == {"chili con carne", "chillies"}


@pytest.mark.parametrize(
    ("said", "foods"),
    [
        ("spaghetti sauce", {"spaghetti sauce without meat", "meat sauce"}),
        ("pasta sauce", {"spaghetti sauce without meat", "meat sauce"}),
        ("butter beans", {"lima beans", "dry beans"}),
        ("squash", {"zucchini", "winter squash", "acorn squash"}),
        ("cider", {"cider", "apple juice"}),
    ],
)
def test_a_word_that_could_be_either_names_both(said: str, foods: set[str]) -> None:
    found = could_be(said)
    assert found is not None
    assert set(found.foods) == foods
    assert found.why


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("chillies", "chillies"),
        ("chilli peppers", "chillies"),
        ("chili con carne", "chili con carne"),
        ("spaghetti sauce with meat", "meat sauce"),
        ("spaghetti sauce without meat", "spaghetti sauce without meat"),
        ("meatless spaghetti sauce", "spaghetti sauce without meat"),
        ("hard cider", "cider"),
        ("winter squash", "winter squash"),
    ],
)
def test_a_plain_name_is_not_asked_about(said: str, name: str) -> None:
    assert could_be(said) is None
    food = load_tables().facts(said)
    assert food is not None
    assert food.name == name


def test_every_food_has_a_name_that_is_not_asked_about() -> None:
    """Whoever is asked can answer: for each food offered one of its names is plain."""
    foods = {food.name: food for food in load_tables().foods}
    for meant in load_ambiguous().values():
        for name in meant.foods:
            names = (name, *foods[name].aliases)
            assert any(could_be(one) is None for one in names), name


@pytest.mark.parametrize(
    ("column", "value"),
    [("foods", "moon cheese;chillies"), ("foods", "chillies"), ("why", ""), ("words", ""),
     ("words", "the"), ("words", "pasta sauce")],
)  # fmt: skip
def test_a_bad_cell_is_named(folder: Path, spoil: Spoil, column: str, value: str) -> None:
    row = 4 if value == "pasta sauce" else 2
    spoil("ambiguous.csv", row, column, value)
    with pytest.raises(DataError, match=f"ambiguous.csv row {row}, column {column}"):
        read_ambiguous(folder, load_tables())
