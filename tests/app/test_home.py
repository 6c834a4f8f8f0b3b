"""The household, a power cut that nobody knows the hours of, and hours that run out meanwhile."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from pantry_tui.app.main import PantryApp, run
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.core.log.payloads import Outage
from pantry_tui.core.words import Verdict
from pantry_tui.errors import Refused, StoreError
from pantry_tui.services import clock, household
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, places
from tests.app.screens import all_lines

TODAY = date(2026, 11, 25)
MORNING = Clock(TODAY, 9 * 60)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=900)
    with open_pantry(tmp_path / "store.db", MORNING) as pantry:
        for name, climate in (("kitchen", "room"), ("fridge", "fridge"), ("freezer", "freezer")):
            places.add(pantry, name, climate)
        for line in ("2 boxes lasagne, cooked meal, fridge", "3 bags peas, frozen, freezer"):
            putup.put_up(pantry, putup.read(pantry, line))
        yield pantry


def shown(pilot: Pilot[None]) -> str:
    strips = pilot.app.screen._compositor.render_strips()
    return "\n".join("".join(segment.text for segment in strip) for strip in strips)


def said(pilot: Pilot[None]) -> str:
    return str(pilot.app.screen.query_one("SaidLine", Static).content)


# -- the household ---------------------------------------------------------------------------------


async def test_whose_advice_is_followed_is_chosen_in_the_app_and_says_so(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("comma")
        assert "altitude: 900 ft" in shown(pilot)
        assert "advice: usual" in shown(pilot)
        await pilot.press("4", "2")
        assert household.facts(p).advice == "strictest"
        assert "earlier" in said(pilot)
        await pilot.press("z")
        assert household.facts(p).advice == "usual"


async def test_altitude_people_and_units_are_changed_any_time(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.press("comma", "1")
        pilot.app.screen.query_one(Input).value = "50000 ft"
        await pilot.press("enter")
        assert "altitude" in shown(pilot)
        assert pilot.app.screen.query_one(Input).value == "50000 ft", "nothing is lost"
        assert "in feet?" in shown(pilot)
        pilot.app.screen.query_one(Input).value = "600"
        await pilot.press("enter")
        assert "600 ft" in said(pilot)
        await pilot.press("comma", "1")
        pilot.app.screen.query_one(Input).value = "600 m"
        await pilot.press("enter")
        await pilot.press("comma", "2", "6", "enter")
        await pilot.press("comma", "3", "2")
        now = household.facts(p)
        assert (now.altitude_ft, now.people, now.units) == (1969, 6, "metric")


# -- a power cut -----------------------------------------------------------------------------------


def cuts(p: Pantry) -> list[Outage]:
    return [one.payload for one in p.events if isinstance(one.payload, Outage)]


async def to_the_walk(pilot: Pilot[None], place: str) -> None:
    await pilot.press("S", "slash", *place, "enter", "x")


async def test_since_nobody_knows_when_counts_since_the_last_cold_reading(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await to_the_walk(pilot, "lasagne")
        await pilot.press("1", "1", *"unknown", "enter", "enter")
        assert "since nobody knows when" in shown(pilot)
        await pilot.press("escape", "1")
        assert cuts(p)[0].start == ""


async def test_a_door_ajar_is_asked_for_its_hours_and_not_how_full_it_was(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await to_the_walk(pilot, "peas")
        await pilot.press("2", "5", "enter")
        assert "Look at the food" in shown(pilot)
        await pilot.press("2", "enter")
        assert "door ajar" in shown(pilot)
        assert "Never taste" in shown(pilot)
        await pilot.press("escape", "1")
        assert cuts(p)[0].max_temp_f == 70


async def test_a_bare_number_that_no_freezer_can_have_is_asked_about(p: Pantry) -> None:
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await to_the_walk(pilot, "peas")
        await pilot.press("1", "1", "5", "enter", "1", "1", *"95", "enter")
        assert "95F or 95C" in " ".join(shown(pilot).split())


# -- while it stands open --------------------------------------------------------------------------


async def test_an_open_screen_shows_what_ran_out_of_its_hours(
    p: Pantry, monkeypatch: pytest.MonkeyPatch
) -> None:
    began = datetime.now(UTC).astimezone()
    act.move(p, next(iter(p.batches())).code, "kitchen", 1)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:

        def verdicts() -> set[Verdict]:
            lines = all_lines(pilot)
            rows = [line.row for line in lines if line.row and line.row.place == "kitchen"]
            return {row.verdict for row in rows}

        assert Verdict.DISCARD not in verdicts()
        monkeypatch.setattr(clock, "real", lambda: began + timedelta(minutes=125))
        pilot.app.look_around()  # type: ignore[attr-defined]
        assert verdicts() == {Verdict.DISCARD}


async def test_what_is_done_in_the_app_is_booked_at_its_minute(
    p: Pantry, monkeypatch: pytest.MonkeyPatch
) -> None:
    began = datetime.now(UTC).astimezone()
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        monkeypatch.setattr(clock, "real", lambda: began + timedelta(minutes=31))
        pilot.app.look_around()  # type: ignore[attr-defined]
        await pilot.press("u")
        assert "T09:3" in p.events[-1].recorded


async def test_the_same_sentence_said_again_is_not_hidden_by_the_first(
    p: Pantry, monkeypatch: pytest.MonkeyPatch
) -> None:
    class Waits:
        stopped = False

        def stop(self) -> None:
            self.stopped = True

    begun: list[Waits] = []

    def begin(_line: SaidLine, _after: float, _then: Callable[[], None]) -> Waits:
        begun.append(Waits())
        return begun[-1]

    monkeypatch.setattr(SaidLine, "set_timer", begin)
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        for _ in range(2):
            pilot.app.tell("Said twice.")  # type: ignore[attr-defined]
        assert [one.stopped for one in begun] == [True, False]


def test_the_app_makes_the_store_that_it_is_told_and_its_first_question_says_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Not where there is no terminal to ask it on; and without `make` nothing is made."""
    path = tmp_path / "house" / "new.db"
    with pytest.raises(Refused):
        run(path, Clock(TODAY), make=True)
    assert not path.exists()
    for stream in (sys.stdin, sys.stdout):
        monkeypatch.setattr(stream, "isatty", lambda: True)
    begun: list[Pantry] = []
    monkeypatch.setattr(PantryApp, "run", lambda app: begun.append(app.pantry))
    with pytest.raises(StoreError):
        run(path, Clock(TODAY))
    run(path, Clock(TODAY), make=True)
    run(path, Clock(TODAY), make=True)
    assert [one.path for one in begun] == [path, path]


async def test_the_first_question_names_the_new_store(tmp_path: Path) -> None:
    create(tmp_path / "new.db")
    with open_pantry(tmp_path / "new.db", TODAY) as p:
        async with PantryApp(p).run_test(size=(80, 24)) as pilot:
            await pilot.pause()
            assert "new.db is a new, empty store" in shown(pilot)
