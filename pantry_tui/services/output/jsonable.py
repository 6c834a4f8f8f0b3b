"""Rows as plain JSON: ISO dates, words as their values, amounts with their units."""

from __future__ import annotations

from datetime import date
from enum import Enum
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.many import OneLine
    from pantry_tui.services.rows import BatchView, Done, PutUp, PutUpReading, Take, WeekView
    from pantry_tui.services.stock.rows import DueRow, Shelf


#: What `json` writes as it is; most of what there is.
_PLAIN = frozenset({str, int, float, bool, type(None)})


def plain(value: Any) -> Any:
    """Dates, enums, tuples and frozen rows down to what `json` writes."""
    if type(value) in _PLAIN:
        return value
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, tuple) and hasattr(value, "_fields"):
        return dict(zip(value._fields, map(plain, value), strict=True))
    if isinstance(value, tuple | list):
        return [plain(one) for one in value]
    if isinstance(value, dict):
        return {str(key): plain(one) for key, one in value.items()}
    if hasattr(value, "__match_args__"):
        return {name: plain(getattr(value, name)) for name in value.__match_args__}
    return value


def due(rows: list[DueRow]) -> list[dict[str, Any]]:
    """The contract's `due`: one object a row."""
    return [_due(row) for row in rows]


def _due(row: DueRow) -> dict[str, Any]:
    """As `plain`, for a row of which there may be thousands. Its days are those that a person may
    read: none beside what is not eaten whatever its figures name."""
    said = row._asdict()
    del said["best_over"]
    said["discard_after"], said["discard_after_why"] = row.last_day, row.why_no_last_day
    if row.must_go or row.in_doubt:
        said["best_by"] = None
        said["days_left"] = None if row.last_day is None else row.days_left
    for name in ("method", "state", "verdict"):
        said[name] = said[name].value
    for name in ("best_by", "discard_after"):
        if said[name] is not None:
            said[name] = said[name].isoformat()
    for name in ("container_ids", "reasons", "standing"):
        said[name] = list(said[name])
    return said


def shelves(found: list[Shelf]) -> list[dict[str, Any]]:
    """One object a place, its stock under `rows`."""
    return [
        {
            "place": shelf.path,
            "climate": shelf.climate,
            "temperature": f"{shelf.temperature_f:g} F",
            "capacity": shelf.capacity,
            "count": shelf.count,
            "rows": due(list(shelf.rows)),
        }
        for shelf in found
    ]


def places(found: list[Shelf]) -> list[dict[str, Any]]:
    """The places alone."""
    return [{key: one[key] for key in one if key != "rows"} for one in shelves(found)]


def batch(view: BatchView) -> dict[str, Any]:
    """One batch whole; `process` as an object, equal containers under `containers`."""
    answer: dict[str, Any] = plain(view)
    answer["process"] = dict(view.process)
    answer.pop("rows")
    answer["containers"] = due(list(view.rows))
    answer["chain"] = {first: list(steps) for first, steps in view.chain}
    return answer


def done(what: Done) -> dict[str, Any]:
    """What an action answers."""
    answer: dict[str, Any] = plain(what)
    return answer


def took_back(what: Done) -> dict[str, Any]:
    """The contract's `undo` and `redo`."""
    return {"took_back": [what.message], **done(what)}


def reading(read: PutUpReading) -> dict[str, Any]:
    """What a put-up line was understood as: the contract's `read_as`."""
    answer: dict[str, Any] = plain(read)
    process = dict(read.process)
    answer["vessel"] = answer.pop("container")
    process.pop("amount", None)
    answer["contents"] = str(read.contents) if read.contents is not None else None
    answer["process"] = process
    answer["from"] = answer.pop("sources")
    return answer


def putup(made: PutUp) -> dict[str, Any]:
    """The contract's `putup`."""
    answer: dict[str, Any] = plain(made)
    answer["read_as"] = reading(made.reading)
    answer["from"] = answer.pop("made_from")
    del answer["reading"]
    return answer


def _take(take: Take) -> dict[str, Any]:
    return {**plain(take), "container_ids": list(take.containers), "thaw_from": plain(take.thaw_by)}


def week(view: WeekView) -> dict[str, Any]:
    """The contract's `week`."""
    return {
        "from": view.start.isoformat(),
        "to": view.end.isoformat(),
        "people": view.people,
        "accepted": view.accepted,
        "eaten": [{"day": day.isoformat(), "what": what} for day, what in view.eaten],
        "take": [_take(one) for one in view.take],
        "beside": [_take(one) for one in view.beside],
        "more": [_take(one) for one in view.more],
        "kept": [_take(one) for one in view.kept],
        "fallen": [plain(one) for one in view.fallen],
        "no_thaw": plain(view.no_thaw),
        "no_main": view.no_main,
        "notes": [*view.notes, *(text for _, text in view.table_said)],
        "left_out": list(view.left_out),
        "waiting": due(list(view.waiting)),
        "discard": due(list(view.discard)),
        "cautions": list(view.cautions),
    }


def put_up_lines(found: list[OneLine]) -> dict[str, Any]:
    """Many put-up lines: what each came to, and which cannot be booked."""
    return {
        "rows": len(found),
        "batches": [putup(one.made) | {"line": one.number} for one in found if one.made],
        "bad": [
            {
                "line": one.number,
                "value": one.typed,
                "reason": one.why,
                "read_as": reading(one.reading),
                "asks": plain(one.reading.asks),
            }
            for one in found
            if one.why
        ],
    }
