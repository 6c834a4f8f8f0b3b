"""The table of every method, state, climate, warmth and class of food: each is owed an answer."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from functools import cache
from itertools import islice

from tests.judging import papers
from tests.judging.bound import Program, too_lenient
from tests.judging.evaluator import judge
from tests.judging.histories import USUAL
from tests.judging.world import (
    DAY,
    Fact,
    Food,
    Happening,
    History,
    Moved,
    Opened,
    PlaceOpened,
    PutUp,
    Thawed,
    moment,
)

METHODS = tuple(USUAL)
STATES = ("sealed", "sealed without air", "in progress", "open", "thawed")
CLIMATES = ("room", "pantry", "cellar", "fridge", "freezer")
WARMTHS = (0.0, 32.0, 40.0, 41.0, 50.0, 95.0)
#: Asked within the two hours, the next day, and when everything with an end is over.
ASKED = (30, DAY, 400 * DAY)
START = date(2026, 3, 2).toordinal()


@dataclass(frozen=True)
class Cell:
    method: str
    state: str
    climate: str
    warmth: float
    food: Food

    def __str__(self) -> str:
        known = "" if self.food.known else " (in no table)"
        return (
            f"{self.method}, {self.state}, {self.climate} at {self.warmth:g} F, "
            f"{self.food.name}{known}"
        )

    def history(self, asked: int) -> History:
        """Put up, brought into that state, and asked about so many minutes later."""
        at = moment(START, 10)
        thawed, vacuum = self.state == "thawed", self.state == "sealed without air"
        put_up = PutUp(
            "A",
            self.food,
            self.method,
            ("A/1",),
            "chest" if thawed else "here",
            state="in progress" if self.state == "in progress" else "sealed",
            vacuum=vacuum,
        )
        told: list[tuple[int, Happening]] = [
            (at - 30 * DAY, PlaceOpened("here", self.climate, self.warmth)),
            (at - 30 * DAY, PlaceOpened("chest", "freezer", 0.0)),
            (at - (2 * DAY if thawed else 0), put_up),
        ]
        if thawed:
            told += [(at + 1, Moved("A/1", "here")), (at + 2, Thawed("A/1", "done"))]
        elif self.state == "open":
            told.append((at + 2, Opened("A/1")))
        facts = tuple(Fact(f"f{n}", t // DAY, t % DAY, t, what) for n, (t, what) in enumerate(told))
        return History(facts, at + asked, str(self))


@cache
def foods() -> tuple[Food, ...]:
    """One food of each group, acidity and set of classes; each that a rule names; unknown ones."""
    named = {k for r in papers.keeping() for k in r.keys if ":" not in k and k != "*"}
    whole = [papers.food(n) for n in papers.food_names()]
    kinds = {(f.group, f.acidity, f.classes): f for f in reversed(whole)}
    chosen = {f.name: f for f in kinds.values()}
    chosen |= {f.name: f for f in whole if f.name in named and f.group in papers.ANIMAL}
    chosen |= {n: papers.food(n) for n in ("rice", "pesto", "garlic", "honey", "vinegar")}
    groups = sorted({f.group for f in whole})
    strangers = [Food(f"unheard-of {g}", g, "low-acid", known=False) for g in groups]
    return (*chosen.values(), *strangers)


def cells(method: str) -> Iterator[Cell]:
    """The table's cells of one method."""
    for state in STATES:
        for climate in CLIMATES:
            for warmth in WARMTHS:
                for food in foods():
                    yield Cell(method, state, climate, warmth, food)


def size() -> int:
    """Cells in the whole table."""
    return len(METHODS) * len(STATES) * len(CLIMATES) * len(WARMTHS) * len(foods())


def unanswered(program: Program, method: str, every: int = 1) -> Iterator[str]:
    """Cells where a program is more lenient than a limit, a refusal or an unknown may be; of all
    cells, or of one in so many.

    Food that can hurt and for which no rule speaks is not usable; what a limit covers has it.
    """
    for cell in islice(cells(method), METHODS.index(method) % every, None, every):
        for asked in ASKED:
            history = cell.history(asked)
            said = program(history, "A/1")
            why = said.usable and too_lenient(said, judge(history, "A/1"))
            if why:
                yield f"{cell}, after {asked} minutes: {why}"
