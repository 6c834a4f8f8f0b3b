"""Stores of the benchmark: a household's history written as the rows of a store file.

`event_of` alone knows how a log spells what happened. Stores are kept in a folder of the machine's
temporary files, under a name that says all that they depend on.
"""

from __future__ import annotations

import hashlib
import itertools
import random
import shutil
import sqlite3
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import closing, redirect_stdout
from datetime import UTC, datetime, time, timedelta
from fractions import Fraction
from io import StringIO
from pathlib import Path
from typing import Any

from pantry_tui.cli import main
from pantry_tui.core.amounts import Amount
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Method, Rating, State
from pantry_tui.store import lines, log, rebuild, sums
from tests.benchmarks import history
from tests.benchmarks.history import TODAY, Fact, Household, Size


def length(path: Path) -> int:
    """How many rows the log of a store has."""
    with closing(sqlite3.connect(path)) as db:
        (found,) = db.execute("select count(*) from log").fetchone()
    return int(found)


def event_of(fact: Fact, id_: str, recorded: datetime) -> Event:
    """The fact as an event of the log. The only place that knows its shape."""
    return Event(id_, recorded.isoformat(timespec="seconds"), fact.day, _payload(fact))


def _payload(fact: Fact) -> said.Payload:
    batch, place = fact.batch, fact.place
    if fact.what == "place":
        assert place is not None
        climate, parent = Climate(place.climate), place.inside
        target = float(place.target_f)
        inside = None if parent is None else f"p{parent}"
        return said.PlaceAdded(place.id, place.name, climate, inside, target)
    if fact.what == "reading":
        assert place is not None
        assert fact.temp_f is not None
        return said.Reading(place.id, fact.temp_f, fact.humidity)
    assert batch is not None
    containers = tuple(f"{batch.id}.{n}" for n in fact.containers)
    if fact.what == "put_up":
        return _put_up(batch, containers)
    if fact.what == "use":
        drawn = Amount(Fraction(fact.pounds[0]), "lb") if fact.pounds else None
        return said.Use(batch.id, containers, drawn)
    if fact.what == "rated":
        return said.Rated(batch.id, Rating.AGAIN, fact.words)
    if fact.what in ("move", "open"):
        assert place is not None
        kind = said.Move if fact.what == "move" else said.Open
        return kind(batch.id, containers, place.id)
    if fact.what == "discard":
        return said.Discard(batch.id, containers, why=fact.words)
    assert fact.what == "give"
    return said.Give(batch.id, containers, to=fact.words)


def _put_up(batch: Any, containers: tuple[str, ...]) -> said.PutUp:
    kind = batch.kind
    amount = Amount(Fraction(kind.amount), "lb") if kind.amount else None
    food = FoodFacts(kind.food, Group(kind.group), Acidity(kind.acidity))
    method, state = Method(kind.method), State.SEALED
    process = tuple((str(key), str(value)) for key, value in kind.process)
    return said.PutUp(
        batch.id,
        batch.code,
        containers,
        food,
        method,
        batch.place.id,
        state,
        batch.made,
        kind.size,
        amount,
        process,
    )


def codes() -> Iterator[str]:
    """Lid codes as the program gives them: 2A, 3A ... 9Y, then 2A2 and longer."""
    digits, letters = "2345679", "ACDEFHJKMNPRTWXY"
    for length in itertools.count(2):
        alphabets = [digits if n % 2 == 0 else letters for n in reversed(range(length))]
        for reverse in itertools.product(*alphabets):
            yield "".join(reversed(reverse))


def events_of(facts: Iterable[Fact]) -> Iterator[Event]:
    """The events of a log, in order. Ids, lid codes and hours are given here."""
    given, chance = codes(), random.Random(0)
    for day, several in itertools.groupby(facts, key=lambda fact: fact.day):
        morning = datetime.combine(day, time(6), tzinfo=UTC)
        for n, fact in enumerate(several):
            moment = morning + timedelta(seconds=n)
            id_ = f"{int(moment.timestamp() * 1000):013d}{0:05d}{chance.getrandbits(32):08x}"
            if fact.what == "put_up" and fact.batch:
                fact.batch.id, fact.batch.code = f"b{id_}", next(given)
            yield event_of(fact, id_, moment)


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
        parts = map(Path, (__file__, history.__file__, sums.__file__, lines.__file__))
        made_by = "".join((_empty(fresh), repr(size), *(p.read_text("utf-8") for p in parts)))
        path = shelf / f"{size.live}-{hashlib.sha256(made_by.encode()).hexdigest()[:16]}.db"
        if not path.exists():
            facts = Household(size).live_through()
            with closing(sqlite3.connect(fresh)) as db, db:
                for event in events_of(facts):
                    log.append(db, event)
                rebuild.beside(db)
            # Makes the stock tables, as of the day on which they are measured: an earlier one
            # would be judged in memory, again and again.
            with redirect_stdout(StringIO()):
                assert main(["--store", str(fresh), "--today", TODAY.isoformat(), "due"]) == 0
            shutil.move(fresh, path)
    return path
