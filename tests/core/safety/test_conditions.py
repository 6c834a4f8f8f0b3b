"""In which condition food is after a power cut, by its hours, what was read and what was seen.

A shut door holds the cold for 4 hours, a full freezer for 48, a half full one for 24
(foodsafety.gov; NC Cooperative Extension); above 40 °F two hours, above 90 °F one (USDA FSIS).
"""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.outage import (
    LOOK,
    LOOK_AT_IT,
    NO_FIGURE,
    Action,
    Condition,
    Cut,
    OutageRule,
    after_cut,
    perishes,
    perishing,
    triage,
)
from pantry_tui.core.words import Acidity, Climate, Group, Method, State, Trust, Verdict

FRIDGE, FREEZER = Climate.FRIDGE, Climate.FREEZER
STEW = FoodFacts("stew", Group.MEAL, Acidity.LOW_ACID)
C = Condition


def row(condition: Condition, action: Action = Action.DISCARD) -> OutageRule:
    return OutageRule(
        condition.value, FRIDGE, "", ("*",), frozenset(), frozenset(), condition, action, None,
        f"{condition}.", "", Trust.READ,
    )  # fmt: skip


ROWS = [row(one) for one in Condition if not one.value.startswith("door_shut")]


def fridge(hours: float, read: float | None = None, *, opened: bool = False) -> Cut:
    return Cut(FRIDGE, hours, False, read, None, opened)


def freezer(
    hours: float, read: float | None = None, ice: bool | None = None, *, full: bool = False,
    opened: bool = False,
) -> Cut:  # fmt: skip
    return Cut(FREEZER, hours, full, read, ice, opened)


@pytest.mark.parametrize(
    ("cut", "condition"),
    [
        (fridge(4), None), (fridge(4.1), C.WARM), (fridge(8), C.WARM), (fridge(8.1), C.WARM_8H),
        (fridge(99, 40), None), (fridge(2, 40.5), None), (fridge(2.1, 40.5), C.WARM),
        (fridge(2, 90), None), (fridge(1, 90.5), None), (fridge(1.1, 90.5), C.WARM),
        (fridge(9, 50), C.WARM), (fridge(9, 50.5), C.WARM_8H), (fridge(8, 50.5), C.WARM),
        (fridge(7.5, 60), C.WARM), (fridge(1, opened=True), None),
        (fridge(1.1, opened=True), C.WARM), (fridge(3, 38, opened=True), None),
        # A freezer that nobody opened or looked into.
        (freezer(24), None), (freezer(24.1), C.THAWED_6H), (freezer(48, full=True), None),
        (freezer(48.1, full=True), C.THAWED_6H),
        # What was read above freezing did not stay frozen, whatever the hours promise.
        (freezer(24, 28), None), (freezer(24, 28.5), C.COLD), (freezer(24, 40), C.COLD),
        (freezer(47, 39, full=True), C.COLD), (freezer(10, 38, True), C.COLD),
        (freezer(30, 40), C.COLD), (freezer(48, 40), C.COLD), (freezer(48.1, 40), C.COLD_DAY),
        (freezer(60, 0), None), (freezer(60, 0.05), C.COLD_DAY), (freezer(60, -5), None),
        # Read warm: two hours, from six on another line of the table.
        (freezer(2, 45), C.COLD), (freezer(2.1, 45), C.THAWED), (freezer(5.9, 45), C.THAWED),
        (freezer(6, 45), C.THAWED_6H), (freezer(1, 95), C.COLD), (freezer(1.1, 95), C.THAWED),
        # Ice that was seen is cold, whatever else; where none was, the hours promise nothing.
        (freezer(60, None, True), C.COLD), (freezer(10, 45, True), C.COLD),
        (freezer(10, None, True), None), (freezer(5, None, False), C.THAWED),
        (freezer(6, None, False), C.THAWED_6H), (freezer(10, 38, False), C.COLD),
        (freezer(49, 38, False), C.COLD_DAY), (freezer(60, 0, False), C.COLD_DAY),
        # An opened door promises an hour at most, and not that it is as cold as it was.
        (freezer(0.5, opened=True), C.COLD), (freezer(1, opened=True), C.COLD),
        (freezer(1.1, opened=True), C.THAWED), (freezer(1, 28, opened=True), None),
        (freezer(1, 38, opened=True), C.COLD),
        (freezer(1, None, True, opened=True), C.COLD),
        (freezer(0.5, None, False, opened=True), C.THAWED),
    ],
)  # fmt: skip
def test_the_condition_of_food_after_a_cut(cut: Cut, condition: Condition | None) -> None:
    found = triage(STEW, Method.MEAL, State.SEALED, cut, ROWS)
    if condition is None:
        assert found.action == Action.KEEP
    else:
        assert [one.condition for one in found.rules] == [condition]


@pytest.mark.parametrize(
    ("cut", "said"),
    [
        (fridge(10 / 3), "Off for 3.3 h: what is promised is 4 h."),
        (fridge(0.5, opened=True), "Off for 0.5 h: what is promised is 1 h."),
        (freezer(30, full=True), "Off for 30 h: what is promised is 48 h."),
        (fridge(5, 40), "Never above 40 F, so it stayed cold."),
        (fridge(4 / 3, 45), "Above 40 F, but only within a cut of 1.3 h."),
    ],
)
def test_why_it_stayed_cold_is_said(cut: Cut, said: str) -> None:
    assert triage(STEW, Method.MEAL, State.SEALED, cut, ROWS).reasons == (said,)


def test_ice_in_a_warm_freezer_asks_for_a_hand_on_every_pack() -> None:
    def why(cut: Cut) -> Sequence[str]:
        return triage(STEW, Method.MEAL, State.SEALED, cut, ROWS).reasons

    cold = "Still icy, or at 40 F or below: one that is neither must go."
    own = "ice_crystals_or_cold."
    assert why(freezer(10, 45, True)) == (cold, "45 F was read inside: feel every pack.", own)
    assert why(freezer(60, 40, True)) == (cold, own)
    assert why(freezer(60, None, True)) == (cold, own)
    assert why(freezer(2, 45)) == (cold, own)


def test_without_a_row_the_strict_rule_rests_on_the_hours_of_a_shut_door() -> None:
    shut = [row(C.SHUT, Action.KEEP), row(C.SHUT_FULL, Action.KEEP), row(C.SHUT_HALF, Action.KEEP)]
    for cut, hours in (
        (fridge(5), C.SHUT),
        (freezer(30), C.SHUT_HALF),
        (freezer(50, full=True), C.SHUT_FULL),
    ):
        found = triage(STEW, Method.MEAL, State.SEALED, cut, shut)
        assert (found.action, found.verdict) == (Action.DISCARD, Verdict.DISCARD)
        assert found.reasons[-1] == NO_FIGURE
        assert [one.condition for one in found.rules] == [hours]
    kept = triage(STEW, Method.MEAL, State.SEALED, fridge(3), shut)
    assert [one.condition for one in kept.rules] == [C.SHUT]


def test_what_to_use_first_comes_first() -> None:
    """Fish, poultry, ground meat, other meat, meals, dairy and eggs, the rest."""

    def food(group: Group, *classes: str) -> FoodFacts:
        return FoodFacts("x", group, Acidity.LOW_ACID, frozenset(classes))

    order = [
        food(Group.FISH), food(Group.MEAT, "poultry"), food(Group.MEAT, "ground-meat"),
        food(Group.MEAT), food(Group.MEAL), food(Group.DAIRY), food(Group.VEGETABLE),
    ]  # fmt: skip

    def rank(one: FoodFacts, action: Action) -> int:
        return triage(one, Method.MEAL, State.SEALED, fridge(5), [row(C.WARM, action)]).rank

    actions = (Action.USE_NOW, Action.REFREEZE, Action.KEEP, Action.DISCARD)
    ranks = [rank(one, action) for action in actions for one in order]
    assert ranks == sorted(set(ranks))
    assert rank(food(Group.EGG), Action.KEEP) == rank(food(Group.DAIRY), Action.KEEP)


@pytest.mark.parametrize(
    ("action", "verdict"),
    [(Action.KEEP, Verdict.SOUND), (Action.DISCARD, Verdict.DISCARD),
     (Action.USE_NOW, Verdict.EAT_SOON), (Action.REFREEZE, Verdict.EAT_SOON)],
)  # fmt: skip
def test_what_an_action_makes_of_the_verdict(action: Action, verdict: Verdict) -> None:
    found = triage(STEW, Method.MEAL, State.SEALED, fridge(5), [row(C.WARM, action)])
    assert (found.action, found.verdict) == (action, verdict)


@pytest.mark.parametrize(
    ("appliance", "rows", "method", "goes"),
    [
        (FRIDGE, [row(C.WARM)], Method.MEAL, True), (FRIDGE, [row(C.WARM)], Method.DRIED, True),
        (FRIDGE, [row(C.WARM, Action.KEEP)], Method.MEAL, False),
        # Without a row what needs the cold goes, and what stands elsewhere does not.
        (FRIDGE, [], Method.MEAL, True), (FRIDGE, [], Method.DRIED, False),
        (FREEZER, [row(C.THAWED)], Method.FROZEN, True), (FREEZER, [], Method.FROZEN, True),
        (FREEZER, [row(C.THAWED, Action.REFREEZE)], Method.FROZEN, False),
        (FREEZER, [row(C.WARM, Action.KEEP)], Method.FROZEN, True),
    ],
)  # fmt: skip
def test_what_perishes_in_two_hours(
    appliance: Climate, rows: Sequence[OutageRule], method: Method, goes: bool
) -> None:
    assert perishes(STEW, method, State.SEALED, appliance, rows) is goes


def test_the_row_that_throws_it_away_is_named() -> None:
    assert perishing(STEW, Method.MEAL, State.SEALED, ROWS) == row(C.WARM)
    kept = [row(C.WARM, Action.KEEP)]
    assert perishing(STEW, Method.MEAL, State.SEALED, kept) is None
    assert perishing(STEW, Method.MEAL, State.SEALED, []) is None


def test_what_needs_no_cold_and_has_no_figure_is_looked_at() -> None:
    fat = after_cut(STEW, Method.RENDERED_FAT, State.SEALED, fridge(5), [])
    assert (fat.verdict, fat.action) == (Verdict.UNKNOWN, LOOK)
    assert fat.reasons == (
        "Above 40 F for over 2 h, or nobody can say that it was not.", LOOK_AT_IT,
    )  # fmt: skip
    meal = after_cut(STEW, Method.MEAL, State.SEALED, fridge(5), [])
    assert (meal.action, meal.reasons[-1]) == (Action.DISCARD, NO_FIGURE)
    with_row = after_cut(STEW, Method.RENDERED_FAT, State.SEALED, fridge(5), ROWS)
    assert with_row.action == Action.DISCARD
    assert after_cut(STEW, Method.RENDERED_FAT, State.SEALED, fridge(3), []).action == Action.KEEP


def test_a_door_is_shut_unless_somebody_said_that_it_was_opened() -> None:
    assert not Cut(FRIDGE, 3, False, None, None).opened
