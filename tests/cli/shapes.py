"""What a JSON answer must look like: types by key, nothing said of further keys."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from typing import Any


class Some:
    """A list that is not empty."""

    def __init__(self, each: Any) -> None:
        self.each = each


class Maybe:
    """That, or null."""

    def __init__(self, shape: Any) -> None:
        self.shape = shape


class Day:
    """An ISO date."""


class Each:
    """An object whose every value is of one shape, whatever its keys."""

    def __init__(self, shape: Any) -> None:
        self.shape = shape


def faults(found: Any, shape: Any, at: str = "") -> Iterator[str]:
    """Where `found` is not of `shape`, in words; nothing for a good answer."""
    if isinstance(shape, Maybe):
        yield from () if found is None else faults(found, shape.shape, at)
    elif isinstance(shape, dict):
        if not isinstance(found, dict):
            yield f"{at}: no object but {found!r}"
            return
        for key, inner in shape.items():
            if key not in found:
                yield f"{at}.{key}: missing"
            else:
                yield from faults(found[key], inner, f"{at}.{key}")
    elif isinstance(shape, Each):
        yield from (
            f for key, one in found.items() for f in faults(one, shape.shape, f"{at}.{key}")
        )
    elif isinstance(shape, list | Some):
        each = shape.each if isinstance(shape, Some) else shape[0]
        if not isinstance(found, list):
            yield f"{at}: no list but {found!r}"
        elif isinstance(shape, Some) and not found:
            yield f"{at}: empty"
        else:
            yield from (f for n, one in enumerate(found) for f in faults(one, each, f"{at}[{n}]"))
    elif shape is Day:
        if not (isinstance(found, str) and date.fromisoformat(found).isoformat() == found):
            yield f"{at}: no ISO date but {found!r}"
    elif shape is float:
        if isinstance(found, bool) or not isinstance(found, int | float):
            yield f"{at}: no number but {found!r}"
    elif type(found) is not shape:
        yield f"{at}: no {shape.__name__} but {found!r}"


DONE = {"message": str, "warnings": [str], "containers": [str]}
SAID = {"message": str}
IMPORTED = {
    "rows": int,
    "batches": int,
    "bad": [str],
    "asks": [str],
    "booked": bool,
    "recalled": bool,
}
TOOK_BACK = {"took_back": Some(str)}

JOB = {
    "code": str,
    "food": str,
    "job": str,
    "due": Day,
    "overdue": bool,
    "place": str,
    "how": str,
    "source": str,
}
COOKED = {
    "dish": str,
    "stands": bool,
    "takes": Some(
        {
            "food": str,
            "servings": float,
            "containers": Some(str),
            "place": str,
            "ready": Maybe(Day),
        }
    ),
    "lacks": [{"food": str, "servings": float}],
    "due": float,
}
DUE = {
    "code": str,
    "container_ids": Some(str),
    "food": str,
    "method": str,
    "place": str,
    "count": int,
    "state": str,
    "verdict": str,
    "best_by": Maybe(Day),
    "discard_after": Maybe(Day),
    "days_left": Maybe(int),
    "reasons": [str],
}
PLACE = {"place": str, "climate": str, "temperature": str, "capacity": Maybe(int), "count": int}
SHELF = {**PLACE, "rows": [DUE]}
BATCH = {
    "code": str,
    "food": str,
    "method": str,
    "made": Maybe(Day),
    "process": Each(str),
    "containers": Some(DUE),
    "gone": [str],
    "sources": Some(str),
    "cautions": [str],
    "history": Some(str),
}
LOG = {
    "id": str,
    "day": Day,
    "at": str,
    "kind": str,
    "code": str,
    "says": str,
}
ASK = {"about": str, "typed": str, "choices": [str]}
READ_AS = {
    "food": str,
    "method": Maybe(str),
    "count": int,
    "vessel": str,
    "size": str,
    "contents": Maybe(str),
    "place": str,
    "made": Maybe(Day),
    "opened": Maybe(Day),
    "process": Each(str),
    "note": str,
    "unread": [str],
    "problems": [str],
    "asks": [ASK],
}
QUESTION = {"error": str, "asks": Some(ASK), "read_as": READ_AS, "unread": [str]}
PUTUP = {
    "code": str,
    "containers": Some(str),
    "best_by": Maybe(Day),
    "discard_after": Maybe(Day),
    "verdict": str,
    "cautions": [str],
    "read_as": READ_AS,
}
TAKE = {
    "code": str,
    "food": str,
    "place": str,
    "count": int,
    "servings": float,
    "day": Day,
    "thaw_by": Maybe(Day),
    "reasons": [str],
}
WEEK = {
    "from": Day,
    "to": Day,
    "people": int,
    "take": Some(TAKE),
    "beside": [TAKE],
    "more": [TAKE],
    "kept": [TAKE],
    "no_thaw": [{"day": Day, "food": str, "code": str, "place": str}],
    "waiting": [DUE],
    "discard": [DUE],
}
AHEAD = {
    "food": str,
    "group": str,
    "servings": float,
    "pace_need": float,
    "pace_can": float,
    "runs_out": Maybe(Day),
    "lost": float,
    "lost_range": Maybe(Some(float)),
    "runs_out_range": Maybe(Some(Maybe(Day))),
    "put_up": Maybe(int),
}
OUTLOOK = {"foods": Some(AHEAD), "groups": Some(AHEAD)}
SHELF_LIFE = {
    "method": str,
    "food": str,
    "place": str,
    "state": str,
    "allowed": bool,
    "best_by": Maybe(Day),
    "discard_after": Maybe(Day),
    "published": {"quality": Maybe(list), "safety": Maybe(list)},
    "in_use": {"quality": Maybe(list), "safety": Maybe(list)},
    "reasons": [str],
    "sources": Some(str),
}
_FIGURE = {"what": str, "unit": str, "formula": str, "source": str}
SUM = {
    **_FIGURE,
    "answer": float,
    "also": [_FIGURE],
    "notes": [str],
    "cautions": [str],
    "record": Each(str),
}
WAY = {
    "method": str,
    "product": str,
    "allowed": bool,
    "yield": Maybe(str),
    "keeps": Maybe(str),
    "needs": Each(str),
    "room": Maybe(str),
    "wanted": Maybe(str),
    "reasons": [str],
    "cautions": [str],
    "sources": [str],
}
ASKED = {"key": str, "published": str, "said": str, "wrong": [str]}
JARS = {"size": str, "empty": int, "in_use": int, "lent": Each(int)}
AGAIN = {
    "of": str,
    "code": str,
    "containers": [str],
    "lead": [str],
    "count": int,
    "scaled": [str],
    "process": [str],
    "left_out": [str],
    "read_as": dict,
    "cautions": [str],
}
TIMER = {
    "code": str,
    "food": str,
    "minutes": int,
    "psi": Maybe(float),
    "began": str,
    "left": int,
    "down": bool,
    "drops": int,
}
PROCESS = {
    "answer": str,
    "minutes": Maybe(int),
    "psi": Maybe(int),
    "acidify": Maybe(str),
    "headspace_in": Maybe(float),
    "options": Some(dict),
    "reasons": [str],
    "sources": Some(str),
}
OUTAGE = {
    "items": Some({"code": str, "food": str, "verdict": str, "reasons": [str], "sources": [str]})
}
SIGN = {"code": str, "verdict": str, "do": [str], "disposal": [str], "sources": Some(str)}
SIGN_ROW = {"id": str, "methods": Some(str), "sign": str, "verdict": str}
GONE = {"container": str, "state": str, "place": str, "to": str, "ended": Maybe(Day)}
LINE = {"code": str, "food": str, "place": str, "expected": int, "seen": Maybe(int)}
YEAR = {"food": str, "start": Day, "end": Maybe(Day), "made": int, "closing": int, "eaten": int}
LOSSES = {
    "rows": Some({"food": str, "why": str, "servings": float}),
    "changes": [str],
    "year": {"lost": float, "share": float, "saved": float, "before": Maybe(float)},
}
HOUSEHOLD = {"altitude_ft": int, "people": int, "units": str} | {
    "advice": str,
    "jars": str,
    "half": str,
}
SHEET = {"title": str, "heads": Some(str), "rows": Some([str]), "notes": [str]}
LABEL = {"code": str, "food": str, "method": str, "made": str, "best_by": str, "caution": str}
GUIDE = {"topic": str, "title": str, "about": str, "text": str}
KEY = {"id": str, "keys": str, "does": str, "screens": str}
FILE = {"message": str, "file": str}
STORE = {"message": str, "store": str}
COPIED = {"path": str, "events": int, "kept": [str]}
RESTORED = {
    "path": str,
    "events": int,
    "kept": str,
    "lost": Some({"id": str, "day": Day, "kind": str, "code": str}),
    "back": int,
}
VERIFIED = {
    "ok": bool,
    "events": int,
    "hurt": [{"event": str, "what": str, "touched": [str]}],
    "notes": [str],
    "newest_backup": Maybe(str),
}
WRITTEN = {"file": str, "rows": int, "message": str}
MERGED = {
    "rows": int,
    "already": int,
    "batches": int,
    "replaced": bool,
    "conflicts": [str],
    "relabel": [{"was": str, "code": str, "food": str, "containers": int}],
    "bad": [{"line": int, "column": str, "value": str, "reason": str}],
    "asks": [dict],
}
