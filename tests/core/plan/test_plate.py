"""An evening of potatoes alone gets a side, though its group should last; what is a meal gets
nothing more."""

from __future__ import annotations

from datetime import date, timedelta

from pantry_tui.core.dataclass import replace
from pantry_tui.core.plan.appetite import Appetite, days_from
from pantry_tui.core.plan.days import Table
from pantry_tui.core.plan.menu import Candidate, Menu, Needs, Pick, Why, Wishes
from pantry_tui.core.plan.pace import Credit
from pantry_tui.core.plan.plate import FED, GREENS, WHOLE, more_mains, would_do
from pantry_tui.core.plan.roles import BITE
from pantry_tui.core.plan.room import keeps
from pantry_tui.core.plan.shares import PutUp, expected, needs
from pantry_tui.core.plan.week import plan
from pantry_tui.core.words import Group, Role

START = date(2026, 11, 25)
FOUR = Appetite(4)
#: Its group has given all of its share.
KEPT = Needs(
    {"peas": Credit(0.0, 0.5), "plums": Credit(0.0, 0.5)}, {"vegetable": 0.0, "fruit": 0.0}
)


def sack(servings: float, last: date | None = None) -> Candidate:
    return Candidate("sack", "potatoes", Group.VEGETABLE, servings, last, bulk=True)


def some(food: str, group: Group, count: int, last: date | None = None) -> list[Candidate]:
    return [Candidate(f"{food} {n}", food, group, 4.0, last) for n in range(count)]


def on(menu: Menu, day: date) -> set[str]:
    return {pick.candidate.food for pick in menu.picks if day in pick.days}


def test_the_thresholds() -> None:
    assert (WHOLE, GREENS, FED) == (1.5, 0.5, 0.75)


def test_potatoes_alone_get_a_vegetable_though_it_should_last() -> None:
    stock = [sack(16.0, START + timedelta(days=3)), *some("peas", Group.VEGETABLE, 9)]
    menu = plan(stock, FOUR, START, KEPT)
    days = [day for pick in menu.picks for day in pick.days if pick.candidate.food == "potatoes"]
    assert days
    peas = sum(pick.candidate.food == "peas" for pick in menu.picks)
    assert peas == 3, "but no more of one food than is eaten in a week"
    assert sum("peas" in on(menu, day) for day in days) == 3


def test_fruit_is_no_supper_and_does_beside_a_main() -> None:
    stock = [
        *some("apples", Group.FRUIT, 2, START + timedelta(days=1)),
        *some("eggs", Group.EGG, 1, START),
        *some("peas", Group.VEGETABLE, 9),
    ]
    menu = plan(stock, FOUR, START, KEPT)
    both = {frozenset(on(menu, pick.day)) for pick in menu.picks}
    assert both == {frozenset({"eggs", "apples"}), frozenset({"apples", "peas"})}


def test_a_supper_of_one_vegetable_gets_no_more_of_what_should_last() -> None:
    stock = [
        *some("beans", Group.VEGETABLE, 1, START),
        *some("peas", Group.VEGETABLE, 9),
        *some("plums", Group.FRUIT, 9),
    ]
    menu = plan(stock, FOUR, START, KEPT)
    assert {pick.candidate.food for pick in menu.picks} == {"beans"}


def test_onions_only_flavour() -> None:
    net = Candidate(
        "net", "onions", Group.VEGETABLE, 2.0, START, bulk=True, role=Role.SIDE, a_head=0.5
    )
    menu = plan([net, *some("peas", Group.VEGETABLE, 3)], FOUR, START, KEPT)
    assert {pick.candidate.food for pick in menu.picks} == {"onions", "peas"}


def test_staples_are_no_part_of_the_share_of_their_group() -> None:
    start, long_ago = START, START - timedelta(weeks=20)
    peas = some("peas", Group.VEGETABLE, 10)
    put_up = [PutUp("peas", Group.VEGETABLE, 40.0, long_ago)]
    sacks = [PutUp("potatoes", Group.VEGETABLE, 200.0, start - timedelta(weeks=9))]
    eaten = {"peas": [2.0] * 8, "potatoes": [28.0] * 8}

    def share(stock: list[Candidate], year: list[PutUp]) -> float:
        coming = expected(year, stock, start, {})
        return needs(stock, FOUR, start, {}, eaten, coming).shares["vegetable"]

    assert share([*peas, sack(200.0)], [*put_up, *sacks]) == share(peas, put_up)


NEXT = {
    1: Candidate("p", "peas", Group.VEGETABLE, 4.0, None),
    2: Candidate("r", "rice", Group.GRAIN, 4.0, None, role=Role.SIDE),
    3: Candidate("f", "plums", Group.FRUIT, 4.0, None),
    4: Candidate("e", "eggs", Group.EGG, 4.0, None),
    5: Candidate("o", "onions", Group.VEGETABLE, 2.0, None, role=Role.SIDE, a_head=0.5),
}


def would(
    *laid: tuple[str, Role, float],
    small: tuple[str, ...] = (),
    keeps: tuple[int, ...] = (),
    eats: Appetite = FOUR,
    week: tuple[tuple[str, float], ...] = (),
) -> set[int]:
    """The numbers of NEXT that would do for an evening on which that lies, beside what else lies
    in the `week`."""
    tomorrow = START + timedelta(days=1)
    picks = [
        Pick(
            Candidate(food, food, Group.VEGETABLE, much, None, role=role, a_head=a_head),
            (day,),
            (much,),
            Why.PACE,
        )
        for day, rows in (
            (START, laid),
            (tomorrow, [(food, Role.SIDE, much) for food, much in week]),
        )
        for food, role, much in rows
        for a_head in (0.5 if food in small else 1.0,)
    ]
    return would_do(
        START, Table(eats, START, frozenset()), Menu(tuple(picks), ()), NEXT.items(), keeps
    )


def test_what_would_do_for_an_evening() -> None:
    potatoes, eggs = ("potatoes", Role.SIDE, 4.0), ("eggs", Role.MAIN, 4.0)
    assert would(potatoes) == {1}, "rice fills, onions flavour, plums are no supper"
    assert would(potatoes, eggs) == {1, 3}
    assert would(potatoes, eggs, keeps=(1,)) == {1, 3}
    assert would(potatoes, eggs, ("beets", Role.SIDE, 1.9)) == {1, 3}
    assert would(potatoes, eggs, ("beets", Role.SIDE, 2.0)) == set(), "half a serving a head"
    assert would(("beets", Role.SIDE, 4.0)) == {1, 2, 3, 5}, "one and a half servings a head"
    assert would(("beets", Role.SIDE, 4.0), keeps=(1, 3)) == {2, 5}
    assert would(("beets", Role.SIDE, 6.0)) == set()
    assert would(("peas", Role.SIDE, 4.0)) == {2, 3, 5}, "not more of the same"
    assert would(("beets", Role.SIDE, 4.0), ("jam", Role.SPREAD, 4.0)) == {1, 2, 3, 5}
    onions = ("onions", Role.SIDE, 1.0)
    assert would(("beets", Role.SIDE, 4.0), onions, small=("onions",)) == set()
    assert would(onions, potatoes, small=("onions",)) == {1}


def test_no_more_of_a_food_than_a_week_has() -> None:
    beets = ("beets", Role.SIDE, 4.0)
    assert 1 in would(beets, week=(("peas", 8.0),))
    assert 1 not in would(beets, week=(("peas", 8.0), ("peas", 4.0))), "three servings a head"
    guests = Appetite(4, table={START + timedelta(days=n): 8 for n in range(7)})
    assert 1 in would(beets, week=(("peas", 12.0),), eats=guests)
    away = Appetite(4, table={START + timedelta(days=n): 0 for n in range(1, 7)})
    assert 1 in would(beets, week=(("peas", 4.0),), eats=away), "a short week has meals, too"


def test_what_needs_no_thawing_is_the_main_of_the_first_evening() -> None:
    """The eggs lay in the middle of the week, and all else has to thaw for a day."""
    eggs = [
        Candidate("box", "eggs", Group.EGG, 12.0, START + timedelta(days=15), bulk=True, a_head=1.0)
    ]
    tubs = [
        Candidate(f"{food} {n}", food, Group.MEAL, 4.0, None, frozen=True, thaw_days=1)
        for food in ("soup", "curry")
        for n in range(5)
    ]
    sack = Candidate("beets", "beets", Group.VEGETABLE, 90.0, START + timedelta(days=30), bulk=True)
    for day in range(7):
        out = frozenset({START + timedelta(days=day)})
        menu = plan([*eggs, *tubs, sack], FOUR, START, Needs(), Wishes(out=out))
        at_home = [START + timedelta(days=n) for n in range(7) if n != day]
        assert all(menu.laid(on, {Role.MAIN}) == 4 for on in at_home)
        assert all(pick.thaw_by is None or pick.thaw_by >= START for pick in menu.picks)


def test_a_main_for_a_part_of_the_table_gets_another_such_as_lies_there_first() -> None:
    six = Table(Appetite(6), START, frozenset())
    fish = Pick(Candidate("c", "cod", Group.FISH, 4.0, None), (START,), (4.0,), Why.PACE)
    beef = Candidate("b", "beef", Group.MEAT, 4.0, None)
    coming = [(1, beef), (2, fish.candidate), (3, sack(9.0))]

    def more(menu: Menu, table: Table = six, keeps: set[int] | None = None) -> list[set[int]]:
        return more_mains(START, table, menu, coming, keeps or set(), set())

    assert more(Menu((fish,), ())) == [{2}, {1, 2}]
    assert more(Menu((fish,), ()), keeps={1}) == [{2}, {2}], "but of what should last"
    assert more(Menu((replace(fish, parts=(4.5,)),), ())) == [], "nearly all are fed"
    three = Table(Appetite(3), START, frozenset())
    assert more(Menu((replace(fish, parts=(2.0,)),), ()), three) == [], "too much of it"
    packs = [Candidate(f"p{n}", "cod", Group.FISH, 4.0, None) for n in range(20)]
    menu = plan(packs, Appetite(6), START, Needs())
    assert menu.laid(START, {Role.MAIN}) == 6.0, "two of them, and what is over is for tomorrow"


def packs_for_six(
    opened: int | None, table: dict[date, int] | None = None
) -> tuple[int, list[float]]:
    """How many of twenty packs of four servings come in a week, and what lies on each day."""
    life = keeps(opened)
    packs = [Candidate(f"p{n}", "cod", Group.FISH, 4.0, None, opened=life) for n in range(20)]
    menu = plan(packs, Appetite(6, table=table or {}), START, Needs())
    return len(menu.picks), [menu.laid(day, {Role.MAIN}) for day in days_from(START, 7)]


def test_what_two_packs_have_over_is_for_tomorrow() -> None:
    assert packs_for_six(3) == (11, [6.0] * 6 + [8.0]), "but of the last evening"
    assert packs_for_six(0) == (14, [8.0] * 7), "where it keeps no day longer it is eaten"
    away = {START + timedelta(days=1): 0, START + timedelta(days=2): 0}
    assert packs_for_six(2, table=away)[1][0] == 8.0, "nobody is there while it keeps"
    assert packs_for_six(3, table=away)[1][0] == 6.0


def test_no_single_egg_beside_chops_and_what_presses_is_more_than_a_bite() -> None:
    chops = Pick(Candidate("c", "chops", Group.MEAT, 3.0, None), (START,), (3.0,), Why.PACE)
    four = Table(FOUR, START, frozenset())

    def more(servings: float, table: Table = four) -> list[set[int]]:
        eggs = Candidate("e", "eggs", Group.EGG, servings, None)
        return more_mains(START, table, Menu((chops,), ()), [(1, eggs)], set(), {1})

    assert BITE == 1 / 3
    assert more(1.0) == []
    assert more(1.4) == [set(), {1}]
    guests = Table(Appetite(2, table={START: 4}), START, frozenset())
    assert more(0.4, guests) == [], "three of four guests are fed"
    assert more(0.5, guests) == [set(), {1}]
    assert more(3.1, guests) == [], "too much of it"


def test_odd_eggs_wait_where_chops_are_the_main_and_are_eaten_where_they_would_be_lost() -> None:
    def week(safe: date | None) -> list[float]:
        packs = [
            Candidate(f"c{n}", "chops", Group.MEAT, 12.0, None, opened=keeps(4)) for n in (1, 2)
        ]
        last = safe or START + timedelta(days=12)
        eggs = [Candidate(f"e{n}", "eggs", Group.EGG, 1.0, last, safe_until=safe) for n in range(9)]
        menu = plan([*packs, *eggs], FOUR, START, Needs())
        laid = dict.fromkeys(Table(FOUR, START, frozenset()).days, 0.0)
        for pick in menu.picks:
            for day, share in zip(pick.days, pick.parts, strict=True):
                laid[day] += share if pick.candidate.food == "eggs" else 0.0
        return sorted(laid.values())

    assert all(much == 0 or much >= BITE * 4 for much in week(None))
    assert sum(week(START + timedelta(days=2))) == 9.0


def test_a_crate_that_comes_first_comes_once_more_before_jars_that_should_last() -> None:
    potatoes, eggs = ("potatoes", Role.SIDE, 4.0), ("eggs", Role.MAIN, 4.0)
    week = (("peas", 12.0),)
    assert would(potatoes, eggs, week=week) == {1, 3}, "peas come before plums"
    assert would(potatoes, eggs, week=week, keeps=(1,)) == {3}, "but not what should last"
    assert would(potatoes, eggs, week=(("plums", 12.0),)) == {1}, "plums come after peas"
    assert would(potatoes, eggs, week=(*week, ("plums", 12.0))) == set()


def test_many_get_what_fills_and_what_is_green_and_no_other_evening_goes_without() -> None:
    many = Appetite(4, table={START + timedelta(days=4): 20})
    peas = [Candidate(f"p{n}", "peas", Group.VEGETABLE, 3.0, None) for n in range(20)]
    ham = Candidate("h", "ham", Group.MEAT, 16.0, None, opened=keeps(3))
    feast = START + timedelta(days=4)
    menu = plan([ham, sack(120.0), *peas], many, START, Needs())
    of = {
        food: sum(pick.on(feast) for pick in menu.picks if pick.candidate.food == food)
        for food in ("ham", "potatoes", "peas")
    }
    assert of["ham"] >= 15
    assert of["potatoes"] == 20.0
    assert of["peas"] >= GREENS * 20
    usual = plan([ham, sack(120.0), *peas], FOUR, START, Needs())

    def greens(found: Menu) -> int:
        return sum("peas" in on(found, START + timedelta(days=n)) for n in range(7) if n != 4)

    assert greens(menu) >= greens(usual) - 1
    few = plan([ham, sack(12.0), *peas[:2]], many, START, Needs())
    taken = sum(pick.candidate.servings for pick in few.picks if pick.why is Why.GUESTS)
    assert taken <= 16 + 6 + 3, "of none more than half: there are other evenings"
