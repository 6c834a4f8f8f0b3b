"""The log in words: what was done, when, and to which batch."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, NamedTuple

from pantry_tui.core import dates
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Did, Event
from pantry_tui.core.log.events import standing as standing_of
from pantry_tui.core.text import agreed, counted
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.pick import batch_named, name_of
from pantry_tui.store import log as events_of
from pantry_tui.store.store import reading

#: So many letters of the end of an id name an act; fewer are taken for something else.
NAMES = 6
#: What stands behind a line that does not count any more.
UNDONE, PUT_RIGHT = " (undone)", " (put right since)"
_TAKEN_BACK = said.Undo | said.Redo


@dataclass(frozen=True, slots=True)
class LogLine:
    """One act: its id, day, hour ("18:30" or ""), kind, lid code ("" for none), and in words."""

    id: str
    day: str
    at: str
    kind: str
    code: str
    says: str
    undone: bool
    replaced: bool = False  # put right since: another act stands in its place


class Shown(NamedTuple):
    """A line of the log in words, with the lid code of its batch ("" for none), its id and kind,
    and whether it was taken back."""

    code: str
    text: str
    id: str
    kind: str
    undone: bool = False


def log(p: Pantry, code: str | None = None) -> list[str]:
    """The log in words, oldest first; undone lines say so."""
    return [one.text for one in log_lines(p, code)]


def log_lines(p: Pantry, code: str | None = None) -> list[Shown]:
    """The same, each line with the lid code of its batch, and its id."""
    return [_shown(one) for one in entries(p, code)]


def log_window(
    p: Pantry, start: int, stop: int, code: str = "", *, text: str = ""
) -> tuple[int, list[Shown]]:
    """How many lines the log has that hold every word of `text`, of one batch where a `code` is
    given; and those from `start` up to `stop`. A word may be an id, or the end of one. The oldest
    line is line 0. Raises BadInput for a code that is not known."""
    words = text.lower().split()
    if words:
        found = p.once(f"log {code}", lambda: log_lines(p, code or None))
        held = [one for one in found if all(_holds(one, word) for word in words)]
        return len(held), held[max(start, 0) : max(stop, 0)]
    where, values = _about(p, code)
    with reading(p.path):
        events_of.refuse_lost(p.store.db)
        total = p.store.db.execute(f"SELECT count(*) FROM log {where}", values).fetchone()[0]
        first, last = max(start, 0), max(stop, 0)
        window = f"{where} ORDER BY id LIMIT {max(0, last - first)} OFFSET {first}"
        ids = [row[0] for row in p.store.db.execute(f"SELECT id FROM log {window}", values)]
        holes = ", ".join("?" * len(ids))
        events = events_of.select(p.store.db, f"WHERE id IN ({holes})", ids)
        events_of.refuse_fewer(events, ids)
    return total, [_shown(one) for one in _lines(p, events)]


def _holds(line: Shown, word: str) -> bool:
    return word in line.text.lower() or (len(word) >= NAMES and line.id.lower().endswith(word))


def entries(p: Pantry, code: str | None = None) -> list[LogLine]:
    """All acts, or those of a batch, oldest first. Raises BadInput for an unknown code."""
    if code is None:
        return _lines(p, [one for one in p.events if not isinstance(one.payload, _TAKEN_BACK)])
    batch = batch_named(p, code).id
    with reading(p.path):
        found = events_of.of_batch(p.store.db, batch)
    return _lines(p, [one for one in found if not isinstance(one.payload, _TAKEN_BACK)])


def _about(p: Pantry, code: str) -> tuple[str, tuple[str, ...]]:
    acts = "WHERE did NOT IN ('undo', 'redo')"
    if not code:
        return acts, ()
    batch = batch_named(p, code).id
    return f"{acts} AND id IN (SELECT event FROM of_batch WHERE batch = ?)", (batch,)


def _lines(p: Pantry, events: Sequence[Event]) -> list[LogLine]:
    with reading(p.path):
        gone = events_of.undone(p.store.db)
        newer = _put_right(p, events)
    return [_line(p, one, one.id in gone, one.id in newer) for one in events]


def _put_right(p: Pantry, events: Sequence[Event]) -> set[str]:
    """The readings and power cuts in whose place another one stands."""
    kinds = said.Reading | said.Outage
    places = {one.payload.place for one in events if isinstance(one.payload, kinds)}
    standing = (one for at in sorted(places) for one in events_of.of_place(p.store.db, at))
    return {getattr(one.payload, "instead_of", "") for one in standing_of(standing)} - {""}


def hour_of(event: Event) -> str:
    """ "18:30", "" where only the day is known."""
    return "" if event.at is None or event.at < 0 else f"{event.at // 60:02d}:{event.at % 60:02d}"


def _line(p: Pantry, event: Event, undone: bool, replaced: bool) -> LogLine:
    day, at, did = event.day.isoformat(), hour_of(event), event.did.value
    return LogLine(
        event.id, day, at, did, _code(p, event), describe(p, event), undone, replaced and not undone
    )


def _shown(line: LogLine) -> Shown:
    mark = UNDONE if line.undone else PUT_RIGHT if line.replaced else ""
    day = dates.say(dates.iso(line.day))
    text = f"{day}{' ' + line.at if line.at else ''}: {line.says}{mark}"
    return Shown(line.code, text, line.id, line.kind, line.undone)


def _code(p: Pantry, event: Event) -> str:
    if isinstance(event.payload, said.PutUp):
        return event.payload.code
    found = p.load(event.batch) if event.batch else None
    return found[0].code if found else ""


_VERBS = {
    Did.PUT_UP: "put up",
    Did.READY: "ready:",
    Did.MOVE: "moved",
    Did.OPEN: "opened",
    Did.THAW: "thawed",
    Did.USE: "used",
    Did.DISCARD: "discarded",
    Did.GIVE: "gave away",
    Did.MISSING: "missing",
    Did.SIGN: "saw",
    Did.CORRECT: "corrected",
    Did.RATED: "rated",
    Did.RELABELLED: "gave another lid code to",
    Did.TENDED: "tended",
    Did.TIMER: "timed",
    Did.CLOCK_AHEAD: "noted that the clock was ahead:",
}


def describe(p: Pantry, event: Event) -> str:
    """One event in words: "opened 7C/2 runner beans"."""
    payload = event.payload
    if not event.batch:
        house = _HOUSE.get(type(payload))
        return house(p, payload) if house else event.did.value
    verb = _VERBS.get(event.did, event.did.value)
    if isinstance(payload, said.Reserved):
        verb = "reserved" if payload.kept_for else "no longer reserved:"
    amount = getattr(payload, "said", "") or getattr(payload, "amount", None)
    drawn = f"{amount} of " if amount and not isinstance(payload, said.PutUp) else ""
    return f"{verb} {drawn}{_what(p, event)}{_more(p, payload)}"


def _what(p: Pantry, event: Event) -> str:
    """ "2 of 7C runner beans", "7C/2 runner beans"."""
    payload, ids = event.payload, event.containers
    if isinstance(payload, said.PutUp):
        count = f"{len(ids)} of " if len(ids) > 1 else ""
        return f"{count}{payload.code} {payload.food.name}"
    found = p.load(event.batch)
    if found is None:
        return "a batch that was taken back"
    batch, containers = found
    if len(ids) == 1 and ids[0] in containers:
        return f"{name_of(p, containers[ids[0]])} {batch.food.name}"
    count = f"{len(ids)} of " if len(ids) > 1 else ""
    return f"{count}{batch.code} {batch.food.name}"


def _more(p: Pantry, payload: said.Payload) -> str:
    """Where to, for whom, why."""
    parts = []
    place = getattr(payload, "place", "")
    if place in p.ever:
        where = "to" if isinstance(payload, said.Move) else "in"
        parts.append(f" {where} {_place(p, payload)}")
    match payload:
        case said.Give() if payload.to:
            parts.append(f" to {payload.to}")
        case said.Reserved() if payload.kept_for:
            parts.append(f" for {payload.kept_for}")
        case said.Discard() if payload.why:
            parts.append(f" ({payload.why})")
        case said.Rated():
            parts.append(f": {': '.join(filter(None, (payload.rating.value, payload.note)))}")
        case said.Correct():
            told = (payload.food.name if payload.food else "", payload.method or "")
            parts.append(f": it is {', '.join(filter(None, told))}" if any(told) else "")
        case said.Relabelled():
            parts.append(f", was {payload.was}")
        case said.Timer():
            parts.append(f": {payload.told}")
        case said.Tended():
            parts.append(f": {payload.job}")
        case said.Sign():
            parts.append(f": {payload.words}")
    return "".join(parts)


def _place(p: Pantry, payload: Any) -> str:
    """By its path; one that is gone by its name."""
    gone = p.ever.get(payload.place)
    return p.place_paths().get(payload.place) or (gone.name if gone else "a place that is gone")


def _counted(p: Pantry, payload: said.Count) -> str:
    if payload.within:
        around = _place(p, payload._replace(place=payload.within))
        return f"counted {_place(p, payload)}{' in part' if payload.part else ''}, with {around}"
    found = len(payload.back) + sum(len(one.containers) for one in payload.new)
    fewer = f"{len(payload.gone)} fewer, {found} more than recorded"
    return f"counted {_place(p, payload)}{' in part' if payload.part else ''}: {fewer}"


def _changed(p: Pantry, payload: said.PlaceChanged) -> str:
    climate = f" ({payload.climate})" if payload.climate else ""
    return f"changed the place {payload.name or _place(p, payload)}{climate}"


def _stood_in(p: Pantry, payload: said.Substitutes) -> str:
    return f"{' and '.join(payload.others) or 'nothing'} may stand in for {payload.food}"


def _home(p: Pantry, payload: said.Household) -> str:
    told = {
        "altitude": f"{payload.altitude_ft} ft" if payload.altitude_ft is not None else "",
        "people": str(payload.people or ""),
        "units": payload.units or "",
        "meals a week": str(payload.meals or ""),
        "advice": payload.advice or "",
        "metric jars": payload.jars or "",
    }
    return "household: " + ", ".join(f"{name} {value}" for name, value in told.items() if value)


def _table(p: Pantry, payload: said.Table) -> str:
    days = [dates.say(payload.days[0]), dates.say(payload.days[-1])] if payload.days else []
    who = "as usual" if payload.people is None else f"{payload.people} at the table"
    return f"{' to '.join(dict.fromkeys(days))}: {who}"


def _how_long(payload: said.Outage) -> str:
    unknown = payload.end and not payload.start
    return "since nobody knows when" if unknown else f"of {round(payload.hours, 1):g} h"


def _instead(payload: said.Reading | said.Outage) -> str:
    return f", in place of {payload.instead_of[-NAMES:]}" if payload.instead_of else ""


_HOUSE: dict[type[said.Payload], Callable[[Pantry, Any], str]] = {
    said.Reading: lambda p, one: f"measured {one.temp_f:g} F in {_place(p, one)}{_instead(one)}",
    said.FoodAdded: lambda p, one: f"added the food {one.name}",
    said.RuleAdded: lambda p, one: f"added a rule for {one.food}, {one.method}",
    said.Substitutes: _stood_in,
    said.Dish: lambda p, one: f"{'added' if one.takes else 'removed'} the dish {one.name}",
    said.Outage: lambda p, one: f"power cut {_how_long(one)} in {_place(p, one)}{_instead(one)}",
    said.Count: _counted,
    said.ClockAhead: lambda p, one: f"noted that the clock was ahead: {_place(p, one)}",
    said.PlaceAdded: lambda p, one: f"place {one.name} ({one.climate})",
    said.PlaceChanged: _changed,
    said.PlaceRemoved: lambda p, one: f"removed the place {_place(p, one)}",
    said.Household: _home,
    said.Ceiling: lambda p, one: (
        f"{one.what}: "
        + (
            "as usual"
            if one.most is None
            else f"at most {counted(one.most, 'servings')} a person a week"
        )
    ),
    said.Table: _table,
    said.JarsCounted: lambda p, one: f"counted {one.empty} empty {one.size}",
    said.JarsLent: lambda p, one: (
        f"lent {one.count} {one.size} {agreed(one.count, 'jar', 'jars')} to {one.to}"
        if one.count > 0
        else f"{-one.count} {one.size} {agreed(-one.count, 'jar', 'jars')} came back from {one.to}"
    ),
    said.Checked: lambda p, one: f"checked: {one.what}",
    said.Planned: lambda p, one: f"the week: {one.said or 'replanned'}",
}
