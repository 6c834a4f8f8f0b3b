"""The benchmark itself: its households are what they say, and its count adds up."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Group
from tests.benchmarks import plan
from tests.benchmarks.catalogue import catalogue
from tests.benchmarks.household import CEILING, WEEKS, Policy, household, simulate


def test_lives_are_those_of_the_program() -> None:
    lives = {(kind.food, kind.by_meal): (kind.life, kind.opened) for kind in catalogue()}
    assert lives["peaches", False] == (52, 3)  # a year sealed, three days open
    assert lives["peas", True] == (35, 1)  # eight months frozen, a day thawed
    assert lives["strawberry jam", False] == (52, 30)  # a year sealed, a month open


def test_nobody_plans_for_more_than_is_eaten_in_a_year() -> None:
    for seed in range(5):
        house = household(seed)
        for group, most in house.usual.group.items():
            foods = [food for food in house.foods if food.group == group]
            a_year = sum(food.meant * len(food.weeks) / 3 for food in foods)
            assert most * 52 / 2 < a_year <= most * 52


def test_containers_are_no_bigger_than_the_week() -> None:
    house = household(3)
    assert all(food.size <= house.usual.food[food.name] for food in house.foods)
    assert set(house.usual.group) <= {group.value for group in CEILING}
    assert Group.VEGETABLE in house.usual.group


@pytest.mark.parametrize("policy", [plan.reacting, plan.earliest, plan.ours])
def test_every_serving_is_eaten_lost_or_left(policy: Policy) -> None:
    house = household(2)
    outcome = simulate(house, policy)
    put_up = sum(jar.food.size for jar in house.jars if jar.made < WEEKS)
    assert outcome.eaten + outcome.lost + outcome.left == pytest.approx(put_up)
    room = sum(sum(house.room(week).group.values()) for week in range(WEEKS))
    assert outcome.eaten <= room


def test_no_policy_beats_the_bound() -> None:
    pytest.importorskip("scipy")
    least = plan.bound(household(2))
    assert least > 0
    for policy in (plan.reacting, plan.earliest, plan.ours):
        assert simulate(household(2), policy).lost >= least - 1e-6
