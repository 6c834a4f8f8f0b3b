"""What a line of the week's menu takes: its column, and what its key to use it offers."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.by_plan import count_in, offered
from pantry_tui.app.weeklines import TakeKey
from pantry_tui.app.widgets.line import Line
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.rows import Take
from pantry_tui.services.stock import places
from pantry_tui.services.stock.view import rows_named
from tests.app.screens import all_lines, painted, table

TODAY = date(2026, 11, 29)
LINES = (
    "12 eggs, fresh, fridge, yesterday",
    "20 lb potatoes, cellar-stored, larder, 4 weeks ago",
    "10 half-pint jars applesauce, boiling-water canned, larder, minutes=20, 10 months ago",
)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=500, people=4)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for line in ("larder, pantry", "fridge, fridge", "freezer, freezer"):
            places.add_line(pantry, line)
        for line in LINES:
            put_up(pantry, read(pantry, line))
        yield pantry


def to(pilot: Pilot[None], food: str) -> Line:
    """The cursor on the first line of the menu of that food."""
    for at, line in enumerate(all_lines(pilot)):
        if isinstance(line.key, TakeKey) and line.row is not None and line.row.food == food:
            table(pilot).move_cursor(at)
            return line
    raise AssertionError(f"no {food} in the week")


@pytest.mark.parametrize("picture", [False, True])
@pytest.mark.parametrize(
    ("food", "much", "left"), [("eggs", "8", 4), ("potatoes", "1.25 lb", 18.75)]
)
async def test_use_offers_what_the_plan_takes_of_that_line(
    p: Pantry, food: str, much: str, left: float, picture: bool
) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W", *("v" for _ in range(picture)))
        line = to(pilot, food)
        await pilot.press("u")
        assert pilot.app.screen.query_one(Input).value == much
        await pilot.press("enter")
        assert rows_named(p, {line.ref})[line.ref].left.amount == left


async def test_use_offers_what_it_takes_for_those_who_sit_at_the_table(p: Pantry) -> None:
    from pantry_tui.services.plan.appetite import read_table

    read_table(p, "6 from 29 nov to 5 dec")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        to(pilot, "eggs")
        await pilot.press("u")
        assert pilot.app.screen.query_one(Input).value == "12"


async def test_in_the_due_list_one_egg_is_offered_as_ever(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        at = next(n for n, one in enumerate(all_lines(pilot)) if one.row and one.row.food == "eggs")
        table(pilot).move_cursor(at)
        await pilot.press("u")
        assert pilot.app.screen.query_one(Input).value == "1"


async def test_several_jars_of_a_line_are_used_as_several(p: Pantry) -> None:
    from pantry_tui.services.plan.appetite import read_table

    read_table(p, "8 from 29 nov to 5 dec")
    several = [one for one in weeks.week(p).take if one.count > 1]
    assert several, "a line takes more jars than one"
    take = several[0]
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        at = next(
            n
            for n, one in enumerate(all_lines(pilot))
            if isinstance(one.key, TakeKey) and one.key.container == take.containers[0]
        )
        table(pilot).move_cursor(at)
        await pilot.press("u")
        assert pilot.app.screen.query_one(Input).value == str(take.count)
        await pilot.press("enter")
        gone = [one for one in take.containers if not rows_named(p, {one})]
        assert len(gone) == take.count, "those that the plan names"


async def test_the_menu_is_headed_by_what_to_take_and_stock_by_what_is_left(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        head, *_ = (one for one in painted(pilot).splitlines() if " food, method" in one)
        assert " take " in head
        assert " left " not in head
        at = next(n for n, one in enumerate(all_lines(pilot)) if "these next" in one.word)
        table(pilot).move_cursor(at)
        await pilot.pause()
        title = next(one for one in painted(pilot).splitlines() if "these next" in one)
        assert title.split()[-1] == "left"
        assert title.index("left") == head.index("take")


def _take(p: Pantry, food: str, amount: str) -> str:
    """What is offered where the plan takes that much of it."""
    take = next(one for one in weeks.week(p).take if one.food == food)
    row = rows_named(p, {take.containers[0]})[take.containers[0]]
    one = Take("2A", food, "larder", 1, 1, TODAY, None, (), amount=amount)
    return offered(one, row)


@pytest.mark.parametrize(
    ("food", "amount", "said"),
    [
        ("eggs", "1/2", "1/2 pieces"),  # half of what is left is another thing
        ("eggs", "12", "12"),
        ("eggs", "13", "all"),
        ("potatoes", "20 lb", "20 lb"),
        ("potatoes", "21 lb", "all"),
        ("applesauce", "", ""),
    ],
)
def test_no_more_is_offered_than_is_left(p: Pantry, food: str, amount: str, said: str) -> None:
    assert _take(p, food, amount) == said


@pytest.mark.parametrize("typed", ["0", "3", "two", "1.5", "-1"])
def test_so_many_jars_are_meant_as_the_plan_takes_at_most(typed: str) -> None:
    assert count_in("2", 2) == 2
    with pytest.raises(BadInput):
        count_in(typed, 2)
