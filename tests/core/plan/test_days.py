"""On which day what is chosen is opened, and until when it is eaten; day 0 is a Monday."""

from __future__ import annotations

from collections import defaultdict
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.plan.appetite import Appetite, at_table, days_from
from pantry_tui.core.plan.days import Chosen, Table, spread
from pantry_tui.core.plan.menu import Candidate, Menu, Pick, Why
from pantry_tui.core.plan.room import keeps
from pantry_tui.core.words import Group

MONDAY = date(2026, 11, 23)
TWO = Appetite(2)


def day(number: int) -> date:
    """0 is the Monday."""
    return MONDAY + timedelta(days=number)


def one(
    name: str = "jar",
    servings: float = 2,
    last: int | None = None,
    safe: int | None = None,
    ready: int | None = None,
    food: str = "",
    group: Group = Group.VEGETABLE,
    open_days: int | None = None,
    **more: object,
) -> Candidate:
    def on(n: int | None) -> date | None:
        return None if n is None else day(n)

    return Candidate(
        name,
        food or name,
        group,
        servings,
        on(last),
        safe_until=on(safe),
        ready=on(ready),
        opened=keeps(open_days),
        **more,  # type: ignore[arg-type]
    )


def week(appetite: Appetite = TWO, *out: int, length: int = 7) -> Table:
    return Table(appetite, MONDAY, frozenset(map(day, out)), length)


def plan(*chosen: Candidate | Chosen, table: Table | None = None) -> Menu:
    all_ = [c if isinstance(c, Chosen) else Chosen(c, Why.DUE) for c in chosen]
    return spread(all_, table or week())


def days(menu: Menu) -> dict[str, list[int]]:
    return {p.candidate.container: [(d - MONDAY).days for d in p.days] for p in menu.picks}


def pick(menu: Menu, name: str = "jar") -> Pick:
    return next(p for p in menu.picks if p.candidate.container == name)


# -- when it may be opened -------------------------------------------------------------------------


def test_frozen_food_waits_until_it_can_be_thawed_and_says_from_when() -> None:
    menu = plan(one(frozen=True, thaw_days=2, last=6))
    assert days(menu) == {"jar": [2]}
    assert pick(menu).thaw_by == day(0)
    assert pick(plan(one(thaw_days=2))).thaw_by is None, "it is not frozen"
    assert days(plan(one(thaw_days=2))) == {"jar": [0]}
    assert pick(plan(one(frozen=True))).thaw_by is None, "eaten frozen"


def test_what_is_thawing_is_eaten_once_it_is_thawed() -> None:
    assert days(plan(one(ready=3, must=True))) == {"jar": [3]}


def test_what_cannot_be_thawed_before_its_last_safe_day_is_missed() -> None:
    menu = plan(one(frozen=True, thaw_days=3, safe=2))
    assert menu.picks == ()
    assert [c.container for c in menu.missed] == ["jar"]
    assert menu.order == ()
    assert days(plan(one(frozen=True, thaw_days=2, safe=2))) == {"jar": [2]}


def test_nothing_is_opened_on_a_day_on_which_nobody_eats_at_home() -> None:
    away = Appetite(2, table={day(1): 0})
    assert days(plan(one(last=3), table=week(away, 0))) == {"jar": [2]}
    assert plan(one(safe=1), table=week(away, 0)).missed
    assert week(away, 0).days == [day(n) for n in range(2, 7)]


def test_wanted_by_a_day_and_late_all_the_same_it_comes_on_the_first_day_left() -> None:
    assert days(plan(one(last=-3))) == {"jar": [0]}
    assert days(plan(one(last=0), table=week(TWO, 0))) == {"jar": [1]}


# -- spreading -------------------------------------------------------------------------------------


def test_nearest_dates_come_first_and_each_food_has_days_of_its_own() -> None:
    menu = plan(
        one("b", food="beans"), one("a", food="beans", last=1), one("c", food="beans", last=0)
    )
    assert days(menu) == {"c": [0], "a": [1], "b": [2]}
    assert menu.order == ("b", "a", "c"), "by how much they press, as they were chosen"


def test_a_group_is_spread_too_and_after_it_all_that_is_eaten() -> None:
    menu = plan(
        one("a", food="beans", last=0),
        one("b", food="peas", last=1),
        one("c", food="pears", group=Group.FRUIT, last=2),
    )
    assert days(menu) == {"a": [0], "b": [1], "c": [2]}


def test_meals_come_on_as_few_days_as_are_cooked_from_the_stores() -> None:
    twice = Appetite(2, meals=2)
    menu = plan(one("a"), one("b"), one("c"), one("d"), table=week(twice))
    assert {p.day for p in menu.picks} == {day(0), day(1)}
    late = plan(one("a", last=0), one("b", last=1), one("c", ready=5), table=week(twice))
    assert days(late)["c"] == [5], "unless it cannot be eaten on those"


def test_what_was_put_on_a_day_lies_on_it_where_that_can_be() -> None:
    pinned = Chosen(one("p"), Why.KEPT, day(4))
    assert days(plan(pinned)) == {"p": [4]}
    frozen = Chosen(one("p", frozen=True, thaw_days=2), Why.KEPT, day(1))
    assert days(plan(frozen)) == {"p": [2]}
    both = plan(one("a", food="beans", last=0), Chosen(one("b", food="beans"), Why.KEPT, day(0)))
    assert days(both) == {"b": [0], "a": [0]}, "the one with a day of its own is laid first"


def test_the_dishes_of_a_day_stand_above_its_single_foods_each_together() -> None:
    menu = plan(
        Chosen(one("s1", food="beef"), Why.DISH, day(2), "stew"),
        Chosen(one("x", food="zander"), Why.KEPT, day(2)),
        Chosen(one("s2", food="carrots"), Why.DISH, day(2), "stew"),
        Chosen(one("p", food="apples"), Why.DISH, day(2), "pie"),
    )
    assert [p.candidate.container for p in menu.picks] == ["p", "s1", "s2", "x"]


# -- until when ------------------------------------------------------------------------------------


def test_an_opened_jar_is_eaten_day_by_day_a_serving_a_person() -> None:
    assert days(plan(one(servings=5))) == {"jar": [0, 1, 2]}
    guests = Appetite(2, table={day(0): 5})
    assert days(plan(one(servings=5), table=week(guests))) == {"jar": [0]}
    assert days(plan(one(servings=4), table=week(TWO, 1))) == {"jar": [0, 2]}


def test_no_later_than_it_keeps_once_open_and_what_is_left_then_is_to_spare() -> None:
    menu = plan(one(servings=20, open_days=3))
    assert days(menu) == {"jar": [0, 1, 2, 3]}
    assert (pick(menu).spare, pick(menu).later) == (12, 0)
    assert pick(menu).until == day(3)


def test_no_later_than_it_is_safe_even_if_it_would_keep_longer_once_open() -> None:
    menu = plan(one(servings=20, open_days=30, safe=1))
    assert days(menu) == {"jar": [0, 1]}
    assert pick(menu).until == day(1)


def test_what_is_open_already_keeps_as_long_as_its_clock_runs() -> None:
    menu = plan(one(servings=20, open_days=1, safe=3, must=True))
    assert days(menu) == {"jar": [0, 1, 2, 3]}


def test_what_keeps_beyond_the_week_is_finished_in_the_next() -> None:
    menu = plan(Chosen(one(servings=6, open_days=3), Why.KEPT, day(6)))
    assert days(menu) == {"jar": [6]}
    assert (pick(menu).later, pick(menu).spare) == (4, 0)
    long = plan(Chosen(one(servings=20, open_days=3), Why.KEPT, day(6)))
    assert (pick(long).later, pick(long).spare) == (6, 12)
    ever = plan(Chosen(one(servings=20), Why.KEPT, day(6)))
    assert (pick(ever).later, pick(ever).spare, pick(ever).until) == (18, 0, None)


def test_nobody_at_home_next_week_finishes_nothing() -> None:
    away = Appetite(2, table={day(n): 0 for n in range(7, 14)})
    menu = plan(Chosen(one(servings=6, open_days=3), Why.KEPT, day(6)), table=week(away))
    assert (pick(menu).later, pick(menu).spare) == (0, 4)


def test_a_portion_out_of_a_crate_is_eaten_on_its_day() -> None:
    menu = plan(one(servings=9, bulk=True))
    assert days(menu) == {"jar": [0]}
    assert (pick(menu).spare, pick(menu).later, pick(menu).until) == (0, 0, day(0))


def test_portions_out_of_one_closed_vessel_lie_within_the_days_it_keeps_once_open() -> None:
    def portion(on: int) -> Chosen:
        return Chosen(one("tub", 2, bulk=True, open_days=2), Why.KEPT, day(on))

    assert len(plan(portion(0), portion(2)).picks) == 2
    apart = plan(portion(0), portion(3))
    assert len(apart.picks) == 1
    assert len(apart.missed) == 1
    free = Chosen(one("crate", 2, bulk=True), Why.KEPT, day(0))
    later = Chosen(one("crate", 2, bulk=True), Why.KEPT, day(6))
    assert len(plan(free, later).picks) == 2


# -- laws ------------------------------------------------------------------------------------------

foods = st.lists(
    st.builds(
        one,
        st.sampled_from("abcdefgh"),
        st.integers(1, 12),
        st.none() | st.integers(-2, 12),
        st.none() | st.integers(0, 9),
        st.none() | st.integers(-2, 5),
        frozen=st.booleans(),
        thaw_days=st.integers(0, 3),
        open_days=st.none() | st.integers(-1, 9),
    ),
    max_size=6,
    unique_by=lambda c: c.container,
)
calendars = st.dictionaries(st.integers(0, 13).map(day), st.integers(0, 6), max_size=5)


@given(foods, calendars, st.integers(1, 7))
def test_nothing_is_eaten_before_it_is_there_or_after_it_must_go(
    some: list[Candidate], table: dict[date, int], meals: int
) -> None:
    appetite = Appetite(2, meals=meals, table=table)
    menu = plan(*some, table=week(appetite))
    done = [p.candidate for p in menu.picks] + list(menu.missed)
    assert sorted(c.container for c in done) == sorted(c.container for c in some)
    for p in menu.picks:
        food = p.candidate
        assert all(appetite.sit(d) > 0 and MONDAY <= d <= day(6) for d in p.days)
        assert list(p.days) == sorted(set(p.days))
        if food.safe_until is not None:
            assert p.days[-1] <= food.safe_until
            assert p.until is not None
            assert p.until <= food.safe_until
        if food.frozen:
            assert p.day >= day(food.thaw_days)
        if food.ready is not None:
            assert p.day >= food.ready
        if food.open_days is not None:
            assert food.open_days >= 0
            assert p.days[-1] <= p.day + timedelta(days=food.open_days)
        eaten = sum(map(appetite.sit, p.days))
        assert p.spare >= 0
        assert p.later >= 0
        assert p.spare + p.later == pytest.approx(max(0, food.servings - eaten))


@given(calendars)
def test_a_week_is_as_much_as_sits_at_its_table(table: dict[date, int]) -> None:
    appetite = Appetite(2, table=table)
    assert week(appetite).factor == pytest.approx(appetite.factor(MONDAY))
    served: dict[date, int] = defaultdict(lambda: 2, table)
    assert appetite.factor(MONDAY) == pytest.approx(sum(served[day(n)] for n in range(7)) / 14)
    assert appetite.coming(MONDAY, 2) == [appetite.factor(MONDAY), appetite.factor(day(7))]


# -- appetite --------------------------------------------------------------------------------------


def test_the_household_s_own_word_goes_first_then_what_its_log_shows_then_the_charts() -> None:
    plain = Appetite(4)
    assert plain.group_ceiling(Group.MEAT) == 4.0
    assert plain.of_group(Group.MEAT) == 16.0
    assert plain.food_ceiling("beans") == 3.0
    assert plain.of_food("beans") == 12.0
    shown = Appetite(4, learned={"meat": 2.5, "beans": 1.5})
    assert (shown.group_ceiling(Group.MEAT), shown.food_ceiling("beans")) == (2.5, 1.5)
    own = Appetite(4, {"meat": 1.0}, {"beans": 0.0}, {"meat": 2.5, "beans": 1.5})
    assert (own.group_ceiling(Group.MEAT), own.food_ceiling("beans")) == (1.0, 0.0)


def test_who_cooks_less_from_the_stores_eats_less_of_the_charts() -> None:
    seldom = Appetite(2, learned={"fish": 1.0}, meals=3)
    assert seldom.group_ceiling(Group.VEGETABLE) == 6.0
    assert seldom.group_ceiling(Group.FISH) == 1.0
    assert seldom.food_ceiling("beans") == 3.0


def test_what_is_never_eaten() -> None:
    own = Appetite(2, {"fish": 0.0}, {"beans": 0.0})
    assert not own.eats("cod", Group.FISH)
    assert not own.eats("beans", Group.VEGETABLE)
    assert own.eats("peas", Group.VEGETABLE)


def test_who_sits_at_the_table() -> None:
    appetite = Appetite(2, table={day(1): 0, day(2): 6})
    assert [appetite.sit(day(n)) for n in range(3)] == [2, 0, 6]
    assert at_table(6) == "6 at the table"
    assert at_table(0) == "nobody at home"
    assert list(days_from(MONDAY, 2)) == [day(0), day(1)]
    assert len(list(days_from(MONDAY))) == 7
    assert week(length=3).end == day(2)
    assert week(length=3).next_week == day(3)


def test_a_day_takes_out_of_one_vessel_no_more_than_its_heads_eat() -> None:
    parts = [one(servings=2.0, bulk=True) for _ in range(2)]
    for why, meals in ((Why.KEPT, 1), (Why.PACE, 1), (Why.DUE, 2)):
        found = plan(*(Chosen(part, why, day(1)) for part in parts), table=week(TWO))
        assert len(found.picks) == meals, "but of what must go"
