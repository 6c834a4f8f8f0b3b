"""How much of one food a table takes in a week, before anybody says so."""

from __future__ import annotations

import pytest

from pantry_tui.core.plan.appetite import Appetite


@pytest.mark.parametrize(
    ("food", "servings"),
    [("beets", 3.0), ("tomatoes", 3.0), ("potatoes", 7.0), ("rice", 7.0), ("bread", 7.0)],
)
def test_a_staple_may_be_on_the_table_once_a_day(food: str, servings: float) -> None:
    assert Appetite(4).of_food(food) == 4 * servings


def test_what_a_household_says_or_shows_goes_before_what_is_usual() -> None:
    assert Appetite(2, foods={"potatoes": 4.0}).of_food("potatoes") == 8.0
    assert Appetite(2, learned={"potatoes": 9.0}).of_food("potatoes") == 18.0
