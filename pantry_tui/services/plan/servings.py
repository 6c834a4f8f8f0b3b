"""About how many servings stand in a container, and how much of a bulk one a meal takes.

Estimates all: half a cup is a serving of fruit, vegetables and meat in the planning charts of
extension services; jars, appetites and trimming differ from house to house.
"""

from __future__ import annotations

from fractions import Fraction

from pantry_tui.core.amounts import Amount, kitchen
from pantry_tui.core.log.fold import ONE
from pantry_tui.core.model import Container
from pantry_tui.core.words import Group, Method
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.dried import times_fresh

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
#: Servings in a pound, raw and trimmed as kept, or as it was before it was dried. Common practice,
#: no source: four ounces of meat or fish, a third of a pound of roots and fruit.
_A_POUND = {
    Group.MEAT: 4.0,
    Group.FISH: 4.0,
    Group.GRAIN: 8.0,
    Group.HERB: 30.0,
    Group.FAT: 30.0,
    Group.RELISH: 16.0,
}
_OTHER_POUND = 3.0
_PER_PINT = 4.0


def servings(p: Pantry, container: Container) -> float:
    """About how many servings stand in it."""
    batch = p.stock.batches[container.batch]
    food = batch.food
    return in_amount(p, food.name, food.group, batch.method, container.left or ONE)


def in_amount(p: Pantry, name: str, group: Group, method: Method, held: Amount) -> float:
    """Servings in so much of a food; a piece, or a container of which nobody said how much it
    holds, counts as a pint, an egg as itself."""
    food = p.tables.index.find(name)
    per_pint = food.servings_per_pint if food and food.servings_per_pint else _PER_PINT
    if held.unit in _POUNDS:
        pounds = float(held.number) * _POUNDS[held.unit]
        fresh = pounds * times_fresh(p, name, group, method)
        return fresh * _A_POUND.get(group, _OTHER_POUND)
    if not held.unit and group is Group.EGG and held.number > 1:
        return float(held.number)
    return per_pint * float(held.number) * _PINTS.get(held.unit, 1.0)


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
    share = Fraction(wanted / max(servings(p, container), 1e-9)).limit_denominator(1000)
    part = min(left.number - taken, kitchen(Amount(left.number * share, left.unit)).number)
    return Amount(part, left.unit)
