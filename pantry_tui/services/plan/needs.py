"""From the log to a week: the pace of each food, the harvests that are expected, and what got too
old."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from datetime import date, timedelta

from pantry_tui.core.log.payloads import batch_of
from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.menu import Candidate, Needs
from pantry_tui.core.plan.shares import PutUp, expected
from pantry_tui.core.plan.shares import needs as core_needs
from pantry_tui.core.words import Method
from pantry_tui.services.books.past import TOO_MUCH, Past, past
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.eaten import YEAR, by_week
from pantry_tui.services.plan.harvest import next_of
from pantry_tui.services.plan.portions import holds, leavings_of

#: Weeks of the log in which a food gathers credit.
_CREDIT_WEEKS = 12


def needs(
    p: Pantry, found: Sequence[Candidate], appetite: Appetite, start: date, length: int = 7
) -> Needs:
    """What the days from `start` have to heed, as the log and the harvests have it."""
    since: dict[str, date] = {}
    batches, seen, today = past(p), set(), p.today
    for one in found:
        id_ = batch_of(one.container)
        if id_ in seen:
            continue
        batch = batches[id_]
        if len(batch.came) == 1:
            seen.add(id_)  # the others of it came on the same day
        came = batch.came_as(one.container).day
        since[one.food] = min(since.get(one.food, today), came)
    logs = by_week(p)
    ahead = [0.0] * max(0, (start - p.today) // timedelta(days=7))
    eaten, harvests = {}, {}
    for food, first in since.items():
        weeks = min(_CREDIT_WEEKS, max(0, (p.today - first).days // 7))
        log = logs.get(food, [0.0] * YEAR)
        eaten[food] = [*log[len(log) - weeks :], *ahead]
        harvests[food] = next_of(p, food, start)
    # In a first year nobody knows what comes, and to ration by a guess loses more than it saves.
    known = any((start - one.born).days > 7 * YEAR for one in past(p).values() if _made(one))
    if not known:
        return core_needs(found, appetite, start, harvests, eaten, length=length)
    coming = expected(_put_up(p, start), found, start, harvests)
    return core_needs(found, appetite, start, harvests, eaten, coming, length, _too_old(p, start))


def _made(one: Past) -> bool:
    """What was bought is no harvest."""
    return one.method is not Method.BOUGHT


def _put_up(p: Pantry, start: date) -> list[PutUp]:
    """All that was put up in the year before, by batch."""
    since, much = start - timedelta(weeks=YEAR + 1), holds(p)
    return [
        PutUp(
            one.food,
            one.group,
            sum(came.n * much(one.food, one.group, one.method, came.held) for came in one.came),
            one.born,
        )
        for one in past(p).values()
        if one.born > since and _made(one)
    ]


def _too_old(p: Pantry, start: date) -> dict[str, float]:
    """Servings of each group that were there for too long in the year before; not what was made
    badly, or lost to a freezer that failed."""
    found: dict[str, float] = defaultdict(float)
    since = start - timedelta(weeks=YEAR) + timedelta(days=1)
    for one in leavings_of(p, past(p).values(), since, ("discarded",)):
        if one.why in TOO_MUCH:
            found[one.batch.group] += one.servings
    return found
