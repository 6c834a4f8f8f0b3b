"""A power cut: what is still cold, and what the published tables say of each item after it.

What is unknown counts as badly as it can be: past the published hours of a shut door, food that
nobody looked at and nobody measured counts as thawed and warm for the whole of the cut.

Laws, tested in tests/core/safety/test_outage.py: a longer cut, a warmer reading, a less full
freezer, less ice, a door that was opened never give a milder answer; nor does a thing unknown.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from pantry_tui.core.dataclass import dataclass, replace
from pantry_tui.core.keeping.rules import SHELF_STABLE
from pantry_tui.core.keeping.weather import THAWS_F
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.outage_rows import LADDER as LADDER
from pantry_tui.core.safety.outage_rows import STRICTNESS as STRICTNESS
from pantry_tui.core.safety.outage_rows import Action as Action
from pantry_tui.core.safety.outage_rows import Condition as Condition
from pantry_tui.core.safety.outage_rows import OutageRule as OutageRule
from pantry_tui.core.safety.outage_rows import answer
from pantry_tui.core.words import COLD_F, Climate, Group, Method, State, Verdict

#: Hours that a shut door holds the cold (foodsafety.gov; NC Cooperative Extension).
FRIDGE_HOURS, FULL_HOURS, HALF_HOURS = 4.0, 48.0, 24.0
#: Hours that perishable food may be above 40 °F, and where the air was above 90 °F (FSIS).
WARM_HOURS, HOT_HOURS = 2.0, 1.0
HOT_F, FROZEN_F = 90.0, 0.0
#: Food thawed cold has a day at the least (University of Illinois Extension, ground meat).
THAWED_HOURS = 24.0

_VERDICT = {Action.KEEP: Verdict.SOUND, Action.DISCARD: Verdict.DISCARD}
_WHY = {
    Condition.WARM: "Above 40 F for over 2 h, or nobody can say that it was not.",
    Condition.WARM_8H: "Above 50 F for over 8 h, or nobody can say that it was not.",
    Condition.COLD: "Still icy, or at 40 F or below: one that is neither must go.",
    Condition.COLD_DAY: "No ice was seen, and it may have lain thawed for over a day.",
    Condition.THAWED: "Thawed and above 40 F for over 2 h, or nobody can say that it was not.",
    Condition.THAWED_6H: "Thawed and above 40 F for 6 h, or nobody can say that it was not.",
}
NO_FIGURE = "No published figure for it, so the strict rule."
#: What is done with an item that no publication speaks of and that needs no cold.
LOOK = "look at it"
LOOK_AT_IT = "No published figure for it; it is kept without the cold elsewhere, so look at it."


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


def _warm_too_long(read: float, hours: float) -> bool:
    """Measured above 40 °F; how long is not known, so the whole of the cut counts."""
    return read > COLD_F and hours > (HOT_HOURS if read > HOT_F else WARM_HOURS)


def _fridge(cut: Cut) -> Condition | None:
    read = cut.max_temp_f
    warm = cut.hours > _promised(cut) if read is None else _warm_too_long(read, cut.hours)
    if not warm:
        return None
    long = cut.hours > 8 and (read is None or read > 50)
    return Condition.WARM_8H if long else Condition.WARM


def _freezer(cut: Cut) -> Condition | None:
    past = cut.hours - _promised(cut)
    read = cut.max_temp_f
    known_cold = read is not None and read <= COLD_F
    # Hours promise frozen food only while nothing that was read belies it.
    stayed = not cut.opened if read is None else read <= THAWS_F
    promised = past <= 0 and stayed
    if cut.ice is not False and (promised or (read is not None and read <= FROZEN_F)):
        return None
    if cut.ice or (cut.ice is None and read is None and past <= 0):
        return Condition.COLD
    if known_cold:
        return Condition.COLD_DAY if past > THAWED_HOURS else Condition.COLD
    if read is not None and not _warm_too_long(read, cut.hours):
        return Condition.COLD
    # The line for vegetables stands once as "6 h" and once as "over 6 h": from 6 h on.
    return Condition.THAWED_6H if cut.hours >= 6 else Condition.THAWED


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
    action, row = answer(rows, at, food, method, state)
    why = [_WHY[at], row.note if row else NO_FIGURE]
    if cut.ice and cut.max_temp_f is not None and cut.max_temp_f > COLD_F:
        why.insert(1, f"{cut.max_temp_f:g} F was read inside: feel every pack.")
    return _triage(action, food, tuple(why), (row,) if row else shut)


def perishes(
    food: FoodFacts, method: Method, state: State, appliance: Climate, rows: Sequence[OutageRule]
) -> bool:
    """Whether it must go after two hours above 40 °F; what keeps unrefrigerated does not."""
    at = Condition.WARM if appliance is Climate.FRIDGE else Condition.THAWED
    action, row = answer(rows, at, food, method, state)
    return action is Action.DISCARD and (row is not None or method not in SHELF_STABLE)


def perishing(
    food: FoodFacts, method: Method, state: State, rows: Sequence[OutageRule]
) -> OutageRule | None:
    """The row that throws it away after two hours above 40 °F, None where none does."""
    action, row = answer(rows, Condition.WARM, food, method, state)
    return row if action is Action.DISCARD else None


def keeps_without_cold(food: FoodFacts, method: Method, rows: Sequence[OutageRule]) -> bool:
    """Whether a row keeps just that food, however long it was warm: butter, hard cheese. Juice that
    was opened keeps by such a row; raw juice may not stand."""
    action, row = answer(rows, Condition.WARM_8H, food, method, State.SEALED)
    return action is Action.KEEP and row is not None and food.name in row.foods


def keeps_opened(food: FoodFacts, method: Method, rows: Sequence[OutageRule]) -> bool:
    """Whether a row keeps it once it is opened, however long it was warm: jam, pickles, relish."""
    action, row = answer(rows, Condition.WARM_8H, food, method, State.OPEN)
    return action is Action.KEEP and row is not None


def after_cut(
    food: FoodFacts, method: Method, state: State, cut: Cut, rows: Sequence[OutageRule]
) -> Triage:
    """The same as `triage`, but for what is kept without the cold elsewhere: a cut does not spoil
    it, and still no publication says so."""
    found = triage(food, method, state, cut, rows)
    if NO_FIGURE not in found.reasons or method not in SHELF_STABLE:
        return found
    why = tuple(one for one in found.reasons if one != NO_FIGURE)
    return replace(found, verdict=Verdict.UNKNOWN, action=LOOK, reasons=(*why, LOOK_AT_IT))


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
