"""Pictures: drawn as spans by pure functions, walked with the arrows, acted on cell by cell."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from rich.cells import cell_len
from textual.pilot import Pilot

from pantry_tui.app.draw.months import month_rows
from pantry_tui.app.draw.shelf import shelf_rows
from pantry_tui.app.draw.spans import Row, Span, ascii_of, bar, block, fit, refs_of, text_of, wide
from pantry_tui.app.draw.underway import underway_rows
from pantry_tui.app.draw.week import strokes, week_rows
from pantry_tui.app.draw.year import HARVEST, RUNS_LOW, THERE, year_rows
from pantry_tui.app.format import shelf_title
from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.batch import BatchScreen
from pantry_tui.app.screens.due import DueScreen
from pantry_tui.app.screens.pictures import CellKey, ShelfPicture
from pantry_tui.app.screens.weekgrid import WeekGrid
from pantry_tui.app.widgets.picture import Picture
from pantry_tui.core.words import MARK, Verdict
from pantry_tui.services.batchwork.underway import underway
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.stock import act, view
from pantry_tui.services.stock.months import months_ahead
from tests.app.screens import all_lines, painted, table
from tests.furnished import furnished

TODAY = date(2026, 11, 25)
WIDTHS = (20, 36, 38, 60, 78, 117, 198)


def picture_of(p: Pantry, width: int) -> list[Row]:
    return shelf_rows([(shelf_title(one), one) for one in view.shelves(p)], width)


# -- the pure functions ----------------------------------------------------------------------------


@pytest.mark.parametrize("width", WIDTHS)
def test_no_line_is_wider_than_asked_and_no_container_is_lost(demo: Pantry, width: int) -> None:
    foods = outlook(demo).foods
    takes = {str(n): one for n, one in enumerate(weeks.week(demo).take)}
    days = {TODAY + timedelta(n): 4 for n in range(7)}
    shelf = picture_of(demo, width)
    drawn = (
        shelf,
        month_rows(months_ahead(demo), width),
        year_rows(foods, TODAY, width),
        underway_rows(underway(demo), TODAY, width),
        week_rows(days, takes, max(width, 36)),
    )
    for rows in drawn:
        assert max(wide(row) for row in rows) <= max(width, 36)
    here = {ref for row in view.everything(demo) for ref in row.container_ids}
    assert set(refs_of(shelf)) == here
    assert len(list(refs_of(shelf))) == len(here)
    eaten = {ref for ref, one in takes.items() if one.day in days}
    assert set(refs_of(drawn[-1])) == eaten


def test_a_container_has_the_mark_of_its_verdict_and_its_code_over_it(demo: Pantry) -> None:
    rows = picture_of(demo, 78)
    verdicts = {ref: row.verdict for row in view.everything(demo) for ref in row.container_ids}
    for number, row in enumerate(rows):
        x = 0
        for span in row:
            if span.ref:
                assert span.text.strip() == MARK[verdicts[span.ref]]
                over = text_of([rows[number - 1]])[0]
                code = span.ref.partition("/")[0]
                assert code in over[: x + 1 + len(code)].split()[-1] or code in over
            x += cell_len(span.text)


def test_months_are_what_their_lists_hold(demo: Pantry) -> None:
    found = months_ahead(demo)
    assert sum(one.best + one.last for one in found) > 0
    for one in found:
        rows = view.find(demo, f"month:{one.ref}")
        assert sum(row.count for row in rows) == one.best + one.last, one.name
        assert not {row.verdict for row in rows} & {
            Verdict.DO_NOT_TASTE, Verdict.DISCARD, Verdict.UNKNOWN,
        }  # fmt: skip
    line = next(row for row in month_rows(found, 78) if row and row[0].ref)
    assert line[0].ref == found[0].ref
    none_wrong = view.find(demo, "month:2026-13"), view.find(demo, "month:soon")
    assert len(none_wrong[0]) == len(none_wrong[1]) == len(view.due(demo))


def test_the_year_shows_what_is_there_runs_low_and_is_harvested(demo: Pantry) -> None:
    foods = outlook(demo).foods
    one = next(food for food in foods if food.food == "sauerkraut")
    rows = year_rows([one], TODAY, 98)
    roles = {span.role for span in rows[1] if span.text.strip()}
    assert {THERE, HARVEST} <= roles
    assert RUNS_LOW in roles
    assert "┊" in text_of(rows)[1]
    assert year_rows([], TODAY, 78) == []


def test_what_is_in_progress_tells_its_day_and_its_jobs(demo: Pantry) -> None:
    found = underway(demo)
    kraut = next(one for one in found if one.food == "sauerkraut")
    assert kraut.day == (TODAY - kraut.made).days
    assert kraut.of == 35, "below 68 F: five to six weeks"
    text = "\n".join(text_of(underway_rows([kraut], TODAY, 78)))
    assert f"day {kraut.day} of 35, to measure its pH" in text
    assert "late since" in text
    assert underway(demo, "kimchi")[0].food == "kimchi"
    assert underway(demo, "zzyzx") == []


def test_spans_are_cut_drawn_and_said_plainly() -> None:
    row = (Span("plums", "sound"), Span("─▔┊█", "muted"))
    assert text_of([fit(row, 6)]) == ["plums─"]
    counted = (Span("north wall · 17", "head"), Span("   ", "muted"))
    assert text_of([fit(counted, 14)]) == ["north wall · …"], "half a number is another one"
    assert text_of([fit(counted, 15)]) == ["north wall · 17"]
    assert ascii_of(text_of([row])) == ["plums--|#"]
    assert all(one.isascii() for one in ascii_of([" ▁▂▃▄▅▆▇█━╌┃"]) if "┃" not in one)
    assert block(0) == " "
    assert block(0.01) == "▁", "what is there is seen"
    assert block(2) == "█"
    assert bar(0, 10, "#") == ""
    assert bar(0.001, 10, "#") == "#"
    assert len(bar(3, 10, "#")) == 10
    assert strokes(0) == "away"
    assert strokes(30) == "iiiiiiii 30"


# -- on the screen ---------------------------------------------------------------------------------


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    with furnished(
        tmp_path,
        TODAY,
        ("larder", "shelf 2"),
        (
            "4 pint jars peaches, boiling-water canned, larder",
            "30 pint jars runner beans, pressure canned, larder",
            "2 jars strawberry jam, jam, shelf 2",
        ),
    ) as pantry:
        yield pantry


def standing_on(pilot: Pilot[None]) -> str:
    line = table(pilot).current
    assert line is not None
    return line.ref


async def test_the_arrows_walk_the_shelves_cell_by_cell(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("S", "v")
        assert isinstance(pilot.app.screen, ShelfPicture)
        assert isinstance(table(pilot), Picture)
        walked = [standing_on(pilot)]
        for _ in range(5):
            await pilot.press("right")
            walked.append(standing_on(pilot))
        assert walked[:4] == [f"{walked[0][:-2]}/{n}" for n in range(1, 5)]
        assert len(set(walked)) == 6
        await pilot.press("down")
        assert standing_on(pilot) not in walked, "one board further down"
        await pilot.press("up", "home")
        assert standing_on(pilot) == walked[0]
        await pilot.press("end")
        await pilot.pause()
        assert "strawberry jam" in painted(pilot)
        await pilot.press("v")
        assert not isinstance(pilot.app.screen, ShelfPicture)


async def test_an_act_is_on_the_very_container_and_z_brings_it_back(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("S", "v", "right", "right")
        ref = standing_on(pilot)
        assert ref.endswith("/3")
        await pilot.press("u")
        names = {one.ref for one in all_lines(pilot)}
        assert ref not in names
        await pilot.press("z")
        assert ref in {one.ref for one in all_lines(pilot)}
        await pilot.press("home", "space", "space", "u")
        gone = {c for row in view.everything(p) for c in row.container_ids}
        assert {f"{ref[:-2]}/1", f"{ref[:-2]}/2"}.isdisjoint(gone)


async def test_a_cell_is_found_by_its_code_shown_whole_and_clicked(p: Pantry) -> None:
    jam = next(row for row in view.due(p) if row.food == "strawberry jam")
    async with PantryApp(p).run_test(size=(120, 40)) as pilot:
        await pilot.press("S", "v", *jam.code.lower(), "enter")
        assert isinstance(pilot.app.screen, BatchScreen), "one Enter behind a lid code"
        await pilot.press("escape")
        assert standing_on(pilot) == f"{jam.code}/1"
        there = table(pilot)
        assert isinstance(there, Picture)
        await pilot.click(there, offset=(2, 2))
        assert standing_on(pilot) == all_lines(pilot)[0].ref
        await pilot.press("enter")
        assert isinstance(pilot.app.screen, BatchScreen)


async def test_another_window_takes_what_the_cursor_stands_on(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("S", "v", "end")
        last = standing_on(pilot)
        with open_pantry(p.path, TODAY) as other:
            act.use(other, last)
        pilot.app.look_around()  # type: ignore[attr-defined]
        assert standing_on(pilot) != last
        assert isinstance(table(pilot).current.key, CellKey)  # type: ignore[union-attr]


async def test_a_month_opens_its_list(demo: Pantry) -> None:
    month = next(one for one in months_ahead(demo)[1:] if one.best)
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("y", "m")
        while table(pilot).current.key.ref != month.ref:  # type: ignore[union-attr]
            await pilot.press("down")
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, DueScreen)
        shown = sum(line.row.count for line in all_lines(pilot) if line.row)
        assert shown == month.best + month.last
        await pilot.press("escape")
        assert sum(line.row.count for line in all_lines(pilot) if line.row) > shown


async def test_the_grid_does_what_the_week_does(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(120, 40)) as pilot:
        await pilot.press("W", "v")
        assert isinstance(pilot.app.screen, WeekGrid)
        await pilot.pause()
        assert "iiii 4" in painted(pilot)
        await pilot.press("a")
        assert weeks.accepted(demo) is not None
        await pilot.press("e")
        assert "as eaten" in painted(pilot)
        await pilot.press("escape")
        assert not isinstance(pilot.app.screen, WeekGrid)


async def test_a_job_is_booked_from_the_picture_of_what_is_in_progress(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("j")
        before = {one.code: one.jobs for one in underway(demo)}
        while not table(pilot).current.key.job:  # type: ignore[union-attr]
            await pilot.press("down")
        code = standing_on(pilot)
        await pilot.press("f")
        assert {one.code: one.jobs for one in underway(demo)}[code] != before[code]
        await pilot.press("z")
        assert {one.code: one.jobs for one in underway(demo)}[code] == before[code]


@pytest.mark.parametrize("keys", [("S", "v"), ("W", "v"), ("y", "v"), ("y", "m"), ("j",)])
@pytest.mark.parametrize("size", [(40, 20), (80, 24), (200, 50)])
@pytest.mark.parametrize("colour", [True, False])
async def test_each_picture_is_painted_in_every_size_also_without_colours(
    demo: Pantry,
    keys: tuple[str, ...],
    size: tuple[int, int],
    colour: bool,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    if not colour:
        monkeypatch.setenv("NO_COLOR", "1")
    async with PantryApp(demo).run_test(size=size) as pilot:
        await pilot.press(*keys, "down", "right")
        await pilot.pause()
        assert isinstance(table(pilot), Picture)
        assert painted(pilot).strip()
        assert table(pilot).current is not None


async def test_an_empty_store_has_empty_pictures(tmp_path: Path) -> None:
    create(tmp_path / "empty.db")
    with open_pantry(tmp_path / "empty.db", TODAY) as empty:
        async with PantryApp(empty).run_test(size=(80, 24)) as pilot:
            for keys in (("S", "v"), ("W", "v"), ("y", "v"), ("y", "m"), ("j",)):
                await pilot.press("escape", "escape", *keys, "down", "right", "enter", "u")
                assert painted(pilot).strip()
