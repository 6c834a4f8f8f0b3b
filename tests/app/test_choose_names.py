"""A name that is typed where one is chosen arrives whole, its figures too."""

from __future__ import annotations

import pytest
from textual.widgets import Input

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.ask import Choose
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import dishes
from pantry_tui.services.plan import week as weeks
from tests.app.screens import painted


async def test_a_dish_that_is_typed_at_the_list_of_dishes_arrives_whole(demo: Pantry) -> None:
    line = "Pot no 9 = 4 potatoes, 2 carrots"
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W", "i", *line)
        assert isinstance(pilot.app.screen, Choose), "no digit took one of them"
        assert "a new dish" in painted(pilot)
        await pilot.press("enter")
        assert pilot.app.screen.query_one(Input).value == line
        await pilot.press("enter")
    assert "pot no 9" in [one.name.casefold() for one in dishes.dishes(demo)]
    assert any(one.dish.casefold() == "pot no 9" for one in weeks.week(demo).take)


@pytest.mark.parametrize("keys", ["1", "chick"])
async def test_a_dish_that_is_there_is_chosen_by_its_digit_or_letters(
    demo: Pantry, keys: str
) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W", "i", *keys)
        await pilot.press(*([] if keys.isdigit() else ["enter"]))
        assert not isinstance(pilot.app.screen, Choose)


_KEYS = {" ": "space", "!": "enter"}


async def _asked(keys: str, *, counts: bool) -> tuple[str | None, int]:
    """What the keys choose among places, and how many."""
    from textual.app import App

    class One(App[None]):
        units = None

    options = ["larder", "cellar shelf 1", "cellar shelf 2"]
    question = Choose("Where to?", options, 7, counts=counts)
    got: list[str | None] = []
    async with One().run_test(size=(80, 24)) as pilot:
        pilot.app.push_screen(question, got.append)
        await pilot.pause()
        await pilot.press(
            *("space" if key == " " else "enter" if key == "!" else key for key in keys)
        )
    return (got[0] if got else None), question.number


@pytest.mark.parametrize(
    ("keys", "counts", "place", "number"),
    [
        ("shelf 2!", True, "cellar shelf 2", 1),
        ("3shelf 2!", True, "cellar shelf 2", 3),
        ("larder3!", True, "larder", 3),
        ("larder 3!", True, "larder", 3),
        ("3!", True, "larder", 3),
        ("shelf 2!", False, "cellar shelf 2", 1),
        ("3", False, "cellar shelf 2", 1),
        ("shelf2", False, "cellar shelf 2", 1),
    ],
)
async def test_the_number_of_a_shelf_is_part_of_its_name(
    keys: str, counts: bool, place: str, number: int
) -> None:
    assert await _asked(keys, counts=counts) == (place, number)
