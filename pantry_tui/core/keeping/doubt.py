"""What stands against a batch apart from its figures: its process, its lids, its record."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import timedelta

from pantry_tui.core import dates
from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.keeping.exposure import Span
from pantry_tui.core.keeping.weather import FOREVER, around
from pantry_tui.core.model import DAY_MIN, Batch, Container, Cut, Place, When
from pantry_tui.core.safety.record import NEEDED, known
from pantry_tui.core.safety.record import not_checked as unchecked
from pantry_tui.core.words import Acidity

#: Within so many days a jar of doubtful process may still be refrigerated, frozen or processed
#: again (USDA AIB 539, as the extension services repeat it: 24 hours, here by the minute).
RESCUE_DAYS = 1

_OURS = frozenset({"", "me", "us", "ours", "own", "myself", "home", "household"})
UNKNOWN_ORIGIN = (
    "Low-acid food that somebody else canned, and nobody knows how: it is not offered. Ask how it "
    "was processed and record it, or discard it unopened."
)

WRONG_CLOCK = "Booked by a clock that was ahead, so nobody knows when: put its day right first."


def by_others(batch: Batch) -> bool:
    """Whether somebody else made it (`by=` in its process record)."""
    return any(key == "by" and value.casefold() not in _OURS for key, value in batch.process)


def not_checked(batch: Batch) -> tuple[str, ...]:
    """The standing reasons of a canned batch whose process could not be checked, or not whole."""
    return () if batch.doubt else unchecked(batch.method, batch.process)


def of_unknown_origin(batch: Batch) -> bool:
    """Whether it is a low-acid jar of somebody else of whose process the time or the pressure is
    not known: half a record cannot be checked."""
    low_acid = batch.food.acidity is Acidity.LOW_ACID
    if batch.method not in PROCESSED or not low_acid or not by_others(batch):
        return False
    return not known(batch.process) >= set(NEEDED[batch.method])


def unsealed(batch: Batch, container: Container) -> bool:
    """Whether its lid was found never to have sealed, within a day of making it."""
    return batch.method in LIDDED and any(
        seen.sign.casefold().startswith("unsealed within") for seen in container.signs
    )


def rescued(batch: Batch, spans: Sequence[Span]) -> tuple[Span, ...] | None:
    """Its spans if it went into the cold within a day and stayed in it, from then on as an opened
    jar; None where it did not, or nobody knows when it was made."""
    if batch.made is None:
        return None
    warm = [span for span in spans if not span.climate.is_cold]
    cold = [span for span in spans if span.climate.is_cold]
    if not cold:
        return None
    first = min(cold, key=lambda span: span.start)
    out_again = any(
        span.end >= FOREVER
        or span.start > first.start
        or (span.start == first.start and span.end > span.start)
        for span in warm
    )
    stood = max((span.end for span in warm), default=first.start) - spans[0].start
    if out_again or first.day > batch.made + timedelta(days=RESCUE_DAYS):
        return None
    if stood > RESCUE_DAYS * DAY_MIN:
        return None
    return tuple(
        span._replace(opened=True, day=batch.made)
        if span.climate.is_cold and span.start == first.start
        else span._replace(opened=True)
        if span.climate.is_cold or span.opened
        else span
        for span in spans
        if span.climate.is_cold or span.opened or span.in_progress
    )


def of_wrong_clock(container: Container, now: When) -> bool:
    """Whether something of it was booked by a clock that was days ahead: nobody knows when it
    happened, and to count it as today every day would keep the food for ever."""
    return any(turn.when.day > now.day and turn.when.first > now.last for turn in container.turns)


def still_to_come(container: Container, places: Mapping[str, Place], now: When) -> tuple[str, ...]:
    """What was booked for a moment after now: it counts as now, until its day is put right."""
    found = [turn.when.day for turn in container.turns if turn.when.first > now.last]
    for place in around(container.place, places):
        found += [
            fact.end.day if isinstance(fact, Cut) else fact.when.day
            for fact in place.facts
            if (fact.end if isinstance(fact, Cut) else fact.when).first > now.last
        ]
    return tuple(
        f"Something is booked for {dates.say(day)}, which is still to come: it counts as today. "
        "Put its day right."
        for day in sorted(set(found))[:1]
    )
