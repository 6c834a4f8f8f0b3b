"""The due list tells: its parts, dates with their kind, what is left; finding in it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from rich.cells import cell_len
from textual.pilot import Pilot
from textual.widgets import Static

from pantry_tui.app.format import short_day
from pantry_tui.app.lines import PartKey
from pantry_tui.app.main import PantryApp
from pantry_tui.app.roles import STYLE
from pantry_tui.app.rowtext import (
    act_by,
    due_cells,
    due_columns,
    food_and_method,
    row_detail,
    said_verdict,
    short_best_day,
    until,
    what_is_left,
)
from pantry_tui.app.screens.batch import BatchScreen
from pantry_tui.app.whereabouts import Whereabouts, leave, left_at, state_file
from pantry_tui.core.words import Method, State, Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.output.door import until as on_paper
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, places, view
from pantry_tui.services.stock.lines import PARTS, lines, parts
from pantry_tui.services.stock.rows import DueRow
from tests.app.screens import all_lines, painted, table

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=900)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("north wall", "cellar"), ("fridge", "fridge"), ("larder", "pantry")):
            places.add(pantry, name, climate)
        for line in (
            "6 pint jars peaches, boiling-water canned, north wall, 2026-10-10, minutes=25",
            "4 pint jars peaches, boiling-water canned, larder, 2025-09-01, minutes=25",
            "2 boxes lasagne, cooked meal, fridge, 2026-11-23",
            "3 boxes beef stew, cooked meal, fridge, 2026-11-01",
            "1 crock sauerkraut, lactic ferment, larder, 2026-11-20",
            "20 lb carrots, cellar-stored, north wall, 2026-11-01",
        ):
            putup.put_up(pantry, putup.read(pantry, line))
        yield pantry


def row(**more: object) -> DueRow:
    plain = DueRow(
        code="7C",
        container_ids=("7C/1",),
        food="runner beans",
        method=Method.PRESSURE,
        place="cellar › north wall",
        count=1,
        state=State.SEALED,
        verdict=Verdict.SOUND,
        best_by=date(2027, 8, 1),
        discard_after=None,
        days_left=249,
        reasons=(),
        size="pint jars",
        discard_after_why="no limit",
    )
    return plain._replace(**more)  # type: ignore[arg-type]


def words(pilot: Pilot[None]) -> list[str]:
    return [line.cells[0][0] for line in all_lines(pilot) if line.whole]


def said(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("SaidLine", Static).content)


def shown(pilot: Pilot[None]) -> str:
    strips = pilot.app.screen._compositor.render_strips()
    return "\n".join("".join(segment.text for segment in strip) for strip in strips)


# -- one line --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("more", "text"),
    [
        ({}, "best Aug 2027"),
        ({"best_by": date(2026, 12, 9), "days_left": 14}, "best 9 Dec"),
        ({"best_by": TODAY, "days_left": 0}, "best today"),
        ({"discard_after": TODAY, "days_left": 0}, "eat by today"),
        ({"discard_after": date(2027, 2, 3), "days_left": 70}, "eat by 3 Feb"),
        ({"best_by": None, "discard_after": date(2028, 2, 3), "days_left": 800},
         "eat by 3 Feb 2028"),
        ({"verdict": Verdict.DISCARD, "discard_after": TODAY - timedelta(3), "days_left": -3},
         "discard 22 Nov"),
        ({"verdict": Verdict.DISCARD, "days_left": 249}, "discard now"),
        ({"verdict": Verdict.DO_NOT_TASTE}, "do not taste"),
        ({"verdict": Verdict.UNKNOWN}, "in doubt"),
        ({"verdict": Verdict.UNKNOWN, "discard_after_why": "nothing published"}, "not published"),
    ],
)  # fmt: skip
def test_a_date_says_whether_it_is_safety_or_quality(more: dict[str, object], text: str) -> None:
    assert until(row(**more)) == text


def test_what_is_left_has_its_number_at_the_right_and_its_vessel() -> None:
    assert what_is_left(row(count=12)) == " 12 jars"
    assert what_is_left(row()) == "  1 jar"
    assert what_is_left(row(amount="38 lb", size="38 lb crate")) == " 38 lb"
    assert what_is_left(row(count=3, size="5-lb bags")) == "  3 bags"
    assert what_is_left(row(count=3, size="")) == "  3"


def test_the_method_gives_way_before_the_name_and_the_state_never() -> None:
    beans = row(state=State.OPEN, reserved="Aunt Sunniva")
    assert food_and_method(beans, 60) == (
        "runner beans", ", pressure canned, open, for Aunt Sunniva",
    )  # fmt: skip
    assert food_and_method(beans, 44)[1] == ", canned, open, for Aunt Sunniva"
    assert "open" in food_and_method(beans, 24)[1]
    assert food_and_method(row(food="strawberry jam", method=Method.JAM), 40) == (
        "strawberry jam", "",
    )  # fmt: skip


@pytest.mark.parametrize("width", [30, 40, 60, 80, 99, 120, 160])
@pytest.mark.parametrize("beside", ["place", "method"])
def test_no_date_is_ever_clipped(width: int, beside: str) -> None:
    columns = due_columns(width, beside)
    assert sum(column.width for column in columns) <= width - 2
    for verdict in Verdict:
        for far in (3, 290):
            one = row(verdict=verdict, discard_after=TODAY + timedelta(far), days_left=far)
            cells = dict(zip((c.field for c in columns), due_cells(one, columns), strict=True))
            assert all(
                cell_len(text + tail) <= column.width
                for column, (text, tail) in zip(columns, due_cells(one, columns), strict=True)
            )
            if "until" in cells:
                assert cells["until"] == (until(one), "")


async def test_a_bird_that_was_frozen_long_and_is_thawed_says_until_when_it_is_eaten(
    tmp_path: Path,
) -> None:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        for name in ("freezer", "fridge"):
            places.add(p, name, name)
        made = putup.put_up(p, putup.read(p, "1 turkey, frozen, freezer, 1 jan 2025, amount=16 lb"))
        act.thaw(p, made.code)
        (thawed,) = view.due(p)
        assert thawed.verdict is Verdict.PAST_BEST
        assert thawed.discard_after is not None
        day = short_day(thawed.discard_after).rsplit(" ", 1)[0]
        assert said_verdict(thawed) == f"! past best, eat by {day}"
        async with PantryApp(p).run_test(size=(80, 24)) as pilot:
            assert f"! past best, eat by {day}: " in painted(pilot)
            line = table(pilot).current
            assert line is not None
            assert line.cells[-1][1] == STYLE[Verdict.EAT_SOON]


def test_what_ends_in_days_past_its_best_is_eaten_by_its_last_day(
    larder: Pantry,
) -> None:
    """What was at its best in May and thawed today is eaten by the day after tomorrow."""
    places.add(larder, "chest", "freezer")
    line = "1 pack ground beef, frozen, chest, 1 jan 2025, amount=1 lb"
    act.thaw(larder, putup.put_up(larder, putup.read(larder, line)).code)
    (thawed,) = view.due(larder)
    assert thawed.discard_after is not None
    assert (thawed.verdict, act_by(thawed)) == (Verdict.EAT_SOON, thawed.discard_after)
    assert until(thawed).startswith("eat by ")
    assert on_paper(thawed).startswith("eat by ")


def test_what_has_no_last_day_ahead_is_past_best_and_no_more() -> None:
    old = row(verdict=Verdict.PAST_BEST, best_by=TODAY - timedelta(9), days_left=-9)
    assert said_verdict(old) == "- past best"


# -- the parts -------------------------------------------------------------------------------------


async def test_the_list_stands_under_heads_that_count_and_what_is_later_is_folded(
    demo: Pantry,
) -> None:
    known = {one.word: one for one in parts(demo)}
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.pause()  # the small jobs come a moment later
        job, *heads = [one.split(" ─")[0] for one in words(pilot)]
        assert job.startswith("~ taste, 9K")
        assert heads[0] == f"Must go: do not eat · {known['must go'].containers}"
        assert f"Past best, still safe · {known['past best'].containers}" in heads
        assert any("folded" in one for one in heads if one.startswith("Later"))
        before = len(all_lines(pilot))
        at = table(pilot).source.where(PartKey("later"))
        assert at is not None
        table(pilot).move_cursor(at)
        await pilot.press("enter")
        assert len(all_lines(pilot)) == before + known["later"].rows - len(_this_week(demo))
        assert table(pilot).current.key == PartKey("later")  # type: ignore[union-attr]
        await pilot.press("enter")
        assert len(all_lines(pilot)) == before


def _this_week(p: Pantry) -> list[DueRow]:
    """What is only later, and must be eaten within a week all the same: it is not folded away."""
    whole = lines(p)
    week = p.today + timedelta(days=7)
    later = [row for row in whole.rows(0, whole.total) if row.head == "later"]
    sound = [row for row in later if row.verdict is Verdict.SOUND]
    return [row for row in sound if row.discard_after is not None and row.discard_after <= week]


async def test_in_a_small_store_nothing_is_folded_away(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        assert len([line for line in all_lines(pilot) if line.row]) == lines(p).total


async def test_a_lid_code_that_is_folded_away_is_unfolded(demo: Pantry) -> None:
    whole = lines(demo)
    code = next(r.code for r in whole.rows(0, whole.total) if r.food == "beets")
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        assert table(pilot).source.find(code) is None
        await pilot.press(*code.lower(), "enter")
        current = table(pilot).current
        assert current is not None
        assert current.row is not None
        assert current.row.code == code


async def test_a_letter_behind_a_whole_lid_code_acts_on_it(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        before = len(p.events)
        await pilot.press(*"2au")
        assert [event.did.value for event in p.events[before:]] == ["use"]
        assert p.stock.batches[p.events[-1].batch].code == "2A"
        assert pilot.app.focused is table(pilot)


def test_the_parts_count_what_stands_under_them_and_folding_hides_only_what_is_later(
    demo: Pantry,
) -> None:
    whole = lines(demo)
    rows = whole.rows(0, whole.total)
    known = parts(demo)
    assert [one.word for one in known] == [one for one in PARTS if one in {k.word for k in known}]
    assert sum(one.rows for one in known) == len(rows)
    assert sum(one.containers for one in known) == sum(one.count for one in rows)
    assert [(one.word, one.rows) for one in known] == list(whole.heads())
    folded = lines(demo, folded=True)
    hidden = {r.stamp + r.code for r in rows} - {
        r.stamp + r.code for r in folded.rows(0, folded.total)
    }
    later = next(one.rows for one in known if one.word == "later")
    assert folded.total == len(rows) - later + len(_this_week(demo))
    assert all(r.verdict is Verdict.SOUND for r in rows if r.stamp + r.code in hidden)


# -- finding ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "fits"),
    [
        ("peaches", lambda r: r.food == "peaches"),
        ("place:north", lambda r: "north" in r.place),
        ('place:"north wall" left:3', lambda r: "north wall" in r.place and r.count <= 3),
        ("method:canned", lambda r: "canned" in r.method),
        ("group:fruit", lambda r: r.food == "peaches"),
        ("left:>5", lambda r: r.count > 5),
        ("before:2026-11-25", lambda r: min(filter(None, (r.best_by, r.discard_after))) < TODAY),
        ("before:nonsense peaches", lambda r: r.food == "peaches"),
        ("before: left: place:", lambda r: bool(r.code)),
    ],
)
def test_words_are_looked_for_where_they_say(p: Pantry, text: str, fits: object) -> None:
    rows = lines(p).rows(0, 99)
    dated = "before:2026" in text
    wanted = [r for r in rows if (not dated or r.best_by or r.discard_after) and fits(r)]  # type: ignore[operator]
    found = lines(p, text=text)
    assert [r.container_ids for r in found.rows(0, 99)] == [r.container_ids for r in wanted]
    assert wanted


async def test_three_letters_of_a_food_go_to_its_first_sound_one_and_the_top_counts(
    p: Pantry,
) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("slash", *"pea", "enter")
        current = table(pilot).current
        assert current is not None
        assert current.row is not None
        assert current.row.food == "peaches"
        assert "10 of " in shown(pilot).splitlines()[0]


async def test_any_column_sorts(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("v", *"left", "enter")
        counts = [line.row.count for line in all_lines(pilot) if line.row]
        assert counts == sorted(counts)
        assert "Sorted by left" in said(pilot)


# -- slips -----------------------------------------------------------------------------------------


@pytest.mark.parametrize("word", ["freezer", "strawberries", "mash", "sign", "give", "LOST"])
async def test_a_word_typed_on_the_list_loses_nothing(p: Pantry, word: str) -> None:
    lost = {"discard", "missing", "give", "sign", "undo"}
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        before = len(p.events)
        await pilot.press(*word)
        assert not lost & {event.did.value for event in p.events[before:]}


async def test_a_held_undo_stops_where_this_sitting_began(p: Pantry) -> None:
    before = len(p.events)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("u", "u", "u")
        await pilot.press(*("z" * 9))
        undone = [event for event in p.events[before:] if event.did.value == "undo"]
        assert len(undone) == 3
        assert "Take it back?" in shown(pilot)
        await pilot.press("escape", "ctrl+y")
        assert "Brought back" in said(pilot)


async def test_after_a_refusal_undo_says_that_nothing_was_done(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("u")
        done = len(p.events)
        await pilot.press("ctrl+home")
        while table(pilot).current.row is None:  # type: ignore[union-attr]
            await pilot.press("down")
        await pilot.press("u")
        assert "Not done" in said(pilot)
        await pilot.press("z")
        assert "did nothing" in said(pilot)
        assert len(p.events) == done
        await pilot.press("z")
        assert p.events[-1].did.value == "undo"


async def test_a_key_without_a_meaning_says_so(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("O")
        assert "O does nothing here; ? lists the keys" in said(pilot)


async def test_a_key_of_other_rooms_says_where_it_means_something(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("x")
        told = " ".join(said(pilot).split())
        assert (
            "x does nothing here, but does in S (Shelves): power cut; W (This week): skip" in told
        )


async def test_three_of_a_line_are_moved_by_m_3_and_the_letters_of_the_place(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press(*"2a", "enter", "m", "3", *"fri", "enter")
        assert "Moved 3" in said(pilot), said(pilot)


async def test_letters_may_be_made_to_search(p: Pantry, away_from_home: Path) -> None:
    folder = away_from_home / "config" / "pantry-tui"
    folder.mkdir(parents=True)
    told = 'letters = "search"\n[views]\nwet = "place:fridge"\n'
    (folder / "settings.toml").write_text(told)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        before = len(p.events)
        await pilot.press(*"lasa", "enter")
        assert {line.row.food for line in all_lines(pilot) if line.row} == {"lasagne"}
        assert len(p.events) == before
        await pilot.press("full_stop", "u")
        assert len(p.events) == before + 1
        await pilot.press("escape", "slash", *"@wet", "enter")
        assert {line.row.place for line in all_lines(pilot) if line.row} == {"fridge"}


# -- where one was ---------------------------------------------------------------------------------


async def test_after_a_slip_of_the_quit_key_the_app_opens_where_it_was(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("S", "down", "down", "q")
        line = table(pilot).current
        assert line is not None
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        for _ in range(50):  # the list is painted first, then the line is shown
            await pilot.pause()
            here = pilot.app.screen.here  # type: ignore[attr-defined]
            if here == "shelves" and (found := table(pilot).current) and found.ref:
                break
        assert here == "shelves"
        assert found is not None
        assert found.ref == line.ref


def test_where_one_was_holds_for_the_day_and_a_bad_file_for_nothing(tmp_path: Path) -> None:
    store, there = tmp_path / "a.db", Whereabouts("week", "7C/1")
    assert left_at(store, TODAY) is None
    leave(store, TODAY, there)
    assert left_at(store, TODAY) == there
    assert left_at(store, TODAY + timedelta(1)) is None
    assert left_at(tmp_path / "b.db", TODAY) is None
    state_file().write_text("[not json")
    assert left_at(store, TODAY) is None


@pytest.mark.parametrize("width", range(8, 60))
@pytest.mark.parametrize("state", [State.SEALED, State.OPEN, State.THAWED, State.IN_PROGRESS])
def test_a_food_and_what_stands_behind_it_never_run_into_the_next_column(
    width: int, state: State
) -> None:
    name, tail = food_and_method(row(state=state, reserved="Aunt Sunniva"), width)
    assert cell_len(name + tail) <= width
    name, tail = food_and_method(row(state=state), width)
    assert cell_len(name + tail) <= width


@pytest.mark.parametrize("width", [28, 40, 50])
async def test_a_narrow_list_says_code_and_count(p: Pantry, width: int) -> None:
    """The code, which is what one types, in a column; how many in the sentence under the list."""
    async with PantryApp(p).run_test(size=(width, 20)) as pilot:
        row = table(pilot).current
        assert row is not None
        assert row.row is not None
        shown = " ".join(painted(pilot).split())
        assert re.search(rf": {row.row.count} \w+ of {row.row.code}\.", shown)
        assert re.search(rf"[#x!+?~-] {row.row.code} +\w", painted(pilot))


def test_what_is_in_doubt_or_must_go_has_no_best_by() -> None:
    """Also where its best-by day is past already, or still to come."""
    for verdict in (Verdict.DISCARD, Verdict.DO_NOT_TASTE, Verdict.UNKNOWN):
        for last in (None, date(2026, 11, 20), date(2027, 9, 1)):
            for best in (date(2026, 10, 1), date(2027, 8, 1)):
                one = row(verdict=verdict, best_by=best, discard_after=last, days_left=-5)
                assert one.good_until is None
                assert "best by        none (" in row_detail(one)
                assert str(best.year) not in short_best_day(one)


async def test_one_enter_behind_a_lid_code_in_the_field_shows_its_batch(p: Pantry) -> None:
    code = next(batch.code for batch in p.stock.batches.values() if batch.food.name == "lasagne")
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("slash", *code.lower(), "enter")
        assert isinstance(pilot.app.screen, BatchScreen)
        assert f"{code} lasagne" in painted(pilot)
        await pilot.press("escape")
        line = table(pilot).current
        assert line is not None
        assert line.row is not None
        assert line.row.code == code
        assert table(pilot).source.total > 3, "the whole list again"


def test_a_place_has_its_whole_name_where_the_food_can_spare_it() -> None:
    def place(width: int, named: int) -> int:
        return next(one.width for one in due_columns(width, named=named) if one.field == "place")

    assert place(82, 15) >= 16
    assert place(82, 15) > place(82, 0)
    assert place(80, 40) < 18, "not at the cost of the food"
