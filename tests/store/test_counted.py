"""Counts and sums: a row that is lost or led to wrongly is noticed by whoever reads the others."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from contextlib import closing
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.log.payloads import Reading
from pantry_tui.errors import StoreError
from pantry_tui.services.books.logbook import entries, log_window
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.services.stock import act, undo, view
from pantry_tui.store import damage

TODAY = date(2026, 11, 25)
FIXTURE = Path(__file__).parents[1] / "fixtures" / "store_3.sql"


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A store that was written without counts and sums, brought over."""
    file = tmp_path / "pantry.db"
    with closing(sqlite3.connect(file)) as db:
        db.executescript(FIXTURE.read_text(encoding="utf-8"))
    with open_pantry(file, TODAY) as p:
        view.due(p)
    return file


def test_a_store_without_counts_is_brought_over_whole(path: Path) -> None:
    assert verify(path, date(2026, 12, 1)).ok
    with open_pantry(path, TODAY) as p:
        rows = {row.code: (row.food, row.count, row.amount) for row in view.due(p)}
        assert rows["3A"][:2] == ("ground beef", 4)
        assert sum(row.count for row in view.due(p) if row.code == "2A") == 8
        assert (p.people, p.altitude_ft) == (5, 900)
        assert p.store.draft("count") == {"place": "x", "seen": [1, 2]}
        assert undo.undo(p).message.startswith("Took back: household")
        assert p.people == 4
    assert verify(path, date(2026, 12, 1)).ok


def test_the_log_is_brought_over_byte_for_byte(path: Path) -> None:
    was = sqlite3.connect(":memory:")
    was.executescript(FIXTURE.read_text(encoding="utf-8"))
    with closing(was), closing(sqlite3.connect(path)) as db:
        sql = "select * from log order by id"
        assert db.execute(sql).fetchall() == was.execute(sql).fetchall()


def test_a_damaged_log_is_not_brought_over(tmp_path: Path) -> None:
    file = tmp_path / "pantry.db"
    with closing(sqlite3.connect(file)) as db:
        db.executescript(FIXTURE.read_text(encoding="utf-8"))
        with db:
            db.execute("update log set day = '2020-01-01' where did = 'use'")
    before = file.read_bytes()
    with pytest.raises(StoreError, match="broken"):
        open_pantry(file, TODAY)
    assert file.read_bytes() == before


Ask = Callable[[Pantry], object]
USE = "select id from log where did = 'use' limit 1"


@pytest.mark.parametrize(
    ("lost", "ask"),
    [
        (f"delete from log where id = ({USE})", lambda p: act.use(p, "2A")),
        (f"delete from log where id = ({USE})", entries),
        ("delete from log where id = (select max(id) from log)", lambda p: log_window(p, 0, 5)),
        (f"delete from of_batch where event = ({USE})", lambda p: act.use(p, "2A")),
        ("delete from of_batch where event in (select event from of_batch "
         "join log on id = event where did = 'undo')", lambda p: act.use(p, "2A")),
        ("insert into of_batch select b.batch, (select max(event) from of_batch) from of_batch b "
         f"where b.event = ({USE})", lambda p: act.use(p, "2A")),
        ("delete from of_place where place = '' and event = (select max(event) from of_place "
         "where place = '')", lambda p: p.people),
        ("delete from places where name = 'fridge'", lambda p: p.places),
        ("delete from codes where code = '3A'", lambda p: act.use(p, "3A")),
        ("update codes set batch = (select batch from codes where code = '2A') "
         "where code = '3A'", lambda p: act.use(p, "3A")),
        ("delete from undone", entries),
        ("delete from undone", undo.undo),
        ("delete from lines where code = '3A'", view.due),
        ("update lines set n = 40 where code = '3A'", lambda p: view.due(p, place="larder")),
        ("update lines set d1 = '2020-01-01' where code = '5A'", view.due),
        ("insert into marked values ('batch:nobody')", view.due),
        ("update drafts set data = '{}'", lambda p: p.store.draft("count")),
    ],
)  # fmt: skip
def test_what_is_lost_is_said_by_who_reads_the_rest(path: Path, lost: str, ask: Ask) -> None:
    with closing(sqlite3.connect(path)) as db, db:
        assert db.execute(lost).rowcount
    before = path.read_bytes()
    with open_pantry(path, TODAY) as p, pytest.raises(StoreError, match="broken"):
        ask(p)
    assert path.read_bytes() == before
    assert damage.noted(path)


def test_a_mark_that_is_lost_is_said(path: Path) -> None:
    """A fridge was read too warm, and its stock is to be judged again before anything is shown."""
    with open_pantry(path, TODAY) as p:
        p.book(Reading(p.find_place("fridge").id, 60.0))
    with closing(sqlite3.connect(path)) as db, db:
        assert db.execute("delete from marked").rowcount
    with open_pantry(path, TODAY) as p, pytest.raises(StoreError, match="broken"):
        view.due(p)


def test_where_stock_stood_is_not_lost(path: Path) -> None:
    with open_pantry(path, TODAY) as p:
        p.book(Reading(p.find_place("fridge").id, 60.0))
    with closing(sqlite3.connect(path)) as db, db:
        assert db.execute("delete from stood").rowcount
    with open_pantry(path, TODAY) as p, pytest.raises(StoreError, match="broken"):
        view.due(p)
