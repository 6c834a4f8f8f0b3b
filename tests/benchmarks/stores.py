"""Stores of the benchmark: a household's history written as the rows of a store file.

`row_of` alone knows how a log spells what happened. Stores are kept in a folder of the machine's
temporary files, under a name that says all that they depend on.
"""

from __future__ import annotations

import hashlib
import itertools
import json
import random
import shutil
import sqlite3
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import closing, redirect_stdout
from datetime import UTC, datetime, time, timedelta
from io import StringIO
from pathlib import Path
from typing import Any

from pantry_tui.cli import main
from tests.benchmarks import history
from tests.benchmarks.history import Fact, Household, Size

#: Where a row of `row_of` goes.
INSERT = (
    "insert into events (id, recorded, day, did, batch, containers, data) values (?,?,?,?,?,?,?)"
)


def length(path: Path) -> int:
    """How many rows the log of a store has."""
    with closing(sqlite3.connect(path)) as db:
        (found,) = db.execute("select count(*) from events").fetchone()
    return int(found)


def row_of(fact: Fact, id_: str, recorded: datetime) -> tuple[Any, ...]:
    """The fact as a row of the log, under the event id `id_`. The only place that knows the shape:
    whoever changes the log changes this function, and nothing else here."""
    data: dict[str, Any] = {}
    batch, place = fact.batch, fact.place
    if fact.what == "place":
        assert place is not None
        parent = None if place.inside is None else f"p{place.inside}"
        data = {"id": place.id, "name": place.name, "climate": place.climate, "parent": parent,
                "target_f": float(place.target_f), "capacity": None}  # fmt: skip
    elif fact.what == "reading":
        assert place is not None
        data = {"place": place.id, "temp_f": fact.temp_f, "humidity": fact.humidity}
    elif fact.what == "put_up":
        assert batch is not None
        kind = batch.kind
        amount = f"{kind.amount} lb" if kind.amount else ""
        process = [*map(list, kind.process), *([["amount", amount]] if amount else [])]
        food = {"name": kind.food, "group": kind.group, "acidity": kind.acidity, "classes": [],
                "known": True}  # fmt: skip
        data = {"code": batch.code, "food": food, "method": kind.method,
                "made": batch.made.isoformat(), "size": kind.size, "process": process, "note": "",
                "place": batch.place.id, "state": "sealed", "amount": amount, "doubt": [],
                "possible": ""}  # fmt: skip
    elif fact.what == "move":
        assert place is not None
        data = {"place": place.id, "state": "sealed"}
    elif fact.what == "open":
        assert place is not None
        data = {"place": place.id}
    elif fact.what == "use" and fact.pounds:
        drawn, left = fact.pounds
        data = {"amount": f"{drawn} lb", "left": f"{left} lb" if left else ""}
    elif fact.what == "discard":
        data = {"why": fact.words}
    elif fact.what == "give":
        data = {"to": fact.words}
    elif fact.what == "rated":
        data = {"taste": "again", "note": fact.words}
    names = {"place": "place_added", "rated": "tasted"}
    return (
        id_,
        recorded.isoformat(timespec="seconds"),
        fact.day.isoformat(),
        names.get(fact.what, fact.what),
        batch.id if batch else "",
        json.dumps([f"{batch.id}.{n}" for n in fact.containers] if batch else []),
        json.dumps(data, ensure_ascii=False, sort_keys=True),
    )


def codes() -> Iterator[str]:
    """Lid codes as the program gives them: 2A, 3A ... 9Y, then 2A2 and longer."""
    digits, letters = "2345679", "ACDEFHJKMNPRTWXY"
    for length in itertools.count(2):
        alphabets = [digits if n % 2 == 0 else letters for n in reversed(range(length))]
        for reverse in itertools.product(*alphabets):
            yield "".join(reversed(reverse))


def rows_of(facts: Iterable[Fact]) -> Iterator[tuple[Any, ...]]:
    """The rows of a log, in order. Ids, lid codes and hours are given here."""
    given, chance = codes(), random.Random(0)
    for day, several in itertools.groupby(facts, key=lambda fact: fact.day):
        morning = datetime.combine(day, time(6), tzinfo=UTC)
        for n, fact in enumerate(several):
            moment = morning + timedelta(seconds=n)
            id_ = f"{int(moment.timestamp() * 1000):013d}{0:05d}{chance.getrandbits(32):08x}"
            if fact.what == "put_up" and fact.batch:
                fact.batch.id, fact.batch.code = f"b{id_}", next(given)
            yield row_of(fact, id_, moment)


def _empty(path: Path) -> str:
    """An empty store as the program makes it; what its tables look like."""
    with redirect_stdout(StringIO()):
        assert main(["--store", str(path), "init", "--people", "4"]) == 0
    with closing(sqlite3.connect(path)) as db:
        return "\n".join(
            sorted(sql for (sql,) in db.execute("select sql from sqlite_master") if sql)
        )


def store(size: Size, folder: Path | None = None) -> Path:
    """A store of that size, made once for each program and generator. Copy it before you write."""
    shelf = folder or Path(tempfile.gettempdir()) / "pantry-tui-benchmarks"
    shelf.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory(dir=shelf) as making:
        fresh = Path(making) / "store.db"
        parts = Path(__file__), Path(history.__file__)
        made_by = "".join((_empty(fresh), repr(size), *(p.read_text("utf-8") for p in parts)))
        path = shelf / f"{size.live}-{hashlib.sha256(made_by.encode()).hexdigest()[:16]}.db"
        if not path.exists():
            facts = Household(size).live_through()
            with closing(sqlite3.connect(fresh)) as db, db:
                db.executemany(INSERT, rows_of(facts))
            shutil.move(fresh, path)
    return path
