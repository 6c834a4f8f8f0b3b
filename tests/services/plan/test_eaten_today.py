"""What was eaten today is not asked for again today, neither it nor another of its kind."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.words import Role
from pantry_tui.errors import Refused
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import wishes
from pantry_tui.services.plan.accepting import accept
from pantry_tui.services.stock import act, places
from pantry_tui.services.stock.seen import At
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 29)
CANNED = "pressure canned, larder, minutes=20 psi=11 canner=dial pack=raw"


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=500, people=4)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for line in ("larder, pantry", "fridge, fridge", "freezer, freezer"):
            places.add_line(pantry, line)
        up(pantry, "12 eggs, fresh, fridge, yesterday")
        up(pantry, "20 lb potatoes, cellar-stored, larder, 4 weeks ago")
        half = "10 half-pint jars applesauce, boiling-water canned, larder, minutes=20"
        up(pantry, f"{half}, 2026-01-29")
        up(pantry, f"6 pint jars runner beans, {CANNED}, 2025-12-29")
        up(pantry, "3 bags salmon, frozen, freezer, 6 months ago")
        yield pantry


def foods(p: Pantry, day: date = TODAY) -> set[str]:
    """What the week asks for on a day."""
    return {one.food for one in weeks.week(p).take if day in (one.days or (one.day,))}


def code(p: Pantry, food: str) -> str:
    return next(b.code for b in p.stock.batches.values() if b.food.name == food)


def use_all_of_today(p: Pantry) -> list[str]:
    """By hand, as the plan has it."""
    used = []
    for one in weeks.week(p).take:
        if one.day == TODAY:
            for name in one.containers:
                act.use(p, name, one.amount or None, any_=True)
            used.append(one.food)
    return used


def test_a_day_that_was_eaten_by_hand_asks_for_nothing_more(p: Pantry) -> None:
    used = use_all_of_today(p)
    assert len(used) >= 3
    found = weeks.week(p)
    assert not foods(p)
    ((day, said),) = found.eaten
    assert day == TODAY
    assert all(food in said for food in used)
    assert foods(p, TODAY + timedelta(days=1)), "the days after it are as ever"


def test_what_of_today_was_not_eaten_is_asked_for_still(p: Pantry) -> None:
    before = foods(p)
    assert {"eggs", "potatoes"} <= before
    act.use(p, code(p, "potatoes"), "1.25 lb")
    after = foods(p)
    assert "potatoes" not in after
    assert after == before - {"potatoes"}


def test_another_main_that_was_eaten_is_the_main_of_today(p: Pantry) -> None:
    mains = {one.food for one in weeks.week(p).take if one.day == TODAY and one.role == Role.MAIN}
    other = next(food for food in ("eggs", "salmon") if food not in mains)
    act.use(p, code(p, other), "4" if other == "eggs" else None, any_=True)
    now = {one.food for one in weeks.week(p).take if one.day == TODAY and one.role == Role.MAIN}
    assert not now


def test_a_bite_is_no_meal(p: Pantry) -> None:
    before = foods(p)
    act.use(p, code(p, "eggs"), "1")
    act.use(p, code(p, "potatoes"), "4 oz")
    assert foods(p) == before


def test_what_was_eaten_yesterday_discarded_or_given_away_is_no_meal_of_today(p: Pantry) -> None:
    before = foods(p)
    act.discard(p, code(p, "applesauce"), why="broken")
    act.give(p, code(p, "potatoes"), "2 lb", to="Aunt Sunniva")
    act.use(p, code(p, "eggs"), "4", at=At(TODAY - timedelta(days=1)))
    assert foods(p) == before


def test_what_the_household_puts_on_today_all_the_same_is_there(p: Pantry) -> None:
    use_all_of_today(p)
    wishes.pin(p, code(p, "eggs"), TODAY)
    assert "eggs" in foods(p)


def test_undone_it_is_asked_for_again(p: Pantry) -> None:
    from pantry_tui.services.stock.undo import undo

    before = foods(p)
    act.use(p, code(p, "potatoes"), "1.25 lb")
    undo(p)
    assert foods(p) == before


def test_what_must_be_eaten_gives_way_to_another_of_its_kind_for_a_day_it_has(p: Pantry) -> None:
    up(p, "2 lb chicken thighs, fresh, fridge, today")
    assert "chicken pieces" in foods(p)
    act.use(p, code(p, "eggs"), "4")
    tomorrow = TODAY + timedelta(days=1)
    assert "chicken pieces" not in foods(p)
    assert "chicken pieces" in foods(p, tomorrow), "its last day"


def test_on_its_last_day_it_stays(p: Pantry) -> None:
    up(p, "2 lb chicken thighs, fresh, fridge, yesterday")
    assert "chicken pieces" in foods(p)
    act.use(p, code(p, "eggs"), "4")
    assert "chicken pieces" in foods(p)


def test_a_week_is_accepted_as_it_is_shown(p: Pantry) -> None:
    use_all_of_today(p)
    shown = {(one.food, one.days) for one in weeks.week(p).take}
    accept(p)
    assert {(one.food, one.days) for one in weeks.week(p).take} == shown
    with pytest.raises(Refused, match="nothing more for Sun 29 Nov"):
        weeks.eaten(p, TODAY)


def test_what_is_marked_eaten_is_not_asked_for_when_the_week_is_replanned(p: Pantry) -> None:
    accept(p)
    weeks.eaten(p, TODAY)
    assert not foods(p)
    weeks.forget(p)
    assert weeks.accepted(p) is None
    assert not foods(p)


def test_an_accepted_week_asks_no_more_for_what_of_it_was_used_by_hand(p: Pantry) -> None:
    accept(p)
    before = foods(p)
    act.use(p, code(p, "potatoes"), "1.25 lb")
    assert foods(p) == before - {"potatoes"}
    ((_, said),) = weeks.week(p).eaten
    assert "potatoes" in said


def test_what_an_accepted_week_has_stays_when_something_else_was_eaten(p: Pantry) -> None:
    accept(p)
    before = foods(p)
    mains = {one.food for one in weeks.week(p).take if one.day == TODAY and one.role == Role.MAIN}
    other = next(food for food in ("eggs", "salmon") if food not in mains)
    act.use(p, code(p, other), "4" if other == "eggs" else None, any_=True)
    assert foods(p) == before
