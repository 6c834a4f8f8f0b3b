"""Bringing a backup back: at once, after a look, keeping what it replaces."""

from __future__ import annotations

import os
import sqlite3
import subprocess
import sys
from contextlib import closing
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.errors import Refused, StoreError
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import create, open_pantry
from pantry_tui.services.safekeeping import backup
from pantry_tui.services.safekeeping.telling import restored
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.services.stock import act, places, view
from pantry_tui.store import copies, damage

TODAY = date(2026, 11, 25)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    file = tmp_path / "pantry.db"
    create(file)
    with open_pantry(file, TODAY) as p:
        places.add(p, "larder", "pantry")
        putup.put_up(p, putup.read(p, "9 pint jars peaches, boiling-water canned, larder"))
    return file


@pytest.fixture
def copy(path: Path) -> Path:
    return backup.backup(path).path


def test_what_was_booked_since_is_named_before_it_is_lost(path: Path, copy: Path) -> None:
    with open_pantry(path, TODAY) as p:
        act.use(p, "2A")
        act.open_(p, "2A")
    before = path.read_bytes()
    would = backup.preview(path, copy)
    assert [(one.kind, one.code) for one in would.lost] == [("use", "2A"), ("open", "2A")]
    assert path.read_bytes() == before
    done = backup.restore(path, copy)
    assert done.lost == would.lost
    assert done.kept is not None
    assert done.kept.read_bytes() == before
    with open_pantry(path, TODAY) as p:
        assert view.due(p)[0].count == 9
    # And what was replaced can be brought back in its turn.
    again = backup.restore(path, done.kept)
    assert (again.lost, again.back) == ((), 2)
    with open_pantry(path, TODAY) as p:
        assert sum(row.count for row in view.due(p)) == 8


def test_a_window_that_stands_open_writes_nothing_into_the_replaced_file(
    path: Path, copy: Path
) -> None:
    with open_pantry(path, TODAY) as p:
        act.use(p, "2A")
        done = backup.restore(path, copy)
        assert done.kept is not None
        kept = done.kept.read_bytes()
        with pytest.raises(StoreError, match="replaced"):
            act.use(p, "2A")
        assert done.kept.read_bytes() == kept


def test_a_store_that_was_taken_away_is_not_written_to(path: Path) -> None:
    with open_pantry(path, TODAY) as p:
        path.rename(path.with_name("moved.db"))
        with pytest.raises(StoreError, match="taken away"):
            act.use(p, "2A")


def test_nothing_unsound_foreign_or_newer_is_brought_back(path: Path, copy: Path) -> None:
    before = path.read_bytes()
    letter = path.with_name("letter.txt")
    letter.write_text("Dear aunt")
    for source in (letter, path.with_name("nowhere.db"), path.parent, path):
        with pytest.raises((Refused, StoreError)):
            backup.restore(path, source)
    with closing(sqlite3.connect(copy)) as db, db:
        db.execute("update log set at = 7")
    with pytest.raises(Refused, match="check value"):
        backup.restore(path, copy)
    with closing(sqlite3.connect(copy)) as db, db:
        db.execute("pragma user_version = 999")
    with pytest.raises(Refused, match="newer"):
        backup.restore(path, copy)
    assert path.read_bytes() == before
    with pytest.raises(StoreError, match="not a store file"):
        backup.restore(letter, backup.backup(path).path)
    assert letter.read_text() == "Dear aunt"


def test_a_file_that_is_no_store_any_more_is_replaced_and_kept(path: Path, copy: Path) -> None:
    with path.open("r+b") as file:
        file.write(bytes(4096))
    damaged = path.read_bytes()
    done = backup.restore(path, copy)
    assert done.kept is not None
    assert done.kept.read_bytes() == damaged
    with open_pantry(path, TODAY) as p:
        assert view.due(p)[0].count == 9


def test_a_note_of_damage_goes_with_the_damaged_file(path: Path, copy: Path) -> None:
    damage.note(path, "a page was hurt")
    backup.restore(path, copy)
    open_pantry(path, TODAY).close()


def test_a_store_that_is_gone_comes_back(path: Path, copy: Path) -> None:
    path.unlink()
    done = backup.restore(path, copy)
    assert done.kept is None
    with open_pantry(path, TODAY) as p:
        assert view.due(p)[0].count == 9


def test_a_journal_of_the_old_file_is_never_played_into_the_new_one(path: Path, copy: Path) -> None:
    """Its first page is lost, so nobody can play the journal where it belongs."""
    journal = path.with_name(f"{path.name}-journal")
    with open_pantry(path, TODAY) as p:
        p.store.db.execute("PRAGMA cache_size = 1")
        p.store.db.execute("PRAGMA cache_spill = 1")
        p.store.db.execute("BEGIN IMMEDIATE")
        p.store.db.execute("UPDATE log SET payload = payload || ' '")
        left = journal.read_bytes()
        p.store.db.execute("ROLLBACK")
    assert left
    journal.write_bytes(left)
    with path.open("r+b") as file:
        file.write(bytes(4096))
    backup.restore(path, copy)
    assert not journal.exists()
    assert copies.wrong_with(path) == ""


def test_a_store_that_another_program_holds_is_not_replaced(
    path: Path, copy: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("pantry_tui.store.replace.PATIENCE_MS", 0)
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    before = path.read_bytes()
    with pytest.raises(StoreError, match="in use"):
        backup.restore(path, copy)
    other.close()
    assert path.read_bytes() == before
    assert sorted(one.name for one in path.parent.iterdir()) == ["pantry-backups", "pantry.db"]


def test_through_a_link_the_store_it_leads_to_is_replaced(path: Path, copy: Path) -> None:
    link = path.with_name("link.db")
    link.symlink_to(path)
    with open_pantry(path, TODAY) as p:
        act.use(p, "2A")
    backup.restore(link, copy)
    assert link.is_symlink()
    assert os.path.samefile(link, path)
    with open_pantry(path, TODAY) as p:
        assert view.due(p)[0].count == 9


def test_what_a_killed_restore_left_is_swept_away_by_the_next(path: Path, copy: Path) -> None:
    second = path.with_name("pantry-replaced-2026-11-20-120000.db")
    os.link(path, second)
    dead = path.with_name(".pantry-restoring-2026-11-20-120000.db.4194305.new")
    made = path.with_name("pantry-restoring-2026-11-20-120000.db")
    older = path.with_name("pantry-replaced-2026-11-19-120000.db")
    for one in (dead, made, older):
        one.write_bytes(path.read_bytes())
    os.utime(made, (0, 0))
    kept = backup.restore(path, copy).kept
    assert kept is not None
    assert not any(one.exists() for one in (second, dead, made))
    assert older.exists(), "a file that an earlier restore replaced is its own"
    assert kept.stat().st_ino != path.stat().st_ino


def test_what_a_hot_journal_brings_back_is_compared_too(path: Path, copy: Path) -> None:
    with open_pantry(path, TODAY) as p:
        act.use(p, "2A")
        act.open_(p, "2A")
    child = (
        "import os, sqlite3, sys\n"
        "db = sqlite3.connect(sys.argv[1], isolation_level=None)\n"
        "db.execute('PRAGMA cache_size = 1')\n"
        "db.execute('BEGIN IMMEDIATE')\n"
        "db.execute('DELETE FROM log')\n"
        "db.execute('CREATE TABLE t AS SELECT zeroblob(200000) AS x')\n"
        "os._exit(9)\n"
    )
    subprocess.run([sys.executable, "-c", child, str(path)], check=False)
    assert path.with_name(f"{path.name}-journal").exists()
    assert [one.kind for one in backup.preview(path, copy).lost] == ["use", "open"]


def test_two_stores_of_one_stem_have_each_their_own_copies(path: Path) -> None:
    other = path.with_suffix(".store")
    create(other)
    with_db, with_other = copies.folder_of(path), copies.folder_of(other)
    assert with_db != with_other
    assert with_db.name == "pantry-backups"
    backup.backup(other)
    assert len(backup.kept(other)) == 1
    assert backup.kept(path) == []


def test_a_store_that_had_its_folder_to_itself_keeps_it(tmp_path: Path) -> None:
    alone = tmp_path / "larder.store"
    create(alone)
    (tmp_path / "larder-backups").mkdir()
    assert copies.folder_of(alone) == tmp_path / "larder-backups"


def test_a_code_on_a_lid_is_given_to_nothing_else_after_a_restore(path: Path, copy: Path) -> None:
    def another() -> str:
        with open_pantry(path, TODAY) as p:
            line = "1 pint jar peaches, boiling-water canned, larder"
            return putup.put_up(p, putup.read(p, line)).code

    assert [another(), another()] == ["3A", "4A"]
    would, done = backup.preview(path, copy), backup.restore(path, copy)
    assert would.lids == done.lids == ("3A", "4A")
    told = restored(done, only_said=False)
    assert any("3A, 4A" in line and "write the new code" in line for line in told)
    assert another() == "5A"
    # Nor after it is brought back once more, nor when what was replaced comes back.
    assert backup.restore(path, copy).lids == ("5A",)
    assert done.kept is not None
    assert backup.restore(path, done.kept).lids == ()
    assert another() == "6A"
    assert verify(path, TODAY).ok


def test_a_restore_that_loses_no_batch_says_nothing_of_lids(path: Path, copy: Path) -> None:
    with open_pantry(path, TODAY) as p:
        act.use(p, "2A")
    done = backup.restore(path, copy)
    assert done.lids == ()
    assert not any("lid" in line for line in restored(done, only_said=False))


def test_the_codes_of_a_damaged_store_are_skipped_as_far_as_it_can_be_read(
    path: Path, copy: Path
) -> None:
    with open_pantry(path, TODAY) as p:
        putup.put_up(p, putup.read(p, "1 pint jar peaches, boiling-water canned, larder"))
    with path.open("r+b") as file:
        file.write(bytes(100))  # it opens no more, its pages stand
    backup.restore(path, copy)
    with open_pantry(path, TODAY) as p:
        assert p.next_code() == "4A"


def test_what_cannot_be_restored_says_what_to_do_next(path: Path) -> None:
    junk, short = path.with_name("junk.db"), path.with_name("short.db")
    junk.write_text("Dear aunt")
    short.write_bytes(path.read_bytes()[:40_000])
    with pytest.raises(Refused, match=r"it is not a store file.*that `pantry-tui backup` made"):
        backup.restore(path, junk)
    with pytest.raises(Refused, match=r"no such file.*that `pantry-tui backup` made"):
        backup.restore(path, path.with_name("nowhere.db"))
    with pytest.raises(Refused, match=rf"verify --salvage NEW.db --store {short}"):
        backup.restore(path, short)
    sound = backup.backup(path).path
    with path.open("r+b") as file:
        file.write(bytes(4096))
    for one in (junk, short):
        with pytest.raises(Refused, match=rf"`pantry-tui restore {sound} --store {path}`"):
            backup.restore(path, one)


def test_a_sound_store_is_never_advised_to_be_replaced(path: Path, copy: Path) -> None:
    """Backups lie beside it; what is wrong is the file that was named."""
    backup.backup(path)
    (letter := path.with_name("letter.txt")).write_text("Dear aunt")
    for source in (letter, path.with_name("nowhere.db")):
        with pytest.raises(Refused) as refused:
            backup.restore(path, source)
        assert "pantry-tui restore" not in str(refused.value)
        assert "name a file that `pantry-tui backup` made" in str(refused.value)
    with closing(sqlite3.connect(copy)) as db, db:
        db.execute("update log set at = 7")
    with pytest.raises(Refused, match="name another backup") as refused:
        backup.restore(path, copy)
    assert "pantry-tui restore" not in str(refused.value)
    with closing(sqlite3.connect(copy)) as db, db:
        db.execute("pragma user_version = 999")
    with pytest.raises(Refused, match="update the program") as refused:
        backup.restore(path, copy)
    assert "pantry-tui restore" not in str(refused.value)


def test_a_damaged_store_is_advised_its_newest_backup(path: Path) -> None:
    backup.backup(path)
    with path.open("r+b") as file:
        file.write(bytes(4096))
    with pytest.raises(Refused, match="bring back the newest sound backup"):
        backup.restore(path, path.with_name("nowhere.db"))
