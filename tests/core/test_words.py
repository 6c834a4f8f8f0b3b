"""The trade's words, and the small rules that several rooms share."""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.core import scope
from pantry_tui.core.canned import low_acid_in_water
from pantry_tui.core.keeping.ladder import worse
from pantry_tui.core.model import EVER, FoodFacts, Held, Place, Rated, Read, When
from pantry_tui.core.text import clean, singular
from pantry_tui.core.vessels import is_closed
from pantry_tui.core.words import (
    ASSUMED_F,
    MARK,
    WARM_TO_COLD,
    Acidity,
    Climate,
    Group,
    Method,
    Rating,
    State,
    Trust,
    Verdict,
)

BEANS = FoodFacts("runner beans", Group.VEGETABLE, Acidity.LOW_ACID, frozenset({"bean"}))
ODD = FoodFacts("medley", Group.VEGETABLE, Acidity.LOW_ACID, known=False)


def test_from_warm_to_cold() -> None:
    assert set(WARM_TO_COLD) == set(Climate)
    assumed = [ASSUMED_F[one] for one in WARM_TO_COLD]
    assert assumed == sorted(assumed, reverse=True)
    assert [one for one in WARM_TO_COLD if one.is_cold] == [Climate.FRIDGE, Climate.FREEZER]
    assert ASSUMED_F[Climate.FRIDGE] <= 40.0, "USDA FSIS: 40 °F or below"


def test_what_is_kept_by_the_cold() -> None:
    assert {one for one in Method if one.needs_cold} == {
        Method.FREEZER_JAM, Method.FRIDGE_PICKLE, Method.HOT_SMOKED, Method.COLD_SMOKED,
        Method.FROZEN, Method.IN_OIL, Method.MEAL,
    }  # fmt: skip


def test_every_verdict_has_a_mark_of_its_own_that_differs_in_more_than_case() -> None:
    assert len({mark.lower() for mark in MARK.values()}) == len(set(Verdict))
    assert all(len(mark) == 1 for mark in MARK.values())


def test_from_worst_to_best() -> None:
    order = [
        Verdict.DO_NOT_TASTE, Verdict.DISCARD, Verdict.UNKNOWN, Verdict.PAST_BEST,
        Verdict.EAT_SOON, Verdict.NEEDS_CARE, Verdict.SOUND,
    ]  # fmt: skip
    for n, one in enumerate(order):
        assert all(worse(one, other) is one for other in order[n:])


def test_words_of_older_logs_are_understood_and_others_are_not() -> None:
    assert State("working") is State.IN_PROGRESS
    assert Verdict("tend") is Verdict.NEEDS_CARE
    for kind in (State, Verdict):
        with pytest.raises(ValueError, match="no such word"):
            kind("no such word")


def test_how_far_a_figure_is_to_be_trusted_is_said_in_words() -> None:
    assert [one.shown for one in Trust] == ["source seen", "copy seen", "from memory", "your own"]


def test_a_rating_is_said_with_what_to_change() -> None:
    assert str(Rated(date(2026, 1, 1), Rating.CHANGE, "less salt")) == "change: less salt"
    assert str(Rated(date(2026, 1, 1), Rating.NOT_AGAIN)) == "not again"


@pytest.mark.parametrize(
    ("facts", "warm"),
    [
        ((), 38.0),
        ((Held(EVER, Climate.FRIDGE, 38.0),), 38.0),
        ((Read(When(5, 5, date(2026, 1, 1)), 45.0),), 45.0),
        ((Held(EVER, Climate.FRIDGE, 38.0), Read(When(5, 5, date(2026, 1, 1)), 45.0)), 45.0),
        # What was said of its target since then counts, and not the reading before.
        ((Read(When(5, 5, date(2026, 1, 1)), 45.0), Held(EVER, Climate.FRIDGE, 38.0)), 38.0),
    ],
)
def test_how_warm_a_place_is_now(facts: tuple[Held | Read, ...], warm: float) -> None:
    assert Place("p", "fridge", Climate.FRIDGE, facts=facts).temperature_f == warm


def test_a_target_counts_and_without_one_the_climate() -> None:
    assert Place("p", "fridge", Climate.FRIDGE, target_f=36.0).target == 36.0
    assert Place("p", "fridge", Climate.FRIDGE).target == ASSUMED_F[Climate.FRIDGE]
    assert Place("p", "freezer", Climate.FREEZER, target_f=0.0).target == 0.0


@pytest.mark.parametrize(
    ("method", "acidity", "never"),
    [
        (Method.BOILING_WATER, Acidity.LOW_ACID, True),
        (Method.BOILING_WATER, Acidity.ACID, False),
        (Method.BOILING_WATER, Acidity.ACIDIFIED, False),
        (Method.PRESSURE, Acidity.LOW_ACID, False),
    ],
)
def test_low_acid_food_is_never_canned_in_boiling_water(
    method: Method, acidity: Acidity, never: bool
) -> None:
    food = FoodFacts("x", Group.VEGETABLE, acidity)
    assert low_acid_in_water(method, food) is never


@pytest.mark.parametrize(
    ("key", "near"),
    [
        ("*", 0), ("runner beans", 3), ("beans", -1), ("class:bean", 2), ("class:root", -1),
        ("group:vegetable", 1), ("group:fruit", -1), ("acid:vegetable", -1),
    ],
)  # fmt: skip
def test_how_close_a_key_is_to_a_food(key: str, near: int) -> None:
    assert scope.near(key, BEANS) == near


def test_a_food_that_nobody_knows_may_be_any_class_of_its_group() -> None:
    assert scope.near("class:root", ODD) == scope.GROUP
    assert scope.near("class:root", ODD, guess=False) == scope.OTHER
    assert scope.near("class:poultry", ODD) == scope.OTHER
    assert scope.near("class:never heard of", ODD) == scope.OTHER
    assert not scope.might_be("root", BEANS)


@pytest.mark.parametrize("acidity", [Acidity.ACID, Acidity.ACIDIFIED])
def test_what_is_acid_of_a_group(acidity: Acidity) -> None:
    sour = FoodFacts("relish", Group.RELISH, acidity)
    assert scope.near("acid:relish", sour) == scope.GROUP
    assert scope.near("acid:fruit", sour) == scope.OTHER


def test_the_parts_of_a_key() -> None:
    assert scope.split("class:bean") == ("class", "bean")
    assert scope.split("runner beans") == ("", "runner beans")
    assert scope.class_of("class:bean") == "bean"
    assert scope.class_of("group:fruit") == ""


@pytest.mark.parametrize(
    ("method", "size", "closed"),
    [
        (Method.PRESSURE, "", True), (Method.JAM, "anything", True),
        (Method.LACTIC, "crock", False), (Method.LACTIC, "quart JARS", True),
        (Method.CELLAR, "crate", False), (Method.FROZEN, "2 lb bag", True),
        (Method.DRIED, "sack", False), (Method.FROZEN, "", True),
        (Method.SALTED, "", False), (Method.FRESH, "", False),
    ],
)  # fmt: skip
def test_which_vessels_the_first_draw_opens(method: Method, size: str, closed: bool) -> None:
    assert is_closed(method, size) is closed


@pytest.mark.parametrize(
    ("many", "one"),
    [
        ("berries", "berry"), ("peaches", "peach"), ("radishes", "radish"), ("boxes", "box"),
        ("glasses", "glass"), ("tomatoes", "tomato"), ("jars", "jar"), ("peas", "pea"),
        ("pies", "pie"), ("asparagus", "asparagus"), ("cress", "cress"), ("basis", "basis"),
        ("gas", "gas"), ("jar", "jar"), ("figs", "fig"), ("shoes", "shoe"),
    ],
)  # fmt: skip
def test_one_of_many(many: str, one: str) -> None:
    assert singular(many) == one


def test_what_is_typed_stands_on_one_line_of_a_terminal() -> None:
    assert clean("  beans\twith\n mint \x1b[31m") == "beans with mint [31m"
    assert clean("a\u202eb\u2066c\u200fd") == "abcd"
    assert clean("crème brûlée") == "crème brûlée"
