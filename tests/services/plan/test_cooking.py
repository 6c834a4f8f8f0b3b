"""Dishes of one's own against what stands."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import wishes
from pantry_tui.services.plan.cooking import Cooked, cook
from pantry_tui.services.plan.dishes import keep
from pantry_tui.services.stock import act, places, reserve


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    places.add(larder, "chest", "freezer")
    for line in (
        "3 pint jars peaches, boiling-water canned, larder, minutes=25",
        "2 pint jars runner beans, pressure canned, larder, minutes=20 psi=11 canner=dial",
        "1 pint tub chicken stock, frozen, chest",
    ):
        putup.put_up(larder, putup.read(larder, line))
    keep(larder, "bean soup = 4 runner beans, 2 chicken stock")
    keep(larder, "fruit bowl = 4 peaches, 2 apples")
    keep(larder, "big stew = 40 runner beans, 3 ground beef, 2 chicken stock")
    return larder


def said(found: list[Cooked]) -> list[tuple[str, bool, list[str]]]:
    return [(one.dish, one.stands, [lack.food for lack in one.lacks]) for one in found]


def test_dishes_that_stand_come_first_then_those_that_lack_one_thing(p: Pantry) -> None:
    assert said(cook(p)) == [("bean soup", True, []), ("fruit bowl", False, ["apples"])]


def test_what_lacks_more_is_shown_where_it_is_asked_for(p: Pantry) -> None:
    assert "big stew" in [one.dish for one in cook(p, most=9)]


def test_it_names_the_oldest_containers_and_when_they_are_thawed(p: Pantry) -> None:
    (soup,) = cook(p, "beans")
    beans, stock = soup.takes
    assert beans.containers[0] == "3A/1"
    assert (beans.servings, beans.ready) == (4, None)
    assert stock.ready == p.today + timedelta(days=1)
    assert stock.place == "chest"


def test_a_part_of_what_it_takes_is_bought_for_the_rest(p: Pantry) -> None:
    keep(p, "peach feast = 20 peaches")
    (feast,) = [one for one in cook(p, "peaches") if one.dish == "peach feast"]
    assert (feast.stands, feast.lacks[0].servings) == (False, 20 - feast.takes[0].servings)


def test_what_is_set_apart_or_must_not_be_eaten_is_not_cooked(p: Pantry) -> None:
    reserve.reserve(p, "3A/1", words="Aunt Sunniva")
    reserve.reserve(p, "3A/2", words="Aunt Sunniva")
    (soup,) = [one for one in cook(p) if one.dish == "bean soup"]
    assert not soup.stands
    act.use(p, "4A/1")
    assert "bean soup" not in [one.dish for one in cook(p)], "two things are lacking now"


def test_what_falls_due_makes_its_dish_come_first(p: Pantry) -> None:
    keep(p, "a plate of peaches = 4 peaches")
    assert cook(p)[0].dish == "a plate of peaches", "by name, while nothing is due"
    act.thaw(p, "4A/1")
    assert cook(p)[0].dish == "bean soup"


@pytest.mark.parametrize("typed", ["moon dust", "peaches, moon dust", "plums"])
def test_a_food_that_no_dish_takes_is_said(p: Pantry, typed: str) -> None:
    with pytest.raises(BadInput, match="No dish of yours takes"):
        cook(p, typed)


def test_the_same_pot_does_not_come_every_week(larder: Pantry) -> None:
    """Beans and tomatoes press for weeks; the dish that takes them comes every other week, and
    whoever asks for it has it all the same."""
    p = larder
    keep(p, "bean pot = 2 runner beans, 2 crushed tomatoes")
    made = p.today - timedelta(days=330)
    for line in (
        f"40 pint jars runner beans, pressure canned, larder, {made}",
        f"40 pint jars crushed tomatoes, boiling-water canned, larder, {made}",
    ):
        putup.put_up(p, putup.read(p, line))
    cooked = []
    for _ in range(4):
        cooked.append(any(take.dish == "bean pot" for take in weeks.week(p).take))
        weeks.accept(p)
        p.today += timedelta(days=7)
    assert cooked == [True, False, True, False]
    weeks.accept(p)
    p.today += timedelta(days=7)
    wishes.cook(p, "bean pot", p.today)
    assert any(take.dish == "bean pot" for take in weeks.week(p).take)
