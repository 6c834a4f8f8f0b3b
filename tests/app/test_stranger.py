"""What a stranger tries on an evening, and what the screen answers."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.widgets import Input

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.ask import Choose
from pantry_tui.core.log.events import Did
from pantry_tui.core.words import Climate, State
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, places, view
from tests.app.screens import all_lines, painted, table
from tests.app.test_ten_jobs import settings
from tests.furnished import furnished

TODAY = date(2026, 11, 25)
LINES = (
    "6 pint jars peaches, boiling-water canned, rack, 2026-08-10",
    "4 pint jars peaches, boiling-water canned, larder, 2025-10-10",
    "3 half-pint jars strawberry jam, larder, 2026-06-01",
    "1 crock of 6 quarts sauerkraut, lactic ferment, larder, 2026-10-20",
)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    with furnished(tmp_path, TODAY, ("larder", "rack"), LINES) as pantry:
        yield pantry


# -- finding --------------------------------------------------------------------------------------


@pytest.mark.parametrize("room", ["D", "S"])
async def test_three_letters_of_a_food_lead_to_the_one_to_eat_first(p: Pantry, room: str) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press(room, "slash", *"pea", "enter")
        row = table(pilot).current.row  # type: ignore[union-attr]
        assert row is not None
        assert row.place == "larder"
        await pilot.press("u")
        assert p.events[-1].did is Did.USE


async def test_sorted_by_food_they_lead_there_too(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("v", "7", "slash", *"pea")
        assert table(pilot).current.row.place == "larder"  # type: ignore[union-attr]


async def test_a_plural_finds_what_is_called_by_its_singular(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("slash", *"jams", "enter")
        assert [line.row.food for line in all_lines(pilot) if line.row] == ["strawberry jam"]


async def test_a_saved_view_is_offered_by_name_and_an_unknown_one_refused(
    p: Pantry, away_from_home: Path
) -> None:
    settings(away_from_home, '[views]\nrack = "place:rack"\n')
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("slash")
        assert "@rack" in painted(pilot)
        await pilot.press("at", *"rack", "enter")
        assert {line.row.place for line in all_lines(pilot) if line.row} == {"rack"}
        await pilot.press("escape", "slash", "at", *"attic", "enter")
        assert "There is no saved view @attic: you have @rack" in painted(pilot)


# -- what was done is said where one looks --------------------------------------------------------


async def test_the_log_opens_on_what_was_done_last(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("f7", "down", "down")
        await pilot.press("f2", "u", "f7")
        assert table(pilot).cursor_row == 0
        assert "used" in table(pilot).current.cells[0][0]  # type: ignore[union-attr]
        await pilot.press("down", "f2", "f7")
        assert table(pilot).cursor_row == 1, "nothing was done since"


async def test_what_is_put_up_is_said_with_its_jars(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        for line, said in (
            ("4 half-pint jars strawberry jam, larder", "4 half-pint jars strawberry jam."),
            ("1 crock of 6 quarts sauerkraut, larder", "1 × 6 quart crock sauerkraut, lactic"),
            ("12 winter squash, cellar-stored, larder", "12 winter squash, cellar-stored."),
        ):
            await pilot.press("p")
            pilot.app.screen.query_one("#line", Input).value = line
            await pilot.press("enter")
            await pilot.pause()
            assert said in painted(pilot)


async def test_what_was_recorded_of_a_process_is_said_on_the_screen(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("slash", *"rack", "enter", "i")
        pilot.app.screen.query_one(Input).value = "minutes=30"
        await pilot.press("enter")
        await pilot.pause()
        assert p.events[-1].did is Did.CORRECT
        said = str(pilot.app.screen.query_one("SaidLine").content)  # type: ignore[attr-defined]
        assert said.startswith("Corrected"), said


async def test_nothing_is_best_by_none(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(140, 40)) as pilot:
        for room in ("D", "S", "enter"):
            await pilot.press(room)
            await pilot.pause()
            assert "by none" not in " ".join(painted(pilot).split())
            assert " none " not in painted(pilot)


async def test_the_week_names_its_people_and_its_end_apart(p: Pantry) -> None:
    for wide, said in ((120, "proposed for 2 people, to 1 Dec"), (80, "proposed, to 1 Dec")):
        async with PantryApp(p).run_test(size=(wide, 24)) as pilot:
            await pilot.press("W")
            assert said in painted(pilot)


# -- an amount beside its neighbour ---------------------------------------------------------------


@pytest.mark.parametrize("room", ["D", "S", "W"])
async def test_what_is_left_never_touches_the_column_beside_it(p: Pantry, room: str) -> None:
    code = next(row.code for row in view.due(p) if row.food == "sauerkraut")
    act.ready(p, code)
    act.use(p, code, "3/4 quart", any_=True)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press(room)
        await pilot.pause()
        text = painted(pilot)
        assert "5 1/4 q" in text
        where = "larder" if room != "S" else "not published"
        line = next(one for one in text.split("\n") if "5 1/4 q" in one)
        assert line.split("5 1/4 ")[1].split(" ", 1)[1].startswith(" "), line
        assert where in line


# -- places ---------------------------------------------------------------------------------------


async def test_a_new_place_is_filled_next(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("S", "a")
        pilot.app.screen.query_one(Input).value = "chest freezer"
        await pilot.press("enter", "p")
        await pilot.pause()
        assert p.find_place("chest freezer").climate is Climate.FREEZER, "its name says so"
        line = pilot.app.screen.query_one("#line", Input)
        assert line.value == "chest freezer, "
        await pilot.press("ctrl+u", *"2 bags peas", "comma", *" freezer", "enter")
        await pilot.pause()
        frozen = [row for row in view.due(p) if row.food == "peas"]
        assert [row.place for row in frozen] == ["chest freezer"], painted(pilot)


def test_a_place_that_says_no_climate_by_its_name_is_asked_for_it(p: Pantry) -> None:
    from pantry_tui.errors import BadInput

    for name in ("north shelf", "fridge freezer", "attic"):
        with pytest.raises(BadInput, match="climate"):
            places.add_line(p, name)


async def test_a_form_calls_a_place_by_its_new_name_and_ends_where_it_is_removed(
    p: Pantry,
) -> None:
    places.add(p, "attic", "room")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("S", "home", "w", "1")
        pilot.app.screen.query_one(Input).value = "loft"
        await pilot.press("enter")
        assert "loft: what is otherwise?" in painted(pilot)
        await pilot.press(*"remove", "enter", "1")
        await pilot.pause()
        assert not isinstance(pilot.app.screen, Choose)
        assert "Removed the place loft" in painted(pilot)
        await pilot.press("z")
        assert "loft" in p.place_paths().values()


# -- discarding -----------------------------------------------------------------------------------


async def test_why_it_was_discarded_stands_in_its_batch(p: Pantry) -> None:
    code = next(row.code for row in view.due(p) if row.food == "strawberry jam")
    async with PantryApp(p).run_test(size=(80, 40)) as pilot:
        await pilot.press(*code.lower(), "d", "9")
        assert "(nobody would eat it)" in painted(pilot)
        await pilot.press(*code.lower(), "g")
        pilot.app.screen.query_one(Input).value = "Aunt Sunniva"
        await pilot.press("enter")
        assert "to Aunt Sunniva; 1 left" in painted(pilot)
        await pilot.press(*code.lower(), "enter", "enter")
        text = str(pilot.app.screen.query_one("#text").content)  # type: ignore[attr-defined]
        assert f"{code}/1 discarded Wed 25 Nov 2026 (nobody would eat it)" in text
        assert f"{code}/2 given Wed 25 Nov 2026 to Aunt Sunniva" in text
    assert all(row.state is not State.OPEN for row in view.due(p))
