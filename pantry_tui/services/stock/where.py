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
    last safe one, and none that refuses it; the climates that it needs where no place here has
    one; "" where nothing is published. `food` as packed (keeping/limits.py)."""
    lasts = {climate: _lasts(p, method, food, state, climate) for climate in Climate}
    here = sorted(
        ((path, p.places[id_].climate) for id_, path in p.place_paths().items()),
        key=lambda one: one[0].lower(),
    )
    found = [f"{path}{lasts[climate]}" for path, climate in here if lasts[climate] is not None]
    if not found:
        found = [
            f"a {one}{told}" for one, told in lasts.items() if told is not None and one.is_cold
        ]
    return " or ".join(found[:_NAMED])


def _lasts(
    p: Pantry, method: Method, food: FoodFacts, state: State, climate: Climate
) -> str | None:
    """ " (4 days)": how long it is safe there, "" where no figure ends it; None where it is refused
    there or nothing is published."""
    rules = speaking(p.book_of_rules.of(method), food, method, state, climate)
    if not rules or any(rule.kind is Kind.REFUSE for rule in rules):
        return None
    safe = [rule for rule in rules if rule.kind is Kind.SAFETY and rule.use is not None]
    last = min(safe, key=lambda rule: rule.days, default=None)
    return "" if last is None or last.use is None else f" ({dates.span(last.use, last.unit)})"
