"""A reason speaks of the food that it is about: what is said of a whole group names no kind of it,
unless it says that the figure is that kind's."""

from __future__ import annotations

import re

import pytest

from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import tried

#: Lines, and words that are of other food than theirs.
OTHER = {
    "6 pint jars strawberry jam, boiling-water canned, minutes=10, larder": "pickle|relish",
    "6 pint jars tomato ketchup, boiling-water canned, minutes=15, larder": "pickle|relish",
    "6 pint jars apple butter, boiling-water canned, minutes=5, larder": "pickle|relish",
    "3 bags ground venison, frozen, freezer": "beef|veal|lamb",
    "3 bags ground pork, frozen, freezer": "beef|veal|lamb",
    "2 packs bacon, fresh, fridge": r"(?<!held to uncooked cured )\bham",
    "2 jars grape juice, alcohol ferment, fridge": "(?<!as sweet )cider",
    "2 jars duck fat, rendered fat, fridge": "(?<!as )lard|(?<!lard or )tallow",
    "2 bottles maple syrup, sugar preserve, fridge": "cordial(?! or)",
}


@pytest.mark.parametrize("line", OTHER)
def test_no_reason_speaks_of_other_food(chilled: Pantry, line: str) -> None:
    found = tried(chilled, line)
    told = [one for one in found.reasons if re.search(OTHER[line], one.casefold())]
    assert told == []
    assert found.reasons
