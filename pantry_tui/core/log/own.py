"""Foods and rules that a household added, read from the lines of its log."""

from __future__ import annotations

from pantry_tui.core.keeping.rules import Rule, Status
from pantry_tui.core.log.events import Event
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust


def rule_of(event: Event) -> Rule:
    """The rule that a line of the log adds."""
    data = event.data
    return Rule(
        id=f"own-{event.id}",
        method=Method(data["method"]),
        food=data["food"],
        state=State(data["state"]),
        climates=frozenset({Climate(data["climate"])}),
        kind=Kind(data["kind"]),
        least=data["number"],
        most=data["number"],
        use=data["number"],
        unit=data["unit"],
        temp_f_max=None,
        status=Status.CURRENT,
        wording=f"Your own rule. {data['why']}".strip(),
        source="",
        trust=Trust.HOUSEHOLD,
    )


def food_of(event: Event) -> tuple[FoodFacts, tuple[str, ...]]:
    """The food that a line of the log adds, and the names it is found by."""
    data = event.data
    facts = FoodFacts(
        data["name"], Group(data["group"]), Acidity(data["acidity"]), frozenset(), known=False
    )
    return facts, (data["name"], *data["also"])
