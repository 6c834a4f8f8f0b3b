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


def new_id(now: datetime, counter: int = 0) -> str:
    """An id unique across machines that sorts by time: ms, a counter, then random.

    Two logs written on two machines can so be merged one day by sorting.
    """
    return f"{int(now.timestamp() * 1000):013d}{counter:04d}{secrets.token_hex(4)}"
