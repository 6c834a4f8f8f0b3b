"""Two hours out of the cold are two hours in all: packing into a freezer gives none of them back
(USDA FSIS, the two-hour rule)."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup, repack
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, places, view

DAY = date(2026, 11, 25)


def at(store: Path, day: date, minute: int) -> Pantry:
    return open_pantry(store, Clock(day, minute))


@pytest.mark.parametrize(
    ("before", "after", "over"), [(90, 60, True), (0, 60, False), (50, 60, False)]
)
def test_minutes_used_before_it_was_frozen_are_used(
    tmp_path: Path, before: int, after: int, over: bool
) -> None:
    store = tmp_path / "store.db"
    create(store, people=2)
    with at(store, DAY, 600) as p:
        for name, climate in (("freezer", "freezer"), ("fridge", "fridge"), ("table", "room")):
            places.add(p, name, climate)
        putup.put_up(p, putup.read(p, "2 lb ground beef, fresh, fridge"))
        act.move(p, "2A", "table")
    with at(store, DAY, 600 + before) as p:
        repack.repack(p, "2A", "2 1lb packs ground beef, frozen, freezer", took="all")
    with at(store, DAY.replace(day=26), 600) as p:
        act.thaw(p, "3A/1")
    with at(store, DAY.replace(day=27), 600) as p:
        act.move(p, "3A/1", "table")
    with at(store, DAY.replace(day=27), 600 + after) as p:
        rows = {row.container_ids[0]: row.verdict for row in view.due(p) if row.place == "table"}
        assert (rows["3A/1"] in (Verdict.DISCARD, Verdict.DO_NOT_TASTE)) is over
