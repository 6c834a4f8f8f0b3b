"""What is named as a way to keep a food is one that nothing refuses of it afterwards."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.canned import WORKING
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.words import Climate, Method
from pantry_tui.errors import PantryError, Refused
from pantry_tui.services.batchwork import methods, putup
from pantry_tui.services.batchwork.offered import offers
from pantry_tui.services.lookup import process
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places

HINT = "Say how it is kept, for example: "
BY_WATER = {Method.BOILING_WATER}
#: Where what the cold keeps is carried, if it does not stand there already.
COLD = {
    **dict.fromkeys((Method.FROZEN, Method.FREEZER_JAM), "freezer"),
    **dict.fromkeys(
        (Method.FRIDGE_PICKLE, Method.MEAL, Method.HOT_SMOKED, Method.COLD_SMOKED, Method.IN_OIL),
        "fridge",
    ),
}


@pytest.fixture(scope="module")
def p(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Pantry]:
    path: Path = tmp_path_factory.mktemp("offered") / "store.db"
    create(path)
    with open_pantry(path, date(2026, 11, 25)) as pantry:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge"), ("freezer", "freezer")):
            places.add(pantry, name, climate)
        yield pantry


def offered(p: Pantry, line: str) -> tuple[str, ...]:
    said = [one for one in putup.read(p, line).problems if one.startswith(HINT)]
    return tuple(said[0].removeprefix(HINT).rstrip(".").split(", ")) if said else ()


@pytest.mark.parametrize("where", ["larder", "fridge"])
def test_no_way_that_is_named_of_any_food_is_refused_or_leaves_it_unknown(
    p: Pantry, where: str
) -> None:
    wrong = []
    for food in p.tables.foods:
        for way in offered(p, f"2 pint jars {food.name}, {where}"):
            method = Method(way)
            if method is Method.BOUGHT:
                continue
            place = COLD.get(method, where)
            read = putup.read(p, f"2 pint jars {food.name}, {way}, {place}")
            if read.asks or read.problems or read.unread:
                continue  # several foods of that name: it is asked which, and then how
            try:
                found = putup.preview(p, read)
            except PantryError as error:
                # What only the cold keeps is refused by its place, with the place to say.
                if "Say instead: f" not in str(error):
                    wrong.append((food.name, way, str(error)))
                continue
            # Acid food out of boiling water is offered, also where no time is tested for it.
            unknown = CAUTION in found.cautions and method not in WORKING | BY_WATER
            if found.verdict in UNFIT or unknown:
                wrong.append((food.name, way, found.verdict))
    assert wrong == []


@pytest.mark.parametrize(
    ("line", "never"),
    [
        ("3 pint jars pumpkin puree, larder", "pressure canned"),
        ("3 pint jars mashed winter squash, larder", "pressure canned"),
        ("4 pint jars pesto, fridge", "fridge pickle"),
        ("4 pint jars broccoli, larder", "pressure canned"),
        ("4 pint jars quindles, larder", "pressure canned"),
    ],
)
def test_the_ways_that_nobody_has_tested_are_not_named(p: Pantry, line: str, never: str) -> None:
    assert offered(p, line)
    assert never not in offered(p, line)


@pytest.mark.parametrize(
    ("line", "named"),
    [
        ("3 pint jars runner beans, larder", "pressure canned"),
        ("3 pint jars tomatoes, larder", "boiling-water canned"),
        ("3 pint jars peaches, larder", "boiling-water canned"),
        ("3 pint jars cucumbers, larder", "vinegar pickle"),
        ("3 pint jars salsa, larder", "boiling-water canned"),
        ("3 lb bacon, larder", "hot smoked"),
        ("3 lb bacon, fridge", "bought in"),
    ],
)
def test_what_is_published_is_named_still(p: Pantry, line: str, named: str) -> None:
    assert named in offered(p, line)


def test_what_was_bought_is_so_whatever_it_is(p: Pantry) -> None:
    pesto = p.tables.facts("pesto")
    assert pesto is not None
    assert offers(pesto, Method.BOUGHT, Climate.PANTRY, p.book_of_rules)


def test_no_pressure_canner_is_named_where_no_process_stands_for_it_either(p: Pantry) -> None:
    for food, canner in (("runner beans", True), ("pumpkin puree", False), ("pesto", False)):
        with pytest.raises(Refused) as refused:
            putup.put_up(p, putup.read(p, f"2 pint jars {food}, boiling-water canned, larder"))
        assert ("or can it" in refused.value.message) is canner
    for food, canner in (("runner beans", True), ("broccoli", False)):
        said = " ".join(process.process(p.tables, food, "pint", "boiling-water")["reasons"])
        assert ("Instead: a pressure canner" in said) is canner
    ways = {one.method: one for one in methods.methods(p.tables, "broccoli")}
    assert "or can it" not in " ".join(ways[Method.BOILING_WATER].reasons)
