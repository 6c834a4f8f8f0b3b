"""A container's life told in few words: what happened to it, and to its places, and when.

    Told("lasagne", Method.MEAL, "fridge").at(1, 18).move("freezer").read("fridge", 45, since=90)

Days count from the day made; an hour of None is an unknown one.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

from pantry_tui.core.amounts import Amount, amount_of
from pantry_tui.core.keeping.limits import Assessment, Judgement, assess
from pantry_tui.core.keeping.rules import Rulebook
from pantry_tui.core.model import (
    DAY_MIN,
    EVER,
    Batch,
    Container,
    Cut,
    FoodFacts,
    Held,
    Place,
    Read,
    Seen,
    Turn,
    When,
)
from pantry_tui.core.words import ASSUMED_F, Climate, Method, State, Verdict
from pantry_tui.reference.tables import load_tables

MADE = date(2026, 3, 1)
HOUSE = {
    "kitchen": Climate.ROOM,
    "larder": Climate.PANTRY,
    "vault": Climate.CELLAR,
    "fridge": Climate.FRIDGE,
    "second fridge": Climate.FRIDGE,
    "freezer": Climate.FREEZER,
    "chest": Climate.FREEZER,
}
#: The first place of each climate.
OF = {climate: name for name, climate in reversed(HOUSE.items())}


def when(day: int, hour: float | None, last: date = MADE) -> When:
    """That minute, counted from `MADE`; without an hour any minute of that day."""
    on = last + timedelta(days=day)
    start = on.toordinal() * DAY_MIN
    if hour is None:
        return When(start, start + DAY_MIN - 1, on)
    minute = start + round(hour * 60)
    return When(minute, minute, on)


def facts_of(food: str) -> FoodFacts:
    facts = load_tables().facts(food)
    assert facts is not None, food
    return facts


class Told:
    """One container and the places of a household."""

    def __init__(
        self,
        food: str | FoodFacts,
        method: Method,
        place: str,
        state: State = State.SEALED,
        hour: float | None = 10,
        **more: object,
    ) -> None:
        facts = facts_of(food) if isinstance(food, str) else food
        made = more.pop("made", MADE)
        process = tuple((str(k), str(v)) for k, v in more.items() if k not in ("size", "printed"))
        size, printed = str(more.get("size", "")), more.get("printed")
        self.batch = Batch("b", "2A", facts, method, made, size, process)  # type: ignore[arg-type]
        self.batch = replace(self.batch, printed=printed)  # type: ignore[arg-type]
        self.places = {
            name: Place(name, name, climate, facts=(Held(EVER, climate, ASSUMED_F[climate]),))
            for name, climate in HOUSE.items()
        }
        first = Turn(when(0, hour), "e000", place, state)
        self.box = Container("b.1", "b", 1, state, place, (first,))
        self._day, self._hour = 0, hour
        self.book = load_tables().book

    def at(self, day: int, hour: float | None = 12) -> Told:
        self._day, self._hour = day, hour
        return self

    @property
    def then(self) -> When:
        return when(self._day, self._hour)

    def turn(self, place: str | None = None, state: State | None = None, how: str = "") -> Told:
        event = f"e{len(self.box.turns):03}"
        turns = (*self.box.turns, Turn(self.then, event, place, state, how))
        ordered = sorted(turns[1:], key=lambda one: (one.when.first, one.when.last, one.event))
        self.box = replace(self.box, turns=(turns[0], *ordered))
        return self

    def move(self, place: str) -> Told:
        return self.turn(place)

    def open(self, place: str | None = None) -> Told:
        return self.turn(place, State.OPEN)

    def thaw(self, place: str | None = "fridge", how: str = "") -> Told:
        return self.turn(place, State.THAWED, how)

    def ready(self) -> Told:
        return self.turn(state=State.SEALED)

    def _know(self, place: str, fact: Held | Read | Cut) -> Told:
        def order(one: Held | Read | Cut) -> tuple[int, int]:
            moment = one.start if isinstance(one, Cut) else one.when
            return moment.first, moment.last

        old = self.places[place]
        self.places[place] = replace(old, facts=tuple(sorted((*old.facts, fact), key=order)))
        return self

    def read(self, place: str, temp_f: float, since: int | None = None) -> Told:
        return self._know(place, Read(self.then, temp_f, None, since))

    def hold(self, place: str, climate: Climate, target_f: float | None = None) -> Told:
        warm = ASSUMED_F[climate] if target_f is None else target_f
        self.places[place] = replace(self.places[place], climate=climate)
        return self._know(place, Held(self.then, climate, warm))

    def cut(
        self,
        place: str,
        hours: float,
        full: bool | None = None,
        max_temp_f: float | None = None,
        ice: bool | None = None,
    ) -> Told:
        start = self.then
        end = When(start.first + round(hours * 60), start.last + round(hours * 60), start.day)
        return self._know(place, Cut(start, end, full, max_temp_f, ice))

    def holding(self, first: str, left: str | None = None) -> Told:
        held: Amount = amount_of(first)
        rest = amount_of(left) if left is not None else held
        self.box = replace(self.box, first=held, left=rest)
        return self

    def sign(self, words: str, verdict: Verdict) -> Told:
        seen = Seen(self.then.day, words, verdict, self.then.last)
        self.box = replace(self.box, signs=(*self.box.signs, seen))
        return self

    def look(self) -> Told:
        self.box = replace(self.box, looked=self.then.day, looked_at=self.then.first)
        return self

    def strictest(self) -> Told:
        self.book = replace(self.book, strict=True)
        return self

    def assessed(self, day: int, hour: float = 12, book: Rulebook | None = None) -> Assessment:
        return assess(self.batch, self.box, self.places, book or self.book, when(day, hour))

    def judged(self, day: int, hour: float = 12) -> Judgement:
        now = when(day, hour)
        return self.assessed(day, hour).on(now.day)

    def last(self, day: int, hour: float = 12) -> int | None:
        """`discard_after`, counted from the day made."""
        found = self.judged(day, hour).discard_after
        return None if found is None else (found - MADE).days
