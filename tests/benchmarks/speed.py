"""How fast the program is beside what nothing can be faster than. Exit 1 if a bar is broken.

    python -m tests.benchmarks.speed            the whole table
    python -m tests.benchmarks.speed --quick    350 containers only
    python -m tests.benchmarks.speed --only due use --live 10000

Every line is the median of what we take by the median of a floor that is measured in turn with it,
so that a busy machine strikes both. Whole programs are timed on the wall, as a person waits for
them (what they spend of CPU stands beside it, and is steadier where the machine is shared); keys
and the lock in CPU, see `keys.py` and `locks.py`. Before anything is timed, a store is looked at
once: what the program reckons after an update is no part of its daily start. A line that takes
minutes is cut short after three samples; it has lost anyway.
"""

from __future__ import annotations

import argparse
import json
import shutil
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import closing
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from statistics import median
from time import perf_counter
from typing import Any

from tests.benchmarks.floors import __file__ as floors_file
from tests.benchmarks.history import TODAY, Size
from tests.benchmarks.processes import OURS, PYTHON, ROOT, Sample, environment, painted, run
from tests.benchmarks.stores import store

#: The lid codes that stand in the list of the bare app.
CODES = ("2A", "3A", "4A", "5A", "6A", "7A", "9A", "2C", "3C", "4C")
SAMPLES = 9
#: After so many seconds, three samples of a slow line must do.
ENOUGH = 60.0

SMALL, MIDDLE, LARGE = Size(350, 10_000), Size(10_000), Size(100_000)
LONG = Size(350, 100_000)


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the table: medians in `unit`; `bar` is how often the floor ours may take, or
    without a floor the most that ours may be; None is only printed."""

    what: str
    size: str
    ours: float
    floor: float | None
    bar: float | None
    samples: int
    unit: str = "ms"
    cpu: float | None = None  # the same ratio in CPU

    @property
    def ratio(self) -> float:
        return self.ours / self.floor if self.floor else self.ours

    @property
    def holds(self) -> bool:
        return self.bar is None or self.ratio <= self.bar

    def __str__(self) -> str:
        against = "x" if self.floor else self.unit
        return _cells(
            self.what,
            self.size,
            f"{self.ours:.0f} {self.unit}",
            f"{self.floor:.0f}" if self.floor else "",
            f"{self.ratio:.2f} x" if self.floor else "",
            f"{self.cpu:.2f} x" if self.cpu else "",
            f"{self.bar:g} {against}" if self.bar else "none",
            "" if self.bar is None else "holds" if self.holds else "BROKEN",
            str(self.samples),
        )


def _cells(*cells: str) -> str:
    widths = (-22, -24, 12, 7, 10, 10, 8, 8, 4)
    return "".join(
        f"{cell:<{-width}}" if width < 0 else f"{cell:>{width}}"
        for cell, width in zip(cells, widths, strict=True)
    )


HEAD = _cells("what", "containers", "ours", "floor", "ratio", "in CPU", "bar", "", "n")


@dataclass
class Shop:
    """A store of one size, copied and looked at once, with what stands in it."""

    size: Size
    folder: Path
    path: Path = field(init=False)

    def __post_init__(self) -> None:
        self.path = self.folder / f"{self.size.live}-{self.size.events}.db"
        shutil.copy(store(self.size), self.path)

    @cached_property
    def env(self) -> dict[str, str]:
        return environment(self.folder)

    @cached_property
    def due(self) -> list[dict[str, Any]]:
        """The due list as the program gives it."""
        done = subprocess.run(
            self.argv("due", "--json"), env=self.env, cwd=ROOT, capture_output=True, check=True
        )
        found: list[dict[str, Any]] = json.loads(done.stdout)
        return found

    @cached_property
    def usable(self) -> list[str]:
        """Lid codes of closed jars, more than one of each, and of nothing that is weighed out."""
        crates = ("cellar-stored",)
        return [
            row["code"] for row in self.due
            if row["state"] == "sealed" and row["count"] > 1 and row["method"] not in crates
            and row["verdict"] in ("sound", "eat soon", "past best")
        ]  # fmt: skip

    def argv(self, *words: str) -> list[str]:
        return [*OURS, "--store", str(self.path), "--today", TODAY.isoformat(), *words]


def floor(name: str, *words: str) -> list[str]:
    return [*PYTHON, str(Path(floors_file).parent / f"{name}.py"), *words]


def in_turn(
    bare: Callable[[], Sample], ours: Callable[[], Sample]
) -> tuple[list[Sample], list[Sample]]:
    """The floor and ours in turn, again and again; the first of each is for nothing."""
    began = perf_counter()
    found: tuple[list[Sample], list[Sample]] = [], []
    bare(), ours()
    for n in range(SAMPLES):
        found[0].append(bare())
        found[1].append(ours())
        if n >= 2 and perf_counter() - began > ENOUGH:
            break
    return found


def _wall(samples: Sequence[Sample]) -> float:
    return median(one.wall for one in samples) * 1000


def _cpu(samples: Sequence[Sample]) -> float:
    return median(one.cpu for one in samples)


def _line(what: str, shop: Shop, bar: float | None, found: Sequence[Sequence[Sample]]) -> Line:
    bare, ours = found
    ratio = _cpu(ours) / _cpu(bare)
    return Line(what, str(shop.size), _wall(ours), _wall(bare), bar, len(ours), cpu=ratio)


# -- the lines -------------------------------------------------------------------------------------


def _bare_app(shop: Shop) -> Sample:
    return painted(floor("app", *CODES), shop.env, CODES)


def launch(shop: Shop, bar: float | None, memory: float | None = None) -> Iterator[Line]:
    """From the command to the painted due list; with `memory`, also how much it takes."""
    codes = {row["code"] for row in shop.due}
    found = in_turn(lambda: _bare_app(shop), lambda: painted(shop.argv(), shop.env, codes))
    yield _line("launch to painted", shop, bar, found)
    if memory:
        bare, ours = (median(one.kib for one in side) / 1024 for side in found)
        yield Line("memory", str(shop.size), ours, bare, memory, len(found[1]), "MiB")


def due(shop: Shop, bar: float) -> Iterator[Line]:
    """`due --json` and a script that has nothing to reckon."""
    columns = shop.folder / f"due-{shop.size.live}.db"
    with closing(sqlite3.connect(columns)) as db, db:
        names = [f"{key}{_kind(value)}" for key, value in shop.due[0].items()]
        quoted = ", ".join(f'"{name}"' for name in names)
        db.execute(f"create table due ({quoted})")
        marks = ", ".join("?" * len(names))
        rows = ([_column(value) for value in row.values()] for row in shop.due)
        db.executemany(f"insert into due values ({marks})", rows)
    bare = floor("due", str(columns))
    ours = shop.argv("due", "--json")
    yield _line(
        "due --json", shop, bar, in_turn(lambda: run(bare, shop.env), lambda: run(ours, shop.env))
    )


def _kind(value: Any) -> str:
    return ":lines" if isinstance(value, list) else ":json" if isinstance(value, dict) else ""


def _column(value: Any) -> Any:
    if isinstance(value, list):
        return "\n".join(map(str, value))
    return json.dumps(value) if isinstance(value, dict) else value


def use(shop: Shop, bar: float) -> Iterator[Line]:
    """`use CODE`, the whole command, each time of another batch."""
    log = shop.folder / f"act-{shop.size.live}.db"
    with closing(sqlite3.connect(log)) as db, db:
        db.execute("create table events (id integer primary key, day text, data text)")
        db.execute("create table stock (code text primary key, left integer)")
        db.execute("insert into events values (1, '', '')")
        db.execute("insert into stock values ('2A', 1000000)")
    codes = iter(shop.usable)
    bare = floor("act", str(log))
    found = in_turn(
        lambda: run(bare, shop.env), lambda: run(shop.argv("use", next(codes)), shop.env)
    )
    yield _line("use CODE", shop, bar, found)


def _child(shop: Shop, module: str, *words: str) -> Any:
    """What a measuring process answers. Raises RuntimeError when it fails."""
    argv = [*PYTHON, "-m", f"tests.benchmarks.{module}", str(shop.path), *words]
    done = subprocess.run(argv, env=shop.env, cwd=ROOT, capture_output=True, text=True, check=False)
    if done.returncode:
        raise RuntimeError(done.stderr.strip().splitlines()[-1])
    return json.loads(done.stdout)


def keys(shop: Shop, bar: float) -> Iterator[Line]:
    """`u`, `z` and a filter letter in the open app."""
    found = _child(shop, "keys")
    bare = median(found["floor"]) * 1000
    for key, name in (("u", "u"), ("z", "z"), ("letter", "a filter letter")):
        spent = found[key]
        yield Line(name, str(shop.size), median(spent) * 1000, bare, bar, len(spent), "ms CPU")


def shelves(shop: Shop, bar: float) -> Iterator[Line]:
    """`S` for the first time, each time in a new process."""
    samples: list[dict[str, list[float]]] = []
    began = perf_counter()
    while len(samples) < SAMPLES and (len(samples) < 3 or perf_counter() - began < ENOUGH):
        samples.append(_child(shop, "keys", "--first"))
    ours, bare = (median(one[key][0] for one in samples) * 1000 for key in ("S", "floor"))
    yield Line("S the first time", str(shop.size), ours, bare, bar, len(samples), "ms CPU")


def lock(shop: Shop, bar: float) -> Iterator[Line]:
    """How long an act on one batch, and one on a place, holds the store."""
    codes = iter(shop.usable[SAMPLES + 1 :])
    place = next(row["place"] for row in shop.due if row["method"] == "pressure canned")
    line = f"3 pint jars peaches, boiling-water canned, {place.replace('›', ' ')}, minutes=30"
    acts: tuple[tuple[str, Callable[[], list[str]]], ...] = (
        ("lock: use CODE", lambda: ["use", next(codes)]),
        ("lock: putup", lambda: ["putup", line]),
        ("lock: reading PLACE", lambda: ["reading", place, "50F"]),
    )
    for name, words in acts:
        began, spent = perf_counter(), list[float]()
        while len(spent) < SAMPLES and (len(spent) < 3 or perf_counter() - began < ENOUGH):
            spent.append(_child(shop, "locks", *words())["cpu"] * 1000)
        yield Line(name, str(shop.size), median(spent), None, bar, len(spent), "ms CPU")


def plan(shop: Shop, bar: float) -> Iterator[Line]:
    """`week` and `outlook`, both commands together, beside the launch of a bare app."""

    def both() -> Sample:
        week, look = (run(shop.argv(verb, "--json"), shop.env) for verb in ("week", "outlook"))
        return Sample(week.wall + look.wall, week.cpu + look.cpu)

    yield _line("week + outlook", shop, bar, in_turn(lambda: _bare_app(shop), both))


@dataclass(frozen=True, slots=True)
class Measure:
    """Something to measure on a store of a size. `bar` as in `Line`."""

    how: Callable[..., Iterator[Line]]
    size: Size
    bar: float | None
    more: Mapping[str, float] = field(default_factory=dict)


#: What writes to a store comes after what only reads it.
TABLE = (
    Measure(launch, SMALL, 1.5),
    Measure(due, SMALL, 3),
    Measure(use, SMALL, 6),
    Measure(keys, SMALL, 3),
    Measure(shelves, SMALL, 2),
    Measure(lock, SMALL, 50),
    Measure(launch, LONG, 1.6),
    Measure(launch, MIDDLE, 1.8),
    Measure(due, MIDDLE, 2.5),
    Measure(plan, MIDDLE, 4),
    Measure(use, MIDDLE, 6),
    Measure(keys, MIDDLE, 4),
    Measure(shelves, MIDDLE, 2),
    Measure(lock, MIDDLE, 50),
    Measure(launch, LARGE, None, {"memory": 2.5}),
    Measure(use, LARGE, 7),
    Measure(keys, LARGE, 5),
    Measure(lock, LARGE, 50),
)


def main() -> int:
    parser = argparse.ArgumentParser(description="Speed beside floors.")
    parser.add_argument("--quick", action="store_true", help=f"only {SMALL} containers")
    names = sorted({one.how.__name__ for one in TABLE})
    parser.add_argument("--only", nargs="+", choices=names, default=names, metavar="WHAT",
                        help=", ".join(names))  # fmt: skip
    parser.add_argument("--live", type=int, metavar="N", help="only stores of N containers")
    args = parser.parse_args()
    broken = 0
    print(HEAD, flush=True)
    with tempfile.TemporaryDirectory(prefix="pantry-tui-speed-") as name:
        shops: dict[Size, Shop] = {}
        for one in TABLE:
            if one.how.__name__ not in args.only or (args.quick and one.size != SMALL):
                continue
            if args.live and one.size.live != args.live:
                continue
            if one.size not in shops:
                shops[one.size] = Shop(one.size, Path(name))
            try:
                for line in one.how(shops[one.size], one.bar, **one.more):
                    print(line, flush=True)
                    broken += not line.holds
            except (RuntimeError, subprocess.CalledProcessError, StopIteration) as error:
                broken += 1
                print(f"{one.how.__name__}, {one.size}: not measured: {error}", flush=True)
    print(f"{broken} bars are broken." if broken else "All bars hold.")
    return 1 if broken else 0


if __name__ == "__main__":
    sys.exit(main())
