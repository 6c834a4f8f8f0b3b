"""The laws that hold for any judge, the program or ours: each takes a program and a history, and
answers with what breaks it, or nothing."""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import replace
from math import inf

from tests.judging.bound import Answer, Program, too_lenient
from tests.judging.evaluator import judge
from tests.judging.orders import with_above
from tests.judging.world import (
    DAY,
    CorrectedMade,
    Cut,
    Fact,
    Happening,
    History,
    LooksSound,
    Moved,
    Opened,
    PlaceOpened,
    PutUp,
    Reading,
    Redo,
    Thawed,
    Undo,
    day_of,
)

#: A freezer that was read no warmer freezes.
FROZEN_F = 28.0
#: Only these may make a verdict milder (house law 7.3).
MILDER = (CorrectedMade, Undo, Redo, LooksSound)


def _last(a: Answer) -> float:
    return inf if a.discard_after is None else a.discard_after


def order_law(program: Program, history: History, seed: int) -> str:
    """Booked in any other order, facts with the same moments give the same verdict."""
    again = rebooked(history, seed)
    if again is None or _tied(history):
        return ""
    for container in history.containers:
        one, other = program(as_told(history), container), program(again, container)
        if one != other and not one.word == other.word == "gone":
            return f"{container}: {one} became {other}, booked as\n{again}"
    return ""


def _tied(history: History) -> bool:
    """Whether a container was moved twice on one minute: which came first nobody can say."""
    moves = [
        (min(f.at, history.now), f.what.container)
        for f in history.facts
        if isinstance(f.what, Moved)
    ]
    return len(moves) != len(set(moves))


def as_told(history: History) -> History:
    """The same facts, each that has a moment with the hour of it, so that it can be rebooked."""
    return replace(history, facts=tuple(_told(f, history.now) for f in history.facts))


def _told(f: Fact, now: int) -> Fact:
    """A moment after now counts as now (house law 7.1), also where the clock of the booking was
    ahead: another booking of the same fact cannot bring the wrong clock with it."""
    if f.late:
        return f
    at = min(f.at, now)
    return replace(f, day=at // DAY, minute=at % DAY)


def rebooked(history: History, seed: int) -> History | None:
    """The facts in another order of booking, all booked after they happened.

    None where there is nothing to shuffle. What rests on an order of its own (places first, then
    the put-up, then what was done; undo, redo and corrections last) keeps it.
    """
    told = as_told(history)
    facts = [f for f in told.facts if not isinstance(f.what, MILDER)]
    if len(facts) != len(told.facts) or any(f.late and f.day == day_of(told.now) for f in facts):
        return None
    first = [f for f in facts if isinstance(f.what, PlaceOpened)]
    then = [f for f in facts if isinstance(f.what, PutUp)]
    rest = [f for f in facts if not isinstance(f.what, PlaceOpened | PutUp)]
    random.Random(seed).shuffle(rest)
    stamp = told.now - len(facts)
    ahead = any(not f.late and f.at > stamp for f in (*then, *rest))
    if ahead or day_of(stamp) != day_of(told.now):
        return None
    order = [*first, *then, *rest]
    return replace(told, facts=tuple(replace(f, booked=stamp + i) for i, f in enumerate(order)))


def never_later(program: Program, history: History) -> str:
    """Told as it happens, moment after moment, no fact moves a last day later.

    Not so a fact booked late for an earlier moment: `moved out before it grew warm`, told
    afterwards, has to give what it gives told in time, and that is the milder date. The order law
    and this one cannot both hold for those, and the order law is the one that is printed bold.
    Nor a cut that is told before it is over: no command takes it, and it lasts until the now that
    asks.
    """
    told = [
        f
        for f in as_told(history).facts
        if not f.late
        and not isinstance(f.what, MILDER)
        and not (isinstance(f.what, Cut) and f.what.end > f.at)
    ]
    facts = sorted(told, key=_sorting)
    for n, fact in enumerate(facts):
        if isinstance(fact.what, PlaceOpened | PutUp) or fact.at > history.now:
            continue
        if any(f.at == fact.at for f in facts[:n]):
            continue  # which of the two came first nobody can say
        before = History(tuple(facts[:n]), max(fact.at, 0))
        after = History(tuple(facts[: n + 1]), max(fact.at, 0))
        for container in before.containers:
            a, b = program(before, container), program(after, container)
            if b.word == "gone":
                continue  # eaten or thrown away, it has no last day any more
            if _last(b) > _last(a):
                return f"{container}: {fact.what} moved {a} to {b}, after\n{before}"
    return ""


def _sorting(f: Fact) -> int:
    return 0 if isinstance(f.what, PlaceOpened) else f.at


def splitting(program: Program, history: History, seed: int) -> str:
    """A move to where it stands, and to a twin of that place, changes nothing."""
    for container in history.containers:
        asked = program(as_told(history), container)
        for name, split in _splits(as_told(history), container, seed):
            got = program(split, container)
            if got != asked:
                return f"{container}: {asked} became {got} by {name}\n{split}"
    return ""


def _splits(history: History, container: str, seed: int) -> Iterator[tuple[str, History]]:
    batch = history.batch_of(container)
    assert batch is not None
    if any(isinstance(f.what, MILDER) or f.late for f in history.facts) or _tied(history):
        return
    moves = [
        f for f in history.facts if isinstance(f.what, Moved) and f.what.container == container
    ]
    assert isinstance(batch.what, PutUp)
    if any(f.at <= batch.at for f in moves):
        return
    steps = [(batch.at, batch.what.place)]
    steps += sorted((max(f.at, batch.at), f.what.place) for f in moves)  # type: ignore[union-attr]
    at = random.Random(seed).randrange(batch.at, max(batch.at + 1, history.now))
    here = [place for t, place in steps if t <= at][-1]
    if any(t == at for t, _ in steps):
        return
    yield "staying there", _with(history, at, Moved(container, here))
    if any(isinstance(f.what, Cut) for f in history.facts):
        # lax: what stood in a fridge for all of a cut is judged more strictly than what came in
        return
    around = with_above(history.facts, {here})
    mine = [f.what for f in history.facts if getattr(f.what, "place", None) in around]
    froze = any(getattr(w, "climate", None) == "freezer" for w in mine)
    if froze and any(isinstance(w, Reading) and w.temp_f > FROZEN_F for w in mine):
        # lax: of two freezers that were read too warm one may have frozen again, the other not
        return
    twin = f"{here} twin"
    until = min((t for t, _ in steps if t > at), default=history.now + 1)
    copies = tuple(
        replace(f, id=f"{f.id}t", what=replace(f.what, place=twin))  # type: ignore[arg-type]
        for f in history.facts
        if getattr(f.what, "place", None) == here and not isinstance(f.what, Moved | PutUp)
    )
    gone = _with(history, at, Moved(container, twin), copies)
    if until <= history.now:
        yield "a twin place", gone
    else:
        yield "a twin place, for good", gone


def _with(history: History, at: int, what: Happening, more: tuple[Fact, ...] = ()) -> History:
    """One fact more, booked last, of that moment."""
    new = Fact("new", at // DAY, at % DAY, history.now - 1, what)
    # a twin is opened after what it stands in, and before anything happens
    every = (*history.facts, *more)
    opened = [f for f in every if isinstance(f.what, PlaceOpened)]
    others = [f for f in every if not isinstance(f.what, PlaceOpened)]
    return replace(history, facts=(*opened, *others, new))


def never_longer(program: Program, history: History, seed: int) -> str:
    """Opening or thawing, at any moment of its life, never lengthens it."""
    r = random.Random(seed)
    told = as_told(history)
    for container in history.containers:
        batch = history.batch_of(container)
        assert batch is not None
        assert isinstance(batch.what, PutUp)
        at = r.randrange(batch.at, max(batch.at + 1, history.now))
        if batch.what.food.name == "eggs":
            continue  # out of its shell an egg may be frozen, in it never
        asked = program(told, container)
        acts: list[Happening] = [Thawed(container, how) for how in ("fridge", "cold water", "done")]
        # a vacuum pack of fish is opened before it thaws: there, opening it is the safe thing
        for act in acts if batch.what.vacuum else [*acts, Opened(container)]:
            told_so = _with(told, at, act)
            got = program(told_so, container)
            if _last(got) <= _last(asked):
                continue
            # The word that a thaw began gives the published days (7.5), also to a program that
            # counts what it was not told of as thawed on the day: stricter than any paper asks.
            # The word when it was opened, too, where a draw told of none: the program takes it as
            # opened at once. Neither may be eaten by then, whatever day stands beside it.
            gone = not got.usable and not asked.usable
            if (act == acts[0] or gone) and not too_lenient(got, judge(told_so, container)):
                continue
            return f"{container}: {act} moved {asked} to {got}\n{told_so}"
    return ""
