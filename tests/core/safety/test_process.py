"""Doubt about a batch's process: what a record must show, and what it may never excuse."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.jars import BIGGER, read_jar
from pantry_tui.core.safety.measured import read_canner, read_minutes, read_psi, unsafe_way
from pantry_tui.core.safety.process import (
    Doubt,
    NotRecommended,
    ProcessRow,
    doubt,
    lookup,
    recorded,
)
from pantry_tui.core.safety.process_names import name_key
from pantry_tui.core.words import Acidity, Group, Method, Trust

BANDS: dict[str, list[tuple[int, int | None, int | None]]] = {
    "dial": [(0, 2000, 11), (2001, 4000, 12), (4001, 6000, 13), (6001, 8000, 14)],
    "weighted": [(0, 1000, 10), (1001, None, 15)],
    "boiling-water": [(0, 1000, None), (1001, 3000, None), (3001, 6000, None)],
}


def rows(
    food: str, jar: str, canner: str, minutes: int, *, less: int = 0, pack: str = "hot",
    option: str = "", acidify: str = "none", trust: Trust = Trust.REPRINT,
) -> list[ProcessRow]:  # fmt: skip
    """One process in all bands; `less` is taken off the pressure, boiling water gains time."""
    step = 5 if canner == "boiling-water" else 0
    return [
        ProcessRow(
            food,
            frozenset({name_key(food)}),
            pack,
            jar,
            canner,
            low,
            high,
            minutes + step * band,
            None if psi is None else psi - less,
            acidify,
            1.0,
            option,
            "typed",
            trust,
            "",
        )
        for band, (low, high, psi) in enumerate(BANDS[canner])
    ]


LEMON = "2 Tbsp bottled lemon juice or 1/2 tsp citric acid"
TABLE = [
    *rows("runner beans", "pint", "dial", 20), *rows("runner beans", "quart", "dial", 25),
    *rows("runner beans", "pint", "weighted", 20), *rows("runner beans", "quart", "weighted", 25),
    *rows("tomato sauce", "quart", "dial", 20, less=5, option="A", acidify=LEMON),
    *rows("tomato sauce", "quart", "dial", 15, option="B", acidify=LEMON),
    *rows("tomato sauce", "quart", "boiling-water", 40, acidify=LEMON),
    *rows("tomatoes", "quart", "boiling-water", 85, acidify=LEMON),
    *rows("figs", "quart", "boiling-water", 50, acidify=LEMON),
    *rows("peaches", "quart", "boiling-water", 25, acidify="natural acid"),
    *rows("peaches", "quart", "boiling-water", 30, acidify="natural acid", pack="raw"),
    *rows("dill pickles", "quart", "boiling-water", 15, acidify="5% vinegar", pack="raw"),
    *rows("strawberry jam", "half-pint", "boiling-water", 5, acidify="as recipe"),
    *rows("pears", "quart", "boiling-water", 45, acidify="natural acid"),
    *rows("apple juice", "quart", "boiling-water", 20), *rows("apple juice", "half-gallon",
                                                              "boiling-water", 25),
    *rows("pickled beets", "pint", "boiling-water", 30, acidify="5% vinegar"),
    *rows("tuna", "pint", "dial", 100, trust=Trust.MEMORY),
    *rows("mackerel", "pint", "dial", 100), *rows("mackerel", "pint", "weighted", 90,
                                                  trust=Trust.MEMORY),
]  # fmt: skip
ADVICE = [
    NotRecommended(name, frozenset({name_key(name)}), plain, "Advised against: too thick",
                   "Freeze", "typed", Trust.READ)
    for name, plain in (("Pumpkin butter", False), ("Cucumbers", True))
]  # fmt: skip

LOW, ACID, MADE = Acidity.LOW_ACID, Acidity.ACID, Acidity.ACIDIFIED
FOODS = {
    "runner beans": FoodFacts("runner beans", Group.VEGETABLE, LOW),
    "tomato sauce": FoodFacts("tomato sauce", Group.VEGETABLE, MADE, frozenset({"tomato"})),
    "tomatoes": FoodFacts("tomatoes", Group.VEGETABLE, MADE, frozenset({"tomato"})),
    "figs": FoodFacts("figs", Group.FRUIT, MADE),
    "peaches": FoodFacts("peaches", Group.FRUIT, ACID),
    "dill pickles": FoodFacts("dill pickles", Group.RELISH, MADE),
    "strawberry jam": FoodFacts("strawberry jam", Group.RELISH, ACID),
    "tuna": FoodFacts("tuna", Group.FISH, LOW),
    "mackerel": FoodFacts("mackerel", Group.FISH, LOW),
    "pears": FoodFacts("pears", Group.FRUIT, ACID),
    "apple juice": FoodFacts("apple juice", Group.DRINK, ACID),
    "beets": FoodFacts("beets", Group.VEGETABLE, LOW),
    "own jam": FoodFacts("own jam", Group.SWEET, ACID, told=True),
    "pepper jelly": FoodFacts("pepper jelly", Group.RELISH, MADE),
    "chutney": FoodFacts("chutney", Group.RELISH, MADE),
    "turkeys": FoodFacts("turkeys", Group.MEAT, LOW),
    "pumpkin butter": FoodFacts("pumpkin butter", Group.RELISH, LOW, known=False),
    "cucumbers": FoodFacts("cucumbers", Group.VEGETABLE, LOW),
}
PRESSURE, WATER, PICKLE = Method.PRESSURE, Method.BOILING_WATER, Method.VINEGAR_PICKLE


def asked(method: Method, food: str, size: str = "", ft: int = 0, **record: str) -> Doubt | None:
    return doubt(method, FOODS[food], size, record, ft, TABLE, ADVICE)


@pytest.mark.parametrize(
    ("method", "food", "size", "ft", "record"),
    [
        (PRESSURE, "runner beans", "quart jars", 0, {"minutes": "25", "psi": "11"}),
        (PRESSURE, "runner beans", "quart jars", 1800,
         {"minutes": "25 min", "psi": "15 lb", "canner": "weighted gauge"}),
        (PRESSURE, "runner beans", "pint jars", 0, {"minutes": "20"}),
        (PRESSURE, "runner beans", "pint jars", 9000, {"minutes": "20", "altitude": "1800ft"}),
        (PRESSURE, "tomato sauce", "quart", 0, {"minutes": "20", "psi": "6"}),
        (PRESSURE, "tomato sauce", "quart", 0, {"minutes": "15", "psi": "11"}),
        (PRESSURE, "tuna", "pint jars", 0, {"minutes": "100", "psi": "11"}),
        (WATER, "peaches", "quart jars", 0, {"minutes": "25", "pack": "hot"}),
        (WATER, "peaches", "quart jars", 0, {"mins": "twenty-five", "packed": "hot pack"}),
        (WATER, "peaches", "quart jars", 0, {"minutes": "30"}),
        (WATER, "peaches", "quart jars", 1001, {"minutes": "35", "process": "tested"}),
        (WATER, "peaches", "quart jars", 0, {"minutes": "30", "canner": "steam"}),
        (WATER, "tomatoes", "quart jars", 0, {"minutes": "85", "acid": "lemon juice 2 tbsp"}),
        (WATER, "tomatoes", "quart jars", 0, {"minutes": "85", "acid": "0.5 tsp citric acid"}),
        (PICKLE, "dill pickles", "quart jars", 0, {"vinegar": "5%", "minutes": "15"}),
        (PICKLE, "dill pickles", "quart jars", 0, {"vinegar": "white wine vinegar 6%"}),
        (PICKLE, "cucumbers", "quart jars", 0, {"vinegar": "50 grain"}),
        (Method.JAM, "strawberry jam", "half-pint jars", 0, {"minutes": "5"}),
        (WATER, "peaches", "quart jars", 0, {"minutes": "45", "canner": "steam"}),
        (WATER, "pears", "quart jars", 0, {"minutes": "45", "process": "atmospheric steam"}),
        (WATER, "peaches", "quart", 0, {"minutes": "30", "psi": "5"}),
        (WATER, "apple juice", "half-gallon jars", 0, {"minutes": "25"}),
        (WATER, "apple juice", "pint jars", 0, {"minutes": "20"}),
        (PICKLE, "beets", "pint jars", 0, {"minutes": "30", "vinegar": "5%"}),
        (PRESSURE, "runner beans", "pint jars", 0,
         {"minutes": "20", "psi": "11", "canner": "dial", "process": "pressure"}),
        (Method.JAM, "pepper jelly", "pint jars", 1000, {"minutes": "5"}),
        (Method.JAM, "pepper jelly", "pint jars", 1001, {"minutes": "10"}),
        (Method.JAM, "pepper jelly", "pint jars", 6000, {"minutes": "10"}),
        (Method.JAM, "pepper jelly", "", 6001, {"minutes": "15"}),
        (PICKLE, "chutney", "quart jars", 1000, {"minutes": "10"}),
        (PICKLE, "chutney", "quart jars", 0, {"jar": "pint"}),
        (Method.FRIDGE_PICKLE, "dill pickles", "quart", 0, {"process": "none", "vinegar": "5"}),
        (Method.FROZEN, "runner beans", "quart bags", 0, {"process": "none", "minutes": "3"}),
    ],
)  # fmt: skip
def test_a_published_process_leaves_no_doubt(
    method: Method, food: str, size: str, ft: int, record: dict[str, str]
) -> None:
    assert asked(method, food, size, ft, **record) is None


@pytest.mark.parametrize(
    ("method", "food", "size", "ft", "record", "named"),
    [
        (PRESSURE, "runner beans", "quart jars", 0, {"minutes": "20", "psi": "11"}, "25 minutes"),
        (PRESSURE, "runner beans", "quart jars", 0, {"minutes": "20-25"}, "25 minutes"),
        (PRESSURE, "runner beans", "", 0, {"jar": "quart", "time": "20"}, "25 minutes"),
        (PRESSURE, "runner beans", "pint jars", 0, {"psi": "10", "canner": "dial"}, "11 psi"),
        (PRESSURE, "runner beans", "pint jars", 1001, {"psi": "10", "canner": "weighted"}, "15"),
        (PRESSURE, "runner beans", "pint jars", 2001, {"psi": "11", "canner": "dial"}, "12 psi"),
        (PRESSURE, "runner beans", "pint jars", 0, {"psi": "11", "altitude": "2500 ft"}, "12 psi"),
        (PRESSURE, "runner beans", "pint jars", 8001, {"psi": "15", "canner": "dial"}, "8,001"),
        (PRESSURE, "runner beans", "half-pint jars", 0, {"minutes": "15"}, "20 minutes"),
        (PRESSURE, "runner beans", "", 0, {"minutes": "20", "psi": "11"}, "say jar=pint"),
        (PRESSURE, "runner beans", "pint", 1800, {"minutes": "20", "psi": "11"}, "canner=dial"),
        (PRESSURE, "runner beans", "pint", 0, {"mins": "5"}, "5 minutes"),
        (PRESSURE, "runner beans", "pint", 0, {"way": "oven"}, "Oven"),
        (PRESSURE, "runner beans", "pint", 0, {"minutes": "a while"}, "not understood"),
        (PRESSURE, "runner beans", "pint", 0, {"canner": "electric pressure canner"}, "electric"),
        (PRESSURE, "runner beans", "pint", 0, {"canner": "pressure cooker"}, "pressure cooker"),
        (PRESSURE, "runner beans", "pint", 0, {"canner": "steam", "minutes": "20"}, "Low-acid"),
        (PRESSURE, "runner beans", "pint", 0, {"sealed": "no"}, "did not seal"),
        (WATER, "peaches", "quart", 0, {"minutes": "25"}, "say pack=hot"),
        (WATER, "peaches", "quart", 0, {"minutes": "30", "ph": "4.8"}, "above 4.6"),
        (WATER, "tomatoes", "quart", 0, {"minutes": "85", "lemon": "fresh"}, "bottled"),
        (WATER, "tomatoes", "quart", 0, {"minutes": "85", "lemon": "no"}, "No acid"),
        (Method.JAM, "strawberry jam", "half-pint", 0, {"sealed": "inversion"}, "Turning"),
        (PICKLE, "dill pickles", "quart", 0, {"vinegar": "none"}, "No vinegar"),
        (PICKLE, "cucumbers", "quart", 0, {"canner": "steam"}, "No tested process"),
        (PRESSURE, "runner beans", "half-gallon jars", 0, {"minutes": "90"}, "larger"),
        (PRESSURE, "runner beans", "2 litre jars", 0, {"minutes": "90"}, "larger"),
        (PRESSURE, "runner beans", "quart", 0, {"pack": "raw", "minutes": "25"}, "packed raw"),
        (PRESSURE, "runner beans", "quart", 0, {"pack": "cold-pack"}, "packed raw"),
        (PRESSURE, "runner beans", "pint", 0, {"canner": "boiling water"}, "Low-acid"),
        (PRESSURE, "runner beans", "pint", 0, {"canner": "electric multi-cooker"}, "multi-cooker"),
        (PRESSURE, "tomato sauce", "quart", 0, {"minutes": "15", "psi": "6"}, "15 minutes at 6"),
        (PRESSURE, "tomato sauce", "quart", 0, {"minutes": "20", "acid": "no"}, "acid"),
        (PRESSURE, "tuna", "pint", 0, {"minutes": "90", "psi": "11"}, "100 minutes"),
        (PRESSURE, "mackerel", "pint", 0, {"minutes": "95"}, "100 minutes"),
        (PRESSURE, "turkeys", "pint", 0, {}, "No tested process"),
        (PRESSURE, "pumpkin butter", "pint", 0, {}, "too thick"),
        (PRESSURE, "cucumbers", "pint", 0, {}, "too thick"),
        (Method.JAM, "pumpkin butter", "pint", 0, {}, "too thick"),
        (WATER, "runner beans", "pint", 0, {}, "Low-acid"),
        (WATER, "runner beans", "pint", 0, {"minutes": "180"}, "Low-acid"),
        (WATER, "peaches", "quart", 0, {"minutes": "20"}, "25 minutes"),
        (WATER, "peaches", "quart", 1001, {"minutes": "25"}, "30 minutes"),
        (WATER, "peaches", "quart", 0, {"minutes": "25", "pack": "raw"}, "30 minutes"),
        (WATER, "peaches", "1 litre jars", 0, {"minutes": "60"}, "larger"),
        (WATER, "tomatoes", "quart", 0, {"minutes": "85", "acid": "no"}, "No acid"),
        (WATER, "tomatoes", "quart", 0, {"minutes": "85", "canner": "steam"}, "45 minutes"),
        (WATER, "peaches", "quart jars", 0, {"minutes": "50", "canner": "steam"}, "45 minutes"),
        (WATER, "figs", "quart", 0, {"acid": "none"}, "No acid"),
        (WATER, "peaches", "quart", 0, {"process": "open kettle"}, "Open-kettle"),
        (WATER, "peaches", "quart", 0, {"canner": "Oven"}, "Oven"),
        (WATER, "peaches", "quart", 0, {"process": "dishwasher"}, "dishwasher"),
        (WATER, "peaches", "quart", 0, {"process": "none"}, "not processed"),
        (Method.JAM, "strawberry jam", "half-pint", 0, {"process": "inversion"}, "Turning"),
        (Method.JAM, "strawberry jam", "half-pint", 0, {"process": "paraffin"}, "wax"),
        (Method.JAM, "strawberry jam", "quart", 0, {"minutes": "10"}, "larger"),
        (PICKLE, "dill pickles", "quart", 0, {"vinegar": "4%"}, "4 %"),
        (PICKLE, "dill pickles", "quart", 0, {"vinegar": "4,5 percent"}, "4.5 %"),
        (PICKLE, "dill pickles", "quart", 0, {"vinegar": "4-6%"}, "4 %"),
        (PICKLE, "dill pickles", "quart", 0, {"vinegar": "40 grain"}, "4 %"),
        (PICKLE, "dill pickles", "quart", 0, {"vinegar": "homemade"}, "unknown strength"),
        (PICKLE, "dill pickles", "quart", 0, {"vinegar": "red wine"}, "unknown strength"),
        (PICKLE, "dill pickles", "quart", 0, {"process": "none"}, "not processed"),
        (WATER, "dill pickles", "quart", 0, {"vinegar": "4"}, "4 %"),
        (Method.FRIDGE_PICKLE, "dill pickles", "quart", 0, {"vinegar": "3%"}, "3 %"),
        # A canner counts under whichever key it is named, and two of them are none.
        (WATER, "tomatoes", "quart", 0, {"minutes": "85", "process": "steam"}, "45 minutes"),
        (WATER, "tomatoes", "quart", 0, {"canner": "steam"}, "45 minutes"),
        (WATER, "peaches", "quart", 0, {"minutes": "46", "process": "steam"}, "45 minutes"),
        (PICKLE, "cucumbers", "quart", 0, {"process": "steam"}, "No tested process"),
        (PRESSURE, "runner beans", "pint", 0, {"process": "boiling water"}, "Low-acid"),
        (WATER, "runner beans", "pint", 0, {"canner": "dial", "psi": "11"}, "Low-acid"),
        (PRESSURE, "runner beans", "pint", 0, {"canner": "dial", "process": "water bath"},
         "two canners, dial and water bath"),
        (WATER, "peaches", "quart", 0, {"canner": "steam", "process": "pressure"}, "two canners"),
        (PRESSURE, "runner beans", "pint", 0, {"canner": "dial, not vented"}, "not understood"),
        (WATER, "tomato sauce", "quart", 0, {"canner": "pressure", "psi": "5"}, "5 psi is too"),
        (PRESSURE, "runner beans", "pint", 0, {"jar": "quart", "minutes": "20"}, "25 minutes"),
        (PRESSURE, "runner beans", "pint", 0, {"minutes": "15 - 25"}, "20 minutes"),
        (WATER, "apple juice", "half-gallon", 0, {"minutes": "24"}, "25 minutes"),
        (PICKLE, "beets", "pint jars", 0, {"minutes": "29"}, "30 minutes"),
        (Method.JAM, "pepper jelly", "quart jars", 0, {}, "larger than a pint"),
        (Method.JAM, "pepper jelly", "pint", 0, {"jar": "quart"}, "larger than a pint"),
        (Method.JAM, "pepper jelly", "gallon jars", 0, {}, "larger than a pint"),
        (Method.JAM, "pepper jelly", "pint", 1000, {"minutes": "4.5"}, "fewer than 5,"),
        (Method.JAM, "pepper jelly", "pint", 1001, {"minutes": "9"}, "fewer than 10,"),
        (Method.JAM, "pepper jelly", "pint", 6000, {"minutes": "9"}, "fewer than 10,"),
        (Method.JAM, "pepper jelly", "pint", 6001, {"minutes": "14"}, "fewer than 15,"),
        (PICKLE, "chutney", "half-gallon jars", 0, {}, "larger than a quart"),
        (PICKLE, "chutney", "pint", 0, {"minutes": "9"}, "fewer than 10,"),
        (PICKLE, "chutney", "pint", 1001, {"minutes": "14"}, "fewer than 15,"),
        (PICKLE, "chutney", "pint", 6001, {"minutes": "19"}, "fewer than 20,"),
    ],
)  # fmt: skip
def test_every_shortcoming_is_named(
    method: Method, food: str, size: str, ft: int, record: dict[str, str], named: str
) -> None:
    found = asked(method, food, size, ft, **record)
    assert found is not None
    assert any(named in one for one in found.problems), found.problems
    assert "Within 24 hours" in found.still_possible


def test_of_several_forms_the_strictest_that_fits_counts() -> None:
    """Boneless poultry takes longer than with bones (USDA AIB 539: quarts 90 and 75 minutes)."""
    table = [
        *rows("turkey, with bones", "quart", "dial", 75),
        *rows("turkey, without bones", "quart", "dial", 90),
    ]
    table = [replace(row, names=frozenset({name_key("turkeys")})) for row in table]
    turkeys = FOODS["turkeys"]

    def done(minutes: str, **more: str) -> Doubt | None:
        said = {"minutes": minutes, "psi": "11", **more}
        return doubt(PRESSURE, turkeys, "quart", said, 0, table, ())

    assert done("75") is not None
    assert done("90") is None
    assert done("75", form="bone-in") is None
    assert done("90", form="turkey without bones") is None
    assert done("75", form="boneless") is not None
    assert done("90", form="minced") is not None


def test_an_altitude_that_nobody_knows_is_checked_for_the_lowest_band_alone() -> None:
    def at(minutes: str, ft: int | None) -> Doubt | None:
        said = {"minutes": minutes, "pack": "hot"}
        return doubt(WATER, FOODS["peaches"], "quart", said, ft, TABLE, ADVICE)

    assert at("25", None) is None
    assert at("24", None) is not None, "too little even there"
    assert at("25", 1800) is not None


def test_a_recalled_figure_never_lifts_the_doubt_of_one_that_was_read() -> None:
    table = [
        *rows("tuna", "pint", "dial", 100, option="A"),
        *rows("tuna", "pint", "dial", 80, option="B", trust=Trust.MEMORY),
    ]

    def done(minutes: str, rows: Sequence[ProcessRow]) -> Doubt | None:
        return doubt(PRESSURE, FOODS["tuna"], "pint", {"minutes": minutes}, 0, rows, ())

    assert done("80", table) is not None
    assert done("80", table[len(table) // 2 :]) is None


def test_a_steam_canner_is_too_short_for_the_longest_that_it_may_have_been() -> None:
    """45 minutes at most (National Center for Home Food Preservation)."""
    table = [
        *rows("pears", "quart", "boiling-water", 45),
        *rows("pears", "quart", "boiling-water", 46, pack="raw"),
    ]

    def done(**said: str) -> Doubt | None:
        return doubt(WATER, FOODS["pears"], "quart", {"canner": "steam", **said}, 0, table, ())

    unsaid = done(minutes="45")
    assert unsaid is not None
    assert unsaid.problems == ("A steam canner cannot run for more than 45 minutes.",)
    assert done(minutes="45", pack="hot") is None


def test_what_nothing_lifts_is_said_once() -> None:
    for method, food, said in (
        (PRESSURE, "pumpkin butter", "Pumpkin butter: advised against: too thick."),
        (Method.JAM, "pumpkin butter", "Pumpkin butter: advised against: too thick."),
        (WATER, "runner beans", "Low-acid food in boiling water: spores live through it."),
    ):
        found = asked(method, food, "quart jars", minutes="1")
        assert found is not None
        assert found.problems == (said,)


def test_where_nobody_said_the_altitude_it_is_told_for_which_it_was_checked() -> None:
    said = {"minutes": "4"}
    found = doubt(Method.JAM, FOODS["pepper jelly"], "pint", said, None, TABLE, ADVICE)
    assert found is not None
    assert found.problems[0] == (
        "4 minutes are fewer than 5, the fewest that are published for a jam at 1,000 ft; no "
        "process for pepper jelly itself is known here."
    )


def test_a_smaller_jar_than_any_is_held_to_the_smallest_that_is() -> None:
    table = [*rows("pears", "pint", "dial", 10), *rows("pears", "half-gallon", "dial", 30)]
    said = {"minutes": "10", "psi": "11"}
    assert doubt(PRESSURE, FOODS["pears"], "half-pint jars", said, 0, table, ()) is None


def test_a_band_holds_from_its_lower_to_its_upper_edge() -> None:
    band = replace(rows("pears", "pint", "dial", 10)[0], low_ft=1, high_ft=2000)
    assert [band.at(ft) for ft in (-50, 0, 1, 2000, 2001)] == [False, False, True, True, False]


@pytest.mark.parametrize(
    ("acidify", "adds"),
    [("", None), ("none", None), ("natural acid", None), (LEMON, LEMON), ("as recipe",) * 2],
)
def test_what_a_process_adds(acidify: str, adds: str | None) -> None:
    (row, *_) = rows("pears", "quart", "boiling-water", 45, acidify=acidify)
    assert row.adds_acid == adds


@pytest.mark.parametrize(
    ("food", "taste"),
    [("peaches", True), ("chutney", False), ("own jam", False), ("runner beans", False)],
)
def test_only_what_is_acid_by_itself_may_be_tasted(food: str, taste: bool) -> None:
    """And not by a household's own word, under a lid or not."""
    for method in (Method.JAM, Method.LACTIC):
        found = asked(method, food, "pint", salt="none", process="none")
        assert found is not None
        assert found.still_possible.endswith("After that discard it.") is taste
        assert found.still_possible.endswith("discard it without tasting.") is not taste


def test_low_acid_food_is_discarded_without_tasting() -> None:
    beans = asked(PRESSURE, "runner beans", "pint", minutes="10")
    peaches = asked(WATER, "peaches", "quart", minutes="5")
    butter = asked(PRESSURE, "pumpkin butter", "pint")
    assert beans
    assert peaches
    assert butter
    assert beans.still_possible.endswith("After that discard it without tasting.")
    assert peaches.still_possible.endswith("After that discard it.")
    assert "process it again" in beans.still_possible
    assert "process it again" not in butter.still_possible


def test_an_empty_record_is_no_problem_and_is_told_apart() -> None:
    assert asked(PRESSURE, "runner beans", "pint jars") is None
    assert asked(PRESSURE, "runner beans", "pint jars", minutes="", canner="unknown") is None
    assert not recorded({})
    assert not recorded({"minutes": " ", "psi": "?", "process": "unknown", "jar": "pint"})
    assert recorded({"Minutes": "20"})
    assert recorded({"process": "open kettle"})


def test_lookup_gives_every_option_whole_and_holds_to_the_bands() -> None:
    found = lookup(TABLE, "tomato sauce", "quart", "dial", 0, None)
    assert {(row.minutes, row.psi) for row in found} == {(20, 6), (15, 11)}
    psi = [
        lookup(TABLE, "runner beans", "pint", "weighted", ft, "hot")[0].psi
        for ft in (-50, 0, 1000, 1001, 20_000)
    ]
    assert psi == [10, 10, 10, 15, 15]
    assert lookup(TABLE, "runner beans", "pint", "dial", 8000, None)
    assert not lookup(TABLE, "runner beans", "pint", "dial", 8001, None)
    assert not lookup(TABLE, "runner beans", "half-pint", "dial", 0, None)
    assert not lookup(TABLE, "runner beans", "pint", "dial", 0, "raw")


JARRED = st.sampled_from(["pint", "quart"])
GAUGES = st.sampled_from(["dial", "weighted", ""])
FEET = st.integers(0, 8000)
PAIRED = st.sampled_from(["runner beans", "tomato sauce"])


@given(JARRED, st.sampled_from(["dial", "weighted"]), FEET, st.integers(0, 40), st.integers(0, 20))
def test_less_than_published_is_never_without_a_problem(
    jar: str, gauge: str, ft: int, minutes: int, psi: int
) -> None:
    published = lookup(TABLE, "runner beans", jar, gauge, ft, None)[0]
    assert published.psi is not None
    found = asked(
        PRESSURE, "runner beans", jar, ft, minutes=str(minutes), psi=str(psi), canner=gauge
    )
    assert (found is not None) == (minutes < published.minutes or psi < published.psi)


@given(
    PAIRED, GAUGES, FEET, st.integers(0, 40), st.integers(0, 20), st.integers(0, 9), st.integers(0)
)
def test_more_never_makes_a_new_problem(
    food: str, gauge: str, ft: int, minutes: int, psi: int, longer: int, harder: int
) -> None:
    harder %= 6
    record = {"canner": gauge} if food == "runner beans" else {"canner": "dial"}
    before = asked(PRESSURE, food, "quart", ft, minutes=str(minutes), psi=str(psi), **record)
    more = {"minutes": str(minutes + longer), "psi": str(psi + harder)}
    after = asked(PRESSURE, food, "quart", ft, **more, **record)
    assert before is not None or after is None


@given(FEET, st.integers(0, 120), st.sampled_from(["peaches", "tomatoes", "figs"]))
def test_boiling_water_needs_the_time_of_its_altitude(ft: int, minutes: int, food: str) -> None:
    found = asked(WATER, food, "quart", ft, minutes=str(minutes))
    published = lookup(TABLE, food, "quart", "boiling-water", ft, None)
    enough = bool(published) and minutes >= max(row.minutes for row in published)
    assert (found is None) == enough


@pytest.mark.parametrize(
    ("text", "minutes"),
    [("25", 25), ("25 min", 25), ("1 h 15", 75), ("1:15", 75), ("1.5 h", 90), ("2 hours", 120),
     ("1h30", 90), ("20-25 min", 20), ("25 min at 11 psi", 25), ("a while", None), ("", None)],
)  # fmt: skip
def test_minutes_are_read(text: str, minutes: float | None) -> None:
    assert read_minutes(text) == minutes


def test_pressures_are_read_in_what_gauges_show() -> None:
    assert read_psi("11 lb") == 11
    assert read_psi("loud") is None
    assert read_psi("76 kPa") == pytest.approx(11.02, abs=0.01)
    assert read_psi("0.7 bar") == pytest.approx(10.15, abs=0.01)


@pytest.mark.parametrize(
    ("text", "jar"),
    [("pint jars", "pint"), ("7 pint jars", "pint"), ("quart", "quart"), ("half-pint", "half-pint"),
     ("½ pint", "half-pint"), ("12 oz", "pint"), ("1 1/2 pint jars", "quart"), ("500 ml", "quart"),
     ("1 litre", "half-gallon"), ("half gallon", "half-gallon"), ("5 l", BIGGER),
     ("small jars", None), ("", None)],
)  # fmt: skip
def test_jars_are_read_never_smaller_than_they_are(text: str, jar: str | None) -> None:
    assert read_jar(text) == jar


def test_canners_and_unsafe_ways_are_read() -> None:
    said = ["dial gauge", "Weighted-gauge", "pressure canner", "water-bath", "steam canner", "pot"]
    read = ["dial", "weighted", "pressure", "boiling-water", "steam", None]
    assert [read_canner(one) for one in said] == read
    assert unsafe_way("no process")
    assert unsafe_way("turned upside down")
    assert unsafe_way("boiling-water") is None
    assert unsafe_way("tested, proven") is None
