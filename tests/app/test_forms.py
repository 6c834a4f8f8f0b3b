"""Everything that a command can change can be changed inside the app, in a small form."""

from __future__ import annotations

import stat
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from pantry_tui.app.commands import BY_NAME
from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens import byname
from pantry_tui.app.screens import printing as asked
from pantry_tui.app.screens.ask import Choose, TypeLine
from pantry_tui.app.screens.page import Page, keys_of
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.output import printing
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import appetite, dishes, substitute
from pantry_tui.services.stock import act, places, view
from tests.app.screens import painted
from tests.furnished import furnished

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    with furnished(
        tmp_path,
        TODAY,
        ("larder", "shelf 2"),
        (
            "4 pint jars peaches, boiling-water canned, larder, 2026-08-10",
            "3 pint jars runner beans, pressure canned, larder, 2026-08-10",
        ),
    ) as pantry:
        yield pantry


async def choose(pilot: Pilot[None], words: str) -> None:
    """Take the first option that fits."""
    await pilot.press(*words, "enter")
    await pilot.pause()


async def write(pilot: Pilot[None], text: str) -> None:
    pilot.app.screen.query_one(Input).value = text
    await pilot.press("enter")
    await pilot.pause()


def open_by_name(pilot: Pilot[None], id_: str) -> None:
    app = pilot.app
    assert isinstance(app, PantryApp)
    app.action_by_name(id_)


async def test_the_record_of_a_batch_is_put_right_field_by_field(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("w")
        code = str(pilot.app.screen.query_one("#title", Static).content)[:2]
        await choose(pilot, "day made")
        await write(pilot, "31 Dec 2026")
        assert "Not done" in painted(pilot), "it lies ahead"
        await write(pilot, "1 Aug 2026")
        assert p.batch(code).made == date(2026, 8, 1)  # type: ignore[union-attr]
        assert "Corrected" in painted(pilot)
        await choose(pilot, "note")
        await write(pilot, "lower bed")
        assert p.batch(code).note == "lower bed"  # type: ignore[union-attr]
        await choose(pilot, "how it")
        await write(pilot, "minutes=25")
        assert dict(p.batch(code).process)["minutes"] == "25"  # type: ignore[union-attr]
        await pilot.press("escape", "z", "z", "z")
        assert p.batch(code).made == date(2026, 8, 10)  # type: ignore[union-attr]


async def test_a_wrong_food_and_method_are_put_right_and_a_count_says_how(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("w")
        code = str(pilot.app.screen.query_one("#title", Static).content)[:2]
        await choose(pilot, "food")
        await write(pilot, "plums")
        await choose(pilot, "method")
        await choose(pilot, "jam")
        batch = p.batch(code)
        assert batch is not None
        assert (batch.food.name, batch.method.value) == ("plums", "jam")
        await choose(pilot, "count")
        await write(pilot, "9")
        assert "count the place" in " ".join(painted(pilot).split())


async def test_a_place_is_renamed_changed_and_removed(p: Pantry) -> None:
    places.add(p, "attic", "room")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("S", "home", "w")
        assert "attic" in painted(pilot)
        await choose(pilot, "name")
        await write(pilot, "loft")
        assert "loft" in p.place_paths().values()
        await choose(pilot, "climate")
        await choose(pilot, "cellar")
        assert p.find_place("loft").climate.value == "cellar"
        await choose(pilot, "room for")
        await write(pilot, "many")
        assert "Not done" in painted(pilot)
        await write(pilot, "40")
        assert p.find_place("loft").capacity == 40
        await choose(pilot, "remove")
        await choose(pilot, "nothing")
        assert "loft" not in p.place_paths().values()
        await pilot.press("escape")
        assert pilot.app.focused is not None


async def test_a_place_that_holds_something_says_why_it_stays(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        open_by_name(pilot, "place")
        await pilot.pause()
        await choose(pilot, "larder")
        await choose(pilot, "remove")
        await choose(pilot, "nothing")
        assert "7 containers stand in larder" in " ".join(painted(pilot).split())
        await choose(pilot, "merge")
        await choose(pilot, "shelf 2")
        assert list(p.place_paths().values()) == ["shelf 2"]
        assert {row.place for row in view.due(p)} == {"shelf 2"}


async def test_the_table_ceilings_dishes_and_stand_ins_are_said_in_the_app(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("comma", *"who eats", "enter")
        await choose(pilot, "other days")
        await write(pilot, "away friday")
        assert dict(appetite.table(p)) == {date(2026, 11, 27): 0}
        await pilot.press("1")
        await write(pilot, "usual")
        assert not dict(appetite.table(p))
        await pilot.press("escape", "comma", *"how much", "enter")
        await choose(pilot, "one food")
        await write(pilot, "peaches 1")
        assert appetite.appetite(p).food_ceiling("peaches") == 1
        await pilot.press("escape", "comma", *"your dishes", "enter")
        await choose(pilot, "a new dish")
        await write(pilot, "bean soup = 4 runner beans")
        assert [one.name for one in dishes.dishes(p)] == ["bean soup"]
        await choose(pilot, "bean soup")
        assert pilot.app.screen.query_one(Input).value == "bean soup = 4 runner beans"
        await write(pilot, "drop")
        assert not dishes.dishes(p)
        await pilot.press("escape", "comma", *"what stands", "enter")
        await choose(pilot, "for another")
        await write(pilot, "peaches with plums and pears")
        assert substitute.substitutes(p) == {"peaches": ("plums", "pears")}


async def test_foods_and_rules_of_ones_own_are_added_and_none_is_looser(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("comma", *"foods and", "enter")
        await choose(pilot, "a food")
        await write(pilot, "zzyzx")
        assert "Not done" in painted(pilot)
        await write(pilot, "zzyzx, vegetable, low-acid")
        assert p.facts("zzyzx") is not None
        await choose(pilot, "how long")
        await write(pilot, "in oil, garlic, fridge, 6 months, safety")
        assert "Not done" in painted(pilot), "never looser than published"
        await write(pilot, "dried, zzyzx, pantry, 2 months, quality, it dulls")
        assert [rule.food for rule in p.book_of_rules.own] == ["zzyzx"]


async def test_where_all_of_a_batch_went_is_a_page(p: Pantry) -> None:
    code = next(row.code for row in view.due(p) if row.food == "peaches")
    act.give(p, f"{code}/1", to="Aunt Sunniva")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press(*code.lower(), "enter")
        open_by_name(pilot, "recall")
        await pilot.pause()
        assert isinstance(pilot.app.screen, Page)
        assert "to Aunt Sunniva" in painted(pilot)


async def test_the_door_sheet_goes_to_the_printer_or_a_file(
    p: Pantry, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    paper = tmp_path / "paper.txt"
    program = tmp_path / "bin" / "lp"
    program.parent.mkdir()
    program.write_text(f"#!/bin/sh\ncat > {paper}\n")
    program.chmod(program.stat().st_mode | stat.S_IEXEC)
    monkeypatch.setenv("PATH", f"{program.parent}:/usr/bin:/bin")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("f12", "1", "1")
        await choose(pilot, "the printer")
        assert "peaches" in paper.read_text()
        page = tmp_path / "door.html"
        await pilot.press("f12", "1", "1")
        await choose(pilot, "a file")
        await write(pilot, str(page))
        assert "<!doctype html>" in page.read_text()
        await pilot.press("f12", "1", "1")
        await choose(pilot, "a file")
        await write(pilot, str(page))
        assert "Not done" in painted(pilot), "nothing is overwritten"
        await write(pilot, str(tmp_path / "door.txt"))
        assert "<html" not in (tmp_path / "door.txt").read_text()


def test_each_paper_has_a_name_of_its_own_for_its_file() -> None:
    kinds = [*asked.SHEETS, asked.TODAY, *asked.ASKED]
    names = [asked.file_name(one) for one in (*kinds, "basement › shelf 2")]
    assert len(set(names)) == len(names)
    assert asked.file_name(asked.DOOR) == "door"
    assert names[-1] == "count-shelf-2"


async def test_what_is_no_door_sheet_is_not_offered_a_file_of_that_name(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("f12", "1")
        await choose(pilot, "what is open")
        await choose(pilot, "a file")
        assert pilot.app.screen.query_one(Input).placeholder == "~/opened.html"


def test_a_printer_that_fails_says_what_to_do_instead(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    program = tmp_path / "lp"
    program.write_text("#!/bin/sh\necho no default destination >&2; exit 1\n")
    program.chmod(program.stat().st_mode | stat.S_IEXEC)
    monkeypatch.setenv("PATH", f"{tmp_path}:/usr/bin:/bin")
    with pytest.raises(Refused, match=r"no default destination.*write it to a file"):
        printing.to_printer("text", "the sheet")
    monkeypatch.setenv("PATH", str(tmp_path / "nothing"))
    assert printing.printer() == ""
    with pytest.raises(Refused, match="no printer program"):
        printing.to_printer("text", "the sheet")


def test_the_palette_names_what_has_no_key_and_the_keys_list_it() -> None:
    assert {one.id for one in BY_NAME} == set(byname.ALL)
    assert all(one.word in keys_of("due") for one in BY_NAME)


async def test_each_of_them_opens_from_every_room_and_is_left_with_esc(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        for room in ("D", "S", "W", "y", "l"):
            await pilot.press(room)
            deep = len(pilot.app.screen_stack)
            for one in BY_NAME:
                open_by_name(pilot, one.id)
                await pilot.pause()
                assert len(pilot.app.screen_stack) == deep + 1, one.id
                await pilot.press("escape")
                assert len(pilot.app.screen_stack) == deep, one.id


async def test_what_settles_a_doubt_leaves_the_form(p: Pantry) -> None:
    line = "2 pint jars plums, boiling-water canned, larder, 2026-08-10, minutes=5"
    code = putup.put_up(p, putup.read(p, line)).code
    batch = p.batch(code)
    assert batch is not None
    assert batch.doubt
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press(*code.lower(), "w")
        await choose(pilot, "note")
        await write(pilot, "lower bed")
        assert "put right" in painted(pilot), "still in doubt: the form comes back"
        await choose(pilot, "how it")
        await write(pilot, "minutes=25, altitude=500 ft, seal=tight, pack=hot")
        now = p.batch(code)
        assert now is not None
        assert now.doubt == ()
        assert not isinstance(pilot.app.screen, Choose | TypeLine)
        assert "Corrected" in painted(pilot)
