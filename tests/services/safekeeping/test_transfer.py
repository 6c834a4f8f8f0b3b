"""The log out and in again, byte for byte; two logs that had parted as one."""

from __future__ import annotations

import json
import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest

from pantry_tui.core.log.payloads import (
    BY_NAME,
    Checked,
    Clocked,
    JarsCounted,
    JarsLent,
    PlaceRemoved,
    Tended,
    Timer,
)
from pantry_tui.core.log.sound import LONGEST
from pantry_tui.errors import BadInput, PantryError, Refused, Unclear
from pantry_tui.services import booking
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.safekeeping.transfer import Merged, export_log, import_log
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.services.stock import act, leaving, places, undo, view
from pantry_tui.services.stock.pick import batch_named

TODAY = date(2026, 11, 25)
FIXTURES = Path(__file__).parents[2] / "fixtures"


def put_up(path: Path, line: str) -> str:
    with open_pantry(path, TODAY) as p:
        return putup.put_up(p, putup.read(p, line)).code


def exported(path: Path, name: str = "log.json") -> Path:
    to = path.with_name(name)
    to.unlink(missing_ok=True)
    with open_pantry(path, TODAY) as p:
        export_log(p, to)
    return to


def shown(path: Path) -> list[object]:
    with open_pantry(path, TODAY) as p:
        return [view.due(p), view.shelves(p), p.home]


# -- out and in ------------------------------------------------------------------------------------


@pytest.fixture(params=["demo", "store_3", "old_log", "old_wishes", "old_demo"])
def full(request: pytest.FixtureRequest, tmp_path: Path, demo_file: bytes) -> Path:
    """A store with a past, also of older versions."""
    path = tmp_path / "full.db"
    if request.param == "demo":
        path.write_bytes(demo_file)
    else:
        with closing(sqlite3.connect(path)) as db:
            sql = (FIXTURES / f"{request.param}.sql").read_text(encoding="utf-8")
            db.executescript(sql)
    return path


def test_a_log_goes_out_and_in_byte_for_byte(full: Path, tmp_path: Path) -> None:
    out = exported(full)
    empty = tmp_path / "empty.db"
    create(empty, people=7)
    found = import_log(empty, out, TODAY)
    assert found.replaced
    assert exported(empty, "again.json").read_bytes() == out.read_bytes()
    assert shown(empty) == shown(full)
    assert verify(empty, TODAY).ok
    with closing(sqlite3.connect(full)) as one, closing(sqlite3.connect(empty)) as other:
        sql = "select * from log order by id"
        assert one.execute(sql).fetchall() == other.execute(sql).fetchall()


def test_every_kind_of_event_goes_out_and_in(tmp_path: Path) -> None:
    """Of each kind at least one is in the logs above, in a merge below, or written here."""
    path, empty = tmp_path / "store.db", tmp_path / "empty.db"
    for one in (path, empty):
        create(one)
    with open_pantry(path, TODAY) as p:
        places.add(p, "larder", "pantry")
        p.book(PlaceRemoved(p.find_place("larder").id))
        places.add(p, "shelf", "pantry")
        line = "4 pint jars peaches, boiling-water canned minutes=25, shelf"
        batch = p.batch(putup.put_up(p, putup.read(p, line)).code)
        assert batch is not None
        p.book(Timer(batch.id, Clocked.START, 25, 11.5))
        p.book(Tended(batch.id, "look at the seals"))
        p.book(Checked("dial gauge"))
        p.book(JarsCounted("pint", 12, 4))
        p.book(JarsLent("pint", 2, "Aunt Rosa"))
    with open_pantry(path, TODAY - timedelta(days=1)) as p:
        places.add(p, "attic", "room")  # by a clock that is behind the one before
    import_log(empty, exported(path), TODAY)
    assert exported(empty, "again.json").read_bytes() == exported(path).read_bytes()
    seen = {"relabelled"}
    with open_pantry(path, TODAY) as p:
        seen.update(event.did.value for event in p.events)
    for name in ("store_3", "uncounted", "old_log", "old_wishes", "old_demo"):
        path = tmp_path / f"{name}.db"
        with closing(sqlite3.connect(path)) as db:
            db.executescript((FIXTURES / f"{name}.sql").read_text(encoding="utf-8"))
        with open_pantry(path, TODAY) as p:
            seen.update(event.did.value for event in p.events)
    assert set(BY_NAME) == seen


def test_the_document_is_ascii_whatever_was_typed(tmp_path: Path) -> None:
    path = tmp_path / "store.db"
    create(path)
    with open_pantry(path, TODAY) as p:
        places.add(p, "L\u202eregal \x9b2J ü", "pantry")
    raw = exported(path).read_bytes()
    assert raw.isascii()
    assert b"\x9b" not in raw
    assert exported(path, "again.json").stat().st_mode & 0o777 == 0o600


def test_the_same_log_twice_brings_nothing(full: Path) -> None:
    found = import_log(full, exported(full), TODAY)
    assert (found.rows, found.replaced, found.conflicts) == (0, False, ())
    assert found.already > 100 or "store_3" in str(full) or found.already > 10


def test_a_dry_run_says_it_and_books_nothing(full: Path, tmp_path: Path) -> None:
    empty = tmp_path / "empty.db"
    create(empty)
    out = exported(full)
    before = empty.read_bytes()
    would = import_log(empty, out, TODAY, dry_run=True)
    assert empty.read_bytes() == before
    assert import_log(empty, out, TODAY) == would


# -- what makes no sense ---------------------------------------------------------------------------

Spoil = Callable[[list[dict[str, Any]]], object]


def first(rows: list[dict[str, Any]], did: str) -> dict[str, Any]:
    return next(row for row in rows if row["did"] == did)


@pytest.mark.parametrize(
    "spoil",
    [
        lambda rows: rows.append(rows[0]),
        lambda rows: rows[0].pop("day"),
        lambda rows: rows[0].update(more=1),
        lambda rows: rows[0].update(id="1"),
        lambda rows: rows[0].update(did="stolen"),
        lambda rows: rows[0].update(day="2026-02-30"),
        lambda rows: rows[0].update(recorded="yesterday"),
        lambda rows: rows[0].update(at=5000),
        lambda rows: rows[0].update(at=True),
        lambda rows: rows[0].update(says=[]),
        lambda rows: rows[0].update(together="\ud800"),
        lambda rows: first(rows, "put_up")["says"].update(amount="1e999999999 lb"),
        lambda rows: first(rows, "put_up")["says"].update(amount="1/0 lb"),
        lambda rows: first(rows, "put_up")["says"].update(note="\ud800"),
        lambda rows: first(rows, "put_up")["says"].update(place="nowhere"),
        lambda rows: first(rows, "put_up")["says"].update(made="0000-00-00"),
        lambda rows: first(rows, "put_up")["says"].update(method="teleported"),
        lambda rows: first(rows, "use")["says"].update(containers=["nobody.1"]),
        lambda rows: first(rows, "use")["says"].update(batch="nobody"),
        lambda rows: first(rows, "place_added")["says"].update(parent="nowhere"),
        lambda rows: rows.insert(0, "event"),
        lambda rows: rows.insert(0, None),
    ],
)
def test_one_bad_event_and_nothing_is_booked(
    tmp_path: Path, demo_file: bytes, spoil: Spoil
) -> None:
    path, empty = tmp_path / "demo.db", tmp_path / "empty.db"
    path.write_bytes(demo_file)
    document = json.loads(exported(path).read_text())
    spoil(document["events"])
    bad = tmp_path / "bad.json"
    bad.write_text(json.dumps(document))
    create(empty)
    before = empty.read_bytes()
    with pytest.raises(BadInput) as said:
        import_log(empty, bad, TODAY)
    assert "\n" not in said.value.message
    assert empty.read_bytes() == before


def test_of_several_bad_events_the_first_is_named_and_all_are_counted(
    tmp_path: Path, demo_file: bytes
) -> None:
    path, empty = tmp_path / "demo.db", tmp_path / "empty.db"
    path.write_bytes(demo_file)
    document = json.loads(exported(path).read_text())
    used = [row for row in document["events"] if row["did"] == "use"][:3]
    for row in used:
        row["says"].update(batch="nobody", containers=["nobody.1"])
    bad = tmp_path / "bad.json"
    bad.write_text(json.dumps(document))
    create(empty)
    with pytest.raises(BadInput) as said:
        import_log(empty, bad, TODAY)
    assert said.value.message.startswith(f"Event {used[0]['id']} makes no sense: it speaks of")
    assert "(the first of 3 such events)" in said.value.message


@pytest.mark.parametrize(
    "text",
    [
        "", "{", "[]", "null", "[" * 100_000, '{"pantry-tui": "log"}', '{"a": NaN}', "9" * 10_000,
        '{"pantry-tui": "log", "version": 99, "events": []}',
        '{"pantry-tui": "log", "version": 1, "events": {}}', "\x00", "\ufeff{}",
    ],
)  # fmt: skip
def test_what_is_no_log_is_said_in_one_sentence(tmp_path: Path, text: str) -> None:
    create(tmp_path / "store.db")
    bad = tmp_path / "bad.json"
    bad.write_text(text, encoding="utf-8")
    with pytest.raises(BadInput) as said:
        import_log(tmp_path / "store.db", bad, TODAY)
    assert len(said.value.message) < 300
    bad.write_bytes(b"\xff\xfe{}")
    with pytest.raises(BadInput):
        import_log(tmp_path / "store.db", bad, TODAY)
    for nothing in (tmp_path, tmp_path / "nowhere.json"):
        with pytest.raises(BadInput):
            import_log(tmp_path / "store.db", nothing, TODAY)


# -- two that had parted ---------------------------------------------------------------------------


@pytest.fixture
def home(tmp_path: Path) -> Path:
    path = tmp_path / "home.db"
    create(path)
    with open_pantry(path, TODAY) as p:
        places.add(p, "larder", "pantry")
    put_up(path, "6 pint jars peaches, boiling-water canned, larder, minutes=30")
    return path


@pytest.fixture
def cellar(home: Path) -> Path:
    """A copy that was taken to the cellar."""
    return Path(shutil.copy(home, home.with_name("cellar.db")))


def merged(home: Path, other: Path) -> Merged:
    found = import_log(home, exported(other), TODAY)
    assert verify(home, TODAY).ok, verify(home, TODAY).hurt
    return found


def do(path: Path, what: Callable[[Pantry], object]) -> None:
    with open_pantry(path, TODAY) as p:
        what(p)


def test_what_each_did_stands_in_both(home: Path, cellar: Path) -> None:
    do(home, lambda p: act.use(p, "2A/1"))
    do(cellar, lambda p: act.use(p, "2A/2"))
    do(cellar, lambda p: act.open_(p, "2A/3"))
    found = merged(home, cellar)
    assert (found.rows, found.conflicts, found.relabel) == (2, (), ())
    assert merged(cellar, home).rows == 1
    assert exported(home).read_bytes() == exported(cellar, "other.json").read_bytes()
    with open_pantry(home, TODAY) as p:
        assert sum(row.count for row in view.due(p)) == 4


def test_a_jar_that_left_in_both_is_named(home: Path, cellar: Path) -> None:
    do(home, lambda p: act.use(p, "2A/1"))
    do(cellar, lambda p: act.missing(p, "2A/1") if hasattr(act, "missing") else act.use(p, "2A/1"))
    (conflict,) = merged(home, cellar).conflicts
    assert conflict.startswith("2A/1 left in both: use on 2026-11-25 counts")


def test_an_event_of_which_both_tell_another_story_stops_it(home: Path, cellar: Path) -> None:
    out = exported(cellar)
    document = json.loads(out.read_text())
    first(document["events"], "put_up")["says"]["note"] = "the other story"
    out.write_text(json.dumps(document))
    before = home.read_bytes()
    with pytest.raises(Refused, match="put up, 2026-11-25"):
        import_log(home, out, TODAY)
    assert home.read_bytes() == before


def test_of_two_equal_lid_codes_the_one_that_comes_is_written_anew(
    home: Path, cellar: Path
) -> None:
    mine = put_up(home, "3 pint jars plums, boiling-water canned, larder, minutes=20")
    theirs = put_up(cellar, "4 pint jars pears, boiling-water canned, larder, minutes=20")
    assert mine == theirs == "3A"
    do(cellar, lambda p: act.use(p, "3A"))
    (one,) = merged(home, cellar).relabel
    assert (one.was, one.food, one.containers) == ("3A", "pears", 4)
    with open_pantry(home, TODAY) as p:
        food = {row.code: (row.food, row.count) for row in view.due(p)}
        assert food["3A"] == ("plums", 3)
        assert food[one.code] == ("pears", 3)
        # Typed, it asks which; on a line of a list it is the one that bears it.
        assert batch_named(p, "3A").food.name == "plums"
        p.asks_which = True
        with pytest.raises(Unclear) as asked:
            batch_named(p, "3A/1")
        assert asked.value.choices == ("3A!", one.code)
        assert batch_named(p, "3A!").food.name == "plums"
        assert act.use(p, "3A!/1").containers == ("3A/1",)
        assert batch_named(p, one.code).food.name == "pears"
        assert putup.put_up(
            p, putup.read(p, "1 pint jar pears, boiling-water canned, larder, minutes=20")
        ).code not in ("2A", "3A", one.code)
    # And nothing of it is asked again when the cellar comes once more, or gets all of it.
    assert merged(home, cellar).rows == 0
    assert merged(cellar, home).relabel == ()
    with open_pantry(cellar, TODAY) as p:
        assert batch_named(p, one.code).food.name == "pears"


def test_a_new_lid_code_is_not_taken_back(home: Path, cellar: Path) -> None:
    put_up(home, "3 pint jars plums, boiling-water canned, larder, minutes=20")
    put_up(cellar, "4 pint jars pears, boiling-water canned, larder, minutes=20")
    merged(home, cellar)
    with pytest.raises(Refused, match="lid code"):
        do(home, undo.undo)


def test_two_places_of_one_name_and_two_words_on_the_household_are_named(
    home: Path, cellar: Path
) -> None:
    from pantry_tui.services import household

    for path, people in ((home, 3), (cellar, 5)):
        do(path, lambda p: places.add(p, "attic", "room"))
        with open_pantry(path, TODAY) as p:
            household.change(p, people=people)
    found = merged(home, cellar)
    assert [one for one in found.conflicts if "attic" in one]
    assert [one for one in found.conflicts if "household" in one]
    with open_pantry(home, TODAY) as p:
        assert p.people == 5, "the later word"


def test_an_undo_of_the_other_takes_back_what_it_named(home: Path, cellar: Path) -> None:
    do(home, lambda p: act.use(p, "2A/1"))
    do(cellar, lambda p: act.use(p, "2A/2"))
    do(cellar, undo.undo)
    merged(home, cellar)
    with open_pantry(home, TODAY) as p:
        assert sum(row.count for row in view.due(p)) == 5


def test_into_a_damaged_or_missing_store_nothing_comes(home: Path, cellar: Path) -> None:
    out = exported(cellar)
    with closing(sqlite3.connect(home)) as db, db:
        db.execute("update log set at = 7")
    before = home.read_bytes()
    with pytest.raises(PantryError):
        import_log(home, out, TODAY)
    assert home.read_bytes() == before
    with pytest.raises(PantryError):
        import_log(home.with_name("nowhere.db"), out, TODAY)


def test_what_no_log_may_hold_is_refused_when_it_is_booked(tmp_path: Path) -> None:
    """One limit for a note, a person, a place and a reason, and one sentence."""
    path = tmp_path / "long.db"
    create(path)
    long = "a" * (LONGEST + 1)
    with open_pantry(path, TODAY) as p:
        places.add(p, "larder", "pantry")
        code = putup.put_up(p, putup.read(p, "3 half-pint jars plum jam, larder")).code
        events = len(p.events)
        for book in (
            lambda: putup.put_up(p, putup.read(p, "1 half-pint jar plum jam, larder", note=long)),
            lambda: leaving.give(p, code, to=long),
            lambda: places.add(p, long, "pantry"),
            lambda: act.discard(p, code, why=long),
        ):
            with pytest.raises(BadInput, match="at most 20,000 are kept: shorten it"):
                book()
        assert len(p.events) == events
        leaving.give(p, code, to="a" * LONGEST)
    exported(path)


def test_what_was_booked_without_that_limit_goes_out_and_in(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path, empty = tmp_path / "long.db", tmp_path / "empty.db"
    create(path)
    create(empty)
    with open_pantry(path, TODAY) as p:
        places.add(p, "larder", "pantry")
        code = putup.put_up(p, putup.read(p, "3 half-pint jars plum jam, larder")).code
        monkeypatch.setattr(booking, "too_long", lambda _: None)
        leaving.give(p, code, to="a" * 3 * LONGEST)
    import_log(empty, exported(path), TODAY)
    assert shown(empty) == shown(path)
