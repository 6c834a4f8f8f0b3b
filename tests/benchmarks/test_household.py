"""The benchmark itself: its households are what they say, and its count adds up."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from pantry_tui.core.words import Group
from tests.benchmarks import plan, policies
from tests.benchmarks.catalogue import catalogue
from tests.benchmarks.garden import CEILING, garden
from tests.benchmarks.rough import rough
from tests.benchmarks.world import WEEKS, House, Policy, live


def test_lives_are_those_of_the_program() -> None:
    lives = {(kind.food, kind.by_meal): (kind.life, kind.opened) for kind in catalogue()}
    assert lives["peaches", False] == (52, 3)  # a year sealed, three days open
    assert lives["peas", True] == (35, 1)  # eight months frozen, a day thawed
    assert lives["strawberry jam", False] == (52, 30)  # a year sealed, a month open


def test_nobody_plans_for_more_than_is_eaten_in_a_year() -> None:
    for seed in range(5):
        house = garden(seed)
        for group, most in house.most.items():
            foods = [food for food in house.foods if food.group == group]
            a_year = sum(food.meant * len(food.weeks) / 3 for food in foods)
            assert most * 52 / 2 < a_year <= most * 52


def test_containers_are_no_bigger_than_the_week() -> None:
    house = garden(3)
    assert all(food.size <= food.most for food in house.foods)
    assert set(house.most) <= {group.value for group in CEILING}
    assert Group.VEGETABLE in house.most


@pytest.mark.parametrize("world", [garden, rough])
@pytest.mark.parametrize("policy", [policies.reacting, policies.earliest, policies.ours])
def test_every_serving_is_eaten_lost_or_left(policy: Policy, world: Callable[[int], House]) -> None:
    house = world(2)
    told = live(house, policy)
    put_up = sum(jar.food.size for jar in house.jars if jar.made < WEEKS)
    assert told.eaten + told.lost + told.left == pytest.approx(put_up)
    room = sum(factor * most for factor in house.factors for most in house.most.values())
    assert told.eaten <= room


def test_rough_weeks_are_refused_forgotten_and_unannounced() -> None:
    houses = [rough(seed) for seed in range(20)]
    weeks = [
        (a, f) for house in houses for a, f in zip(house.announced, house.factors, strict=True)
    ]
    assert sum(a > 0 and f == 0 for a, f in weeks) > 0, "away, and nobody knew"
    foods = sum(len(house.foods) for house in houses)
    refused = sum(len(names) for house in houses for names in house.refused)
    assert 0.10 < refused / (foods * WEEKS) < 0.14
    assert all(0 <= house.forgets <= 0.15 for house in houses)


def test_no_policy_beats_the_bound() -> None:
    pytest.importorskip("scipy")
    least = plan.bound(garden(2))
    assert least > 0
    for policy in (policies.reacting, policies.earliest, policies.ours):
        assert live(garden(2), policy).lost >= least - 1e-6
