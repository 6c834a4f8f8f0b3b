"""Which sign a person means by their words, over signs made up for it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.signs import (
    DISPOSAL,
    DISPOSAL_SOURCES,
    Seal,
    Sign,
    SignVerdict,
    find_sign,
    likely_sign,
    near_signs,
    sign_words,
    signs_for,
    verdict_of,
)
from pantry_tui.core.words import Acidity, Group, Method, Trust, Verdict

BEANS = FoodFacts("runner beans", Group.VEGETABLE, Acidity.LOW_ACID, frozenset({"bean"}))
PEACHES = FoodFacts("peaches", Group.FRUIT, Acidity.ACID)
TOMATOES = FoodFacts("tomatoes", Group.VEGETABLE, Acidity.ACIDIFIED, frozenset({"tomato"}))
ODD = FoodFacts("medley", Group.VEGETABLE, Acidity.LOW_ACID, known=False)

TASTE_NOT, DISCARD = SignVerdict.DO_NOT_TASTE, SignVerdict.DISCARD
COOK, LOOK = SignVerdict.COOK_FIRST, SignVerdict.LOOK_AGAIN
NOW, HARMLESS = SignVerdict.USE_NOW, SignVerdict.HARMLESS


def sign(words: str, verdict: SignVerdict = DISCARD, id_: str = "", **more: object) -> Sign:
    plain = Sign(
        id_ or words.replace(" ", "-"), (Method.PRESSURE,), ("*",), Seal.ANY, words, "", verdict,
        (), "bin", False, "", "", Trust.READ,
    )  # fmt: skip
    return replace(plain, **more)  # type: ignore[arg-type]


# -- what a sign says ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("says", "verdict"),
    [(TASTE_NOT, Verdict.DO_NOT_TASTE), (DISCARD, Verdict.DISCARD), (COOK, Verdict.EAT_SOON),
     (LOOK, Verdict.NEEDS_CARE), (NOW, Verdict.EAT_SOON), (HARMLESS, Verdict.SOUND)],
)  # fmt: skip
def test_what_a_sign_makes_of_food(says: SignVerdict, verdict: Verdict) -> None:
    assert verdict_of(sign("x", says), Method.DRIED, BEANS) is verdict


@pytest.mark.parametrize(
    ("method", "food", "closed", "verdict"),
    [
        (Method.PRESSURE, BEANS, True, Verdict.DO_NOT_TASTE),
        (Method.BOILING_WATER, BEANS, True, Verdict.DO_NOT_TASTE),
        (Method.PRESSURE, TOMATOES, True, Verdict.DO_NOT_TASTE),
        (Method.PRESSURE, BEANS, False, Verdict.DISCARD),
        (Method.PRESSURE, PEACHES, True, Verdict.DISCARD),
        (Method.JAM, BEANS, True, Verdict.DISCARD),
        (Method.FROZEN, TOMATOES, True, Verdict.DISCARD),
    ],
)
def test_a_closed_low_acid_jar_that_must_go_is_never_opened(
    method: Method, food: FoodFacts, closed: bool, verdict: Verdict
) -> None:
    """USDA AIB 539, which counts tomatoes among them where a suspect jar is handled."""
    assert verdict_of(sign("x"), method, food, closed) is verdict


def test_where_nobody_says_whether_it_is_closed_it_counts_as_closed() -> None:
    assert verdict_of(sign("x"), Method.PRESSURE, BEANS) is Verdict.DO_NOT_TASTE
    assert verdict_of(sign("x", COOK), Method.PRESSURE, BEANS) is Verdict.EAT_SOON


# -- which can be seen -----------------------------------------------------------------------------


def seen(signs: list[Sign], food: FoodFacts = BEANS, *, open_: bool = False) -> list[str]:
    return [one.words for one in signs_for(signs, Method.PRESSURE, food, open_)]


def test_a_sign_stands_for_its_methods_its_foods_and_its_seal() -> None:
    assert seen([sign("a"), sign("b", methods=(Method.DRIED,))]) == ["a"]
    assert seen([sign("a", foods=("group:fruit",)), sign("b", foods=("peas", "class:bean"))]) == [
        "b"
    ]
    both = [sign("shut", seal=Seal.CLOSED), sign("open", seal=Seal.OPEN), sign("any")]
    assert seen(both) == ["shut", "any"]
    assert seen(both, open_=True) == ["open", "any"]


def test_the_worst_stands_first_and_of_equals_the_first_of_the_table() -> None:
    signs = [
        sign("e", HARMLESS), sign("d", LOOK), sign("c2", NOW), sign("c1", COOK),
        sign("a2", DISCARD), sign("a1", TASTE_NOT), sign("a3", DISCARD),
    ]  # fmt: skip
    assert seen(signs, PEACHES) == ["a1", "a2", "a3", "c1", "c2", "d", "e"]
    assert seen(signs, BEANS)[:3] == ["a1", "a2", "a3"], "they are all not to be tasted"


@pytest.mark.parametrize("verdict", list(SignVerdict))
def test_a_food_that_nobody_knows_is_shown_the_strict_signs_of_every_class(
    verdict: SignVerdict,
) -> None:
    lenient = verdict in (NOW, HARMLESS)
    assert bool(seen([sign("a", verdict, foods=("class:root",))], ODD)) is not lenient
    assert seen([sign("a", verdict, foods=("group:vegetable",))], ODD) == ["a"]
    assert seen([sign("a", verdict, foods=("class:root",))], BEANS) == []


# -- words -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("Lids, SWOLLEN!", "swollen lid"), ("a bulging lid", "swollen lid"),
        ("the lid is domed", "swollen lid"), ("mold on the top", "mould top"),
        ("gray odour", "grey smell"), ("not fuzzy", "not fuzzy"), ("no smell", "no smell"),
        ("leaves", "leaf"), ("spurting and leaky", "spurt leaking"),
        ("", ""), ("of it", ""),
    ],
)  # fmt: skip
def test_words_in_one_form(text: str, words: str) -> None:
    assert sign_words(text) == frozenset(words.split())


SWOLLEN = sign("swollen lid", TASTE_NOT, "s1")
FUZZ = sign("white fuzzy mould", DISCARD, "s2")
SPECKS = sign("white specks, not fuzzy", HARMLESS, "s3")
KAHM = sign("flat white film (kahm)", LOOK, "s4")
SOFT = sign("soft and slimy", DISCARD, "s5")
SOFTER = sign("slimy, soft", TASTE_NOT, "s6")
CLOUDY = sign("cloudy brine from starch", HARMLESS, "s7")
ALL = [SWOLLEN, FUZZ, SPECKS, KAHM, SOFT, SOFTER, CLOUDY]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("lid swollen", SWOLLEN), ("the BULGING lids", SWOLLEN), (" S1 ", SWOLLEN),
        ("slimy and soft", SOFTER), ("s5", SOFT), ("swollen", None), ("swollen red lid", None),
        ("", None), ("of the", None), ("s9", None),
    ],
)  # fmt: skip
def test_a_sign_is_found_by_its_id_or_by_all_its_words_and_of_two_the_strictest(
    text: str, found: Sign | None
) -> None:
    assert find_sign(ALL, text) is found


@pytest.mark.parametrize(
    ("text", "found"),
    [
        # All its words and more: a sign that throws the food away needs no more than one.
        ("swollen", SWOLLEN), ("fuzzy mould", FUZZ),
        # Two that differ in verdict: the person must say which.
        ("white", None), ("fuzzy", None), ("soft", None),
        # A sign that keeps the food is named whole, or by more than half of its words.
        ("kahm", KAHM), ("kahm yeast", KAHM), ("kahm film", KAHM), ("specks", None),
        ("flat white film", KAHM), ("white film", None), ("film", None),
        ("white specks", None),
        ("cloudy", None), ("cloudy brine", None), ("cloudy brine starch", CLOUDY),
        # What it says is not there does not mean it without the "not".
        ("specks fuzzy", None), ("specks not fuzzy", SPECKS),
        ("purple", None), ("", None),
    ],
)  # fmt: skip
def test_a_word_or_two_throw_food_away_and_never_keep_it(text: str, found: Sign | None) -> None:
    assert likely_sign(ALL, text) is found


@given(st.sampled_from(ALL), st.randoms(use_true_random=False))
def test_the_order_of_words_says_nothing(one: Sign, random: object) -> None:
    words = sorted(sign_words(one.words))
    random.shuffle(words)  # type: ignore[attr-defined]
    found = find_sign(ALL, " ".join(words))
    assert found is not None
    assert sign_words(found.words) == sign_words(one.words)


def test_near_signs_stand_nearest_first_each_wording_once_and_few() -> None:
    twice = replace(SWOLLEN, id="s1b", seal=Seal.OPEN, verdict=DISCARD)
    found = near_signs([*ALL, twice], "swolen lid")
    assert found[0] is SWOLLEN
    assert len({one.words for one in found}) == len(found)
    assert near_signs(ALL, "fuzzy grey mould")[0] is FUZZ
    open_ = sign("mould spots", COOK), sign("mould rings", DISCARD), sign("mould spots", TASTE_NOT)
    assert near_signs(open_, "mould") == [open_[2], open_[1]], "a milder one moves none back"
    assert near_signs(ALL, "xyzzy qwop") == []
    many = [sign(f"white spot {n}") for n in range(9)]
    assert len(near_signs(many, "white spot")) == 5
    assert len(near_signs(many, "white spot", 2)) == 2
    assert near_signs([SOFT, SOFTER], "slimy soft")[0] is SOFTER, "the strictest of two as near"


def test_every_route_of_disposal_has_its_steps_and_its_source() -> None:
    assert set(DISPOSAL) == set(DISPOSAL_SOURCES)
    for route, steps in DISPOSAL.items():
        assert bool(steps) is (route != "none")
        assert bool(DISPOSAL_SOURCES[route]) is (route != "none")
