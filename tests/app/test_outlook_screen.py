"""The outlook on the screen: the plot, groups, books; taste and keeping apart by key."""

from __future__ import annotations

import calendar
import re
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Static

from pantry_tui.app.ahead import plot
from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.outlook import AheadKey
from pantry_tui.app.screens.page import Page
from pantry_tui.app.widgets.line import Key
from pantry_tui.app.widgets.linelist import LineList
from pantry_tui.services.batchwork import putup
from pantry_tui.services.books.rows import FoodAhead
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import whatif
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.stock import act, places, view
from tests.app.screens import all_lines, painted

TODAY = date(2026, 11, 25)

MONTHS = set(calendar.month_name)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        places.add(pantry, "larder", "pantry")
        line = "9 pint jars peaches, boiling-water canned, larder, 2026-08-10"
        putup.put_up(pantry, putup.read(pantry, line))
        yield pantry


def text_of(pilot: Pilot[None], id_: str) -> str:
    return str(pilot.app.screen.query_one(id_, Static).content)


def current(pilot: Pilot[None]) -> Key:
    line = pilot.app.screen.query_one(LineList).current
    assert line is not None
    return line.key


@pytest.mark.parametrize(("size", "where"), [((80, 24), "#plot"), ((120, 40), "#detail")])
async def test_supply_is_drawn_against_time_with_words_on_both_axes(
    p: Pantry, size: tuple[int, int], where: str
) -> None:
    async with PantryApp(p).run_test(size=size) as pilot:
        await pilot.press("y")
        await pilot.pause()
        assert current(pilot) == AheadKey("peaches")
        drawn = text_of(pilot, where)
        assert "peaches: servings by week" in drawn
        assert "█" in drawn
        assert "36 " in drawn
        assert re.search(r"now .*(Jan|Feb) .*harvest in July", drawn), "months on the line of time"
        pace = " ".join(text_of(pilot, "#word" if where == "#plot" else where).split())
        assert "one jar every four weeks lasts to July" in pace
        await pilot.press("ctrl+end")
        assert current(pilot) == AheadKey("whole household", food=False)
        assert "whole household" in text_of(pilot, where)
        await pilot.press("enter")
        assert isinstance(pilot.app.screen, Page)


async def test_what_if_is_asked_in_a_line_and_shown_side_by_side(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("y", "i", *"eat moon 3", "enter")
        await pilot.pause()
        assert "no food of your stores" in text_of(pilot, "#wrong")
        await pilot.press(*["backspace"] * 10, *"people 9, without peaches", "enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, Page)
        text = "\n".join(str(one.content) for one in pilot.app.screen.query(Static))
        assert "Supposed: 9 usually eat." in text
        assert re.search(r"peaches +.*\b0\.0 a week", text)
        assert re.search(r"now +then", text)
        await pilot.press("escape", "i", "escape")
        assert current(pilot) == AheadKey("peaches")


async def test_the_books_open_by_one_key(p: Pantry) -> None:
    act.discard(p, view.due(p)[0].code, 2, "seal failed")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("y", "b")
        await pilot.pause()
        text = "\n".join(str(one.content) for one in pilot.app.screen.query(Static))
        assert "What was lost" in text
        assert "seal failed" in text
        assert "0 + 9 made - 0 given - 2 lost" in text


async def test_a_batch_is_tasted_and_kept_apart_by_key(p: Pantry) -> None:
    code = view.due(p)[0].code
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("h", "3", *"less sugar", "enter")
        (batch,) = p.batches()
        assert str(batch.rated[-1]) == "change: less sugar"
        await pilot.press("k", *"[red]Maren", "enter")
        assert [row.reserved for row in view.due(p) if row.reserved] == ["[red]Maren"]
        shown = [line.row for line in all_lines(pilot) if line.row]
        assert {row.reserved for row in shown} == {"", "[red]Maren"}
        assert pilot.app.focused is pilot.app.screen.query_one(LineList)
        await pilot.press("z")
        assert not any(row.reserved for row in view.due(p))
        await pilot.press("k", "enter")
        assert [row.aside for row in view.due(p) if row.reserved] == ["for gift"]
    act.use(p, code, "8")
    act.give(p, code)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press(*code.lower(), "enter")
        await pilot.pause()
        await pilot.press("h", "1", "enter")
        assert str(batch.rated[-1]) != str(p.batches()[0].rated[-1]) == "again"


async def test_what_is_kept_is_free_again_by_the_same_key(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("k", "enter")
        table = pilot.app.screen.query_one(LineList)
        at = next(i for i, line in enumerate(all_lines(pilot)) if line.row and line.row.reserved)
        table.move_cursor(row=at)
        await pilot.pause()
        await pilot.press("k")
        assert not any(row.reserved for row in view.due(p))


def ahead(servings: float, *supply: float) -> FoodAhead:
    return FoodAhead(
        "plums",
        "fruit",
        servings,
        0,
        0,
        0,
        date(2027, 8, 1),
        None,
        0,
        0,
        0,
        supply,
        "",
        container="pint jars",
    )


def test_the_plot_begins_at_nought_and_fits_its_width() -> None:
    title, top, bottom, axis = plot(ahead(10, 10, 9, 9, 8), TODAY, 30, 2)
    assert title.startswith("plums")
    assert top.startswith("10 ██")
    assert bottom.startswith(" 0 ██"), "a small fall is no cliff"
    assert set(bottom[3:]) == {"█"}
    assert axis.endswith("harvest in August")
    for width in (30, 40, 78):
        assert all(
            len(line) <= width for line in plot(ahead(300, *range(300, 0, -9)), TODAY, width, 4)
        )
    assert plot(ahead(0, 0, 0), TODAY, 30, 4) == ["plums: none left"]


def test_every_food_of_the_outlook_can_be_drawn(p: Pantry) -> None:
    found = outlook(p)
    for one in (*found.foods, *found.groups, found.household):
        assert len(plot(one, TODAY, 60, 4)) == 6


async def test_what_if_says_all_of_its_example_and_cuts_no_food(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("y", "i")
        shown = " ".join(painted(pilot).split())
        assert whatif.EXAMPLE in shown
        assert f"{whatif.SHORT} " in painted(pilot)
        await pilot.press(*"away 3 to 9 jan", "enter")
        await pilot.pause()
        assert "then" in painted(pilot)
        assert "…" not in painted(pilot)


async def test_the_drawing_in_the_pane_has_room_and_says_what_its_line_means(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(120, 40)) as pilot:
        await pilot.press("y")
        pane = [line[82:].rstrip() for line in painted(pilot).splitlines()]
        (head,) = [line for line in pane if "servings by week" in line]
        assert head.endswith("─ needed")
        (axis,) = [line for line in pane if "now " in line and "harvest in" in line]
        assert axis.split()[-1] in MONTHS
