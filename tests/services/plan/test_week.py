"""A week is proposed, accepted, and eaten day by day; nothing unfit is ever in it."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.model import Batch
from pantry_tui.core.plan.appetite import FOOD_CEILING
from pantry_tui.core.words import Group, State, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import appetite, dishes, wishes
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.candidates import candidates
from pantry_tui.services.rows import Take
from pantry_tui.services.stock import act, undo, view
from pantry_tui.services.stock.pick import containers_named, name_of
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(demo: Pantry) -> Pantry:
    return demo


def of(p: Pantry, code: str) -> Batch:
    """The batch that is known to have this lid code."""
    batch = p.batch(code)
    assert batch is not None, code
    return batch


def test_a_week_is_fit_spread_and_thawed_in_time(p: Pantry) -> None:
    found = weeks.week(p)
    by_name = {name: row for row in view.due(p) for name in row.container_ids}
    assert len({take.day for take in found.take}) >= 5
    for take in found.take:
        assert found.start <= take.day <= found.end
        assert take.thaw_by is None or p.today <= take.thaw_by < take.day
        for name in take.containers:
            row = by_name[name]
            assert row.verdict not in UNFIT
            assert row.verdict is not Verdict.UNKNOWN
            assert row.discard_after is None or take.day <= row.discard_after
    offered = {name for take in (*found.take, *found.beside) for name in take.containers}
    must = [
        row
        for row in view.due(p)
        if row.state in (State.OPEN, State.THAWED)
        and row.verdict not in UNFIT
        and row.verdict is not Verdict.UNKNOWN
    ]
    assert all(set(row.container_ids) <= offered for row in must)


def test_accepting_books_nothing_and_eating_a_day_books_all_of_it(p: Pantry) -> None:
    before = p.stock.all()
    weeks.accept(p)
    assert p.stock.all() == before
    found = weeks.week(p)
    assert found.accepted
    day = next(take.day for take in found.take if len(take.days) > 1)
    p.today = day
    found = weeks.week(p)
    today = [take for take in found.take if take.day == day and not take.amount]
    done = {name for take in today if take.days[-1] == day for name in take.containers}
    begun = {name for take in today if take.days[-1] > day for name in take.containers}
    assert done
    assert begun
    weeks.eaten(p, day)
    assert not any(take.day == day for take in weeks.week(p).take)
    left = {name: row for row in view.due(p) for name in row.container_ids}
    assert not done & set(left)
    running = (State.OPEN, State.THAWED)
    assert all(left[name].state in running for name in begun), "the rest is for the next day"
    assert begun <= {name for take in weeks.week(p).take for name in take.containers}
    with pytest.raises(Refused):
        weeks.eaten(p, day)
    undo.undo(p)
    assert weeks.week(p).take == found.take
    with pytest.raises(Refused):
        weeks.eaten(p, day + timedelta(days=30))


def test_what_turns_unfit_leaves_the_accepted_week(p: Pantry) -> None:
    weeks.accept(p)
    take = next(t for t in weeks.week(p).take if t.food == "applesauce")
    name = take.containers[0]
    words = next(one.words for one in signs.to_choose(p, name) if "leak" in one.words)
    signs.mark(p, name, words)
    assert not any(name in t.containers for t in weeks.week(p).take)


def test_what_nobody_likes_is_not_proposed_and_a_ceiling_holds(p: Pantry) -> None:

    def eaten(group: Group) -> dict[str, float]:
        found: dict[str, float] = {}
        for take in weeks.week(p).take:
            if of(p, take.code).food.group is group:
                found[take.food] = found.get(take.food, 0.0) + take.servings
        return found

    assert "carrots" in eaten(Group.VEGETABLE)
    assert eaten(Group.FISH)
    appetite.set_ceiling(p, "carrot", "0")
    appetite.set_ceiling(p, "fish", "0")
    assert "carrots" not in eaten(Group.VEGETABLE)
    assert not eaten(Group.FISH)
    before = eaten(Group.FRUIT)
    appetite.set_ceiling(p, "fruit", "1")
    after = eaten(Group.FRUIT)
    assert 0 < sum(after.values()) < sum(before.values())
    appetite.set_people(p, 8)
    assert weeks.week(p).people == 8
    for bad in (("moss", "1"), ("fruit", "many"), ("fruit", "-1")):
        with pytest.raises(BadInput):
            appetite.set_ceiling(p, *bad)


def test_what_cannot_be_thawed_in_time_is_not_proposed(p: Pantry) -> None:
    code = next(
        row.code for row in view.due(p) if row.food == "ground beef" and row.state is State.THAWED
    )
    act.move(p, f"{code}/1", "chest freezer")  # refrozen: its date stays, and that is tomorrow
    (row,) = [row for row in view.due(p) if f"{code}/1" in row.container_ids]
    for take in weeks.week(p).take:
        if f"{code}/1" in take.containers:
            assert row.discard_after is not None
            assert take.day <= row.discard_after


def test_an_old_week_makes_room_for_a_new_one(p: Pantry) -> None:
    weeks.accept(p)
    p.today += timedelta(days=7)
    assert not weeks.week(p).accepted
    with pytest.raises(Refused):
        weeks.eaten(p, p.today)


# -- arranging -----------------------------------------------------------------------------------


def on(p: Pantry, ref: str) -> date | None:
    """The day on which a container is planned."""
    return next((t.day for t in weeks.week(p).take if ref in t.containers), None)


def later_take(p: Pantry) -> Take:
    """Something of the week that may lie on other days too."""
    return next(
        t
        for t in weeks.week(p).take
        if t.day > TODAY + timedelta(days=1) and t.count == 1 and not t.amount
    )


@pytest.mark.parametrize("accepted", [False, True])
def test_the_person_shifts_drops_swaps_and_eats_out(p: Pantry, accepted: bool) -> None:
    if accepted:
        weeks.accept(p)
    take = later_take(p)
    name = take.containers[0]
    wishes.shift(p, name, -1)
    assert on(p, name) == take.day - timedelta(days=1)
    wishes.out(p, take.day)
    assert not any(t.day == take.day for t in weeks.week(p).take)
    assert on(p, name) == take.day - timedelta(days=1), "what was put on a day stays there"
    assert any(day == take.day for day, _ in weeks.week(p).table)
    wishes.out(p, take.day)
    assert not weeks.week(p).table
    wishes.leave_out(p, name)
    assert take.food not in {t.food for t in weeks.week(p).take}
    assert weeks.week(p).left_out == (take.food,)
    assert weeks.week(p).accepted is accepted


def test_what_makes_way_for_an_evening_out_was_not_chosen_by_anybody(p: Pantry) -> None:
    was = weeks.week(p).take
    weeks.accept(p)
    wishes.out(p, next(t.day for t in was if t.containers))
    moved = [t for t in weeks.week(p).take if not t.reasons[0].startswith("You chose it")]
    assert [t.food for t in moved] == [t.food for t in weeks.week(p).take]
    assert {t.day for t in weeks.week(p).take} != {t.day for t in was}


def test_a_swap_puts_another_food_of_its_role_on_that_day(p: Pantry) -> None:
    take = next(t for t in weeks.week(p).take if t.food == "applesauce")
    wishes.swap(p, take.containers[0])
    after = weeks.week(p)
    assert take.food not in {t.food for t in after.take}
    instead = [
        t for t in after.take if t.day == take.day and t.reasons[0].startswith("You chose it")
    ]
    assert len(instead) == 1
    assert instead[0].role is take.role
    assert instead[0].food != take.food


def test_a_swap_names_what_else_could_come_and_takes_what_is_asked_for(p: Pantry) -> None:
    take = next(t for t in weeks.week(p).take if t.food == "ground beef")
    said = wishes.swap(p, take.containers[0]).message
    head, _, others = said.rstrip(".").partition("; it could also be ")
    first = head.partition(" instead of ")[0]
    foods = others.replace(" or ", ", ").split(", ")
    assert not any(food in first for food in foods)
    undo.undo(p)
    wishes.swap(p, take.containers[0], foods[-1])
    pinned = [t for t in weeks.week(p).take if t.reasons[0].startswith("You chose it")]
    assert [(t.food, t.day) for t in pinned] == [(foods[-1], take.day)]
    undo.undo(p)
    with pytest.raises(Refused, match=f"name .*{foods[0]}"):
        wishes.swap(p, take.containers[0], "honey")


def test_where_all_lies_in_the_week_already_a_food_of_another_evening_comes_instead(
    larder: Pantry,
) -> None:
    for food in ("carrots", "peas"):
        up(larder, f"6 pint jars {food}, pressure canned, larder, {TODAY - timedelta(days=30)}")
    picks = weeks.week(larder).take
    assert {take.food for take in picks} == {"carrots", "peas"}
    first = picks[0]
    other = ({"carrots", "peas"} - {first.food}).pop()
    assert f"{other} on" in wishes.swap(larder, first.containers[0]).message


def test_what_nobody_could_take_out_to_thaw_is_not_put_on_a_day(p: Pantry) -> None:
    day = TODAY + timedelta(days=4)
    appetite.set_table(p, 0, day - timedelta(days=1))
    pack = next(one for one in candidates(p, TODAY) if one.frozen and one.thaw_days == 1)
    name = name_of(p, p.stock.containers[pack.container])
    with pytest.raises(Refused, match="nobody is at home then"):
        wishes.pin(p, name, day)
    wishes.pin(p, name, day + timedelta(days=1))


def test_nothing_is_put_where_it_cannot_be_eaten(p: Pantry) -> None:
    with pytest.raises(Refused, match="thawed"):
        wishes.pin(p, "5F", TODAY)
    lasagne = next(t for t in weeks.week(p).take if t.food == "lasagne" and t.day == TODAY)
    with pytest.raises(Refused, match="must be eaten by"):
        wishes.pin(p, lasagne.containers[0], TODAY + timedelta(days=2))
    for bad in (TODAY - timedelta(days=1), TODAY + timedelta(days=7)):
        with pytest.raises(BadInput):
            wishes.pin(p, lasagne.containers[0], bad)
    unfit = next(row for row in view.due(p) if row.verdict in UNFIT)
    with pytest.raises(Refused):
        wishes.pin(p, unfit.container_ids[0], TODAY)


def test_unknown_comes_only_when_asked_for(p: Pantry) -> None:
    line = "3 bottles cider, alcohol ferment, larder, 2026-09-01"
    act.ready(p, putup.put_up(p, putup.read(p, line)).code)
    unknown = {
        n for row in view.due(p) if row.verdict is Verdict.UNKNOWN for n in row.container_ids
    }
    assert unknown
    assert not unknown & {n for t in weeks.week(p).take for n in t.containers}
    offered = {one.container for one in candidates(p, TODAY)}
    asked = {one.container for one in candidates(p, TODAY, unknown=True)} - offered
    named = {name_of(p, p.stock.containers[id_]) for id_ in asked}
    usable = {n for n in unknown if p.judge(containers_named(p, n)[0]).usable}
    assert named == usable, "never what waits to be looked at"
    assert named < unknown
    one = min(usable)
    wishes.pin(p, one, TODAY)
    assert on(p, one) == TODAY


def test_a_wish_lasts_as_long_as_its_week(p: Pantry) -> None:
    wishes.leave_out(p, "runner beans")
    p.today += timedelta(days=3)
    found = weeks.week(p)
    assert (found.start, found.left_out) == (TODAY, ("runner beans",))
    assert all(take.day >= p.today for take in found.take)
    p.today += timedelta(days=4)
    assert weeks.week(p).left_out == ()


# -- the table -----------------------------------------------------------------------------------


def eaten_servings(p: Pantry) -> float:
    return sum(take.servings for take in weeks.week(p).take)


def test_days_away_are_empty_and_what_would_be_lost_is_said(p: Pantry) -> None:
    before = weeks.week(p).notes
    appetite.read_table(p, "away today to mon")
    found = weeks.week(p)
    assert {take.day for take in found.take} <= {date(2026, 12, 1)}
    assert any("eat today or discard" in note for note in found.notes), found.notes
    assert ("Wed 25 Nov 2026: nobody at home.") in {text for _, text in found.table}
    appetite.read_table(p, "usual today to mon")
    assert not weeks.week(p).table
    assert weeks.week(p).notes == before


def test_guests_eat_along(p: Pantry) -> None:
    usual = eaten_servings(p)
    appetite.read_table(p, "12 on today to tue")
    assert eaten_servings(p) > usual
    for bad in ("moss", "away", "away 2026-13-01", "6 on friday to thursday of never", "600 today"):
        with pytest.raises(BadInput):
            appetite.read_table(p, bad)


def test_few_meals_a_week_come_on_few_days(p: Pantry) -> None:
    appetite.set_meals(p, 3)
    days = {take.day for take in weeks.week(p).take}
    must = {
        t.day for t in weeks.week(p).take if t.reasons[0].startswith(("It is open", "It is thawed"))
    }
    assert len(days) <= max(3, len(must) + 1)


# -- bulk and dishes -----------------------------------------------------------------------------


def test_from_bulk_a_meal_is_taken_and_only_that_is_booked(p: Pantry) -> None:
    take = next(t for t in weeks.week(p).take if t.amount)
    weeks.accept(p)
    before = next(row for row in view.due(p) if take.containers[0] in row.container_ids).amount
    weeks.eaten(p, take.day)
    after = next(row for row in view.due(p) if take.containers[0] in row.container_ids).amount
    assert after != before
    assert on(p, take.containers[0]) != take.day
    with pytest.raises(Refused):
        weeks.eaten(p, take.day)


def test_a_dish_brings_what_it_takes_together(p: Pantry) -> None:
    without_dishes(p)
    appetite.set_ceiling(p, "potatoes", "3")  # so that beans are wanted in this week
    dishes.keep(p, "Bean soup = 4 runner bean, 2 chicken stock")
    parts = [t for t in weeks.week(p).take if t.dish == "bean soup"]
    assert {t.food for t in parts} == {"runner beans", "chicken stock"}
    assert len({t.day for t in parts}) == 1
    day = parts[0].day + timedelta(days=1)
    wishes.cook(p, "bean soup", day)
    assert {t.day for t in weeks.week(p).take if t.dish} == {day}
    weeks.accept(p)
    wishes.out(p, TODAY)  # something else changes: the dish stays together
    parts = [t for t in weeks.week(p).take if t.dish]
    assert {t.food for t in parts} == {"runner beans", "chicken stock"}
    assert {t.day for t in parts} == {day}
    for _ in ("eating out", "accepting the week", "the day of the dish", "the dish"):
        undo.undo(p)
    assert "bean soup" not in {dish.name for dish in dishes.dishes(p)}


def without_dishes(p: Pantry) -> None:
    """The demo household has some of its own."""
    assert dishes.dishes(p)
    for dish in dishes.dishes(p):
        dishes.drop(p, dish.name)


def test_a_dish_that_lacks_something_is_not_planned(p: Pantry) -> None:
    without_dishes(p)
    dishes.keep(p, "feast = 200 runner beans, 4 salmon")
    assert not [t for t in weeks.week(p).take if t.dish]
    with pytest.raises(Refused, match="takes 200 runner beans"):
        wishes.cook(p, "feast", TODAY + timedelta(days=2))
    with pytest.raises(Refused, match="feast"):
        wishes.cook(p, "soup", TODAY)
    for bad in ("soup", "= 4 beans", "soup = beans", "soup = 4 moonstones", "soup = 0 peas"):
        with pytest.raises(BadInput):
            dishes.keep(p, bad)
    dishes.drop(p, "Feast")
    assert not dishes.dishes(p)


# -- what the log teaches ------------------------------------------------------------------------


def test_a_ceiling_is_learned_after_eight_weeks_and_may_be_said(p: Pantry) -> None:
    found = appetite.appetite(p)
    assert "runner beans" in found.learned, "the demo household has eaten them for long"
    assert found.food_ceiling("runner beans") >= FOOD_CEILING / 2
    appetite.set_ceiling(p, "runner beans", "2.5")
    assert appetite.appetite(p).food_ceiling("runner beans") == 2.5
    appetite.set_ceiling(p, "runner beans", "usual")
    assert appetite.appetite(p).food_ceiling("runner beans") == found.food_ceiling("runner beans")


def test_what_is_left_of_a_dish_that_lacks_a_part_says_so(p: Pantry) -> None:
    soup = [take for take in weeks.week(p).take if take.dish == "chicken soup"]
    assert len(soup) > 1
    weeks.accept(p)
    wishes.leave_out(p, next(take.containers[0] for take in soup if take.food == "chicken stock"))
    for take in weeks.week(p).take:
        assert not any(one.startswith("For .") for one in take.why), take.why


def test_a_day_that_is_eaten_tells_apart_what_was_only_opened(p: Pantry) -> None:
    aside = next(one for one in weeks.week(p).beside if one.count > 1)
    batch = of(p, aside.code)
    weeks.accept(p)
    done = weeks.eaten(p, p.today)
    eaten, _, opened = done.message.partition(" Opened: ")
    first, second = aside.containers[:2]
    assert first in opened
    assert first not in eaten
    assert second not in done.message, "one jar of a relish is open at a time"
    open_now = [one for one in p.containers_of(batch) if one.here and one.state is State.OPEN]
    assert len(open_now) == 1
