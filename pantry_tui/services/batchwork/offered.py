"""Ways of keeping a food that may be named to somebody who has not said any: none that would be
refused, or after which nobody could say that it may be eaten."""

from __future__ import annotations

from datetime import date

from pantry_tui.core.canned import PROCESSED, WORKING, low_acid_in_water
from pantry_tui.core.keeping.exposure import imagined
from pantry_tui.core.keeping.limits import judge_fresh
from pantry_tui.core.keeping.rules import Rulebook
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.process import doubt
from pantry_tui.core.words import ASSUMED_F, WARM_TO_COLD, Climate, Method, State
from pantry_tui.reference.process import load_not_recommended, processes_named

_OF_A_FREEZER = frozenset({Method.FROZEN, Method.FREEZER_JAM})
_DAY = date(2000, 1, 1)
_COLD = (Climate.FRIDGE, Climate.FREEZER)


def offers(food: FoodFacts, method: Method, climate: Climate | None, book: Rulebook) -> bool:
    """Whether it may be kept so: where it stands, or, by a way that the cold keeps, in the
    cold. What was bought is said so of everything."""
    if method is Method.BOUGHT:
        return True
    if low_acid_in_water(method, food) or not may_be_canned(food, method):
        return False
    return any(_keeps(food, method, one, book) for one in _where(method, climate))


def may_be_canned(food: FoodFacts, method: Method) -> bool:
    """Whether a tested process stands for it; true of what is not canned."""
    if method not in PROCESSED:
        return True
    found = doubt(method, food, "", {}, None, processes_named(food.name), load_not_recommended())
    # Of acid food in boiling water published figures stand without a process of its own.
    bare = method is not Method.PRESSURE
    return found is None or (bare and all("No tested process" in one for one in found.problems))


def instead_of_water(food: FoodFacts) -> str:
    """What to do with low-acid food that may not be canned in boiling water."""
    if may_be_canned(food, Method.PRESSURE):
        return "Freeze it, or can it in a pressure canner by a tested process."
    return "Freeze it: no tested process is known for it in a pressure canner either."


def _where(method: Method, climate: Climate | None) -> tuple[Climate, ...]:
    if method in _OF_A_FREEZER:
        return (Climate.FREEZER,)
    if climate is None:
        return WARM_TO_COLD
    return (climate, *_COLD) if method.needs_cold else (climate,)


def _keeps(food: FoodFacts, method: Method, climate: Climate, book: Rulebook) -> bool:
    """Whether it may begin there where it has to work first, and once it is ready may be eaten from
    there or from the cold."""
    batch = Batch("", "", food, method, _DAY)

    def judged(state: State, where: Climate) -> tuple[bool, bool]:
        there = imagined(where, ASSUMED_F[where], measured=True)
        found = judge_fresh(batch, state, there, _DAY, book)
        return bool(found.refused), found.usable

    if method not in WORKING:
        refused, usable = judged(State.SEALED, climate)
        return usable and not refused
    if judged(State.WORKING, climate)[0]:
        return False
    return any(judged(State.SEALED, one) == (False, True) for one in (climate, *_COLD))
