"""The stock tables: equal containers of a batch in one place, each line with its ladder of days.

A new day writes nothing: the verdict of a day is a comparison (`VERDICT`). Every row carries a
check value, `totals` a count and a sum of them, compared before a list is shown.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from pantry_tui.core.words import SEVERITY, Verdict
from pantry_tui.store.check import check


class Line(NamedTuple):
    """One row, `id` and `hash` left out. Days are ISO; `v0` holds from the first, `v1` from `d1`
    on, and so on; `reasons` is JSON: what is said beside any verdict, then a list for each."""

    batch: str
    code: str
    food: str
    method: str
    place: str
    path: str
    state: str
    n: int
    numbers: str  # "1 2 3"
    size: str
    amount: str
    begun: int  # whether some of it was taken
    reserved: str
    made: str
    best_by: str | None
    discard_after: str | None
    first_date: str
    harmless: int
    why_no_discard: str
    again_at: int | None
    hurried: int  # the hours that it may be without the cold run
    held_v: int | None  # its verdict and dates, had its place held what it should; else None
    held_best: str | None
    held_discard: str | None
    v0: int
    d1: str | None
    v1: int | None
    d2: str | None
    v2: int | None
    d3: str | None
    v3: int | None
    d4: str | None
    v4: int | None
    suspect: int
    reasons: str
    words: str
    facts_to: str
    facts_min: int  # the minute of the last fact


COLUMNS = ", ".join(Line._fields)
_HOLES = ", ".join("?" * (len(Line._fields) + 1))
#: The number of the verdict on `:day`, and which of the lists of reasons it has.
VERDICT = (
    "CASE WHEN :day >= d4 THEN v4 WHEN :day >= d3 THEN v3 WHEN :day >= d2 THEN v2 "
    "WHEN :day >= d1 THEN v1 ELSE v0 END"
)
STEP = (
    "CASE WHEN :day >= d4 THEN 4 WHEN :day >= d3 THEN 3 WHEN :day >= d2 THEN 2 "
    "WHEN :day >= d1 THEN 1 ELSE 0 END"
)


def numbers(*verdicts: Verdict) -> str:
    """The numbers that rows have for these verdicts, as a list in SQL."""
    return ", ".join(str(SEVERITY.index(one)) for one in verdicts)


#: Columns whose change a screen would have shown: what a person saw of a container.
SEEN = ("place", "state", "amount", "reserved", "best_by", "discard_after", "v0", "suspect")


def replace_batch(db: sqlite3.Connection, batch: str, lines: Iterable[Line]) -> None:
    """These are all the lines of a batch now; totals of the places follow."""
    gone = db.execute("SELECT place, hash FROM main.lines WHERE batch = ?", (batch,)).fetchall()
    db.execute("DELETE FROM main.lines WHERE batch = ?", (batch,))
    change: dict[str, tuple[int, int]] = {}

    def reckon(place: str, count: int, amount: int) -> None:
        for where in (place, ""):
            before = change.get(where, (0, 0))
            change[where] = before[0] + count, before[1] + amount

    for place, hash_ in gone:
        reckon(place, -1, -hash_)
    for line in lines:
        reckon(line.place, 1, insert(db, line))
    db.executemany(
        "INSERT INTO totals VALUES (?, ?, ?) ON CONFLICT (place) "
        "DO UPDATE SET count = count + excluded.count, sum = sum + excluded.sum",
        [(place, count, amount) for place, (count, amount) in change.items()],
    )


def insert(db: sqlite3.Connection, line: Line, into: str = "main.lines") -> int:
    """One line; returns its check value."""
    hash_ = check(line)
    db.execute(f"INSERT INTO {into} ({COLUMNS}, hash) VALUES ({_HOLES})", (*line, hash_))
    return hash_


def clear(db: sqlite3.Connection) -> None:
    """No lines at all."""
    for table in ("lines", "totals", "stood"):
        db.execute(f"DELETE FROM main.{table}")


def stood(db: sqlite3.Connection, batch: str, places: Iterable[str]) -> None:
    """Where the containers of a batch that are still here ever stood."""
    db.execute("DELETE FROM stood WHERE batch = ?", (batch,))
    db.executemany("INSERT OR IGNORE INTO stood VALUES (?, ?)", [(one, batch) for one in places])


def whole(db: sqlite3.Connection) -> bool:
    """Whether count and sum of the lines are what was written, for every place and in all."""
    found = {
        place: (count, amount)
        for place, count, amount in db.execute(
            "SELECT place, count(*), sum(hash) FROM main.lines GROUP BY place"
        )
    }
    found[""] = (
        sum(count for count, _ in found.values()),
        sum(amount for _, amount in found.values()),
    )
    kept = {
        place: (count, amount)
        for place, count, amount in db.execute("SELECT place, count, sum FROM totals")
        if count or amount
    }
    return kept == {place: both for place, both in found.items() if any(both)}


def waits(db: sqlite3.Connection, rules: str) -> bool:
    """Whether something is marked, or all was judged by other rules."""
    sql = (
        "SELECT EXISTS (SELECT 1 FROM marked) "
        "OR NOT EXISTS (SELECT 1 FROM meta WHERE name = 'rules' AND value = ?)"
    )
    return bool(db.execute(sql, (rules,)).fetchone()[0])


def as_they_lie(db: sqlite3.Connection, rules: str, minute: int, day: str) -> bool:
    """Whether the lines may be read for a day as they are: judged by these rules, nothing of them
    marked or run out by this minute, no fact of them still to come, none changed since."""
    waits = db.execute(
        "SELECT (SELECT value FROM meta WHERE name = 'rules'), "
        "EXISTS (SELECT 1 FROM marked), "
        "EXISTS (SELECT 1 FROM main.lines WHERE again_at <= ?), "
        "EXISTS (SELECT 1 FROM sqlite_temp_master), "
        "(SELECT max(facts_to) FROM main.lines), (SELECT max(facts_min) FROM main.lines)",
        (minute,),
    ).fetchone()
    judged_by, marked, run_out, imagined, last, last_minute = waits
    early = day < (last or "") or minute < (last_minute or 0)
    if judged_by != rules or marked or run_out or imagined or early:
        return False
    return whole(db)


def ids(db: sqlite3.Connection, where: str, order: str, values: dict[str, object]) -> Sequence[int]:
    """The rows of a condition, in an order."""
    sql = f"SELECT id FROM (SELECT *, {VERDICT} AS verdict FROM lines) {where} ORDER BY {order}"
    return [row[0] for row in db.execute(sql, values)]


def how_many(db: sqlite3.Connection, where: str, values: dict[str, object]) -> int:
    """Containers of a condition."""
    sql = f"SELECT sum(n) FROM (SELECT *, {VERDICT} AS verdict FROM lines) {where}"
    return int(db.execute(sql, values).fetchone()[0] or 0)


def rows(
    db: sqlite3.Connection, day: str, wanted: Sequence[int] | None = None
) -> list[tuple[int, Line, int, int]]:
    """(id, line, verdict, step of its reasons) of rows, all of them without `wanted`.

    Raises ValueError for a row that is not as it was written.
    """
    sql = f"SELECT id, {COLUMNS}, hash, {VERDICT}, {STEP} FROM lines"
    if wanted is not None:
        sql += f" WHERE id IN ({', '.join(map(str, wanted))})"
    found = []
    for row in db.execute(sql, {"day": day}):
        line = Line._make(row[1:-3])
        if check(line) != row[-3]:
            raise ValueError(f"a line of the stock tables ({line.code}) is hurt")
        found.append((row[0], line, row[-2], row[-1]))
    return found


class Cost(NamedTuple):
    """Containers of a place that its last reading spoilt, hurries, left without a figure, or made
    keep shorter, by `days` at most."""

    spoilt: int
    hurried: int
    unknown: int
    shorter: int
    days: int


def cost(db: sqlite3.Connection, place: str, day: str) -> Cost:
    """What the last reading of a place does to what stands there on a day."""
    unfit = f"({numbers(Verdict.DO_NOT_TASTE, Verdict.DISCARD)})"
    unknown = numbers(Verdict.UNKNOWN)
    row = db.execute(
        f"WITH found AS (SELECT *, {VERDICT} AS verdict FROM lines WHERE place = :place), "
        "told AS (SELECT n, CASE WHEN hurried THEN 'hurried' WHEN held_v IS NULL THEN '' "
        f"WHEN verdict IN {unfit} THEN CASE WHEN held_v IN {unfit} OR held_discard < :day "
        f"THEN '' ELSE 'spoilt' END WHEN verdict = {unknown} AND held_v <> {unknown} "
        "THEN 'unknown' WHEN best_by < held_best THEN 'shorter' ELSE '' END AS what, "
        "CAST(julianday(held_best) - julianday(best_by) AS INTEGER) AS days FROM found) "
        "SELECT sum(n) FILTER (WHERE what = 'spoilt'), sum(n) FILTER (WHERE what = 'hurried'), "
        "sum(n) FILTER (WHERE what = 'unknown'), sum(n) FILTER (WHERE what = 'shorter'), "
        "max(days) FILTER (WHERE what = 'shorter') FROM told",
        {"place": place, "day": day},
    ).fetchone()
    return Cost(*(one or 0 for one in row))


def resting_on_later(db: sqlite3.Connection, minute: int, day: str) -> list[str]:
    """The batches with lines that rest on a fact, or were judged on a day, later than this."""
    sql = "SELECT DISTINCT batch FROM main.lines WHERE facts_to > ? OR facts_min > ?"
    return [row[0] for row in db.execute(sql, (day, minute))]
