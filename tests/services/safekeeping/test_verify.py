"""What is hurt is found, named with what it touched, and what holds is brought out."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Sequence
from contextlib import closing
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.log.events import Event
from pantry_tui.core.log.payloads import PutUp
from pantry_tui.errors import Refused, StoreError
from pantry_tui.services.books.logbook import log as log_in_words
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.safekeeping.backup import backup
from pantry_tui.services.safekeeping.verify import save, verify
from pantry_tui.services.stock import view
from pantry_tui.store import damage, soundness

TODAY = date(2026, 11, 25)


@pytest.fixture
def path(tmp_path: Path, demo_file: bytes) -> Path:
    file = tmp_path / "pantry.db"
    file.write_bytes(demo_file)
    return file


def spoil(path: Path, sql: str) -> None:
    with closing(sqlite3.connect(path)) as db, db:
        db.execute(sql)


def test_a_whole_store_is_whole_on_any_day_and_untouched(path: Path) -> None:
    before = path.read_bytes()
    for day in (date(2026, 11, 25), date(2027, 6, 1), date(2024, 1, 1)):
        found = verify(path, day)
        assert found.ok, found.hurt
        assert (found.events > 200, found.lines > 50, found.containers > 300) == (True,) * 3
    assert path.read_bytes() == before
    assert found.newest_backup is None
    assert verify(path, TODAY).notes == ()


def killed_while_writing(path: Path) -> bytes:
    """The store as a program leaves it that is killed while it writes; what was in it before."""
    before = path.read_bytes()
    with closing(sqlite3.connect(path, isolation_level=None)) as db:
        db.execute("PRAGMA cache_size = 1")  # so that pages reach the file before the commit
        db.execute("BEGIN")
        db.execute("UPDATE log SET recorded = 'half'")
        db.execute("CREATE TABLE much AS SELECT hex(randomblob(2000)) FROM log")
        left = {one: one.read_bytes() for one in (path, Path(f"{path}-journal"))}
        db.execute("ROLLBACK")
    for file, content in left.items():
        file.write_bytes(content)
    assert path.read_bytes() != before
    return before


def test_what_a_killed_program_left_half_written_is_no_damage(path: Path) -> None:
    before = killed_while_writing(path)
    assert verify(path, TODAY).ok
    assert not damage.noted(path)
    assert path.read_bytes() == before
    killed_while_writing(path)
    assert verify(backup(path).path, TODAY).ok


def test_a_store_that_is_locked_or_may_not_be_written_is_not_called_hurt(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(soundness, "WAIT_S", 0.0)
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(StoreError, match="in use by another program"):
            verify(path, TODAY)
    killed_while_writing(path)
    monkeypatch.setattr(soundness, "_take_back_half_written", lambda _: None)
    with pytest.raises(StoreError, match="Allow writing"):
        verify(path, TODAY)
    assert not damage.noted(path)


def test_what_is_booked_while_it_is_looked_over_is_no_damage(
    demo: Pantry, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Another window that books then waits until the look is over."""
    seen = soundness.beside

    def meanwhile(events: Sequence[Event]) -> soundness.Beside:
        window = sqlite3.connect(demo.path, timeout=0, isolation_level=None)
        with closing(window), pytest.raises(sqlite3.OperationalError, match="locked"):
            window.execute("DELETE FROM of_batch")
        return seen(events)

    monkeypatch.setattr(soundness, "beside", meanwhile)
    assert verify(demo.path, TODAY).ok


def test_every_act_leaves_it_whole(demo: Pantry) -> None:
    from pantry_tui.services.stock import act, readings, undo

    for do in (act.use, act.open_, act.missing):
        do(demo, "2A")
        assert verify(demo.path, TODAY).ok
    undo.undo(demo)
    readings.read_line(demo, "fridge", "50F")
    assert verify(demo.path, TODAY).ok
    undo.undo(demo)
    undo.redo(demo)
    assert verify(demo.path, TODAY).ok


def test_an_event_that_was_changed_is_named_with_what_it_touched(path: Path) -> None:
    with closing(sqlite3.connect(path)) as db:
        sql = (
            "select event, code from of_batch join codes using (batch) join log on id = event "
            "where did = 'use' limit 1"
        )
        event, code = db.execute(sql).fetchone()
    spoil(path, f"update log set day = '2020-01-01' where id = '{event}'")
    before = path.read_bytes()
    found = verify(path, TODAY)
    assert not found.ok
    (mine,) = [one for one in found.hurt if one.event == event and "check value" in one.what]
    assert mine.touched == (code,)
    assert path.read_bytes() == before
    with pytest.raises(StoreError, match="broken"):
        open_pantry(path, TODAY)


@pytest.mark.parametrize(
    "sql",
    [
        "delete from log where did = 'use'",
        "delete from of_batch where event = (select max(event) from of_batch)",
        "insert into of_batch select 'b', id from log where did = 'use' limit 1",
        "delete from of_place where event = (select max(event) from of_place)",
        "update codes set code = '9ZZ' where code = '2A'",
        "insert into undone select id from log where did = 'use' limit 1",
        "delete from places where name = 'fridge'",
        "update places set climate = 'room' where name = 'fridge'",
        "update lines set best_by = '2029-01-01' where code = '2A'",
        "delete from lines where code = '2A'",
        "update totals set count = count + 1 where place = ''",
        "update log set at = 9 where did = 'put_up'",
        "drop table codes",
        "drop index log_did",
        # A byte that no text may hold, in each name that is looked for elsewhere.
        *(
            f"update {table} set {column} = cast(x'b9' || cast({column} as blob) as text) "
            f"where {column} = (select max({column}) from {table})"
            for table, columns in (
                ("log", ("id", "recorded", "day", "did", "together", "payload")),
                ("of_batch", ("batch", "event")),
                ("of_place", ("place", "event")),
                ("places", ("id", "name", "climate")),
                ("lines", ("batch", "code", "food", "place")),
                ("codes", ("code", "batch")),
            )
            for column in columns
        ),
    ],
)
def test_whatever_is_changed_is_noticed(path: Path, sql: str) -> None:
    spoil(path, sql)
    if sql.startswith("drop index"):
        assert verify(path, TODAY).ok, "an index is no record"
        return
    assert not verify(path, TODAY).ok


def test_a_lid_code_that_was_given_twice_is_named(path: Path) -> None:
    """By a program that is at fault, so every check value holds."""
    from dataclasses import replace

    from pantry_tui.store import log
    from pantry_tui.store.store import Store

    store = Store(path)
    first = log.select(store.db, "WHERE did = 'put_up'")[0]
    assert isinstance(first.payload, PutUp)
    twice = first.payload._replace(batch="another", containers=("another.1",))
    with store.write():
        log.append(store.db, replace(first, id="9" * 26, payload=twice))
    store.close()
    found = verify(path, TODAY)
    assert any("lid code" in one.what and one.event == "9" * 26 for one in found.hurt)


def test_a_day_to_come_is_named_and_is_no_damage(path: Path) -> None:
    found = verify(path, date(2026, 10, 1))
    assert found.ok
    assert any("still to come" in note for note in found.notes)


def test_the_note_of_damage_goes_when_nothing_is_hurt(path: Path) -> None:
    damage.note(path, "a cable was loose")
    assert verify(path, TODAY).ok
    open_pantry(path, TODAY).close()


def test_the_newest_sound_backup_is_named(path: Path) -> None:
    made = backup(path)
    spoil(path, "delete from codes")
    assert verify(path, TODAY).newest_backup == made.path


def test_a_file_of_somebody_else_is_not_verified(tmp_path: Path) -> None:
    letter = tmp_path / "letter.txt"
    letter.write_text("Dear aunt")
    for file in (letter, tmp_path, tmp_path / "nowhere.db"):
        with pytest.raises(StoreError):
            verify(file, TODAY)
    assert [one.name for one in tmp_path.iterdir()] == ["letter.txt"]


# -- salvage ---------------------------------------------------------------------------------------


def shown(path: Path) -> list[object]:
    with open_pantry(path, TODAY) as p:
        return [view.due(p), log_in_words(p), view.shelves(p), p.home]


def test_all_of_a_whole_store_is_brought_out(path: Path, tmp_path: Path) -> None:
    saved = save(path, tmp_path / "new.db")
    assert saved.lost == 0
    assert verify(saved.path, TODAY).ok
    assert shown(saved.path) == shown(path)


def zero(path: Path, page: int) -> None:
    with path.open("r+b") as file:
        file.seek((page - 1) * 4096)
        file.write(bytes(4096))


def root_of(path: Path, table: str) -> int:
    with closing(sqlite3.connect(path)) as db:
        sql = "select rootpage from sqlite_schema where name = ?"
        return int(db.execute(sql, (table,)).fetchone()[0])


def test_a_lost_inner_page_loses_no_event_but_its_own(path: Path, tmp_path: Path) -> None:
    events = verify(path, TODAY).events
    zero(path, root_of(path, "log"))
    assert not verify(path, TODAY).ok
    saved = save(path, tmp_path / "new.db")
    inner = events - saved.events  # rows that stand on the lost page itself
    assert 0 <= inner < 30
    assert verify(saved.path, TODAY).events == saved.events


@pytest.mark.parametrize(
    "spoils",
    [
        lambda path: zero(path, 1),
        lambda path: zero(path, root_of(path, "codes")),
        lambda path: zero(path, root_of(path, "lines")),
        lambda path: spoil(path, "drop table of_batch"),
    ],
    ids=["first page", "codes", "lines", "of_batch"],
)
def test_what_stands_beside_the_log_comes_back_from_it(
    path: Path, tmp_path: Path, spoils: Callable[[Path], None]
) -> None:
    whole = shown(path)
    backup(path)  # so that it is known to be a store even without its first page
    spoils(path)
    assert not verify(path, TODAY).ok
    before = path.read_bytes()
    saved = save(path, tmp_path / "new.db")
    assert path.read_bytes() == before
    assert saved.lost == 0
    assert shown(saved.path) == whole


def test_an_event_that_is_hurt_is_left_behind_and_counted(path: Path, tmp_path: Path) -> None:
    spoil(path, "update log set day = '2020-01-01' where id = (select max(id) from log)")
    events = verify(path, TODAY).events
    saved = save(path, tmp_path / "new.db")
    assert (saved.events, saved.lost) == (events, 1)


def test_a_long_event_is_read_over_all_its_pages(tmp_path: Path, demo: Pantry) -> None:
    from pantry_tui.services.books import rating

    rating.taste(demo, "2A", "again", "so good " * 2400)
    saved_from = demo.path
    zero(saved_from, 1)
    saved = save(saved_from, tmp_path / "new.db")
    with open_pantry(saved.path, TODAY) as p:
        assert len(p.events) == len(demo._events or ()) or saved.events == len(p.events)
        assert any("so good " * 100 in repr(event.payload) for event in p.events)


def test_salvage_never_overwrites_and_says_where_there_is_nothing(
    path: Path, tmp_path: Path
) -> None:
    with pytest.raises(Refused, match="already there"):
        save(path, path)
    letter = tmp_path / "letter.txt"
    letter.write_text("Dear aunt " * 1000)
    with pytest.raises(StoreError, match="No event"):
        save(letter, tmp_path / "new.db")
    with pytest.raises(StoreError):
        save(tmp_path / "nowhere.db", tmp_path / "new.db")
    assert not (tmp_path / "new.db").exists()


def test_a_store_of_a_newer_version_is_not_damaged(path: Path) -> None:
    """What a newer program wrote into it this one cannot weigh."""
    spoil(path, "ALTER TABLE log ADD COLUMN later TEXT")
    spoil(path, "PRAGMA user_version = 999")
    with pytest.raises(StoreError, match="newer version: update the program") as refused:
        verify(path, TODAY)
    assert "salvage" not in str(refused.value)
    assert not damage.noted(path)
