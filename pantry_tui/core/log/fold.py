"""Fold the log into stock. Pure: the same events always give the same stock."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import date
from typing import Any

from pantry_tui.core.log.events import Did, Event
from pantry_tui.core.model import (
    Batch,
    Container,
    FoodFacts,
    Place,
    Seen,
    Spell,
    Stay,
    Stock,
    Tasted,
)
from pantry_tui.core.words import Acidity, Climate, Group, Method, State, Taste, Verdict

#: How a container left; the words stand in lists and in history.
FATES = {Did.USE: "used", Did.DISCARD: "discarded", Did.GIVE: "given", Did.LOSE: "lost"}

#: The state a container is in after an event that changes it.
NEXT_STATE = {Did.OPEN: State.OPEN, Did.THAW: State.THAWED, Did.FINISH: State.SEALED}


def standing(events: Iterable[Event]) -> list[Event]:
    """The events that count, in the order they were recorded: undone ones and undos left out."""
    ordered = sorted(events, key=lambda event: event.id)
    undone = {event.data["event"] for event in ordered if event.did is Did.UNDO}
    return [e for e in ordered if e.id not in undone and e.did is not Did.UNDO]


def _food(data: dict[str, Any]) -> FoodFacts:
    return FoodFacts(
        data["name"],
        Group(data["group"]),
        Acidity(data["acidity"]),
        frozenset(data.get("classes", ())),
        data.get("known", True),
    )


def _day(text: str | None) -> date | None:
    return date.fromisoformat(text) if text else None


class _Fold:
    """Stock under construction."""

    def __init__(self) -> None:
        self.places: dict[str, Place] = {}
        self.batches: dict[str, Batch] = {}
        self.containers: dict[str, Container] = {}

    def place(self, event: Event) -> None:
        """A place is added, or changed from that day on."""
        data = event.data
        old = self.places.get(data["id"])
        place = Place(
            data["id"],
            data["name"],
            Climate(data["climate"]),
            data.get("parent"),
            data.get("target_f"),
            data.get("capacity"),
        )
        since = event.day if old else date.min
        spells = (*(old.spells if old else ()), Spell(since, place.climate, place.target))
        checked = old.checked if old else None
        self.places[place.id] = replace(place, spells=_in_order(spells), checked=checked)

    def reading(self, event: Event) -> None:
        """The place holds this temperature until it is read again."""
        old = self.places[event.data["place"]]
        spell = Spell(
            event.day, old.climate, event.data["temp_f"], True, event.data.get("humidity")
        )
        self.places[old.id] = replace(old, spells=_in_order((*old.spells, spell)))

    def put_up(self, event: Event) -> None:
        data = event.data
        made = _day(data.get("made"))
        self.batches[event.batch] = Batch(
            event.batch,
            data["code"],
            _food(data["food"]),
            Method(data["method"]),
            made,
            data.get("size", ""),
            tuple((str(k), str(v)) for k, v in data.get("process", ())),
            data.get("note", ""),
            _day(data.get("printed")),
            tuple(data.get("doubt", ())),
            data.get("possible", ""),
        )
        state = State(data["state"])
        stay = self._stay(made or event.day, data["place"], state)
        for number, id_ in enumerate(event.containers, start=1):
            self.containers[id_] = Container(
                id_, event.batch, number, state, stay.place, (stay,), data.get("amount", "")
            )

    def _stay(self, since: date, place: str, state: State) -> Stay:
        stands = self.places[place]
        return Stay(since, place, stands.climate, state, stands.target)

    def change(self, event: Event) -> None:
        """Move, open, thaw or finish: a new stay from that day on."""
        for id_ in event.containers:
            old = self.containers[id_]
            state = NEXT_STATE.get(event.did, State(event.data.get("state", old.state)))
            place = event.data.get("place") or old.place
            stay = replace(
                self._stay(event.day, place, state),
                thawed=event.data.get("how", _last_thaw(old, state)),
            )
            stays = tuple(sorted((*old.stays, stay), key=lambda s: s.since))
            # What was begun is no gift any more.
            kept = old.reserved if state in (State.SEALED, State.WORKING) else ""
            self.containers[id_] = replace(
                old, state=state, place=place, stays=stays, reserved=kept
            )

    def correct(self, event: Event) -> None:
        """The record of what happened was wrong: made, size, process, note. The containers' first
        stay begins on the day made, so it moves along."""
        data = event.data
        old = self.batches[event.batch]
        made = _day(data["made"]) if "made" in data else old.made
        self.batches[event.batch] = replace(
            old,
            made=made,
            size=data.get("size", old.size),
            note=data.get("note", old.note),
            process=tuple((str(k), str(v)) for k, v in data.get("process", old.process)),
            doubt=tuple(data.get("doubt", old.doubt)),
            possible=data.get("possible", old.possible),
        )
        if "made" not in data:
            return
        for id_, container in self.containers.items():
            if container.batch == event.batch:
                first = replace(container.stays[0], since=made or event.day)
                stays = (first, *container.stays[1:])
                self.containers[id_] = replace(container, stays=stays)

    def sign(self, event: Event) -> None:
        """Something seen on containers; it may put their whole batch under suspicion."""
        data = event.data
        for id_ in event.containers:
            old = self.containers[id_]
            if data["sign"] == "looked":
                self.containers[id_] = replace(old, looked=event.day)
            else:
                seen = Seen(event.day, data["words"], Verdict(data["verdict"]))
                self.containers[id_] = replace(old, signs=(*old.signs, seen))
        if data.get("suspect"):
            self._suspect(event.batch, data["suspect"])

    def _suspect(self, batch: str, why: str) -> None:
        """All of a batch is to be looked at, also what was looked at before."""
        self.batches[batch] = replace(self.batches[batch], suspect=why)
        for id_, container in self.containers.items():
            if container.batch == batch and container.looked is not None:
                self.containers[id_] = replace(container, looked=None)

    def taste(self, event: Event) -> None:
        """What was said at table of a batch."""
        old = self.batches[event.batch]
        said = Tasted(event.day, Taste(event.data["taste"]), event.data.get("note", ""))
        self.batches[event.batch] = replace(old, tasted=(*old.tasted, said))

    def reserve(self, event: Event) -> None:
        """Kept apart for something or somebody, or (with no words) free again."""
        for id_ in event.containers:
            self.containers[id_] = replace(self.containers[id_], reserved=event.data["for"])

    def count(self, event: Event) -> None:
        """A round: what nobody saw leave, what came to light again, what was never recorded."""
        data = event.data
        place = self.places[data["place"]]
        self.places[place.id] = replace(place, checked=event.day)
        for id_, fate in data.get("gone", {}).items():
            old = self.containers[id_]
            self.containers[id_] = replace(old, state=State.GONE, fate=fate, ended=event.day)
        for id_, where in data.get("back", {}).items():
            old = self.containers[id_]
            stay = self._stay(event.day, where, old.stays[-1].state)
            self.containers[id_] = replace(
                old, state=stay.state, fate="", ended=None, place=where, stays=(*old.stays, stay)
            )
        for fresh in data.get("new", ()):
            self._found(event, fresh)

    def _found(self, event: Event, fresh: dict[str, Any]) -> None:
        batch = self.batches[fresh["batch"]]
        known = sum(c.batch == batch.id for c in self.containers.values())
        state = State(fresh["state"])
        stay = self._stay(batch.made or event.day, fresh["place"], state)
        for number, id_ in enumerate(fresh["containers"], start=known + 1):
            self.containers[id_] = Container(id_, batch.id, number, state, stay.place, (stay,))

    def outage(self, event: Event) -> None:
        """A power cut leaves a mark on every item that it did not spare."""
        for id_, (verdict, words) in event.data.get("marks", {}).items():
            old = self.containers[id_]
            seen = Seen(event.day, words, Verdict(verdict))
            self.containers[id_] = replace(old, signs=(*old.signs, seen))

    def leave(self, event: Event) -> None:
        """Use, discard, give or lose: whole, or an amount of a bulk container."""
        left = event.data.get("left", "")
        for id_ in event.containers:
            old = self.containers[id_]
            if left:
                self.containers[id_] = replace(old, amount=left)
            else:
                self.containers[id_] = replace(
                    old, state=State.GONE, fate=FATES[event.did], amount="", ended=event.day
                )


def _in_order(spells: tuple[Spell, ...]) -> tuple[Spell, ...]:
    return tuple(sorted(spells, key=lambda spell: spell.since))


def _last_thaw(container: Container, state: State) -> str:
    """How it was thawed goes with it, as long as it stays thawed."""
    return container.stays[-1].thawed if state is State.THAWED else ""


def fold(events: Iterable[Event]) -> Stock:
    """The stock that the whole log leaves behind."""
    building = _Fold()
    steps = {
        Did.PLACE_ADDED: building.place,
        Did.PLACE_CHANGED: building.place,
        Did.PUT_UP: building.put_up,
        Did.MOVE: building.change,
        Did.OPEN: building.change,
        Did.THAW: building.change,
        Did.FINISH: building.change,
        Did.READING: building.reading,
        Did.SIGN: building.sign,
        Did.OUTAGE: building.outage,
        Did.COUNT: building.count,
        Did.CORRECT: building.correct,
        Did.TASTED: building.taste,
        Did.RESERVED: building.reserve,
        Did.USE: building.leave,
        Did.DISCARD: building.leave,
        Did.GIVE: building.leave,
        Did.LOSE: building.leave,
    }
    for event in standing(events):
        step = steps.get(event.did)
        if step is not None:
            step(event)
    return Stock(building.places, building.batches, building.containers)


def path_of(places: dict[str, Place], id_: str) -> str:
    """ "basement › north wall › shelf 2"."""
    names: list[str] = []
    here: str | None = id_
    while here is not None and here in places and len(names) < 20:
        names.append(places[here].name)
        here = places[here].parent
    return " › ".join(reversed(names))
