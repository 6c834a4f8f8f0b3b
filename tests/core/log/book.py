"""A log written down in few words, one line after the other.

    Book().on(date(2026, 3, 1), at="10:00").says(PutUp(...)).says(Move(...)).events

A line is booked on the day it speaks of unless `booked` says when; without `at` its hour is unknown
to the log, as for people who book late.
"""

from __future__ import annotations

from datetime import date, datetime, timedelta

from pantry_tui.core.amounts import Amount, amount_of
from pantry_tui.core.log.events import Event, standing
from pantry_tui.core.log.fold import fold_batch
from pantry_tui.core.log.fold_place import fold_place
from pantry_tui.core.log.payloads import Move, Payload, PutUp, Use
from pantry_tui.core.model import Batch, Container, FoodFacts, Place
from pantry_tui.core.words import Acidity, Group, Method, State

MADE = date(2026, 3, 1)
BEANS = FoodFacts("runner beans", Group.VEGETABLE, Acidity.LOW_ACID, frozenset({"bean"}))


def day(number: int) -> date:
    """That many days after `MADE`."""
    return MADE + timedelta(days=number)


def put_up(
    *numbers: int,
    batch: str = "b",
    method: Method = Method.PRESSURE,
    size: str = "pint jars",
    holding: str = "",
    place: str = "larder",
    state: State = State.SEALED,
    made: date | None = MADE,
) -> PutUp:
    """Containers b.1, b.2 ... put up in one go."""
    ids = tuple(f"{batch}.{n}" for n in numbers or (1,))
    amount: Amount | None = amount_of(holding) if holding else None
    return PutUp(batch, "2A", ids, BEANS, method, place, state, made, size, amount)


class Book:
    """Events in the order they were booked."""

    def __init__(self) -> None:
        self.events: list[Event] = []

    def says(
        self,
        payload: Payload,
        on: int = 0,
        at: str | None = None,
        booked: str | None = None,
        together: str = "",
    ) -> Book:
        """`on`: days after `MADE`; `at`: "14:30"; `booked`: ISO, else 12:00 of that day in UTC."""
        then = datetime.fromisoformat(booked) if booked else None
        written = then or datetime.fromisoformat(f"{day(on)}T12:00:00+00:00")
        minute = None if at is None else int(at[:-3]) * 60 + int(at[-2:])
        number = f"{len(self.events) + 1:026}"
        self.events.append(Event(number, written.isoformat(), day(on), payload, minute, together))
        return self

    def batch(self, id_: str = "b") -> tuple[Batch, dict[str, Container]]:
        found = fold_batch(id_, standing(self.events))
        assert found is not None
        return found[0], {one.id: one for one in found[1]}

    def box(self, id_: str = "b.1") -> Container:
        return self.batch(id_.rpartition(".")[0])[1][id_]

    def place(self) -> Place:
        found = fold_place(standing(self.events))
        assert found is not None
        return found


def moved(place: str, *numbers: int, state: State | None = None) -> Move:
    return Move("b", tuple(f"b.{n}" for n in numbers or (1,)), place, state)


def crate() -> Book:
    """40 lb of apples in an open crate."""
    return Book().says(
        put_up(1, method=Method.CELLAR, size="crate", holding="40 lb", place="cellar")
    )


def jar() -> Book:
    """A pound in a closed jar."""
    return Book().says(put_up(1, holding="1 lb"))


def use(amount: str | None = None, *numbers: int) -> Use:
    ids = tuple(f"b.{n}" for n in numbers or (1,))
    return Use("b", ids, amount_of(amount) if amount else None)
