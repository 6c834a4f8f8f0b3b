"""What a place held from which moment on, from all that was said of it.

A change says only what it changed, so what it makes of a place rests on what came before. Where
the hour of a change is unknown, or two fall on one minute, each may have come first: everything
that any order makes is given, and whoever judges takes the worst.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from pantry_tui.core.log.payloads import PlaceChanged
from pantry_tui.core.model import EVER, Held, When
from pantry_tui.core.words import ASSUMED_F, Climate

Change = tuple[When, PlaceChanged]


class Kept(NamedTuple):
    """A climate, and the target °F where one was given."""

    climate: Climate
    target_f: float | None

    def held(self, when: When) -> Held:
        """The same as a fact of the place."""
        if self.target_f is None:
            return Held(when, self.climate, ASSUMED_F[self.climate], told=False)
        return Held(when, self.climate, self.target_f)


def climates(first: Kept, added: When, changes: Sequence[Change]) -> tuple[Kept, list[Held]]:
    """What a place holds now, and all that it may have held.

    A change that is dated before the place was added (a clock was wrong) counts as then too, beside
    what was said of it when it was added.
    """
    told = [one for one in changes if _speaks(one[1])]
    before = sorted((one for one in told if one[0].first < added.first), key=_order)
    early = bool(before)
    told = sorted(((max(then, added) if early else then, one) for then, one in told), key=_order)
    facts = [first.held(EVER)]
    # Nobody knows whose clock was wrong, so from its own day on each of the two may have held.
    for then, change in before:
        facts += [first.held(then), _changed(first, change).held(then)]
    if early:
        facts.append(first.held(added))
    now, last = first, {first}
    made = _possible(first, added if early else EVER, told)
    for (then, change), found in zip(told, made, strict=True):
        now = _changed(now, change)
        # What was so before goes on: a reading of it stands.
        if found != last:
            facts += [one.held(then) for one in sorted(found, key=str)]
        last = found
    return now, facts


def _speaks(change: PlaceChanged) -> bool:
    """A new name or capacity says nothing of its warmth."""
    return change.climate is not None or change.target_f is not None or change.forget_target


def _order(one: Change) -> tuple[object, ...]:
    """Of one and the same moment, so that the order of booking never counts."""
    then, change = one
    target = -1000.0 if change.target_f is None else change.target_f
    return then.first, then.last, change.climate is None, str(change.climate), target


def _changed(before: Kept, change: PlaceChanged) -> Kept:
    target = before.target_f if change.target_f is None else change.target_f
    return Kept(change.climate or before.climate, None if change.forget_target else target)


def _possible(first: Kept, since: When, told: Sequence[Change]) -> list[set[Kept]]:
    """What each change may have made of the place, over all orders that the moments allow."""
    moments = [since, *(then for then, _ in told)]
    before = [_before(index, moments) for index in range(1, len(moments))]
    made: list[set[Kept]] = [{first}, *(set() for _ in told)]
    grown = True
    while grown:
        grown = False
        for index, (_, change) in enumerate(told, start=1):
            found = {_changed(one, change) for i in before[index - 1] for one in made[i]}
            if not found <= made[index]:
                made[index] |= found
                grown = True
    return made[1:]


def _before(index: int, moments: Sequence[When]) -> list[int]:
    """Which of them may have been the last one before this; to change it twice changes no more, so
    it may count as its own."""
    mine = moments[index]
    earlier = [i for i, one in enumerate(moments) if one.first <= mine.last]
    latest = max((moments[i].first for i in earlier if moments[i].last < mine.first), default=0)
    return [i for i in earlier if moments[i].last >= latest]
