"""What is published, read again: data/keeping.csv, data/outage.csv, data/signs.csv, and the
defaults that were settled beside them.

A food takes the closest row that speaks for it: its own name, then a class, then its group, then
any food or several kinds. Of equally close rows the strictest counts. Where the papers leave
freedom the laxer reading is taken, because this is a bound; each such place says so ("lax:").
"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path

from tests.judging.world import Food

DATA = Path(__file__).resolve().parents[2] / "data"
ANIMAL = frozenset({"meat", "fish", "egg", "dairy", "meal"})
CANNED = frozenset({"boiling-water canned", "pressure canned"})
SHELVES = ("room", "pantry", "cellar")

Life = tuple[int, str]


def add(day: int, life: Life) -> int:
    """Day 0 and N: the last day; months go by the calendar, clipped to the month's end."""
    n, unit = life
    if unit in ("days", "weeks"):
        return day + n * (7 if unit == "weeks" else 1)
    d = date.fromordinal(day)
    months = d.year * 12 + d.month - 1 + n * (12 if unit == "years" else 1)
    year, month = months // 12, months % 12 + 1
    last = (date(year + month // 12, month % 12 + 1, 1) - date.resolution).day
    return date(year, month, min(d.day, last)).toordinal()


def length(life: Life) -> float:
    """About how many days: only to tell which is stricter."""
    return life[0] * {"days": 1, "weeks": 7, "months": 30.4, "years": 365}[life[1]]


@dataclass(frozen=True)
class Row:
    """A current row of data/keeping.csv."""

    id: str
    method: str
    keys: tuple[str, ...]
    state: str
    climates: frozenset[str]
    kind: str
    life: Life | None
    trust: str
    from_f: float | None = None
    source: str = ""


@cache
def keeping() -> tuple[Row, ...]:
    """The current rows; the others never give a date."""
    with (DATA / "keeping.csv").open(encoding="utf-8", newline="") as f:
        return tuple(
            Row(
                r["rule_id"],
                r["method"],
                tuple(k.strip() for k in r["food"].split(";")),
                {"working": "in progress"}.get(r["state"], r["state"]),
                frozenset(r["climate"].split(";")),
                r["kind"],
                _life(r["use"], r["unit"]),
                r["trust"],
                float(r["temp_f_min"]) if r["temp_f_min"] else None,
                r["source_id"],
            )
            for r in csv.DictReader(f)
            if r["status"] == "current"
        )


def _life(use: str, unit: str) -> Life | None:
    if not use:
        return None
    assert unit in ("days", "weeks", "months", "years"), unit
    n = float(use)
    if n != int(n):
        return (round(n * {"days": 1, "weeks": 7, "months": 30, "years": 365}[unit]), "days")
    return (int(n), unit)


def closeness(keys: tuple[str, ...], food: Food, classes: frozenset[str]) -> int | None:
    """3 the food, 2 its class, 1 its group, 0 any food or one of several kinds; None: another."""
    close = [c for k in keys if (c := near(k, food, classes)) is not None]
    if not close:
        return None
    return max(close) if len(keys) == 1 else 0


def near(key: str, food: Food, classes: frozenset[str]) -> int | None:
    """`K not L` (data/README.md): what K speaks of, but for what L speaks of."""
    key, *but = key.split(" not ")
    if any(near(one, food, classes) is not None for one in but):
        return None
    kind, _, value = key.partition(":")
    if key == "*":
        return 0
    if kind == "group":
        return 1 if value == food.group else None
    if kind == "acid":
        return 1 if value == food.group and food.acidity != "low-acid" else None
    if kind == "class":
        return 2 if value in classes else None
    return 3 if key.removeprefix("named:") == food.name else None


def classes_of(food: Food, vacuum: bool) -> frozenset[str]:
    """Its classes, and that of the pack while it is closed without air."""
    extra = {"vacuum-packed"} | ({"vacuum-fish"} if food.group == "fish" else set())
    return food.classes | extra if vacuum else food.classes


@dataclass(frozen=True)
class Said:
    """What the papers say of a food in a state and a climate.

    `covered`: some current row speaks. `life`: the safety limit, None where there is none.
    """

    covered: bool
    refused: bool
    life: Life | None
    catch_all: bool = False


@cache
def said_warmer(method: str, food: Food, vacuum: bool, state: str, temp_f: float) -> Life | None:
    """The figure that stands in a fridge from some warmth up, in place of the one for below
    (README, defaults: hot-smoked fish 14 days below 36 F, at 36 to 40 F the general figure)."""
    rows = [
        (c, r)
        for c, r in _rows(method, food, vacuum, state, "fridge", warmer=True)
        if r.from_f is not None and temp_f >= r.from_f
    ]
    return _safety(rows)


@cache
def said(method: str, food: Food, vacuum: bool, state: str, climate: str) -> Said:
    """The strictest of the closest rows, the README's default beside it."""
    if climate == "freezer" and method != "lime-kept":
        refused = _refused(method, food, vacuum, state, climate)
        return Said(covered=True, refused=refused, life=None)
    rows = _rows(method, food, vacuum, state, climate)
    life = _safety(rows)
    default = house_default(method, food, vacuum, state, climate)
    if default is NO_LIMIT:
        life = None
    elif default is not None:
        life = default if life is None else min(life, default, key=length)
    # a row for any food without a figure covers nothing: it says that nothing is published
    covered = any(r.kind != "refuse" and (r.life or c) for c, r in rows) or default is not None
    wide = {c for c, r in rows if r.kind == "safety" and r.life}
    return Said(
        covered,
        _refused(method, food, vacuum, state, climate),
        life,
        wide == {0} and default is None,
    )


def _rows(
    method: str, food: Food, vacuum: bool, state: str, climate: str, warmer: bool = False
) -> list[tuple[int, Row]]:
    """Without what stands only from some warmth up, or only that."""
    classes = classes_of(food, vacuum)
    return [
        (c, r)
        for r in keeping()
        if r.method == method and r.state == state and climate in r.climates
        if warmer == (r.from_f is not None)
        if (c := closeness(r.keys, food, classes)) is not None
    ]


def _of_pack(r: Row) -> bool:
    return any(k.startswith("class:vacuum") for k in r.keys)


def _refused(method: str, food: Food, vacuum: bool, state: str, climate: str) -> bool:
    """Refused, unless a figure speaks more closely; a pack without air never excuses itself."""
    rows = _rows(method, food, vacuum, state, climate)
    no = [c for c, r in rows if r.kind == "refuse"]
    yes = [c for c, r in rows if r.kind != "refuse"]
    if any(_of_pack(r) for _, r in rows if r.kind == "refuse"):
        return True
    return bool(no) and (not yes or max(no) >= max(yes))


@cache
def refused_by_us(method: str, food: Food, vacuum: bool, state: str, climate: str) -> bool:
    """Refused by no publication: all rows that refuse it are the project's own stricter choice."""
    rows = _rows(method, food, vacuum, state, climate)
    no = [r for _, r in rows if r.kind == "refuse"]
    return bool(no) and all(r.source == "house-reading" for r in no)


def _safety(rows: list[tuple[int, Row]]) -> Life | None:
    """The strictest of the closest; a recalled figure never beats a read and stricter one.

    README, Trust: a safety limit may rest on memory only where it is the stricter choice.
    """
    figures = [(c, r, r.life) for c, r in rows if r.kind == "safety" and r.life is not None]
    read = [life for _, r, life in figures if r.trust != "memory"]
    if read:
        strictest = min(map(length, read))
        figures = [f for f in figures if f[1].trust != "memory" or length(f[2]) <= strictest]
    if not figures:
        return None
    top = max(c for c, _, _ in figures)
    packs = [life for _, r, life in figures if _of_pack(r)]
    return min([life for c, _, life in figures if c == top] + packs, key=length)


NO_LIMIT: Life = (0, "none")


def house_default(method: str, food: Food, vacuum: bool, state: str, climate: str) -> Life | None:
    """The safety figures of the reference README's table of defaults, typed in again.

    `NO_LIMIT`: the table says the figure there is one of quality. None: it says nothing.
    """
    animal = food.group in ("meat", "fish")
    if climate != "fridge":
        shelf_jerky = climate in SHELVES and method == "dried" and "jerky" in food.classes
        return (2, "weeks") if shelf_jerky and state in ("sealed", "open") else None
    if method in CANNED and state == "open":
        if food.group == "relish" and food.acidity != "low-acid":
            return NO_LIMIT
        return (2, "days") if animal else (3, "days")
    if method == "cooked meal" and food.name in ("rice", "brown rice"):
        return (1, "days")
    if method == "cooked meal" and food.name != "hard-cooked eggs":
        return (3, "days")
    if method == "in oil" and state in ("sealed", "open"):
        return _in_oil(food)
    if method in ("hot smoked", "cold smoked") and state in ("sealed", "open"):
        return _smoked(method, food, vacuum)
    if food.name == "eggs" and method == "fresh" and state == "sealed":
        return (5, "weeks")
    if method == "frozen" and state == "thawed":
        return _thawed(food)
    return None


def _in_oil(food: Food) -> Life | None:
    if food.group not in ("vegetable", "herb", "relish", "fruit"):
        return None
    if food.name == "pesto" or food.group == "herb":
        return (2, "days")
    return (4, "days")


def _smoked(method: str, food: Food, vacuum: bool) -> Life | None:
    if food.group == "fish":
        if vacuum:
            return (5, "days")
        # from 36 F up `said_warmer` has the stricter row.
        return (14, "days") if method == "hot smoked" else (10, "days")
    cured = "cured-meat" in food.classes
    return (4, "days") if method == "hot smoked" and food.group == "meat" and not cured else None


def _thawed(food: Food) -> Life | None:
    if "whole-cut" in food.classes:
        return (3, "days")
    if food.group == "fish" or food.classes & {"ground-meat", "poultry"}:
        return (1, "days")
    return None


@cache
def table(name: str) -> tuple[dict[str, str], ...]:
    with (DATA / name).open(encoding="utf-8", newline="") as f:
        return tuple(csv.DictReader(f))


def food_names() -> tuple[str, ...]:
    """The foods of data/foods.csv."""
    return tuple(r["name"] for r in table("foods.csv"))


@cache
def food(name: str) -> Food:
    """A food of data/foods.csv; KeyError for a name that is not there."""
    for r in table("foods.csv"):
        if r["name"] == name:
            classes = frozenset(filter(None, r["classes"].split(";")))
            return Food(name, r["group"], r["acidity"], classes)
    raise KeyError(name)
