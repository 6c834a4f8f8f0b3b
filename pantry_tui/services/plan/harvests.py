"""When a crop comes in: by the table of foods, turned about south of the equator."""

from __future__ import annotations

from datetime import timedelta

from pantry_tui.core.plan.pace import first_month, turned
from pantry_tui.core.words import Method
from pantry_tui.services.books.past import Past
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.putup_next import by_food

#: What a household put up itself tells its months once a year of it is known.
_A_YEAR = timedelta(days=365)
#: Seasons that lie longer ago say nothing: the garden is another one by now.
_LATELY = timedelta(days=3 * 365)


def harvest_month(p: Pantry, food: str) -> int | None:
    """The month (1-12) in which the food first comes in, None where nobody knows.

    The table is of northern gardens. A southern one turns it by half a year, until its own batches
    tell better: those of a food of which the first was put up a year ago or more.
    """
    known = p.tables.index.find(food)
    month = known.harvest_month if known is not None else None
    if month is None or p.home.garden != "south":
        return month
    own = [one for one in by_food(p).get(food, ()) if _grown(p, one)]
    lately = [one.born for one in own if p.today - one.born <= _LATELY]
    if lately and p.today - min(lately) >= _A_YEAR:
        return first_month(day.month for day in lately) or turned(month)
    return turned(month)


def _grown(p: Pantry, one: Past) -> bool:
    """Whether it came out of the garden: nothing bought, nothing made of what was in store."""
    return one.method is not Method.BOUGHT and not p.stock.batches[one.id].parts
