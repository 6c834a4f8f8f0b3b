"""A process that stays open across an update of the program judges no more."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.stock import act, view
from pantry_tui.services.stock.ready import UPDATED


def judged_by_another(path: Path, rules: str = "rules of the next version") -> None:
    """As a program with other rules leaves the store when it has judged it."""
    with closing(sqlite3.connect(path)) as db, db:
        db.execute("UPDATE meta SET value = ? WHERE name = 'rules'", (rules,))


def kept(path: Path) -> list[object]:
    with closing(sqlite3.connect(path)) as db:
        return [
            db.execute(f"SELECT * FROM {table} ORDER BY 1").fetchall()
            for table in ("log", "lines", "totals", "marked", "meta")
        ]


@pytest.fixture
def jars(larder: Pantry) -> Pantry:
    putup.put_up(larder, putup.read(larder, "4 jars strawberry jam, jam, larder"))
    view.due(larder)
    return larder


def test_it_books_nothing_and_shows_nothing_by_rules_that_are_out_of_date(jars: Pantry) -> None:
    code = view.due(jars)[0].code
    judged_by_another(jars.path)
    before = kept(jars.path)
    for do in (lambda: act.use(jars, code), lambda: view.due(jars)):
        with pytest.raises(Refused, match="updated: close and open it again"):
            do()
    assert kept(jars.path) == before, "not a row is written"


def test_opened_again_it_judges_and_books(jars: Pantry) -> None:
    judged_by_another(jars.path)
    with open_pantry(jars.path, jars.today) as again:
        assert view.due(again)[0].count == 4
        act.use(again, view.due(again)[0].code)
        assert view.due(again)[0].count == 3
    assert view.due(jars)[0].count == 3, "judged by the rules that this one has, too"


def test_tables_that_nobody_has_judged_are_made_again_by_whoever_is_there(jars: Pantry) -> None:
    with closing(sqlite3.connect(jars.path)) as db, db:
        db.execute("DELETE FROM meta WHERE name = 'rules'")
    assert view.due(jars)[0].count == 4


def test_an_act_that_is_the_first_thing_after_an_update_is_booked(jars: Pantry) -> None:
    code = view.due(jars)[0].code
    judged_by_another(jars.path, "rules of the version before")
    with open_pantry(jars.path, jars.today) as again:
        act.use(again, code)
        assert view.due(again)[0].count == 3


def test_what_was_told_under_the_lock_is_as_strict(jars: Pantry) -> None:
    """The other program is done between this one's last look and its next act."""
    line = putup.read(jars, "2 jars strawberry jam, jam, larder")
    judged_by_another(jars.path)
    with pytest.raises(Refused) as told:
        putup.put_up(jars, line)
    assert told.value.message == UPDATED


def test_a_store_that_may_not_be_written_is_looked_at_again_and_again(jars: Pantry) -> None:
    judged_by_another(jars.path, "rules of the version before")
    with open_pantry(jars.path, jars.today) as p:
        p.store.db.close()
        only_read = f"file:{jars.path}?mode=ro"
        p.store.db = sqlite3.connect(only_read, uri=True, isolation_level=None)
        rows = view.due(p)
        assert [row.count for row in rows] == [4]
        p.refresh()
        assert view.due(p) == rows
