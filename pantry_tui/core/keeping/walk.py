"""A container's way through what happened to it, in every order that the facts allow."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from itertools import pairwise, product
from typing import NamedTuple

from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.thawing import thaw_days
from pantry_tui.core.keeping.weather import FOREVER, THAWS_F, Weather, weather
from pantry_tui.core.model import Batch, Container, Place, Turn, When
from pantry_tui.core.words import COLD_F, Climate, State

#: Ways to thaw that are no refrigerator: parts of the food may have been warm.
FAST = frozenset({"cold water", "microwave"})
#: More acts than this within one unknown hour are not put into every order; see `_product`.
_MOST = 6


class Shape(NamedTuple):
    """How a container is, apart from the warmth of its place."""

    place: str
    in_progress: bool
    opened: bool
    came_frozen: bool
    frozen: bool
    thawed: date | None
    fast: bool
    relieved: bool


class Since(NamedTuple):
    """A shape and the earliest moment from which it may have been so."""

    shape: Shape
    start: int
    day: date


class Walk:
    """Follows a container through its turns, in every order that the facts allow."""

    def __init__(
        self, batch: Batch, container: Container, places: Mapping[str, Place], now: When
    ) -> None:
        self.batch, self.container, self.places, self.now = batch, container, places, now

    def all(self, ways: Sequence[Since], later: Sequence[Turn]) -> tuple[Span, ...]:
        """The spans of a container that may have begun in any of these ways."""
        found: dict[Span, None] = {}
        for group in _together(later):
            ways = self._group(ways, group, found)
        for way in ways:
            found |= dict.fromkeys(self.spans_of(way, FOREVER)[0])
        return tuple(sorted(found, key=_order))

    def _group(
        self, ways: Sequence[Since], group: Sequence[Turn], found: dict[Span, None]
    ) -> list[Since]:
        """All ways through turns that may have come in several orders; each way's end."""
        if len(group) > _MOST:
            return self._product(ways, group, found)
        todo = {(way.shape, 0): way for way in ways}
        whole = (1 << len(group)) - 1
        ends: dict[Shape, Since] = {}
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
                if turn.after and any(one.event == turn.after for one in open_):
                    continue
                for old in became:
                    after = self._turned(way, old, turn)
                    key = after.shape, done | 1 << index
                    todo[key] = _earlier(todo.get(key), after)
        return list(ends.values())

    def _product(
        self, ways: Sequence[Since], group: Sequence[Turn], found: dict[Span, None]
    ) -> list[Since]:
        """Too many orders to follow: everything that any of them could lead to."""
        met = {way.shape: way for way in ways}
        last = max(turn.when.last for turn in group)
        kinds = dict.fromkeys(turn._replace(event="") for turn in group)
        todo = dict(met)
        while todo:
            _, way = todo.popitem()
            spans, became = self.spans_of(way, last)
            found |= dict.fromkeys(spans)
            for old, turn in product(became, kinds):
                after = self._turned(way, old, turn)
                known = met.get(after.shape)
                after = _earlier(known, after)
                if after != known:
                    met[after.shape] = todo[after.shape] = after
        return list(met.values())

    def _turned(self, way: Since, old: Shape, turn: Turn) -> Since:
        """What a turn makes of what a way has become; one that changes nothing changes nothing."""
        day = turn.when.day
        shape = old._replace(
            place=old.place if turn.place is None else turn.place,
            in_progress=old.in_progress and turn.state is not State.SEALED,
            opened=old.opened or turn.state is State.OPEN,
        )
        if turn.state is State.THAWED:
            thawed, fast = self._thaw(old, turn, day)
            stays = shape.place == old.place  # then it is thawed at the latest when it leaves
            shape = shape._replace(
                came_frozen=False,
                frozen=old.frozen and stays,
                thawed=thawed,
                fast=fast,
                relieved=old.relieved or old.frozen,
            )
        if shape == old:
            return way
        return Since(shape, max(way.start, turn.when.first), max(way.day, day))

    def _thaw(self, old: Shape, turn: Turn, day: date) -> tuple[date, bool]:
        """Day 0 of what is thawed, and whether it was thawed fast: a second word for it says that
        it is thawed by now."""
        fast = old.fast or turn.how in FAST
        told = turn.how in (*FAST, "done")
        if old.frozen and old.thawed is None and not told:
            return day + self._days(turn), fast
        return min(old.thawed or day, day), fast

    def _days(self, turn: Turn) -> timedelta:
        """How long it thaws; where nobody says what was in it then, what was drawn from it may have
        been drawn before."""
        if turn.thaws is not None:
            return timedelta(days=turn.thaws)
        both = self.container.first, self.container.left
        held = [one for one in both if one is not None]
        return timedelta(days=thaw_days(self.batch.size, min(held, default=None)))

    def spans_of(self, way: Since, end: int) -> tuple[list[Span], list[Shape]]:
        """A shape over the weather of its place until `end`, and the shapes that it may leave
        behind: frozen there, or thawed there, or never frozen."""
        shape, start = way.shape, way.start
        came, frozen, thawed, relieved = (
            shape.came_frozen,
            shape.frozen,
            shape.thawed,
            shape.relieved,
        )
        #: Until when it may have met no frost, where it came unfrozen.
        bare = start if _unfrozen(shape) else -1
        found: list[Span] = []
        for one in weather(shape.place, self.places, self.now):
            if one.start > end:
                break
            if one.end < start:
                continue  # what changed on the minute on which it came, or left, still met it
            begins, ends = max(one.start, start), min(one.end, end)
            day = max(one.day, way.day) if one.start > start else way.day
            cold = one.climate is Climate.FREEZER and one.temperature_f <= THAWS_F
            may_be_bare = begins <= bare and not cold
            if may_be_bare:
                bare = max(bare, ends)
            # in no time at all nothing thaws
            passing = (frozen or came) and not cold and ends == begins
            if cold and thawed is None:
                frozen = True
            elif (frozen or came) and not cold and not passing:
                relieved = relieved or frozen
                thawed, frozen, came = min(thawed or day, day), False, False
            if thawed is not None and ends > begins and not _chilled(one):
                thawed = min(thawed, day)  # out of the cold it does not take days
            span = Span(
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
                relieved,
                one.steady,
            )
            if not passing:
                found.append(span)
            if may_be_bare:
                # It may have held this all along, and what came unfrozen never froze.
                found.append(span._replace(thawed=None, relieved=False))
        became = shape._replace(came_frozen=came, frozen=frozen, thawed=thawed, relieved=relieved)
        return found, [became, shape] if bare >= end else [became]


def _unfrozen(shape: Shape) -> bool:
    return not (shape.frozen or shape.came_frozen or shape.thawed)


def _chilled(one: Weather) -> bool:
    """Whether food thaws there as it is published: a freezer that fails is no refrigerator."""
    if one.climate is Climate.FREEZER:
        return one.temperature_f <= THAWS_F
    return one.climate is Climate.FRIDGE and one.temperature_f <= COLD_F


def _earlier(one: Since | None, other: Since) -> Since:
    if one is None:
        return other
    return Since(one.shape, min(one.start, other.start), min(one.day, other.day))


def _order(span: Span) -> tuple[object, ...]:
    return *span[:9], span.thawed or date.max, *span[10:]


def _together(later: Sequence[Turn]) -> Iterator[list[Turn]]:
    """Turns that may have come in several orders, group by group; most groups are of one."""
    if not later:
        return
    by_moment = sorted(later, key=lambda one: (one.when.first, one.when.last))
    group: list[Turn] = [by_moment[0]]
    reach = by_moment[0].when.last
    for _, turn in pairwise(by_moment):
        if turn.when.first > reach:
            yield group
            group = []
        group.append(turn)
        reach = max(reach, turn.when.last)
    yield group
