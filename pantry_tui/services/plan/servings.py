"""About how many servings stand in a container, and how much of a bulk one a meal takes.

Estimates all: half a cup is a serving of fruit, vegetables and meat in the planning charts of
extension services; jars, appetites and trimming differ from house to house.
"""

from __future__ import annotations

from fractions import Fraction

from pantry_tui.core.amounts import Amount, kitchen
from pantry_tui.core.log.fold import ONE
from pantry_tui.core.model import Container
from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.core.words import Group, Method
from pantry_tui.reference.names import Food
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.dried import DRY, is_ripe, times_fresh

#: Pints in a unit of volume.
_PINTS = {
    "pint": 1.0,
    "quart": 2.0,
    "gallon": 8.0,
    "cup": 0.5,
    "ml": 1 / 473.0,
    "l": 1000 / 473.0,
    "fl oz": 1 / 16,
    "tbsp": 1 / 32,
    "tsp": 1 / 96,
}
_POUNDS = {"lb": 1.0, "oz": 1 / 16, "kg": 2.2046, "g": 0.0022046}
#: Servings in a pound where a food has no figure of its own, raw and trimmed as kept, or as it was
#: before it was dried. Common practice, no source: four ounces of meat or fish, a third of a pound
#: of roots and fruit.
_A_POUND = {
    Group.MEAT: 4.0,
    Group.FISH: 4.0,
    Group.GRAIN: 8.0,
    Group.HERB: 30.0,
    Group.FAT: 30.0,
    Group.RELISH: 16.0,
}
_OTHER_POUND = 3.0
#: Their own figures of a pound are as bought, with peel and pod; kept, they are trimmed.
_TRIMMED = frozenset({Group.VEGETABLE, Group.FRUIT})
#: The figures of birds are with their bones; kept so, they are off them.
_OFF_THE_BONE = DRY | {Method.MEAL}
_BIRD = "poultry"
_PER_PINT = 4.0
#: Two eggs are a main: USDA MyPlate counts one as an ounce of the two or three that a meal has
#: (from memory).
_OF_EGG = 0.5
#: One by one they are eggs, not boxes of them.
_IN_SHELL = frozenset({Method.FRESH, Method.BOUGHT, Method.LIME})
#: A measure of dried fruit or vegetables serves as twice of fresh (USDA MyPlate counts half a cup
#: of dried fruit as a cup; from memory).
_SWELLS = 2.0


def servings(p: Pantry, container: Container) -> float:
    """About how many servings stand in it."""
    batch = p.stock.batches[container.batch]
    food = batch.food
    return in_amount(p, food.name, food.group, batch.method, container.left or ONE)


def in_amount(p: Pantry, name: str, group: Group, method: Method, held: Amount) -> float:
    """Servings in so much of a food; a piece, or a container of which nobody said how much it
    holds, counts as a pint, an egg in its shell as itself."""
    food = p.tables.index.find(name)
    if held.unit in _POUNDS:
        pounds = float(held.number) * _POUNDS[held.unit]
        own = food.servings_per_lb if food and group not in _TRIMMED else None
        if own and food and _BIRD in food.classes and method in _OFF_THE_BONE:
            own = max(own, _A_POUND[group])
        if own and food and (food.says in DRY or method not in DRY):
            return pounds * own  # that of a food whose name says it is dry is of it dry
        fresh = pounds * times_fresh(p, name, group, method)
        return fresh * (own or _A_POUND.get(group, _OTHER_POUND))
    if not held.unit and group is Group.EGG and (held.number > 1 or method in _IN_SHELL):
        return _OF_EGG * float(held.number)
    swells = _SWELLS if _dried_from_fresh(name, group, method, food) else 1.0
    return per_pint(food) * swells * float(held.number) * _PINTS.get(held.unit, 1.0)


def per_pint(food: Food | None) -> float:
    """Servings in a pint of it; where nobody estimated them, four of half a cup."""
    return food.servings_per_pint if food and food.servings_per_pint else _PER_PINT


def _dried_from_fresh(name: str, group: Group, method: Method, food: Food | None) -> bool:
    """Whether it fills less than it serves: what is dry by its name has figures of its own."""
    says = food is not None and food.says in DRY
    return method is Method.DRIED and group in _TRIMMED and not says and not is_ripe(name)


def weight(held: Amount | None) -> float | None:
    """Pounds in an amount; None where it is no weight."""
    return float(held.number) * _POUNDS[held.unit] if held and held.unit in _POUNDS else None


def portion(
    p: Pantry, container: Container, wanted: float, taken: Fraction = Fraction(0)
) -> Amount | None:
    """How much of a bulk container makes so many servings, in a kitchen's numbers and never more
    than is left once so much is `taken` for other meals; None where nothing is."""
    left = container.left
    if left is None or left.number <= taken:
        return None
    share = Fraction(wanted / max(servings(p, container), CRUMB)).limit_denominator(1000)
    part = min(left.number - taken, kitchen(Amount(left.number * share, left.unit)).number)
    return Amount(part, left.unit)
