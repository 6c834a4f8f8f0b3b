"""What is said of a food in a state and a place where no row of its own speaks."""

from __future__ import annotations

from dataclasses import replace

import pytest

from pantry_tui.core.keeping.cases import sayings, speaking_for
from pantry_tui.core.keeping.rules import THAWED_ONE_DAY, THAWED_OUT, Rule, Rulebook, Status
from pantry_tui.core.keeping.warmth import Case
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust

BEEF = FoodFacts("beef", Group.MEAT, Acidity.LOW_ACID)
FRIDGE, FREEZER = frozenset({Climate.FRIDGE}), frozenset({Climate.FREEZER})


def rule(use: float | None, climates: frozenset[Climate] = FRIDGE, **more: object) -> Rule:
    plain = Rule(
        f"r{use}", Method.FROZEN, "*", State.SEALED, climates, Kind.SAFETY, use, use, use, "days",
        40.0, Status.CURRENT, "", "", Trust.READ,
    )  # fmt: skip
    return replace(plain, **more)  # type: ignore[arg-type]


def figures(
    rules: list[Rule], state: State, climate: Climate, warm: float, *, strict: bool = False
) -> list[float | None]:
    """The safety limits that start to run."""
    book = Rulebook({Method.FROZEN: rules}, strict=strict)
    said = sayings(BEEF, Method.FROZEN, book).of(state, climate, warm)
    return [one.use for one in said.safety]


@pytest.mark.parametrize(
    ("climate", "rule_"),
    [(Climate.FRIDGE, THAWED_ONE_DAY), (Climate.ROOM, THAWED_OUT), (Climate.CELLAR, THAWED_OUT)],
)
def test_thawed_food_of_which_no_row_speaks_has_a_day_in_the_cold_and_none_elsewhere(
    climate: Climate, rule_: Rule
) -> None:
    case = Case(BEEF, Method.FROZEN, State.THAWED, climate, 38.0)
    assert speaking_for(case, Rulebook({})) == [rule_]
    assert list(speaking_for(case, Rulebook({}), Status.STRICTER)) == []


@pytest.mark.parametrize("state", [State.OPEN, State.THAWED])
def test_an_opened_pack_in_the_freezer_keeps_like_a_closed_one(state: State) -> None:
    closed = rule(90, FREEZER)
    refused = rule(None, FREEZER, kind=Kind.REFUSE)
    assert figures([closed, refused], state, Climate.FREEZER, 0.0) == [90]


def test_a_freezer_that_does_not_freeze_is_a_refrigerator() -> None:
    rules = [rule(90, FREEZER), rule(3)]
    assert figures(rules, State.SEALED, Climate.FREEZER, 31.0) == [90]
    assert figures(rules, State.SEALED, Climate.FREEZER, 32.0) == [3]


STRICTER = [rule(2, status=Status.STRICTER), rule(1, status=Status.STRICTER)]


@pytest.mark.parametrize(
    ("rules", "strict", "limits"),
    [
        ([rule(3), *STRICTER], False, [3]),
        # The figure in use, and the shortest of the stricter ones where it is shorter.
        ([rule(3), *STRICTER], True, [3, 1]),
        ([rule(1), *STRICTER], True, [1]),
        (STRICTER, True, [1]),
        ([], True, []),
    ],
)
def test_a_household_that_follows_the_strictest_advice_has_both_limits(
    rules: list[Rule], strict: bool, limits: list[float]
) -> None:
    assert figures(rules, State.SEALED, Climate.FRIDGE, 38.0, strict=strict) == limits


@pytest.mark.parametrize(("warm", "limits"), [(40.0, [3]), (40.5, [3, 1]), (41.0, [3, 1])])
def test_between_40_and_41_f_the_stricter_day_count_of_both_worlds_stands(
    warm: float, limits: list[float]
) -> None:
    assert figures([rule(3), *STRICTER], State.SEALED, Climate.FRIDGE, warm) == limits
