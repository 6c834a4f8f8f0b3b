"""Where another country's current advice, or another publisher's, is stricter: shown as such, and
complete enough for a household to follow it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from dateutil.relativedelta import relativedelta

from pantry_tui.core.keeping.rules import Status
from pantry_tui.core.words import Climate, Method, State
from pantry_tui.reference.tables import Tables, load_tables
from pantry_tui.services.lookup.shelf_life import keeps

DAY_0 = date(2026, 3, 1)


def followed(tables: Tables) -> Tables:
    """The tables with every stricter view that has a figure taken as current."""
    rules = {
        method: tuple(
            replace(rule, status=Status.CURRENT)
            if rule.status is Status.STRICTER and rule.use is not None
            else rule
            for rule in found
        )
        for method, found in tables.rules.items()
    }
    return replace(tables, rules=rules)


STRICT = followed(load_tables())

#: publication -> method | food | state | climate | kind | usual | stricter
VIEWS = {
    "Food Standards Scotland, storing food: leftovers within two days": """
        cooked meal | leftovers | sealed | fridge | safety | 3 days | 2 days
        cooked meal | stew | open | fridge | safety | 3 days | 2 days
        cooked meal | vegetable soup | sealed | fridge | safety | 3 days | 2 days
        cooked meal | chicken stock | sealed | fridge | safety | 3 days | 2 days
        cooked meal | beef | open | fridge | safety | 3 days | 2 days
        cooked meal | eggs | sealed | fridge | safety | 3 days | 2 days
        frozen | lasagne | sealed | fridge | safety | 3 days | 2 days
        frozen | curry | open | fridge | safety | 3 days | 2 days
        cooked meal | rice | sealed | fridge | safety | 1 days | 1 days
    """,
    "Food Standards Scotland: thawed food within one to two days": """
        frozen | beef | thawed | fridge | safety | 3 days | 1 days
        frozen | pork | thawed | fridge | safety | 3 days | 1 days
        frozen | lamb | thawed | fridge | safety | 3 days | 1 days
        frozen | venison | thawed | fridge | safety | 3 days | 1 days
        frozen | beef | sealed | fridge | safety | 3 days | 1 days
        hot smoked | chickens | thawed | fridge | safety | 3 days | 1 days
        frozen | chickens | thawed | fridge | safety | 1 days | 1 days
    """,
    "Pendle Borough Council, food safety in the home: leftovers within a day of thawing": """
        cooked meal | leftovers | thawed | fridge | safety | 3 days | 1 days
        frozen | stew | thawed | fridge | safety | 3 days | 1 days
        frozen | vegetable soup | thawed | fridge | safety | 3 days | 1 days
        frozen | chicken stock | thawed | fridge | safety | 3 days | 1 days
    """,
    "A UK health page on hard-boiled eggs (weak: from memory)": """
        fresh | hard-cooked eggs | sealed | fridge | safety | 1 weeks | 2 days
        fresh | hard-cooked eggs | open | fridge | safety | 1 weeks | 2 days
        cooked meal | hard-cooked eggs | sealed | fridge | safety | 1 weeks | 2 days
        cooked meal | hard-cooked eggs | open | fridge | safety | 1 weeks | 2 days
    """,
    "Cooked shellfish, one to two days (from memory)": """
        cooked meal | shrimp | sealed | fridge | safety | 3 days | 1 days
        cooked meal | oysters | open | fridge | safety | 3 days | 1 days
    """,
    "University of Missouri Extension MP558 page 2, at 37 F": """
        fresh | eggs | sealed | fridge 37F | quality | 3 weeks | 2 weeks
        fresh | butter | sealed | fridge 37F | quality | 2 weeks | 1 weeks
    """,
    "University of Florida IFAS Extension, Nassau County: opened aged cheese": """
        fresh | hard cheese | open | fridge | quality | 3 weeks | 2 weeks
    """,
    "Michigan State University Extension PFS 01600025: roots in a cellar": """
        cellar-stored | horseradish | sealed | cellar 32F | quality | 10 months | 3 months
        cellar-stored | celeriac | sealed | cellar 32F | quality | 6 months | 3 months
    """,
    "Michigan State University Extension educator 2015: garlic in oil": """
        in oil | garlic | sealed | fridge | safety | 4 days | 2 days
        in oil | garlic | open | fridge | safety | 4 days | 2 days
    """,
    "University of Idaho Extension column 2020: jars older than two years": """
        pressure canned | runner beans | sealed | pantry | safety | none | 24 months
        boiling-water canned | peaches | sealed | room | safety | none | 24 months
    """,
    "USDA FSIS, Shelf-Stable Food Safety: any home-canned food, opened": """
        boiling-water canned | dill pickles | open | fridge | safety | none | 3 days
    """,
    "University of Missouri Extension MP557: dried fruit at 50 to 70 F": """
        dried | apples | sealed | pantry | quality | 12 months | 6 months
    """,
}
LINES = [
    (publication, *(part.strip() for part in line.split("|")))
    for publication, block in VIEWS.items()
    for line in block.strip().splitlines()
]


def asked(tables: Tables, method: str, food: str, state: str, where: str) -> dict[str, Any]:
    climate, _, temp = where.partition(" ")
    warmth = float(temp.rstrip("F")) if temp else None
    return keeps(tables, method, food, climate=climate, temp_f=warmth, state=state, made=DAY_0)


def after(limit: str) -> str | None:
    if limit == "none":
        return None
    number, unit = limit.split()
    return (DAY_0 + relativedelta(**{unit: int(number)})).isoformat()  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("publication", "method", "food", "state", "where", "kind", "usual", "strict"), LINES
)
def test_the_stricter_view_is_shown_and_can_be_followed(
    publication: str, method: str, food: str, state: str, where: str, kind: str, usual: str,
    strict: str,
) -> None:  # fmt: skip
    key = "best_by" if kind == "quality" else "discard_after"
    by_default = asked(load_tables(), method, food, state, where)
    assert by_default[key] == after(usual), publication
    assert asked(STRICT, method, food, state, where)[key] == after(strict), publication
    if usual != strict:
        assert any(one.startswith("Stricter view") for one in by_default["reasons"])


#: Where a view speaks: method, state, climate.
PLACES = sorted(
    {
        (method, rule.state, climate)
        for method, found in load_tables().rules.items()
        for rule in found
        if rule.status is Status.STRICTER and rule.use is not None
        for climate in rule.climates
    }
)


@pytest.mark.parametrize(("method", "state", "climate"), PLACES)
def test_the_strictest_advice_is_never_longer_and_knows_no_more(
    method: Method, state: State, climate: Climate
) -> None:
    for food in load_tables().foods:
        usual = asked(load_tables(), method, food.name, state, climate)
        strict = asked(STRICT, method, food.name, state, climate)
        for key in ("best_by", "discard_after"):
            assert not usual[key] or (strict[key] and strict[key] <= usual[key]), food.name
        assert usual["allowed"] == strict["allowed"], food.name
        if not any(usual["published"].values()):
            assert not any(strict["published"].values()), food.name


def test_a_condition_is_shown_and_never_followed() -> None:
    """An ice compartment, a vacuum pack, vegetables not blanched: not this food as it is."""
    for method, food, state, climate in (
        ("frozen", "peas", "sealed", "freezer"),
        ("hot smoked", "salmon", "sealed", "fridge"),
        ("lactic ferment", "carrots", "sealed", "fridge"),
    ):
        usual, strict = (asked(t, method, food, state, climate) for t in (load_tables(), STRICT))
        assert any("Stricter view" in one for one in usual["reasons"])
        assert (usual["best_by"], usual["discard_after"]) == (
            strict["best_by"], strict["discard_after"],
        )  # fmt: skip
