"""What each container of a put-up holds, out of what was said of it."""

from __future__ import annotations

from fractions import Fraction

from pantry_tui.core.amounts import Amount, amount_of
from pantry_tui.core.batchwork.kitchen import GRAMS, MILLILITRES
from pantry_tui.core.dataclass import replace
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.text import singular
from pantry_tui.core.vessels import Vessel, contents_of, names_pieces, vessel_of
from pantry_tui.core.words import Group, Method
from pantry_tui.errors import BadInput
from pantry_tui.services.rows import PutUpReading

#: Kept whole and as it is, so that a number of it means pieces.
_LOOSE = frozenset({Method.CELLAR, Method.FRESH, Method.LIME})
_COUNTED = frozenset({Group.VEGETABLE, Group.FRUIT, Group.HERB, Group.EGG})


def size_of(reading: PutUpReading) -> str:
    """ "40 lb crates", "heads", "": size and vessel as a batch keeps them."""
    return " ".join(part for part in (reading.size, reading.container) if part)


def said_amount(reading: PutUpReading) -> Amount | None:
    """What was said apart from the size, as in amount=38 lb. Raises BadInput."""
    typed = dict(reading.process).get("amount", "")
    return amount_of(typed) if typed else None


def with_contents(reading: PutUpReading, facts: FoodFacts | None) -> PutUpReading:
    """The reading with what each container holds: a number of loose things that are counted is one
    pile of so many pieces."""
    if reading.contents is not None:
        return reading
    try:
        amount = said_amount(reading)
    except BadInput:
        return reading  # it is named among the problems
    size = size_of(reading)
    held = amount or contents_of(size)
    counted = facts is not None and facts.group in _COUNTED
    if held is None and counted and reading.method in _LOOSE and names_pieces(size):
        return replace(reading, count=1, contents=Amount(Fraction(reading.count)))
    return replace(reading, contents=held)


#: Grams, and millilitres, that one container holds at most: what is shut (a whole pig in its bag is
#: less), and a crate, sack, crock or heap. Whatever is more has a slip in its number or its unit.
#: This program's choice.
_MOST_SHUT, _MOST = 100_000, 2_000_000


def beyond_any(reading: PutUpReading) -> list[str]:
    """That no container holds so much, a sentence; nothing where it may."""
    held, method = reading.contents, reading.method
    if held is None or method is None or not held.unit:
        return []
    each = (GRAMS | MILLILITRES).get(held.unit, 0) * held.number
    size = size_of(reading)
    shut = vessel_of(method, size, held.unit) is Vessel.CLOSED
    if each <= (_MOST_SHUT if shut else _MOST):
        return []
    vessel = singular(reading.container) if reading.container else "container"
    return [f"{held} in one {vessel} cannot be: write how much each holds, with its unit."]


#: How much a container holds of which nobody said it, as `plan.servings` counts it.
ASSUMED = "not said: each counts as 1 pint in the plan"


def assumed(reading: PutUpReading) -> str:
    """What is taken for what each jar, bag or box of it holds, "" where that was said, or where it
    stands in no such vessel."""
    size, known = size_of(reading), reading.contents is not None
    if not reading.food or not reading.container or known or reading.method is None:
        return ""
    shut = vessel_of(reading.method, size) is Vessel.CLOSED and not names_pieces(size)
    return ASSUMED if shut and contents_of(size) is None else ""


def booked_amount(reading: PutUpReading) -> Amount | None:
    """What the log has to say of it: what its size does not."""
    held = reading.contents or said_amount(reading)
    return None if held == contents_of(size_of(reading)) else held
