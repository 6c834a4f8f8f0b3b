"""Which row of the table of power cuts speaks for an item, over rows made up for it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.outage_rows import (
    LADDER,
    STRICTNESS,
    Action,
    Condition,
    OutageRule,
    answer,
)
from pantry_tui.core.words import Acidity, Climate, Group, Method, State, Trust

KEEP, REFREEZE, USE_NOW, DISCARD = Action
WARM, WARM_8H = Condition.WARM, Condition.WARM_8H
COLD, COLD_DAY = Condition.COLD, Condition.COLD_DAY
THAWED, THAWED_6H = Condition.THAWED, Condition.THAWED_6H
FRESH, FROZEN, BOUGHT = Method.FRESH, Method.FROZEN, Method.BOUGHT
SEALED, OPEN = State.SEALED, State.OPEN

CHEESE = FoodFacts("cheddar", Group.DAIRY, Acidity.LOW_ACID, frozenset({"hard-cheese"}))
BEANS = FoodFacts("runner beans", Group.VEGETABLE, Acidity.LOW_ACID, frozenset({"bean"}))
PEACHES = FoodFacts("peaches", Group.FRUIT, Acidity.ACID)
ODD = FoodFacts("medley", Group.VEGETABLE, Acidity.LOW_ACID, known=False)


def row(
    foods: str,
    action: Action,
    at: Condition = WARM,
    methods: tuple[Method, ...] = (),
    states: tuple[State, ...] = (),
) -> OutageRule:
    appliance = Climate.FRIDGE if at in LADDER[Climate.FRIDGE] else Climate.FREEZER
    return OutageRule(
        f"{foods} {action}", appliance, "", tuple(foods.split(";")), frozenset(methods),
        frozenset(states), at, action, None, "", "", Trust.READ,
    )  # fmt: skip


def said(
    rows: list[OutageRule],
    food: FoodFacts = CHEESE,
    method: Method = FRESH,
    state: State = SEALED,
    at: Condition = WARM,
) -> tuple[Action, str]:
    action, found = answer(rows, at, food, method, state)
    return action, found.id if found is not None else ""


# -- how close -------------------------------------------------------------------------------------


def test_without_a_row_it_goes() -> None:
    for at in (WARM, WARM_8H, COLD, COLD_DAY, THAWED, THAWED_6H):
        assert said([], at=at) == (DISCARD, "")


def test_the_closest_row_speaks_and_of_equally_close_ones_the_strictest() -> None:
    rows = [
        row("*", DISCARD), row("group:dairy", DISCARD), row("class:hard-cheese", USE_NOW),
        row("cheddar", KEEP), row("milk", DISCARD), row("group:meat", DISCARD),
    ]  # fmt: skip
    assert said(rows) == (KEEP, "cheddar keep")
    assert said([*rows, row("cheddar", USE_NOW)]) == (USE_NOW, "cheddar use now")
    assert said(rows[:3]) == (USE_NOW, "class:hard-cheese use now")
    assert said(rows[:2]) == (DISCARD, "group:dairy discard")
    assert said(rows[4:]) == (DISCARD, "")


def test_a_row_of_several_foods_is_as_close_as_the_closest_of_them() -> None:
    rows = [row("group:meat;cheddar", KEEP), row("class:hard-cheese", DISCARD)]
    assert said(rows) == (KEEP, "group:meat;cheddar keep")


def test_a_name_that_the_food_table_does_not_hold_is_matched_as_it_stands() -> None:
    tofu = FoodFacts("tofu", Group.VEGETABLE, Acidity.LOW_ACID, known=False)
    rows = [row("named:tofu", DISCARD), row("group:vegetable", KEEP)]
    assert said(rows, tofu)[0] is DISCARD
    assert said(rows, BEANS) == (KEEP, "group:vegetable keep")


def test_a_row_speaks_for_its_methods_and_one_without_for_all_but_sealed_jars() -> None:
    rows = [row("*", KEEP, methods=(Method.JAM,))]
    assert said(rows, PEACHES, Method.JAM) == (KEEP, "* keep")
    assert said(rows, PEACHES, FRESH) == (DISCARD, "")
    any_method = [row("*", DISCARD), row("*", KEEP, methods=(Method.PRESSURE,))]
    assert said(any_method, PEACHES, Method.PRESSURE, SEALED) == (KEEP, "* keep")
    assert said(any_method, PEACHES, Method.PRESSURE, OPEN) == (DISCARD, "* discard")


def test_a_row_for_its_state_is_weighed_beside_one_for_any_and_the_stricter_stands() -> None:
    rows = [row("cheddar", KEEP), row("*", USE_NOW, states=(OPEN,))]
    assert said(rows, state=OPEN) == (USE_NOW, "* use now")
    assert said(rows, state=SEALED) == (KEEP, "cheddar keep")
    milder = [row("cheddar", USE_NOW), row("cheddar", KEEP, states=(OPEN,))]
    assert said(milder, state=OPEN) == (USE_NOW, "cheddar use now")


# -- what nobody knows, and what is never safe -----------------------------------------------------


def test_of_a_food_that_nobody_knows_only_strict_rows_of_its_classes_speak() -> None:
    assert said([row("class:root", KEEP)], ODD) == (DISCARD, "")
    strict = [row("class:root", DISCARD), row("group:vegetable", KEEP)]
    assert said(strict, ODD, Method.FRIDGE_PICKLE) == (DISCARD, "class:root discard")


@pytest.mark.parametrize("method", [FRESH, BOUGHT])
def test_fresh_or_bought_and_unknown_it_may_be_cut_or_mixed(method: Method) -> None:
    """A row that keeps whole vegetables does not keep a medley."""
    rows = [row("group:vegetable", KEEP)]
    assert said(rows, ODD, method) == (DISCARD, "")
    assert said(rows, ODD, Method.FRIDGE_PICKLE)[0] is KEEP
    assert said(rows, BEANS, method)[0] is KEEP


def test_low_acid_food_in_boiling_water_is_kept_by_no_row() -> None:
    rows = [row("*", KEEP, methods=(Method.BOILING_WATER,))]
    assert said(rows, BEANS, Method.BOILING_WATER) == (DISCARD, "")
    assert said(rows, PEACHES, Method.BOILING_WATER)[0] is KEEP


def test_under_oil_food_is_safe_only_while_it_is_cold() -> None:
    warm = [row("*", KEEP), row("*", KEEP, methods=(Method.IN_OIL,))]
    assert said(warm, BEANS, Method.IN_OIL) == (DISCARD, "")
    cold = [row("*", REFREEZE, COLD), row("*", USE_NOW, COLD, methods=(Method.IN_OIL,))]
    assert said(cold, BEANS, Method.IN_OIL, at=COLD) == (USE_NOW, "* use now")
    assert said(cold[:1], BEANS, Method.IN_OIL, at=COLD) == (DISCARD, "")


# -- longer and warmer -----------------------------------------------------------------------------


def test_what_only_lasted_longer_is_never_milder() -> None:
    rows = [row("*", USE_NOW, WARM), row("*", KEEP, WARM_8H)]
    assert said(rows, at=WARM_8H) == (USE_NOW, "* use now")
    assert said([row("*", KEEP, WARM)], at=WARM_8H) == (KEEP, "* keep"), "no row: as before"
    assert said([row("*", KEEP, WARM), row("*", DISCARD, WARM_8H)], at=WARM_8H)[0] is DISCARD


def test_what_keeps_in_the_warm_keeps_in_the_cold() -> None:
    rows = [row("*", DISCARD, COLD), row("*", KEEP, THAWED), row("*", KEEP, THAWED_6H)]
    assert said(rows, method=FROZEN, at=COLD) == (KEEP, "* keep")


def test_thawed_and_warm_a_closed_pack_goes_by_the_row_of_the_freezer() -> None:
    rows = [row("*", USE_NOW, THAWED), row("*", DISCARD, WARM)]
    assert said(rows, method=FROZEN, at=THAWED) == (USE_NOW, "* use now")
    for state in (OPEN, State.THAWED):
        assert said(rows, method=FROZEN, state=state, at=THAWED) == (DISCARD, "* discard")
    milder = [row("*", USE_NOW, THAWED), row("*", KEEP, WARM)]
    assert said(milder, method=FROZEN, state=OPEN, at=THAWED) == (USE_NOW, "* use now")


@pytest.mark.parametrize(
    ("method", "action"),
    [(FROZEN, DISCARD), (FRESH, DISCARD), (BOUGHT, DISCARD), (Method.MEAL, DISCARD),
     (Method.CELLAR, DISCARD), (Method.DRIED, KEEP), (Method.JAM, KEEP)],
)  # fmt: skip
def test_without_a_row_of_the_freezer_what_needs_the_cold_goes(
    method: Method, action: Action
) -> None:
    """And what never needed it goes by the row of the refrigerator."""
    assert said([row("*", KEEP, WARM)], PEACHES, method, at=THAWED)[0] is action


rules = st.lists(
    st.builds(
        row,
        st.sampled_from(["*", "cheddar", "group:dairy", "class:hard-cheese"]),
        st.sampled_from(list(Action)),
        st.sampled_from([WARM, WARM_8H, COLD, COLD_DAY, THAWED, THAWED_6H]),
        st.sampled_from([(), (FRESH,), (FROZEN,)]),
        st.sampled_from([(), (OPEN,)]),
    ),
    max_size=8,
)


@given(rules, st.sampled_from([FRESH, FROZEN, Method.IN_OIL]), st.sampled_from([SEALED, OPEN]))
def test_down_the_ladder_no_answer_is_milder(
    some: list[OutageRule], method: Method, state: State
) -> None:
    for ladder in LADDER.values():
        answers = [STRICTNESS.index(said(some, CHEESE, method, state, at)[0]) for at in ladder]
        assert answers == sorted(answers)


@given(rules, st.randoms(use_true_random=False))
def test_the_order_of_the_rows_says_nothing(some: list[OutageRule], random: object) -> None:
    other = some[:]
    random.shuffle(other)  # type: ignore[attr-defined]
    for at in (WARM, COLD_DAY, THAWED_6H):
        assert said(some, at=at)[0] is said(other, at=at)[0]
