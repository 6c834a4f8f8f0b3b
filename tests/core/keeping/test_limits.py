"""The verdicts that dates give, history by history; the laws are in tests/judging."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Method, State, Verdict
from tests.core.keeping.told import MADE, OF, Told


def test_the_last_day_may_still_be_eaten_and_the_next_may_not() -> None:
    oil = Told("garlic", Method.IN_OIL, "fridge")
    assert oil.judged(4).verdict is Verdict.EAT_SOON
    assert oil.judged(5).verdict is Verdict.DISCARD


def test_freezing_late_does_not_stop_the_clock_that_runs() -> None:
    meal = Told("lasagne", Method.MEAL, "fridge").at(2).move("freezer")
    assert meal.last(2) == meal.last(200) == 3


def test_a_night_on_a_shelf_is_never_forgiven_to_a_fridge_pickle() -> None:
    pickle = Told("cucumbers", Method.FRIDGE_PICKLE, "fridge").at(5).move("kitchen")
    assert pickle.at(8).move("fridge").judged(9).verdict is Verdict.DISCARD


def test_a_warm_freezer_spends_quality_and_gives_no_safety_date() -> None:
    cold = Told("runner beans", Method.FROZEN, "freezer").judged(0)
    warm = Told("runner beans", Method.FROZEN, "freezer").at(0, 10).read("freezer", 10).judged(0)
    assert warm.best_by is not None
    assert cold.best_by is not None
    quarter = (cold.best_by - MADE).days / 4
    assert abs((warm.best_by - MADE).days - quarter) <= 1
    assert warm.discard_after is None
    assert cold.discard_after is None


def test_half_a_life_in_one_place_leaves_half_in_the_next() -> None:
    room = Told("apples", Method.DRIED, "kitchen").judged(0).best_by
    larder = Told("apples", Method.DRIED, "larder").judged(0).best_by
    assert room is not None
    assert larder is not None
    assert room < larder
    half = (room - MADE).days // 2
    moved = Told("apples", Method.DRIED, "kitchen").at(half, 10).move("larder").judged(half)
    assert moved.best_by is not None
    assert room < moved.best_by < larder
    spent = half / (room - MADE).days
    rest = (larder - MADE).days * (1 - spent)
    assert abs((moved.best_by - MADE).days - half - rest) <= 4


def test_low_acid_food_in_boiling_water_is_suspect_without_a_sign() -> None:
    beans = Told("runner beans", Method.BOILING_WATER, "larder")
    assert beans.judged(0).verdict is Verdict.DO_NOT_TASTE
    assert not beans.judged(0).usable


def test_an_unknown_food_takes_the_strictest_rule_of_its_group() -> None:
    odd = FoodFacts("elder shoots", Group.HERB, Acidity.LOW_ACID, frozenset(), known=False)
    assert Told(odd, Method.IN_OIL, "fridge").last(0) == 2


@pytest.mark.parametrize("climate", [Climate.ROOM, Climate.PANTRY, Climate.CELLAR])
def test_where_nothing_is_published_the_verdict_is_not_sound(climate: Climate) -> None:
    fish = Told("salmon", Method.HOT_SMOKED, OF[climate])
    assert fish.judged(0, 13).verdict in (Verdict.UNKNOWN, Verdict.DISCARD)


@pytest.mark.parametrize("method", [Method.FROZEN, Method.PRESSURE, Method.MEAL])
def test_an_unknown_date_is_never_sound(method: Method) -> None:
    judged = Told("stew", method, "freezer", made=None).judged(3)
    assert judged.verdict in (Verdict.UNKNOWN, Verdict.DISCARD)
    assert judged.best_by is None
    assert judged.discard_after is None
    assert judged.why_no_discard == "day unknown"
    assert not judged.usable


def test_the_ladder_says_each_verdict_with_its_first_day() -> None:
    jam = Told("strawberry jam", Method.JAM, "larder").assessed(0)
    assert jam.best_by == date(2027, 3, 1)
    assert jam.steps() == (
        (MADE, Verdict.SOUND),
        (date(2027, 1, 30), Verdict.EAT_SOON),
        (date(2027, 3, 2), Verdict.PAST_BEST),
    )
    assert jam.soon_from == date(2027, 1, 30)
    for day, verdict in jam.steps():
        assert jam.on(day).verdict is verdict
        assert jam.on(day + timedelta(days=1)).verdict is verdict


def test_why_there_is_no_last_day_is_one_of_three() -> None:
    assert Told("peas", Method.FROZEN, "freezer").judged(0).why_no_discard == "no limit"
    wine = Told("cider", Method.ALCOHOL_FERMENT, "vault").judged(0)
    assert wine.why_no_discard == "nothing published"
    assert wine.usable
    kraut = Told("sauerkraut", Method.LACTIC, "kitchen", State.IN_PROGRESS).judged(0)
    assert kraut.why_no_discard == "in progress"
    assert not kraut.usable
    assert kraut.verdict is Verdict.NEEDS_CARE
    assert Told("lasagne", Method.MEAL, "fridge").judged(0).why_no_discard == ""
