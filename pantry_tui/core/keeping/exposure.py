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

from collections.abc import Mapping, Sequence
from datetime import date

from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.spans import Span as Span
from pantry_tui.core.keeping.walk import Shape, Since, Walk
from pantry_tui.core.keeping.weather import Weather, weather
from pantry_tui.core.log.in_turn import follows
from pantry_tui.core.model import EVER, Batch, Container, Held, Place, Read, Turn, When, no_later
from pantry_tui.core.vessels import Vessel, is_closed
from pantry_tui.core.words import ASSUMED_F, Climate, Method, State

#: Before anything that anybody booked, and after `EVER`.
_SOON_AFTER = When(1, 1, date.min)


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
        turns=(*container.turns, follows(container.turns, turn)),
        place=container.place if turn.place is None else turn.place,
        state=container.state if turn.state is None else turn.state,
    )


def drawn_from(batch: Batch, container: Container) -> bool:
    """Whether a part of a closed vessel was taken out; an egg out of its box opens none."""
    whole = container.vessel is Vessel.PIECES
    return container.begun and not whole and is_closed(batch.method, batch.size)


def exposures(
    batch: Batch, container: Container, places: Mapping[str, Place], now: When
) -> tuple[Span, ...]:
    """All spans that the facts allow, oldest first."""
    first, *later = _no_earlier(container.turns, now)
    place = first.place or ""
    opened = first.state is State.OPEN
    if drawn_from(batch, container) and all(turn.state is not State.OPEN for turn in later):
        opened = True  # nobody said when, so it may have been at once
    shapes = [
        Shape(
            place,
            first.state is State.IN_PROGRESS,
            opened,
            came_frozen,
            False,
            first.when.day if first.state is State.THAWED else None,
            False,
            first.state is State.THAWED,
        )
        for came_frozen in _may_come_frozen(batch, weather(place, places, now), first.when)
    ]
    walk = Walk(batch, container, places, now)
    ways = [Since(shape, first.when.first, first.when.day) for shape in shapes]
    return walk.all(ways, later)


def _may_come_frozen(batch: Batch, there: Sequence[Weather], came: When) -> list[bool]:
    """What is kept frozen was put into a freezer frozen, also into one that is too warm. Both,
    where the place became a freezer, or ceased to be one, when it was put up."""
    if batch.method is not Method.FROZEN:
        return [False]
    met = {
        one.climate is Climate.FREEZER
        for one in there
        if one.start <= came.last and one.end >= came.first
    }
    return sorted(met)


def _no_earlier(turns: Sequence[Turn], now: When) -> list[Turn]:
    """Its turns, none before it was put up and none after now. What is told of a time before that
    (the day made was put right later) happened as it was made, at whichever minute that was."""
    start = no_later(turns[0].when, now)
    found = [turns[0]._replace(when=start)]
    for turn in turns[1:]:
        first, last, day, zone = no_later(turn.when, now)
        latest = start.last if last < start.first else last
        then = When(max(first, start.first), latest, max(day, start.day), zone)
        found.append(turn._replace(when=then))
    return found
