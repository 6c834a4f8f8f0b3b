"""What "never more lenient" means, said once, and smaller histories that show the same fault."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date

from tests.judging.evaluator import judge
from tests.judging.ruling import Ruling
from tests.judging.world import Fact, History, PlaceOpened, PutUp, Redo, Undo


@dataclass(frozen=True)
class Answer:
    """What a program says of a container: its verdict's word, its last day, fit to be offered.

    A put-up that was refused is answered with the word `refused`, no day, and not usable.
    """

    word: str
    discard_after: int | None
    usable: bool


Program = Callable[[History, str], Answer]


@dataclass(frozen=True)
class Fault:
    """Where a program was more lenient than the papers allow."""

    history: History
    container: str
    said: Answer
    bound: Ruling
    why: str

    def __str__(self) -> str:
        return (
            f"{self.history.note}, container {self.container}: {self.why}\n"
            f"  program: {self.said.word}, {_day(self.said.discard_after)}, "
            f"{'usable' if self.said.usable else 'not usable'}\n"
            f"  papers:  {_day(self.bound.discard_after)}, "
            f"{'usable' if self.bound.usable else 'not usable'} ({self.bound.reason})\n"
            f"{self.history}"
        )


def _day(day: int | None) -> str:
    return "no last day" if day is None else f"last day {date.fromordinal(day).isoformat()}"


def too_lenient(said: Answer, bound: Ruling) -> str:
    """Why this answer is more lenient than the bound; empty where it is not.

    An answer that is not usable is never too lenient, whatever date stands beside it.
    """
    if not said.usable:
        return ""
    if not bound.usable:
        return f"offered, though: {bound.reason}"
    if bound.discard_after is None:
        return ""
    if said.discard_after is None:
        return f"no last day, though: {bound.reason}"
    if said.discard_after > bound.discard_after:
        late = said.discard_after - bound.discard_after
        return f"{late} days longer than allowed: {bound.reason}"
    return ""


def faults(history: History, program: Program) -> list[Fault]:
    """Every container of a history of which the program is too lenient."""
    found = []
    for container in history.containers:
        bound = judge(history, container)
        said = program(history, container)
        why = too_lenient(said, bound)
        if why:
            found.append(Fault(history, container, said, bound, why))
    return found


def shrunk(fault: Fault, program: Program) -> Fault:
    """The same container's fault with as few facts as still show one."""
    best = fault
    smaller = True
    while smaller:
        smaller = False
        for fact in reversed(best.history.facts):
            if _needed(fact, best):
                continue
            try:
                again = [
                    f
                    for f in faults(_without(best.history, fact), program)
                    if f.container == fault.container
                ]
            except Exception:  # a history that the program cannot book shows nothing
                continue
            if again:
                best, smaller = again[0], True
                break
    return best


def _needed(fact: Fact, fault: Fault) -> bool:
    """The put-up itself, and a place that something else speaks of."""
    w = fact.what
    if isinstance(w, PlaceOpened):
        return any(
            w.place in (getattr(f.what, "place", None), getattr(f.what, "parent", None))
            for f in fault.history.facts
            if f != fact
        )
    if not isinstance(w, PutUp):
        return False
    made = [f.what for f in fault.history.facts if isinstance(f.what, PutUp)]
    return fault.container in w.containers or any(set(w.containers) & set(m.parts) for m in made)


def _without(history: History, gone: Fact) -> History:
    """Without a fact and what rests on it: its undo and redo, a batch's or a place's facts."""
    w = gone.what
    ids = {gone.id}
    if isinstance(w, PutUp):
        ids |= {
            f.id
            for f in history.facts
            if getattr(f.what, "container", None) in w.containers
            or getattr(f.what, "batch", None) == w.batch
        }
    while True:
        more = {
            f.id for f in history.facts if isinstance(f.what, Undo | Redo) and f.what.fact in ids
        }
        if more <= ids:
            break
        ids |= more
    return replace(history, facts=tuple(f for f in history.facts if f.id not in ids))
