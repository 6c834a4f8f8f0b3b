"""Counts and sums: a row that is lost or led to wrongly is noticed by whoever reads the others."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from datetime import date
from pathlib import Path
from threading import Barrier
from typing import Any

import pytest

from pantry_tui.cli import main
from pantry_tui.core.log.payloads import Reading
from pantry_tui.errors import StoreError
from pantry_tui.services.books.logbook import entries, log_window
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.services.stock import act, undo, view
from pantry_tui.store import damage
from tests.fixtures import answer, load

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


#: What no later version says in other words, or dates by a stricter rule.
_LINE = ("code", "container_ids", "food", "method", "place", "state", "count", "amount", "size")
_EVENT = ("id", "day", "at", "kind", "code", "undone")


def test_a_store_without_counts_answers_what_it_did(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = load("uncounted", tmp_path / "pantry.db")
    assert only(_LINE, asked(file, capsys, "due")) == only(_LINE, answer("uncounted", "due"))
    assert only(_EVENT, asked(file, capsys, "log")) == only(_EVENT, answer("uncounted", "log"))
    for code, was in answer("uncounted", "show").items():
        now = asked(file, capsys, "show", code)
        assert only(_LINE, now.pop("containers")) == only(_LINE, was["containers"])
        assert {key: now[key] for key in ("food", "method", "made", "process", "note")} == {
            key: was[key] for key in ("food", "method", "made", "process", "note")
        }
    assert asked(file, capsys, "verify")["ok"]
    assert len(list(tmp_path.glob("pantry-before-4-*.db"))) == 1


def test_of_several_windows_one_brings_it_over(tmp_path: Path) -> None:
    file = load("uncounted", tmp_path / "pantry.db")
    begin = Barrier(4)

    def opened(_: int) -> tuple[str, ...]:
        begin.wait()
        with open_pantry(file, TODAY) as p:
            return p.store.told

    with ThreadPoolExecutor(4) as windows:
        told = list(windows.map(opened, range(4)))
    assert sum(map(len, told)) == 1
    assert len(list(tmp_path.glob("pantry-before-4-*.db"))) == 1
    assert verify(file, TODAY).ok


def only(keys: Sequence[str], rows: list[dict[str, Any]]) -> list[tuple[Any, ...]]:
    return sorted((tuple(row[key] for key in keys) for row in rows), key=repr)


def asked(file: Path, capsys: pytest.CaptureFixture[str], *words: str) -> Any:
    capsys.readouterr()
    assert main(["--store", str(file), "--today", TODAY.isoformat(), "--json", *words]) == 0
    return json.loads(capsys.readouterr().out)


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
