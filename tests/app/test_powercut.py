"""The walk-through after a power cut says what its answer leaves out."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.main import PantryApp
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.log.payloads import Outage
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import create, open_pantry
from pantry_tui.services.stock import outage, places
from pantry_tui.services.stock.seen import At
from tests.app.screens import painted

TODAY = date(2026, 11, 25)


async def test_what_was_written_down_after_the_cut_is_named_before_it_is_booked(
    tmp_path: Path,
) -> None:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        places.add(p, "freezer", "freezer")
        made = putup.put_up(
            p, putup.read(p, "2 packs pork, frozen, freezer"), at=At(TODAY, 20 * 60)
        )
        async with PantryApp(p).run_test(size=(80, 24)) as pilot:
            await pilot.press("S", "x", "1", *"18:00 to 09:00", "enter", "1", "2", "enter")
            await pilot.pause()
            said = " ".join(painted(pilot).split())
        assert "Nothing stood there then." in said
        assert f"put up later: {made.code}." in said


async def test_discarding_is_offered_only_where_something_must_go(tmp_path: Path) -> None:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        places.add(p, "fridge", "fridge")
        putup.put_up(p, putup.read(p, "2 packs pork, fresh, fridge, 2026-11-24"))
        async with PantryApp(p).run_test(size=(80, 24)) as pilot:
            for hours, offered in (("1", False), ("9", True)):
                await pilot.press("S", "x", "1", *hours, "enter", "enter", "enter")
                await pilot.pause()
                assert "book it" in painted(pilot)
                assert ("must be discarded as discarded" in painted(pilot)) is offered
                await pilot.press("escape")


async def test_on_a_place_without_cold_it_asks_which_one_is_meant(tmp_path: Path) -> None:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        places.add(p, "cellar", "cellar")
        async with PantryApp(p).run_test(size=(80, 24)) as pilot:
            await pilot.press("S", "x")
            assert "neither refrigerator nor freezer" in painted(pilot)
            places.add(p, "fridge", "fridge")
            places.add(p, "deep freezer", "freezer")
            await pilot.press("x")
            await pilot.pause()
            assert "2  deep freezer" in painted(pilot)
            await pilot.press("3")
            await pilot.pause()
            assert "fridge without cold: what happened?" in painted(pilot)


async def test_a_room_is_asked_for_all_of_the_cold_in_it_at_once(tmp_path: Path) -> None:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        for line in (
            "kitchen, room", "fridge, fridge, in kitchen", "crisper, fridge, in fridge",
            "ice chest, freezer, in kitchen", "woodshed freezer, freezer",
        ):  # fmt: skip
            places.add_line(p, line)
        soup = putup.put_up(p, putup.read(p, "2 tubs chicken soup, cooked meal, fridge")).code
        putup.put_up(p, putup.read(p, "3 packs pork, frozen, ice chest"))
        async with PantryApp(p).run_test(size=(80, 40)) as pilot:
            await pilot.press("S", "x")
            await pilot.pause()
            said = painted(pilot)
            for number, way in enumerate(
                ("all 2 in kitchen", "all 3, everywhere", "kitchen › fridge",
                 "kitchen › fridge › crisper", "kitchen › ice chest", "woodshed freezer"), 1
            ):  # fmt: skip
                assert f"{number}  {way}" in said, said
            await pilot.press("1", "9", "enter")
            await pilot.pause()
            said = painted(pilot)
            assert "fridge: power cut of 9 h" in said
            assert "ice chest: power cut of 9 h" in said
            assert "woodshed" not in said
            await pilot.press("enter", "1")
            await pilot.pause()
            said = " ".join(painted(pilot).split())
        cut = [p.places[e.payload.place].name for e in p.events if isinstance(e.payload, Outage)]
    assert cut == ["fridge", "ice chest"]
    assert f"2 must go. The first of them is {soup}/1 chicken soup in kitchen › fridge: d" in said


@pytest.mark.parametrize("where", ["", ", in cellar"])
async def test_where_no_cold_stands_or_not_all_of_it_all_of_the_house_is_offered(
    tmp_path: Path, where: str
) -> None:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        for line in ("cellar, cellar", f"fridge, fridge{where}", "ice chest, freezer"):
            places.add_line(p, line)
        async with PantryApp(p).run_test(size=(80, 24)) as pilot:
            await pilot.press("S", "x", "1", "3", "enter", "enter", "1")
            await pilot.pause()
        cut = [p.places[e.payload.place].name for e in p.events if isinstance(e.payload, Outage)]
    assert set(cut) == {"fridge", "ice chest"}


async def test_what_must_go_stands_before_what_is_kept_and_is_counted(tmp_path: Path) -> None:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        places.add(p, "fridge", "fridge")
        for line in ("1 block cheddar, fridge", "2 packs pork, fresh, fridge, 2026-11-24"):
            putup.put_up(p, putup.read(p, line))
        fridge = p.find_place("fridge")
        cut = outage.cut_of(p, fridge, *outage.lasting(p, 9))
        found = outage.judge_all(p, fridge, cut)
        assert [(row.food, row.verdict in UNFIT) for row in found] == [
            ("pork", True),
            ("hard cheese", False),
        ]
        async with PantryApp(p).run_test(size=(80, 40)) as pilot:
            await pilot.press("S", "x", "1", "9", "enter", "enter")
            await pilot.pause()
            said = painted(pilot)
        assert "fridge: power cut of 9 h. 2 must go." in said
        assert said.index("pork") < said.index("hard cheese")


async def test_of_one_place_it_is_asked_where_else_it_was_off(tmp_path: Path) -> None:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        for line in (
            "kitchen, room", "fridge, fridge, in kitchen", "ice chest, freezer, in kitchen",
            "woodshed freezer, freezer",
        ):  # fmt: skip
            places.add_line(p, line)
        async with PantryApp(p).run_test(size=(80, 24)) as pilot:
            await pilot.press("S", "down", "x", "1")
            said = painted(pilot)
            assert "Where else was it off?" in said
            for way in ("only fridge", "all 2 in kitchen", "all 3, everywhere"):
                assert way in said
            await pilot.press("enter")
            assert "Where else was it off?" in painted(pilot), "Enter alone takes none"
            await pilot.press("2", "9", "enter", "enter", "1")
            # A door that stood open is one door.
            await pilot.press("x", "2")
            assert "For how many hours" in painted(pilot)
        cut = [p.places[e.payload.place].name for e in p.events if isinstance(e.payload, Outage)]
    assert cut == ["fridge", "ice chest"]


async def test_enter_on_what_now_says_that_it_takes_none(tmp_path: Path) -> None:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        places.add(p, "fridge", "fridge")
        putup.put_up(p, putup.read(p, "2 packs pork, fresh, fridge, 2026-11-24"))
        booked = len(p.events)
        async with PantryApp(p).run_test(size=(80, 24)) as pilot:
            await pilot.press("S", "x", "1", *"9", "enter", "enter", "enter")
            await pilot.pause()
            assert "Enter alone takes none" not in painted(pilot)
            await pilot.press("enter")
            await pilot.pause()
            told = " ".join(painted(pilot).split())
            assert "Enter alone takes none of these: press 1-3, or go to one with the" in told
            assert len(p.events) == booked
            await pilot.press("down", "enter")
            await pilot.pause()
        assert len(p.events) == booked + 1, "with an arrow first, Enter takes it"
