"""Words of a put-up line that name two things at once: a method and a food or a place."""

from __future__ import annotations

from dataclasses import replace

import pytest

from pantry_tui.core.words import Climate, Method
from pantry_tui.services.batchwork.line import read_line
from pantry_tui.services.rows import PutUpReading
from tests.services.batchwork.test_line import KITCHEN

CELLAR = {"c": "cellar", "f": "fridge"}
ROOT = {"c": "root cellar", "f": "fridge", "g": "garage"}


def read(line: str, places: dict[str, str]) -> PutUpReading:
    kinds = {"c": Climate.CELLAR, "f": Climate.FRIDGE}
    return read_line(line, replace(KITCHEN, places=places, climates=kinds))[0]


@pytest.mark.parametrize(
    ("line", "food", "method"),
    [
        ("1 jar hummus, fridge pickle, fridge", "hummus", Method.FRIDGE_PICKLE),
        ("2 jars cucumbers, fridge pickle, fridge", "cucumbers", Method.FRIDGE_PICKLE),
        ("quick pickle, asparagus, 2 jars, fridge", "asparagus", Method.FRIDGE_PICKLE),
        ("4 jars apples, fruit butter, fridge", "apples", Method.JAM),
        ("2 jars fridge pickle, fridge", "refrigerator pickles", Method.FRIDGE_PICKLE),
    ],
)
def test_a_methods_own_name_is_a_food_only_where_no_other_is_named(
    line: str, food: str, method: Method
) -> None:
    got = read(line, CELLAR)
    assert (got.food, got.method, got.place) == (food, method, "fridge")
    assert not got.problems
    assert not got.unread


@pytest.mark.parametrize(
    "line",
    ["sauerkraut 10 kg cabbage lactic ferment, cellar", "10 kg cabbage, sauerkraut, cellar"],
)
def test_a_ferment_may_name_its_crop(line: str) -> None:
    got = read(line, CELLAR)
    assert (got.food, got.method) == ("sauerkraut", Method.LACTIC)
    assert not got.problems
    assert not got.unread


@pytest.mark.parametrize(
    ("typed", "name"),
    [("cheddar", "hard cheese"), ("gouda", "hard cheese"), ("feta", "feta"),
     ("mozzarella", "mozzarella")],
)  # fmt: skip
def test_a_cheese_may_be_called_one(typed: str, name: str) -> None:
    got = read(f"1 block {typed} cheese, cellar", CELLAR)
    assert got.food == name
    assert not any("Two foods" in one for one in got.problems)


@pytest.mark.parametrize("typed", ["milk, cheese", "butter and cheese"])
def test_milk_and_cheese_are_two_foods(typed: str) -> None:
    assert "Two foods" in read(f"1 pack {typed}, cellar", CELLAR).problems[0]


def test_a_ferment_and_its_crop_are_two_foods() -> None:
    assert "Two foods" in read("sauerkraut and cabbage, cellar", CELLAR).problems[0]


@pytest.mark.parametrize("said", [", root cellar", " root cellar", " in the root cellar"])
@pytest.mark.parametrize("places", [CELLAR, ROOT])
def test_a_root_cellar_is_a_place_before_it_is_a_method(said: str, places: dict[str, str]) -> None:
    got = read(f"50 lb potatoes{said}", places)
    assert (got.place, got.method) == (places["c"], Method.CELLAR)
    assert not got.problems
    assert not got.unread


def test_a_root_cellar_is_a_method_where_no_cellar_is_named() -> None:
    got = read("20 lb carrots, root cellar, garage", {"g": "garage"})
    assert (got.place, got.method) == ("garage", Method.CELLAR)


def test_the_kitchen_fridge_is_the_fridge_and_the_garage_fridge_is_asked_about() -> None:
    assert read("milk, kitchen fridge", CELLAR).place == "fridge"
    assert read("milk, kitchen fridge", {**CELLAR, "k": "kitchen fridge"}).place == "kitchen fridge"
    other = read("milk, garage fridge", CELLAR)
    assert other.asks[0].choices == ("fridge",)
    assert not other.unread


@pytest.mark.parametrize("jam", ["fig jam", "pepper jelly", "pepper jam", "tomato jam"])
def test_a_jam_that_is_sour_by_its_recipe_is_a_jam_in_boiling_water(jam: str) -> None:
    line = f"4 half-pint jars {jam}, boiling-water canned, cellar, minutes=10"
    assert read(f"{line} acid=lemon", CELLAR).method is Method.JAM
    assert read(line, CELLAR).method is Method.BOILING_WATER
    assert read(line.replace(jam, "strawberry jam"), CELLAR).method is Method.BOILING_WATER
