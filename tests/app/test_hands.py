"""The app in wet hands: nothing typed is lost, answers hide no keys, every act suits several."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from pantry_tui.app.commands import of
from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.batch import BatchScreen
from pantry_tui.app.screens.jobs import JobKey
from pantry_tui.app.screens.meant import counted
from pantry_tui.app.weeklines import DishKey, TakeKey, ThawKey
from pantry_tui.app.widgets.line import Line
from pantry_tui.core.words import State, Verdict
from pantry_tui.services.batchwork import putup, tending, timer
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import wishes
from pantry_tui.services.stock import places, view
from pantry_tui.services.stock.correct import correct
from tests.app.screens import all_lines, table

TODAY = date(2026, 11, 25)
LINES = (
    "6 pint jars peaches, boiling-water canned, larder, 2026-08-10",
    "4 pint jars runner beans, pressure canned, larder, 2026-09-01",
    "3 pint jars salsa, boiling-water canned, larder, 2026-09-01",
    "5 bags peas, frozen, freezer, 2026-07-01",
    "4 bags strawberries, frozen, freezer, 2026-07-01",
    "2 boxes lasagne, cooked meal, fridge, 2026-11-01",
    "2 crocks sauerkraut, lactic ferment, larder, 2026-11-20",
)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge"), ("freezer", "freezer")):
            places.add(pantry, name, climate)
        for line in LINES:
            putup.put_up(pantry, putup.read(pantry, line))
        yield pantry


def current(pilot: Pilot[None]) -> Line:
    line = table(pilot).current
    assert line is not None
    return line


def said(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("SaidLine", Static).content)


def screen_text(pilot: Pilot[None]) -> str:
    strips = pilot.app.screen._compositor.render_strips()
    text = "\n".join("".join(segment.text for segment in strip) for strip in strips)
    return text.replace("\u00a0", " ")


def to_food(pilot: Pilot[None], food: str) -> None:
    """Put the cursor on the first line of a food."""
    foods = [line.row.food if line.row else "" for line in all_lines(pilot)]
    table(pilot).move_cursor(row=foods.index(food))


def count(p: Pantry, food: str, state: State | None = None) -> int:
    rows = (row for row in view.due(p) if row.food == food)
    return sum(row.count for row in rows if state is None or row.state is state)


# -- a lid code lands on the jar from everywhere --------------------------------------------------


@pytest.mark.parametrize("room", ["W", "y", "l"])
async def test_a_lid_code_typed_in_any_room_shows_the_batch(p: Pantry, room: str) -> None:
    code = next(row.code for row in view.due(p) if row.food == "salsa")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press(room, *code.lower())
        if room != "W":
            assert f"{code} salsa" in screen_text(pilot), "it is named while it is typed"
        await pilot.press("enter")
        if room == "W" and not isinstance(pilot.app.screen, BatchScreen):
            assert current(pilot).ref.startswith(code)
            return
        assert isinstance(pilot.app.screen, BatchScreen)
        assert pilot.app.screen.code == code
        await pilot.press("escape")
        assert pilot.app.focused is table(pilot)


async def test_a_lid_code_is_found_although_the_list_was_narrowed(p: Pantry) -> None:
    code = next(row.code for row in view.due(p) if row.food == "peaches")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("slash", *"peas", "enter", *code.lower(), "enter")
        assert isinstance(pilot.app.screen, BatchScreen), "one Enter shows it"
        await pilot.press("escape")
        assert current(pilot).row.food == "peaches"  # type: ignore[union-attr]
        assert {ln.row.food for ln in all_lines(pilot) if ln.row} >= {"peas", "peaches"}


# -- nothing typed is lost ------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("keys", "wrong", "right", "answer"),
    [
        (("S", "r"), "lukewarm", "55F", "55"),
        (("S", "a"), "shelf 9, tropical", "shelf 9, pantry", "shelf 9"),
        (("W", "b"), "away someday", "away friday", "Fri 27 Nov"),
        (("W", "i", "1"), "soup = 2 unobtainium", "soup = 2 runner beans", "soup"),
    ],
)
async def test_a_line_that_cannot_be_done_stays_with_the_reason(
    p: Pantry, keys: tuple[str, ...], wrong: str, right: str, answer: str
) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press(*keys)
        before = len(p.events)
        box = pilot.app.screen.query_one(Input)
        box.value = wrong
        await pilot.press("enter")
        assert box.value == wrong
        assert "Not done" in screen_text(pilot)
        assert len(p.events) == before
        box.value = right
        await pilot.press("enter")
        assert answer in said(pilot)
        assert pilot.app.focused is table(pilot)


async def test_an_amount_that_cannot_be_read_comes_back(demo: Pantry) -> None:
    row = next(r for r in view.due(demo) if r.amount and r.verdict is Verdict.SOUND)
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press(*row.code.lower(), "enter", "u", *"2 ducks", "enter")
        assert pilot.app.screen.query_one(Input).value == "2 ducks"
        await pilot.press("escape")
        assert view.rows_named(demo, row.container_ids)[row.container_ids[0]].amount == row.amount


async def test_a_put_up_that_is_taken_back_gives_its_line_back(p: Pantry) -> None:
    line = "2 pint jars plums, boiling-water canned, larder"
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        box = pilot.app.screen.query_one("#line", Input)
        box.value = line
        await pilot.press("enter")
        assert box.value == ""
        assert count(p, "plums") == 2
        await pilot.press("ctrl+z")
        assert box.value == line
        assert count(p, "plums") == 0


# -- acting ---------------------------------------------------------------------------------------


async def test_the_answer_hides_neither_the_keys_nor_the_cursor(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 12)) as pilot:
        await pilot.press("ctrl+end", "u")
        await pilot.pause()
        text = screen_text(pilot)
        assert said(pilot)[:30] in text
        assert "? more keys" in text
        assert current(pilot).row.food[:8] in text  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("food", "keys", "left"),
    [
        ("lasagne", ("d", "*", "1"), 0),
        ("peaches", ("d", "+", "+", "9"), 3),
        ("peaches", ("d", "*", "-", "1"), 1),
        ("peaches", ("g", *"4 Aunt Sunniva", "enter"), 2),
    ],
)
async def test_several_of_one_line_leave_by_one_answer_and_one_undo_brings_them_back(
    p: Pantry, food: str, keys: tuple[str, ...], left: int
) -> None:
    before = count(p, food)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        to_food(pilot, food)
        await pilot.press(*keys)
        assert count(p, food) == left
        await pilot.press("z")
        assert count(p, food) == before
        assert current(pilot).row.food == food, "the cursor is on what came back"  # type: ignore[union-attr]


async def test_more_than_there_are_cannot_be_given(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        to_food(pilot, "peaches")
        await pilot.press("g", *"40 Aunt Sunniva", "enter")
        assert "Only 6" in screen_text(pilot)
        assert count(p, "peaches") == 6


async def test_what_is_to_be_told_with_a_gift_stands_on_the_screen(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        to_food(pilot, "peaches")
        await pilot.press("g", *"1 Aunt Sunniva", "enter")
        shown = " ".join(screen_text(pilot).split())
        assert "seal still tight" in shown


async def test_a_whole_line_moves_by_two_keys_and_the_letters_of_the_place(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        to_food(pilot, "peaches")
        await pilot.press("m", "*", *"fri", "enter")
        assert [row.place for row in view.due(p) if row.food == "peaches"] == ["fridge"]


@pytest.mark.parametrize(
    ("foods", "keys"),
    [
        (("peaches", "salsa"), ("u",)),
        (("peaches", "salsa"), ("o",)),
        (("peas", "strawberries"), ("t",)),
        (("peaches", "salsa"), ("m", *"fri", "enter")),
        (("peaches", "salsa"), ("g", *"Aunt Sunniva", "enter")),
        (("peaches", "salsa"), ("n", "enter")),
        (("peaches", "lasagne"), ("d", "1")),
    ],
)
async def test_every_act_suits_several_marked_lines(
    p: Pantry, foods: tuple[str, str], keys: tuple[str, ...]
) -> None:
    def stands() -> list[tuple[str, str, State, int]]:
        return sorted((row.food, row.place, row.state, row.count) for row in view.due(p))

    before = stands()
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        for food in foods:
            to_food(pilot, food)
            await pilot.press("space")
        if len(keys) > 1:
            await pilot.press(keys[0])
            assert "2 marked lines" in screen_text(pilot)
            keys = keys[1:]
        await pilot.press(*keys)
        changed = {food for food, *_ in set(stands()) ^ set(before)}
        assert changed == set(foods)
        assert not pilot.app.screen.marked  # type: ignore[attr-defined]
        assert pilot.app.focused is table(pilot)
        await pilot.press("z")
        assert stands() == before


async def test_a_batch_in_progress_is_ready_by_two_keys(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        to_food(pilot, "sauerkraut")
        assert current(pilot).row.state is State.WORKING  # type: ignore[union-attr]
        await pilot.press("f", "enter")  # it stays in its crocks
        assert count(p, "sauerkraut", State.WORKING) == 0
        assert "Ready" in said(pilot)


async def test_what_must_go_is_refused_at_once_also_from_bulk(demo: Pantry) -> None:
    up = "1 crock sauerkraut, lactic ferment, larder, amount=10 lb, state=open"
    code = putup.put_up(demo, putup.read(demo, up)).code
    row = next(r for r in view.due(demo) if r.code == code)
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press(*row.code.lower(), "enter", "s", *"slimy", "enter", "enter")
        worse = view.rows_named(demo, row.container_ids)[row.container_ids[0]]
        assert worse.verdict in (Verdict.DISCARD, Verdict.DO_NOT_TASTE)
        await pilot.press("u")
        assert "Not done" in said(pilot)
        assert "How much" not in screen_text(pilot)


async def test_without_a_published_figure_the_caution_stands_on_the_list(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        rows = [line.row.verdict if line.row else None for line in all_lines(pilot)]
        table(pilot).move_cursor(row=rows.index(Verdict.UNKNOWN))
        await pilot.pause()
        assert "Never taste to find out" in str(pilot.app.screen.query_one("#word", Static).content)


def test_a_number_before_a_name_is_how_many() -> None:
    assert counted("3 Aunt Sunniva") == (3, "Aunt Sunniva")
    assert counted("3 to Aunt Sunniva") == (3, "Aunt Sunniva")
    assert counted("Aunt Sunniva") == (1, "Aunt Sunniva")
    assert counted("12") == (1, "12"), "a name may be a number"


# -- looking --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("key", "word"), [("S", "S shelves"), ("c", "c count"), ("y", "y outlook"), ("l", "l log")]
)
async def test_the_top_line_names_every_room_and_marks_the_present_one(
    p: Pantry, key: str, word: str
) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        top = screen_text(pilot).splitlines()[0]
        assert all(room in top for room in ("D due", "S shelves", "W week", "c count", "l log"))
        assert "Wed 25 Nov" in top
        assert "in store" in top
        await pilot.press(key)
        if key == "c":
            await pilot.press("1")
        await pilot.pause()
        strip = pilot.app.screen._compositor.render_strips()[0]
        marked = [one.text.strip() for one in strip if one.style and one.style.reverse]
        assert marked == [word]


async def test_where_letters_are_typed_the_top_line_shows_the_other_keys(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        await pilot.pause()
        assert "F2 due" in screen_text(pilot).splitlines()[0]


async def test_a_very_small_screen_still_shows_a_list(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        here = current(pilot).key
        await pilot.resize_terminal(20, 10)
        await pilot.pause()
        lines = screen_text(pilot).splitlines()
        assert sum(line[1:3] in ("x ", "- ", "! ", "+ ") for line in lines) >= 4
        assert current(pilot).key == here
        await pilot.resize_terminal(80, 24)
        await pilot.pause()
        assert current(pilot).key == here
        assert "until" in screen_text(pilot)


@pytest.mark.parametrize("room", ["D", "S", "W", "c", "y", "l"])
async def test_the_palette_names_every_command_with_its_key(p: Pantry, room: str) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press(room)
        if room == "c":
            await pilot.press("1")
        screen = pilot.app.screen
        titles = {one.title for one in pilot.app.get_system_commands(screen)}
        for command in of(str(screen.here)):  # type: ignore[attr-defined]
            if command.id not in ("palette", "back", "jump", "digit"):
                assert f"{command.word.capitalize()} ({command.keys})" in titles


async def test_what_thaws_today_stands_on_top_of_the_week_and_one_key_thaws_it(
    demo: Pantry,
) -> None:
    wishes.pin(demo, "5F", TODAY + timedelta(days=1))
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        first = all_lines(pilot)[0]
        assert isinstance(first.key, ThawKey)
        assert "Thaw today" in screen_text(pilot)
        assert isinstance(current(pilot).key, TakeKey), "the cursor stands on the first to eat"
        await pilot.press("ctrl+home", "t")
        assert "Thawed" in said(pilot)
        thawed = view.rows_named(demo, [first.ref])[first.ref]
        assert thawed.state is State.THAWED
        assert not any(line.key == first.key for line in all_lines(pilot))


async def test_the_week_names_each_day_once(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        menu = [ln for ln in all_lines(pilot) if isinstance(ln.key, TakeKey | DishKey)]
        starts = [ln.cells[0][0].strip() for ln in menu if not isinstance(ln.key, DishKey)]
        named = [day for day in starts if day]
        assert len(named) == len(set(named))
        assert "Nov" in str(pilot.app.screen.query_one("#word", Static).content), "said below"


async def test_the_first_questions_keep_the_altitude_that_is_known(tmp_path: Path) -> None:
    create(tmp_path / "high.db", altitude_ft=4500, people=5)
    with open_pantry(tmp_path / "high.db", TODAY) as pantry:
        async with PantryApp(pantry).run_test(size=(80, 24)) as pilot:
            await pilot.pause()
            await pilot.press("1", "enter", "enter")
            assert (pantry.altitude_ft, pantry.people) == (4500, 5)
            assert "4,500 ft" in said(pilot)


async def test_a_bare_number_is_in_the_units_that_were_chosen_and_they_are_said(
    tmp_path: Path,
) -> None:
    create(tmp_path / "high.db")
    with open_pantry(tmp_path / "high.db", TODAY) as pantry:
        async with PantryApp(pantry).run_test(size=(80, 24)) as pilot:
            await pilot.pause()
            await pilot.press("1", *"1200", "enter")
            await pilot.press("enter")
            assert pantry.altitude_ft == 1200
            assert "1,200 ft" in said(pilot)
    create(tmp_path / "metres.db")
    with open_pantry(tmp_path / "metres.db", TODAY) as pantry:
        async with PantryApp(pantry).run_test(size=(80, 24)) as pilot:
            await pilot.pause()
            await pilot.press("2")
            assert "in metres?" in screen_text(pilot)
            await pilot.press(*"1200", "enter", "enter")
            assert pantry.altitude_ft == 3937
            assert "1,200 m" in said(pilot)


async def test_an_altitude_that_is_asked_for_on_the_way_is_said_with_the_batch(
    tmp_path: Path,
) -> None:
    create(tmp_path / "low.db")
    with open_pantry(tmp_path / "low.db", TODAY) as pantry:
        places.add(pantry, "larder", "pantry")
        async with PantryApp(pantry).run_test(size=(80, 24)) as pilot:
            await pilot.pause()
            await pilot.press("escape", "p")
            line = "2 pint jars peaches, boiling-water canned, 25 minutes, larder"
            pilot.app.screen.query_one(Input).value = line
            await pilot.press("enter")
            assert "in feet?" in screen_text(pilot)
            await pilot.press(*"1200", "enter")
            assert "Noted: 1,200 ft. Put up 2A" in said(pilot)
            assert pantry.altitude_ft == 1200


async def test_leaving_the_first_questions_changes_nothing(tmp_path: Path) -> None:
    create(tmp_path / "high.db", altitude_ft=4500, people=5, units="metric")
    with open_pantry(tmp_path / "high.db", TODAY) as pantry:
        async with PantryApp(pantry).run_test(size=(80, 24)) as pilot:
            await pilot.pause()
            await pilot.press("escape")
            assert (pantry.altitude_ft, pantry.people, pantry.bare_degree) == (4500, 5, "C")


async def test_an_empty_store_has_nothing_to_count_and_says_so(tmp_path: Path) -> None:
    create(tmp_path / "empty.db")
    with open_pantry(tmp_path / "empty.db", TODAY) as pantry:
        async with PantryApp(pantry).run_test(size=(80, 24)) as pilot:
            await pilot.pause()
            await pilot.press("escape", "c")
            await pilot.pause()
            assert "Nothing stands anywhere yet" in said(pilot)
            assert pilot.app.focused is table(pilot)


async def test_a_sum_is_reckoned_and_one_that_cannot_be_read_stays(demo: Pantry) -> None:
    app = PantryApp(demo)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("equals_sign")
        line = app.screen.query_one(Input)
        line.value = "brine 500 g water"
        await pilot.press("enter")
        assert "how strong" in str(app.screen.query_one("#wrong", Static).render())
        line.value = "brine 500 g water 3 %"
        await pilot.press("enter")
        shown = str(app.screen.query_one("#words Static", Static).render())
        assert "15 g" in shown
        assert "x 3 / 100" in shown


async def test_a_small_job_is_done_with_one_key(demo: Pantry) -> None:
    app = PantryApp(demo)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        before = tending.jobs(demo)
        await pilot.press("home")
        line = table(pilot).current
        assert line is not None
        assert isinstance(line.key, JobKey)
        await pilot.press("f")
        after = tending.jobs(demo)
        assert len(after) == len(before) - 1
        await pilot.press("z")
        assert tending.jobs(demo) == before
        await pilot.press("full_stop", "1")
        assert len(tending.jobs(demo)) == len(before) - 1


async def test_the_ways_to_keep_a_glut_are_a_key_away(demo: Pantry) -> None:
    app = PantryApp(demo)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("semicolon")
        line = app.screen.query_one(Input)
        line.value = "9 quarts beets"
        await pilot.press("enter")
        assert "by weight" in str(app.screen.query_one("#wrong", Static).render())
        line.value = "9 lb beets"
        await pilot.press("enter")
        shown = str(app.screen.query_one("#words Static", Static).render())
        assert "pressure canned, beets" in shown
        assert "3 quart jars" in shown


async def test_a_process_is_timed_from_its_line(demo: Pantry) -> None:
    app = PantryApp(demo)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("3", "N", "enter")
        await pilot.press("e")
        app.screen.query_one(Input).value = "20 min"
        await pilot.press("enter")
        assert [row.code for row in timer.running(demo)] == ["3N"]
        await pilot.press("e", "1")  # the pressure fell
        assert timer.running(demo)[0].down
        await pilot.press("e", "1")  # again
        assert not timer.running(demo)[0].down
        await pilot.press("e", "2")  # stop timing
        assert timer.running(demo) == []


async def test_a_record_is_asked_for_field_by_field(demo: Pantry) -> None:
    app = PantryApp(demo)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("3", "A", "enter")
        await pilot.press("i", "enter")  # nothing in one line: field by field
        title = str(app.screen.query_one("#title", Static).render())
        assert "altitude" in title
        assert "900 ft" in title
        await pilot.press("enter")
        assert "dial or weighted" in str(app.screen.query_one("#title", Static).render())
        app.screen.query_one(Input).value = "oven"
        await pilot.press("enter")
        assert "Wrong:" in str(app.screen.query_one("#title", Static).render())
        await pilot.press("escape")
        batch = next(one for one in demo.stock.batches.values() if one.code == "3A")
        assert dict(batch.process)["canner"] == "oven"


async def test_a_crock_that_is_ready_is_asked_into_what(demo: Pantry) -> None:
    row = next(r for r in view.due(demo) if r.vessel == "crock" and r.state is State.IN_PROGRESS)
    correct(demo, row.code, process=[("ph", "3.8")])  # measured: it is sour enough by now
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press(*row.code.lower(), "enter", "f")
        await pilot.press(*"4 quart jars, fridge", "enter")
        await pilot.pause()
        made = [r for r in view.due(demo) if r.food == row.food and r.count == 4]
        assert [(r.place, r.state) for r in made] == [("fridge", State.SEALED)]
        assert not [r for r in view.due(demo) if r.code == row.code]
        await pilot.press("z")
        back = next(r for r in view.due(demo) if r.code == row.code)
        assert back.state is State.IN_PROGRESS
