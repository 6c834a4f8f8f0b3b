"""What an event says: one frozen class a kind, with only what happened or changed.

Amounts are exact. Ids are opaque; a container's id is its batch's, a point and a number. Fields
that were never said keep their defaults and are not written. The names in the log are in `BY_NAME`.
"""

from __future__ import annotations

from typing import NamedTuple

from pantry_tui.core.log.batch_payloads import (
    FATE_OF,
    Back,
    Clocked,
    Correct,
    Count,
    Discard,
    Fate,
    Found,
    Give,
    Gone,
    Missing,
    Move,
    Open,
    Part,
    PutUp,
    Rated,
    Ready,
    Reason,
    Relabelled,
    Reserved,
    Sign,
    Tended,
    Thaw,
    Timer,
    Use,
    state_after,
)
from pantry_tui.core.log.home_payloads import (
    Ceiling,
    Checked,
    Dish,
    DishDay,
    Eaten,
    Entry,
    FoodAdded,
    Household,
    JarsCounted,
    JarsLent,
    Pin,
    Planned,
    RuleAdded,
    Substitutes,
    Table,
    Taken,
)
from pantry_tui.core.log.place_payloads import (
    Mark,
    Outage,
    PlaceAdded,
    PlaceChanged,
    PlaceRemoved,
    Reading,
)

__all__ = [
    "BY_NAME",
    "FATE_OF",
    "NAME_OF",
    "Back",
    "Ceiling",
    "Checked",
    "ClockAhead",
    "Clocked",
    "Correct",
    "Count",
    "Discard",
    "Dish",
    "DishDay",
    "Eaten",
    "Entry",
    "Fate",
    "FoodAdded",
    "Found",
    "Give",
    "Gone",
    "Household",
    "JarsCounted",
    "JarsLent",
    "Mark",
    "Missing",
    "Move",
    "Open",
    "Outage",
    "Part",
    "Payload",
    "Pin",
    "PlaceAdded",
    "PlaceChanged",
    "PlaceRemoved",
    "Planned",
    "PutUp",
    "Rated",
    "Reading",
    "Ready",
    "Reason",
    "Redo",
    "Relabelled",
    "Reserved",
    "RuleAdded",
    "Sign",
    "Substitutes",
    "Table",
    "Taken",
    "Tended",
    "Thaw",
    "Timer",
    "Undo",
    "Use",
    "batch_of",
    "place_of",
    "state_after",
    "touches",
]


class Undo(NamedTuple):
    """These events count no more."""

    events: tuple[str, ...]


class Redo(NamedTuple):
    """An undo is taken back: the events that it took back count again."""

    undo: str
    events: tuple[str, ...]


class ClockAhead(NamedTuple):
    """These events were booked by a clock that was ahead: after the moment `since` ("" where
    nothing was booked before) and before `until` (ISO). Of one batch, or of one place."""

    events: tuple[str, ...]
    until: str
    since: str = ""
    batch: str = ""
    place: str = ""


Payload = (
    PutUp
    | Ready
    | Move
    | Open
    | Thaw
    | Use
    | Discard
    | Give
    | Missing
    | Sign
    | Count
    | Rated
    | Reserved
    | Correct
    | Relabelled
    | Tended
    | Checked
    | Timer
    | JarsCounted
    | JarsLent
    | Reading
    | Outage
    | PlaceAdded
    | PlaceChanged
    | PlaceRemoved
    | FoodAdded
    | RuleAdded
    | Substitutes
    | Dish
    | Household
    | Ceiling
    | Table
    | Planned
    | ClockAhead
    | Undo
    | Redo
)

#: Name in the log -> class. The names are never changed.
BY_NAME: dict[str, type[Payload]] = {
    "put_up": PutUp,
    "ready": Ready,
    "move": Move,
    "open": Open,
    "thaw": Thaw,
    "use": Use,
    "discard": Discard,
    "give": Give,
    "missing": Missing,
    "sign": Sign,
    "count": Count,
    "rated": Rated,
    "reserved": Reserved,
    "correct": Correct,
    "relabelled": Relabelled,
    "tended": Tended,
    "checked": Checked,
    "timer": Timer,
    "jars_counted": JarsCounted,
    "jars_lent": JarsLent,
    "reading": Reading,
    "outage": Outage,
    "place_added": PlaceAdded,
    "place_changed": PlaceChanged,
    "place_removed": PlaceRemoved,
    "food_added": FoodAdded,
    "rule_added": RuleAdded,
    "substitutes": Substitutes,
    "dish": Dish,
    "household": Household,
    "ceiling": Ceiling,
    "table": Table,
    "planned": Planned,
    "clock_ahead": ClockAhead,
    "undo": Undo,
    "redo": Redo,
}
#: Class -> name in the log.
NAME_OF = {kind: name for name, kind in BY_NAME.items()}


def batch_of(container: str) -> str:
    """The batch of a container's id."""
    return container.rpartition(".")[0]


def touches(payload: Payload) -> tuple[str, ...]:
    """The batches whose record an event changes."""
    if isinstance(payload, Count):
        named = [
            batch_of(id_)
            for id_ in (*(g.container for g in payload.gone), *(b.container for b in payload.back))
        ]
        return tuple(dict.fromkeys([*named, *(one.batch for one in payload.new)]))
    if isinstance(payload, Outage):
        return tuple(dict.fromkeys(batch_of(one.container) for one in payload.marks))
    if isinstance(payload, PutUp):
        taken = (batch_of(part.container) for part in payload.parts)
        return tuple(dict.fromkeys([payload.batch, *taken]))
    batch = getattr(payload, "batch", "")
    return (batch,) if batch else ()


def place_of(payload: Payload) -> str:
    """The place whose own record (name, climate, readings, counts) an event changes, "" for
    none."""
    kinds = Reading | Outage | Count | PlaceAdded | PlaceChanged | PlaceRemoved | ClockAhead
    return payload.place if isinstance(payload, kinds) else ""
