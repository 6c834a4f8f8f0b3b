"""Where a container may have been, in which state and how warm, from which minute to which.

From what happened to it (`Container.turns`) and what is known of its places (core.keeping.weather)
to one list of spans. Where the hour of something is unknown, or two things fall on one minute,
every order that the facts allow is followed, and the spans of all of them are given: whoever
judges takes the worst. So the order of booking never counts, and neither does staying where it
is. Spans of no length are spans.

What a person thaws in a refrigerator takes a day for each 5 lb begun, at least one (USDA FSIS, the
big thaw; Oklahoma State University Extension): day 0 of the thawed food is the day after that, or
the day on which a person says that it is thawed, if earlier. What left the cold without a word
counts as thawed on that day.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise
from typing import NamedTuple

from pantry_tui.core.keeping.thawing import thaw_days
from pantry_tui.core.keeping.weather import (
    COLD_F,
    FOREVER,
    THAWS_F,
    Weather,
    no_later,
    weather,
)
from pantry_tui.core.model import EVER, Batch, Container, Held, Place, Read, Turn, When
from pantry_tui.core.vessels import is_closed
from pantry_tui.core.words import ASSUMED_F, Climate, Method, State

#: Ways to thaw that are no refrigerator: parts of the food may have been warm.
FAST = frozenset({"cold water", "microwave"})
#: More acts than this within one unknown hour are not put into every order; see `_product`.
_MOST = 6


#: Before anything that anybody booked, and after `EVER`.
_SOON_AFTER = When(1, 1, date.min)


class Span(NamedTuple):
    """From the minute `start` to `end` the container may have been so.

    `day` is the earliest local day on which the span may have begun. `thawed` is day 0 of the
    thawed food (it lies ahead while it thaws), None where it was not frozen before or is frozen
    still. `fast`: thawed in cold water or a microwave oven; `told`: a person said that it thaws.
    `relieved`: it was frozen until then, so what counts from the day it was made does not go on.
    """

    start: int
    end: int
    day: date
    place: str
    climate: Climate
    temperature_f: float
    measured: bool
    in_progress: bool
    opened: bool
    thawed: date | None
    fast: bool
    told: bool
    relieved: bool
    steady: bool

    @property
    def frozen(self) -> bool:
        """Whether the place keeps food frozen."""
        return self.climate is Climate.FREEZER and self.temperature_f <= THAWS_F

    @property
    def taken_f(self) -> float:
        """The °F it is reckoned with: a refrigerator is no colder than most unless it was set so
        and read so."""
        if self.climate is Climate.FRIDGE and not (self.measured and self.steady):
            return max(self.temperature_f, ASSUMED_F[Climate.FRIDGE])
        return self.temperature_f


class _Shape(NamedTuple):
    """How a container is, apart from the warmth of its place."""

    place: str
    in_progress: bool
    opened: bool
    came_frozen: bool
    frozen: bool
    thawed: date | None
    fast: bool
    told: bool
    relieved: bool


class _Since(NamedTuple):
    """A shape and the earliest moment from which it may have been so."""

    shape: _Shape
    start: int
    day: date


def imagined(climate: Climate, temperature_f: float | None = None, measured: bool = False) -> Place:
    """A place that is only thought of; its id is "?"."""
    warm = ASSUMED_F[climate] if temperature_f is None else temperature_f
    facts: tuple[Held | Read, ...] = (Held(EVER, climate, warm),)
    if measured:
        facts = (Held(EVER, climate, warm), Read(_SOON_AFTER, warm))
    return Place("?", "?", climate, target_f=warm, facts=facts)


def as_if(container: Container, turn: Turn) -> Container:
    """The container if that had happened to it too, last of all."""
    return replace(
        container,
        turns=(*container.turns, turn),
        place=container.place if turn.place is None else turn.place,
        state=container.state if turn.state is None else turn.state,
    )


def drawn_from(batch: Batch, container: Container) -> bool:
    """Whether a part of a closed vessel was taken out."""
    left, first = container.left, container.first
    begun = left is not None and first is not None and left.number < first.number
    return begun and is_closed(batch.method, batch.size)


def exposures(
    batch: Batch, container: Container, places: Mapping[str, Place], now: When
) -> tuple[Span, ...]:
    """All spans that the facts allow, oldest first."""
    first, *later = _no_earlier(container.turns, now)
    opened = first.state is State.OPEN
    if drawn_from(batch, container) and all(turn.state is not State.OPEN for turn in later):
        opened = True  # nobody said when, so it may have been at once
    shape = _Shape(
        first.place or "",
        first.state is State.IN_PROGRESS,
        opened,
        _came_frozen(batch, first, places, now),
        False,
        first.when.day if first.state is State.THAWED else None,
        False,
        first.state is State.THAWED,
        first.state is State.THAWED,
    )
    walk = _Walk(batch, container, places, now)
    if not later:
        return tuple(walk.spans_of(_Since(shape, first.when.first, first.when.day), FOREVER)[0])
    return walk.all(_Since(shape, first.when.first, first.when.day), later)


def _came_frozen(batch: Batch, first: Turn, places: Mapping[str, Place], now: When) -> bool:
    """What is kept frozen was put into a freezer frozen, also into one that is too warm."""
    if batch.method is not Method.FROZEN or first.state is State.THAWED:
        return False
    return any(
        one.climate is Climate.FREEZER
        and one.start <= first.when.last
        and one.end >= first.when.first
        for one in weather(first.place or "", places, now)
    )


def _no_earlier(turns: Sequence[Turn], now: When) -> list[Turn]:
    """Its turns, none before it was put up and none after now."""
    first = turns[0]._replace(when=no_later(turns[0].when, now))
    start = first.when
    found = [first]
    for turn in turns[1:]:
        when = no_later(turn.when, now)
        if when.first < start.first:
            last = max(when.last, start.first)
            when = When(start.first, last, max(when.day, start.day), start.zone)
        found.append(turn._replace(when=when))
    if len(found) > 2:
        found[1:] = sorted(found[1:], key=lambda one: (one.when.first, one.when.last))
    return found


class _Walk:
    """Follows a container through its turns, in every order that the facts allow."""

    def __init__(
        self, batch: Batch, container: Container, places: Mapping[str, Place], now: When
    ) -> None:
        self.batch, self.container, self.places, self.now = batch, container, places, now

    def all(self, first: _Since, later: Sequence[Turn]) -> tuple[Span, ...]:
        found: dict[Span, None] = {}
        ways = [first]
        for group in _together(later):
            ways = self._group(ways, group, found)
        for way in ways:
            found |= dict.fromkeys(self.spans_of(way, FOREVER)[0])
        return tuple(sorted(found, key=_order))

    def _group(
        self, ways: Sequence[_Since], group: Sequence[Turn], found: dict[Span, None]
    ) -> list[_Since]:
        """All ways through turns that may have come in several orders; each way's end."""
        if len(group) > _MOST:
            return self._product(ways, group, found)
        todo = {(way.shape, 0): way for way in ways}
        whole = (1 << len(group)) - 1
        ends: dict[_Shape, _Since] = {}
        while todo:
            (shape, done), way = todo.popitem()
            if done == whole:
                ends[shape] = _earlier(ends.get(shape), way)
                continue
            open_ = [turn for i, turn in enumerate(group) if not done >> i & 1]
            soonest = min(turn.when.last for turn in open_)
            spans, became = self.spans_of(way, soonest)
            found |= dict.fromkeys(spans)
            for index, turn in enumerate(group):
                if done >> index & 1 or turn.when.first > soonest:
                    continue  # done, or another surely came before it
                after = self._turned(way, became, turn)
                key = after.shape, done | 1 << index
                todo[key] = _earlier(todo.get(key), after)
        return list(ends.values())

    def _product(
        self, ways: Sequence[_Since], group: Sequence[Turn], found: dict[Span, None]
    ) -> list[_Since]:
        """Too many orders to follow: everything that any of them could lead to."""
        shapes = {way.shape: way for way in ways}
        last = max(turn.when.last for turn in group)
        for _ in range(len(group)):
            for way in list(shapes.values()):
                spans, shape = self.spans_of(way, last)
                found |= dict.fromkeys(spans)
                for turn in group:
                    after = self._turned(way, shape, turn)
                    shapes[after.shape] = _earlier(shapes.get(after.shape), after)
            if len(shapes) > 200:
                break
        return list(shapes.values())

    def _turned(self, way: _Since, old: _Shape, turn: Turn) -> _Since:
        """What a turn makes of what a way has become; one that changes nothing changes nothing."""
        day = turn.when.day
        shape = old._replace(
            place=old.place if turn.place is None else turn.place,
            in_progress=old.in_progress and turn.state is not State.SEALED,
            opened=old.opened or turn.state is State.OPEN,
        )
        if turn.state is State.THAWED:
            thawed, fast = self._thaw(old, turn, day)
            relieved = old.relieved or old.frozen
            shape = shape._replace(
                frozen=False, thawed=thawed, fast=fast, told=True, relieved=relieved
            )
        if shape == old:
            return way
        return _Since(shape, max(way.start, turn.when.first), max(way.day, day))

    def _thaw(self, old: _Shape, turn: Turn, day: date) -> tuple[date, bool]:
        """Day 0 of what is thawed, and whether it was thawed fast: a second word for it says that
        it is thawed by now."""
        fast = old.fast or turn.how in FAST
        if old.thawed is not None or turn.how in (*FAST, "done"):
            return min(old.thawed or day, day), fast
        return day + self._days(old.opened), fast

    def _days(self, opened: bool) -> timedelta:
        """How long it thaws; what was begun before may have lost weight before."""
        left, amount = self.container.left, self.container.first
        if opened and left is not None and amount is not None:
            amount = min(amount, left, key=lambda one: one.number)
        return timedelta(days=thaw_days(self.batch, amount))

    def spans_of(self, way: _Since, end: int) -> tuple[list[Span], _Shape]:
        """A shape over the weather of its place until `end`, and the shape it leaves behind:
        frozen there, or thawed there."""
        shape, start = way.shape, way.start
        frozen, thawed, relieved = shape.frozen, shape.thawed, shape.relieved
        found: list[Span] = []
        for one in weather(shape.place, self.places, self.now):
            if one.start > end:
                break
            if one.end < start:
                continue  # what changed on the minute on which it came, or left, still met it
            begins, ends = max(one.start, start), min(one.end, end)
            day = max(one.day, way.day) if one.start > start else way.day
            cold = one.climate is Climate.FREEZER and one.temperature_f <= THAWS_F
            if cold and thawed is None:
                frozen = True
            elif (frozen or shape.came_frozen) and thawed is None and ends > begins:
                thawed, frozen, relieved = day, False, relieved or frozen
            if thawed is not None and thawed > day and ends > begins and not _chilled(one):
                thawed = day  # out of the cold it does not take days
            found.append(
                Span(
                    begins,
                    ends,
                    day,
                    shape.place,
                    one.climate,
                    one.temperature_f,
                    one.measured,
                    shape.in_progress,
                    shape.opened,
                    thawed,
                    shape.fast,
                    shape.told,
                    relieved,
                    one.steady,
                )
            )
            if begins == start and len(found) > 1 and _unfrozen(shape) and relieved:
                # It may have held this all along, and what came unfrozen never froze.
                found.append(found[-1]._replace(thawed=None, relieved=False))
        return found, shape._replace(frozen=frozen, thawed=thawed, relieved=relieved)


def _unfrozen(shape: _Shape) -> bool:
    return not (shape.frozen or shape.came_frozen or shape.thawed or shape.relieved)


def _chilled(one: Weather) -> bool:
    """Whether food thaws there as it is published: a freezer that fails is no refrigerator."""
    if one.climate is Climate.FREEZER:
        return one.temperature_f <= THAWS_F
    return one.climate is Climate.FRIDGE and one.temperature_f <= COLD_F


def _earlier(one: _Since | None, other: _Since) -> _Since:
    if one is None:
        return other
    return _Since(one.shape, min(one.start, other.start), min(one.day, other.day))


def _order(span: Span) -> tuple[object, ...]:
    return *span[:9], span.thawed or date.max, *span[10:]


def _together(later: Sequence[Turn]) -> Iterator[list[Turn]]:
    """Turns that may have come in several orders, group by group; most groups are of one."""
    group: list[Turn] = [later[0]]
    reach = later[0].when.last
    for _, turn in pairwise(later):
        if turn.when.first > reach:
            yield group
            group = []
        group.append(turn)
        reach = max(reach, turn.when.last)
    yield group
