"""A small store of a test's own: places, and what was put up in them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path

from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places


@contextmanager
def furnished(
    folder: Path, today: date, shelves: Iterable[str] = ("larder",), lines: Iterable[str] = ()
) -> Iterator[Pantry]:
    """Opened on that day; every shelf has the climate of a pantry."""
    create(folder / "store.db")
    with open_pantry(folder / "store.db", today) as pantry:
        for name in shelves:
            places.add(pantry, name, "pantry")
        for line in lines:
            putup.put_up(pantry, putup.read(pantry, line))
        yield pantry
