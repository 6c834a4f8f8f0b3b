"""What a pound of crop gave in this kitchen, by batches that were put up from weighed crops; it
goes before published yields."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from datetime import timedelta
from functools import partial
from typing import NamedTuple

from pantry_tui.core.amounts import exact_amount
from pantry_tui.core.log.payloads import Part, PutUp, batch_of
from pantry_tui.core.words import Method
from pantry_tui.services.books.past import Past, past
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.portions import holds
from pantry_tui.services.plan.servings import weight
from pantry_tui.store import log

#: Batches of so many years are looked at.
_YEARS = timedelta(days=3 * 365)
#: A crop as it came in.
_RAW = frozenset({Method.FRESH, Method.CELLAR, Method.BOUGHT})


class OwnYield(NamedTuple):
    """Pounds of a crop for a serving, from so many batches."""

    crop: str
    lb_a_serving: float
    batches: int


def own_yields(p: Pantry) -> Mapping[tuple[str, Method], OwnYield]:
    """By food and method."""
    return p.once("own yields", lambda: _own_yields(p))


def _own_yields(p: Pantry) -> dict[tuple[str, Method], OwnYield]:
    known = past(p)
    found: dict[tuple[str, Method], list[tuple[str, float, float]]] = defaultdict(list)
    for said in _made_of_others(p):
        made = known.get(said.batch)
        if made is None or made.born < p.today - _YEARS:
            continue  # it was taken back, or says no more
        crops = {known[batch_of(one.container)].food for one in said.parts if _raw(known, one)}
        pounds = [_pounds(known, one) for one in said.parts if _raw(known, one)]
        much = partial(holds(p), made.food, made.group, made.method)
        servings = sum(one.n * much(one.held) for one in made.came)
        if len(crops) != 1 or len(pounds) != len(said.parts) or None in pounds or not servings:
            continue  # of several crops nobody knows which gave what
        whole = sum(one for one in pounds if one is not None)
        found[made.food, made.method].append((crops.pop(), whole, servings))
    return {
        key: OwnYield(
            some[-1][0], sum(one[1] for one in some) / sum(one[2] for one in some), len(some)
        )
        for key, some in found.items()
        if sum(one[1] for one in some) > 0
    }


def _made_of_others(p: Pantry) -> Iterable[PutUp]:
    """The put-ups that say what they were made from; few, however long the log is."""
    named = "WHERE did = 'put_up' AND instr(payload, '\"parts\"') > 0"
    for event in log.select(p.store.db, named):
        if isinstance(event.payload, PutUp) and event.payload.parts and not event.payload.carried:
            yield event.payload


def _raw(known: Mapping[str, Past], part: Part) -> bool:
    batch = known.get(batch_of(part.container))
    return batch is not None and batch.method in _RAW


def _pounds(known: Mapping[str, Past], part: Part) -> float | None:
    """What a part weighed; None where it was no weight."""
    amount = part.amount
    if amount is None:
        container = part.container
        amount = exact_amount(known[batch_of(container)].came_as(container).held)
    return weight(amount)
