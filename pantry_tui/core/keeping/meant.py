"""What a place is meant to hold where nobody said so of itself: what it stands in is told to hold,
in the same climate.

Only what was said counts here; what was read of a place is weighed in core.keeping.weather.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence

from pantry_tui.core.model import Cut, Held, Place, Read, When
from pantry_tui.core.words import WARM_TO_COLD

#: The end of what has no end yet.
FOREVER = 1 << 40

Fact = Held | Read | Cut


def meant_f(chain: Sequence[Place]) -> float:
    """°F that the first of these places, from the inside out and of one climate, is meant to hold
    by now."""
    return next((one for one in chain if one.target_f is not None), chain[0]).target


def followed(facts: Sequence[Sequence[Fact]]) -> list[Sequence[Fact]]:
    """The facts of these places, from the inside out, each with what became of it with the place
    around it: a box in a refrigerator stands in a room when that is given up, until somebody says
    of the box itself what it is, or it is a refrigerator again."""
    found = [facts[-1]]
    for own in facts[-2::-1]:
        found.insert(0, _following(own, found[0]))
    return found


def _following(own: Sequence[Fact], outer: Sequence[Fact]) -> Sequence[Fact]:
    mine = sorted(one for one in own if isinstance(one, Held))
    around = sorted(one for one in outer if isinstance(one, Held))
    found: list[Held] = []
    for before, after in _changes(around):
        said = [one for one in mine if one.when.first <= after.when.last]
        if after.climate is before.climate or not said:
            continue
        here = max((said[-1], *(one for one in found if one.when.last < after.when.first)))
        if here.climate is not before.climate:
            continue
        if any(_at_once(one, after) and one.climate is here.climate for one in around):
            found.append(here._replace(when=after.when))  # nobody knows which came last
        if after.climate is said[-1].climate:
            found.append(said[-1]._replace(when=after.when))
        elif _is_warmer(after, before) or after.target_f > here.target_f:
            # That the place around it became cooler shows nothing.
            warmth = max(after.target_f, here.target_f)
            found.append(Held(after.when, after.climate, warmth, told=False))
    return tuple(sorted((*own, *found), key=_moment)) if found else own


def _changes(held: Sequence[Held]) -> Iterator[tuple[Held, Held]]:
    """What was, and what surely followed it; of what may have been in the same minute each."""
    for after in held:
        earlier = [one for one in held if one.when.last < after.when.first]
        yield from ((one, after) for one in earlier if _at_once(one, earlier[-1]))


def _at_once(one: Held, other: Held) -> bool:
    """Whether neither surely came before the other."""
    return one.when.first <= other.when.last and other.when.first <= one.when.last


def _is_warmer(after: Held, before: Held) -> bool:
    """Whether it became a place of a warmer kind, however warm it is set to be."""
    return WARM_TO_COLD.index(after.climate) < WARM_TO_COLD.index(before.climate)


def meant(facts: Sequence[Sequence[Fact]]) -> Sequence[Fact]:
    """The facts of the first of these places, from the inside out, with the targets that it takes
    of those it stands in; the same object where it takes none."""
    made = facts[-1]
    for own in facts[-2::-1]:
        made = _taken(own, made)
    return made


def ends(moments: Sequence[When]) -> list[int]:
    """The last minute at which each may still have held, in the order of their moments: when one
    that is surely later surely was. Of two on the same minute neither is surely later."""
    firsts = [one.first for one in moments]
    soonest = [FOREVER] * (len(moments) + 1)
    for index in range(len(moments) - 1, -1, -1):
        soonest[index] = min(soonest[index + 1], moments[index].last)
    return [soonest[bisect_right(firsts, one.last)] for one in moments]


def held_until(facts: Sequence[Fact]) -> list[tuple[Held, int]]:
    """What a place was meant to hold, each with the last minute at which that may have been."""
    held = sorted(one for one in facts if isinstance(one, Held))
    return list(zip(held, ends([one.when for one in held]), strict=True))


def _taken(own: Sequence[Fact], outer: Sequence[Fact]) -> Sequence[Fact]:
    mine, around = held_until(own), held_until(outer)
    if not any(_of(one, other) != one.target_f for one, _ in mine for other, _ in around):
        return own
    found: list[Fact] = [one for one in own if not isinstance(one, Held)]
    for one, end in mine:
        over = [it for it in around if it[0].when.first <= end and it[1] >= one.when.first]
        if not over:
            found.append(one)
        same = len({_of(one, other) for other, _ in over}) == 1
        for other, _ in over:
            then = other.when
            told = one.told or (other.told and other.climate is one.climate)
            taken = one._replace(target_f=_of(one, other), told=told)
            if same or then.first <= one.when.last:
                found.append(taken)
            since = _within(then, one.when, end)
            later = one.when.first < then.last and since.first < end
            if later and not same:
                found.append(taken._replace(when=since))
    return tuple(sorted(dict.fromkeys(found), key=_moment))


def _moment(one: Fact) -> tuple[int, int, bool]:
    then = one.start if isinstance(one, Cut) else one.when
    return then.first, then.last, not isinstance(one, Held)


def _of(one: Held, other: Held) -> float:
    follows = not one.told and other.told and other.climate is one.climate
    return other.target_f if follows else one.target_f


def _within(then: When, since: When, end: int) -> When:
    """That moment, as far as it lies between these two, before the second."""
    first = max(then.first, since.first)
    return When(first, max(first, min(then.last, end - 1)), max(then.day, since.day), then.zone)
