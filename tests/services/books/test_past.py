"""What is kept of each batch beside the log: kept by every act, and made again when it is not as it
was written."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from contextlib import closing
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.log.events import Event
from pantry_tui.core.log.payloads import Use
from pantry_tui.errors import StoreError
from pantry_tui.services.batchwork import putup
from pantry_tui.services.books.past import past
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan.portions import leavings
from pantry_tui.services.stock import act, places, undo
from pantry_tui.store import log
from pantry_tui.store import past as table

TODAY = date(2026, 11, 25)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    where = tmp_path / "store.db"
    create(where)
    with open_pantry(where, TODAY) as p:
        places.add(p, "larder", "pantry")
        for food in ("peaches", "pears"):
            line = f"3 pint jars {food}, boiling-water canned, larder, 1 aug 2026, minutes=25"
            putup.put_up(p, putup.read(p, line))
        act.use(p, "2A")
    return where


def left(p: Pantry) -> list[str]:
    return [f"{one.batch.food} {one.fate}" for one in leavings(p)]


def test_every_act_and_undo_is_seen_at_once_also_in_another_window(path: Path) -> None:
    with open_pantry(path, TODAY) as p, open_pantry(path, TODAY) as other:
        assert left(p) == left(other) == ["peaches used"]
        act.give(p, "3A", 1, "Aunt Sunniva")
        assert left(p) == left(other) == ["peaches used", "pears given"]
        undo.undo(other)
        assert left(p) == left(other) == ["peaches used"]
        act.use(p, "2A/3")
        undo.undo(p)
        code = putup.put_up(p, putup.read(p, "1 pint jar plums, jam, larder")).code
        assert {one.code for one in past(other).values()} == {"2A", "3A", code}
        undo.undo(p)
        assert {one.code for one in past(other).values()} == {"2A", "3A"}


def test_an_act_writes_the_rows_of_its_batches_alone(path: Path) -> None:
    with open_pantry(path, TODAY) as p:
        assert left(p) == ["peaches used"]
        changed: list[str] = []
        p.store.db.set_trace_callback(
            lambda sql: changed.append(sql) if "INTO past" in sql else None
        )
        act.use(p, "3A")
        p.store.db.set_trace_callback(None)
        assert len(changed) == 1
        assert left(p) == ["peaches used", "pears used"]
        assert table.whole(p.store.db)


def _dropped(db: sqlite3.Connection) -> None:
    db.execute("DROP TABLE past")


def _dropped_and_made(db: sqlite3.Connection) -> None:
    """As an act on one batch finds and leaves a file that an older program wrote."""
    db.execute("DROP TABLE past")
    db.execute("DELETE FROM meta WHERE name = 'past'")
    table.make(db)


def _of_another_shape(db: sqlite3.Connection) -> None:
    db.execute("ALTER TABLE past DROP COLUMN process")


def _lost(db: sqlite3.Connection) -> None:
    db.execute("DELETE FROM past WHERE code = '2A'")


def _flipped(db: sqlite3.Connection) -> None:
    db.execute("UPDATE past SET hash = hash + 1 WHERE code = '2A'")


def _taken_by_another_program(db: sqlite3.Connection) -> None:
    """It knows nothing of the table, and books a use."""
    (batch,) = db.execute("SELECT batch FROM codes WHERE code = '2A'").fetchone()
    id_ = f"{int(log.last_id(db)[:13]) + 1:013d}{0:05d}{'0' * 8}"
    log.append(db, Event(id_, "2026-11-25T12:00:00+00:00", TODAY, Use(batch, (f"{batch}.2",))))
    db.execute("INSERT OR IGNORE INTO marked VALUES (?)", (f"batch:{batch}",))
    db.execute("DELETE FROM marked")


@pytest.mark.parametrize(
    "hurt",
    [_dropped, _dropped_and_made, _of_another_shape, _lost, _flipped, _taken_by_another_program],
)
def test_what_is_not_as_it_was_written_is_made_again(
    path: Path, hurt: Callable[[sqlite3.Connection], None]
) -> None:
    with closing(sqlite3.connect(path)) as db, db:
        hurt(db)
    more = ["peaches used"] * (hurt is _taken_by_another_program)
    with open_pantry(path, TODAY) as p:
        assert left(p) == ["peaches used", *more]
        assert table.whole(p.store.db)
        act.use(p, "3A")
        assert left(p) == ["peaches used", *more, "pears used"]


@pytest.mark.parametrize("hurt", [_dropped, _of_another_shape])
def test_an_act_on_a_file_that_has_no_such_table_books_and_the_rest_is_made_later(
    path: Path, hurt: Callable[[sqlite3.Connection], None]
) -> None:
    with closing(sqlite3.connect(path)) as db, db:
        hurt(db)
    with open_pantry(path, TODAY) as p:
        act.use(p, "3A")
        assert left(p) == ["peaches used", "pears used"]


def test_of_a_file_that_may_not_be_written_it_is_folded_in_memory(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with closing(sqlite3.connect(path)) as db, db:
        _dropped(db)
    with open_pantry(path, TODAY) as p:

        def refuse() -> None:
            raise StoreError("it may not be written")

        monkeypatch.setattr(p.store, "write", refuse)
        assert left(p) == ["peaches used"]
        assert not table.whole(p.store.db)


def test_a_row_whose_sum_still_fits_is_hurt(path: Path) -> None:
    with closing(sqlite3.connect(path)) as db, db:
        db.execute("UPDATE past SET food = 'plums' WHERE code = '2A'")
    with open_pantry(path, TODAY) as p, pytest.raises(StoreError):
        past(p)
