"""A clock that ran ahead for a while: what truly happened, and how it was booked.

The judge is asked about what truly happened, for that is one of the things that the bookings allow,
and the strictest of those counts (house law 7.1; README: "what was booked by a clock that ran
ahead counts from the earliest moment it may have happened"). So nothing is guessed here: a program
that is told the wrong moments may never be more lenient than the true ones.

The wrong clock is set right before the last bookings, and only a booking under a lower hour shows
that it was wrong: what no such booking followed happened when it says. What was told
with another day than that of its booking was told rightly.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import replace

from tests.judging.histories import Teller
from tests.judging.world import (
    DAY,
    CorrectedMade,
    Cut,
    Fact,
    Happening,
    History,
    PlaceOpened,
    PutUp,
    day_of,
)


class _Prompt(Teller):
    """Draws one history by a person who books at once, or late with the right day."""

    def say(self, at: int, what: Happening) -> None:
        r, day, minute = self.r, at // DAY, at % DAY
        if r.random() < 0.85 or isinstance(what, CorrectedMade):
            self.facts.append((at, Fact("", day, r.choice((minute, None)), at, what)))
        else:
            done = at + r.choice((200, 1500, 4500))
            self.facts.append((done, Fact("", day, r.choice((minute, None)), done, what)))

    def take_back(self) -> None:
        """Nothing: an undo has a law of its own."""


def random_ahead(seed: int) -> tuple[History, History]:
    """What truly happened, and the same as a clock that ran ahead for a while had it booked."""
    true = _Prompt(seed).tell(seed)
    r = random.Random(f"clock {seed}")
    facts = [f for f in true.facts if not isinstance(f.what, PlaceOpened)]
    first = r.randrange(0, max(1, len(facts) - 1))
    wrong = facts[first : min(first + r.choice((1, 1, 2, 3)), len(facts) - 1)]
    ahead = r.choice((3 * 60, DAY, 3 * DAY, 30 * DAY, 300 * DAY))
    right = facts[facts.index(wrong[-1]) + 1].booked if wrong else 0
    wrong = [f for f in wrong if f.booked + ahead > right]
    told = tuple(_wrongly(f, ahead) if f in wrong else f for f in true.facts)
    return true, replace(true, facts=told)


def _wrongly(f: Fact, ahead: int) -> Fact:
    """As the wrong clock had it: its stamp, and what was said by looking at that clock."""
    if f.day != day_of(f.booked) or isinstance(f.what, CorrectedMade):
        return replace(f, booked=f.booked + ahead)
    minute = f.minute
    at = (f.day * DAY + (f.booked % DAY if minute is None else minute)) + ahead
    what = f.what
    if isinstance(what, Cut):
        start = None if what.start is None else what.start + ahead
        what = replace(what, start=start, end=what.end + ahead)
    said = None if minute is None else at % DAY
    return replace(f, day=day_of(at), minute=said, booked=f.booked + ahead, what=what)


def truly(told: Sequence[Fact], true: History, *, noticed: bool = True) -> History:
    """What was taken of the bookings, with the moments of what truly happened. Not `noticed`: they
    are asked about by a clock that is right, and nothing was booked by it."""
    by_id = {f.id: f for f in true.facts}
    facts = []
    for n, f in enumerate(told):
        was = by_id[f.id.partition(",")[0]]
        if noticed and not any(later.booked < f.booked for later in told[n + 1 :]):
            facts.append(f)
            continue
        what = was.what if was.id == f.id else f.what
        minute = None if isinstance(f.what, PutUp) and not f.what.parts else was.minute
        facts.append(replace(was, id=f.id, minute=minute, what=what))
    return replace(true, facts=tuple(facts))
