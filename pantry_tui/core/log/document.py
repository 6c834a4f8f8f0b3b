"""The log as one JSON document, an event a line: the same log always gives the same bytes.

ASCII alone: a mark that turns the writing, or half a character, is written as its number, so that
it steers nobody's screen.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Mapping
from datetime import date, datetime
from typing import Any

from pantry_tui.core.log.codec import read, write
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.payloads import BY_NAME
from pantry_tui.core.log.sound import wrong_with
from pantry_tui.errors import BadInput

VERSION = 1
#: 13 digits of milliseconds, 5 of a counter, 8 hex digits (events.new_id).
_ID = re.compile(r"[0-9]{18}[0-9a-f]{8}")
_KEYS = {"id", "recorded", "day", "at", "did", "together", "says"}
_MINUTES = 24 * 60


def document(events: Iterable[Event]) -> str:
    """All events, in their order."""
    lines = ",\n".join(json.dumps(_row(event), separators=(", ", ": ")) for event in events)
    return f'{{"pantry-tui": "log", "version": {VERSION}, "events": [\n{lines}\n]}}\n'


def _row(event: Event) -> dict[str, Any]:
    return {
        "id": event.id,
        "recorded": event.recorded,
        "day": event.day.isoformat(),
        "at": event.at,
        "did": event.did.value,
        "together": event.together,
        "says": json.loads(write(event.payload)),
    }


def read_document(text: str) -> list[Event]:
    """The events of a document, by id. Raises BadInput that names the first event which makes no
    sense."""
    try:
        found = json.loads(text, parse_constant=_refuse_constant)
    except (ValueError, RecursionError) as error:
        raise BadInput(
            f"This is no JSON ({_short(error)}): name a file that was exported."
        ) from error
    if not isinstance(found, dict) or found.get("pantry-tui") != "log":
        raise BadInput("This is no exported log: name a file that `pantry-tui export` wrote.")
    if found.get("version") != VERSION:
        raise BadInput("A newer version exported this: update the program.")
    rows = found.get("events")
    if not isinstance(rows, list):
        raise BadInput("This exported log has no events: export it again.")
    events: dict[str, Event] = {}
    for number, row in enumerate(rows, 1):
        event = _event(number, row)
        if event.id in events:
            raise BadInput(f"Event {number} is there twice: export the log again.")
        events[event.id] = event
    return [events[id_] for id_ in sorted(events)]


def _refuse_constant(name: str) -> None:
    raise ValueError(f"{name} is no number")


def _event(number: int, row: object) -> Event:
    try:
        if not isinstance(row, dict) or set(row) != _KEYS:
            raise ValueError("it has other parts than an event")
        return _checked(row)
    except (ValueError, LookupError, TypeError, AttributeError, RecursionError, BadInput) as error:
        raise BadInput(
            f"Event {number} makes no sense ({_short(error)}): nothing is booked."
        ) from error


def _checked(row: Mapping[str, Any]) -> Event:
    for name in ("id", "recorded", "day", "did", "together"):
        if not isinstance(row[name], str):
            raise ValueError(f"{name} is no text")
    if not _ID.fullmatch(row["id"]):
        raise ValueError("its id is none")
    if row["did"] not in BY_NAME:
        raise ValueError(f"{row['did'][:40]!r} is nothing that can happen")
    at = row["at"]
    if at is not None and (isinstance(at, bool) or not isinstance(at, int) or at >= _MINUTES):
        raise ValueError("at is no minute of a day")
    if datetime.fromisoformat(row["recorded"]).tzinfo is None:
        raise ValueError("recorded says of no place on earth")
    text = json.dumps(row["says"], ensure_ascii=False, sort_keys=True)
    payload = read(row["did"], text)
    if wrong := wrong_with(payload):
        raise ValueError(wrong)
    event = Event(
        row["id"], row["recorded"], date.fromisoformat(row["day"]), payload, at, row["together"]
    )
    if write(payload) != text or _row(event) != row:
        raise ValueError("it is not written as this program writes it")
    text.encode("utf-8")  # half a character cannot be kept
    row["together"].encode("utf-8")
    return event


def _short(error: BaseException) -> str:
    if isinstance(error, RecursionError):
        return "its brackets are nested deeper than in any log"
    return " ".join(str(error).split())[:120].rstrip(".:") or type(error).__name__
