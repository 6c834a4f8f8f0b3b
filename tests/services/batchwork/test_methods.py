"""Gluts of a year: which ways are published for each, what they give and ask for, what is refused.

Figures by hand: yields of the USDA Complete Guide, Michigan State, Wyoming and Georgia; times of
AIB 539 below 1,000 ft; salt of the University of Minnesota; limits as in tests/published.
"""

from __future__ import annotations

import pytest

from pantry_tui.core.vessels import in_jars
from pantry_tui.core.words import Method
from pantry_tui.errors import BadInput
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.batchwork.methods import WAYS, Way, methods
from pantry_tui.services.inunits import Units
from pantry_tui.services.pantry import Pantry

#: What there is | method | product | what it gives | how long it lasts (part) | a need (part).
ALLOWED = """
    12 lb asparagus | pressure canned | asparagus | 3 quart jars | 12 months | 40 min at 11 psi
    3 lb rhubarb | frozen | rhubarb | 3 pint packs | freezer: 8 to 12 months | 1 min in water
    8 lb strawberries | jam | strawberry jam | - | 12 months | boiling-water canner
    8 lb strawberries | frozen | strawberries | 8 pint packs | freezer | 0 °F
    4 lb peas | frozen | peas | 1 pint packs | freezer: 8 to 12 months | 1.5 min in water
    14 lb green beans | pressure canned | snap beans | 7 quart jars | 12 months | 25 min at 11 psi
    14 lb green beans | vinegar pickle | dilly beans | - | 12 months | vinegar
    3 lb green beans | frozen | snap beans | 4 pint packs | freezer | 3 min in water
    10 lb cherries | boiling-water canned | cherries | 4 quart jars | 12 months | jar lifter
    5 lb blueberries | frozen | blueberries | 5 pint packs | freezer | 0 °F
    17.5 lb peaches | boiling-water canned | peaches | 7 quart jars | 12 months | 25 min
    20 lb apricots | dried | apricots | 3.5 lb dry | 12 months | 24 to 36 at 140 °F
    10 lb cucumbers | lactic ferment | dill pickles | - | fridge: 4 to 6 months | 0.5 cup salt
    14 lb cucumbers | vinegar pickle | dill pickles | 7 quart jars | 12 months | 15 min
    21 lb tomatoes | boiling-water canned | tomatoes | 7 quart jars | 12 months | lemon juice
    35 lb tomatoes | boiling-water canned | tomato sauce | 7 quart jars | 12 months | 40 min
    5 lb zucchini | frozen | zucchini | 4 pint packs | freezer | 3 min in water
    9 lb sweet corn | frozen | sweet corn | 4 pint packs | freezer | 4 min in water
    9 lb sweet corn | pressure canned | sweet corn | 2 quart jars | 12 months | 85 min at 11 psi
    10 lb plums | dried | plums | 1.62 lb dry | 12 months | 24 to 36 at 140 °F
    14 lb plums | boiling-water canned | plums | 7 quart jars | 12 months | 25 min
    20 lb pears | boiling-water canned | pears | 8 quart jars | 12 months | 25 min
    a bushel of apples | boiling-water canned | apples | 17 quart jars | 12 months | 20 min
    a bushel of apples | boiling-water canned | applesauce | 16 quart jars | 12 months | 20 min
    a bushel of apples | cellar-stored | apples | 48 lb | cellar: 2 to 4 months | damp
    25 lb cabbage | lactic ferment | sauerkraut | 8 quart jars | fridge: 3 months | 9 oz
    9 lb beetroot | pressure canned | beets | 3 quart jars | 12 months | 35 min at 11 psi
    9 lb beetroot | vinegar pickle | pickled beets | - | 12 months | 4 cups of vinegar to 2
    9 lb beetroot | cellar-stored | beets | 9 lb | cellar: 7 to 8 weeks | crates
    10 lb carrots | dried | carrots | 2 pint jars | 6 months | 10 to 12 at 140 °F
    10 lb carrots | pressure canned | carrots | 4 quart jars | 12 months | 30 min at 11 psi
    30 lb onions | dried | onions | 11 pint jars | 6 months | 3 to 9 at 140 °F
    9 lb pumpkins | pressure canned | pumpkins | 4 quart jars | 12 months | 90 min at 11 psi
    18 lb beef | pressure canned | beef | 4 quart jars | 12 months | 90 min at 11 psi
    4 lb trout | hot smoked | trout | - | fridge: 10 days, then discard | smoker
    2 lb basil | in oil | pesto | - | fridge: 2 days, then discard | -
    2 lb eggs | fresh | eggs | - | 5 weeks, then discard | -
"""

#: What there is | method | product | why not (part).
REFUSED = """
    9 lb beetroot | boiling-water canned | beets | Low-acid
    14 lb green beans | boiling-water canned | snap beans | spores live through it
    9 lb sweet corn | boiling-water canned | sweet corn | pressure canner
    5 lb garlic | pressure canned | garlic | No tested process
    5 lb zucchini | pressure canned | zucchini | Instead
    25 lb cabbage | pressure canned | cabbages | sauerkraut
    9 lb pumpkins | pressure canned | pumpkin butter | freeze
    9 lb pumpkins | pressure canned | pumpkin, mashed or pureed | 1-inch cubes
    21 lb tomatoes | pressure canned | tomatoes, not acidified | lemon juice or citric acid
    4 lb trout | salted | trout | keep it cold
    2 lb eggs | lime-kept | eggs | not advised
    18 lb beef | fridge pickle | beef | fridge
    6 lb bananas | boiling-water canned | bananas | Instead
    5 lb broccoli | pressure canned | broccoli | Instead
"""


def rows(block: str) -> list[tuple[str, ...]]:
    return [tuple(part.strip() for part in line.split("|")) for line in block.strip().splitlines()]


def asked(typed: str, p: Pantry | None = None) -> list[Way]:
    return methods(load_tables(), typed, p, 500)


def one(typed: str, method: str, product: str) -> Way:
    found = [w for w in asked(typed) if (w.method.value, w.product) == (method, product)]
    assert found, [(w.method.value, w.product) for w in asked(typed)]
    return found[0]


@pytest.mark.parametrize(("typed", "method", "product", "gives", "keeps", "need"), rows(ALLOWED))
def test_a_glut_is_told_this_way(
    typed: str, method: str, product: str, gives: str, keeps: str, need: str
) -> None:
    way = one(typed, method, product)
    assert way.allowed, way.reasons
    if gives == "-":
        assert way.yield_ is None
    else:
        assert (way.yield_ or "").startswith(gives), way.yield_
    assert keeps in (way.keeps or ""), way.keeps
    told = " ".join(f"{name} {text}" for name, text in way.needs.items())
    assert need == "-" or need in told, told
    assert way.sources or way.keeps == "no published figure"


@pytest.mark.parametrize(("typed", "method", "product", "why"), rows(REFUSED))
def test_a_way_is_refused_with_its_reason(typed: str, method: str, product: str, why: str) -> None:
    way = one(typed, method, product)
    assert not way.allowed
    assert why in " ".join(way.reasons), way.reasons
    assert way.keeps is None


def test_what_is_allowed_stands_before_what_is_refused() -> None:
    flags = [way.allowed for way in asked("9 lb beetroot")]
    assert flags == sorted(flags, reverse=True)


def test_nothing_low_acid_is_ever_offered_in_boiling_water() -> None:
    tables = load_tables()
    for food in tables.foods:
        if food.group not in WAYS or food.acidity.value != "low-acid":
            continue
        for way in methods(tables, food.name):
            if way.method is Method.BOILING_WATER and way.product == food.name:
                assert not way.allowed, food.name


def test_jars_and_lids_are_counted() -> None:
    way = one("21 lb tomatoes", "boiling-water canned", "tomatoes")
    assert (way.needs["jars"], way.needs["lids"]) == ("7 quart", "7")


def test_pairs_of_time_and_pressure_are_never_mixed() -> None:
    told = one("35 lb tomatoes", "pressure canned", "tomato sauce").needs["process, quart, dial"]
    assert set(told.split(" or ")) == {"20 min at 6 psi", "15 min at 11 psi"}


def test_without_an_amount_no_yield_is_made_up() -> None:
    assert all(way.yield_ is None for way in asked("beetroot"))


def test_the_places_are_asked_for_room_and_the_outlook_for_more(demo: Pantry) -> None:
    way = next(w for w in asked("10 lb carrots", demo) if w.method is Method.CELLAR)
    assert "root bins" in (way.room or "")
    assert "of 14 free" in (way.room or "")
    assert "chest freezer" not in (way.room or "")
    canned = next(w for w in asked("9 lb runner beans", demo) if w.method is Method.PRESSURE)
    assert canned.wanted
    new = next(w for w in asked("9 lb beetroot", demo) if w.method is Method.PRESSURE)
    assert new.wanted is None, "a first year"


@pytest.mark.parametrize("typed", ["moon cheese", "", "9 lb", "9 quarts beets", "12 cabbages"])
def test_what_cannot_be_weighed_is_asked_about(typed: str) -> None:
    with pytest.raises(BadInput) as told:
        asked(typed)
    assert told.value.message.endswith(".")


@pytest.mark.parametrize(
    ("wanted", "said"),
    [
        ("3 quart", "3 quart jars"),
        ("7 pint (2 short)", "7 pint jars (2 short)"),
        ("3 jars of 1 litre", "3 jars of 1 litre"),
    ],
)
def test_wanted_jars_are_said_as_jars_and_never_as_a_volume(wanted: str, said: str) -> None:
    assert in_jars(wanted) == said


def test_a_metric_household_reads_how_many_of_its_jars_it_wants() -> None:
    wanted = {"jars": "3 quart", "lids": "3"}
    assert Units(metric=True).rows(wanted)["jars"] == "3 jars of 1 litre"
    assert Units(metric=False).rows(wanted)["jars"] == "3 quart"
