"""Another window that commits while a count is held against its rows: nothing is called broken."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.log.payloads import Use
from pantry_tui.core.model import Batch
from pantry_tui.errors import StoreError
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.stock import act, view
from pantry_tui.store import damage, lines, log, marks, past, places, sums

TODAY = date(2026, 11, 25)
#: What is read of a store and held against what was written of it.
READ: dict[str, Callable[[Pantry], object]] = {
    "the log": lambda p: log.everything(p.store.db),
    "a batch": lambda p: log.of_batch(p.store.db, _batch(p)),
    "several batches": lambda p: log.of_batches(p.store.db, _all(p)),
    "what counts no more": lambda p: log.undone(p.store.db),
    "how many events": lambda p: log.refuse_lost(p.store.db),
    "the places": lambda p: places.all_of(p.store.db),
    "what came of each batch": lambda p: past.rows(p.store.db),
    "all lines": lambda p: lines.refuse_hurt(p.store.db),
    "the lines of a code": lambda p: lines.refuse_fewer(p.store.db, "9F", _batch(p)),
    "the lines of a food": lambda p: lines.refuse_food(p.store.db, "runner beans"),
    "what is marked": lambda p: marks.refuse_lost(p.store.db),
    "the due list": view.due,
    "all of a batch": lambda p: view.rows_of(p, _there(p)),
}


def _batch(p: Pantry) -> str:
    return _there(p).id


def _all(p: Pantry) -> list[str]:
    return [id_ for (id_,) in p.store.db.execute("SELECT DISTINCT batch FROM codes")]


def _there(p: Pantry) -> Batch:
    batch = p.batch("9F")
    assert batch is not None
    return batch


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    path = tmp_path_factory.mktemp("demo") / "demo.db"
    build_demo(path, TODAY)
    return path.read_bytes()


@pytest.mark.parametrize("what", READ)
def test_a_commit_between_rows_and_their_number_hurts_nobody(
    what: str, tmp_path: Path, demo: bytes
) -> None:
    path = tmp_path / "pantry.db"
    path.write_bytes(demo)
    with open_pantry(path, TODAY) as reader, open_pantry(path, TODAY) as writer:
        view.due(reader)
        batch = _there(writer)
        ids = tuple(one.id for one in writer.containers_of(batch) if one.here)
        tried: list[str] = []

        def commits(sql: str) -> None:
            """As the counts are asked for the other one gets its turn, if it may have one now."""
            if tried or not any(word in sql for word in ("FROM sums", "FROM totals")):
                return
            tried.append(sql)
            with suppress(StoreError):  # it waits until the reader is done
                booking.__exit__(None, None, None)

        booking = writer.writing()
        booking.__enter__()
        writer.book(Use(batch.id, ids[:1]))
        writer.store.db.execute("PRAGMA busy_timeout = 0")
        reader.store.db.set_trace_callback(commits)
        READ[what](reader)
        reader.store.db.set_trace_callback(None)
        assert not damage.noted(path)
        assert not reader.store.db.in_transaction
        if not tried:
            with suppress(StoreError):
                booking.__exit__(None, None, None)
    with open_pantry(path, TODAY) as after:
        act.use(after, "9F")


def test_what_is_read_at_once_is_let_go_whatever_happens(tmp_path: Path, demo: bytes) -> None:
    path = tmp_path / "pantry.db"
    path.write_bytes(demo)
    with open_pantry(path, TODAY) as p:
        with pytest.raises(ZeroDivisionError), sums.at_once(p.store.db):
            print(len(log.everything(p.store.db)) / 0)
        assert not p.store.db.in_transaction
        with p.writing(), sums.at_once(p.store.db):
            log.everything(p.store.db)
        act.use(p, "9F")


def test_several_batches_are_read_as_each_alone(tmp_path: Path, demo: bytes) -> None:
    path = tmp_path / "pantry.db"
    path.write_bytes(demo)
    with open_pantry(path, TODAY) as p:
        batches = _all(p)
        assert log.of_batches(p.store.db, batches) == {
            id_: log.of_batch(p.store.db, id_) for id_ in batches
        }
        p.store.db.execute("DELETE FROM of_batch WHERE batch = ?", (batches[0],))
        with pytest.raises(damage.Damaged):
            log.of_batches(p.store.db, batches)
        assert log.of_batches(p.store.db, batches[1:])
