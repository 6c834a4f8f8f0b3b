"""Opened tins, jars, pouches and cartons of a shop: the days in the cold, and none out of it.

Typed by hand. US FDA, USDA FSIS and Cornell with FMI, food storage data of 2018: what was canned is
not recommended in a pantry once it is open (370, 372, 373), formula has two days cold (369), baby
food two or three (363 to 366), milk of a tin four (383), coconut milk four (602), milk powder three
months in a pantry (465), olives two weeks (352), salsa a month (357), cranberry sauce a week or two
(565). USDA FSIS, Shelf-Stable Food Safety: cans high in acid five to seven days, low in acid three
or four. University of Missouri Extension MP557: canned meat, poultry and fish two days, baby food
two or three, pickles a month or two, canned food unopened a year, ketchup a month out of the cold.
"""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core.words import Method, State, Verdict
from tests.core.keeping.told import MADE, Told

SHELF = {"sold": "shelf"}


def days(found: date | None) -> int | None:
    return None if found is None else (found - MADE).days


def shut(food: str, size: str, place: str, process: dict[str, str]) -> Told:
    return Told(food, Method.BOUGHT, place, size=size, **process)  # type: ignore[arg-type]


def opened(food: str, size: str, place: str, **process: str) -> Told:
    """Bought shut, and opened at once where it then stands."""
    return shut(food, size, "larder", process).at(0, 10).open(place)


@pytest.mark.parametrize(
    ("food", "size", "process", "best", "last"),
    [
        ("infant formula", "tin", {}, None, 2), ("baby food", "tin", {}, None, 2),
        ("baby food", "jar", SHELF, 2, 2), ("baby food", "pouch", SHELF, 2, 2),
        # Prepared formula has a day (368), and nobody said which of both this is.
        ("infant formula", "bottle", SHELF, 1, 1), ("infant formula", "", {}, None, 1),
        ("evaporated milk", "tin", {}, 4, 4), ("condensed milk", "tin", {}, 4, 4),
        ("coconut milk", "tin", {}, 4, 4), ("coconut milk", "carton", SHELF, 4, 4),
        ("tomatoes", "jar", {}, None, 5), ("tomatoes", "carton", SHELF, None, 5),
        ("peaches", "jar", {}, None, 5), ("sauerkraut", "jar", {}, 5, 5),
        ("diced tomatoes", "carton", SHELF, 5, 5), ("pickled garlic", "jar", SHELF, 31, 5),
        ("carrots", "jar", SHELF, None, 3), ("chickpeas", "jar", {}, None, 3),
        ("dry beans", "carton", {}, None, 3), ("lentils", "pouch", {}, None, 3),
        ("pickling cucumbers", "jar", SHELF, None, 3), ("canned soup", "carton", {}, 3, 3),
        ("canned tuna", "pouch", {}, 2, 2), ("tuna", "pouch", SHELF, None, 2),
        ("tuna", "jar", SHELF, None, 2), ("beef stew", "jar", SHELF, None, 3),
        ("applesauce", "jar", {}, 7, 7), ("salsa", "jar", {}, 31, None),
        ("olives", "jar", {}, 14, None), ("dill pickles", "jar", {}, 31, None),
        ("marmalades", "jar", {}, 31, None), ("strawberry jam", "tin", {}, 31, None),
        ("low-sugar jams", "jar", {}, 21, None), ("cranberry sauce", "tin", {}, 7, None),
        ("cranberry sauce", "jar", {}, 7, None), ("apple juice", "carton", SHELF, 5, None),
        ("fruit juice", "carton", SHELF, 8, None), ("ketchups", "bottle", {}, 184, None),
    ],
)  # fmt: skip
def test_once_opened_it_has_so_many_days_in_the_cold(
    food: str, size: str, process: dict[str, str], best: int | None, last: int | None
) -> None:
    told = opened(food, size, "fridge", **process)
    judged = told.judged(0, 12)
    assert (days(judged.best_by), days(judged.discard_after)) == (best, last)
    assert judged.usable
    end = last if last is not None else best
    assert end is not None
    after = told.judged(end + 1)
    assert after.verdict is (Verdict.PAST_BEST if last is None else Verdict.DISCARD)


@pytest.mark.parametrize(
    ("food", "size", "process"),
    [
        *((food, size, SHELF)
          for food in ("tomatoes", "peaches", "diced tomatoes", "tomato sauce", "apple juice",
                       "orange juice", "fruit juice", "tomato juice", "applesauce", "salsa",
                       "cranberry sauce", "sauerkraut", "carrots", "canned soup", "canned tuna")
          for size in ("jar", "carton", "tin")),
        ("chickpeas", "jar", {}), ("infant formula", "tin", {}), ("baby food", "jar", {}),
        ("evaporated milk", "tin", {}), ("coconut milk", "tin", {}),
    ],
)  # fmt: skip
def test_what_was_canned_is_not_kept_open_in_a_pantry(
    food: str, size: str, process: dict[str, str]
) -> None:
    told = opened(food, size, "larder", **process)
    assert told.judged(0, 11).verdict is not Verdict.SOUND
    for day in (1, 20, 200):
        assert not told.judged(day).usable, day
        assert told.judged(day).verdict is Verdict.DISCARD


@pytest.mark.parametrize("size", ["jar", "tin", "bottle"])
@pytest.mark.parametrize("food", ["marmalades", "strawberry jam", "dill pickles", "pickled beets"])
def test_of_sugar_and_vinegar_nobody_says_how_long_it_stands_open(food: str, size: str) -> None:
    """They cannot hurt, and foodsafety.gov keeps them after a power cut; no row gives them days."""
    for place in ("kitchen", "larder", "vault"):
        for day in (0, 20, 400):
            judged = opened(food, size, place).judged(day)
            assert judged.verdict is Verdict.UNKNOWN
            assert judged.best_by is None


def test_ketchup_has_a_month_out_of_the_cold_and_olives_end_with_their_days_in_it() -> None:
    ketchup = opened("ketchups", "bottle", "larder")
    assert days(ketchup.judged(0).best_by) == 31
    assert ketchup.judged(40).verdict is Verdict.PAST_BEST
    for size, last in (("jar", 14), ("tin", 3)):
        olives = opened("olives", size, "larder")
        assert olives.judged(1).verdict is Verdict.UNKNOWN
        assert olives.judged(last).verdict is Verdict.UNKNOWN
        assert not olives.judged(last + 1).usable


@pytest.mark.parametrize("size", ["tin", "bag", "jar", "box"])
def test_milk_powder_stands_open_in_a_pantry_for_three_months(size: str) -> None:
    told = opened("powdered milk", size, "larder")
    assert days(told.judged(0).discard_after) == 92
    assert told.judged(60).verdict is Verdict.SOUND
    assert told.judged(93).verdict is Verdict.DISCARD


@pytest.mark.parametrize(
    ("food", "size", "process", "best"),
    [
        ("evaporated milk", "tin", {}, 365), ("condensed milk", "tin", {}, 365),
        ("coconut milk", "tin", {}, 731), ("coconut milk", "carton", SHELF, 731),
        ("olives", "jar", {}, 365), ("salsa", "jar", {}, 365), ("applesauce", "jar", {}, 365),
        ("cranberry sauce", "tin", {}, 365), ("powdered milk", "tin", {}, 1096),
        ("tuna", "pouch", SHELF, 365), ("carrots", "jar", SHELF, 365), ("tomatoes", "jar", {}, 365),
        ("pickling cucumbers", "jar", SHELF, 365),
    ],
)  # fmt: skip
def test_shut_it_stands_on_a_shelf_as_it_did_in_the_shop(
    food: str, size: str, process: dict[str, str], best: int
) -> None:
    for place in ("larder", "vault"):
        told = shut(food, size, place, process)
        if place == "larder":
            assert days(told.judged(1).best_by) == best
            assert told.judged(1).verdict is Verdict.SOUND
    cold = shut(food, size, "fridge", process).judged(1)
    assert cold.usable, "no shorter where it is cooler"
    assert cold.verdict is Verdict.SOUND


@pytest.mark.parametrize(
    ("food", "size", "process"),
    [
        # Nobody said that it stood on a shelf.
        ("tuna", "pouch", {}), ("coconut milk", "carton", {}), ("salsa", "tub", {}),
        ("hummus", "jar", {}), ("beef stew", "jar", {}), ("snap beans", "jar", {}),
        ("sweet corn", "pint jar", {}), ("pickled garlic", "jar", {}),
        # Somebody's own.
        ("sweet corn", "jar", {**SHELF, "by": "Lena"}),
        # Raw, cut, under vacuum, or cold.
        ("carrots", "jar", {"prepared": "sliced"}), ("beets", "pouch", {"vacuum": "yes"}),
        ("ground beef", "carton", SHELF), ("milk", "carton", {}),
    ],
)  # fmt: skip
def test_no_other_pack_is_taken_for_one(food: str, size: str, process: dict[str, str]) -> None:
    told = shut(food, size, "larder", process)
    assert told.judged(1).verdict is not Verdict.SOUND


@pytest.mark.parametrize("food", ["strawberries", "apples", "tomatoes", "carrots", "onions"])
@pytest.mark.parametrize("size", ["bag", "", "punnet", "crate"])
def test_a_crop_in_no_jar_stands_open_as_it_stood(food: str, size: str) -> None:
    judged = opened(food, size, "larder").judged(1)
    assert judged.usable == shut(food, size, "larder", {}).judged(1).usable
    assert judged.verdict is not Verdict.DISCARD


@pytest.mark.parametrize(
    ("food", "last"),
    [
        ("liver", 1), ("sausages", 1), ("bratwurst", 1), ("chorizo", 1), ("hams", 3),
        ("pastrami", 3), ("corned beef", 5), ("bacon", 7), ("hot dogs", 7), ("lunch meats", 3),
        ("ground beef", 1), ("beef steaks", 3), ("chicken pieces", 1),
    ],
)  # fmt: skip
def test_meat_that_was_opened_has_its_days_and_no_more(food: str, last: int) -> None:
    """foodsafety.gov, Cold Food Storage Chart; USDA FSIS, Ham Storage Chart; MP558."""
    told = Told(food, Method.BOUGHT, "fridge", size="pack").at(0, 11).open()
    assert told.judged(0).usable
    assert told.last(0) == last
    late = Told(food, Method.BOUGHT, "fridge", size="pack").at(1, 11).open()
    assert late.last(1) is not None
    came = Told(food, Method.BOUGHT, "fridge", State.OPEN, size="pack")
    assert came.judged(0).usable
    ends = came.last(0)
    assert ends is not None
    assert ends <= last
    assert came.judged(ends + 1).verdict is Verdict.DISCARD
    assert MADE + timedelta(days=ends) == came.judged(0).discard_after
