"""A count that is most likely a slip is asked about before it is booked."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.ask import Choose
from pantry_tui.services.batchwork.absurd import absurd_count
from pantry_tui.services.batchwork.putup import read
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places, view
from tests.app.screens import painted

TODAY = date(2026, 11, 29)
MANY = "620 jars plum jam, larder, today"


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=500)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for line in ("larder, pantry", "shelf 3, pantry, room for 12"):
            places.add_line(pantry, line)
        yield pantry


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (MANY, "620 jars plum jam at once are a lot for one household: is that the count?"),
        ("201 pint jars plum jam, larder", "201 pint jars plum jam at once are a lot"),
        ("60 jars plum jam, shelf 3", "shelf 3 has room for 12: is that the count?"),
    ],
)
def test_a_count_that_is_a_slip_is_asked_about(p: Pantry, line: str, said: str) -> None:
    assert said in absurd_count(p, read(p, line))


@pytest.mark.parametrize(
    "line",
    [
        "7 pint jars plum jam, larder",
        "200 pint jars plum jam, larder",
        "24 jars plum jam, shelf 3",
        "620 eggs, fresh, larder",  # pieces in one box
        "300 onions, cellar-stored, larder",
        "600 lb potatoes, cellar-stored, larder",
        "1 jar plum jam, nowhere known",
    ],
)
def test_what_a_household_may_have_is_not(p: Pantry, line: str) -> None:
    assert not absurd_count(p, read(p, line))


async def test_the_app_asks_and_enter_alone_books_nothing(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p", *MANY, "enter")
        assert isinstance(pilot.app.screen, Choose)
        assert "620 jars plum jam at once are a lot" in " ".join(painted(pilot).split())
        await pilot.press("enter")
        assert not view.due(p)
        await pilot.press("2")
        assert not view.due(p)
        assert MANY in painted(pilot), "the line stays to be mended"
        await pilot.press("enter", "1")
        assert sum(row.count for row in view.due(p)) == 620


async def test_it_is_asked_too_where_its_place_is_new(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p", *"620 jars plum jam, back porch", "enter")
        assert "a lot for one household" in " ".join(painted(pilot).split())
        await pilot.press("2")
        assert not view.due(p)
