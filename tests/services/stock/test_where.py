"""What is in a place for which nothing is published is told where something is."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, places, view

KRAUT = "5 l crock sauerkraut, kitchen, 10 sept, salt 2.25%"


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", Clock(date(2026, 10, 24), 18 * 60)) as pantry:
        places.add(pantry, "kitchen", "room")
        yield pantry


def _up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def _verdict(p: Pantry, code: str) -> Verdict:
    return view.rows_named(p, [f"{code}/1"])[f"{code}/1"].verdict


def test_a_ferment_that_is_ready_in_a_room_is_told_where_it_keeps_and_keeps_there(
    p: Pantry,
) -> None:
    places.add(p, "fridge", "fridge")
    code = _up(p, KRAUT)
    done = act.ready(p, code)
    assert done.warnings == ("Move it to fridge now: a figure is published for there.",)
    act.move(p, code, "fridge")
    assert _verdict(p, code) is Verdict.SOUND


def test_no_place_is_named_that_the_household_has_not(p: Pantry) -> None:
    assert act.ready(p, _up(p, KRAUT)).warnings == ()


def test_no_place_is_named_where_more_than_the_place_is_in_doubt(p: Pantry) -> None:
    """Too little salt stays too little in the cold."""
    places.add(p, "fridge", "fridge")
    assert act.ready(p, _up(p, KRAUT.replace("2.25%", "0.5%"))).warnings == ()


def test_a_move_to_where_nothing_is_published_says_which_and_where(p: Pantry) -> None:
    places.add(p, "fridge", "fridge")
    places.add(p, "larder", "pantry")
    code = _up(p, KRAUT)
    act.ready(p, code)
    act.move(p, code, "fridge")
    (said,) = act.move(p, code, "larder").warnings
    assert said.startswith(f"{code}/1 sauerkraut in larder: No published figure for sauerkraut")
