"""The only file that talks to the program: facts go in as it books them, its verdict comes out.

To connect it, write a class that fits `Household` and return `play(ThatClass)` from `program`.

What the program has to be told, and how:

- `book(fact)` books one fact on the program's clock at `fact.booked`. `fact.minute is None` is
  `--at DAY` alone; where that is the booking's own day, no `--at` at all (house law 7.1).
- A place that a container was moved to although the program refuses such a place is still a fact:
  book it as the program books what happened all the same. False is for what it cannot book at all.
- `Opened` and `Drawn` leave the container where it stands. Where the program moves what it opens
  to a fridge by itself, book the move back on the same moment.
- `Thawed("done")` is a person's word that it is thawed through; `fridge` begins a thaw.
- `PutUp.doubt` is a recorded process that is too short (for a pint at 0 ft, one minute).
- `Undo` and `Redo` name facts by the judge's ids: remember the program's id of each.
- `answer` asks on the minute `now`; where the program takes only a day, on the day of it.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol

from tests.judging.bound import Answer, Program
from tests.judging.careless import answer_of
from tests.judging.world import DAY, Fact, History, Redo, Undo


class Household(Protocol):
    """A fresh, empty household of the program."""

    def book(self, fact: Fact) -> bool:
        """Book it at `fact.booked`; False where the program refuses to."""

    def undo(self, fact_id: str, booked: int) -> bool:
        """Take back what `book` booked under this id."""

    def redo(self, fact_id: str, booked: int) -> bool:
        """Give it back."""

    def answer(self, container: str, now: int) -> Answer:
        """Its verdict of a container on that minute."""


REFUSED = Answer("refused", None, False)


def play(fresh: Callable[[], Household]) -> Program:
    """A program that is told a history, booking by booking, in the order of the bookings."""

    def verdict(history: History, container: str) -> Answer:
        household = fresh()
        booked: set[str] = set()
        for fact in history.facts:
            w = fact.what
            if isinstance(w, Undo | Redo):
                act = household.undo if isinstance(w, Undo) else household.redo
                if w.fact in booked:
                    act(w.fact, fact.booked)
            elif household.book(fact):
                booked.add(fact.id)
        batch = history.batch_of(container)
        if batch is None or batch.id not in booked:
            return REFUSED
        return household.answer(container, history.now)

    return verdict


class Mirror:
    """A household that knows no more than the judge: it shows that `play` tells everything."""

    def __init__(self) -> None:
        self.facts: list[Fact] = []

    def book(self, fact: Fact) -> bool:
        self.facts.append(fact)
        return True

    def undo(self, fact_id: str, booked: int) -> bool:
        return self._act(Undo(fact_id), booked)

    def redo(self, fact_id: str, booked: int) -> bool:
        return self._act(Redo(fact_id), booked)

    def _act(self, what: Undo | Redo, booked: int) -> bool:
        n = f"m{len(self.facts)}"
        return self.book(Fact(n, booked // DAY, None, booked, what))

    def answer(self, container: str, now: int) -> Answer:
        return answer_of(History(tuple(self.facts), now), container)


def program() -> Program | None:
    """The program under judgement: its folds and its judge, without a store."""
    from tests.judging.folded import Folded

    return play(Folded)
