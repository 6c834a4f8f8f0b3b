"""Copies of a store: made whole, looked over, thinned; the newest sound one is found."""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest

from pantry_tui.errors import Refused, StoreError
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import create, open_pantry
from pantry_tui.services.stock import act, places
from pantry_tui.settings import Backups, read_settings, settings_file
from pantry_tui.store import copies, damage
from pantry_tui.store.files import made_whole

TODAY = date(2026, 11, 25)


@pytest.fixture(autouse=True)
def backups(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("PANTRY_NO_BACKUP")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A store with nine jars of peaches, code 2A."""
    file = tmp_path / "pantry.db"
    create(file)
    with open_pantry(file, TODAY) as p:
        places.add(p, "larder", "pantry")
        putup.put_up(p, putup.read(p, "9 pint jars peaches, boiling-water canned, larder"))
    return file


def hurt(path: Path, sql: str = "update log set day = '2020-01-01' where did = 'put_up'") -> None:
    with closing(sqlite3.connect(path)) as db, db:
        db.execute(sql)


def settings(text: str) -> None:
    settings_file().parent.mkdir(parents=True, exist_ok=True)
    settings_file().write_text(text, encoding="utf-8")


def at(monkeypatch: pytest.MonkeyPatch, when: str) -> None:
    monkeypatch.setattr(copies, "now", lambda: datetime.fromisoformat(when).astimezone())


# -- a copy ----------------------------------------------------------------------------------------


def test_a_copy_is_a_store_of_its_own_and_private(path: Path) -> None:
    where, events = copies.backup(path)
    assert where.parent == path.with_name("pantry-backups")
    with open_pantry(path, TODAY) as p, open_pantry(where, TODAY) as copy:
        assert list(copy.events) == list(p.events)
        assert events == len(p.events)
    assert where.stat().st_mode & 0o777 == 0o600
    assert where.parent.stat().st_mode & 0o777 == 0o700


def test_a_copy_goes_where_it_is_told_and_never_over_a_file(path: Path, tmp_path: Path) -> None:
    stick = tmp_path / "stick"
    stick.mkdir()
    assert copies.backup(path, stick)[0].parent == stick
    there = tmp_path / "there.db"
    there.write_text("a letter")
    with pytest.raises(Refused, match="already there"):
        copies.backup(path, there)
    assert there.read_text() == "a letter"
    with pytest.raises(Refused, match="already there"):
        copies.backup(path, path)


def test_a_copy_never_goes_through_a_link(path: Path, tmp_path: Path) -> None:
    elsewhere = tmp_path / "elsewhere.db"
    link = tmp_path / "link.db"
    link.symlink_to(elsewhere)
    with pytest.raises(Refused):
        copies.backup(path, link)
    assert not elsewhere.exists()


def test_what_a_killed_program_left_half_made_is_swept_away(path: Path, tmp_path: Path) -> None:
    to = tmp_path / "new.db"
    left = tmp_path / ".new.db.999999999.new"
    left.write_bytes(b"half")
    running = tmp_path / f".new.db.{os.getppid()}.new"
    running.write_bytes(b"half")
    copies.backup(path, to)
    assert not left.exists()
    assert running.exists(), "another program is at it"


def test_what_goes_wrong_while_it_is_made_leaves_nothing(tmp_path: Path) -> None:
    with pytest.raises(RuntimeError), made_whole(tmp_path / "new.db") as making:  # noqa: PT012
        making.write_bytes(b"half")
        raise RuntimeError("the light went out")
    assert list(tmp_path.iterdir()) == []


def test_a_file_system_that_knows_no_second_name_gets_its_copy(
    path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def no(*_: object) -> None:
        raise PermissionError("no links here")

    monkeypatch.setattr(os, "link", no)
    to, _ = copies.backup(path, tmp_path / "stick.db")
    assert copies.wrong_with(to) == ""
    with pytest.raises(Refused):
        copies.backup(path, to)


def test_a_damaged_store_is_not_copied_and_not_written_to_again(path: Path) -> None:
    with open_pantry(path, TODAY) as p:  # open before anybody knew
        hurt(path)
        before = path.read_bytes()
        with pytest.raises(StoreError, match="broken"):
            copies.backup(path)
        assert copies.made_by_itself(path, copies.folder_of(path)) == []
        with pytest.raises(StoreError, match="broken"):
            places.add(p, "cellar", "cellar")
    with pytest.raises(StoreError, match="broken"):
        open_pantry(path, TODAY)
    assert path.read_bytes() == before


# -- once a day ------------------------------------------------------------------------------------


def test_there_is_one_copy_a_day(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = copies.folder_of(path)
    for moment in ("2026-11-25T08:00:00", "2026-11-25T18:00:00", "2026-11-26T07:00:00"):
        at(monkeypatch, moment)
        copies.daily(path)
    names = [one.name for one in copies.made_by_itself(path, folder)]
    assert names == ["pantry-2026-11-26-070000.db", "pantry-2026-11-25-080000.db"]


def test_a_clock_that_was_put_back_makes_no_copy_at_every_act(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for moment in ("2027-11-25T08:00:00", "2026-11-25T18:00:00", "2026-11-25T19:00:00"):
        at(monkeypatch, moment)
        copies.daily(path)
    names = [one.name for one in copies.made_by_itself(path, copies.folder_of(path))]
    assert names == ["pantry-2027-11-25-080000.db", "pantry-2026-11-25-180000.db"]


def test_a_clock_that_ran_ahead_stops_no_copy_and_takes_no_day(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    settings("[backups]\ndays = 2\nweeks = 1\nmonths = 1\n")
    ahead = [f"2031-01-0{n}T08:00:00" for n in range(1, 6)]
    for moment in (*ahead, "2026-11-25T08:00:00", "2026-11-26T08:00:00", "2026-11-27T08:00:00"):
        at(monkeypatch, moment)
        copies.daily(path)
    names = [one.name[7:17] for one in copies.made_by_itself(path, copies.folder_of(path))]
    assert names == ["2031-01-05", "2031-01-04", "2026-11-27", "2026-11-26"]


def test_the_newest_copy_is_that_which_holds_the_newest(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    at(monkeypatch, "2031-01-01T08:00:00")
    copies.daily(path)
    with open_pantry(path, TODAY) as p:
        places.add(p, "attic", "room")
    at(monkeypatch, "2026-11-25T08:00:00")
    copies.daily(path)
    found = copies.newest_sound(path)
    assert found is not None
    assert "2026-11-25" in found.path.name


def test_old_copies_are_thinned_to_days_weeks_and_months(path: Path) -> None:
    first = datetime(2025, 1, 1, 18, tzinfo=UTC)
    moments = [first + timedelta(hours=12 * n) for n in range(2 * 690)]
    names = [path.with_name(f"pantry-{one:%Y-%m-%d-%H%M%S}.db") for one in reversed(moments)]
    wish = Backups(days=7, weeks=5, months=12)
    gone = set(copies.too_many(path, names, wish))
    kept = [one for one in names if one not in gone]
    days = [one.name[7:17] for one in kept]
    assert len(set(days)) == len(days), "one a day"
    assert days[:7] == [f"{moments[-1] - timedelta(days=n):%Y-%m-%d}" for n in range(7)]
    assert 7 + 3 + 10 <= len(kept) <= 7 + 5 + 12
    assert len({day[:7] for day in days}) == 12
    assert copies.too_many(path, kept, wish) == [], "what is kept today is kept"


def test_only_its_own_copies_are_thinned(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    settings("[backups]\ndays = 1\nweeks = 1\nmonths = 1\n")
    folder = copies.folder_of(path)
    folder.mkdir()
    others = [folder / "pantry-my-own.db", folder / "jam-2020-01-01-000000.db", folder / "note.txt"]
    for one in others:
        one.write_text("mine")
    for day in ("24", "25"):
        at(monkeypatch, f"2026-11-{day}T08:00:00")
        copies.daily(path)
    assert [one.name for one in copies.made_by_itself(path, folder)] == [
        "pantry-2026-11-25-080000.db"
    ]
    assert all(one.read_text() == "mine" for one in others)


def test_settings_say_where_how_many_and_whether(path: Path, away_from_home: Path) -> None:
    settings('[backups]\nfolder = "~/copies"\ndays = 3\n')
    wish = read_settings().backups
    assert (wish.folder, wish.days, wish.weeks) == (away_from_home / "copies", 3, 5)
    copies.daily(path)
    (made,) = copies.made_by_itself(path, copies.folder_of(path))
    assert made.is_relative_to(away_from_home / "copies")
    assert not path.with_name("pantry-backups").exists()
    settings("[backups]\nautomatic = false\n")
    copies.daily(path)
    assert not path.with_name("pantry-backups").exists()


@pytest.mark.parametrize(
    "text",
    [
        '[backups]\nfolder = "copies"',
        "[backups]\nfolder = 3",
        "[backups]\ndays = 0",
        "[backups]\nmonths = true",
        '[backups]\nautomatic = "no"',
        "backups = 3",
        '[backups]\nfolder = "\\u0000"',
    ],
)
def test_a_setting_that_cannot_be_used_is_said_and_passed_over(text: str) -> None:
    settings(text)
    found = read_settings()
    assert found.backups == Backups()
    assert len(found.wrong) == 1


# -- the newest sound one --------------------------------------------------------------------------


def test_a_refusal_names_the_newest_sound_backup_and_the_command(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    at(monkeypatch, "2026-11-24T08:00:00")
    good, events = copies.backup(path)
    at(monkeypatch, "2026-11-25T08:00:00")
    bad, _ = copies.backup(path)
    hurt(bad)
    hurt(path)
    with open_pantry(path, TODAY) as p, pytest.raises(StoreError) as said:
        act.use(p, "2A")
    assert f"pantry-tui restore {good}" in said.value.message
    assert f"({events} events)" in said.value.message
    assert f"--store {path}" in said.value.message


def test_without_a_backup_salvage_is_named(path: Path) -> None:
    hurt(path)
    with open_pantry(path, TODAY) as p, pytest.raises(StoreError, match="verify --salvage"):
        act.use(p, "2A")


def test_a_note_of_damage_stays_until_the_file_was_looked_at(path: Path) -> None:
    damage.note(path, "a page was hurt")
    with pytest.raises(StoreError, match="a page was hurt"):
        open_pantry(path, TODAY)
    damage.forget(path)
    open_pantry(path, TODAY).close()
