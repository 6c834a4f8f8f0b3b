"""The federal storage table of 2018: whole, shown, and never milder than the tables were without
it. It brings dates of quality and no date later; it makes nothing fit to be eaten but shop food on
its shelf, and what was opened for the days of an opened pack."""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterator
from datetime import date, timedelta
from pathlib import Path
from random import Random

import pytest

from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.cases import sayings
from pantry_tui.core.keeping.exposure import imagined
from pantry_tui.core.keeping.ladder import Assessment
from pantry_tui.core.keeping.limits import assess
from pantry_tui.core.keeping.rules import Rule, Rulebook
from pantry_tui.core.keeping.sold import Sold, sold
from pantry_tui.core.model import DAY_MIN, Batch, Container, FoodFacts, Place, Turn, When
from pantry_tui.core.words import ASSUMED_F, SEVERITY, Climate, Kind, Method, State
from pantry_tui.errors import DataError
from pantry_tui.paths import data_dir
from pantry_tui.reference import federal
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.lookup.shelf_life import SHOP_FOOD_ALONE, keeps

DAY_0 = date(2026, 3, 1)
TABLES = load_tables()
AFTER = TABLES.book
BEFORE = replace(AFTER, wide=lambda _food: ())
PLACES = {
    climate: imagined(climate, ASSUMED_F[climate], measured=True) for climate in Climate
}  # fmt: skip

Spoil = Callable[[str, int, str, str], None]


def rows() -> list[dict[str, str]]:
    with (data_dir() / "federal.csv").open(encoding="utf-8", newline="") as handle:
        return list(csv.DictReader(handle))


def at(days: int, minute: int = 0) -> When:
    moment = (DAY_0.toordinal() + days) * DAY_MIN + minute
    return When(moment, moment, DAY_0 + timedelta(days=days))


def judged(book: Rulebook, food: FoodFacts, method: Method, turns: list[tuple[int, State, Climate]],
           size: str = "") -> Assessment:  # fmt: skip
    """What became of it: (days after it was made, its state from then on, where)."""
    batch = Batch("", "", food, method, DAY_0, size=size)
    places: dict[str, Place] = {str(n): replace(PLACES[c], id=str(n)) for n, (_, _, c)
                                in enumerate(turns)}  # fmt: skip
    lived = tuple(Turn(at(days), "", str(n), state) for n, (days, state, _) in enumerate(turns))
    container = Container("", "", 1, turns[-1][1], str(len(turns) - 1), lived)
    return assess(batch, container, places, book, at(turns[-1][0]))


def faults(was: Assessment, now: Assessment) -> Iterator[str]:
    """What the table made milder, later or fit."""
    if now.discard_after != was.discard_after:
        yield f"discard after {was.discard_after} became {now.discard_after}"
    if was.best_by and (now.best_by is None or now.best_by > was.best_by):
        yield f"best by {was.best_by} became {now.best_by}"
    brought = now.best_by if now.best_by != was.best_by else None
    if brought and now.discard_after and brought > now.discard_after:
        yield f"best by {now.best_by} after the last day {now.discard_after}"
    dates = (was.best_by, was.discard_after, was.soon_from, now.best_by, now.soon_from)
    known = {one + timedelta(days=by) for one in dates if one for by in (-1, 0, 1)}
    for day in sorted(one for one in {was.now, *known} if one >= was.now):
        one, other = was.on(day), now.on(day)
        if SEVERITY.index(other.verdict) > SEVERITY.index(one.verdict):
            yield f"{day}: {one.verdict} became {other.verdict}"
        if other.usable and not one.usable:
            yield f"{day}: became usable"
    if (now.doubt, now.harmless, now.refused, now.fixed) != (
        was.doubt, was.harmless, was.refused, was.fixed
    ):  # fmt: skip
        yield "another standing"


def figures() -> list[Rule]:
    foods = {food for row in rows() for food in row["foods"].split(";")}
    return [rule for food in sorted(foods) for rule in federal.figures_of(food)]


# -- the table is whole ----------------------------------------------------------------------------


def test_all_of_it_is_there() -> None:
    found = rows()
    assert len(found) == 1360
    assert len({row["product"] for row in found}) == 661
    assert len({row["figure_id"] for row in found}) == 1360
    assert all(row["source_id"] == "fed-storage-2018" for row in found)


def test_its_foods_are_those_that_the_food_table_names() -> None:
    with (data_dir() / "foods.csv").open(encoding="utf-8", newline="") as handle:
        named = {
            (food["name"], product)
            for food in csv.DictReader(handle)
            for product in food["federal"].split(";")
            if product
        }
    assert {(f, row["product"]) for row in rows() for f in row["foods"].split(";")} == named


#: Products of which the food table has no food. It has one for each.
LACKING: set[str] = set()
#: Home-canned food, which the table gives a year: our own rules say more of it.
LEFT_OUT = {
    "salsa, homemade, canned",
    "tomato Sauce, homemade, canned",
    "barbecue Sauce, homemade, canned",
}


def test_what_is_left_out_is_named() -> None:
    found = rows()
    assert {row["name"] for row in found if not row["foods"]} == LACKING
    assert {row["name"] for row in found if not row["methods"]} == LEFT_OUT


def test_it_speaks_of_quality_alone() -> None:
    assert len(figures()) > 3000
    assert {rule.kind for rule in figures()} == {Kind.QUALITY}
    assert all(rule.use in (None, rule.least) for rule in figures())


@pytest.mark.parametrize(
    ("column", "value"),
    [("foods", "moon cheese"), ("methods", "wished"), ("state", "lost"), ("climate", "attic"),
     ("life_min", "9999"), ("life_max", ""), ("unit", "moons"), ("says", "or so"), ("name", ""),
     ("source_id", "hearsay"), ("trust", "sure")],
)  # fmt: skip
def test_a_bad_cell_is_named(folder: Path, spoil: Spoil, column: str, value: str) -> None:
    spoil("federal.csv", 2, column, value)
    with pytest.raises(DataError, match=r"federal\.csv row 2"):
        federal.read_federal(folder, TABLES)


# -- never milder ----------------------------------------------------------------------------------


def test_no_verdict_is_milder_and_no_date_later_wherever_it_speaks() -> None:
    """Every food, method, state and climate of which it has a figure, on all days that matter."""
    cases = {
        (rule.food, rule.method, rule.state, climate)
        for rule in figures()
        for climate in rule.climates
    }
    changed = 0
    for food, method, state, climate in sorted(cases):
        facts = TABLES.facts(food)
        assert facts is not None
        turns = [(0, state, climate)]
        was, now = (judged(book, facts, method, turns) for book in (BEFORE, AFTER))
        assert method is Method.BOUGHT or not list(faults(was, now)), (food, method, state, climate)
        changed += was != now
    assert changed > 1500, "it is heard"


def test_elsewhere_nothing_changes() -> None:
    """Where it has no figure it says nothing: drawn from all foods, methods, states, climates."""
    draw, foods = Random(20261127), [food.facts for food in TABLES.foods]
    states, silent = (State.SEALED, State.OPEN, State.THAWED), 0
    for _ in range(1500):
        food, method = draw.choice(foods), draw.choice(list(Method))
        state, climate = draw.choice(states), draw.choice(list(Climate))
        was, now = (judged(book, food, method, [(0, state, climate)]) for book in (BEFORE, AFTER))
        shop = method is Method.BOUGHT
        assert shop or not list(faults(was, now)), (food.name, method, state, climate)
        if not any(rule.method is method for rule in federal.figures_of(food.name)):
            silent += 1
            # Bought food is judged as canned, fresh or cooked.
            assert was == now or method is Method.BOUGHT, (food.name, method, state, climate)
    assert silent > 500


@pytest.mark.parametrize("seed", range(8))
def test_no_history_comes_out_milder(seed: int) -> None:
    """Moved, opened, thawed and frozen at random."""
    draw = Random(seed)
    foods = sorted({food for row in rows() for food in row["foods"].split(";")})
    changed = 0
    for _ in range(90):
        facts = TABLES.facts(draw.choice(foods))
        assert facts is not None
        method = draw.choice([Method.FRESH, Method.FROZEN, Method.MEAL])
        days = sorted(draw.sample(range(1, 90), draw.randint(0, 3)))
        states = sorted(draw.choices([State.SEALED, State.OPEN, State.THAWED], k=len(days) + 1))
        turns = [
            (day, states[-1 - n] if n else State.SEALED, draw.choice(list(Climate)))
            for n, day in enumerate([0, *days])
        ]
        was, now = (judged(book, facts, method, turns, "jar") for book in (BEFORE, AFTER))
        assert not list(faults(was, now)), (facts.name, method, turns)
        changed += was != now
    assert changed > 5


def test_what_can_hurt_and_is_unknown_stays_unusable_with_a_date_of_quality() -> None:
    """What is no shop food has no figure of ours for how long it is safe."""
    unknown = 0
    for rule in figures():
        if rule.method is Method.BOUGHT:
            continue
        facts = TABLES.facts(rule.food)
        assert facts is not None
        (climate,) = rule.climates
        was = judged(BEFORE, facts, rule.method, [(0, rule.state, climate)]).on(DAY_0)
        if was.usable:
            continue
        now = judged(AFTER, facts, rule.method, [(0, rule.state, climate)]).on(DAY_0)
        assert (now.usable, now.verdict) == (False, was.verdict), rule.id
        unknown += now.best_by is not None
    assert unknown > 100


def test_shop_food_is_fit_by_it_shut_on_its_shelf_and_opened_with_days() -> None:
    """How good it is, is all that is published of what is safe while it is shut; of what is opened
    its days are taken as its end."""
    shelf = opened = 0
    for rule in figures():
        facts = TABLES.facts(rule.food)
        assert facts is not None
        (climate,) = rule.climates
        if rule.method is not Method.BOUGHT:
            continue
        turns = [(0, rule.state, climate)]
        was, now = (judged(book, facts, rule.method, turns) for book in (BEFORE, AFTER))
        if was.on(DAY_0).usable or not now.on(DAY_0).usable:
            continue
        if rule.state is State.OPEN:
            assert now.discard_after is not None, rule.id
            opened += 1
        else:
            batch = Batch("", "", facts, Method.BOUGHT, DAY_0)
            assert (climate, sold(batch, AFTER)) == (Climate.PANTRY, Sold.SHELF), rule.id
            # Of what lies in oil the last day at its best is the last on which it is taken.
            assert (now.discard_after is None) == ("in-oil" not in facts.classes), rule.id
            shelf += 1
    assert shelf > 30
    assert opened > 30


# -- which figure stands ---------------------------------------------------------------------------


def life(food: str, method: Method, climate: Climate, state: State = State.SEALED) -> str:
    facts = TABLES.facts(food)
    assert facts is not None
    said = sayings(facts, method, AFTER).of(state, climate, ASSUMED_F[climate])
    return said.wide.rule.id if said.wide is not None else ""


def test_a_newer_closer_or_stricter_figure_stands() -> None:
    frozen, freezer = Method.FROZEN, Climate.FREEZER
    assert life("basil", frozen, freezer), "all herbs, six months, in 1997: older and longer"
    assert not life("beef", frozen, freezer), "a figure for beef itself"
    assert not life("asparagus", frozen, freezer), "a page without a year is as it is now"
    assert not life("broccoli", frozen, freezer), "vegetables, no longer than that"


def test_of_several_products_none_gives_a_date_where_a_cooler_place_keeps_shorter() -> None:
    assert life("dill", Method.FRESH, Climate.FRIDGE)
    assert not life("dill", Method.BOUGHT, Climate.PANTRY), "dried it lasts, fresh it does not"


def test_it_is_shown_as_a_range_with_its_source() -> None:
    found = keeps(TABLES, "fresh", "apples", climate="fridge")
    assert found["published"] == {"quality": [4, 6, "weeks"], "safety": None}
    assert found["reasons"][0] == SHOP_FOOD_ALONE
    assert any("4 to 6 weeks in the fridge" in one for one in found["reasons"])
    assert any("Cornell" in one and "2018" in one for one in found["sources"])
    beside = keeps(TABLES, "frozen", "asparagus", climate="freezer")
    assert beside["published"]["quality"] == [8, 12, "months"]
    assert any("Shop food, asparagus: 5 months" in one for one in beside["reasons"])
    words = keeps(TABLES, "fresh", "sour cream", climate="freezer")
    assert any("not recommended in the freezer" in one for one in words["reasons"])


def test_a_refusal_is_no_matter_of_quality() -> None:
    for rule in figures():
        facts = TABLES.facts(rule.food)
        assert facts is not None
        (climate,) = rule.climates
        said = sayings(facts, rule.method, AFTER).of(rule.state, climate, ASSUMED_F[climate])
        assert said.refusal is None or said.wide is None, rule.id
