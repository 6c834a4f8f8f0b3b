"""What a clock that was days ahead has booked, while nothing was booked since by one that is right.

Such a moment counts as now, and would do so every day. It may have happened at any time since the
container was put up: by the strictest of these moments it is offered or not, and no last day is
later than by that. Once something is booked by a clock that is right, the log itself says between
which moments it was (core.log.ahead).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.ladder import Assessment
from pantry_tui.core.keeping.weather import Fact, OfFacts, above, moment_of
from pantry_tui.core.keeping.wording import DISCARD
from pantry_tui.core.log.ahead import LONG_AGO
from pantry_tui.core.log.fold_place import knowing, off_within
from pantry_tui.core.model import Batch, Container, Cut, Place, Turn, When

WRONG_CLOCK = "Booked by a clock that was ahead, so nobody knows when: put its day right first."


def of_wrong_clock(container: Container, now: When) -> bool:
    """Whether something of it was booked by a clock that was days ahead: nobody knows when it
    happened, and to count it as today every day would keep the food for ever."""
    return any(_days_ahead(turn.when, now) for turn in container.turns)


def as_at_any_time(
    batch: Batch,
    container: Container,
    own: Assessment,
    places: Mapping[str, Place],
    now: When,
    assess: Callable[[Batch, Container, Mapping[str, Place]], Assessment],
) -> Assessment:
    """Its own assessment, no milder than what was booked for days after now may make it. `assess`
    judges a batch, its container and places as if they were all that is known."""
    stood = dict.fromkeys(turn.place for turn in container.turns if turn.place)
    struck = {
        place.id: place for name in stood for place in above(name, places) if _ANY.of([place], now)
    }
    if not struck and not of_wrong_clock(container, now):
        return own
    came = container.turns[0].when
    # A clock that went back by minutes has it come after now.
    since = LONG_AGO if _days_ahead(came, now) else min(came.first, now.last)
    turns = tuple(_turn_at_any_time(turn, since, now) for turn in container.turns)
    vague = {id_: _place_at_any_time(place, since, now) for id_, place in struck.items()}
    bare = replace(container, turns=turns, signs=())
    return _no_milder(own, assess(batch, bare, {**places, **vague}), now)


def _no_milder(own: Assessment, strict: Assessment, now: When) -> Assessment:
    if not strict.on(now.day).usable:
        reasons = tuple(dict.fromkeys((WRONG_CLOCK, *own.reasons)))
        return replace(own, doubt=True, harmless=False, reasons=reasons)
    last = strict.discard_after
    if last is None or (own.discard_after is not None and own.discard_after <= last):
        return own
    new = [one for one in strict.reasons if one.startswith(DISCARD)]
    old = [one for one in own.reasons if not one.startswith(DISCARD)]
    rules = (*own.rules, *(rule for rule in strict.rules if rule not in own.rules))
    return replace(
        own,
        discard_after=last,
        why_no_discard=strict.why_no_discard,
        reasons=(*new, *old),
        rules=rules,
    )


def _days_ahead(when: When, now: When) -> bool:
    return when.day > now.day and when.first > now.last


def _any_ahead(facts: Sequence[Sequence[Fact]], now: When) -> bool:
    return any(_days_ahead(moment_of(fact), now) for one in facts for fact in one)


_ANY = OfFacts(_any_ahead)


def _at_any_time(when: When, since: int, now: When) -> When:
    if not _days_ahead(when, now):
        return when
    return When(since, now.last, when.day_of(since), when.zone)


def _turn_at_any_time(turn: Turn, since: int, now: When) -> Turn:
    return turn._replace(when=_at_any_time(turn.when, since, now))


def _place_at_any_time(place: Place, since: int, now: When) -> Place:
    """The place, its facts in the order of their moments."""
    found = replace(place, facts=())
    for fact in place.facts:
        found = knowing(found, _fact_at_any_time(fact, since, now))
    return found


def _fact_at_any_time(fact: Fact, since: int, now: When) -> Fact:
    if not isinstance(fact, Cut):
        return fact._replace(when=_at_any_time(fact.when, since, now))
    return off_within(fact, since, now.last) if _days_ahead(fact.end, now) else fact
