"""What the one wide table of quality figures (shop food, 2018) says where no closer one does.

It is wide and some of its figures are outliers, so it never stands against a stricter, a closer or
a newer figure, and only brings a best by, or an earlier one. It makes nothing fit to be eaten but
shop food that is shut on a shelf, or opened, whose days then are its end (core.keeping.shop).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from pantry_tui.core import scope
from pantry_tui.core.keeping.packs import SHELF_PACK
from pantry_tui.core.keeping.rules import Rule, Rulebook, closeness
from pantry_tui.core.keeping.warmth import Case, Life, life
from pantry_tui.core.words import WARM_TO_COLD, Climate, State


def wide_life(case: Case, usual: Life | None, book: Rulebook) -> Life | None:
    """The shortest figure of the wide table for just that food, method, state and climate; None
    where it has none, where the `usual` one is closer, newer or no longer than any of them, or
    where a figure for a cooler place is shorter: then it is of several products (dill, fresh or
    dried), and nobody knows which this is, but for the pack of a shelf."""
    if "cut" in case.food.classes:
        return None  # the table speaks of whole crops
    every = [
        rule
        for rule in book.wide(case.food.name)
        if rule.method is case.method and rule.state is case.state and rule.use is not None
    ]
    shelf = case.state is State.SEALED and SHELF_PACK in case.food.classes
    found = [rule for rule in every if case.climate in rule.climates]
    if shelf and not found and case.climate is Climate.FRIDGE:
        # A pack of a shelf keeps no shorter where it is cooler.
        found = [rule for rule in every if Climate.PANTRY in rule.climates]
    if not found:
        return None
    rule = min(found, key=lambda one: one.days)
    if usual is not None:
        closer = closeness(usual.rule, case.food) == scope.ITSELF
        newer = not book.older(usual.rule.source)
        if closer or newer or any(usual.rule.days <= one.days for one in found):
            return None
    if not shelf and any(other.days < rule.days for other in _cooler(every, case, book)):
        return None
    return life(case, [rule], book)


def _cooler(every: Sequence[Rule], case: Case, book: Rulebook) -> Iterator[Rule]:
    """The figures for cooler places, those of the table and those of the rules."""
    for climate in WARM_TO_COLD[WARM_TO_COLD.index(case.climate) + 1 :]:
        yield from (one for one in every if climate in one.climates)
        yield from book.speaking(case.food, case.method, case.state, climate)
