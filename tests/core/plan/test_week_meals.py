"""What a cook expects of a week: a main each day, an even table, no line too little or too big."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date, timedelta

from pantry_tui.core.dataclass import replace
from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.menu import Candidate, Dish, Menu, Needs, Why, Wishes
from pantry_tui.core.plan.pace import Credit
from pantry_tui.core.plan.room import keeps
from pantry_tui.core.plan.schedule import MUCH
from pantry_tui.core.plan.week import plan
from pantry_tui.core.words import Group, Role

START = date(2026, 11, 25)
TWO = Appetite(2)


def day(number: int) -> date:
    return START + timedelta(days=number)


def one(
    name: str, food: str, servings: float = 4.0, open_days: int | None = 2, **more: object
) -> Candidate:
    facts = {"group": Group.MEAT, "last": None, "opened": keeps(open_days), **more}
    return Candidate(name, food, servings=servings, **facts)  # type: ignore[arg-type]


def laid(found: Menu, role: Role) -> Mapping[date, float]:
    """Servings of a role on each day, an even part of what goes on for days."""
    on: dict[date, float] = defaultdict(float)
    for pick in found.picks:
        for at in pick.days:
            if pick.candidate.at_table is role:
                on[at] += pick.candidate.servings / len(pick.days)
    return on


def test_every_day_has_its_main_also_beside_a_roast_for_three() -> None:
    roast = one("roast", "beef roasts", 6.0, 3, last=day(60))
    packs = [one(f"{n}", "chicken breasts", 2.0, last=day(60)) for n in range(9)]
    mains = laid(plan([roast, *packs], TWO, START, Needs()), Role.MAIN)
    assert len(mains) == 7
    assert all(much >= 1 for much in mains.values())


def test_fruit_is_even_over_the_days() -> None:
    jars = [one(f"{n}", "peaches", 4.0, 2, group=Group.FRUIT, last=day(5)) for n in range(3)]
    fruit = laid(plan(jars, TWO, START, Needs()), Role.FRUIT)
    assert max(fruit.values()) <= 2


def test_of_two_fruits_the_one_nearer_its_date_leads() -> None:
    jars = [one(f"{n}", "peaches", 4.0, 5, group=Group.FRUIT, last=day(300)) for n in range(3)]
    crate = one("crate", "apples", 60.0, 0, group=Group.FRUIT, last=day(60), bulk=True)
    found = plan([*jars, crate], TWO, START, Needs())
    fruit = [pick.candidate.food for pick in found.picks if pick.candidate.group is Group.FRUIT]
    assert fruit[0] == "apples"
    assert "peaches" in fruit
    assert fruit.index("peaches") > fruit.count("apples") - 1


def fruit_of(crates: Sequence[Candidate], appetite: Appetite = TWO) -> list[str]:
    jars = [one(f"{n}", "peaches", 4.0, 5, group=Group.FRUIT, last=day(300)) for n in range(9)]
    found = plan([*jars, *crates], appetite, START, Needs())
    return [pick.candidate.food for pick in found.picks if pick.candidate.group is Group.FRUIT]


def test_raw_fruit_that_goes_soft_comes_every_day_rather_than_a_jar_that_keeps() -> None:
    def crate(servings: float, last: int, bulk: bool = True) -> Candidate:
        return one("crate", "apples", servings, None, group=Group.FRUIT, last=day(last), bulk=bulk)

    assert MUCH == 1.5
    assert fruit_of([crate(120, -9)]) == ["apples"] * 7, "past its best, and far too much"
    assert fruit_of([crate(120, 40)]) == ["apples"] * 7, "six weeks take 36 of them"
    assert "peaches" in fruit_of([crate(50, 40)]), "not so much more than is eaten"
    said = replace(TWO, foods={"apples": 3.0})
    assert fruit_of([crate(120, -9)], said).count("apples") == 3, "they said how much they eat"
    pears = one("pears", "pears", 60, None, group=Group.FRUIT, last=day(-2), bulk=True)
    both = fruit_of([crate(120, -9), pears])
    assert (both.count("pears"), "peaches" in both) == (3, False)
    beans = [one(f"b{n}", "beans", 4.0, 5, group=Group.VEGETABLE, last=day(300)) for n in range(9)]
    carrots = one("sack", "carrots", 90, None, group=Group.VEGETABLE, last=day(-9), bulk=True)
    side = plan([*beans, carrots], TWO, START, Needs()).picks
    assert sum(pick.candidate.food == "carrots" for pick in side) <= 4, "no side every evening"


def test_who_wants_more_gets_more_of_a_crate_that_goes_soft_first() -> None:
    crate = one("crate", "apples", 120.0, None, group=Group.FRUIT, last=day(-9), bulk=True)
    jars = [one(f"{n}", "peaches", 4.0, 5, group=Group.FRUIT, last=day(300)) for n in range(9)]
    found = plan([*jars, crate], TWO, START, Needs())
    assert "crate" in {pick.candidate.container for pick in found.picks}
    assert found.more[0].container == "crate"
    calm = crate._replace(servings=30.0, last=day(200))
    after = plan([*jars, calm], TWO, START, Needs()).more
    assert "crate" not in [food.container for food in after], "nothing hurries it"


def test_a_bird_too_big_for_the_table_waits_while_something_smaller_stands() -> None:
    bird = one("bird", "turkeys", 40.0, last=day(200))
    packs = [one(f"{n}", "ground beef", 4.0, last=day(60)) for n in range(9)]
    found = plan([bird, *packs], TWO, START, Needs())
    assert "bird" not in [pick.candidate.container for pick in found.picks]
    assert "bird" in [food.container for food in found.more], "for whoever wants it"


def test_where_nothing_smaller_stands_one_a_week_comes() -> None:
    birds = [one(f"{n}", "turkeys", 40.0, last=day(200)) for n in range(3)]
    found = plan(birds, TWO, START, Needs())
    assert len(found.picks) == 1


def test_a_pack_of_which_half_is_shared_out_comes_before_an_evening_without_a_main() -> None:
    packs = [one(f"{n}", "chickens", 8.0, 1, last=day(-300)) for n in range(9)]
    keeps_none = Needs(shares={Group.MEAT: 0.0})
    assert len(laid(plan(packs, TWO, START, keeps_none), Role.MAIN)) == 7
    alone = [one(f"{n}", "ground beef", 4.0, 1, last=day(40)) for n in range(9)]
    roast = one("roast", "venison", 20.0, 3, last=day(60))
    week = plan([roast, *alone], Appetite(1), START, keeps_none)
    assert len(laid(week, Role.MAIN)) == 7
    assert "roast" not in [pick.candidate.container for pick in week.picks], "the smaller first"


def test_on_the_eve_of_leaving_no_pack_is_opened_of_which_half_would_be_left() -> None:
    away = Appetite(2, table={day(n): 0 for n in range(1, 14)})
    packs = [one(f"{n}", "ground beef", 4.0, 1, last=day(60)) for n in range(9)]
    assert not plan(packs, away, START, Needs(shares={Group.MEAT: 0.0})).picks


def test_a_bird_waits_for_the_guests_of_that_week() -> None:
    bird = one("bird", "turkeys", 48.0, 1, last=day(200), frozen=True, thaw_days=3)
    full = Appetite(2, table={day(5): 12})
    (pick,) = plan([bird], full, START, Needs()).picks
    assert pick.day == day(5)
    (pick,) = plan([bird], TWO, START, Needs()).picks
    assert pick.day == day(3), "as soon as it is thawed"


def test_of_two_birds_whose_date_is_near_one_comes_this_week_and_guests_take_both() -> None:
    birds = [one(f"{n}", "turkeys", 40.0, last=day(20)) for n in range(2)]
    packs = [one(f"beef {n}", "ground beef", 4.0, last=day(60)) for n in range(9)]
    few = plan([*birds, *packs], TWO, START, Needs())
    assert sum(pick.candidate.food == "turkeys" for pick in few.picks) == 1
    feast = Appetite(2, table={day(3): 30, day(4): 30})
    many = plan([*birds, *packs], feast, START, Needs())
    turkeys = [pick for pick in many.picks if pick.candidate.food == "turkeys"]
    assert turkeys
    assert all(set(pick.days) & {day(3), day(4)} for pick in turkeys)


def test_a_day_without_a_line_gets_what_presses_even_above_the_ceiling() -> None:
    bags = [one(f"{n}", "strawberries", 4.0, 1, group=Group.FRUIT, last=day(12)) for n in range(12)]
    found = plan(bags, Appetite(2, foods={}), START, Needs())
    assert len({at for pick in found.picks for at in pick.days}) == 7
    calm = [
        one(f"{n}", "strawberries", 4.0, 1, group=Group.FRUIT, last=day(300)) for n in range(12)
    ]
    rested = plan(calm, TWO, START, Needs(shares={"fruit": 4.0}))
    assert len({at for pick in rested.picks for at in pick.days}) < 7, "what can wait, waits"


def test_what_must_be_discarded_comes_before_what_only_passes_its_best() -> None:
    soup = [
        one(f"soup {n}", "soup", 2.0, 1, group=Group.MEAL, last=day(1), safe_until=day(1))
        for n in range(3)
    ]
    eggs = [one(f"egg {n}", "eggs", 1.0, group=Group.EGG, last=day(20)) for n in range(16)]
    for more in ({"safe_until": None}, {"safe_until": day(90)}):
        stock = [
            one(f"stock {n}", "stock", 4.0, group=Group.MEAL, last=day(4), **more) for n in range(6)
        ]
        guests = Appetite(2, table={day(2): 8})
        found = plan([*stock, *eggs, *soup], guests, START, Needs())
        on = {pick.candidate.container: pick.day for pick in found.picks}
        assert on.keys() >= {"soup 0", "soup 1", "soup 2"}
        assert all(on[pot.container] <= day(1) for pot in soup)


def test_what_would_be_discarded_and_has_no_room_is_named_first_for_whoever_wants_more() -> None:
    pots = [
        one(f"{n}", "soup", 4.0, 1, group=Group.MEAL, last=day(2), safe_until=day(2))
        for n in range(5)
    ]
    beans = [one(f"bean {n}", "beans", group=Group.VEGETABLE, last=day(3)) for n in range(9)]
    found = plan([*beans, *pots], TWO, START, Needs())
    assert len({pick.candidate.container for pick in found.picks} & set("01234")) < 5
    assert found.more[0].food == "soup"
    assert any(food.food == "beans" for food in found.more)


def test_of_few_meals_a_week_no_day_more_is_cooked() -> None:
    packs = [one(f"{n}", "ground beef", 2.0, 1, last=day(60)) for n in range(9)]
    bags = [one(f"s{n}", "strawberries", 4.0, 1, group=Group.FRUIT, last=day(12)) for n in range(9)]
    found = plan([*packs, *bags], Appetite(2, meals=3), START, Needs())
    assert len({at for pick in found.picks for at in pick.days}) <= 4


def test_what_goes_on_for_days_has_the_rest_of_so_few_meals_beside_it() -> None:
    thaws = {"frozen": True, "thaw_days": 2}
    pork = one("pork", "pork", 12.0, 3, last=day(2), **thaws)
    eggs = [
        one(f"e{n}", "eggs", 2.0, 7, group=Group.EGG, last=day(1), safe_until=day(40))
        for n in range(2)
    ]
    bags = [one(f"b{n}", "peas", 3.0, 1, group=Group.VEGETABLE, last=day(9)) for n in range(3)]
    found = plan([*eggs, pork, *bags], Appetite(2, meals=3), START, Needs())
    assert {at for pick in found.picks for at in pick.days} == {day(n) for n in range(2, 6)}
    lost = one("lost", "eggs", 2.0, 7, group=Group.EGG, last=day(1), safe_until=day(1))
    found = plan([lost, pork], Appetite(2, meals=3), START, Needs())
    assert found.picks[0].day <= day(1), "but nothing is lost for it"


def test_out_of_a_crate_no_crumbs_are_planned() -> None:
    crate = one(
        "crate", "apples", 40.6, group=Group.FRUIT, bulk=True, last=day(30), opened=keeps(None)
    )
    guests = Appetite(4, table={day(2): 9})
    found = plan([crate], guests, START, Needs(), Wishes(out=frozenset({day(5)})))
    assert found.picks
    for pick in found.picks:
        assert pick.candidate.servings >= guests.sit(pick.day) / 2
    last = one("rest", "apples", 0.5, group=Group.FRUIT, bulk=True, opened=keeps(None))
    assert plan([last], guests, START, Needs()).picks, "the last of it is eaten all the same"


def test_what_is_due_on_the_first_day_of_a_week_is_for_the_week_before() -> None:
    """Else all of it would be eaten on that one day."""
    little = Appetite(4, groups={"vegetable": 1.0})
    soon = one("soon", "zucchini", 4.0, 2, group=Group.VEGETABLE, last=day(7))
    later = one("later", "beans", 4.0, 2, group=Group.VEGETABLE, last=day(12))
    found = plan([later, soon], little, START, Needs())
    assert [pick.candidate.container for pick in found.picks] == ["soon"]


def test_a_bird_is_laid_for_guests_and_measured_by_their_heads_though_smaller_mains_stand() -> None:
    bird = one("bird", "turkeys", 28.0, 2, last=day(200), frozen=True, thaw_days=3)
    packs = [one(f"{n}", "ground beef", 4.0, last=day(60)) for n in range(9)]
    eight = Appetite(2, table={day(6): 8})
    found = plan([bird, *packs], eight, START, Needs())
    (laid_,) = [pick for pick in found.picks if pick.candidate.container == "bird"]
    assert (laid_.why, laid_.day, laid_.thaw_by) == (Why.GUESTS, day(6), day(3))
    assert len(laid(found, Role.MAIN)) >= 6, "the other evenings have their mains"
    three = plan([bird, *packs], Appetite(2, table={day(6): 3}), START, Needs())
    assert "bird" not in [pick.candidate.container for pick in three.picks], "too big for three"
    nobody = Appetite(2, table={day(6): 8, day(3): 0})
    away = plan([bird, *packs], nobody, START, Needs()).picks
    (early,) = [pick for pick in away if pick.candidate.container == "bird"]
    assert (early.day, early.thaw_by) == (day(6), day(2)), "a day sooner, when somebody is there"
    assert early.until == day(7), "and it keeps a day less"
    gone = Appetite(2, table={day(6): 8, **{day(n): 0 for n in (1, 2, 3)}})
    late = plan([bird, *packs], gone, START, Needs())
    assert "bird" not in [pick.candidate.container for pick in late.picks], "nobody takes it out"


def test_a_bird_for_guests_does_not_cost_what_would_be_discarded() -> None:
    bird = one("bird", "turkeys", 28.0, 2, last=day(200))
    eight = Appetite(2, table={day(6): 8})

    for packs in range(6):
        lost = [
            one(f"{n}", "ground beef", 4.0, last=day(6), safe_until=day(6)) for n in range(packs)
        ]
        alone = {pick.candidate.container for pick in plan(lost, eight, START, Needs()).picks}
        found = plan([bird, *lost], eight, START, Needs()).picks
        assert alone <= {pick.candidate.container for pick in found}, packs
        guests = [pick for pick in found if pick.why is Why.GUESTS]
        # Twelve servings of what is lost have room on the other days, sixteen have not.
        assert len(guests) == (packs < 4)


def test_one_bird_a_day_of_guests_and_none_where_a_main_is_asked_for() -> None:
    birds = [one(f"{n}", "turkeys", 28.0, 2, last=day(200)) for n in range(3)]
    eight = Appetite(2, table={day(5): 8, day(6): 8})
    found = plan(birds, eight, START, Needs()).picks
    assert [pick.why for pick in found].count(Why.GUESTS) == 1, "it serves both days"
    ham = one("ham", "hams", 8.0, 3, last=day(200))
    pinned = plan([ham, *birds], Appetite(2, table={day(6): 8}), START, Needs(),
                  Wishes((("ham", day(6)),)))  # fmt: skip
    assert Why.GUESTS not in [pick.why for pick in pinned.picks]


def test_a_bird_waits_for_guests_who_are_told_of_and_is_not_begun_on_the_eve_of_leaving() -> None:
    bird = one("bird", "turkeys", 28.0, 1, last=day(200))
    assert plan([bird], TWO, START, Needs()).picks, "nothing smaller stands"
    assert not plan([bird], Appetite(2, table={day(11): 8}), START, Needs()).picks
    assert plan([bird], Appetite(2, table={day(11): 3}), START, Needs()).picks, "too few for it"
    near = bird._replace(last=day(9))
    assert plan([near], Appetite(2, table={day(11): 8}), START, Needs()).picks, "past its date then"
    away = Appetite(2, table={day(n): 0 for n in range(1, 14)})
    assert not plan([bird], away, START, Needs()).picks


def test_an_open_bag_of_flour_waits_for_a_dish_or_is_used_up_once() -> None:
    flour = one("flour", "flour", 80.0, 300, group=Group.GRAIN, bulk=True, must=True)
    assert flour.at_table is Role.BAKING
    later = flour._replace(last=day(180))
    assert not plan([later], TWO, START, Needs()).picks
    cake = Dish("cake", (("flour", 4.0),))
    asked = Wishes(dishes={"cake": day(2)})
    cooked = plan([later], TWO, START, Needs(), asked, [cake]).picks
    assert {(pick.day, pick.dish) for pick in cooked} == {(day(2), "cake")}
    for must in (True, False):
        due = flour._replace(last=day(3), must=must)
        assert len(plan([due], TWO, START, Needs()).picks) == 1
        both = plan([due], TWO, START, Needs(), asked, [cake]).picks
        assert {pick.dish for pick in both} == {"cake", ""}
    salad = one("salad", "salad", 8.0, group=Group.VEGETABLE, bulk=True, must=True, last=day(6))
    assert len(plan([salad], TWO, START, Needs()).picks) == 4, "what is eaten at table comes"


def test_of_what_is_open_and_keeps_for_weeks_each_week_takes_its_part() -> None:
    def meals(role: Role, safe: date | None = None, last: date | None = None) -> int:
        block = one(
            "c", "c", 24.0, group=Group.DAIRY, role=role, bulk=True, must=True,
            safe_until=safe, last=last, opened=keeps(None),
        )  # fmt: skip
        found = plan([block], TWO, START, Needs()).picks
        return sum(pick.why is Why.MUST for pick in found)

    for role in (Role.MAIN, Role.INGREDIENT):
        assert meals(role, day(27)) == 3, "a quarter of twelve meals"
        assert meals(role, day(13)) == 6
    assert meals(Role.MAIN, last=day(27)) == 3
    assert meals(Role.MAIN) == 1
    assert meals(Role.FAT, day(27)) == 0, "butter waits for a dish"


def test_a_big_pack_is_for_the_day_of_the_guests_though_a_usual_table_could_eat_it() -> None:
    four, guests = Appetite(4), Appetite(4, table={day(4): 12})
    roast = one("roast", "beef roasts", 12.0, 3, last=day(200), frozen=True, thaw_days=2)
    bird = one("bird", "turkeys", 14.0, 2, last=day(200), frozen=True, thaw_days=3)
    packs = [one(f"{n}", "ground beef", 8.0, 1, last=day(60)) for n in range(6)]

    def lies(found: Menu, name: str) -> list[tuple[date, date | None]]:
        return [(p.day, p.thaw_by) for p in found.picks if p.candidate.container == name]

    assert lies(plan([*packs, bird], guests, START, Needs()), "bird") == [(day(4), day(1))]
    assert lies(plan([roast, *packs], guests, START, Needs()), "roast") == [(day(4), day(2))]
    big = one("big", "turkeys", 20.0, 2, last=day(220))
    found = plan([bird, roast, big, *packs], guests, START, Needs())
    assert lies(found, "big") == [(day(4), None)], "no other day could eat it"
    few = Appetite(4, table={day(4): 5})
    found = plan([roast, *packs], few, START, Needs())
    assert Why.GUESTS not in [pick.why for pick in found.picks], "five are nearly the usual table"
    assert lies(plan([roast], four, START, Needs()), "roast"), "no guests to wait for"


def test_a_big_pack_waits_for_guests_of_the_week_after_within_its_date() -> None:
    roasts = [one(f"r{n}", "beef roasts", 12.0, 3, last=day(200)) for n in range(2)]

    def taken(at: int, last: int = 200) -> int:
        guests = Appetite(4, table={day(at): 12})
        some = [roast._replace(last=day(last)) for roast in roasts]
        found = plan(some, guests, START, Needs())
        return len(found.picks)

    assert taken(99) == 2
    assert taken(10) == 1, "one is for them, the other for this week"
    assert taken(13) == 1
    assert taken(14) == 2, "two weeks off"
    assert taken(10, last=9) == 2, "past its date by then"


def test_guests_who_have_enough_of_a_bird_get_no_second_main_beside_it() -> None:
    bird = one("bird", "turkeys", 20.0, 1, last=day(200))
    packs = [one(f"{n}", "ground beef", 8.0, 1, last=day(12)) for n in range(6)]
    found = plan([*packs, bird], Appetite(4, table={day(4): 12}), START, Needs())
    on = [pick.candidate.container for pick in found.picks if day(4) in pick.days]
    assert on == ["bird"]
    (pick,) = [pick for pick in found.picks if pick.candidate.container == "bird"]
    assert list(pick.parts) == [12, 4], "by the heads of each day; four are left"
    assert pick.spare == 4


def test_a_thawed_bird_is_cut_when_the_guests_are_there_and_not_the_day_before() -> None:
    thawed = one("bird", "turkeys", 20.0, must=True, last=day(5), safe_until=day(5))
    guests = Appetite(4, table={day(4): 12})
    (pick,) = plan([thawed], guests, START, Needs()).picks
    assert pick.day == day(4)
    late = Appetite(4, table={day(6): 12})
    (pick,) = plan([thawed], late, START, Needs()).picks
    assert pick.day < day(5), "no longer than it is safe"


def test_no_side_lies_on_more_than_four_days_where_nothing_presses() -> None:
    sack = one("sack", "potatoes", 60.0, 200, group=Group.VEGETABLE, last=day(300), bulk=True)

    def days(crate: Candidate) -> int:
        found = plan([crate], TWO, START, Needs())
        return len({pick.day for pick in found.picks})

    assert days(sack) == 4
    assert days(sack._replace(last=day(30))) == 7, "some would be lost"
    rate = 12.0
    needs = Needs({"potatoes": Credit(0.0, rate)})
    laid_ = plan([sack], TWO, START, needs).picks
    assert len({pick.day for pick in laid_}) == 6, "its pace asks for more"


def bird(name: str, servings: float = 12.0, **more: object) -> Candidate:
    return one(name, "turkeys", servings, 1, frozen=True, thaw_days=3, **more)


def birds_in(stand: Sequence[Candidate], eats: Appetite = TWO) -> list[tuple[str, date]]:
    picks = plan(stand, eats, START, Needs()).picks
    return [(p.candidate.container, p.day) for p in picks if p.candidate.food == "turkeys"]


def test_beside_the_bird_for_guests_no_other_comes_for_the_usual_table() -> None:
    stand = [bird("a", last=day(150)), bird("b", last=day(150))]
    assert birds_in(stand, Appetite(2, table={day(4): 10})) == [("a", day(4))]
    packs = [one(f"{n}", "ground beef", 4.0, last=day(60)) for n in range(9)]
    assert birds_in([*stand, *packs], Appetite(2, table={day(4): 10})) == [("a", day(4))]
    twice = Appetite(2, table={day(3): 10, day(6): 10})
    assert birds_in(stand, twice) == [("a", day(3)), ("b", day(6))], "each has guests"


def test_of_two_that_are_four_meals_each_and_thaw_for_days_one_comes() -> None:
    stand = [bird("a", 8.0, last=day(150)), bird("b", 8.0, last=day(20))]
    assert birds_in(stand) == [("b", day(3))], "the one whose date is nearer"


def test_beside_the_rest_of_one_no_other_comes_but_what_would_be_lost() -> None:
    near, lost = bird("b", last=day(20)), bird("b", last=day(6), safe_until=day(6))
    for servings, comes in ((6.0, False), (4.0, True)):
        rest = one("rest", "stew", servings, group=Group.MEAL, must=True, safe_until=day(2))
        assert bool(birds_in([rest, near])) is comes
        assert birds_in([rest, lost])


def test_a_dish_is_the_meal_of_an_evening_for_which_no_main_stands() -> None:
    beans = [one(f"b{n}", "dry beans", group=Group.VEGETABLE, role=Role.SIDE) for n in range(3)]
    roots = [one(f"r{n}", "carrots", group=Group.VEGETABLE, last=day(1)) for n in range(9)]
    soup = Dish("bean soup", (("dry beans", 4.0),))
    found = plan([*roots, *beans], TWO, START, Needs(), dishes=[soup])
    assert [pick.dish for pick in found.picks if pick.dish] == ["bean soup"]


def test_on_the_eve_of_leaving_guests_get_the_bird_of_which_no_meal_is_left() -> None:
    ham = one("ham", "hams", 24.0, 3, last=day(200))
    bird = one("bird", "turkeys", 16.0, 3, last=day(200))

    def served(*away: int) -> str:
        table = {day(3): 16} | {day(n): 0 for n in away}
        found = plan([ham, bird], Appetite(4, table=table), START, Needs())
        return next(p.candidate.container for p in found.picks if p.day == day(3))

    assert served(4, 5, 6) == "bird", "of the ham eight servings are left, and nobody is there"
    assert served() == "ham", "what no usual table could eat, where its rest is eaten on the next"


def test_of_two_that_press_alike_neither_is_all_of_the_week() -> None:
    tubs = [
        one(f"{food}{n}", food, 4.0, 3, last=day(5)) for food in ("chili", "soup") for n in range(9)
    ]
    mains = [p.candidate.food for p in plan(tubs, Appetite(4), START, Needs()).picks]
    assert abs(mains.count("chili") - mains.count("soup")) <= 1
    assert len(mains) == 7


def test_a_party_dish_on_one_day_takes_no_bird_from_the_guests_of_the_next() -> None:
    bird = one("bird", "turkeys", 14.0, 3, last=day(150))
    chops = [one(f"c{n}", "pork chops", 3.0, 3, last=day(60)) for n in range(8)]
    seats = Appetite(2, table={day(3): 10, day(4): 10})
    wishes = Wishes(dishes={"pot": day(3)})
    found = plan(
        [bird, *chops], seats, START, Needs(), wishes, [Dish("pot", (("pork chops", 4.0),))]
    )
    (its,) = [
        pick for pick in found.picks if pick.candidate is bird or pick.candidate.food == "turkeys"
    ]
    assert (its.day, its.why) == (day(4), Why.GUESTS)


def test_what_is_put_on_a_day_of_guests_takes_none_from_what_is_put_on_another() -> None:
    sack = one("sack", "potatoes", 90.0, None, group=Group.VEGETABLE, last=day(90), bulk=True)
    seats = Appetite(2, table={day(3): 6})
    wishes = Wishes(pins=tuple(("sack", day(n)) for n in (3, 5, 6)))
    found = plan([sack], seats, START, Needs(), wishes).picks
    kept = {pick.day: pick.candidate.servings for pick in found if pick.why is Why.KEPT}
    assert kept == {day(3): 6.0, day(5): 2.0, day(6): 2.0}
