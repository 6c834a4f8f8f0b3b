"""A figure stands for the food it was published for and for nothing that only shares its group.

Typed by hand: jams, jellies and preserves of acid fruit keep a year (National Center for Home Food
Preservation, jam and jelly pages); uncooked jam three weeks cold (University of Georgia, freezer
jam); whole eggs in vinegar three months cold (NCHFP, pickled eggs); fish in vinegar four weeks
(Michigan State University, 1997); cold-smoked fish ten days (UK Food Standards Agency); cooked
shellfish three days (FSIS and FMI table); fruit and herb vinegar three months (Colorado State
University Extension); unprocessed pickles two months cold (the same, pickles, 2010); dried
vegetables six months and fruit a year at 60 F (Clemson Extension; NCHFP). Egg whites have two to
four days (FSIS), never the five weeks of eggs.
"""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.core.words import Climate, Method
from pantry_tui.errors import Refused
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.batchwork import putup
from pantry_tui.services.batchwork.understood import read
from pantry_tui.services.lookup.shelf_life import keeps
from pantry_tui.services.pantry import Pantry

MADE = date(2026, 6, 1)


@pytest.mark.parametrize(
    ("method", "food", "climate", "best", "discard"),
    [
        ("jam", "strawberries", "pantry", "2027-06-01", None),
        ("jam", "strawberry jam", "pantry", "2027-06-01", None),
        ("jam", "fig jam", "pantry", "2027-06-01", None),
        ("jam", "low-sugar jams", "pantry", "2027-06-01", None),
        ("freezer jam", "raspberries", "fridge", "2026-06-22", None),
        ("freezer jam", "freezer jams", "fridge", "2026-06-22", None),
        ("jam", "freezer jams", "fridge", "2026-06-22", None),
        ("fridge pickle", "eggs", "fridge", "2026-09-01", "2026-09-01"),
        ("vinegar pickle", "quail eggs", "fridge", "2026-09-01", "2026-09-01"),
        ("vinegar pickle", "herrings", "fridge", None, "2026-06-29"),
        ("cold smoked", "salmon", "fridge", None, "2026-06-11"),
        ("hot smoked", "shrimp", "fridge", None, "2026-06-04"),
        ("flavoured vinegar", "raspberries", "pantry", "2026-09-01", None),
        ("flavoured vinegar", "rosemary", "pantry", "2026-09-01", None),
        ("vinegar pickle", "chutney", "pantry", "2027-06-01", None),
        ("fridge pickle", "cucumbers", "fridge", "2026-08-01", None),
        ("fridge pickle", "pickled garlic", "fridge", "2026-08-01", None),
        ("fridge pickle", "pickled onions", "fridge", "2026-08-01", None),
        ("fridge pickle", "refrigerator pickles", "fridge", "2026-08-01", None),
        ("fridge pickle", "peaches", "fridge", "2026-08-01", None),
        ("dried", "carrots", "cellar", "2026-12-01", None),
        ("dried", "apples", "cellar", "2027-06-01", None),
    ],
)
def test_what_it_was_published_for(
    method: str, food: str, climate: str, best: str | None, discard: str | None
) -> None:
    found = keeps(load_tables(), method, food, climate=climate, made=MADE)
    assert (found["best_by"], found["discard_after"]) == (best, discard)


@pytest.mark.parametrize(
    ("method", "foods", "climate"),
    [
        (
            "jam",
            "salsa;ketchup;barbecue sauce;hot sauce;tomato sauce;chutney;corn relish;olives;capers;"
            "sauerkraut;kimchi;asian pears;fruit pie filling;applesauce;fruit leather;wine;"
            "kombucha;apple juice;vinegar",
            "pantry",
        ),
        ("freezer jam", "salsa;sauerkraut;olives;wine;tomato sauce;fruit leather", "fridge"),
        ("fridge pickle", "quiche;egg salad;egg whites;egg yolks;fish stock;fish roe", "fridge"),
        ("vinegar pickle", "quiche;egg salad;egg yolks;seafood salad;fish stock", "fridge"),
        ("vinegar pickle", "strawberry jam;asian pears;fruit leather;applesauce", "pantry"),
        ("cold smoked", "oysters;shrimp;fish roe;fish stock;seafood salad", "fridge"),
        ("hot smoked", "fish roe;fish stock;seafood salad", "fridge"),
        (
            "fridge pickle",
            "strawberry jam;fruit leather;dates;avocados;coconuts;bananas;melons;olives;salsa;"
            "ketchup;barbecue sauce;tomato sauce;sauerkraut;vanilla extract;vinegar;salt;"
            "fruit pie filling;applesauce;asian pears;dry beans;canned beans",
            "fridge",
        ),
        ("vinegar pickle", "tomato sauce;sauerkraut;dry beans;canned vegetables;salt", "fridge"),
        *(
            (
                "dried",
                "tomato sauce;avocados;coconuts;olives;fruit pie filling;applesauce;kimchi;"
                "zucchini relish;pickled beets;canned beans;sauerkraut;fermented garlic",
                climate,
            )
            for climate in ("room", "pantry", "fridge")
        ),
        ("flavoured vinegar", "melons;avocados;coconuts;bananas;dates;salsa;ketchup", "pantry"),
    ],
)
def test_what_only_shares_the_group_has_no_figure(method: str, foods: str, climate: str) -> None:
    for food in foods.split(";"):
        found = keeps(load_tables(), method, food, climate=climate, made=MADE)
        # A class that it might be of may still set a limit: three days, of shellfish.
        assert found["best_by"] is None, food
        assert (found["discard_after"] or "") <= "2026-06-04", food


def test_uncooked_jam_stands_in_no_pantry() -> None:
    found = keeps(load_tables(), "jam", "freezer jams", climate="pantry", made=MADE)
    assert not found["allowed"]


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("2 jars egg whites, fresh, fridge", "egg whites"),
        ("egg whites, fresh, fridge", "egg whites"),
        ("6 fresh eggs, fridge", "eggs"),
        ("2 jars eggs, fresh, fridge", "eggs"),
        ("2 jars uncooked strawberry jam, jam, fridge", "freezer jams"),
        ("2 jars green tomato jam, larder", "tomato jam"),
        ("2 jars pears, jam, larder", "mixed fruit jam"),
        ("2 jars olives, jam, larder", "olives"),
    ],
)
def test_which_food_it_is(larder: Pantry, line: str, food: str) -> None:
    assert read(larder, line).food == food


@pytest.mark.parametrize(
    "line",
    [
        "half cabbage, cellar-stored, larder", "half an onion, 4 oz, cellar-stored, larder",
        "pumpkin half, fresh, larder", "pumpkin pieces, fresh, larder",
        "pumpkin wedge, fresh, larder",
        "2 bags half-dried tomatoes, dried, larder", "2 bags half dried apricots, dried, larder",
    ],
)  # fmt: skip
def test_a_part_of_a_crop_is_no_whole_one_and_half_dried_is_not_dry(
    larder: Pantry, line: str
) -> None:
    found = putup.read(larder, line)
    with pytest.raises(Refused, match="may not stand"):
        putup.put_up(larder, found)


@pytest.mark.parametrize(
    "line", ["half a sack of potatoes, larder", "6 pieces of ginger, cellar-stored, larder"]
)
def test_half_a_sack_is_of_whole_ones(larder: Pantry, line: str) -> None:
    found = read(larder, line)
    assert not found.problems
    assert dict(found.process) == {}
    assert found.method is Method.CELLAR


def test_half_dried_food_has_no_figure_in_the_cold() -> None:
    found = keeps(load_tables(), "dried", "half dried tomatoes", climate=Climate.FRIDGE.value)
    assert found["best_by"] is None
    assert "no published figure" in str(found).casefold()


@pytest.mark.parametrize(
    "line",
    [
        *(f"2 pint jars {one}, jam, larder" for one in
          ("salsa", "ketchup", "tomato sauce", "asian pears", "chutney", "wine", "olives",
           "fruit pie filling", "applesauce", "sauerkraut", "vinegar")),
        "2 pint jars salsa, flavoured vinegar, larder",
        "2 pint jars ketchup, flavoured vinegar, larder",
        "2 pint jars tomato sauce, flavoured vinegar, larder",
        "2 pint jars miso, flavoured vinegar, larder",
        "2 pint jars tomato sauce, fridge pickle, fridge",
        "2 bags half-dried apricots, dried, fridge",
        "2 bags half-dried tomatoes, dried, fridge",
    ],
)  # fmt: skip
def test_what_no_recipe_was_tested_for_is_not_offered_where_it_could_hurt(
    larder: Pantry, line: str
) -> None:
    code = putup.put_up(larder, read(larder, line)).code
    batch = next(one for one in larder.stock.batches.values() if one.code == code)
    assert not larder.judge(larder.containers_of(batch)[0]).usable


@pytest.mark.parametrize(
    "line",
    ["2 pint jars tarragon, flavoured vinegar, larder", "2 pint jars garlic, flavoured vinegar, "
     "larder", "2 bags dried avocados, larder"],
)  # fmt: skip
def test_what_cannot_hurt_is_still_offered(larder: Pantry, line: str) -> None:
    code = putup.put_up(larder, read(larder, line)).code
    batch = next(one for one in larder.stock.batches.values() if one.code == code)
    assert larder.judge(larder.containers_of(batch)[0]).usable


@pytest.mark.parametrize(
    ("method", "food"),
    [("dried", "pate"), ("dried", "pemmican"), ("dried", "hot dogs"), ("dried", "rillettes")],
)
def test_what_may_be_of_a_class_has_no_figure_of_it(method: str, food: str) -> None:
    for made in (None, MADE):
        found = keeps(load_tables(), method, food, climate="pantry", made=made)
        assert found["published"]["safety"] is None
        assert found["discard_after"] is None
        assert found["discard_after_why"] == "in doubt"
        assert not any(one.startswith("Discard after") for one in found["reasons"])
