"""The one text that stands wherever a decision about safety is taken, and who speaks when."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.words import Method, Verdict

if TYPE_CHECKING:
    from pantry_tui.core.model import FoodFacts

#: Shown beside every verdict that throws food away, or leaves it unknown where it can hurt, and
#: beside every published process or limit.
CAUTION = (
    "Never taste to find out. Follow tested recipes, and ask your local food-safety authority "
    "where you are in doubt. If anyone feels ill, get medical help at once."
)

#: Of what stood for more than a day as no publication allows: its day to be saved is over (USDA AIB
#: 539 gives 24 hours), and how it is discarded is said in `core.safety.signs.DISPOSAL`.
STOOD = (
    "Do not open or taste it: discard it closed, in two bags, and ask your local food-safety "
    "authority."
)

#: A class of food, and what is said of it wherever it was not cooked: beans (US FDA, Bad Bug Book,
#: from memory), cassava and bamboo shoots (Food Standards Australia New Zealand, 2017), raw juice
#: of elderberries (US CDC, MMWR of 1984), taro and lupins (from memory).
RAW_POISON = "raw-poison"
COOK_IT = "Raw or half cooked it can poison: boil it until it is soft before anybody eats it."
#: Methods that cook it.
_COOKS = frozenset({Method.BOILING_WATER, Method.PRESSURE, Method.JAM, Method.MEAL})


def must_be_cooked(food: FoodFacts, method: Method) -> bool:
    """Whether it stands there raw and would poison whoever eats it so."""
    return RAW_POISON in food.classes and method not in _COOKS


def cautioned(verdict: Verdict, usable: bool) -> bool:
    """Whether the caution stands beside a verdict. What nobody knows of flour or salt is only that
    no figure is published: it cannot hurt and is offered."""
    return verdict in UNFIT or (verdict is Verdict.UNKNOWN and not usable)


#: How a sign begins in the log that a person put in words which nobody understood: it holds the
#: container in doubt, and a look since takes it back.
OWN = "in doubt, in own words: "
