"""A refrigerator that was read warm and was set to something else since makes nothing milder."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

import pytest

from pantry_tui.core.words import SEVERITY, Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import create, open_pantry
from pantry_tui.services.stock import places, readings, view

DAY = date(2026, 11, 25)


def verdict(tmp_path: Path, change: dict[str, Any] | None) -> Verdict:
    """Of mince in a refrigerator that was read at 55 F, four hours after it was read."""
    store = tmp_path / f"{change}.db"
    create(store, people=2)
    with open_pantry(store, Clock(DAY, 600)) as p:
        places.add(p, "fridge", "fridge")
        putup.put_up(p, putup.read(p, "2 lb ground beef, fresh, fridge"))
        readings.read(p, "fridge", 55.0, since=10)
    if change is not None:
        with open_pantry(store, Clock(DAY, 630)) as p:
            places.change(p, "fridge", **change)
    with open_pantry(store, Clock(DAY, 600 + 240)) as p:
        return view.due(p)[0].verdict


@pytest.mark.parametrize(
    "change",
    [{"climate": "cellar"}, {"climate": "pantry"}, {"climate": "fridge"},
     {"temp_f": 36.0}, {"temp_f": 45.0}],
)  # fmt: skip
def test_what_it_is_set_to_takes_nothing_back(tmp_path: Path, change: dict[str, Any]) -> None:
    stays, changed = verdict(tmp_path, None), verdict(tmp_path, change)
    assert stays is Verdict.DISCARD
    assert SEVERITY.index(changed) <= SEVERITY.index(stays), changed
