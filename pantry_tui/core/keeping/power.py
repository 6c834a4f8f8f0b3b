"""Power cuts over a container's life: how long its place had been without power while it stood
there.

Cuts of a place that overlap count once; cuts that follow one another within a day add up, unless
it was read cold in between (a choice of this program on the strict side: nobody publishes how
soon a refrigerator is cold again). What stood there when the power went is judged by how long it
had been off when it left; what came later is only charged for the time it stood there, up to two
hours, and judged like the rest beyond. Cuts of several places: core.keeping.without_cold.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date
from typing import NamedTuple

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.keeping.exposure import Span
from pantry_tui.core.keeping.weather import Fact, OfFacts, above, too_warm
from pantry_tui.core.model import DAY_MIN, EVER, Cut, Held, Place, Read, When, no_later
from pantry_tui.core.words import Climate

#: Cuts with no more than this between them add up.
GAP_MIN = DAY_MIN
#: What is read so soon after the power is back tells of the air, and not of the food. Common
#: practice, no source.
AIR_MIN = 30


class Off(NamedTuple):
    """No power for `length` minutes at some time from `start` to `end`."""

    start: int
    end: int
    length: int
    day: date
    cut: Cut


@dataclass(frozen=True, slots=True)
class Blackout:
    """Cuts that count as one, in the order of their moments."""

    pieces: tuple[Off, ...]
    start: int
    end: int
    day: date

    def minutes(self, start: int, end: int) -> int:
        """For how many minutes from `start` to `end` it may have been off, at most."""
        told = [one for one in self.pieces if one.length == one.end - one.start]
        known = united((max(one.start, start), min(one.end, end)) for one in told)
        return known + sum(
            max(0, min(one.length, min(one.end, end) - max(one.start, start)))
            for one in self.pieces
            if one not in told
        )

    def off(self) -> list[tuple[int, int]]:
        """When it was off; all of it, where of some cut only the length is known."""
        if any(one.length < one.end - one.start for one in self.pieces):
            return [(self.start, self.end)]
        return [(one.start, one.end) for one in self.pieces]

    def held_until(self, minutes: int) -> int:
        """The minute at which it had been off for so many in all, its end where it never was.
        Power that came on in between brings none of them back."""
        reach = self.start
        for start, end in sorted(self.off()):
            begins = max(start, reach)
            if end - begins > minutes:
                return begins + minutes
            minutes -= max(0, end - begins)
            reach = max(reach, end)
        return self.end


class Struck(NamedTuple):
    """What a blackout did to a container: it was off for `minutes` until the container left, who
    stood there in the spans `here`. `late`: it came when the power was off already, and stood
    there for `stayed` minutes."""

    blackout: Blackout
    climate: Climate
    day: date
    minutes: int
    here: tuple[Span, ...]
    late: bool
    stayed: int
    #: As minutes of this climate, where it was without the cold of another too.
    counts: int | None = None

    @property
    def times(self) -> list[tuple[int, int]]:
        """When it stood there without power."""
        return _overlaps(self.here, self.blackout)


def united(pieces: Iterable[tuple[int, int]]) -> int:
    """How many minutes these cover, each once."""
    total, reach = 0, EVER.last
    for start, end in sorted(pieces):
        total += max(0, end - max(start, reach))
        reach = max(reach, end)
    return total


def blackouts_of(place: str, places: Mapping[str, Place], now: When) -> tuple[Blackout, ...]:
    """The blackouts of a place and of what it stands in."""
    return _OF_PLACE.of(above(place, places), now)


def struck(spans: Sequence[Span], places: Mapping[str, Place], now: When) -> Iterator[Struck]:
    """Every blackout that met the container, place by place."""
    for place in dict.fromkeys(span.place for span in spans):
        if blackouts := blackouts_of(place, places, now):
            mine = [span for span in spans if span.place == place and span.climate.is_cold]
            for blackout in blackouts:
                yield from _struck(blackout, mine)


def _struck(blackout: Blackout, mine: Sequence[Span]) -> Iterator[Struck]:
    """One for each climate that the place had meanwhile: a refrigerator that was made a freezer
    in the course of it is judged as both."""
    here = tuple(one for one in mine if one.start < blackout.end and one.end > blackout.start)
    if not here:
        return
    leaves = min(max(one.end for one in here), blackout.end)
    times = _overlaps(here, blackout)
    for climate in dict.fromkeys(one.climate for one in here):
        yield Struck(
            blackout,
            climate,
            max(blackout.day, min(one.day for one in here)),
            blackout.minutes(blackout.start, leaves),
            here,
            min(one.start for one in here) > blackout.start,
            sum(blackout.minutes(*one) for one in apart(times)),
        )


def _overlaps(here: Sequence[Span], blackout: Blackout) -> list[tuple[int, int]]:
    return [(max(one.start, blackout.start), min(one.end, blackout.end)) for one in here]


def apart(times: Iterable[tuple[int, int]]) -> list[tuple[int, int]]:
    """The same times without overlaps."""
    found: list[tuple[int, int]] = []
    for start, end in sorted(times):
        if found and start <= found[-1][1]:
            found[-1] = found[-1][0], max(found[-1][1], end)
        else:
            found.append((start, end))
    return found


def _cuts(facts: Sequence[Sequence[Fact]]) -> list[Cut]:
    """The cuts of a place and of what it stands in. What was seen in another climate, how full it
    was and how warm, says nothing of this one."""
    mine = _climate(facts[0]) if facts else None
    return [
        fact if _climate(one) is mine else fact._replace(full=None, max_temp_f=None, ice=None)
        for one in facts
        for fact in one
        if isinstance(fact, Cut)
    ]


def _climate(facts: Sequence[Fact]) -> Climate | None:
    return next((one.climate for one in reversed(facts) if isinstance(one, Held)), None)


def _blackouts(facts: Sequence[Sequence[Fact]], now: When) -> tuple[Blackout, ...]:
    cold = read_cold(facts[0])
    known = [_off(_since_cold(cut, cold), now) for cut in _cuts(facts)]
    groups: list[list[Off]] = []
    # As text, since what nobody knows cannot be compared: their minutes have as many digits.
    for piece in sorted(known, key=str):
        if groups and _goes_on(groups[-1], piece, cold):
            groups[-1].append(piece)
        else:
            groups.append([piece])
    return tuple(
        Blackout(
            tuple(group),
            group[0].start,
            max(one.end for one in group),
            min(one.day for one in group),
        )
        for group in groups
    )


_OF_PLACE = OfFacts(_blackouts)


def _goes_on(group: Sequence[Off], piece: Off, cold: Sequence[Read]) -> bool:
    """Whether a cut counts with those before it: soon after, and not read cold in between."""
    end = max(one.end for one in group)
    between = any(end + AIR_MIN < one.when.first and one.when.last < piece.start for one in cold)
    return piece.start - end <= GAP_MIN and not between


def _since_cold(cut: Cut, cold: Sequence[Read]) -> Cut:
    """A cut since nobody knows when began after the place was last read cold; that it was set to
    be cold shows nothing."""
    if cut.start != EVER:
        return cut
    before = [fact.when for fact in cold if fact.when.last <= cut.end.first]
    return cut._replace(start=max(before, default=EVER))


def read_cold(facts: Sequence[Fact]) -> list[Read]:
    """The readings that are cold, whatever climate the place had."""
    climates = {one.climate for one in facts if isinstance(one, Held)}
    return [
        fact
        for fact in facts
        if isinstance(fact, Read) and not any(too_warm(one, fact.temp_f) for one in climates)
    ]


def _off(cut: Cut, now: When) -> Off:
    """A cut that is still to come (a clock was ahead) ends now, and was as long."""
    if cut.start.first > now.last:
        long = min(cut.end.last - cut.start.first, cut.end.last - cut.start.last or DAY_MIN)
        return Off(now.last - long, now.last, long, now.day_of(now.last - long), cut)
    start = no_later(cut.start, now).first
    end = max(start, no_later(cut.end, now).last)
    length = end - start
    if cut.end.first == cut.start.first:
        # Only the day and the hours were recorded: at any time of it.
        length = min(length, cut.end.last - cut.start.last)
    return Off(start, end, length, no_later(cut.start, now).day, cut)
