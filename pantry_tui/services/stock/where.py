"""Where a food may stand: the places of which a publication says how long it keeps there."""

from __future__ import annotations

from pantry_tui.core.keeping.rules import speaking
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Kind, Method, State
from pantry_tui.services.pantry import Pantry

#: So many are named.
_NAMED = 3


def where_it_keeps(p: Pantry, method: Method, food: FoodFacts, state: State) -> str:
    """ "fridge or chest freezer": paths of places with a published figure for it and none that
    refuses it; "" where there is none. `food` as packed (keeping/limits.py)."""
    table = p.book_of_rules.of(method)
    found = []
    for id_, path in sorted(p.place_paths().items(), key=lambda one: one[1].lower()):
        kinds = {rule.kind for rule in speaking(table, food, method, state, p.places[id_].climate)}
        if kinds and Kind.REFUSE not in kinds:
            found.append(path)
    return " or ".join(found[:_NAMED])
