"""What no figure covers: passages, what works still, what was called thawed, what was bought."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import timedelta

import pytest

from pantry_tui.core.keeping.rules import Rulebook, Status
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, Verdict
from tests.core.keeping.test_reckoning import (
    CELLAR,
    CROP,
    FREEZER,
    FRIDGE,
    MEAT,
    OPEN,
    QUALITY,
    SAFETY,
    SEALED,
    THAWED,
    WORKING,
    Rows,
    book,
    life,
    limits,
    reckoned,
)
from tests.core.keeping.told import MADE, Told


def texts(told: Told, day: int = 9, hour: float = 12, *, unsealed: bool = False) -> list[str]:
    """What is said of it; which food it is named as is asked elsewhere."""
    said = (one.text for one in reckoned(told, day, hour, unsealed=unsealed).troubles())
    return [re.sub(r" for [^()]+ \([^()]+\), ", " for this, ", one) for one in said]


def nothing(state: str, climate: str) -> str:
    return f"No published figure for this, {state} in a {climate}."


VAULT: Rows = {(SEALED, CELLAR): (QUALITY, 90)}


@pytest.mark.parametrize(
    ("food", "place", "minutes", "doubted"),
    [
        # What cannot hurt may pass a day anywhere; what can two hours in the warm.
        (CROP, "kitchen", 24 * 60, False), (CROP, "kitchen", 24 * 60 + 1, True),
        (CROP, "fridge", 60, False), (MEAT, "kitchen", 120, False), (MEAT, "kitchen", 121, True),
        # In the cold no time at all, for what grows there grows unseen.
        (MEAT, "fridge", 1, True), (MEAT, "fridge", 0, False),
    ],
)  # fmt: skip
def test_a_passage_of_which_nothing_is_published(
    food: FoodFacts, place: str, minutes: int, doubted: bool
) -> None:
    one = life(VAULT, "vault", food).at(1, 8).move(place)
    climate = one.places[place].climate.value
    if minutes:
        one = one.at(1, 8 + minutes / 60).move("vault")
        assert texts(one) == ([nothing("sealed", climate)] if doubted else [])
    else:
        passing = life(VAULT, "vault", food).at(1, 8).hold("vault", FRIDGE).move("larder")
        other = {**VAULT, (SEALED, Climate.PANTRY): (QUALITY, 90)}
        passing.book = book(other)
        assert texts(passing) == []
    stays = life(VAULT, "vault", food).at(9, 11.9).move(place)
    assert texts(stays) == [nothing("sealed", climate)], "where it stands now always counts"


def test_passages_add_up() -> None:
    one = life(VAULT, "vault", CROP)
    one.at(1, 8).move("kitchen").at(1, 20).move("vault").at(2, 8).move("kitchen")
    one.at(2, 21).move("vault")
    assert texts(one) == [nothing("sealed", "room")] * 2


@pytest.mark.parametrize(
    ("rows", "food", "told"),
    [
        ({}, MEAT, [nothing("in progress", "cellar")]), ({}, CROP, []),
        ({(WORKING, CELLAR): (QUALITY, None)}, MEAT, []),
        ({(WORKING, CELLAR): (SAFETY, 9)}, MEAT, []),
    ],
)  # fmt: skip
def test_what_works_still_and_can_hurt_wants_words_at_least(
    rows: Rows, food: FoodFacts, told: list[str]
) -> None:
    assert texts(life(rows, "vault", food, state=WORKING)) == told


def test_an_unsealed_jar_on_a_shelf_is_no_jar_that_works() -> None:
    assert texts(life({}, "larder", method=Method.PRESSURE), unsealed=True) == [
        nothing("in progress", "pantry")
    ]
    harmless = life({}, "larder", FoodFacts("plums", Group.FRUIT, Acidity.ACID), Method.JAM)
    assert texts(harmless, unsealed=True) == [nothing("in progress", "pantry")]


def test_to_call_it_thawed_brings_no_figure_for_what_never_froze() -> None:
    rows: Rows = {(THAWED, FRIDGE): (SAFETY, 2)}
    never = life(rows, "fridge").at(1).thaw()
    assert texts(never) == [nothing("sealed", "fridge")] * 2
    assert texts(life({**rows, (SEALED, FRIDGE): (SAFETY, 5)}).at(1).thaw()) == []
    opened = life({**rows, (SEALED, FRIDGE): (SAFETY, 5)}).at(1).open().at(2).thaw()
    assert texts(opened) == [nothing("open", "fridge")] * 2
    froze = life({**rows, (SEALED, FREEZER): (QUALITY, 90)}, "freezer", method=Method.FROZEN)
    assert texts(froze.at(3).thaw("fridge")) == []


def test_bought_food_that_can_hurt_has_its_date_or_nothing() -> None:
    rows: Rows = {(SEALED, FRIDGE): (SAFETY, 5), (SEALED, CELLAR): (QUALITY, 90)}
    meat = life(rows, method=Method.BOUGHT)
    assert texts(meat) == [], "without a date the days of the chart count"
    assert texts(life({}, method=Method.BOUGHT)) == [nothing("sealed", "fridge")]
    assert texts(life({(SEALED, FRIDGE): (QUALITY, 90)}, method=Method.BOUGHT)) == [
        nothing("sealed", "fridge")
    ], "how good it is says nothing of how safe it is"
    undated = life({}, method=Method.BOUGHT, printed=MADE + timedelta(days=9))
    assert texts(undated) == [nothing("sealed", "fridge")], "no use-by, and no days"
    dated = life(rows, method=Method.BOUGHT, printed=MADE + timedelta(days=9))
    assert texts(dated) == []
    assert texts(life(rows, "vault", CROP, Method.BOUGHT)) == [], "what cannot, its figures too"
    assert texts(life({}, "vault", CROP, Method.BOUGHT, printed=MADE)) == []
    frozen = life({}, "freezer", method=Method.BOUGHT, printed=MADE + timedelta(days=9))
    assert texts(frozen) == [], "a pack may be frozen"
    tin = life({}, "larder", method=Method.BOUGHT, size="tin", printed=MADE)
    assert texts(tin) == []
    froze = life({}, "freezer", method=Method.BOUGHT, size="tin", printed=MADE)
    assert texts(froze) == [nothing("sealed", "freezer")]


def test_of_the_lives_of_its_states_the_one_that_ends_first_counts() -> None:
    rows: Rows = {(SEALED, CELLAR): (QUALITY, 40), (OPEN, CELLAR): (QUALITY, 10)}
    found = reckoned(life(rows, "vault", CROP).at(1).open()).spent()
    assert found is not None
    assert (found.day - MADE).days == 11
    sooner = reckoned(life({**rows, (SEALED, CELLAR): (QUALITY, 5)}, "vault", CROP).at(1).open())
    spent = sooner.spent()
    assert spent is not None
    assert spent.day <= MADE + timedelta(days=11)
    assert reckoned(life({}, "vault", CROP)).spent() is None


def test_a_verdict_of_nothing_published_is_not_usable_where_it_can_hurt() -> None:
    assert life({}).judged(1).verdict is Verdict.UNKNOWN
    assert not life({}).judged(1).usable
    assert life({}, "vault", CROP).judged(1).usable


# -- packed without air ----------------------------------------------------------------------------


def packed(rows: Rows, of_packs: Rows, place: str, method: Method = Method.FROZEN) -> Told:
    """With figures for packs without air, which are closer than those for any food."""
    told = life(rows, place, method=method, vacuum="yes")
    close = [replace(one, id=f"pack {one.id}", food="class:vacuum-packed")
             for one in book(of_packs).rules[method]]  # fmt: skip
    told.book = Rulebook({method: [*told.book.rules[method], *close]})
    return told


def test_a_pack_without_air_is_one_until_it_is_opened_thawed_or_not() -> None:
    rows: Rows = {(THAWED, FRIDGE): (SAFETY, 3)}
    packs: Rows = {(THAWED, FRIDGE): (SAFETY, 1)}
    shut = packed(rows, packs, "freezer").at(2, 12).thaw("fridge")
    assert limits(shut) == [4]
    opened = packed(rows, packs, "freezer").at(2, 11).open().at(2, 12).thaw("fridge")
    assert limits(opened) == [6]


def test_a_pack_that_may_not_be_frozen_may_not_stand_in_a_freezer_that_fails() -> None:
    rows: Rows = {(SEALED, FRIDGE): (QUALITY, 9), (OPEN, FRIDGE): (QUALITY, 9)}
    packs: Rows = {(SEALED, FREEZER): (Kind.REFUSE, None), (OPEN, FREEZER): (Kind.REFUSE, None)}

    def failing() -> Told:
        told = packed(rows, packs, "fridge", Method.CELLAR)
        return told.at(0, 10).hold("freezer", FREEZER, 33)

    assert limits(failing().at(1, 8).move("freezer")) == [0]
    assert limits(failing().at(1, 8).open("freezer")) == []


def test_opened_it_may_stand_in_the_cold_where_a_sealed_one_may_not() -> None:
    rows: Rows = {(SEALED, FRIDGE): (Kind.REFUSE, None), (OPEN, FRIDGE): (QUALITY, 9)}
    assert limits(life(rows, "vault").at(1).open("fridge")) == []


def test_too_warm_is_told_by_the_figure_in_use() -> None:
    told = life({(SEALED, FRIDGE): (SAFETY, 9)}).at(0, 11).read("fridge", 45, 60)
    (usual,) = told.book.rules[Method.FRESH]
    stricter = replace(usual, id="theirs", use=2, status=Status.STRICTER)
    told.book = Rulebook({Method.FRESH: [usual, stricter]}, strict=True)
    assert limits(told) == [-1, 2, 9]
    assert {one.rule and one.rule.id for one in reckoned(told).warm} == {usual.id}
