"""What a household's put-up lines are read with."""

from __future__ import annotations

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Climate, Method
from pantry_tui.reference.compose import composer
from pantry_tui.reference.names import find_method
from pantry_tui.services.batchwork.line import Kitchen
from pantry_tui.services.pantry import Pantry


def kitchen(p: Pantry) -> Kitchen:
    """Its day, places, units, foods (its own among them) and methods."""
    tables = p.tables

    def says(food: str) -> Method | None:
        known = tables.food_called(food)
        return Method(known.says) if known is not None and known.says else None

    def usual(food: str) -> tuple[str, ...]:
        known = tables.food_called(food)
        return known.usual if known is not None else ()

    def offers(food: FoodFacts, method: Method, climate: Climate | None) -> bool:
        from pantry_tui.services.batchwork import offered

        return offered.offers(food, method, climate, p.book_of_rules)

    return Kitchen(
        p.today,
        p.place_paths(),
        composer(tables, p.own_food),
        find_method,
        {id_: place.climate for id_, place in p.places.items()},
        p.units,
        says,
        usual,
        offers,
    )
