"""Fold the log into stock. Pure: the same events always give the same stock."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import date
from typing import Any

from pantry_tui.core.events import Did, Event
from pantry_tui.core.model import Batch, Container, FoodFacts, Place, Stay, Stock
from pantry_tui.core.words import Acidity, Climate, Group, Method, State

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
        data = event.data
        self.places[data["id"]] = Place(
            data["id"],
            data["name"],
            Climate(data["climate"]),
            data.get("parent"),
            data.get("target_f"),
            data.get("capacity"),
        )

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
        )
        state = State(data["state"])
        stay = self._stay(made or event.day, data["place"], state)
        for number, id_ in enumerate(event.containers, start=1):
            self.containers[id_] = Container(
                id_, event.batch, number, state, stay.place, (stay,), data.get("amount", "")
            )

    def _stay(self, since: date, place: str, state: State) -> Stay:
        stands = self.places[place]
        return Stay(since, place, stands.climate, state, stands.temperature_f)

    def change(self, event: Event) -> None:
        """Move, open, thaw or finish: a new stay from that day on."""
        for id_ in event.containers:
            old = self.containers[id_]
            state = NEXT_STATE.get(event.did, State(event.data.get("state", old.state)))
            place = event.data.get("place") or old.place
            stay = self._stay(event.day, place, state)
            stays = tuple(sorted((*old.stays, stay), key=lambda s: s.since))
            self.containers[id_] = replace(old, state=state, place=place, stays=stays)

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
