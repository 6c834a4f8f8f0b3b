"""By which minute a container is judged where the clock that asks may be slow.

What was booked by a clock that is a little ahead of this one (another computer's, whose log became
one with ours) has happened, and its minutes have run: were they clipped at now, food that was told
to be discarded would be offered again until that minute comes. So the latest of such moments counts
as now. Further ahead than clocks differ it may be any time, and counts as now until its day is put
right (core.log.ahead).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from pantry_tui.core.keeping.weather import Fact, OfFacts, above, moment_of
from pantry_tui.core.log.ahead import SLIGHT
from pantry_tui.core.model import Container, Place, When


def _ahead(facts: Sequence[Sequence[Fact]], now: When) -> list[When]:
    """The moments after now of a place and of all that it stands in."""
    return [then for one in facts for fact in one if (then := moment_of(fact)).last > now.last]


_OF_PLACES = OfFacts(_ahead)


def caught_up(container: Container, places: Mapping[str, Place], now: When) -> When:
    """Now, or the latest moment of what happened to it, or to a place where it stood, that clocks
    which differ slightly have booked for after now. The clock that asks keeps its zone."""
    after = [one for one in _moments(container, places, now) if one.last > now.last]
    last = max((one.last for one in after if one.last <= now.last + SLIGHT), default=now.last)
    return now if last == now.last else When(last, last, now.day_of(last), now.zone)


def _moments(container: Container, places: Mapping[str, Place], now: When) -> Iterator[When]:
    yield from (turn.when for turn in container.turns)
    for where in {turn.place for turn in container.turns if turn.place}:
        yield from _OF_PLACES.of(above(where, places), now)
