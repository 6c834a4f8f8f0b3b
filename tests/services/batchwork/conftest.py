"""What the tests of putting food up share."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

import pytest

from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places


@pytest.fixture
def chilled(larder: Pantry) -> Pantry:
    """A larder and a fridge, with a freezer and a cellar beside them."""
    for name in ("freezer", "cellar"):
        places.add(larder, name, name)
    return larder


@pytest.fixture(scope="module")
def kitchen(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Pantry]:
    """A household at 500 feet with a place of each climate, of which every line is only tried."""
    store = tmp_path_factory.mktemp("notes") / "store.db"
    create(store, people=2, altitude_ft=500)
    with open_pantry(store, date(2026, 11, 29)) as p:
        for name, climate in (
            ("larder", "pantry"), ("cellar", "cellar"), ("fridge", "fridge"), ("chest", "freezer"),
            ("room", "room"),
        ):  # fmt: skip
            places.add(p, name, climate)
        yield p
