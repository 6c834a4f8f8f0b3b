"""Which published figure speaks for a food: laws of the choice, over rules made up for them."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.keeping.rules import (
    COOK_AT_ONCE,
    THAWED_ONE_DAY,
    THAWED_OUT,
    Rule,
    Rulebook,
    Status,
    closeness,
    closest,
    guessed,
    held_at,
    last_day,
    speaking,
)
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust

BEANS = FoodFacts("runner beans", Group.VEGETABLE, Acidity.LOW_ACID, frozenset({"bean"}))
HAM = FoodFacts("hams", Group.MEAT, Acidity.LOW_ACID, frozenset({"cured-meat"}))
CRAB_APPLES = FoodFacts("crab apples", Group.FRUIT, Acidity.ACID)
ODD = FoodFacts("medley", Group.VEGETABLE, Acidity.LOW_ACID, known=False)
SHELF = frozenset({Climate.PANTRY})


def rule(food: str = "*", use: float | None = 12, **more: object) -> Rule:
    plain = Rule(
        id=f"{food}-{use}",
        method=Method.DRIED,
        food=food,
        state=State.SEALED,
        climates=SHELF,
        kind=Kind.QUALITY,
        least=use,
        most=use,
        use=use,
        unit="months",
        temp_f_max=None,
        status=Status.CURRENT,
        wording="",
        source="",
        trust=Trust.READ,
    )
    return replace(plain, **more)  # type: ignore[arg-type]


def refusal(food: str, **more: object) -> Rule:
    return rule(food, None, kind=Kind.REFUSE, **more)


def said(
    rules: list[Rule],
    food: FoodFacts = BEANS,
    climate: Climate = Climate.PANTRY,
    method: Method = Method.DRIED,
    state: State = State.SEALED,
) -> list[str]:
    return [one.id for one in speaking(rules, food, method, state, climate)]


# -- which speak, and in which order ---------------------------------------------------------------


def test_the_closest_figure_speaks_first_then_the_strictest() -> None:
    rules = [
        rule("*", 9), rule("class:bean", 7), rule("runner beans", 8), rule("group:vegetable", 1),
        rule("runner beans", 6), rule("*", 2), rule("peas", 1), rule("group:fruit", 1),
    ]  # fmt: skip
    assert said(rules) == [
        "runner beans-6", "runner beans-8", "class:bean-7", "group:vegetable-1", "*-2", "*-9",
    ]  # fmt: skip


@given(st.permutations([rule("*", 2), rule("*", 9), rule("class:bean", 7), rule("runner beans")]))
def test_the_order_of_the_table_says_nothing(rules: list[Rule]) -> None:
    assert said(rules) == ["runner beans-12", "class:bean-7", "*-2", "*-9"]


@pytest.mark.parametrize(
    ("key", "near"),
    [
        ("runner beans", 3), ("class:bean", 2), ("group:vegetable", 1), ("*", 0), ("peas", -1),
        ("class:root", -1), ("group:fruit", -1), ("acid:vegetable", -1),
        ("group:fruit;runner beans", 0), ("class:bean;group:fruit", 0), ("peas;group:fruit", -1),
    ],
)  # fmt: skip
def test_how_close_a_figure_is_to_a_food(key: str, near: int) -> None:
    """One for several kinds is as wide as one for any food, and speaks for no other kind."""
    assert closeness(rule(key), BEANS) == near


def test_a_figure_for_acid_food_speaks_for_acid_food_alone() -> None:
    assert said([rule("acid:fruit")], CRAB_APPLES) == ["acid:fruit-12"]
    assert said([rule("acid:fruit")], replace(CRAB_APPLES, acidity=Acidity.LOW_ACID)) == []


def test_a_figure_speaks_for_its_state_and_its_status_alone() -> None:
    rules = [rule(state=State.OPEN), rule("class:bean", status=Status.STRICTER)]
    assert said(rules) == []
    assert said(rules, state=State.OPEN) == ["*-12"]
    found = speaking(rules, BEANS, Method.DRIED, State.SEALED, Climate.PANTRY, Status.STRICTER)
    assert [one.food for one in found] == ["class:bean"]


def test_no_figure_speaks_for_low_acid_food_in_boiling_water() -> None:
    """USDA AIB 539: the spores of botulism live through it."""
    assert said([rule()], BEANS, method=Method.BOILING_WATER) == []
    assert said([rule()], CRAB_APPLES, method=Method.BOILING_WATER) == ["*-12"]


# -- places ----------------------------------------------------------------------------------------


def test_what_stands_on_a_shelf_keeps_at_least_as_long_where_it_is_cooler() -> None:
    rules = [rule("*", 12), rule("*", 6, climates=frozenset({Climate.ROOM}))]
    assert said(rules, climate=Climate.CELLAR) == ["*-12"], "by the figure of the next warmer place"
    assert said(rules, climate=Climate.FRIDGE) == ["*-12"]
    assert said(rules, climate=Climate.ROOM) == ["*-6"]
    assert said(rules[1:], climate=Climate.CELLAR) == ["*-6"]
    assert said(rules[:1], climate=Climate.ROOM) == [], "nothing is promised where it is warmer"
    assert said(rules, climate=Climate.FREEZER) == [], "frozen is another thing"


def test_what_needs_the_cold_has_no_figure_but_its_own() -> None:
    chilled = [rule(method=Method.MEAL)]
    assert said(chilled, climate=Climate.FRIDGE, method=Method.MEAL) == []
    assert said(chilled, climate=Climate.PANTRY, method=Method.MEAL) == ["*-12"]


def test_a_refusal_of_a_place_is_not_got_round_by_a_warmer_one() -> None:
    cold = frozenset({Climate.FRIDGE})
    rules = [rule("*", 12), refusal("*", climates=cold)]
    assert said(rules, climate=Climate.FRIDGE) == ["*-None"]
    assert said(rules, climate=Climate.CELLAR) == ["*-12"]
    hot = [refusal("*", climates=SHELF), rule("*", 6, climates=frozenset({Climate.ROOM}))]
    assert said(hot, climate=Climate.CELLAR) == ["*-6"], "a refusal is no figure to lend"


# -- refusals --------------------------------------------------------------------------------------


def test_a_figure_for_the_food_itself_stands_against_a_refusal_of_its_kind() -> None:
    """A whole dry-cured ham keeps at room temperature, other cured meat does not."""
    rules = [refusal("class:cured-meat"), rule("hams", 12), refusal("*")]
    assert said(rules, HAM) == ["hams-12"]
    assert said([refusal("class:cured-meat"), rule("group:meat", 12)], HAM) == [
        "class:cured-meat-None", "group:meat-12",
    ]  # fmt: skip
    assert said([refusal("hams"), rule("hams", 12)], HAM) == ["hams-12", "hams-None"]


def test_a_refusal_of_vacuum_packs_stands_against_any_figure() -> None:
    packed = replace(HAM, classes=HAM.classes | {"vacuum-fish"})
    assert said([refusal("class:vacuum-fish"), rule("hams", 12)], packed) == [
        "hams-12", "class:vacuum-fish-None",
    ]  # fmt: skip


def test_nothing_stands_against_a_refusal_for_a_food_that_nobody_knows() -> None:
    own = rule("medley", 12)
    assert said([refusal("group:vegetable"), own], ODD) == ["medley-12", "group:vegetable-None"]


# -- foods that nobody knows -----------------------------------------------------------------------


def test_a_class_that_it_might_be_is_a_guess() -> None:
    assert guessed(rule("class:root"), ODD)
    assert not guessed(rule("class:bean"), BEANS)
    assert not any(guessed(rule(key), ODD) for key in ("*", "group:vegetable", "medley"))


def test_a_guess_shortens_a_figure_and_never_brings_one() -> None:
    assert said([rule("class:root", 3)], ODD) == []
    assert said([rule("class:root", 3), rule("group:vegetable", 12)], ODD) == [
        "class:root-3", "group:vegetable-12",
    ]  # fmt: skip
    assert said([rule("class:root", 3), refusal("group:vegetable")], ODD) == [
        "group:vegetable-None",
    ]  # fmt: skip


def test_a_limit_or_a_refusal_that_might_be_meant_for_it_counts() -> None:
    limit = rule("class:root", 3, kind=Kind.SAFETY)
    assert said([limit, refusal("class:leafy")], ODD) == ["class:root-3", "class:leafy-None"]


def test_a_food_of_the_tables_is_of_its_own_classes_alone() -> None:
    assert said([rule("class:root", 3)], BEANS) == []


# -- warmth ----------------------------------------------------------------------------------------


def pair(food: str = "*", kind: Kind = Kind.SAFETY) -> list[Rule]:
    """Smoked fish: so many days below 36 °F, fewer from 36 °F up."""
    return [
        rule(food, 14, kind=kind, temp_f_max=36.0),
        rule(food, 5, kind=kind, temp_f_min=36.0, temp_f_max=40.0),
    ]


@pytest.mark.parametrize(("warm", "use"), [(33.0, 14), (35.9, 14), (36.0, 5), (39.0, 5)])
def test_of_two_ranges_the_one_it_is_in_counts_and_on_the_edge_the_warmer(
    warm: float, use: float
) -> None:
    assert [one.use for one in held_at(pair(), warm)] == [use]


def test_a_warmer_range_takes_the_place_of_its_own_figure_only() -> None:
    others = [
        rule("*", 3, kind=Kind.QUALITY, temp_f_max=36.0),
        rule("class:bean", 4, temp_f_max=36.0),
        rule("*", 9, temp_f_max=40.0, kind=Kind.SAFETY),
        rule("*", 8),
    ]
    found = held_at([*pair(), *others], 38.0)
    assert [one.use for one in found] == [5, 3, 4, 9, 8]
    assert held_at(others, 38.0) == others


# -- one figure ------------------------------------------------------------------------------------


def test_of_a_kind_the_closest_counts_and_of_equally_close_ones_the_shortest() -> None:
    found = [rule("runner beans", 9), rule("runner beans", 6), rule("*", 1),
             rule("*", 2, kind=Kind.SAFETY)]  # fmt: skip
    best = closest(found, BEANS, Kind.QUALITY)
    assert best is not None
    assert best.use == 6
    limit = closest(found, BEANS, Kind.SAFETY)
    assert limit is not None
    assert limit.use == 2
    assert closest(found, BEANS, Kind.REFUSE) is None


@pytest.mark.parametrize(
    ("use", "unit", "days"),
    [
        (48, "hours", 2.0), (3, "days", 3.0), (2, "weeks", 14.0), (2, "months", 60.875),
        (1, "years", 365.25), (None, "days", float("inf")),
    ],
)  # fmt: skip
def test_about_how_many_days_a_figure_is(use: float | None, unit: str, days: float) -> None:
    assert rule("*", use, unit=unit).days == pytest.approx(days)


def test_day_nought_and_the_last_good_day() -> None:
    assert last_day(date(2026, 1, 31), 1, "months") == date(2026, 2, 28)
    assert last_day(date(2026, 3, 1), 3, "days") == date(2026, 3, 4)


# -- the household's own ---------------------------------------------------------------------------


def test_a_rule_of_its_own_speaks_where_it_was_made_for_and_nowhere_else() -> None:
    own = (rule("runner beans", 3),)
    book = Rulebook({}, own=own)

    def for_(food: FoodFacts, method: Method, state: State, climate: Climate) -> list[Rule]:
        return book.own_for(food, method, state, climate)

    assert for_(BEANS, Method.DRIED, State.SEALED, Climate.PANTRY) == list(own)
    assert for_(HAM, Method.DRIED, State.SEALED, Climate.PANTRY) == []
    assert for_(BEANS, Method.SALTED, State.SEALED, Climate.PANTRY) == []
    assert for_(BEANS, Method.DRIED, State.OPEN, Climate.PANTRY) == []
    assert for_(BEANS, Method.DRIED, State.SEALED, Climate.ROOM) == []
    anything = Rulebook({}, own=(rule("*"),))
    assert anything.own_for(HAM, Method.DRIED, State.SEALED, Climate.PANTRY)


def test_a_book_asked_twice_says_the_same_and_knows_no_method_it_has_no_rules_for() -> None:
    book = Rulebook({Method.DRIED: [rule(), rule(status=Status.STRICTER, use=3)]})
    asked = (BEANS, Method.DRIED, State.SEALED, Climate.PANTRY)
    assert [one.use for one in book.speaking(*asked)] == [12]
    assert [one.use for one in book.speaking(*asked, Status.STRICTER)] == [3]
    assert book.speaking(*asked) == book.speaking(*asked)
    assert book.of(Method.SALTED) == ()
    assert book.speaking(BEANS, Method.SALTED, State.SEALED, Climate.PANTRY) == ()
    assert list(book.cuts()) == []


# -- thawed food -----------------------------------------------------------------------------------


def test_thawed_in_cold_water_or_a_microwave_oven_it_is_cooked_at_once_wherever_it_is() -> None:
    """Oklahoma State Extension: cook at once."""
    assert (COOK_AT_ONCE.use, COOK_AT_ONCE.unit, COOK_AT_ONCE.kind) == (0, "days", Kind.SAFETY)
    assert COOK_AT_ONCE.climates == frozenset(Climate)
    assert COOK_AT_ONCE.temp_f_max == 40.0


def test_thawed_food_without_a_figure_has_a_day_in_the_cold_and_none_out_of_it() -> None:
    assert (THAWED_ONE_DAY.use, THAWED_ONE_DAY.kind) == (1, Kind.SAFETY)
    assert THAWED_ONE_DAY.climates == {Climate.FRIDGE}
    assert THAWED_ONE_DAY.temp_f_max == 40.0
    assert (THAWED_OUT.use, THAWED_OUT.kind) == (None, Kind.REFUSE)
    assert THAWED_OUT.climates == {Climate.ROOM, Climate.PANTRY, Climate.CELLAR}
    assert THAWED_OUT.temp_f_max is None
    for one in (COOK_AT_ONCE, THAWED_ONE_DAY, THAWED_OUT):
        assert (one.food, one.state, one.status) == ("*", State.THAWED, Status.CURRENT)
        assert one.source
        assert (one.least, one.most) == (one.use, one.use)


def test_a_refusal_stands_against_wider_figures_and_not_against_the_food_s_own() -> None:
    refused, own = refusal("class:bean"), rule("runner beans", 8)
    wide = rule("group:vegetable", 1)
    assert said([refused, own, wide]) == ["runner beans-8", "group:vegetable-1"]
    assert said([refused, wide]) == ["class:bean-None", "group:vegetable-1"]
    words = rule("runner beans", None)
    assert said([refused, words]) == ["runner beans-None", "class:bean-None"], "no figure"


def test_of_a_food_that_nobody_knows_every_refusal_stands() -> None:
    found = said([refusal("*"), rule("group:vegetable", 1)], ODD)
    assert found == ["group:vegetable-1", "*-None"]


def test_words_that_surely_are_its_stand_where_figures_are_guessed() -> None:
    found = said([rule("*", None), rule("class:bean", 7)], ODD)
    assert found == ["*-None"], "three months for beans say nothing of it"
    both = said([rule("*", 9), rule("class:bean", 7)], ODD)
    assert both == ["class:bean-7", "*-9"], "beside a figure of its own they shorten"


def test_the_rules_for_all_thawed_food() -> None:
    """Oklahoma State University Extension: fast ways to thaw; USDA FSIS: out over two hours."""
    assert (COOK_AT_ONCE.use, THAWED_ONE_DAY.use, THAWED_OUT.use) == (0, 1, None)
    assert (THAWED_ONE_DAY.temp_f_max, THAWED_OUT.temp_f_max) == (40.0, None)
    assert COOK_AT_ONCE.climates == frozenset(Climate)
