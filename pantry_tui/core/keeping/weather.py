"""How warm a place may have been, from which minute to which.

From a place's facts (targets, readings) to its weather. What is not known is taken every way the
facts allow: a reading of unknown hour may have been taken at any minute of its day, so both what
it says and what was before stand for that day; of two facts of the same minute either may be the
later one, whichever was booked first. So the order of booking never counts.

A reading is a moment. What was cold counts from then on; what was too warm counts from `since`
minutes before, or, where nobody knows, from the last cold reading: a thermostat that was set shows
nothing. What was read in a refrigerator or freezer holds for the shelves in it, and what a place is
meant to hold for the shelves of which nobody said anything else (core.keeping.meant). A shelf that
was as the place around it is stays so when that becomes another.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date
from itertools import product
from typing import Generic, NamedTuple, TypeVar

from pantry_tui.core.keeping.meant import FOREVER as FOREVER
from pantry_tui.core.keeping.meant import Fact as Fact
from pantry_tui.core.keeping.meant import ends, followed, held_until, meant, meant_f
from pantry_tui.core.model import EVER, Cut, Held, Place, Read, When, no_later
from pantry_tui.core.words import ASSUMED_F, COLD_F, Climate

#: Above this a freezer no longer keeps food frozen: crops freeze at 28 to 31 °F (USDA Handbook 66),
#: meat at about 28 (from memory, as that poultry counts as fresh down to 26, 9 CFR 381.129(b)(6)).
#: Nothing is published that keeps meat without end above it.
THAWS_F = 28.0


class Weather(NamedTuple):
    """What a place may have held from the minute `start` to `end`; `day` is the earliest local day
    on which that may have begun. `measured`: read off, not only assumed; `steady`: also set so, a
    refrigerator that is kept colder than most."""

    start: int
    end: int
    day: date
    climate: Climate
    temperature_f: float
    measured: bool = False
    steady: bool = False


def too_warm(climate: Climate, temperature_f: float) -> bool:
    """Whether a refrigerator does not hold the cold, or a freezer does not freeze."""
    if climate is Climate.FREEZER:
        return temperature_f > THAWS_F
    return climate is Climate.FRIDGE and temperature_f > COLD_F


_NOWHERE = (Weather(EVER.first, FOREVER, date.min, Climate.ROOM, ASSUMED_F[Climate.ROOM]),)
T = TypeVar("T")


class OfFacts(Generic[T]):
    """What is worked out from the facts of a place and of what it stands in, kept as long as no
    fact of it is still to come: a place has hundreds of containers and the same facts for all."""

    _MOST = 2048

    def __init__(self, make: Callable[[Sequence[Sequence[Fact]], When], T]) -> None:
        self._make = make
        self._known: dict[tuple[int, ...], tuple[tuple[Sequence[Fact], ...], int, T]] = {}

    def of(self, chain: Sequence[Place], now: When) -> T:
        """What `make` gives for the facts of these places, the innermost first."""
        return self.of_facts(tuple(one.facts for one in chain), now)

    def of_facts(self, facts: tuple[Sequence[Fact], ...], now: When) -> T:
        key = tuple(map(id, facts))
        known = self._known.get(key)
        if known is not None and all(a is b for a, b in zip(known[0], facts, strict=True)):
            _, latest, made = known
            if latest <= now.last:  # to an earlier moment, some of them are still to come
                return made
        found = self._make(facts, now)
        latest = max((moment_of(fact).last for one in facts for fact in one), default=0)
        if latest <= now.last:
            if len(self._known) >= self._MOST:
                self._known.clear()
            # The facts are kept with it, so that no other takes their id.
            self._known[key] = facts, latest, found
        return found


def around(place: str, places: Mapping[str, Place]) -> list[Place]:
    """The place itself and those it stands in that have its climate, from the inside out."""
    found = above(place, places)
    return [one for one in found if one.climate is found[0].climate]


def above(place: str, places: Mapping[str, Place]) -> list[Place]:
    """The place itself and all that it stands in, from the inside out."""
    found: list[Place] = []
    here = places.get(place)
    while here is not None and here not in found:
        found.append(here)
        here = places.get(here.parent) if here.parent is not None else None
    return found


def warmth_f(place: str, places: Mapping[str, Place]) -> float:
    """°F of a place as it was last read off: where it has no reading of its own, what it stands in;
    else what it is meant to hold. A place that nobody knows counts as a pantry."""
    chain = around(place, places)
    if not chain:
        return ASSUMED_F[Climate.PANTRY]
    own = any(isinstance(fact, Read) for fact in chain[0].facts)
    if own and chain[0].reading is not None:
        return chain[0].reading.temp_f
    read = [] if own else [one.reading for one in chain[1:] if one.reading is not None]
    newest = max(read, key=lambda one: one.when.last, default=None)
    return meant_f(chain) if newest is None else newest.temp_f


def weather(place: str, places: Mapping[str, Place], now: When) -> tuple[Weather, ...]:
    """A place's weather, oldest first. A place that nobody knows counts as a room."""
    chain = above(place, places)
    if not chain or not chain[0].facts:
        return _NOWHERE
    return _OF_PLACE.of(chain, now)


def moment_of(fact: Fact) -> When:
    """The moment by which a fact of a place had happened."""
    return fact.end if isinstance(fact, Cut) else fact.when


def _weather(facts: Sequence[Sequence[Fact]], now: When) -> tuple[Weather, ...]:
    """`facts`: its own, and those of what it stands in, from the inside out."""
    own, *rest = followed(facts)
    outer = [fact for one in rest for fact in _read_alike(own, one)]
    found = _read_off(own, outer, now)
    found += [one for around in rest for one in _read_before(own, around, now)]
    taken = meant((own, *rest))
    if taken is not own:
        # What was read stands as it would: no target of another place makes it milder.
        found = [one for one in found if one.measured]
        found += [one for one in _read_off(taken, outer, now) if not one.measured]
    return tuple(_merged(found))


def _read_alike(own: Sequence[Fact], outer: Sequence[Fact]) -> Iterator[Read]:
    """What was read of the place around it while both may have had one climate."""
    mine, other = held_until(own), held_until(outer)
    for fact in outer:
        if isinstance(fact, Read) and _alike(mine, other, fact.when):
            yield fact


def _alike(mine: Sequence[tuple[Held, int]], other: Sequence[tuple[Held, int]], when: When) -> bool:
    then = (
        {one.climate for one, end in held if one.when.first <= when.last and end >= when.first}
        for held in (mine, other)
    )
    return bool(set.intersection(*then))


def _read_before(own: Sequence[Fact], outer: Sequence[Fact], now: When) -> Iterator[Weather]:
    """What was read too warm of the place around it since before the two parted ways, as long as
    they had one climate."""
    mine, other = held_until(own), held_until(outer)
    changes, climates = _changes(outer, now)
    for change in changes:
        fact = change.fact
        if isinstance(fact, Held) or _alike(mine, other, fact.when):
            continue
        since = _warm_since(change, fact, changes, climates)
        for (one, until), (around, end) in product(mine, other):
            start, day = max(since, *((each.when.first, each.when.day) for each in (one, around)))
            last = min(until, end)
            alike = one.climate is around.climate and start <= last < change.first
            if alike and too_warm(one.climate, fact.temp_f):
                yield Weather(start, last, day, one.climate, fact.temp_f, True)


def _read_off(own: Sequence[Fact], outer: Sequence[Read], now: When) -> list[Weather]:
    """Of its own facts, and what was read of the places that it stands in."""
    if not any(isinstance(fact, Read) for fact in own):
        return _possible([*own, *outer], now)
    found = _possible(own, now)
    if outer:
        told = _possible([own[0], *outer], now)
        found += [one for one in told if one.measured and too_warm(one.climate, one.temperature_f)]
    return found


_OF_PLACE = OfFacts(_weather)


class _Change(NamedTuple):
    """A fact with the minutes between which it began to hold."""

    first: int
    last: int
    when: When
    fact: Held | Read

    @property
    def day(self) -> date:
        return self.when.day


def _changes(facts: Sequence[Fact], now: When) -> tuple[list[_Change], list[tuple[_Change, int]]]:
    """The targets and readings by their moments, and of the targets until when each may hold."""
    changes = [
        _Change(moment.first, moment.last, moment, fact)
        for fact in facts
        if isinstance(fact, Held | Read) and (moment := no_later(fact.when, now))
    ]
    changes.sort(key=lambda one: (one.first, one.last))
    held = [one for one in changes if isinstance(one.fact, Held)]
    return changes, list(zip(held, _ends(held), strict=True))


def _possible(facts: Sequence[Fact], now: When) -> list[Weather]:
    """What each target and each reading says, for as long as it may have held."""
    changes, climates = _changes(facts, now)
    found: list[Weather] = []
    ended = list(zip(changes, _ends(changes), strict=True))
    for change, until_next in ended:
        fact, end = change.fact, until_next
        if isinstance(fact, Held):
            if too_warm(fact.climate, fact.target_f):
                # A place that is set too warm is not cold for having been read cold once.
                end = next(until for one, until in climates if one is change)
            found.append(Weather(change.first, end, change.day, fact.climate, fact.target_f))
            continue
        told = change.first - (fact.since or 0)
        for holding, until in climates:
            assert isinstance(holding.fact, Held)
            climate = holding.fact.climate
            if told <= until < change.first and too_warm(climate, fact.temp_f):
                # So warm it was before it was changed into a place that may be.
                found.append(
                    Weather(told, until, change.when.day_of(told), climate, fact.temp_f, True)
                )
            if holding.first <= change.last and until >= change.first:
                since, day, last = change.first, change.day, end
                if too_warm(climate, fact.temp_f):
                    since, day = _warm_since(change, fact, changes, climates)
                    last = _warm_until(change, climate, changes)
                steady = holding.fact.target_f < ASSUMED_F[Climate.FRIDGE]
                warm = Weather(since, last, day, climate, fact.temp_f, True, steady)
                # What was too warm since nobody knows when may have been cold before.
                found += [
                    warm._replace(start=one.first, day=max(day, one.day))
                    for one, until_then in ended
                    if since < one.first <= change.first <= until_then
                ]
                found.append(warm)
                if too_warm(climate, fact.temp_f):
                    found += _stays_warm(change, last, changes, climates)
                if climate is Climate.FREEZER and _freezes_again(fact, holding.fact):
                    target = holding.fact.target_f
                    found.append(Weather(change.first, end, change.day, climate, target))
    return found


def _freezes_again(fact: Read, held: Held) -> bool:
    """Whether a freezer that was read too warm may have frozen again after it, as it was set."""
    return too_warm(held.climate, fact.temp_f) and not too_warm(held.climate, held.target_f)


def _ends(changes: Sequence[_Change]) -> list[int]:
    """The last minute at which each may still have held."""
    return ends([one.when for one in changes])


def _warm_until(change: _Change, climate: Climate, changes: Sequence[_Change]) -> int:
    """The last minute at which a reading that is too warm may still have held: when another one
    surely was, or the place surely was of another climate. To set it colder shows nothing."""
    others = (
        one for one in changes if isinstance(one.fact, Read) or one.fact.climate is not climate
    )
    return min((one.last for one in others if one.first > change.last), default=FOREVER)


def _stays_warm(
    change: _Change, since: int, changes: Sequence[_Change], climates: Sequence[tuple[_Change, int]]
) -> list[Weather]:
    """What was read too warm, and `since` then has been set to be a cold place of another climate:
    that shows nothing either, so it is as warm until it is read again or is no cold place."""
    assert isinstance(change.fact, Read)
    warm = change.fact.temp_f
    ends = (
        one.last
        for one in changes
        if one.first > change.last and (isinstance(one.fact, Read) or not one.fact.climate.is_cold)
    )
    end = min(ends, default=FOREVER)
    return [
        Weather(one.first, min(until, end), one.day, one.fact.climate, warm, True)
        for one, until in climates
        if isinstance(one.fact, Held)
        and one.first > change.last
        and since <= one.last <= end
        and too_warm(one.fact.climate, warm)
    ]


def _warm_since(
    change: _Change,
    fact: Read,
    changes: Sequence[_Change],
    climates: Sequence[tuple[_Change, int]],
) -> tuple[int, date]:
    """When a reading that is too warm began to hold, and the earliest day of it."""
    if fact.since is not None:
        start = change.first - fact.since
        return start, change.when.day_of(start)
    for one in reversed(changes):
        if one.last < change.first and _read_cold(one, climates):
            return one.first, one.day
    return 0, date.min


def _read_cold(change: _Change, climates: Sequence[tuple[_Change, int]]) -> bool:
    """Whether it was read cold; that it was set to be cold shows nothing."""
    fact = change.fact
    return isinstance(fact, Read) and not any(
        isinstance(holding.fact, Held) and too_warm(holding.fact.climate, fact.temp_f)
        for holding, until in climates
        if holding.first <= change.last and until >= change.first
    )


def _cold_first(one: Weather) -> tuple[int, bool, Weather]:
    """By their beginning; of two at once, what may have been cold before it was warm."""
    return one.start, too_warm(one.climate, one.temperature_f), one


def _merged(found: list[Weather]) -> list[Weather]:
    """Neighbours that say the same are one, so that a reading that changes nothing changes
    nothing."""
    merged: list[Weather] = []
    for one in sorted(found, key=_cold_first):
        last = merged[-1] if merged else None
        if last is not None and one.start <= last.end and one[3:] == last[3:]:
            merged[-1] = last._replace(end=max(last.end, one.end))
        else:
            merged.append(one)
    return merged
