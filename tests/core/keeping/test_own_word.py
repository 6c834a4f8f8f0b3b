"""That a food is acid by a household's own word makes nothing safe that no publication names.

House law: no published figure is unknown, and not usable where the food can hurt.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from pantry_tui.core import scope
from pantry_tui.core.keeping.doubt import OWN_WORD
from pantry_tui.core.keeping.exposure import imagined
from pantry_tui.core.keeping.limits import Judgement, judge_fresh
from pantry_tui.core.log.own import told_food
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Method, State, Verdict
from pantry_tui.reference.tables import load_tables
from tests.core.keeping.told import MADE

BOOK = load_tables().book
LOW = Acidity.LOW_ACID
STATES = (State.SEALED, State.OPEN, State.IN_PROGRESS, State.THAWED)
SOUR = [Acidity.ACID, Acidity.ACIDIFIED]


def judged(
    food: FoodFacts, method: Method, climate: Climate, state: State = State.SEALED
) -> Judgement:
    batch = Batch("b", "2A", food, method, MADE)
    return judge_fresh(batch, state, imagined(climate), MADE, BOOK)


@pytest.mark.parametrize("method", list(Method))
@pytest.mark.parametrize("acidity", SOUR)
def test_the_word_acid_lets_nobody_eat_what_low_acid_would_not(
    method: Method, acidity: Acidity
) -> None:
    """Group by group, wherever it stands and whatever was done to it."""
    for group in Group:
        low, told = (told_food("chilli crunch", group, one) for one in (LOW, acidity))
        for climate in Climate:
            for state in STATES:
                strict = judged(low, method, climate, state)
                here = judged(told, method, climate, state)
                where = f"{group}, {state} in a {climate}"
                assert strict.usable or not here.usable, where
                if strict.discard_after:
                    assert here.discard_after, where
                    assert here.discard_after <= strict.discard_after, where


@pytest.mark.parametrize("group", [Group.RELISH, Group.VEGETABLE, Group.FRUIT, Group.DRINK])
@pytest.mark.parametrize("method", [Method.VINEGAR_PICKLE, Method.JAM, Method.BOILING_WATER])
def test_under_a_lid_it_is_not_offered_and_says_whose_word_it_is(
    method: Method, group: Group
) -> None:
    for climate in (Climate.ROOM, Climate.PANTRY, Climate.CELLAR):
        here = judged(told_food("fiddleheads", group, Acidity.ACID), method, climate)
        assert here.verdict is Verdict.UNKNOWN
        assert not here.usable
        assert OWN_WORD in here.reasons


def test_the_tables_word_is_no_household_word() -> None:
    """The same facts from a table stand: pickled plums keep their year."""
    listed = load_tables().facts("pickled plums")
    assert listed is not None
    assert not listed.told
    assert judged(listed, Method.VINEGAR_PICKLE, Climate.PANTRY).usable
    said = replace(listed, told=True)
    assert not judged(said, Method.VINEGAR_PICKLE, Climate.PANTRY).usable


def test_rows_for_acid_food_do_not_speak_for_it() -> None:
    told = told_food("chilli crunch", Group.RELISH, Acidity.ACIDIFIED)
    assert scope.near("acid:relish", told) == scope.OTHER
    assert scope.near("group:relish", told) == scope.GROUP
    assert scope.near("acid:relish", replace(told, told=False)) == scope.GROUP
    assert not told_food("chilli crunch", Group.RELISH, LOW).is_acid


@pytest.mark.parametrize("group", list(Group))
def test_what_is_a_crop_by_a_household_word_alone_is_offered_by_figures_only(group: Group) -> None:
    """Nobody knows whether it is a whole raw crop, or what it is made with: where no figure covers
    it, it is not offered, until it is dry or in spirits. A table's own nut or grain is."""
    strict = {Method.DRIED, Method.FREEZE_DRIED, Method.INFUSION}
    for method in set(Method) - strict:
        for climate in Climate:
            here = judged(told_food("fried crickets", group, LOW), method, climate)
            assert not here.usable or here.verdict is not Verdict.UNKNOWN, f"{method}, {climate}"


def test_a_figure_for_lard_or_tallow_is_none_for_any_fat() -> None:
    for climate in (Climate.FRIDGE, Climate.FREEZER):
        for told in ("hollandaise", "foie gras"):
            here = judged(told_food(told, Group.FAT, LOW), Method.RENDERED_FAT, climate)
            assert here.verdict is Verdict.UNKNOWN
            assert not here.usable
        lard = load_tables().facts("lard")
        assert lard is not None
        assert judged(lard, Method.RENDERED_FAT, climate).usable


def test_a_whole_raw_crop_of_the_tables_is_offered_unknown() -> None:
    listed = load_tables().facts("walnuts")
    assert listed is not None
    assert judged(listed, Method.FRESH, Climate.ROOM).usable
