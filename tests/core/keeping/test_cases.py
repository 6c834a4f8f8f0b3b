"""What is said of a food in a state and a place where no row of its own speaks."""

from __future__ import annotations

from dataclasses import replace

import pytest

from pantry_tui.core.keeping.cases import Said, sayings, speaking_for
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
    assert figures(rules, State.SEALED, Climate.FREEZER, 28.0) == [90]
    assert figures(rules, State.SEALED, Climate.FREEZER, 29.0) == [3]


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


def test_the_stricter_day_count_is_for_a_refrigerator_and_named_where_it_stands() -> None:
    cellar = frozenset({Climate.CELLAR})
    rules = [rule(30, cellar), rule(5, cellar, status=Status.STRICTER)]
    assert figures(rules, State.SEALED, Climate.CELLAR, 41.0) == [30]
    assert said([rule(3), *STRICTER], 41.0).both_worlds == STRICTER[1]
    assert said([rule(3)], 41.0).both_worlds == rule(3), "with no stricter one its own stands"
    assert said([rule(3), *STRICTER], 40.0).both_worlds is None
    assert said([rule(3, kind=Kind.QUALITY)], 41.0).both_worlds is None


def said(
    rules: list[Rule],
    warm: float = 38.0,
    climate: Climate = Climate.FRIDGE,
    state: State = State.SEALED,
    *,
    food: FoodFacts = BEEF,
    method: Method = Method.FROZEN,
    strict: bool = False,
) -> Said:
    return sayings(food, method, Rulebook({method: rules}, strict=strict)).of(state, climate, warm)


@pytest.mark.parametrize(
    ("method", "warm", "limits"),
    [
        (Method.DRIED, 28.0, [90]), (Method.DRIED, 28.5, [9]), (Method.DRIED, 40.0, [9]),
        (Method.DRIED, 40.5, [3]),
        # What needs the cold stands in a refrigerator that is too warm, not in a room.
        (Method.FROZEN, 28.0, [90]), (Method.FROZEN, 40.0, [9]), (Method.FROZEN, 60.0, [9]),
    ],
)  # fmt: skip
def test_a_freezer_that_fails_is_a_room_for_what_needs_no_cold(
    method: Method, warm: float, limits: list[float]
) -> None:
    rules = [rule(90, FREEZER), rule(9), rule(3, frozenset({Climate.ROOM}))]
    found = said(rules, warm, Climate.FREEZER, method=method)
    assert [one.use for one in found.safety] == limits


QUALITY = Kind.QUALITY


@pytest.mark.parametrize(
    ("rules", "climate", "coldest", "perishable"),
    [
        # What keeps in the cold only is held to 40 °F, where others' figures stand to 41 °F.
        ([rule(3)], Climate.FRIDGE, 41.0, True),
        ([rule(3, kind=QUALITY)], Climate.FRIDGE, 41.0, False),
        ([rule(9, kind=QUALITY), rule(3)], Climate.FRIDGE, 41.0, True),
        # Its own figure asks for less; no household refrigerator is colder than 38 °F.
        ([rule(3, temp_f_max=39.0)], Climate.FRIDGE, 39.0, True),
        ([rule(3, temp_f_max=36.0)], Climate.FRIDGE, 38.0, True),
        ([rule(3, temp_f_max=39.0), rule(2)], Climate.FRIDGE, 39.0, True),
        ([rule(3, temp_f_max=None)], Climate.FRIDGE, 41.0, True),
        ([rule(3, temp_f_max=45.0)], Climate.FRIDGE, 41.0, True),
        ([rule(3, kind=QUALITY, temp_f_max=36.0)], Climate.FRIDGE, 41.0, False),
        # What keeps in a cellar as well, or where only words are published, needs no cold.
        ([rule(3, frozenset({Climate.FRIDGE, Climate.CELLAR}))], Climate.FRIDGE, None, False),
        ([rule(None)], Climate.FRIDGE, None, False),
        ([rule(90, FREEZER)], Climate.FREEZER, None, True),
        ([], Climate.FRIDGE, None, False),
    ],
)
def test_above_how_many_degrees_a_refrigerator_is_too_warm(
    rules: list[Rule], climate: Climate, coldest: float | None, perishable: bool
) -> None:
    found = said(rules, 0.0 if climate is Climate.FREEZER else 38.0, climate)
    assert (found.coldest, found.perishable) == (coldest, perishable)


def test_a_figure_for_a_class_that_it_might_be_of_limits_and_covers_nothing() -> None:
    odd = FoodFacts("something", Group.MEAT, Acidity.LOW_ACID, known=False)
    guess = rule(3, food="class:poultry")
    assert [one.use for one in said([guess], food=odd).safety] == [3]
    assert not said([guess], food=odd).covered
    assert said([rule(3)], food=odd).covered
    assert not said([rule(None)]).covered


def test_what_works_still_does_not_keep_like_a_closed_pack_in_the_freezer() -> None:
    closed, refused = rule(90, FREEZER), rule(None, FREEZER, kind=Kind.REFUSE)
    working = said([closed], 0.0, Climate.FREEZER, State.IN_PROGRESS)
    assert (list(working.found), working.safety) == ([], ())
    assert said([closed, refused], 0.0, Climate.FREEZER).refusal == refused
    assert said([closed, refused], 0.0, Climate.FREEZER, State.OPEN).refusal is None, "it may burst"
    assert not said([closed], state=State.OPEN).found, "in a refrigerator an opened one is open"


@pytest.mark.parametrize(
    ("rules", "limits"),
    [
        # Words without a number set no limit, nor hide one; figures of quality are none of safety.
        ([rule(None, food="beef"), rule(3)], [3]),
        ([rule(None, status=Status.STRICTER)], []),
        ([rule(3), rule(None, status=Status.STRICTER)], [3]),
        ([rule(3), rule(1, status=Status.STRICTER, kind=QUALITY)], [3]),
        ([rule(3), rule(3, status=Status.STRICTER)], [3]),
    ],
)
def test_only_figures_of_safety_are_limits(rules: list[Rule], limits: list[float]) -> None:
    assert figures(rules, State.SEALED, Climate.FRIDGE, 38.0, strict=True) == limits


@pytest.mark.parametrize(
    ("usual", "stricter", "strict", "best"),
    [
        (10, 5, True, 5), (10, 5, False, 10), (5, 10, True, 5), (None, 5, True, 5),
        (None, 5, False, None), (10, None, True, 10),
    ],
)  # fmt: skip
def test_the_strictest_advice_shortens_quality_too(
    usual: float | None, stricter: float | None, strict: bool, best: float | None
) -> None:
    rules = [rule(usual, FREEZER, kind=QUALITY)] if usual else []
    if stricter:
        rules.append(rule(stricter, FREEZER, kind=QUALITY, status=Status.STRICTER))
    found = said(rules, 0.0, Climate.FREEZER, strict=strict).quality
    assert (found.rule.use if found else None) == best
    warm = said(rules, 10.0, Climate.FREEZER, strict=strict).quality
    if warm is not None and usual is not None:
        assert warm.share == 0.25, "warm it spends it as fast"


def test_of_two_figures_as_long_the_one_in_use_is_shown() -> None:
    rules = [rule(5, FREEZER, kind=QUALITY, id="ours")]
    rules.append(rule(5, FREEZER, kind=QUALITY, status=Status.STRICTER, id="theirs"))
    found = said(rules, 0.0, Climate.FREEZER, strict=True).quality
    assert found is not None
    assert found.rule.id == "ours"
