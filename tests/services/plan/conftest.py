"""A household of two."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan.appetite import set_people
from pantry_tui.services.stock import places
from tests.services.plan.putting_up import TODAY


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    """A store with a larder and a fridge, for two; where a test needs others it has its own."""
    set_people(larder, 2)
    return larder


@pytest.fixture
def four_places(tmp_path: Path) -> Iterator[Pantry]:
    """A store with a pantry, a fridge, a freezer and a cellar, for two."""
    create(tmp_path / "store.db", altitude_ft=0, people=2)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name in ("pantry", "fridge", "freezer", "cellar"):
            places.add(pantry, name, name)
        yield pantry
