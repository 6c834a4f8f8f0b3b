"""A power cut: what is still cold, and what the published tables say of each item after it.

What is unknown counts as badly as it can be: past the published hours of a shut door, food that
nobody looked at and nobody measured counts as thawed and warm for the whole of the cut.

Laws, tested in tests/core/test_outage.py: a longer cut, a warmer reading, a less full freezer,
less ice, a door that was opened never give a milder answer; nor does a thing unknown.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from pantry_tui.core.keeping.rules import CLASS_GROUPS
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Method, State, Trust, Verdict

#: Hours that a shut door holds the cold (foodsafety.gov; NC Cooperative Extension).
FRIDGE_HOURS, FULL_HOURS, HALF_HOURS = 4.0, 48.0, 24.0
#: Hours that perishable food may be above 40 °F, and where the air was above 90 °F (FSIS).
WARM_HOURS, HOT_HOURS = 2.0, 1.0
COLD_F, HOT_F, FROZEN_F = 40.0, 90.0, 0.0
#: Food thawed cold has a day at the least (University of Illinois Extension, ground meat).
THAWED_HOURS = 24.0


class Action(StrEnum):
    """What to do with an item, mildest first."""

    KEEP = "keep"
    REFREEZE = "refreeze"
    USE_NOW = "use now"
    DISCARD = "discard"


STRICTNESS = tuple(Action)
_VERDICT = {Action.KEEP: Verdict.SOUND, Action.DISCARD: Verdict.DISCARD}


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
_WHY = {
    Condition.WARM: "Above 40 F for over 2 h, or nobody can say that it was not.",
    Condition.WARM_8H: "Above 50 F for over 8 h, or nobody can say that it was not.",
    Condition.COLD: "Still icy, or at 40 F or below: one that is neither must go.",
    Condition.COLD_DAY: "No ice was seen, and it may have lain thawed for over a day.",
    Condition.THAWED: "Thawed and above 40 F for over 2 h, or nobody can say that it was not.",
    Condition.THAWED_6H: "Thawed and above 40 F for 6 h, or nobody can say that it was not.",
}
NO_FIGURE = "No published figure for it, so the strict rule."


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


@dataclass(frozen=True, slots=True)
class Cut:
    """What is known of a power cut in one refrigerator or freezer.

    `max_temp_f` is the warmest that was read inside, `ice` whether ice crystals are left in the
    food. None means unknown: within the hours of a shut door the published promise stands, past
    them it counts as warm and thawed. `opened` says that the door was opened, so that no hours
    are promised. Raises ValueError for another climate, or hours that are no number from 0 up.
    """

    appliance: Climate
    hours: float
    full: bool
    max_temp_f: float | None
    ice: bool | None
    opened: bool = False

    def __post_init__(self) -> None:
        if self.appliance not in LADDER:
            raise ValueError(f"a {self.appliance} is neither refrigerator nor freezer")
        if not (math.isfinite(self.hours) and self.hours >= 0):
            raise ValueError(f"{self.hours} hours is no length of a power cut")
        if self.max_temp_f is not None and not math.isfinite(self.max_temp_f):
            raise ValueError(f"{self.max_temp_f} is no temperature")


@dataclass(frozen=True, slots=True)
class Triage:
    """The answer for one item. Sorting by `rank` puts what to use first on top."""

    verdict: Verdict
    action: str
    reasons: tuple[str, ...]
    rank: int
    rules: tuple[OutageRule, ...]


def hold_hours(appliance: Climate, full: bool) -> float:
    """Hours that the appliance stays cold with its door shut; `full` counts for a freezer only."""
    if appliance is Climate.FRIDGE:
        return FRIDGE_HOURS
    return FULL_HOURS if full else HALF_HOURS


def _promised(cut: Cut) -> float:
    # An opened door promises nothing: what is left is the shortest time that food may be warm.
    return HOT_HOURS if cut.opened else hold_hours(cut.appliance, cut.full)


def _warm_too_long(cut: Cut) -> bool:
    """Measured above 40 °F; how long is not known, so the whole of the cut counts."""
    if cut.max_temp_f is None or cut.max_temp_f <= COLD_F:
        return False
    return cut.hours > (HOT_HOURS if cut.max_temp_f > HOT_F else WARM_HOURS)


def _fridge(cut: Cut) -> Condition | None:
    within = cut.max_temp_f is None and cut.hours <= _promised(cut)
    if within or not (cut.max_temp_f is None or _warm_too_long(cut)):
        return None
    long = cut.hours > 8 and (cut.max_temp_f is None or cut.max_temp_f > 50)
    return Condition.WARM_8H if long else Condition.WARM


def _freezer(cut: Cut) -> Condition | None:
    past = cut.hours - _promised(cut)
    read = cut.max_temp_f
    known_cold = read is not None and read <= COLD_F
    promised = past <= 0 and (known_cold or (read is None and not cut.opened))
    if cut.ice is not False and (promised or (read is not None and read <= FROZEN_F)):
        return None
    if cut.ice or (cut.ice is None and read is None and past <= 0):
        return Condition.COLD
    if known_cold:
        return Condition.COLD_DAY if past > THAWED_HOURS else Condition.COLD
    if read is not None and not _warm_too_long(cut):
        return Condition.COLD
    # The line for vegetables stands once as "6 h" and once as "over 6 h": from 6 h on.
    return Condition.THAWED_6H if cut.hours >= 6 else Condition.THAWED


# -- which row speaks ------------------------------------------------------------------------------

#: A sealed jar of these stands at room temperature: rows for chilled food do not speak for it.
_CANNED = frozenset({Method.BOILING_WATER, Method.PRESSURE})
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
    kind, _, name = key.partition(":")
    if key == "*":
        return 0
    if kind == "group":
        guess = not food.known and method in _AS_IT_CAME and rule.action is not Action.DISCARD
        return 1 if name == food.group.value and not guess else -1
    if kind == "class":
        if name in food.classes:
            return 2
        # Nobody knows the class of an unknown food: only the strict rows of its group speak.
        maybe = not food.known and food.group in CLASS_GROUPS.get(name, ())
        return 1 if maybe and rule.action is Action.DISCARD else -1
    return 3 if food.name in (key, name) else -1


def _speaks(rule: OutageRule, method: Method, state: State) -> bool:
    if not rule.methods:
        return not (method in _CANNED and state is State.SEALED)
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
    if method is Method.BOILING_WATER and food.acidity is Acidity.LOW_ACID:
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


def _answer(
    rows: Sequence[OutageRule], at: Condition, food: FoodFacts, method: Method, state: State
) -> _Said:
    """The answer in a condition, never stricter than in a worse one: dried fruit that keeps in
    the warm keeps in the cold."""
    ladder = LADDER[Climate.FRIDGE if at in LADDER[Climate.FRIDGE] else Climate.FREEZER]
    said = [_said(rows, one, food, method, state) for one in ladder[ladder.index(at) :]]
    return min(said, key=_by_strictness)


# -- the answer ------------------------------------------------------------------------------------


def triage(
    food: FoodFacts, method: Method, state: State, cut: Cut, rows: Sequence[OutageRule]
) -> Triage:
    """What to do with one item after the cut, by the rows of data/outage.csv.

    It speaks of the cut alone: what was past its date or suspect before stays so.
    """
    at = _fridge(cut) if cut.appliance is Climate.FRIDGE else _freezer(cut)
    shut = tuple(rule for rule in rows if rule.condition is _shut(cut))
    if at is None:
        return _triage(Action.KEEP, food, (_still_cold(cut),), shut)
    action, row = _answer(rows, at, food, method, state)
    why = [_WHY[at], row.note if row else NO_FIGURE]
    if cut.ice and cut.max_temp_f is not None and cut.max_temp_f > COLD_F:
        why.insert(1, f"{cut.max_temp_f:g} F was read inside: feel every pack.")
    return _triage(action, food, tuple(why), (row,) if row else shut)


def _shut(cut: Cut) -> Condition:
    if cut.appliance is Climate.FRIDGE:
        return Condition.SHUT
    return Condition.SHUT_FULL if cut.full else Condition.SHUT_HALF


def _still_cold(cut: Cut) -> str:
    if cut.max_temp_f is not None and cut.max_temp_f > COLD_F:
        return f"Above 40 F, but only within a cut of {round(cut.hours, 1):g} h."
    if cut.max_temp_f is not None:
        return f"Never above {cut.max_temp_f:g} F, so it stayed cold."
    return f"Off for {round(cut.hours, 1):g} h: what is promised is {_promised(cut):g} h."


def _triage(
    action: Action, food: FoodFacts, why: tuple[str, ...], rules: tuple[OutageRule, ...]
) -> Triage:
    first = (Action.USE_NOW, Action.REFREEZE, Action.KEEP, Action.DISCARD)
    rank = 10 * first.index(action) + _perishing(food)
    return Triage(_VERDICT.get(action, Verdict.EAT_SOON), action.value, why, rank, rules)


def _perishing(food: FoodFacts) -> int:
    """0 spoils soonest: fish, poultry, ground meat, other meat, meals, dairy and eggs, the rest."""
    order = (
        food.group is Group.FISH,
        "poultry" in food.classes,
        "ground-meat" in food.classes,
        food.group is Group.MEAT,
        food.group is Group.MEAL,
        food.group in (Group.DAIRY, Group.EGG),
        True,
    )
    return order.index(True)
