"""The losses of the last twelve months as one number to be lowered, the twelve before them, and
what was saved: eaten in the last weeks before its date."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, timedelta

from pantry_tui.core.plan.pace_words import SERVINGS
from pantry_tui.services.books.past import Past, past
from pantry_tui.services.books.rows import YearOfLosses
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.portions import UNRECORDED, Leaving, leavings_of
from pantry_tui.services.plan.putup_next import Usual, life_days

_YEAR = timedelta(weeks=52)
#: What is eaten so long before its date was eaten in time: who looks at the due list within four
#: weeks sees it. Common practice, no source.
IN_TIME = timedelta(weeks=4)
_EATEN = ("used", UNRECORDED)


def year_of_losses(p: Pantry) -> YearOfLosses:
    """Servings, estimates all; the share is of what was eaten and lost together."""
    since = p.today - _YEAR
    batches = past(p).values()
    gone = list(leavings_of(p, batches, since - _YEAR + timedelta(days=1), ("discarded",)))
    eaten = list(leavings_of(p, batches, since + timedelta(days=1), _EATEN))
    lost = sum(one.servings for one in gone if one.end > since)
    before = sum(one.servings for one in gone if one.end <= since)
    much = lost + sum(one.servings for one in eaten)
    saved = sum(one.servings for one in _in_time(p, eaten))
    first = min((one.born for one in batches), default=p.today)
    return YearOfLosses(
        round(lost, 1),
        round(lost / much, 3) if much else 0.0,
        round(saved, 1),
        round(before, 1) if first <= since else None,
    )


def _in_time(p: Pantry, eaten: Iterable[Leaving]) -> Iterable[Leaving]:
    """What was eaten in the last weeks before its date, as the rules have it for its kind."""
    ends: dict[str, date | None] = {}
    for one in eaten:
        id_ = one.batch.id
        if id_ not in ends:
            ends[id_] = _end_of(p, one.batch)
        end = ends[id_]
        if end is not None and end - IN_TIME <= one.end <= end:
            yield one


def _end_of(p: Pantry, batch: Past) -> date | None:
    """About the day by which a closed one was best eaten; None where nothing is published."""
    known = p.stock.batches[batch.id]
    if known.printed is not None:
        return known.printed
    containers = p.containers_of(known)
    if not containers:
        return None
    days = life_days(p, Usual(known, containers[0], 1.0, SERVINGS))
    return batch.born + timedelta(days=days) if days is not None else None
