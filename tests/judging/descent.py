"""What was made of other containers is no fresher than they were.

House law, words: "it is never trusted longer than its parts allow". README: "where the food goes on
as it was its dates do too, where no published process begins with it (what was cooked, canned or in
oil) its last day runs on, and a sign, a power cut or a recall of one speaks for the other". So:

- What was not fit when it was taken makes nothing that is.
- The same food kept in the same way is its part still: out of its vessel, in the other's place, and
  with all that happened to the new one since (filling never lengthens, law 7.3).
- What was cooked, canned or in oil has its last day in any other way too, but for freezing: what is
  frozen in time stays safe (USDA FSIS, Freezing and Food Safety).
- The minutes above 40 F count on in the same food, frozen: the two hours are two hours in all.
- A dangerous sign of the batch of a part, found on a sealed one, speaks for it.

Where the papers leave freedom, each the laxer one:
- What may have happened after the taking did: facts of the same minute, or of that day at no hour.
- A warm reading that was read later and says not since when says nothing of before.
- Any other process (cooked, cured, dried, jam) is one that begins anew, also of the same food.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from tests.judging import hazards, papers
from tests.judging.ruling import Ruling
from tests.judging.world import (
    DAY,
    CorrectedMade,
    Cut,
    Fact,
    Happening,
    LooksSound,
    Moved,
    Opened,
    PlaceOpened,
    PutUp,
    Reading,
    SignSeen,
    day_of,
)

#: No published process begins with these; `frozen` is no process that ends a limit, but keeps.
DONE = papers.CANNED | {"cooked meal", "in oil"}

#: lax: what still works is not fit as it is, and may be made into something else.
WORKING = "can hurt, and nothing is published: in progress"

Judge = Callable[[Sequence[Fact], str, int], Ruling]


def put_up_of(facts: Sequence[Fact], container: str) -> Fact | None:
    """The put-up that made it."""
    return next(
        (f for f in facts if isinstance(f.what, PutUp) and container in f.what.containers), None
    )


def taken_at(batch: Fact, now: int) -> int:
    """When its parts were taken; lax: at the first minute of a day without an hour."""
    return min(batch.day * DAY if batch.late else batch.at, now)


def of_parts(facts: Sequence[Fact], batch: Fact, container: str, now: int, judge: Judge) -> Ruling:
    """What its parts allow it."""
    p, allowed = batch.what, Ruling(None, True, "nothing speaks against it")
    assert isinstance(p, PutUp)
    taken = taken_at(batch, now)
    then = list(_by_then(facts, taken))
    for part in p.parts:
        found = put_up_of(then, part)
        if found is not None:
            for r in _of_part(facts, then, (batch, container), (found, part), (taken, now), judge):
                allowed = allowed.stricter(replace(r, reason=f"made of {part}: {r.reason}"))
    return allowed


def _of_part(
    facts: Sequence[Fact],
    then: Sequence[Fact],
    new: tuple[Fact, str],
    old: tuple[Fact, str],
    when: tuple[int, int],
    judge: Judge,
) -> Iterator[Ruling]:
    (batch, container), (of, part), (taken, now) = new, old, when
    p, q = batch.what, of.what
    assert isinstance(p, PutUp)
    assert isinstance(q, PutUp)
    sound = any(isinstance(f.what, LooksSound) and f.what.container == container for f in facts)
    r = judge(then, part, taken)
    lifted = r.reason == "used up" or r.reason.startswith(WORKING) or (sound and "sign" in r.reason)
    if not r.usable and not lifted:
        yield Ruling(None, False, r.reason)
    yield from _signs(facts, q, sound)
    if p.food.name != q.food.name:
        return
    if p.method == q.method:
        yield judge(list(_as_part(facts, batch, container, part, taken)), part, now)
    elif q.method in DONE and p.method != "frozen":
        out = [
            *then,
            _fact(f"out {part}", taken, Opened(part)),
            _fact(f"to {part}", taken, Moved(part, p.place)),
        ]
        yield Ruling(judge(out, part, taken).discard_after, True, "its last day runs on")


def _by_then(facts: Sequence[Fact], taken: int) -> Iterator[Fact]:
    """What had happened by then, whenever it was told."""
    for f in facts:
        w = f.what
        if isinstance(w, CorrectedMade):
            yield f
        elif isinstance(w, Cut):
            if w.start is not None and w.start < taken:
                yield replace(f, what=replace(w, end=min(w.end, taken)))
        elif f.late:
            if f.day < day_of(taken):
                yield f
        elif f.at < taken or (f.at == taken and isinstance(w, PlaceOpened | PutUp)):
            yield f
        elif isinstance(w, Reading) and w.since is not None and f.at - w.since < taken:
            yield _fact(f.id, taken, replace(w, since=w.since - (f.at - taken)))


def _as_part(
    facts: Sequence[Fact], batch: Fact, container: str, part: str, taken: int
) -> Iterator[Fact]:
    """The part as if it had never left: its own life until then, out of its vessel, and from then
    on that of what was made of it."""
    p = batch.what
    assert isinstance(p, PutUp)
    for f in facts:
        own = getattr(f.what, "container", None)
        if own == container:
            # nothing was done to it before it was made; lax: at an unknown hour, at the day's end
            at = max(f.day * DAY + DAY - 1 if f.late else f.at, taken)
            yield _fact(f.id, at, replace(f.what, container=part))  # type: ignore[arg-type]
        elif own != part or next(_by_then([f], taken), None) is not None:
            yield f
    yield _fact(f"out {part}", taken, Opened(part))
    yield _fact(f"to {part}", taken, Moved(part, p.place))


def _fact(id_: str, at: int, what: Happening) -> Fact:
    return Fact(id_, at // DAY, at % DAY, at, what)


def _signs(facts: Sequence[Fact], q: PutUp, sound: bool) -> Iterator[Ruling]:
    """lax: a look at the new one clears it, whenever it was."""
    for f in facts:
        w = f.what
        if not isinstance(w, SignSeen) or w.container not in q.containers or sound:
            continue
        before = [
            g for g in facts if getattr(g.what, "container", None) == w.container and g is not f
        ]
        verdict, suspect, _ = hazards.sign_says(q.method, q.food, True, w.sign)
        if verdict == "do not taste" and suspect and not before:
            yield Ruling(None, False, f"sign: {w.sign} on {w.container}")


def used_before(
    facts: Sequence[Fact], batch: Fact, now: int, minutes: Callable[[Sequence[Fact], str, int], int]
) -> int:
    """The minutes above 40 F with which the same food came into its freezer pack."""
    p = batch.what
    assert isinstance(p, PutUp)
    if p.method != "frozen" or not p.parts:
        return 0
    taken = taken_at(batch, now)
    then, found = list(_by_then(facts, taken)), [0]
    for part in p.parts:
        of = put_up_of(then, part)
        if of is not None and isinstance(of.what, PutUp) and of.what.food.name == p.food.name:
            found.append(minutes(then, part, taken))
    return max(found)
