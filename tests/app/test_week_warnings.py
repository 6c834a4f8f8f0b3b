"""Warnings stand above the week and leave it its room."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.page import Page
from pantry_tui.app.weeklines import FallenKey, TakeKey, WarningKey
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import places, readings
from tests.app.screens import all_lines, painted, table

TODAY = date(2026, 11, 29)
COLD = (
    "12 eggs, fresh, fridge, yesterday",
    "2 lb chicken thighs, fresh, fridge, today",
    "1 qt milk, fresh, fridge, today",
    "2 lb ham, cooked meal, fridge, today",
)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=500, people=4)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for line in ("larder, pantry", "fridge, fridge"):
            places.add_line(pantry, line)
        for line in (*COLD, "20 lb potatoes, cellar-stored, larder, 4 weeks ago"):
            put_up(pantry, read(pantry, line))
        yield pantry


@pytest.mark.parametrize("size", [(80, 24), (120, 40), (40, 24)])
@pytest.mark.parametrize("accepted", [False, True])
async def test_many_warnings_take_two_lines_and_enter_shows_all_of_them(
    p: Pantry, size: tuple[int, int], accepted: bool
) -> None:
    if accepted:
        weeks.accept(p)
    readings.read_typed(p, "fridge", "52F", since="1h")
    found = weeks.week(p)
    assert len(found.urgent) >= 4
    assert bool(found.fallen) == accepted
    many = len(found.urgent) + len(found.fallen)
    async with PantryApp(p).run_test(size=size) as pilot:
        await pilot.press("W")
        keys = [line.key for line in all_lines(pilot)]
        assert sum(isinstance(key, WarningKey) for key in keys) == 2
        assert keys.index(next(key for key in keys if isinstance(key, WarningKey))) == 0
        shown = " ".join(painted(pilot).split())
        assert f"{many} warnings (Enter shows all)" in shown
        assert isinstance(table(pilot).current.key, TakeKey)  # type: ignore[union-attr]
        of_days = [key for key in keys if isinstance(key, FallenKey)]
        assert [(key.container.partition("/")[0], key.day) for key in of_days] == [
            (one.containers[0].partition("/")[0], one.day) for one in found.fallen
        ]
        table(pilot).move_cursor(0)
        await pilot.press("enter")
        page = pilot.app.screen
        assert isinstance(page, Page)
        for said in (*found.urgent, *(one.told for one in found.fallen)):
            assert " ".join(pilot.app.said(said).split()) in " ".join(page._text.split())  # type: ignore[attr-defined]


async def test_what_is_not_sound_by_now_stands_on_its_day_and_keys_act_on_it(p: Pantry) -> None:
    weeks.accept(p)
    readings.read_typed(p, "fridge", "52F", since="1h")
    one = weeks.week(p).fallen[0]
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        lines = all_lines(pilot)
        at = next(n for n, line in enumerate(lines) if isinstance(line.key, FallenKey))
        text = lines[at].cells[0][0]
        assert text.startswith("! Sun 29 Nov: ")
        assert len(text) < 80
        assert lines[at].word == pilot.app.said(one.told)  # type: ignore[attr-defined]
        table(pilot).move_cursor(at)
        await pilot.press("enter")
        assert one.code in painted(pilot)


async def test_one_warning_stands_there_whole(p: Pantry) -> None:
    put_up(p, read(p, "1 jar pesto, in oil, fridge, 2 days ago"))
    (said,) = weeks.week(p).urgent
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        assert not any(isinstance(line.key, WarningKey) for line in all_lines(pilot))
        assert said in " ".join(painted(pilot).split())


async def test_after_a_line_is_used_the_cursor_goes_to_the_next_one_and_no_warning(
    p: Pantry,
) -> None:
    put_up(p, read(p, "4 half-pint jars applesauce, boiling-water canned, larder, 10 months ago"))
    weeks.accept(p)
    readings.read_typed(p, "fridge", "52F", since="1h")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        lines = all_lines(pilot)
        at = next(
            n
            for n, line in enumerate(lines[:-1])
            if isinstance(line.key, TakeKey)
            and line.row is not None
            and line.row.food == "applesauce"
            and isinstance(lines[n + 1].key, FallenKey)
        )
        table(pilot).move_cursor(at)
        await pilot.press("u")
        now = table(pilot).current
        assert now is not None
        assert isinstance(now.key, TakeKey)
