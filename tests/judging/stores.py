"""The program with its store, held against its own judge and against ours.

Facts are booked in a random order. What the stock tables say has to be what the judge says of the
log, now and on later days, after an undo and a redo, and after a place was renamed; and none of it
is more lenient than the papers.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from tests.judging.bound import too_lenient
from tests.judging.clocks import truly
from tests.judging.evaluator import judge
from tests.judging.histories import random_history
from tests.judging.laws import rebooked
from tests.judging.stored import Stored
from tests.judging.world import DAY, History, Moved, PutUp, Redo, Undo, day_of

#: Asked when two hours have run out, on the next day, and when much is over.
AHEAD = (DAY, 31 * DAY)
#: Asked by a clock that is right again, while nothing was booked by it.
BEFORE_ITS_DAY = (1, 300, 2 * DAY, 20 * DAY)
LATER = (180, DAY, 9 * DAY, 400 * DAY)


def store_faults(seed: int, path: Path) -> Iterator[str]:
    """What the store that stands at `path` afterwards says otherwise than it should."""
    history = random_history(seed)
    # Every other one as it was booked: wrong clocks, places changed, undo and redo among them.
    history = (seed % 2 and rebooked(history, seed)) or history
    stored = Stored(path)
    tell(stored, history)
    yield from _otherwise(stored, history, "at first")
    yield from _lenient(stored, history)
    before = [stored.answer(c, history.now) for c in history.containers]
    if stored.undo_and_redo():
        yield from _otherwise(stored, history, "after undo and redo")
    stored.rename(_struck(history), "another name")
    yield from _otherwise(stored, history, "after a place was renamed")
    after = [stored.answer(c, history.now) for c in history.containers]
    if before != after:
        yield f"{history.note}: {before} became {after} by undo, redo and another name"
    # Last, since a store that was looked at on a later day has lived until then.
    for minutes in LATER:
        yield from _otherwise(stored, history, f"{minutes} minutes later", minutes)


def lenient(history: History, path: Path) -> Iterator[str]:
    """Where the due list of a store at `path` is more lenient than the papers of what it took."""
    stored = Stored(path)
    tell(stored, history)
    yield from _lenient(stored, history)


def ahead_of_the_truth(true: History, told: History, path: Path) -> Iterator[str]:
    """Where it is more lenient than what truly happened: before anything is booked by a clock that
    is right, then, and later, also once the day of the wrong clock has come."""
    stored = Stored(path, by_clock=True)
    both = list(zip(told.facts, true.facts, strict=True))
    wrong = [n for n, (f, was) in enumerate(both) if f.booked != was.booked]
    seen = wrong[-1] + 1 if wrong else 0
    tell(stored, replace(told, facts=told.facts[:seen]))
    for later in BEFORE_ITS_DAY if wrong else ():
        now = true.facts[seen - 1].booked + later
        if later == 1 or all(day_of(told.facts[n].booked) > day_of(now) for n in wrong):
            then = replace(truly(stored.told, true, noticed=False), now=now)
            yield from (f"{one}\nbooked as\n{told}" for one in _of(stored, then))
    tell(stored, replace(told, facts=told.facts[seen:]))
    for later in (0, *AHEAD):
        then = replace(truly(stored.told, true), now=true.now + later)
        yield from (f"{one}\nbooked as\n{told}" for one in _of(stored, then))


def _lenient(stored: Stored, history: History) -> Iterator[str]:
    return _of(stored, History(tuple(stored.told), history.now, history.note))


def _of(stored: Stored, told: History) -> Iterator[str]:
    for container in told.containers:
        said = stored.answer(container, told.now)
        why = too_lenient(said, judge(told, container))
        if why:
            yield f"{told.note}, {container}: {said}, {why}\n{told}"


def tell(stored: Stored, history: History) -> None:
    """Book all that it takes."""
    booked: set[str] = set()
    for fact in history.facts:
        w = fact.what
        if isinstance(w, Undo | Redo):
            act = stored.undo if isinstance(w, Undo) else stored.redo
            if w.fact in booked:
                act(w.fact, fact.booked)
        elif stored.book(fact):
            booked.add(fact.id)


def _otherwise(stored: Stored, history: History, when: str, later: int = 0) -> Iterator[str]:
    now = history.now + later
    for container in history.containers:
        tables, anew = stored.answer(container, now), stored.judged_anew(container, now)
        if tables != anew:
            yield (
                f"{history.note}, {container}, {when}: {tables} in the tables, {anew} anew\n"
                f"{history}"
            )


def _struck(history: History) -> str:
    """A place in which something stood."""
    stood = [f.what.place for f in history.facts if isinstance(f.what, Moved | PutUp)]
    return stood[-1]
