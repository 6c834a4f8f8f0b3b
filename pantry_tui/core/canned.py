"""What several rules ask of a method and a food: jars with a lid, jars with a process of their own,
what leaves the kitchen still at work, food of animals, and the one thing that no record can put
right."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.core.words import Acidity, Group, Method

if TYPE_CHECKING:
    from pantry_tui.core.model import FoodFacts

#: Canned by a process of its own, with a time (and a pressure) for each food.
PROCESSED = frozenset({Method.BOILING_WATER, Method.PRESSURE})
#: What stands under a lid with a vacuum seal.
LIDDED = PROCESSED | {Method.JAM, Method.VINEGAR_PICKLE}
#: They leave the kitchen still at work: they need a hand before they keep.
WORKING = frozenset(
    {
        Method.LACTIC, Method.VINEGAR_FERMENT, Method.ALCOHOL_FERMENT, Method.PASTE,
        Method.INFUSION, Method.SALTED,
    }
)  # fmt: skip
ANIMAL = frozenset({Group.MEAT, Group.FISH, Group.EGG, Group.DAIRY, Group.MEAL})


def low_acid_in_water(method: Method, food: FoodFacts) -> bool:
    """Low-acid food in boiling water: the spores of botulism live through it (USDA AIB 539)."""
    return method is Method.BOILING_WATER and food.acidity is Acidity.LOW_ACID


def still_possible(food: FoodFacts, *, again: bool) -> str:
    """USDA AIB 539 and the services that carry it: 24 hours, then it is thrown away."""
    redo = ", or process it again by a tested process" if again else ""
    return f"Within 24 hours: refrigerate or freeze it{redo}. After that {thrown(food)}."


def thrown(food: FoodFacts) -> str:
    """ "discard it", or where it may hold the toxin of botulism, without tasting."""
    sour = food.is_acid and food.acidity is Acidity.ACID
    return "discard it" + ("" if sour else " without tasting")
