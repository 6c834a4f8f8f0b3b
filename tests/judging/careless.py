"""Programs that are wrong in known ways: the searches must find every one of them.

Each is the judge itself, asked about a history that it sees wrongly, as a program with that fault
would. The faults are those that were once found in one.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from tests.judging.bound import Answer, Program
from tests.judging.evaluator import judge
from tests.judging.histories import random_count, random_descent
from tests.judging.world import (
    DAY,
    Counted,
    Cut,
    Drawn,
    Fact,
    History,
    Left,
    Moved,
    Opened,
    PlaceChanged,
    PlaceOpened,
    PutUp,
    Reading,
    Redo,
    SignSeen,
    Thawed,
    Undo,
)

Sight = Callable[[History], History]


def answer_of(history: History, container: str) -> Answer:
    """The judge's own ruling, as a program would say it."""
    r = judge(history, container)
    return Answer("sound" if r.usable else "discard", r.discard_after, r.usable)


def seeing(sight: Sight) -> Program:
    """A program that sees a history so."""
    return lambda history, container: answer_of(sight(history), container)


def without(*kinds: type) -> Sight:
    """Deaf to facts of these kinds."""
    return lambda h: replace(h, facts=tuple(f for f in h.facts if not isinstance(f.what, kinds)))


def each(change: Callable[[Fact], Fact]) -> Sight:
    """Every fact seen wrongly."""
    return lambda h: replace(h, facts=tuple(change(f) for f in h.facts))


def _known(f: Fact) -> Fact:
    """A late booking taken as the end of its day."""
    return replace(f, minute=DAY - 1) if f.late else f


def _booked(f: Fact) -> Fact:
    """Everything happened when it was booked."""
    if isinstance(f.what, PutUp):
        return f
    return replace(f, day=f.booked // DAY, minute=f.booked % DAY)


def _days(f: Fact) -> Fact:
    """Whole days: everything at noon."""
    return replace(f, minute=12 * 60)


def _no_pack(f: Fact) -> Fact:
    return replace(f, what=replace(f.what, vacuum=False)) if isinstance(f.what, PutUp) else f


def _no_doubt(f: Fact) -> Fact:
    return replace(f, what=replace(f.what, doubt=False)) if isinstance(f.what, PutUp) else f


def _moment_only(f: Fact) -> Fact:
    return replace(f, what=replace(f.what, since=0)) if isinstance(f.what, Reading) else f


def _cuts_alone(h: History) -> History:
    """Each cut by itself: what adjoins is lost, so the shorter of neighbours is not seen."""
    cuts = [f for f in h.facts if isinstance(f.what, Cut)]
    lost = {f.id for f in cuts if len(cuts) > 1 and f is not cuts[0]}
    return replace(h, facts=tuple(f for f in h.facts if f.id not in lost))


def _no_nest(f: Fact) -> Fact:
    """What stands in another place taken for a place by itself, a refrigerator where nobody said
    what it is."""
    if not isinstance(f.what, PlaceOpened):
        return f
    return replace(f, what=replace(f.what, parent=None, climate=f.what.climate or "fridge"))


def _no_parts(f: Fact) -> Fact:
    """What was made of others taken for food that was bought that day."""
    return replace(f, what=replace(f.what, parts=())) if isinstance(f.what, PutUp) else f


def _new_when_counted(h: History) -> History:
    """A count as a putting up, on its day."""
    day = max((f.day for f in h.facts if isinstance(f.what, Counted)), default=0)
    return replace(
        h,
        facts=tuple(
            replace(f, day=max(f.day, min(day, h.now // DAY))) if isinstance(f.what, PutUp) else f
            for f in h.facts
            if not isinstance(f.what, Left)
        ),
    )


def _last_place(h: History) -> History:
    """Only where a container stands now counts: its earlier moves are forgotten."""
    last = {f.what.container: f.id for f in h.facts if isinstance(f.what, Moved)}
    facts = [f for f in h.facts if not isinstance(f.what, Moved) or last[f.what.container] == f.id]
    where = {f.what.container: f.what.place for f in facts if isinstance(f.what, Moved)}
    return replace(
        h,
        facts=tuple(
            replace(f, what=replace(f.what, place=where.get(f.what.containers[0], f.what.place)))
            if isinstance(f.what, PutUp)
            else f
            for f in facts
            if not isinstance(f.what, Moved)
        ),
    )


CARELESS: dict[str, Sight] = {
    "deaf to readings": without(Reading),
    "deaf to cuts": without(Cut),
    "deaf to openings": without(Opened),
    "deaf to thawing in water": without(Thawed),
    "deaf to signs": without(SignSeen),
    "deaf to moves": without(Moved),
    "deaf to changed places": without(PlaceChanged),
    "deaf to redo": without(Redo),
    "undo leaves what it took back": without(Undo),
    "half used stays sealed": without(Drawn),
    "late bookings at the day's end": each(_known),
    "everything when it was booked": each(_booked),
    "whole days": each(_days),
    "blind to vacuum packs": each(_no_pack),
    "blind to doubt": each(_no_doubt),
    "a warm reading is only a moment": each(_moment_only),
    "one cut only": _cuts_alone,
    "only the last place counts": _last_place,
    "places stand in no other": each(_no_nest),
}
#: The same, of what is made of others and of what a count finds, with the histories to look in.
CARELESS_OF_KIN: dict[str, tuple[Callable[[int], History], Sight]] = {
    "blind to parts": (random_descent, each(_no_parts)),
    "what a count finds had never left nor was opened": (random_count, without(Opened, Left)),
    "what a count finds is new": (random_count, _new_when_counted),
}
