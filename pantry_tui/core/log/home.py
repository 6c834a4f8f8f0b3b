"""What a household said of itself, folded from its events."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from typing import Any

from pantry_tui.core.dataclass import dataclass, field
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event


@dataclass(frozen=True, slots=True)
class Home:
    """What the household said of itself. None where nobody ever said."""

    altitude_ft: int | None = None
    people: int | None = None
    units: str | None = None
    meals: int | None = None
    advice: str | None = None
    jars: str | None = None
    half: str | None = None
    ceilings: Mapping[str, float] = field(default_factory=dict)
    table: Mapping[date, int] = field(default_factory=dict)
    foods: Sequence[said.FoodAdded] = ()
    rules: Sequence[tuple[str, said.RuleAdded]] = ()  # with the id of the event that added it
    substitutes: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    dishes: Mapping[str, tuple[said.Taken, ...]] = field(default_factory=dict)
    week: said.Planned | None = None
    checked: Mapping[str, date] = field(default_factory=dict)  # the last day of each check


def fold_household(events: Iterable[Event]) -> Home:
    """The household from its standing events, in recorded order; the last word stands."""
    settings: dict[str, object] = {}
    ceilings: dict[str, float] = {}
    table: dict[date, int] = {}
    foods: list[said.FoodAdded] = []
    rules: list[tuple[str, said.RuleAdded]] = []
    substitutes: dict[str, tuple[str, ...]] = {}
    dishes: dict[str, tuple[said.Taken, ...]] = {}
    week: said.Planned | None = None
    checked: dict[str, date] = {}
    for event in events:
        payload = event.payload
        match payload:
            case said.Household():
                told = payload._asdict().items()
                settings |= {name: value for name, value in told if value is not None}
            case said.Ceiling():
                _say(ceilings, payload.what, payload.most)
            case said.Table():
                for day in payload.days:
                    _say(table, day, payload.people)
            case said.FoodAdded():
                foods.append(payload)
            case said.RuleAdded():
                rules.append((event.id, payload))
            case said.Substitutes():
                _say(substitutes, payload.food, payload.others or None)
            case said.Dish():
                _say(dishes, payload.name, payload.takes or None)
            case said.Checked():
                checked[payload.what] = max(event.day, checked.get(payload.what, event.day))
            case said.Planned():
                week = payload if payload.start is not None else None
    return Home(
        ceilings=ceilings,
        table=table,
        foods=tuple(foods),
        rules=tuple(rules),
        substitutes=substitutes,
        dishes=dishes,
        week=week,
        checked=checked,
        **settings,  # type: ignore[arg-type]
    )


def _say(known: dict[Any, Any], name: Any, value: Any) -> None:
    """The last word stands; None takes it back."""
    known.pop(name, None)
    if value is not None:
        known[name] = value
