"""The log: dated, frozen, append-only. `data` is plain JSON, so that a log outlives the code."""

from __future__ import annotations

import secrets
from dataclasses import dataclass, field
from datetime import date, datetime
from enum import StrEnum
from typing import Any


class Did(StrEnum):
    """What happened. The names are the log's own and are never changed."""

    PUT_UP = "put_up"
    FINISH = "finish"
    MOVE = "move"
    OPEN = "open"
    THAW = "thaw"
    USE = "use"
    DISCARD = "discard"
    GIVE = "give"
    LOSE = "lose"
    SIGN = "sign"
    COUNT = "count"
    TASTED = "tasted"
    READING = "reading"
    OUTAGE = "outage"
    PLACE_ADDED = "place_added"
    PLACE_CHANGED = "place_changed"
    CORRECT = "correct"
    FOOD_ADDED = "food_added"
    RULE_ADDED = "rule_added"
    RESERVED = "reserved"
    SUBSTITUTES = "substitutes"
    DISH = "dish"
    UNDO = "undo"


@dataclass(frozen=True, slots=True)
class Event:
    """One line of the log: `day` is when it happened, `recorded` when it was written (UTC)."""

    id: str
    recorded: str
    day: date
    did: Did
    batch: str = ""
    containers: tuple[str, ...] = ()
    data: dict[str, Any] = field(default_factory=dict)


def new_id(now: datetime, after: str = "") -> str:
    """An id that is unique across machines and sorts after the id `after`.

    13 digits of milliseconds, 5 of a counter within the millisecond, 8 random hex digits. A
    clock that was set back does not put a new event before an old one; two logs written on two
    machines can be merged one day by sorting.
    """
    moment, counter = int(now.timestamp() * 1000), 0
    if after and int(after[:13]) >= moment:
        moment, counter = int(after[:13]), int(after[13:18]) + 1
    return f"{moment:013d}{counter:05d}{secrets.token_hex(4)}"
