"""What the households of the benchmark may keep: foods, methods, how much of each a week. Why each
is as it is stands in household.py.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from functools import cache

from pantry_tui.core.keeping.limits import judge
from pantry_tui.core.model import Batch, Container, Stay
from pantry_tui.core.words import ASSUMED_F, Climate, Method, State
from pantry_tui.reference.tables import load_tables

#: Week 0 begins here.
START = date(2001, 4, 1)
#: Month in which what is to keep in the cellar is lifted or picked, at the earliest.
LAID_IN = 10

_CANNED, _PRESSURE = Method.BOILING_WATER, Method.PRESSURE
_LOOSE = (Method.CELLAR, Method.DRIED)
#: Food, method, where it stands, servings a person means to eat of it in a week.
CATALOGUE = [
    *[(food, _PRESSURE, Climate.PANTRY, share) for food, share in (
        ("runner beans", 1.0), ("sweet corn", 0.5), ("beets", 1.0), ("carrots", 0.5))],
    *[(food, _CANNED, Climate.PANTRY, share) for food, share in (
        ("crushed tomatoes", 1.5), ("tomato sauce", 1.0), ("peaches", 2.0), ("pears", 0.5),
        ("plums", 0.5), ("cherries", 0.67), ("applesauce", 1.0), ("salsa", 0.5))],
    *[(food, Method.FROZEN, Climate.FREEZER, share) for food, share in (
        ("runner beans", 1.0), ("peas", 1.0), ("sweet corn", 0.5), ("lima beans", 0.5),
        ("spinach", 1.0), ("kale", 1.0), ("broccoli", 0.5), ("peppers", 0.5), ("zucchini", 0.5),
        ("asparagus", 0.5), ("strawberries", 0.67), ("raspberries", 0.67), ("blueberries", 0.67),
        ("blackcurrants", 0.67), ("rhubarb", 0.5), ("gooseberries", 0.5), ("plums", 0.5),
        ("beef", 1.0), ("ground beef", 1.0), ("pork", 1.0), ("chickens", 1.0), ("lamb", 0.5),
        ("venison", 0.5), ("sausages", 0.5), ("salmon", 0.5), ("cod", 0.5), ("trout", 0.5),
        ("mackerel", 0.5), ("vegetable soup", 1.0), ("chicken soup", 0.5), ("stew", 0.5),
        ("chili con carne", 0.5), ("lasagne", 0.5), ("meat sauce", 0.5), ("pies", 0.5))],
    *[(food, Method.CELLAR, Climate.CELLAR, share) for food, share in (
        ("potatoes", 2.0), ("carrots", 2.0), ("onions", 1.0), ("cabbages", 1.0),
        ("parsnips", 0.5), ("rutabagas", 0.5), ("apples", 2.0), ("pears", 0.5))],
    ("winter squash", Method.CELLAR, Climate.PANTRY, 0.5),
    *[(food, Method.DRIED, Climate.PANTRY, share) for food, share in (
        ("tomatoes", 0.5), ("apples", 0.5), ("apricots", 0.5))],
    ("sauerkraut", Method.LACTIC, Climate.FRIDGE, 0.5),
    *[(food, Method.JAM, Climate.PANTRY, share) for food, share in (
        ("strawberry jam", 0.5), ("raspberry jam", 0.5), ("plum jam", 0.5), ("apple butter", 0.5),
        ("blackcurrant jelly", 0.5))],
    *[(food, Method.VINEGAR_PICKLE, Climate.PANTRY, share) for food, share in (
        ("dill pickles", 0.5), ("pickled beets", 0.5), ("chutney", 0.5), ("piccalilli", 0.25))],
    ("bread-and-butter pickles", Method.FRIDGE_PICKLE, Climate.FRIDGE, 0.25),
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Kind:
    """A line of the catalogue with the program's own figures: whole weeks that it keeps sealed,
    days that an opened one keeps (loose food: two), its harvest's week of the
    simulated year (None: put up when needed), servings a pint."""

    food: str
    group: str
    share: float
    life: int
    opened: int
    harvest: int | None
    pint: float
    by_meal: bool


@cache
def catalogue() -> tuple[Kind, ...]:
    """All of it, judged once."""
    return tuple(_kind(*line) for line in CATALOGUE)


def _kind(food: str, method: Method, climate: Climate, share: float) -> Kind:
    tables = load_tables()
    row = tables.index.find(food)
    assert row is not None and row.servings_per_pint is not None
    sealed = _days(food, method, climate, State.SEALED)
    assert sealed is not None, f"{food}, {method}: no published figure"
    after = State.THAWED if climate is Climate.FREEZER else State.OPEN
    opened = _days(food, method, Climate.FRIDGE, after)
    loose = method in _LOOSE
    assert opened is not None or loose, f"{food}, {method}: no published figure once opened"
    harvest = None
    if row.harvest_month is not None:
        month = max(row.harvest_month, LAID_IN) if method is Method.CELLAR else row.harvest_month
        harvest = (month - START.month) % 12 * 52 // 12
    return Kind(
        food,
        row.group.value,
        share,
        max(1, (sealed + 1) // 7),
        opened or 2,
        harvest,
        row.servings_per_pint,
        loose or method is Method.FROZEN,
    )


def _days(food: str, method: Method, climate: Climate, state: State) -> int | None:
    """Days from day 0 to its nearer date, in the usual warmth of that climate."""
    tables = load_tables()
    facts = tables.facts(food)
    assert facts is not None
    stay = Stay(START, "", climate, state, ASSUMED_F[climate], measured=True)
    container = Container("", "", 1, state, "", (stay,))
    judged = judge(Batch("", "", facts, method, START), container, tables.book, START)
    days = [day for day in (judged.best_by, judged.discard_after) if day is not None]
    return (min(days) - START).days if days else None
