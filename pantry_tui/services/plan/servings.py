"""About how many servings stand in a container, and how much of a bulk one a meal takes.

Estimates all: half a cup is a serving of fruit, vegetables and meat in the planning charts of
extension services; jars, appetites and trimming differ from house to house.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

from pantry_tui.core.amounts import read_amount, say_amount
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.words import Group
from pantry_tui.errors import BadInput
from pantry_tui.services.pantry import Pantry

#: Pints in a unit of volume.
_PINTS = {
    "pint": 1.0,
    "quart": 2.0,
    "gallon": 8.0,
    "cup": 0.5,
    "ml": 1 / 473.0,
    "l": 1000 / 473.0,
    "fl oz": 1 / 16,
}
_POUNDS = {"lb": 1.0, "oz": 1 / 16, "kg": 2.2046, "g": 0.0022046}
#: Sizes that are words, not amounts.
_WORDS = {"half-pint": 0.5, "half pint": 0.5, "half-gallon": 4.0, "half gallon": 4.0}
#: Servings in a pound, raw and trimmed as kept. Common practice, no source: four ounces of meat or
#: fish, a third of a pound of roots and fruit.
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
    return in_amount(p, batch, container.amount) if container.amount else container_size(p, batch)


def container_size(p: Pantry, batch: Batch) -> float:
    """Servings in a full container of the batch; one without a known size counts as a pint."""
    return in_amount(p, batch, batch.size)


def in_amount(p: Pantry, batch: Batch, text: str) -> float:
    """Servings in an amount or size of what the batch holds: "2 lb", "quart jar"."""
    food = p.tables.index.find(batch.food.name)
    per_pint = food.servings_per_pint if food and food.servings_per_pint else _PER_PINT
    pounds = weight(text)
    if pounds is not None:
        return pounds * _A_POUND.get(batch.food.group, _OTHER_POUND)
    return per_pint * _pints(text)


@lru_cache(maxsize=4096)
def weight(text: str) -> float | None:
    """Pounds in an amount like "2 lb bag"; None where it is no weight."""
    number, unit = _amount(text)
    return number * _POUNDS[unit] if unit in _POUNDS else None


@lru_cache(maxsize=4096)
def _pints(text: str) -> float:
    size = text.lower()
    for word, pints in _WORDS.items():
        if size.startswith(word):
            return pints
    number, unit = _amount(size)
    return number * _PINTS.get(unit, 1.0) if unit in _PINTS else 1.0


def _amount(text: str) -> tuple[float, str]:
    """The number and unit that a size begins with: "pint jars", "500 ml jar", "2 lb bag"."""
    words = text.lower().split()
    for end in range(min(3, len(words)), 0, -1):
        head = " ".join(words[:end])
        for tried in (head, f"1 {head}"):
            try:
                number, unit = read_amount(tried)
            except BadInput:
                continue
            if unit:
                return float(number), unit
    return 0.0, ""


def portion(
    p: Pantry, container: Container, wanted: float, taken: Fraction = Fraction(0)
) -> tuple[Fraction, str]:
    """How much of a bulk container makes so many servings, rounded to a quarter of its unit and
    never more than is left once so much is `taken` for other meals: the number, and in words."""
    number, unit = read_amount(container.amount)
    share = Fraction(wanted / max(servings(p, container), 1e-9)).limit_denominator(1000)
    part = min(number - taken, Fraction(max(1, round(number * share * 4)), 4))
    return part, say_amount(part, unit) if part > 0 else ""
