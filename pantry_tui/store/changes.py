"""How often what is told of a thing has changed, and when last: for what is handed out and brought
up to date later, like a calendar."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from typing import NamedTuple


class Changed(NamedTuple):
    """`times` never falls, since the log only grows; `last` is ISO with its offset, "" never."""

    times: int
    last: str

    def __or__(self, other: object) -> Changed:
        """Of two things together."""
        assert isinstance(other, Changed)
        return Changed(self.times + other.times, max(self.last, other.last))


NEVER = Changed(0, "")


def of_batches(db: sqlite3.Connection) -> dict[str, Changed]:
    """Of each batch, by the events that speak of it."""
    return _counted(
        db.execute(
            "SELECT of_batch.batch, COUNT(*), MAX(log.recorded) FROM of_batch "
            "JOIN log ON log.id = of_batch.event GROUP BY of_batch.batch"
        )
    )


def of_places(db: sqlite3.Connection) -> dict[str, Changed]:
    """Of each place; "" is the household itself."""
    return _counted(
        db.execute(
            "SELECT of_place.place, COUNT(*), MAX(log.recorded) FROM of_place "
            "JOIN log ON log.id = of_place.event GROUP BY of_place.place"
        )
    )


def first(db: sqlite3.Connection) -> str:
    """The id of the first event ever, which no other store has; "" of an empty log."""
    row = db.execute("SELECT MIN(id) FROM log").fetchone()
    return str(row[0] or "")


def _counted(rows: Iterable[tuple[str, int, str]]) -> dict[str, Changed]:
    return {name: Changed(times, last) for name, times, last in rows}
