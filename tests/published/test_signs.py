"""Signs of spoilage, and harmless ones, against the publications."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.keeping.ladder import worse
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.signs import (
    DISPOSAL,
    DISPOSAL_SOURCES,
    Sign,
    SignVerdict,
    find_sign,
    near_signs,
    signs_for,
    verdict_of,
)
from pantry_tui.core.words import Acidity, Group, Method, Verdict
from pantry_tui.reference.signs import load_signs
from pantry_tui.reference.tables import load_tables
from tests.published.signs import NEVER_MILDER, TYPED


def cells(block: str) -> Iterator[list[str]]:
    for line in block.strip().splitlines():
        yield [part.strip() for part in line.split("|")]


LINES = [(publication, *line) for publication, block in TYPED.items() for line in cells(block)]
NEVER = [
    (Method(method.strip()), food, sign)
    for methods, food, sign in cells(NEVER_MILDER)
    for method in methods.split(";")
]


def facts(food: str) -> FoodFacts:
    found = load_tables().facts(food)
    assert found is not None, food
    return found


def seen(method: str, food: str, seal: str, words: str) -> Sign | None:
    known = signs_for(load_signs(), Method(method), facts(food), seal == "open")
    return find_sign(known, words)


@pytest.mark.parametrize(
    ("publication", "method", "food", "seal", "words", "verdict", "route"), LINES
)
def test_the_sign_has_its_verdict_and_route(
    publication: str, method: str, food: str, seal: str, words: str, verdict: str, route: str
) -> None:
    sign = seen(method, food, seal, words)
    assert sign is not None, publication
    assert verdict_of(sign, Method(method), facts(food), seal == "closed") is Verdict(verdict)
    assert sign.disposal == route
    assert sign.steps
    assert sign.source in load_tables().sources


def test_enough_is_checked() -> None:
    assert len({line[1:5] for line in LINES}) >= 140
    assert {line[1] for line in LINES} == set(Method)
    assert sum(line[5] == "sound" for line in LINES) >= 25


FOODS = [facts(food.name) for food in load_tables().foods]
STRANGE = [
    FoodFacts("something unheard of", group, acidity, known=False)
    for group in Group
    for acidity in Acidity
]


@given(st.sampled_from(NEVER), st.sampled_from(FOODS + STRANGE), st.booleans())
def test_do_not_taste_is_never_downgraded(
    line: tuple[Method, str, str], food: FoodFacts, open_: bool
) -> None:
    method, named, words = line
    same = [sign for sign in load_signs() if sign.words == words]
    assert same
    assert all(sign.verdict is SignVerdict.DO_NOT_TASTE for sign in same)
    for other in Method:
        for sign in same:
            assert verdict_of(sign, other, food, not open_) is Verdict.DO_NOT_TASTE
    here = food if named == "*" else facts(named)
    shown = [s for s in signs_for(load_signs(), method, here, open_) if s.words == words]
    assert shown or (open_ and words == "lid springs when pressed")
    assert all(sign.disposal != "none" for sign in shown)


@given(st.sampled_from(list(Method)), st.sampled_from(FOODS + STRANGE), st.booleans())
def test_the_worst_sign_stands_first(method: Method, food: FoodFacts, open_: bool) -> None:
    verdicts = [
        verdict_of(sign, method, food, not open_)
        for sign in signs_for(load_signs(), method, food, open_)
    ]
    assert verdicts[0] is Verdict.DO_NOT_TASTE
    assert all(worse(a, b) is a for a, b in pairwise(verdicts))


@given(st.sampled_from(load_signs()), st.sampled_from(FOODS), st.booleans())
def test_a_closed_low_acid_jar_that_goes_is_not_tasted(
    sign: Sign, food: FoodFacts, closed: bool
) -> None:
    for method in (Method.BOILING_WATER, Method.PRESSURE):
        verdict = verdict_of(sign, method, food, closed)
        if sign.verdict is SignVerdict.DISCARD and food.acidity is Acidity.LOW_ACID and closed:
            assert verdict is Verdict.DO_NOT_TASTE
        assert worse(verdict, verdict_of(sign, Method.DRIED, food, closed)) is verdict


@pytest.mark.parametrize("food", ["strawberry jam", "apple jelly", "low-sugar jams", "lemon curd"])
@pytest.mark.parametrize("method", ["jam", "freezer jam"])
@pytest.mark.parametrize("seal", ["open", "closed"])
def test_mould_is_not_scraped_off_jam(food: str, method: str, seal: str) -> None:
    """NC State Extension, answer 591; scraping it off is superseded."""
    sign = seen(method, food, seal, "mould")
    assert sign is not None
    assert sign.verdict is SignVerdict.DISCARD
    assert any("not scrape" in step for step in sign.steps)
    assert not [s for s in load_signs() if "scrape" in s.words]


#: The defaults where publications differ: method, food, seal, sign, what the steps must say.
DEFAULTS = [
    ("pressure canned", "peas", "closed", "unsealed within a day, tested recipe",
     ("24 hours", "tested", "within 3 days", "meat and fish within 2", "do not taste")),
    ("pressure canned", "peas", "closed", "tested process, one detail in doubt, no bad sign",
     ("10 minutes", "1 more for each 1,000 ft", "cannot be mended")),
    ("lactic ferment", "sauerkraut", "open", "flat white film (kahm)", ("Skim", "discard")),
    ("lactic ferment", "kimchi", "open", "fuzzy, raised or coloured mould", ("whole batch",)),
    ("lactic ferment", "sauerkraut", "open", "slimy or ropy", ("Discard the batch",)),
    ("lactic ferment", "sauerkraut", "open", "soft kraut, clean sour smell", ("Use it now",)),
    ("cellar-stored", "potatoes", "open", "short sprouts, firm", ("out deeply",)),
    ("salted", "country hams", "closed", "mould on whole dry-cured ham or salami",
     ("Scrub", "Sliced or cooked: discard")),
    ("sugar preserve", "maple syrup", "open", "mould", ("Discard", "do not skim")),
    ("frozen", "salmon", "closed", "frozen fish set to thaw still sealed",
     ("Open or pierce the pack before it thaws",)),
    ("dried", "oats", "closed", "few insects in good dry goods", ("0 F for 7 days",)),
    ("dried", "apples", "closed", "drops or fog inside the jar", ("for 10 days",)),
]  # fmt: skip


@pytest.mark.parametrize(("method", "food", "seal", "words", "said"), DEFAULTS)
def test_where_publications_differ_the_default_stands(
    method: str, food: str, seal: str, words: str, said: tuple[str, ...]
) -> None:
    sign = seen(method, food, seal, words)
    assert sign is not None
    steps = " / ".join(sign.steps)
    assert [part for part in said if part not in steps] == []


def test_the_routes_say_what_the_publications_say() -> None:
    """USDA by way of Missouri and Clemson Extension; CDC by way of Washington State."""
    closed, leaking = " ".join(DISPOSAL["bag"]), DISPOSAL["gloves-bag"]
    assert "do not open" in DISPOSAL["bag"][0]
    assert "boil" not in closed
    assert "second bag" in closed
    assert "gloves" in leaking[0]
    assert "second bag" in " ".join(leaking)
    boil = next(step for step in leaking if "boil" in step)
    assert boil.startswith("Instead")
    assert all(figure in boil for figure in ("30 minutes", "8 quarts", "1 inch", "never eat"))
    for route in ("bag", "gloves-bag"):
        assert all(w in " ".join(DISPOSAL[route]) for w in ("sink", "compost", "animals"))
    assert set(DISPOSAL_SOURCES) == set(DISPOSAL)
    named = {source for sources in DISPOSAL_SOURCES.values() for source in sources}
    assert named <= set(load_tables().sources)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("LID Swollen", "swollen lid"),
        ("swollen lids", "swollen lid"),
        ("foul odor or musty", "foul or musty smell"),
        ("molds on the lid, foods", "mould on food or lid"),
        ("leaking-lid", "leaking lid"),
        ("swollen", None),
        ("swollen lid maybe", None),
        ("lopsided lid", None),
        ("mould, not fuzzy", None),
        ("", None),
        ("the of", None),
    ],
)
def test_a_sign_is_found_by_exactly_its_words(text: str, found: str | None) -> None:
    known = signs_for(load_signs(), Method.PRESSURE, facts("peas"), open_=False)
    sign = find_sign(known, text)
    assert (sign.words if sign else None) == found


def test_near_signs_help_a_person_who_says_it_otherwise() -> None:
    known = signs_for(load_signs(), Method.PRESSURE, facts("peas"), open_=False)
    near = [sign.words for sign in near_signs(known, "bulging lid")]
    assert "swollen lid" in near
    assert len(near) == len(set(near)) <= 5
    assert [s.words for s in near_signs(load_signs(), "kahm", n=1)] == ["flat white film (kahm)"]
    assert near_signs(known, "") == []


def test_a_strange_food_takes_strict_signs_of_its_group_and_no_lenient_ones() -> None:
    strange = FoodFacts("oca", Group.VEGETABLE, Acidity.LOW_ACID, known=False)
    words = {s.words for s in signs_for(load_signs(), Method.CELLAR, strange, open_=True)}
    assert "slimy or soft" in words
    assert "small mould spot, firm vegetable" not in words


def test_of_two_signs_with_the_same_words_the_strictest_is_meant() -> None:
    strict = next(sign for sign in load_signs() if sign.id == "swollen-lid")
    mild = replace(strict, id="mild", verdict=SignVerdict.HARMLESS)
    assert find_sign([mild, strict], "swollen lid") is strict
    assert find_sign([mild, strict], "mild") is mild
