"""A store without a fridge: what was set to thaw is not frozen, though it is still booked in its
freezer."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import act, moving, places
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", people=2)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        places.add(pantry, "chest", "freezer")
        yield pantry


def beef(p: Pantry, packs: int = 1) -> str:
    return up(p, f"{packs} 1 lb packs ground beef, frozen, chest, {TODAY - timedelta(days=20)}")


def test_what_was_taken_out_is_eaten_from_the_plan(p: Pantry) -> None:
    code = beef(p)
    weeks.accept(p)
    (take,) = weeks.week(p).take
    assert take.thaw_by == TODAY
    act.thaw(p, code)
    p.today = take.day
    assert weeks.week(p).take[0].thaw_by is None
    first = weeks.eaten(p, p.today)
    assert not any("Not booked" in said for said in first.warnings)
    p.today += timedelta(days=1)
    assert weeks.eaten(p, p.today).containers == (f"{code}/1",)


def test_what_was_taken_out_is_not_planned_to_thaw_again(p: Pantry) -> None:
    act.thaw(p, beef(p))
    (take,) = weeks.week(p).take
    assert take.thaw_by is None


def test_what_came_into_a_freezer_again_is_frozen(p: Pantry) -> None:
    code = beef(p, 2)
    places.add(p, "fridge", "fridge")
    act.thaw(p, code)
    moving.move(p, f"{code}/1", "chest")
    assert any(take.thaw_by for take in weeks.week(p).take)
    assert "now stands in fridge" in act.thaw(p, f"{code}/1").message
