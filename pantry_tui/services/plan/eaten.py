"""What the household really eats of its stores, learned from its log.

Unrecorded use that a round finds counts as eaten: somebody ate it, and nobody wrote it down. It is
spread evenly over the time since the round before, because nobody knows the day. What is
*missing* (none of it was there) does not count: it may be lost.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date, timedelta

from pantry_tui.core.plan.appetite import CEILING, LEARNED_AFTER, full_week, usual_ceiling
from pantry_tui.core.words import Group
from pantry_tui.services.books.past import past
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.portions import UNRECORDED, Leaving, leavings_of
from pantry_tui.services.stock.ready import ready
from pantry_tui.services.stock.stands import by_batch

#: Weeks looked back on.
YEAR = 52

_WINDOW = timedelta(weeks=YEAR)
#: The week in which it ran out counts whole.
_STILL = timedelta(days=7)


def eaten_a_week(p: Pantry) -> dict[str, float]:
    """Servings a week of each food, for the whole household, over the weeks of the last year in
    which there was any of it; only foods that were there eight weeks or more since their first use.

    Weeks without any count for nothing: strawberries that are gone by January were not eaten more
    slowly for that.
    """
    return p.once("eaten a week", lambda: _eaten_a_week(p))


def by_week(p: Pantry) -> Mapping[str, Sequence[float]]:
    """Servings of each food in each of the last 52 weeks, the oldest first; the last is the seven
    days up to today. What a count found gone lies on the weeks since the count before."""
    return p.once("eaten by week", lambda: _by_week(p))


def full_weeks(p: Pantry) -> tuple[dict[str, float], dict[Group, float]]:
    """Servings of a full week, for the whole household, by food and by group
    (core/plan/appetite.py)."""
    foods = by_week(p)
    groups: dict[Group, list[float]] = defaultdict(lambda: [0.0] * YEAR)
    for name, weeks in foods.items():
        facts = p.facts(name)
        if facts is not None:
            groups[facts.group] = [a + b for a, b in zip(groups[facts.group], weeks, strict=True)]
    return (
        {food: most for food, weeks in foods.items() if (most := full_week(weeks)) is not None},
        {group: most for group, weeks in groups.items() if (most := full_week(weeks)) is not None},
    )


def learned(p: Pantry) -> dict[str, float]:
    """Ceilings that the log shows, servings a person a week, by group and by food.

    Never below the chart's: who was not offered more could not eat more, and food that is taken
    for too much is lost, while too high a ceiling costs nothing.
    """
    foods, groups = full_weeks(p)
    found = {food: max(most / p.people, usual_ceiling(food)) for food, most in foods.items()}
    found |= {g.value: max(most / p.people, CEILING[g]) for g, most in groups.items()}
    return found


def _eaten(p: Pantry) -> Sequence[Leaving]:
    """What was eaten in the weeks that are looked back on."""

    def find() -> list[Leaving]:
        since, today = p.today - _WINDOW + timedelta(days=1), p.today
        found = leavings_of(p, past(p).values(), since, ("used", UNRECORDED))
        return [one for one in found if one.end <= today]

    ready(p)
    return p.once("eaten", find)


def _eaten_a_week(p: Pantry) -> dict[str, float]:
    since = p.today - _WINDOW
    total: dict[str, float] = defaultdict(float)
    for one in _eaten(p):
        part = 1.0
        if one.start != one.end:
            days = (one.end - one.start).days
            part = min(days, (one.end - since).days) / days
        total[one.batch.food] += one.servings * part
    weeks = _weeks_there(p)
    return {food: total[food] / weeks[food] for food in total if weeks[food] >= LEARNED_AFTER}


def own_weeks(p: Pantry) -> Mapping[str, Sequence[float]]:
    """Servings of each food in each week of the last year in which there was any of it, the oldest
    first, since its first use; only of foods with eight such weeks or more."""
    return p.once("own weeks", lambda: dict(_own_weeks(p)))


def _own_weeks(p: Pantry) -> Iterator[tuple[str, Sequence[float]]]:
    spans, today = _spans(p), p.today
    for food, weeks in by_week(p).items():
        there = {
            back
            for start, end in spans[food]
            for back in range(max(0, (today - end).days // 7), (today - start).days // 7 + 1)
        }
        own = [weeks[YEAR - 1 - back] for back in sorted(there, reverse=True) if back < YEAR]
        if len(own) >= LEARNED_AFTER:
            yield food, own


def _first_eaten(p: Pantry) -> dict[str, date]:
    since = p.today - _WINDOW
    first: dict[str, date] = {}
    for one in _eaten(p):
        food = one.batch.food
        first[food] = min(first.get(food, one.end), max(one.start, since))
    return first


def _weeks_there(p: Pantry) -> dict[str, float]:
    """Weeks since its first use in which some of a food stood in store, the week it ran out
    whole."""
    return {food: _covered(spans) / 7 for food, spans in _spans(p).items()}


def _spans(p: Pantry) -> Mapping[str, set[tuple[date, date]]]:
    """The days between which some of each food that is eaten stood, since its first use."""

    def find() -> dict[str, set[tuple[date, date]]]:
        first = _first_eaten(p)
        return {food: set() for food in first} | _stood(p, first)

    return p.once("eaten spans", find)


def _stood(p: Pantry, first: dict[str, date]) -> dict[str, set[tuple[date, date]]]:
    spans: dict[str, set[tuple[date, date]]] = defaultdict(set)
    standing, today = by_batch(p), p.today
    for batch in past(p).values():
        since = first.get(batch.food)
        if since is None:
            continue
        if batch.last < (since - _STILL).isoformat() and batch.id not in standing:
            continue  # it was gone before
        if batch.id in standing and len(batch.came) == 1:
            found = [(batch.born, today)]  # the others of it were there no longer
        else:
            found = [
                (born, min(today, ended + _STILL) if ended else today)
                for born, ended in batch.stays
            ]
        spans[batch.food] |= {(max(since, born), end) for born, end in found}
    return spans


def _covered(spans: Iterable[tuple[date, date]]) -> int:
    """Days that lie in at least one span."""
    days, until = 0, date.min
    for start, end in sorted(span for span in spans if span[0] < span[1]):
        days += max(0, (end - max(start, until)).days)
        until = max(until, end)
    return days


def _by_week(p: Pantry) -> dict[str, list[float]]:
    found: dict[str, list[float]] = defaultdict(lambda: [0.0] * YEAR)
    today = p.today
    for one in _eaten(p):
        newest = (today - one.end).days // 7
        weeks = found[one.batch.food]
        if one.start == one.end:  # nearly all
            weeks[YEAR - 1 - newest] += one.servings
            continue
        oldest = (today - one.start).days // 7
        for back in range(newest, min(oldest, YEAR - 1) + 1):
            weeks[YEAR - 1 - back] += one.servings / (oldest - newest + 1)
    return dict(found)
