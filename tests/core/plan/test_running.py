"""Evenings running with one food as their main: no more than two, where others stand and nothing
presses."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from itertools import groupby

import pytest

from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.days import Chosen, Table, spread
from pantry_tui.core.plan.menu import Candidate, Menu, Needs, Why
from pantry_tui.core.plan.room import keeps
from pantry_tui.core.plan.running import once_more, parted
from pantry_tui.core.plan.week import plan
from pantry_tui.core.words import Group, Role

START = date(2026, 11, 25)
TWO = Appetite(2)


def day(number: int) -> date:
    return START + timedelta(days=number)


def pack(name: str, food: str, servings: float = 2.0, **more: object) -> Candidate:
    facts = {"group": Group.FISH, "last": None, "opened": keeps(2), **more}
    return Candidate(name, food, servings=servings, **facts)  # type: ignore[arg-type]


def evenings(menu: Menu) -> list[str]:
    mains = [one for one in menu.picks if one.candidate.at_table is Role.MAIN]
    return [
        "+".join(sorted({one.candidate.food for one in mains if day(n) in one.days}))
        for n in range(7)
    ]


def longest(menu: Menu) -> int:
    return max(len(list(run)) for food, run in groupby(evenings(menu)) if food)


def test_where_others_stand_no_food_is_the_main_of_three_evenings_running() -> None:
    trout = [pack(f"t{n}", "trout", last=day(45)) for n in range(9)]
    salmon = [pack(f"s{n}", "salmon", 4.0, last=day(200)) for n in range(9)]
    menu = plan([*trout, *salmon], TWO, START, Needs(shares={Group.FISH: 0.0}))
    assert len([food for food in evenings(menu) if food]) == 7
    assert longest(menu) <= 2


def test_where_nothing_else_stands_or_it_would_pass_its_date_it_comes_all_the_same() -> None:
    alone = [pack(f"t{n}", "trout", last=day(45)) for n in range(9)]
    assert longest(plan(alone, TWO, START, Needs())) > 3
    lost = [pack(f"t{n}", "trout", last=day(3), safe_until=day(3)) for n in range(4)]
    salmon = [pack(f"s{n}", "salmon", last=day(200)) for n in range(9)]
    assert evenings(plan([*lost, *salmon], TWO, START, Needs()))[:4] == ["trout"] * 4


def laid(*chosen: Chosen) -> list[str]:
    """As they lie once those that may have changed places."""
    table = Table(TWO, START, frozenset())
    parted(chosen, table, spread(chosen, table))
    return evenings(spread(chosen, table))


def of(names: Sequence[tuple[str, str, float]], why: Why = Why.PACE) -> list[Chosen]:
    return [Chosen(pack(name, food, much), why) for name, food, much in names]


def on_days(*foods: str, why: Why = Why.PACE) -> list[Chosen]:
    return [
        Chosen(pack(f"{n}", food), why if food == "trout" else Why.PACE, day(n))
        for n, food in enumerate(foods)
    ]


def test_mains_change_places() -> None:
    assert laid(*on_days("trout", "trout", "trout", "cod")) == [
        "trout", "trout", "cod", "trout", "", "", "",
    ]  # fmt: skip
    long = [Chosen(pack(f"{n}", food, 4.0), Why.PACE) for n, food in enumerate(("a", "a", "b"))]
    for n, one in enumerate(long):
        one.day = day(2 * n)
    assert laid(*long) == ["a", "a", "b", "b", "a", "a", ""]


def test_one_container_may_be_eaten_on_as_many_evenings_as_it_takes() -> None:
    roast = Chosen(pack("r", "roast", 6.0), Why.PACE, day(0))
    assert laid(roast, Chosen(pack("c", "cod"), Why.PACE, day(3)))[:4] == ["roast"] * 3 + ["cod"]


@pytest.mark.parametrize("why", [Why.KEPT, Why.GUESTS])
def test_what_was_put_there_and_the_bird_for_guests_stay(why: Why) -> None:
    found = laid(*on_days("trout", "trout", "trout", "cod", why=why))
    assert found[:4] == ["trout", "trout", "trout", "cod"]


def test_nothing_moves_behind_the_day_by_which_it_is_wanted() -> None:
    some = on_days("trout", "trout", "trout", "cod")
    for one in some[:3]:
        one.candidate = one.candidate._replace(last=day(2))
    assert laid(*some)[:4] == ["trout", "trout", "trout", "cod"]


@pytest.mark.parametrize(("servings", "moves"), [(0.5, False), (1.0, True)])
def test_no_evening_is_left_with_less_than_half_of_a_main(servings: float, moves: bool) -> None:
    some = on_days("trout", "trout", "trout", "cod")
    some[3].candidate = some[3].candidate._replace(servings=servings)
    assert (laid(*some)[:4] != ["trout", "trout", "trout", "cod"]) is moves


@pytest.mark.parametrize(
    ("foods", "at", "again"),
    [
        ("trout trout trout", 3, True),
        ("trout trout - trout", 2, True),
        ("trout trout - cod trout", 2, False),
        ("trout trout", 2, False),
        ("trout cod trout trout", 4, False),
    ],
)
def test_a_fourth_evening_running_takes_another_food_first(
    foods: str, at: int, again: bool
) -> None:
    table = Table(TWO, START, frozenset())
    chosen = [one for one in on_days(*foods.split()) if one.candidate.food != "-"]
    some = {0: pack("x", "trout"), 1: pack("y", "cod")}
    assert once_more(day(at), some, spread(chosen, table)) == ({0} if again else set())
