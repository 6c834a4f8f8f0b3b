"""One of several people who use a store at once, each in a process of their own.

What they do is drawn by chance, from a seed; every act is a command as it would be typed, and what
it answered is written down at once, a line of JSON each.
"""

from __future__ import annotations

import io
import json
import random
from collections.abc import Callable
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import asdict, dataclass, field
from multiprocessing.synchronize import Barrier
from pathlib import Path
from typing import Any

from pantry_tui.cli import main

TODAY = "2026-11-25"
#: Draws from the crate; their sum has no end as a decimal, so what is rounded drifts away.
DRAWS = ("1/3 lb", "1/7 lb", "2 lb", "3 oz", "1/336 lb")
SHELVES = ("larder", "pantry shelf")
PEACHES = "pint jars peaches, boiling-water canned, larder, minutes=30"


@dataclass(frozen=True, slots=True)
class Shared:
    """Lid codes of what all of them use: plenty of jars, jam to open, a crate to draw from, and a
    few jars that will not last."""

    jars: tuple[str, ...]
    jam: str
    crate: str
    scarce: str


@dataclass(slots=True)
class Act:
    """A command and its answer. `exit` 0 means that the person was told it is done."""

    verb: str
    words: list[str]
    exit: int
    said: Any
    error: str


@dataclass(slots=True)
class Person:
    """Does one thing after the other and writes down what was answered."""

    store: Path
    shared: Shared
    diary: Path
    chance: random.Random
    own: str = ""
    own_left: int = 0
    done: list[Act] = field(default_factory=list)

    def do(self, verb: str, *words: str, note: bool = True) -> Act:
        """Types a command. What it answers goes into the diary, unless it only looks."""
        out, err = io.StringIO(), io.StringIO()
        line = [verb, *words]
        with redirect_stdout(out), redirect_stderr(err):
            code = main(["--store", str(self.store), "--today", TODAY, "--json", *line])
        said = json.loads(out.getvalue()) if code == 0 else None
        act = Act(verb, list(words), code, said, err.getvalue().strip())
        if note:
            self.done.append(act)
            with self.diary.open("a", encoding="utf-8") as book:
                book.write(json.dumps(asdict(act)) + "\n")
        return act

    # -- what they do ------------------------------------------------------------------------------

    def put_up(self) -> None:
        self.do("putup", f"3 {PEACHES}")

    def use(self) -> None:
        self.do("use", self.chance.choice(self.shared.jars))

    def use_three(self) -> None:
        self.do("use", self.chance.choice(self.shared.jars), "3")

    def draw(self) -> None:
        self.do("use", self.shared.crate, self.chance.choice(DRAWS))

    def open(self) -> None:
        self.do("open", self.shared.jam)

    def use_jam(self) -> None:
        self.do("use", self.shared.jam)

    def move(self) -> None:
        place = self.chance.choice(SHELVES)
        self.do("move", f"{self._mine()}/1", place)

    def discard(self) -> None:
        self.do("discard", self.chance.choice(self.shared.jars), "--why", "seal failed")

    def sign(self) -> None:
        self.do("sign", self.chance.choice(self.shared.jars), "looks sound")

    def last_ones(self) -> None:
        self.do("use", self.shared.scarce)

    def take_back(self) -> None:
        """Uses a jar of their own and takes that back by its name in the log: between the two
        somebody else has written, so it is seldom the newest act."""
        code = self._mine()
        if self.do("use", f"{code}/2").exit:
            return
        newest = self.do("log", code, note=False).said[-1]
        self.do("undo", newest["id"] if isinstance(newest, dict) else "")

    def use_own(self) -> None:
        code = self._mine()
        if self.own_left > 2:
            self.own_left -= 1
            self.do("use", f"{code}/{self.own_left + 1}")

    def _mine(self) -> str:
        """A batch that nobody else touches: its first two jars stay, the others are eaten."""
        if not self.own or self.own_left <= 2:
            put_up = self.do("putup", f"12 {PEACHES}, note=my own")
            if put_up.exit == 0:
                self.own, self.own_left = put_up.said["code"], 12
        return self.own

    def acts(self) -> list[tuple[Callable[[], None], int]]:
        """Each with its weight."""
        return [
            (self.put_up, 12), (self.use, 20), (self.use_three, 5), (self.draw, 20),
            (self.open, 5), (self.use_jam, 3), (self.move, 8), (self.discard, 6), (self.sign, 6),
            (self.last_ones, 4), (self.take_back, 4), (self.use_own, 7),
        ]  # fmt: skip


def live(store: Path, shared: Shared, diary: Path, acts: int, start: Barrier) -> None:
    """A process of one person: at least `acts` commands, begun together with the others."""
    one = Person(store, shared, diary, random.Random(diary.name))
    todo, weights = zip(*one.acts(), strict=True)
    start.wait(120)
    while len(one.done) < acts:
        one.chance.choices(todo, weights)[0]()
