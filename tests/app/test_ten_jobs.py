"""The ten jobs of an evening, done by somebody who reads only what stands on the screen: no key is
pressed that the screen before it did not name."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input

from pantry_tui.app.main import PantryApp
from pantry_tui.core.log.events import Did
from pantry_tui.core.words import State
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import view
from tests.app.screens import painted, table
from tests.furnished import furnished

TODAY = date(2026, 11, 25)
NAMES = ("Enter", "Esc", "Up")


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    lines = [
        "7 pint jars peaches, boiling-water canned, larder, 2026-08-10",
        "1 crock sauerkraut, lactic ferment, larder, 2026-10-20",
        "2 jars strawberry jam, jam, larder, 2025-09-10",
    ]
    beans = "1 pint jar runner beans, pressure canned, rack, 2026-09-{:02}"
    lines += [beans.format(day) for day in range(1, 21)]
    with furnished(tmp_path, TODAY, ("larder", "rack", "shelf 2"), lines) as pantry:
        yield pantry


@pytest.fixture
def demo(tmp_path: Path) -> Iterator[Pantry]:
    build_demo(tmp_path / "demo.db", TODAY)
    with open_pantry(tmp_path / "demo.db", TODAY) as pantry:
        yield pantry


class Reader:
    """Presses what the screen names, and counts the keys."""

    def __init__(self, pilot: Pilot[None]) -> None:
        self.pilot, self.keys = pilot, 0

    @property
    def shown(self) -> str:
        return painted(self.pilot).replace("\u00a0", " ")

    async def press(self, word: str, *keys: str) -> None:
        """`word` stands on the screen: a key and what it does, "u use"; that key is pressed, or
        those of its kind that are given."""
        assert re.search(rf"(?<!\w){re.escape(word)}", self.shown), f"{word!r} in\n{self.shown}"
        first = word.split()[0]
        named = first.lower() if first in NAMES or first[1:].isdigit() else first
        named = {"/": "slash", ",": "comma"}.get(named, named)
        await self.pilot.press(*(keys or (named,)))
        await self.pilot.pause()
        self.keys += len(keys or (named,))

    async def write(self, text: str) -> None:
        """What is typed in words is no key of the app."""
        self.pilot.app.screen.query_one(Input).value = text
        await self.pilot.pause()


def left(p: Pantry, food: str, place: str = "") -> int:
    return sum(r.count for r in view.due(p) if r.food == food and r.place.endswith(place))


def code_of(p: Pantry, food: str) -> str:
    return next(row.code for row in view.due(p) if row.food == food)


def last(p: Pantry) -> Did:
    return p.events[-1].did


async def test_use_the_top_one(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        reader = Reader(pilot)
        await reader.press("u use")
        assert last(p) is Did.USE
        assert reader.keys == 1


async def test_open_by_its_lid_code(p: Pantry) -> None:
    code = code_of(p, "peaches")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        reader = Reader(pilot)
        await reader.press("0-9 lid code", *code.lower())
        assert f"Lid code {code}" in reader.shown
        await reader.press("o open")
        assert [r.code for r in view.due(p) if r.state is State.OPEN] == [code]
        assert reader.keys == len(code) + 1


async def test_move_three_of_seven(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        reader = Reader(pilot)
        await reader.press("0-9 lid code", *code_of(p, "peaches").lower())
        await reader.press("m move")
        await reader.press("digits, + - * say how many", "3")
        options = re.findall("(?:larder|rack|shelf 2) *$", reader.shown, re.MULTILINE)
        down = [one.strip() for one in options[-3:]].index("shelf 2") * ["down"]
        await reader.press("↑ ↓ Enter takes one", *down, "enter")
        assert left(p, "peaches", "shelf 2") == 3
        assert left(p, "peaches", "larder") == 4


async def test_count_twenty_lines(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        reader = Reader(pilot)
        await reader.press("c count")
        at = re.search(r"(\d) rack", reader.shown)
        assert at
        await reader.press("take one", at[1])
        assert "20 to go in rack" in reader.shown
        begun = reader.keys
        for _ in range(20):
            await reader.press("Enter agrees")
        await reader.press("f book")
        assert last(p) is Did.COUNT
        assert reader.keys - begun == 21
        assert "Checked rack: all as expected" in reader.shown, (
            "what came of it stands beside the next question"
        )
        assert "Count which place?" in reader.shown
        await reader.press("z undo")
        assert last(p) is Did.UNDO
        assert "Took back" in reader.shown


@pytest.mark.parametrize("wide", [80, 120])
async def test_accept_the_week_and_mark_a_day_eaten(demo: Pantry, wide: int) -> None:
    p = demo
    async with PantryApp(p).run_test(size=(wide, 24)) as pilot:
        reader = Reader(pilot)
        await reader.press("W week")
        await reader.press("a accept")
        assert weeks.accepted(p) is not None
        await reader.press("e eaten")
        assert weeks.week(p).eaten[0][0] == TODAY
        assert "Wed 25 Nov eaten: " in reader.shown
        await reader.press("v picture")
        assert "Eaten:" in reader.shown
        assert "5K chicken" in reader.shown
        if wide == 80:
            today = reader.shown.split("Wed 25 Nov")[1].split("Thu 26 Nov")[0]
            assert "nothing from the stores" not in today
        await reader.press("z undo", "z", "z")
        assert "Eaten:" not in reader.shown


async def test_put_up_again_like_last_time(p: Pantry) -> None:
    before = left(p, "sauerkraut")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        reader = Reader(pilot)
        await reader.press("p put up")
        await reader.press("Up earlier")
        await reader.press("Enter books it")
        assert last(p) is Did.PUT_UP
        assert left(p, "sauerkraut") == before + 1
        assert reader.keys == 3


async def test_find_and_discard(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        reader = Reader(pilot)
        await reader.press("/ find")
        await reader.write("strawberry")
        await pilot.press("enter")
        await reader.press("d discard")
        await reader.press("takes one", "4")
        assert last(p) in (Did.DISCARD, Did.SIGN)
        assert "(mould)" in reader.shown, "the reason that one key chose is said again"
        await reader.press("Enter detail")
        assert left(p, "strawberry jam") == 1


async def test_fill_a_crock_into_jars(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        reader = Reader(pilot)
        await reader.press("0-9 lid code", *code_of(p, "sauerkraut").lower())
        await reader.press("f ready")
        await reader.write("6 quart jars, larder")
        await reader.press("Enter does it")
        jars = [r for r in view.due(p) if r.food == "sauerkraut" and r.state is State.SEALED]
        assert sum(row.count for row in jars) == 6


async def test_print_the_sheet_for_the_door(p: Pantry, tmp_path: Path) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        reader = Reader(pilot)
        await reader.press("F12 print, files")
        await reader.press("1  print: the door sheet")
        await reader.press("1  the sheet for the door")
        at = re.search(r"(\d)  a file", reader.shown)
        assert at
        await reader.press("takes one", at[1])
        await reader.write(str(tmp_path / "door.txt"))
        await reader.press("Enter does it")
        assert "Past best" in (tmp_path / "door.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize("size", [(40, 20), (80, 12)])
async def test_where_not_all_has_room_the_foot_leads_to_all_keys(
    p: Pantry, size: tuple[int, int]
) -> None:
    async with PantryApp(p).run_test(size=size) as pilot:
        await Reader(pilot).press("? more keys", "question_mark")
        assert "Use one, the oldest" in painted(pilot)


# -- keys of one's own -----------------------------------------------------------------------------


async def test_the_screen_names_the_keys_that_one_has_given_oneself(
    p: Pantry, away_from_home: Path
) -> None:
    settings(away_from_home, '[keys]\nuse = "ctrl+t"\nweek = "ctrl+w"\n')
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        reader = Reader(pilot)
        await reader.press("Ctrl+W week", "ctrl+w")
        assert "Ctrl+T use" in reader.shown
        await pilot.press("escape")
        assert "u use" not in reader.shown
        await reader.press("Ctrl+T use", "ctrl+t")
        assert last(p) is Did.USE


async def test_where_letters_search_each_stands_behind_its_full_stop(
    p: Pantry, away_from_home: Path
) -> None:
    settings(away_from_home, 'letters = "search"\n')
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        reader = Reader(pilot)
        assert ".u use" in reader.shown
        await reader.press(".u use", "full_stop", "u")
        assert last(p) is Did.USE
        assert table(pilot).has_focus


def settings(home: Path, text: str) -> None:
    folder = home / "config" / "pantry-tui"
    folder.mkdir(parents=True)
    (folder / "settings.toml").write_text(text, encoding="utf-8")
