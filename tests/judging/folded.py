"""The program without its store: facts become events of its log, its folds and its judge answer.

Nothing is decided here that the program would decide otherwise: what its services work out before
they book (the doubt of a process, what a sign says) is asked of the same functions of its core.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime, timedelta
from fractions import Fraction
from functools import cache

from pantry_tui.core.amounts import Amount
from pantry_tui.core.keeping.limits import as_packed, assess
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event, standing
from pantry_tui.core.log.fold import fold_batch
from pantry_tui.core.log.fold_place import fold_place
from pantry_tui.core.model import DAY_MIN, Batch, Container, FoodFacts, Place, When
from pantry_tui.core.safety.process import doubt
from pantry_tui.core.safety.signs import find_sign, likely_sign, signs_for, verdict_of
from pantry_tui.core.words import Acidity, Climate, Group, Method, State, Verdict
from pantry_tui.reference.process import load_not_recommended, load_processes
from pantry_tui.reference.signs import load_signs
from pantry_tui.reference.tables import load_tables
from tests.judging.bound import Answer
from tests.judging.world import (
    DAY,
    CorrectedMade,
    Cut,
    Drawn,
    Fact,
    Food,
    Happening,
    LooksSound,
    Moved,
    Opened,
    PlaceChanged,
    PlaceOpened,
    PutUp,
    Reading,
    Ready,
    SignSeen,
    Thawed,
)

JAR, PACK, CROCK = "pint jar", "pack", "crock"
_FULL = {"full": True, "half": False, None: None}


@cache
def facts_of(food: Food) -> FoodFacts:
    """The program's own facts of a food that its table holds; else what a household says of it."""
    if food.known:
        known = load_tables().facts(food.name)
        assert known is not None, food.name
        return known
    return FoodFacts(food.name, Group(food.group), Acidity(food.acidity), known=False)


@cache
def doubts(food: Food, method: str, size: str, short: bool) -> tuple[str, ...]:
    """What a put-up finds wrong with a process, a minute of it where it is too short."""
    found = doubt(
        Method(method),
        facts_of(food),
        size,
        {"minutes": "1"} if short else {},
        0,
        load_processes(),
        load_not_recommended(),
    )
    return found.problems if found else ()


def _iso(minute: int) -> str:
    then = datetime.combine(date.fromordinal(minute // DAY), datetime.min.time())
    return (then + timedelta(minutes=minute % DAY)).isoformat(timespec="minutes")


def _id(container: str) -> str:
    return container.replace("/", ".")


class Folded:
    """A fresh household whose log is a list."""

    def __init__(self) -> None:
        self._events: list[Event] = []
        self._ids: dict[str, tuple[str, ...]] = {}
        self._climates: dict[str, str] = {}

    # -- booking -------------------------------------------------------------------------------

    def book(self, fact: Fact) -> bool:
        payload = self._payload(fact.what)
        if payload is None:
            return False
        if isinstance(payload, said.PutUp):
            made = min(fact.day, fact.booked // DAY)
            payload = payload._replace(made=date.fromordinal(made))
        # The program takes no moment that is still to come: what is booked then is the booking.
        future = (fact.day, fact.minute or 0) > (fact.booked // DAY, fact.booked % DAY)
        day, minute = (fact.booked // DAY, None) if future else (fact.day, fact.minute)
        also = self._alike(payload) if isinstance(payload, said.PlaceChanged) else ()
        self._append(fact.id, day, minute, fact.booked, payload, *also)
        return True

    def _alike(self, changed: said.PlaceChanged) -> Iterator[said.PlaceChanged]:
        """The places in it that are as it is become what it becomes, as `place change` books it."""
        places = self._places()
        if changed.climate in (None, places[changed.place].climate):
            return
        alike = [changed.place]
        while alike:
            outer = places[alike.pop()]
            for one in places.values():
                if one.parent == outer.id and one.climate is outer.climate:
                    alike.append(one.id)
                    yield said.PlaceChanged(one.id, climate=changed.climate, forget_target=True)

    def undo(self, fact_id: str, booked: int) -> bool:
        self._append("", booked // DAY, None, booked, said.Undo(self._ids[fact_id]))
        return True

    def redo(self, fact_id: str, booked: int) -> bool:
        self._append("", booked // DAY, None, booked, said.Redo("", self._ids[fact_id]))
        return True

    def _append(
        self, fact_id: str, day: int, minute: int | None, booked: int, *payloads: said.Payload
    ) -> None:
        before = len(self._events)
        for n, payload in enumerate(payloads, before):
            on = date.fromordinal(day)
            self._events.append(Event(f"{n:026}", _iso(booked), on, payload, minute))
        self._ids[fact_id] = tuple(one.id for one in self._events[before:])

    def _payload(self, w: Happening) -> said.Payload | None:
        match w:
            case PlaceOpened():
                # The program books the climate of the place above where none is said.
                held = w.climate or self._climates[w.parent or ""]
                self._climates[w.place] = held
                return said.PlaceAdded(
                    w.place, w.place, Climate(held), w.parent, target_f=w.target_f
                )
            case PlaceChanged():
                self._climates[w.place] = w.climate or self._climates[w.place]
                climate = None if w.climate is None else Climate(w.climate)
                forget = climate is not None and w.target_f is None
                return said.PlaceChanged(
                    w.place, climate=climate, target_f=w.target_f, forget_target=forget
                )
            case Reading():
                return said.Reading(w.place, w.temp_f, None, w.since)
            case Cut():
                start = "" if w.start is None else _iso(w.start)
                return said.Outage(w.place, start, _iso(w.end), full=_FULL[w.fullness])
            case PutUp():
                return self._put_up(w)
            case CorrectedMade():
                return said.Correct(w.batch, made=date.fromordinal(w.day))
            case _:
                return self._of_container(w)

    def _put_up(self, w: PutUp) -> said.PutUp:
        # Bought food in a jar would be a tin, which stands on a shelf.
        size = CROCK if not w.closed_vessel else PACK if w.method == "bought in" else JAR
        process = {"vacuum": "yes"} if w.vacuum else {}
        process |= {"minutes": "1"} if w.doubt else {}
        return said.PutUp(
            w.batch,
            w.batch,
            tuple(map(_id, w.containers)),
            facts_of(w.food),
            Method(w.method),
            w.place,
            State(w.state),
            size=size,
            amount=Amount(Fraction(w.weight_lb), "lb"),
            process=tuple(process.items()),
            printed=None if w.printed is None else date.fromordinal(w.printed),
            doubt=doubts(w.food, w.method, size, w.doubt),
        )

    def _of_container(self, w: Happening) -> said.Payload | None:
        container = _id(getattr(w, "container", ""))
        about = said.batch_of(container), (container,)
        match w:
            case Ready():
                return said.Ready(*about)
            case Opened():
                return said.Open(*about)
            case Thawed():
                return said.Thaw(*about, how="" if w.how == "fridge" else w.how)
            case Moved():
                return said.Move(*about, w.place)
            case Drawn():
                return self._draw(container, w.part)
            case LooksSound():
                return said.Sign(*about, "looked", "looks sound", Verdict.SOUND)
            case SignSeen():
                return self._sign(container, w.sign)
        return None

    def _draw(self, container: str, part: float) -> said.Payload | None:
        batch = said.batch_of(container)
        if part >= 1:
            return said.Use(batch, (container,))
        held = self._held(container)
        if held is None or held[1].left is None:
            return None
        left = held[1].left
        return said.Use(batch, (container,), Amount(left.number * Fraction(part), left.unit))

    def _sign(self, container: str, words: str) -> said.Payload | None:
        held = self._held(container)
        if held is None:
            return None
        batch, box = held
        food = as_packed(batch, box.state is State.OPEN).food
        known = signs_for(load_signs(), batch.method, food, box.state is not State.SEALED)
        sign = find_sign(known, words) or likely_sign(known, words)
        if sign is None:
            return None
        verdict = verdict_of(sign, batch.method, batch.food, box.state is State.SEALED)
        suspect = f"{container} showed {sign.words}" if sign.suspect_batch else ""
        return said.Sign(batch.id, (container,), sign.id, sign.words, verdict, suspect)

    # -- answering -----------------------------------------------------------------------------

    def _held(self, container: str) -> tuple[Batch, Container] | None:
        id_ = said.batch_of(container)
        found = fold_batch(id_, [e for e in standing(self._events) if id_ in _touched(e)])
        if found is None:
            return None
        batch, boxes = found
        return batch, next(one for one in boxes if one.id == container)

    def _places(self) -> dict[str, Place]:
        events = standing(self._events)
        found = {
            name: fold_place([e for e in events if said.place_of(e.payload) == name])
            for name in {said.place_of(e.payload) for e in events} - {""}
        }
        return {name: place for name, place in found.items() if place is not None}

    def answer(self, container: str, now: int) -> Answer:
        held = self._held(_id(container))
        if held is None:
            return Answer("never put up", None, False)
        batch, box = held
        day = date.fromordinal(now // DAY)
        then = When(now, now, day)
        judged = assess(batch, box, self._places(), load_tables().book, then).on(day)
        last = judged.discard_after
        return Answer(
            judged.verdict if box.here else "gone",
            None if last is None else last.toordinal(),
            judged.usable and box.here,
        )


def _touched(event: Event) -> tuple[str, ...]:
    return said.touches(event.payload)


assert DAY == DAY_MIN
