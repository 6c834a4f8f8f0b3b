"""The stock tables: equal containers of a batch in one place, each line with its ladder of days.

A new day writes nothing: the verdict of a day is a comparison (`VERDICT`). Every row carries a
check value, `totals` a count and a sum of them, compared before a list is shown.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from pantry_tui.core.words import SEVERITY, Verdict
from pantry_tui.store import marks, sums
from pantry_tui.store.check import check
from pantry_tui.store.damage import Damaged


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
#: All by which lists choose and order their rows and count containers, as one number: with a sum
#: of it beside them no such column changes unnoticed, whether or not the row is read.
_SHOWN = (
    "n + 3 * v0 + 5 * ifnull(v1, 9) + 7 * ifnull(v2, 9) + 11 * ifnull(v3, 9) + 13 * ifnull(v4, 9) "
    "+ 17 * harmless + 19 * hurried + 23 * suspect + 29 * ifnull(held_v, 9) + facts_min "
    "+ ifnull(again_at, 0) + 31 * unicode(state) + 61 * begun + 67 * (reserved = '') "
    "+ 71 * ifnull(CAST(julianday(made) AS INTEGER), 1) + CAST(2 * (julianday(first_date) "
    "+ 37 * ifnull(julianday(d1), 1) + 41 * ifnull(julianday(d2), 1) "
    "+ 43 * ifnull(julianday(d3), 1) + 47 * ifnull(julianday(d4), 1) "
    "+ 53 * ifnull(julianday(best_by), 1) + 59 * julianday(facts_to)) AS INTEGER)"
)


def numbers(*verdicts: Verdict) -> str:
    """The numbers that rows have for these verdicts, as a list in SQL."""
    return ", ".join(str(SEVERITY.index(one)) for one in verdicts)


#: Columns whose change a screen would have shown: what a person saw of a container.
SEEN = ("place", "state", "amount", "reserved", "best_by", "discard_after", "v0", "suspect")


def replace_batch(db: sqlite3.Connection, batch: str, lines: Iterable[Line]) -> None:
    """These are all the lines of a batch now; totals of the places follow. Raises Damaged where
    the lines it had are not found."""
    change: dict[str, tuple[int, int, int]] = {}
    name = f"lines:{batch}"

    def reckon(sign: int) -> tuple[int, int]:
        found = db.execute(
            f"SELECT place, food, hash, {_SHOWN} FROM main.lines WHERE batch = ?", (batch,)
        ).fetchall()
        for place, food, hash_, shown in found:
            sums.add(db, (f"food:{food}",), hash_ + shown, sign)
            for where in (place, ""):
                count, amount, much = change.get(where, (0, 0, 0))
                much += 0 if where else sign * shown
                change[where] = count + sign, amount + sign * hash_, much
        return len(found), sum(hash_ for _, _, hash_, _ in found)

    sums.must_be(db, name, *reckon(-1), "the lines of a batch")
    db.execute("DELETE FROM main.lines WHERE batch = ?", (batch,))
    for line in lines:
        insert(db, line)
    sums.put(db, name, *reckon(1))
    db.executemany(
        "INSERT INTO totals VALUES (?, ?, ?, ?) ON CONFLICT (place) DO UPDATE SET "
        "count = count + excluded.count, sum = sum + excluded.sum, shown = shown + excluded.shown",
        [(place, *three) for place, three in change.items()],
    )


def insert(db: sqlite3.Connection, line: Line, into: str = "main.lines") -> None:
    """One line with its check value."""
    db.execute(f"INSERT INTO {into} ({COLUMNS}, hash) VALUES ({_HOLES})", (*line, check(line)))


def stood(db: sqlite3.Connection, batch: str, places: Iterable[str]) -> None:
    """Where the containers of a batch that are still here ever stood."""
    gone = db.execute("DELETE FROM stood WHERE batch = ? RETURNING place, batch", (batch,))
    for row in gone.fetchall():
        sums.add(db, (f"stood:{row[0]}",), check(row), -1)
    for place in set(places):
        db.execute("INSERT INTO stood VALUES (?, ?)", (place, batch))
        sums.add(db, (f"stood:{place}",), check((place, batch)))


class Facts(NamedTuple):
    """Of all lines: the first minute at which one is to be judged again, and the last day and
    minute of what they rest on; None where there is none."""

    again_at: int | None
    last_day: str | None
    last_minute: int | None


def refuse_hurt(db: sqlite3.Connection) -> Facts:
    """Counts and sums of the lines are what was written, for every place and in all. Raises
    Damaged."""
    with sums.at_once(db):
        return _refuse_hurt(db)


def _refuse_hurt(db: sqlite3.Connection) -> Facts:
    # By no index: what is asked of all lines is read off all of them.
    places = "SELECT place, count(*), sum(hash) FROM main.lines NOT INDEXED GROUP BY place"
    rows = db.execute(places).fetchall()
    shown, *facts = db.execute(
        f"SELECT ifnull(sum({_SHOWN}), 0), min(again_at), max(facts_to), max(facts_min) "
        "FROM main.lines NOT INDEXED"
    ).fetchone()
    found = {place: (count, amount, 0) for place, count, amount in rows}
    found[""] = sum(one[1] for one in rows), sum(one[2] for one in rows), shown
    kept = {
        place: (count, amount, much)
        for place, count, amount, much in db.execute("SELECT * FROM totals")
        if count or amount or much
    }
    if kept != {place: three for place, three in found.items() if any(three)}:
        raise Damaged("rows of the stock tables are lost or changed")
    return Facts(*facts)


def waits(db: sqlite3.Connection, rules: str) -> bool:
    """Whether something is marked, or all was judged by other rules."""
    sql = (
        "SELECT EXISTS (SELECT 1 FROM marked) "
        "OR NOT EXISTS (SELECT 1 FROM meta WHERE name = 'rules' AND value = ?)"
    )
    return bool(db.execute(sql, (rules,)).fetchone()[0])


def as_they_lie(
    db: sqlite3.Connection, rules: str, minute: int, day: str, *, look: bool = True
) -> bool:
    """Whether the lines may be read for a day as they are: judged by these rules, nothing of them
    marked or run out by this minute, no fact of them still to come. With `look` all of them are
    held against what was written: raises Damaged where any has changed since."""
    judged_by, imagined = db.execute(
        "SELECT (SELECT value FROM meta WHERE name = 'rules'), "
        "EXISTS (SELECT 1 FROM sqlite_temp_master)"
    ).fetchone()
    if judged_by != rules or imagined or marks.any_left(db):
        return False
    facts = refuse_hurt(db) if look else _facts(db)
    marks.refuse_lost(db)
    run_out = facts.again_at is not None and facts.again_at <= minute
    early = day < (facts.last_day or "") or minute < (facts.last_minute or 0)
    return not (run_out or early)


def _facts(db: sqlite3.Connection) -> Facts:
    """The same by index, for whoever has looked at the lines already."""
    return Facts(
        *db.execute(
            "SELECT (SELECT min(again_at) FROM main.lines WHERE again_at IS NOT NULL), "
            "(SELECT max(facts_to) FROM main.lines), (SELECT max(facts_min) FROM main.lines)"
        ).fetchone()
    )


def refuse_fewer(db: sqlite3.Connection, code: str, batch: str) -> None:
    """Raises Damaged where a lid code does not lead to all lines of its batch."""
    sql = "SELECT count(*) FROM main.lines WHERE code = ?"
    with sums.at_once(db):
        (count,) = db.execute(sql, (code,)).fetchone()
        written, _ = sums.written(db, f"lines:{batch}")
    if count != written:
        raise Damaged(f"lines of {code} are lost")


def refuse_food(db: sqlite3.Connection, food: str) -> None:
    """Raises Damaged where an index does not lead to all lines of a food, or one of them is to be
    chosen by something else than was written."""
    sql = f"SELECT count(*), ifnull(sum(hash + {_SHOWN}), 0) FROM main.lines WHERE food = ?"
    with sums.at_once(db):
        count, amount = db.execute(sql, (food,)).fetchone()
        sums.must_be(db, f"food:{food}", count, amount, f"the lines of {food}")


def ids(db: sqlite3.Connection, where: str, order: str, values: dict[str, object]) -> Sequence[int]:
    """The rows of a condition, in an order. A column with a `+` before it is asked of every row: no
    index leads to what stands in a place that is looked at, and none can be hurt."""
    sql = f"SELECT id FROM (SELECT *, {VERDICT} AS verdict FROM lines) {where} ORDER BY {order}"
    return [row[0] for row in db.execute(sql, values)]


def rows(
    db: sqlite3.Connection, day: str, wanted: Sequence[int] | None = None
) -> list[tuple[int, Line, int, int]]:
    """(id, line, verdict, step of its reasons) of rows, all of them without `wanted`.

    Raises Damaged for a row that is not as it was written.
    """
    sql = f"SELECT id, {COLUMNS}, hash, {VERDICT}, {STEP} FROM lines"
    if wanted is not None:
        sql += f" WHERE id IN ({', '.join(map(str, wanted))})"
    found = []
    for row in db.execute(sql, {"day": day}):
        line = Line._make(row[1:-3])
        if check(line) != row[-3]:
            raise Damaged(f"a line of the stock tables ({line.code}) is hurt")
        found.append((row[0], line, row[-2], row[-1]))
    if wanted is not None and len(found) < len(wanted):
        _refuse_astray(db, set(wanted) - {row[0] for row in found})
    return found


def _refuse_astray(db: sqlite3.Connection, missing: Iterable[int]) -> None:
    """Rows that are not found by their ids were made anew meanwhile. Raises Damaged where they lie
    in the table all the same, on a page to which the ids do not lead."""
    among = ", ".join(map(str, missing))
    sql = f"SELECT code FROM lines NOT INDEXED WHERE +id IN ({among}) LIMIT 1"
    row = db.execute(sql).fetchone()
    if row is not None:
        raise Damaged(f"a line of the stock tables ({row[0]}) lies where nothing leads to it")


def verdict_on(line: Line, day: str) -> int:
    """The number of a line's verdict on a day, as `VERDICT` finds it."""
    steps = ((line.d4, line.v4), (line.d3, line.v3), (line.d2, line.v2), (line.d1, line.v1))
    for since, verdict in steps:
        if since is not None and verdict is not None and day >= since:
            return verdict
    return line.v0


class Cost(NamedTuple):
    """Containers of a place that its last reading spoilt, hurries, left without a figure, or made
    keep shorter, by `days` at most."""

    spoilt: int
    hurried: int
    unknown: int
    shorter: int
    days: int


def costs(db: sqlite3.Connection, day: str) -> dict[str, Cost]:
    """What the last reading of each place does to what stands there on a day; of a place where it
    does nothing there is none."""
    unfit = f"({numbers(Verdict.DO_NOT_TASTE, Verdict.DISCARD)})"
    unknown = numbers(Verdict.UNKNOWN)
    found = db.execute(
        # The limit has the verdict reckoned once, and not wherever its name stands.
        "WITH found AS (SELECT place, n, hurried, held_v, best_by, held_best, held_discard, "
        f"{VERDICT} AS verdict FROM lines WHERE hurried OR held_v IS NOT NULL LIMIT -1), "
        "told AS (SELECT place, n, CASE WHEN hurried THEN 'hurried' WHEN held_v IS NULL THEN '' "
        f"WHEN verdict IN {unfit} THEN CASE WHEN held_v IN {unfit} OR held_discard < :day "
        f"THEN '' ELSE 'spoilt' END WHEN verdict = {unknown} AND held_v <> {unknown} "
        "THEN 'unknown' WHEN best_by < held_best THEN 'shorter' ELSE '' END AS what, "
        "CAST(julianday(held_best) - julianday(best_by) AS INTEGER) AS days FROM found) "
        "SELECT place, sum(n) FILTER (WHERE what = 'spoilt'), "
        "sum(n) FILTER (WHERE what = 'hurried'), sum(n) FILTER (WHERE what = 'unknown'), "
        "sum(n) FILTER (WHERE what = 'shorter'), "
        "max(days) FILTER (WHERE what = 'shorter') FROM told GROUP BY place",
        {"day": day},
    )
    return {place: Cost(*(one or 0 for one in row)) for place, *row in found}


def codes_in(db: sqlite3.Connection, place: str, methods: Iterable[str]) -> list[str]:
    """The lid codes of what stands in a place by any of these methods."""
    many = list(methods)
    marks = ", ".join("?" * len(many))
    sql = f"SELECT DISTINCT code FROM lines WHERE place = ? AND method IN ({marks}) ORDER BY code"
    return [row[0] for row in db.execute(sql, (place, *many))]


def resting_on_later(db: sqlite3.Connection, minute: int, day: str) -> list[str]:
    """The batches with lines that rest on a fact, or were judged on a day, later than this."""
    sql = "SELECT DISTINCT batch FROM main.lines WHERE +facts_to > ? OR +facts_min > ?"
    return [row[0] for row in db.execute(sql, (day, minute))]
