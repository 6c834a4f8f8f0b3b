"""The store file: all or nothing, two windows, an append-only log."""

from __future__ import annotations

import contextlib
import multiprocessing
import sqlite3
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.log.events import Event
from pantry_tui.core.log.payloads import Missing
from pantry_tui.errors import PantryError, Refused, StoreError
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, places, undo, view
from pantry_tui.store import log
from pantry_tui.store.lines import COLUMNS
from pantry_tui.store.store import Store

TODAY = date(2026, 11, 25)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A store with three jars of peaches, code 2A."""
    file = tmp_path / "store.db"
    create(file)
    with open_pantry(file, TODAY) as p:
        places.add(p, "larder", "pantry")
        putup.put_up(p, putup.read(p, "3 pint jars peaches, boiling-water canned, larder"))
    return file


def event(id_: str) -> Event:
    return Event(id_, "2026-11-25T00:00:00+00:00", TODAY, Missing("b", ("b.1",)))


def test_a_transaction_is_all_or_nothing(path: Path) -> None:
    store = Store(path)
    before = log.select(store.db)
    with pytest.raises(RuntimeError, match="light"), store.write():  # noqa: PT012 - the case
        log.append(store.db, event("9" * 26))
        raise RuntimeError("the light went out")
    assert log.select(store.db) == before
    with pytest.raises(StoreError, match="broken"), store.write():  # noqa: PT012 - the case
        log.append(store.db, event("9" * 26))
        log.append(store.db, event("9" * 26))
    assert log.select(store.db) == before
    store.close()


def _die_while_writing(path: str) -> None:
    import os

    store = Store(Path(path))
    with store.write():
        log.append(store.db, event("9" * 26))
        os._exit(1)


def test_a_killed_program_leaves_the_store_whole(path: Path) -> None:
    with open_pantry(path, TODAY) as p:
        before = list(p.events)
    process = multiprocessing.get_context("spawn").Process(
        target=_die_while_writing, args=(str(path),)
    )
    process.start()
    process.join(30)
    with open_pantry(path, TODAY) as p:
        assert list(p.events) == before
        act.use(p, "2A")


def test_two_windows_do_not_eat_the_same_jar(path: Path) -> None:
    with open_pantry(path, TODAY) as one, open_pantry(path, TODAY) as two:
        act.use(one, "2A/1")
        with pytest.raises(Refused):
            act.use(two, "2A/1")
        act.use(two, "2A/2")
        one.catch_up()
        assert [c.here for c in one.containers_of(one.batches()[0])] == [False, False, True]


def test_a_locked_store_says_so(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("pantry_tui.store.store.WRITE_WAIT_S", 0.0)
    other = sqlite3.connect(path, timeout=0)
    with open_pantry(path, TODAY) as p:
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(StoreError, match="try again"):
            act.use(p, "2A")
        other.rollback()
        act.use(p, "2A")
    other.close()


def test_a_store_held_by_another_program_is_not_called_broken(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("pantry_tui.store.store.WAIT_S", 0.0)
    before = path.read_bytes()
    other = sqlite3.connect(path, timeout=0, isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    with pytest.raises(StoreError, match="in use by another program") as said:
        open_pantry(path, TODAY)
    assert "broken" not in said.value.message
    other.execute("ROLLBACK")
    other.close()
    assert path.read_bytes() == before
    open_pantry(path, TODAY).close()


def test_nothing_is_ever_deleted(path: Path) -> None:
    with open_pantry(path, TODAY) as p:
        ids = [e.id for e in p.events]
        for do in (act.use, act.open_):
            do(p, "2A")
            undo.undo(p)
        assert [e.id for e in p.events][: len(ids)] == ids
        assert len(p.events) == len(ids) + 4
        assert sorted(e.id for e in p.events) == [e.id for e in p.events]


def test_a_spoiled_line_of_the_log_is_said_in_one_sentence(path: Path) -> None:
    with sqlite3.connect(path) as db:
        db.execute("update log set payload = '{' where did = 'put_up'")
    db.close()
    with open_pantry(path, TODAY) as p, pytest.raises(PantryError, match="backup"):
        act.use(p, "2A")


def test_an_open_pantry_is_the_fold_of_its_file(path: Path) -> None:
    with open_pantry(path, TODAY) as p:
        act.open_(p, "2A")
        act.give(p, "2A", 1, "Aunt Sunniva")
        stock = p.stock.all()
    with open_pantry(path, TODAY) as again:
        assert isinstance(again, Pantry)
        assert again.stock.all() == stock


@pytest.mark.parametrize(
    "spoil",
    [
        "update log set payload = '{}' where did = 'put_up'",
        "update log set payload = '[1]' where did = 'put_up'",
        "update places set climate = 'room'",
        "update log set day = '2020-01-01' where did = 'put_up'",
        "update log set at = 5",
        "drop table log",
        "drop table meta",
    ],
)
def test_a_store_that_makes_no_sense_is_broken_and_untouched(path: Path, spoil: str) -> None:
    with sqlite3.connect(path) as db:
        db.execute(spoil)
    db.close()
    before = path.read_bytes()
    with pytest.raises(StoreError, match="broken"), open_pantry(path, TODAY) as p:
        act.use(p, "2A")
    assert path.read_bytes() == before


@pytest.mark.parametrize(
    "spoil",
    [
        "update lines set best_by = '2029-01-01'",
        "update lines set v0 = 6, d1 = null",
        "delete from lines",
        f"insert into lines ({COLUMNS}, hash) select {COLUMNS}, hash from lines",
    ],
)
def test_a_changed_line_of_the_stock_tables_is_never_shown(path: Path, spoil: str) -> None:
    with open_pantry(path, TODAY) as p:
        shown = view.due(p)
    with sqlite3.connect(path) as db:
        db.execute(spoil)
    db.close()
    with open_pantry(path, TODAY) as p, contextlib.suppress(StoreError):
        assert view.due(p) == shown, "made again from the log"
