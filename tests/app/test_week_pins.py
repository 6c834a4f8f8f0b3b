"""A jar is put on a day of an accepted week by a key, as the command does."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from textual.pilot import Pilot

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.ask import Choose, TypeLine
from pantry_tui.app.screens.pinning import _code_and_day
from pantry_tui.app.weeklines import TakeKey
from pantry_tui.app.widgets.line import Line
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import places
from tests.app.screens import all_lines, painted, table

TODAY = date(2026, 11, 29)
TUESDAY = date(2026, 12, 1)
LINES = (
    "12 eggs, fresh, fridge, yesterday",
    "20 lb potatoes, cellar-stored, larder, 4 weeks ago",
    "10 half-pint jars applesauce, boiling-water canned, larder, minutes=20, 10 months ago",
    "6 pint jars runner beans, pressure canned, larder, minutes=20 psi=11 canner=dial, 2025-12-29",
    "3 bags salmon, frozen, freezer, 6 months ago",
)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=500, people=4)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for line in ("larder, pantry", "fridge, fridge", "freezer, freezer"):
            places.add_line(pantry, line)
        for line in LINES:
            put_up(pantry, read(pantry, line))
        weeks.accept(pantry)
        yield pantry


def on(p: Pantry, day: date) -> list[str]:
    """What the week has on a day."""
    return [name for one in weeks.week(p).take if day in one.days for name in one.containers]


def to(pilot: Pilot[None], which: Callable[[Line], bool]) -> Line:
    for at, line in enumerate(all_lines(pilot)):
        if which(line):
            table(pilot).move_cursor(at)
            return line
    raise AssertionError("no such line")


@pytest.mark.parametrize("picture", [False, True])
async def test_what_the_menu_has_is_put_on_the_day_that_is_chosen(p: Pantry, picture: bool) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W", *("v" for _ in range(picture)))
        line = to(
            pilot,
            lambda one: isinstance(one.key, TakeKey) and bool(one.row and one.row.food == "salmon"),
        )
        assert line.ref not in on(p, TUESDAY + timedelta(days=2))
        await pilot.press("k")
        assert isinstance(pilot.app.screen, Choose)
        assert f"Put {line.ref} salmon on which day?" in painted(pilot)
        await pilot.press("5")
        assert line.ref in on(p, TUESDAY + timedelta(days=2))
        assert "salmon on Thu 3 Dec 2026" in painted(pilot)
        await pilot.press("z")
        assert line.ref not in on(p, TUESDAY + timedelta(days=2))


async def test_a_jar_that_is_on_no_day_yet_is_put_on_one_beside_those_that_are(p: Pantry) -> None:
    laid = {name for one in weeks.week(p).take for name in one.containers}
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        to(
            pilot,
            lambda one: (
                not isinstance(one.key, TakeKey) and bool(one.row and one.row.food == "applesauce")
            ),
        )
        await pilot.press("k", "3")
        new = set(on(p, TUESDAY)) - laid
        assert len(new) == 1
        assert laid <= {name for one in weeks.week(p).take for name in one.containers}


async def test_out_of_bulk_there_is_one_meal_more(p: Pantry) -> None:
    def meals() -> list[date]:
        return [day for one in weeks.week(p).take if one.food == "potatoes" for day in one.days]

    before = meals()
    free = next(n for n in range(7) if TODAY + timedelta(days=n) not in before)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        to(pilot, lambda one: bool(one.row and one.row.food == "potatoes"))
        await pilot.press("k", str(free + 1))
    assert sorted(meals()) == sorted([*before, TODAY + timedelta(days=free)])


async def test_on_a_heading_its_code_and_the_day_are_typed(p: Pantry) -> None:
    code = next(b.code for b in p.stock.batches.values() if b.food.name == "runner beans")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        to(pilot, lambda one: not one.ref)
        await pilot.press("k")
        assert isinstance(pilot.app.screen, TypeLine)
        await pilot.press(*f"{code} tuesday", "enter")
        assert any(name.startswith(f"{code}/") for name in on(p, TUESDAY))


async def test_it_is_left_by_esc(p: Pantry) -> None:
    booked = len(p.events)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("W", "k", "escape")
    assert len(p.events) == booked


@pytest.mark.parametrize("typed", ["7C friday", "7C=friday", "7C on friday", "7C = fri"])
def test_a_code_and_a_day_are_read(typed: str) -> None:
    assert _code_and_day(typed, TODAY) == ("7C", date(2026, 12, 4))


@pytest.mark.parametrize("typed", ["7C", "", "7C=", "7C soon"])
def test_without_a_day_it_is_refused(typed: str) -> None:
    with pytest.raises(BadInput):
        _code_and_day(typed, TODAY)
