"""Where a food may stand: the places of which a publication says how long it keeps there."""

from __future__ import annotations

from pantry_tui.core import dates
from pantry_tui.core.keeping.rules import speaking
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Climate, Kind, Method, State
from pantry_tui.services.pantry import Pantry

#: So many are named.
_NAMED = 3


def where_it_keeps(p: Pantry, method: Method, food: FoodFacts, state: State) -> str:
    """ "fridge (4 days) or chest freezer": paths of places with a published figure for it, with the
    last safe one, and none that refuses it; "" where there is none. `food` as packed
    (keeping/limits.py)."""
    found = []
    for id_, path in sorted(p.place_paths().items(), key=lambda one: one[1].lower()):
        told = lasts(p, method, food, state, p.places[id_].climate)
        if told is not None:
            found.append(f"{path}{told}")
    return " or ".join(found[:_NAMED])


def cold_that_keeps(p: Pantry, method: Method, food: FoodFacts, state: State) -> str:
    """ "a fridge (4 days) or a freezer": the same of a household that has no such place yet."""
    cold = (one for one in Climate if one.is_cold)
    told = ((one, lasts(p, method, food, state, one)) for one in cold)
    return " or ".join(f"a {one}{lasts}" for one, lasts in told if lasts is not None)


def lasts(p: Pantry, method: Method, food: FoodFacts, state: State, climate: Climate) -> str | None:
    """ " (4 days)": how long it is safe there, "" where no figure ends it; None where it is refused
    there or nothing is published."""
    rules = speaking(p.book_of_rules.of(method), food, method, state, climate)
    if not rules or any(rule.kind is Kind.REFUSE for rule in rules):
        return None
    safe = [rule for rule in rules if rule.kind is Kind.SAFETY and rule.use is not None]
    last = min(safe, key=lambda rule: rule.days, default=None)
    return "" if last is None or last.use is None else f" ({dates.span(last.use, last.unit)})"
