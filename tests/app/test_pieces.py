"""Eggs and heads of cabbage are taken one by one: a key asks how many, and Enter takes one."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.widgets import Input

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.ask import TypeLine
from pantry_tui.app.screens.meant import pieces_of
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places, view
from tests.app.screens import painted


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=500)
    with open_pantry(tmp_path / "store.db", date(2026, 11, 25)) as pantry:
        for name, climate in (("fridge", "fridge"), ("cellar", "cellar"), ("larder", "pantry")):
            places.add(pantry, name, climate)
        yield pantry


def put_up(p: Pantry, line: str) -> None:
    putup.put_up(p, putup.read(p, line))


def left(p: Pantry) -> list[float]:
    return [row.left.amount for row in view.due(p)]


@pytest.mark.parametrize(
    ("typed", "rest"), [((), [11.0]), (("4",), [8.0]), (("h", "a", "l", "f"), [6.0]),
                        (("a", "l", "l"), [])],
)  # fmt: skip
async def test_using_eggs_asks_how_many(
    p: Pantry, typed: tuple[str, ...], rest: list[float]
) -> None:
    put_up(p, "12 eggs, fridge")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press("u")
        assert isinstance(pilot.app.screen, TypeLine)
        assert pilot.app.screen.query_one(Input).value == "1"
        assert "How many of the 12?" in painted(pilot)
        await pilot.press(*typed, "enter")
        assert left(p) == rest
        await pilot.press("z")
        assert left(p) == [12.0]


async def test_esc_takes_none_and_too_many_are_refused_with_the_line_kept(p: Pantry) -> None:
    put_up(p, "3 heads cabbage, cellar-stored, cellar")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press("u", "escape")
        assert left(p) == [3.0]
        await pilot.press("u", "9", "enter")
        assert pilot.app.screen.query_one(Input).value == "9"
        await pilot.press("escape")
        assert left(p) == [3.0]


@pytest.mark.parametrize("keys", [("n", "enter"), ("d", "6"), ("g", *"Ann", "enter")])
async def test_so_do_the_other_ways_in_which_they_leave(p: Pantry, keys: tuple[str, ...]) -> None:
    put_up(p, "12 eggs, fridge")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press(*keys)
        assert "How many of the 12?" in painted(pilot)
        await pilot.press("3", "enter")
        assert left(p) == [9.0]


@pytest.mark.parametrize(
    ("line", "many"),
    [
        ("12 eggs, fridge", 12), ("3 heads cabbage, cellar-stored, cellar", 3),
        ("1 egg, fridge", 0), ("2 boxes eggs, bought in, fridge", 0),
        ("7 pint jars peaches, boiling-water canned, larder", 0), ("20 lb potatoes, cellar", 0),
        ("2 boxes of 6 eggs, bought in, fridge", 6),
    ],
)  # fmt: skip
def test_what_is_taken_by_the_piece(p: Pantry, line: str, many: int) -> None:
    put_up(p, line)
    assert next(pieces_of(row) for row in view.due(p)) == many


async def test_one_jar_is_used_by_one_key(p: Pantry) -> None:
    put_up(p, "7 pint jars peaches, boiling-water canned, 25 minutes, larder")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press("u")
        assert not isinstance(pilot.app.screen, TypeLine)
        assert sum(row.count for row in view.due(p)) == 6
