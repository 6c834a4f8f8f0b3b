"""The log: dated, frozen, append-only. What happened is in the payload (payloads.py)."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, datetime
from enum import StrEnum

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.log.payloads import NAME_OF, Payload, Redo, Undo


class Did(StrEnum):
    """What happened. The names are the log's own and are never changed."""

    PUT_UP = "put_up"
    READY = "ready"
    MOVE = "move"
    OPEN = "open"
    THAW = "thaw"
    USE = "use"
    DISCARD = "discard"
    GIVE = "give"
    MISSING = "missing"
    SIGN = "sign"
    COUNT = "count"
    RATED = "rated"
    RESERVED = "reserved"
    CORRECT = "correct"
    RELABELLED = "relabelled"
    TENDED = "tended"
    CHECKED = "checked"
    TIMER = "timer"
    JARS_COUNTED = "jars_counted"
    JARS_LENT = "jars_lent"
    READING = "reading"
    OUTAGE = "outage"
    PLACE_ADDED = "place_added"
    PLACE_CHANGED = "place_changed"
    PLACE_REMOVED = "place_removed"
    FOOD_ADDED = "food_added"
    RULE_ADDED = "rule_added"
    SUBSTITUTES = "substitutes"
    DISH = "dish"
    HOUSEHOLD = "household"
    CEILING = "ceiling"
    TABLE = "table"
    PLANNED = "planned"
    CLOCK_AHEAD = "clock_ahead"
    UNDO = "undo"
    REDO = "redo"


@dataclass(frozen=True, slots=True)
class Event:
    """One line of the log.

    `recorded` is the moment it was written (ISO, to the second) with the offset by which `day` and
    `at` are counted: that of the clock on that day, not on the day of writing;
    `day` the local day on which it happened, `at` the minute of that day where it is known. `at`
    -3 says that only the day is known, and that it was the third thing booked on it.
    Events with the same `together` were booked as one and are undone as one.
    """

    id: str
    recorded: str
    day: date
    payload: Payload
    at: int | None = None
    together: str = ""

    @property
    def did(self) -> Did:
        return Did(NAME_OF[type(self.payload)])

    @property
    def batch(self) -> str:
        """The batch it is about, "" when it is about none or several."""
        return getattr(self.payload, "batch", "")

    @property
    def containers(self) -> tuple[str, ...]:
        """The containers it is about."""
        return getattr(self.payload, "containers", ())


def new_id(now: datetime, after: str = "", chance: bytes | None = None) -> str:
    """An id that is unique across machines and sorts after the id `after`.

    13 digits of milliseconds, 5 of a counter within the millisecond, 8 random hex digits: of
    `chance`, four bytes of `os.urandom`, since drawing them here takes 6 ms to load. A
    clock that was set back does not put a new event before an old one; two logs written on two
    machines can be merged by sorting.
    """
    moment, counter = int(now.timestamp() * 1000), 0
    if after and int(after[:13]) >= moment:
        moment, counter = int(after[:13]), int(after[13:18]) + 1
    if chance is None:
        from secrets import token_bytes

        chance = token_bytes(4)
    return f"{moment:013d}{counter:05d}{chance.hex()}"


def made_at(id_: str) -> tuple[int, bool]:
    """When an id was made by the clock of its computer, milliseconds since 1970, and whether that
    clock said so itself: where it stood behind the newest event of the log the id has its moment
    from that one."""
    return int(id_[:13]), not int(id_[13:18])


def undone(events: Iterable[Event]) -> set[str]:
    """The ids of the events that do not count: each undo takes back, each redo brings again."""
    found: set[str] = set()
    for event in sorted(events, key=lambda one: one.id):
        payload = event.payload
        if isinstance(payload, Undo):
            found.update(payload.events)
        elif isinstance(payload, Redo):
            found.difference_update(payload.events)
    return found


def standing(events: Iterable[Event]) -> list[Event]:
    """The events that count, in the order they were recorded: undone ones, undos and redos left
    out."""
    ordered = sorted(events, key=lambda one: one.id)
    gone = undone(ordered)
    return [e for e in ordered if e.id not in gone and not isinstance(e.payload, Undo | Redo)]
