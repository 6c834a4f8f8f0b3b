"""What is kept of each batch beside the log: kept by every act, made where an older program left
none, and damage where it is not as it was written."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from contextlib import closing
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.errors import StoreError
from pantry_tui.services.batchwork import putup
from pantry_tui.services.books.past import past
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan.portions import leavings
from pantry_tui.services.safekeeping import verify
from pantry_tui.services.stock import act, places, undo
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
        table.refuse_hurt(p.store.db)


def _dropped(db: sqlite3.Connection) -> None:
    """As in a file that an older program made."""
    db.execute("DROP TABLE past")
    db.execute("DELETE FROM sums WHERE what = 'past'")


def _of_another_shape(db: sqlite3.Connection) -> None:
    db.execute("ALTER TABLE past DROP COLUMN process")


@pytest.mark.parametrize("change", [_dropped, _of_another_shape])
def test_what_an_older_program_left_is_made_again_by_who_looks_and_by_who_acts(
    path: Path, change: Callable[[sqlite3.Connection], None]
) -> None:
    for _ in range(2):
        with closing(sqlite3.connect(path)) as db, db:
            change(db)
        with open_pantry(path, TODAY) as p:
            before = left(p)
            assert before[0] == "peaches used"
        with closing(sqlite3.connect(path)) as db, db:
            change(db)
        with open_pantry(path, TODAY) as p:
            act.use(p, "3A")
            assert left(p) == [*before, "pears used"]
    assert verify.verify(path, TODAY).ok


def _lost(db: sqlite3.Connection) -> None:
    db.execute("DELETE FROM past WHERE code = '2A'")


def _flipped(db: sqlite3.Connection) -> None:
    db.execute("UPDATE past SET food = 'plums' WHERE code = '2A'")


def _uncounted(db: sqlite3.Connection) -> None:
    db.execute("DELETE FROM sums WHERE what = 'past'")


@pytest.mark.parametrize("hurt", [_lost, _flipped, _uncounted])
def test_what_is_not_as_it_was_written_is_damage(
    path: Path, hurt: Callable[[sqlite3.Connection], None]
) -> None:
    with closing(sqlite3.connect(path)) as db, db:
        hurt(db)
    with open_pantry(path, TODAY) as p, pytest.raises(StoreError):
        past(p)
    assert not verify.verify(path, TODAY).ok


def test_a_row_that_holds_and_says_something_else_is_found_by_verify(path: Path) -> None:
    with closing(sqlite3.connect(path)) as db, db:
        row = table.rows(db)[0]
        table.replace(db, row._replace(gone="[]", last=""))
    with open_pantry(path, TODAY) as p:
        assert left(p) == []
    (wound,) = verify.verify(path, TODAY).hurt
    assert "past" in wound.what


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
        assert not table.is_ours(p.store.db)
