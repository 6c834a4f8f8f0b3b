"""Places as rows: what each is called and holds, and the facts of its warmth, read when asked for.

A place has hundreds of readings, and most acts need its name alone.
"""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import cast, overload

from pantry_tui.core.model import Cut, Held, Place, Read, When
from pantry_tui.core.words import ASSUMED_F, Climate
from pantry_tui.store import sums
from pantry_tui.store.check import check
from pantry_tui.store.damage import Damaged

Fact = Held | Read | Cut


class StoredFacts(Sequence[Fact]):
    """Facts as they are kept, made from their text when the first of them is asked for."""

    __slots__ = ("_facts", "_text")

    def __init__(self, text: str) -> None:
        self._text = text
        self._facts: tuple[Fact, ...] | None = None

    def _all(self) -> tuple[Fact, ...]:
        if self._facts is None:
            self._facts = tuple(map(_fact, json.loads(self._text)))
        return self._facts

    @overload
    def __getitem__(self, at: int) -> Fact: ...
    @overload
    def __getitem__(self, at: slice) -> tuple[Fact, ...]: ...
    def __getitem__(self, at: int | slice) -> Fact | tuple[Fact, ...]:
        return self._all()[at]

    def __len__(self) -> int:
        return len(self._all())

    def __iter__(self) -> Iterator[Fact]:
        return iter(self._all())

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Sequence) and self._all() == tuple(other)

    def __hash__(self) -> int:
        return hash(self._all())


def _fact(row: list[object]) -> Fact:
    kind, when, *rest = row
    if kind == "held":
        climate, target, *told = rest
        return _held(_when(when), Climate(climate), target, *told)  # type: ignore[arg-type]
    if kind == "read":
        return Read(_when(when), *rest)  # type: ignore[arg-type]
    end, *known = rest
    return Cut(_when(when), _when(end), *known)  # type: ignore[arg-type]


def _held(when: When, climate: Climate, target: float, told: bool | None = None) -> Held:
    """A target that is the assumed one was told only where the row says so: older rows do not."""
    return Held(when, climate, target, target != ASSUMED_F[climate] if told is None else told)


def _when(row: object) -> When:
    first, last, day, zone = cast("list[int]", row)
    return When(first, last, date.fromordinal(day), zone)


def _text_of(facts: Sequence[Fact]) -> str:
    return json.dumps([_row(fact) for fact in facts], separators=(",", ":"))


def _row(fact: Fact) -> list[object]:
    if isinstance(fact, Held):
        told = [True] if fact.told and fact.target_f == ASSUMED_F[fact.climate] else []
        return ["held", _moment(fact.when), fact.climate.value, fact.target_f, *told]
    if isinstance(fact, Read):
        return ["read", _moment(fact.when), fact.temp_f, fact.humidity, fact.since]
    return ["cut", _moment(fact.start), _moment(fact.end), fact.full, fact.max_temp_f, fact.ice]


def _moment(when: When) -> list[int]:
    return [when.first, when.last, when.day.toordinal(), when.zone]


_COLUMNS = "id, name, climate, parent, target_f, capacity, checked, gone, facts"


def save(db: sqlite3.Connection, id_: str, place: Place | None) -> None:
    """The place as it is now; None where its adding was taken back."""
    gone = db.execute("DELETE FROM places WHERE id = ? RETURNING hash", (id_,)).fetchall()
    for (value,) in gone:
        sums.add(db, ("places",), value, -1)
    if place is None:
        return
    row = (
        place.id,
        place.name,
        place.climate.value,
        place.parent,
        None if place.target_f is None else float(place.target_f),
        place.capacity,
        place.checked.isoformat() if place.checked else None,
        int(place.gone),
        _text_of(place.facts),
    )
    holes = ", ".join("?" * (len(row) + 1))
    value = check(row)
    db.execute(f"INSERT INTO places ({_COLUMNS}, hash) VALUES ({holes})", (*row, value))
    sums.add(db, ("places",), value)


def all_of(db: sqlite3.Connection) -> Mapping[str, Place]:
    """Every place by its id, also those that are gone. Raises Damaged for a hurt row."""
    with sums.at_once(db):
        return _all_of(db)


def _all_of(db: sqlite3.Connection) -> Mapping[str, Place]:
    found, amount = {}, 0
    for row in db.execute(f"SELECT {_COLUMNS}, hash FROM places ORDER BY id"):
        if check(row[:-1]) != row[-1]:
            raise Damaged(f"the place {row[1]} is hurt")
        amount += row[-1]
        id_, name, climate, parent, target, capacity, checked, gone, facts = row[:-1]
        found[id_] = Place(
            id_,
            name,
            Climate(climate),
            parent,
            target,
            capacity,
            date.fromisoformat(checked) if checked else None,
            StoredFacts(facts),
            bool(gone),
        )
    sums.must_be(db, "places", len(found), amount, "the places")
    return found
