"""Lists of stock as windows over the stock tables: only what is shown is ever read."""

from __future__ import annotations

import json
from collections.abc import Sequence
from datetime import date, timedelta
from functools import lru_cache
from operator import attrgetter
from typing import NamedTuple, Protocol

from pantry_tui.core.amounts import amount_of
from pantry_tui.core.keeping.fitness import UNFIT, usable
from pantry_tui.core.vessels import Vessel, contents_of, vessel_of, vessel_word
from pantry_tui.core.words import METHODS, SEVERITY, STATES, Method, State, Verdict
from pantry_tui.errors import BadInput
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.finding import conditions
from pantry_tui.services.stock.ready import ready
from pantry_tui.services.stock.rows import DueRow, Left, Shelf, last_told
from pantry_tui.store import codes
from pantry_tui.store import lines as table
from pantry_tui.store.check import check
from pantry_tui.store.store import reading

#: What stands over a part of the due list, in its order.
HEADS = ("must go", "open", "eat soon", "past best", "later", "unknown")


class Lines(Protocol):
    """Rows in an order, read as they are asked for."""

    @property
    def total(self) -> int:
        """How many rows."""

    def rows(self, start: int, stop: int) -> Sequence[DueRow]:
        """The rows of a window."""

    def where(self, container: str) -> int | None:
        """The row in which "7C/1", or the first of "7C", stands."""

    def heads(self) -> Sequence[tuple[str, int]]:
        """(head, rows under it), in order."""


#: The number of the part below in which a row stands. What most rows are comes first: SQLite
#: reckons the verdict anew wherever its name stands.
_PART = (
    f"CASE WHEN verdict = {table.numbers(Verdict.SOUND)} "
    f"AND state NOT IN ('{State.OPEN}', '{State.THAWED}') THEN 5 "
    f"WHEN verdict IN ({table.numbers(Verdict.DO_NOT_TASTE, Verdict.DISCARD)}) THEN 0 "
    f"WHEN state IN ('{State.OPEN}', '{State.THAWED}') THEN 1 "
    f"WHEN verdict = {table.numbers(Verdict.EAT_SOON)} THEN 2 "
    f"WHEN verdict = {table.numbers(Verdict.PAST_BEST)} THEN 3 "
    f"WHEN verdict = {table.numbers(Verdict.NEEDS_CARE)} THEN 4 "
    f"WHEN verdict = {table.numbers(Verdict.UNKNOWN)} THEN 6 ELSE 5 END"
)
#: The heads of the list, with what needs care apart from what is only later.
PARTS = (*HEADS[:4], Verdict.NEEDS_CARE.value, *HEADS[4:])
_BY_DATE = "first_date, code, id"
#: What must be eaten within so long is never folded away: a kitchen plans by the week.
NEAR = timedelta(days=7)

#: What the rows stand under in each order.
_UNDER = {
    "what to eat first": _PART,
    "date": "''",
    "food": "food",
    "place": "lower(path), path",
    "verdict": "verdict",
    "method": "method",
    "lid code": "code",
    "left": "printf('%06d', n)",
    "made": "made",
}
#: How a list of stock may be sorted; the first is the everyday one.
ORDERS = tuple(_UNDER)


class StockLines:
    """A window source over the tables; it stands for the moment at which it was made."""

    def __init__(self, p: Pantry, ids: Sequence[int], order: str) -> None:
        self._p, self._ids, self._order = p, ids, order

    @property
    def total(self) -> int:
        return len(self._ids)

    def rows(self, start: int, stop: int) -> Sequence[DueRow]:
        return rows(self._p, self._ids[max(0, start) : stop])

    def where(self, container: str) -> int | None:
        code, _, number = container.partition("/")
        sql = "SELECT id, numbers FROM lines WHERE code = ?"
        with reading(self._p.path):
            rows = self._p.store.db.execute(sql, (code,)).fetchall()
        found = {id_ for id_, numbers in rows if not number or number in numbers.split()}
        return next((at for at, id_ in enumerate(self._ids) if id_ in found), None)

    def heads(self) -> Sequence[tuple[str, int]]:
        if not self._ids:
            return ()
        under = _UNDER[self._order]
        sql = (
            f"SELECT count(*), {under} FROM (SELECT *, {table.VERDICT} AS verdict FROM lines) "
            f"WHERE +id IN (SELECT value FROM json_each(:ids)) GROUP BY {under} ORDER BY {under}"
        )
        values = {"day": self._p.today.isoformat(), "ids": json.dumps(list(self._ids))}
        with reading(self._p.path):
            found = self._p.store.db.execute(sql, values).fetchall()
        return [(self._word(head), count) for count, *_, head in found]

    def _word(self, head: str | int) -> str:
        if isinstance(head, str):
            return head
        return PARTS[head] if self._order == ORDERS[0] else SEVERITY[head].value


class Part(NamedTuple):
    """A part of the everyday order: its word, and how many rows and containers are in it."""

    word: str
    rows: int
    containers: int


def parts(p: Pantry, *, text: str = "") -> list[Part]:
    """The parts of the everyday order that have rows, in order."""
    ready(p)
    where, values = _condition(p, text, None)
    sql = (
        f"SELECT {_PART} AS part, count(*), sum(n) "
        f"FROM (SELECT *, {table.VERDICT} AS verdict FROM lines) {where} GROUP BY part"
    )
    with reading(p.path):
        found = p.store.db.execute(sql, values).fetchall()
    return [Part(PARTS[part], rows, count) for part, rows, count in sorted(found)]


def lines(
    p: Pantry,
    *,
    order: str = ORDERS[0],
    text: str = "",
    place: str | None = None,
    folded: bool = False,
) -> StockLines:
    """All that stands, or what holds every word of `text`, or what stands in a place and in all
    places in it; `folded` leaves out what is only later, but for what must be eaten within a
    week. Raises BadInput for an unknown order or place."""
    if order not in ORDERS:
        raise BadInput(f"{order!r} is no order: one of {', '.join(ORDERS)}.")
    ready(p)
    where, values = _condition(p, text, place)
    if folded:
        seen = f"({_PART} <> 5 OR discard_after <= :near)"
        where = f"{where} AND {seen}" if where else f"WHERE {seen}"
        values["near"] = (p.today + NEAR).isoformat()
    with reading(p.path):
        ids = table.ids(p.store.db, where, f"{_UNDER[order]}, {_BY_DATE}", values)
        return StockLines(p, ids, order)


def shelves(p: Pantry) -> list[Shelf]:
    """Every place in path order with how many containers it holds itself, its rows left out."""
    # What is due is read off the tables without the model of places.
    from pantry_tui.core.keeping.weather import warmth_f

    ready(p)
    with reading(p.path):
        count = dict(
            p.store.db.execute("SELECT place, sum(n) FROM lines NOT INDEXED GROUP BY place")
        )
    paths = p.place_paths()
    return [
        Shelf(
            paths[id_],
            one.climate.value,
            warmth_f(id_, p.places),
            one.capacity,
            count.get(id_, 0),
            (),
        )
        for id_, one in sorted(p.places.items(), key=lambda item: paths[item[0]].lower())
    ]


def _condition(p: Pantry, text: str, place: str | None) -> tuple[str, dict[str, object]]:
    parts, values = conditions(text, p.today)
    values["day"] = p.today.isoformat()
    if place is not None:
        parts.append("+place IN (SELECT value FROM json_each(:places))")
        values["places"] = json.dumps(sorted(inside(p, p.find_place(place).id)))
    return (f"WHERE {' AND '.join(parts)}" if parts else ""), values


def inside(p: Pantry, root: str, *, ever: bool = False) -> set[str]:
    """A place and all places in it; with `ever` those too that are gone, since what stood in one
    was as warm as the place around it."""
    places = p.ever if ever else p.places
    found = {root}
    for _ in places:
        more = {id_ for id_, one in places.items() if one.parent in found} - found
        if not more:
            break
        found |= more
    return found


def rows(p: Pantry, ids: Sequence[int] | None = None) -> list[DueRow]:
    """The rows of these lines, in their order; all of them without `ids`, by date."""
    with reading(p.path):
        found = {
            id_: (line, verdict, step)
            for id_, line, verdict, step in table.rows(p.store.db, p.today.isoformat(), ids)
        }
    wanted = ids if ids is not None else sorted(found, key=lambda id_: _by_date(found[id_][0], id_))
    return [_row(p, *found[id_]) for id_ in wanted if id_ in found]


def of_code(p: Pantry, code: str, *, all_of_it: bool = True) -> list[DueRow]:
    """The rows of a lid code, by date. Not `all_of_it`: no other line is looked at."""
    ready(p, all_of_it=all_of_it)
    sql = "SELECT id FROM lines WHERE code = ? ORDER BY first_date, id"
    with reading(p.path):
        ids = [row[0] for row in p.store.db.execute(sql, (code,))]
        table.refuse_fewer(p.store.db, code, codes.batch_of(p.store.db, code))
    return rows(p, ids)


def begins_a_code(p: Pantry, begun: str) -> bool:
    """Whether a lid code that was ever given begins so, or is that."""
    sql = "SELECT 1 FROM codes WHERE code >= ? AND code < ? LIMIT 1"
    with reading(p.path):
        return p.store.db.execute(sql, (begun, begun + _AFTER)).fetchone() is not None


def beginning_with(p: Pantry, begun: str, most: int) -> dict[str, str]:
    """The food of each lid code of what is in store that begins so, the shortest codes first."""
    sql = (
        "SELECT min(id) FROM lines WHERE code >= ? AND code < ? GROUP BY code "
        "ORDER BY length(code), code LIMIT ?"
    )
    with reading(p.path):
        ids = [row[0] for row in p.store.db.execute(sql, (begun, begun + _AFTER, most))]
    return {row.code: row.food for row in rows(p, ids)}


#: Behind every character of a lid code.
_AFTER = "~"


def hurried(p: Pantry) -> set[str]:
    """The batches with something whose two hours out of the cold run."""
    ready(p)
    with reading(p.path):
        return {row[0] for row in p.store.db.execute("SELECT batch FROM lines WHERE hurried")}


def _by_date(line: table.Line, id_: int) -> tuple[str, str, int]:
    return line.first_date, line.code, id_


def _row(p: Pantry, line: table.Line, verdict: int, step: int) -> DueRow:
    best_by = date.fromisoformat(line.best_by) if line.best_by else None
    discard_after, why = last_told(line.discard_after, line.made, line.why_no_discard)
    standing, *reasons = json.loads(line.reasons)
    word = SEVERITY[verdict]
    state, method = STATES[line.state], METHODS[line.method]
    left, loose = in_each(method, line.size, line.amount)
    return DueRow(
        code=line.code,
        container_ids=tuple([f"{line.code}/{n}" for n in line.numbers.split()]),
        food=line.food,
        method=method,
        place=line.path,
        count=line.n,
        state=state,
        verdict=word,
        best_by=best_by,
        discard_after=discard_after,
        days_left=days_left(best_by, discard_after, p.today),
        reasons=(*reasons[min(step, len(reasons) - 1)], *standing),
        size=line.size,
        amount=line.amount,
        reserved=line.reserved,
        head=_head(word, state),
        stamp=stamp(line),
        discard_after_why=why,
        usable=usable(word, bool(line.harmless), state is State.IN_PROGRESS),
        standing=tuple(standing),
        left=left,
        vessel=vessel_word(line.size),
        hurried=bool(line.hurried) and word not in UNFIT,
        loose=loose,
        best_over=best_by is not None and best_by < p.today,
    )


@lru_cache(maxsize=4096)
def in_each(method: Method, size: str, amount: str) -> tuple[Left, bool]:
    """What is in one container, and whether how much is taken of it must be said."""
    held = contents_of(size)
    left = amount_of(amount) if amount else held
    vessel = vessel_of(method, size, left.unit if left else "")
    if left is None:
        return Left(1, ""), vessel is Vessel.OPEN
    several = vessel is Vessel.PIECES or left.number > 1
    shown = Left(float(left.number), left.unit or ("pieces" if several else ""))
    told = bool(amount) and held is None and vessel is Vessel.CLOSED and left.unit != ""
    return shown, vessel is Vessel.OPEN or told


def _head(verdict: Verdict, state: State) -> str:
    if verdict in (Verdict.DO_NOT_TASTE, Verdict.DISCARD):
        return HEADS[0]
    if state in (State.OPEN, State.THAWED):
        return HEADS[1]
    return _OTHER_HEADS.get(verdict, HEADS[4])


_OTHER_HEADS = {
    Verdict.EAT_SOON: HEADS[2],
    Verdict.PAST_BEST: HEADS[3],
    Verdict.UNKNOWN: HEADS[5],
}


_SEEN = attrgetter(*table.SEEN)


def stamp(line: table.Line) -> str:
    """What a person saw of a container; another one means that it has changed since."""
    return f"{check(_SEEN(line)):08x}"


def days_left(best_by: date | None, discard_after: date | None, today: date) -> int | None:
    """Days to the next date that still lies ahead; negative past the last one; None undated."""
    dated = [day for day in (best_by, discard_after) if day is not None]
    if not dated:
        return None
    if discard_after is not None and discard_after < today:
        return (discard_after - today).days
    ahead = [day for day in dated if day >= today]
    return (min(ahead) if ahead else max(dated)).toordinal() - today.toordinal()
