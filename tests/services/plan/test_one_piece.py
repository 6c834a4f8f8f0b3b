"""A fresh bird or roast is cooked whole, however it is weighed, and what is left of it is eaten on
the days that follow; what may be parted raw is drawn from by the meal."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core.words import Method
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.one_piece import cooked_days, pieces
from pantry_tui.services.rows import Take
from pantry_tui.services.stock import places, view
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


def takes(p: Pantry) -> tuple[Take, ...]:
    return weeks.week(p).take


@pytest.mark.parametrize(
    "line",
    [
        "1 chicken, fresh, fridge, amount=4lb",
        "4 lb chicken, fresh, fridge",
        "1 pack chicken, bought in, fridge, best by 2026-11-29, amount=4lb",
        "1 pack beef roast, fresh, fridge, amount=2lb",
    ],
)
def test_it_comes_whole_on_one_day_and_its_rest_on_the_next(p: Pantry, line: str) -> None:
    up(p, line)
    (take,) = takes(p)
    assert not take.amount
    assert (take.servings, take.days) == (4, (TODAY, TODAY + timedelta(days=1)))
    assert any("Cook it whole" in said and "3 days" in said for said in take.why)


def test_no_day_lies_after_its_own_last_one_nor_after_those_of_cooked_meat(p: Pantry) -> None:
    places.add(p, "chest", "freezer")
    up(p, "1 turkey, fresh, fridge, amount=16lb")
    up(p, "1 pack beef roast, fresh, fridge, amount=4lb")
    found = takes(p)
    assert {take.food for take in found} == {"turkeys", "beef roasts"}
    for take in found:
        (last,) = {row.discard_after for row in view.due(p) if row.code == take.code}
        assert last is not None
        assert take.days[-1] <= min(last, take.day + timedelta(days=3))
        too_much = any("cook them and freeze the meal" in said for said in take.why)
        assert too_much == (take.food == "turkeys")


def test_nobody_is_told_to_freeze_what_there_is_no_freezer_for(p: Pantry) -> None:
    up(p, "9 packs sausages, fresh, fridge, amount=1lb")

    def said() -> list[str]:
        found = weeks.week(p)
        return [
            one
            for one in (*found.notes, *sum((take.why for take in found.take), ()))
            if "freeze" in one
        ]

    assert said() == []
    places.add(p, "chest", "freezer")
    assert said()


@pytest.mark.parametrize(
    "line",
    [
        "3 lb ground beef, fresh, fridge",
        "5 lb sausages, fresh, fridge",
        "3 lb ham, hot smoked, fridge",
        "10 lb pork chops, fresh, fridge",
    ],
)
def test_what_may_be_parted_is_drawn_from_by_the_meal(p: Pantry, line: str) -> None:
    up(p, line)
    found = takes(p)
    assert found
    assert all(take.amount for take in found)


def test_of_several_birds_a_meal_takes_whole_ones(p: Pantry) -> None:
    code = up(p, "12 lb chicken, fresh, fridge")
    batch = p.batch(code)
    assert batch is not None
    (held,) = p.containers_of(batch)
    assert pieces(p, batch, held) == 4
    assert {take.amount for take in takes(p)} == {"3 lb"}, "a bird a day"


def test_a_day_of_it_books_that_days_part(p: Pantry) -> None:
    code = up(p, "1 chicken, fresh, fridge, amount=4lb")
    weeks.accept(p)
    weeks.eaten(p, TODAY)
    (row,) = [row for row in view.due(p) if row.code == code]
    assert row.left is not None
    assert (row.left.amount, row.left.unit) == (2, "lb")
    p.today += timedelta(days=1)
    weeks.eaten(p, p.today)
    assert not [row for row in view.due(p) if row.code == code]


def test_cooked_meat_keeps_as_published(p: Pantry) -> None:
    """foodsafety.gov, Cold Food Storage Chart: cooked meat or poultry, 3 to 4 days."""
    code = up(p, "1 chicken, fresh, fridge, amount=4lb")
    batch = p.batch(code)
    assert batch is not None
    assert batch.method is Method.FRESH
    assert cooked_days(p, batch) == 3
