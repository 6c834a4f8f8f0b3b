"""A source of rows that are held already, for tests of the list that shows them."""

from __future__ import annotations

from collections.abc import Sequence

from pantry_tui.services.stock.rows import DueRow


class Held:
    """Rows in the order they are given; no heads."""

    def __init__(self, rows: Sequence[DueRow], _order: str = "") -> None:
        self._rows = rows
        self._at: dict[str, int] = {}
        for number, row in enumerate(rows):
            for name in (row.code, *row.container_ids):
                self._at.setdefault(name, number)

    @property
    def total(self) -> int:
        return len(self._rows)

    def rows(self, start: int, stop: int) -> Sequence[DueRow]:
        return self._rows[max(start, 0) : max(stop, 0)]

    def where(self, container: str) -> int | None:
        return self._at.get(container)

    def heads(self) -> Sequence[tuple[str, int]]:
        return ()
