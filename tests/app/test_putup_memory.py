"""Put up remembers: Tab, Up, what was before, places that are made on the spot, whole shelves."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from pantry_tui.app.main import PantryApp
from pantry_tui.core.model import Batch
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places
from tests.app.screens import painted

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=900)
    with open_pantry(tmp_path / "store.db", date(2025, 8, 20)) as pantry:
        places.add(pantry, "larder", "pantry")
        places.add(pantry, "north wall", "cellar")
        line = "9 pint jars runner beans, pressure canned, north wall"
        putup.put_up(pantry, putup.read(pantry, line))
        pantry.today = TODAY
        yield pantry


def line(pilot: Pilot[None]) -> Input:
    found: Input = pilot.app.screen.query_one("#line", Input)
    return found


def below(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("#reading", Static).visual)


def newest(p: Pantry) -> Batch:
    return max(p.batches(), key=lambda batch: batch.id)


async def test_tab_finishes_the_word_and_then_the_line_as_last_time(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(100, 30)) as pilot:
        await pilot.press("p", *"7 run", "tab")
        assert line(pilot).value == "7 runner beans"
        assert "last time" in below(pilot)
        assert "last year" in below(pilot)
        assert "9 left over" in below(pilot)
        await pilot.press("tab", "enter")
    made = newest(p)
    assert (made.food.name, made.method, made.size) == (
        "runner beans",
        "pressure canned",
        "pint jars",
    )
    (place,) = {one.place for one in p.containers_of(made)}
    assert p.places[place].name == "north wall"
    assert len(p.containers_of(made)) == 7
    assert made.process == (), "a process is never copied"


async def test_the_same_again_with_another_count_is_three_keys(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(100, 30)) as pilot:
        await pilot.press("p")
        await pilot.press("up", "8", "enter")
    made = newest(p)
    assert (made.food.name, made.made, len(p.containers_of(made))) == ("runner beans", TODAY, 8)


async def test_up_and_down_bring_earlier_lines_and_what_was_being_typed(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(100, 30)) as pilot:
        await pilot.press("p", *"6 jars plum jam, larder", "enter", *"5 ja")
        await pilot.press("up")
        assert line(pilot).value == "6 jars plum jam, larder"
        await pilot.press("up")
        assert line(pilot).value.startswith("9 pint jars runner beans")
        await pilot.press("up", "down", "down")
        assert line(pilot).value == "5 ja"


async def test_a_place_under_the_cursor_is_filled_in_and_is_no_line_yet(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(100, 30)) as pilot:
        await pilot.press("S", "p")
        await pilot.pause()
        assert line(pilot).value == "", "nobody went to the first line"
        await pilot.press("f3", "down", "p")
        await pilot.pause()
        assert line(pilot).value == "north wall, "
        assert "Type a line" in below(pilot)
        await pilot.press("f2", "p")
        assert line(pilot).value == ""
        await pilot.press("f3", "p")
        await pilot.pause()
        await pilot.press(*"6 jars plum jam", "enter")
    assert newest(p).food.name == "plum jam"


async def test_a_place_that_is_not_there_is_made_and_taken_back_with_the_batch(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(100, 30)) as pilot:
        await pilot.press("p", *"6 jars plum jam, back porch", "enter", "1")
        assert newest(p).food.name == "plum jam"
        assert "back porch" in [one.name for one in p.places.values()]
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert "back porch" not in [one.name for one in p.places.values()]
        assert line(pilot).value == "6 jars plum jam, back porch"


async def test_a_place_that_is_new_goes_before_the_one_that_was_filled_in(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("S", "down", "p")
        await pilot.pause()
        assert line(pilot).value == "north wall, "
        await pilot.press(*"6 jars plum jam, back porch", "enter", "1")
    (place,) = {one.place for one in p.containers_of(newest(p))}
    assert p.places[place].name == "back porch"


async def test_the_place_that_was_filled_in_stays_seen_above_a_long_line(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("S", "down", "p")
        await pilot.pause()
        await pilot.press(
            *"9 pint jars runner beans, pressure canned, minutes=20 psi=11, yesterday"
        )
        first = painted(pilot).splitlines()
        assert "north wall" not in "".join(first[3:6]), "it has run out of sight in the line"
        assert first[2].strip() == "Put up in north wall"
        await pilot.press("ctrl+u")
        assert painted(pilot).splitlines()[2].strip() == "Put up"


async def test_a_place_that_is_passed_over_for_another_is_said(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("S", "down", "p")
        await pilot.pause()
        await pilot.press(*"6 jars plum jam, north wall")
        assert "not used" not in below(pilot), "it is the same"
        await pilot.press("ctrl+u", *"north wall, 6 jars plum jam, larder")
        assert "not used       north wall: the line names larder" in below(pilot)
        assert painted(pilot).splitlines()[2].strip() == "Put up"
        await pilot.press("enter")
        said = " ".join(painted(pilot).split())
        assert "It is in larder, as the line says, and not in north wall." in said
        await pilot.press(*"6 jars plum jam, larder")
        assert "not used" not in below(pilot), "nothing was filled in"


async def test_undo_after_a_refusal_names_the_key_of_this_screen(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p", *"6 jars", "enter", "ctrl+z")
        said = " ".join(painted(pilot).split())
        assert "Ctrl+Z again takes back what was done" in said


async def test_a_misspelt_place_is_not_made_by_accident(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(100, 30)) as pilot:
        await pilot.press("p", *"6 jars plum jam, lardre", "enter", "6")
    assert len(p.places) == 2
    (place,) = {one.place for one in p.containers_of(newest(p))}
    assert p.places[place].name == "larder"


async def test_a_shelf_is_added_line_by_line_and_what_is_not_said_is_not_known(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(100, 30)) as pilot:
        await pilot.press("p", *"attic:", "enter", "2")
        await pilot.pause()
        assert "What stands in attic" in below(pilot)
        await pilot.press(*"12 plum jam 2024?", "enter", *"9 pint strawberry jam", "enter")
        await pilot.press(*"north wall:", "enter", *"3 pears, wb, pint", "enter")
        await pilot.press("escape")
        assert "Type a line" in below(pilot)
    jam, berries, pears = sorted(p.batches(), key=lambda batch: batch.id)[1:]
    assert (jam.food.name, jam.made) == ("plum jam", date(2024, 1, 1))
    assert (berries.food.name, berries.made) == ("strawberry jam", None)
    assert (pears.food.name, pears.method, pears.made) == ("pears", "boiling-water canned", None)
    where = [p.places[p.containers_of(one)[0].place].name for one in (jam, berries, pears)]
    assert where == ["attic", "attic", "north wall"]


async def test_an_old_line_gives_way_to_what_is_typed_next_and_up_brings_it_back(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p", *"5 jars plum jam", "escape", "p")
        assert line(pilot).value == "5 jars plum jam"
        assert "what you type now takes its place" in " ".join(painted(pilot).split())
        await pilot.press("end", *", larder", "f3", "p", *"6 tubs", "up")
        assert line(pilot).value == "5 jars plum jam, larder"
        await pilot.press("enter")
    assert (newest(p).food.name, newest(p).size) == ("plum jam", "jars")


async def test_ctrl_u_clears_every_line_and_the_letters_of_a_choice(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        for keys in (("p",), ("S", "a"), ("slash",)):
            await pilot.press(*keys, *"abc", "home", "ctrl+u")
            await pilot.pause()
            typed = pilot.app.screen.query(Input).first()
            assert typed.value == "", keys
            await pilot.press("escape", "escape")
        await pilot.press("D", "m", *"north", "ctrl+u")
        assert "larder" in painted(pilot)


async def test_half_of_a_batch_is_frozen_as_it_is_said(p: Pantry) -> None:
    places.add(p, "ice chest", "freezer")
    places.add(p, "fridge", "fridge")
    code = putup.put_up(p, putup.read(p, "1 2-lb pack pork, fresh, fridge, yesterday")).code
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p", *f"half of {code}, ice chest")
        assert f"from           1 lb of {code}/1; 1 lb left in it" in below(pilot)
        assert "this opens it" in below(pilot)
        await pilot.press("enter")
        assert f"from           1 lb of {code}/1; 1 lb left in it" in below(pilot)
    assert (newest(p).food.name, newest(p).method) == ("pork", "frozen")
