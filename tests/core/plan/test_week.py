"""The week against plans made by hand, and its laws over random pantries."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from datetime import date, timedelta
from functools import partial

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.lots import discarded_by
from pantry_tui.core.plan.menu import Candidate, Dish, Needs, Pick, Why, Wishes
from pantry_tui.core.plan.pace import Credit
from pantry_tui.core.plan.room import keeps
from pantry_tui.core.plan.week import plan
from pantry_tui.core.words import Group, Role

START = date(2026, 11, 25)
TWO = Appetite(2)


def jar(
    name: str,
    food: str = "beans",
    servings: float = 4.0,
    open_days: int | None = None,
    **more: object,
) -> Candidate:
    facts = {"group": Group.VEGETABLE, "last": None, "opened": keeps(open_days), **more}
    return Candidate(name, food, servings=servings, **facts)  # type: ignore[arg-type]


def day(number: int) -> date:
    return START + timedelta(days=number)


def eaten(picks: Sequence[Pick]) -> list[str]:
    return [pick.candidate.container for pick in picks]


# -- what and when -------------------------------------------------------------------------------


def test_open_ones_go_before_all_even_above_a_ceiling() -> None:
    none = Appetite(2, groups={"vegetable": 1.0})
    jars = [jar(f"{n}", must=True, safe_until=day(2)) for n in range(3)]
    found = plan(jars, none, START, Needs())
    assert sorted(eaten(found.picks)) == ["0", "1", "2"]
    assert all(pick.why is Why.MUST and pick.day <= day(2) for pick in found.picks)


def test_an_open_jar_that_keeps_for_weeks_is_not_in_the_way_of_what_is_due() -> None:
    little = Appetite(2, groups={"relish": 2.0})
    jam = jar("1", "jam", group=Group.RELISH, must=True, last=day(60))
    pesto = jar("2", "pesto", group=Group.RELISH, last=day(1), safe_until=day(1), open_days=3)
    assert sorted(eaten(plan([jam, pesto], little, START, Needs()).picks)) == ["1", "2"]
    later = jar("2", "pesto", group=Group.RELISH, last=day(40), open_days=3)
    assert eaten(plan([jam, later], little, START, Needs()).picks) == ["1"]


def test_a_second_jar_waits_for_the_open_one_which_is_asked_about_when_its_pace_is_over() -> None:
    two_a_week = Needs(credits={"jam": Credit(0, 2)})
    others = [jar(str(n), "jam", group=Group.RELISH, last=day(3)) for n in (2, 3)]
    for opened, over in ((0, []), (-13, []), (-14, ["1"]), (-300, ["1"])):
        jam = jar("1", "jam", group=Group.RELISH, must=True, last=day(60), since=day(opened))
        found = plan([jam, *others], TWO, START, two_a_week)
        assert eaten(found.picks) == ["1"]
        assert [one.container for one in found.over] == over
        assert "3" in [one.container for one in found.more]
    unsafe = jar("4", "chutney", group=Group.RELISH, last=day(3), safe_until=day(3))
    assert sorted(eaten(plan([jam, unsafe], TWO, START, two_a_week).picks)) == ["1", "4"]


def test_what_falls_due_on_one_day_is_no_more_than_that_day_eats() -> None:
    """Beans that are past their best a day later are not all for the first evening."""
    beans = [jar(str(n), last=START) for n in range(4)]
    picks = plan(beans, TWO, START, Needs()).picks
    assert len({pick.day for pick in picks}) > 1
    safe = [jar(str(n), last=START, safe_until=START) for n in range(4)]
    assert {pick.day for pick in plan(safe, TWO, START, Needs()).picks} == {START}


def test_a_big_jar_is_planned_on_as_many_days_as_it_takes() -> None:
    found = plan([jar("1", servings=6, last=day(3), open_days=3)], TWO, START, Needs())
    (pick,) = found.picks
    assert len(pick.days) == 3
    assert pick.spare == 0
    too_much = plan([jar("1", servings=12, last=day(1), open_days=3)], TWO, START, Needs())
    (pick,) = too_much.picks
    assert len(pick.days) == 4
    assert pick.spare == 4


def test_a_roast_starts_to_thaw_in_time() -> None:
    roast = jar("1", "beef", group=Group.MEAT, frozen=True, thaw_days=3, last=day(1))
    (pick,) = plan([roast], TWO, START, Needs()).picks
    assert pick.day == day(3)
    assert pick.thaw_by == START
    late = jar(
        "1", "beef", group=Group.MEAT, frozen=True, thaw_days=3, last=day(1), safe_until=day(1)
    )
    found = plan([late], TWO, START, Needs())
    assert not found.picks
    assert found.missed


def test_nothing_is_set_to_thaw_on_a_day_on_which_nobody_is_there() -> None:
    pack = jar("1", "beef", group=Group.MEAT, frozen=True, thaw_days=1)
    away = Appetite(2, table={day(n): 0 for n in (0, 1, 2)})
    (pick,) = plan([pack], away, START, Needs()).picks
    assert (pick.thaw_by, pick.day) == (day(3), day(4))
    last = pack._replace(last=day(3), safe_until=day(3))
    assert not plan([last], away, START, Needs()).picks, "by then nobody took it out"
    out = Wishes(out=frozenset({START}))
    (pick,) = plan([pack], TWO, START, Needs(), out).picks
    assert pick.thaw_by == START, "who eats out is there to take it out"
    away = Appetite(2, table={START: 0, day(1): 0})
    assert away.thaws_by(START, 3) == day(5)


def test_what_cannot_thaw_in_the_days_left_waits_and_is_not_missed() -> None:
    roast = jar("1", "beef", group=Group.MEAT, frozen=True, thaw_days=3, last=day(40))
    found = plan([roast], TWO, START, Needs(), length=2)
    assert not found.picks
    assert not found.missed
    assert eaten(plan([roast], TWO, START, Needs(), length=4).picks) == ["1"]


def test_in_a_week_half_over_only_what_falls_due_in_the_rest_is_due() -> None:
    stock = [jar("1", last=day(1)), jar("2", "peas", last=day(3))]
    found = plan(stock, TWO, START, Needs(shares={"vegetable": 0.0}), length=2)
    assert {p.candidate.container: p.why for p in found.picks} == {"1": Why.DUE, "2": Why.BEGIN}


def test_what_is_too_much_of_an_open_roast_by_its_last_safe_day_is_said_on_the_first() -> None:
    roast = jar("roast", "beef roasts", servings=7, group=Group.MEAT, bulk=True, must=True)
    found = plan([roast._replace(last=day(1), safe_until=day(1))], TWO, START, Needs())
    assert sum(pick.candidate.servings + pick.spare for pick in found.picks) == 7
    (over,) = [pick for pick in found.picks if pick.spare]
    assert over.day == START
    keeps_on = plan([roast._replace(last=day(9))], TWO, START, Needs())
    assert not any(pick.spare for pick in keeps_on.picks)


def test_from_bulk_as_many_meals_as_the_pace_asks() -> None:
    crate = jar("crate", servings=90, bulk=True)
    picks = plan([crate], TWO, START, Needs(shares={"vegetable": 4.0})).picks
    assert [pick.candidate.servings for pick in picks] == [2.0, 2.0]
    assert len({pick.day for pick in picks}) == 2


def test_a_dish_takes_the_day_that_suits_all_its_parts() -> None:
    dish = Dish("stew", (("beans", 4.0), ("beef", 4.0)))
    stock = [jar("1", last=day(4)), jar("2", "beef", group=Group.MEAT, frozen=True, thaw_days=2)]
    found = plan(stock, TWO, START, Needs(), dishes=[dish])
    assert {pick.dish for pick in found.picks} == {"stew"}
    assert {pick.day for pick in found.picks} == {day(2)}
    (beef,) = (pick for pick in found.picks if pick.candidate.food == "beef")
    assert beef.thaw_by == START


def test_a_dish_takes_more_for_guests_on_its_day_where_there_is_more() -> None:
    dish = Dish("stew", (("beans", 4.0),))
    guests = Appetite(2, table={day(2): 4})
    asked = Wishes(dishes={"stew": day(2)})

    def takes(jars: int, on: Wishes = asked) -> list[float]:
        stock = [jar(f"{n}", last=day(90)) for n in range(jars)]
        found = plan(stock, guests, START, Needs(), on, dishes=[dish])
        return [pick.candidate.servings for pick in found.picks if pick.dish]

    assert sum(takes(5)) == 8
    assert sum(takes(1)) == 4, "no more stands"
    assert sum(takes(5, Wishes(dishes={"stew": day(1)}))) == 4


def test_a_group_that_nothing_presses_gives_its_share_those_first_that_are_behind() -> None:
    foods = [jar(f"{n}", f"food {n}") for n in range(6)]
    behind = Needs({f"food {n}": Credit(n, 1.0) for n in range(6)}, {"vegetable": 9.0})
    found = plan(foods, Appetite(8), START, behind)
    assert sorted(eaten(found.picks)) == ["4", "5"]
    assert all(pick.why is Why.PACE for pick in found.picks)


def test_why_each_is_there() -> None:
    stock = [
        jar("1", "cod", group=Group.FISH, last=day(3)),
        *[jar(f"{n}", "peas", last=day(50)) for n in range(2, 12)],
        jar("12", "plums", group=Group.FRUIT, last=day(300)),
    ]
    found = plan(stock, TWO, START, Needs())
    assert found.order[:2] == ("1", "2")
    assert "12" in found.order[-2:], "but for what made a meal of an evening"
    why = {pick.candidate.food: pick.why for pick in found.picks}
    assert why == {"cod": Why.DUE, "peas": Why.BEGIN, "plums": Why.PACE}


def test_every_day_has_a_main_for_all_who_sit_there_while_mains_stand() -> None:
    packs = [jar(f"{n}", "beef", 4.0, group=Group.MEAT, open_days=2) for n in range(30)]
    guests = Appetite(4, table={day(3): 12})
    found = plan(packs, guests, START, Needs())
    for number in range(7):
        assert found.laid(day(number), {Role.MAIN}) >= guests.sit(day(number)) / 2
    said = Appetite(4, foods={"beef": 1.0})
    assert sum(one.candidate.servings for one in plan(packs, said, START, Needs()).picks) <= 8


def test_guests_all_have_some_and_of_mains_that_would_be_lost_there_is_enough() -> None:
    packs = [jar(f"{n}", "beef", 4.0, group=Group.MEAT, open_days=2) for n in range(30)]
    found = plan(packs, Appetite(2, table={day(3): 8}), START, Needs())
    assert found.laid(day(3), {Role.MAIN}) >= 6
    assert found.laid(day(5), {Role.MAIN}) <= 3
    small = [one._replace(servings=2.0) for one in packs]
    five, late = Appetite(5), [one._replace(last=day(30)) for one in small]
    calm, presses = (plan(each, five, START, Needs()) for each in (small, late))
    on = [[menu.laid(day(n), {Role.MAIN}) for n in range(7)] for menu in (calm, presses)]
    assert on[0] == [4.0] * 7, "a few packs of the one food that stands are no end of it"
    assert all(4.0 <= servings <= 1.5 * 5 for servings in on[1])
    assert sum(on[1]) > sum(on[0])


def test_what_would_be_lost_while_all_are_away_is_eaten_before() -> None:
    away = Appetite(2, table={day(n): 0 for n in range(2, 7)})
    trout = jar("1", "trout", 4.0, group=Group.FISH, last=day(2), safe_until=day(2), open_days=3)
    (pick,) = plan([trout], away, START, Needs()).picks
    assert pick.days == (day(0), day(1))


# -- laws ----------------------------------------------------------------------------------------

FOODS = {"beans": Group.VEGETABLE, "peas": Group.VEGETABLE, "cod": Group.FISH, "plums": Group.FRUIT}


@st.composite
def pantries(draw: st.DrawFn) -> list[Candidate]:
    found = []
    for number in range(draw(st.integers(0, 25))):
        food = draw(st.sampled_from(sorted(FOODS)))
        frozen = draw(st.booleans())
        last = draw(st.one_of(st.none(), st.integers(0, 40)))
        safe = draw(st.one_of(st.none(), st.integers(0, 40)))
        found.append(
            Candidate(
                f"{number}",
                food,
                FOODS[food],
                draw(st.floats(0.5, 30)),
                None if last is None else day(last),
                must=not frozen and draw(st.booleans()),
                safe_until=None if safe is None else day(safe),
                frozen=frozen,
                thaw_days=draw(st.integers(0, 4)) if frozen else 0,
                opened=keeps(draw(st.one_of(st.none(), st.integers(-1, 7)))),
                bulk=draw(st.booleans()),
            )
        )
    return found


appetites = st.builds(
    Appetite,
    st.integers(1, 6),
    groups=st.dictionaries(st.sampled_from(["vegetable", "fish"]), st.floats(0, 9)),
    foods=st.dictionaries(st.sampled_from(sorted(FOODS)), st.floats(0, 5)),
    meals=st.integers(1, 14),
    table=st.dictionaries(st.integers(0, 6).map(day), st.integers(0, 9)),
)
needs = st.builds(
    Needs,
    st.dictionaries(
        st.sampled_from(sorted(FOODS)), st.builds(Credit, st.floats(-12, 12), st.floats(0, 9))
    ),
    st.dictionaries(st.sampled_from(sorted(Group)), st.floats(-5, 40)),
)
wishes = st.builds(
    Wishes,
    st.lists(
        st.tuples(st.integers(0, 25).map(str), st.one_of(st.none(), st.integers(0, 6).map(day))),
        max_size=4,
        unique_by=lambda pin: pin[0],
    ).map(tuple),
    st.frozensets(st.sampled_from(sorted(FOODS)), max_size=2),
    st.frozensets(st.integers(0, 6).map(day), max_size=6),
)
DISHES = [Dish("stew", (("beans", 3.0), ("cod", 2.0))), Dish("pie", (("plums", 5.0),))]


@given(pantries(), appetites, needs, wishes)
def test_no_week_breaks_the_laws(
    stock: list[Candidate], eats: Appetite, need: Needs, asked: Wishes
) -> None:
    found = plan(stock, eats, START, need, asked, DISHES)
    by_name = {one.container: one for one in stock}
    whole: dict[str, float] = {}
    for pick in found.picks:
        one = by_name[pick.candidate.container]
        whole[one.container] = whole.get(one.container, 0.0) + pick.candidate.servings
        assert one.food not in asked.left_out
        assert eats.eats(one.food, one.group)
        assert list(pick.days) == sorted(set(pick.days))
        assert all(START <= d <= day(6) and d not in asked.out for d in pick.days)
        assert all(eats.sit(d) > 0 for d in pick.days)
        assert one.safe_until is None or pick.day <= one.safe_until
        assert not one.frozen or pick.day >= day(one.thaw_days)
        assert pick.thaw_by is None or pick.thaw_by >= START
        assert one.may_open
        if one.open_days is not None and not one.must:
            assert pick.days[-1] <= pick.day + timedelta(days=one.open_days)
        if one.must and one.safe_until is not None:
            assert pick.days[-1] <= one.safe_until
    assert all(taken <= by_name[name].servings + 1e-6 for name, taken in whole.items())
    named = set(whole) | {one.container for one in found.missed}
    for one in stock:
        if one.must and eats.eats(one.food, one.group) and one.food not in asked.left_out:
            assert one.container in named, "what runs is planned, or said to be lost"
    for dish in DISHES:
        parts = [pick for pick in found.picks if pick.dish == dish.name]
        assert len({pick.day for pick in parts}) <= 1


@given(pantries(), appetites, needs)
@example(
    [jar("0", "cod", servings=2.0, last=START, bulk=True, group=Group.FISH)],
    Appetite(1, meals=1),
    Needs({}, {}),
)
@example(
    [jar("0", servings=2.0, last=START, bulk=True)],
    Appetite(1, groups={"vegetable": 0.5}, meals=2),
    Needs({}, {}),
)
@example(
    [jar("0", servings=4.0, last=START, safe_until=START + timedelta(days=1), bulk=True)],
    Appetite(1, meals=1),
    Needs({}, {}),
)
def test_ceilings_hold_for_all_that_is_not_forced(
    stock: list[Candidate], eats: Appetite, need: Needs
) -> None:
    found = plan(stock, eats, START, need)
    factor = eats.factor(START)
    for group in set(FOODS.values()):
        # A day without a main is given one, and another of what would be lost: what falls due
        # anyway, else unless the household itself said how much it eats; and no day is left with
        # nothing at all while there is something that would be lost. Guests eat their part at once.
        forced = {Why.MUST} if group in eats.groups else {Why.MUST, Why.TABLE, Why.GUESTS}
        picks = [p for p in found.picks if p.candidate.group is group and p.why not in forced]
        lost = Why.DUE, Why.BEGIN
        # And no ceiling keeps what must be discarded by the end of the week from the table.
        end = START + timedelta(days=6)
        picks = [p for p in picks if not discarded_by(p.candidate, end)]
        days = Counter(p.day for p in found.picks)
        picks = [
            p
            for p in picks
            if p.why not in lost or (p.candidate.at_table is not Role.MAIN and days[p.day] > 1)
        ]
        free = sum(pick.candidate.servings for pick in picks)
        firsts = {
            p.candidate.food: max(
                q.candidate.servings for q in picks if q.candidate.food == p.candidate.food
            )
            for p in picks
        }
        # The first container of a food may be more than is left of its ceiling.
        assert free <= eats.of_group(group) * factor + sum(firsts.values()) + 1e-6


def test_a_vessel_that_must_be_finished_the_day_it_is_opened_is_not_planned_for_the_next() -> None:
    vessel = jar("0", "cod", servings=2.25, last=START, bulk=True, open_days=0, group=Group.FISH)
    found = plan([vessel], Appetite(1, meals=1), START, Needs())
    assert {pick.day for pick in found.picks} == {START}
    assert not found.missed


def test_what_may_not_be_eaten_once_it_is_open_is_neither_planned_nor_cooked() -> None:
    """The judge is asked when its turn comes; then the next of its food comes in its place."""
    never = [jar(f"no {n}", last=day(n), open_days=-1) for n in range(3)]
    soup = Dish("bean soup", (("beans", 4.0),))
    for stock in (never, [*never, jar("yes", last=day(9), open_days=3)]):
        found = plan(stock, TWO, START, Needs(), Wishes(pins=(("no 2", day(1)),)), [soup])
        assert set(eaten(found.picks)) == {one.container for one in stock} - {
            "no 0",
            "no 1",
            "no 2",
        }


def test_only_what_may_be_taken_is_asked_how_long_it_keeps_open() -> None:
    asked = []

    def opened(number: int) -> int:
        asked.append(number)
        return 3

    stock = [jar(f"{n}", last=day(n), opened=partial(opened, n)) for n in range(500)]
    plan(stock, TWO, START, Needs())
    assert 0 < len(set(asked)) < 30


def test_the_same_pantry_gives_the_same_week() -> None:
    stock = [jar(f"{n}", f"food {n % 5}", last=day(n)) for n in range(20)]
    need = Needs({f"food {n}": Credit(4.0, 2.0) for n in range(5)})
    assert plan(stock, TWO, START, need) == plan(stock, TWO, START, need)


@pytest.mark.parametrize("people", [1, 4])
def test_nobody_at_home_is_no_menu(people: int) -> None:
    away = Appetite(people, table={day(n): 0 for n in range(7)})
    found = plan([jar("1", must=True), jar("2", last=day(2))], away, START, Needs())
    assert not found.picks
    assert [one.container for one in found.missed] == ["1"]
