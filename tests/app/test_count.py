"""The round in the app: one key where it agrees, digits where it does not, nothing lost."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.count import CountScreen
from pantry_tui.app.widgets.linelist import LineList
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.stock import act, places, view
from pantry_tui.services.stock import count as rounds
from tests.app.screens import all_lines, painted
from tests.furnished import furnished

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    with furnished(
        tmp_path,
        TODAY,
        lines=(
            "4 pint jars peaches, boiling-water canned, larder",
            "12 pint jars runner beans, pressure canned, larder",
            "2 jars strawberry jam, jam, larder",
        ),
    ) as pantry:
        yield pantry


def counted(pilot: Pilot[None]) -> list[str]:
    return [line.cells[-1][0] for line in all_lines(pilot)]


def counts(p: Pantry) -> dict[str, int]:
    return {row.food: row.count for row in view.due(p)}


async def test_a_place_is_counted_with_one_key_a_line(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1")
        assert isinstance(pilot.app.screen, CountScreen)
        await pilot.press("enter")  # peaches agree
        await pilot.press("1", "0", "enter")  # ten beans, not twelve
        assert counted(pilot) == ["4", "10 !", ""]
        await pilot.press("space")  # jam agrees
        await pilot.press("f", "f")
        await pilot.pause()
        assert counts(p) == {"peaches": 4, "runner beans": 10, "strawberry jam": 2}
        assert p.stock.places[next(iter(p.stock.places))].checked == TODAY


async def test_it_is_left_and_goes_on_at_the_same_line(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1", "enter")
        await pilot.press("escape")
        assert not isinstance(pilot.app.screen, CountScreen)
    with open_pantry(p.path, TODAY) as again:
        async with PantryApp(again).run_test(size=(80, 24)) as pilot:
            await pilot.press("c", "1")
            assert counted(pilot) == ["4", "", ""]
            assert pilot.app.screen.query_one(LineList).cursor_row == 1
            await pilot.press("up", "backspace")
            assert counted(pilot) == ["", "", ""]


async def test_the_places_say_which_count_is_begun(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c")
        assert "larder: never counted" in painted(pilot)
        await pilot.press("1", "enter", "enter", "escape", "c")
        assert "larder: begun, 2 of 3 lines counted" in painted(pilot)
        shown = pilot.app.screen.query_one(LineList)
        assert shown.current is not None
        assert shown.source.where(shown.current.key) == 0, "on the one to count next"


async def test_what_is_unlisted_is_added_and_a_wrong_line_is_mended(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1", "plus")
        pilot.app.screen.query_one(Input).value = "1 jar zzyzx, dried"
        await pilot.press("enter")
        assert pilot.app.screen.query_one(Input).value == "1 jar zzyzx, dried", "nothing is lost"
        pilot.app.screen.query_one(Input).value = "1 jar plums, boiling-water canned"
        await pilot.press("enter")
        await pilot.press("f", "f")
        await pilot.pause()
        assert counts(p)["plums"] == 1


async def test_z_takes_back_the_last_count_before_anything_that_was_booked(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("u")
        booked = len(p.events)
        await pilot.press("c", "1", "enter", "5", "enter", "plus")
        pilot.app.screen.query_one(Input).value = "1 jar plums, boiling-water canned"
        await pilot.press("enter", "z")
        assert "plums" in str(pilot.app.screen.query_one("SaidLine", Static).content)
        assert len(counted(pilot)) == 3
        await pilot.press("z")
        assert counted(pilot)[1] == ""
        assert counted(pilot)[0] != ""
        assert pilot.app.screen.query_one(LineList).cursor_row == 1
        await pilot.press("z")
        assert counted(pilot) == ["", "", ""]
        assert len(p.events) == booked
        await pilot.press("z")
        assert len(p.events) == booked + 1, "then what was booked before"


async def test_a_round_in_which_nothing_was_counted_is_not_booked(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1", "f")
        assert "Count a line first" in str(pilot.app.screen.query_one("SaidLine", Static).content)
        assert isinstance(pilot.app.screen, CountScreen)
        assert p.stock.places[next(iter(p.stock.places))].checked is None


async def test_a_key_does_not_overwrite_what_another_window_counted(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1")
        with open_pantry(p.path, TODAY) as other:
            larder = other.find_place("larder")
            line = rounds.lines(other, larder)[0]
            rounds.count(other, larder, line.key, 3)
        await pilot.press("enter")
        said = str(pilot.app.screen.query_one("SaidLine", Static).content)
        assert "counted in another window" in said
        assert counted(pilot)[0] == "3 !", "and now it is shown"
        assert pilot.app.screen.query_one(LineList).cursor_row == 0
        await pilot.press("enter")
        assert counted(pilot)[0] == "4"


async def test_who_books_a_count_has_seen_all_of_it(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1", "enter", "f")
        with open_pantry(p.path, TODAY) as other:
            larder = other.find_place("larder")
            line = rounds.lines(other, larder)[1]
            rounds.count(other, larder, line.key, 3)
        await pilot.press("f")
        await pilot.pause()
        assert counts(p) == {"peaches": 4, "runner beans": 12, "strawberry jam": 2}
        assert counted(pilot)[:2] == ["4", "3 !"]
        await pilot.press("f", "f")
        await pilot.pause()
        assert counts(p)["runner beans"] == 3


@pytest.mark.parametrize("key", ["enter", "escape", "1", "0", "D", "x", "space"])
async def test_only_the_key_of_the_count_books_what_differs(p: Pantry, key: str) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1", "enter", "9", "enter", "enter", "f")
        assert "9" in painted(pilot)
        await pilot.press(key)
        assert counts(p)["runner beans"] == 12
        if not isinstance(pilot.app.screen, CountScreen):
            await pilot.press("escape")
        assert counted(pilot) == ["4", "9 !", "2"], "and what was counted is kept"


@pytest.mark.parametrize("key", ["enter", "escape"])
async def test_who_leaves_the_differences_is_told_that_nothing_is_booked(
    p: Pantry, key: str
) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1", "enter", "9", "enter", "enter", "f", key)
        await pilot.pause()
        assert "Nothing is booked yet" in painted(pilot)
        await pilot.press("f", "f")
        await pilot.pause()
        assert "Nothing is booked yet" not in painted(pilot)
        assert counts(p)["runner beans"] == 9


async def test_a_count_of_some_lines_does_not_say_that_the_place_was_counted(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1", "enter", "f")
        assert "2 lines are not counted yet" in painted(pilot)
        await pilot.press("f")
        await pilot.pause()
        assert "never counted whole, in part today" in painted(pilot)
        assert p.stock.places[next(iter(p.stock.places))].checked is None
        await pilot.press("1", "enter", "enter", "enter", "f")
        await pilot.pause()
        assert "larder: counted today" in painted(pilot)


async def test_what_was_counted_is_forgotten_by_two_keys_and_not_by_one(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1", "enter", "x", "enter")
        await pilot.press("escape")
        assert counted(pilot) == ["4", "", ""], "Enter alone takes nothing there"
        await pilot.press("x", "1")
        await pilot.pause()
        await pilot.press("1")
        assert counted(pilot) == ["", "", ""]


async def test_enter_where_all_is_counted_says_what_is_next_and_changes_no_count(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1", "enter", "enter", "9", "enter")
        assert "All is counted here: f books it" in said(pilot)
        before = counted(pilot)
        assert before[-1].startswith("9")
        await pilot.press("enter", "enter")
        assert counted(pilot) == before
        assert "All is counted here: f books it" in said(pilot)


def said(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("SaidLine", Static).content)


async def test_a_lot_that_is_weighed_out_says_its_weight_and_no_digit_makes_two_of_it(
    p: Pantry,
) -> None:
    places.add(p, "cellar", "cellar")
    putup.put_up(p, putup.read(p, "20 lb potatoes, cellar"))
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press("c")
        at = next(str(n) for n in range(1, 9) if f"{n} cellar" in painted(pilot))
        await pilot.press(at)
        assert "20 lb" in painted(pilot)
        await pilot.press("3")
        assert "one lot of 20 lb" in painted(pilot)
        assert [one.seen for one in rounds.lines(p, p.find_place("cellar"))] == [None]
        await pilot.press("enter")
        assert [one.seen for one in rounds.lines(p, p.find_place("cellar"))] == [1]


async def test_more_than_was_ever_put_up_is_asked_about_before_it_is_booked(p: Pantry) -> None:
    booked = len(p.events)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1", "7")
        assert "7 of 2A peaches, and 4 were ever put up: a slip?" in said(pilot)
        await pilot.press("enter", "f", "f")
        await pilot.pause()
        asked = " ".join(painted(pilot).split())
        assert "7 of 2A peaches are counted, and 4 were ever put up. Is that so?" in asked
        await pilot.press("1")
        assert len(p.events) == booked
        await pilot.press("f", "f", "2")
        await pilot.pause()
    assert counts(p)["peaches"] == 7, "jars that nobody recorded may be found"


async def test_what_was_taken_and_is_found_again_is_no_slip(p: Pantry) -> None:
    act.use(p, "2A", "2")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "1", "4")
        assert "a slip?" not in painted(pilot)
        await pilot.press("f", "f")
        await pilot.pause()
    assert counts(p)["peaches"] == 4


async def test_the_head_of_a_count_has_room_and_one_place_is_named_once(p: Pantry) -> None:
    places.add(p, "the long shelf behind the cellar door", "pantry")
    putup.put_up(p, putup.read(p, "2 jars peach jam, jam, the long shelf behind the cellar door"))
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("c", "2")
        top, heads = painted(pilot).splitlines()[:2]
        assert top.rstrip().endswith("1 to go")
        assert "place" not in heads
        assert heads.split() == ["code", "food", "size", "expected", "counted"]
