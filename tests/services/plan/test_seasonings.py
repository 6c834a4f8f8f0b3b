"""What only seasons a pot is no side, and what is dry is reckoned as what it was."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.amounts import amount_of
from pantry_tui.core.plan.roles import role_said
from pantry_tui.core.words import Group, Method, Role
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.at_table import role_at_table
from pantry_tui.services.plan.servings import in_amount, servings
from pantry_tui.services.rows import Take
from pantry_tui.services.stock import places
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", people=4)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("cellar", "cellar")):
            places.add(pantry, name, climate)
        yield pantry


def takes(p: Pantry, code: str) -> list[Take]:
    found = weeks.week(p)
    return [one for one in (*found.take, *found.beside) if one.code == code]


def held(p: Pantry, line: str) -> float:
    batch = p.batch(up(p, line))
    assert batch is not None
    return servings(p, p.containers_of(batch)[0])


@pytest.mark.parametrize(
    "line",
    [
        "2 strings of onions, cellar-stored, cellar",
        "2 strings of garlic, cellar-stored, cellar",
        "2 strings of shallots, cellar-stored, cellar",
        "4 half-pint jars tomato paste, bought in, larder, best by 2027-02-01",
        "1 bag dried mushrooms, dried, larder, amount=80 g, 2026-10-01",
        "2 half-pint jars onions, dried, larder, 2026-10-01",
        "2 half-pint jars capers, bought in, larder, best by 2027-02-01",
        "2 bags chillies, dried, larder, 2026-10-01",
        "1 crate horseradish, cellar-stored, cellar, amount=4 lb",
    ],
)
def test_what_seasons_is_no_side_on_any_day(p: Pantry, line: str) -> None:
    code = up(p, line)
    up(p, "9 pint jars beets, pressure canned, larder, 2026-08-20")
    assert not takes(p, code)


def test_what_seasons_comes_to_be_used_up(p: Pantry) -> None:
    code = up(p, "2 half-pint jars tomato paste, bought in, larder, best by 2026-11-28")
    assert takes(p, code)


def test_onions_by_weight_are_a_small_side_once_a_day(p: Pantry) -> None:
    code = up(p, "1 net onions, cellar-stored, cellar, amount=18 lb")
    found = takes(p, code)
    assert found
    assert {one.role for one in found} == {Role.SIDE}
    assert len({one.day for one in found}) == len(found)
    assert all(one.servings <= 4 / 2 for one in found)


def test_a_crop_of_tomatoes_is_eaten_by_itself(p: Pantry) -> None:
    assert takes(
        p,
        up(p, "9 quart jars tomatoes, boiling-water canned, larder, acid=lemon, 2026-08-20"),
    )


def test_an_ingredient_is_one_whatever_its_group() -> None:
    for group in (Group.VEGETABLE, Group.FRUIT, Group.RELISH, Group.GRAIN):
        assert role_said("ingredient", group) is Role.INGREDIENT
    assert role_said("snack", Group.FRUIT) is Role.FRUIT


@pytest.mark.parametrize(
    ("line", "role"),
    [
        ("4 1 lb packs bacon, frozen, freezer, 2026-11-10", "side"),
        ("4 1 lb packs turkey bacon, frozen, freezer, 2026-11-10", "side"),
        ("2 1 lb packs prosciutto, bought in, fridge, best by 2026-12-10", "side"),
        ("4 1 lb bags jerky, dried, freezer, 2026-11-10", ""),
        ("4 1 lb bags venison, dried, freezer, 2026-11-10", ""),
        ("4 1 lb packs chorizo, salted, fridge, 2026-11-20", ""),
        ("4 1 lb packs chorizo, frozen, freezer, 2026-11-20", "main"),
        ("4 1 lb packs venison, frozen, freezer, 2026-11-20", "main"),
        ("2 half-pint jars garlic in oil, in oil, freezer, 2026-11-20", ""),
    ],
)
def test_cured_and_dried_meat_is_no_main(p: Pantry, line: str, role: str) -> None:
    for name in ("freezer", "fridge"):
        places.add(p, name, name)
    up(p, line)
    batch = p.batches()[-1]
    found = role_at_table(p, batch.food.name, batch.food.group, batch.method, drawn=False)
    assert (found if found in ("main", "side", "fruit") else "") == role
    mains = [one for one in weeks.week(p).take if one.role is Role.MAIN]
    assert bool(mains) == (role == "main")


def test_no_herb_and_no_seasoning_of_the_table_is_a_meal(p: Pantry) -> None:
    meals = (Role.MAIN, Role.SIDE, Role.FRUIT)
    wrong = [
        food.name
        for food in p.tables.foods
        if food.role in ("seasoning", "ingredient", "fat", "baking")
        and role_at_table(p, food.name, food.group) in meals
    ]
    assert not wrong


def test_dry_weight_serves_as_what_was_fresh(p: Pantry) -> None:
    # 92 % of water in mushrooms (data/drying.csv), 10 % in dried ones (figures.csv).
    assert held(p, "1 bag dried mushrooms, dried, larder, amount=80 g") == pytest.approx(
        0.08 * 2.2046 * 3 * (100 - 10) / (100 - 92)
    )
    # Apples hold 86 %, dried ones 20 %.
    assert held(p, "1 bag apples, dried, larder, amount=1 lb") == pytest.approx(3 * 80 / 14)
    # Of leeks no table has the water: an estimate, nine times.
    assert held(p, "1 bag leeks, dried, larder, amount=1 lb") == pytest.approx(27)
    # Pulses are weighed dry.
    assert held(p, "1 bag kidney beans, dried, larder, amount=1 lb") == pytest.approx(8)
    assert held(p, "1 crate apples, cellar-stored, cellar, amount=1 lb") == pytest.approx(3)


def test_a_pound_serves_as_its_own_row_says(p: Pantry) -> None:
    rows = {one.name: one.servings_per_lb for one in p.tables.foods}
    assert held(p, "1 1 lb pack butter, bought in, larder, best by 2026-12-20") == rows["butter"]
    places.add(p, "freezer", "freezer")
    bird = held(p, "1 16 lb bag turkey, frozen, freezer, 2026-10-01")
    assert bird == 16 * (rows["turkeys"] or 0), "bones and all"
    # USDA FSIS, Let's Talk Turkey: a pound of a whole bird a person, half a pound off the bone.
    assert bird == 16
    assert held(p, "1 6 lb pack boneless turkey, frozen, freezer, 2026-10-01") == 12
    assert held(p, "1 6 lb pack turkey breast, frozen, freezer, 2026-10-01") == 12
    jerky = held(p, "1 1 lb bag jerky, dried, larder, 2026-11-01")
    assert jerky == rows["jerky"], "of it dry, as its name says"


@pytest.mark.parametrize(
    "bird", ["turkey", "goose", "duck", "chicken", "capon", "pheasant", "cornish hen", "quail"]
)
def test_a_whole_bird_has_one_serving_a_pound_and_what_is_off_the_bone_more(
    p: Pantry, bird: str
) -> None:
    places.add(p, "freezer", "freezer")
    assert held(p, f"1 4 lb bag {bird}, frozen, freezer, 2026-10-01") == 4
    food = p.tables.index.find(bird)
    assert food is not None
    assert in_amount(p, food.name, food.group, Method.MEAL, amount_of("1 lb")) == 4
    # Dry meat weighed three times as much fresh.
    assert in_amount(p, food.name, food.group, Method.DRIED, amount_of("1 lb")) == 12


def test_a_measure_of_dried_fruit_serves_as_twice_of_fresh(p: Pantry) -> None:
    dried = held(p, "1 pint jar apples, dried, larder, 2026-10-01")
    assert dried == 2 * held(p, "1 pint jar apples, boiling-water canned, larder, 2026-10-01")
    beans = held(p, "1 pint jar kidney beans, dried, larder, 2026-10-01")
    assert beans == held(p, "1 pint jar kidney beans, pressure canned, larder, 2026-10-01")
