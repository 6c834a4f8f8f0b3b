"""The app as a person drives it: key counts, focus, the live reading, hostile names, sizes."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from pantry_tui.app.bindings import bindings, keymap
from pantry_tui.app.commands import COMMANDS, of, page, palette
from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.batch import BatchScreen
from pantry_tui.app.weeklines import DishKey, LeftOutKey, TakeKey
from pantry_tui.app.widgets.line import Key
from pantry_tui.core.log.payloads import Discard
from pantry_tui.core.words import State, Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import one_batch, places, view
from tests.app.screens import all_lines, table

TODAY = date(2026, 11, 25)


@pytest.fixture
def empty(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "empty.db")
    with open_pantry(tmp_path / "empty.db", TODAY) as p:
        yield p


def to_line(pilot: Pilot[None], kind: type[Key]) -> None:
    """Put the cursor on the first line of a kind."""
    keys = [line.key for line in all_lines(pilot)]
    table(pilot).move_cursor(row=next(i for i, key in enumerate(keys) if isinstance(key, kind)))


def said(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("SaidLine", Static).content)


def screen_text(pilot: Pilot[None]) -> str:
    """What stands on the screen, as text."""
    return "\n".join(
        "".join(segment.text for segment in strip)
        for strip in pilot.app.screen._compositor.render_strips()
    )


def in_store(p: Pantry) -> int:
    return sum(container.here for container in p.stock.containers.values())


async def test_the_due_list_is_there_at_launch_and_its_top_item_is_used_by_one_key(
    demo: Pantry,
) -> None:
    before = in_store(demo)
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        line = table(pilot).current
        assert line is not None
        assert line.row is not None
        assert line.row.verdict not in (Verdict.DISCARD, Verdict.DO_NOT_TASTE)
        assert pilot.app.focused is table(pilot)
        await pilot.press("u")
        assert in_store(demo) == before - 1
        assert line.row.container_ids[0] in said(pilot)
        assert pilot.app.focused is table(pilot)
        await pilot.press("z")
        assert in_store(demo) == before
        assert "Took back: used" in said(pilot)


def why(p: Pantry) -> str:
    """The reason of the last act."""
    payload = p.events[-1].payload
    assert isinstance(payload, Discard)
    return payload.why


async def test_what_must_go_stands_above_with_its_caution_and_cannot_be_used(
    demo: Pantry,
) -> None:
    before = in_store(demo)
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("ctrl+home")
        while table(pilot).current.row is None:  # type: ignore[union-attr]
            await pilot.press("down")  # past the notice of a warm place
        row = table(pilot).current.row  # type: ignore[union-attr]
        assert row is not None
        assert row.verdict is Verdict.DISCARD
        assert "Never taste" in screen_text(pilot)
        assert "food-safety authority" in screen_text(pilot)
        await pilot.press("u")
        assert "Not done" in said(pilot)
        assert in_store(demo) == before
        await pilot.press("d", "1")
        assert in_store(demo) == before - 1
        assert why(demo) == "past its date"
        assert pilot.app.focused is table(pilot)


async def test_a_reason_of_ones_own_is_typed(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("d", "0", *"dropped", "enter")
        assert why(demo) == "dropped"
        await pilot.press("d", "escape")
        assert why(demo) == "dropped"
        assert pilot.app.focused is table(pilot)


async def test_a_digit_jumps_and_one_key_opens(demo: Pantry) -> None:
    row = next(r for r in view.due(demo) if r.food == "runner beans" and r.place.endswith("wall"))
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press(row.code[0])
        await pilot.press(*row.code[1:].lower(), "enter")
        assert table(pilot).current.row.code == row.code  # type: ignore[union-attr]
        await pilot.press("o")
        assert "Opened" in said(pilot)
        opened = [r for r in one_batch.show(demo, row.code).rows if r.state is State.OPEN]
        assert opened[0].discard_after == date(2026, 11, 28)


async def test_thaw_and_move_take_one_key_and_a_choice(demo: Pantry) -> None:
    row = next(r for r in view.due(demo) if r.food == "peas")
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press(*row.code.lower(), "enter")
        await pilot.press("t")
        assert "Thawed" in said(pilot), said(pilot)
        jam = next(r for r in view.due(demo) if r.food == "strawberry jam" and r.place == "larder")
        await pilot.press(*jam.code.lower(), "enter")
        while getattr(table(pilot).current.row, "place", "") != "larder":  # type: ignore[union-attr]
            await pilot.press("down")
        await pilot.press("m", *"fri", "enter")
        assert "Moved" in said(pilot), said(pilot)


async def test_seven_jars_are_put_up_with_a_live_reading(demo: Pantry) -> None:
    before = in_store(demo)
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        box = pilot.app.screen.query_one("#line", Input)
        assert pilot.app.focused is box
        box.value = "7 pint jars runner beans, pressure canned, nowhere land"
        await pilot.pause()
        assert "not understood: nowhere land" in screen_text(pilot)
        await pilot.press("enter")
        assert box.value, "a line that cannot be booked stays"
        assert in_store(demo) == before
        box.value = "7 pint jars runner beans, pressure canned, larder, yesterday"
        await pilot.pause()
        assert "Wed 24 Nov 2027" in screen_text(pilot)
        await pilot.press("f2", "f5")
        assert box.value.startswith("7 pint"), "looking elsewhere loses nothing"
        await pilot.press("enter")
        assert in_store(demo) == before + 7
        assert box.value == ""
        code = demo.stock.batches[demo.events[-1].batch].code
        assert f"Write {code} on every lid" in screen_text(pilot)
        await pilot.press("ctrl+z")
        assert in_store(demo) == before


async def test_a_danger_is_refused_while_it_is_typed(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        box = pilot.app.screen.query_one("#line", Input)
        box.value = "7 pint jars runner beans, boiling-water canned, larder"
        await pilot.pause()
        assert "not possible" in screen_text(pilot)
        assert "pressure canner" in screen_text(pilot)


async def test_find_narrows_and_esc_shows_all_again(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.pause()  # the line of the small jobs comes after the list
        whole = len(all_lines(pilot))
        await pilot.press("slash", *"beans")
        await pilot.pause()
        assert 0 < len(all_lines(pilot)) < whole
        assert all("beans" in line.row.food for line in all_lines(pilot) if line.row)
        await pilot.press("enter", "escape")
        assert len(all_lines(pilot)) == whole


@pytest.mark.parametrize("size", [(120, 40), (80, 24), (40, 20), (20, 10)])
async def test_every_room_opens_at_every_size(demo: Pantry, size: tuple[int, int]) -> None:
    async with PantryApp(demo).run_test(size=size) as pilot:
        for key in ("S", "W", "p", "f2", "enter", "escape", "question_mark", "escape"):
            await pilot.press(key)
        await pilot.resize_terminal(80, 24)
        await pilot.pause()
        assert "until" in screen_text(pilot)
        assert pilot.app.focused is table(pilot)


async def test_the_week_is_accepted_by_one_key_and_a_day_eaten_by_one(demo: Pantry) -> None:
    before = in_store(demo)
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W", "a")
        assert "Accepted the week" in said(pilot)
        assert in_store(demo) == before, "accepting books nothing"
        lines = [line.key for line in all_lines(pilot)]
        mine = [take.containers[0] for take in weeks.week(demo).take if take.day == TODAY]
        await pilot.press("e")
        assert in_store(demo) < before
        assert all(take.day != TODAY for take in weeks.week(demo).take)
        assert mine
        await pilot.press("z")
        assert in_store(demo) == before
        assert [line.key for line in all_lines(pilot)] == lines


async def test_two_jars_of_one_line_stand_once_beside_the_meals(larder: Pantry) -> None:
    putup.put_up(larder, putup.read(larder, "2 4 oz jars pesto, in oil, fridge"))
    assert [take.code for take in weeks.week(larder).beside] == ["2A", "2A"]
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        assert [line.row.code for line in all_lines(pilot) if line.row] == ["2A"]


async def test_an_accepted_week_is_planned_anew_only_when_one_says_so(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W", "a", "a")
        assert "Plan it anew?" in screen_text(pilot)
        await pilot.press("escape")
        assert weeks.accepted(demo) is not None
        await pilot.press("a", "1")
        assert weeks.accepted(demo) is None


async def test_the_week_is_arranged_by_single_keys(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:

        def days() -> dict[str, str]:
            return {take.containers[0]: take.day.isoformat() for take in weeks.week(demo).take}

        await pilot.press("W")
        alone = [t for t in weeks.week(demo).take if not t.dish and not t.amount]
        free = {n for r in view.due(demo) if r.discard_after is None for n in r.container_ids}
        movable = [t for t in alone if free.issuperset(t.containers) and len(t.containers) == 1]
        name, on = next(
            (t.containers[0], t.day) for t in movable if t.day < TODAY + timedelta(days=5)
        )
        while table(pilot).current.ref != name:  # type: ignore[union-attr]
            await pilot.press("down")
        await pilot.press("plus")
        assert days()[name] == (on + timedelta(days=1)).isoformat()
        assert table(pilot).current.ref == name, "the cursor goes with it"  # type: ignore[union-attr]
        await pilot.press("minus", "k")
        assert "any day again" in said(pilot)
        await pilot.press("x")
        assert name not in days()
        to_line(pilot, LeftOutKey)
        await pilot.press("x")
        assert name in days()
        to_line(pilot, DishKey)
        await pilot.press("h")
        assert "2026-11-25" not in days().values()
        to_line(pilot, TakeKey)
        await pilot.press("i", "3", *"pot = 4 runner beans", "enter")
        assert "Added the dish pot" in said(pilot)
        await pilot.press("b", *"away friday", "enter")
        assert "2026-11-27" not in days().values()
        assert "nobody at home" in screen_text(pilot)


async def test_from_bulk_the_week_asks_how_much(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W", "slash", *"potatoes", "enter", "u")
        assert "How much" in screen_text(pilot)


async def test_several_are_marked_and_one_undo_takes_all_back(demo: Pantry) -> None:
    before = in_store(demo)
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("slash", *"beans", "enter")
        await pilot.press("space", "space", "space", "d", "9")
        assert in_store(demo) == before - 3
        await pilot.press("z")
        assert in_store(demo) == before
        assert "and 2 more" in said(pilot)


async def test_bulk_asks_how_much(demo: Pantry) -> None:
    row = next(r for r in view.due(demo) if r.amount and r.verdict is not Verdict.UNKNOWN)
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press(*row.code.lower(), "enter", "u")
        await pilot.press(*"2lb", "enter")
        assert "Used 2 lb" in said(pilot), said(pilot)
        after = next(r for r in view.due(demo) if r.code == row.code)
        assert after.amount != row.amount


async def test_the_batch_shows_dates_why_history_and_sources(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(100, 60)) as pilot:
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, BatchScreen)
        text = screen_text(pilot)
        for word in ("Dates", "Why", "History", "Sources", "best by"):
            assert word in text
        await pilot.press("escape")
        assert pilot.app.focused is table(pilot)


async def test_undoing_a_put_up_leaves_its_batch_screen(empty: Pantry) -> None:
    places.add(empty, "larder", "pantry")
    putup.put_up(empty, putup.read(empty, "2 pint jars peaches, boiling-water canned, larder"))
    async with PantryApp(empty).run_test(size=(80, 24)) as pilot:
        await pilot.press("enter")
        await pilot.press("z")
        assert "Take it back?" in screen_text(pilot), "it was not done at this sitting"
        await pilot.press("1")
        await pilot.pause()
        await pilot.pause()
        assert not isinstance(pilot.app.screen, BatchScreen)


async def test_an_empty_store_says_what_to_do_and_a_place_is_added(empty: Pantry) -> None:
    async with PantryApp(empty).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert "Which units" in screen_text(pilot)
        await pilot.press("2")
        assert "How high do you live" in screen_text(pilot)
        pilot.app.screen.query_one(Input).value = "1800 ft"
        await pilot.press("enter")
        pilot.app.screen.query_one(Input).value = "4"
        await pilot.press("enter")
        assert (empty.altitude_ft, empty.people, empty.bare_degree) == (1800, 4, "C")
        assert "add a place" in screen_text(pilot)
        for key in ("u", "o", "d", "enter"):
            await pilot.press(key)
        assert "Not done" in said(pilot)
        await pilot.press("S", "a")
        pilot.app.screen.query_one(Input).value = "shelf 1, tropical"
        await pilot.press("enter")
        assert pilot.app.screen.query_one(Input).value == "shelf 1, tropical", "nothing is lost"
        pilot.app.screen.query_one(Input).value = "shelf 1, pantry, 60F"
        await pilot.press("enter")
        assert list(empty.place_paths().values()) == ["shelf 1"]


@pytest.mark.parametrize(("key", "grey"), [("1", "for example 900 ft"), ("2", "for example 300 m")])
async def test_the_first_evening_asks_the_units_before_it_speaks_in_one(
    empty: Pantry, key: str, grey: str
) -> None:
    async with PantryApp(empty).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert " ft" not in screen_text(pilot)
        await pilot.press(key)
        assert pilot.app.screen.query_one(Input).placeholder == grey
        pilot.app.screen.query_one(Input).value = "550"
        await pilot.press("enter")
        await pilot.press("escape")
        kept = (550, "F") if key == "1" else (1804, "C")
        assert (empty.altitude_ft, empty.bare_degree) == kept, "kept at Esc"


@pytest.mark.parametrize(
    "name", ["beans [/x]", "box [A] [b]5 [kg]", "\x1b[31mred", "🫙 jar", "مرحبا", "x" * 500]
)
async def test_hostile_names_stand_literally_on_every_screen(empty: Pantry, name: str) -> None:
    places.add(empty, f"larder {name}"[:300], "pantry")
    reading = putup.from_flags(
        empty,
        food=name,
        method="dried",
        place=next(iter(empty.place_paths().values())),
        count=2,
        group="vegetable",
        acidity="low-acid",
        note=name,
    )
    putup.put_up(empty, reading)
    async with PantryApp(empty).run_test(size=(100, 30), notifications=True) as pilot:
        shown = " ".join(name.replace("\x1b", " ").split()).lower()[:8]
        assert shown in screen_text(pilot)
        for key in (
            "S",
            "W",
            "l",
            "D",
            "enter",
            "escape",
            "u",
            "z",
            "s",
            "escape",
            "y",
            "m",
            "escape",
            "D",
            "c",
            "1",
            "f",
            "escape",
            "escape",
            "escape",
            "D",
            "space",
            "u",
            "z",
            "d",
            "1",
            "m",
            "escape",
            "o",
        ):
            await pilot.press(key)
            await pilot.pause()
        assert "[" in screen_text(pilot) or "[" not in name


def test_every_key_comes_from_the_one_table() -> None:
    for screen in ("due", "shelves", "week", "batch", "putup", "count", "log", "outlook"):
        keys = [key for command in of(screen) for key in command.key.split(",")]
        assert len(keys) == len(set(keys)), f"{screen}: a key means two things"
        assert {one.id for one in palette(screen)} <= {one.id for one in COMMANDS}
        assert all(command.tip for command in of(screen))
        assert bindings(screen)


def test_a_person_may_have_other_keys() -> None:
    good, wrong = keymap({"use": "ctrl+o", "undo": "q", "nonsense": "k"})
    assert good == {"use": "ctrl+o"}
    assert len(wrong) == 2
    assert "nonsense" in wrong[0]
    assert "quit" in wrong[1]
    assert {one["id"] for one in page()} == {command.id for command in COMMANDS}


async def test_own_keys_come_from_the_settings_file(demo: Pantry, away_from_home: Path) -> None:
    folder = away_from_home / "config" / "pantry-tui"
    folder.mkdir(parents=True)
    (folder / "settings.toml").write_text('[keys]\nuse = "ctrl+o"\nnonsense = "k"\n')
    before = in_store(demo)
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert "nonsense" in said(pilot)
        await pilot.press("ctrl+o")
        assert in_store(demo) == before - 1
