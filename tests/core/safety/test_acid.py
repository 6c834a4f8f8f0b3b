"""How much acid a jar of tomatoes takes, against what a person typed (USDA AIB 539, guide 3: two
tablespoons of bottled lemon juice or half a teaspoon of citric acid a quart, half of it a pint;
four tablespoons of 5 % vinegar instead)."""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.acid import acid_unsaid, too_little_acid, unacidified
from pantry_tui.core.safety.denial import denies
from pantry_tui.core.safety.record import read_details
from pantry_tui.core.safety.spoons import read_spoons
from pantry_tui.core.safety.strength import too_weak
from pantry_tui.core.words import Acidity, Group, Method
from pantry_tui.reference.tables import load_tables

TOMATOES = FoodFacts("tomatoes", Group.VEGETABLE, Acidity.ACIDIFIED, frozenset({"tomato"}))
PEACHES = FoodFacts("peaches", Group.FRUIT, Acidity.ACID)
SALSA = FoodFacts("salsa", Group.RELISH, Acidity.ACIDIFIED, frozenset({"acid-added"}))
WATER = Method.BOILING_WATER
PINT = "1 Tbsp bottled lemon juice or 1/4 tsp citric acid"
QUART = "2 Tbsp bottled lemon juice or 1/2 tsp citric acid"


@pytest.mark.parametrize(
    ("jar", "enough", "short"),
    [
        ("quart jars", "2 tbsp lemon juice", "1.5 tbsp lemon juice"),
        ("quart jars", "2 tablespoons bottled lemon juice", "2 teaspoons bottled lemon juice"),
        ("quart jars", "2 T lemon", "1 T lemon"),
        ("quart jars", "2T lemon", "2 t lemon"),
        ("quart jars", "6 t lemon", "5t lemon"),
        ("quart jars", "two tablespoons lemon juice", "a tablespoon lemon juice"),
        ("quart jars", "30 ml lemon juice", "15 ml lemon juice"),
        ("quart jars", "6 tsp lime juice", "5 tsp lime juice"),
        ("quart jars", "1/2 tsp citric acid", "1/4 tsp citric acid"),
        ("quart jars", "half tsp citric acid", "quarter 1/4 tsp citric acid"),
        ("quart jars", "½ tsp citric acid", "¼ tsp citric acid"),
        ("quart jars", "0.5 tsp citric acid", "0,25 tsp citric acid"),
        ("quart jars", "4 tbsp vinegar", "3 tbsp vinegar"),
        ("quart jars", "1/4 cup vinegar", "1/8 cup vinegar"),
        ("pint jars", "1 tbsp lemon juice", "1 tsp lemon juice"),
        ("pint jars", "1/4 tsp citric acid", "1/8 tsp citric acid"),
        ("pint jars", "2 tbsp vinegar", "1 tbsp vinegar"),
        ("half-pint jars", "1 1/2 tsp lemon juice", "1 tsp lemon juice"),
        ("half-gallon jars", "4 tbsp lemon juice", "2 tbsp lemon juice"),
        ("pint jars", "a tablespoon lemon juice", "2.75 tsp lemon juice"),
        ("half-pint jars", "1/2 tablespoon lemon juice", "a teaspoon lemon juice"),
        # As the makers of metric jars have it: 15 ml in 500 ml.
        ("500 ml jars", "15 ml lemon juice", "10 ml lemon juice"),
        ("1 litre jars", "30 ml lemon juice", "15 ml lemon juice"),
        # Said of a jar, it is of that jar.
        ("quart jars", "1 tbsp lemon juice per pint", "1 tbsp lemon juice per quart"),
        ("pint jars", "2 tbsp lemon juice per quart", "1 tsp lemon juice per pint"),
        # Of a jar of unknown size, as of the larger.
        ("jars", "2 tbsp lemon juice", "1 tbsp lemon juice"),
        ("", "2 tbsp lemon juice", "1 tbsp lemon juice"),
        ("quart jars", "2 tbs lemon", "1.5 tbs lemon"),
        ("quart jars", "2 tablespoons lemon", "1.5 tablespoons lemon"),
        ("quart jars", "6 teaspoons lemon", "5 teaspoons lemon"),
        ("quart jars", "1/4 cup vinegar", "1/6 cup vinegar"),
        # A part of a spoon is no spoon, "one half" no one and a half.
        ("pint jars", "half a cup lemon juice", "half a tablespoon lemon juice"),
        ("pint jars", "1/4 of a teaspoon citric acid", "1/8 of a teaspoon citric acid"),
        ("pint jars", "1 and a half tbsp lemon", "1 half tbsp lemon"),
        ("quart jars", "2 1/2 tbsp lemon", "1-1/2 tbsp lemon"),
        # To the least that a maker's 500 ml jar takes.
        ("quart jars", "0.47 tsp citric acid", "0.46 tsp citric acid"),
        ("pint jars", "0.235 tsp citric acid", "0.234 tsp citric acid"),
        # Of a range the lower end.
        ("quart jars", "2-3 tbsp lemon juice", "1-2 tbsp lemon juice"),
        ("quart jars", "2 or 3 tbsp lemon juice", "1 or 2 tbsp lemon juice"),
        ("pint jars", "1, 2 tbsp lemon juice", "2, 5 tsp lemon juice"),
        ("half-pint jars", "1.5 tsp lemon per half pint", "1.25 tsp lemon per 1/2 pint"),
        # Of several amounts the least.
        ("quart jars", "2 tbsp or 3 tbsp lemon juice", "2 tbsp or 1 tbsp lemon juice"),
    ],
)
def test_a_jar_takes_so_much_acid_and_no_less(jar: str, enough: str, short: str) -> None:
    assert too_little_acid(enough, jar) == ""
    assert too_little_acid(short, jar)
    assert too_weak(WATER, TOMATOES, jar, {"acid": enough}, [QUART, PINT]) == []
    (said,) = too_weak(WATER, TOMATOES, "", {"acid": short, "jar": jar}, [QUART, PINT])
    assert "is too little" in said
    assert "twice that for a quart" in said


@pytest.mark.parametrize(
    ("acid", "said"),
    [
        ("1/8 tsp citric acid", "0.125 tsp of citric acid is too little: 0.25 tsp are"),
        ("1 tsp or 2 tsp lemon", "1 tsp of lemon juice is too little: 3 tsp are"),
        ("1 tsp lime", "1 tsp of lime juice is too little: 3 tsp are"),
        ("1 tbsp vinegar", "3 tsp of vinegar is too little: 6 tsp are"),
    ],
)
def test_what_is_too_little_is_said_by_its_name(acid: str, said: str) -> None:
    whole = f"{said} published for a pint, twice that for a quart."
    assert too_little_acid(acid, "pint jars") == whole


def test_vinegar_in_place_of_lemon_juice_is_of_five_percent() -> None:
    """Four tablespoons of 5 % vinegar a quart (USDA AIB 539, guide 3), in either canner."""
    weak = "Vinegar of 3 % is too weak: no tested recipe is below 5 %."
    for method in (WATER, Method.PRESSURE):
        for typed in ("4 tbsp vinegar 3%", "vinegar 3%"):
            assert too_weak(method, TOMATOES, "quart jars", {"acid": typed}, [QUART]) == [weak]
        assert (
            too_weak(method, TOMATOES, "quart jars", {"acid": "4 tbsp vinegar 5%"}, [QUART]) == []
        )
    assert too_weak(Method.PRESSURE, SALSA, "pint jars", {"acid": "vinegar 3%"}, ["none"]) == []


@pytest.mark.parametrize(
    ("text", "spoons"),
    [
        ("2 T lemon", [6.0]), ("half a cup", [24.0]), ("2 and a half tsp", [2.5]),
        ("a tbsp", [3.0]), ("30 ml", [6.0]), ("1-2 tsp", [1.0, 2.0]), ("1 1 tsp", [1.0, 1.0]),
        ("1 to 2 tsp", [1.0, 2.0]), ("1 0.5 tsp", [1.0, 0.5]), ("1 1/1 tsp", [1.0, 1.0]),
        ("4/2 1/2 tsp", [2.0, 0.5]), ("lemon and 1/2 tsp", [0.5]), ("2 pint", None),
        ("1 3/2 tsp", [1.0, 1.5]), ("1.5 1/2 tsp", [1.5, 0.5]), ("1 tsp 1/2 tsp", [1.0, 0.5]),
        ("4 tbsp 5%", [12.0]), ("1 tsp per 1 quart", [1.0]), ("lemon", []), ("", []),
        ("1 lemon", None), ("2", None), ("2 g", None), ("1 tsp in 7 quart", None),
        ("1 tsp in 2 pint", None), ("half lemon", None), ("²", []),
    ],
)  # fmt: skip
def test_spoons_as_people_write_them(text: str, spoons: list[float] | None) -> None:
    assert read_spoons(text) == spoons


@pytest.mark.parametrize(
    "acid",
    ["lemon", "yes", "bottled lemon juice", "citric acid", "lemon juice and citric acid 1/8 tsp"],
)
def test_without_an_amount_of_one_acid_nothing_is_reckoned(acid: str) -> None:
    assert too_little_acid(acid, "quart jars") == ""


@pytest.mark.parametrize("asked", ["none", "as recipe", "1/2 cup bottled lemon juice per 7 quarts"])
def test_only_a_process_that_asks_for_acid_in_each_jar_has_such_an_amount(asked: str) -> None:
    assert too_weak(WATER, TOMATOES, "quart jars", {"acid": "1 tsp lemon juice"}, [asked]) == []


@pytest.mark.parametrize(
    ("food", "asked", "acid", "wrong"),
    [
        (TOMATOES, [QUART], "none", "No acid was added"), (TOMATOES, [QUART], "lemon", ""),
        (TOMATOES, [QUART], "fresh lemon", "differs in strength"),
        # Where one of its processes adds acid, or none is known for a tomato.
        (PEACHES, ["none", QUART], "none", "No acid was added"),
        (TOMATOES, [], "none", "No acid was added"), (PEACHES, [], "none", ""),
        (TOMATOES, ["as recipe"], "none", ""), (PEACHES, ["natural acid"], "none", ""),
    ],
)  # fmt: skip
def test_a_food_that_takes_acid_and_got_none(
    food: FoodFacts, asked: list[str], acid: str, wrong: str
) -> None:
    said = unacidified(food, asked, acid)
    assert len(said) == bool(wrong)
    assert wrong in " ".join(said)


@pytest.mark.parametrize(
    ("method", "process", "unsaid"),
    [
        (WATER, {}, True), (WATER, {"minutes": "35"}, True), (Method.PRESSURE, {}, True),
        (WATER, {"acid": "lemon"}, False), (WATER, {"vinegar": "5%"}, False),
        (WATER, {"acid": "none"}, True), (WATER, {"acid": "none", "vinegar": "5%"}, False),
        (WATER, {"acid": "unknown"}, True), (WATER, {"process": "tested"}, False),
        (WATER, {"process": "boiling-water"}, True), (Method.FROZEN, {}, False),
    ],
)  # fmt: skip
def test_whether_a_jar_that_takes_acid_says_nothing_of_any(
    method: Method, process: dict[str, str], unsaid: bool
) -> None:
    """USDA AIB 539: tomatoes take acid in either canner; a tested recipe says what it takes."""
    jar = Batch("b", "2A", SALSA, method, date(2026, 3, 1), "", tuple(process.items()))
    assert acid_unsaid(jar) is unsaid
    plain = Batch("b", "2A", PEACHES, method, date(2026, 3, 1), "", tuple(process.items()))
    assert acid_unsaid(plain) is False


@pytest.mark.parametrize("jelly", ["pepper jelly", "fig jam", "tomato jam", "dandelion jelly"])
@pytest.mark.parametrize("method", [Method.JAM, WATER])
def test_a_jam_that_is_safe_by_added_acid_alone_says_so_where_none_is_recorded(
    jelly: str, method: Method
) -> None:
    def jam(name: str, *process: tuple[str, str]) -> bool:
        facts = load_tables().facts(name)
        assert facts is not None
        return acid_unsaid(Batch("b", "2A", facts, method, date(2026, 3, 1), "", process))

    assert jam(jelly)
    assert jam(jelly, ("minutes", "10"))
    assert not jam(jelly, ("acid", "lemon"))
    assert not jam(jelly, ("vinegar", "5%"))
    assert not jam("strawberry jam"), "acid by its fruit"


@pytest.mark.parametrize(
    ("value", "none"),
    [
        ("none", True), ("0", True), ("0 tbsp", True), ("lemon juice 0 tbsp", True),
        ("0.0 tsp citric acid", True), ("0%", True), ("0.5 tsp citric acid", False),
        ("10 ml lemon", False), ("lemon", False), ("½ tsp citric acid", False),
    ],
)  # fmt: skip
def test_nought_of_an_acid_is_none(value: str, none: bool) -> None:
    assert denies(value) is none


def test_of_two_words_for_the_acid_nought_is_no_acid() -> None:
    both = read_details([("lemon", "0 tbsp"), ("citric", "1/2 tsp")])
    assert both.pairs == (("acid", "citric acid 1/2 tsp"),)
    assert both.problems == ()
