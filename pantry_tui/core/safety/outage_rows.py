"""The rows of data/outage.csv, and which of them speaks for an item after a power cut."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from enum import StrEnum

from pantry_tui.core import scope
from pantry_tui.core.canned import PROCESSED, low_acid_in_water
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Climate, Method, State, Trust


class Action(StrEnum):
    """What to do with an item, mildest first."""

    KEEP = "keep"
    REFREEZE = "refreeze"
    USE_NOW = "use now"
    DISCARD = "discard"


STRICTNESS = tuple(Action)


class Condition(StrEnum):
    """What a row of data/outage.csv speaks of; a `door_shut` row holds hours, not a verdict."""

    SHUT = "door_shut"
    SHUT_FULL = "door_shut_full"
    SHUT_HALF = "door_shut_half"
    WARM = "held_above_40_over_2h"
    WARM_8H = "held_above_50_over_8h"
    COLD = "ice_crystals_or_cold"
    COLD_DAY = "thawed_cold_over_24h"
    THAWED = "thawed_above_40"
    THAWED_6H = "thawed_above_40_over_6h"


#: The conditions of each appliance, mildest first.
LADDER = {
    Climate.FRIDGE: (Condition.WARM, Condition.WARM_8H),
    Climate.FREEZER: (Condition.COLD, Condition.COLD_DAY, Condition.THAWED, Condition.THAWED_6H),
}


@dataclass(frozen=True, slots=True)
class OutageRule:
    """One row of data/outage.csv. Empty `methods` or `states` mean any of them.

    `foods` are `*`, `group:G`, `class:C`, a food's name, or `named:N` for a name that the food
    table does not hold. `hours` stands where the row counts hours.
    """

    id: str
    appliance: Climate
    item: str
    foods: tuple[str, ...]
    methods: frozenset[Method]
    states: frozenset[State]
    condition: Condition
    action: Action
    hours: float | None
    note: str
    source: str
    trust: Trust


#: A sealed jar of these stands at room temperature: rows for chilled food do not speak for it.
#: What stands in a freezer for the sake of its cold: no row there, and it goes.
_NEEDS_COLD = frozenset({Method.FROZEN, Method.FRESH, Method.BOUGHT, Method.MEAL, Method.CELLAR})
#: The same as its value, only for a shorter time.
_SHORTER = {
    Condition.WARM_8H: Condition.WARM,
    Condition.COLD_DAY: Condition.COLD,
    Condition.THAWED_6H: Condition.THAWED,
}
#: Fresh and bought food of a name nobody knows may be cut, pressed or mixed.
_AS_IT_CAME = frozenset({Method.FRESH, Method.BOUGHT})


def _closeness(rule: OutageRule, key: str, food: FoodFacts, method: Method) -> int:
    """3 the food itself, 2 its class, 1 its group, 0 any food, -1 another food."""
    strict = rule.action is Action.DISCARD
    kind, name = scope.split(key)
    if kind == "named":
        return scope.ITSELF if food.name == name else scope.OTHER
    if kind == "group" and not food.known and method in _AS_IT_CAME and not strict:
        return scope.OTHER
    # Nobody knows the class of an unknown food: only the strict rows of its group speak.
    return scope.near(key, food, guess=strict)


def _speaks(rule: OutageRule, method: Method, state: State) -> bool:
    if not rule.methods:
        return not (method in PROCESSED and state is State.SEALED)
    return method in rule.methods


def _closest(
    rules: Iterable[OutageRule], food: FoodFacts, method: Method, state: State
) -> OutageRule | None:
    """The strictest of the rows that are closest to the food."""
    ranked = [
        (max(_closeness(rule, key, food, method) for key in rule.foods), rule)
        for rule in rules
        if _speaks(rule, method, state)
    ]
    best = max((near for near, _ in ranked), default=-1)
    found = [rule for near, rule in ranked if near == best and near >= 0]
    return max(found, key=lambda rule: STRICTNESS.index(rule.action), default=None)


def _row(
    rows: Sequence[OutageRule], condition: Condition, food: FoodFacts, method: Method, state: State
) -> OutageRule | None:
    """The row for an item in a condition. Rows that name its state are weighed beside those for
    any state, and the stricter of both stands."""
    if low_acid_in_water(method, food):
        return None
    here = [rule for rule in rows if rule.condition is condition]
    # Under oil food is safe only while it is cold, whatever else a row allows.
    if method is Method.IN_OIL:
        own = method if condition is Condition.COLD else None
        here = [r for r in here if r.action is Action.DISCARD or own in r.methods]
    any_state = _closest((r for r in here if not r.states), food, method, state)
    this_state = _closest((r for r in here if state in r.states), food, method, state)
    found = [rule for rule in (any_state, this_state) if rule is not None]
    return max(found, key=lambda rule: STRICTNESS.index(rule.action), default=None)


#: The answer for an item and the row it rests on, None for the strict rule.
_Said = tuple[Action, OutageRule | None]


def _by_strictness(said: _Said) -> int:
    return STRICTNESS.index(said[0])


def _warm_freezer(
    rows: Sequence[OutageRule], food: FoodFacts, method: Method, state: State
) -> _Said:
    """Thawed and warm: the freezer's row; the refrigerator's where that is stricter and the item
    was no longer closed and frozen, or where the freezer has none for what never needed it."""
    frozen = _row(rows, Condition.THAWED, food, method, state)
    chilled = _row(rows, Condition.WARM, food, method, state)
    warm = (chilled.action if chilled else Action.DISCARD, chilled)
    if frozen is None:
        return (Action.DISCARD, None) if method in _NEEDS_COLD else warm
    own = (frozen.action, frozen)
    return max(own, warm, key=_by_strictness) if state in (State.OPEN, State.THAWED) else own


def _said(
    rows: Sequence[OutageRule], at: Condition, food: FoodFacts, method: Method, state: State
) -> _Said:
    """What the rows for one condition say; one that only lasted longer is never milder."""
    if at is Condition.THAWED:
        return _warm_freezer(rows, food, method, state)
    rule = _row(rows, at, food, method, state)
    shorter = _SHORTER.get(at)
    if shorter is None:
        return rule.action if rule else Action.DISCARD, rule
    before = _said(rows, shorter, food, method, state)
    return before if rule is None else max((rule.action, rule), before, key=_by_strictness)


def answer(
    rows: Sequence[OutageRule], at: Condition, food: FoodFacts, method: Method, state: State
) -> _Said:
    """The answer in a condition, never stricter than in a worse one: dried fruit that keeps in
    the warm keeps in the cold."""
    ladder = LADDER[Climate.FRIDGE if at in LADDER[Climate.FRIDGE] else Climate.FREEZER]
    said = [_said(rows, one, food, method, state) for one in ladder[ladder.index(at) :]]
    return min(said, key=_by_strictness)
