"""Foods and rules that a household added, from what its log says of them."""

from __future__ import annotations

from pantry_tui.core.keeping.rules import Rule, Status
from pantry_tui.core.log.payloads import FoodAdded, RuleAdded
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Group, Trust


def rule_of(added: RuleAdded, event: str = "") -> Rule:
    """The rule, named after the event that added it."""
    return Rule(
        id=f"own-{event}",
        method=added.method,
        food=added.food,
        state=added.state,
        climates=frozenset({added.climate}),
        kind=added.kind,
        least=added.number,
        most=added.number,
        use=added.number,
        unit=added.unit,
        temp_f_max=None,
        status=Status.CURRENT,
        wording=f"Your own rule. {added.why}".strip(),
        source="",
        trust=Trust.HOUSEHOLD,
    )


def food_of(added: FoodAdded) -> tuple[FoodFacts, tuple[str, ...]]:
    """The food, and the names it is found by."""
    return told_food(added.name, added.group, added.acidity), (added.name, *added.also)


def told_food(name: str, group: Group, acidity: Acidity) -> FoodFacts:
    """A food of which there is the household's word alone."""
    return FoodFacts(name, group, acidity, known=False, told=True)
