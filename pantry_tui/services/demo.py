"""The demo store: the Halloway household of Fern Hollow, two seasons of putting up.

Everything is dated relative to today and done through the same services a person uses, day by
day, so that it never goes stale and never shows what the program would not allow.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta
from pathlib import Path

from pantry_tui.errors import DataError, PantryError
from pantry_tui.paths import data_dir
from pantry_tui.services.batchwork import putup, repack, tending
from pantry_tui.services.books import rating as taste  # fmt: skip
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create
from pantry_tui.services.plan import dishes, substitute
from pantry_tui.services.rows import Source
from pantry_tui.services.stock import act, places, readings, reserve
from pantry_tui.services.stock.pick import batch_named

#: Rows of a file of the demo, as they are typed.
Rows = list[dict[str, str]]


@dataclass(frozen=True, slots=True)
class _Step:
    days_ago: int
    row: int
    verb: str
    rest: str


def build_demo(
    path: Path, today: date, units: str = "us", typed: Callable[[str], Rows] | None = None
) -> None:
    """A fresh demo store at `path`, of a household with such `units`; `typed` gives other rows for
    a file of data/demo/ by its name. Raises Refused when the file is there."""

    def fill(p: Pantry) -> None:
        p.today = today
        with p.writing():
            _fill(p, today, typed or rows_of)

    began = Clock(today - timedelta(days=800))
    create(path, altitude_ft=900, people=4, units=units, clock=began, fill=fill)


def rows_of(name: str) -> Rows:
    """What the demo types: the rows of a file of data/demo/."""
    with (data_dir() / "demo" / name).open(encoding="utf-8", newline="") as handle:
        return list(csv.DictReader(handle))


def _fill(p: Pantry, today: date, rows: Callable[[str], Rows]) -> None:
    batches, readings_ = rows("batches.csv"), rows("readings.csv")
    read = [_Step(int(row["days_ago"]), n, "read", "") for n, row in enumerate(readings_)]
    cook = [
        _Step(int(row["days_ago"]), n, "dish", row["dish"])
        for n, row in enumerate(rows("dishes.csv"))
    ]
    steps = sorted([*_steps(batches), *read, *cook], key=lambda s: (-s.days_ago, s.row))
    p.today = today - timedelta(days=max(step.days_ago for step in steps) + 30)
    for row in rows("places.csv"):
        temp = float(row["temp_f"]) if row["temp_f"] else None
        room = int(row["capacity"]) if row["capacity"] else None
        places.add(p, row["name"], row["climate"], row["inside"] or None, temp, room)
    codes: dict[int, str] = {}
    for step in steps:
        p.today = today - timedelta(days=step.days_ago)
        try:
            if step.verb == "read":
                _read(p, readings_[step.row])
            elif step.verb == "dish":
                dishes.keep(p, step.rest)
            elif step.verb == "put_up":
                codes[step.row] = _put_up(p, batches, step.row, codes)
            else:
                _do(p, codes[step.row], step)
        except PantryError as error:
            raise DataError(
                f"demo/batches.csv row {step.row + 2}, {step.verb}: {error.message}"
            ) from error
    p.today = today


def _read(p: Pantry, row: dict[str, str]) -> None:
    humidity = float(row["humidity"]) if row["humidity"] else None
    readings.read(p, row["place"], float(row["temp_f"]), humidity)


def _steps(batches: list[dict[str, str]]) -> Iterator[_Step]:
    for number, row in enumerate(batches):
        yield _Step(int(row["days_ago"]), number, "put_up", "")
        for part in filter(None, row["then"].split(";")):
            what, _, when = part.partition("@")
            ago, _, tail = when.partition(":")
            verb, _, rest = what.strip().partition(" ")
            first, spread, last = ago.partition("-")
            if spread:
                yield from _one_by_one(int(first), int(last), int(rest), number)
            else:
                yield _Step(int(ago), number, verb, f"{rest}|{tail}")


def _one_by_one(first: int, last: int, count: int, row: int) -> Iterator[_Step]:
    """So many used one at a time, evenly from `first` to `last` days ago."""
    for n in range(count):
        yield _Step(round(first + (last - first) * n / (count - 1)), row, "use", "1|")


def _put_up(p: Pantry, rows: Rows, number: int, codes: dict[int, str]) -> str:
    """`from=118:2`: made from two containers of the row that was put up 118 days ago."""
    row = rows[number]
    process = [
        (key, value)
        for key, _, value in (pair.partition("=") for pair in row["process"].split(";"))
        if key
    ]
    parts = [pair for pair in process if pair[0] == "from"]
    reading = putup.from_flags(
        p,
        food=row["food"],
        method=row["method"],
        count=int(row["count"]),
        size=row["container"],
        place=row["place"],
        process=[pair for pair in process if pair not in parts],
        note=row["note"],
    )
    for _, value in parts:
        ago, _, many = value.partition(":")
        of = next(n for n, one in enumerate(rows) if one["days_ago"] == ago)
        reading = replace(reading, sources=(Source(codes[of]),) * int(many or 1))
    return putup.put_up(p, reading).code


def _do(p: Pantry, code: str, step: _Step) -> None:
    rest, _, tail = step.rest.partition("|")
    if step.verb == "use":
        act.use(p, code, rest or None)
    elif step.verb == "use_amount":
        act.use(p, code, rest)
    elif step.verb == "open":
        act.open_(p, code)
    elif step.verb == "thaw":
        act.thaw(p, code)
    elif step.verb == "finish":
        act.ready(p, code)
    elif step.verb == "fill":
        repack.ready_into(p, code, rest)
    elif step.verb == "move":
        act.move(p, code, rest)
    elif step.verb == "give":
        act.give(p, code, int(rest or 1), tail)
    elif step.verb == "discard":
        act.discard(p, code, int(rest or 1), tail)
    elif step.verb == "tend":
        tending.tend(p, code, rest)
    elif step.verb == "taste":
        taste.taste(p, code, rest, tail)
    elif step.verb == "reserve":
        reserve.reserve(p, code, int(rest or 1), tail)
    elif step.verb == "substitute":
        substitute.set_substitutes(p, batch_named(p, code).food.name, [rest])
