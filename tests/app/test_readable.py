"""What a verdict rests on, and what must be done, can be read to its last word on any screen: it
stands there whole, or the screen names the key that brings the rest."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from pantry_tui.app.main import PantryApp
from pantry_tui.app.rowtext import next_step
from pantry_tui.app.screens.batch import BatchScreen
from pantry_tui.app.screens.page import Page
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.app.widgets.wordline import WordLine
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.safety.caution import CAUTION, cautioned
from pantry_tui.core.text import clean
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, places
from tests.app.screens import all_lines, painted, table

TODAY = date(2026, 11, 25)
SIZES = [(80, 24), (40, 20), (120, 40), (80, 12)]
#: Each is in doubt, must go, or says more than a line.
STOCK = (
    "6 jars chicken stock 500ml, pressure canned 25 min at 11 psi, larder, 1 oct",
    "2 jars pesto, in oil, fridge, 2026-11-20",
    "3 packs trout, hot smoked, fridge, 2026-10-23",
    "7 pint jars runner beans, pressure canned, larder, 2026-10-01",
    "4 pint jars plum jam, jam, larder, 2026-09-01, minutes=5, seal=failed",
    "8 butternut squash, cellar, 25 sept",
)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=5200)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge"), ("cellar", "cellar")):
            places.add(pantry, name, climate)
        for line in STOCK:
            putup.put_up(pantry, putup.read(pantry, line))
        yield pantry


def plain(text: str) -> str:
    """Without the bar to scroll and without where its lines end."""
    return " ".join(re.sub("[▁▂▃▄▅▆▇█╭╮╰╯│─]", " ", text).split()).replace("- ", "-")


async def read_down(pilot: Pilot[None], text: str = "") -> str:
    """All that is painted while one pages down as long as the screen says there is more; of a
    `text`, all of its lines are painted, and they are the answer."""
    found = [painted(pilot)]
    while "↓ more" in found[-1]:
        assert len(found) < 300
        await pilot.press("pagedown")
        found.append(painted(pilot))
        assert found[-1] != found[-2], f"no way further down: {found[-1]}"
    read = "\n".join(map(plain, found))
    if not text:
        return read
    whole = str(pilot.app.screen.query_one(text, Static).visual)
    for line in whole.split("\n"):
        assert plain(line) in read
    return plain(whole)


def said(pilot: Pilot[None], text: str) -> str:
    """As the app says it."""
    return plain(clean(pilot.app.said(text)))  # type: ignore[attr-defined]


@pytest.mark.parametrize("size", SIZES)
async def test_every_reason_of_a_verdict_is_read_in_full(p: Pantry, size: tuple[int, int]) -> None:
    async with PantryApp(p).run_test(size=size) as pilot:
        await pilot.pause()
        rows = [(at, line.row) for at, line in enumerate(all_lines(pilot)) if line.row]
        assert {row.verdict for _, row in rows} >= {*UNFIT, Verdict.UNKNOWN}
        for at, row in rows:
            table(pilot).move_cursor(row=at)
            await pilot.pause()
            shown = plain(painted(pilot))
            word = pilot.app.screen.word_on(table(pilot).current)  # type: ignore[attr-defined]
            if size[0] < 118 and plain(pilot.app.said(word)) not in shown:  # type: ignore[attr-defined]
                assert "Enter: all of it" in shown
            if size[0] >= 118 and "↓ more" in shown:
                assert "↓ more: Enter shows all of it" in shown
            await pilot.press("enter")
            assert isinstance(pilot.app.screen, BatchScreen)
            assert "Enter, then Down" in plain(painted(pilot)) or size[1] > 24
            await pilot.press("enter")
            read = await read_down(pilot, "#text")
            wanted = [*row.reasons, next_step(row)]
            wanted += [CAUTION] if cautioned(row.verdict, row.usable) else []
            for one in wanted:
                assert said(pilot, one) in read
            await pilot.press("escape")


@pytest.mark.parametrize("size", SIZES)
async def test_an_answer_is_read_in_full(p: Pantry, size: tuple[int, int]) -> None:
    pesto = next(batch.code for batch in p.stock.batches.values() if batch.food.name == "pesto")
    async with PantryApp(p).run_test(size=size) as pilot:
        done = act.move(p, pesto, place="larder")
        pilot.app.report(done)  # type: ignore[attr-defined]
        await pilot.pause()
        answer = said(pilot, " ".join((done.message, *done.warnings)))
        assert len(answer) > 300
        assert answer in await read_down(pilot)
        assert isinstance(pilot.app.screen, Page) or table(pilot).size.height >= 3


async def test_an_answer_stays_until_a_key_comes_after_a_while(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        pilot.app.tell("Put it back into the cold.")  # type: ignore[attr-defined]
        await pilot.press("down")
        line = pilot.app.screen.query_one(SaidLine)
        assert line.display
        line.stands()
        await pilot.pause()
        assert line.display
        await pilot.press("down")
        assert not line.display


@pytest.mark.parametrize("size", [(80, 24), (40, 20)])
async def test_what_came_of_a_corrected_note_is_read_in_full(
    p: Pantry, size: tuple[int, int]
) -> None:
    async with PantryApp(p).run_test(size=size) as pilot:
        lines = enumerate(all_lines(pilot))
        table(pilot).move_cursor(next(n for n, one in lines if one.row and "jam" in one.row.food))
        note = "two lids did not seal"
        await pilot.press("w", "3", *note, "enter")
        read = await read_down(pilot)
        code = next(one.code for one in p.stock.batches.values() if one.food.name == "plum jam")
        assert f"Corrected {code}" in read
        assert "…" not in read.split("what is to be put right")[0].split("Corrected")[1]


@pytest.mark.parametrize("size", [(80, 24), (40, 20)])
async def test_what_stands_against_a_line_is_read_in_full_before_it_is_booked(
    p: Pantry, size: tuple[int, int]
) -> None:
    line = STOCK[0]
    made = putup.preview(p, putup.read(p, line))
    assert made.reasons
    async with PantryApp(p).run_test(size=size) as pilot:
        await pilot.press("p")
        pilot.app.screen.query_one("#line", Input).value = line
        await pilot.pause()
        read = await read_down(pilot, "#reading")
        for one in (*made.reasons, *made.cautions):
            assert said(pilot, one) in read
        await pilot.press("pageup")
        assert pilot.app.screen.query_one("#line", Input).value == line


async def test_a_sentence_on_no_batch_has_its_page(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        long = "The larder was read warm, and what stands there is judged by that. " * 30
        pilot.app.screen.say(long)  # type: ignore[attr-defined]
        await pilot.pause()
        assert pilot.app.screen.query_one(WordLine).cut.strip() == long.strip()
        assert "Enter: all of it" in plain(painted(pilot))
